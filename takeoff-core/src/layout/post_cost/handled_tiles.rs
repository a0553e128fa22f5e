//! The tiles that one post handles, by class.
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use crate::cuts::{CutKind, SlopeCut, cuts_of};
use crate::deck::{Perimeter, TileClass, refastened, taken_up};
use crate::geometry::{Ellipse, Rect};
use crate::roof::{Meeting, Part, Site, TileId};

/// Counts of tiles by class.
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
    /// Fasteners of tiles that are reset.
    pub(crate) fasteners: u64,
}

/// A tile that an opening cuts.
pub(crate) type CutTile = (TileId, CutKind);

/// Counts handled tiles. Away from edges, work zones over the same courses and columns have the same counts: each such
/// pattern is counted once.
pub(crate) struct TileCounter {
    perimeter: Option<Perimeter>,
    /// Removed and loosened tiles by the courses and columns under a work zone, and by whether the field covers all of
    /// them.
    cache: RefCell<BTreeMap<(bool, Meeting), [ClassCounts; 2]>>,
}

impl TileCounter {
    pub(crate) fn new(site: &Site) -> TileCounter {
        TileCounter { perimeter: Perimeter::of(site.slope), cache: RefCell::default() }
    }

    /// The strip along the edges in which every tile is fastened, where tiles elsewhere have no fastener.
    pub(crate) fn strip_to_fasten(&self, site: &Site) -> Option<&Perimeter> {
        self.perimeter.as_ref().filter(|_| site.slope.tile.fasteners_each == 0)
    }

    /// The tiles that a post handles, from its work zone, its opening and the tiles it cuts.
    pub(crate) fn count(&self, site: &Site, zone: &Rect, opening: &Ellipse, cut: &[CutTile]) -> HandledTiles {
        let all_in_zone = cut.iter().all(|(tile, _)| site.grid.footprint(*tile).meets(zone));
        let whole = site.field.covers(&site.grid.reach(&site.grid.reach(zone)));
        // A tile that only the sides of a rectangle cut stays one piece.
        let in_one = whole || (site.field.is_rectangle() && site.field.covers(&opening.bounds()));
        if !all_in_zone || self.strip_to_fasten(site).is_some() || !in_one {
            return self.count_tile_by_tile(site, zone, opening);
        }
        let mut classes = self.uncut(site, zone, whole);
        for (tile, kind) in cut {
            let of_part = &mut classes[part(tile.part)];
            of_part.removed -= 1;
            match kind {
                CutKind::Severed => of_part.severed += 1,
                _ => of_part.cut += 1,
            }
        }
        HandledTiles { classes, fasteners: classes.iter().map(|classes| fasteners(site, classes)).sum() }
    }

    /// Removed and loosened tiles of a zone, as if its opening cut none.
    fn uncut(&self, site: &Site, zone: &Rect, whole: bool) -> [ClassCounts; 2] {
        let field = site.field.bounds();
        let zone = if whole { *zone } else { zone.intersection(&field) };
        let meeting = site.grid.meeting(&zone);
        let meeting = (whole, if whole { meeting.anywhere_along() } else { meeting });
        if let Some(classes) = self.cache.borrow().get(&meeting) {
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
        self.cache.borrow_mut().insert(meeting, classes);
        classes
    }

    /// The same count tile by tile, for the field's edge and the strip along it.
    pub(crate) fn count_tile_by_tile(&self, site: &Site, zone: &Rect, opening: &Ellipse) -> HandledTiles {
        let cuts: Vec<SlopeCut> = cuts_of(site, &[*opening]);
        let mut handled = HandledTiles::default();
        let each = u64::from(site.slope.tile.fasteners_each);
        for taken in taken_up(site, &[*zone], &[*opening], &cuts) {
            if taken.excluded {
                continue;
            }
            let reset = || {
                if refastened(site, self.strip_to_fasten(site), &taken) { each.max(1) } else { each }
            };
            let classes = &mut handled.classes[part(taken.tile.part)];
            let (class, fasteners) = match taken.class {
                TileClass::Severed => (&mut classes.severed, site.practice.pieces_for_severed * reset()),
                TileClass::Cut => (&mut classes.cut, reset()),
                TileClass::Removed => (&mut classes.removed, reset()),
                TileClass::Loosened => (&mut classes.loosened, 0),
            };
            *class += 1;
            handled.fasteners += fasteners;
        }
        handled
    }
}

/// Fasteners of reset tiles where each gets its usual count.
fn fasteners(site: &Site, classes: &ClassCounts) -> u64 {
    let pieces = u64::from(classes.severed) * site.practice.pieces_for_severed;
    (pieces + u64::from(classes.cut + classes.removed)) * u64::from(site.slope.tile.fasteners_each)
}

fn part(part: Part) -> usize {
    usize::from(part == Part::Cover)
}
