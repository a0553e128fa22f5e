//! What a takeoff says. Every name ends in its unit; every total carries its basis.
mod bid;

use schemars::JsonSchema;
use serde::Serialize;

pub use bid::{Bid, BidLine, BidPack, BidTotals, LabourLine, Purchase, Unpriced, UnusedPrice};

use super::RollPlan;
use crate::buying::Money;
use crate::job::{Assumption, Display, EdgeKind, Problem, SurveyQuestion};
use crate::screening::Screening;
use crate::spares::{Handled, Spares};

/// The whole takeoff of a job.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Takeoff {
    /// `tilepost-takeoff/1`.
    pub format: String,
    /// The job's name.
    pub job: String,
    /// Which units reports show.
    pub display: Display,
    /// The totals in one glance.
    pub counts: Counts,
    /// What to buy, line by line, with the basis of each.
    pub materials: Vec<MaterialLine>,
    /// What it costs; `None` where the job has neither prices nor terms of a bid.
    pub bid: Option<Bid>,
    /// The probability with which the spares of each kind of piece are enough.
    pub service_level: f64,
    /// Spare tiles by kind of piece.
    pub spares: Vec<TileSpares>,
    /// Cutting plans of the patches, by underlayment.
    pub rolls: Vec<RollPlan>,
    /// Slope by slope, in the job's order.
    pub slopes: Vec<SlopeTakeoff>,
    /// Lags in withdrawal against wind uplift, where the job asks for it and gives enough.
    pub screening: Option<Screening>,
    /// What is odd but real.
    pub findings: Vec<Problem>,
    /// The assumptions in force.
    pub assumptions: Vec<Assumption>,
    /// The usual cautions of the trade.
    pub cautions: Vec<String>,
    /// What the survey asked, and what it left unasked.
    pub survey: Vec<SurveyAnswer>,
}

/// Totals over all slopes.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Counts {
    /// Posts.
    pub posts: u64,
    /// Tiles with a hole (an edge tile's piece counts as a tile).
    pub holes: u64,
    /// Tiles with a notch.
    pub notches: u64,
    /// Tiles with a corner cut away.
    pub corners: u64,
    /// Tiles severed.
    pub severed: u64,
    /// Posts that cut more than one tile.
    pub posts_on_several_tiles: u64,
    /// Posts whose flashing tucks under the sheet above.
    pub tucked: u64,
    /// Posts whose flashing is patched.
    pub patched: u64,
    /// Patches, linked ones counted once.
    pub patches: u64,
    /// Posts whose flashing is dried in with three-course work.
    pub three_course: u64,
    /// Tiles taken up (cut ones with them).
    pub removed: u64,
    /// Tiles loosened only.
    pub loosened: u64,
    /// Sound tiles taken from under the arrays, to be spares.
    pub harvested: u64,
    /// Blade path, in tile, millimetres.
    pub blade_path_mm: f64,
}

/// One line of the material list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct MaterialLine {
    /// What to buy.
    pub item: String,
    /// Unit of `need`: `each`, `mm2`, `mm`, `mm3`.
    pub unit: Unit,
    /// How much the work takes, before waste.
    pub need: f64,
    /// Share added for waste; 0 when there is none.
    pub waste: f64,
    /// What to bring: need with waste; whole for counts.
    pub bring: f64,
    /// The line whose need this one gives again in packs: of the two, one is bought.
    pub packs_of: Option<String>,
    /// Where the need comes from.
    pub basis: Vec<Basis>,
}

/// Unit of a material line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// By the piece.
    Each,
    /// Square millimetres.
    Mm2,
    /// Millimetres.
    Mm,
    /// Cubic millimetres.
    Mm3,
}

/// One reason for a need: `count × each`.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Basis {
    /// Which rule, in words, with the numbers it used.
    pub what: String,
    /// How many times.
    pub count: u64,
    /// How much each time, in the line's unit.
    pub each: f64,
    /// Where, by name: posts, patches or tiles, `slope/name`; empty when it is the whole job.
    pub places: Vec<String>,
}

