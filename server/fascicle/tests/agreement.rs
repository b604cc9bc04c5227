//! One text, one answer: what is pushed, what is pulled for a document, what is pulled for the course and what the command
//! line says are the same findings; and every feature answers the same in all three encodings of positions.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use support::{Folder, Server};

/// How long findings may take to become those of the whole course.
const PATIENCE: Duration = Duration::from_secs(90);

/// Findings of each document: code, line and column of both ends.
type Findings = BTreeMap<String, Vec<(String, [u64; 4])>>;

/// The demo course and the fixtures, with characters of one to four bytes among them.
fn documents() -> Vec<(String, String)> {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests");
    let mut list = Vec::new();
    let mut folders = vec![tests.join("course"), tests.join("fixtures/claims")];
    while let Some(folder) = folders.pop() {
        for path in fs::read_dir(folder).unwrap().map(|item| item.unwrap().path()) {
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "md") {
                let text = fs::read_to_string(&path).unwrap().replace(". ", ". “é𝔹” – ");
                list.push((path.file_name().unwrap().to_str().unwrap().to_owned(), text));
            }
        }
    }
    // What no document says by itself.
    list.push(("told-one-way.md".to_owned(), "é𝔹: the nerve roots of the teres minor are C5 and C6.\n".to_owned()));
    list.push(("told-the-other.md".to_owned(), "**Teres minor**: C5\n".to_owned()));
    list.push(("called-one-way.md".to_owned(), "The nerve of Bell and its fibers.\n".to_owned()));
    list.push(("called-the-other.md".to_owned(), "The long thoracic nerve. Grey fibres.\n".to_owned()));
    list.sort();
    list
}

/// The line and column of a byte, by the protocol's definition and nothing of ours.
fn position(text: &str, byte: usize, encoding: &str) -> (u64, u64) {
    let before: Vec<char> = text[..byte].chars().collect();
    let after = text[byte..].chars().next();
    let (mut line, mut column) = (0, 0);
    for (at, c) in before.iter().enumerate() {
        let next = before.get(at + 1).copied().or(after);
        if *c == '\n' || (*c == '\r' && next != Some('\n')) {
            (line, column) = (line + 1, 0);
        } else {
            column += match encoding {
                "utf-8" => c.len_utf8(),
                "utf-16" => c.len_utf16(),
                _ => 1,
            } as u64;
        }
    }
    (line, column)
}

/// The character of the text at a position, the way back.
fn character(text: &str, line: u64, column: u64, encoding: &str) -> usize {
    let start = text.split_inclusive('\n').take(usize::try_from(line).unwrap()).map(|line| line.chars().count()).sum();
    let mut units = 0;
    let mut at = start;
    for c in text.chars().skip(start) {
        if units >= column || c == '\n' {
            break;
        }
        units += match encoding {
            "utf-8" => c.len_utf8(),
            "utf-16" => c.len_utf16(),
            _ => 1,
        } as u64;
        at += 1;
    }
    assert!(units == column || line > 999_999, "{line}:{column} is within a character in {encoding}");
    at
}

/// What the command line says.
fn command_line(folder: &Folder, documents: &[(String, String)], encoding: &str) -> Findings {
    let run = Command::new(env!("CARGO_BIN_EXE_fascicle"))
        .args(["check", ".", "--format", "json"])
        .current_dir(&folder.0)
        .output()
        .unwrap();
    let report: Value = serde_json::from_slice(&run.stdout).unwrap();
    let mut all = Findings::new();
    for file in report["files"].as_array().unwrap() {
        let name = file["path"].as_str().unwrap().trim_start_matches("./");
        let text = &documents.iter().find(|(known, _)| known == name).unwrap().1;
        let finding = |finding: &Value| {
            let end =
                |at: usize| position(text, usize::try_from(finding["bytes"][at].as_u64().unwrap()).unwrap(), encoding);
            let ((from_line, from), (to_line, to)) = (end(0), end(1));
            (finding["code"].as_str().unwrap().to_owned(), [from_line, from, to_line, to])
        };
        let mut list: Vec<_> = file["findings"].as_array().unwrap().iter().map(finding).collect();
        list.sort();
        all.insert(name.to_owned(), list);
    }
    all
}

