//! What must hold of every misspelled name: a fix removes its finding and adds none, nothing is found where no prose is,
//! and ranges are exact in every position encoding.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::sync::LazyLock;

use fascicle_analysis::lines::{Encoding, LineIndex};
use fascicle_analysis::{Finding, FindingKind, Form, Settings};
use fascicle_analysis::{Knowledge, reading};
use fascicle_tests::course;
use fascicle_tests::slips::{Model, Random};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

static KNOWLEDGE: LazyLock<Knowledge> = LazyLock::new(|| Knowledge::new(fascicle_vocab::built_in()));

/// Names of muscles and nerves that slips are made of.
static NAMES: LazyLock<Vec<String>> = LazyLock::new(|| {
    let entries = KNOWLEDGE.vocabulary.entries().iter();
    let kinds = entries.filter(|entry| matches!(entry.kind.word(), "nerve" | "muscle" | "joint"));
    kinds.map(|entry| entry.name().to_owned()).filter(|name| name.is_ascii()).collect()
});

fn findings(text: &str, form: Form) -> Vec<Finding> {
    let reading = reading::read(text, form, &KNOWLEDGE, &Settings::default());
    let codes = ["misspelled-name", "misspelled-word", "word-order", "incomplete-name"];
    reading.findings.into_iter().filter(|finding| codes.contains(&finding.code)).collect()
}

fn apply(text: &str, finding: &Finding) -> Option<String> {
    let mut edits = finding.fixes.first()?.edits.clone();
    edits.sort_by_key(|edit| edit.span);
    let mut out = text.to_owned();
    for edit in edits.iter().rev() {
        out.replace_range(edit.span.start..edit.span.end, &edit.text);
    }
    Some(out)
}

/// A misspelled name.
fn slip() -> impl Strategy<Value = String> {
    any::<u64>().prop_map(|seed| {
        let mut random = Random::new(seed);
        loop {
            let name = random.of(&NAMES).unwrap().clone();
            let model = *random.of(&Model::ALL).unwrap();
            if let Some(slip) = model.slip(&name, &mut random) {
                return slip;
            }
        }
    })
}

/// Markdown round a name, with marks inside it and letters of more than one byte before it.
fn document() -> impl Strategy<Value = String> {
    let before = prop_oneof![
        Just(""),
        Just("The "),
        Just("# "),
        Just("- e\u{301}tude: the "),
        Just("| a | b |\n| --- | --- |\n| ﬁne 𝛼 "),
        Just("Text with a\u{A0}blank, so\u{AD}ft, and the "),
        Just("> [!NOTE]\n> See **the** "),
        Just("1. **Muscle:** "),
    ];
    let after =
        prop_oneof![Just(""), Just("."), Just(" is shown."), Just(", and the radial nerve"), Just(" and deltoid\n")];
    (before, slip(), after, dress(), 0usize..6)
        .prop_map(|(before, slip, after, dress, at)| format!("{before}{}{after}", dress.on(&slip, at)))
}

/// What a name may have inside it that is none of its letters, or is another form of them.
#[derive(Clone, Copy, Debug)]
enum Dress {
    None,
    Emphasis,
    SoftHyphen,
    HardHyphen,
    HardBlank,
    Ligature,
    CombiningMark,
}

impl Dress {
    /// The name with it at one of its words.
    fn on(self, name: &str, at: usize) -> String {
        let mut words: Vec<String> = name.split(' ').map(str::to_owned).collect();
        let at = at % words.len();
        let word = &mut words[at];
        let middle = word.len() / 2;
        match self {
            Self::None => {}
            Self::Emphasis => *word = format!("*{word}*"),
            Self::SoftHyphen => word.insert(middle, '\u{AD}'),
            Self::Ligature => *word = word.replace("fi", "\u{FB01}").replace("fl", "\u{FB02}"),
            Self::CombiningMark => word.insert(middle, '\u{301}'),
            Self::HardHyphen => return words.join("\u{2011}"),
            Self::HardBlank => return words.join("\u{A0}"),
        }
        words.join(" ")
    }
}

fn dress() -> impl Strategy<Value = Dress> {
    use Dress::{CombiningMark, Emphasis, HardBlank, HardHyphen, Ligature, None, SoftHyphen};
    prop::sample::select(vec![None, Emphasis, SoftHyphen, HardHyphen, HardBlank, Ligature, CombiningMark])
}

