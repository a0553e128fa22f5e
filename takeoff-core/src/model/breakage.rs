//! Breakage by class of tile.
use schemars::JsonSchema;
use serde::Serialize;

use super::Code;
use super::judge::{Input, Judge};
use crate::probability::{Rate, Record, RecordError};

/// Rate of breaking tiles, by class. An assumption: every report prints it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Breakage {
    /// Of a tile that is cut; known, at least 0 and less than 1.
    pub cut: Rate,
    /// Of a tile that is taken up and laid back; known, from 0 to 1, like those below.
    pub removed: Rate,
    /// Of a tile that is loosened.
    pub loosened: Rate,
    /// Of a tile that is walked on.
    pub walked: Rate,
    /// A spare for a cut tile is cut too and may break in its turn.
    pub recut: bool,
}

/// Chances as a job states them: of a tile that is cut, taken up, loosened, walked on.
#[derive(Clone, Debug, Default)]
pub(crate) struct StatedBreakage {
    pub(crate) chances: [Input<f64>; 4],
    pub(crate) recut: Input<bool>,
}

/// A crew's record: how many tiles of each class it handled and broke, and the weight of the stated chances beside it.
#[derive(Clone, Debug)]
pub(crate) struct CrewRecord {
    pub(crate) weight: Input<u32>,
    /// Cut, removed, loosened, walked on; a class that is left out has no tile on record.
    pub(crate) classes: [Input<Record>; 4],
}

/// Fields of the four classes, and what is done to their tiles.
const CLASSES: [(&str, &str, f64); 4] = [
    ("cut", "cut", 0.06),
    ("removed", "taken up", 0.02),
    ("loosened", "loosened", 0.01),
    ("walked", "walked on", 0.005),
];

impl StatedBreakage {
    /// The rate of each class, with the crew's record where there is one.
    pub(crate) fn judge(self, record: Option<CrewRecord>, judge: &mut Judge<'_>) -> Breakage {
        for (chance, (field, ..)) in self.chances.iter().zip(CLASSES) {
            if let Input::Given(chance) = chance
                && !(0.0..1.0).contains(chance)
            {
                let words = "from 0 up to, not including, 1";
                let message = format!("`{field}` must be {words}: `{chance}` is not");
                let help = format!("write a number {words}");
                judge.report(&format!("/breakage/{field}"), Code::OutOfRange, message, help);
            }
        }
        let mut stated = [0.0; 4];
        for ((stated, chance), (_, what, usual)) in stated.iter_mut().zip(self.chances).zip(CLASSES) {
            let what = format!("chance that a tile breaks when it is {what}");
            *stated = judge.assumptions.number(&what, chance.given(), usual);
        }
        let recut = judge.assumptions.flag("a spare for a cut tile is cut too", self.recut.given(), true);
        let rates = record.and_then(|record| record.judge(stated, judge));
        let [cut, removed, loosened, walked] = rates.unwrap_or(stated.map(Rate::Known));
        Breakage { cut, removed, loosened, walked, recut }
    }
}

impl CrewRecord {
    /// The stated chances of the four classes together with the record; reports a record that makes no rate.
    fn judge(self, stated: [f64; 4], judge: &mut Judge<'_>) -> Option<[Rate; 4]> {
        let weight = self.weight.given()?;
        let what = "weight of these chances beside the crew's record";
        judge.assumptions.add(what, format!("as {weight} tiles handled"), true);
        let mut rates = stated.map(Rate::Known);
        for (((rate, p), (field, what, _)), class) in
            rates.iter_mut().zip(stated).zip(CLASSES).zip(self.classes)
        {
            let tally = match class {
                Input::Missing => Record::default(),
                Input::Unread => continue,
                Input::Given(tally) => tally,
            };
            match Rate::posterior(p, weight.into(), tally) {
                Ok(learnt) => *rate = learnt,
                Err(error) => {
                    let (code, help) = match error {
                        RecordError::MoreBrokenThanHandled => {
                            (Code::BrokenBeyondHandled, "`handled` counts the broken ones too")
                        }
                        RecordError::SaysNothing => {
                            (Code::RecordSaysNothing, "give the chances in `breakage` a weight, such as 50")
                        }
                    };
                    let at = if class.is_given() { field } else { "weight" };
                    let message = format!("of the tiles {what}: {error}");
                    judge.report(&format!("/crew_record/{at}"), code, message, help);
                }
            }
            let Record { handled, broken } = tally;
            let mean = rate.mean();
            judge.assumptions.add(
                format!("crew's record, tiles {what}"),
                format!("{broken} of {handled} broke; with the stated chance {mean:.4} on average"),
                true,
            );
        }
        Some(rates)
    }
}
