//! Patches over deck flashings: which posts share one, and what each takes.
use std::fmt;

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{AABB, RTree, RTreeObject};

use super::chains::chains;
use super::codes::NO_LAP_LINE_ABOVE;
use super::zone::{flashing, own_patch};
use super::{Method, each_meeting_pair};
use crate::geometry::{Ellipse, Point, Rect, grid, half, to_mm, whole};
use crate::model::{Post, PostId, Problem, Underlayment};
use crate::roof::Site;
use crate::units::{Area, Length};

/// The patches of a slope, and which is over which post.
#[derive(Clone, Debug)]
pub struct Patches {
    /// In the order of their first posts.
    pub patches: Vec<Patch>,
    /// Of each post, its patch; `None` where the flashing is not patched.
    pub of_post: Vec<Option<PatchId>>,
}

/// The patches of a slope; `methods` holds one method a post.
///
/// # Rule
///
/// Two patched posts are linked when they are patched up to the same lap line, their own rectangles
/// ([`own_patch`]) meet, and their cones differ in `v` by at most `c + drain`, `c` the larger cone radius. A chain
/// of links is one patch: the bounding rectangle of their own ones (once: what that meets besides is not linked).
/// Patches that run to the field's edge have no lap line to share and are not linked.
///
/// A cone that lies wholly inside its patch gets a round hole; one that reaches over the lower edge is cut
/// half-round, open below. Other patches that meet lap like shingles, so that water runs over the lower one: the
/// one whose lower edge is higher lies over. A patch is cut round every other post whose cone meets it, be it
/// patched or not.
///
/// A patch taller than the sheet is wide, `h > B`, is laid in `ceil((h − b)/(B − b))` pieces with the sheet's own
/// head lap `b`, full ones below, and takes `width · (h + (pieces − 1)·b)`. Staples: `ceil(perimeter / spacing)`.
///
/// # Example
///
/// A flashing 10 in wide with 4 in margins, from the cone's centre at 37 in to the lap line at 68 in and 4 in
/// under: 18 × 35 in, 630 in², perimeter 106 in, 27 staples 4 in apart. From 25 in the height is 47 in; with felt
/// 36 in wide that laps 2 in that is `ceil(45/34)` = 2 pieces and 18 · 49 = 882 in².
pub fn patches(site: &Site, methods: &[Method]) -> Patches {
    let posts = &site.slope.posts;
    let own = posts.iter().zip(methods).enumerate();
    let own: Vec<(usize, Rect)> =
        own.filter_map(|(i, (post, method))| Some((i, own_patch(site, post, method)?))).collect();

    let chains = chained(site, methods, &own);
    let bounds: Vec<Rect> =
        chains.iter().map(|chain| bounding(chain.iter().map(|&member| own[member].1))).collect();
    let posts_of: Vec<Vec<usize>> =
        chains.iter().map(|chain| chain.iter().map(|&member| own[member].0).collect()).collect();

    let mut of_post = vec![None; posts.len()];
    for (patch, members) in posts_of.iter().enumerate() {
        members.iter().for_each(|&post| of_post[post] = Some(PatchId::new(patch)));
    }
    let mut patches: Vec<Patch> = bounds
        .iter()
        .zip(&posts_of)
        .map(|(bounds, members)| patch(site, bounds, members, methods[members[0]].line()))
        .collect();
    lay_over_each_other(&mut patches, &bounds);
    cut_round_others(&mut patches, &bounds, posts, &of_post);
    Patches { patches, of_post }
}

/// A finding for every patch that has no lap line above to go under.
pub fn patches_without_lap_line(posts: &[Post], methods: &[Method]) -> Vec<Problem> {
    let to_edge =
        posts.iter().zip(methods).filter(|(_, method)| matches!(method, Method::PatchedToEdge { .. }));
    to_edge
        .map(|(post, _)| {
            let message =
                format!("there is no lap line above `{}`: its patch runs to the field's edge", post.name);
            let help =
                "finish the patch's upper edge under the ridge, hip or wall flashing, or move the post down";
            Problem::new(NO_LAP_LINE_ABOVE, message, help, &post.path)
        })
        .collect()
}

