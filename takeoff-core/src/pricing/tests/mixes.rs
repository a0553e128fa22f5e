//! The cheapest mix of packs: against all mixes, against a table of all smaller needs, and what is hard.
use std::cmp::Reverse;

use proptest::prelude::*;

use super::super::{Mix, Offer, TooManyMixes, cheapest_mix};

fn offers(packs: &[(i128, i128, u64)]) -> Vec<Offer> {
    packs.iter().map(|&(size, price, minimum)| Offer { size, price, minimum }).collect()
}

fn held(offers: &[Offer], mix: &Mix) -> i128 {
    offers.iter().zip(mix).map(|(offer, &n)| offer.size * i128::from(n)).sum()
}

fn price(offers: &[Offer], mix: &Mix) -> i128 {
    offers.iter().zip(mix).map(|(offer, &n)| offer.price * i128::from(n)).sum()
}

/// What is compared, the least first: price, packs, then the packs of the largest size and on, more first.
fn rank(offers: &[Offer], mix: &Mix) -> (i128, u64, Vec<Reverse<u64>>) {
    let mut by_size: Vec<usize> = (0..offers.len()).collect();
    by_size.sort_by_key(|&i| (Reverse(offers[i].size), i));
    (price(offers, mix), mix.iter().sum(), by_size.iter().map(|&i| Reverse(mix[i])).collect())
}

fn is_sold(offers: &[Offer], mix: &Mix) -> bool {
    offers.iter().zip(mix).all(|(offer, &n)| n == 0 || n >= offer.minimum)
}

/// The best of all mixes, one by one: of no offer more than would cover the need alone, or its minimum.
fn best_of_all(offers: &[Offer], need: i128) -> Mix {
    let most = |offer: &Offer| u64::try_from(need.div_euclid(offer.size) + 1).unwrap().max(offer.minimum);
    let mut all: Vec<Mix> = vec![Vec::new()];
    for offer in offers {
        let longer =
            |mix: &Mix| (0..=most(offer)).map(|n| [mix.as_slice(), &[n]].concat()).collect::<Vec<_>>();
        all = all.iter().flat_map(longer).collect();
    }
    let good = all.into_iter().filter(|mix| held(offers, mix) >= need && is_sold(offers, mix));
    good.min_by_key(|mix| rank(offers, mix)).unwrap()
}

#[test]
fn a_need_of_nothing_takes_nothing() {
    assert_eq!(cheapest_mix(&offers(&[(10, 900, 5)]), 0), Ok(vec![0]));
}

#[test]
fn equally_cheap_ones_are_told_apart() {
    // 8 pieces for 8.00 any way: two packs of 4 are fewer than eight of 1, and one of 8 is fewer still.
    assert_eq!(cheapest_mix(&offers(&[(1, 100, 1), (4, 400, 1)]), 8), Ok(vec![0, 2]));
    assert_eq!(cheapest_mix(&offers(&[(1, 100, 1), (4, 400, 1), (8, 800, 1)]), 8), Ok(vec![0, 0, 1]));
    // Two packs either way, 7 + 1 or 4 + 4: the larger.
    assert_eq!(cheapest_mix(&offers(&[(1, 100, 1), (4, 400, 1), (7, 700, 1)]), 8), Ok(vec![1, 0, 1]));
    // Alike in all: the first of the file.
    assert_eq!(cheapest_mix(&offers(&[(5, 400, 1), (5, 400, 1)]), 9), Ok(vec![2, 0]));
}

#[test]
fn a_larger_pack_may_be_cheaper_than_what_is_needed() {
    assert_eq!(cheapest_mix(&offers(&[(1, 100, 1), (50, 300, 1)]), 4), Ok(vec![0, 1]));
    assert_eq!(cheapest_mix(&offers(&[(1, 0, 1), (50, 300, 1)]), 4), Ok(vec![4, 0]));
}

#[test]
fn minimum_orders_hold() {
    // 3 packs of 10 from three up are 24.00, 20 single ones 26.00; two packs and no more are not sold.
    assert_eq!(cheapest_mix(&offers(&[(10, 800, 3), (1, 130, 1)]), 20), Ok(vec![3, 0]));
    assert_eq!(cheapest_mix(&offers(&[(10, 800, 3), (1, 130, 1)]), 18), Ok(vec![0, 18]));
    assert_eq!(cheapest_mix(&offers(&[(10, 800, 3), (1, 130, 1)]), 33), Ok(vec![3, 3]));
    assert_eq!(cheapest_mix(&offers(&[(10, 800, 40)]), 1), Ok(vec![40]));
}

