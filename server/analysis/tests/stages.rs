//! The stages of a reading are told of as they end, and a reading that nobody wants any more ends.

#![allow(clippy::unwrap_used)]

use std::cell::Cell;

use fascicle_analysis::{Form, Knowledge, Memo, Settings, Stage, read, read_again, read_observed};

#[test]
fn every_stage_is_told_of_in_its_order() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let text = "# Shoulder\n\nThe axillary nerve supplies the deltoid.\n\n## Teres minor\n\n- nerve: axillary nerve\n";
    let mut told = Vec::new();
    let settings = Settings::default();
    let mut memo = Memo::default();
    let mut tell = |stage| told.push(stage);
    let reading = read_observed(text, Form::Markdown, &knowledge, &settings, &mut memo, &|| true, &mut tell).unwrap();
    let mut first = told.clone();
    first.sort_unstable();
    first.dedup();
    assert_eq!(first, Stage::ALL);
    // Claims and verdicts take turns, section by section; all else is gone through once.
    let others = told.iter().filter(|stage| !matches!(stage, Stage::Claims | Stage::Verdicts));
    assert!(others.is_sorted(), "{told:?}");
    let once = |stage: &Stage| told.iter().filter(|other| *other == stage).count() == 1;
    assert!(once(&Stage::Blocks) && once(&Stage::Mentions) && once(&Stage::Findings), "{told:?}");
    let plain = read(text, Form::Markdown, &knowledge, &settings);
    assert_eq!((reading.claims, reading.findings), (plain.claims, plain.findings));
}

#[test]
fn a_reading_ends_wherever_it_is_no_longer_wanted_and_what_was_read_stays() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let settings = Settings::default();
    let muscles = ["deltoid", "teres minor", "biceps brachii", "supinator", "popliteus", "soleus"];
    let part = |muscle| format!("# The {muscle}\n\nThe {muscle} is supplied by the obturator nerve.\n\n");
    let text: String = muscles.map(part).concat();
    let read_for = |questions: usize, memo: &mut Memo| {
        let left = Cell::new(questions);
        let is_wanted = || left.replace(left.get().saturating_sub(1)) > 0;
        let reading = read_observed(&text, Form::Markdown, &knowledge, &settings, memo, &is_wanted, &mut |_| {});
        (reading, left.get())
    };
    let asked = usize::MAX - read_for(usize::MAX, &mut Memo::default()).1;
    assert!(asked >= 30, "asked {asked} times of 12 blocks and 6 sections");
    let whole = read(&text, Form::Markdown, &knowledge, &settings);
    assert_eq!(whole.findings.len(), 6);
    let mut memo = Memo::default();
    for questions in 0..asked {
        assert!(read_for(questions, &mut memo).0.is_none(), "after {questions} of {asked} questions");
    }
    let again = read_again(&text, Form::Markdown, &knowledge, &settings, &mut memo);
    assert_eq!((again.mentions, again.claims, again.findings), (whole.mentions, whole.claims, whole.findings));
    let found = (memo.mentions.found(), memo.suspects.found(), memo.sections.found());
    assert_eq!(found, (12, 12, 6), "nothing was found twice");
}
