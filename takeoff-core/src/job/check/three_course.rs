//! Whether three-course work may be asked for.
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::model::{Code, DriedIn, Practice};

/// Whether an assembly asks for it.
pub(crate) fn is_asked_for(job: &raw::Job) -> bool {
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
