//! Roof cement and mesh of three-course work.
use super::Need;
use crate::deck::{bands_mm2, cement_mm3, mesh_mm};
use crate::materials::Material;
use crate::model::{Assembly, Display, Job};
use crate::units::Area;

/// Roof cement and mesh round the deck flashing of one post: cement by area × film × coats, mesh by the length of its
/// strips.
pub(super) fn cement_and_mesh(job: &Job, assembly: &Assembly) -> [Need; 2] {
    let (terms, display, flange) = (&job.practice.three_course, job.display, &assembly.deck_flashing);
    let long = flange.down + flange.up;
    let [wide, across, along, film] =
        [terms.mesh_width, flange.width, long, terms.film].map(|length| display.length(length));
    let bands =
        format!("`{}`: bands {wide} wide round a flange of {across} × {along}, open below", assembly.name);
    let area_mm2 = bands_mm2(flange.width, long, terms.mesh_width);
    [
        Need {
            material: Material::RoofCement,
            amount: cement_mm3(area_mm2, terms.film, terms.coats),
            why: format!("{bands}: {}, {} coats of {film}", area(area_mm2, display), terms.coats),
        },
        Need { material: Material::Mesh, amount: mesh_mm(flange.width, long, terms.mesh_width), why: bands },
    ]
}

fn area(mm2: f64, display: Display) -> String {
    match display {
        Display::Imperial => Area::from_mm2(mm2).imperial(2),
        Display::Metric => Area::from_mm2(mm2).metric(4),
    }
}
