//! Place of a slope in the world, and its pitch.
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader};
use crate::job::parse::document::At;
use crate::model::{Code, Georeference};
use crate::roof::{FitError, PlaneFit};
use crate::units::{Length, Pitch};

/// The most surveyed points of a slope.
const MOST_POINTS: usize = 10_000;

/// Place of the slope in the world, if the job gives it.
pub(crate) fn place(
    field: &Field<Option<raw::Place>>,
    reader: &mut Reader<'_>,
) -> Option<Option<Georeference>> {
    let Some(written) = field.optional()? else {
        return Some(None);
    };
    let used = [written.origin.is_given() || written.azimuth.is_given(), written.points.is_given()];
    if reader.one_way(field.at, used, "`origin` and `azimuth`, or `points`")? == 0 {
        let origin = reader.needed(field.at, "origin", &written.origin);
        let azimuth = reader.needed(field.at, "azimuth", &written.azimuth);
        return Some(Some(Georeference::Given { origin: *origin?, azimuth_deg: azimuth?.degrees() }));
    }
    let points: Vec<[Length; 3]> =
        written.points.given()?.iter().map(|point| point.get().copied()).collect::<Option<_>>()?;
    if points.len() > MOST_POINTS {
        let message = format!("{} surveyed points are more than {MOST_POINTS}", points.len());
        reader.report(written.points.at, Code::TooMany, message, "a few dozen tell the plane");
        return None;
    }
    match PlaneFit::to(&points) {
        Ok(_) => Some(Some(Georeference::Surveyed(points))),
        Err(error) => {
            let message = match error {
                FitError::TooFew => format!("{} surveyed points make no plane", points.len()),
                FitError::Collinear => "the surveyed points lie in one line, or in one place".to_owned(),
                FitError::Level => "the surveyed points lie in a level plane, which falls nowhere".to_owned(),
            };
            let help = "survey three points or more, well apart and not in one line";
            reader.report(written.points.at, Code::NoPlane, message, help);
            None
        }
    }
}

/// Pitch of the slope: as given, or that of its surveyed points.
pub(crate) fn pitch(
    slope: At,
    field: &Field<Option<crate::job::fields::quantities::Pitch>>,
    place: Option<&Option<Georeference>>,
    reader: &mut Reader<'_>,
) -> Option<Pitch> {
    let fit = match place {
        Some(Some(Georeference::Surveyed(points))) => PlaneFit::to(points).ok()?,
        Some(_) => return reader.needed(slope, "pitch", field).copied(),
        // What the place would have told is not known.
        None => return field.given().copied(),
    };
    if let Some(given) = field.given() {
        let (shown, surveyed, given_deg) = (reader.written(field.at), fit.pitch_deg, given.degrees());
        if (surveyed - given_deg).abs() > 1.0 {
            let message =
                format!("{shown} is {given_deg:.1} deg, and the surveyed points lie at {surveyed:.1} deg");
            let help = "measure again, or leave `pitch` out: then that of the surveyed points is taken";
            reader.report(field.at, Code::PitchDisagrees, message, help);
        }
        return Some(*given);
    }
    Pitch::from_degrees(fit.pitch_deg).map_err(|error| reader.report_unit(slope, error)).ok()
}
