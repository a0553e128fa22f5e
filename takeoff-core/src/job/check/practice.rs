//! How the crew works, and the list of what is assumed.
use std::collections::BTreeMap;

use super::breakage::breakage;
use super::three_course::mesh_and_cement;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Read, Reader};
use crate::model::{Assumptions, Practice, inches_and_64ths};
use crate::units::Volume;

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
            inches_and_64ths(1, 0),
        ),
        hand_clearance: a.length(
            "room for hands round the deck work",
            given(p, |p| &p.hand_clearance),
            inches_and_64ths(2, 0),
        ),
        least_margin: a.length(
            "least margin of a post",
            given(p, |p| &p.least_margin),
            inches_and_64ths(0, 16),
        ),
        drain: a.length(
            "least way from a deck flashing's lower edge to a lap line",
            given(p, |p| &p.drain),
            inches_and_64ths(1, 0),
        ),
        deck_tuck: a.length(
            "least of a deck flashing under the sheet above",
            given(p, |p| &p.deck_tuck),
            inches_and_64ths(2, 0),
        ),
        patch_underlap: a.length(
            "patch under the sheet above",
            given(p, |p| &p.patch_underlap),
            inches_and_64ths(4, 0),
        ),
        patch_side_margin: a.length(
            "patch beyond the flashing, each side",
            given(p, |p| &p.patch_side_margin),
            inches_and_64ths(4, 0),
        ),
        least_top_tuck: a.length(
            "least of a top flashing under the course above",
            given(p, |p| &p.least_top_tuck),
            inches_and_64ths(3, 0),
        ),
        least_side_cover: a.length(
            "least cover of a top flashing beside the opening",
            given(p, |p| &p.least_side_cover),
            inches_and_64ths(3, 0),
        ),
        bead_inset: a.length(
            "bead inside the edge of a deck flange",
            given(p, |p| &p.bead_inset),
            inches_and_64ths(0, 48),
        ),
        staple_spacing: a.length(
            "staple to staple round a patch",
            given(p, |p| &p.staple_spacing),
            inches_and_64ths(4, 0),
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
