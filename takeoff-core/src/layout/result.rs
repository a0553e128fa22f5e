//! What a layout says. Every name ends in its unit; money is in the job's currency.
use schemars::JsonSchema;
use serde::Serialize;

use super::search::ShiftMap;
use crate::deck::DeckMethod;
use crate::model::{Display, Problem};
use crate::relocation::Situation;
use crate::units::Money;

/// Where the posts of a job's arrays go, and why.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Layout {
    /// `tilepost-layout/1`.
    pub format: String,
    /// The job's name.
    pub job: String,
    /// Which units reports show.
    pub display: Display,
    /// What all money is in.
    pub currency: String,
    /// The job as it is; `None` where no post lies below the arrays.
    pub before: Option<Figures>,
    /// Where the job as it is does not keep to its own limits, as the checker of layouts finds.
    pub before_breaks: Vec<Problem>,
    /// The job as laid out.
    pub after: Figures,
    /// The arrays that have rails, in the job's order.
    pub arrays: Vec<ArrayLayout>,
    /// What each constraint costs: what the arrays would save if it gave way a little.
    pub constraints: Vec<ConstraintPrice>,
    /// Posts that no array carries and that had better stand elsewhere on their rafters.
    pub nudges: Vec<Nudge>,
    /// What the work takes and has no price: it counts for nothing.
    pub unpriced: Vec<String>,
    /// What the checker finds odd about the layout.
    pub findings: Vec<Problem>,
    /// What to mind: the usual cautions, and those of layouts.
    pub cautions: Vec<String>,
}

/// Totals of a job, as it is or as laid out.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Figures {
    /// Posts.
    pub posts: u64,
    /// Tiles with a hole.
    pub holes: u64,
    /// Tiles with a notch.
    pub notches: u64,
    /// Tiles with a corner cut away.
    pub corners: u64,
    /// Severed tiles.
    pub severed: u64,
    /// Patches, linked ones counted once.
    pub patches: u64,
    /// Tiles taken up, cut ones with them.
    pub removed: u64,
    /// Tiles loosened only.
    pub loosened: u64,
    /// Blocking boards.
    pub boards: u64,
    /// The sum over the posts of what each costs by itself: what a layout makes least.
    pub additive_cost: Money,
    /// The additive cost by what it is spent on; each is rounded by itself.
    pub spent_on: SpentOn,
    /// What they cost together: tiles and patches that they share counted once.
    pub shared_cost: Money,
    /// What sharing saves: the additive cost less the shared one.
    pub gap: Money,
    /// The price of the bid, with whole packs and what the bid adds; `None` where the job asks for none.
    pub price: Option<Money>,
}

/// A cost by what it is spent on.
#[derive(Clone, Copy, Debug, Serialize, JsonSchema)]
pub struct SpentOn {
    /// The assemblies' items, sealant, cement and mesh, what holds tiles laid back, batten nails.
    pub hardware: Money,
    /// The crew's minutes.
    pub labour: Money,
    /// Felt of the patches, and their staples.
    pub patches: Money,
    /// Blocking boards, and their items.
    pub blocking: Money,
    /// Tiles that break, in the mean, and the pieces for severed ones.
    pub breakage: Money,
}

/// Where an array goes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ArrayLayout {
    /// The slope.
    pub slope: String,
    /// The array.
    pub array: String,
    /// How far it is moved to the right, and up the slope; below zero to the left and down.
    pub right_mm: f64,
    /// How far it is moved up the slope.
    pub up_mm: f64,
    /// Where the lower left corner of its lowest left module goes along the eave.
    pub u_mm: f64,
    /// And up the slope.
    pub v_mm: f64,
    /// From the lowest up.
    pub rails: Vec<RailLayout>,
    /// The sum over its posts of what each costs by itself.
    pub additive_cost: Money,
    /// Posts that sever a tile or fail a check, for want of any other place.
    pub failing: u32,
    /// Posts that stand in the middle of an interval shorter than twice the least margin, for want of any other.
    pub thin: u32,
    /// How far each post may land up or down before its work changes, at least.
    pub least_margin_mm: f64,
    /// The same array left where it is, its rails and posts at their best; `None` where that leaves no layout.
    pub unmoved: Option<Unmoved>,
    /// Whether it had to keep away from arrays laid before it: all together may then not be at their least.
    pub yielded: bool,
    /// The next best layouts, each of another cost.
    pub runners_up: Vec<RunnerUp>,
    /// What it costs over its allowed shift.
    pub map: Option<ShiftMap>,
}

