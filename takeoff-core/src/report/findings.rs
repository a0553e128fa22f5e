//! Findings by what they are about, and where each is, in names.
use std::collections::BTreeMap;

use crate::model::Problem;
use crate::takeoff::Takeoff;

/// The findings of each kind, in their order.
pub(super) fn by_code(findings: &[Problem]) -> BTreeMap<&str, Vec<&Problem>> {
    let mut by_code: BTreeMap<&str, Vec<&Problem>> = BTreeMap::new();
    for finding in findings {
        by_code.entry(finding.code.as_str()).or_default().push(finding);
    }
    by_code
}

/// A place in the job file by its names, where it is a post: `south A1`; else as the JSON Pointer it is.
pub(super) fn place(takeoff: &Takeoff, path: &str) -> String {
    let post = || {
        let mut steps = path.split('/').skip(1);
        let mut index =
            |list| if steps.next() == Some(list) { steps.next()?.parse::<usize>().ok() } else { None };
        let (slope, post) = (index("slopes")?, index("posts")?);
        let slope = takeoff.slopes.get(slope)?;
        Some(format!("{} {}", slope.name, slope.posts.get(post)?.name))
    };
    post().unwrap_or_else(|| path.to_owned())
}
