//! Bisection on the grid.

/// The place nearest to `to` at which a property holds, and the place next to it where it does not, in whole nanometres.
/// The property holds at `from`, does not at `to`, and changes once between them; `to` may be above or below `from`.
pub(crate) fn boundary(from: i64, to: i64, mut holds: impl FnMut(i64) -> bool) -> (i64, i64) {
    let (mut inside, mut outside) = (from, to);
    while (outside - inside).abs() > 2 {
        // Grid steps are half nanometres: a whole nanometre is an even step.
        let middle = 2 * ((inside + outside) / 2).div_euclid(2);
        if holds(middle) { inside = middle } else { outside = middle }
    }
    (inside, outside)
}

/// The greatest whole number below `fails` for which a property holds; it holds for `holds` and for all up to that one.
pub(crate) fn greatest(holds: i64, fails: i64, property: impl Fn(i64) -> bool) -> i64 {
    let (mut holds, mut fails) = (holds, fails);
    while fails - holds > 1 {
        let middle = (holds + fails) / 2;
        if property(middle) { holds = middle } else { fails = middle }
    }
    holds
}
