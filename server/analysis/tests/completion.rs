//! Typed: of every name of a nerve or muscle in the clean course, its first four letters are typed where the name stands,
//! and what completion offers first is compared with the name. The report `typed-report` does the same for many more texts.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::cast_precision_loss)]

use std::fs;
use std::path::{Path, PathBuf};

use fascicle_analysis::features::completion::{self, Draft, Names};
use fascicle_analysis::features::places;
use fascicle_analysis::{Form, Knowledge, Settings};
use fascicle_vocab::{Kind, Standing};

fn documents(folder: &Path) -> Vec<PathBuf> {
    let mut list = Vec::new();
    for path in fs::read_dir(folder).unwrap().map(|item| item.unwrap().path()) {
        if path.is_dir() {
            list.extend(documents(&path));
        } else if path.extension().is_some_and(|extension| extension == "md") {
            list.push(path);
        }
    }
    list.sort();
    list
}

#[test]
fn four_letters_bring_the_right_name_first() {
    let vocabulary = fascicle_vocab::built_in();
    let names = Names::new(&vocabulary);
    let knowledge = Knowledge::new(vocabulary);
    let course = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/course-clean");
    let (mut right, mut among, mut all) = (0, 0, 0);
    let mut wrong = Vec::new();
    for path in documents(&course) {
        let text = fs::read_to_string(&path).unwrap();
        let reading = fascicle_analysis::read(&text, Form::Markdown, &knowledge, &Settings::default());
        for place in places::all(&reading) {
            let written = place.span.of(&text);
            let [entry] = *place.entries else { continue };
            let is_plain = place.editable && !place.shared && !place.plural && place.standing != Standing::Abbreviation;
            if !is_plain || written.len() < 6 || !matches!(knowledge.vocabulary.kind(entry), Kind::Nerve | Kind::Muscle)
            {
                continue;
            }
            let typed = written.char_indices().nth(4).map_or(written.len(), |(at, _)| at);
            let at = place.span.start + typed;
            let partial = format!("{}{}", &text[..at], &text[place.span.end..]);
            let now = fascicle_analysis::read(&partial, Form::Markdown, &knowledge, &Settings::default());
            let (text, form, settings) = (&*partial, Form::Markdown, &Settings::default());
            let draft = Draft { text, form, reading: &now, knowledge: &knowledge, names: &names, settings };
            let found = completion::complete(&draft, at);
            all += 1;
            among += i32::from(found.items.iter().take(5).any(|item| item.entry == Some(entry)));
            match found.items.first() {
                Some(item) if item.entry == Some(entry) => right += 1,
                other => wrong.push(format!("{written}: {:?}", other.map(|item| &item.text))),
            }
        }
    }
    let share = f64::from(right) / f64::from(all);
    println!("{wrong:#?}");
    println!("{right} of {all} ({:.1} %) come first after four letters, {among} among the first five", share * 100.0);
    assert!(all > 50, "the course names more than that: {all}");
    assert!(share >= FLOOR, "{share:.3} right; wrong: {wrong:#?}");
}

/// What was reached is 0.86; it must not get worse. Where two names of a section begin with the same word (*pronator teres*,
/// *pronator quadratus*), four letters cannot tell them apart.
const FLOOR: f64 = 0.8;
