//! What the takeoff says about one post.
use crate::cuts::{Opening as PostOpening, SlopeCut};
use crate::deck::{Method, Patches, TopFlashingCheck, deck_work, height_stack, support};
use crate::geometry::{Ellipse, Point, to_mm};
use crate::job::Display;
use crate::place::{Crowd, Margins, Mover, Neighbours, Others, Tally, margins, nearest};
use crate::slope::{Frame, Site, tile_name};
use crate::units::Length;

use super::{Margin, Nearest, Opening, PostTakeoff, TopCheck};

/// All that the rows of a slope's posts are made of.
pub(super) struct Context<'a> {
    pub(super) site: &'a Site<'a>,
    pub(super) display: Display,
    pub(super) openings: &'a [PostOpening],
    pub(super) ellipses: &'a [Ellipse],
    pub(super) neighbours: Neighbours,
    pub(super) crowd: Crowd<'a>,
    pub(super) methods: &'a [Method],
    pub(super) patches: &'a Patches,
    pub(super) cuts: &'a [SlopeCut],
    /// Of each post, the places of its cuts in the list.
    pub(super) cuts_of_post: &'a [Vec<usize>],
    pub(super) frame: Option<Frame>,
}

/// The row of the post at place `i` of the slope's list.
pub(super) fn post_row(context: &Context, i: usize) -> PostTakeoff {
    let Context { site, ellipses, neighbours, .. } = context;
    let post = &site.slope.posts[i];
    let (at, ellipse) = (Point::from(post.at), &ellipses[i]);
    let cuts: Vec<&SlopeCut> = context.cuts_of_post[i].iter().map(|&cut| &context.cuts[cut]).collect();
    let mut tally = Tally::default();
    cuts.iter().for_each(|cut| tally.add(cut.judged.tile, cut.judged.kind()));

    let mover = Mover {
        site,
        assembly: &post.assembly,
        opening: context.openings[i],
        partners: context.crowd.partners_of(i, neighbours, &ellipse.bounds()),
    };
    let others = Others { neighbours, post: i };
    let patch = context.patches.of_post[i].map(|patch| context.patches.patches[patch].name.clone());

    PostTakeoff {
        name: post.name.clone(),
        assembly: post.assembly.name.clone(),
        u_mm: post.at.u.mm(),
        v_mm: post.at.v.mm(),
        world_mm: context.frame.map(|frame| frame.world(post.at.u, post.at.v)),
        opening: Opening {
            u_mm: to_mm(ellipse.centre.u),
            v_mm: to_mm(ellipse.centre.v),
            half_width_mm: to_mm(ellipse.a),
            half_height_mm: to_mm(ellipse.b),
            least_clearance_mm: context.openings[i].least_clearance_mm,
        },
        situation: tally.situation(),
        severed: tally.severs(),
        cuts: cuts.iter().map(|cut| name_of(site, cut)).collect(),
        margin: shown(&margins(&mover, at, &others)),
        nearest: better_place(context, &mover, at, &others),
        deck: deck_work(site, post, &context.methods[i], patch),
        top: top_check(&TopFlashingCheck::at(site, &post.assembly, ellipse)),
        height: height_stack(site, post, ellipse),
        support: support(site, post).0,
    }
}

/// The name of a cut's tile.
pub(super) fn name_of(site: &Site, cut: &SlopeCut) -> String {
    tile_name(&site.grid, site.field.bounds(), cut.judged.tile, cut.judged.footprint.number())
}

fn shown(margins: &Margins) -> Margin {
    Margin {
        left_mm: to_mm(margins.left),
        right_mm: to_mm(margins.right),
        down_mm: to_mm(margins.down),
        up_mm: to_mm(margins.up),
    }
}

/// The nearest better place, in whole sixteenths of an inch or millimetres as the job is shown, within the job's
/// window or one exposure.
fn better_place(context: &Context, mover: &Mover, at: Point, others: &Others) -> Option<Nearest> {
    let site = context.site;
    let step = match context.display {
        Display::Imperial => Length::SIXTEENTH,
        Display::Metric => Length::MM,
    };
    let window = site.practice.window.unwrap_or_else(|| exposure_at(site, mover.opening_at(at).centre.v));
    let better = nearest(mover, at, step, window, others)?;
    Some(Nearest {
        up_mm: to_mm(better.up),
        v_mm: to_mm(better.at.v),
        situation: better.state.situation,
        kinds: mover.kinds(better.at),
        least_margin_mm: to_mm(margins(mover, better.at, others).least()),
    })
}

/// The exposure of the course at `v`; of the top course, that of the one below it.
fn exposure_at(site: &Site, v: i64) -> Length {
    let noses = site.grid.noses();
    let course = site.grid.course_at(v).map_or(0, |k| k as usize).min(noses.len().saturating_sub(2));
    let exposure = noses.get(course + 1).map_or(site.grid.length(), |next| next - noses[course]);
    Length::from_nm(exposure / 2)
}

fn top_check(check: &TopFlashingCheck) -> TopCheck {
    TopCheck {
        course: check.course.map(|k| u64::from(k) + 1),
        flashing_mm: check.lies.mm(),
        trimmed_mm: to_mm(check.trimmed),
        tuck_mm: check.tuck.map(to_mm),
        tuck_short_mm: to_mm(check.tuck_short),
        side_cover_mm: to_mm(check.side_cover),
        side_short_mm: to_mm(check.side_short),
        passes: check.passes(),
    }
}
