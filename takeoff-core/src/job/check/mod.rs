//! From what is written to the model: everything that names something else, and the job as a whole.
mod array;
mod assembly;
mod bid;
mod courses;
mod dry_in;
mod georeference;
mod items;
mod lines;
mod outline;
pub(super) mod posts;
mod practice;
mod rafters;
mod rails;
mod screening;
pub(super) mod setback;
pub(super) mod slope;
mod three_course;
mod tile;
mod underlayment;

use std::collections::BTreeMap;
use std::sync::Arc;

use self::assembly::assembly;
use self::dry_in::{check_patch_underlap, check_tuck_window};
use self::items::check_items;
use self::posts::few_enough;
use self::practice::practice;
use self::screening::screening;
use self::slope::{Catalogue, slope};
use self::tile::tile;
use self::underlayment::underlayment;
use crate::job::fields::raw;
use crate::job::fields::scalars::Name;
use crate::job::parse::decode::{Field, Read, Reader, quoted};
use crate::model::{Assembly, Assumptions, BeadPlace, Code, Job, Practice, SurveyQuestion};

/// Things by their names; those that are reported to be wrong have their name only.
pub(crate) struct Named<T> {
    what: &'static str,
    /// None where the whole list is reported to be wrong.
    known: Option<BTreeMap<String, Option<Arc<T>>>>,
}

impl<T> Named<T> {
    fn new<K: Read>(
        what: &'static str,
        written: Option<&Vec<(String, Field<K>)>>,
        mut make: impl FnMut(&str, &Field<K>) -> Option<T>,
    ) -> Named<T> {
        let known = written.map(|written| {
            written.iter().map(|(name, field)| (name.clone(), make(name, field).map(Arc::new))).collect()
        });
        Named { what, known }
    }

    /// The thing that a field names; reports where there is none.
    pub(crate) fn find(&self, field: &Field<Name>, reader: &mut Reader<'_>) -> Option<Arc<T>> {
        let (name, known) = (field.get()?, self.known.as_ref()?);
        if let Some(found) = known.get(name) {
            return found.clone();
        }
        let message = format!("there is no {} {}", self.what, quoted(name));
        let names: Vec<&str> = known.keys().take(200).map(String::as_str).collect();
        reader.report_unknown(field.at, Code::UnknownReference, message, name, "the job has", &names);
        None
    }

    fn into_all(self) -> Vec<Arc<T>> {
        self.known.into_iter().flatten().filter_map(|(_, thing)| thing).collect()
    }
}

pub(crate) fn job(written: raw::Job, reader: &mut Reader<'_>) -> Option<Job> {
    let display = written.display.given().copied().unwrap_or_default();
    let mut assumptions = Assumptions::new(display);
    let practice = practice(&written, &mut assumptions, reader);
    check_patch_underlap(&practice, written.practice.given(), display, reader);
    let screening = screening(&written.screening, &mut assumptions, reader);
    check_waste(&written, reader);
    let bid = bid::terms(&written.bid, &written.prices, &mut assumptions, reader);

    let none = Vec::new();
    let assemblies = if written.assemblies.is_given() { written.assemblies.given() } else { Some(&none) };
    let catalogue = Catalogue {
        tiles: Named::new("tile", written.tiles.get(), |name, field| {
            tile(name, field, &mut assumptions, reader)
        }),
        underlayments: Named::new("underlayment", written.underlayments.get(), |name, field| {
            underlayment(name, field, &mut assumptions, reader)
        }),
        assemblies: Named::new("assembly", assemblies, |name, field| {
            three_course::check(field, &practice, &written.practice, reader);
            let assembly = assembly(name, field, &mut assumptions, reader)?;
            check_bead_inset(&assembly, &practice, field, reader);
            check_tuck_window(&assembly, &practice, display, field, &written.practice, reader);
            Some(assembly)
        }),
    };
    check_items(&written, reader);
    check_slope_names(&written, reader);
    let slopes = written.slopes.get()?;
    if !few_enough(slopes, reader) {
        return None;
    }
    let slopes: Vec<_> = slopes
        .iter()
        .map(|field| slope(field, &catalogue, &practice, display, &mut assumptions, reader))
        .collect();
    written.format.get()?;
    Some(Job {
        name: written.name.take()?,
        display,
        tiles: catalogue.tiles.into_all(),
        assemblies: catalogue.assemblies.into_all(),
        slopes: slopes.into_iter().collect::<Option<_>>()?,
        practice,
        screening: screening?,
        prices: written.prices.take()?,
        bid: bid?,
        survey: survey(written.survey.given()),
        assumptions: assumptions.into_list(),
        findings: Vec::new(),
    })
}

