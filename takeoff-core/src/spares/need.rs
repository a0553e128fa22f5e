//! From the tiles handled to the spares to buy.
use super::distribution::{CountError, Distribution};
use schemars::JsonSchema;
use serde::Serialize;

/// How many tiles of one kind are handled, each in the first class that holds for it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Handled {
    /// Left without a sound piece: made up from new tiles, no trial.
    pub severed: u64,
    /// Given a hole, a notch or a cut corner.
    pub cut: u64,
    /// Taken up and laid back.
    pub removed: u64,
    /// Lifted, not taken up.
    pub loosened: u64,
    /// Walked on.
    pub walked: u64,
}

/// The probability that a tile breaks, by class. An assumption: every report prints it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Breakage {
    /// Of a tile that is cut; at least 0 and less than 1.
    pub cut: f64,
    /// Of a tile that is taken up and laid back; from 0 to 1, like those below.
    pub removed: f64,
    /// Of a tile that is loosened.
    pub loosened: f64,
    /// Of a tile that is walked on.
    pub walked: f64,
    /// Whether a spare for a cut tile is cut too and may break in its turn.
    pub recut: bool,
}

/// What the job says about its spares beside the counts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Terms {
    /// The probability, above 0 and below 1, with which the spares are to be enough.
    pub service_level: f64,
    /// New tiles that the piece for one severed tile is made up from; 2 as a rule.
    pub pieces_for_severed: u64,
    /// Tiles of this kind already on hand.
    pub on_hand: u64,
}

/// The spares of one tile kind, and how they came about.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Spares {
    /// Spares that breakage does not exceed, with the service level's probability.
    pub used_at_level: u64,
    /// New tiles for the severed ones.
    pub for_severed: u64,
    /// Tiles already on hand.
    pub on_hand: u64,
    /// Tiles to buy: `used_at_level + for_severed − on_hand`, never below 0.
    pub spares: u64,
    /// The mean number of spares that breakage uses; pieces for severed tiles not counted.
    pub expected: f64,
    /// The probability that the tiles bought and on hand are not enough.
    pub chance_short: f64,
    /// The same for a few tiles fewer or more.
    pub alternatives: Vec<Alternative>,
    /// The distribution of the spares that breakage uses.
    #[serde(skip)]
    pub distribution: Distribution,
}

/// Another number of tiles that could be bought.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Alternative {
    /// Tiles bought.
    pub spares: u64,
    /// The probability that these and the tiles on hand are not enough.
    pub chance_short: f64,
}

/// How far the alternatives reach to either side of the number to buy.
const REACH: u64 = 2;

/// The distribution of the spares that breakage uses: the sum over the classes, each tile breaking
/// independently of all others.
///
/// Removed, loosened and walked tiles break or not, once: binomial. A spare for a cut tile is cut
/// too, so that the cut tiles use as many spares as fail before the last is whole: negative
/// binomial, or else, without recutting, binomial as well. Severed tiles are no trial.
///
/// # Errors
///
/// Those of [`Distribution::binomial`] and [`Distribution::failures_before`].
pub fn used(handled: &Handled, breakage: &Breakage) -> Result<Distribution, CountError> {
    let cut = if breakage.recut {
        Distribution::failures_before(handled.cut, breakage.cut)?
    } else {
        Distribution::binomial(handled.cut, breakage.cut)?
    };
    let once = [
        (handled.removed, breakage.removed),
        (handled.loosened, breakage.loosened),
        (handled.walked, breakage.walked),
    ];
    once.into_iter().try_fold(cut, |sum, (n, p)| Ok(sum.convolve(&Distribution::binomial(n, p)?)))
}

/// The spares of one tile kind: the least `s` with `P(X ≤ s) ≥ service level`, where `X` is the
/// number of spares [`used`], plus the pieces for severed tiles, less the tiles on hand, never
/// below 0.
///
/// # Errors
///
/// A breakage is no probability, or the counts are too large for an exact distribution.
///
/// # Example
///
/// Ten tiles are taken up, one in ten breaks. None breaks with 0.9^10 = 0.349, one with
/// 10 · 0.1 · 0.9^9 = 0.387, two with 45 · 0.01 · 0.9^8 = 0.194: two spares are enough with 0.930.
/// One more tile is severed and takes two new ones; one tile is on hand.
///
/// ```
/// use takeoff_core::spares::{Breakage, Handled, Terms, spares};
/// let handled = Handled { removed: 10, severed: 1, ..Handled::default() };
/// let breakage = Breakage { cut: 0.1, removed: 0.1, loosened: 0.0, walked: 0.0, recut: true };
/// let terms = Terms { service_level: 0.9, pieces_for_severed: 2, on_hand: 1 };
/// let spares = spares(&handled, &breakage, &terms)?;
/// assert_eq!(spares.used_at_level, 2);
/// assert_eq!(spares.spares, 2 + 2 - 1);
/// assert!((spares.chance_short - (1.0 - 0.930)).abs() < 0.001);
/// # Ok::<(), takeoff_core::spares::CountError>(())
/// ```
pub fn spares(handled: &Handled, breakage: &Breakage, terms: &Terms) -> Result<Spares, CountError> {
    let distribution = used(handled, breakage)?;
    let for_severed = handled.severed.checked_mul(terms.pieces_for_severed).ok_or(CountError::TooLarge)?;
    let used_at_level = distribution.quantile(terms.service_level);
    let need = used_at_level.checked_add(for_severed).ok_or(CountError::TooLarge)?;
    let spares = need.saturating_sub(terms.on_hand);

    let chance_short = |bought: u64| match bought.saturating_add(terms.on_hand).checked_sub(for_severed) {
        Some(left_for_breakage) => distribution.chance_above(left_for_breakage),
        None => 1.0,
    };
    let around = spares.saturating_sub(REACH)..=spares.saturating_add(REACH);
    Ok(Spares {
        used_at_level,
        for_severed,
        on_hand: terms.on_hand,
        spares,
        expected: distribution.mean(),
        chance_short: chance_short(spares),
        alternatives: around
            .map(|spares| Alternative { spares, chance_short: chance_short(spares) })
            .collect(),
        distribution,
    })
}
