//! A post with its flashings: whether its parts fit each other.
use super::practice::{Assumptions, inches, of};
use super::screening::lags;
use crate::job::fields::collections::List;
use crate::job::fields::quantities::Size;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Read, Reader};
use crate::model::{Assembly, Axis, Bead, Code, Dabs, DeckFlashing, Item, PilotHoles, TopFlashing};
use crate::units::Length;

pub(crate) fn assembly(
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

fn top_flashing(field: &Field<raw::TopFlashing>) -> Option<TopFlashing> {
    let written = field.get()?;
    Some(TopFlashing {
        width: *written.width.get()?,
        down: *written.down.get()?,
        up: *written.up.get()?,
        formed: written.formed.given().copied().unwrap_or(false),
    })
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
