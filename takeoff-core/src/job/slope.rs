//! One slope: whether what is said of it fits together.
use geo::Validation;

use super::codes::Code;
use super::courses::{ascending, noses};
use super::outline::{Outline, outline};
use super::posts::posts;
use super::practice::{Assumptions, inches, of};
use super::raw;
use super::reader::{Field, Reader, quoted};
use super::setback::{check_edge, check_posts, setbacks};
use super::tree::At;
use super::validate::Named;
use super::{
    Assembly, Battens, Display, Held, LapLines, Perimeter, Place, Practice, Rafters, Slope, Tile,
    Underlayment,
};
use crate::cuts::opening_of;
use crate::geometry::{self, grid};
use crate::slope::Field as TiledField;
use crate::units::{Length, Pitch};

/// The things that slopes name.
pub(super) struct Catalogue {
    pub(super) tiles: Named<Tile>,
    pub(super) underlayments: Named<Underlayment>,
    pub(super) assemblies: Named<Assembly>,
}

/// The most rafters, or lap lines, of a slope.
const MOST_LINES: usize = 10_000;

pub(super) fn slope(
    field: &Field<raw::Slope>,
    catalogue: &Catalogue,
    practice: &Practice,
    display: Display,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Slope> {
    let written = field.get()?;
    let tile = catalogue.tiles.find(&written.tile, reader);
    let outline = outline(written, reader);
    let noses = noses(&written.courses, outline.as_ref(), tile.as_deref(), display, reader);
    let place = place(&written.place, reader);
    let columns = written.columns.get();
    let (underlayment, lap_lines) =
        sheets(&written.underlayment, outline.as_ref(), &catalogue.underlayments, reader);
    check_pitch(written, underlayment.as_deref(), lap_lines.as_ref(), reader);
    let rafters = rafters(&written.rafters, outline.as_ref(), reader);
    let perimeter = perimeter(&written.perimeter, outline.as_ref(), reader);
    let setbacks = setbacks(&written.setbacks, outline.as_ref(), reader);
    let posts = posts(written, outline.as_ref(), &catalogue.assemblies, reader);
    let hold_flashing = written.setbacks_hold_flashing.given().copied().unwrap_or(false);
    if let (Some(posts), Some(outline)) = (&posts, &outline) {
        check_posts(posts, &setbacks, hold_flashing, outline, display, reader);
    }

    let (name, tile, outline, noses, columns) = (written.name.get()?, tile?, outline?, noses?, columns?);
    let overhang = match written.overhang.given() {
        Some(&overhang) => overhang,
        None => usual_overhang(&outline, &noses),
    };
    let bond = columns.bond.get()?.iter();
    let slope = Slope {
        name: name.clone(),
        pitch: *written.pitch.get()?,
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
        perimeter: perimeter?,
        setbacks,
        setbacks_hold_flashing: hold_flashing,
        walked: written.walked.given().copied().unwrap_or(0).into(),
        posts: posts?.into_iter().map(|(_, post)| post).collect(),
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

/// International Building Code 2018, 1507.3.2 and 1507.3.3: no tile below 2 1/2:12; below 4:12 two layers of
/// underlayment.
fn check_pitch(
    written: &raw::Slope,
    underlayment: Option<&Underlayment>,
    lap_lines: Option<&LapLines>,
    reader: &mut Reader<'_>,
) {
    let Some(pitch) = written.pitch.get() else {
        return;
    };
    let shown = reader.written(written.pitch.at);
    if below(pitch, 2.5) {
        let message = format!("{shown} is below 2 1/2:12, the least slope for tile (IBC 2018, 1507.3.2)");
        let help = "ask how the roof is kept dry, and whether it may be opened at all";
        reader.report(written.pitch.at, Code::LowSlope, message, help);
    } else if let (true, Some(underlayment), Some(lap_lines)) = (below(pitch, 4.0), underlayment, lap_lines)
        && !is_double(underlayment, lap_lines)
    {
        let message = format!(
            "{shown} is below 4:12, where the code asks for two layers of underlayment (IBC 2018, 1507.3.2), and \
             the sheets lap by less than half"
        );
        let help = "look on the roof how the sheets lap, and ask the local code";
        reader.report(written.pitch.at, Code::SingleUnderlayment, message, help);
    }
}

fn below(pitch: &Pitch, rise_in_12: f64) -> bool {
    pitch.tan() * 12.0 < rise_in_12 * (1.0 - 1e-12)
}

/// Whether every place is under two sheets: each laps the one below by half its width or more.
fn is_double(underlayment: &Underlayment, lap_lines: &LapLines) -> bool {
    let step = match lap_lines {
        LapLines::Regular { .. } => underlayment.sheet_width - underlayment.head_lap,
        LapLines::Measured(lines) => {
            lines.windows(2).map(|pair| pair[1] - pair[0]).max().unwrap_or(underlayment.sheet_width)
        }
    };
    step + step <= underlayment.sheet_width
}

fn place(field: &Field<Option<raw::Place>>, reader: &mut Reader<'_>) -> Option<Option<Place>> {
    let Some(written) = field.given() else {
        return (!field.is_given()).then_some(None);
    };
    let used = [written.origin.is_given() || written.azimuth.is_given(), written.points.is_given()];
    if reader.one_way(field.at, used, "`origin` and `azimuth`, or `points`")? == 0 {
        let origin = reader.needed(field.at, "origin", &written.origin);
        let azimuth = reader.needed(field.at, "azimuth", &written.azimuth);
        return Some(Some(Place::Given { origin: *origin?, azimuth_deg: azimuth?.degrees() }));
    }
    let points = written.points.given()?;
    if points.len() < 3 {
        let message = format!("{} surveyed points do not make a plane", points.len());
        reader.report(
            written.points.at,
            Code::TooFewPoints,
            message,
            "survey three points or more, not in one line",
        );
        return None;
    }
    let points: Option<Vec<[Length; 3]>> = points.iter().map(|point| point.get().copied()).collect();
    Some(Some(Place::Surveyed(points?)))
}

fn sheets(
    field: &Field<raw::Sheets>,
    outline: Option<&Outline>,
    underlayments: &Named<Underlayment>,
    reader: &mut Reader<'_>,
) -> (Option<std::sync::Arc<Underlayment>>, Option<LapLines>) {
    let Some(written) = field.get() else {
        return (None, None);
    };
    let underlayment = underlayments.find(&written.kind, reader);
    let used = [written.first_lap_line.is_given(), written.lap_lines.is_given()];
    let lap_lines = match reader.one_way(field.at, used, "`first_lap_line` or `lap_lines`") {
        None => None,
        Some(0) => written.first_lap_line.given().map(|&first| LapLines::Regular { first }),
        Some(_) => {
            let lines = ascending(&written.lap_lines, "lap line", reader);
            lines
                .filter(|lines| few(lines.len() as i128, "lap lines", written.lap_lines.at, reader))
                .map(LapLines::Measured)
        }
    };
    if let (Some(LapLines::Regular { first }), Some(sheet), Some(outline)) =
        (&lap_lines, &underlayment, outline)
    {
        let step = i128::from((sheet.sheet_width - sheet.head_lap).nm());
        let way = i128::from(outline.highest().nm()) - i128::from(first.nm());
        if step > 0 && !few(way / step, "lap lines", field.at, reader) {
            return (underlayment, None);
        }
    }
    (underlayment, lap_lines)
}

fn few(lines: i128, what: &str, at: At, reader: &mut Reader<'_>) -> bool {
    let few = lines <= MOST_LINES as i128;
    if !few {
        let message = format!("{lines} {what} are more than {MOST_LINES} on one slope");
        reader.report(at, Code::TooMany, message, "look at the spacing: is it in another unit?");
    }
    few
}

fn rafters(
    field: &Field<Option<raw::Rafters>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Option<Rafters>> {
    let Some(written) = field.given() else {
        return (!field.is_given()).then_some(None);
    };
    let used = [written.first.is_given() || written.spacing.is_given(), written.at.is_given()];
    let (at, centres) = if reader.one_way(field.at, used, "`first` and `spacing`, or `at`")? == 0 {
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
    let width = *written.width.get()?;
    let tight = centres.windows(2).position(|pair: &[Length]| pair[1] - pair[0] < width);
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
    Some(Some(Rafters { centres, width }))
}

fn battens(
    field: &Field<Option<raw::Battens>>,
    slope: &str,
    held: Held,
    assumptions: &mut Assumptions,
) -> Option<Option<Battens>> {
    if !field.is_given() && held != Held::Hung {
        return Some(None);
    }
    let written = field.given();
    if field.is_given() && written.is_none() {
        return None;
    }
    let height = written.and_then(|battens| battens.height.given().copied());
    let width = written.and_then(|battens| battens.width.given().copied());
    let lug = written.and_then(|battens| battens.lug.given().copied());
    Some(Some(Battens {
        height: assumptions.length(of("height of a batten", slope), height, inches(0, 48)),
        width: assumptions.length(of("width of a batten", slope), width, inches(1, 32)),
        lug: assumptions.length(of("batten below a tile's head", slope), lug, Length::ZERO),
    }))
}

fn perimeter(
    field: &Field<Option<raw::Perimeter>>,
    outline: Option<&Outline>,
    reader: &mut Reader<'_>,
) -> Option<Option<Perimeter>> {
    let Some(written) = field.given() else {
        return (!field.is_given()).then_some(None);
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
    let ring = |ring: &Vec<geometry::Point>| -> geo::LineString {
        ring.iter().map(|point| geo::Coord { x: point.u as f64, y: point.v as f64 }).collect()
    };
    let mut rings = field.polygon().rings().iter().map(ring);
    let outer = rings.next().unwrap_or_else(|| geo::LineString::new(Vec::new()));
    let bounds = field.bounds();
    let far = [bounds.left, bounds.lower, bounds.right, bounds.upper];
    let within = far.iter().all(|side| side.abs() <= grid(Length::LIMIT));
    if !within || !geo::Polygon::new(outer, rings.collect()).is_valid() {
        let message =
            "with the eaves moved down by the overhang, the outline crosses itself or goes beyond 10 km";
        let help = "look at the overhang, and at the edges that are called eaves";
        reader.report(at, Code::OverhangTooFar, message, help);
    }
}

/// The geometry is made for openings of 1 m each way at most, with the least web round them.
fn check_openings(slope: &Slope, practice: &Practice, reader: &mut Reader<'_>, at: At) {
    let mut large: Vec<&str> = slope
        .posts
        .iter()
        .filter(|post| {
            let opening = opening_of(&post.assembly, slope).ellipse;
            opening.a.max(opening.b) > grid(Length::from_nm(1_000_000_000) - practice.least_web)
        })
        .map(|post| post.assembly.name.as_str())
        .collect();
    large.sort_unstable();
    large.dedup();
    for assembly in large {
        let message = format!(
            "the opening for {} on {} reaches more than 1 m from its centre, the least web counted",
            quoted(assembly),
            quoted(&slope.name)
        );
        reader.report(
            at,
            Code::OpeningTooLarge,
            message,
            "look at the post's diameter, its clearance and the pitch",
        );
    }
}
