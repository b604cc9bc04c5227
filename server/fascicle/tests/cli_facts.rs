//! `fascicle facts`: cards for any name, and the whole vocabulary for programs.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cli;

use std::collections::HashSet;

use cli::{Desk, Ran, snapshot};

fn facts(arguments: &[&str]) -> Ran {
    Desk::new().run(&[&["facts"], arguments].concat())
}

#[test]
fn a_card_in_the_terminal() {
    let ran = facts(&["teres", "minor"]);
    assert_eq!((ran.status, &*ran.err), (0, ""));
    // The facts themselves grow; the form of the card is what is held here.
    let lines: Vec<&str> = ran.out.lines().collect();
    assert_eq!(lines[..2], ["teres minor · muscle, shoulder", "musculus teres minor"]);
    let headings: Vec<&&str> = lines.iter().filter(|line| !line.is_empty() && !line.starts_with(' ')).collect();
    let expected = ["Nerve", "Segments", "Attachments", "Actions by joint", "Compartment or group"];
    assert_eq!(headings.iter().filter(|line| expected.contains(**line)).count(), expected.len(), "{}", ran.out);
    for said in [
        "  axillary nerve\n      C5, C6 → upper trunk → posterior division of upper trunk → posterior cord → axillary nerve\n",
        "\n  Insertion: greater tubercle of humerus",
        "\n  glenohumeral joint: lateral rotation",
        "\n  rotator cuff\n",
        "\nSources: from memory; Henry Gray and others 1918",
    ] {
        assert!(ran.out.contains(said), "{said}: {}", ran.out);
    }
    assert!(lines.iter().all(|line| line.chars().count() <= 100));
}

#[test]
fn a_table_and_a_tree() {
    let ran = facts(&["axillary nerve", "--format", "table"]);
    snapshot("table.md", &ran.out);
    let tree = facts(&["axillary nerve", "--format", "tree"]).out;
    assert!(tree.contains("├─") && tree.contains("teres minor"), "{tree}");
    assert_eq!(facts(&["knee joint", "--format", "table"]).status, 2);
}

#[test]
fn any_name_finds_its_structure() {
    for (written, first_line, title) in [
        ("deltoid", "deltoid · muscle", "deltoid"),
        ("The Deltoid Muscle", "deltoid · muscle", "deltoid"),
        ("axillary-nerve", "axillary nerve · nerve", "axillary nerve"),
        ("nervus axillaris", "“nervus axillaris” is the Latin name of axillary nerve.", "axillary nerve"),
        ("ECRL", "“ECRL” is an abbreviation of extensor carpi radialis longus.", "extensor carpi radialis longus"),
        ("circumflex nerve", "“circumflex nerve” is a former name of axillary nerve.", "axillary nerve"),
        ("deltiod", "Nothing is called “deltiod”; taken for “deltoid”.", "deltoid"),
        ("sternoclidomastoid", "Nothing is called “sternoclidomastoid”; taken for", "sternocleidomastoid"),
        ("c6", "C6 · spinal segment", "C6"),
        ("flexion", "flexion · movement", "flexion"),
    ] {
        let ran = facts(&[written]);
        assert_eq!(ran.status, 0, "{written}: {}", ran.err);
        assert!(ran.out.starts_with(first_line), "{written}: {}", ran.out);
        assert!(ran.out.lines().any(|line| line.starts_with(&format!("{title} · "))), "{written}: {}", ran.out);
    }
}

#[test]
fn words_are_one_name_or_several() {
    let one = facts(&["extensor", "carpi", "radialis", "longus"]).out;
    assert!(one.starts_with("extensor carpi radialis longus · "), "{one}");
    let two = facts(&["deltoid", "axillary nerve"]).out;
    assert!(two.starts_with("deltoid · ") && two.contains("\naxillary nerve · "), "{two}");
    let misspelled = facts(&["extensor", "carpi", "radialus", "longus"]).out;
    assert!(misspelled.contains("taken for “extensor carpi radialis longus”"), "{misspelled}");
}

#[test]
fn an_ambiguous_name_shows_all_that_it_can_mean() {
    let ran = facts(&["long", "head"]);
    assert!(ran.out.starts_with("“long head” is a name of"), "{}", ran.out);
    assert!(ran.out.contains("biceps brachii") && ran.out.contains("triceps brachii"), "{}", ran.out);
    let report = facts(&["long head", "--format", "json"]).json();
    assert!(report["entries"].as_array().unwrap().len() >= 2);
}

#[test]
fn what_nothing_is_called_is_told_and_the_rest_is_shown() {
    let ran = facts(&["blorptangle", "deltoid"]);
    assert_eq!(ran.status, 2);
    assert_eq!(ran.err, "fascicle: nothing is called “blorptangle”, or nearly so\n");
    assert!(ran.out.starts_with("deltoid · "), "{}", ran.out);
}

#[test]
fn the_whole_vocabulary_hangs_together() {
    let dump = facts(&["--format", "json"]).json();
    let list = |key: &str| dump[key].as_array().unwrap().clone();
    let ids: HashSet<String> = list("entries").iter().map(|entry| entry["id"].as_str().unwrap().to_owned()).collect();
    let sources: HashSet<String> = list("sources").iter().map(|work| work["id"].as_str().unwrap().to_owned()).collect();
    assert_eq!(ids.len(), list("entries").len(), "identifiers are unique");
    assert!(list("edges").len() > 5000, "{}", list("edges").len());
    let says_itself = ["roots", "carries", "modality", "sign", "joint-kind", "reflex", "count", "limits"];
    for edge in list("edges") {
        assert!(ids.contains(edge["from"].as_str().unwrap()), "{edge}");
        let (word, to) = (edge["edge"].as_str().unwrap(), edge["to"].as_str().unwrap());
        assert!(!to.is_empty() || word == "roots", "{edge}");
        assert!(ids.contains(to) || says_itself.contains(&word), "{edge}");
        for source in edge["sources"].as_array().unwrap() {
            let source = source.as_str().unwrap().split(':').next().unwrap();
            assert!(sources.contains(source), "{edge}");
        }
        assert!(!edge["sources"].as_array().unwrap().is_empty(), "{edge}");
    }
    let summary = facts(&[]).out;
    assert!(summary.starts_with(&format!("{} structures, {} facts", ids.len(), list("edges").len())), "{summary}");
}

#[test]
fn one_card_as_json() {
    let report = facts(&["deltoid", "--format", "json"]).json();
    assert_eq!(report["entries"][0]["id"], "deltoid");
    let edges = report["edges"].as_array().unwrap();
    let has = |edge: &str, to: &str| {
        edges.iter().any(|one| one["from"] == "deltoid" && one["edge"] == edge && one["to"] == to)
    };
    assert!(has("supplied-by", "axillary-nerve") && has("roots", "C5 C6") && has("acts", "glenohumeral-joint"));
    assert!(edges.iter().any(|edge| edge["edge"] == "supplies" && edge["to"] == "deltoid"));
    let misspelled = facts(&["deltiod", "--format", "json"]).json();
    assert_eq!(misspelled["asked"][0]["taken_for"], "deltoid");
}

#[test]
fn the_vocabulary_is_checked_and_weighed() {
    let ran = facts(&["--verify"]);
    assert_eq!(ran.status, 0, "{}", ran.out);
    assert!(ran.out.starts_with("0 problems in"), "{}", ran.out);
    let ran = facts(&["--audit"]);
    assert_eq!(ran.status, 0);
    assert!(ran.out.contains("from memory alone"), "{}", ran.out);
}
