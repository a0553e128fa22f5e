//! Three-course work: what it is made of, and whether it may be asked for.
use super::practice::given;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::model::{Assumptions, Code, DriedIn, MeshAndCement, Practice, inches_and_64ths};
use crate::units::Volume;

/// A US gallon: 231 cubic inches.
const GALLON: Volume = Volume::from_mm3(231.0 * 25.4 * 25.4 * 25.4);

/// Mesh and cement as the job has them; listed as assumptions where an assembly asks for three-course work.
///
/// The mesh, centred on the flange's edge, has to reach the edge extension beyond it.
pub(crate) fn mesh_and_cement(
    job: &raw::Job,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> MeshAndCement {
    let display = assumptions.display;
    let mut unlisted = Assumptions::new(display);
    let a = if is_asked_for(job) { assumptions } else { &mut unlisted };
    let p = job.practice.given();
    a.flag(
        "three-course work is allowed by the building official",
        given(p, |p| &p.three_course_allowed),
        false,
    );
    let mesh_width = a.length("width of the mesh", given(p, |p| &p.mesh_width), inches_and_64ths(4, 0));
    let extension = a.length(
        "least of the mesh beyond the edge of a deck flange",
        given(p, |p| &p.edge_extension),
        inches_and_64ths(1, 32),
    );
    let coats = a.count("coats of roof cement", given(p, |p| &p.cement_coats), 2);
    if let Some(p) = p {
        let both_read = p.mesh_width.optional().is_some() && p.edge_extension.optional().is_some();
        if both_read && mesh_width < extension + extension {
            let message = format!(
                "half of a mesh {} wide is less than the edge extension of {}",
                display.length(mesh_width),
                display.length(extension)
            );
            let at = if p.mesh_width.is_given() { p.mesh_width.at } else { p.edge_extension.at };
            reader.report(at, Code::MeshTooNarrow, message, "take a wider mesh, or a smaller edge extension");
        }
        if coats == 0 {
            let message = "three-course work has at least one coat of roof cement: `0` is none";
            reader.report(p.cement_coats.at, Code::OutOfRange, message, "give the coats, usually 2");
        }
    }
    MeshAndCement {
        mesh_width,
        film: a.length("one coat of roof cement", given(p, |p| &p.cement_film), inches_and_64ths(0, 8)),
        coats,
        container_mm3: a.volume("container of roof cement", given(p, |p| &p.cement_container), GALLON).mm3(),
        roll: a.length("roll of mesh", given(p, |p| &p.mesh_roll), inches_and_64ths(1_800, 0)),
        cement_waste: a.number("roof cement lost, as a share", given(p, |p| &p.cement_waste), 0.1),
        mesh_waste: a.number("mesh lost, as a share", given(p, |p| &p.mesh_waste), 0.1),
    }
}

/// Whether an assembly asks for it.
fn is_asked_for(job: &raw::Job) -> bool {
    let assemblies = job.assemblies.given().into_iter().flatten();
    let mut flashings = assemblies.filter_map(|(_, assembly)| assembly.get()?.deck_flashing.get());
    flashings.any(|flashing| flashing.dried_in.given() == Some(&DriedIn::ThreeCourse))
}

/// Whether an assembly that asks for three-course work may have it, and whether the mesh finds room on its flange.
pub(crate) fn check(
    field: &Field<raw::Assembly>,
    practice: &Practice,
    written: &Field<Option<raw::Practice>>,
    reader: &mut Reader<'_>,
) {
    let Some(flange) = field.get().and_then(|assembly| assembly.deck_flashing.get()) else { return };
    if flange.dried_in.given() != Some(&DriedIn::ThreeCourse) {
        return;
    }
    if is_allowed(written) == Some(false) {
        let message =
            "three-course work is asked for, and the job does not say that the building official allows it";
        let help = "ask the building official; if it is allowed, set `three_course_allowed` in `practice` to true, \
                    else leave `dried_in` out";
        reader.report(flange.dried_in.at, Code::ThreeCourseNotAllowed, message, help);
    }
    let length = flange.down.get().zip(flange.up.get()).map(|(&down, &up)| down + up);
    let rooms =
        [(&flange.width, flange.width.get().copied()), (&flange.up, length.map(|length| length + length))];
    for (side, room) in rooms {
        if room.is_some_and(|room| practice.three_course.mesh_width > room) {
            let message = "the bands of mesh, centred on the edges of the flange, lie on each other";
            let help = "look at the flange's size, and at `mesh_width` in `practice`";
            reader.report(side.at, Code::FlashingTooSmall, message, help);
        }
    }
}

/// Whether the job says that three-course work is allowed; nothing where what it says is reported to be wrong.
fn is_allowed(practice: &Field<Option<raw::Practice>>) -> Option<bool> {
    match practice.optional()? {
        Some(practice) => Some(practice.three_course_allowed.optional()?.copied().unwrap_or(false)),
        None => Some(false),
    }
}
