//! The takeoff of one slope.
use super::cut_row::cut_row;
use super::findings::{course_findings, post_findings};
use super::post_row::{Context, post_row};
use super::{ArrayTakeoff, Columns, Course, PlaceTakeoff, SlopeTakeoff};
use crate::cuts::{cuts_of, openings_of};
use crate::deck::{
    Method, Taken, bands_that_meet, battens, deck_area, flashings_that_meet, head_lap, hidden, patches,
    patches_without_lap_line, set_tiles, support, taken_up, three_course, tile_work, trim, work_zone,
};
use crate::geometry::{Ellipse, Point, Polygon, to_mm};
use crate::model::{Array, Georeference, Job, Pieces, Problem, Slope};
use crate::relocation::Neighbours;
use crate::roof::{Frame, Part, PlaneFit, Site};

/// A slope worked through.
pub(crate) struct Worked {
    pub(crate) takeoff: SlopeTakeoff,
    /// The tiles handled, for the spares.
    pub(crate) taken: Vec<Taken>,
    /// How many of each part the arrays hide.
    pub(crate) hidden: Vec<(Part, u64)>,
    pub(crate) findings: Vec<Problem>,
}

/// Works through the slope at `place` in the job's list.
pub(crate) fn work(job: &Job, place: usize, slope: &Slope) -> Worked {
    let site = Site::of(slope, &job.practice);
    let posts = &slope.posts;
    let openings = openings_of(slope);
    let ellipses: Vec<Ellipse> =
        posts.iter().zip(&openings).map(|(post, opening)| opening.for_post(post)).collect();
    let cuts = cuts_of(&site, &ellipses);

    let methods: Vec<Method> =
        posts.iter().map(|post| Method::at(&site, &post.assembly, Point::from(post.at))).collect();
    let patched = patches(&site, &methods);
    let over = |work: fn(&Site, &_, &_) -> _| -> Vec<_> {
        posts.iter().zip(&methods).map(|(post, method)| work(&site, post, method)).collect()
    };
    let deck_areas = over(deck_area);
    let zones = over(work_zone);
    let taken = taken_up(&site, &zones, &ellipses, &cuts);

    let frame = frame(slope);
    let context = Context {
        site: &site,
        display: job.display,
        openings: &openings,
        ellipses: &ellipses,
        neighbours: Neighbours::of(&ellipses),
        methods: &methods,
        patches: &patched,
        cuts_of_post: cuts_of_post(&cuts, posts.len()),
        cuts: &cuts,
        frame: frame.as_ref().map(|(frame, _)| *frame),
    };
    let rows: Vec<_> = (0..posts.len()).map(|i| post_row(&context, i)).collect();

    let path = format!("/slopes/{place}");
    let mut findings: Vec<Problem> = course_findings(&site, job.display, &path).into_iter().collect();
    findings.extend(patches_without_lap_line(posts, &methods));
    findings.extend(flashings_that_meet(posts));
    findings.extend(bands_that_meet(&site, &methods, &patched));
    findings.extend(set_tiles(&site, &taken, &path));
    for (post, row) in posts.iter().zip(&rows) {
        findings.extend(post_findings(&site, job.display, post, row));
    }

    let outline = &site.outline;
    let takeoff = SlopeTakeoff {
        name: slope.name.clone(),
        pitch: slope.pitch.to_string(),
        slope_factor: slope.pitch.slope_factor(),
        area_mm2: outline.area_mm2(),
        outline_mm: rings_mm(outline),
        edges: slope.edges.clone(),
        field_mm: rings_mm(site.field.polygon()),
        place: frame.map(|(_, place)| place),
        courses: courses(&site),
        columns: columns(&site),
        lap_lines_mm: lap_lines_mm(&site),
        rafters_mm: slope
            .rafters
            .iter()
            .flat_map(|rafters| &rafters.lines)
            .map(|line| [line.lower.mm(), line.upper.mm()])
            .collect(),
        blocking: posts.iter().filter_map(|post| support(&site, post).1).collect(),
        posts: rows,
        arrays: slope.arrays.iter().map(|array| array_row(slope, array)).collect(),
        cuts: cuts.iter().map(|cut| cut_row(&site, cut)).collect(),
        tiles: tile_work(&site, &taken),
        patches: patched.patches,
        three_course: three_course(&site, &methods),
        battens: battens(&site, &deck_areas),
        trim: trim(&site.field, &zones),
    };
    let hidden = [Part::Tile, Part::Pan, Part::Cover].map(|part| (part, hidden(&site, &taken, part)));
    Worked { takeoff, taken, hidden: hidden.to_vec(), findings }
}