/// Chains of linked patches, as places in `own`.
///
/// Patches up to one lap line end at one height, so that their rectangles meet where they overlap along the eave. Cones
/// near enough by the larger radius are near enough by one of the two: one lies in the other's range.
fn chained(site: &Site, methods: &[Method], own: &[(usize, Rect)]) -> Vec<Vec<usize>> {
    let drain = grid(site.practice.drain);
    // Left and right side, the cone's height, its range up and down, the lap line. What is linked to none has no line.
    let place = |&(post, ref rect): &(usize, Rect)| {
        let cone = cone(&site.slope.posts[post]);
        let (v, range) = (cone.centre.v, cone.b + drain);
        let line = methods[post].line().filter(|_| !rect.is_empty());
        let place = [rect.left, rect.right, v, v - range, v + range].map(|steps| steps as f64);
        let [left, right, v, from, to] = place;
        [left, right, v, from, to, line.map_or(f64::NEG_INFINITY, |line| line as f64)]
    };
    let places: Vec<[f64; 6]> = own.iter().map(place).collect();
    chains(&places, |patch| {
        let [left, right, v, from, to, line] = places[patch];
        if line.is_infinite() {
            return Vec::new();
        }
        let (least, greatest) = (f64::NEG_INFINITY, f64::INFINITY);
        let in_own_range = (
            [least, left + 1.0, from, least, least, line],
            [right - 1.0, greatest, to, greatest, greatest, line],
        );
        let in_theirs = (
            [least, left + 1.0, least, least, v, line],
            [right - 1.0, greatest, greatest, v, greatest, line],
        );
        [in_own_range, in_theirs].map(|(low, high)| AABB::from_corners(low, high)).to_vec()
    })
}

/// One patch, before it is known what it meets.
fn patch(site: &Site, bounds: &Rect, posts: &[usize], line: Option<i64>) -> Patch {
    let (width, height) = (bounds.right - bounds.left, bounds.upper - bounds.lower);
    debug_assert!(width > 0 && height > 0, "a patch has an area: {bounds:?}");
    // The bounds on tuck and underlap that a job keeps to see to it: `job::assembly` and `job::practice`.
    debug_assert!(
        line.is_none() || posts.iter().all(|&post| flashing(&site.slope.posts[post]).upper <= bounds.upper),
        "a patch under a sheet reaches past the upper edge of its flashings: {bounds:?}"
    );
    let pieces = pieces_of_sheet(height, &site.slope.underlayment);
    let laps = (pieces - 1) as i64 * grid(site.slope.underlayment.head_lap);
    let (inside, at_edge): (Vec<usize>, Vec<usize>) =
        posts.iter().partition(|&&post| cone(&site.slope.posts[post]).bounds().lower >= bounds.lower);
    let ids = |posts: &[usize]| posts.iter().copied().map(PostId::new).collect();
    Patch {
        posts: ids(posts),
        bounds: *bounds,
        lap_line: line.map(whole),
        pieces,
        area: Area::from_mm2(to_mm(width) * to_mm(height + laps)),
        staples: ceil_div(grid(perimeter(bounds)), grid(site.practice.staple_spacing)),
        half_round_at: ids(&at_edge),
        round_at: ids(&inside),
        lies_over: Vec::new(),
        cut_round: Vec::new(),
    }
}

/// In how many pieces of sheet a patch is laid.
pub fn pieces_of_sheet(height: i64, sheet: &Underlayment) -> u64 {
    let (width, lap) = (grid(sheet.sheet_width), grid(sheet.head_lap));
    if height <= width { 1 } else { ceil_div(height - lap, width - lap) }
}

/// Of every two patches that meet, the one whose lower edge is higher lies over the other.
fn lay_over_each_other(patches: &mut [Patch], bounds: &[Rect]) {
    let height = |patch: usize| (bounds[patch].lower, bounds[patch].upper, bounds[patch].left, patch);
    let mut pairs = Vec::new();
    each_meeting_pair(bounds, |a, b| pairs.push(if height(a) > height(b) { (a, b) } else { (b, a) }));
    pairs.sort_unstable();
    for (upper, lower) in pairs {
        patches[upper].lies_over.push(PatchId::new(lower));
    }
}

