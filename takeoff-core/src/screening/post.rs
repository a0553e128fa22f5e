//! The screening of one post.
use super::distances::distances;
use super::withdrawal::inches;
use super::wood::Wood;
use super::{PostScreening, pilot_shares, withdrawal_lbf_per_in};
use crate::geometry::{Rect, to_mm};
use crate::model::{Lags, Loads, Post, PostId};
use crate::units::{Area, Force, Length, RealLength};

/// What is known of a post before it is screened.
pub(super) struct Ground<'a> {
    /// The array above it, by its place in the slope's list.
    pub(super) array: usize,
    pub(super) post: &'a Post,
    pub(super) lags: &'a Lags,
    /// Thickness of the sheathing.
    pub(super) sheathing: Length,
    pub(super) wood: Wood,
    /// The part of the array that it carries.
    pub(super) tributary: Rect,
}

/// Weighs the uplift on a post against what its lags hold.
///
/// # Formula
///
/// Uplift `(0.6 p − 0.6 D) · A`, not below 0, with the job's factors in place of 0.6; resistance
/// `W · C_D · C_M · C_t · thread · count` ([`withdrawal_lbf_per_in`], [`Lags::thread_in`]). Their ratio is at most 1
/// where the lags hold by this measure.
///
/// # Source
///
/// ASCE 7-16, 2.4.1: 0.6 D + 0.6 W (uplift is W); NDS 2018, 12.2.1 and table 11.3.1.
pub(super) fn screen((slope, post): (usize, PostId), ground: &Ground, loads: &Loads) -> PostScreening {
    let Ground { lags, wood, tributary, .. } = ground;
    let area =
        Area::from_mm2(to_mm(tributary.right - tributary.left) * to_mm(tributary.upper - tributary.lower));
    let wind = loads.wind.uplift(area);
    let net_pa = loads.uplift_factor * wind.pressure.pa() - loads.dead_factor * loads.dead_load.pa();
    let uplift = Force::from_n((net_pa * area.mm2() / 1e6).max(0.0));

    let thread = lags.thread_in(lags.shim + ground.sheathing, wood.depth);
    let withdrawal = withdrawal_lbf_per_in(wood.specific_gravity, lags.diameter);
    let each = withdrawal * loads.c_d * loads.c_m * loads.c_t * inches(thread.length);
    let resistance = Force::from_lbf(each * f64::from(lags.count));
    let ratio = if uplift.n() == 0.0 {
        Some(0.0)
    } else {
        (resistance.n() > 0.0).then(|| uplift.n() / resistance.n())
    };
    PostScreening {
        slope,
        post,
        array: ground.array,
        tributary: *tributary,
        tributary_area: area,
        wind,
        uplift,
        member: wood.member,
        specific_gravity: wood.specific_gravity,
        lags: lags.count,
        diameter: lags.diameter,
        thread,
        withdrawal_n_per_mm: Force::from_lbf(withdrawal).n() / Length::INCH.mm(),
        resistance,
        ratio,
        pilot: pilot_shares(wood.specific_gravity)
            .map(|share| RealLength::from_mm(share * lags.diameter.mm())),
        distances: distances(lags, ground.post.assembly.lag_edge_distance, wood.member, wood.room),
    }
}
