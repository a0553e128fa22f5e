//! The posts of a slope: one by one, and in rows and columns.
use std::collections::BTreeSet;

use super::Named;
use crate::geometry;
use crate::geometry::SlopePoint;
use crate::job::fields::collections::MOST_ITEMS;
use crate::job::fields::raw;
use crate::job::parse::decode::{Field, Reader, quoted};
use crate::job::parse::document::At;
use crate::model::{Assembly, Code, Outline, Post};
use crate::units::Length;

/// The most posts of a job, over all its slopes: a bound of this version.
///
/// The geometry takes [`MOST_ITEMS`] posts a slope; the outputs do not yet. All files of `tilepost takeoff --out` are in
/// memory together, and that is 51 kB a post: grids of 10 000, 40 000 and 80 000 posts 48 in apart on the plain gable took
/// 0.54, 2.09 and 4.08 GB (a summary alone 10 kB a post, JSON alone 17 kB). 50 000 posts take 2.6 GB, which leaves a third
/// of 4 GB to longer names and denser roofs. It is far beyond the posts of any one roof, so that more are a slip.
pub(crate) const MOST_POSTS: u64 = 50_000;

/// Whether the posts are few enough to be made at all; reports where they are not.
pub(super) fn few_enough(slopes: &[Field<raw::Slope>], reader: &mut Reader<'_>) -> bool {
    let mut all: u64 = 0;
    for slope in slopes.iter().filter_map(Field::get) {
        let singles = slope.posts.given().map_or(0, Vec::len) as u64;
        let grids = slope.post_grids.given().map_or(&[][..], Vec::as_slice);
        let asked = grids.iter().filter_map(size).fold(singles, u64::saturating_add);
        all = all.saturating_add(asked);
        let message = if asked > MOST_ITEMS as u64 {
            format!("{asked} posts are more than {MOST_ITEMS} on one slope")
        } else if all > MOST_POSTS {
            format!("{all} posts up to here are more than {MOST_POSTS} in one job, over all its slopes")
        } else {
            continue;
        };
        let at = if grids.is_empty() { slope.posts.at } else { slope.post_grids.at };
        let help = "look at the counts of rows and columns, or make several jobs of it";
        reader.report(at, Code::TooMany, message, help);
        return false;
    }
    true
}

/// The posts of a slope, each with the place that gives it.
pub(crate) fn posts(
    written: &raw::Slope,
    outline: Option<&Outline>,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Vec<(At, Post)>> {
    let singles = written.posts.given().map_or(&[][..], Vec::as_slice);
    let grids = written.post_grids.given().map_or(&[][..], Vec::as_slice);
    let mut rules = Rules { polygon: outline.map(Outline::polygon), names: BTreeSet::new() };
    let singles = singles.iter().map(|single| {
        let written = single.get()?;
        let (u, v) = (written.u.get(), written.v.get());
        let at = u.zip(v).map(|(&u, &v)| SlopePoint { u, v });
        rules.check(single.at, written.name.get(), at, reader);
        let assembly = assemblies.find(&written.assembly, reader);
        let fixed = written.fixed.optional().map(|fixed| fixed.copied().unwrap_or(false));
        let path = reader.tree.pointer(single.at);
        Some((
            single.at,
            Post { name: written.name.get()?.clone(), assembly: assembly?, at: at?, fixed: fixed?, path },
        ))
    });
    let mut posts: Vec<Option<(At, Post)>> = singles.collect();
    for field in grids {
        let Some(grid) = grid(field, assemblies, reader) else {
            posts.push(None);
            continue;
        };
        for post in grid {
            rules.check(field.at, Some(&post.name), Some(post.at), reader);
            posts.push(Some((field.at, post)));
        }
    }
    posts.into_iter().collect()
}

/// Number of posts in a grid.
fn size(field: &Field<raw::PostGrid>) -> Option<u64> {
    let written = field.get()?;
    Some(u64::from(*written.rows.get()?) * u64::from(*written.columns.get()?))
}

/// The posts of a grid, row by row from the lowest, each from left to right.
fn grid(
    field: &Field<raw::PostGrid>,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<impl Iterator<Item = Post> + use<>> {
    let written = field.get()?;
    let assembly = assemblies.find(&written.assembly, reader);
    let (name, assembly) = (written.name.get()?.clone(), assembly?);
    let (u, v) = (*written.u.get()?, *written.v.get()?);
    let (columns, rows) = (*written.columns.get()?, *written.rows.get()?);
    let (across, up) = (*written.column_spacing.get()?, *written.row_spacing.get()?);
    let last = |from: Length, count: u32, step: Length| {
        Length::checked(i128::from(from.nm()) + i128::from(count.saturating_sub(1)) * i128::from(step.nm()))
    };
    if last(u, columns, across).is_none() || last(v, rows, up).is_none() {
        let message = format!("the grid {} reaches beyond 10 km", quoted(&name));
        reader.report(field.at, Code::OutOfRange, message, "look at its counts and spacings");
        return None;
    }
    let path = reader.tree.pointer(field.at);
    let places =
        (0..i64::from(rows)).flat_map(move |row| (0..i64::from(columns)).map(move |column| (row, column)));
    Some(places.map(move |(row, column)| Post {
        name: format!("{name}-{}-{}", row + 1, column + 1),
        assembly: assembly.clone(),
        at: SlopePoint {
            u: u + Length::from_nm(column * across.nm()),
            v: v + Length::from_nm(row * up.nm()),
        },
        fixed: false,
        path: path.clone(),
    }))
}

/// Rules that all posts of a slope keep.
pub(crate) struct Rules {
    pub(crate) polygon: Option<geometry::Polygon>,
    pub(crate) names: BTreeSet<String>,
}

impl Rules {
    /// A post stands on the slope, clear of its edges, and has a name of its own.
    pub(crate) fn check(
        &mut self,
        at: At,
        name: Option<&String>,
        point: Option<SlopePoint>,
        reader: &mut Reader<'_>,
    ) {
        if let Some(name) = name
            && !self.names.insert(name.clone())
        {
            let message = format!("two posts are called {}", quoted(name));
            reader.report(at, Code::TwoPostsOfOneName, message, "call one of them by another name");
        }
        let (Some(polygon), Some(point)) = (&self.polygon, point.map(geometry::Point::from)) else {
            return;
        };
        let trouble = if polygon.has_on_boundary(point) {
            "on the edge of the slope or of a hole"
        } else if !polygon.contains(point) {
            "off the slope or in a hole"
        } else {
            return;
        };
        let who = name.map_or("a post".to_owned(), |name| format!("the post {}", quoted(name)));
        let help = "its point has to be inside the outline, clear of its edges: look at `u` and `v`";
        reader.report(at, Code::PostOffSlope, format!("{who} stands {trouble}"), help);
    }
}
