//! The stages of a reading are told of as they end.

use fascicle_analysis::{Form, Knowledge, Memo, Settings, Stage, read, read_observed};

#[test]
fn every_stage_is_told_of_in_its_order() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let text = "# Shoulder\n\nThe axillary nerve supplies the deltoid.\n\n## Teres minor\n\n- nerve: axillary nerve\n";
    let mut told = Vec::new();
    let settings = Settings::default();
    let mut memo = Memo::default();
    let reading = read_observed(text, Form::Markdown, &knowledge, &settings, &mut memo, &mut |stage| told.push(stage));
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
