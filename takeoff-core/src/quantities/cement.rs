//! Roof cement and mesh for three-course work, and the containers and rolls that hold them.
use super::MaterialLine;
use super::needs::{Needs, line, posts_by_assembly};
use super::packs::packs_of;
use super::sealant::volume;
use crate::deck::{bands_mm2, cement_mm3, mesh_mm};
use crate::model::{Display, DriedIn, Job};
use crate::units::{Area, Unit};

/// Roof cement with its containers, and mesh with its rolls, each up to whole ones once for the whole job; nothing
/// where no post has three-course work.
///
/// Mesh is counted by its length alone: what is left of a roll may be lapped on.
pub(super) fn cement_and_mesh(job: &Job) -> Vec<MaterialLine> {
    let (terms, display) = (&job.practice.three_course, job.display);
    let (mut cement, mut mesh) = (Needs::new(Unit::Mm3), Needs::new(Unit::Mm));
    for (assembly, posts) in posts_by_assembly(job) {
        let flange = &assembly.deck_flashing;
        if flange.dried_in != DriedIn::ThreeCourse {
            continue;
        }
        let long = flange.down + flange.up;
        let [wide, across, along, film] =
            [terms.mesh_width, flange.width, long, terms.film].map(|length| display.length(length));
        let bands = format!(
            "`{}`: bands {wide} wide round a flange of {across} × {along}, open below",
            assembly.name
        );
        let area_mm2 = bands_mm2(flange.width, long, terms.mesh_width);
        let coats = format!("{bands}: {}, {} coats of {film}", area(area_mm2, display), terms.coats);
        cement.add("roof cement", coats, cement_mm3(area_mm2, terms.film, terms.coats), posts.clone());
        mesh.add("reinforcing mesh", bands, mesh_mm(flange.width, long, terms.mesh_width), posts);
    }
    let of = |needs: Needs, waste: f64| {
        let lines = needs.into_lines().into_iter();
        lines.map(move |of| line(of.item, of.unit, waste, of.basis))
    };
    let cement = of(cement, terms.cement_waste).flat_map(|cement| {
        let [all, container] = [cement.need, terms.container_mm3].map(|mm3| volume(mm3, display));
        let what = format!("{all} of roof cement in containers of {container}");
        let containers = packs_of(&cement, "roof cement, containers", terms.container_mm3, what);
        [cement, containers]
    });
    let mesh = of(mesh, terms.mesh_waste).flat_map(|mesh| {
        let what = format!("the mesh from rolls of {}, by its length alone", display.length(terms.roll));
        let rolls = packs_of(&mesh, "reinforcing mesh, rolls", terms.roll.mm(), what);
        [mesh, rolls]
    });
    cement.chain(mesh).collect()
}

fn area(mm2: f64, display: Display) -> String {
    match display {
        Display::Imperial => Area::from_mm2(mm2).imperial(2),
        Display::Metric => Area::from_mm2(mm2).metric(4),
    }
}
