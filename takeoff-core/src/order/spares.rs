//! Spare tiles for all jobs together.
use schemars::JsonSchema;
use serde::Serialize;

use super::{Ordered, problem};
use crate::materials::Piece;
use crate::model::{Code, Pieces, Problems, Tile};
use crate::spares::{Demand, Spares, TileSpares, pooled};

/// Spares of one kind of piece for all jobs that use it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct OrderSpares {
    /// The tile, with `, pan` or `, cover` for a two-piece tile.
    pub tile: Piece,
    /// The jobs that use it.
    pub jobs: Vec<String>,
    /// What the jobs would buy one by one, added up.
    pub apart: u64,
    /// The count for the pool and how it was found.
    #[serde(flatten)]
    pub spares: Spares,
}

/// The kinds of piece in the order in which the jobs name them, each with the pool of its jobs.
pub(super) fn pooled_spares(jobs: &[Ordered<'_>], service_level: f64) -> Result<Vec<OrderSpares>, Problems> {
    check_tiles(jobs)?;
    let mut kinds: Vec<(&Piece, Vec<(&Ordered<'_>, &TileSpares)>)> = Vec::new();
    for ordered in jobs {
        for spares in &ordered.takeoff.spares {
            match kinds.iter_mut().find(|(tile, _)| **tile == spares.tile) {
                Some((_, users)) => users.push((ordered, spares)),
                None => kinds.push((&spares.tile, vec![(ordered, spares)])),
            }
        }
    }
    kinds.into_iter().map(|(tile, users)| kind(tile, &users, service_level)).collect()
}

fn kind(
    tile: &Piece,
    users: &[(&Ordered<'_>, &TileSpares)],
    service_level: f64,
) -> Result<OrderSpares, Problems> {
    let demands: Vec<Demand> = users.iter().map(|(ordered, spares)| demand(ordered, spares)).collect();
    let spares = pooled(&demands, service_level).map_err(|error| {
        let message = format!("the spares of `{tile}` can't be counted for all jobs together: {error}");
        Problems::from(problem(Code::BreakageTooWide, message, "order the jobs one by one"))
    })?;
    Ok(OrderSpares {
        tile: tile.clone(),
        jobs: users.iter().map(|(ordered, _)| ordered.job.name.clone()).collect(),
        apart: users.iter().map(|(_, spares)| spares.spares.spares).sum(),
        spares,
    })
}

fn demand(ordered: &Ordered<'_>, of_kind: &TileSpares) -> Demand {
    let practice = &ordered.job.practice;
    Demand {
        handled: of_kind.handled,
        breakage: practice.breakage,
        pieces_for_severed: practice.pieces_for_severed,
        on_hand: of_kind.spares.on_hand,
        harvested: of_kind.spares.harvested,
    }
}

/// Refuses tiles of one name with other sizes: the pool would mix pieces that do not fit.
fn check_tiles(jobs: &[Ordered<'_>]) -> Result<(), Problems> {
    let mut known: Vec<(&str, &Tile)> = Vec::new();
    let mut problems = Problems::new();
    for Ordered { job, .. } in jobs {
        for tile in &job.tiles {
            match known.iter().find(|(_, other)| other.name == tile.name) {
                Some((first, other)) if !alike(other, tile) => {
                    let message =
                        format!("the tile `{}` of `{}` is not that of `{first}`", tile.name, job.name);
                    let help =
                        "give tiles of other sizes other names; what is the same tile has the same sizes";
                    problems.push(problem(Code::TilesDiffer, message, help));
                }
                Some(_) => {}
                None => known.push((&job.name, tile)),
            }
        }
    }
    if problems.is_empty() { Ok(()) } else { Err(problems) }
}

/// Whether two tiles have the same sizes; how they are held and how many are on hand is each job's own.
fn alike(one: &Tile, other: &Tile) -> bool {
    let pieces = match (&one.pieces, &other.pieces) {
        (
            Pieces::One { width, lap_side, .. },
            Pieces::One { width: other_width, lap_side: other_side, .. },
        ) => width == other_width && lap_side == other_side,
        (
            Pieces::PanAndCover { pan_width, cover_width, .. },
            Pieces::PanAndCover { pan_width: other_pan, cover_width: other_cover, .. },
        ) => pan_width == other_pan && cover_width == other_cover,
        _ => false,
    };
    pieces && one.length == other.length && one.cover == other.cover && one.thickness == other.thickness
}
