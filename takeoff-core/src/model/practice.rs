//! Working practice of the crew.
use std::collections::BTreeMap;

use super::judge::{Input, Judge};
use super::range::Range;
use super::{Breakage, Code, CrewRecord, Problems, StatedBreakage, inches_and_64ths};
use crate::units::{Length, Money, Volume};

/// Working practice of the crew: every value is an assumption unless the job sets it.
#[derive(Clone, Debug, PartialEq)]
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
    /// Greatest distance from a post to a better place for it; `None` is one exposure.
    pub(crate) window: Option<Length>,
    pub(crate) breakage: Breakage,
    pub(crate) service_level: f64,
    /// Cost of each tile short, if the job states it.
    pub(crate) cost_of_short: Option<Money>,
    /// The most that a layout pays to keep one post from severing a tile or failing a check; `None` is any price.
    pub(crate) cost_of_failing: Option<Money>,
    /// New tiles that make up one severed tile.
    pub(crate) pieces_for_severed: u64,
    /// Volume of a cartridge of sealant, mm³.
    pub(crate) cartridge_mm3: f64,
    /// Share of sealant lost, for example 0.1.
    pub(crate) sealant_waste: f64,
    /// Share lost by item.
    pub(crate) waste: BTreeMap<String, f64>,
    /// Length that one blade cuts in tile.
    pub(crate) blade_life: Option<Length>,
    pub(crate) three_course: MeshAndCement,
}

/// Mesh and cement of three-course work.
#[derive(Clone, Debug, PartialEq)]
pub struct MeshAndCement {
    /// Width of the mesh, `w`.
    pub(crate) mesh_width: Length,
    /// Thickness of one coat of cement.
    pub(crate) film: Length,
    /// Coats of cement; at least one.
    pub(crate) coats: u32,
    /// Volume of a container of cement, mm³.
    pub(crate) container_mm3: f64,
    /// Length of a roll of mesh.
    pub(crate) roll: Length,
    /// Share of cement lost.
    pub(crate) cement_waste: f64,
    /// Share of mesh lost.
    pub(crate) mesh_waste: f64,
}

/// [`Practice`] in the making: each value that is left out is as usual.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct PracticeBuilder {
    pub(crate) least_web: Input<Length>,
    pub(crate) hand_clearance: Input<Length>,
    pub(crate) least_margin: Input<Length>,
    pub(crate) drain: Input<Length>,
    pub(crate) deck_tuck: Input<Length>,
    pub(crate) patch_underlap: Input<Length>,
    pub(crate) patch_side_margin: Input<Length>,
    pub(crate) least_top_tuck: Input<Length>,
    pub(crate) least_side_cover: Input<Length>,
    pub(crate) bead_inset: Input<Length>,
    pub(crate) staple_spacing: Input<Length>,
    pub(crate) window: Input<Length>,
    pub(crate) breakage: StatedBreakage,
    pub(crate) crew_record: Input<CrewRecord>,
    pub(crate) service_level: Input<f64>,
    pub(crate) cost_of_short: Option<Money>,
    pub(crate) cost_of_failing: Option<Money>,
    pub(crate) pieces_for_severed: Input<u32>,
    pub(crate) cartridge: Input<Volume>,
    pub(crate) sealant_waste: Input<f64>,
    pub(crate) waste: BTreeMap<String, f64>,
    pub(crate) blade_life: Input<Length>,
    pub(crate) three_course: ThreeCourseMeasures,
}

/// Measures of three-course work.
#[derive(Clone, Debug, Default)]
pub(crate) struct ThreeCourseMeasures {
    /// An assembly asks for it: only then are its values assumptions in force.
    pub(crate) is_asked_for: bool,
    pub(crate) allowed: Input<bool>,
    pub(crate) mesh_width: Input<Length>,
    pub(crate) edge_extension: Input<Length>,
    pub(crate) film: Input<Length>,
    pub(crate) coats: Input<u32>,
    pub(crate) container: Input<Volume>,
    pub(crate) roll: Input<Length>,
    pub(crate) cement_waste: Input<f64>,
    pub(crate) mesh_waste: Input<f64>,
}

/// 10.1 US fluid ounces; a fluid ounce is 231/128 cubic inches.
const CARTRIDGE: Volume = Volume::from_mm3(10.1 * 231.0 / 128.0 * 25.4 * 25.4 * 25.4);

/// A US gallon: 231 cubic inches.
const GALLON: Volume = Volume::from_mm3(231.0 * 25.4 * 25.4 * 25.4);