impl ArrayLayout {
    /// Whether it goes anywhere.
    pub fn moves(&self) -> bool {
        self.right_mm != 0.0 || self.up_mm != 0.0
    }

    /// What its move saves, each post by itself; `None` where it has no layout where it is.
    pub fn saves(&self) -> Option<Money> {
        let unmoved = self.unmoved.as_ref()?;
        Some(Money::new(unmoved.additive_cost.amount() - self.additive_cost.amount()))
    }
}

/// An array left where it is.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Unmoved {
    /// The sum over its posts of what each costs by itself.
    pub additive_cost: Money,
    /// Posts that sever a tile or fail a check.
    pub failing: u32,
    /// Posts in a thin interval.
    pub thin: u32,
}

/// A rail and its posts.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RailLayout {
    /// Counted from the lowest, 1.
    pub rail: u64,
    /// Where it goes up the slope.
    pub v_mm: f64,
    /// How far that is above the lower edge of its module.
    pub clamp_mm: f64,
    /// What its posts cost, each by itself.
    pub additive_cost: Money,
    /// Its posts, from left to right.
    pub posts: Vec<RailPost>,
}

/// A post of a rail.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RailPost {
    /// What it is called in the laid job.
    pub name: String,
    /// Along the eave.
    pub u_mm: f64,
    /// Its rafter, counted from 1 on the left; of a post on a board the one on its left; of a fixed post none.
    pub rafter: Option<u64>,
    /// Whether it stands on a blocking board between that rafter and the next.
    pub on_board: bool,
    /// What it meets.
    pub situation: Situation,
    /// How its deck flashing is dried in.
    pub method: DeckMethod,
}

/// Another layout of an array.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct RunnerUp {
    /// How far the array is moved to the right.
    pub right_mm: f64,
    /// How far it is moved up the slope.
    pub up_mm: f64,
    /// Where its rails go up the slope, from the lowest.
    pub rails_v_mm: Vec<f64>,
    /// Its posts.
    pub posts: u64,
    /// The sum over its posts of what each costs by itself.
    pub additive_cost: Money,
    /// How much more that is than the best.
    pub more: Money,
    /// Posts that fail, and posts in a thin interval.
    pub failing: u32,
    /// Posts in a thin interval.
    pub thin: u32,
}

/// What would be saved if one constraint gave way a little, the others as they are.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ConstraintPrice {
    /// Which.
    pub constraint: Constraint,
    /// By how much it gives way; `None` where it is dropped.
    pub by_mm: Option<f64>,
    /// What the arrays' additive cost falls by; 0 where the constraint costs nothing.
    pub saves: Money,
    /// By how many fewer posts would fail or stand in a thin interval.
    pub fewer_faults: i64,
}

/// What a layout has to keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Constraint {
    /// From post to post along a rail, at most.
    GreatestSpan,
    /// From the last post to the end of the rail, at most.
    GreatestOverhang,
    /// Where modules may be clamped.
    ClampWindows,
    /// How far the array may be moved.
    Shift,
    /// How far posts keep from edges and holes.
    Setbacks,
    /// From post to post, at least.
    LeastDistance,
    /// From a post to a change of its work, at least.
    LeastMargin,
    /// Where rails span less.
    Zones,
    /// Rails take turns in the rafters.
    Stagger,
    /// No post between the rafters.
    NoBlocking,
    /// Fixed posts stay where they are.
    FixedPosts,
}

/// A post that had better stand elsewhere on its rafter.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Nudge {
    /// The slope.
    pub slope: String,
    /// The post.
    pub post: String,
    /// How far up its rafter it had better stand; below zero down.
    pub up_mm: f64,
    /// Where that is.
    pub v_mm: f64,
    /// What it meets where it is, and there.
    pub situation: Situation,
    /// What it meets there.
    pub better: Situation,
    /// Whether it has a patch where it is, and there.
    pub patched: bool,
    /// Whether it has a patch there.
    pub better_patched: bool,
    /// Whether it severs a tile or fails a check where it is; never there.
    pub fails: bool,
    /// What it saves by itself; below zero where the only gain is that nothing fails.
    pub saves: Money,
}