#[test]
fn huge_needs_are_exact() {
    // 142 857 packs of 7 hold 999 999.
    assert_eq!(cheapest_mix(&offers(&[(1, 60, 1), (7, 350, 1)]), 1_000_000), Ok(vec![1, 142_857]));
    // 2 more than whole packs: two single ones at 1.75 cost what a pack of 7 does, and are one pack more.
    assert_eq!(cheapest_mix(&offers(&[(1, 175, 1), (7, 350, 1)]), 1_000_001), Ok(vec![0, 142_858]));
    assert_eq!(cheapest_mix(&offers(&[(1, 180, 1), (7, 350, 1)]), 1_000_001), Ok(vec![0, 142_858]));
    assert_eq!(cheapest_mix(&offers(&[(1, 170, 1), (7, 350, 1)]), 1_000_001), Ok(vec![2, 142_857]));
    // 1 more than whole packs of 10: seven of 3 in the place of two of 10 are 2.17 for 1.98.
    let mix = cheapest_mix(&offers(&[(3, 31, 1), (10, 99, 1)]), 1_000_000_000_000_000_001);
    assert_eq!(mix, Ok(vec![7, 99_999_999_999_999_998]));
}

/// Twelve packs of one price for their amount: every mix without waste costs the same.
#[test]
fn packs_of_one_price_for_their_amount() {
    let sizes = [1, 2, 3, 5, 8, 10, 12, 20, 25, 48, 50, 100];
    let primes = [31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 79];
    for (sizes, needs) in [(sizes, [247, 1_000_001]), (primes, [10_007, 1_000_003])] {
        let alike = offers(&sizes.map(|size| (size, 7 * size, 1)));
        for need in needs {
            let mix = cheapest_mix(&alike, need).unwrap();
            assert_eq!((held(&alike, &mix), price(&alike, &mix)), (need, 7 * need));
        }
    }
}

/// Sizes without a common measure, as 10.15 fl oz, 300 mL and 28 fl oz in units of 1e-10 mm³.
#[test]
fn sizes_without_a_common_measure() {
    let odd = offers(&[
        (3_001_713_250_593_750, 609, 1),
        (3_000_000_000_000_000, 601, 1),
        (8_280_588_277_500_000, 1_650, 1),
    ]);
    // A litre: 28 fl oz and 300 mL are 1128 mL for 22.51; three of the small ones do not hold it.
    assert_eq!(cheapest_mix(&odd, 10_000_000_000_000_000), Ok(vec![0, 1, 1]));
    let need = 5_000 * 10_000_000_000_000_000;
    let mix = cheapest_mix(&odd, need).unwrap();
    // No amount costs less than at the best price for it.
    assert!(held(&odd, &mix) >= need && price(&odd, &mix) >= need / 8_280_588_277_500_000 * 1_650);
}

/// Nothing is given that was not compared with all others.
#[test]
fn too_many_mixes_are_refused() {
    let primes = [1_000_003, 1_000_033, 1_000_037, 1_000_039, 1_000_081, 1_000_099, 1_000_117];
    let alike = offers(&primes.map(|size| (size, size - size % 7, 1)));
    assert_eq!(cheapest_mix(&alike, 777_777_777_777), Err(TooManyMixes));
}

fn some_offers(most: i128) -> impl Strategy<Value = Vec<Offer>> {
    let offer = (1..=most, 0_i128..400, prop_oneof![4 => Just(1_u64), 1 => 2..5_u64]);
    let apart = prop::collection::vec(offer, 1..4);
    // Prices near the amount make many mixes nearly as cheap.
    let close = prop::collection::vec((1..=most, -2_i128..3), 1..4).prop_map(|packs| {
        packs.into_iter().map(|(size, more)| (size, (10 * size + more).max(0), 1)).collect()
    });
    prop_oneof![apart, close].prop_map(|packs: Vec<_>| offers(&packs))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn none_is_better(packs in some_offers(12), need in 1_i128..25) {
        let mix = cheapest_mix(&packs, need).unwrap();
        prop_assert!(held(&packs, &mix) >= need && is_sold(&packs, &mix));
        prop_assert_eq!(mix, best_of_all(&packs, need));
    }

    /// The least price of every need from that of the needs before it.
    #[test]
    fn as_cheap_as_a_table_says(
        packs in prop::collection::vec((1_i128..60, 1_i128..400), 1..9),
        need in 1_usize..3_000,
    ) {
        let packs = offers(&packs.into_iter().map(|(size, price)| (size, price, 1)).collect::<Vec<_>>());
        let mut least = vec![0_i128];
        for amount in 1..=need {
            let before = |size: i128| amount.saturating_sub(usize::try_from(size).unwrap());
            least.push(packs.iter().map(|pack| pack.price + least[before(pack.size)]).min().unwrap());
        }
        let mix = cheapest_mix(&packs, need as i128).unwrap();
        prop_assert!(held(&packs, &mix) >= need as i128);
        prop_assert_eq!(price(&packs, &mix), least[need]);
    }
}
