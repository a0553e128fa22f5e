//! Practice of the crew as a job file has it.
use std::collections::BTreeMap;

use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Read, Reader};
use crate::model::{
    Assumptions, CrewRecord, Input, Practice, PracticeBuilder, StatedBreakage, ThreeCourseMeasures,
};
use crate::probability::Record;

use super::three_course::is_asked_for;

/// The practice of the crew; as usual where a value is left out, or reported to be wrong.
pub(crate) fn practice(
    written: &raw::Job,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Practice {
    let p = written.practice.given();
    let b = p.and_then(|practice| practice.breakage.given());
    let builder = PracticeBuilder {
        least_web: input(p, |p| &p.least_web),
        hand_clearance: input(p, |p| &p.hand_clearance),
        least_margin: input(p, |p| &p.least_margin),
        drain: input(p, |p| &p.drain),
        deck_tuck: input(p, |p| &p.deck_tuck),
        patch_underlap: input(p, |p| &p.patch_underlap),
        patch_side_margin: input(p, |p| &p.patch_side_margin),
        least_top_tuck: input(p, |p| &p.least_top_tuck),
        least_side_cover: input(p, |p| &p.least_side_cover),
        bead_inset: input(p, |p| &p.bead_inset),
        staple_spacing: input(p, |p| &p.staple_spacing),
        window: input(p, |p| &p.window),
        breakage: StatedBreakage {
            chances: [
                input(b, |b| &b.cut),
                input(b, |b| &b.removed),
                input(b, |b| &b.loosened),
                input(b, |b| &b.walked),
            ],
            recut: input(b, |b| &b.recut),
        },
        crew_record: p.map_or(Input::Missing, |p| match p.crew_record.optional() {
            Some(Some(record)) => Input::Given(crew_record(record)),
            Some(None) => Input::Missing,
            None => Input::Unread,
        }),
        service_level: input(p, |p| &p.service_level),
        cost_of_short: input(p, |p| &p.cost_of_short).given(),
        cost_of_failing: input(p, |p| &p.cost_of_failing).given(),
        pieces_for_severed: input(p, |p| &p.pieces_for_severed),
        cartridge: input(p, |p| &p.cartridge),
        sealant_waste: input(p, |p| &p.sealant_waste),
        waste: waste(p),
        blade_life: input(p, |p| &p.blade_life),
        three_course: ThreeCourseMeasures {
            is_asked_for: is_asked_for(written),
            allowed: input(p, |p| &p.three_course_allowed),
            mesh_width: input(p, |p| &p.mesh_width),
            edge_extension: input(p, |p| &p.edge_extension),
            film: input(p, |p| &p.cement_film),
            coats: input(p, |p| &p.cement_coats),
            container: input(p, |p| &p.cement_container),
            roll: input(p, |p| &p.mesh_roll),
            cement_waste: input(p, |p| &p.cement_waste),
            mesh_waste: input(p, |p| &p.mesh_waste),
        },
    };
    reader.judge(written.practice.at, assumptions, |judge| builder.judge(judge))
}

fn crew_record(written: &raw::CrewRecord) -> CrewRecord {
    let class = |field: &Field<Option<raw::ClassRecord>>| match field.optional() {
        Some(Some(class)) => match (class.handled.get(), class.broken.get()) {
            (Some(&handled), Some(&broken)) => {
                Input::Given(Record { handled: handled.into(), broken: broken.into() })
            }
            _ => Input::Unread,
        },
        Some(None) => Input::Missing,
        None => Input::Unread,
    };
    let classes = [&written.cut, &written.removed, &written.loosened, &written.walked].map(class);
    CrewRecord { weight: written.weight.input(), classes }
}

/// Shares lost, by item.
fn waste(practice: Option<&raw::Practice>) -> BTreeMap<String, f64> {
    let items = practice.and_then(|practice| practice.waste.given()).into_iter().flatten();
    items.filter_map(|(item, share)| Some((item.clone(), *share.get()?))).collect()
}

/// A field of an object that may be left out, as a builder takes it.
fn input<'w, O, K>(object: Option<&'w O>, field: impl Fn(&'w O) -> &'w Field<Option<K>>) -> Input<K::Value>
where
    K::Value: Copy + 'w,
    K: Read + 'w,
{
    object.map_or(Input::Missing, |object| field(object).optional_input())
}
