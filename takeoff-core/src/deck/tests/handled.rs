//! Tiles cut, taken up and loosened, and those in the perimeter strip.
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use geo::{Area, BooleanOps};
use proptest::prelude::*;

use super::*;
use crate::cuts::{Footprint, Shape};
use crate::deck::TileClass::{self, Cut, Loosened, Removed, Severed};
use crate::geometry::{Polygon, SlopePoint};
use crate::model::{EdgeKind, Held, Perimeter as Strip, Pieces, Post, Stock, Tile};
use crate::roof::{Part, TileId, TilePiece, tile_name};
use crate::testing::{flat_tile, hip, practice};

fn taken(site: &Site) -> Vec<Taken> {
    let methods = methods(site);
    taken_up(site, &zones(site, &methods), &openings(site), &cuts(site))
}

fn name(site: &Site, which: TilePiece) -> String {
    tile_name(which, site.grid.first_column(which.tile.course, site.field.bounds()))
}

/// Names of the tiles in a class.
fn named(site: &Site, taken: &[Taken], class: TileClass) -> Vec<String> {
    let of_class = taken.iter().filter(|taken| taken.class == class);
    of_class.map(|t| name(site, TilePiece { tile: t.tile, piece: t.piece })).collect()
}

/// Straight joints at 0, 12, 24… in, tiles from 1 in left of their joint; noses at −1 1/2, 11 3/4, 25, 38 1/4 in.
/// A tucked post at 54, 33 in has its zone from 47 to 61 and 27 to 42 in, and its opening from 53 to 55 and 32 to
/// 34 in: inside tile 3-5, which reaches from 47 to 60 and 25 to 41 1/2 in.
#[test]
fn the_zone_of_one_post() {
    let (slope, practice) = (slope(&[(54.0, 33.0)]), practice());
    let site = Site::of(&slope, &practice);
    let taken = taken(&site);
    assert_eq!(named(&site, &taken, Cut), ["C3-5"]);
    // Course 2 reaches up to 28 1/4 in, course 4 begins at 38 1/4 in; column 4 ends at 48, column 6 begins at 59.
    assert_eq!(
        named(&site, &taken, Removed),
        ["C2-4", "C2-5", "C2-6", "C3-4", "C3-6", "C4-4", "C4-5", "C4-6"]
    );
    // On column 4 lies column 3 (it covers 4's left strip, which lies under); on courses 2, 3 and 4 lie courses
    // 3, 4 and 5: columns 4 to 6 and their neighbours that reach over by the side lap.
    let loosened = ["C2-3", "C3-3", "C3-7", "C4-3", "C4-7", "C5-3", "C5-4", "C5-5", "C5-6", "C5-7"];
    assert_eq!(named(&site, &taken, Loosened), loosened);
    assert!(taken.iter().all(|taken| taken.posts == [0] && !taken.excluded));
    assert_eq!(count(&taken, Part::Tile, Removed), 8);
    assert_eq!(count(&taken, Part::Tile, Loosened), 10);
    assert_eq!(count(&taken, Part::Pan, Removed), 0);
}

#[test]
fn the_worked_example_of_a_zone_inside_a_face() {
    let (slope, practice) = (slope(&[]), practice());
    let site = Site::of(&slope, &practice);
    // Tile 3-5 shows from 48 to 60 and 25 to 38 1/4 in; clear of laps from 48 to 59 and 28 1/4 to 38 1/4 in.
    let taken = taken_up(&site, &[rect(49.0, 29.0, 58.0, 38.0)], &[], &[]);
    assert_eq!(named(&site, &taken, Removed), ["C3-5"]);
    assert_eq!(named(&site, &taken, Loosened), ["C3-4", "C4-4", "C4-5", "C4-6"]);
}

#[test]
fn what_two_posts_share_counts_once() {
    let (slope, practice) = (slope(&[(54.0, 33.0), (62.0, 33.0)]), practice());
    let site = Site::of(&slope, &practice);
    let taken = taken(&site);
    let tile = TileId { course: 2, column: 4, part: Part::Tile };
    let shared: Vec<&Taken> = taken.iter().filter(|taken| taken.tile == tile).collect();
    assert_eq!(shared.len(), 1);
    assert_eq!(shared[0].posts, [0, 1]);
    assert_eq!(shared[0].class, Cut);
}

