//! The worked examples of the work on the deck, and what must hold for any posts.
mod handled;
mod hidden;
mod patches;
mod three_course;
mod wood;
mod zones;

use crate::cuts::{SlopeCut, cuts_of, opening_of};
use crate::geometry::{Ellipse, Rect};
use crate::model::{Battens, PostId, Slope};
use crate::roof::Site;
use crate::testing::{assembly, gable_with, inches};
use crate::units::Length;

use super::*;

/// The gable with straight joints, battens 3/4 × 1 1/2 in half an inch below the heads, and posts.
fn slope(posts: &[(f64, f64)]) -> Slope {
    let battens = Battens { height: inches(0.75), width: inches(1.5), lug: inches(0.5) };
    Slope { bond: vec![Length::ZERO], battens: Some(battens), ..gable_with(assembly(), posts) }
}

/// So many inches in millimetres.
fn mm(inches: f64) -> f64 {
    self::inches(inches).mm()
}

/// The methods of a slope's posts.
fn methods(site: &Site) -> Vec<Method> {
    site.slope.posts.iter().map(|post| Method::at(site, &post.assembly, post.at.into())).collect()
}

fn zones(site: &Site, methods: &[Method]) -> Vec<Rect> {
    site.slope.posts.iter().zip(methods).map(|(post, method)| work_zone(site, post, method)).collect()
}

fn openings(site: &Site) -> Vec<Ellipse> {
    site.slope.posts.iter().map(|post| opening_of(&post.assembly, site.slope).for_post(post)).collect()
}

fn cuts(site: &Site) -> Vec<SlopeCut> {
    cuts_of(site, &openings(site))
}

/// The posts at some places of their slope's list.
fn ids<const N: usize>(places: [usize; N]) -> [PostId; N] {
    places.map(PostId::new)
}

/// A rectangle in inches.
fn rect(left: f64, lower: f64, right: f64, upper: f64) -> Rect {
    let [left, lower, right, upper] = [left, lower, right, upper].map(|side| (side * 50.8e6).round() as i64);
    Rect::new(left, lower, right, upper)
}
