//! Items of assemblies that have the name of a material which the takeoff counts in another way.
use std::collections::BTreeSet;

use crate::materials::{Material, Piece};
use crate::model::{Code, Item, Job, Pieces, Problem, Problems, Tile};
use crate::roof::Part;

/// An error for each item of an assembly whose name is that of spare tiles, of a quantity or of its packs.
///
/// Such an item can't be added to the line of its name: spare tiles are a pooled count, a quantity is no count, and
/// packs give a quantity again, of the two of which one is bought. Items named like a plain count (staples, batten
/// nails, tile fasteners, saw blades) add to it and are no error.
pub fn conflicting_items(job: &Job) -> Problems {
    let taken: BTreeSet<String> = not_items(job).map(|material| material.name()).collect();
    let mut problems = Problems::new();
    for assembly in &job.assemblies {
        let lists = [("items", &assembly.items), ("blocking_items", &assembly.blocking_items)];
        for (list, items) in lists {
            for (place, Item { item, .. }) in
                items.iter().enumerate().filter(|(_, of)| taken.contains(&of.item))
            {
                // JSON Pointer (RFC 6901): `~` is written `~0`, `/` is written `~1`.
                let assembly = assembly.name.replace('~', "~0").replace('/', "~1");
                problems.push(Problem::new(
                    Code::ItemIsWorkedOut,
                    format!("the item `{item}` has the name of a line that the takeoff works out"),
                    "give it another name, or leave it out if it is the same thing",
                    format!("/assemblies/{assembly}/{list}/{place}/item"),
                ));
            }
        }
    }
    problems
}

/// Materials of a job that no item adds to.
fn not_items(job: &Job) -> impl Iterator<Item = Material> + '_ {
    let spares = job.tiles.iter().flat_map(|tile| pieces(tile)).map(Material::SpareTile);
    let sheets = job.slopes.iter().map(|slope| &slope.underlayment.name);
    let felt = sheets.flat_map(|sheet| [Material::Felt(sheet.clone()), Material::FeltRolls(sheet.clone())]);
    spares.chain(felt).chain(Material::WORKED_OUT)
}

fn pieces(tile: &Tile) -> Vec<Piece> {
    let parts: &[Part] = match tile.pieces {
        Pieces::One { .. } => &[Part::Tile],
        Pieces::PanAndCover { .. } => &[Part::Pan, Part::Cover],
    };
    parts.iter().map(|&part| Piece::new(&tile.name, part)).collect()
}
