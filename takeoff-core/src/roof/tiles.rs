//! Which tiles lie where: courses and columns as arithmetic, no memory per tile.
use std::ops::Range;

use smallvec::SmallVec;

use crate::geometry::{Rect, grid, half};
use crate::model::{LapSide, Pieces, Slope, Tile};
use crate::units::Length;

/// Which piece of a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The only one.
    Tile,
    /// The pan of a two-piece tile.
    Pan,
    /// The cover of a two-piece tile.
    Cover,
}

/// A whole tile by its course, column and part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TileId {
    /// Course from the eave, counted from 0.
    pub course: u32,
    /// Column: its left joint is `u0 + offset + column·C`.
    pub column: i64,
    /// Which piece of the column.
    pub part: Part,
}

/// A tile, or one piece of a tile that the field's edge cuts into several.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TilePiece {
    /// Which tile.
    pub tile: TileId,
    /// Which piece, counted from 0, where it falls into several.
    pub piece: Option<u16>,
}

/// Which courses and columns have tiles that meet a rectangle: the first course and the first after the last, and of
/// each part and each offset of the bond the first column and the first after the last.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Meeting {
    first: u32,
    after: u32,
    columns: SmallVec<[i64; 8]>,
}

impl Meeting {
    /// The same for all rectangles that are whole columns apart along the eave.
    pub fn anywhere_along(mut self) -> Meeting {
        let from = self.columns.first().copied().unwrap_or_default();
        self.columns.iter_mut().for_each(|column| *column -= from);
        self
    }
}

/// The tiles of a slope, before they are clipped to the field.
#[derive(Clone, Debug)]
pub struct TileGrid {
    noses: Vec<i64>,
    length: i64,
    cover: i64,
    first_joint: i64,
    offsets: Vec<i64>,
    /// Each part with its left and right side, counted from its column's left joint.
    parts: Vec<(Part, i64, i64)>,
}

impl TileGrid {
    /// The tiles of a slope.
    pub fn of(slope: &Slope) -> TileGrid {
        TileGrid::new(&slope.tile, &slope.noses, slope.first_joint, &slope.bond)
    }

    /// Tiles in courses whose noses ascend. `bond` moves the joints of course `k` by its entry `k mod len`; empty, all
    /// joints are in line.
    ///
    /// # Example
    ///
    /// Half bond of a tile that covers 12 in: joints at 0, 12, 24 in and, a course further up, at 6, 18, 30 in.
    pub fn new(tile: &Tile, noses: &[Length], first_joint: Length, bond: &[Length]) -> TileGrid {
        let cover = grid(tile.cover);
        let parts = match tile.pieces {
            Pieces::One { width, lap_side: LapSide::Left, .. } => {
                vec![(Part::Tile, cover - grid(width), cover)]
            }
            Pieces::One { width, .. } => vec![(Part::Tile, 0, grid(width))],
            Pieces::PanAndCover { pan_width, cover_width, .. } => {
                // The pan's centre is half a cover width off the joint, rounded to the nanometre.
                let pan = 2 * ((tile.cover.nm() + 1) / 2) - half(pan_width);
                let over = -half(cover_width);
                vec![(Part::Pan, pan, pan + grid(pan_width)), (Part::Cover, over, over + grid(cover_width))]
            }
        };
        TileGrid {
            noses: noses.iter().map(|&nose| grid(nose)).collect(),
            length: grid(tile.length),
            cover,
            first_joint: grid(first_joint),
            offsets: if bond.is_empty() {
                vec![0]
            } else {
                bond.iter().map(|&offset| grid(offset)).collect()
            },
            parts,
        }
    }

    /// How many courses there are.
    pub fn courses(&self) -> u32 {
        self.noses.len() as u32
    }

    /// Tile length in grid steps.
    pub fn length(&self) -> i64 {
        self.length
    }

    /// Cover width in grid steps.
    pub fn cover(&self) -> i64 {
        self.cover
    }

    /// The noses in grid steps, ascending.
    pub fn noses(&self) -> &[i64] {
        &self.noses
    }

    /// The left joint of a column in a course.
    pub fn joint(&self, course: u32, column: i64) -> i64 {
        let offset = self.offsets[course as usize % self.offsets.len()];
        self.first_joint + offset + column * self.cover
    }

    /// The footprint of a whole tile, covered parts too.
    pub fn footprint(&self, tile: TileId) -> Rect {
        let joint = self.joint(tile.course, tile.column);
        let nose = self.noses[tile.course as usize];
        let (left, right) = self.sides(tile.part);
        Rect::new(joint + left, nose, joint + right, nose + self.length)
    }

    /// The course whose visible face holds `v`: from its nose up to the next, the top course up to its head.
    pub fn course_at(&self, v: i64) -> Option<u32> {
        let above = self.noses.partition_point(|&nose| nose <= v);
        let course = above.checked_sub(1)?;
        (above < self.noses.len() || v < self.noses[course] + self.length).then_some(course as u32)
    }

    /// How many courses have tile over `v`.
    pub fn layers_at(&self, v: i64) -> u64 {
        let begun = self.noses.partition_point(|&nose| nose <= v);
        let ended = self.noses.partition_point(|&nose| nose + self.length <= v);
        (begun - ended) as u64
    }

