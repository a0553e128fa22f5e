//! The rafters under a slope.
use super::codes::Code;
use super::lines::{ascending, few};
use super::outline::Outline;
use super::raw;
use super::reader::{Field, Reader};
use super::{RafterLine, Rafters};
use crate::units::Length;

/// The rafters, if the job gives them.
pub(super) fn rafters(
    field: &Field<Option<raw::Rafters>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Option<Rafters>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    let used = [written.first.is_given() || written.spacing.is_given(), written.at.is_given()];
    let (at, centres): (_, Vec<Length>) =
        if reader.one_way(field.at, used, "`first` and `spacing`, or `at`")? == 0 {
            let first = reader.needed(field.at, "first", &written.first);
            let spacing = reader.needed(field.at, "spacing", &written.spacing);
            let (first, spacing, (_, right)) = (*first?, *spacing?, outline?.across());
            let count = (i128::from(right.nm()) - i128::from(first.nm())) / i128::from(spacing.nm());
            if !few(count, "rafters", written.spacing.at, reader) {
                return None;
            }
            let centres = (0..).map(|i| Length::from_nm(first.nm() + i * spacing.nm()));
            (written.spacing.at, centres.take_while(|&centre| centre <= right).collect())
        } else {
            let centres = ascending(&written.at, "rafter", reader)?;
            if !few(centres.len() as i128, "rafters", written.at.at, reader) {
                return None;
            }
            (written.at.at, centres)
        };
    if centres.is_empty() {
        let help = "give the centre lines that lie under the slope, or leave `rafters` out";
        reader.report(at, Code::NoRafters, "no rafter lies under the slope", help);
        return None;
    }
    let width = *written.width.get()?;
    let tight = centres.windows(2).position(|pair| pair[1] - pair[0] < width);
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
    let lines = centres.into_iter().map(RafterLine::straight).collect();
    Some(Some(Rafters { lines, low, high, width, depth, specific_gravity }))
}
