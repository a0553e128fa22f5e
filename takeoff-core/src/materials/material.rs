//! Identity of a material.
use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};

use super::Piece;
use crate::model::{Job, Practice};
use crate::units::Unit;

/// A material of a job. Two materials are the same if and only if their variants and what these carry are equal; the
/// name serves people, price lists and the job's waste by item. In JSON the name.
///
/// # Example
///
/// ```
/// use takeoff_core::{materials::Material, units::Unit};
/// let rolls = Material::FeltRolls("felt-30".to_owned());
/// assert_eq!(rolls.name(), "felt-30, rolls");
/// assert_eq!(rolls.unit(), Unit::Each);
/// assert_eq!(rolls.packs_of(), Some(Material::Felt("felt-30".to_owned())));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum Material {
    /// Spare tiles of one kind of piece.
    SpareTile(Piece),
    /// Felt of patches, by area; the underlayment's name.
    Felt(String),
    /// The same felt in rolls.
    FeltRolls(String),
    /// Roof cement, by volume.
    RoofCement,
    /// The same cement in containers.
    CementContainers,
    /// Reinforcing mesh, by length.
    Mesh,
    /// The same mesh in rolls.
    MeshRolls,
    /// Sealant, by volume.
    Sealant,
    /// The same sealant in cartridges.
    SealantCartridges,
    /// Staples of patches.
    Staple,
    /// Nails of batten pieces that are reset.
    BattenNail,
    /// Nails, screws or clips of one kind of tile; the tile's name.
    TileFastener(String),
    /// A thing that only the job names: an assembly's item.
    Item(String),
    /// Blocking between rafters, by length.
    Blocking,
    /// Saw blades worn out on tile.
    Blade,
}

impl Material {
    /// Materials that the takeoff works out for a whole job and to which no assembly's item adds.
    pub(crate) const WORKED_OUT: [Material; 7] = [
        Material::RoofCement,
        Material::CementContainers,
        Material::Mesh,
        Material::MeshRolls,
        Material::Sealant,
        Material::SealantCartridges,
        Material::Blocking,
    ];

    /// The material that an assembly's item is: a plain count of the takeoff where it has that material's name, so
    /// that an item `staple` adds to the staples of the patches; else an item of its own.
    ///
    /// Quantities, packs and spare tiles are no plain counts: an item of such a name is an error of the takeoff,
    /// [`conflicting_items`](crate::quantities::conflicting_items).
    pub fn from_item(name: &str, job: &Job) -> Material {
        let fasteners = job.tiles.iter().map(|tile| Material::TileFastener(tile.name.clone()));
        let counts = [Material::Staple, Material::BattenNail, Material::Blade].into_iter().chain(fasteners);
        counts
            .into_iter()
            .find(|count| count.name() == name)
            .unwrap_or_else(|| Material::Item(name.to_owned()))
    }

    /// Name on the material list.
    pub fn name(&self) -> String {
        match self {
            Material::SpareTile(piece) => format!("spare tile {piece}"),
            Material::Felt(underlayment) => format!("{underlayment}, patches"),
            Material::FeltRolls(underlayment) => format!("{underlayment}, rolls"),
            Material::RoofCement => "roof cement".to_owned(),
            Material::CementContainers => "roof cement, containers".to_owned(),
            Material::Mesh => "reinforcing mesh".to_owned(),
            Material::MeshRolls => "reinforcing mesh, rolls".to_owned(),
            Material::Sealant => "sealant".to_owned(),
            Material::SealantCartridges => "sealant cartridge".to_owned(),
            Material::Staple => "staple".to_owned(),
            Material::BattenNail => "batten nail".to_owned(),
            Material::TileFastener(tile) => format!("fastener for {tile}"),
            Material::Item(name) => name.clone(),
            Material::Blocking => "blocking board".to_owned(),
            Material::Blade => "saw blade".to_owned(),
        }
    }

    /// Unit of its amounts.
    pub fn unit(&self) -> Unit {
        match self {
            Material::Felt(_) => Unit::Mm2,
            Material::RoofCement | Material::Sealant => Unit::Mm3,
            Material::Mesh | Material::Blocking => Unit::Mm,
            Material::SpareTile(_)
            | Material::FeltRolls(_)
            | Material::CementContainers
            | Material::MeshRolls
            | Material::SealantCartridges
            | Material::Staple
            | Material::BattenNail
            | Material::TileFastener(_)
            | Material::Item(_)
            | Material::Blade => Unit::Each,
        }
    }

    /// The quantity that it is the packs of: of the two, one is bought. `None` for a material that is no pack.
    pub fn packs_of(&self) -> Option<Material> {
        Some(match self {
            Material::FeltRolls(underlayment) => Material::Felt(underlayment.clone()),
            Material::CementContainers => Material::RoofCement,
            Material::MeshRolls => Material::Mesh,
            Material::SealantCartridges => Material::Sealant,
            _ => return None,
        })
    }

    /// Share lost: the job's for its name, else the job's for the quantity that it is the packs of, else that of the
    /// practice for sealant, cement and mesh; 0 for all others.
    pub(crate) fn waste(&self, practice: &Practice) -> f64 {
        let quantity = self.packs_of();
        let given = [Some(self), quantity.as_ref()].into_iter().flatten();
        let given = given.filter_map(|material| practice.waste.get(&material.name())).next();
        given.copied().unwrap_or(match quantity.as_ref().unwrap_or(self) {
            Material::Sealant => practice.sealant_waste,
            Material::RoofCement => practice.three_course.cement_waste,
            Material::Mesh => practice.three_course.mesh_waste,
            _ => 0.0,
        })
    }
}

impl fmt::Display for Material {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.name())
    }
}

impl Serialize for Material {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl JsonSchema for Material {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Material".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        String::json_schema(generator)
    }
}
