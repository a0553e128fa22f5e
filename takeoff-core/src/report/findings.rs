//! Findings by what they are about, and where each is, in names.
use std::collections::BTreeMap;

use crate::model::Problem;
use crate::report::document::Takeoff;

/// The findings of each kind, in their order.
pub(super) fn by_code(findings: &[Problem]) -> BTreeMap<&str, Vec<&Problem>> {
    let mut by_code: BTreeMap<&str, Vec<&Problem>> = BTreeMap::new();
    for finding in findings {
        by_code.entry(finding.code.as_str()).or_default().push(finding);
    }
    by_code
}

/// The name of a place in the job file, such as `south A1`; `None` for a place without a name of its own.
pub(super) fn place(takeoff: &Takeoff, path: &str) -> Option<String> {
    let mut steps = path.split('/').skip(1);
    if steps.next()? != "slopes" {
        return None;
    }
    let slope = takeoff.slopes.get(steps.next()?.parse::<usize>().ok()?)?;
    match (steps.next(), steps.next()) {
        (None, _) => Some(slope.name.clone()),
        (Some("posts"), Some(post)) => {
            Some(format!("{} {}", slope.name, slope.posts.get(post.parse::<usize>().ok()?)?.name))
        }
        _ => None,
    }
}