/// Spares of one kind of piece.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TileSpares {
    /// The tile, with `, pan` or `, cover` for a two-piece tile.
    pub tile: String,
    /// How many tiles are handled, by class.
    pub handled: Handled,
    /// Whole tiles that the arrays hide and that nothing else is done to: they can be harvested.
    pub hidden: u64,
    /// What one tile weighs, grams, if the job says.
    pub weight_g: Option<f64>,
    /// The count and how it was found.
    #[serde(flatten)]
    pub spares: Spares,
    /// The count at the least expected cost; `None` where the job does not say what a tile short costs, or a tile.
    pub least_cost: Option<LeastCost>,
}

/// Spares at the least expected cost: that of the tiles bought, and of those that are short.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct LeastCost {
    /// Currency of both costs.
    pub currency: String,
    /// Cost of one tile; in packs, its share of the cheapest, rounded here.
    pub unit_cost: Money,
    /// Cost of each tile short, as the job has it.
    pub cost_of_short: Money,
    /// Unit cost over cost of short, 1 at most: a tile more pays as long as the chance of running short is above it.
    pub cost_ratio: f64,
    /// Tiles to buy: for breakage the least number with a chance of running short up to `cost_ratio`, and the pieces
    /// for severed tiles, less those on hand and harvested, never below 0.
    pub spares: u64,
    /// The probability that these are not enough.
    pub chance_short: f64,
}

/// An answer of the survey.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SurveyAnswer {
    /// Which question.
    pub question: SurveyQuestion,
    /// The question in words.
    pub asks: String,
    /// The answer; `None` was left unasked.
    pub answer: Option<String>,
}

impl SurveyAnswer {
    /// Whether the question is still to be asked: a blank answer is none.
    pub fn is_open(&self) -> bool {
        self.answer.as_ref().is_none_or(|text| text.trim().is_empty())
    }
}

/// One slope.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SlopeTakeoff {
    /// Its name.
    pub name: String,
    /// Pitch as written.
    pub pitch: String,
    /// `sqrt(1 + (rise/run)²)`.
    pub slope_factor: f64,
    /// Area of the outline on the slope, holes taken out.
    pub area_mm2: f64,
    /// The outline, rings of `[u, v]`: outer first, then holes.
    pub outline_mm: Vec<Vec<[f64; 2]>>,
    /// What edge `i` of the outer ring of the outline is; it runs from vertex `i` to the next.
    pub edges: Vec<Option<EdgeKind>>,
    /// The outline moved down over the eaves, rings of `[u, v]`: outer first, then holes.
    pub field_mm: Vec<Vec<[f64; 2]>>,
    /// Where the slope stands in the world, if the job says.
    pub place: Option<PlaceTakeoff>,
    /// Courses from the eave up.
    pub courses: Vec<Course>,
    /// The columns of tile.
    pub columns: Columns,
    /// Lap lines of the underlayment, ascending.
    pub lap_lines_mm: Vec<f64>,
    /// Centre lines of the rafters, left to right, each by its `u` at the height of the outline's lowest corner and of its
    /// highest.
    pub rafters_mm: Vec<[f64; 2]>,
    /// Posts in the job's order.
    pub posts: Vec<PostTakeoff>,
    /// Arrays of modules in the job's order.
    pub arrays: Vec<ArrayTakeoff>,
    /// Cuts by course, column and piece.
    pub cuts: Vec<Cut>,
    /// Tiles handled, by course, column and piece.
    pub tiles: Vec<TileWork>,
    /// Patches in order of their first post.
    pub patches: Vec<Patch>,
    /// Three-course work, a post each, in the job's order.
    pub three_course: Vec<ThreeCourse>,
    /// Battens cut and reset.
    pub battens: Vec<BattenPiece>,
    /// Ridge, hip and rake trim taken up.
    pub trim: Vec<Trim>,
    /// Blocking boards between rafters.
    pub blocking: Vec<Blocking>,
}

