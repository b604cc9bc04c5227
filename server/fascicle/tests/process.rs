//! How the server's process begins and ends, and what it makes of bad input.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::time::{Duration, Instant};

use serde_json::{Value, json};
use support::{Server, at, frame};

/// How long the process may take to end.
const SOON: Duration = Duration::from_secs(3);

#[test]
fn exit_after_shutdown_ends_with_0_though_input_stays_open() {
    let mut server = Server::plain();
    server.ask("shutdown", &Value::Null);
    server.notify("exit", &Value::Null);
    assert_eq!(server.end(SOON).code(), Some(0));
}

#[test]
fn exit_without_shutdown_ends_with_1() {
    let mut server = Server::plain();
    server.notify("exit", &Value::Null);
    assert_eq!(server.end(SOON).code(), Some(1));
}

#[test]
fn exit_before_initialize_ends_with_1() {
    let mut server = Server::spawn();
    server.notify("exit", &Value::Null);
    assert_eq!(server.end(SOON).code(), Some(1));
}

#[test]
fn end_of_input_ends_it() {
    let mut server = Server::plain();
    server.close_input();
    assert_eq!(server.end(SOON).code(), Some(1));

    let mut server = Server::plain();
    server.ask("shutdown", &Value::Null);
    server.close_input();
    assert_eq!(server.end(SOON).code(), Some(0));
}

#[test]
fn end_of_input_within_a_message_ends_it() {
    for piece in [&b"Content-Len"[..], b"Content-Length: 10\r\n", b"Content-Length: 10\r\n\r\n{\"a\""] {
        let mut server = Server::plain();
        server.write(piece);
        server.close_input();
        assert_eq!(server.end(SOON).code(), Some(1));
    }
}

#[test]
fn requests_at_work_are_answered_at_the_end_of_input() {
    let mut server = Server::plain();
    server.open("file:///a.md", 1, "The axillary nerve.\n");
    let id = server.send("textDocument/hover", &at("file:///a.md", 0, 6));
    server.close_input();
    assert!(server.answer(id)["result"]["contents"]["value"].as_str().unwrap().contains("axillary nerve"));
    server.end(SOON);
}

#[test]
fn a_broken_output_ends_it() {
    use std::io::Write;
    use std::process::{Command, Stdio};
    let mut child = Command::new(env!("CARGO_BIN_EXE_fascicle"))
        .arg("serve")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut input = child.stdin.take().unwrap();
    let initialize = json!({ "jsonrpc": "2.0", "id": 1, "method": "initialize", "params": { "capabilities": {} } });
    input.write_all(&frame(&initialize)).unwrap();
    let until = Instant::now() + SOON;
    while child.try_wait().unwrap().is_none() {
        assert!(Instant::now() < until, "still running");
        std::thread::sleep(Duration::from_millis(10));
    }
}

#[cfg(unix)]
#[test]
fn the_death_of_the_parent_ends_it() {
    use std::process::Command;
    let mut parent = Command::new("sleep").arg("60").spawn().unwrap();
    let mut server = Server::spawn();
    server.ask("initialize", &json!({ "processId": parent.id(), "capabilities": {} }));
    std::thread::sleep(Duration::from_millis(200));
    assert!(server.child.try_wait().unwrap().is_none());
    parent.kill().unwrap();
    parent.wait().unwrap();
    assert_eq!(server.end(SOON).code(), Some(1));
}

#[test]
fn malformed_messages_are_answered_and_passed_over() {
    let mut server = Server::plain();
    for (bytes, code) in [
        (&b"nonsense\r\n\r\n"[..], -32700),
        (b"Content-Length: x\r\n\r\n", -32700),
        (b"Content-Length: 3\r\n\r\n{a}", -32700),
        (b"Content-Length: 2\r\n\r\n\xFF\xFE", -32700),
        (b"Content-Length: 2\r\n\r\n[]", -32600),
        (b"Content-Length: 14\r\n\r\n{\"method\": 12}", -32600),
    ] {
        server.write(bytes);
        assert_eq!(server.answer(-1)["error"]["code"], code, "{}", String::from_utf8_lossy(bytes));
    }
    server.open("file:///a.md", 1, "The axillary nerve.\n");
    assert!(!server.ask("textDocument/hover", &at("file:///a.md", 0, 6)).is_null());
    server.shut_down();
}