#[test]
fn a_severed_tile_is_severed_whatever_else_it_is() {
    // 3 1/2 in wide, from 50 1/2 to 54 in: the opening grown by the web, from 50 1/4 to 54 1/4 in, breaches both
    // sides.
    let (mut slope, practice) = (slope(&[(52.25, 33.0)]), practice());
    let pieces = match flat_tile().pieces {
        Pieces::One { lap_side, ref stock, .. } => {
            Pieces::One { width: inches(3.5), lap_side, stock: stock.clone() }
        }
        two => two,
    };
    slope.tile = Arc::new(Tile { cover: inches(3.0), pieces, ..flat_tile() });
    let site = Site::of(&slope, &practice);
    let taken = taken(&site);
    assert_eq!(named(&site, &taken, Severed), ["C3-18"]);
}

#[test]
fn set_tiles_are_removed_but_not_loosened() {
    let (mut slope, practice) = (slope(&[(54.0, 33.0)]), practice());
    slope.tile = Arc::new(Tile { held: Held::Mortar, ..flat_tile() });
    let site = Site::of(&slope, &practice);
    let taken = taken(&site);
    assert_eq!(count(&taken, Part::Tile, Loosened), 0);
    assert_eq!(taken.iter().filter(|taken| taken.excluded).count(), 10);
    assert_eq!(count(&taken, Part::Tile, Removed), 8);
    let finding = set_tiles(&site, &taken, "/slopes/0").unwrap();
    assert!(finding.message.starts_with("10 tiles on `south`"), "{}", finding.message);
    assert_eq!(finding.path, "/slopes/0");
    let works = tile_work(&site, &taken);
    assert!(works.iter().all(|work| work.excluded == (work.class == Loosened)));
}

#[test]
fn covers_lie_on_pans() {
    let (mut slope, practice) = (slope(&[]), practice());
    slope.tile = Arc::new(Tile {
        pieces: Pieces::PanAndCover {
            pan_width: inches(9.0),
            cover_width: inches(7.0),
            pans: Stock::default(),
            covers: Stock::default(),
        },
        ..flat_tile()
    });
    let site = Site::of(&slope, &practice);
    // Pan 3-5 reaches from 49 1/2 to 58 1/2 in; covers from 44 1/2 to 51 1/2 and 56 1/2 to 63 1/2 in.
    let taken = taken_up(&site, &[rect(53.0, 29.0, 55.0, 38.0)], &[], &[]);
    assert_eq!(named(&site, &taken, Removed), ["C3-5 pan"]);
    assert_eq!(
        named(&site, &taken, Loosened),
        ["C3-5 cover", "C3-6 cover", "C4-5 pan", "C4-5 cover", "C4-6 cover"]
    );
    // A cover holds nothing of its own course down.
    let taken = taken_up(&site, &[rect(47.0, 29.0, 49.0, 38.0)], &[], &[]);
    assert_eq!(named(&site, &taken, Removed), ["C3-5 cover"]);
    assert_eq!(named(&site, &taken, Loosened), ["C4-4 pan", "C4-5 pan", "C4-5 cover"]);
}

#[test]
fn tiles_in_the_strip_are_refastened() {
    let (mut slope, practice) = (slope(&[(54.0, 33.0)]), practice());
    let refastened = |slope: &Slope| {
        let site = Site::of(slope, &practice);
        let works = tile_work(&site, &taken(&site));
        works
            .into_iter()
            .filter(|work| work.refasten)
            .map(|work| name(&site, work.which()))
            .collect::<Vec<_>>()
    };
    assert!(refastened(&slope).is_empty());
    // Course 3 shows from 25 in, course 4 from 38 1/4 in; loosened tiles stay fastened.
    slope.perimeter = Some(Strip { width: inches(36.0), edges: vec![EdgeKind::Eave] });
    assert_eq!(refastened(&slope), ["C2-4", "C2-5", "C2-6", "C3-4", "C3-5", "C3-6"]);
    // Up to 25 in the strip only touches course 3.
    slope.perimeter = Some(Strip { width: inches(25.0), edges: vec![EdgeKind::Eave] });
    assert_eq!(refastened(&slope), ["C2-4", "C2-5", "C2-6"]);
    // Column 4 shows from 36 to 48 in.
    slope.perimeter = Some(Strip { width: inches(36.0625), edges: vec![EdgeKind::Rake] });
    assert_eq!(refastened(&slope), ["C2-4", "C3-4", "C4-4"]);
    slope.perimeter = Some(Strip { width: inches(36.0), edges: vec![EdgeKind::Rake] });
    assert!(refastened(&slope).is_empty());
}

