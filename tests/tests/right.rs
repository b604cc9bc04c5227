//! Texts that are true from beginning to end, as lecturers write them: below `tests/right/` no contradiction may be told.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::fmt::Write;

use fascicle_analysis::{Form, Knowledge, Settings, reading};

/// How many files there are at least, so that a folder that is lost does not pass.
const FEWEST: usize = 50;

#[test]
fn right_texts_are_told_nothing_against() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let folder = fascicle_tests::folder().join("right");
    let files = fascicle_tests::markdown_files(&folder).unwrap();
    assert!(files.len() >= FEWEST, "only {} texts in {}", files.len(), folder.display());
    let mut alarms = String::new();
    let mut statements = 0;
    for path in files {
        let text = std::fs::read_to_string(&path).unwrap();
        let reading = reading::read(&text, Form::Markdown, &knowledge, &Settings::default());
        statements += reading.claims.len();
        let told = reading.findings.iter().filter(|finding| {
            let code = finding.code.to_string();
            code.ends_with("-differs") || code.ends_with("-differ")
        });
        for finding in told {
            let line = text.get(..finding.span.start).unwrap_or_default().lines().count();
            let name = path.strip_prefix(&folder).unwrap().display();
            writeln!(alarms, "{name}:{line}: {} {:?}", finding.message, finding.span.of(&text)).unwrap();
        }
    }
    assert!(statements > 1500, "only {statements} statements are read, so that silence tells little");
    assert!(alarms.is_empty(), "\n{alarms}");
}
