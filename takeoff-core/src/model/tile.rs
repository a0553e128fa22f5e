//! Roof tiles.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::judge::{Input, Judge, quoted};
use super::range::Range;
use super::{Code, Problems};
use crate::profile::Profile;
use crate::units::Length;

/// One kind of roof tile.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    pub(crate) name: String,
    /// Nose to head, `L`.
    pub(crate) length: Length,
    /// Distance from joint to joint, `C`.
    pub(crate) cover: Length,
    pub(crate) pieces: Pieces,
    pub(crate) least_head_lap: Length,
    pub(crate) thickness: Length,
    /// Weight of a tile in grams.
    pub(crate) weight_g: Option<f64>,
    pub(crate) laps: Laps,
    pub(crate) held: Held,
    /// Nails, screws or clips that hold one tile.
    pub(crate) fasteners_each: u32,
    pub(crate) profile: Profile,
}

/// Pieces of a course: one kind, or pans with covers over their joints.
#[derive(Clone, Debug, PartialEq)]
pub enum Pieces {
    /// One piece a column.
    One {
        /// Overall width, `W = C + S`.
        width: Length,
        /// Side strip that lies under the neighbour.
        lap_side: LapSide,
        /// Spare tiles that need not be bought.
        stock: Stock,
    },
    /// In each column a pan centred on the column and a cover centred on the joint.
    PanAndCover {
        /// Overall width of a pan.
        pan_width: Length,
        /// Overall width of a cover.
        cover_width: Length,
        /// Spare pans that need not be bought.
        pans: Stock,
        /// Spare covers that need not be bought.
        covers: Stock,
    },
}

/// Pieces that need not be bought.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stock {
    /// Already on hand.
    pub(crate) on_hand: u64,
    /// Taken from under the arrays.
    pub(crate) harvest: u64,
    /// JSON Pointer to where the job gives the harvest.
    pub(crate) harvest_path: String,
}

/// Which side strip of a tile lies under its neighbour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LapSide {
    /// The left strip lies under the tile on the left.
    Left,
    /// The right strip lies under the tile on the right.
    Right,
}

/// Whether a tile laps the course below it only, or the one below that too.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Laps {
    /// Greatest exposure `L − H`.
    #[default]
    Single,
    /// Greatest exposure `(L − H)/2`.
    Double,
}

/// How a tile is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Held {
    /// Hung by its lug on a batten.
    Hung,
    /// Nailed or screwed.
    Nailed,
    /// Clipped.
    Clipped,
    /// Bedded in mortar.
    Mortar,
    /// Set in foam.
    Foam,
    /// Set in adhesive.
    Adhesive,
}

impl Held {
    /// Set tiles (mortar, foam, adhesive) can't be loosened and laid back.
    pub fn is_set(self) -> bool {
        matches!(self, Held::Mortar | Held::Foam | Held::Adhesive)
    }
}

/// A [`Tile`] in the making.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct TileBuilder {
    pub(crate) name: String,
    pub(crate) length: Input<Length>,
    pub(crate) cover: Input<Length>,
    pub(crate) width: Input<Length>,
    pub(crate) lap_side: Input<LapSide>,
    pub(crate) on_hand: Input<u32>,
    pub(crate) harvest: Input<u32>,
    pub(crate) pan_and_cover: Input<PanAndCover>,
    pub(crate) least_head_lap: Input<Length>,
    pub(crate) thickness: Input<Length>,
    pub(crate) weight_g: Option<f64>,
    pub(crate) laps: Laps,
    pub(crate) held: Input<Held>,
    pub(crate) fasteners_each: Input<u32>,
    pub(crate) profile: Input<Profile>,
}

/// The two pieces of a column of pans and covers.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PanAndCover {
    pub(crate) pan_width: Input<Length>,
    pub(crate) cover_width: Input<Length>,
    pub(crate) pans_on_hand: Input<u32>,
    pub(crate) pans_harvest: Input<u32>,
    pub(crate) covers_on_hand: Input<u32>,
    pub(crate) covers_harvest: Input<u32>,
}

