//! The committed JSON Schema is the one that the types give.
use std::fs;

use takeoff_core::api;
use tilepost_tests::{SCHEMA, root};

#[test]
fn the_committed_schema_is_up_to_date() {
    let committed = fs::read_to_string(root().join(SCHEMA)).unwrap_or_default();
    assert!(
        committed == api::schema_json(),
        "{SCHEMA} is out of date; mend it with: cargo run -p tilepost-tests --bin bless"
    );
}
