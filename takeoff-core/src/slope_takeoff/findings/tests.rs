use super::*;
use crate::model::Severity;
use crate::testing::{assembly, gable_with};

#[test]
fn posts_on_one_spot_are_named_once() {
    let spot = (56.0, 31.0);
    let slope = gable_with(assembly(), &[(40.0, 31.0), spot, (56.0, 31.015_625), spot, (40.0, 31.0), spot]);
    let found = posts_at_one_point(&slope.posts);
    let said: Vec<(&str, &str)> = found.iter().map(|f| (f.message.as_str(), f.path.as_str())).collect();
    assert_eq!(
        said,
        [
            ("`A1` and `A5` stand at one point", "/slopes/0/posts/0"),
            ("`A2`, `A4` and `A6` stand at one point", "/slopes/0/posts/1"),
        ]
    );
    assert!(found.iter().all(|f| f.code == "posts-at-one-point" && f.severity == Severity::Finding));
}

#[test]
fn a_crowd_is_counted() {
    let slope = gable_with(assembly(), &[(56.0, 31.0); 400]);
    let found = posts_at_one_point(&slope.posts);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].message, "`A1`, `A2`, `A3`, `A4`, `A5`, `A6` and 394 more stand at one point");
}