#[test]
fn a_strip_along_a_hip_is_measured_square_to_it() {
    let mut slope = hip();
    slope.perimeter = Some(Strip { width: inches(10.0), edges: vec![EdgeKind::Hip] });
    let strip = Perimeter::of(&slope).unwrap();
    let square = |rect: Rect| vec![Polygon::new(vec![rect.corners().to_vec()])];
    // The left hip runs from (0, 0) at 45°: the corner (15, 0) lies 15/√2 = 10.6 in off, (14, 0) 9.9 in.
    assert!(!strip.meets_any(&square(rect(15.0, -5.0, 20.0, 0.0))));
    assert!(strip.meets_any(&square(rect(14.0, -5.0, 20.0, 0.0))));
    // One that the hip crosses without an end of either near the other.
    assert!(strip.meets_any(&square(rect(40.0, 0.0, 60.0, 100.0))));
}

/// Tiles 41 in wide, straight joints at 0, 40, 80… in, beside a chimney from 161 to 185 and 60 to 90 in. Column 6
/// reaches from 159 to 200 in (column 1 begins left of the field, which the overhang draws out to −1 1/2 in).
#[test]
fn pieces_of_one_tile_are_handled_one_by_one() {
    let (mut slope, practice) = (Slope { posts: slope(&[(188.0, 68.0)]).posts, ..hip() }, practice());
    let pieces = match flat_tile().pieces {
        Pieces::One { lap_side, ref stock, .. } => {
            Pieces::One { width: inches(41.0), lap_side, stock: stock.clone() }
        }
        two => two,
    };
    slope.tile = Arc::new(Tile { cover: inches(40.0), pieces, ..flat_tile() });
    slope.bond = vec![Length::ZERO];
    let site = Site::of(&slope, &practice);
    // Of course 6 (64 3/4 to 81 1/4 in) the chimney leaves a strip on its left and one on its right; of course 5
    // (51 1/2 to 68 in) one piece that reaches round it.
    let taken = taken_up(&site, &[rect(186.0, 66.0, 190.0, 70.0)], &[], &[]);
    assert_eq!(named(&site, &taken, Removed), ["C5-6", "C6-6b"]);
    // On C5-6 lie its neighbour and course 6, both pieces of C6-6 too; on C6-6b, which its neighbour C6-5 does not
    // reach, course 7.
    assert_eq!(named(&site, &taken, Loosened), ["C5-5", "C6-5", "C6-6a", "C6-7", "C7-6", "C7-7"]);
    let works = tile_work(&site, &taken);
    assert_eq!(name(&site, works[3].which()), "C6-6a");
    let Footprint::Edge { polygon, .. } = &works[3].footprint else { panic!("an edge tile") };
    // The strip from 159 to 161 in, as tall as the tile.
    let ring: Vec<[f64; 2]> = polygon.rings()[0].iter().map(|point| point.mm()).collect();
    assert_eq!(ring.len(), 4);
    assert!(ring.contains(&[159.0, 64.75].map(mm)) && ring.contains(&[161.0, 81.25].map(mm)));
}

#[test]
fn a_piece_inside_the_opening_is_gone() {
    // A tile whose joint lies 1/2 in left of the chimney: the opening takes the sliver between them whole.
    let (mut slope, practice) = (slope(&[]), practice());
    let corners = [(49.0, 20.0), (49.0, 60.0), (90.0, 60.0), (90.0, 20.0)];
    let ring = corners.map(|(u, v)| SlopePoint { u: inches(u), v: inches(v) });
    slope.holes = vec![ring.to_vec()];
    let pieces = match flat_tile().pieces {
        Pieces::One { lap_side, ref stock, .. } => {
            Pieces::One { width: inches(12.5), lap_side, stock: stock.clone() }
        }
        two => two,
    };
    slope.tile = Arc::new(Tile { pieces, length: inches(13.25), ..flat_tile() });
    slope.noses = vec![inches(26.0), inches(39.25)];
    let opening = |radius: f64| Ellipse {
        centre: crate::geometry::Point::from(SlopePoint { u: inches(48.25), v: inches(32.0) }),
        a: (radius * 50.8e6) as i64,
        b: (radius * 50.8e6) as i64,
    };
    let site = Site::of(&slope, &practice);
    let zone = rect(46.0, 30.0, 50.0, 34.0);
    // Tile C1-5 is what is left of it from 47 1/2 to 49 in and 26 to 39 1/4 in.
    let with = taken_up(&site, &[zone], &[opening(1.0)], &[]);
    assert_eq!(named(&site, &with, Removed), ["C1-4", "C1-5"]);
    let without = taken_up(&site, &[zone], &[opening(8.0)], &[]);
    assert_eq!(named(&site, &without, Removed), ["C1-4"]);
}

