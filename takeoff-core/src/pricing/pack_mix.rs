//! The cheapest packs that cover a need.
use std::cmp::{Ordering, Reverse};

use ethnum::I256;

/// A pack on offer, in whole units of the need and of money.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offer {
    /// Amount in one pack; above 0.
    pub size: i128,
    /// Price of one pack; not below 0.
    pub price: i128,
    /// Least number of packs that is sold.
    pub minimum: u64,
}

/// Number of packs of each offer, in the order of the offers.
pub type Mix = Vec<u64>;

/// Too many mixes to compare them all.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooManyMixes;

/// Most mixes compared for one item: a fraction of a second.
const MOST_MIXES: u64 = 4_000_000;

/// The cheapest mix of packs that holds at least `need`; of equally cheap ones the one with the fewest packs, then
/// with more of the largest, then of the next, and of two packs alike the first. Of each offer there are none, or
/// the minimum and more. Nothing is approximate: the search goes through all mixes and leaves out those that
/// - cost more than a mix found before, even with the rest at the best price for its amount, or
/// - hold so many packs of one offer that a whole number of packs of a better one holds the same: to replace them
///   costs no more (the better one is cheaper for its amount, or as cheap and larger).
///
/// By the second, all but the packs of the best price are few, however large the need is.
///
/// # Errors
///
/// When too many mixes are left, which takes many packs of nearly the same price for their amount whose sizes have
/// no common measure.
///
/// # Example
///
/// 15 pieces in packs of 10 at 9.00, 4 at 4.20 and 1 at 1.50:
///
/// ```
/// use takeoff_core::pricing::{cheapest_mix, Offer};
/// let offers = [(10, 900), (4, 420), (1, 150)].map(|(size, price)| Offer { size, price, minimum: 1 });
/// // 10 + 4 + 1 is 14.70; two of 10 are 18.00, four of 4 are 16.80.
/// assert_eq!(cheapest_mix(&offers, 15), Ok(vec![1, 1, 1]));
/// // Where the single ones are sold from six up only, 10 + 6 · 1 is 18.00 too, and four of 4 win.
/// let offers = [offers[0], offers[1], Offer { minimum: 6, ..offers[2] }];
/// assert_eq!(cheapest_mix(&offers, 15), Ok(vec![0, 4, 0]));
/// ```
pub fn cheapest_mix(offers: &[Offer], need: i128) -> Result<Mix, TooManyMixes> {
    if need <= 0 {
        return Ok(vec![0; offers.len()]);
    }
    let with_minimum: Vec<usize> = (0..offers.len()).filter(|&i| offers[i].minimum > 1).collect();
    let mut incumbent = Incumbent { offers, best: None, compared: 0 };
    // Each subset of the offers with a minimum: of those in it the minimum is bought, and the rest is free.
    for used in 0..1_u64.checked_shl(with_minimum.len() as u32).ok_or(TooManyMixes)? {
        let mut mix = vec![0; offers.len()];
        let mut free: Vec<usize> = (0..offers.len()).filter(|&i| offers[i].minimum <= 1).collect();
        for (bit, &i) in with_minimum.iter().enumerate() {
            if used >> bit & 1 == 1 {
                mix[i] = offers[i].minimum;
                free.push(i);
            }
        }
        let held: i128 = mix.iter().zip(offers).map(|(&n, offer)| i128::from(n) * offer.size).sum();
        Search::new(offers, free).run(&mut mix, need - held, &mut incumbent)?;
    }
    Ok(incumbent.best.map(|(_, mix)| mix).unwrap_or_default())
}

/// The best mix so far, and the number of mixes compared.
struct Incumbent<'a> {
    offers: &'a [Offer],
    best: Option<(i128, Mix)>,
    compared: u64,
}

impl Incumbent<'_> {
    fn count(&mut self) -> Result<(), TooManyMixes> {
        self.compared += 1;
        if self.compared > MOST_MIXES { Err(TooManyMixes) } else { Ok(()) }
    }

    /// Takes a mix that covers the need, if it is better than the best so far.
    fn take(&mut self, mix: &Mix) {
        let price = price(self.offers, mix);
        let better = self.best.as_ref().is_none_or(|(least, best)| {
            price.cmp(least).then_with(|| self.by_packs(mix, best)) == Ordering::Less
        });
        if better {
            self.best = Some((price, mix.clone()));
        }
    }

    /// Fewer packs first, then more of the largest.
    fn by_packs(&self, one: &Mix, other: &Mix) -> Ordering {
        let mut by_size: Vec<usize> = (0..one.len()).collect();
        by_size.sort_by_key(|&i| (Reverse(self.offers[i].size), i));
        let packs = |mix: &Mix| mix.iter().sum::<u64>();
        let largest_first = by_size.iter().map(|&i| other[i].cmp(&one[i]));
        packs(one).cmp(&packs(other)).then_with(|| largest_first.fold(Ordering::Equal, Ordering::then))
    }
}