/// What the server says.
fn of_server(list: &Value) -> Vec<(String, [u64; 4])> {
    let number = |value: &Value| value.as_u64().unwrap();
    let finding = |one: &Value| {
        let (start, end) = (&one["range"]["start"], &one["range"]["end"]);
        let range =
            [number(&start["line"]), number(&start["character"]), number(&end["line"]), number(&end["character"])];
        (one["code"].as_str().unwrap().to_owned(), range)
    };
    let mut list: Vec<_> = list.as_array().unwrap().iter().map(finding).collect();
    list.sort();
    list
}

fn name_of(uri: &Value) -> String {
    uri.as_str().unwrap().rsplit('/').next().unwrap().to_owned()
}

/// Asks until the answer is as expected, for what the course says as a whole is known a little later.
fn until_same(expected: &Findings, what: &str, mut ask: impl FnMut() -> Findings) {
    let until = Instant::now() + PATIENCE;
    loop {
        let found = ask();
        if found == *expected {
            return;
        }
        if Instant::now() > until {
            for (name, list) in expected {
                assert_eq!(found.get(name), Some(list), "{what}: {name}");
            }
            assert_eq!(found, *expected, "{what}");
        }
        std::thread::sleep(Duration::from_millis(100));
    }
}

#[test]
fn pushed_pulled_and_printed_findings_are_the_same() {
    let documents = documents();
    let files: Vec<(&str, &str)> = documents.iter().map(|(name, text)| (&**name, &**text)).collect();
    let folder = Folder::new("agree", &files);
    folder.write("fascicle.toml", ""); // one course, whose documents call things alike
    for encoding in ["utf-8", "utf-16", "utf-32"] {
        let expected = command_line(&folder, &documents, encoding);
        let all: usize = expected.values().map(Vec::len).sum();
        let is_different = |(code, _): &(String, [u64; 4])| code == "told-differently";
        assert!(all > 50 && expected.values().flatten().any(is_different), "{all} findings");
        assert!(expected["called-one-way.md"].iter().any(|(code, _)| code == "eponym"), "{expected:?}");

        let mut server = Server::start(encoding, json!({}), Some(&folder.uri("")));
        for (name, text) in &documents {
            server.open(&folder.uri(name), 1, text);
        }
        let mut pushed = Findings::new();
        until_same(&expected, "pushed", || {
            server.listen(Duration::from_millis(100));
            for said in server.said.drain(..).filter(|said| said["method"] == "textDocument/publishDiagnostics") {
                pushed.insert(name_of(&said["params"]["uri"]), of_server(&said["params"]["diagnostics"]));
            }
            pushed.clone()
        });
        server.shut_down();

        let pull = json!({ "textDocument": { "diagnostic": {} } });
        let mut server = Server::start(encoding, pull.clone(), Some(&folder.uri("")));
        for (name, text) in &documents {
            server.open(&folder.uri(name), 1, text);
        }
        until_same(&expected, "pulled for a document", || {
            let ask = |(name, _): &(String, String)| {
                let params = json!({ "textDocument": { "uri": folder.uri(name) } });
                (name.clone(), of_server(&server.ask("textDocument/diagnostic", &params)["items"]))
            };
            documents.iter().map(ask).collect()
        });
        server.shut_down();

        let mut server = Server::start(encoding, pull, Some(&folder.uri("")));
        until_same(&expected, "pulled for the course", || {
            let status = server.ask("fascicle/status", &Value::Null);
            if status["folders"][0]["indexed"] != true {
                return Findings::new();
            }
            let report = server.ask("workspace/diagnostic", &json!({ "previousResultIds": [] }));
            let items = report["items"].as_array().unwrap();
            items.iter().map(|item| (name_of(&item["uri"]), of_server(&item["items"]))).collect()
        });
        server.shut_down();
    }
}

/// An answer with every position as the character of the text that it stands for.
fn without_encoding(answer: &Value, text: &str, encoding: &str) -> Value {
    match answer {
        Value::Object(object) => {
            if let (Some(line), Some(column)) = (object.get("line"), object.get("character")) {
                return json!(character(text, line.as_u64().unwrap(), column.as_u64().unwrap(), encoding));
            }
            object.iter().map(|(key, value)| (key.clone(), without_encoding(value, text, encoding))).collect()
        }
        Value::Array(list) => list.iter().map(|value| without_encoding(value, text, encoding)).collect(),
        other => other.clone(),
    }
}