impl Tile {
    /// A tile of a name.
    ///
    /// # Example
    ///
    /// A flat tile 16 1/2 in long and 13 in wide that covers 12 in: its side lap is 1 in.
    ///
    /// ```
    /// use takeoff_core::{Held, LapSide, Length, Tile};
    /// let length = |text| Length::parse(text).unwrap();
    /// let flat = Tile::builder("flat-13")
    ///     .length(length("16 1/2 in"))
    ///     .width(length("13 in"))
    ///     .cover(length("12 in"))
    ///     .lap_side(LapSide::Left)
    ///     .least_head_lap(length("3 in"))
    ///     .thickness(length("1 in"))
    ///     .held(Held::Nailed);
    /// assert!(flat.clone().build().is_ok());
    /// let problems = flat.cover(length("14 in")).build().unwrap_err();
    /// assert_eq!((problems[0].code.as_str(), problems[0].path.as_str()), ("cover-wider-than-tile", "/cover"));
    /// ```
    pub fn builder(name: impl Into<String>) -> TileBuilder {
        TileBuilder { name: name.into(), ..TileBuilder::default() }
    }
}

impl TileBuilder {
    /// Nose to head.
    pub fn length(mut self, length: Length) -> Self {
        self.length = Input::Given(length);
        self
    }

    /// Distance from joint to joint.
    pub fn cover(mut self, cover: Length) -> Self {
        self.cover = Input::Given(cover);
        self
    }

    /// Overall width of a one-piece tile.
    pub fn width(mut self, width: Length) -> Self {
        self.width = Input::Given(width);
        self
    }

    /// The side strip of a one-piece tile that lies under its neighbour; of no consequence without a side lap.
    pub fn lap_side(mut self, side: LapSide) -> Self {
        self.lap_side = Input::Given(side);
        self
    }

    /// Overall widths of the pan and the cover of a two-piece tile.
    pub fn pan_and_cover(mut self, pan_width: Length, cover_width: Length) -> Self {
        let (pan_width, cover_width) = (Input::Given(pan_width), Input::Given(cover_width));
        self.pan_and_cover = Input::Given(PanAndCover { pan_width, cover_width, ..PanAndCover::default() });
        self
    }

    /// One-piece tiles on hand.
    pub fn on_hand(mut self, count: u32) -> Self {
        self.on_hand = Input::Given(count);
        self
    }

    /// Least head lap.
    pub fn least_head_lap(mut self, lap: Length) -> Self {
        self.least_head_lap = Input::Given(lap);
        self
    }

    /// Thickness.
    pub fn thickness(mut self, thickness: Length) -> Self {
        self.thickness = Input::Given(thickness);
        self
    }

    /// Each tile laps the course below the one below, too.
    pub fn double_lap(mut self) -> Self {
        self.laps = Laps::Double;
        self
    }

    /// How a tile is held.
    pub fn held(mut self, held: Held) -> Self {
        self.held = Input::Given(held);
        self
    }

    /// Nails, screws or clips per tile; left out, one for a nailed or clipped tile and none for another.
    pub fn fasteners_each(mut self, count: u32) -> Self {
        self.fasteners_each = Input::Given(count);
        self
    }

    /// Profile of the face; flat if left out.
    pub fn profile(mut self, profile: Profile) -> Self {
        self.profile = Input::Given(profile);
        self
    }

    /// The tile.
    ///
    /// # Errors
    ///
    /// Every measure that is missing or out of range, and measures that do not go together.
    pub fn build(self) -> Result<Tile, Problems> {
        Judge::alone(|judge| self.judge(judge))
    }

    pub(crate) fn judge(mut self, judge: &mut Judge<'_>) -> Option<Tile> {
        let name = judge.name("", &self.name);
        let length = judge.length("", "length", self.length, Range::TILE_SIZE);
        let cover = judge.length("", "cover", self.cover, Range::TILE_SIZE);
        let least_head_lap = judge.length("", "least_head_lap", self.least_head_lap, Range::GAP);
        let thickness = judge.length("", "thickness", self.thickness, Range::SIZE);
        let pieces = self.pieces(cover, judge);
        if let (Some(length), Some(lap)) = (length, least_head_lap)
            && lap >= length
        {
            let (lap, length) = (judge.shown("/least_head_lap", lap), judge.shown("/length", length));
            let message = format!("the least head lap {lap} is not below the tile's length {length}");
            let help = "measure the tile from nose to head";
            judge.report("/least_head_lap", Code::HeadLapTooLong, message, help);
        }
        let profile = match std::mem::take(&mut self.profile) {
            Input::Missing => Some(Profile::Flat),
            given => given.given(),
        };
        let held = judge.needed("", "held", self.held, "one of its words")?;
        let usual = match held {
            Held::Nailed | Held::Clipped => 1,
            _ => 0,
        };
        let what = format!("nails, screws or clips a tile {}", quoted(&self.name));
        let fasteners_each = judge.assumptions.count(what, self.fasteners_each.given(), usual);
        Some(Tile {
            name: name?,
            length: length?,
            cover: cover?,
            pieces: pieces?,
            least_head_lap: least_head_lap?,
            thickness: thickness?,
            weight_g: self.weight_g,
            laps: self.laps,
            held,
            fasteners_each,
            profile: profile?,
        })
    }

