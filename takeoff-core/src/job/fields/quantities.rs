//! Kinds of value with a unit: lengths by their range, pitches, volumes and the like, and points.
use schemars::json_schema;

use super::scalars::schema;
use crate::geometry::SlopePoint;
use crate::job::parse::decode::{Read, Reader, quoted};
use crate::job::parse::document::{At, Value};
use crate::model::{Code, LENGTH, Range};
use crate::units::{self, Length};

/// A row per kind of length: its range.
macro_rules! lengths {
    ($( $(#[$doc:meta])* $name:ident: $range:ident; )*) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        schema!($name by name: json_schema!({
            "type": "string",
            "description": format!("A length with its unit, {}.", Range::$range.words),
            "examples": ["16 1/2 in", "3 ft 4 1/2 in", "168 mm"],
        }));

        impl $name {
            /// The length written, if it is one and in range; what is wrong is reported.
            pub(crate) fn parse(written: &str, at: At, reader: &mut Reader<'_>) -> Option<Length> {
                let length = Length::parse(written).map_err(|error| reader.report_unit(at, error)).ok()?;
                if Range::$range.contains(length) {
                    return Some(length);
                }
                let (message, help) = Range::$range.refusal(reader.tree.name(at), &quoted(written));
                reader.report(at, Code::OutOfRange, message, help);
                None
            }
        }

        impl Read for $name {
            type Value = Length;
            const EXPECTS: &'static str = LENGTH;

            fn read(at: At, reader: &mut Reader<'_>) -> Option<Length> {
                let written = reader.text(at, Self::EXPECTS)?;
                $name::parse(written, at, reader)
            }
        }
    )*};
}

lengths! {
    /// Place of something, from the slope's origin.
    Position: POSITION;
    /// Distance between two things on the roof.
    Distance: DISTANCE;
    /// Length of a roll or a row.
    Run: RUN;
    /// Size of a part.
    Size: SIZE;
    /// Gap or lap between parts.
    Gap: GAP;
    /// A tile's length, width and cover width.
    TileSize: TILE_SIZE;
}

/// A quantity that is kept as a number, by way of its parser in [`units`].
macro_rules! quantities {
    ($( $(#[$doc:meta])* $name:ident -> $value:ty: $expects:literal, $example:literal, $parse:expr; )*) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        schema!($name by name: json_schema!({ "type": "string", "description": concat!($expects, "."), "examples": [$example] }));

        impl Read for $name {
            type Value = $value;
            const EXPECTS: &'static str = concat!($expects, ", such as `\"", $example, "\"`");

            fn read(at: At, reader: &mut Reader<'_>) -> Option<$value> {
                let text = reader.text(at, Self::EXPECTS)?;
                $parse(text).map_err(|error| reader.report_unit(at, error)).ok()
            }
        }
    )*};
}

quantities! {
    /// Pitch of a slope.
    Pitch -> units::Pitch: "A pitch as rise:run, in degrees or percent", "5:12", units::Pitch::parse;
    /// A direction on the ground.
    Azimuth -> units::Azimuth: "An azimuth in degrees clockwise from north", "135 deg", units::Azimuth::parse;
    /// Volume of a thing.
    Volume -> units::Volume: "A volume with its unit", "10.1 fl oz", some_volume;
    /// Wind and loads on an area.
    Pressure -> units::Pressure: "A pressure with its unit", "24.5 psf", units::Pressure::parse;
    /// Wind speed.
    Speed -> units::Speed: "A speed with its unit", "115 mph", units::Speed::parse;
    /// Weight of a thing.
    Weight -> units::Weight: "A weight with its unit", "9.6 lb", units::Weight::parse;
}

fn some_volume(text: &str) -> Result<units::Volume, units::UnitError> {
    let volume = units::Volume::parse(text)?;
    if volume.mm3() > 0.0 {
        return Ok(volume);
    }
    let message = format!("{} is no volume at all", quoted(text));
    Err(units::UnitError { code: Code::OutOfRange.as_str(), message, help: "write what it holds".to_owned() })
}

/// A point of a slope, `["4 ft 8 in", "3 ft 1 in"]`.
pub(crate) struct Point;
schema!(Point by name: json_schema!({
    "type": "array", "items": { "type": "string" }, "minItems": 2, "maxItems": 2,
    "description": "A point of the slope: along the eave and up the slope, each a length with its unit.",
    "examples": [["4 ft 8 in", "3 ft 1 in"]],
}));

impl Read for Point {
    type Value = SlopePoint;
    const EXPECTS: &'static str = "a point, such as `[\"4 ft 8 in\", \"3 ft 1 in\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<SlopePoint> {
        let [u, v] = lengths::<Position, 2>(at, reader, Self::EXPECTS)?;
        Some(SlopePoint { u, v })
    }
}

/// Clamp window of a module, `["10 in", "16 in"]`.
pub(crate) struct ClampWindow;
schema!(ClampWindow by name: json_schema!({
    "type": "array", "items": { "type": "string" }, "minItems": 2, "maxItems": 2,
    "description": "From where to where a module may be clamped, up from its lower edge, each a length with its unit.",
    "examples": [["10 in", "16 in"]],
}));

impl Read for ClampWindow {
    type Value = [Length; 2];
    const EXPECTS: &'static str = "from where to where, such as `[\"10 in\", \"16 in\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<[Length; 2]> {
        lengths::<Gap, 2>(at, reader, Self::EXPECTS)
    }
}

/// A point of the world, east, north and up.
pub(crate) struct WorldPoint;
schema!(WorldPoint by name: json_schema!({
    "type": "array", "items": { "type": "string" }, "minItems": 3, "maxItems": 3,
    "description": "A point of the world: east, north, up, each a length with its unit.",
    "examples": [["12.5 m", "-3.2 m", "4.1 m"]],
}));

impl Read for WorldPoint {
    type Value = [Length; 3];
    const EXPECTS: &'static str = "a point, such as `[\"12.5 m\", \"-3.2 m\", \"4.1 m\"]`";

    fn read(at: At, reader: &mut Reader<'_>) -> Option<[Length; 3]> {
        lengths::<Position, 3>(at, reader, Self::EXPECTS)
    }
}

/// A list of a fixed number of lengths.
fn lengths<K: Read<Value = Length>, const N: usize>(
    at: At,
    reader: &mut Reader<'_>,
    expects: &str,
) -> Option<[Length; N]> {
    let tree = reader.tree;
    if *tree.value(at) != Value::List || tree.children(at).count() != N {
        reader.report_type(at, expects);
        return None;
    }
    let read: Vec<Option<Length>> = tree.children(at).map(|child| K::read(child, reader)).collect();
    read.into_iter().collect::<Option<Vec<_>>>()?.try_into().ok()
}