/// Semantic tokens as characters of the text.
fn tokens_without_encoding(answer: &Value, text: &str, encoding: &str) -> Value {
    let numbers: Vec<u64> = answer["data"].as_array().unwrap().iter().map(|number| number.as_u64().unwrap()).collect();
    let (mut line, mut column) = (0, 0);
    let mut list = Vec::new();
    for token in numbers.chunks(5) {
        column = if token[0] == 0 { column + token[1] } else { token[1] };
        line += token[0];
        let at = character(text, line, column, encoding);
        list.push(json!([at, character(text, line, column + token[2], encoding), token[3], token[4]]));
    }
    Value::Array(list)
}

#[test]
fn every_feature_answers_the_same_in_every_encoding() {
    let uri = "untitled:wide.md";
    let (_, text) = documents().into_iter().find(|(name, _)| name == "03-hand.md").unwrap();
    let text = &*text;
    let places: Vec<usize> = text.match_indices(['a', 'é', '𝔹', '|', '#']).map(|(at, _)| at).step_by(7).collect();
    assert!(places.len() > 20);
    let mut answers: Vec<Vec<(String, Value)>> = Vec::new();
    for encoding in ["utf-8", "utf-16", "utf-32"] {
        let capabilities =
            json!({ "textDocument": { "documentSymbol": { "hierarchicalDocumentSymbolSupport": true } } });
        let mut server = Server::start(encoding, capabilities, None);
        server.notify("workspace/didChangeConfiguration", &json!({ "settings": { "fascicle": { "segments": true } } }));
        server.listen(Duration::from_millis(500));
        server.open(uri, 1, text);
        let mut own = Vec::new();
        let document = json!({ "uri": uri });
        let (last, _) = position(text, text.len(), encoding);
        let whole = json!({ "start": { "line": 0, "character": 0 }, "end": { "line": last, "character": 0 } });
        for (method, params) in [
            ("documentSymbol", json!({ "textDocument": document })),
            ("documentLink", json!({ "textDocument": document })),
            ("codeLens", json!({ "textDocument": document })),
            ("inlayHint", json!({ "textDocument": document, "range": whole })),
            ("codeAction", json!({ "textDocument": document, "range": whole, "context": { "diagnostics": [] } })),
            ("diagnostic", json!({ "textDocument": document })),
        ] {
            let mut answer = server.ask(&format!("textDocument/{method}"), &params);
            if method == "diagnostic" {
                answer["resultId"] = Value::Null;
            }
            own.push((method.to_owned(), without_encoding(&answer, text, encoding)));
        }
        let folds = server.ask("textDocument/foldingRange", &json!({ "textDocument": document }));
        own.push(("foldingRange".to_owned(), folds));
        let tokens = server.ask("textDocument/semanticTokens/full", &json!({ "textDocument": document }));
        own.push(("semanticTokens".to_owned(), tokens_without_encoding(&tokens, text, encoding)));
        for place in &places {
            let (line, column) = position(text, *place, encoding);
            let at = json!({ "line": line, "character": column });
            for method in [
                "hover",
                "completion",
                "documentHighlight",
                "references",
                "prepareRename",
                "linkedEditingRange",
                "selectionRange",
            ] {
                let mut params = json!({ "textDocument": document, "position": at, "positions": [at] });
                if method == "references" {
                    params["context"] = json!({ "includeDeclaration": false });
                }
                let answer = server.ask(&format!("textDocument/{method}"), &params);
                own.push((format!("{method} at {place}"), without_encoding(&answer, text, encoding)));
            }
        }
        answers.push(own);
        server.shut_down();
    }
    let is_empty = |answer: &Value| answer.is_null() || answer.as_array().is_some_and(Vec::is_empty);
    let said = answers[0].iter().filter(|(_, answer)| !is_empty(answer)).count();
    assert!(said > 80, "only {said} of {} answers say something", answers[0].len());
    for other in &answers[1..] {
        for ((what, one), (_, other)) in answers[0].iter().zip(other) {
            assert_eq!(one, other, "{what}");
        }
    }
}
