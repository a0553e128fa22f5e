//! The validated job: to hold one is proof that it was read without an error.
//!
//! Outside this crate a [`Job`] is made by reading a job file only; lengths are whole nanometres and
//! every reference is resolved.
use std::collections::BTreeMap;
use std::sync::Arc;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::buying::{Money, PriceList, Terms};
use crate::profile::Profile;
use crate::screening::{BlockingWood, Lags, Loads};
use crate::slope::{Array, Setback};
use crate::spares::Breakage;
use crate::units::{Length, Pitch};

/// A whole job: the slopes of a roof, what lies on them and what goes through.
#[derive(Clone, Debug)]
pub struct Job {
    pub(crate) name: String,
    pub(crate) display: Display,
    pub(crate) tiles: Vec<Arc<Tile>>,
    pub(crate) assemblies: Vec<Arc<Assembly>>,
    pub(crate) slopes: Vec<Slope>,
    pub(crate) practice: Practice,
    /// Factors and loads of the screening, if the job asks for one.
    pub(crate) screening: Option<Loads>,
    pub(crate) prices: Option<PriceList>,
    /// Given where there are prices, too.
    pub(crate) bid: Option<Terms>,
    /// What the surveyor wrote down, question by question; `None` is unasked.
    pub(crate) survey: Vec<(SurveyQuestion, Option<String>)>,
    /// The assumptions in force: the defaults that the job file left alone and those that it set.
    pub(crate) assumptions: Vec<Assumption>,
    /// What is odd but real in the job file itself.
    pub(crate) findings: Vec<super::Problem>,
}

impl Job {
    /// Its slopes, in its order.
    pub fn slopes(&self) -> &[Slope] {
        &self.slopes
    }

    /// How the crew works.
    pub fn practice(&self) -> &Practice {
        &self.practice
    }
}

impl Slope {
    /// Its posts, in the job's order.
    pub fn posts(&self) -> &[Post] {
        &self.posts
    }
}

/// Which units reports show; it changes no number.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Display {
    /// Feet, inches and fractions of an inch.
    #[default]
    Imperial,
    /// Millimetres and metres.
    Metric,
}

/// One kind of roof tile.
#[derive(Clone, Debug)]
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

/// Whether a course is one kind of piece, or pans with covers over their joints.
#[derive(Clone, Debug)]
pub enum Pieces {
    /// One piece a column.
    One {
        /// Overall width, `W = C + S`.
        width: Length,
        /// Which side strip lies under the neighbour.
        lap_side: LapSide,
        /// Where spare tiles come from besides the shop.
        stock: Stock,
    },
    /// In each column a pan centred on the column and a cover centred on the joint.
    PanAndCover {
        /// Overall width of a pan.
        pan_width: Length,
        /// Overall width of a cover.
        cover_width: Length,
        /// Where spare pans come from besides the shop.
        pans: Stock,
        /// Where spare covers come from besides the shop.
        covers: Stock,
    },
}

/// Pieces that need not be bought.
#[derive(Clone, Debug, Default)]
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

/// A kind of underlayment, laid in sheets along the eave.
#[derive(Clone, Debug)]
pub struct Underlayment {
    pub(crate) name: String,
    /// Width of a sheet, `B`.
    pub(crate) sheet_width: Length,
    /// Lap of a sheet over the one below, `b`.
    pub(crate) head_lap: Length,
    pub(crate) roll_length: Option<Length>,
    /// Whether patches may be cut from it turned by 90°.
    pub(crate) turnable: bool,
    /// Stuck to the deck, or too old to bend: nothing is tucked under it.
    pub(crate) never_tucked: bool,
}

/// A post with its flashings, fasteners and sealant.
#[derive(Clone, Debug)]
pub struct Assembly {
    pub(crate) name: String,
    pub(crate) post_diameter: Length,
    pub(crate) clearance: Length,
    pub(crate) axis: Axis,
    /// Diameters of the hole saws at hand, ascending.
    pub(crate) hole_saws: Vec<Length>,
    /// Top of the post over the deck.
    pub(crate) post_height: Option<Length>,
    /// Height over the deck of the surface between the two layers of a head lap, if the job gives it.
    pub(crate) lap_surface_height: Option<Length>,
    /// Least distance of a lag from the edge of its rafter.
    pub(crate) lag_edge_distance: Length,
    pub(crate) lags: Option<Lags>,
    pub(crate) deck_flashing: DeckFlashing,
    pub(crate) top_flashing: TopFlashing,
    pub(crate) beads: Vec<Bead>,
    pub(crate) pilot_holes: Vec<PilotHoles>,
    pub(crate) dabs: Vec<Dabs>,
    pub(crate) items: Vec<Item>,
    /// What one blocking board takes besides the board.
    pub(crate) blocking_items: Vec<Item>,
}

/// Which way the post stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// Square to the deck.
    #[default]
    Normal,
    /// Upright, so that it leans through the tile.
    Plumb,
}

