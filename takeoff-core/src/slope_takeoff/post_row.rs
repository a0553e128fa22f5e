//! What the takeoff says about one post.
use super::{Nearest, PostTakeoff};
use crate::cuts::{Opening, SlopeCut};
use crate::deck::{Method, Patches, TopFlashingCheck, deck_work, height_stack, support};
use crate::geometry::{Ellipse, Point, whole};
use crate::model::Display;
use crate::relocation::{Crowd, Mover, Neighbours, Others, Tally, margins, nearest};
use crate::roof::{Frame, Site, TilePiece};
use crate::units::{Length, RealLength};

/// All that the rows of a slope's posts are made of.
pub(super) struct Context<'a> {
    pub(super) site: &'a Site<'a>,
    pub(super) display: Display,
    pub(super) openings: &'a [Opening],
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

    PostTakeoff {
        name: post.name.clone(),
        assembly: post.assembly.clone(),
        at: post.at,
        world: context.frame.map(|frame| frame.world(post.at.u, post.at.v).map(RealLength::from_mm)),
        opening: Opening { ellipse: *ellipse, ..context.openings[i] },
        situation: tally.situation(),
        severed: tally.severs(),
        cuts: cuts.iter().map(|cut| which(cut)).collect(),
        margin: margins(&mover, at, &others),
        nearest: better_place(context, &mover, at, &others),
        deck: deck_work(site, post, &context.methods[i], context.patches.of_post[i]),
        top: TopFlashingCheck::at(site, &post.assembly, ellipse),
        height: height_stack(site, post, ellipse),
        support: support(site, post),
    }
}

fn which(cut: &SlopeCut) -> TilePiece {
    TilePiece { tile: cut.judged.tile, piece: cut.judged.footprint.number() }
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
        up: better.up,
        v: whole(better.at.v),
        situation: better.state.situation,
        kinds: mover.kinds(better.at),
        least_margin: margins(mover, better.at, others).least(),
    })
}

/// The exposure of the course at `v`; of the top course, that of the one below it.
fn exposure_at(site: &Site, v: i64) -> Length {
    let noses = site.grid.noses();
    let course = site.grid.course_at(v).map_or(0, |k| k as usize).min(noses.len().saturating_sub(2));
    let exposure = noses.get(course + 1).map_or(site.grid.length(), |next| next - noses[course]);
    Length::from_nm(exposure / 2)
}
