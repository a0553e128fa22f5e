//! How the crew works, and the list of what is assumed.
use std::collections::BTreeMap;

use super::breakage::breakage;
use super::three_course::mesh_and_cement;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Read, Reader, quoted};
use crate::model::{Assumption, Display, Practice};
use crate::units::{Length, Volume};

/// The assumptions in force, listed as they are made.
pub(crate) struct Assumptions {
    pub(crate) display: Display,
    list: Vec<Assumption>,
}

impl Assumptions {
    pub(crate) fn new(display: Display) -> Assumptions {
        Assumptions { display, list: Vec::new() }
    }

    /// Which units are shown.
    pub(crate) fn display(&self) -> Display {
        self.display
    }

    pub(crate) fn into_list(self) -> Vec<Assumption> {
        self.list
    }

    /// The length given, or else the usual one.
    pub(crate) fn length(&mut self, what: impl Into<String>, given: Option<Length>, usual: Length) -> Length {
        let length = given.unwrap_or(usual);
        self.add(what, self.display.length(length), given.is_some());
        length
    }

    /// The count given, or else the usual one.
    pub(crate) fn count(&mut self, what: impl Into<String>, given: Option<u32>, usual: u32) -> u32 {
        let count = given.unwrap_or(usual);
        self.add(what, count.to_string(), given.is_some());
        count
    }

    /// The number given, or else the usual one.
    pub(crate) fn number(&mut self, what: &str, given: Option<f64>, usual: f64) -> f64 {
        let number = given.unwrap_or(usual);
        self.add(what, number.to_string(), given.is_some());
        number
    }

    /// Yes or no as given, or else as usual.
    pub(crate) fn flag(&mut self, what: &str, given: Option<bool>, usual: bool) -> bool {
        let flag = given.unwrap_or(usual);
        self.add(what, if flag { "yes" } else { "no" }.to_owned(), given.is_some());
        flag
    }

    pub(crate) fn volume(&mut self, what: &str, given: Option<Volume>, usual: Volume) -> Volume {
        let volume = given.unwrap_or(usual);
        let value = match self.display {
            Display::Imperial => volume.imperial(1),
            Display::Metric => volume.metric(0),
        };
        self.add(what, value, given.is_some());
        volume
    }

    fn window(&mut self, given: Option<Length>) -> Option<Length> {
        let value = given.map_or("one exposure".to_owned(), |window| self.display.length(window));
        self.add("a better place for a post is looked for within", value, given.is_some());
        given
    }

    fn waste(&mut self, given: BTreeMap<String, f64>) -> BTreeMap<String, f64> {
        for (item, share) in &given {
            self.add(of("lost, as a share", item), share.to_string(), true);
        }
        given
    }

    /// One more assumption.
    pub(crate) fn add(&mut self, what: impl Into<String>, value: String, set_by_job: bool) {
        self.list.push(Assumption { what: what.into(), value, set_by_job });
    }
}

/// So many 64ths of an inch.
pub(crate) const fn inches(whole: i64, sixty_fourths: i64) -> Length {
    Length::from_nm((64 * whole + sixty_fourths) * Length::INCH.nm() / 64)
}

/// A row a quantity: what it is, what the job gives, what is usual.
pub(crate) fn practice(
    written: &raw::Job,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Practice {
    let a = assumptions;
    let p = written.practice.given();
    Practice {
        least_web: a.length(
            "narrowest strip of tile that does not snap",
            given(p, |p| &p.least_web),
            inches(1, 0),
        ),
        hand_clearance: a.length(
            "room for hands round the deck work",
            given(p, |p| &p.hand_clearance),
            inches(2, 0),
        ),
        least_margin: a.length("least margin of a post", given(p, |p| &p.least_margin), inches(0, 16)),
        drain: a.length(
            "least way from a deck flashing's lower edge to a lap line",
            given(p, |p| &p.drain),
            inches(1, 0),
        ),
        deck_tuck: a.length(
            "least of a deck flashing under the sheet above",
            given(p, |p| &p.deck_tuck),
            inches(2, 0),
        ),
        patch_underlap: a.length(
            "patch under the sheet above",
            given(p, |p| &p.patch_underlap),
            inches(4, 0),
        ),
        patch_side_margin: a.length(
            "patch beyond the flashing, each side",
            given(p, |p| &p.patch_side_margin),
            inches(4, 0),
        ),
        least_top_tuck: a.length(
            "least of a top flashing under the course above",
            given(p, |p| &p.least_top_tuck),
            inches(3, 0),
        ),
        least_side_cover: a.length(
            "least cover of a top flashing beside the opening",
            given(p, |p| &p.least_side_cover),
            inches(3, 0),
        ),
        bead_inset: a.length(
            "bead inside the edge of a deck flange",
            given(p, |p| &p.bead_inset),
            inches(0, 48),
        ),
        staple_spacing: a.length(
            "staple to staple round a patch",
            given(p, |p| &p.staple_spacing),
            inches(4, 0),
        ),
        window: a.window(given(p, |p| &p.window)),
        breakage: breakage(p, a, reader),
        service_level: a.number("chance that the spares suffice", given(p, |p| &p.service_level), 0.95),
        cost_of_short: given(p, |p| &p.cost_of_short).inspect(|cost| {
            a.add("cost of each tile short, in the currency of the prices", cost.to_string(), true);
        }),
        cost_of_failing: given(p, |p| &p.cost_of_failing).inspect(|cost| {
            let what = "cost of each post that severs a tile or fails a check, in the currency of the prices";
            a.add(what, cost.to_string(), true);
        }),
        pieces_for_severed: a
            .count("new tiles for a severed one", given(p, |p| &p.pieces_for_severed), 2)
            .into(),
        cartridge_mm3: a.volume("cartridge of sealant", given(p, |p| &p.cartridge), CARTRIDGE).mm3(),
        sealant_waste: a.number("sealant lost, as a share", given(p, |p| &p.sealant_waste), 0.1),
        blade_life: given(p, |p| &p.blade_life).inspect(|life| {
            a.add("what one blade cuts in tile", a.display.length(*life), true);
        }),
        waste: a.waste(waste(p)),
        three_course: mesh_and_cement(written, a, reader),
    }
}

/// What the job says is lost, by item.
fn waste(practice: Option<&raw::Practice>) -> BTreeMap<String, f64> {
    let items = practice.and_then(|practice| practice.waste.given()).into_iter().flatten();
    items.filter_map(|(item, share)| Some((item.clone(), *share.get()?))).collect()
}

/// 10.1 US fluid ounces; a fluid ounce is 231/128 cubic inches.
const CARTRIDGE: Volume = Volume::from_mm3(10.1 * 231.0 / 128.0 * 25.4 * 25.4 * 25.4);

/// What one field of an object gives.
pub(crate) fn given<'w, O, K>(
    object: Option<&'w O>,
    field: impl Fn(&'w O) -> &'w Field<Option<K>>,
) -> Option<K::Value>
where
    K::Value: Copy + 'w,
    K: Read + 'w,
{
    object.and_then(|object| field(object).given().copied())
}

/// The assembly's or slope's own name, for what is assumed of it.
pub(crate) fn of(what: &str, name: &str) -> String {
    format!("{what}, {}", quoted(name))
}
