//! Where a path leads, and whether two paths lead to one file.
use std::path::{Path, PathBuf};

use unicode_normalization::UnicodeNormalization;

/// The path without links and `..`; where its file is missing, that of its folder and the file's name.
pub(crate) fn resolved(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| match (path.parent(), path.file_name()) {
        (Some(parent), Some(name)) => {
            let parent = if parent.as_os_str().is_empty() { Path::new(".") } else { parent };
            resolved(parent).join(name)
        }
        _ => path.to_owned(),
    })
}

/// The file `name` in the folder of `file`.
pub(crate) fn beside(file: &Path, name: &str) -> PathBuf {
    file.parent().unwrap_or(Path::new("")).join(name)
}

/// A name without case and Unicode form, which some file systems don't tell apart.
pub(crate) fn folded(name: &str) -> String {
    name.nfd().collect::<String>().to_lowercase().nfc().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Composed and decomposed forms: Unicode Standard Annex #15, figure 3 (`Å` is U+00C5, or `A` and U+030A).
    #[test]
    fn names_that_a_file_system_may_take_for_one_are_folded_to_one() {
        assert_eq!(folded("\u{c5}.csv"), folded("a\u{30a}.CSV"));
        assert_ne!(folded("a.csv"), folded("b.csv"));
    }

    #[test]
    fn a_missing_file_is_resolved_by_its_folder() {
        let here = Path::new(".").canonicalize().unwrap();
        assert_eq!(resolved(Path::new("missing.json")), here.join("missing.json"));
        assert_eq!(resolved(Path::new("missing/below.json")), here.join("missing/below.json"));
        assert_eq!(resolved(Path::new("src/../missing.json")), here.join("missing.json"));
    }
}