/// Where a slope stands in the world.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PlaceTakeoff {
    /// East, north, up of `u = v = 0`.
    pub origin_mm: [f64; 3],
    /// Azimuth of the down-slope direction, degrees clockwise from north.
    pub azimuth_deg: f64,
    /// Pitch, degrees.
    pub pitch_deg: f64,
    /// Root mean square distance of the surveyed points from the plane.
    pub rms_mm: Option<f64>,
    /// Greatest distance of a surveyed point from the plane.
    pub greatest_mm: Option<f64>,
}

/// One course.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Course {
    /// Number from the eave, 1 is the lowest.
    pub course: u64,
    /// Its noses.
    pub nose_mm: f64,
    /// To the next nose; `None` for the top course.
    pub exposure_mm: Option<f64>,
    /// What it lies under the next course; `None` for the top course.
    pub head_lap_mm: Option<f64>,
    /// Its joint nearest to `u = 0` from the right, so that joints are this plus multiples of the cover.
    pub joint_mm: f64,
}

/// The columns of tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Columns {
    /// Joint to joint.
    pub cover_mm: f64,
    /// Overall widths by kind of piece: the tile, or pan and cover.
    pub widths_mm: Vec<f64>,
    /// Tile length.
    pub length_mm: f64,
}

/// One post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PostTakeoff {
    /// Its name.
    pub name: String,
    /// Its assembly.
    pub assembly: String,
    /// Its point on the deck, along the eave.
    pub u_mm: f64,
    /// Its point on the deck, up the slope.
    pub v_mm: f64,
    /// East, north, up, if the slope's place is known.
    pub world_mm: Option<[f64; 3]>,
    /// The opening in the tile.
    pub opening: Opening,
    /// What it meets.
    pub situation: Situation,
    /// Whether a tile is severed.
    pub severed: bool,
    /// The tiles it cuts, by name.
    pub cuts: Vec<String>,
    /// How far it may land off its place.
    pub margin: Margin,
    /// The nearest better place on its rafter, if there is one.
    pub nearest: Option<Nearest>,
    /// The work on the deck.
    pub deck: DeckWork,
    /// The flashing on the tile.
    pub top: TopCheck,
    /// Heights over the deck.
    pub height: HeightStack,
    /// The wood under it; `None` when the job gives no rafters.
    pub support: Option<Support>,
}

/// An array of modules.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ArrayTakeoff {
    /// Its name.
    pub name: String,
    /// The rectangle of all its modules, gaps included: left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// Modules along the eave.
    pub columns: u64,
    /// Modules up the slope.
    pub rows: u64,
    /// A module along the eave.
    pub module_width_mm: f64,
    /// A module up the slope.
    pub module_height_mm: f64,
    /// From module to module along the eave.
    pub column_gap_mm: f64,
    /// From module to module up the slope.
    pub row_gap_mm: f64,
    /// The posts below it.
    pub posts: Vec<String>,
}

/// The opening in the tile: an ellipse with axes along `u` and `v`.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Opening {
    /// Centre along the eave.
    pub u_mm: f64,
    /// Centre up the slope.
    pub v_mm: f64,
    /// Semi-axis along `u`.
    pub half_width_mm: f64,
    /// Semi-axis along `v`.
    pub half_height_mm: f64,
    /// The least clearance left round the post through both layers of tile.
    pub least_clearance_mm: f64,
}

/// What a post meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Situation {
    /// No tile there.
    None,
    /// One tile, with a hole.
    OneTileHole,
    /// One tile, at its edge.
    OneTileEdge,
    /// Two tiles of one course.
    TwoSideBySide,
    /// Two tiles of two courses.
    TwoCourses,
    /// Three tiles.
    Three,
    /// Four or more.
    FourOrMore,
}

/// What kind of cut a tile gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum CutKind {
    /// The opening, with sound tile all round.
    Hole,
    /// Out through one edge.
    Notch,
    /// Out through two edges that share a corner; the corner piece comes away.
    Corner,
    /// No sound single piece remains.
    Severed,
}

/// How far a post may land off its place before anything changes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Margin {
    /// Toward −u.
    pub left_mm: f64,
    /// Toward +u.
    pub right_mm: f64,
    /// Toward −v.
    pub down_mm: f64,
    /// Toward +v.
    pub up_mm: f64,
}

