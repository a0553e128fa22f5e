use super::*;

mod lengths;
mod properties;
mod quantities;
mod refused;

fn length(text: &str) -> Length {
    Length::parse(text).unwrap_or_else(|error| panic!("{text}: {error} ({})", error.help))
}

/// `a / b` inches. An inch is 25 400 000 nm exactly: international yard and pound agreement, 1959.
fn inches(a: i64, b: i64) -> Length {
    assert_eq!(a * 25_400_000 % b, 0);
    Length::from_nm(a * 25_400_000 / b)
}

#[derive(Clone, Copy, Debug)]
enum Kind {
    Length,
    Pitch,
    Azimuth,
    Volume,
    Weight,
}

impl Kind {
    const ALL: [Kind; 5] = [Kind::Length, Kind::Pitch, Kind::Azimuth, Kind::Volume, Kind::Weight];

    /// The number kept, whatever the quantity.
    fn parse(self, text: &str) -> Result<f64, UnitError> {
        match self {
            Kind::Length => Length::parse(text).map(Length::mm),
            Kind::Pitch => Pitch::parse(text).map(Pitch::degrees),
            Kind::Azimuth => Azimuth::parse(text).map(Azimuth::degrees),
            Kind::Volume => Volume::parse(text).map(Volume::mm3),
            Kind::Weight => Weight::parse(text).map(Weight::grams),
        }
    }
}
