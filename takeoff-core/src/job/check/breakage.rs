//! How often tiles break: as the job states it, and as the crew's record teaches.
use super::practice::given;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::model::{Assumptions, Breakage, Code};
use crate::probability::{Rate, Record, RecordError};

/// The rate of each class, with the crew's record where there is one.
pub(crate) fn breakage(
    practice: Option<&raw::Practice>,
    a: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Breakage {
    let stated = practice.and_then(|practice| practice.breakage.given());
    let record = practice.and_then(|practice| practice.crew_record.given());
    let chance = |a: &mut Assumptions, what: &str, given: Option<f64>, usual: f64| {
        a.number(&format!("chance that a tile breaks when it is {what}"), given, usual)
    };
    let known = [
        chance(a, "cut", given(stated, |b| &b.cut), 0.06),
        chance(a, "taken up", given(stated, |b| &b.removed), 0.02),
        chance(a, "loosened", given(stated, |b| &b.loosened), 0.01),
        chance(a, "walked on", given(stated, |b| &b.walked), 0.005),
    ];
    let recut = a.flag("a spare for a cut tile is cut too", given(stated, |b| &b.recut), true);
    let [cut, removed, loosened, walked] =
        record.and_then(|record| learnt(known, record, a, reader)).unwrap_or(known.map(Rate::Known));
    Breakage { cut, removed, loosened, walked, recut }
}

/// The stated chances of the four classes together with the record; reports a record that makes no rate.
fn learnt(
    stated: [f64; 4],
    record: &raw::CrewRecord,
    a: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<[Rate; 4]> {
    let weight = *record.weight.get()?;
    a.add("weight of these chances beside the crew's record", format!("as {weight} tiles handled"), true);
    let classes = [
        ("cut", &record.cut),
        ("taken up", &record.removed),
        ("loosened", &record.loosened),
        ("walked on", &record.walked),
    ];
    let mut rates = stated.map(Rate::Known);
    for ((rate, p), (what, field)) in rates.iter_mut().zip(stated).zip(classes) {
        let Some(tally) = tally(field) else { continue };
        match Rate::learnt(p, weight.into(), tally) {
            Ok(learnt) => *rate = learnt,
            Err(error) => report(error, what, field, record, reader),
        }
        let Record { handled, broken } = tally;
        let mean = rate.mean();
        a.add(
            format!("crew's record, tiles {what}"),
            format!("{broken} of {handled} broke; with the stated chance {mean:.4} on average"),
            true,
        );
    }
    Some(rates)
}

/// What is on record of a class: nothing where it is left out; `None` where it is reported to be wrong.
fn tally(field: &Field<Option<raw::ClassRecord>>) -> Option<Record> {
    let Some(written) = field.optional()? else { return Some(Record::default()) };
    Some(Record { handled: (*written.handled.get()?).into(), broken: (*written.broken.get()?).into() })
}

fn report(
    error: RecordError,
    what: &str,
    field: &Field<Option<raw::ClassRecord>>,
    record: &raw::CrewRecord,
    reader: &mut Reader<'_>,
) {
    let (code, help) = match error {
        RecordError::MoreBrokenThanHandled => {
            (Code::BrokenBeyondHandled, "`handled` counts the broken ones too")
        }
        RecordError::SaysNothing => {
            (Code::RecordSaysNothing, "give the chances in `breakage` a weight, such as 50")
        }
    };
    let at = if field.is_given() { field.at } else { record.weight.at };
    reader.report(at, code, format!("of the tiles {what}: {error}"), help);
}
