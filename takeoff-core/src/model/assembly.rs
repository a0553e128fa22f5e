//! Posts with their flashings, fasteners and sealant.
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::judge::{Input, Judge};
use super::range::Range;
use super::{Code, Lags, LagsBuilder, Problems, inches_and_64ths, of};
use crate::units::{Length, Volume};

/// A post with its flashings, fasteners and sealant.
#[derive(Clone, Debug, PartialEq)]
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
    /// Items that each blocking takes beside the board.
    pub(crate) blocking_items: Vec<Item>,
}

impl Assembly {
    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }
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
#[derive(Clone, Debug, PartialEq)]
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
#[derive(Clone, Debug, PartialEq)]
pub struct TopFlashing {
    /// Across the slope before it is formed, `A`.
    pub(crate) width: Length,
    /// Down-slope of the opening's centre, `D`.
    pub(crate) down: Length,
    /// Up-slope of the opening's centre, `T`.
    pub(crate) up: Length,
    /// It is formed over the tile's profile and so covers less than its flat width.
    pub(crate) formed: bool,
}

/// A bead of sealant.
#[derive(Clone, Debug, PartialEq)]
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
#[derive(Clone, Debug, PartialEq)]
pub struct PilotHoles {
    pub(crate) count: u32,
    pub(crate) diameter: Length,
    pub(crate) depth: Length,
}

/// Dabs of sealant.
#[derive(Clone, Debug, PartialEq)]
pub struct Dabs {
    pub(crate) count: u32,
    /// Volume of one, mm³.
    pub(crate) volume_mm3: f64,
}

/// A thing counted by the piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    pub(crate) item: String,
    pub(crate) count: u32,
}

/// An [`Assembly`] in the making.
#[derive(Clone, Debug, Default)]
#[must_use]
pub struct AssemblyBuilder {
    pub(crate) name: String,
    pub(crate) post_diameter: Input<Length>,
    pub(crate) clearance: Input<Length>,
    pub(crate) axis: Axis,
    pub(crate) hole_saws: Input<Vec<Length>>,
    pub(crate) post_height: Input<Length>,
    pub(crate) lap_surface_height: Input<Length>,
    pub(crate) lag_edge_distance: Input<Length>,
    pub(crate) lags: Input<LagsBuilder>,
    pub(crate) deck_flashing: Input<DeckFlashingMeasures>,
    pub(crate) top_flashing: Input<TopFlashingMeasures>,
    pub(crate) beads: Input<Vec<BeadMeasures>>,
    pub(crate) pilot_holes: Input<Vec<PilotHoles>>,
    pub(crate) dabs: Input<Vec<Dabs>>,
    pub(crate) items: Input<Vec<Item>>,
    pub(crate) blocking_items: Input<Vec<Item>>,
}

/// Measures of a deck flashing.
#[derive(Clone, Debug, Default)]
pub(crate) struct DeckFlashingMeasures {
    pub(crate) width: Input<Length>,
    pub(crate) down: Input<Length>,
    pub(crate) up: Input<Length>,
    pub(crate) cone_diameter: Input<Length>,
    pub(crate) cone_height: Input<Length>,
    pub(crate) dried_in: DriedIn,
}

/// Measures of a tile flashing.
#[derive(Clone, Debug, Default)]
pub(crate) struct TopFlashingMeasures {
    pub(crate) width: Input<Length>,
    pub(crate) down: Input<Length>,
    pub(crate) up: Input<Length>,
    pub(crate) formed: bool,
}

/// A bead whose diameter may be left out.
#[derive(Clone, Debug)]
pub(crate) struct BeadMeasures {
    pub(crate) place: Input<BeadPlace>,
    pub(crate) diameter: Input<Length>,
}

impl Assembly {
    /// An assembly of a name.
    ///
    /// # Example
    ///
    /// A post of 1 1/2 in with 1/4 in round it takes a hole saw of 2 in or more.
    ///
    /// ```
    /// use takeoff_core::{Assembly, Length};
    /// let length = |text| Length::parse(text).unwrap();
    /// let post = Assembly::builder("post-7")
    ///     .post(length("1 1/2 in"), length("1/4 in"))
    ///     .deck_flashing(length("10 in"), length("4 in"), length("7 in"))
    ///     .cone(length("2 in"))
    ///     .tile_flashing(length("16 in"), length("6 in"), length("11 in"));
    /// assert!(post.clone().build().is_ok());
    /// let problems = post.hole_saws([length("1 7/8 in")]).build().unwrap_err();
    /// assert_eq!((problems[0].code.as_str(), problems[0].path.as_str()), ("no-hole-saw", "/hole_saws"));
    /// ```
    pub fn builder(name: impl Into<String>) -> AssemblyBuilder {
        AssemblyBuilder { name: name.into(), ..AssemblyBuilder::default() }
    }
}