/// Cuts every patch round the cones of other posts that meet it.
fn cut_round_others(patches: &mut [Patch], bounds: &[Rect], posts: &[Post], of_post: &[Option<PatchId>]) {
    let cones = posts.iter().map(cone).enumerate();
    let cones =
        RTree::bulk_load(cones.map(|(post, cone)| GeomWithData::new(box_of(&cone.bounds()), post)).collect());
    let mut pairs = Vec::new();
    for (patch, bounds) in bounds.iter().enumerate() {
        let near = cones.locate_in_envelope_intersecting(&box_of(bounds).envelope()).map(|found| found.data);
        let others = near.filter(|&post| {
            of_post[post] != Some(PatchId::new(patch)) && cone(&posts[post]).meets_rect(bounds)
        });
        pairs.extend(others.map(|post| (patch, post)));
    }
    pairs.sort_unstable();
    for (patch, post) in pairs {
        patches[patch].cut_round.push(PostId::new(post));
    }
}

/// The foot of a post's cone.
fn cone(post: &Post) -> Ellipse {
    let radius = half(post.assembly.deck_flashing.cone_diameter);
    Ellipse { centre: Point::from(post.at), a: radius, b: radius }
}

/// Grid steps are exact as `f64` within the limits (±4·10¹³ is below 2⁵³).
fn box_of(rect: &Rect) -> Rectangle<[f64; 2]> {
    Rectangle::from_corners([rect.left as f64, rect.lower as f64], [rect.right as f64, rect.upper as f64])
}

fn bounding(rects: impl Iterator<Item = Rect>) -> Rect {
    rects.reduce(|all, rect| all.union(&rect)).unwrap_or(Rect::new(0, 0, 0, 0))
}

/// `top / over` up to the next whole number, for `over` above 0; at least 0.
fn ceil_div(top: i64, over: i64) -> u64 {
    u64::try_from((top - 1).div_euclid(over) + 1).unwrap_or(0)
}

/// A patch by its place in its slope's list. Shown as the crew calls it: the first is `P1`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PatchId(usize);

impl PatchId {
    /// The patch at a place of its slope's list, counted from 0.
    pub const fn new(place: usize) -> PatchId {
        PatchId(place)
    }

    /// Its place in its slope's list, counted from 0.
    pub const fn place(self) -> usize {
        self.0
    }
}

impl fmt::Display for PatchId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "P{}", self.0 + 1)
    }
}

/// A patch over a deck flashing.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// The posts under it.
    pub posts: Vec<PostId>,
    /// Where it lies.
    pub bounds: Rect,
    /// The lap line it goes under; `None` runs to the field's edge.
    pub lap_line: Option<Length>,
    /// Pieces, one above the other, where it is taller than a sheet is wide.
    pub pieces: u64,
    /// Felt it takes, the laps between its pieces counted.
    pub area: Area,
    /// Staples.
    pub staples: u64,
    /// Posts at its lower edge, cut half-round about the cone.
    pub half_round_at: Vec<PostId>,
    /// Posts inside it, with a full round hole.
    pub round_at: Vec<PostId>,
    /// Patches that this one lies over.
    pub lies_over: Vec<PatchId>,
    /// Posts that are not under this patch and whose cones stand in it: it is cut round them.
    pub cut_round: Vec<PostId>,
}

impl Patch {
    /// Its side along the eave, to the nanometre, half up.
    pub fn width(&self) -> Length {
        rounded_up(self.bounds.right - self.bounds.left)
    }

    /// Its side up the slope, to the nanometre, half up.
    pub fn height(&self) -> Length {
        rounded_up(self.bounds.upper - self.bounds.lower)
    }

    /// Round about its edge.
    pub fn perimeter(&self) -> Length {
        perimeter(&self.bounds)
    }
}

fn rounded_up(steps: i64) -> Length {
    whole(steps + steps.rem_euclid(2))
}

/// Twice the sides of a rectangle, whole nanometres even where these are not.
fn perimeter(bounds: &Rect) -> Length {
    whole(2 * (bounds.right - bounds.left + bounds.upper - bounds.lower))
}