/// A better place for a post, up or down its rafter.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Nearest {
    /// How far up (negative: down).
    pub up_mm: f64,
    /// The place.
    pub v_mm: f64,
    /// What the post would meet there.
    pub situation: Situation,
    /// Kinds of the cuts there.
    pub kinds: Vec<CutKind>,
    /// Least of the four margins there.
    pub least_margin_mm: f64,
}

/// How the deck flashing is dried in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum DeckMethod {
    /// The sheet above is laid over the flange.
    Tucked,
    /// A patch runs from the cone up under the next sheet.
    Patched,
    /// Roof cement, mesh and roof cement go over the edges of the flange.
    ThreeCourse,
}

/// The work on the deck at one post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct DeckWork {
    /// Tucked, patched or three-course.
    pub method: DeckMethod,
    /// The lap line that governs; `None` when there is none above and the patch runs to the field's edge, and with
    /// three-course work.
    pub lap_line_mm: Option<f64>,
    /// Whether the tucked sheet is also cut around the cone.
    pub cut_around_cone: bool,
    /// The patch's name.
    pub patch: Option<String>,
    /// The flashing: left, lower, right, upper.
    pub flashing_mm: [f64; 4],
    /// The work zone: left, lower, right, upper.
    pub zone_mm: [f64; 4],
}

/// The flashing on the tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TopCheck {
    /// The course whose visible face holds the opening's centre; `None` where there is no tile.
    pub course: Option<u64>,
    /// The flashing: left, lower, right, upper as it lies, trimmed.
    pub flashing_mm: [f64; 4],
    /// What is trimmed off its upper edge at the tile's head.
    pub trimmed_mm: f64,
    /// How far it goes up under the next course; `None` in the top course (at the ridge).
    pub tuck_mm: Option<f64>,
    /// By how much the tuck falls short of what is asked.
    pub tuck_short_mm: f64,
    /// Cover on each side of the opening.
    pub side_cover_mm: f64,
    /// By how much the side cover falls short of what is asked.
    pub side_short_mm: f64,
    /// Whether tuck and side cover reach what is asked.
    pub passes: bool,
}

/// Heights over the deck at the post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct HeightStack {
    /// Top of the batten.
    pub batten_mm: f64,
    /// Layers of tile over the post's point.
    pub layers: u64,
    /// Top of the tile.
    pub tile_mm: f64,
    /// Top of the cone, if given.
    pub cone_mm: Option<f64>,
    /// Top of the post, if given.
    pub post_mm: Option<f64>,
    /// Free post above the tile, if given.
    pub free_post_mm: Option<f64>,
}

/// The wood under a post.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Support {
    /// The nearest rafter, counted from 1 on the left.
    pub rafter: u64,
    /// Post's point less the rafter's centre line.
    pub off_centre_mm: f64,
    /// Whether the lag lands within tolerance.
    pub on_rafter: bool,
    /// Whether blocking is put in.
    pub blocked: bool,
}

/// A cut in one tile.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Cut {
    /// The tile's name: course, column, and piece where there are several.
    pub tile: String,
    /// Kind of piece: the tile's name, with `, pan` or `, cover`.
    pub piece: String,
    /// Course number from the eave.
    pub course: u64,
    /// Column number from the left.
    pub column: i64,
    /// Kind of cut.
    pub kind: CutKind,
    /// The posts it is for; several when their openings are judged as one.
    pub posts: Vec<String>,
    /// Whether the tile is cut by the field's edge.
    pub edge_tile: bool,
    /// Area taken out.
    pub area_mm2: f64,
    /// Length of the saw's way.
    pub blade_path_mm: f64,
    /// Centre of the opening from the tile's left edge, face up, in plan.
    pub from_left_mm: f64,
    /// The same along the profile's face.
    pub from_left_developed_mm: f64,
    /// Centre of the opening from the nose.
    pub from_nose_mm: f64,
    /// Semi-axis (half the width, for openings judged as one) along `u`.
    pub half_width_mm: f64,
    /// Semi-axis (half the height) along `v`.
    pub half_height_mm: f64,
    /// Whether the opening is the rectangle round several.
    pub rectangle: bool,
    /// The sides it runs out of, as laid.
    pub open_to: Vec<TileSide>,
}