    /// Every tile whose footprint meets a rectangle, by course, column and part.
    pub fn over(&self, rect: Rect) -> impl Iterator<Item = (TileId, Rect)> + '_ {
        self.courses_meeting(&rect).flat_map(move |course| self.in_course(course, rect))
    }

    /// Which courses and columns have tiles that meet a rectangle.
    pub fn meeting(&self, rect: &Rect) -> Meeting {
        let Range { start: first, end: after } = self.courses_meeting(rect);
        let mut columns = SmallVec::new();
        for &(_, left, right) in &self.parts {
            for offset in &self.offsets {
                let origin = self.first_joint + offset;
                columns.push((rect.left - right - origin).div_euclid(self.cover) + 1);
                columns.push(-(origin + left - rect.right).div_euclid(self.cover));
            }
        }
        Meeting { first, after, columns }
    }

    /// A rectangle round every tile that could meet another rectangle.
    pub fn reach(&self, rect: &Rect) -> Rect {
        let widest = self.parts.iter().map(|&(_, left, right)| right - left).max().unwrap_or(0);
        let Rect { left, lower, right, upper } = *rect;
        Rect::new(left - widest, lower - self.length, right + widest, upper + self.length)
    }

    /// The courses whose tiles meet a rectangle: heads ascend with noses, so that they are consecutive.
    fn courses_meeting(&self, rect: &Rect) -> Range<u32> {
        let first = self.noses.partition_point(|&nose| nose + self.length <= rect.lower) as u32;
        let after = self.noses.partition_point(|&nose| nose < rect.upper) as u32;
        first..after.max(first)
    }

    /// The tiles of one course that meet a rectangle.
    fn in_course(&self, course: u32, rect: Rect) -> impl Iterator<Item = (TileId, Rect)> + '_ {
        let nose = self.noses[course as usize];
        let origin = self.joint(course, 0);
        let reach_left = self.parts.iter().map(|p| p.1).min().unwrap_or(0);
        let reach_right = self.parts.iter().map(|p| p.2).max().unwrap_or(0);
        let first = (rect.left - reach_right - origin).div_euclid(self.cover) + 1;
        let columns = (first..).map(move |column| (column, origin + column * self.cover));
        columns.take_while(move |(_, joint)| joint + reach_left < rect.right).flat_map(
            move |(column, joint)| {
                self.parts.iter().filter_map(move |&(part, left, right)| {
                    let footprint = Rect::new(joint + left, nose, joint + right, nose + self.length);
                    footprint.meets(&rect).then_some((TileId { course, column, part }, footprint))
                })
            },
        )
    }

    /// The tiles that lie directly on a tile where their footprints meet, lowest course first: every higher
    /// course, the neighbour that covers its under-lapping side strip, a cover on its pans.
    pub fn lying_on(&self, tile: TileId) -> impl Iterator<Item = (TileId, Rect)> + '_ {
        let own = self.footprint(tile);
        let from_its_own = tile.course..self.courses_meeting(&own).end;
        let met = from_its_own.flat_map(move |course| self.in_course(course, own));
        met.filter(move |(other, _)| {
            let beside = other.course == tile.course
                && match (tile.part, other.part) {
                    (Part::Tile, Part::Tile) => other.column == tile.column + self.step_to_upper_neighbour(),
                    (Part::Pan, Part::Cover) => true,
                    _ => false,
                };
            beside || other.course > tile.course
        })
    }

    /// Columns from a tile to the neighbour that lies on its side strip.
    fn step_to_upper_neighbour(&self) -> i64 {
        if self.sides(Part::Tile).0 < 0 { -1 } else { 1 }
    }

    /// The visible face of a tile: the part of its footprint below the next course's nose, without the side
    /// strip under its neighbour; a pan's between its covers.
    pub fn face(&self, tile: TileId) -> Rect {
        let own = self.footprint(tile);
        let joint = self.joint(tile.course, tile.column);
        let upper = self.noses.get(tile.course as usize + 1).map_or(own.upper, |&nose| nose.min(own.upper));
        let (left, right) = match tile.part {
            Part::Tile => (joint, joint + self.cover),
            Part::Cover => (own.left, own.right),
            Part::Pan => {
                let (cover_left, cover_right) = self.sides(Part::Cover);
                (own.left.max(joint + cover_right), own.right.min(joint + self.cover + cover_left))
            }
        };
        Rect::new(left, own.lower, right, upper)
    }

    /// The column of a course that a crew counts as the first: the first from the left with any part of it right of the
    /// field's left end.
    pub fn first_column(&self, course: u32, field: Rect) -> i64 {
        (field.left - self.joint(course, 0)).div_euclid(self.cover)
    }

    /// A course's joint nearest to `u = 0` from the right.
    pub fn first_joint_from_zero(&self, course: u32) -> i64 {
        self.joint(course, 0).rem_euclid(self.cover)
    }

    fn sides(&self, part: Part) -> (i64, i64) {
        self.parts.iter().find(|p| p.0 == part).map_or((0, 0), |p| (p.1, p.2))
    }
}
