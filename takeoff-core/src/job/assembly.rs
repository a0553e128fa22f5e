//! A post with its flashings: whether its parts fit each other.
use std::collections::BTreeSet;

use super::containers::List;
use super::practice::{Assumptions, inches, of};
use super::quantities::{Gap, Size};
use super::reader::{Field, Read, Reader, quoted};
use super::screening::lags;
use super::{Axis, Display, DriedIn, Practice, raw};
use crate::model::{Assembly, Bead, Code, Dabs, DeckFlashing, Item, PilotHoles, TopFlashing};
use crate::units::Length;

pub(super) fn assembly(
    name: &str,
    field: &Field<raw::Assembly>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Assembly> {
    let written = field.get()?;
    let axis = written.axis.given().copied().unwrap_or_default();
    let hole_saws = hole_saws(written, axis, reader);
    let deck_flashing = deck_flashing(&written.deck_flashing, &written.post_diameter, reader);
    let top_flashing = top_flashing(&written.top_flashing);
    let what = of("least distance of a lag from the rafter's edge", name);
    let lag_edge_distance =
        assumptions.length(what, written.lag_edge_distance.given().copied(), inches(0, 32));
    let beads = list(&written.beads, |bead| {
        let what = of("diameter of a bead", name);
        let diameter = assumptions.length(what, bead.diameter.given().copied(), inches(0, 24));
        Some(Bead { place: *bead.r#where.get()?, diameter })
    });
    let pilot_holes = list(&written.pilot_holes, |holes| {
        let (diameter, depth) = (*holes.diameter.get()?, *holes.depth.get()?);
        Some(PilotHoles { count: *holes.count.get()?, diameter, depth })
    });
    let dabs = list(&written.dabs, |dabs| {
        Some(Dabs { count: *dabs.count.get()?, volume_mm3: dabs.volume.get()?.mm3() })
    });
    let lags = lags(name, &written.lags, assumptions, reader);
    let item = |item: &raw::Item| Some(Item { item: item.item.get()?.clone(), count: *item.count.get()? });
    Some(Assembly {
        name: name.to_owned(),
        post_diameter: *written.post_diameter.get()?,
        clearance: *written.clearance.get()?,
        axis,
        hole_saws: hole_saws?,
        post_height: written.post_height.given().copied(),
        lap_surface_height: written.lap_surface_height.given().copied(),
        lag_edge_distance,
        lags: lags?,
        deck_flashing: deck_flashing?,
        top_flashing: top_flashing?,
        beads: beads?,
        pilot_holes: pilot_holes?,
        dabs: dabs?,
        items: list(&written.items, item)?,
        blocking_items: list(&written.blocking_items, item)?,
    })
}

/// The saws at hand, ascending; one of them has to be large enough for a post square to the deck.
fn hole_saws(written: &raw::Assembly, axis: Axis, reader: &mut Reader<'_>) -> Option<Vec<Length>> {
    let Some(saws) = written.hole_saws.given() else {
        return Some(Vec::new());
    };
    let mut saws: Vec<Length> = saws.iter().map(|saw| saw.get().copied()).collect::<Option<_>>()?;
    saws.sort();
    if let (Axis::Normal, Some(&post), Some(&gap)) =
        (axis, written.post_diameter.get(), written.clearance.get())
        && !saws.iter().any(|&saw| saw >= post + gap + gap)
    {
        let (post, gap) = (reader.written(written.post_diameter.at), reader.written(written.clearance.at));
        let message =
            format!("no hole saw is large enough for a post of {post} with a clearance of {gap} all round");
        let help = "add the saw that is used, or leave `hole_saws` out";
        reader.report(written.hole_saws.at, Code::NoHoleSaw, message, help);
    }
    Some(saws)
}

fn deck_flashing(
    field: &Field<raw::DeckFlashing>,
    post: &Field<Size>,
    reader: &mut Reader<'_>,
) -> Option<DeckFlashing> {
    let written = field.get()?;
    if let Some(&cone) = written.cone_diameter.get() {
        let shown = reader.written(written.cone_diameter.at);
        if post.get().is_some_and(|&post| cone < post) {
            let message =
                format!("a cone of {shown} does not go round a post of {}", reader.written(post.at));
            let help = "give the cone's diameter where it stands on the flange";
            reader.report(written.cone_diameter.at, Code::FlashingTooSmall, message, help);
        }
        let reaches = [
            (&written.width, written.width.get().copied()),
            (&written.down, written.down.get().map(|&down| down + down)),
            (&written.up, written.up.get().map(|&up| up + up)),
        ];
        for (side, room) in reaches {
            if room.is_some_and(|room| room < cone) {
                let message =
                    format!("a cone of {shown} does not stand on a flange of {}", reader.written(side.at));
                let help = "measure the flange from the post's centre down and up, and right across";
                reader.report(side.at, Code::FlashingTooSmall, message, help);
            }
        }
    }
    Some(DeckFlashing {
        width: *written.width.get()?,
        down: *written.down.get()?,
        up: *written.up.get()?,
        cone_diameter: *written.cone_diameter.get()?,
        cone_height: written.cone_height.given().copied(),
        dried_in: written.dried_in.given().copied().unwrap_or_default(),
    })
}

/// Whether a deck flashing that is dried in at the underlayment leaves a lap line a place to tuck.
///
/// A lap line tucks in `[v − down + drain, v + up − tuck]`; the window is not empty when `drain + tuck ≤ down + up`.
/// A post is patched up to a lap line `f` above that window, and its patch begins at `v`: with `tuck ≤ up` the line
/// lies above `v`, so that the patch comes out from under the sheet above and the sheet runs water onto it. The
/// patch is then higher than the underlap; that it reaches past the flashing's upper edge is the underlap's own check.
pub(super) fn check_tuck_window(
    assembly: &Assembly,
    practice: &Practice,
    display: Display,
    field: &Field<raw::Assembly>,
    written: &Field<Option<raw::Practice>>,
    reader: &mut Reader<'_>,
) {
    let flashing = &assembly.deck_flashing;
    let Some(side) = field.get().and_then(|assembly| Some(&assembly.deck_flashing.get()?.up)) else { return };
    if flashing.dried_in != DriedIn::Underlayment {
        return;
    }
    // The job's own practice is the likelier slip; one that it leaves out is as usual, and the flashing is not.
    let given = |field: fn(&raw::Practice) -> &Field<Option<Gap>>| {
        written.given().map(field).filter(|field| field.is_given()).map(|field| field.at)
    };
    let (tuck, drain) = (given(|practice| &practice.deck_tuck), given(|practice| &practice.drain));
    let name = quoted(&assembly.name);
    let [up, length, deck_tuck, least_drain] =
        [flashing.up, flashing.down + flashing.up, practice.deck_tuck, practice.drain]
            .map(|length| display.length(length));
    if practice.deck_tuck > flashing.up {
        let message = format!(
            "the sheet above can't cover {deck_tuck} of the deck flashing of {name}: it reaches {up} up from the \
             post's centre"
        );
        let help = format!(
            "give a `deck_tuck` in `practice` of at most {up}, or measure `up` of the flashing again"
        );
        reader.report(tuck.unwrap_or(side.at), Code::NoTuckWindow, message, help);
    } else if practice.drain + practice.deck_tuck > flashing.down + flashing.up {
        let message = format!(
            "a drain of {least_drain} and a tuck of {deck_tuck} leave no lap line a place on the deck flashing of \
             {name}, {length} from its lower to its upper edge"
        );
        let help = "give a smaller `drain` or `deck_tuck` in `practice`, or measure the flashing again";
        reader.report(drain.or(tuck).unwrap_or(side.at), Code::NoTuckWindow, message, help);
    }
}

fn top_flashing(field: &Field<raw::TopFlashing>) -> Option<TopFlashing> {
    let written = field.get()?;
    Some(TopFlashing {
        width: *written.width.get()?,
        down: *written.down.get()?,
        up: *written.up.get()?,
        formed: written.formed.given().copied().unwrap_or(false),
    })
}

/// What the takeoff works out by itself, line by line, beside the lines of a tile or an underlayment.
pub(super) const WORKED_OUT: [&str; 7] = [
    "blocking board",
    "reinforcing mesh",
    "reinforcing mesh, rolls",
    "roof cement",
    "roof cement, containers",
    "sealant",
    "sealant cartridge",
];

/// Checks the names of items that assemblies bring.
///
/// Refuses items named like a quantity, its packs or spare tiles, which the takeoff works out: nothing adds to those.
/// Names that differ by case or spaces only are the same to a person who reads an order. An item named like a plain
/// count, such as a staple, adds to it.
pub(super) fn check_items(job: &raw::Job, reader: &mut Reader<'_>) {
    let mut taken: BTreeSet<String> = WORKED_OUT.into_iter().map(str::to_owned).collect();
    for (tile, _) in job.tiles.get().into_iter().flatten() {
        let parts = ["", ", pan", ", cover"];
        taken.extend(parts.map(|part| plain(&format!("spare tile {tile}{part}"))));
    }
    for (sheet, _) in job.underlayments.get().into_iter().flatten() {
        taken.extend(["patches", "rolls"].map(|what| plain(&format!("{sheet}, {what}"))));
    }
    let assemblies = job.assemblies.given().into_iter().flatten();
    let lists = assemblies.filter_map(|(_, assembly)| assembly.get());
    let lists = lists.flat_map(|assembly| [&assembly.items, &assembly.blocking_items]);
    for item in lists.filter_map(Field::given).flatten().filter_map(Field::get) {
        let Some(name) = item.item.get().filter(|name| taken.contains(&plain(name))) else { continue };
        let message =
            format!("the item {} is called as a line that the takeoff works out by itself", quoted(name));
        let help = "call it otherwise; leave it out if it is that very thing";
        reader.report(item.item.at, Code::ItemIsWorkedOut, message, help);
    }
}

/// A name in lower case with single spaces.
fn plain(name: &str) -> String {
    name.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a list holds, none where it is left out.
fn list<K: Read, T>(
    field: &Field<Option<List<K>>>,
    mut make: impl FnMut(&K::Value) -> Option<T>,
) -> Option<Vec<T>> {
    let Some(items) = field.given() else {
        return Some(Vec::new());
    };
    items.iter().map(|item| make(item.get()?)).collect()
}
