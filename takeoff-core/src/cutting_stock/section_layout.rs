//! Coordinates: the rectangles of the pieces and offcuts of a section.
use super::item_types::Orientation;
use super::pattern::Pattern;

/// A rectangle in nanometres: distance from the start of the roll, distance from its edge, length, width.
pub(super) type Bounds = [i64; 4];

/// The pieces and offcuts of a section.
#[derive(Debug, Default)]
pub(super) struct SectionLayout {
    /// Item type, orientation and rectangle of each piece.
    pub(super) pieces: Vec<(usize, Orientation, Bounds)>,
    pub(super) offcuts: Vec<Bounds>,
}

impl SectionLayout {
    /// Lays a pattern out within a rectangle, from the corner nearest to the start and the edge of the roll.
    pub(super) fn add(&mut self, pattern: &Pattern, [start, edge, length, width]: Bounds) {
        match pattern {
            Pattern::Item { item, orientation } => {
                self.pieces.push((*item, *orientation, [start, edge, orientation.length, orientation.width]));
                self.trim(orientation, [start, edge, length, width]);
            }
            Pattern::AlongRoll(parts) => {
                let mut used = 0;
                for part in parts {
                    let (part_length, _) = part.size();
                    self.add(part, [start + used, edge, part_length, width]);
                    used += part_length;
                }
                self.add_offcut([start + used, edge, length - used, width]);
            }
            Pattern::AcrossRoll(parts) => {
                let mut used = 0;
                for part in parts {
                    let (_, part_width) = part.size();
                    self.add(part, [start, edge + used, length, part_width]);
                    used += part_width;
                }
                self.add_offcut([start, edge + used, length, width - used]);
            }
        }
    }

    /// Adds the offcuts around a single piece. Of the two possible first cuts the one with the larger greatest offcut
    /// is made: large offcuts can be used elsewhere.
    fn trim(&mut self, piece: &Orientation, [start, edge, length, width]: Bounds) {
        let (spare_length, spare_width) = (length - piece.length, width - piece.width);
        let area = |length: i64, width: i64| i128::from(length) * i128::from(width);
        let across_first = area(spare_length, width).max(area(piece.length, spare_width));
        let along_first = area(spare_length, piece.width).max(area(length, spare_width));
        let (beyond_width, beside_length) =
            if across_first >= along_first { (width, piece.length) } else { (piece.width, length) };
        self.add_offcut([start + piece.length, edge, spare_length, beyond_width]);
        self.add_offcut([start, edge + piece.width, beside_length, spare_width]);
    }

    fn add_offcut(&mut self, bounds: Bounds) {
        let [.., length, width] = bounds;
        if length > 0 && width > 0 {
            self.offcuts.push(bounds);
        }
    }
}
