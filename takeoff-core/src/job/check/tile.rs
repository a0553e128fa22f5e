//! A kind of tile as a job file has it.
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::model::{Assumptions, Code, Input, PanAndCover, Tile, TileBuilder};
use crate::profile::{Profile, ProfileError};

pub(crate) fn tile(
    name: &str,
    field: &Field<raw::Tile>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Tile> {
    let written = field.get()?;
    let pan_and_cover = match written.pan_and_cover.optional() {
        Some(Some(written)) => Input::Given(PanAndCover {
            pan_width: written.pan_width.input(),
            cover_width: written.cover_width.input(),
            pans_on_hand: written.pans_on_hand.optional_input(),
            pans_harvest: written.pans_harvest.optional_input(),
            covers_on_hand: written.covers_on_hand.optional_input(),
            covers_harvest: written.covers_harvest.optional_input(),
        }),
        Some(None) => Input::Missing,
        None => Input::Unread,
    };
    let builder = TileBuilder {
        name: name.to_owned(),
        length: written.length.input(),
        cover: written.cover.input(),
        width: written.width.optional_input(),
        lap_side: written.lap_side.optional_input(),
        on_hand: written.on_hand.optional_input(),
        harvest: written.harvest.optional_input(),
        pan_and_cover,
        least_head_lap: written.least_head_lap.input(),
        thickness: written.thickness.input(),
        weight_g: written.weight.given().map(|weight| weight.grams()),
        laps: written.laps.given().copied().unwrap_or_default(),
        held: written.held.input(),
        fasteners_each: written.fasteners_each.optional_input(),
        profile: profile(&written.profile, reader).map_or(Input::Unread, Input::Given),
    };
    reader.judge(field.at, assumptions, |judge| builder.judge(judge))
}

fn profile(field: &Field<Option<raw::Profile>>, reader: &mut Reader<'_>) -> Option<Profile> {
    let Some(written) = field.optional()? else {
        return Some(Profile::Flat);
    };
    let make = match written.shape.get()? {
        raw::Shape::Flat => return Some(Profile::Flat),
        raw::Shape::Sine => Profile::sine,
        raw::Shape::Arcs => Profile::arcs,
    };
    let rise = reader.needed(field.at, "rise", &written.rise);
    let wave = reader.needed(field.at, "wave", &written.wave);
    match make(*rise?, *wave?) {
        Ok(profile) => Some(profile),
        Err(error) => {
            let at = if error == ProfileError::Wave { written.wave.at } else { written.rise.at };
            reader.report(
                at,
                Code::OutOfRange,
                error.to_string(),
                "measure the tile from its lowest line to its highest",
            );
            None
        }
    }
}
