//! Each answer belongs to the version of the document that stood when its request was sent.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use serde_json::{Value, json};
use support::{Server, at, frame, notification, request};

const URI: &str = "file:///order.md";

/// Names of muscles, each of which a version of the document can be told by.
const NAMES: [&str; 6] =
    ["supraspinatus", "infraspinatus", "teres minor", "subscapularis", "coracobrachialis", "brachialis"];

#[test]
fn answers_belong_to_their_versions_though_all_comes_at_once() {
    let mut server = Server::plain();
    server.open(URI, 0, "x\n");
    let mut chunk = Vec::new();
    for (step, name) in (1..).zip(NAMES.iter().cycle().take(300)) {
        let params = json!({
            "textDocument": { "uri": URI, "version": step },
            "contentChanges": [{ "text": format!("{name}\n") }],
        });
        chunk.extend(frame(&notification("textDocument/didChange", &params)));
        chunk.extend(frame(&request(1000 + step, "textDocument/hover", &at(URI, 0, 2))));
    }
    server.write(&chunk);
    for (step, name) in (1..).zip(NAMES.iter().cycle().take(300)) {
        let answer = server.answer(1000 + step);
        let card = answer["result"]["contents"]["value"].as_str().unwrap_or_else(|| panic!("{answer}")).to_lowercase();
        assert!(card.contains(name), "version {step} is of {name}: {card}");
    }
    server.shut_down();
}

#[test]
fn a_request_taken_back_is_answered_as_such() {
    let mut server = Server::plain();
    let text = "The axillary nerve supplies deltoid and teres minor.\n\n".repeat(4000);
    let mut chunk = Vec::new();
    let document = json!({ "uri": URI, "languageId": "markdown", "version": 1, "text": text });
    chunk.extend(frame(&notification("textDocument/didOpen", &json!({ "textDocument": document }))));
    for id in 100..140 {
        chunk.extend(frame(&request(id, "textDocument/hover", &at(URI, 0, 6))));
    }
    for id in 101..140 {
        chunk.extend(frame(&notification("$/cancelRequest", &json!({ "id": id }))));
    }
    server.write(&chunk);
    for id in 101..140 {
        assert_eq!(server.answer(id)["error"]["code"], -32800);
    }
    assert!(server.answer(100)["result"].is_object());
    server.shut_down();
}

#[test]
fn work_on_a_version_that_was_overtaken_is_dropped() {
    let mut server = Server::plain();
    let text = "The axillary nerve supplies deltoid and teres minor.\n\n".repeat(1000);
    let mut chunk = Vec::new();
    let document = json!({ "uri": URI, "languageId": "markdown", "version": 1, "text": text });
    chunk.extend(frame(&notification("textDocument/didOpen", &json!({ "textDocument": document }))));
    let params = json!({ "textDocument": { "uri": URI } });
    for id in 100..120 {
        chunk.extend(frame(&request(id, "textDocument/semanticTokens/full", &params)));
    }
    let change = json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [{ "text": "Deltoid.\n" }] });
    chunk.extend(frame(&notification("textDocument/didChange", &change)));
    chunk.extend(frame(&request(120, "textDocument/semanticTokens/full", &params)));
    server.write(&chunk);
    assert_eq!(server.answer(120)["result"]["data"], json!([0, 0, 7, 3, 0]));
    let dropped = (100..120).filter(|id| server.answer(*id)["error"]["code"] == -32801).count();
    assert!(dropped >= 10, "only {dropped} of 20 were dropped");
    server.shut_down();
}

/// A text that takes long to read: no two of its sections are alike.
fn long() -> String {
    let section =
        |n: usize| format!("## Note {n}\n\nThe axillary nerve supplies deltoid and teres minor, says note {n}.\n\n");
    (0..20_000).map(section).collect()
}

/// Asks how often the open documents were read until it is as wanted.
fn wait_for_readings(server: &mut Server, wanted: impl Fn(u64, u64) -> bool) {
    let until = std::time::Instant::now() + support::PATIENCE;
    loop {
        let readings = server.ask("fascicle/status", &json!({}))["readings"].clone();
        if wanted(readings["begun"].as_u64().unwrap(), readings["givenUp"].as_u64().unwrap()) {
            return;
        }
        assert!(std::time::Instant::now() < until, "{readings}");
    }
}

#[test]
fn reading_a_version_that_is_overtaken_ends_midway() {
    // One client is told of its document, one asks: both have the old version read when the new one comes.
    for (capabilities, is_asked) in [(json!({}), false), (json!({ "textDocument": { "diagnostic": {} } }), true)] {
        let mut server = Server::start("utf-16", capabilities, None);
        server.open(URI, 1, &long());
        let params = json!({ "textDocument": { "uri": URI } });
        let first = is_asked.then(|| server.send("textDocument/diagnostic", &params));
        wait_for_readings(&mut server, |begun, _| begun == 1);
        server.replace(URI, 2, "Deltoid.\n");
        if let Some(first) = first {
            assert_eq!(server.answer(first)["error"]["code"], -32801);
        }
        let tokens = server.ask("textDocument/semanticTokens/full", &params);
        assert_eq!(tokens["data"], json!([0, 0, 7, 3, 0]));
        wait_for_readings(&mut server, |begun, given_up| (begun, given_up) == (2, 1));
        server.shut_down();
    }
}

