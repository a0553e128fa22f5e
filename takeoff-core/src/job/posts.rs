//! The posts of a slope: one by one, and in rows and columns.
use std::collections::BTreeMap;

use super::codes::Code;
use super::kinds::MOST_ITEMS;
use super::outline::Outline;
use super::raw;
use super::reader::{Field, Reader, quoted};
use super::tree::At;
use super::validate::Named;
use super::{Assembly, Post, SlopePoint};
use crate::geometry;
use crate::units::Length;

/// The posts of a slope, each with the place that gives it.
pub(super) fn posts(
    written: &raw::Slope,
    outline: Option<&Outline>,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Vec<(At, Post)>> {
    let singles = written.posts.given().map_or(&[][..], Vec::as_slice);
    let grids = written.post_grids.given().map_or(&[][..], Vec::as_slice);
    let asked = singles.len() as u64 + grids.iter().filter_map(size).sum::<u64>();
    if asked > MOST_ITEMS as u64 {
        let message = format!("{asked} posts are more than {MOST_ITEMS} on one slope");
        let at = if grids.is_empty() { written.posts.at } else { written.post_grids.at };
        reader.report(
            at,
            Code::TooMany,
            message,
            "look at the counts of rows and columns, or make several slopes of it",
        );
        return None;
    }
    let polygon = outline.map(Outline::polygon);
    let mut check = Check { polygon, names: BTreeMap::new() };
    let mut posts = Vec::with_capacity(usize::try_from(asked).unwrap_or(0));
    let mut whole = !written.posts.is_given() || written.posts.given().is_some();
    for single in singles {
        let post = one(single, assemblies, reader).filter(|post| check.post(single.at, post, reader));
        whole &= post.is_some();
        posts.extend(post.map(|post| (single.at, post)));
    }
    whole &= !written.post_grids.is_given() || written.post_grids.given().is_some();
    for field in grids {
        match grid(field, assemblies, reader) {
            None => whole = false,
            Some(grid) => {
                for post in grid {
                    whole &= check.post(field.at, &post, reader);
                    posts.push((field.at, post));
                }
            }
        }
    }
    whole.then_some(posts)
}

fn one(field: &Field<raw::Post>, assemblies: &Named<Assembly>, reader: &mut Reader<'_>) -> Option<Post> {
    let written = field.get()?;
    let assembly = assemblies.find(&written.assembly, reader);
    Some(Post {
        name: written.name.get()?.clone(),
        assembly: assembly?,
        at: SlopePoint { u: *written.u.get()?, v: *written.v.get()? },
        path: reader.tree.pointer(field.at),
    })
}

/// How many posts a grid asks for.
fn size(field: &Field<raw::PostGrid>) -> Option<u64> {
    let written = field.get()?;
    Some(u64::from(*written.rows.get()?) * u64::from(*written.columns.get()?))
}

/// The posts of a grid, row by row from the lowest, each from left to right.
fn grid(
    field: &Field<raw::PostGrid>,
    assemblies: &Named<Assembly>,
    reader: &mut Reader<'_>,
) -> Option<Vec<Post>> {
    let written = field.get()?;
    let assembly = assemblies.find(&written.assembly, reader);
    let (name, assembly) = (written.name.get()?, assembly?);
    let (u, v) = (*written.u.get()?, *written.v.get()?);
    let (columns, rows) = (*written.columns.get()?, *written.rows.get()?);
    let (across, up) = (*written.column_spacing.get()?, *written.row_spacing.get()?);
    let far = |from: Length, count: u32, step: Length| {
        Length::checked(i128::from(from.nm()) + i128::from(count.saturating_sub(1)) * i128::from(step.nm()))
    };
    if far(u, columns, across).is_none() || far(v, rows, up).is_none() {
        let message = format!("the grid {} reaches beyond 10 km", quoted(name));
        reader.report(field.at, Code::OutOfRange, message, "look at its counts and spacings");
        return None;
    }
    let path = reader.tree.pointer(field.at);
    let places =
        (0..i64::from(rows)).flat_map(|row| (0..i64::from(columns)).map(move |column| (row, column)));
    let post = |(row, column): (i64, i64)| Post {
        name: format!("{name}-{}-{}", row + 1, column + 1),
        assembly: assembly.clone(),
        at: SlopePoint {
            u: u + Length::from_nm(column * across.nm()),
            v: v + Length::from_nm(row * up.nm()),
        },
        path: path.clone(),
    };
    Some(places.map(post).collect())
}

/// What all posts of a slope have to keep to.
struct Check {
    polygon: Option<geometry::Polygon>,
    names: BTreeMap<String, At>,
}

impl Check {
    /// Whether a post stands on the slope, clear of its edges, and has a name of its own.
    fn post(&mut self, at: At, post: &Post, reader: &mut Reader<'_>) -> bool {
        let point = geometry::Point::from(post.at);
        let off = self.polygon.as_ref().is_some_and(|on| !on.contains(point) || on.has_on_boundary(point));
        if off {
            let message = format!("the post {} does not stand on the slope", quoted(&post.name));
            let help = "its point has to be inside the outline, not on its edge, and not in a hole";
            reader.report(at, Code::PostOffSlope, message, help);
        }
        let first = self.names.insert(post.name.clone(), at);
        if first.is_some() {
            let message = format!("two posts are called {}", quoted(&post.name));
            reader.report(at, Code::TwoPostsOfOneName, message, "call one of them by another name");
        }
        !off && first.is_none()
    }
}
