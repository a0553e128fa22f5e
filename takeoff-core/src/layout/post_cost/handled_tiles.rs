//! The tiles that one post handles, by class, counted once for all places that are alike.
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use crate::cuts::{CutKind, SlopeCut, cuts_of};
use crate::deck::{Perimeter, TileClass, refastened, taken_up};
use crate::geometry::{Ellipse, Rect};
use crate::roof::{Meeting, Part, Site, TileId};

/// How many tiles are in each class.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct ClassCounts {
    pub(crate) severed: u32,
    pub(crate) cut: u32,
    pub(crate) removed: u32,
    pub(crate) loosened: u32,
}

/// The tiles that a post handles.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct HandledTiles {
    /// By part: the only piece or the pan, then the cover.
    pub(crate) classes: [ClassCounts; 2],
    /// Fasteners of tiles laid back.
    pub(crate) fasteners: u64,
}

/// A tile that an opening cuts.
pub(crate) type CutTile = (TileId, CutKind);

/// Counts tiles handled.
pub(crate) struct TileCounter {
    perimeter: Option<Perimeter>,
    /// How many tiles a zone removes and loosens goes by the courses and columns that it meets.
    known: RefCell<BTreeMap<(bool, Meeting), [ClassCounts; 2]>>,
}

impl TileCounter {
    pub(crate) fn of(site: &Site) -> TileCounter {
        TileCounter { perimeter: Perimeter::of(site.slope), known: RefCell::default() }
    }

    /// Whether the strip along the edges asks for a fastener that the tile has not.
    pub(crate) fn strip(&self, site: &Site) -> Option<&Perimeter> {
        self.perimeter.as_ref().filter(|_| site.slope.tile.fasteners_each == 0)
    }

    /// What a post handles with this work zone, opening and cuts.
    pub(crate) fn handled(
        &self,
        site: &Site,
        zone: &Rect,
        opening: &Ellipse,
        met: &[CutTile],
    ) -> HandledTiles {
        let all_in_zone = met.iter().all(|(tile, _)| site.grid.footprint(*tile).meets(zone));
        let whole = site.field.covers(&site.grid.reach(&site.grid.reach(zone)));
        // A tile that only the sides of a rectangle cut stays one piece.
        let in_one = whole || (site.field.is_rectangle() && site.field.covers(&opening.bounds()));
        if !all_in_zone || self.strip(site).is_some() || !in_one {
            return self.one_by_one(site, zone, opening);
        }
        let mut classes = self.in_zone(site, zone, whole);
        for (tile, kind) in met {
            let of_part = &mut classes[part(tile.part)];
            of_part.removed -= 1;
            match kind {
                CutKind::Severed => of_part.severed += 1,
                _ => of_part.cut += 1,
            }
        }
        HandledTiles { classes, fasteners: classes.iter().map(|classes| fasteners(site, classes)).sum() }
    }

    /// What a zone removes and loosens among tiles that are whole, or cut by a rectangle's sides.
    fn in_zone(&self, site: &Site, zone: &Rect, whole: bool) -> [ClassCounts; 2] {
        let field = site.field.bounds();
        let zone = if whole { *zone } else { zone.intersection(&field) };
        let meeting = site.grid.meeting(&zone);
        let meeting = (whole, if whole { meeting.anywhere_along() } else { meeting });
        if let Some(classes) = self.known.borrow().get(&meeting) {
            return *classes;
        }
        let removed: BTreeSet<TileId> = site.grid.over(zone).map(|(tile, _)| tile).collect();
        let on_them = removed.iter().flat_map(|tile| {
            let seen = site.grid.footprint(*tile).intersection(&field);
            site.grid
                .lying_on(*tile)
                .filter(move |(_, other)| whole || other.meets(&seen))
                .map(|(tile, _)| tile)
        });
        let loosened: BTreeSet<TileId> = on_them.filter(|tile| !removed.contains(tile)).collect();
        let mut classes = [ClassCounts::default(); 2];
        removed.iter().for_each(|tile| classes[part(tile.part)].removed += 1);
        if !site.slope.tile.held.is_set() {
            loosened.iter().for_each(|tile| classes[part(tile.part)].loosened += 1);
        }
        self.known.borrow_mut().insert(meeting, classes);
        classes
    }

    /// The same tile by tile, at the field's edge and where the strip along it counts.
    pub(crate) fn one_by_one(&self, site: &Site, zone: &Rect, opening: &Ellipse) -> HandledTiles {
        let cuts: Vec<SlopeCut> = cuts_of(site, &[*opening]);
        let mut handled = HandledTiles::default();
        let own = u64::from(site.slope.tile.fasteners_each);
        for taken in taken_up(site, &[*zone], &[*opening], &cuts) {
            if taken.excluded {
                continue;
            }
            let band = || if refastened(site, self.strip(site), &taken) { own.max(1) } else { own };
            let classes = &mut handled.classes[part(taken.tile.part)];
            let (class, fasteners) = match taken.class {
                TileClass::Severed => (&mut classes.severed, site.practice.pieces_for_severed * band()),
                TileClass::Cut => (&mut classes.cut, band()),
                TileClass::Removed => (&mut classes.removed, band()),
                TileClass::Loosened => (&mut classes.loosened, 0),
            };
            *class += 1;
            handled.fasteners += fasteners;
        }
        handled
    }
}

/// What holds the tiles laid back where none gets more than its own.
fn fasteners(site: &Site, classes: &ClassCounts) -> u64 {
    let pieces = u64::from(classes.severed) * site.practice.pieces_for_severed;
    (pieces + u64::from(classes.cut + classes.removed)) * u64::from(site.slope.tile.fasteners_each)
}

fn part(part: Part) -> usize {
    usize::from(part == Part::Cover)
}