/// A U-shaped bead has to find room on its flange.
fn check_bead_inset(
    assembly: &Assembly,
    practice: &Practice,
    field: &Field<raw::Assembly>,
    reader: &mut Reader<'_>,
) {
    let flange = &assembly.deck_flashing;
    let inset = practice.bead_inset;
    let bead = assembly.beads.iter().any(|bead| bead.place == BeadPlace::DeckFlange);
    if bead && (inset + inset > flange.width || inset > flange.down + flange.up) {
        let message = "the bead of the deck flange, set in from its edges, finds no room on it";
        let help = "look at the flange's size, and at `bead_inset` in `practice`";
        let at = field.get().map_or(field.at, |written| written.deck_flashing.at);
        reader.report(at, Code::FlashingTooSmall, message, help);
    }
}

fn check_slope_names(written: &raw::Job, reader: &mut Reader<'_>) {
    let Some(slopes) = written.slopes.get() else {
        return;
    };
    if slopes.is_empty() {
        reader.report(
            written.slopes.at,
            Code::NoSlopes,
            "the job has no slope",
            "add the slope that the posts stand on",
        );
    }
    let mut seen = BTreeMap::new();
    for name in slopes.iter().filter_map(|slope| slope.get().map(|slope| &slope.name)) {
        if let Some(text) = name.get()
            && seen.insert(text, ()).is_some()
        {
            let message = format!("two slopes are called {}", quoted(text));
            reader.report(name.at, Code::TwoSlopesOfOneName, message, "call one of them by another name");
        }
    }
}

/// A waste with a field of its own is not given by item, too.
fn check_waste(written: &raw::Job, reader: &mut Reader<'_>) {
    let own =
        [("sealant", "sealant_waste"), ("roof cement", "cement_waste"), ("reinforcing mesh", "mesh_waste")];
    let given = written.practice.given().and_then(|practice| practice.waste.given());
    for (item, share) in given.into_iter().flatten() {
        if let Some((_, field)) = own.iter().find(|(own, _)| own == item) {
            let message = format!("the waste of {} has a field of its own", quoted(item));
            reader.report(share.at, Code::OneWay, message, format!("give it as `{field}` in `practice`"));
        }
    }
}

fn survey(written: Option<&raw::Survey>) -> Vec<(SurveyQuestion, Option<String>)> {
    let answer = |field: fn(&raw::Survey) -> &Field<Option<crate::job::fields::scalars::Text>>| {
        written.and_then(|survey| field(survey).given()).filter(|answer| !answer.trim().is_empty()).cloned()
    };
    vec![
        (SurveyQuestion::Tile, answer(|survey| &survey.tile)),
        (SurveyQuestion::RooferOfRecord, answer(|survey| &survey.roofer_of_record)),
        (SurveyQuestion::Warranties, answer(|survey| &survey.warranties)),
        (SurveyQuestion::Underlayment, answer(|survey| &survey.underlayment)),
        (SurveyQuestion::Rafters, answer(|survey| &survey.rafters)),
        (SurveyQuestion::Deck, answer(|survey| &survey.deck)),
    ]
}