/// The flashing on the deck, under or over the underlayment.
#[derive(Clone, Debug)]
pub struct DeckFlashing {
    /// Across the slope, `a`.
    pub(crate) width: Length,
    /// Down-slope of the post's point, `d`.
    pub(crate) down: Length,
    /// Up-slope of the post's point, `up`.
    pub(crate) up: Length,
    pub(crate) cone_diameter: Length,
    /// Top of the cone over the deck.
    pub(crate) cone_height: Option<Length>,
    pub(crate) dried_in: DriedIn,
}

/// How a deck flashing is dried in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DriedIn {
    /// Tucked under the sheet above, or patched where that can't be.
    #[default]
    Underlayment,
    /// Bands of roof cement, mesh and roof cement over the edges of the flange.
    ThreeCourse,
}

/// The flashing on the tile.
#[derive(Clone, Debug)]
pub struct TopFlashing {
    /// Across the slope before it is formed, `A`.
    pub(crate) width: Length,
    /// Down-slope of the opening's centre, `D`.
    pub(crate) down: Length,
    /// Up-slope of the opening's centre, `T`.
    pub(crate) up: Length,
    /// Whether it is formed over the tile's profile and so covers less than its flat width.
    pub(crate) formed: bool,
}

/// A bead of sealant.
#[derive(Clone, Debug)]
pub struct Bead {
    pub(crate) place: BeadPlace,
    pub(crate) diameter: Length,
}

/// Where a bead runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum BeadPlace {
    /// A U under the deck flashing's flange, open at its lower edge.
    #[serde(rename = "deck flange")]
    DeckFlange,
    /// A ring round the post at its collar.
    #[serde(rename = "collar")]
    Collar,
}

/// Pilot holes filled with sealant.
#[derive(Clone, Debug)]
pub struct PilotHoles {
    pub(crate) count: u32,
    pub(crate) diameter: Length,
    pub(crate) depth: Length,
}

/// Dabs of sealant.
#[derive(Clone, Debug)]
pub struct Dabs {
    pub(crate) count: u32,
    /// Volume of one, mm³.
    pub(crate) volume_mm3: f64,
}

/// A thing counted by the piece.
#[derive(Clone, Debug)]
pub struct Item {
    pub(crate) item: String,
    pub(crate) count: u32,
}

/// A point of a slope: `u` along the eave to the right, `v` up the slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SlopePoint {
    /// Along the eave, left to right as seen from outside, looking up the slope.
    pub u: Length,
    /// Up the slope, on the deck.
    pub v: Length,
}

/// What an edge of a slope is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EdgeKind {
    /// The lower edge, over the gutter.
    Eave,
    /// The top edge where two slopes meet.
    Ridge,
    /// The free side edge of a gable.
    Rake,
    /// A slanted outward edge where two slopes meet.
    Hip,
    /// A slanted inward edge where two slopes meet.
    Valley,
    /// Against a wall.
    Wall,
}

/// One roof plane with its tile, underlayment, rafters and posts.
#[derive(Clone, Debug)]
pub struct Slope {
    pub(crate) name: String,
    pub(crate) pitch: Pitch,
    pub(crate) place: Option<Place>,
    /// Counter-clockwise as seen from outside; edge `i` runs from vertex `i` to the next.
    pub(crate) outline: Vec<SlopePoint>,
    /// What edge `i` of the outline is.
    pub(crate) edges: Vec<Option<EdgeKind>>,
    /// Chimneys, vents, skylights; clockwise.
    pub(crate) holes: Vec<Vec<SlopePoint>>,
    pub(crate) tile: Arc<Tile>,
    /// The noses of the courses, ascending, however the job gives them.
    pub(crate) noses: Vec<Length>,
    /// How far tile hangs over the eave; not below zero.
    pub(crate) overhang: Length,
    pub(crate) first_joint: Length,
    /// Offset of the joints of course `k`: entry `k mod len`, already multiplied by the cover width.
    pub(crate) bond: Vec<Length>,
    pub(crate) underlayment: Arc<Underlayment>,
    pub(crate) lap_lines: LapLines,
    pub(crate) rafters: Option<Rafters>,
    /// Of the sheathing.
    pub(crate) deck_thickness: Option<Length>,
    pub(crate) blocking: Option<BlockingWood>,
    pub(crate) battens: Option<Battens>,
    pub(crate) perimeter: Option<Perimeter>,
    /// The edges from which posts keep away.
    pub(crate) setbacks: Vec<Setback>,
    /// Tiles walked on.
    pub(crate) walked: u64,
    pub(crate) posts: Vec<Post>,
    /// The arrays that the posts carry; no two of them overlap.
    pub(crate) arrays: Vec<Array>,
}

/// Where a slope stands in the world.
#[derive(Clone, Debug)]
pub enum Place {
    /// Its origin (east, north, up) and the azimuth of its down-slope direction.
    Given {
        /// East, north, up of `u = v = 0`.
        origin: [Length; 3],
        /// Degrees clockwise from north.
        azimuth_deg: f64,
    },
    /// Fitted to three or more surveyed points (east, north, up).
    Surveyed(Vec<[Length; 3]>),
}

