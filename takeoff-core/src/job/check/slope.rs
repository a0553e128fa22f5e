//! One slope: whether what is said of it fits together.
use std::collections::BTreeMap;

use geo::Validation;

use super::Named;
use super::array::arrays;
use super::courses::noses;
use super::georeference::{pitch, place};
use super::outline::outline;
use super::posts::posts;
use super::rafters::rafters;
use super::screening::blocking;
use super::setback::{check_edge, check_posts, setbacks};
use super::underlayment::{check_pitch, sheets};
use crate::cuts::opening_of;
use crate::geometry::grid;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::job::parse::document::At;
use crate::model::{
    Assembly, Assumptions, Battens, Code, Display, Held, Outline, Perimeter, Practice, Slope, Tile,
    Underlayment, inches_and_64ths, of,
};
use crate::roof::Field as TiledField;
use crate::units::Length;

/// The things that slopes name.
pub(crate) struct Catalogue {
    pub(crate) tiles: Named<Tile>,
    pub(crate) underlayments: Named<Underlayment>,
    pub(crate) assemblies: Named<Assembly>,
}

pub(crate) fn slope(
    field: &Field<raw::Slope>,
    catalogue: &Catalogue,
    practice: &Practice,
    display: Display,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Slope> {
    let written = field.get()?;
    let tile = catalogue.tiles.find(&written.tile, reader);
    let outline = outline(field.at, written, assumptions, reader);
    let noses = noses(&written.courses, outline.as_ref(), tile.as_deref(), display, reader);
    let place = place(&written.place, reader);
    let pitch = pitch(field.at, &written.pitch, place.as_ref(), reader);
    let columns = written.columns.get();
    let (underlayment, lap_lines) =
        sheets(&written.underlayment, outline.as_ref(), &catalogue.underlayments, reader);
    if let Some(pitch) = pitch {
        check_pitch(written.pitch.at, pitch, underlayment.as_deref(), lap_lines.as_ref(), reader);
    }
    let rafters = rafters(&written.rafters, outline.as_ref(), reader);
    let perimeter = perimeter(&written.perimeter, outline.as_ref(), reader);
    let setbacks = setbacks(written, outline.as_ref(), reader);
    let posts = posts(written, outline.as_ref(), &catalogue.assemblies, reader);
    if let (Some(posts), Some(setbacks)) = (&posts, &setbacks) {
        check_posts(posts, setbacks, display, reader);
    }
    let arrays = arrays(written, outline.as_ref(), &catalogue.assemblies, reader);

    let (name, tile, outline, noses, columns) = (written.name.get()?, tile?, outline?, noses?, columns?);
    let overhang = match written.overhang.given() {
        Some(&overhang) => overhang,
        None => usual_overhang(&outline, &noses),
    };
    let bond = columns.bond.get()?.iter();
    let slope = Slope {
        name: name.clone(),
        pitch: pitch?,
        place: place?,
        noses,
        overhang,
        first_joint: *columns.first_joint.get()?,
        bond: bond.filter_map(|&(top, over)| tile.cover.ratio(top.into(), over.into())).collect(),
        battens: battens(&written.battens, name, tile.held, assumptions)?,
        tile,
        outline: outline.corners,
        edges: outline.edges,
        holes: outline.holes,
        underlayment: underlayment?,
        lap_lines: lap_lines?,
        rafters: rafters?,
        deck_thickness: written.deck_thickness.given().copied(),
        blocking: blocking(&written.blocking)?,
        perimeter: perimeter?,
        setbacks: setbacks?,
        walked: written.walked.given().copied().unwrap_or(0).into(),
        posts: posts?.into_iter().map(|(_, post)| post).collect(),
        arrays: arrays?,
    };
    check_field(&slope, if written.overhang.is_given() { written.overhang.at } else { field.at }, reader);
    check_openings(&slope, practice, reader, field.at);
    Some(slope)
}

/// From the lowest eave down to the lowest noses, if they are below it.
fn usual_overhang(outline: &Outline, noses: &[Length]) -> Length {
    match (outline.lowest_eave(), noses.first()) {
        (Some(eave), Some(&nose)) => (eave - nose).max(Length::ZERO),
        _ => Length::ZERO,
    }
}

fn battens(
    field: &Field<Option<raw::Battens>>,
    slope: &str,
    held: Held,
    assumptions: &mut Assumptions,
) -> Option<Option<Battens>> {
    let written = field.optional()?;
    if written.is_none() && held != Held::Hung {
        return Some(None);
    }
    let height = written.and_then(|battens| battens.height.given().copied());
    let width = written.and_then(|battens| battens.width.given().copied());
    let lug = written.and_then(|battens| battens.lug.given().copied());
    Some(Some(Battens {
        height: assumptions.length(of("height of a batten", slope), height, inches_and_64ths(0, 48)),
        width: assumptions.length(of("width of a batten", slope), width, inches_and_64ths(1, 32)),
        lug: assumptions.length(of("batten below a tile's head", slope), lug, Length::ZERO),
    }))
}

fn perimeter(
    field: &Field<Option<raw::Perimeter>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Option<Perimeter>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    let mut edges = Vec::new();
    for edge in written.edges.get()? {
        let kind = *edge.get()?;
        check_edge(kind, edge.at, outline, reader);
        edges.push(kind);
    }
    Some(Some(Perimeter { width: *written.width.get()?, edges }))
}

/// The eaves moved down by the overhang, and the edges beside them run on, have to leave a simple polygon.
fn check_field(slope: &Slope, at: At, reader: &mut Reader<'_>) {
    let field = TiledField::of(slope);
    let outer = field.polygon().rings().iter().take(1).flatten();
    let outer: geo::LineString =
        outer.map(|point| geo::Coord { x: point.u as f64, y: point.v as f64 }).collect();
    let bounds = field.bounds();
    let far = [bounds.left, bounds.lower, bounds.right, bounds.upper];
    let within = far.iter().all(|side| side.abs() <= grid(Length::LIMIT));
    if !within || !geo::Polygon::new(outer, Vec::new()).is_valid() {
        let message =
            "with the eaves moved down by the overhang, the outline crosses itself or goes beyond 10 km";
        let help = "look at the overhang, and at the edges that are called eaves";
        reader.report(at, Code::OverhangTooFar, message, help);
    }
}

/// The geometry is made for openings of 1 m each way at most, with the least web round them.
pub(crate) fn check_openings(slope: &Slope, practice: &Practice, reader: &mut Reader<'_>, at: At) {
    let most = grid(Length::from_nm(1_000_000_000) - practice.least_web);
    let of_posts = slope.posts.iter().map(|post| &*post.assembly);
    let of_rails = slope.arrays.iter().filter_map(|array| Some(&*array.rails.as_ref()?.assembly));
    let assemblies: BTreeMap<&str, &Assembly> =
        of_posts.chain(of_rails).map(|assembly| (assembly.name.as_str(), assembly)).collect();
    for (name, assembly) in assemblies {
        let opening = opening_of(assembly, slope).ellipse;
        if opening.a.max(opening.b) <= most {
            continue;
        }
        let message = format!(
            "the opening for {} reaches more than 1 m from its centre, with the least web",
            quoted(name)
        );
        let help = "look at the post's diameter, its clearance and the pitch";
        reader.report(at, Code::OpeningTooLarge, message, help);
    }
}
