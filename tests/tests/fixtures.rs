//! Every fixture below `tests/fixtures/`: what is marked is found, and nothing else. `UPDATE=1 cargo test -p
//! fascicle-tests --test fixtures` writes what is found into the files; read the difference before you keep it.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::fmt::Write;

use fascicle_analysis::Knowledge;
use fascicle_tests::fixtures;

#[test]
fn fixtures_find_what_is_marked() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let folder = fascicle_tests::folder().join("fixtures");
    let update = std::env::var_os("UPDATE").is_some_and(|value| value == "1");
    let files = fascicle_tests::markdown_files(&folder).unwrap();
    assert!(!files.is_empty(), "no fixtures in {}", folder.display());
    let mut problems = String::new();
    for path in files {
        let fixture = std::fs::read_to_string(&path).unwrap();
        let found = fixtures::render(&fixture, &knowledge);
        if found == fixture {
            continue;
        }
        if update {
            std::fs::write(&path, found).unwrap();
            continue;
        }
        writeln!(problems, "{}", path.strip_prefix(&folder).unwrap().display()).unwrap();
        for line in fixtures::lacking(&fixture, &found) {
            writeln!(problems, "  marked, not found: {line}").unwrap();
        }
        for line in fixtures::lacking(&found, &fixture) {
            writeln!(problems, "  found, not marked: {line}").unwrap();
        }
        if fixtures::strip(&fixture) == fixture && fixtures::lacking(&found, &fixture).is_empty() {
            writeln!(problems, "  markers stand at another place than expected").unwrap();
        }
    }
    assert!(problems.is_empty(), "\n{problems}");
}
