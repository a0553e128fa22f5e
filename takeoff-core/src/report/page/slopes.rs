//! The slopes.
use super::super::markup::Markup;
use super::super::quantity::Quantities;
use super::grid::Grid;
use crate::report::document::{PlaceTakeoff, SlopeTakeoff, Takeoff};

/// A row a slope.
pub(super) fn table(html: &mut Markup, takeoff: &Takeoff, shown: Quantities) {
    let placed = |slope: &SlopeTakeoff, say: fn(&PlaceTakeoff) -> String| {
        slope.place.as_ref().map(say).unwrap_or_default()
    };
    Grid::new("Slopes", &takeoff.slopes)
        .name("slope", |slope| slope.name.clone())
        .number("posts", |slope| slope.posts.len().to_string())
        .number("pitch", |slope| slope.pitch.clone())
        .number("slope factor", |slope| format!("{:.4}", slope.slope_factor))
        .number("area", |slope| shown.area(slope.area_mm2))
        .number("courses", |slope| slope.courses.len().to_string())
        .number("exposure", |slope| {
            let exposures: Vec<f64> = slope.courses.iter().filter_map(|course| course.exposure_mm).collect();
            shown.range(exposures.iter().copied()).unwrap_or_default()
        })
        .number("cover", |slope| shown.short_length(slope.columns.cover_mm))
        .number("falls toward", |slope| placed(slope, |place| format!("{:.0}°", place.azimuth_deg)))
        .number("fit, RMS", |slope| {
            let rms = slope.place.as_ref().and_then(|place| place.rms_mm);
            rms.map(|rms| shown.fine_length(rms)).unwrap_or_default()
        })
        .write(html);
}