/// Declares the setters of lengths, each with what it is.
macro_rules! lengths {
    ($( $(#[$doc:meta])* $name:ident; )*) => {$(
        $(#[$doc])*
        pub fn $name(mut self, length: Length) -> Self {
            self.$name = Input::Given(length);
            self
        }
    )*};
}

impl Practice {
    /// The usual practice, to change value by value.
    ///
    /// # Example
    ///
    /// ```
    /// use takeoff_core::{Length, Practice};
    /// let practice = Practice::builder().least_web(Length::parse("1 1/2 in")?).service_level(0.99);
    /// assert!(practice.clone().build().is_ok());
    /// assert_eq!(practice.service_level(1.0).build().unwrap_err()[0].code, "service-level");
    /// # Ok::<(), takeoff_core::UnitError>(())
    /// ```
    pub fn builder() -> PracticeBuilder {
        PracticeBuilder::default()
    }
}

impl PracticeBuilder {
    lengths! {
        /// Narrowest strip of tile that does not snap; 1 in if left out.
        least_web;
        /// Room for hands round the deck work; 2 in if left out.
        hand_clearance;
        /// Least margin of a post; 1/4 in if left out.
        least_margin;
        /// Least distance from a deck flashing's lower edge up to a lap line; 1 in if left out.
        drain;
        /// Least reach of a deck flashing under the sheet above; 2 in if left out.
        deck_tuck;
        /// Reach of a patch under the sheet above; 4 in if left out.
        patch_underlap;
        /// Reach of a patch beyond the flashing on each side; 4 in if left out.
        patch_side_margin;
        /// Least reach of a tile flashing under the course above; 3 in if left out.
        least_top_tuck;
        /// Least cover of a tile flashing beside the opening; 3 in if left out.
        least_side_cover;
        /// Inset of a bead from the edge of a deck flange; 3/4 in if left out.
        bead_inset;
        /// Distance from staple to staple round a patch; 4 in if left out.
        staple_spacing;
        /// Greatest distance to a better place for a post; one exposure if left out.
        window;
        /// Length that one blade cuts in tile; left out, blades are not counted.
        blade_life;
    }

    /// Chance that the spares suffice, between 0 and 1; 0.95 if left out.
    pub fn service_level(mut self, level: f64) -> Self {
        self.service_level = Input::Given(level);
        self
    }

    /// New tiles that make up a severed one; 2 if left out.
    pub fn pieces_for_severed(mut self, count: u32) -> Self {
        self.pieces_for_severed = Input::Given(count);
        self
    }

    /// Chances that a tile breaks when it is cut, taken up, loosened or walked on.
    pub fn breakage(mut self, cut: f64, removed: f64, loosened: f64, walked: f64) -> Self {
        let chances = [cut, removed, loosened, walked].map(Input::Given);
        self.breakage = StatedBreakage { chances, recut: self.breakage.recut };
        self
    }

    /// The building official allows three-course work.
    pub fn three_course_allowed(mut self) -> Self {
        self.three_course.allowed = Input::Given(true);
        self
    }

    /// The practice.
    ///
    /// # Errors
    ///
    /// A value out of range, and values that do not go together.
    pub fn build(self) -> Result<Practice, Problems> {
        Judge::alone(|judge| Some(self.judge(judge)))
    }

    pub(crate) fn judge(self, judge: &mut Judge<'_>) -> Practice {
        let chance = "between 0 and 1, both left out";
        if let Input::Given(level) = self.service_level
            && !(0.0 < level && level < 1.0)
        {
            let message = format!("`service_level` must be {chance}: `{level}` is not");
            judge.report("/service_level", Code::ServiceLevel, message, format!("write a number {chance}"));
        }
        let mut length = |name: &str, what, given, usual, range| {
            let given = judge.optional_length("", name, given, range);
            judge.assumptions.length(what, given, usual)
        };
        let inch = inches_and_64ths;
        let least_web = length(
            "least_web",
            "narrowest strip of tile that does not snap",
            self.least_web,
            inch(1, 0),
            Range::SIZE,
        );
        let hand_clearance = length(
            "hand_clearance",
            "room for hands round the deck work",
            self.hand_clearance,
            inch(2, 0),
            Range::GAP,
        );
        let least_margin =
            length("least_margin", "least margin of a post", self.least_margin, inch(0, 16), Range::GAP);
        let what = "least way from a deck flashing's lower edge to a lap line";
        let drain = length("drain", what, self.drain, inch(1, 0), Range::GAP);
        let what = "least of a deck flashing under the sheet above";
        let deck_tuck = length("deck_tuck", what, self.deck_tuck, inch(2, 0), Range::GAP);
        let what = "patch under the sheet above";
        let patch_underlap = length("patch_underlap", what, self.patch_underlap, inch(4, 0), Range::SIZE);
        let what = "patch beyond the flashing, each side";
        let patch_side_margin =
            length("patch_side_margin", what, self.patch_side_margin, inch(4, 0), Range::GAP);
        let what = "least of a top flashing under the course above";
        let least_top_tuck = length("least_top_tuck", what, self.least_top_tuck, inch(3, 0), Range::GAP);
        let what = "least cover of a top flashing beside the opening";
        let least_side_cover =
            length("least_side_cover", what, self.least_side_cover, inch(3, 0), Range::GAP);
        let what = "bead inside the edge of a deck flange";
        let bead_inset = length("bead_inset", what, self.bead_inset, inch(0, 48), Range::GAP);
        let what = "staple to staple round a patch";
        let staple_spacing = length("staple_spacing", what, self.staple_spacing, inch(4, 0), Range::SIZE);
        let window = judge.optional_length("", "window", self.window, Range::SIZE);
        let window = judge.assumptions.window(window);
        let breakage = self.breakage.judge(self.crew_record.given(), judge);
        let a = &mut *judge.assumptions;
        let service_level = a.number("chance that the spares suffice", self.service_level.given(), 0.95);
        if let Some(cost) = &self.cost_of_short {
            a.add("cost of each tile short, in the currency of the prices", cost.to_string(), true);
        }
        if let Some(cost) = &self.cost_of_failing {
            let what = "cost of each post that severs a tile or fails a check, in the currency of the prices";
            a.add(what, cost.to_string(), true);
        }
        let pieces_for_severed =
            a.count("new tiles for a severed one", self.pieces_for_severed.given(), 2).into();
        let cartridge_mm3 = a.volume("cartridge of sealant", self.cartridge.given(), CARTRIDGE).mm3();
        let sealant_waste = a.number("sealant lost, as a share", self.sealant_waste.given(), 0.1);
        let blade_life = judge.optional_length("", "blade_life", self.blade_life, Range::RUN);
        let a = &mut *judge.assumptions;
        if let Some(life) = blade_life {
            a.add("what one blade cuts in tile", a.display().length(life), true);
        }
        let waste = a.waste(self.waste);
        let three_course = self.three_course.judge(judge);
        Practice {
            least_web,
            hand_clearance,
            least_margin,
            drain,
            deck_tuck,
            patch_underlap,
            patch_side_margin,
            least_top_tuck,
            least_side_cover,
            bead_inset,
            staple_spacing,
            window,
            breakage,
            service_level,
            cost_of_short: self.cost_of_short,
            cost_of_failing: self.cost_of_failing,
            pieces_for_severed,
            cartridge_mm3,
            sealant_waste,
            waste,
            blade_life,
            three_course,
        }
    }
}

impl ThreeCourseMeasures {
    /// Mesh and cement; listed as assumptions where an assembly asks for three-course work.
    ///
    /// The mesh, centred on the flange's edge, has to reach the edge extension beyond it.
    fn judge(self, judge: &mut Judge<'_>) -> MeshAndCement {
        let listed = judge.assumptions.len();
        let mut optional = |name, given, range| judge.optional_length("", name, given, range);
        let given_width = optional("mesh_width", self.mesh_width, Range::SIZE);
        let given_extension = optional("edge_extension", self.edge_extension, Range::GAP);
        let film = optional("cement_film", self.film, Range::SIZE);
        let roll = optional("mesh_roll", self.roll, Range::RUN);
        let display = judge.assumptions.display();
        let a = &mut *judge.assumptions;
        a.flag("three-course work is allowed by the building official", self.allowed.given(), false);
        let mesh_width = a.length("width of the mesh", given_width, inches_and_64ths(4, 0));
        let what = "least of the mesh beyond the edge of a deck flange";
        let extension = a.length(what, given_extension, inches_and_64ths(1, 32));
        let coats = a.count("coats of roof cement", self.coats.given(), 2);
        let both_read = self.mesh_width != Input::Unread && self.edge_extension != Input::Unread;
        if both_read && mesh_width < extension + extension {
            let message = format!(
                "half of a mesh {} wide is less than the edge extension of {}",
                display.length(mesh_width),
                display.length(extension)
            );
            let at = if self.mesh_width.is_given() { "/mesh_width" } else { "/edge_extension" };
            judge.report(at, Code::MeshTooNarrow, message, "take a wider mesh, or a smaller edge extension");
        }
        if coats == 0 {
            let message = "three-course work has at least one coat of roof cement: `0` is none";
            judge.report("/cement_coats", Code::OutOfRange, message, "give the coats, usually 2");
        }
        let a = &mut *judge.assumptions;
        let mesh_and_cement = MeshAndCement {
            mesh_width,
            film: a.length("one coat of roof cement", film, inches_and_64ths(0, 8)),
            coats,
            container_mm3: a.volume("container of roof cement", self.container.given(), GALLON).mm3(),
            roll: a.length("roll of mesh", roll, inches_and_64ths(1_800, 0)),
            cement_waste: a.number("roof cement lost, as a share", self.cement_waste.given(), 0.1),
            mesh_waste: a.number("mesh lost, as a share", self.mesh_waste.given(), 0.1),
        };
        if !self.is_asked_for {
            a.truncate(listed);
        }
        mesh_and_cement
    }
}
