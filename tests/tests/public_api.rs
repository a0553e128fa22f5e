//! What the core offers to other crates changes on purpose only.
#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
use std::fs;

use tilepost_tests::{PUBLIC_API, public_api, root};

#[test]
fn the_listing_is_that_of_the_source() {
    let listed = fs::read_to_string(root().join(PUBLIC_API)).unwrap();
    let listing = public_api().unwrap();
    assert!(listing.contains("takeoff_core::api: ") && listing.contains("Problems"), "the source is read");
    assert!(listed == listing, "if this is meant: cargo run -p tilepost-tests --bin bless\n{listing}");
}
