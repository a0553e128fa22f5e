//! Names of the items that assemblies bring.
use std::collections::BTreeSet;

use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::materials::{Material, Piece};
use crate::model::Code;
use crate::roof::Part;

/// Checks the names of items that assemblies bring.
///
/// Refuses items named like a quantity, its packs or spare tiles, which the takeoff works out: nothing adds to those.
/// Names that differ by case or spaces only are the same to a person who reads an order. An item named like a plain
/// count, such as a staple, adds to it.
pub(super) fn check_items(job: &raw::Job, reader: &mut Reader<'_>) {
    let tiles = job.tiles.get().into_iter().flatten();
    let spares = tiles.flat_map(|(tile, _)| {
        [Part::Tile, Part::Pan, Part::Cover].map(|part| Material::SpareTile(Piece::new(tile, part)))
    });
    let sheets = job.underlayments.get().into_iter().flatten();
    let felt =
        sheets.flat_map(|(sheet, _)| [Material::Felt(sheet.clone()), Material::FeltRolls(sheet.clone())]);
    let worked_out = spares.chain(felt).chain(Material::WORKED_OUT);
    let taken: BTreeSet<String> = worked_out.map(|material| plain(&material.name())).collect();
    let assemblies = job.assemblies.given().into_iter().flatten();
    let lists = assemblies.filter_map(|(_, assembly)| assembly.get());
    let lists = lists.flat_map(|assembly| [&assembly.items, &assembly.blocking_items]);
    for item in lists.filter_map(Field::given).flatten().filter_map(Field::get) {
        let Some(name) = item.item.get().filter(|name| taken.contains(&plain(name))) else { continue };
        let message = format!("the item {} has the name of a line that the takeoff works out", quoted(name));
        let help = "give it another name, or leave it out if it is the same thing";
        reader.report(item.item.at, Code::ItemIsWorkedOut, message, help);
    }
}

/// A name in lower case with single spaces.
fn plain(name: &str) -> String {
    name.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ")
}