/// Posts on the hip slope, in eighths of an inch.
fn hip_with(posts: &[(i32, i32)]) -> Slope {
    let mut slope = hip();
    let assembly = Arc::new(assembly());
    let post = |(i, &(u, v)): (usize, &(i32, i32))| Post {
        fixed: false,
        name: format!("A{i}"),
        assembly: assembly.clone(),
        at: SlopePoint { u: inches(f64::from(u) / 8.0), v: inches(f64::from(v) / 8.0) },
        path: String::new(),
    };
    slope.posts = posts.iter().enumerate().map(post).collect();
    let site_practice = practice();
    let site = Site::of(&slope, &site_practice);
    let inside = slope
        .posts
        .iter()
        .filter(|post| site.allows_post_at(post.at.into(), &post.assembly))
        .cloned()
        .collect();
    Slope { posts: inside, ..slope }
}

fn posts_on_hip() -> impl Strategy<Value = Vec<(i32, i32)>> {
    prop::collection::vec((0_i32..2880, 0_i32..1152), 1..6)
}

/// The greatest area, mm², that a piece of a tile shares with a removed piece that its tile lies directly on:
/// by the boolean operations of `geo`, which are not used elsewhere.
fn greatest_overlap(site: &Site, taken: &[Taken], tile: TileId, piece: &Polygon) -> f64 {
    let own = in_mm(piece);
    let below = taken.iter().filter(|taken| {
        taken.class != Loosened && site.grid.lying_on(taken.tile).any(|(other, _)| other == tile)
    });
    let areas = below.map(|below| {
        let rect = site.grid.footprint(below.tile);
        let pieces = Footprint::pieces(&site.field, &rect);
        let piece = pieces.iter().find(|piece| piece.number() == below.piece).unwrap();
        own.intersection(&in_mm(&piece.polygon())).unsigned_area()
    });
    areas.fold(0.0, f64::max)
}

fn in_mm(polygon: &Polygon) -> geo::Polygon {
    let ring = |ring: &Vec<crate::geometry::Point>| {
        geo::LineString::from(ring.iter().map(|p| <(f64, f64)>::from(p.mm())).collect::<Vec<_>>())
    };
    let mut rings = polygon.rings().iter().map(ring);
    let outer = rings.next().unwrap();
    geo::Polygon::new(outer, rings.collect())
}

/// Pieces of every tile near a rectangle.
fn pieces_near(site: &Site, near: Rect) -> Vec<(TileId, Footprint)> {
    let tiles = site.grid.over(near);
    tiles
        .flat_map(|(tile, rect)| {
            Footprint::pieces(&site.field, &rect).into_iter().map(move |piece| (tile, piece))
        })
        .collect()
}

