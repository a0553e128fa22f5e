//! Where the pieces of a section lie, and what is left over.
use super::kinds::Way;
use super::layout::Layout;

/// A rectangle: from the start of the roll, from its edge, length, width.
pub(super) type Rectangle = [i64; 4];

/// The pieces and offcuts of a section.
#[derive(Debug, Default)]
pub(super) struct Placed {
    pub(super) pieces: Vec<(usize, Way, Rectangle)>,
    pub(super) offcuts: Vec<Rectangle>,
}

impl Placed {
    /// Lays a section out in the room for it, from the lower left corner.
    pub(super) fn place(&mut self, layout: &Layout, [start, edge, length, width]: Rectangle) {
        match layout {
            Layout::Piece { kind, way } => {
                self.pieces.push((*kind, *way, [start, edge, way.length, way.width]));
                let (longer, wider) = (length - way.length, width - way.width);
                // Of the two ways to trim, the one that leaves the larger offcut.
                let area = |length: i64, width: i64| i128::from(length) * i128::from(width);
                let across = area(longer, width).max(area(way.length, wider));
                let along = area(longer, way.width).max(area(length, wider));
                let (beside, above) = if across >= along { (width, way.length) } else { (way.width, length) };
                self.offcut([start + way.length, edge, longer, beside]);
                self.offcut([start, edge + way.width, above, wider]);
            }
            Layout::Beside(parts) => {
                let mut used = 0;
                for part in parts {
                    let (of_part, _) = part.size();
                    self.place(part, [start + used, edge, of_part, width]);
                    used += of_part;
                }
                self.offcut([start + used, edge, length - used, width]);
            }
            Layout::Over(parts) => {
                let mut used = 0;
                for part in parts {
                    let (_, of_part) = part.size();
                    self.place(part, [start, edge + used, length, of_part]);
                    used += of_part;
                }
                self.offcut([start, edge + used, length, width - used]);
            }
        }
    }

    fn offcut(&mut self, rectangle: Rectangle) {
        if rectangle[2] > 0 && rectangle[3] > 0 {
            self.offcuts.push(rectangle);
        }
    }
}

/// Sections on rolls: the longest first, each on the first roll with room for it.
pub(super) fn on_rolls(mut sections: Vec<Layout>, roll: Option<i64>) -> Vec<Vec<Layout>> {
    sections.sort_by_cached_key(|section| (std::cmp::Reverse(section.size().0), section.clone()));
    let mut rolls: Vec<(i64, Vec<Layout>)> = Vec::new();
    for section in sections {
        let length = section.size().0;
        let has_room = |(used, _): &&mut (i64, Vec<Layout>)| roll.is_none_or(|roll| used + length <= roll);
        match rolls.iter_mut().find(has_room) {
            Some((used, on_roll)) => {
                *used += length;
                on_roll.push(section);
            }
            None => rolls.push((length, vec![section])),
        }
    }
    rolls.into_iter().map(|(_, sections)| sections).collect()
}