/// The lower edges of all sheets but the first.
#[derive(Clone, Debug)]
pub enum LapLines {
    /// `f0 + i·(B − b)`.
    Regular {
        /// `f0`.
        first: Length,
    },
    /// Measured, ascending.
    Measured(Vec<Length>),
}

/// Rafters, by their centre lines, running up the slope.
#[derive(Clone, Debug)]
pub struct Rafters {
    /// Left to right; no two of them cross or overlap.
    pub(crate) lines: Vec<RafterLine>,
    /// Where `RafterLine::lower` is measured: the lowest `v` of the outline.
    pub(crate) low: Length,
    /// Where `RafterLine::upper` is measured: the highest `v` of the outline.
    pub(crate) high: Length,
    pub(crate) width: Length,
    /// Down from the deck.
    pub(crate) depth: Option<Length>,
    pub(crate) specific_gravity: Option<f64>,
}

/// The centre line of a rafter: straight up the slope, or crooked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RafterLine {
    /// `u` at the slope's lowest place.
    pub lower: Length,
    /// `u` at its highest place.
    pub upper: Length,
}

/// Battens under the heads of the courses.
#[derive(Clone, Debug)]
pub struct Battens {
    pub(crate) height: Length,
    /// Down the slope.
    pub(crate) width: Length,
    /// From a tile's head down to the batten's upper edge.
    pub(crate) lug: Length,
}

/// The strip along named edges in which every tile is fastened.
#[derive(Clone, Debug)]
pub struct Perimeter {
    pub(crate) width: Length,
    pub(crate) edges: Vec<EdgeKind>,
}

/// A post to be set.
#[derive(Clone, Debug)]
pub struct Post {
    pub(crate) name: String,
    pub(crate) assembly: Arc<Assembly>,
    /// Its point on the deck.
    pub(crate) at: SlopePoint,
    /// Whether a layout leaves it where it is.
    pub(crate) fixed: bool,
    /// JSON Pointer to where the job gives it.
    pub(crate) path: String,
}

/// How the crew works: every value is an assumption unless the job sets it.
#[derive(Clone, Debug)]
pub struct Practice {
    pub(crate) least_web: Length,
    pub(crate) hand_clearance: Length,
    pub(crate) least_margin: Length,
    pub(crate) drain: Length,
    pub(crate) deck_tuck: Length,
    pub(crate) patch_underlap: Length,
    pub(crate) patch_side_margin: Length,
    pub(crate) least_top_tuck: Length,
    pub(crate) least_side_cover: Length,
    pub(crate) bead_inset: Length,
    pub(crate) staple_spacing: Length,
    /// How far the nearest place may be from where the post is; `None` is one exposure.
    pub(crate) window: Option<Length>,
    pub(crate) breakage: Breakage,
    pub(crate) service_level: f64,
    /// What each tile short costs, if the job says.
    pub(crate) cost_of_short: Option<Money>,
    /// What a layout pays at most to keep one post from severing a tile or failing a check; `None` is any price.
    pub(crate) cost_of_failing: Option<Money>,
    /// New tiles that make up one severed tile.
    pub(crate) pieces_for_severed: u64,
    /// Volume of a cartridge of sealant, mm³.
    pub(crate) cartridge_mm3: f64,
    /// Share of sealant lost, for example 0.1.
    pub(crate) sealant_waste: f64,
    /// Share lost by item.
    pub(crate) waste: BTreeMap<String, f64>,
    /// What one blade cuts in tile.
    pub(crate) blade_life: Option<Length>,
    pub(crate) three_course: MeshAndCement,
}

/// What three-course work is made of.
#[derive(Clone, Debug)]
pub struct MeshAndCement {
    /// Width of the mesh, `w`.
    pub(crate) mesh_width: Length,
    /// Thickness of one coat of cement.
    pub(crate) film: Length,
    /// Coats of cement; at least one.
    pub(crate) coats: u32,
    /// What a container of cement holds, mm³.
    pub(crate) container_mm3: f64,
    /// Length of a roll of mesh.
    pub(crate) roll: Length,
    /// Share of cement lost.
    pub(crate) cement_waste: f64,
    /// Share of mesh lost.
    pub(crate) mesh_waste: f64,
}

/// A value in force that somebody assumed.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Assumption {
    /// What it is, in words.
    pub what: String,
    /// Its value with its unit, as shown.
    pub value: String,
    /// Whether the job file sets it (true) or it is a default (false).
    pub set_by_job: bool,
}

/// What a survey should have asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SurveyQuestion {
    /// Maker, age and kind of the tile.
    Tile,
    /// The roofer of record.
    RooferOfRecord,
    /// Warranties of roof and tile that stand.
    Warranties,
    /// Age, kind and state of the underlayment.
    Underlayment,
    /// Rafter size and spacing verified from inside.
    Rafters,
    /// Kind and thickness of the deck.
    Deck,
}
