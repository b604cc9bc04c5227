//! One name for one structure over a course.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::sync::LazyLock;

use fascicle_analysis::consistency::{self, Usage};
use fascicle_analysis::settings::EnglishSpelling;
use fascicle_analysis::{Form, Settings};
use fascicle_analysis::{Knowledge, Reading, reading};

static KNOWLEDGE: LazyLock<Knowledge> = LazyLock::new(|| Knowledge::new(fascicle_vocab::built_in()));

/// Code and marked text of what is told about some documents.
fn told(texts: &[&str], settings: &Settings) -> Vec<(&'static str, String)> {
    let read: Vec<Reading> =
        texts.iter().map(|text| reading::read(text, Form::Markdown, &KNOWLEDGE, settings)).collect();
    let usages: Vec<&Usage> = read.iter().map(|reading| &reading.usage).collect();
    let lists = consistency::compare(&usages, &KNOWLEDGE, settings);
    lists
        .into_iter()
        .zip(texts)
        .flat_map(|(list, text)| {
            list.into_iter().map(|finding| (finding.code, finding.span.of(text).to_owned())).collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn two_names_over_two_documents() {
    let first = "The common fibular nerve winds round. The common fibular nerve divides.";
    let second = "The common peroneal nerve is at risk.";
    let settings = Settings::default();
    assert_eq!(told(&[first, second], &settings), [(consistency::TWO_NAMES, "common peroneal nerve".to_owned())]);
    assert!(told(&[first, first], &settings).is_empty());
    let off = Settings { off: vec![consistency::TWO_NAMES.to_owned()], ..Settings::default() };
    assert!(told(&[first, second], &off).is_empty());
}

#[test]
fn a_course_decides_what_it_calls_things() {
    let peroneal = "The common peroneal nerve is at risk. The common peroneal nerve divides.";
    assert!(told(&[peroneal], &Settings::default()).is_empty());
    let prefer = Settings { prefer: vec!["common fibular nerve".to_owned()], ..Settings::default() };
    assert_eq!(told(&[peroneal], &prefer).len(), 1, "one a document");
    assert!(told(&["The common fibular nerve divides."], &prefer).is_empty());
    let eponym = "The nerve of Bell supplies serratus anterior.";
    assert!(told(&[eponym], &Settings::default()).is_empty());
    let avoid = Settings { avoid: vec![consistency::EPONYM.to_owned()], ..Settings::default() };
    assert_eq!(told(&[eponym], &avoid), [(consistency::EPONYM, "nerve of Bell".to_owned())]);
    let former = Settings { avoid: vec![consistency::FORMER_NAME.to_owned()], ..Settings::default() };
    assert!(told(&[eponym], &former).is_empty());
}

#[test]
fn british_and_american() {
    let settings = Settings::default();
    let mixed = "Muscle fibres are long. The fibres run down. Grey fibers are short.";
    assert_eq!(told(&[mixed], &settings), [(consistency::MIXED_SPELLING, "fibers".to_owned())]);
    assert!(told(&["Muscle fibres are long. The centre is grey."], &settings).is_empty());
    let american = Settings { spelling: Some(EnglishSpelling::American), ..Settings::default() };
    assert_eq!(told(&["Muscle fibres are long."], &american), [(consistency::MIXED_SPELLING, "fibres".to_owned())]);
    assert!(told(&["Muscle fibers are long."], &american).is_empty());
}

#[test]
fn abbreviations() {
    let settings = Settings::default();
    let late = "FDP lies deep. The flexor digitorum profundus bends the fingers.";
    assert_eq!(told(&[late], &settings), [(consistency::ABBREVIATION, "FDP".to_owned())]);
    for good in [
        "The flexor digitorum profundus (FDP) lies deep. FDP bends the fingers.",
        "FDP (flexor digitorum profundus) lies deep.",
        "The flexor digitorum profundus lies deep. FDP bends the fingers.",
        "FDP lies deep.",
    ] {
        assert!(told(&[good], &settings).is_empty(), "{good}");
    }
}

#[test]
fn one_abbreviation_for_two() {
    let settings = Settings::default();
    let first = "The flexor carpi radialis (FCR) is thin.";
    let second = "The flexor carpi ulnaris (FCR) is thick.";
    let found = told(&[first, second], &settings);
    assert_eq!(found, [(consistency::TWO_MEANINGS, "FCR".to_owned())]);
    assert!(told(&[first, first], &settings).is_empty());
    let off = Settings { off: vec![consistency::TWO_MEANINGS.to_owned()], ..Settings::default() };
    assert!(told(&[first, second], &off).is_empty());
}