impl AssemblyBuilder {
    /// Diameter of the post, and the clearance round it.
    pub fn post(mut self, diameter: Length, clearance: Length) -> Self {
        self.post_diameter = Input::Given(diameter);
        self.clearance = Input::Given(clearance);
        self
    }

    /// The post stands upright, so that it leans through the tile; else it stands square to the deck.
    pub fn plumb(mut self) -> Self {
        self.axis = Axis::Plumb;
        self
    }

    /// Diameters of the hole saws at hand; without them the opening is exactly post and clearance.
    pub fn hole_saws(mut self, diameters: impl IntoIterator<Item = Length>) -> Self {
        self.hole_saws = Input::Given(diameters.into_iter().collect());
        self
    }

    /// Top of the post over the deck.
    pub fn post_height(mut self, height: Length) -> Self {
        self.post_height = Input::Given(height);
        self
    }

    /// Height over the deck of the surface between the two layers of a head lap.
    pub fn lap_surface_height(mut self, height: Length) -> Self {
        self.lap_surface_height = Input::Given(height);
        self
    }

    /// Least distance of a lag from the edge of its rafter; 1/2 in if left out.
    pub fn lag_edge_distance(mut self, distance: Length) -> Self {
        self.lag_edge_distance = Input::Given(distance);
        self
    }

    /// The lag screws of a post.
    pub fn lags(mut self, lags: LagsBuilder) -> Self {
        self.lags = Input::Given(lags);
        self
    }

    /// The deck flashing: its width across the slope, and its reach down and up from the post's point.
    pub fn deck_flashing(mut self, width: Length, down: Length, up: Length) -> Self {
        let mut flashing = self.deck_flashing.given().unwrap_or_default();
        flashing.width = Input::Given(width);
        flashing.down = Input::Given(down);
        flashing.up = Input::Given(up);
        self.deck_flashing = Input::Given(flashing);
        self
    }

    /// Diameter of the deck flashing's cone where it stands on the flange.
    pub fn cone(mut self, diameter: Length) -> Self {
        let mut flashing = self.deck_flashing.given().unwrap_or_default();
        flashing.cone_diameter = Input::Given(diameter);
        self.deck_flashing = Input::Given(flashing);
        self
    }

    /// Top of the cone over the deck.
    pub fn cone_height(mut self, height: Length) -> Self {
        let mut flashing = self.deck_flashing.given().unwrap_or_default();
        flashing.cone_height = Input::Given(height);
        self.deck_flashing = Input::Given(flashing);
        self
    }

    /// The deck flashing is dried in with three-course work, where the building official allows it.
    pub fn three_course(mut self) -> Self {
        let mut flashing = self.deck_flashing.given().unwrap_or_default();
        flashing.dried_in = DriedIn::ThreeCourse;
        self.deck_flashing = Input::Given(flashing);
        self
    }

    /// The tile flashing: its width before it is formed, and its reach down and up from the opening's centre.
    pub fn tile_flashing(mut self, width: Length, down: Length, up: Length) -> Self {
        let [width, down, up] = [width, down, up].map(Input::Given);
        let formed = self.top_flashing.given().is_some_and(|flashing| flashing.formed);
        self.top_flashing = Input::Given(TopFlashingMeasures { width, down, up, formed });
        self
    }

    /// The tile flashing is formed over the tile's profile and so covers less than its flat width.
    pub fn formed(mut self) -> Self {
        let flashing = self.top_flashing.given().unwrap_or_default();
        self.top_flashing = Input::Given(TopFlashingMeasures { formed: true, ..flashing });
        self
    }

    /// One more bead of sealant; 3/8 in if no diameter is given.
    pub fn bead(mut self, place: BeadPlace, diameter: Option<Length>) -> Self {
        let mut beads = self.beads.given().unwrap_or_default();
        let diameter = diameter.map_or(Input::Missing, Input::Given);
        beads.push(BeadMeasures { place: Input::Given(place), diameter });
        self.beads = Input::Given(beads);
        self
    }