fn price(offers: &[Offer], mix: &Mix) -> i128 {
    mix.iter().zip(offers).map(|(&n, offer)| i128::from(n) * offer.price).sum()
}

/// A search through the mixes of some offers.
struct Search<'a> {
    offers: &'a [Offer],
    /// The offer of the best price for its amount, which fills up the rest; `None` without an offer.
    best: Option<usize>,
    /// The others, the largest first, each with the most packs that can pay.
    others: Vec<(usize, u64)>,
}

impl Search<'_> {
    fn new(offers: &[Offer], mut free: Vec<usize>) -> Search<'_> {
        free.sort_by(|&i, &j| {
            let (one, other) = (offers[i], offers[j]);
            let by_amount = product(one.price, other.size).cmp(&product(other.price, one.size));
            by_amount.then(other.size.cmp(&one.size)).then(i.cmp(&j))
        });
        let most = |place: usize| {
            let size = offers[free[place]].size;
            let alike =
                free[..place].iter().map(|&better| offers[better].size / gcd(offers[better].size, size));
            alike.min().map_or(u64::MAX, |alike| u64::try_from(alike - 1).unwrap_or(u64::MAX))
        };
        let mut others: Vec<(usize, u64)> = (1..free.len()).map(|place| (free[place], most(place))).collect();
        others.sort_by_key(|&(i, _)| (Reverse(offers[i].size), i));
        Search { offers, best: free.first().copied(), others }
    }

    /// Compares every mix that adds packs of the free offers to `mix` until they hold `rest` more.
    fn run(&self, mix: &mut Mix, rest: i128, incumbent: &mut Incumbent<'_>) -> Result<(), TooManyMixes> {
        self.run_from(0, mix, rest, incumbent)
    }

    fn run_from(
        &self,
        place: usize,
        mix: &mut Mix,
        rest: i128,
        incumbent: &mut Incumbent<'_>,
    ) -> Result<(), TooManyMixes> {
        incumbent.count()?;
        if rest <= 0 {
            incumbent.take(mix);
            return Ok(());
        }
        let Some(best) = self.best else { return Ok(()) };
        let Some(&(offer, most)) = self.others.get(place) else {
            let before = mix[best];
            mix[best] += up(rest, self.offers[best].size);
            incumbent.take(mix);
            mix[best] = before;
            return Ok(());
        };
        let before = mix[offer];
        let enough = up(rest, self.offers[offer].size);
        for more in 0..=most.min(enough) {
            mix[offer] = before + more;
            let rest = rest - i128::from(more) * self.offers[offer].size;
            match self.outlook(place, mix, rest, incumbent) {
                Outlook::Open => self.run_from(place + 1, mix, rest, incumbent)?,
                Outlook::Closed => incumbent.count()?,
                // Each pack more costs no less than its amount at the best price.
                Outlook::ClosedForMore => break,
            }
        }
        mix[offer] = before;
        Ok(())
    }

    /// Whether packs added to a mix, of the others after `place` or of the best, can make it better than the incumbent.
    fn outlook(&self, place: usize, mix: &Mix, rest: i128, incumbent: &Incumbent<'_>) -> Outlook {
        let (Some(best), Some((cheapest, so_far))) = (self.best, &incumbent.best) else {
            return Outlook::Open;
        };
        let filler = self.offers[best];
        let left = cheapest - price(self.offers, mix);
        match product(left, filler.size).cmp(&product(filler.price, rest.max(0))) {
            Ordering::Less => Outlook::ClosedForMore,
            Ordering::Greater => Outlook::Open,
            Ordering::Equal => {
                let later = self.others[place + 1..].iter().map(|&(i, _)| self.offers[i].size);
                let packs = mix.iter().sum::<u64>() + up(rest, later.fold(filler.size, i128::max));
                if packs > so_far.iter().sum() { Outlook::Closed } else { Outlook::Open }
            }
        }
    }
}

/// Whether a mix can become better than the incumbent.
enum Outlook {
    /// It can.
    Open,
    /// It can't.
    Closed,
    /// It can't, nor with more packs of the offer at hand.
    ClosedForMore,
}

/// Whole packs of a size that hold at least an amount.
fn up(amount: i128, size: i128) -> u64 {
    let packs = amount.max(0).div_euclid(size) + i128::from(amount.max(0).rem_euclid(size) > 0);
    u64::try_from(packs).unwrap_or(u64::MAX)
}

fn product(a: i128, b: i128) -> I256 {
    I256::from(a) * I256::from(b)
}

/// The greatest common divisor of two whole numbers above zero.
pub(super) fn gcd(a: i128, b: i128) -> i128 {
    if b == 0 { a } else { gcd(b, a % b) }
}
