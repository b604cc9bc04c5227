//! What completion offers, asked for as an editor does: names as the course spells and chooses them, what goes on from what
//! the sentence has named, and lists in the form that the client takes.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::sync::atomic::{AtomicUsize, Ordering};

use serde_json::{Value, json};
use support::{Folder, Server, at};

/// Tells the folders of the tests apart.
static NUMBER: AtomicUsize = AtomicUsize::new(0);

const URI: &str = "file:///course/a.md";

/// The answer at the caret of a text.
fn list(server: &mut Server, uri: &str, text: &str) -> Value {
    let place = text.find('^').unwrap();
    let plain = text.replace('^', "");
    server.open(uri, 1, &plain);
    let line = plain[..place].matches('\n').count() as u64;
    let column = plain[..place].rsplit('\n').next().unwrap().chars().count() as u64;
    let list = server.ask("textDocument/completion", &at(uri, line, column));
    server.notify("textDocument/didClose", &json!({ "textDocument": { "uri": uri } }));
    list
}

/// What is inserted first.
fn first(server: &mut Server, uri: &str, text: &str) -> String {
    let list = list(server, uri, text);
    list["items"][0]["textEdit"]["newText"].as_str().unwrap_or_default().to_owned()
}

/// What a course with some settings inserts first.
fn first_in(settings: &str, text: &str) -> String {
    let number = NUMBER.fetch_add(1, Ordering::Relaxed);
    let folder = Folder::new(&format!("completion-{number}"), &[("fascicle.toml", settings), ("a.md", "")]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let first = first(&mut server, &folder.uri("a.md"), text);
    server.shut_down();
    first
}

#[test]
fn names_are_spelled_as_the_course_has_chosen() {
    for typed in ["The upper fib^", "The upper fibr^", "The upper fibe^"] {
        assert_eq!(first_in("spelling = \"british\"\n", typed), "upper fibres of trapezius", "{typed}");
        assert_eq!(first_in("spelling = \"american\"\n", typed), "upper fibers of trapezius", "{typed}");
    }
}

#[test]
fn names_that_the_course_prefers_or_avoids_are_respected() {
    let prefers = "prefer = [\"common peroneal nerve\"]\n";
    for typed in ["The common fib^", "The common per^", "The CPN^"] {
        assert_eq!(first_in(prefers, typed), "common peroneal nerve", "{typed}");
    }
    // Even where the document has called it otherwise.
    assert_eq!(first_in(prefers, "The common fibular nerve is long. The common f^"), "common peroneal nerve");
    assert_eq!(first_in("", "The common fibular nerve is long. The common f^"), "common fibular nerve");
    let eponym = "The nerve of Scar^";
    assert_eq!(first_in("avoid = [\"eponym\"]\n", eponym), "nasopalatine nerve");
}

#[test]
fn a_client_without_defaults_for_items_gets_the_range_with_each() {
    let mut server = Server::plain();
    let found = list(&mut server, URI, "The delt^");
    assert!(found["itemDefaults"].is_null(), "{found}");
    let items = found["items"].as_array().unwrap();
    let range = json!({ "start": { "line": 0, "character": 4 }, "end": { "line": 0, "character": 8 } });
    assert!(items.iter().all(|item| item["textEdit"]["range"] == range), "{found}");
    server.shut_down();
}

#[test]
fn a_list_is_incomplete_where_further_typing_may_bring_other_names() {
    let mut server = Server::plain();
    // What begins with what was typed the client can narrow down; by anything else it would find nothing more.
    let mut complete = 0;
    for text in [
        "The anconeu^",
        "The palmaris brev^",
        "The omohyo^",
        "The platys^",
        "The risori^",
        "The corrugator superc^",
        "The delto^",
    ] {
        let found = list(&mut server, URI, text);
        let items = found["items"].as_array().unwrap();
        let typed = text.trim_start_matches("The ").trim_end_matches('^');
        let begins = |item: &Value| item["label"].as_str().unwrap().starts_with(typed);
        let narrows = items.iter().all(begins);
        assert_eq!(found["isIncomplete"], !narrows, "{found}");
        complete += usize::from(narrows);
    }
    assert!(complete > 0, "none of these lists is complete");
    // These are found by other letters, and by what was typed the client would find no others.
    for text in ["The fcu^", "The de^", "Deltoid is supplied by the ^"] {
        assert_eq!(list(&mut server, URI, text)["isIncomplete"], true, "{text}");
    }
    server.shut_down();
}

#[test]
fn what_follows_goes_on_from_what_was_named() {
    let mut server = Server::plain();
    for (text, inserted) in [
        // Segments, where some are written already.
        ("The deltoid (C^", "C5, C6"),
        ("The deltoid (C5, ^", "C6"),
        ("The deltoid (C5, C^", "C6"),
        // Names that share their first words with the one before.
        ("Flexor carpi radialis and u^", "ulnaris"),
        ("The extensor pollicis longus and br^", "brevis"),
        // A later word of a long name, where the sentence leaves no other.
        ("Flexor digitorum superficialis lies over prof^", "flexor digitorum profundus"),
        // Abbreviations.
        ("The FDP^", "flexor digitorum profundus"),
        // What was named is not offered again.
        ("The axillary nerve supplies deltoid and te^", "teres minor"),
        ("The axillary nerve supplies teres minor and de^", "deltoid"),
        // The beginnings of its words tell a name from its neighbours.
        ("The flcr^", "flexor carpi radialis"),
        ("The temi^", "teres minor"),
        // Capitals as the author types them.
        ("Delt^", "Deltoid"),
        ("The delt^", "deltoid"),
        ("- Subs^", "Subscapularis"),
    ] {
        assert_eq!(first(&mut server, URI, text), inserted, "{text}");
    }
    server.shut_down();
}

#[test]
fn the_card_comes_when_an_item_is_looked_at() {
    let mut server = Server::plain();
    let item = list(&mut server, URI, "The delt^")["items"][0].clone();
    assert!(item["documentation"].is_null(), "{item}");
    let resolved = server.ask("completionItem/resolve", &item);
    assert_eq!(resolved["documentation"]["kind"], "markdown");
    assert!(resolved["documentation"]["value"].as_str().unwrap().contains("axillary nerve"), "{resolved}");
    assert_eq!(resolved["label"], item["label"]);
    server.shut_down();
}
