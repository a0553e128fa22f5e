//! Things counted by the piece: the assemblies' items, staples, nails, what holds the tiles.
use super::MaterialLine;
use super::felt::add_staples;
use super::needs::{Alike, Needs, boards_by_assembly, posts_by_assembly};
use crate::deck::{NAILS_A_PIECE, TileClass};
use crate::model::Job;
use crate::slope_takeoff::SlopeTakeoff;
use crate::units::Unit;

/// All fasteners and other items of a job, by name: what is called alike is one line.
pub(super) fn fasteners(job: &Job, slopes: &[SlopeTakeoff]) -> Vec<MaterialLine> {
    let mut needs = Needs::new(Unit::Each);
    for (assembly, posts) in posts_by_assembly(job) {
        for item in &assembly.items {
            let what = format!("`{}`, {} a post", assembly.name, item.count);
            needs.add(&item.item, what, f64::from(item.count), posts.clone());
        }
    }
    for (assembly, posts) in boards_by_assembly(job, slopes) {
        for item in &assembly.blocking_items {
            let what = format!("`{}`, {} a blocking board", assembly.name, item.count);
            needs.add(&item.item, what, f64::from(item.count), posts.clone());
        }
    }
    add_staples(job, slopes, &mut needs);
    add_batten_nails(slopes, &mut needs);
    add_tile_fasteners(job, slopes, &mut needs);
    needs.into_lines()
}

fn add_batten_nails(slopes: &[SlopeTakeoff], needs: &mut Needs) {
    let pieces = slopes.iter().flat_map(|slope| slope.battens.iter().map(move |piece| (slope, piece)));
    let places = pieces.map(|(slope, piece)| format!("{}/course {}", slope.name, piece.course + 1)).collect();
    let what = format!("batten piece reset, {} nails an end", NAILS_A_PIECE / 2);
    needs.add("batten nail", what, NAILS_A_PIECE as f64, places);
}

/// How a tile is laid back.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum LaidBack {
    /// As it was.
    AsItWas,
    /// In the perimeter strip, where every tile has a fastener.
    InStrip,
    /// Severed, and made up from several pieces that are held one by one.
    MadeUp,
    /// The same in the perimeter strip.
    MadeUpInStrip,
}

/// Adds what holds the tiles that are laid back: each as many as its kind takes, in the perimeter strip at least
/// one (IRC R905.3.7: perimeter tiles have at least one fastener a tile). A severed tile is made up from several
/// pieces and each is held. Loosened tiles stay held, and excluded ones are not touched.
fn add_tile_fasteners(job: &Job, slopes: &[SlopeTakeoff], needs: &mut Needs) {
    let mut alike = Alike::new();
    for (slope, takeoff) in job.slopes.iter().zip(slopes) {
        for tile in &takeoff.tiles {
            let laid = match (tile.class, tile.refasten) {
                (TileClass::Loosened, _) => continue,
                (TileClass::Severed, true) => LaidBack::MadeUpInStrip,
                (TileClass::Severed, false) => LaidBack::MadeUp,
                (_, true) => LaidBack::InStrip,
                (_, false) => LaidBack::AsItWas,
            };
            let kind = &*slope.tile;
            alike.add(
                (kind.name.as_str(), laid),
                (kind, laid),
                &slope.name,
                &takeoff.tile_name(tile.which()),
            );
        }
    }
    let pieces = job.practice.pieces_for_severed;
    let made_up = format!("severed tile made up from {pieces} pieces");
    for ((kind, laid), places) in alike.groups() {
        let own = u64::from(kind.fasteners_each);
        let (what, each) = match laid {
            LaidBack::AsItWas => ("tile laid back".to_owned(), own),
            LaidBack::InStrip => ("tile refastened in the perimeter strip".to_owned(), own.max(1)),
            LaidBack::MadeUp => (made_up.clone(), pieces * own),
            LaidBack::MadeUpInStrip => (format!("{made_up} in the perimeter strip"), pieces * own.max(1)),
        };
        needs.add(
            &format!("fastener for {}", kind.name),
            format!("{what}, {each} each"),
            each as f64,
            places,
        );
    }
}
