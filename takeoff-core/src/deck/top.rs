//! The flashing on the tile: does it tuck under the next course, and cover the opening's sides?
use crate::geometry::{Ellipse, Rect, grid, half};
use crate::model::Assembly;
use crate::roof::{Site, TileGrid};
use crate::units::Length;

/// The flashing on the tile at one opening, checked. Lengths are in grid steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TopFlashingCheck {
    /// The course whose visible face holds the opening's centre.
    pub course: Option<u32>,
    /// The flashing as it lies: trimmed at its tile's head.
    pub lies: Rect,
    /// What is trimmed off its upper edge.
    pub trimmed: i64,
    /// How far it goes up under the next course; `None` in the top course.
    pub tuck: Option<i64>,
    /// By how much the tuck falls short of what this course allows.
    pub tuck_short: i64,
    /// Cover on each side of the opening.
    pub side_cover: i64,
    /// By how much the side cover falls short.
    pub side_short: i64,
}

impl TopFlashingCheck {
    /// Checks the flashing of `assembly` at an opening.
    ///
    /// # Rule
    ///
    /// Its upper edge, `T` above the opening's centre `v`, is trimmed to the head of the tile whose visible face
    /// holds the centre: `T' = min(T, nose[k] + L − v)`. Its tuck `v + T' − nose[k+1]` must reach the least
    /// tuck. Where the course's own head lap is less than that no flashing could, which is the slope's finding
    /// and not the post's; the post is then held to the head lap. The side cover `A/2 − ρ`, `A` the flashing's
    /// width as formed over the profile, must reach the least side cover.
    ///
    /// # Example
    ///
    /// Noses at 0 and 13 in, tile 16 in, centre at 4 in, `T` 11 in: tuck 4 + 11 − 13 = 2 in, 1 in short of
    /// 3 in. `A` 16 in and `ρ` 1 in: side cover 7 in.
    pub fn at(site: &Site, assembly: &Assembly, opening: &Ellipse) -> TopFlashingCheck {
        let flashing = &assembly.top_flashing;
        let width = formed_width(site, assembly);
        let centre = opening.centre;
        let course = site.grid.course_at(centre.v);
        let head = course.map(|k| site.grid.noses()[k as usize] + site.grid.length());
        let up = grid(flashing.up);
        let lying_up = head.map_or(up, |head| up.min(head - centre.v));
        let next_nose = course.and_then(|k| site.grid.noses().get(k as usize + 1).copied());
        let tuck = next_nose.map(|nose| centre.v + lying_up - nose);
        let asked = course.map_or(0, |k| asked_tuck(site, k));
        let side_cover = half(width) - opening.a;
        TopFlashingCheck {
            course,
            lies: Rect::new(
                centre.u - half(width),
                centre.v - grid(flashing.down),
                centre.u + half(width),
                centre.v + lying_up,
            ),
            trimmed: up - lying_up,
            tuck,
            tuck_short: tuck.map_or(0, |tuck| (asked - tuck).max(0)),
            side_cover,
            side_short: (grid(site.practice.least_side_cover) - side_cover).max(0),
        }
    }

    /// Whether nothing falls short.
    pub fn passes(&self) -> bool {
        self.tuck_short == 0 && self.side_short == 0
    }
}

/// The tuck asked of a post in course `k`: the least tuck, or the head lap where that is less.
pub fn asked_tuck(site: &Site, k: u32) -> i64 {
    let least = grid(site.practice.least_top_tuck);
    head_lap(&site.grid, k).map_or(least, |lap| lap.min(least))
}

/// What a course lies under the next; `None` for the top course.
pub fn head_lap(tiles: &TileGrid, k: u32) -> Option<i64> {
    let noses = tiles.noses();
    Some(noses[k as usize] + tiles.length() - noses.get(k as usize + 1)?)
}

/// The width that the flashing covers: less than its flat width where it is formed over a curved profile.
fn formed_width(site: &Site, assembly: &Assembly) -> Length {
    let flashing = &assembly.top_flashing;
    if !flashing.formed {
        return flashing.width;
    }
    let formed_nm = site.slope.tile.profile.effective_width(flashing.width) * 1e6;
    Length::nearest(formed_nm).unwrap_or(flashing.width)
}
