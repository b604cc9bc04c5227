//! Every relation phrase of the lexicon is read in its example, and no label stands twice.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use fascicle_analysis::lexicon::{LABELS, RELATIONS};
use fascicle_analysis::verdicts::Verdict;
use fascicle_analysis::{Form, Knowledge, Settings, read};

#[test]
fn every_example_is_read() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let mut wrong = Vec::new();
    for relation in RELATIONS {
        let reading = read(relation.example, Form::Markdown, &knowledge, &Settings::default());
        let read: Vec<String> = reading
            .claims
            .iter()
            .map(|(claim, judgement)| format!("{} {}", claim.kind.word(), judgement.verdict.word()))
            .collect();
        let is_read = reading.claims.iter().any(|(claim, _)| claim.kind == relation.kind);
        let is_contradicted = reading.claims.iter().any(|(_, judgement)| judgement.verdict == Verdict::Contradicts);
        if !is_read || is_contradicted {
            wrong.push(format!("{} ({}): {read:?}", relation.example, relation.kind.word()));
        }
    }
    assert!(wrong.is_empty(), "{} of {} examples are not read:\n{}", wrong.len(), RELATIONS.len(), wrong.join("\n"));
}

#[test]
fn no_label_stands_twice() {
    let mut words: Vec<&str> = LABELS.iter().map(|(word, _)| *word).collect();
    words.sort_unstable();
    let twice: Vec<&[&str]> = words.windows(2).filter(|pair| pair[0] == pair[1]).collect();
    assert!(twice.is_empty(), "{twice:?}");
}
