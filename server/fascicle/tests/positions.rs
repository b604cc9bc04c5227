//! Positions in the three encodings, good and bad.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use serde_json::{Value, json};
use support::{Server, at};

const URI: &str = "file:///positions.md";

#[test]
fn ranges_are_counted_in_the_agreed_encoding() {
    // Before the name stand one character of two bytes, one of four, and a line separator that is no line end.
    let text = "a\r\né𝔹\u{2028} deltoid\n";
    for (encoding, start) in [("utf-8", 10), ("utf-16", 5), ("utf-32", 4)] {
        let mut server = Server::start(encoding, json!({}), None);
        server.open(URI, 1, text);
        let hover = server.ask("textDocument/hover", &at(URI, 1, start + 2));
        let expected = json!({
            "start": { "line": 1, "character": start },
            "end": { "line": 1, "character": start + 7 },
        });
        assert_eq!(hover["range"], expected, "{encoding}");
        server.shut_down();
    }
}

#[test]
fn the_cheapest_encoding_is_taken_and_utf_16_without_an_offer() {
    for (offered, taken) in [
        (json!(["utf-16", "utf-8"]), "utf-8"),
        (json!(["utf-16", "utf-32"]), "utf-32"),
        (json!(["utf-7"]), "utf-16"),
        (Value::Null, "utf-16"),
    ] {
        let mut server = Server::spawn();
        let general = json!({ "positionEncodings": offered });
        let capabilities = if offered.is_null() { json!({}) } else { json!({ "general": general }) };
        let answer = server.ask("initialize", &json!({ "capabilities": capabilities }));
        assert_eq!(answer["capabilities"]["positionEncoding"], taken);
    }
}

#[test]
fn edits_are_counted_in_the_agreed_encoding() {
    for (encoding, at_b) in [("utf-8", 6), ("utf-16", 3), ("utf-32", 2)] {
        let mut server = Server::start(encoding, json!({}), None);
        server.open(URI, 1, "é𝔹\n");
        let place = json!({ "line": 0, "character": at_b });
        let change = json!({ "range": { "start": place, "end": place }, "text": " deltoid" });
        let params = json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [change] });
        server.notify("textDocument/didChange", &params);
        let hover = server.ask("textDocument/hover", &at(URI, 0, at_b + 3));
        assert_eq!(hover["range"]["start"]["character"], at_b + 1, "{encoding}");
        server.shut_down();
    }
}

#[test]
fn bad_positions_mean_the_nearest_good_one() {
    let mut server = Server::plain();
    server.open(URI, 1, "𝔹\ndeltoid");
    for (line, character) in [(0, 1), (0, 4_000_000_000_u64), (4_000_000_000, 0), (4_000_000_000, 4_000_000_000)] {
        let id = server.send("textDocument/hover", &at(URI, line, character));
        assert!(server.answer(id)["error"].is_null(), "{line}:{character}");
    }
    // Past the end is the end, and the name ends there.
    assert!(!server.ask("textDocument/hover", &at(URI, 99, 0)).is_null());
    let place = |line: u64, character: u64| json!({ "line": line, "character": character });
    let change = json!({ "range": { "start": place(1, 70), "end": place(80, 1) }, "text": " and biceps" });
    let params = json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [change] });
    server.notify("textDocument/didChange", &params);
    assert!(!server.ask("textDocument/hover", &at(URI, 1, 14)).is_null());
    server.shut_down();
}
