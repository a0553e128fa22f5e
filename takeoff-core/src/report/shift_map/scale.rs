//! Costs in steps of tone.
use crate::layout::ShiftMap;
use crate::units::Currency;

/// The tones, from the least cost to the greatest: one hue, ever darker.
const TONES: [&str; 7] = ["#f1f8f9", "#cde3e7", "#b0d2d8", "#86b8c2", "#5a9aa8", "#2f788a", "#0b5568"];

/// Scale from cost to tone.
pub(super) struct Scale {
    least: f64,
    /// From one tone to the next; none where all places cost alike to the cent.
    step: Option<f64>,
    currency: Option<Currency>,
}

/// A tone of the scale.
pub(super) struct Tone {
    pub(super) number: usize,
    pub(super) colour: &'static str,
}

impl Scale {
    pub(super) fn new(map: &ShiftMap, currency: &str) -> Scale {
        let costs = || map.cost.iter().flatten().flatten().copied();
        let least = costs().fold(f64::INFINITY, f64::min);
        let greatest = costs().fold(f64::NEG_INFINITY, f64::max);
        let mut scale = Scale { least, step: None, currency: Currency::new(currency) };
        if greatest > least && scale.shown(least) != scale.shown(greatest) {
            scale.step = Some((greatest - least) / TONES.len() as f64);
        }
        scale
    }

    /// The tone of a cost.
    pub(super) fn tone(&self, cost: f64) -> usize {
        self.step.map_or(0, |step| (((cost - self.least) / step) as usize).min(TONES.len() - 1))
    }

    /// Every tone that there is, from the least cost.
    pub(super) fn tones(&self) -> impl Iterator<Item = Tone> {
        let count = match self.step {
            _ if !self.least.is_finite() => 0,
            None => 1,
            Some(_) => TONES.len(),
        };
        TONES.iter().take(count).enumerate().map(|(number, &colour)| Tone { number, colour })
    }

    /// The costs of a tone: `1393.22 to 1504.63`.
    pub(super) fn range(&self, tone: usize) -> String {
        let at = |number: usize| self.shown(self.least + self.step.unwrap_or_default() * number as f64);
        if self.step.is_some() { format!("{} to {}", at(tone), at(tone + 1)) } else { at(0) }
    }

    fn shown(&self, cost: f64) -> String {
        self.currency
            .as_ref()
            .map_or_else(|| format!("{cost:.2}"), |currency| currency.nearest(cost).to_string())
    }
}