    /// Pilot holes filled with sealant, so many per post.
    pub fn pilot_holes(mut self, count: u32, diameter: Length, depth: Length) -> Self {
        let mut holes = self.pilot_holes.given().unwrap_or_default();
        holes.push(PilotHoles { count, diameter, depth });
        self.pilot_holes = Input::Given(holes);
        self
    }

    /// Dabs of sealant, so many per post.
    pub fn dabs(mut self, count: u32, volume: Volume) -> Self {
        let mut dabs = self.dabs.given().unwrap_or_default();
        dabs.push(Dabs { count, volume_mm3: volume.mm3() });
        self.dabs = Input::Given(dabs);
        self
    }

    /// One more item that each blocking takes, beside the board.
    pub fn blocking_item(mut self, item: impl Into<String>, count: u32) -> Self {
        let mut items = self.blocking_items.given().unwrap_or_default();
        items.push(Item { item: item.into(), count });
        self.blocking_items = Input::Given(items);
        self
    }

    /// One more item, so many per post.
    pub fn item(mut self, item: impl Into<String>, count: u32) -> Self {
        let mut items = self.items.given().unwrap_or_default();
        items.push(Item { item: item.into(), count });
        self.items = Input::Given(items);
        self
    }

    /// The assembly.
    ///
    /// # Errors
    ///
    /// Every measure that is missing or out of range, and parts that do not fit each other.
    pub fn build(self) -> Result<Assembly, Problems> {
        Judge::alone(|judge| self.judge(judge))
    }

    pub(crate) fn judge(self, judge: &mut Judge<'_>) -> Option<Assembly> {
        let own = self.name.clone();
        let name = judge.name("", &self.name);
        let post_diameter = judge.length("", "post_diameter", self.post_diameter, Range::SIZE);
        let clearance = judge.length("", "clearance", self.clearance, Range::GAP);
        let post_height = judge.optional_length("", "post_height", self.post_height, Range::SIZE);
        let lap_surface_height =
            judge.optional_length("", "lap_surface_height", self.lap_surface_height, Range::GAP);
        let hole_saws = hole_saws(self.hole_saws, self.axis, post_diameter, clearance, judge);
        let deck_flashing = judge.needed("", "deck_flashing", self.deck_flashing, "an object");
        let deck_flashing = deck_flashing.and_then(|flashing| flashing.judge(post_diameter, judge));
        let top_flashing = judge.needed("", "top_flashing", self.top_flashing, "an object");
        let top_flashing = top_flashing.and_then(|flashing| flashing.judge(judge));
        let given = judge.optional_length("", "lag_edge_distance", self.lag_edge_distance, Range::GAP);
        let what = of("least distance of a lag from the rafter's edge", &own);
        let lag_edge_distance = judge.assumptions.length(what, given, inches_and_64ths(0, 32));
        let beads = list(self.beads, |number, bead| bead.judge(&own, number, judge));
        let pilot_holes = list(self.pilot_holes, |number, holes| holes.judge(number, judge));
        let dabs = list(self.dabs, |_, dabs| Some(dabs));
        let lags = match self.lags {
            Input::Missing => Some(None),
            given => given.given().and_then(|lags| lags.judge(&own, "/lags", judge)).map(Some),
        };
        let own_items = items(self.items, "/items", judge);
        let blocking_items = items(self.blocking_items, "/blocking_items", judge);
        Some(Assembly {
            name: name?,
            post_diameter: post_diameter?,
            clearance: clearance?,
            axis: self.axis,
            hole_saws: hole_saws?,
            post_height,
            lap_surface_height,
            lag_edge_distance,
            lags: lags?,
            deck_flashing: deck_flashing?,
            top_flashing: top_flashing?,
            beads: beads?,
            pilot_holes: pilot_holes?,
            dabs: dabs?,
            items: own_items?,
            blocking_items: blocking_items?,
        })
    }
}

/// The saws at hand, ascending; one of them has to be large enough for a post square to the deck.
fn hole_saws(
    saws: Input<Vec<Length>>,
    axis: Axis,
    post: Option<Length>,
    clearance: Option<Length>,
    judge: &mut Judge<'_>,
) -> Option<Vec<Length>> {
    let mut saws = match saws {
        Input::Missing => return Some(Vec::new()),
        given => given.given()?,
    };
    saws.sort();
    if let (Axis::Normal, Some(post), Some(gap)) = (axis, post, clearance)
        && !saws.iter().any(|&saw| saw >= post + gap + gap)
    {
        let (post, gap) = (judge.shown("/post_diameter", post), judge.shown("/clearance", gap));
        let message =
            format!("no hole saw is large enough for a post of {post} with a clearance of {gap} all round");
        let help = "add the saw that is used, or leave `hole_saws` out";
        judge.report("/hole_saws", Code::NoHoleSaw, message, help);
    }
    Some(saws)
}

