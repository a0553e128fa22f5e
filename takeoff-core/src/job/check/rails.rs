//! The rails of an array.
use super::Named;
use crate::job::fields::collections::List;
use crate::job::fields::{quantities, raw};
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::job::parse::document::At;
use crate::model::{Array, Assembly, ClampWindow, Code, Rails, SpanZone};
use crate::units::Length;

/// The most clamp windows of a module.
const MOST_CLAMPS: usize = 8;
/// The most zones of an array.
const MOST_ZONES: usize = 100;

/// The rails of an array, if the job gives them; the array has none yet.
pub(crate) fn rails(
    field: &Field<Option<raw::Rails>>,
    array: &Array,
    slope: &raw::Slope,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Option<Rails>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    if !slope.rafters.is_given() {
        let message = format!("the rails of {} need rafters to stand on", quoted(&array.name));
        reader.report(field.at, Code::RailsWithoutRafters, message, "give the slope's `rafters`");
    }
    let zones = written.zones.optional()?.map_or(&[][..], Vec::as_slice);
    let few = few(written.clamps.get()?.len(), MOST_CLAMPS, "clamp windows", written.clamps.at, reader)
        & few(zones.len(), MOST_ZONES, "zones", written.zones.at, reader);
    if !few {
        return None;
    }
    let assembly = assemblies.find(&written.assembly, reader);
    let least_distance = written.least_distance.optional().map(|least| least.copied().unwrap_or_default());
    let clamps = windows(&written.clamps, array, reader);
    if let (Some(clamps), Some(least)) = (&clamps, least_distance) {
        check_apart(written, clamps, least, array, reader);
    }
    let greatest_overhang = written.greatest_overhang.get().copied();
    let zones: Vec<_> =
        zones.iter().enumerate().map(|(i, field)| zone(i, field, greatest_overhang, reader)).collect();
    Some(Some(Rails {
        assembly: assembly?,
        clamps: clamps?,
        greatest_span: *written.greatest_span.get()?,
        greatest_overhang: greatest_overhang?,
        zones: zones.into_iter().collect::<Option<_>>()?,
        least_distance: least_distance?,
        stagger: written.stagger.optional()?.copied().unwrap_or(1),
        blocking: written.blocking.optional()?.copied().unwrap_or(false),
    }))
}

/// Whether a count is within its limit; reports where it is not.
fn few(count: usize, most: usize, what: &str, at: At, reader: &mut Reader<'_>) -> bool {
    let few = count <= most;
    if !few {
        let message = format!("{count} {what} are more than {most} of one array");
        reader.report(at, Code::TooMany, message, "look whether they are meant for one array");
    }
    few
}

/// Clamp windows: at least one, each the right way up and on the module.
fn windows(
    field: &Field<List<quantities::ClampWindow>>,
    array: &Array,
    reader: &mut Reader<'_>,
) -> Option<Vec<ClampWindow>> {
    let mut windows = Vec::new();
    let mut all_right = true;
    for (i, item) in field.get()?.iter().enumerate() {
        let Some(&[from, to]) = item.get() else {
            all_right = false;
            continue;
        };
        let (trouble, help) = if from > to {
            ("ends below where it begins", "write `[from, to]`, both up from the module's lower edge")
        } else if to > array.module_height {
            (
                "reaches beyond the module",
                "it is measured up from the module's lower edge: look at `module_height`",
            )
        } else {
            windows.push(ClampWindow { from, to });
            continue;
        };
        let message = format!("clamp window {} of {} {trouble}", i + 1, quoted(&array.name));
        reader.report(item.at, Code::ClampWindow, message, help);
        all_right = false;
    }
    if all_right && windows.is_empty() {
        let message = format!("the rails of {} have no clamp window", quoted(&array.name));
        reader.report(field.at, Code::ClampWindow, message, "give one for each rail of a row of modules");
        return None;
    }
    all_right.then_some(windows)
}

/// Windows are apart from each other, and so are the rails in them: in a row, and from one row to the next.
fn check_apart(
    written: &raw::Rails,
    clamps: &[ClampWindow],
    least: Length,
    array: &Array,
    reader: &mut Reader<'_>,
) {
    let who = quoted(&array.name);
    let rise = array.module_height + array.row_gap;
    let in_row = clamps.windows(2).map(|pair| pair[1].from - pair[0].to);
    let in_row =
        (1..).zip(in_row).map(|(i, apart)| (apart, format!("clamp windows {i} and {} of {who}", i + 1)));
    let of_rows = match clamps {
        [first, .., last] | [first @ last] if array.rows > 1 => {
            let message = format!("the highest clamp window of {who} and the lowest of the next row");
            Some((rise + first.from - last.to, message))
        }
        _ => None,
    };
    for (apart, which) in in_row.chain(of_rows) {
        let (trouble, help) = if apart <= Length::ZERO {
            ("overlap or touch".to_owned(), "list them from the lowest up, apart from each other")
        } else if apart < least {
            let shown = reader.written(written.least_distance.at);
            let trouble = format!("allow rails nearer to each other than the least distance of {shown}");
            (trouble, "make them narrower, or look at `least_distance`")
        } else {
            continue;
        };
        reader.report(written.clamps.at, Code::RailsTooNear, format!("{which} {trouble}"), help);
    }
}

/// A zone; without an overhang of its own it has that of the rails.
fn zone(
    number: usize,
    field: &Field<raw::SpanZone>,
    usual_overhang: Option<Length>,
    reader: &mut Reader<'_>,
) -> Option<SpanZone> {
    let written = field.get()?;
    let name = written.name.optional()?.cloned().unwrap_or_else(|| format!("zone {}", number + 1));
    let (from, to) = (*written.from.get()?, *written.to.get()?);
    if from.u >= to.u || from.v >= to.v {
        let message =
            format!("the zone {} does not run from its lower left corner to its upper right", quoted(&name));
        let help = "`from` has to be left of `to`, and below it";
        reader.report(field.at, Code::ZoneUpsideDown, message, help);
        return None;
    }
    let greatest_overhang = written.greatest_overhang.optional()?.copied().or(usual_overhang);
    Some(SpanZone {
        name,
        from,
        to,
        greatest_span: *written.greatest_span.get()?,
        greatest_overhang: greatest_overhang?,
    })
}
