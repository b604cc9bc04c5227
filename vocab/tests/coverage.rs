//! The page that lists what the vocabulary holds is the one that the data make, and the vocabulary is as large as promised.
//!
//! `FASCICLE_UPDATE=1 cargo test -p fascicle-vocab --test coverage` writes the page anew.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use fascicle_vocab::{Kind, built_in, coverage};

#[test]
fn the_page_is_the_one_that_the_data_make() {
    let page = coverage::page(&built_in());
    if std::env::var_os("FASCICLE_UPDATE").is_some() {
        std::fs::write("COVERAGE.md", &page).unwrap();
    }
    let written = std::fs::read_to_string("COVERAGE.md").unwrap_or_default();
    assert!(written == page, "COVERAGE.md is out of date: run with FASCICLE_UPDATE=1");
}

#[test]
fn the_whole_body_is_there() {
    let vocabulary = built_in();
    let count = |kind: Kind| vocabulary.entries().iter().filter(|entry| entry.kind == kind).count();
    assert!(count(Kind::Muscle) >= 320, "muscles: {}", count(Kind::Muscle));
    assert!(count(Kind::Nerve) >= 280, "nerves: {}", count(Kind::Nerve));
    assert!(count(Kind::Joint) >= 140, "joints: {}", count(Kind::Joint));
    // Every muscle has nerve, segments, attachments and action, every nerve origin and modality: "401 of 401".
    let page = coverage::page(&vocabulary);
    let shares: Vec<&str> = page.lines().filter(|line| line.contains(" of ") && line.ends_with(" |")).collect();
    let whole = |line: &&&str| {
        let cell = line.trim_end_matches(" |").rsplit("| ").next().unwrap();
        cell.split_once(" of ").is_some_and(|(some, all)| some == all)
    };
    let rows = shares.iter().filter(|line| line.starts_with("| Muscles with a") || line.starts_with("| Nerves with"));
    assert_eq!(rows.clone().filter(whole).count(), rows.count(), "{shares:#?}");
    assert!(shares.iter().filter(whole).count() >= 7, "{shares:#?}");
}