/// How many texts are tried; `PROPTEST_CASES` asks for more.
fn cases() -> u32 {
    std::env::var("PROPTEST_CASES").ok().and_then(|number| number.parse().ok()).unwrap_or(96)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: cases(), failure_persistence: None, rng_seed: RngSeed::Fixed(4), ..ProptestConfig::default() })]

    #[test]
    fn a_fix_removes_its_finding_and_adds_none(text in document()) {
        let before = findings(&text, Form::Markdown);
        for finding in &before {
            let Some(mended) = apply(&text, finding) else { continue };
            let after = findings(&mended, Form::Markdown);
            let messages = |list: &[Finding]| list.iter().map(|one| one.message.clone()).collect::<Vec<_>>();
            prop_assert!(after.len() < before.len(), "{text:?} → {mended:?}: {:?} → {:?}", messages(&before), messages(&after));
            prop_assert!(!messages(&after).contains(&finding.message));
        }
    }

    #[test]
    fn ranges_are_exact_in_every_encoding(text in document()) {
        let index = LineIndex::new(&text);
        for finding in findings(&text, Form::Markdown) {
            let spans = finding.fixes.iter().flat_map(|fix| fix.edits.iter().map(|edit| edit.span)).chain([finding.span]);
            for span in spans {
                // Whole words and no more: no letter, mark or soft hyphen of a word is cut off.
                let marked = text.get(span.start..span.end).unwrap_or_default();
                prop_assert!(!marked.is_empty());
                if span == finding.span {
                    prop_assert!(marked.trim() == marked, "{text:?}: {marked:?}");
                    let inside = |c: char| c.is_alphanumeric() || matches!(c, '\u{AD}' | '\u{301}');
                    prop_assert!(!text[..span.start].ends_with(inside), "{text:?}: {marked:?}");
                    prop_assert!(!text[span.end..].starts_with(inside), "{text:?}: {marked:?}");
                }
                for encoding in [Encoding::Utf8, Encoding::Utf16, Encoding::Utf32] {
                    for at in [span.start, span.end] {
                        let place = index.position(at, &text, encoding);
                        prop_assert_eq!(index.offset(place, &text, encoding), at);
                    }
                }
            }
        }
    }

    #[test]
    fn nothing_is_found_where_no_prose_is(slip in slip()) {
        for text in [
            format!("`{slip}`"),
            format!("```\n{slip}\n```"),
            format!("    {slip}"),
            format!("---\ntitle: {slip}\n---\n"),
            format!("[{slip}](there.md)"),
            format!("<https://example.org/{}>", slip.replace(' ', "-")),
            format!("https://example.org/{}", slip.replace(' ', "-")),
            format!("$${slip}$$"),
            format!("<div>\n{slip}\n</div>"),
            format!("<!-- {slip} -->"),
            format!("~~{slip}~~"),
            format!("[@{}]", slip.replace(' ', "_")),
        ] {
            let found = findings(&text, Form::Markdown);
            prop_assert!(found.is_empty(), "{text:?}: {:?}", found.first().map(|one| &one.message));
        }
    }

    #[test]
    fn a_fix_in_captions_leaves_times_alone(slip in slip(), cut in 1usize..4) {
        let words: Vec<&str> = slip.split(' ').collect();
        let cut = cut.min(words.len());
        let (head, tail) = (words[..cut].join(" "), words[cut..].join(" "));
        let text = format!("WEBVTT\n\n1\n00:01.000 --> 00:02.000 align:start\nthe <b>{head}</b>\n\n2\n00:02.000 --> 00:03.000\n{tail} here\n");
        let frame = |text: &str| -> Vec<String> {
            text.lines().filter(|line| line.contains("-->") || line.len() < 2 || line.starts_with('W')).map(str::to_owned).collect()
        };
        for finding in findings(&text, Form::Captions) {
            if let Some(mended) = apply(&text, &finding) {
                prop_assert_eq!(frame(&mended), frame(&text));
            }
        }
    }
}

#[test]
fn no_name_of_the_clean_course_is_marked() {
    let mut told = Vec::new();
    for path in fascicle_tests::markdown_files(&course::clean_folder()).unwrap() {
        let text = course::read(&path).unwrap();
        let reading = reading::read(&text, Form::Markdown, &KNOWLEDGE, &Settings::default());
        let names = reading.findings.into_iter().filter(|finding| finding.kind == FindingKind::Name);
        told.extend(names.map(|finding| format!("{}: {}", path.display(), finding.message)));
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
}
