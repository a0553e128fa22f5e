//! The floors of the core: a room uses rooms on lower floors only, as the picture in DEVELOPERS.md says.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test without the source has nothing to test")]
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

const ROOT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/..");

/// Floors from the top down, each with its rooms: the words of a line up to the gap before its description.
fn floors() -> Vec<Vec<String>> {
    let text = fs::read_to_string(Path::new(ROOT).join("DEVELOPERS.md")).unwrap();
    let (_, block) = text.split_once("```layers\n").expect("DEVELOPERS.md has a block `layers`");
    let (block, _) = block.split_once("```").unwrap();
    let rooms = |line: &str| {
        let names = line.split_once("  ").map_or(line, |(names, _)| names);
        names.split_whitespace().map(str::to_owned).collect()
    };
    block.lines().map(rooms).collect()
}

/// The source files of a room, its tests left out.
fn sources(room: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(room).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap();
        match (path.is_dir(), name) {
            (_, "tests") => {}
            (true, _) => files.extend(sources(&path)),
            (false, _) => files.push(path),
        }
    }
    files.sort();
    files
}

/// The rooms that a source names in paths from the crate's root. Comments and what follows `#[cfg(test)]` at the end
/// of a file do not count.
fn rooms_named(source: &str) -> BTreeSet<String> {
    let source = match source.find("\n#[cfg(test)]\nmod tests {") {
        Some(tests) => &source[..tests],
        None => source,
    };
    let code: String = source
        .lines()
        .map(|line| line.split("//").next().unwrap_or_default())
        .fold(String::new(), |code, line| code + line + "\n");
    let mut rooms = BTreeSet::new();
    for (at, _) in code.match_indices("crate::") {
        let path = &code[at + "crate::".len()..];
        match path.strip_prefix('{') {
            Some(list) => rooms.extend(first_words(list)),
            None => rooms.extend(word(path)),
        }
    }
    rooms
}

/// The first word of every path in a braced list.
fn first_words(list: &str) -> Vec<String> {
    let (mut depth, mut start, mut words) = (0_i32, 0, Vec::new());
    for (at, sign) in list.char_indices() {
        match sign {
            '{' => depth += 1,
            '}' if depth == 0 => {
                words.extend(word(&list[start..at]));
                return words;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                words.extend(word(&list[start..at]));
                start = at + 1;
            }
            _ => {}
        }
    }
    words
}

fn word(path: &str) -> Option<String> {
    let path = path.trim_start();
    let word: String = path.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
    (!word.is_empty()).then_some(word)
}

/// The rooms each room names.
fn arrows() -> BTreeMap<String, BTreeSet<String>> {
    let source = Path::new(ROOT).join("takeoff-core/src");
    let mut arrows = BTreeMap::new();
    for entry in fs::read_dir(&source).unwrap() {
        let path = entry.unwrap().path();
        let room = path.file_name().unwrap().to_str().unwrap().to_owned();
        if !path.is_dir() || room == "bin" {
            continue;
        }
        let mut named = BTreeSet::new();
        for file in sources(&path) {
            named.extend(rooms_named(&fs::read_to_string(file).unwrap()));
        }
        named.remove(&room);
        arrows.insert(room, named);
    }
    arrows
}

#[test]
fn every_arrow_points_down() {
    let floors = floors();
    let floor_of: BTreeMap<&str, usize> = floors
        .iter()
        .enumerate()
        .flat_map(|(floor, rooms)| rooms.iter().map(move |room| (room.as_str(), floor)))
        .collect();
    let arrows = arrows();
    let rooms: BTreeSet<&str> = arrows.keys().map(String::as_str).collect();
    assert_eq!(rooms, floor_of.keys().copied().collect(), "rooms of the source, and of the picture");
    let mut wrong = Vec::new();
    for (room, named) in &arrows {
        for other in named.iter().filter(|other| rooms.contains(other.as_str())) {
            if floor_of[other.as_str()] <= floor_of[room.as_str()] {
                wrong.push(format!("{room} uses {other}"));
            }
        }
    }
    assert!(wrong.is_empty(), "not on a lower floor: {}", wrong.join(", "));
    assert!(arrows.values().map(BTreeSet::len).sum::<usize>() > 50, "the arrows are read: {arrows:?}");
}

#[test]
fn paths_are_read_in_all_their_forms() {
    let named = |source: &str| rooms_named(source).into_iter().collect::<Vec<_>>().join(" ");
    assert_eq!(named("use crate::deck::{Method, zone};"), "deck");
    assert_eq!(named("use crate::{api, report::{page, tables}, cuts::Cut};\n"), "api cuts report");
    assert_eq!(named("let x = crate::num::math::sin(1.0); // crate::api"), "num");
    assert_eq!(named("use crate::units::Length;\n#[cfg(test)]\nmod tests {\n use crate::api;\n}"), "units");
}
