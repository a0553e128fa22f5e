//! The takeoff of one slope.
use super::cut_row::cut_row;
use super::findings::{course_findings, post_findings, posts_at_one_point};
use super::post_row::{Context, post_row};
use super::{ArrayTakeoff, Course, Fit, PlaceTakeoff, SlopeTakeoff};
use crate::cuts::{cuts_of, cuts_of_each, openings_of};
use crate::deck::{
    Method, Taken, bands_that_meet, battens, deck_area, flashings_that_meet, head_lap, hidden, patches,
    patches_without_lap_line, set_tiles, taken_up, three_course, tile_work, trim, work_zone,
};
use crate::geometry::{Ellipse, Point, Rect, grid, whole};
use crate::model::{Array, Georeference, Job, PostId, Problem, Slope};
use crate::relocation::{Crowd, Neighbours};
use crate::roof::{Frame, Part, PlaneFit, Site};
use crate::units::{Length, RealLength};

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
    let cuts_of_post = cuts_of_each(&cuts, posts.len());
    let bounds: Vec<Rect> = ellipses.iter().map(Ellipse::bounds).collect();
    let context = Context {
        site: &site,
        display: job.display,
        openings: &openings,
        ellipses: &ellipses,
        neighbours: Neighbours::of(&ellipses),
        crowd: Crowd::new(&cuts, &cuts_of_post, &bounds, grid(site.practice.least_web)),
        methods: &methods,
        patches: &patched,
        cuts_of_post: &cuts_of_post,
        cuts: &cuts,
        frame: frame.as_ref().map(|(frame, _)| *frame),
    };
    let rows: Vec<_> = (0..posts.len()).map(|i| post_row(&context, i)).collect();

    let path = format!("/slopes/{place}");
    let mut findings: Vec<Problem> = course_findings(&site, job.display, &path).into_iter().collect();
    findings.extend(patches_without_lap_line(posts, &methods));
    findings.extend(posts_at_one_point(posts));
    findings.extend(flashings_that_meet(posts));
    findings.extend(bands_that_meet(&site, &methods, &patched));
    findings.extend(set_tiles(&site, &taken, &path));
    for (post, row) in posts.iter().zip(&rows) {
        findings.extend(post_findings(&site, job.display, post, row));
    }

    let takeoff = SlopeTakeoff {
        name: slope.name.clone(),
        pitch: slope.pitch,
        outline: site.outline.clone(),
        edges: slope.edges.clone(),
        field: site.field.polygon().clone(),
        place: frame.map(|(_, place)| place),
        tile: slope.tile.clone(),
        courses: courses(&site),
        lap_lines: lap_lines(&site),
        rafters: slope.rafters.iter().flat_map(|rafters| &rafters.lines).copied().collect(),
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

fn courses(site: &Site) -> Vec<Course> {
    let noses = site.grid.noses();
    (0..site.grid.courses())
        .map(|k| Course {
            nose: whole(noses[k as usize]),
            exposure: noses.get(k as usize + 1).map(|next| whole(next - noses[k as usize])),
            head_lap: head_lap(&site.grid, k).map(whole),
            joint: whole(site.grid.first_joint_from_zero(k)),
            first_column: site.grid.first_column(k, site.field.bounds()),
        })
        .collect()
}

fn array_row(slope: &Slope, array: &Array) -> ArrayTakeoff {
    let posts = slope.posts.iter().enumerate();
    let below = posts.filter(|(_, post)| array.covers(Point::from(post.at)));
    ArrayTakeoff { array: array.clone(), posts: below.map(|(place, _)| PostId::new(place)).collect() }
}

fn lap_lines(site: &Site) -> Vec<Length> {
    let bounds = site.outline.bounds();
    site.laps.between(bounds.lower, bounds.upper - 1).map(whole).collect()
}

/// The slope's frame in the world, and what is said about it.
fn frame(slope: &Slope) -> Option<(Frame, PlaceTakeoff)> {
    match slope.place.as_ref()? {
        Georeference::Given { origin, azimuth_deg } => {
            let pitch_deg = slope.pitch.degrees();
            let place = PlaceTakeoff {
                origin: origin.map(RealLength::from),
                azimuth_deg: *azimuth_deg,
                pitch_deg,
                fit: None,
            };
            Some((Frame::new(*origin, *azimuth_deg, pitch_deg), place))
        }
        Georeference::Surveyed(points) => {
            let fit = PlaneFit::to(points).ok()?;
            let place = PlaceTakeoff {
                origin: fit.origin_mm.map(RealLength::from_mm),
                azimuth_deg: fit.azimuth_deg,
                pitch_deg: fit.pitch_deg,
                fit: Some(Fit {
                    rms: RealLength::from_mm(fit.rms_mm),
                    greatest: RealLength::from_mm(fit.greatest_mm),
                }),
            };
            Some((fit.frame(), place))
        }
    }
}
