//! Bill of a whole job: the bills of all its pieces of work, with their places.
use std::collections::BTreeMap;

use super::alike::{Alike, posts_by_assembly, posts_on_blocking};
use super::bill::{LaidBack, bill_of_patch, bill_of_tile, board, staples};
use super::blades::blades;
use super::{Basis, Bill, Need, bill_of_batten_piece, bill_of_blocking, bill_of_post};
use crate::cuts::CutKind;
use crate::deck::{NAILS_A_PIECE, TileClass};
use crate::materials::Material;
use crate::model::{Action, Job};
use crate::slope_takeoff::SlopeTakeoff;
use crate::spares::TileSpares;

/// All that a job takes, except spare tiles and packs, and all that its crew does.
#[derive(Clone, Debug, Default)]
pub struct JobBill {
    /// Needs, each with its work and its basis; alike ones are one entry.
    pub entries: Vec<Entry>,
    /// Number of times that each action is done.
    pub actions: BTreeMap<Action, u64>,
}

/// A need of a job.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Work that takes it.
    pub work: Work,
    /// Material.
    pub material: Material,
    /// Amount, rule and places.
    pub basis: Basis,
}

impl Entry {
    /// Amount in the material's unit, waste not included: `count × each`.
    pub fn amount(&self) -> f64 {
        self.basis.amount()
    }
}

/// Kinds of work that take materials.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// Setting a post.
    Post,
    /// Fixing a board of blocking.
    Blocking,
    /// Laying a patch.
    Patch,
    /// Resetting a piece of batten.
    Batten,
    /// Laying back a tile.
    Tile,
    /// Cutting tile.
    Saw,
}

/// The bill of a job. `slopes` are the takeoffs of its slopes in its order, `spares` its spare tiles.
///
/// Entries stand in the order of the work; within it, posts by assembly, boards by length, patches and tiles by size
/// and kind. Excluded tiles are not touched, and loosened ones stay held.
pub fn job_bill(job: &Job, slopes: &[SlopeTakeoff], spares: &[TileSpares]) -> JobBill {
    let mut bill = JobBill::default();
    for (assembly, posts) in posts_by_assembly(job) {
        bill.add(Work::Post, bill_of_post(job, assembly), posts);
    }
    bill.add_blocking(job, slopes);
    bill.add_patches(job, slopes);
    bill.add_battens(slopes);
    bill.add_tiles(job, slopes);
    bill.add_saw(job, slopes);
    bill.count(Action::Harvest, spares.iter().map(|of_piece| of_piece.spares.harvested).sum());
    bill
}

impl JobBill {
    /// Adds a bill for every place.
    fn add(&mut self, work: Work, bill: Bill, places: Vec<String>) {
        let count = places.len() as u64;
        for action in bill.actions {
            self.count(action, count);
        }
        for need in bill.needs {
            self.add_need(work, need, places.clone());
        }
    }

    /// Adds a need for every place; nothing where the amount is zero.
    fn add_need(&mut self, work: Work, need: Need, places: Vec<String>) {
        let Need { material, amount: each, why: what } = need;
        if each > 0.0 {
            let basis = Basis { what, count: places.len() as u64, each, places };
            self.entries.push(Entry { work, material, basis });
        }
    }

    fn count(&mut self, action: Action, count: u64) {
        *self.actions.entry(action).or_default() += count;
    }

    /// Boards of one length are one entry, whatever the assembly.
    fn add_blocking(&mut self, job: &Job, slopes: &[SlopeTakeoff]) {
        for (assembly, posts) in posts_on_blocking(job, slopes) {
            self.add(Work::Blocking, bill_of_blocking(job, assembly), posts);
        }
        let mut boards = Alike::new();
        for slope in slopes {
            for (post, length) in slope.boards() {
                boards.add(length, length, &slope.name, slope.post_name(post));
            }
        }
        for (length, places) in boards.groups() {
            self.add_need(Work::Blocking, board(job, length), places);
        }
    }

    /// Patches of one underlayment and size are one entry of felt, patches of one perimeter one entry of staples.
    fn add_patches(&mut self, job: &Job, slopes: &[SlopeTakeoff]) {
        let (mut by_size, mut by_perimeter) = (Alike::new(), Alike::new());
        for (slope, takeoff) in job.slopes.iter().zip(slopes) {
            for (id, patch) in takeoff.named_patches() {
                let sheet = &*slope.underlayment;
                let size = (patch.area, patch.perimeter(), patch.width(), patch.pieces);
                by_size.add((sheet.name.as_str(), size), (sheet, patch), &takeoff.name, &id.to_string());
                by_perimeter.add(patch.perimeter(), patch, &takeoff.name, &id.to_string());
            }
        }
        for ((sheet, patch), places) in by_size.groups() {
            self.add(Work::Patch, bill_of_patch(job, sheet, patch), places);
        }
        for (patch, places) in by_perimeter.groups() {
            self.add_need(Work::Patch, staples(job, patch), places);
        }
    }

    fn add_battens(&mut self, slopes: &[SlopeTakeoff]) {
        let mut pieces = Alike::new();
        for slope in slopes {
            for piece in &slope.battens {
                pieces.add((), (), &slope.name, &format!("course {}", piece.course + 1));
            }
        }
        for ((), places) in pieces.groups() {
            self.add(Work::Batten, bill_of_batten_piece(NAILS_A_PIECE), places);
        }
    }

    fn add_tiles(&mut self, job: &Job, slopes: &[SlopeTakeoff]) {
        let mut laid_back = Alike::new();
        for (slope, takeoff) in job.slopes.iter().zip(slopes) {
            for tile in takeoff.tiles.iter().filter(|tile| !tile.excluded) {
                if tile.class == TileClass::Loosened {
                    self.count(Action::Loosen, 1);
                    continue;
                }
                let made_up = tile.class == TileClass::Severed;
                let laid = LaidBack { made_up, in_strip: tile.refasten };
                let kind = &*slope.tile;
                laid_back.add(
                    (kind.name.as_str(), laid),
                    (kind, laid),
                    &slope.name,
                    &takeoff.tile_name(tile.which()),
                );
            }
        }
        for ((kind, laid), places) in laid_back.groups() {
            self.add(Work::Tile, bill_of_tile(job, kind, laid), places);
        }
    }

    fn add_saw(&mut self, job: &Job, slopes: &[SlopeTakeoff]) {
        for cut in slopes.iter().flat_map(|slope| &slope.cuts) {
            let action = match cut.judged.kind() {
                CutKind::Hole => Action::CutHole,
                CutKind::Notch | CutKind::Corner => Action::CutNotch,
                CutKind::Severed => Action::MakeUp,
            };
            self.count(action, 1);
        }
        let wear = blades(job, slopes);
        self.entries.extend(wear.map(|basis| Entry { work: Work::Saw, material: Material::Blade, basis }));
    }
}
