//! Which rafter a post stands on, or in which bay.
use super::array::Laid;
use super::codes::RAFTER;
use crate::model::{Post, Problem, Rafters};

/// What a post stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stand {
    /// A rafter, counted from 0 on the left.
    Rafter(usize),
    /// A board in the middle of the bay on the right of that rafter.
    Bay(usize),
}

impl Stand {
    /// What a post stands on; `None` where it is neither on a centre line nor in the middle of a bay.
    ///
    /// A bay is what lies between two rafters that do not touch: a board is put in there, and its middle is out of reach
    /// of lags into either.
    pub(super) fn of(post: &Post, rafters: &Rafters) -> Option<Stand> {
        let (u, v) = (post.at.u.nm(), post.at.v);
        let centres: Vec<i64> = (0..rafters.lines.len()).map(|i| rafters.centre(i, v).nm()).collect();
        if let Some(rafter) = centres.iter().position(|&centre| centre == u) {
            return Some(Stand::Rafter(rafter));
        }
        let is_middle =
            |pair: &[i64]| pair[1] - pair[0] > rafters.width.nm() && u == halved(pair[0] + pair[1]);
        centres.windows(2).position(is_middle).map(Stand::Bay)
    }

    /// The number that counts for stagger.
    pub(super) fn number(self) -> usize {
        match self {
            Stand::Rafter(number) | Stand::Bay(number) => number,
        }
    }
}

/// Half of a whole number, half away from zero.
fn halved(sum: i64) -> i64 {
    (sum.abs() + 1) / 2 * sum.signum()
}

impl Laid<'_> {
    /// A post stands on a rafter or, where the rails may have it, in the middle of a bay.
    pub(super) fn wood(&self, post: &Post) -> Option<Problem> {
        let stand = self.slope.rafters.as_ref().and_then(|rafters| Stand::of(post, rafters));
        let (what, help) = match stand {
            Some(Stand::Rafter(_)) => return None,
            Some(Stand::Bay(_)) if self.rails.blocking => return None,
            Some(Stand::Bay(bay)) => (
                format!("in the bay right of rafter {}, and blocking is not allowed", bay + 1),
                "allow `blocking`",
            ),
            None if self.rails.blocking => (
                "on no rafter's centre line and not in the middle of a bay".to_owned(),
                "move it along the eave",
            ),
            None => ("on no rafter's centre line".to_owned(), "move it along the eave"),
        };
        let [u, v] = [post.at.u, post.at.v].map(|length| self.show(length));
        Some(self.error(RAFTER, format!("`{}` at {u}, {v} stands {what}", post.name), help))
    }
}