#[test]
fn requests_out_of_turn_are_refused() {
    let mut server = Server::spawn();
    let early = server.send("textDocument/hover", &at("file:///a.md", 0, 0));
    assert_eq!(server.answer(early)["error"]["code"], -32002);
    server.ask("initialize", &json!({ "capabilities": {} }));
    let again = server.send("initialize", &json!({ "capabilities": {} }));
    assert_eq!(server.answer(again)["error"]["code"], -32600);
    let unknown = server.send("textDocument/nonesuch", &json!({}));
    assert_eq!(server.answer(unknown)["error"]["code"], -32601);
    let not_open = server.send("textDocument/hover", &at("file:///a.md", 0, 0));
    assert_eq!(server.answer(not_open)["error"]["code"], -32602);
    let bad = server.send("textDocument/hover", &json!({ "textDocument": 3 }));
    assert_eq!(server.answer(bad)["error"]["code"], -32602);
    server.ask("shutdown", &Value::Null);
    let late = server.send("textDocument/hover", &at("file:///a.md", 0, 0));
    assert_eq!(server.answer(late)["error"]["code"], -32600);
}

#[test]
fn an_edit_that_cannot_be_drops_the_document_and_asks_to_reopen_it_once() {
    let mut server = Server::plain();
    let uri = "file:///a.md";
    server.open(uri, 1, "The axillary nerve.\nIt ends.\n");
    let range = json!({ "start": { "line": 1, "character": 2 }, "end": { "line": 0, "character": 0 } });
    for version in 2..5 {
        let change = json!({ "range": range, "text": "x" });
        let params = json!({ "textDocument": { "uri": uri, "version": version }, "contentChanges": [change] });
        server.notify("textDocument/didChange", &params);
    }
    let message = server.wait_for("window/showMessage");
    assert!(message["params"]["message"].as_str().unwrap().contains("open it again"));
    let id = server.send("textDocument/hover", &at(uri, 0, 6));
    assert_eq!(server.answer(id)["error"]["code"], -32602);
    server.listen(Duration::from_millis(200));
    assert!(!server.said.iter().any(|said| said["method"] == "window/showMessage"), "told twice");
    server.open(uri, 9, "The axillary nerve.\n");
    assert!(!server.ask("textDocument/hover", &at(uri, 0, 6)).is_null());
    server.shut_down();
}

#[cfg(target_os = "linux")]
#[test]
fn a_server_that_is_asked_nothing_does_nothing() {
    let folder = support::Folder::new("idle", &[("a.md", "Deltoid is supplied by the radial nerve.\n")]);
    let watch = json!({ "workspace": { "didChangeWatchedFiles": { "dynamicRegistration": true } } });
    let mut server = Server::start("utf-16", watch, Some(&folder.uri("")));
    server.open(&folder.uri("a.md"), 1, "Deltoid is supplied by the radial nerve.\n");
    server.shows(&folder.uri("a.md"), |list| !list.is_empty());
    server.listen(Duration::from_millis(1_500));
    let process = server.child.id();
    let ticks = || -> u64 {
        let stat = std::fs::read_to_string(format!("/proc/{process}/stat")).unwrap();
        let fields: Vec<&str> = stat.rsplit_once(')').unwrap().1.split_whitespace().collect();
        fields[11].parse::<u64>().unwrap() + fields[12].parse::<u64>().unwrap()
    };
    let before = ticks();
    server.listen(Duration::from_secs(2));
    let spent = ticks() - before;
    assert!(spent <= 3, "{spent} hundredths of a second of work in two seconds of rest");
    server.shut_down();
}

#[test]
fn who_writes_empty_parameters_for_none_is_understood() {
    for none in [Value::Null, json!({}), json!([])] {
        let mut server = Server::plain();
        assert_eq!(server.ask("fascicle/status", &none)["documents"], 0);
        assert!(server.ask("shutdown", &none).is_null());
        server.notify("exit", &none);
        assert_eq!(server.end(Duration::from_secs(5)).code(), Some(0));
    }
}

#[test]
fn status_tells_memory_and_times() {
    let mut server = Server::plain();
    server.open("file:///a.md", 1, "The axillary nerve.\n");
    server.ask("textDocument/hover", &at("file:///a.md", 0, 6));
    let status = server.ask("fascicle/status", &Value::Null);
    assert_eq!(status["documents"], 1);
    assert_eq!(status["readings"]["givenUp"], 0);
    if cfg!(target_os = "linux") {
        assert!(status["memory"].as_u64().unwrap() > 1_000_000, "{status}");
    }
    assert!(status["requests"].as_array().unwrap().iter().any(|times| times["method"] == "textDocument/hover"));
    server.shut_down();
}
