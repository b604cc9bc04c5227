//! The rooms keep to themselves: no protocol type outside `lsp/`, no protocol, file or clock in the analysis.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::fs;
use std::path::{Path, PathBuf};

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut list = Vec::new();
    for path in fs::read_dir(folder).unwrap().map(|item| item.unwrap().path()) {
        if path.is_dir() {
            list.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            list.push(path);
        }
    }
    list
}

/// The lines below a folder that hold one of the words, but for files below `except`.
fn lines_with(folder: &Path, words: &[&str], except: Option<&Path>) -> Vec<String> {
    let files = sources(folder);
    assert!(!files.is_empty());
    let mut found = Vec::new();
    for path in files.iter().filter(|path| !except.is_some_and(|except| path.starts_with(except))) {
        for (number, line) in (1..).zip(fs::read_to_string(path).unwrap().lines()) {
            if words.iter().any(|word| line.contains(word)) {
                found.push(format!("{}:{number}: {line}", path.display()));
            }
        }
    }
    found
}

#[test]
fn no_protocol_outside_its_folder() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let found = lines_with(&here.join("src"), &["tower_lsp", "lsp_types"], Some(&here.join("src/lsp")));
    assert!(found.is_empty(), "{}", found.join("\n"));
    assert!(!lines_with(&here.join("src/lsp"), &["tower_lsp"], None).is_empty(), "the test sees what it looks for");
}

#[test]
fn the_analysis_knows_no_protocol_no_file_and_no_clock() {
    let analysis = Path::new(env!("CARGO_MANIFEST_DIR")).join("../analysis/src");
    let words = ["tower_lsp", "lsp_types", "std::fs", "std::io", "std::net", "std::time", "std::env", "tokio"];
    let found = lines_with(&analysis, &words, None);
    assert!(found.is_empty(), "{}", found.join("\n"));
}
