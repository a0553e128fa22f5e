//! Money, and the one rule by which it is rounded.
use std::borrow::Cow;
use std::fmt;

use rust_decimal::prelude::{FromPrimitive, ToPrimitive};
use rust_decimal::{Decimal, RoundingStrategy};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Serialize, Serializer};

/// An amount of money, decimal, in a currency that is named beside it. In JSON a text: `"12.34"`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(Decimal);

impl Money {
    /// An amount as it is.
    pub const fn new(amount: Decimal) -> Money {
        Money(amount)
    }

    /// The amount.
    pub const fn amount(self) -> Decimal {
        self.0
    }

    /// The amount as a number, where no cent depends on it.
    pub fn to_f64(self) -> f64 {
        self.0.to_f64().unwrap_or_default()
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl JsonSchema for Money {
    fn schema_name() -> Cow<'static, str> {
        "Money".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "pattern": r"^-?[0-9]+(\.[0-9]+)?$" })
    }
}

/// A currency by its three-letter code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Currency(String);

impl Currency {
    /// The currency of a code of three capital letters, such as `USD`.
    pub fn new(code: &str) -> Option<Currency> {
        let is_code = code.len() == 3 && code.bytes().all(|byte| byte.is_ascii_uppercase());
        is_code.then(|| Currency(code.to_owned()))
    }

    /// Its code.
    pub fn code(&self) -> &str {
        &self.0
    }

    /// Decimals of its minor unit.
    ///
    /// # Source
    ///
    /// ISO 4217, list one (from memory): two, but for the codes named here.
    pub fn decimals(&self) -> u32 {
        match self.0.as_str() {
            "BIF" | "CLP" | "DJF" | "GNF" | "ISK" | "JPY" | "KMF" | "KRW" | "PYG" | "RWF" | "UGX" | "UYI"
            | "VND" | "VUV" | "XAF" | "XOF" | "XPF" => 0,
            "BHD" | "IQD" | "JOD" | "KWD" | "LYD" | "OMR" | "TND" => 3,
            "CLF" | "UYW" => 4,
            _ => 2,
        }
    }

    /// An amount to the minor unit, half away from zero, with all its decimals.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::units::Currency;
    /// let dollar = Currency::new("USD").unwrap();
    /// assert_eq!(dollar.round("0.125".parse().unwrap()).to_string(), "0.13");
    /// assert_eq!(dollar.round("12.5".parse().unwrap()).to_string(), "12.50");
    /// ```
    pub fn round(&self, amount: Decimal) -> Money {
        let decimals = self.decimals();
        let mut rounded = amount.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero);
        rounded.rescale(decimals);
        Money(rounded)
    }

    /// The amount nearest to a number.
    pub fn nearest(&self, amount: f64) -> Money {
        self.round(Decimal::from_f64(amount).unwrap_or_default())
    }

    /// The rule of [`Currency::round`], in words.
    pub fn rule(&self) -> String {
        let step = Decimal::new(1, self.decimals());
        format!(
            "every line is rounded once, half away from zero, to {step} {}; totals add rounded lines",
            self.0
        )
    }
}
