//! Bounds on tuck, drain and underlap that leave each deck flashing a lap line and a patch.
use crate::job::fields::quantities::Gap;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::model::{Assembly, Code, Display, DriedIn, Practice};

/// Refuses a tuck and a drain that leave no lap line a place on a deck flashing dried in at the underlayment.
///
/// A lap line tucks in `[v − down + drain, v + up − tuck]`; the window is not empty when `drain + tuck ≤ down + up`.
/// A post is patched up to a lap line `f` above that window, and its patch begins at `v`: with `tuck ≤ up` the line
/// lies above `v`, so that the patch comes out from under the sheet above and the sheet runs water onto it. The
/// patch is then higher than the underlap; that it reaches past the flashing's upper edge is the underlap's own check.
pub(super) fn check_tuck_window(
    assembly: &Assembly,
    practice: &Practice,
    display: Display,
    field: &Field<raw::Assembly>,
    written: &Field<Option<raw::Practice>>,
    reader: &mut Reader<'_>,
) {
    let flashing = &assembly.deck_flashing;
    let Some(side) = field.get().and_then(|assembly| Some(&assembly.deck_flashing.get()?.up)) else { return };
    if flashing.dried_in != DriedIn::Underlayment {
        return;
    }
    // The job's own practice is the likelier slip; one that it leaves out is as usual, and the flashing is not.
    let given = |field: fn(&raw::Practice) -> &Field<Option<Gap>>| {
        written.given().map(field).filter(|field| field.is_given()).map(|field| field.at)
    };
    let (tuck, drain) = (given(|practice| &practice.deck_tuck), given(|practice| &practice.drain));
    let name = quoted(&assembly.name);
    let [up, length, deck_tuck, least_drain] =
        [flashing.up, flashing.down + flashing.up, practice.deck_tuck, practice.drain]
            .map(|length| display.length(length));
    if practice.deck_tuck > flashing.up {
        let message = format!(
            "the sheet above can't cover {deck_tuck} of the deck flashing of {name}: it reaches {up} up from the \
             post's centre"
        );
        let help = format!(
            "give a `deck_tuck` in `practice` of at most {up}, or measure `up` of the flashing again"
        );
        reader.report(tuck.unwrap_or(side.at), Code::NoTuckWindow, message, help);
    } else if practice.drain + practice.deck_tuck > flashing.down + flashing.up {
        let message = format!(
            "a drain of {least_drain} and a tuck of {deck_tuck} leave no lap line a place on the deck flashing of \
             {name}, {length} from its lower to its upper edge"
        );
        let help = "give a smaller `drain` or `deck_tuck` in `practice`, or measure the flashing again";
        reader.report(drain.or(tuck).unwrap_or(side.at), Code::NoTuckWindow, message, help);
    }
}

/// Refuses an underlap with which a patch can end below the upper edge of the flashing that it covers.
///
/// A post is patched where no lap line `f` is at or below `v + up − tuck`, and its patch runs to `f + under`. The
/// lowest such line is next to `v + up − tuck`, so the patch ends above `v + up` wherever the line lies when
/// `under ≥ tuck`.
pub(super) fn check_patch_underlap(
    practice: &Practice,
    written: Option<&raw::Practice>,
    display: Display,
    reader: &mut Reader<'_>,
) {
    let Some(written) = written else { return };
    let both_read = written.patch_underlap.optional().is_some() && written.deck_tuck.optional().is_some();
    if !both_read || practice.patch_underlap >= practice.deck_tuck {
        return;
    }
    let [underlap, tuck] = [practice.patch_underlap, practice.deck_tuck].map(|length| display.length(length));
    let message = format!(
        "a patch {underlap} under the sheet above can end below the upper edge of a flashing that tucks {tuck}"
    );
    let help = "give a `patch_underlap` of at least the `deck_tuck`";
    let given = written.patch_underlap.is_given();
    let at = if given { written.patch_underlap.at } else { written.deck_tuck.at };
    reader.report(at, Code::PatchTooShort, message, help);
}
