//! Patches over deck flashings: which posts share one, and what each takes.
use schemars::JsonSchema;
use serde::Serialize;

use super::chains::Chains;
use super::codes::NO_LAP_LINE_ABOVE;
use super::zone::own_patch;
use super::{Method, each_meeting_pair};
use crate::geometry::{Ellipse, Point, Rect, grid, half, to_mm};
use crate::model::{Post, Problem, Underlayment};
use crate::roof::Site;

/// The patches of a slope, and which is over which post.
#[derive(Clone, Debug)]
pub struct Patches {
    /// In the order of their first posts: `P1`, `P2`…
    pub patches: Vec<Patch>,
    /// Their rectangles, in grid steps.
    pub bounds: Vec<Rect>,
    /// Of each post, the place of its patch in the list; `None` where the flashing is not patched.
    pub of_post: Vec<Option<usize>>,
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
        members.iter().for_each(|&post| of_post[post] = Some(patch));
    }
    let mut patches: Vec<Patch> = bounds
        .iter()
        .zip(&posts_of)
        .enumerate()
        .map(|(i, (bounds, members))| {
            let members: Vec<&Post> = members.iter().map(|&post| &posts[post]).collect();
            patch(site, i, bounds, &members, methods[posts_of[i][0]].line())
        })
        .collect();
    lay_over_each_other(&mut patches, &bounds);
    cut_round_others(&mut patches, &bounds, posts, &of_post);
    Patches { patches, bounds, of_post }
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
fn chained(site: &Site, methods: &[Method], own: &[(usize, Rect)]) -> Vec<Vec<usize>> {
    let rects: Vec<Rect> = own.iter().map(|&(_, rect)| rect).collect();
    let drain = grid(site.practice.drain);
    let mut chains = Chains::of(own.len());
    each_meeting_pair(&rects, |a, b| {
        let (post_a, post_b) = (own[a].0, own[b].0);
        let same_line = methods[post_a].line().is_some() && methods[post_a].line() == methods[post_b].line();
        let [cone_a, cone_b] = [post_a, post_b].map(|post| cone(&site.slope.posts[post]));
        let apart = (cone_a.centre.v - cone_b.centre.v).abs();
        if same_line && apart <= cone_a.b.max(cone_b.b) + drain {
            chains.link(a, b);
        }
    });
    chains.members()
}

/// One patch, before it is known what it meets.
fn patch(site: &Site, place: usize, bounds: &Rect, posts: &[&Post], line: Option<i64>) -> Patch {
    let (width, height) = (bounds.right - bounds.left, bounds.upper - bounds.lower);
    let pieces = pieces_of_sheet(height, &site.slope.underlayment);
    let laps = (pieces - 1) as i64 * grid(site.slope.underlayment.head_lap);
    let perimeter = 2 * (width + height);
    let (inside, at_edge): (Vec<&Post>, Vec<&Post>) =
        posts.iter().partition(|post| cone(post).bounds().lower >= bounds.lower);
    let names = |posts: &[&Post]| posts.iter().map(|post| post.name.clone()).collect();
    Patch {
        name: format!("P{}", place + 1),
        posts: names(posts),
        bounds_mm: bounds.mm(),
        lap_line_mm: line.map(to_mm),
        pieces,
        area_mm2: to_mm(width) * to_mm(height + laps),
        perimeter_mm: to_mm(perimeter),
        staples: ceil_div(perimeter, grid(site.practice.staple_spacing)),
        half_round_at: names(&at_edge),
        round_at: names(&inside),
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
        let name = patches[lower].name.clone();
        patches[upper].lies_over.push(name);
    }
}

/// Cuts every patch round the cones of other posts that meet it.
fn cut_round_others(patches: &mut [Patch], bounds: &[Rect], posts: &[Post], of_post: &[Option<usize>]) {
    let cones = posts.iter().map(|post| cone(post).bounds());
    let both: Vec<Rect> = bounds.iter().copied().chain(cones).collect();
    let mut pairs = Vec::new();
    each_meeting_pair(&both, |patch, other| {
        let Some(post) = other.checked_sub(bounds.len()) else { return };
        if patch < bounds.len() && of_post[post] != Some(patch) && cone(&posts[post]).meets_rect(&both[patch])
        {
            pairs.push((patch, post));
        }
    });
    pairs.sort_unstable();
    for (patch, post) in pairs {
        patches[patch].cut_round.push(posts[post].name.clone());
    }
}

/// The foot of a post's cone.
fn cone(post: &Post) -> Ellipse {
    let radius = half(post.assembly.deck_flashing.cone_diameter);
    Ellipse { centre: Point::from(post.at), a: radius, b: radius }
}

fn bounding(rects: impl Iterator<Item = Rect>) -> Rect {
    rects.reduce(|all, rect| all.union(&rect)).unwrap_or(Rect::new(0, 0, 0, 0))
}

/// `top / over` up to the next whole number, for `over` above 0; at least 0.
fn ceil_div(top: i64, over: i64) -> u64 {
    u64::try_from((top - 1).div_euclid(over) + 1).unwrap_or(0)
}

/// A patch over a deck flashing.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Patch {
    /// Its name.
    pub name: String,
    /// The posts under it.
    pub posts: Vec<String>,
    /// Left, lower, right, upper.
    pub bounds_mm: [f64; 4],
    /// The lap line it goes under; `None` runs to the field's edge.
    pub lap_line_mm: Option<f64>,
    /// Pieces, one above the other, where it is taller than a sheet is wide.
    pub pieces: u64,
    /// Felt it takes, the laps between its pieces counted.
    pub area_mm2: f64,
    /// Round about its edge.
    pub perimeter_mm: f64,
    /// Staples.
    pub staples: u64,
    /// Posts at its lower edge, cut half-round about the cone.
    pub half_round_at: Vec<String>,
    /// Posts inside it, with a full round hole.
    pub round_at: Vec<String>,
    /// Patches that this one lies over.
    pub lies_over: Vec<String>,
    /// Posts that are not under this patch and whose cones stand in it: it is cut round them.
    pub cut_round: Vec<String>,
}