proptest! {
    /// Removed and loosened against the definition, tile by tile, on a slope with hips and a chimney.
    #[test]
    fn removed_and_loosened_are_what_the_definition_says(posts in posts_on_hip()) {
        let (slope, practice) = (hip_with(&posts), practice());
        let site = Site::of(&slope, &practice);
        let (zones, openings, cuts) = (zones(&site, &methods(&site)), openings(&site), cuts(&site));
        let taken = taken_up(&site, &zones, &openings, &cuts);
        let class = |tile: TileId, piece: Option<u16>| {
            taken.iter().find(|taken| taken.tile == tile && taken.piece == piece).map(|taken| taken.class)
        };
        for (tile, piece) in pieces_near(&site, site.field.bounds()) {
            let polygon = piece.polygon();
            let swallowed = openings.iter().any(|o| Shape::Ellipse(*o).covers(&polygon));
            let in_zone = zones.iter().any(|zone| Shape::Rect(*zone).meets_polygon(&polygon));
            let is_cut = cuts.iter().any(|cut| cut.judged.tile == tile && cut.judged.footprint == piece);
            let found = class(tile, piece.number());
            if swallowed {
                prop_assert_eq!(found, None);
            } else if is_cut {
                prop_assert!(matches!(found, Some(Cut | Severed)));
            } else if in_zone {
                prop_assert_eq!(found, Some(Removed));
            } else {
                // A hair's breadth of overlap is beyond what the areas can tell.
                let overlap = greatest_overlap(&site, &taken, tile, &polygon);
                prop_assert!(found.is_none() || found == Some(Loosened));
                prop_assert!(overlap <= 1e-3 || found == Some(Loosened), "{overlap}");
                prop_assert!(overlap > 0.0 || found.is_none());
            }
        }
        let mut listed: Vec<_> = taken.iter().map(|taken| (taken.tile, taken.piece)).collect();
        listed.dedup();
        prop_assert_eq!(listed.len(), taken.len());
    }

    #[test]
    fn the_order_of_posts_changes_no_tile(posts in posts_on_hip()) {
        let practice = practice();
        let classes = |posts: &[(i32, i32)]| {
            let slope = hip_with(posts);
            let site = Site::of(&slope, &practice);
            taken(&site).iter().map(|t| (t.tile, t.piece, t.class, t.posts.len())).collect::<Vec<_>>()
        };
        let mut turned = posts.clone();
        turned.reverse();
        prop_assert_eq!(classes(&posts), classes(&turned));
    }

    /// Whatever a post adds, no tile gets into an easier class or off the list.
    #[test]
    fn another_post_never_lowers_a_class(posts in posts_on_hip(), more in (0_i32..2880, 0_i32..1152)) {
        let practice = practice();
        let before = hip_with(&posts);
        let mut both = posts.clone();
        both.push(more);
        let after = hip_with(&both);
        let (site_before, site_after) = (Site::of(&before, &practice), Site::of(&after, &practice));
        let (few, many) = (taken(&site_before), taken(&site_after));
        let gone = |t: &Taken| {
            let rect = site_after.grid.footprint(t.tile);
            Footprint::pieces(&site_after.field, &rect).iter().any(|piece| {
                let inside = |o: &Ellipse| Shape::Ellipse(*o).covers(&piece.polygon());
                piece.number() == t.piece && openings(&site_after).iter().any(inside)
            })
        };
        for t in few.iter().filter(|t| !gone(t)) {
            let still = many.iter().find(|m| m.tile == t.tile && m.piece == t.piece);
            // A loosened tile stays on the list only while what it lies on is there; all else is monotone.
            prop_assert!(still.is_some_and(|still| still.class <= t.class) || t.class == Loosened);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// Long tiles at a small exposure, many courses deep: each loosened tile has the posts of all removed tiles that it lies
    /// on, looked for tile by tile.
    #[test]
    fn loosened_for_the_posts_of_all_below(posts in posts_on_hip(), exposure in 20_i64..200, offset in 0_i64..300) {
        let mut slope = hip_with(&posts);
        slope.noses = (0..3400 / exposure).map(|k| Length::from_nm(k * exposure * 1_000_000)).collect();
        slope.bond = vec![Length::ZERO, Length::from_nm(offset * 1_000_000)];
        let practice = practice();
        let site = Site::of(&slope, &practice);
        let taken = taken(&site);
        let (loosened, removed): (Vec<&Taken>, Vec<&Taken>) =
            taken.iter().partition(|taken| taken.class == Loosened);
        let mut below: BTreeMap<(TileId, Option<u16>), BTreeSet<usize>> = BTreeMap::new();
        for under in &removed {
            let own = site.grid.footprint(under.tile);
            for (tile, rect) in site.grid.lying_on(under.tile) {
                for piece in overlap::pieces_meeting(&site.field, &own, under.piece, &rect) {
                    below.entry((tile, piece)).or_default().extend(&under.posts);
                }
            }
        }
        for tile in &loosened {
            let posts: Vec<usize> = below[&(tile.tile, tile.piece)].iter().copied().collect();
            prop_assert_eq!(&tile.posts, &posts);
        }
        let gone = |key: &&(TileId, Option<u16>)| !taken.iter().any(|taken| (taken.tile, taken.piece) == **key);
        // What is left out lies inside an opening.
        let rest: Vec<_> = below.keys().filter(gone).collect();
        let openings = openings(&site);
        for &(tile, piece) in rest {
            let pieces = Footprint::pieces(&site.field, &site.grid.footprint(tile));
            let polygon = pieces.iter().find(|own| own.number() == piece).unwrap().polygon();
            prop_assert!(openings.iter().any(|opening| Shape::Ellipse(*opening).covers(&polygon)));
        }
    }
}
