//! Legend of tones and marks.
use super::super::markup::Markup;
use super::scale::Scale;
use super::{INK, PAPER, PLOT, cells, marks, text};
use crate::layout::ArrayLayout;
use crate::units::Money;

/// From line to line.
const LINE: f64 = 19.0;
/// Width and height of a sample.
const SAMPLE: [f64; 2] = [26.0, 13.0];

pub(super) fn draw(
    svg: &mut Markup,
    array: &ArrayLayout,
    scale: &Scale,
    prefix: &str,
    left: f64,
    currency: &str,
) {
    svg.tag("g").with("class", "legend").open();
    let mut lines = Lines { svg, left, down: PLOT[1] };
    let cost = |cost: Option<Money>| cost.map_or("no layout".to_owned(), |cost| format!("{cost} {currency}"));
    let here = cost(Some(array.additive_cost));
    if array.moves() {
        let at = lines.next(&format!("goes here: {here}"));
        marks::goes(lines.svg, at);
        let unmoved = array.unmoved.as_ref().map(|unmoved| unmoved.additive_cost);
        let at = lines.next(&format!("is here now: {}", cost(unmoved)));
        marks::now(lines.svg, at);
    } else {
        let at = lines.next(&format!("is and stays here: {here}"));
        marks::now(lines.svg, at);
        marks::goes(lines.svg, at);
    }
    lines.down += 10.0;
    lines.head(&format!("cost, {currency}"));
    for tone in scale.tones() {
        let at = lines.next(&scale.range(tone.number));
        sample(lines.svg, at, tone.colour);
    }
    let map = array.map.as_ref();
    if map.is_some_and(|map| map.cost.iter().flatten().any(Option::is_none)) {
        let at = lines.next("no layout within the limits");
        sample(lines.svg, at, &format!("url(#{prefix}-none)"));
    }
    if map.is_some_and(|map| map.faults.iter().flatten().any(|&faults| faults > 0)) {
        let at = lines.next("with posts at fault");
        sample(lines.svg, at, PAPER);
        cells::crosses(lines.svg, cells::cross(at));
    }
    svg.close("g");
}

fn sample(svg: &mut Markup, [x, y]: [f64; 2], fill: &str) {
    let [wide, high] = SAMPLE;
    svg.tag("rect")
        .with("x", x - wide / 2.0)
        .with("y", y - high / 2.0)
        .with("width", wide)
        .with("height", high)
        .with("fill", fill)
        .with("stroke", INK)
        .with("stroke-width", 0.6)
        .empty();
}

/// Lines of the legend, one below the other.
struct Lines<'s> {
    svg: &'s mut Markup,
    left: f64,
    down: f64,
}

impl Lines<'_> {
    fn head(&mut self, words: &str) {
        text(self.svg, [self.left, self.down + 10.0], "start").with("font-weight", "bold").text(words);
        self.down += LINE;
    }

    /// Writes the words of the next line; gives back the middle of its sample.
    fn next(&mut self, words: &str) -> [f64; 2] {
        let middle = self.down + SAMPLE[1] / 2.0;
        text(self.svg, [self.left + SAMPLE[0] + 8.0, middle + 4.0], "start").text(words);
        self.down += LINE;
        [self.left + SAMPLE[0] / 2.0, middle]
    }
}