/// A side of a tile as laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TileSide {
    /// The left side.
    Left,
    /// The nose.
    Nose,
    /// The right side.
    Right,
    /// The head.
    Head,
    /// An edge cut along the field's edge (hip, valley, chimney…).
    FieldEdge,
}

/// What becomes of a tile: the first that holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum TileClass {
    /// Made up from new tiles.
    Severed,
    /// Taken up, cut and laid back.
    Cut,
    /// Taken up and laid back.
    Removed,
    /// Loosened in place.
    Loosened,
}

/// A tile handled.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct TileWork {
    /// Its name.
    pub tile: String,
    /// Kind of piece: the tile's name, with `, pan` or `, cover`.
    pub piece: String,
    /// Course number from the eave.
    pub course: u64,
    /// Column number from the left.
    pub column: i64,
    /// What becomes of it.
    pub class: TileClass,
    /// Whether it is cut by the field's edge.
    pub edge_tile: bool,
    /// Whether it lies in the perimeter strip and is refastened.
    pub refasten: bool,
    /// A set tile that would have to be loosened and can't be: excluded from the takeoff.
    pub excluded: bool,
    /// The posts on whose account it is handled.
    pub posts: Vec<String>,
    /// Its visible face before the field's edge clips it: left, lower, right, upper.
    pub face_mm: [f64; 4],
    /// Its clipped footprint, rings of `[u, v]`: outer first.
    pub footprint_mm: Vec<Vec<[f64; 2]>>,
}

/// A patch over a deck flashing.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Patch {
    /// Its name.
    pub name: String,
    /// The posts under it.
    pub posts: Vec<String>,
    /// Left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// The lap line it goes under; `None` runs to the field's edge.
    pub lap_line_mm: Option<f64>,
    /// Pieces, one above the other, where it is taller than a sheet is wide.
    pub pieces: u64,
    /// Felt it takes, the laps between its pieces counted.
    pub area_mm2: f64,
    /// Round about its edge.
    pub perimeter_mm: f64,
    /// Staples.
    pub staples: u64,
    /// Posts at its lower edge, cut half-round about the cone.
    pub half_round_at: Vec<String>,
    /// Posts inside it, with a full round hole.
    pub round_at: Vec<String>,
    /// Patches that this one lies over.
    pub lies_over: Vec<String>,
    /// Posts that are not under this patch and whose cones stand in it: it is cut round them.
    pub cut_round: Vec<String>,
}

/// Roof cement, mesh and roof cement over the edges of a deck flashing.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ThreeCourse {
    /// The post.
    pub post: String,
    /// The bands on the left, at the top and on the right: left, lower, right, upper of each.
    pub bands_mm: [[f64; 4]; 3],
    /// What the bands cover.
    pub area_mm2: f64,
    /// Mesh that they take, the laps at the corners counted.
    pub mesh_mm: f64,
    /// Roof cement: area × film × coats.
    pub cement_mm3: f64,
}

/// A piece of batten cut out and reset.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BattenPiece {
    /// The course that hangs on it.
    pub course: u64,
    /// Left end.
    pub from_mm: f64,
    /// Right end.
    pub to_mm: f64,
    /// Lower edge.
    pub lower_mm: f64,
    /// Upper edge.
    pub upper_mm: f64,
    /// Nails, two an end.
    pub nails: u64,
    /// The posts it makes room for.
    pub posts: Vec<String>,
}

/// Trim taken up along edges of one kind.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Trim {
    /// Ridge, hip or rake.
    pub edge: EdgeKind,
    /// Length inside the union of the work zones.
    pub length_mm: f64,
}

/// A blocking board between two rafters.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Blocking {
    /// The post it carries.
    pub post: String,
    /// Clear distance between the rafters, which is the board's length.
    pub length_mm: f64,
}
