//! The spare tiles, and the chance of running short with fewer or more.
use super::super::spares_chart;
use super::super::summary::spare;
use super::super::words;
use super::grid::Grid;
use super::section::Section;
use crate::report::document::Takeoff;
use crate::spares::{Alternative, Spares};

/// Alternatives shown on either side of the number to bring.
const REACH: usize = 3;

/// The spares of every kind of piece, if tiles are handled at all.
pub(super) fn section(takeoff: &Takeoff) -> Option<Section> {
    if takeoff.spares.is_empty() {
        return None;
    }
    let level = words::percent(takeoff.service_level);
    Some(Section::new("spares", "Spare tiles", |html| {
        html.tag("p").text(&format!(
            "Of each kind enough with a probability of {level}; part of the materials above."
        ));
        html.tag("ul").holds(|html| {
            for of_kind in &takeoff.spares {
                html.tag("li").text(&spare(of_kind, takeoff.display));
            }
        });
        for of_kind in &takeoff.spares {
            if let Some(chart) = spares_chart(takeoff, &of_kind.tile.to_string()) {
                html.tag("figure").with("class", "chart").holds(|html| html.put(&chart));
            }
            Grid::new(format!("If you bring fewer or more: {}", of_kind.tile), around(&of_kind.spares))
                .name("spare tiles", |other| other.spares.to_string())
                .number("chance of running short", |other| words::chance(other.stockout_probability))
                .write(html);
        }
    }))
}

/// The alternatives about the number to bring.
fn around(spares: &Spares) -> &[Alternative] {
    let all = &spares.alternatives;
    let at = all.iter().position(|other| other.spares == spares.spares).unwrap_or(0);
    all.get(at.saturating_sub(REACH)..(at + REACH + 1).min(all.len())).unwrap_or_default()
}