/// The cuts of each post, as places in the slope's list.
fn cuts_of_post(cuts: &[crate::cuts::SlopeCut], posts: usize) -> Vec<Vec<usize>> {
    let mut of_post = vec![Vec::new(); posts];
    for (place, cut) in cuts.iter().enumerate() {
        cut.posts.iter().for_each(|&post| of_post[post].push(place));
    }
    of_post
}

fn rings_mm(polygon: &Polygon) -> Vec<Vec<[f64; 2]>> {
    polygon.rings().iter().map(|ring| ring.iter().map(|p| p.mm()).collect()).collect()
}

fn courses(site: &Site) -> Vec<Course> {
    let noses = site.grid.noses();
    (0..site.grid.courses())
        .map(|k| Course {
            course: u64::from(k) + 1,
            nose_mm: to_mm(noses[k as usize]),
            exposure_mm: noses.get(k as usize + 1).map(|next| to_mm(next - noses[k as usize])),
            head_lap_mm: head_lap(&site.grid, k).map(to_mm),
            joint_mm: to_mm(site.grid.first_joint_from_zero(k)),
        })
        .collect()
}

fn columns(site: &Site) -> Columns {
    let tile = &site.slope.tile;
    let widths_mm = match tile.pieces {
        Pieces::One { width, .. } => vec![width.mm()],
        Pieces::PanAndCover { pan_width, cover_width, .. } => vec![pan_width.mm(), cover_width.mm()],
    };
    Columns { cover_mm: tile.cover.mm(), widths_mm, length_mm: tile.length.mm() }
}

fn array_row(slope: &Slope, array: &Array) -> ArrayTakeoff {
    let below = slope.posts.iter().filter(|post| array.covers(Point::from(post.at)));
    ArrayTakeoff {
        name: array.name.clone(),
        bounds_mm: array.bounds().mm(),
        columns: array.columns.into(),
        rows: array.rows.into(),
        module_width_mm: array.module_width.mm(),
        module_height_mm: array.module_height.mm(),
        column_gap_mm: array.column_gap.mm(),
        row_gap_mm: array.row_gap.mm(),
        posts: below.map(|post| post.name.clone()).collect(),
    }
}

fn lap_lines_mm(site: &Site) -> Vec<f64> {
    let bounds = site.outline.bounds();
    site.laps.between(bounds.lower, bounds.upper - 1).map(to_mm).collect()
}

/// The slope's frame in the world, and what is said about it.
fn frame(slope: &Slope) -> Option<(Frame, PlaceTakeoff)> {
    match slope.place.as_ref()? {
        Georeference::Given { origin, azimuth_deg } => {
            let pitch_deg = slope.pitch.degrees();
            let place = PlaceTakeoff {
                origin_mm: origin.map(|length| length.mm()),
                azimuth_deg: *azimuth_deg,
                pitch_deg,
                rms_mm: None,
                greatest_mm: None,
            };
            Some((Frame::new(*origin, *azimuth_deg, pitch_deg), place))
        }
        Georeference::Surveyed(points) => {
            let fit = PlaneFit::to(points).ok()?;
            let place = PlaceTakeoff {
                origin_mm: fit.origin_mm,
                azimuth_deg: fit.azimuth_deg,
                pitch_deg: fit.pitch_deg,
                rms_mm: Some(fit.rms_mm),
                greatest_mm: Some(fit.greatest_mm),
            };
            Some((fit.frame(), place))
        }
    }
}
