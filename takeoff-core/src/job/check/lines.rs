//! Lines that run across a slope or up it, one beyond the other.
use crate::job::fields::quantities::Position;
use crate::job::fields::table_field::Table;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::Code;
use crate::units::Length;

/// The values of a list, each above the one before.
pub(crate) fn ascending(
    field: &Field<Option<Table<Position>>>,
    what: &str,
    reader: &mut Reader<'_>,
) -> Option<Vec<Length>> {
    let items = field.given()?;
    let mut values: Vec<Length> = Vec::with_capacity(items.len());
    for (i, item) in items.iter().enumerate() {
        let value = *item.get()?;
        if values.last().is_some_and(|&before| value <= before) {
            let message = format!("{what} number {} is not beyond the one before", i + 1);
            let help = "list them in ascending order, each once";
            reader.report(item.at, Code::NotAscending, message, help);
            return None;
        }
        values.push(value);
    }
    Some(values)
}

/// The most lap lines, or rafters, of a slope.
const MOST_LINES: usize = 10_000;

/// Whether a count of lines is within its limit; reports where it is not.
pub(crate) fn check_line_count(lines: i128, what: &str, at: At, reader: &mut Reader<'_>) -> bool {
    let few = lines <= MOST_LINES as i128;
    if !few {
        let message = format!("{lines} {what} are more than {MOST_LINES} on one slope");
        reader.report(at, Code::TooMany, message, "look at the spacing: is it in another unit?");
    }
    few
}
