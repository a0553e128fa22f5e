//! Writes anew what is generated and committed: the expected files of the fixtures, the job schema, and
//! the listing of the public API.
//!
//! `cargo run -p tilepost-tests --bin bless`; then read the differences before you commit them.
use std::fs;
use std::io::Result;

use takeoff_core::api;
use tilepost_tests::{Case, PUBLIC_API, SCHEMA, public_api, root};

fn main() -> Result<()> {
    for case in Case::all()? {
        for stale in case.expected_files()? {
            fs::remove_file(case.folder.join(stale))?;
        }
        for (name, text) in case.expected_now()? {
            println!("fixtures/{}/{name}: {} bytes", case.name, text.len());
            fs::write(case.folder.join(name), text)?;
        }
    }
    println!("{SCHEMA}");
    fs::write(root().join(SCHEMA), api::schema_json())?;
    println!("{PUBLIC_API}");
    fs::write(root().join(PUBLIC_API), public_api()?)
}