#[test]
fn reading_for_a_request_that_was_taken_back_ends_midway_but_not_for_who_still_waits() {
    let mut server = Server::start("utf-16", json!({ "textDocument": { "diagnostic": {} } }), None);
    server.open(URI, 1, &long());
    let hover = server.send("textDocument/hover", &at(URI, 2, 6));
    wait_for_readings(&mut server, |begun, _| begun == 1);
    server.notify("$/cancelRequest", &json!({ "id": hover }));
    assert_eq!(server.answer(hover)["error"]["code"], -32800);
    wait_for_readings(&mut server, |_, given_up| given_up == 1);
    // Two wait, one of them no longer: the other gets its answer, though a newer version has come.
    let text: String = long().chars().take(20_000).collect();
    server.replace(URI, 2, &text);
    let [one, other] = [0, 0].map(|_| server.send("textDocument/hover", &at(URI, 2, 6)));
    server.replace(URI, 3, "Deltoid.\n");
    server.notify("$/cancelRequest", &json!({ "id": one }));
    assert_eq!(server.answer(one)["error"]["code"], -32800);
    let card = server.answer(other)["result"]["contents"]["value"].to_string();
    assert!(card.contains("axillary nerve"), "{card}");
    server.shut_down();
}

/// A small generator of numbers, so that a failure can be repeated (`SplitMix64`).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn below(&mut self, limit: usize) -> usize {
        (self.next() % limit.max(1) as u64) as usize
    }
}

/// The line and UTF-16 character of a place in a text of characters, by the protocol's definition and nothing of ours.
fn position(text: &[char], place: usize) -> (u64, u64) {
    let (mut line, mut character) = (0, 0);
    for (at, c) in text[..place].iter().enumerate() {
        let ends_line = *c == '\n' || (*c == '\r' && text.get(at + 1) != Some(&'\n'));
        if ends_line {
            line += 1;
            character = 0;
        } else {
            character += c.len_utf16() as u64;
        }
    }
    (line, character)
}

const PIECES: [&str; 16] = [
    "deltoid ",
    "The axillary nerve ",
    "supplies ",
    "is supplied by the radial nerve",
    ".\n",
    "\r\n\r\n",
    "# Ulnar nerve\n\n",
    "- ",
    "é",
    "𝔹",
    "e\u{301}",
    "C5, C6",
    "| muscle | nerve |\n|---|---|\n| biceps | ",
    "x",
    " and ",
    "musculocutaneus ",
];

/// Completion is the dearest, and so the rarest.
const METHODS: [&str; 11] = [
    "textDocument/typeDefinition",
    "textDocument/prepareCallHierarchy",
    "textDocument/prepareTypeHierarchy",
    "textDocument/hover",
    "textDocument/documentHighlight",
    "textDocument/definition",
    "textDocument/hover",
    "textDocument/prepareRename",
    "textDocument/linkedEditingRange",
    "textDocument/hover",
    "textDocument/completion",
];

#[test]
fn ten_thousand_edits_and_requests_are_answered_as_if_each_text_had_come_at_once() {
    let mut numbers = Numbers(7);
    let mut text: Vec<char> = "# Axillary nerve\n\nIt supplies deltoid.\n".chars().collect();
    let mut server = Server::plain();
    server.open(URI, 0, &text.iter().collect::<String>());
    let mut chunk = Vec::new();
    let mut asked: Vec<(i64, String, &str, Value)> = Vec::new();
    for step in 1..=10_000_i64 {
        if step % 4 == 0 {
            let (line, character) = position(&text, numbers.below(text.len() + 1));
            let method = METHODS[numbers.below(METHODS.len())];
            let params = at(URI, line, character);
            chunk.extend(frame(&request(10_000 + step, method, &params)));
            asked.push((10_000 + step, text.iter().collect(), method, params));
        } else {
            let start = numbers.below(text.len() + 1);
            let longest = if text.len() > 240 { 160 } else { 12 };
            let mut end = (start + numbers.below(longest)).min(text.len());
            let mut start = start;
            // An edit never begins or ends between the two characters of one line end.
            let splits = |at: usize| at > 0 && at < text.len() && text[at - 1] == '\r' && text[at] == '\n';
            start -= usize::from(splits(start));
            end += usize::from(splits(end));
            let piece = PIECES[numbers.below(PIECES.len())];
            let ((from_line, from), (to_line, to)) = (position(&text, start), position(&text, end));
            let change = json!({
                "range": {
                    "start": { "line": from_line, "character": from },
                    "end": { "line": to_line, "character": to },
                },
                "text": piece,
            });
            text.splice(start..end, piece.chars());
            let params = json!({ "textDocument": { "uri": URI, "version": step }, "contentChanges": [change] });
            chunk.extend(frame(&notification("textDocument/didChange", &params)));
        }
        if chunk.len() > 60_000 {
            server.write(&chunk);
            chunk.clear();
        }
    }
    server.write(&chunk);
    let mut fresh = Server::plain();
    for (id, text, method, params) in &asked {
        fresh.open(URI, 0, text);
        let expected = fresh.ask(method, params);
        let answer = server.answer(*id);
        assert_eq!(answer["result"], expected, "{method} {params} in {text:?}");
    }
    let last: String = text.iter().collect();
    fresh.open(URI, 0, &last);
    let list = |server: &mut Server, version: i64| {
        let is_it =
            |said: &Value| said["method"] == "textDocument/publishDiagnostics" && said["params"]["version"] == version;
        server.listen(std::time::Duration::from_secs(1));
        server.said.iter().rev().find(|said| is_it(said)).map(|said| said["params"]["diagnostics"].clone())
    };
    assert_eq!(list(&mut server, 9_999), list(&mut fresh, 0), "the findings of the last version");
    server.shut_down();
    fresh.shut_down();
}