    fn pieces(&self, cover: Option<Length>, judge: &mut Judge<'_>) -> Option<Pieces> {
        let one_piece = self.width.is_given()
            || self.lap_side.is_given()
            || self.on_hand.is_given()
            || self.harvest.is_given();
        let ways = "`width` and `lap_side` of a one-piece tile, or `pan_and_cover` of a two-piece one";
        match judge.one_way("", &quoted(&self.name), [one_piece, self.pan_and_cover.is_given()], ways)? {
            0 => {
                let width = judge.length("", "width", self.width, Range::TILE_SIZE);
                let (width, cover) = (width?, cover?);
                let lap_side = self.judged_lap_side(width, cover, judge)?;
                let stock = stock(self.on_hand, self.harvest, "/harvest", judge);
                Some(Pieces::One { width, lap_side, stock })
            }
            _ => self.pan_and_cover.given()?.judge(cover, judge),
        }
    }

    fn judged_lap_side(&self, width: Length, cover: Length, judge: &mut Judge<'_>) -> Option<LapSide> {
        let (shown_width, shown_cover) = (judge.shown("/width", width), judge.shown("/cover", cover));
        let help = "the cover width is from joint to joint: measure it over several tiles on the roof";
        if cover > width {
            let message =
                format!("the tile covers {shown_cover}, which is wider than the tile itself, {shown_width}");
            judge.report("/cover", Code::CoverWiderThanTile, message, help);
            return None;
        }
        if width - cover >= cover {
            let message = format!(
                "{shown_width} wide, {shown_cover} covered: the side lap takes the whole cover width"
            );
            judge.report("/cover", Code::SideLapTooWide, message, help);
            return None;
        }
        if width == cover {
            // Nothing laps sideways: the side makes no difference.
            return Some(self.lap_side.given().unwrap_or(LapSide::Left));
        }
        judge.needed("", "lap_side", self.lap_side, "one of its words")
    }
}

impl PanAndCover {
    fn judge(self, column: Option<Length>, judge: &mut Judge<'_>) -> Option<Pieces> {
        const AT: &str = "/pan_and_cover";
        let help = "`cover` is from joint to joint: measure it on the roof";
        let pan_width = judge.length(AT, "pan_width", self.pan_width, Range::TILE_SIZE);
        let cover_width = judge.length(AT, "cover_width", self.cover_width, Range::TILE_SIZE);
        let (pan_width, cover_width, column) = (pan_width?, cover_width?, column?);
        let shown = judge.shown("/cover", column);
        let parts = [
            ("pan", pan_width, "/pan_and_cover/pan_width"),
            ("cover", cover_width, "/pan_and_cover/cover_width"),
        ];
        for (what, width, at) in parts {
            if width > column {
                let wide = judge.shown(at, width);
                let message = format!("a {what} {wide} wide does not fit in a column of {shown}");
                judge.report(at, Code::PanAndCover, message, help);
            }
        }
        if pan_width + cover_width <= column {
            let [pan, cover] = parts.map(|(_, width, at)| judge.shown(at, width));
            let message = format!("pan {pan} and cover {cover} do not lap in a column of {shown}");
            judge.report("/pan_and_cover/cover_width", Code::PanAndCover, message, help);
        }
        Some(Pieces::PanAndCover {
            pan_width,
            cover_width,
            pans: stock(self.pans_on_hand, self.pans_harvest, "/pan_and_cover/pans_harvest", judge),
            covers: stock(self.covers_on_hand, self.covers_harvest, "/pan_and_cover/covers_harvest", judge),
        })
    }
}

fn stock(on_hand: Input<u32>, harvest: Input<u32>, path: &str, judge: &Judge<'_>) -> Stock {
    let count = |input: Input<u32>| input.given().unwrap_or(0).into();
    Stock { on_hand: count(on_hand), harvest: count(harvest), harvest_path: judge.pointer(path) }
}
