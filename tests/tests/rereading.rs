//! A document that is read again after an edit: the same comes out as when it is read for the first time, and little is
//! worked out anew.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use fascicle_analysis::{Form, Knowledge, Memo, Settings, read, read_again};
use fascicle_tests::corpus;
use fascicle_tests::slips::Random;

/// What may be typed: letters, markup that changes how everything below is read, names.
const PIECES: &[&str] = &[
    "x",
    " ",
    "\n",
    "\n\n",
    ".",
    "## ",
    "- ",
    "| ",
    "~~",
    "**",
    "> ",
    "`",
    "```\n",
    "é",
    "not ",
    "radial",
    " nerve",
    "the femoral nerve supplies deltoid. ",
    "\n\n# Ulnar nerve\n\n",
    "Nerve: axillary\n",
    "pollicus ",
];

#[test]
fn an_edit_leaves_what_a_first_reading_would_find() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let settings = Settings::default();
    let documents = corpus::documents("tuned").unwrap();
    let mut random = Random::new(11);
    for document in documents.iter().step_by(9) {
        let form = Form::of_name(&document.name).unwrap_or(Form::Markdown);
        let mut text = document.text.clone();
        let mut memo = Memo::default();
        for step in 0..16 {
            let bound = |text: &str, at: usize| (0..=at).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0);
            let start = bound(&text, random.below(text.len() + 1));
            let taken = if random.below(2) == 0 { 0 } else { random.below(30) };
            let end = bound(&text, (start + taken).min(text.len())).max(start);
            text.replace_range(start..end, PIECES[random.below(PIECES.len())]);
            let again = read_again(&text, form, &knowledge, &settings, &mut memo);
            let first = read(&text, form, &knowledge, &settings);
            let what = format!("{}, step {step}", document.name);
            assert_eq!(again.mentions, first.mentions, "mentions of {what}");
            assert_eq!(again.claims, first.claims, "claims of {what}");
            assert_eq!(again.findings, first.findings, "findings of {what}");
        }
    }
}

#[test]
fn a_sentence_changed_in_a_long_document_has_only_its_section_read() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let settings = Settings::default();
    let mut text = String::new();
    let documents = corpus::documents("tuned").unwrap();
    for document in documents.iter().filter(|document| Form::of_name(&document.name) == Some(Form::Markdown)) {
        text.push_str(&document.text);
        text.push_str("\n\n");
    }
    text.push_str("# The last heading\n\nThe axillary nerve supplies deltoid.\n");
    let mut memo = Memo::default();
    read_again(&text, Form::Markdown, &knowledge, &settings, &mut memo);
    let (blocks, sections) = (memo.mentions.found(), memo.sections.found());
    assert!(blocks > 1_500 && sections > 200, "{blocks} blocks, {sections} sections");

    let at = text.len() / 2;
    let at = at + text[at..].find(". The ").unwrap();
    text.insert_str(at, " too");
    read_again(&text, Form::Markdown, &knowledge, &settings, &mut memo);
    assert_eq!((memo.mentions.found(), memo.suspects.found(), memo.sections.found()), (1, 1, 1));

    text.insert_str(text.rfind("The axillary").unwrap(), "This is new. ");
    read_again(&text, Form::Markdown, &knowledge, &settings, &mut memo);
    assert_eq!((memo.mentions.found(), memo.suspects.found(), memo.sections.found()), (1, 1, 1));
}
