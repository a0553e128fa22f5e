//! Kinds of value that money is counted with: read as decimals, never by way of binary fractions.
use rust_decimal::Decimal;
use schemars::json_schema;

use super::scalars::schema;
use crate::job::parse::decode::{Read, Reader, quoted};
use crate::job::parse::document::{At, Value};
use crate::model::Code;
use crate::units;

/// The most digits before the point of an amount of money or a pack, and after it.
const MOST_DIGITS: (usize, usize) = (9, 6);

/// A number written with digits and a decimal point, no more of them than fit.
pub(crate) fn plain_decimal(text: &str) -> Option<Decimal> {
    let unsigned = text.strip_prefix(['-', '−']).unwrap_or(text);
    let (whole, part) = unsigned.split_once('.').unwrap_or((unsigned, "0"));
    let digits =
        |text: &str, most| (1..=most).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
    let fits = digits(whole, MOST_DIGITS.0) && digits(part, MOST_DIGITS.1);
    let value = Decimal::from_str_exact(unsigned).ok().filter(|_| fits)?;
    Some(if unsigned.len() < text.len() { -value } else { value })
}

/// An amount of money, `"68.50"`.
pub(crate) struct Amount;
schema!(Amount: json_schema!({ "type": "string", "pattern": r"^[0-9]{1,9}(\.[0-9]{1,6})?$", "examples": ["68.50"] }));

impl Read for Amount {
    type Value = units::Money;
    const EXPECTS: &'static str = "an amount of money in quotes, such as `\"68.50\"`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<units::Money> {
        let text = reader.text(at, Self::EXPECTS)?;
        let amount =
            plain_decimal(text.trim()).filter(|amount| !amount.is_sign_negative() || amount.is_zero());
        if amount.is_none() {
            let message = format!("{} is not an amount of money", quoted(text));
            let help = "write digits with a decimal point and nothing between thousands, as `68.50`";
            reader.report(at, Code::OutOfRange, message, help);
        }
        amount.map(units::Money::new)
    }
}

/// A currency by its code.
pub(crate) struct Currency;
schema!(Currency: json_schema!({ "type": "string", "pattern": "^[A-Z]{3}$", "examples": ["USD"] }));

impl Currency {
    /// The currency, if the text is the code of one; what is wrong is reported.
    pub(crate) fn check(text: &str, at: At, reader: &mut Reader<'_>) -> Option<units::Currency> {
        let currency = units::Currency::new(text);
        if currency.is_none() {
            let message = format!("{} is not the code of a currency", quoted(text));
            reader.report(at, Code::Currency, message, "write three capital letters, as `USD` or `EUR`");
        }
        currency
    }
}

impl Read for Currency {
    type Value = units::Currency;
    const EXPECTS: &'static str = "the code of a currency, such as `\"USD\"`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<units::Currency> {
        let text = reader.text(at, Self::EXPECTS)?;
        Currency::check(text, at, reader)
    }
}

/// A row a kind of number that money is multiplied with: what it is, and its greatest value.
macro_rules! factors {
    ($( $(#[$doc:meta])* $name:ident: $words:literal, $most:literal; )*) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        schema!($name: json_schema!({ "type": "number", "minimum": 0, "maximum": $most }));

        impl Read for $name {
            type Value = Decimal;
            const EXPECTS: &'static str = concat!("a number ", $words);

            fn read(at: At, reader: &mut Reader<'_>) -> Option<Decimal> {
                let Value::Number(number) = reader.tree.value(at) else {
                    reader.report_type(at, Self::EXPECTS);
                    return None;
                };
                // What is written with few digits is printed with the same.
                let written = number.to_string();
                let value = plain_decimal(written.strip_suffix(".0").unwrap_or(&written));
                let value = value.filter(|value| (Decimal::ZERO..=Decimal::from($most)).contains(value));
                if value.is_none() {
                    let name = quoted(reader.tree.name(at).unwrap_or("the number"));
                    let message = format!("{name} must be {} with at most six decimals: `{written}` is not", $words);
                    reader.report(at, Code::OutOfRange, message, concat!("write a number ", $words));
                }
                value
            }
        }
    )*};
}

factors! {
    /// A part of a sum of money that is added to it.
    Part: "from 0 to 10, as a share (`0.15` is 15 %)", 10;
    /// Minutes that something takes.
    Minutes: "of minutes from 0 to 10000", 10_000;
}
