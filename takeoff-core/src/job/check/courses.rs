//! Noses of the courses of a slope.
use super::lines::ascending;
use crate::job::fields::quantities::Position;
use crate::job::fields::raw;
use crate::job::fields::table_field::Table;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::{Code, Display, Laps, Outline, Tile};
use crate::roof::{MOST_COURSES, NosesError, noses_at, noses_between};
use crate::units::Length;

/// The noses of the courses, ascending.
pub(crate) fn noses(
    field: &Field<raw::Courses>,
    outline: Option<&Outline>,
    tile: Option<&Tile>,
    display: Display,
    reader: &mut Reader<'_>,
) -> Option<Vec<Length>> {
    let written = field.get()?;
    let used = [
        written.noses.is_given(),
        written.first_nose.is_given() || written.exposure.is_given(),
        written.overhang.is_given() || written.ridge_gap.is_given(),
    ];
    let ways = "`noses`, or `first_nose` and `exposure`, or `overhang` and `ridge_gap`";
    let (at, noses) = match reader.one_way(field.at, used, ways)? {
        0 => (written.noses.at, measured(&written.noses, reader)?),
        1 => {
            let first = reader.needed(field.at, "first_nose", &written.first_nose);
            let exposure = reader.needed(field.at, "exposure", &written.exposure);
            let noses = noses_at(*first?, *exposure?, outline?.highest());
            (written.exposure.at, laid(noses, written.first_nose.at, written.exposure.at, reader)?)
        }
        _ => {
            let overhang = reader.needed(field.at, "overhang", &written.overhang);
            let gap = reader.needed(field.at, "ridge_gap", &written.ridge_gap);
            let (overhang, gap, outline, tile) = (*overhang?, *gap?, outline?, tile?);
            let Some(eave) = outline.lowest_eave() else {
                let message = "courses can't be fitted: no edge of the slope is an eave";
                reader.report(field.at, Code::NoEave, message, "say in `edges` which edge is the eave");
                return None;
            };
            let last = outline.highest() - gap - tile.length;
            let noses = noses_between(eave - overhang, last, tile.length - tile.least_head_lap, tile.laps);
            (field.at, laid(noses, field.at, field.at, reader)?)
        }
    };
    if let Some(tile) = tile {
        check_exposures(&noses, tile, at, display, reader);
    }
    Some(noses)
}

fn measured(field: &Field<Option<Table<Position>>>, reader: &mut Reader<'_>) -> Option<Vec<Length>> {
    let noses = ascending(field, "noses", reader)?;
    if noses.is_empty() || noses.len() > MOST_COURSES {
        let message = format!("{} courses are not between 1 and {MOST_COURSES}", noses.len());
        reader.report(field.at, Code::TooMany, message, "give the nose of each course, going up the slope");
        return None;
    }
    Some(noses)
}

fn laid(
    noses: Result<Vec<Length>, NosesError>,
    start: At,
    step: At,
    reader: &mut Reader<'_>,
) -> Option<Vec<Length>> {
    noses
        .map_err(|error| match error {
            NosesError::NoRoom => {
                let message = "there is no room for courses between the first nose and the top of the slope";
                let help = "look at the outline's height, the tile's length and head lap, and the way from eave to ridge";
                reader.report(start, Code::NoRoomForCourses, message, help);
            }
            NosesError::TooMany(_) => {
                let help = "look at the exposure and the outline's height: is one in another unit?";
                reader.report(step, Code::TooMany, error.to_string(), help);
            }
        })
        .ok()
}

/// A course that shows more than length less head lap is odd, but the roof is as it is.
fn check_exposures(noses: &[Length], tile: &Tile, at: At, display: Display, reader: &mut Reader<'_>) {
    let longest = tile.length - tile.least_head_lap;
    let layers = match tile.laps {
        Laps::Single => 1,
        Laps::Double => 2,
    };
    let beyond: Vec<(usize, Length)> = noses
        .windows(2)
        .enumerate()
        .map(|(course, pair)| (course + 1, pair[1] - pair[0]))
        .filter(|(_, exposure)| layers * exposure.nm() > longest.nm())
        .collect();
    let Some(&(first, _)) = beyond.first() else {
        return;
    };
    let widest = beyond.iter().map(|(_, exposure)| *exposure).max().unwrap_or_default();
    let which = match beyond.len() {
        1 => format!("course {first} shows"),
        count => format!("{count} courses, the first of them course {first}, show up to"),
    };
    let greatest = longest.ratio(1, layers).unwrap_or_default();
    let message = format!(
        "{which} {}, more than length less least head lap allows, {}",
        display.length(widest),
        display.length(greatest)
    );
    let help =
        "measure there again: a short head lap lets water in, and leaves little for the flashing's tuck";
    reader.report(at, Code::ExposureBeyondGreatest, message, help);
}
