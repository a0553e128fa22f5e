//! A kind of tile: whether its measures fit each other.
use super::practice::Assumptions;
use crate::job::fields::raw;
use crate::job::fields::scalars::Count;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::model::{Code, Held, LapSide, Pieces, Stock, Tile};
use crate::profile::{Profile, ProfileError};
use crate::units::Length;

pub(crate) fn tile(
    name: &str,
    field: &Field<raw::Tile>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Tile> {
    let written = field.get()?;
    let pieces = pieces(field, reader);
    if let (Some(length), Some(lap)) = (written.length.get(), written.least_head_lap.get())
        && lap >= length
    {
        let (lap, length) = (reader.written(written.least_head_lap.at), reader.written(written.length.at));
        let message = format!("the least head lap {lap} is not below the tile's length {length}");
        reader.report(
            written.least_head_lap.at,
            Code::HeadLapTooLong,
            message,
            "measure the tile from nose to head",
        );
    }
    let profile = profile(&written.profile, reader);

    let held = *written.held.get()?;
    let usual = match held {
        Held::Nailed | Held::Clipped => 1,
        _ => 0,
    };
    let what = format!("nails, screws or clips a tile {}", quoted(name));
    let fasteners_each = assumptions.count(what, written.fasteners_each.given().copied(), usual);
    Some(Tile {
        name: name.to_owned(),
        length: *written.length.get()?,
        cover: *written.cover.get()?,
        pieces: pieces?,
        least_head_lap: *written.least_head_lap.get()?,
        thickness: *written.thickness.get()?,
        weight_g: written.weight.given().map(|weight| weight.grams()),
        laps: written.laps.given().copied().unwrap_or_default(),
        held,
        fasteners_each,
        profile: profile?,
    })
}

fn pieces(field: &Field<raw::Tile>, reader: &mut Reader<'_>) -> Option<Pieces> {
    let written = field.get()?;
    let one_piece = [
        written.width.is_given(),
        written.lap_side.is_given(),
        written.on_hand.is_given(),
        written.harvest.is_given(),
    ];
    let ways = "`width` and `lap_side` of a one-piece tile, or `pan_and_cover` of a two-piece one";
    match reader.one_way(field.at, [one_piece.contains(&true), written.pan_and_cover.is_given()], ways)? {
        0 => {
            let width = reader.needed(field.at, "width", &written.width);
            let (width, cover) = (*width?, *written.cover.get()?);
            let lap_side = lap_side(field, width, cover, reader)?;
            let stock = stock(&written.on_hand, &written.harvest, reader);
            Some(Pieces::One { width, lap_side, stock })
        }
        _ => pan_and_cover(written.pan_and_cover.given()?, &written.cover, reader),
    }
}

fn lap_side(
    field: &Field<raw::Tile>,
    width: Length,
    cover: Length,
    reader: &mut Reader<'_>,
) -> Option<LapSide> {
    let written = field.get()?;
    let (shown_width, shown_cover) = (reader.written(written.width.at), reader.written(written.cover.at));
    if cover > width {
        let message =
            format!("the tile covers {shown_cover}, which is wider than the tile itself, {shown_width}");
        let help = "the cover width is from joint to joint: measure it over several tiles on the roof";
        reader.report(written.cover.at, Code::CoverWiderThanTile, message, help);
        return None;
    }
    if width - cover >= cover {
        let message =
            format!("{shown_width} wide, {shown_cover} covered: the side lap takes the whole cover width");
        let help = "the cover width is from joint to joint: measure it over several tiles on the roof";
        reader.report(written.cover.at, Code::SideLapTooWide, message, help);
        return None;
    }
    if width == cover {
        // Nothing laps sideways: the side makes no difference.
        return Some(written.lap_side.given().copied().unwrap_or(LapSide::Left));
    }
    reader.needed(field.at, "lap_side", &written.lap_side).copied()
}

fn pan_and_cover(
    written: &raw::PanAndCover,
    column: &Field<crate::job::fields::quantities::TileSize>,
    reader: &mut Reader<'_>,
) -> Option<Pieces> {
    let (pan_width, cover_width) = (*written.pan_width.get()?, *written.cover_width.get()?);
    let column_width = *column.get()?;
    let shown = reader.written(column.at);
    for (what, width, at) in
        [("pan", pan_width, written.pan_width.at), ("cover", cover_width, written.cover_width.at)]
    {
        if width > column_width {
            let message = format!("a {what} {} wide does not fit in a column of {shown}", reader.written(at));
            reader.report(
                at,
                Code::PanAndCover,
                message,
                "`cover` is from joint to joint: measure it on the roof",
            );
        }
    }
    if pan_width + cover_width <= column_width {
        let (pan, cover) = (reader.written(written.pan_width.at), reader.written(written.cover_width.at));
        let message = format!("pan {pan} and cover {cover} do not lap in a column of {shown}");
        let help = "`cover` is from joint to joint: measure it on the roof";
        reader.report(written.cover_width.at, Code::PanAndCover, message, help);
    }
    Some(Pieces::PanAndCover {
        pan_width,
        cover_width,
        pans: stock(&written.pans_on_hand, &written.pans_harvest, reader),
        covers: stock(&written.covers_on_hand, &written.covers_harvest, reader),
    })
}

fn stock(on_hand: &Field<Option<Count>>, harvest: &Field<Option<Count>>, reader: &Reader<'_>) -> Stock {
    let count = |field: &Field<Option<Count>>| field.given().copied().unwrap_or(0).into();
    Stock { on_hand: count(on_hand), harvest: count(harvest), harvest_path: reader.tree.pointer(harvest.at) }
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
