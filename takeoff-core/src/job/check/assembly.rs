//! A post with its flashings as a job file has it.
use crate::job::fields::collections::List;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Read, Reader};
use crate::model::{
    Assembly, AssemblyBuilder, Assumptions, BeadMeasures, Dabs, DeckFlashingMeasures, Input, Item,
    LagsBuilder, PilotHoles, TopFlashingMeasures,
};

pub(crate) fn assembly(
    name: &str,
    field: &Field<raw::Assembly>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Assembly> {
    let written = field.get()?;
    let item = |item: &raw::Item| Some(Item { item: item.item.get()?.clone(), count: *item.count.get()? });
    let builder = AssemblyBuilder {
        name: name.to_owned(),
        post_diameter: written.post_diameter.input(),
        clearance: written.clearance.input(),
        axis: written.axis.given().copied().unwrap_or_default(),
        hole_saws: list(&written.hole_saws, |saw| Some(*saw)),
        post_height: written.post_height.optional_input(),
        lap_surface_height: written.lap_surface_height.optional_input(),
        lag_edge_distance: written.lag_edge_distance.optional_input(),
        lags: match written.lags.optional() {
            Some(None) => Input::Missing,
            Some(Some(written)) => Input::Given(lags(written)),
            None => Input::Unread,
        },
        deck_flashing: written.deck_flashing.get().map_or(Input::Unread, |written| {
            Input::Given(DeckFlashingMeasures {
                width: written.width.input(),
                down: written.down.input(),
                up: written.up.input(),
                cone_diameter: written.cone_diameter.input(),
                cone_height: written.cone_height.optional_input(),
                dried_in: written.dried_in.given().copied().unwrap_or_default(),
            })
        }),
        top_flashing: written.top_flashing.get().map_or(Input::Unread, |written| {
            Input::Given(TopFlashingMeasures {
                width: written.width.input(),
                down: written.down.input(),
                up: written.up.input(),
                formed: written.formed.given().copied().unwrap_or(false),
            })
        }),
        beads: list(&written.beads, |bead| {
            Some(BeadMeasures { place: bead.r#where.input(), diameter: bead.diameter.optional_input() })
        }),
        pilot_holes: list(&written.pilot_holes, |holes| {
            let (diameter, depth) = (*holes.diameter.get()?, *holes.depth.get()?);
            Some(PilotHoles { count: *holes.count.get()?, diameter, depth })
        }),
        dabs: list(&written.dabs, |dabs| {
            Some(Dabs { count: *dabs.count.get()?, volume_mm3: dabs.volume.get()?.mm3() })
        }),
        items: list(&written.items, item),
        blocking_items: list(&written.blocking_items, item),
    };
    reader.judge(field.at, assumptions, |judge| builder.judge(judge))
}

fn lags(written: &raw::Lags) -> LagsBuilder {
    LagsBuilder {
        count: written.count.input(),
        diameter: written.diameter.input(),
        length: written.length.input(),
        thread_length: written.thread_length.optional_input(),
        tip: written.tip.optional_input(),
        shim: written.shim.optional_input(),
        across: written.across.optional_input(),
        spacing: written.spacing.optional_input(),
    }
}

/// A list as a builder takes it: unread where a part of it is. One that is no list at all counts as left out, so that
/// the rest is judged.
fn list<K: Read, T>(field: &Field<Option<List<K>>>, make: impl Fn(&K::Value) -> Option<T>) -> Input<Vec<T>> {
    match field.optional() {
        Some(None) | None => Input::Missing,
        Some(Some(parts)) => {
            let parts = parts.iter().map(|part| make(part.get()?)).collect::<Option<_>>();
            parts.map_or(Input::Unread, Input::Given)
        }
    }
}
