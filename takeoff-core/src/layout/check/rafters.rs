//! The rafter or bay under a post.
use super::array::LaidArray;
use super::codes::RAFTER;
use crate::model::{Post, Problem, Rafters};
use crate::units::Length;

/// The wood under a post.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wood {
    /// A rafter, counted from 0 on the left.
    Rafter(usize),
    /// A blocking board in the middle of the bay on the right of that rafter.
    Bay(usize),
}

impl Wood {
    /// The wood under a post; `None` if the post is neither on a centre line nor in the middle of a bay.
    ///
    /// A bay is the space between two rafters that do not touch: it has room for a board, and its middle is beyond the reach
    /// of lags into either rafter.
    pub(super) fn under(post: &Post, rafters: &Rafters) -> Option<Wood> {
        let u = post.at.u.nm();
        let centres: Vec<i64> =
            (0..rafters.lines.len()).map(|rafter| centre_nm(rafters, rafter, post.at.v)).collect();
        if let Some(rafter) = centres.iter().position(|&centre| centre == u) {
            return Some(Wood::Rafter(rafter));
        }
        let is_middle = |pair: &[i64]| {
            pair[1] - pair[0] > rafters.width.nm() && u == rounded_quotient((pair[0] + pair[1]).into(), 2)
        };
        centres.windows(2).position(is_middle).map(Wood::Bay)
    }

    /// The number of the rafter for the stagger.
    pub(super) fn rafter(self) -> usize {
        match self {
            Wood::Rafter(number) | Wood::Bay(number) => number,
        }
    }
}

/// The centre line of a rafter at a height, in nanometres: from its lower to its upper place, in proportion to the height.
fn centre_nm(rafters: &Rafters, rafter: usize, v: Length) -> i64 {
    let line = &rafters.lines[rafter];
    let lean = i128::from((line.upper - line.lower).nm());
    let (up, whole) = ((v - rafters.low).nm(), (rafters.high - rafters.low).nm().max(1));
    line.lower.nm() + rounded_quotient(lean * i128::from(up), whole.into())
}

/// A quotient to the nearest whole number, half away from zero; the divisor is above 0.
fn rounded_quotient(dividend: i128, divisor: i128) -> i64 {
    let (quotient, rest) = (dividend / divisor, dividend % divisor);
    let is_half_or_more = 2 * rest.abs() >= divisor;
    (quotient + if is_half_or_more { dividend.signum() } else { 0 }) as i64
}

impl LaidArray<'_> {
    /// A post is on a rafter or, if the rails allow it, in the middle of a bay.
    pub(super) fn wood(&self, post: &Post) -> Option<Problem> {
        let wood = self.slope.rafters.as_ref().and_then(|rafters| Wood::under(post, rafters));
        let (what, help) = match wood {
            Some(Wood::Rafter(_)) => return None,
            Some(Wood::Bay(_)) if self.rails.blocking => return None,
            Some(Wood::Bay(bay)) => (
                format!("in the bay right of rafter {}, without blocking allowed", bay + 1),
                "allow `blocking`",
            ),
            None if self.rails.blocking => (
                "on no rafter's centre line and not in the middle of a bay".to_owned(),
                "move it along the eave",
            ),
            None => ("on no rafter's centre line".to_owned(), "move it along the eave"),
        };
        let [u, v] = [post.at.u, post.at.v].map(|length| self.show(length));
        Some(self.problem(RAFTER, format!("`{}` at {u}, {v} stands {what}", post.name), help))
    }
}
