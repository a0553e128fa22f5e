//! Everything a takeoff is written to.
use super::{page, roof_map, tables};
use crate::api;
use crate::takeoff::Takeoff;

/// The files of a takeoff by name, whole: `takeoff.json`, `report.html`, the tables, a roof map a slope.
pub fn files(takeoff: &Takeoff) -> Vec<(String, String)> {
    let mut files =
        vec![("takeoff.json".to_owned(), api::document(takeoff)), ("report.html".to_owned(), page(takeoff))];
    for (name, table) in tables::all(takeoff) {
        files.push((format!("{name}.csv"), table.csv()));
    }
    for (number, slope) in takeoff.slopes.iter().enumerate() {
        if let Some(map) = roof_map(takeoff, &slope.name) {
            files.push((map_name(number, &slope.name), map));
        }
    }
    files
}

/// `roof-1-south.svg`: numbered, so that two names that differ in signs alone stay apart.
pub(super) fn map_name(number: usize, slope: &str) -> String {
    let plain = |c: char| if c.is_alphanumeric() { c } else { '-' };
    format!("roof-{}-{}.svg", number + 1, slope.chars().take(60).map(plain).collect::<String>())
}
