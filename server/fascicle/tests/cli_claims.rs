//! `fascicle claims`: what was read, what the graph says of it, and what was not read.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cli;

use cli::{Desk, NOTE, snapshot};
use serde_json::json;

#[test]
fn an_author_sees_what_was_read_and_what_was_not() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    let ran = desk.run(&["claims", "arm.md"]);
    assert_eq!((ran.status, &*ran.err), (0, ""));
    snapshot("claims.txt", &ran.out);
}

#[test]
fn the_json_has_every_part_with_its_place() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    let report = desk.run(&["claims", "arm.md", "--format", "json"]).json();
    assert_eq!(report["version"], 1);
    let file = &report["files"][0];
    assert_eq!(file["path"], "arm.md");
    let claims = file["claims"].as_array().unwrap();
    let told: Vec<(&str, &str)> =
        claims.iter().map(|claim| (claim["kind"].as_str().unwrap(), claim["verdict"].as_str().unwrap())).collect();
    assert!(told.contains(&("supply", "contradicts")) && told.contains(&("supply", "agrees")), "{told:?}");
    assert!(told.contains(&("roots", "agrees")), "{told:?}");
    let false_one = claims.iter().find(|claim| claim["verdict"] == "contradicts").unwrap();
    assert!(!false_one["why"].as_str().unwrap().is_empty());
    for part in false_one["parts"].as_array().unwrap() {
        let (start, end) = (part["bytes"][0].as_u64().unwrap(), part["bytes"][1].as_u64().unwrap());
        let written = &NOTE[usize::try_from(start).unwrap()..usize::try_from(end).unwrap()];
        let id = part["id"].as_str().unwrap();
        assert_eq!(written.replace(' ', "-"), id, "{part}");
    }
    let roots = claims.iter().find(|claim| claim["kind"] == "roots").unwrap();
    let segments = roots["parts"].as_array().unwrap().iter().find(|part| part["role"] == "segments").unwrap();
    assert_eq!(segments["id"], "C5 C6");
    assert!(file["sentences"]["with_names"].as_u64().unwrap() >= file["sentences"]["read"].as_u64().unwrap());
}

#[test]
fn what_cannot_be_read_is_told() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    desk.write("bad.md", b"\xFF");
    let ran = desk.run(&["claims", ".", "gone.md", "--format", "json"]);
    assert_eq!(ran.status, 2);
    assert_eq!(ran.err.lines().count(), 2, "{}", ran.err);
    assert_eq!(ran.json()["files"].as_array().unwrap().len(), 1);
    let empty = desk.run_with(&["claims", "-", "--format", "json"], b"");
    assert_eq!(empty.json()["files"][0]["claims"], json!([]));
}
