//! The state of a post at a place: all that its margin keeps.
use super::Situation;
use crate::cuts::{Breach, CutKind, Judged, Opening, Shape, each_met, judge};
use crate::deck::{DeckMethod, Method, TopFlashingCheck};
use crate::geometry::{Ellipse, Point, grid};
use crate::model::Assembly;
use crate::roof::{Site, TileId};

use super::Partners;

/// A post that could stand elsewhere on its slope.
pub struct Mover<'a> {
    /// The slope.
    pub site: &'a Site<'a>,
    /// The post's assembly.
    pub assembly: &'a Assembly,
    /// Its opening, with the post at the origin.
    pub opening: Opening,
    /// The openings of other posts that this one's is judged together with.
    pub partners: Partners<'a>,
}

/// What a post meets at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct State {
    /// How many tiles of what courses.
    pub situation: Situation,
    /// Tiles cut.
    pub tiles: u32,
    /// Tiles cut otherwise than by a hole.
    pub not_holes: u32,
    /// Tiles severed.
    pub severed: u32,
    /// The kinds of the cuts in the order of the tiles, as digits to the base 5.
    kinds: u128,
    /// How the deck flashing is dried in.
    pub method: DeckMethod,
    /// Whether the tile flashing's tuck is enough.
    pub tuck_passes: bool,
    /// Whether its side cover is enough.
    pub side_passes: bool,
}

impl State {
    /// From the tiles that a post cuts, its deck method and its tile flashing.
    pub(crate) fn of(tally: &Tally, method: DeckMethod, top: &TopFlashingCheck) -> State {
        State {
            situation: tally.situation(),
            tiles: tally.tiles,
            not_holes: tally.not_holes,
            severed: tally.severed,
            kinds: tally.kinds,
            method,
            tuck_passes: top.tuck_short == 0,
            side_passes: top.side_short == 0,
        }
    }

    /// Whether all checks of the tile flashing pass.
    pub fn passes(&self) -> bool {
        self.tuck_passes && self.side_passes
    }
}

impl Mover<'_> {
    /// The opening with the post at `at`.
    pub fn opening_at(&self, at: Point) -> Ellipse {
        self.opening.at(at)
    }

    /// The state with the post at `at`.
    pub fn state(&self, at: Point) -> State {
        let mut tally = Tally::default();
        self.judged(at, |tile, kind| tally.add(tile, kind));
        let top = TopFlashingCheck::at(self.site, self.assembly, &self.opening_at(at));
        State::of(&tally, Method::at(self.site, self.assembly, at).kind(), &top)
    }

    /// The kinds of the cuts with the post at `at`, in the order of the tiles.
    pub fn kinds(&self, at: Point) -> Vec<CutKind> {
        let mut kinds = Vec::new();
        self.judged(at, |_, kind| kinds.push(kind));
        kinds
    }

    fn judged(&self, at: Point, mut found: impl FnMut(TileId, CutKind)) {
        let web = grid(self.site.practice.least_web);
        let own = self.opening_at(at);
        judge(&self.site.grid, &self.site.field, Shape::Ellipse(own), web, |judged| {
            found(judged.tile, self.breach(&judged, own, web).kind());
        });
    }

    /// Whether the opening is judged by itself in every tile with the post at `at`.
    pub(super) fn stands_alone(&self, at: Point) -> bool {
        let mut alone = true;
        if !self.partners.is_none() {
            let own = self.opening_at(at);
            each_met(&self.site.grid, &self.site.field, &Shape::Ellipse(own), |tile, footprint| {
                alone &= self.partners.judged_with(tile, footprint.number(), &own.bounds()).is_none();
            });
        }
        alone
    }

    /// What is breached of a tile, the partners' openings in it judged together with this post's.
    fn breach(&self, judged: &Judged, own: Ellipse, web: i64) -> Breach {
        let footprint = &judged.footprint;
        let together = self.partners.judged_with(judged.tile, footprint.number(), &own.bounds());
        together.map_or(judged.breach, |rect| footprint.breach(&Shape::Rect(rect), web))
    }
}

/// Counts the tiles that one post cuts and so finds its situation.
#[derive(Default)]
pub(crate) struct Tally {
    tiles: u32,
    not_holes: u32,
    severed: u32,
    kinds: u128,
    courses: Option<(u32, u32)>,
}

impl Tally {
    /// Adds one cut tile.
    pub(crate) fn add(&mut self, tile: TileId, kind: CutKind) {
        self.tiles += 1;
        self.not_holes += u32::from(kind != CutKind::Hole);
        self.severed += u32::from(kind == CutKind::Severed);
        // Fifty-five tiles fit exactly; beyond that the digits wrap and still tell most states apart.
        self.kinds = self.kinds.wrapping_mul(5).wrapping_add(1 + kind as u128);
        let (lowest, highest) = self.courses.unwrap_or((tile.course, tile.course));
        self.courses = Some((lowest.min(tile.course), highest.max(tile.course)));
    }

    /// What the post meets.
    pub(crate) fn situation(&self) -> Situation {
        match (self.tiles, self.courses) {
            (0, _) => Situation::None,
            (1, _) if self.not_holes == 0 => Situation::OneTileHole,
            (1, _) => Situation::OneTileEdge,
            (2, Some((lowest, highest))) if lowest == highest => Situation::TwoSideBySide,
            (2, _) => Situation::TwoCourses,
            (3, _) => Situation::Three,
            _ => Situation::FourOrMore,
        }
    }

    /// Whether a tile is severed.
    pub(crate) fn severs(&self) -> bool {
        self.severed > 0
    }
}