impl DeckFlashingMeasures {
    fn judge(self, post: Option<Length>, judge: &mut Judge<'_>) -> Option<DeckFlashing> {
        const AT: &str = "/deck_flashing";
        let width = judge.length(AT, "width", self.width, Range::SIZE);
        let down = judge.length(AT, "down", self.down, Range::SIZE);
        let up = judge.length(AT, "up", self.up, Range::SIZE);
        let cone = judge.length(AT, "cone_diameter", self.cone_diameter, Range::SIZE);
        let cone_height = judge.optional_length(AT, "cone_height", self.cone_height, Range::SIZE);
        if let Some(cone) = cone {
            let at = "/deck_flashing/cone_diameter";
            let shown = judge.shown(at, cone);
            if let Some(post) = post.filter(|&post| cone < post) {
                let post = judge.shown("/post_diameter", post);
                let message = format!("a cone of {shown} does not go round a post of {post}");
                let help = "give the cone's diameter where it stands on the flange";
                judge.report(at, Code::FlashingTooSmall, message, help);
            }
            let sides = [
                ("/deck_flashing/width", width, width),
                ("/deck_flashing/down", down, down.map(|down| down + down)),
                ("/deck_flashing/up", up, up.map(|up| up + up)),
            ];
            for (at, side, room) in sides {
                if let (Some(side), true) = (side, room.is_some_and(|room| room < cone)) {
                    let side = judge.shown(at, side);
                    let message = format!("a cone of {shown} does not stand on a flange of {side}");
                    let help = "measure the flange from the post's centre down and up, and right across";
                    judge.report(at, Code::FlashingTooSmall, message, help);
                }
            }
        }
        Some(DeckFlashing {
            width: width?,
            down: down?,
            up: up?,
            cone_diameter: cone?,
            cone_height,
            dried_in: self.dried_in,
        })
    }
}

impl TopFlashingMeasures {
    fn judge(self, judge: &mut Judge<'_>) -> Option<TopFlashing> {
        const AT: &str = "/top_flashing";
        let width = judge.length(AT, "width", self.width, Range::SIZE);
        let down = judge.length(AT, "down", self.down, Range::SIZE);
        let up = judge.length(AT, "up", self.up, Range::SIZE);
        Some(TopFlashing { width: width?, down: down?, up: up?, formed: self.formed })
    }
}

impl BeadMeasures {
    fn judge(self, assembly: &str, number: usize, judge: &mut Judge<'_>) -> Option<Bead> {
        let at = format!("/beads/{number}");
        let diameter = judge.optional_length(&at, "diameter", self.diameter, Range::SIZE);
        let what = of("diameter of a bead", assembly);
        let diameter = judge.assumptions.length(what, diameter, inches_and_64ths(0, 24));
        Some(Bead { place: self.place.given()?, diameter })
    }
}

impl PilotHoles {
    fn judge(self, number: usize, judge: &mut Judge<'_>) -> Option<PilotHoles> {
        let at = format!("/pilot_holes/{number}");
        let diameter = judge.length(&at, "diameter", Input::Given(self.diameter), Range::SIZE);
        let depth = judge.length(&at, "depth", Input::Given(self.depth), Range::SIZE);
        Some(PilotHoles { count: self.count, diameter: diameter?, depth: depth? })
    }
}

/// Every part of a list, judged with its number; none where the list is left out.
fn list<T, U>(parts: Input<Vec<T>>, mut judge: impl FnMut(usize, T) -> Option<U>) -> Option<Vec<U>> {
    match parts {
        Input::Missing => Some(Vec::new()),
        given => given.given()?.into_iter().enumerate().map(|(number, part)| judge(number, part)).collect(),
    }
}

fn items(items: Input<Vec<Item>>, path: &str, judge: &mut Judge<'_>) -> Option<Vec<Item>> {
    list(items, |number, item| {
        let name = judge.name(&format!("{path}/{number}/item"), &item.item)?;
        Some(Item { item: name, count: item.count })
    })
}
