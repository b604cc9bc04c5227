//! The demo course: every planted error is found with the right fix offered, and nothing is found in its clean twin.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use fascicle_analysis::{Finding, Form, Settings};
use fascicle_analysis::{Knowledge, reading};
use fascicle_tests::course::{self, Planted};

#[test]
fn put_right_the_course_is_its_clean_twin() {
    let planted = course::planted().unwrap();
    for path in fascicle_tests::markdown_files(&course::clean_folder()).unwrap() {
        let name = path.strip_prefix(course::clean_folder()).unwrap();
        let mut text = course::read(&course::folder().join(name)).unwrap();
        for error in planted.iter().filter(|error| error.file == name) {
            let (start, end) = error.span(&text).unwrap();
            text.replace_range(start..end, &error.right);
        }
        assert_eq!(text, course::read(&path).unwrap(), "{}", name.display());
    }
}

#[test]
fn nothing_is_found_in_the_clean_twin() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let mut found = Vec::new();
    for path in fascicle_tests::markdown_files(&course::clean_folder()).unwrap() {
        let text = course::read(&path).unwrap();
        for finding in findings(&text, &knowledge) {
            found.push(format!("{}: {}", path.file_name().unwrap().display(), show(&finding, &text)));
        }
    }
    assert!(found.is_empty(), "{} findings:\n{}", found.len(), found.join("\n"));
}

#[test]
fn every_planted_error_is_found_with_the_right_fix() {
    let knowledge = Knowledge::new(fascicle_vocab::built_in());
    let planted = course::planted().unwrap();
    let mut wrong = Vec::new();
    for path in fascicle_tests::markdown_files(&course::folder()).unwrap() {
        let name = path.strip_prefix(course::folder()).unwrap();
        let text = course::read(&path).unwrap();
        let mut found = findings(&text, &knowledge);
        for error in planted.iter().filter(|error| error.file == name) {
            let (start, end) = error.span(&text).unwrap();
            let here: Vec<Finding> =
                found.extract_if(.., |finding| finding.span.start < end && start < finding.span.end).collect();
            let told = here.iter().any(|finding| finding.kind.word() == error.kind && offers(finding, error, &text));
            if !told || here.len() != 1 {
                let here: Vec<String> = here.iter().map(|finding| show(finding, &text)).collect();
                wrong.push(format!(
                    "{}: {:?} for {:?}: [{}]",
                    name.display(),
                    error.text,
                    error.right,
                    here.join("; ")
                ));
            }
        }
        wrong.extend(found.iter().map(|finding| format!("{}: not planted: {}", name.display(), show(finding, &text))));
    }
    assert!(wrong.is_empty(), "{} of {}:\n{}", wrong.len(), planted.len(), wrong.join("\n"));
}

fn findings(text: &str, knowledge: &Knowledge) -> Vec<Finding> {
    reading::read(text, Form::Markdown, knowledge, &Settings::default()).findings
}

/// Whether one of the fixes makes the text right. Articles inside a name do not count: `of the forearm`, `of forearm`.
fn offers(finding: &Finding, error: &Planted, text: &str) -> bool {
    let plain = |text: &str| text.replace("the ", "");
    let (start, end) = error.span(text).unwrap();
    let mut right = text.to_owned();
    right.replace_range(start..end, &error.right);
    finding.fixes.iter().any(|fix| {
        let mut edits = fix.edits.clone();
        edits.sort_by_key(|edit| std::cmp::Reverse(edit.span));
        let mut fixed = text.to_owned();
        for edit in edits {
            fixed.replace_range(edit.span.start..edit.span.end, &edit.text);
        }
        plain(&fixed) == plain(&right)
    })
}

fn show(finding: &Finding, text: &str) -> String {
    let fixes: Vec<&str> = finding.fixes.iter().map(|fix| fix.title.as_str()).collect();
    format!("{} {:?} {} fixes {fixes:?}", finding.code, finding.span.of(text), finding.message)
}
