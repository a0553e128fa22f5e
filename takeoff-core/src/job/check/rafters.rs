//! The rafters under a slope.
use super::lines::{ascending, check_line_count};
use crate::job::fields::raw;
use crate::job::fields::table_field::Table;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::{Code, Outline, RafterLine, Rafters};
use crate::units::Length;

/// The rafters, if the job gives them.
pub(crate) fn rafters(
    field: &Field<Option<raw::Rafters>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Option<Rafters>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    let used = [
        written.first.is_given() || written.spacing.is_given(),
        written.at.is_given(),
        written.lines.is_given(),
    ];
    let way = reader.one_way(field.at, used, "`first` and `spacing`, `at`, or `lines`")?;
    let (at, lines): (_, Vec<RafterLine>) = match way {
        0 => {
            let centres = spaced(field.at, written, outline, reader)?;
            (written.spacing.at, centres.into_iter().map(RafterLine::straight).collect())
        }
        1 => {
            let centres = ascending(&written.at, "rafter", reader)?;
            (written.at.at, centres.into_iter().map(RafterLine::straight).collect())
        }
        _ => (written.lines.at, crooked(&written.lines, reader)?),
    };
    if !check_line_count(lines.len() as i128, "rafters", at, reader) {
        return None;
    }
    if lines.is_empty() {
        let help = "give the centre lines that lie under the slope, or leave `rafters` out";
        reader.report(at, Code::NoRafters, "no rafter lies under the slope", help);
        return None;
    }
    let width = *written.width.get()?;
    let apart = |pair: &[RafterLine]| (pair[1].lower - pair[0].lower).min(pair[1].upper - pair[0].upper);
    let tight = lines.windows(2).position(|pair| apart(pair) < width);
    if let Some(i) = tight {
        let shown = reader.written(written.width.at);
        let message =
            format!("rafters {} and {} are nearer to each other than their width of {shown}", i + 1, i + 2);
        reader.report(
            at,
            Code::RaftersOverlap,
            message,
            "look at the spacing: it is from centre line to centre line",
        );
        return None;
    }
    let (depth, specific_gravity) =
        (written.depth.given().copied(), written.specific_gravity.given().copied());
    let bounds = outline?.polygon().bounds();
    let [low, high] = [bounds.lower, bounds.upper].map(|v| Length::from_nm(v / 2));
    Some(Some(Rafters { lines, low, high, width, depth, specific_gravity }))
}

/// Centre lines one beside the other up to the right end of the slope.
fn spaced(
    at: At,
    written: &raw::Rafters,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Vec<Length>> {
    let first = reader.needed(at, "first", &written.first);
    let spacing = reader.needed(at, "spacing", &written.spacing);
    let (first, spacing, (_, right)) = (*first?, *spacing?, outline?.across());
    let count = (i128::from(right.nm()) - i128::from(first.nm())) / i128::from(spacing.nm());
    if !check_line_count(count, "rafters", written.spacing.at, reader) {
        return None;
    }
    let centres = (0..).map(|i| Length::from_nm(first.nm() + i * spacing.nm()));
    Some(centres.take_while(|&centre| centre <= right).collect())
}

/// Centre lines measured at both ends, each right of the one before at both.
fn crooked(
    field: &Field<Option<Table<raw::RafterLine>>>,
    reader: &mut Reader<'_>,
) -> Option<Vec<RafterLine>> {
    let mut lines: Vec<RafterLine> = Vec::new();
    for (i, item) in field.given()?.iter().enumerate() {
        let written = item.get()?;
        let line = RafterLine { lower: *written.lower.get()?, upper: *written.upper.get()? };
        if lines.last().is_some_and(|before| line.lower <= before.lower || line.upper <= before.upper) {
            let message = format!("rafter number {} is not right of the one before, at both its ends", i + 1);
            let help = "list them from left to right, each once";
            reader.report(item.at, Code::NotAscending, message, help);
            return None;
        }
        lines.push(line);
    }
    Some(lines)
}
