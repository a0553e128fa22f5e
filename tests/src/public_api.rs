//! The names that the core offers to other crates, read from its source.
use std::fmt::Write as _;
use std::{fs, io};

use crate::root;

/// The listing that is committed.
pub const PUBLIC_API: &str = "takeoff-core/public-api.txt";

/// A line per module that other crates can name, with what it offers; the crate's root first.
///
/// # Errors
///
/// A source file that can't be read.
pub fn public_api() -> io::Result<String> {
    let source = root().join("takeoff-core/src");
    let root = fs::read_to_string(source.join("lib.rs"))?;
    let mut listing = String::new();
    list("takeoff_core", &root, &mut listing);
    for module in words_after(&root, "pub mod ") {
        let text = fs::read_to_string(source.join(&module).join("mod.rs"))?;
        list(&format!("takeoff_core::{module}"), &text, &mut listing);
    }
    Ok(listing)
}

fn list(module: &str, source: &str, listing: &mut String) {
    let mut names = used(source);
    for kind in ["fn", "struct", "enum", "const", "mod"] {
        names.extend(words_after(source, &format!("pub {kind} ")));
    }
    names.sort_unstable();
    names.dedup();
    // Writing to a String can't fail.
    let _ = writeln!(listing, "{module}: {}", names.join(", "));
}

/// The words behind a beginning of a line.
fn words_after(source: &str, beginning: &str) -> Vec<String> {
    let rests = source.lines().filter_map(|line| line.strip_prefix(beginning));
    rests.map(|rest| rest.chars().take_while(|&c| c.is_alphanumeric() || c == '_').collect()).collect()
}

/// The names that `pub use` brings in, by their last word or the name given.
fn used(source: &str) -> Vec<String> {
    let statements = source.split("\npub use ").skip(1).filter_map(|rest| rest.split(';').next());
    let paths = statements.flat_map(|statement| match statement.split_once('{') {
        Some((_, list)) => list.trim_end_matches('}').split(',').map(str::trim).collect::<Vec<_>>(),
        None => vec![statement],
    });
    let name = |path: &str| path.rsplit([' ', ':']).next().unwrap_or_default().to_owned();
    paths.map(name).filter(|name| !name.is_empty()).collect()
}
