//! The underlayment: its kinds, and where the sheets of a slope lap.
use std::sync::Arc;

use super::Named;
use super::lines::{ascending, check_line_count};
use crate::job::fields::raw;
use crate::job::fields::scalars::Flag;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::{Assumptions, Code, LapLines, Outline, Underlayment, UnderlaymentBuilder};
use crate::units::Pitch;

/// A kind of underlayment.
pub(crate) fn underlayment(
    name: &str,
    field: &Field<raw::Underlayment>,
    assumptions: &mut Assumptions,
    reader: &mut Reader<'_>,
) -> Option<Underlayment> {
    let written = field.get()?;
    let is = |flag: &Field<Option<Flag>>| flag.given().copied().unwrap_or(false);
    let builder = UnderlaymentBuilder {
        name: name.to_owned(),
        sheet_width: written.sheet_width.input(),
        head_lap: written.head_lap.input(),
        roll_length: written.roll_length.optional_input(),
        turnable: is(&written.turnable),
        never_tucked: is(&written.bonded) || is(&written.brittle),
    };
    reader.judge(field.at, assumptions, |judge| builder.judge(judge))
}

/// The underlayment of a slope and its lap lines.
pub(crate) fn sheets(
    field: &Field<raw::Sheets>,
    outline: Option<&Outline>,
    underlayments: &Named<Underlayment>,
    reader: &mut Reader<'_>,
) -> (Option<Arc<Underlayment>>, Option<LapLines>) {
    let Some(written) = field.get() else {
        return (None, None);
    };
    let underlayment = underlayments.find(&written.kind, reader);
    let used = [written.first_lap_line.is_given(), written.lap_lines.is_given()];
    let lap_lines = match reader.one_way(field.at, used, "`first_lap_line` or `lap_lines`") {
        None => None,
        Some(0) => written.first_lap_line.given().map(|&first| LapLines::Regular { first }),
        Some(_) => {
            let lines = ascending(&written.lap_lines, "lap line", reader);
            lines
                .filter(|lines| {
                    check_line_count(lines.len() as i128, "lap lines", written.lap_lines.at, reader)
                })
                .map(LapLines::Measured)
        }
    };
    if let (Some(LapLines::Regular { first }), Some(sheet), Some(outline)) =
        (&lap_lines, &underlayment, outline)
    {
        let step = i128::from((sheet.sheet_width - sheet.head_lap).nm());
        let way = i128::from(outline.highest().nm()) - i128::from(first.nm());
        if step > 0 && !check_line_count(way / step, "lap lines", field.at, reader) {
            return (underlayment, None);
        }
    }
    (underlayment, lap_lines)
}

/// Tile is not laid below 2 1/2:12, and below 4:12 on two layers of underlayment (International Building Code
/// 2018, 1507.3.2 and 1507.3.3).
pub(crate) fn check_pitch(
    at: At,
    pitch: Pitch,
    underlayment: Option<&Underlayment>,
    lap_lines: Option<&LapLines>,
    reader: &mut Reader<'_>,
) {
    if below(pitch, 2.5) {
        let message = format!("`{pitch}` is below 2 1/2:12, the least slope for tile (IBC 2018, 1507.3.2)");
        let help = "ask how the roof is kept dry, and whether it may be opened at all";
        reader.report(at, Code::LowSlope, message, help);
    } else if let (true, Some(underlayment), Some(lap_lines)) = (below(pitch, 4.0), underlayment, lap_lines)
        && !is_double(underlayment, lap_lines)
    {
        let message = format!(
            "`{pitch}` is below 4:12, where the code asks for two layers of underlayment (IBC 2018, 1507.3.2), and \
             the sheets lap by less than half"
        );
        let help = "look on the roof how the sheets lap, and ask the local code";
        reader.report(at, Code::SingleUnderlayment, message, help);
    }
}

fn below(pitch: Pitch, rise_in_12: f64) -> bool {
    pitch.tan() * 12.0 < rise_in_12 * (1.0 - 1e-12)
}

/// Whether every place is under two sheets: each laps the one below by half its width or more.
fn is_double(underlayment: &Underlayment, lap_lines: &LapLines) -> bool {
    let step = match lap_lines {
        LapLines::Regular { .. } => underlayment.sheet_width - underlayment.head_lap,
        LapLines::Measured(lines) => {
            lines.windows(2).map(|pair| pair[1] - pair[0]).max().unwrap_or(underlayment.sheet_width)
        }
    };
    step + step <= underlayment.sheet_width
}
