//! The cheapest posts along a rail: a shortest path over what they may stand on, from left to right.
use crate::geometry::grid;

use crate::layout::objective::Score;
use crate::layout::rail::{Rail, Standing};

/// The cheapest posts of a rail from one first to one last, both counted in a list of [`Standing`].
#[derive(Clone, Copy, Debug)]
pub(crate) struct Best {
    /// Where the first and the last stand along the eave.
    pub(crate) first: i64,
    pub(crate) last: i64,
    /// Their places in the list.
    ends: (usize, usize),
    pub(crate) score: Score,
}

impl Rail<'_> {
    /// The posts that may stand on the rail at a height, from left to right, where it is their rafters' turn.
    pub(crate) fn standing(&self, v: i64, phase: usize) -> Vec<Standing> {
        self.standing_in(phase, |footing| {
            let span = self.span_at(footing, v)?;
            Some((self.u_at(footing, v), self.score(footing, span, v)))
        })
    }

    /// The same between two heights: what may stand all the way, at the lower of its costs at both ends.
    pub(crate) fn standing_between(&self, low: i64, high: i64, phase: usize) -> Vec<Standing> {
        let may_rise = self.may_rise();
        self.standing_in(phase, |footing| {
            let span = self.span_at(footing, high).filter(|span| span.from <= low)?;
            let at_top = self.score(footing, span, high);
            let score = if may_rise { at_top.min(self.score(footing, span, low)) } else { at_top };
            Some((self.u_at(footing, high), score))
        })
    }

    fn standing_in(&self, phase: usize, at: impl Fn(usize) -> Option<(i64, Score)>) -> Vec<Standing> {
        let turns = (0..self.feet.len()).filter(|&footing| self.has_turn(footing, phase));
        let mut standing: Vec<Standing> = turns
            .filter_map(|footing| {
                let (u, score) = at(footing)?;
                Some(Standing { footing, u, score, fixed: self.is_fixed(footing) })
            })
            .collect();
        standing.sort_by_key(|post| post.u);
        standing
    }

    /// How far a rail at a height may run on from `from` to `to` without a post between: as the rails, and the zones
    /// that it meets, allow.
    fn greatest_span(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_span).fold(self.rails.greatest_span, Ord::min);
        grid(least)
    }

    /// How far it may run on beyond its last post.
    pub(crate) fn greatest_overhang(&self, from: i64, to: i64, v: i64) -> i64 {
        let zones = self.rails.zones.iter().filter(|zone| zone.meets(from, to, v));
        let least = zones.map(|zone| zone.greatest_overhang).fold(self.rails.greatest_overhang, Ord::min);
        grid(least)
    }

    /// From the post at place `first` of a list to each other, the cheapest way and the post before; `None` where there
    /// is no way.
    fn ways_from(&self, first: usize, standing: &[Standing], v: i64) -> Vec<Option<(Score, usize)>> {
        let least = grid(self.rails.least_distance);
        let most = grid(self.rails.greatest_span);
        let mut ways: Vec<Option<(Score, usize)>> = vec![None; standing.len()];
        ways[first] = Some((standing[first].score, first));
        for to in first + 1..standing.len() {
            let there = standing[to];
            let mut best: Option<(Score, usize)> = None;
            for from in (first..to).rev() {
                let (here, way) = (standing[from], there.u - standing[from].u);
                if way > most {
                    break;
                }
                let fits = way >= least && way > 0 && way <= self.greatest_span(here.u, there.u, v);
                if let Some((score, _)) = ways[from].filter(|_| fits) {
                    let score = score + there.score;
                    if best.is_none_or(|(least, _)| score < least) {
                        best = Some((score, from));
                    }
                }
                // A fixed post is never passed by.
                if here.fixed {
                    break;
                }
            }
            ways[to] = best;
        }
        ways
    }

    /// The cheapest posts from every first to every last that the array's shift allows; `ends` is how far left and
    /// right the rail's left end may be, `long` how long it is.
    pub(crate) fn best(&self, standing: &[Standing], v: i64, ends: (i64, i64), long: i64) -> Vec<Best> {
        let overhang = grid(self.rails.greatest_overhang);
        let first_fixed = standing.iter().position(|post| post.fixed).unwrap_or(standing.len());
        let last_fixed = standing.iter().rposition(|post| post.fixed).unwrap_or(0);
        let firsts = standing.iter().enumerate().take(first_fixed.saturating_add(1));
        let firsts = firsts.filter(|(_, post)| (ends.0..=ends.1 + overhang).contains(&post.u));
        let mut found = Vec::new();
        for (first, from) in firsts {
            let ways = self.ways_from(first, standing, v);
            let lasts = ways.iter().enumerate().skip(last_fixed.max(first + 1));
            let lasts = lasts
                .filter(|&(last, _)| (ends.0 + long - overhang..=ends.1 + long).contains(&standing[last].u));
            found.extend(lasts.filter_map(|(last, way)| {
                way.map(|(score, _)| Best {
                    first: from.u,
                    last: standing[last].u,
                    ends: (first, last),
                    score,
                })
            }));
        }
        found
    }

    /// Whether posts from `first` to `last` carry the rail with its left end at `left`.
    pub(crate) fn carries(&self, best: &Best, left: i64, long: i64, v: i64) -> bool {
        self.carries_from_to(best.first, best.last, left, long, v)
    }

    /// The same of posts that stand at `first` and `last` along the eave.
    pub(crate) fn carries_from_to(&self, first: i64, last: i64, left: i64, long: i64, v: i64) -> bool {
        let right = left + long;
        let (before, after) = (first - left, right - last);
        before >= 0
            && after >= 0
            && before <= self.greatest_overhang(left, first, v)
            && after <= self.greatest_overhang(last, right, v)
    }

    /// Whether posts on these feet carry the rail at another height, each within the spans and the least distance.
    pub(crate) fn holds(&self, posts: &[Standing], v: i64, left: i64, long: i64) -> bool {
        let us: Vec<i64> = posts.iter().map(|post| self.u_at(post.footing, v)).collect();
        let ways = us.windows(2).all(|pair| {
            let way = pair[1] - pair[0];
            way > 0
                && way >= grid(self.rails.least_distance)
                && way <= self.greatest_span(pair[0], pair[1], v)
        });
        let (Some(first), Some(last)) = (us.first(), us.last()) else { return false };
        ways && self.carries_from_to(*first, *last, left, long, v)
    }

    /// The posts themselves, from the first to the last; `standing` is the list that `best` was found in.
    pub(crate) fn posts(&self, standing: &[Standing], v: i64, best: &Best) -> Vec<Standing> {
        let (first, last) = best.ends;
        let ways = self.ways_from(first, standing, v);
        let mut posts = vec![standing[last]];
        let mut at = last;
        while at != first {
            let Some((_, before)) = ways[at] else { return Vec::new() };
            at = before;
            posts.push(standing[at]);
        }
        posts.reverse();
        posts
    }

    fn is_fixed(&self, footing: usize) -> bool {
        self.feet[footing].foot.number().is_none()
    }
}
