//! Every material by its name, unit and quantity.
use super::{Material, Piece};
use crate::roof::Part;
use crate::testing::{assembly, gable_with, job, practice};
use crate::units::Unit;

#[test]
fn names_units_and_quantities() {
    let felt = || "felt-30".to_owned();
    for (material, name, unit, quantity) in [
        (Material::SpareTile(Piece::new("flat", Part::Tile)), "spare tile flat", Unit::Each, None),
        (Material::SpareTile(Piece::new("mission", Part::Pan)), "spare tile mission, pan", Unit::Each, None),
        (Material::Felt(felt()), "felt-30, patches", Unit::Mm2, None),
        (Material::FeltRolls(felt()), "felt-30, rolls", Unit::Each, Some("felt-30, patches")),
        (Material::RoofCement, "roof cement", Unit::Mm3, None),
        (Material::CementContainers, "roof cement, containers", Unit::Each, Some("roof cement")),
        (Material::Mesh, "reinforcing mesh", Unit::Mm, None),
        (Material::MeshRolls, "reinforcing mesh, rolls", Unit::Each, Some("reinforcing mesh")),
        (Material::Sealant, "sealant", Unit::Mm3, None),
        (Material::SealantCartridges, "sealant cartridge", Unit::Each, Some("sealant")),
        (Material::Staple, "staple", Unit::Each, None),
        (Material::BattenNail, "batten nail", Unit::Each, None),
        (Material::TileFastener("flat".to_owned()), "fastener for flat", Unit::Each, None),
        (Material::Item("storm collar".to_owned()), "storm collar", Unit::Each, None),
        (Material::Blocking, "blocking board", Unit::Mm, None),
        (Material::Blade, "saw blade", Unit::Each, None),
    ] {
        assert_eq!(material.to_string(), name);
        assert_eq!(material.unit(), unit, "{name}");
        assert_eq!(material.packs_of().map(|material| material.name()).as_deref(), quantity, "{name}");
    }
}

/// A plain count takes items of its name; a quantity, packs and spare tiles do not.
#[test]
fn items_of_a_plain_count() {
    let job = job(vec![gable_with(assembly(), &[])]);
    for count in
        [Material::Staple, Material::BattenNail, Material::Blade, Material::TileFastener("flat".to_owned())]
    {
        assert_eq!(Material::from_item(&count.name(), &job), count);
    }
    for name in ["storm collar", "sealant", "felt-30, rolls", "spare tile flat", "fastener for slate"] {
        assert_eq!(Material::from_item(name, &job), Material::Item(name.to_owned()));
    }
}

#[test]
fn waste_by_name_by_quantity_and_by_practice() {
    let mut practice = practice();
    practice.sealant_waste = 0.1;
    assert_eq!(Material::SealantCartridges.waste(&practice), 0.1);
    assert_eq!(Material::Staple.waste(&practice), 0.0);
    practice.waste.insert("felt-30, patches".to_owned(), 0.2);
    let rolls = Material::FeltRolls("felt-30".to_owned());
    assert_eq!(rolls.waste(&practice), 0.2);
    practice.waste.insert("felt-30, rolls".to_owned(), 0.05);
    assert_eq!(rolls.waste(&practice), 0.05);
}
