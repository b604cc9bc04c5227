//! Every request of the protocol that the server answers, one test each, and the table of them in `REQUESTS.md`.
//!
//! `UPDATE=1 cargo test -p fascicle --test requests` writes the table anew.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::time::Duration;

use serde_json::{Value, json};
use support::{Folder, Server, at};

/// Each method, what it means here, and the test (file and name) that covers it.
const REQUESTS: &[(&str, &str, &str)] = &[
    (
        "initialize",
        "position encoding agreed, capabilities offered",
        "positions::the_cheapest_encoding_is_taken_and_utf_16_without_an_offer",
    ),
    (
        "initialized",
        "folders indexed, files watched, settings asked for",
        "requests::a_course_is_read_with_progress_and_its_settings_are_checked",
    ),
    ("shutdown", "the server gets ready to end", "process::exit_after_shutdown_ends_with_0_though_input_stays_open"),
    ("exit", "the process ends", "process::exit_without_shutdown_ends_with_1"),
    ("$/cancelRequest", "work on a request stops", "order::a_request_taken_back_is_answered_as_such"),
    ("$/setTrace", "where the time of a request went", "requests::a_trace_says_where_the_time_went"),
    (
        "window/workDoneProgress/cancel",
        "the course is read no further",
        "requests::a_course_that_is_read_can_be_left_and_is_no_hindrance",
    ),
    ("textDocument/didOpen", "a document is read", "requests::findings_are_published_and_cleared"),
    (
        "textDocument/didChange",
        "an edit is applied, in order",
        "order::ten_thousand_edits_and_requests_are_answered_as_if_each_text_had_come_at_once",
    ),
    (
        "textDocument/didSave",
        "a settings file that was saved is read again",
        "requests::a_saved_settings_file_counts_at_once",
    ),
    ("textDocument/didClose", "findings of a closed document go away", "requests::findings_are_published_and_cleared"),
    (
        "textDocument/hover",
        "the card of a structure; the verdict on a claim",
        "requests::hover_shows_the_card_and_the_verdict",
    ),
    (
        "textDocument/completion",
        "names, what makes the sentence true first",
        "requests::completion_offers_what_makes_the_sentence_true_first",
    ),
    (
        "completionItem/resolve",
        "the card of the item",
        "requests::completion_offers_what_makes_the_sentence_true_first",
    ),
    (
        "textDocument/definition",
        "the document of the structure",
        "requests::definitions_lead_to_documents_that_can_be_read",
    ),
    (
        "textDocument/declaration",
        "the document of the structure",
        "requests::definitions_lead_to_documents_that_can_be_read",
    ),
    (
        "textDocument/typeDefinition",
        "the group or whole of the structure",
        "requests::definitions_lead_to_documents_that_can_be_read",
    ),
    (
        "fascicle/entry",
        "the text of the document of a structure",
        "requests::definitions_lead_to_documents_that_can_be_read",
    ),
    ("fascicle/tree", "the branch tree, as text and as a picture", "requests::the_branch_tree_is_text_and_picture"),
    (
        "textDocument/references",
        "all names of a structure over the course",
        "requests::references_and_renames_reach_the_whole_course",
    ),
    (
        "textDocument/documentHighlight",
        "all names of a structure in a document",
        "requests::highlights_are_of_one_structure_by_any_name",
    ),
    (
        "textDocument/prepareRename",
        "the name that would be replaced",
        "requests::references_and_renames_reach_the_whole_course",
    ),
    (
        "textDocument/rename",
        "one name for another, forms follow",
        "requests::references_and_renames_reach_the_whole_course",
    ),
    (
        "textDocument/linkedEditingRange",
        "the same name in the same block",
        "requests::a_name_is_edited_together_with_its_likes",
    ),
    (
        "textDocument/codeAction",
        "fixes, here, everywhere in the document or in the course; what is allowed; other names, tables and trees",
        "requests::what_was_found_can_be_allowed_here_and_in_the_course",
    ),
    (
        "codeAction/resolve",
        "the edit of an action, or that it is out of date",
        "requests::fixes_reach_the_whole_course",
    ),
    (
        "workspace/executeCommand",
        "a table or tree is put into a document, a place is shown",
        "requests::commands_ask_the_client_for_an_edit",
    ),
    (
        "textDocument/codeLens",
        "what a section covers of its nerve, where else it is taught",
        "requests::lenses_show_where_else_a_structure_is_taught",
    ),
    ("textDocument/inlayHint", "segments behind names", "requests::hints_show_segments_where_they_are_wanted"),
    ("inlayHint/resolve", "who says so", "requests::hints_show_segments_where_they_are_wanted"),
    (
        "textDocument/semanticTokens/full",
        "kinds of structures, with modifiers",
        "requests::tokens_full_range_and_delta_agree",
    ),
    (
        "textDocument/semanticTokens/full/delta",
        "what has changed of them",
        "requests::tokens_full_range_and_delta_agree",
    ),
    ("textDocument/semanticTokens/range", "those of a range", "requests::tokens_full_range_and_delta_agree"),
    ("textDocument/documentSymbol", "headings with what they teach", "requests::symbols_are_headings_and_structures"),
    ("workspace/symbol", "headings and structures of the course", "requests::symbols_are_headings_and_structures"),
    ("textDocument/foldingRange", "sections, lists, tables", "requests::sections_and_tables_fold"),
    (
        "textDocument/selectionRange",
        "word, name, claim, sentence, block, section",
        "requests::a_selection_grows_by_meaning",
    ),
    (
        "textDocument/documentLink",
        "links to documents of the course",
        "requests::links_lead_to_documents_that_are_there",
    ),
    (
        "textDocument/prepareCallHierarchy",
        "the nerve at a place",
        "requests::hierarchies_go_to_the_roots_and_to_the_muscles",
    ),
    ("callHierarchy/incomingCalls", "where it comes from", "requests::hierarchies_go_to_the_roots_and_to_the_muscles"),
    (
        "callHierarchy/outgoingCalls",
        "branches, muscles, skin",
        "requests::hierarchies_go_to_the_roots_and_to_the_muscles",
    ),
    (
        "textDocument/prepareTypeHierarchy",
        "the structure at a place",
        "requests::hierarchies_go_to_the_roots_and_to_the_muscles",
    ),
    (
        "typeHierarchy/supertypes",
        "groups, wholes, classes of joints",
        "requests::hierarchies_go_to_the_roots_and_to_the_muscles",
    ),
    ("typeHierarchy/subtypes", "members and parts", "requests::hierarchies_go_to_the_roots_and_to_the_muscles"),
    ("textDocument/diagnostic", "findings, or that they are unchanged", "requests::findings_can_be_asked_for"),
    (
        "workspace/diagnostic",
        "findings of the course; waits until something is new",
        "requests::findings_of_the_course_wait_until_something_is_new",
    ),
    (
        "workspace/didChangeConfiguration",
        "settings of the editor count at once",
        "requests::settings_of_the_editor_count_at_once",
    ),
    ("workspace/didChangeWorkspaceFolders", "folders come and go", "requests::folders_come_and_go"),
    (
        "workspace/didChangeWatchedFiles",
        "files that change without the editor",
        "requests::files_change_without_the_editor",
    ),
    (
        "workspace/didCreateFiles",
        "files and folders that the editor makes",
        "requests::files_and_folders_that_the_editor_moves_are_followed_at_once",
    ),
    (
        "workspace/didRenameFiles",
        "files and folders to which the editor gives another name",
        "requests::files_and_folders_that_the_editor_moves_are_followed_at_once",
    ),
    (
        "workspace/didDeleteFiles",
        "files and folders that the editor deletes",
        "requests::files_and_folders_that_the_editor_moves_are_followed_at_once",
    ),
    ("fascicle/status", "memory, documents, how often they were read, times", "process::status_tells_memory_and_times"),
];

/// Requests of the protocol that the server does not answer, for there is nothing that they could mean here.
const LEFT_OUT: &[&str] = &[
    "textDocument/implementation",
    "documentLink/resolve",
    "codeLens/resolve",
    "textDocument/inlineValue",
    "textDocument/moniker",
    "textDocument/signatureHelp",
    "textDocument/documentColor",
    "textDocument/colorPresentation",
    "textDocument/formatting",
    "textDocument/rangeFormatting",
    "textDocument/onTypeFormatting",
    "workspaceSymbol/resolve",
    "workspace/willCreateFiles",
    "workspace/willRenameFiles",
    "workspace/willDeleteFiles",
    "textDocument/willSaveWaitUntil",
];

const URI: &str = "untitled:notes.md";

/// A place in a text by what stands there.
fn find(uri: &str, text: &str, what: &str) -> Value {
    let byte = text.find(what).unwrap_or_else(|| panic!("{what} is not in the text")) + 1;
    let before = &text[..byte];
    let line = before.matches('\n').count() as u64;
    let column = before.rsplit('\n').next().unwrap().encode_utf16().count() as u64;
    at(uri, line, column)
}

fn with(mut params: Value, key: &str, value: Value) -> Value {
    params[key] = value;
    params
}

fn document(uri: &str) -> Value {
    json!({ "textDocument": { "uri": uri } })
}

fn whole() -> Value {
    json!({ "start": { "line": 0, "character": 0 }, "end": { "line": 999, "character": 0 } })
}

/// Applies edits of the protocol to an ASCII text.
fn apply(text: &str, edits: &[Value]) -> String {
    let offset = |position: &Value| {
        let line = usize::try_from(position["line"].as_u64().unwrap()).unwrap();
        let start: usize = text.split_inclusive('\n').take(line).map(str::len).sum();
        (start + usize::try_from(position["character"].as_u64().unwrap()).unwrap()).min(text.len())
    };
    let mut list: Vec<(usize, usize, &str)> = edits
        .iter()
        .map(|edit| {
            let range = &edit["range"];
            (offset(&range["start"]), offset(&range["end"]), edit["newText"].as_str().unwrap())
        })
        .collect();
    list.sort_unstable();
    let mut out = text.to_owned();
    for (start, end, new) in list.into_iter().rev() {
        out.replace_range(start..end, new);
    }
    out
}

#[test]
fn the_table_names_every_request_and_the_test_that_covers_it() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut table = String::from(
        "# Requests\n\nEvery message of the protocol that the server takes, what it means here, and the test that covers it.\n\
         Made by `UPDATE=1 cargo test -p fascicle --test requests`.\n\n| method | meaning | test |\n| --- | --- | --- |\n",
    );
    for (method, meaning, test) in REQUESTS {
        let (file, name) = test.split_once("::").unwrap();
        let source = fs::read_to_string(here.join(format!("tests/{file}.rs"))).unwrap();
        assert!(source.contains(&format!("fn {name}()")), "no test {test} for {method}");
        writeln!(table, "| `{method}` | {meaning} | `{test}` |").unwrap();
    }
    let path = here.join("REQUESTS.md");
    if std::env::var_os("UPDATE").is_some() {
        fs::write(&path, &table).unwrap();
    }
    assert_eq!(fs::read_to_string(&path).unwrap_or_default(), table, "run with UPDATE=1");
}

#[test]
fn what_the_table_does_not_name_is_not_answered() {
    let mut server = Server::plain();
    for (method, ..) in REQUESTS {
        let is_request = !method.starts_with("$/")
            && !method.contains("/did")
            && !method.starts_with("window/")
            && !["initialize", "initialized", "shutdown", "exit"].contains(method);
        if is_request && *method != "workspace/diagnostic" {
            let id = server.send(method, &json!({ "nonsense": true }));
            assert_ne!(server.answer(id)["error"]["code"], -32601, "{method} is not answered");
        }
    }
    for method in LEFT_OUT {
        let id = server.send(method, &json!({}));
        let code = server.answer(id)["error"]["code"].as_i64().unwrap();
        assert!([-32601, -32602].contains(&code), "{method}: {code}");
    }
    server.shut_down();
}

#[test]
fn hover_shows_the_card_and_the_verdict() {
    let text = "Deltoid is supplied by the radial nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let hover = server.ask("textDocument/hover", &find(URI, text, "Deltoid"));
    let card = hover["contents"]["value"].as_str().unwrap();
    assert!(
        card.contains("Contradicts") && card.contains("axillary nerve") && card.contains("musculus deltoideus"),
        "{card}"
    );
    assert!(server.ask("textDocument/hover", &find(URI, text, "by the")).is_null() || card.contains("Contradicts"));
    server.shut_down();
}

#[test]
fn hover_draws_the_branches_of_a_nerve_as_the_client_can_show_them() {
    let text = "The axillary nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let hover = server.ask("textDocument/hover", &find(URI, text, "axillary"));
    let card = hover["contents"]["value"].as_str().unwrap();
    let tree = card.split("```\n").nth(1).unwrap();
    assert!(tree.contains("teres minor") && tree.contains("deltoid"), "{card}");
    server.shut_down();

    let mut server = Server::spawn();
    let options = json!({ "pictures": true });
    server.ask("initialize", &json!({ "capabilities": {}, "initializationOptions": options }));
    server.notify("initialized", &json!({}));
    server.open(URI, 1, text);
    let hover = server.ask("textDocument/hover", &find(URI, text, "axillary"));
    assert!(hover["contents"]["value"].as_str().unwrap().contains("](data:image/svg+xml,%3Csvg"), "{hover}");
    server.shut_down();
}

/// One word on each kind of structure that no card of another kind has.
#[test]
fn hover_has_a_card_for_every_kind_of_structure() {
    let mut server = Server::plain();
    for (text, words) in [
        ("deltoid", &["axillary nerve", "upper trunk", "Segments", "Attachments", "Actions by joint", "group"][..]),
        (
            "median nerve",
            &[
                "Path",
                "Course and branches, in order",
                "sensory to elbow joint",
                "Skin",
                "injury",
                "Muscles",
                "*anterior interosseous nerve:* lateral part of flexor digitorum profundus",
            ],
        ),
        ("brachial plexus", &["Branches, by part", "*posterior cord:*", "*upper trunk:*"]),
        (
            "elbow joint",
            &[
                "hinge",
                "Bones",
                "flexion to 150° (",
                "  - *prime movers:* biceps brachii (musculocutaneous nerve); brachialis",
                "  - *assistants:* ",
                "Nerves",
                "Moved together with",
            ],
        ),
        (
            "C6",
            &[
                "Myotome",
                "*shoulder:*",
                "*Dermatome:* C6 dermatome",
                "Key muscle",
                "at wrist joint",
                "*Reflex:* brachioradialis, biceps",
            ],
        ),
        ("carpal tunnel", &["What passes", "median nerve", "*before:* pronator teres", "*after:* recurrent branch"]),
        ("axilla", &["- radial nerve", "  - *here:* gives posterior cutaneous nerve of arm"]),
        ("skin of lateral forearm", &["Nerves", "upper trunk", "Segments"]),
        ("rotator cuff", &["Members", "supraspinatus: suprascapular nerve (C5, C6"]),
    ] {
        server.open(URI, 1, text);
        let hover = server.ask("textDocument/hover", &at(URI, 0, 1));
        let card = hover["contents"]["value"].as_str().unwrap_or_else(|| panic!("no card of {text}"));
        for word in words {
            assert!(card.contains(word), "{text}: no {word} in {card}");
        }
    }
    server.shut_down();
}

#[test]
fn completion_offers_what_makes_the_sentence_true_first() {
    let capabilities =
        json!({ "textDocument": { "completion": { "completionList": { "itemDefaults": ["editRange"] } } } });
    let mut server = Server::start("utf-16", capabilities, None);
    let mut first = |text: &str| {
        let place = text.find('^').unwrap();
        let plain = text.replace('^', "");
        server.open(URI, 1, &plain);
        let line = plain[..place].matches('\n').count() as u64;
        let column = plain[..place].rsplit('\n').next().unwrap().len() as u64;
        let list = server.ask("textDocument/completion", &at(URI, line, column));
        assert!(
            list["items"].as_array().is_none_or(|items| items.iter().all(|item| item["textEdit"].is_null())),
            "{list}"
        );
        assert!(list["itemDefaults"]["editRange"].is_object(), "{list}");
        list["items"][0].clone()
    };
    for (text, label) in [
        ("Deltoid is supplied by the ^", "axillary nerve"),
        ("Deltoid is supplied by the ax^", "axillary nerve"),
        ("The axillary nerve supplies deltoid and ^", "teres minor"),
        ("# Axillary nerve\n\nIt arises from the ^", "posterior cord of brachial plexus"),
        ("| Muscle | Nerve |\n|---|---|\n| biceps brachii | ^ |\n", "musculocutaneous nerve"),
        ("| Muscle | Roots |\n|---|---|\n| deltoid | C^ |\n", "C5, C6"),
        ("fcu^", "flexor carpi ulnaris"),
        ("Delt^", "Deltoid"),
    ] {
        assert_eq!(first(text)["label"], label, "{text}");
    }
    // The author's own name of a structure, once he has used it; his language, too.
    for (text, label) in [
        ("The common peroneal nerve is long. The comm^", "common peroneal nerve"),
        ("The common peroneal nerve is long. The CPN^", "common peroneal nerve"),
        ("The common peroneal nerve is long. The common fib^", "common fibular nerve"),
        ("Musculus deltoideus et musculus supraspinatus et AXN^", "nervus axillaris"),
    ] {
        assert_eq!(first(text)["label"], label, "{text}");
    }
    let item = first("Delt^");
    let resolved = server.ask("completionItem/resolve", &item);
    assert!(resolved["documentation"]["value"].as_str().unwrap().contains("axillary nerve"), "{resolved}");
    server.shut_down();
}

#[test]
fn definitions_lead_to_documents_that_can_be_read() {
    let text = "Supraspinatus and deltoid.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    for method in ["textDocument/definition", "textDocument/declaration"] {
        let found = server.ask(method, &find(URI, text, "deltoid"));
        let path = found[0]["uri"].as_str().unwrap().strip_prefix("file://").unwrap().to_owned();
        let written = fs::read_to_string(&path).unwrap();
        assert!(written.contains("axillary-nerve.md") && written.contains("Every fact"), "{written}");
    }
    let group = server.ask("textDocument/typeDefinition", &find(URI, text, "Supraspinatus"));
    assert!(
        group.as_array().unwrap().iter().any(|one| one["uri"].as_str().unwrap().contains("rotator-cuff")),
        "{group}"
    );
    server.shut_down();

    let mut server = Server::spawn();
    let options = json!({ "entryDocuments": true });
    server.ask("initialize", &json!({ "capabilities": {}, "initializationOptions": options }));
    server.notify("initialized", &json!({}));
    server.open(URI, 1, text);
    let found = server.ask("textDocument/definition", &find(URI, text, "deltoid"));
    assert_eq!(found[0]["uri"], "fascicle:/entry/deltoid.md");
    let entry = server.ask("fascicle/entry", &json!({ "uri": found[0]["uri"] }));
    assert!(entry["text"].as_str().unwrap().contains("axillary nerve"));
    assert!(server.ask("fascicle/entry", &json!({ "id": "no-such-thing" })).is_null());
    server.shut_down();
}

#[test]
fn entries_of_courses_with_other_vocabularies_are_kept_apart() {
    let text = "The deltoid and the axillary nerve.\n";
    // Both courses have a muscle of one name, each with a nerve of its own, and the third has the built-in vocabulary.
    let folder = Folder::new("shelves", &[]);
    for (name, nerve) in [("a", Some("axillary-nerve")), ("b", Some("radial-nerve")), ("c", None)] {
        fs::create_dir_all(folder.0.join(name).join("inner")).unwrap();
        folder.write(&format!("{name}/note.md"), text);
        if let Some(nerve) = nerve {
            folder.write(&format!("{name}/ours.toml"), &own_muscle(nerve));
            folder.write(&format!("{name}/fascicle.toml"), "overlay = [\"ours.toml\"]\n");
        }
    }
    for is_virtual in [true, false] {
        let mut server = Server::spawn();
        let folders: Vec<Value> =
            ["a", "b", "c"].iter().map(|name| json!({ "uri": folder.uri(name), "name": name })).collect();
        let options = json!({ "entryDocuments": is_virtual });
        let params = json!({ "capabilities": {}, "workspaceFolders": folders, "initializationOptions": options });
        server.ask("initialize", &params);
        server.notify("initialized", &json!({}));
        let mut seen = Vec::new();
        for (name, own) in [("a", true), ("b", false), ("c", false)] {
            let note = folder.uri(&format!("{name}/note.md"));
            server.open(&note, 1, text);
            let found = server.ask("textDocument/definition", &find(&note, text, "axillary"));
            let uri = found[0]["uri"].as_str().unwrap().to_owned();
            assert_eq!(uri.starts_with("fascicle:/entry/"), is_virtual, "{uri}");
            assert!(!seen.contains(&uri), "{uri} is of two courses");
            let entry = server.ask("fascicle/entry", &json!({ "uri": uri }));
            let shown = entry["text"].as_str().unwrap().to_owned();
            assert_eq!((&entry["uri"], shown.contains("sternalis parvus")), (&json!(uri), own), "{name}: {shown}");
            if !is_virtual {
                let path = uri.strip_prefix("file://").unwrap();
                assert_eq!(fs::read_to_string(path).unwrap(), shown);
            }
            // The same by its identifier, for who has met it in a document of the course.
            let document = json!({ "uri": note });
            let met = server.ask("fascicle/entry", &json!({ "id": "axillary-nerve", "textDocument": document }));
            assert_eq!(met, entry);
            // Every link of the document leads to an entry of the same course, and there is one to each of its muscles.
            server.open(&uri, 1, &shown);
            let links = server.ask("textDocument/documentLink", &json!({ "textDocument": { "uri": uri } }));
            let targets: Vec<&str> =
                links.as_array().unwrap().iter().map(|link| link["target"].as_str().unwrap()).collect();
            let shelf = uri.strip_suffix("axillary-nerve.md").unwrap();
            assert!(targets.len() > 5 && targets.iter().all(|to| to.starts_with(shelf)), "{targets:?}");
            assert_eq!(targets.contains(&&*format!("{shelf}sternalis-parvus.md")), own, "{targets:?}");
            for target in targets {
                let linked = server.ask("fascicle/entry", &json!({ "uri": target }));
                assert_eq!(linked["uri"], target, "a link without an entry");
            }
            // What is shown in the document of an entry is of its course, too.
            let hover = server.ask("textDocument/hover", &find(&uri, &shown, "axillary nerve"));
            assert_eq!(hover.to_string().contains("sternalis parvus"), own, "{hover}");
            seen.push(uri);
        }
        let nowhere = json!({ "uri": "fascicle:/entry/gone-0123456789abcdef/deltoid.md" });
        assert!(server.ask("fascicle/entry", &nowhere).is_null(), "of a course that is not open");
        server.shut_down();
    }
}

#[test]
fn a_client_that_asks_for_diagnostics_is_told_to_ask_again_when_settings_change() {
    let capabilities = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": { "diagnostics": { "refreshSupport": true } },
    });
    let mut server = Server::start("utf-16", capabilities, None);
    server.open(URI, 1, "The infraspinatous turns the arm.\n");
    let document = json!({ "textDocument": { "uri": URI } });
    let before = server.ask("textDocument/diagnostic", &document);
    assert_eq!(before["items"].as_array().unwrap().len(), 1, "{before}");
    let settings = json!({ "settings": { "fascicle": { "off": ["misspelled-name"] } } });
    server.notify("workspace/didChangeConfiguration", &settings);
    server.wait_for("workspace/diagnostic/refresh");
    let after = server.ask("textDocument/diagnostic", &document);
    assert!(after["items"].as_array().unwrap().is_empty(), "{after}");
    server.shut_down();
}

#[test]
fn the_branch_tree_is_text_and_picture() {
    let text = "The axillary nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let tree = server.ask("fascicle/tree", &find(URI, text, "axillary"));
    let all = tree.to_string();
    assert!(all.contains("teres minor") && all.contains("<svg"), "{tree}");
    let lines = tree["text"].as_str().unwrap().lines();
    let entries = tree["lines"].as_array().unwrap();
    assert_eq!(lines.clone().count(), entries.len());
    let here = lines.zip(entries).find(|(line, _)| line.ends_with("axillary nerve")).unwrap();
    assert_eq!(here.1, "axillary-nerve");
    assert!(server.ask("fascicle/tree", &find(URI, text, "The")).is_null());
    server.shut_down();
}

#[test]
fn references_and_renames_reach_the_whole_course() {
    let here = "The common peroneal nerve is cut. Common Peroneal Nerve palsy; the CPN. `common peroneal nerve`\n";
    let there =
        "# Common peroneal nerve\n\n> The common peroneal nerve, as Gray has it.\n\nThe common fibular nerve.\n";
    let folder = Folder::new("rename", &[("here.md", here), ("there.md", there)]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("here.md");
    server.open(&uri, 1, here);
    wait_for_index(&mut server, 2);
    let place = find(&uri, here, "common");
    let context = json!({ "includeDeclaration": false });
    let found = server.ask("textDocument/references", &with(place.clone(), "context", context));
    let count = |name: &str| {
        found.as_array().unwrap().iter().filter(|one| one["uri"].as_str().unwrap() == folder.uri(name)).count()
    };
    assert_eq!((count("here.md"), count("there.md")), (3, 3), "{found}");
    let prepared = server.ask("textDocument/prepareRename", &place);
    assert_eq!(prepared["placeholder"], "common peroneal nerve");
    let edit = server.ask("textDocument/rename", &with(place.clone(), "newName", json!("common fibular nerve")));
    let own = apply(here, edit["changes"][&uri].as_array().unwrap());
    assert_eq!(own, "The common fibular nerve is cut. Common Fibular Nerve palsy; the CPN. `common peroneal nerve`\n");
    let other = apply(there, edit["changes"][folder.uri("there.md")].as_array().unwrap());
    assert!(other.starts_with("# Common fibular nerve\n\n> The common peroneal nerve"), "{other}");
    let id = server.send("textDocument/rename", &with(place, "newName", json!("ulnar nerve")));
    assert!(server.answer(id)["error"]["message"].as_str().unwrap().contains("another structure"));
    server.shut_down();
}

#[test]
fn highlights_are_of_one_structure_by_any_name() {
    let text = "The common peroneal nerve and the common fibular nerve; the CPN, not the tibial nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let found = server.ask("textDocument/documentHighlight", &find(URI, text, "common fibular"));
    assert_eq!(found.as_array().unwrap().len(), 3, "{found}");
    server.shut_down();
}

#[test]
fn segments_are_found_in_lists_and_within_ranges() {
    let text = "Deltoid (C5, 6), biceps C5–C7; the sixth cervical nerve. Not the C6 vertebra.\n";
    let folder = Folder::new("segments", &[("a.md", text), ("b.md", "# Triceps\n\nC6-8.\n"), ("c.md", "Deltoid.\n")]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    wait_for_index(&mut server, 3);
    let place = find(&uri, text, " 6)");
    let hover = server.ask("textDocument/hover", &place);
    assert!(hover["contents"]["value"].as_str().unwrap().starts_with("**C6**"), "{hover}");
    let found = server.ask("textDocument/documentHighlight", &place);
    let ranges: Vec<(u64, u64)> = found
        .as_array()
        .unwrap()
        .iter()
        .map(|one| {
            let at = |end: &str| one["range"][end]["character"].as_u64().unwrap();
            (at("start"), at("end"))
        })
        .collect();
    assert_eq!(ranges, [(13, 14), (24, 29), (35, 55)], "{found}");
    let context = json!({ "includeDeclaration": false });
    let found = server.ask("textDocument/references", &with(place, "context", context));
    let of = |name: &str| found.as_array().unwrap().iter().filter(|one| one["uri"] == folder.uri(name)).count();
    assert_eq!((of("a.md"), of("b.md"), of("c.md")), (3, 1, 0), "{found}");
    server.shut_down();
}

#[test]
fn movements_are_found_by_any_word_for_them() {
    let text =
        "Brachialis flexes the elbow joint. Elbow flexion, by the flexors; flexor carpi radialis extends nothing.\n";
    let folder =
        Folder::new("movements", &[("a.md", text), ("b.md", "# Flexion\n\nOf any joint.\n"), ("c.md", "Biceps.\n")]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    wait_for_index(&mut server, 3);
    let place = find(&uri, text, "flexion");
    let hover = server.ask("textDocument/hover", &place);
    let card = hover["contents"]["value"].as_str().unwrap();
    for words in ["to flex; flexor", "*Opposite:* extension", "- elbow joint\n  - *prime movers:* biceps brachii"] {
        assert!(card.contains(words), "no {words} in {card}");
    }
    let found = server.ask("textDocument/documentHighlight", &place);
    let starts: Vec<u64> =
        found.as_array().unwrap().iter().map(|one| one["range"]["start"]["character"].as_u64().unwrap()).collect();
    assert_eq!(starts, [11, 41, 57], "{found}");
    let context = json!({ "includeDeclaration": false });
    let found = server.ask("textDocument/references", &with(place, "context", context));
    let of = |name: &str| found.as_array().unwrap().iter().filter(|one| one["uri"] == folder.uri(name)).count();
    assert_eq!((of("a.md"), of("b.md"), of("c.md")), (3, 1, 0), "{found}");
    server.shut_down();
}

#[test]
fn every_kind_of_structure_has_its_token() {
    let text = "The ulnar nerve, brachial plexus, C8, deltoid, elbow joint, carpal tunnel, C6 dermatome, flexion, rotator cuff.\n";
    let mut server = Server::spawn();
    let offer = server.ask("initialize", &json!({ "capabilities": {} }));
    let legend = offer["capabilities"]["semanticTokensProvider"]["legend"]["tokenTypes"].clone();
    server.notify("initialized", &json!({}));
    server.open(URI, 1, text);
    let data = server.ask("textDocument/semanticTokens/full", &document(URI))["data"].as_array().unwrap().clone();
    let kind =
        |token: &[Value]| legend[usize::try_from(token[3].as_u64().unwrap()).unwrap()].as_str().unwrap().to_owned();
    let kinds: Vec<String> = data.chunks(5).map(kind).collect();
    assert_eq!(kinds, ["nerve", "plexus", "root", "muscle", "joint", "landmark", "skin", "movement", "group"]);
    server.shut_down();
}

#[test]
fn a_name_is_edited_together_with_its_likes() {
    let text = "The ulnar nerve and again the ulnar nerve.\n\nThe ulnar nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let found = server.ask("textDocument/linkedEditingRange", &find(URI, text, "ulnar"));
    assert_eq!(found["ranges"].as_array().unwrap().len(), 2, "{found}");
    server.shut_down();
}

#[test]
fn actions_fix_rename_and_insert() {
    let text = "# Axillary nerve\n\nDeltoid is supplied by the radial nerve.\n";
    let resolve = json!({ "resolveSupport": { "properties": ["edit"] } });
    let capabilities = json!({
        "textDocument": { "codeAction": resolve },
        "workspace": { "workspaceEdit": { "documentChanges": true } },
    });
    let mut server = Server::start("utf-16", capabilities, None);
    server.open(URI, 1, text);
    let mut actions = |line: u64, column: u64, only: Value| {
        let here = json!({ "line": line, "character": column });
        let mut context = json!({ "diagnostics": [] });
        if !only.is_null() {
            context["only"] = only;
        }
        let range = json!({ "start": here, "end": here });
        let params = json!({ "textDocument": { "uri": URI }, "range": range, "context": context });
        server.ask("textDocument/codeAction", &params).as_array().unwrap().clone()
    };
    let fixes = actions(2, 30, json!(["quickfix"]));
    let edits = fixes[0]["edit"]["documentChanges"][0]["edits"].as_array().unwrap().clone();
    assert!(apply(text, &edits).contains("supplied by the axillary nerve"), "{fixes:?}");
    assert_eq!(fixes[0]["edit"]["documentChanges"][0]["textDocument"]["version"], 1);
    let names = actions(0, 4, json!(["refactor"]));
    let latin = names.iter().find(|action| action["title"].as_str().unwrap().contains("Latin")).unwrap();
    assert_eq!(latin["edit"]["documentChanges"][0]["edits"][0]["newText"], "Nervus axillaris");
    let sources = actions(0, 4, json!(["source"]));
    let table =
        sources.iter().find(|action| action["title"].as_str().unwrap().contains("supply table")).unwrap().clone();
    assert!(table["edit"].is_null());
    let resolved = server.ask("codeAction/resolve", &table);
    assert!(resolved["edit"].to_string().contains("teres minor"), "{resolved}");
    server.replace(URI, 2, "Another text.\n");
    let id = server.send("codeAction/resolve", &table);
    assert_eq!(server.answer(id)["error"]["code"], -32801);
    server.shut_down();
}

#[test]
fn commands_ask_the_client_for_an_edit() {
    let mut server = Server::plain();
    server.open(URI, 1, "# Axillary nerve\n");
    let arguments = json!([URI, "axillary-nerve", 1]);
    for (command, word) in [("fascicle.insertSupplyTable", "| Muscle"), ("fascicle.insertBranchTree", "```text")] {
        server.ask("workspace/executeCommand", &json!({ "command": command, "arguments": arguments }));
        let asked = server.wait_for("workspace/applyEdit");
        assert!(asked["params"]["edit"]["changes"][URI][0]["newText"].as_str().unwrap().contains(word), "{asked}");
    }
    let id = server.send("workspace/executeCommand", &json!({ "command": "nonesuch", "arguments": arguments }));
    assert_eq!(server.answer(id)["error"]["code"], -32602);
    server.shut_down();
}

#[test]
fn lenses_tell_what_a_section_covers() {
    let mut server = Server::plain();
    server.open(URI, 1, "# Axillary nerve\n\nIt supplies deltoid.\n");
    let lenses = server.ask("textDocument/codeLens", &document(URI));
    assert_eq!(lenses[0]["command"]["title"], "1 of 2 muscles; missing: teres minor");
    server.shut_down();
}

#[test]
fn hints_show_segments_where_they_are_wanted() {
    let text = "Deltoid is one. Teres minor (C5, C6) is another.\n";
    let folder = Folder::new("hints", &[("fascicle.toml", "segments = true\n"), ("a.md", text)]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    let hints = server.ask("textDocument/inlayHint", &with(document(&uri), "range", whole()));
    assert_eq!(hints.as_array().unwrap().len(), 1, "never where the author wrote them: {hints}");
    assert_eq!((&hints[0]["label"], &hints[0]["position"]["character"]), (&json!("C5, C6"), &json!(7)));
    let resolved = server.ask("inlayHint/resolve", &hints[0]);
    assert!(resolved["tooltip"]["value"].as_str().unwrap().contains("C5, C6"), "{resolved}");
    // The edit of a hint of an earlier version would go to the wrong place.
    server.replace(&uri, 2, "So is the deltoid.\n");
    let stale = server.send("inlayHint/resolve", &hints[0]);
    assert_eq!(server.answer(stale)["error"]["code"], -32801);
    server.open(URI, 1, text);
    let none = server.ask("textDocument/inlayHint", &with(document(URI), "range", whole()));
    assert_eq!(none, json!([]), "off unless the course wants them");
    server.shut_down();
}

#[test]
fn tokens_full_range_and_delta_agree() {
    let text = "Deltoid and\nthe radial nerve.\nDeltoid is supplied by the radial nerve.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let full = server.ask("textDocument/semanticTokens/full", &document(URI));
    let data = full["data"].as_array().unwrap().clone();
    assert_eq!(data[..10], json!([0, 0, 7, 3, 0, 1, 4, 12, 0, 0]).as_array().unwrap()[..], "{data:?}");
    assert_eq!(data[14], 4, "the contradicted one is told: {data:?}");
    let first = json!({ "start": { "line": 0, "character": 0 }, "end": { "line": 1, "character": 0 } });
    let part = server.ask("textDocument/semanticTokens/range", &with(document(URI), "range", first));
    assert_eq!(part["data"].as_array().unwrap()[..], data[..5]);
    server.replace(URI, 2, &text.replace("and\n", "and teres minor and\n"));
    let params = with(document(URI), "previousResultId", full["resultId"].clone());
    let delta = server.ask("textDocument/semanticTokens/full/delta", &params);
    let mut made = data;
    for edit in delta["edits"].as_array().unwrap() {
        let start = usize::try_from(edit["start"].as_u64().unwrap()).unwrap();
        let count = usize::try_from(edit["deleteCount"].as_u64().unwrap()).unwrap();
        made.splice(start..start + count, edit["data"].as_array().cloned().unwrap_or_default());
    }
    let again = server.ask("textDocument/semanticTokens/full", &document(URI));
    assert_eq!(again["data"], json!(made));
    server.shut_down();
}

#[test]
fn symbols_are_headings_and_structures() {
    let there = "# The arm\n\n## Axillary nerve\n\nIt supplies deltoid.\n\n# The leg\n";
    let folder = Folder::new("symbols", &[("there.md", there)]);
    let nested = json!({ "textDocument": { "documentSymbol": { "hierarchicalDocumentSymbolSupport": true } } });
    let mut server = Server::start("utf-16", nested, Some(&folder.uri("")));
    wait_for_index(&mut server, 1);
    let found = server.ask("workspace/symbol", &json!({ "query": "deltoid" }));
    assert_eq!(found[0]["name"], "deltoid", "{found}");
    assert_eq!(found[0]["location"]["range"]["start"], json!({ "line": 4, "character": 12 }));
    let uri = folder.uri("there.md");
    server.open(&uri, 1, there);
    let symbols = server.ask("textDocument/documentSymbol", &document(&uri));
    assert_eq!(symbols.as_array().unwrap().len(), 2, "{symbols}");
    assert_eq!(symbols[0]["children"][0]["detail"], "axillary nerve");
    assert_eq!(symbols[0]["range"]["end"]["line"], 6);
    server.shut_down();
}

#[test]
fn sections_and_tables_fold() {
    let mut server = Server::plain();
    server.open(URI, 1, "# A\n\ntext\n\n| a | b |\n|---|---|\n| c | d |\n\n# B\n\ntext\n");
    let folds = server.ask("textDocument/foldingRange", &document(URI));
    let lines: Vec<(u64, u64)> = folds
        .as_array()
        .unwrap()
        .iter()
        .map(|fold| (fold["startLine"].as_u64().unwrap(), fold["endLine"].as_u64().unwrap()))
        .collect();
    assert_eq!(lines, [(0, 6), (4, 6), (8, 10)]);
    server.shut_down();
}

#[test]
fn a_selection_grows_by_meaning() {
    let text = "# A\n\nSo. The axillary nerve supplies deltoid. End.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let place = find(URI, text, "axillary")["position"].clone();
    let grown = server.ask("textDocument/selectionRange", &with(document(URI), "positions", json!([place])));
    let mut ranges = Vec::new();
    let mut next = &grown[0];
    while next.is_object() {
        let start = &next["range"]["start"];
        let end = &next["range"]["end"];
        if start["line"] == 2 && end["line"] == 2 {
            let cut = |position: &Value| usize::try_from(position["character"].as_u64().unwrap()).unwrap();
            ranges.push(&text[5..][cut(start)..cut(end)]);
        }
        next = &next["parent"];
    }
    for wanted in
        ["axillary", "axillary nerve", "axillary nerve supplies deltoid", "The axillary nerve supplies deltoid."]
    {
        assert!(ranges.contains(&wanted), "{wanted}: {ranges:?}");
    }
    server.shut_down();
}

#[test]
fn links_lead_to_documents_that_are_there() {
    let text = "[a](there.md#part), [b](gone.md), [[there]], [c](https://example.org/x)\n";
    let folder = Folder::new("links", &[("here.md", text), ("there.md", "# Part\n")]);
    let mut server = Server::plain();
    let uri = folder.uri("here.md");
    server.open(&uri, 1, text);
    let links = server.ask("textDocument/documentLink", &document(&uri));
    let targets: Vec<&str> = links.as_array().unwrap().iter().map(|link| link["target"].as_str().unwrap()).collect();
    let there = folder.uri("there.md");
    assert_eq!(targets, [&*format!("{there}#part"), &*there, "https://example.org/x"]);
    server.shut_down();
}

#[test]
fn hierarchies_go_to_the_roots_and_to_the_muscles() {
    let text = "The axillary nerve, supraspinatus, the rotator cuff.\n";
    let mut server = Server::plain();
    server.open(URI, 1, text);
    let names = |list: &Value, key: &str| -> Vec<String> {
        let name = |item: &Value| if key.is_empty() { item["name"].clone() } else { item[key]["name"].clone() };
        list.as_array().unwrap().iter().map(|item| name(item).as_str().unwrap().to_owned()).collect()
    };
    let nerve = server.ask("textDocument/prepareCallHierarchy", &find(URI, text, "axillary"))[0].clone();
    let above = server.ask("callHierarchy/incomingCalls", &json!({ "item": nerve }));
    assert_eq!(names(&above, "from"), ["posterior cord of brachial plexus"]);
    let below = server.ask("callHierarchy/outgoingCalls", &json!({ "item": nerve }));
    let below = names(&below, "to");
    assert!(["deltoid", "teres minor"].iter().all(|muscle| below.iter().any(|name| name == muscle)), "{below:?}");
    let muscle = server.ask("textDocument/prepareTypeHierarchy", &find(URI, text, "supraspinatus"))[0].clone();
    let groups = server.ask("typeHierarchy/supertypes", &json!({ "item": muscle }));
    assert!(names(&groups, "").contains(&"rotator cuff".to_owned()), "{groups}");
    let group = server.ask("textDocument/prepareTypeHierarchy", &find(URI, text, "rotator"))[0].clone();
    let members = server.ask("typeHierarchy/subtypes", &json!({ "item": group }));
    assert!(names(&members, "").contains(&"supraspinatus".to_owned()), "{members}");
    // Step by step up to the roots.
    let (mut level, mut met) = (vec![nerve], Vec::new());
    while let Some(item) = level.pop() {
        for call in server.ask("callHierarchy/incomingCalls", &json!({ "item": item })).as_array().unwrap() {
            let name = call["from"]["name"].as_str().unwrap().to_owned();
            if !met.contains(&name) {
                met.push(name);
                level.push(call["from"].clone());
            }
        }
    }
    assert!(["C5", "C6"].iter().all(|root| met.iter().any(|name| name == root)), "{met:?}");
    // Joints are of a kind, and kinds of a class.
    let text = "The elbow joint.\n";
    server.open(URI, 2, text);
    let joint = server.ask("textDocument/prepareTypeHierarchy", &find(URI, text, "elbow"))[0].clone();
    let kinds = server.ask("typeHierarchy/supertypes", &json!({ "item": joint }));
    let hinge = kinds.as_array().unwrap().iter().find(|one| one["name"] == "hinge joint (synovial)").unwrap().clone();
    let hinges = server.ask("typeHierarchy/subtypes", &json!({ "item": hinge }));
    assert!(names(&hinges, "").contains(&"elbow joint".to_owned()), "{hinges}");
    let class = server.ask("typeHierarchy/supertypes", &json!({ "item": hinge }))[0].clone();
    assert_eq!(class["name"], "synovial joint");
    let within = server.ask("typeHierarchy/subtypes", &json!({ "item": class }));
    assert!(names(&within, "").contains(&"hinge joint (synovial)".to_owned()), "{within}");
    server.shut_down();
}

#[test]
fn findings_are_published_and_cleared() {
    let mut server = Server::plain();
    server.open(URI, 1, "# Roots\n\nDeltoid is supplied by the radial nerve.\n");
    let told = server.wait_for("textDocument/publishDiagnostics");
    let finding = &told["params"]["diagnostics"][0];
    assert_eq!((&told["params"]["version"], &finding["severity"]), (&json!(1), &json!(1)), "{told}");
    assert!(finding["codeDescription"]["href"].as_str().unwrap().ends_with(finding["code"].as_str().unwrap()));
    server.replace(URI, 2, "Deltoid is supplied by the axillary nerve.\n");
    let told = server.wait_for("textDocument/publishDiagnostics");
    assert_eq!((&told["params"]["version"], &told["params"]["diagnostics"]), (&json!(2), &json!([])));
    server.replace(URI, 3, "Deltoid is supplied by the radial nerve.\n");
    server.wait_for("textDocument/publishDiagnostics");
    server.replace(URI, 4, "Deltoid is supplied by the radial nerve.\n");
    let told = server.wait_for("textDocument/publishDiagnostics");
    assert_eq!(told["params"]["version"], 4, "the same text is another version");
    server.notify("textDocument/didClose", &document(URI));
    let told = server.wait_for("textDocument/publishDiagnostics");
    assert_eq!(told["params"]["diagnostics"], json!([]), "a closed document keeps no findings");
    server.shut_down();
}

#[test]
fn a_word_that_is_being_typed_is_left_alone() {
    let mut server = Server::plain();
    server.open(URI, 1, "The musculocutaneu");
    server.wait_for("textDocument/publishDiagnostics");
    let end = json!({ "line": 0, "character": 18 });
    let change = json!({ "range": { "start": end, "end": end }, "text": "o" });
    let params = json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [change] });
    server.notify("textDocument/didChange", &params);
    let told = server.wait_for("textDocument/publishDiagnostics");
    let touches = |told: &Value| {
        told["params"]["diagnostics"].as_array().unwrap().iter().any(|one| one["range"]["end"]["character"] == 19)
    };
    assert!(!touches(&told), "flagged while it grows: {told}");
    server.shut_down();
}

#[test]
fn findings_can_be_asked_for() {
    let mut server = Server::start("utf-16", json!({ "textDocument": { "diagnostic": {} } }), None);
    server.open(URI, 1, "Deltoid is supplied by the radial nerve.\n");
    let first = server.ask("textDocument/diagnostic", &document(URI));
    assert_eq!((&first["kind"], first["items"].as_array().unwrap().len()), (&json!("full"), 1));
    let params = with(document(URI), "previousResultId", first["resultId"].clone());
    assert_eq!(server.ask("textDocument/diagnostic", &params)["kind"], "unchanged");
    server.listen(Duration::from_millis(300));
    let is_pushed = |said: &Value| said["method"] == "textDocument/publishDiagnostics";
    assert!(!server.said.iter().any(is_pushed), "a client that asks is not told");
    server.shut_down();
}

/// Waits until the index of the first folder holds so many documents.
fn wait_for_index(server: &mut Server, documents: u64) {
    wait_for_folder(server, 0, documents);
}

/// Waits until the index of a folder holds so many documents.
fn wait_for_folder(server: &mut Server, folder: usize, documents: u64) {
    for _ in 0..600 {
        let status = server.ask("fascicle/status", &Value::Null);
        let folder = &status["folders"][folder];
        if folder["indexed"] == true && folder["documents"] == documents {
            return;
        }
        std::thread::sleep(Duration::from_millis(50));
    }
    panic!("the index does not come to {documents} documents");
}

#[test]
fn findings_of_the_course_wait_until_something_is_new() {
    let wrong = "Deltoid is supplied by the radial nerve.\n";
    let folder =
        Folder::new("pull", &[("a.md", wrong), ("b.md", "Nothing here.\n"), (".ignore", "c.md\n"), ("c.md", wrong)]);
    let mut server = Server::start("utf-16", json!({ "textDocument": { "diagnostic": {} } }), Some(&folder.uri("")));
    wait_for_index(&mut server, 2);
    let report = server.ask("workspace/diagnostic", &json!({ "previousResultIds": [] }));
    let items = report["items"].as_array().unwrap();
    assert_eq!(items.len(), 2, "ignore files hold: {report}");
    let ids = |items: &[Value]| -> Value {
        items.iter().map(|item| json!({ "uri": item["uri"], "value": item["resultId"] })).collect()
    };
    let known = ids(items);
    let id = server.send("workspace/diagnostic", &json!({ "previousResultIds": known }));
    server.listen(Duration::from_millis(300));
    server.open(&folder.uri("b.md"), 1, wrong);
    let answer = server.answer(id);
    let news: Vec<&Value> =
        answer["result"]["items"].as_array().unwrap().iter().filter(|item| item["kind"] == "full").collect();
    assert_eq!(news.len(), 1, "only what is new: {answer}");
    assert!(news[0]["uri"].as_str().unwrap().ends_with("b.md"));
    // A document that is gone is cleared.
    fs::remove_file(folder.0.join("a.md")).unwrap();
    let change = json!([{ "uri": folder.uri("a.md"), "type": 3 }]);
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }));
    wait_for_index(&mut server, 1);
    let params = json!({ "previousResultIds": known, "partialResultToken": "part" });
    let report = server.ask("workspace/diagnostic", &params);
    let gone = report["items"].as_array().unwrap().iter().find(|item| item["uri"].as_str().unwrap().ends_with("a.md"));
    assert_eq!(gone.unwrap()["items"], json!([]), "{report}");
    server.shut_down();
}

#[test]
fn a_course_is_read_with_progress_and_its_settings_are_checked() {
    let folder = Folder::new("course", &[("fascicle.toml", "worsd = []\n"), ("a.md", "Deltoid.\n")]);
    let capabilities = json!({
        "window": { "workDoneProgress": true },
        "workspace": { "didChangeWatchedFiles": { "dynamicRegistration": true } },
    });
    let mut server = Server::start("utf-16", capabilities, Some(&folder.uri("")));
    let end = server.wait(|said| said["params"]["value"]["kind"] == "end").unwrap();
    assert_eq!(end["params"]["value"]["message"], "1 of 1 documents");
    let watch = json!({ "workspace": { "didChangeWatchedFiles": { "dynamicRegistration": true } } });
    let mut server = Server::start("utf-16", watch, Some(&folder.uri("")));
    let registered = server.wait_for("client/registerCapability");
    assert!(registered.to_string().contains("toml"), "{registered}");
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    server.listen(Duration::from_millis(500));
    assert!(!server.said.iter().any(|said| said["method"] == "client/registerCapability"), "it cannot");
    let told =
        server.wait(|said| said["params"]["uri"].as_str().is_some_and(|uri| uri.ends_with("fascicle.toml"))).unwrap();
    let message = told["params"]["diagnostics"][0]["message"].as_str().unwrap();
    assert!(message.contains("did you mean `words`?"), "{message}");
    server.shut_down();
}

#[test]
fn a_course_that_is_read_can_be_left_and_is_no_hindrance() {
    let body = "The axillary nerve supplies deltoid and teres minor, and the skin over them.\n\n".repeat(800);
    let names: Vec<String> = (0..600).map(|number| format!("{number:03}.md")).collect();
    let files: Vec<(&str, &str)> = names.iter().map(|name| (&**name, &*body)).collect();
    let folder = Folder::new("long", &files);
    let capabilities = json!({
        "window": { "workDoneProgress": true },
        "workspace": { "didChangeWatchedFiles": { "dynamicRegistration": true } },
    });
    let mut server = Server::start("utf-16", capabilities, Some(&folder.uri("")));
    let begin = server.wait(|said| said["params"]["value"]["kind"] == "begin").unwrap();
    assert_eq!(begin["params"]["value"]["cancellable"], true);
    // Answers do not wait for the end of the bar.
    server.open(URI, 1, "Deltoid.\n");
    assert!(!server.ask("textDocument/hover", &at(URI, 0, 2)).is_null());
    let is_end = |said: &Value| said["params"]["value"]["kind"] == "end";
    assert!(!server.said.iter().any(is_end), "the course was read before it could be left");
    server.notify("window/workDoneProgress/cancel", &json!({ "token": "nonsense" }));
    server.notify("window/workDoneProgress/cancel", &json!({ "token": begin["params"]["token"] }));
    let end = server.wait(is_end).unwrap();
    let message = end["params"]["value"]["message"].as_str().unwrap();
    assert!(message.starts_with("stopped at ") && message.ends_with(" of 600 documents"), "{message}");
    let status = server.ask("fascicle/status", &Value::Null);
    assert_eq!(status["folders"][0]["indexed"], false);
    assert!(status["folders"][0]["documents"].as_u64().unwrap() < 600, "{status}");
    server.shut_down();
}

#[test]
fn a_client_that_makes_no_bar_keeps_no_folder_from_being_read() {
    let folder = Folder::new("no-bar", &[("a.md", "Deltoid.\n")]);
    fs::create_dir_all(folder.0.join("inner")).unwrap();
    folder.write("inner/fascicle.toml", "");
    folder.write("inner/b.md", "Deltoid.\n");
    let mut server = Server::spawn();
    server.unanswered = Some("window/workDoneProgress/create");
    let params = json!({
        "capabilities": { "window": { "workDoneProgress": true } },
        "workspaceFolders": [{ "uri": folder.uri(""), "name": "course" }],
    });
    server.ask("initialize", &params);
    server.notify("initialized", &json!({}));
    wait_for_folder(&mut server, 1, 1);
    let tokens: Vec<Value> = server
        .said
        .iter()
        .filter(|said| said["method"] == "window/workDoneProgress/create")
        .map(|said| said["params"]["token"].clone())
        .collect();
    assert!(tokens.len() == 2 && tokens[0] != tokens[1], "{tokens:?}");
    assert!(!server.said.iter().any(|said| said["method"] == "$/progress"), "there is no bar to show it in");
    server.shut_down();
}

#[test]
fn a_client_that_tells_of_settings_when_asked_to_is_asked() {
    let on_demand = json!({ "workspace": { "didChangeConfiguration": { "dynamicRegistration": true } } });
    for (capabilities, is_asked) in [(on_demand, true), (json!({}), false)] {
        let mut server = Server::start("utf-16", capabilities, None);
        server.listen(Duration::from_millis(500));
        let asked = server.said.iter().find(|said| said["method"] == "client/registerCapability");
        let registration = asked.map(|asked| asked["params"]["registrations"][0].clone());
        assert_eq!(registration.is_some(), is_asked, "{registration:?}");
        if let Some(registration) = registration {
            assert_eq!(registration["method"], "workspace/didChangeConfiguration");
            assert_eq!(registration["registerOptions"]["section"], "fascicle");
        }
        server.shut_down();
    }
}

#[test]
fn a_saved_settings_file_counts_at_once() {
    let text = "Deltoid is one.\n";
    let folder = Folder::new("saved", &[("fascicle.toml", ""), ("a.md", text)]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    let hints = with(document(&uri), "range", whole());
    assert_eq!(server.ask("textDocument/inlayHint", &hints), json!([]));
    folder.write("fascicle.toml", "segments = true\n");
    server.notify("textDocument/didSave", &document(&folder.uri("fascicle.toml")));
    assert_eq!(server.ask("textDocument/inlayHint", &hints).as_array().unwrap().len(), 1);
    server.shut_down();
}

#[test]
fn settings_of_the_editor_count_at_once() {
    let mut server = Server::plain();
    server.open(URI, 1, "Deltoid is one.\n");
    let settings = json!({ "fascicle": { "segments": true, "nonsense": 1, "refrence": "x" } });
    server.notify("workspace/didChangeConfiguration", &json!({ "settings": settings }));
    let message = server.wait_for("window/showMessage");
    let message = message["params"]["message"].as_str().unwrap();
    assert!(message.contains("nonsense") && message.contains("did you mean `reference`?"), "{message}");
    server.listen(Duration::from_millis(300));
    let hints = server.ask("textDocument/inlayHint", &with(document(URI), "range", whole()));
    assert_eq!(hints.as_array().unwrap().len(), 1);
    // What was told is not told again; what is new is, though there is no file with a line for it.
    let (prefer, off) = (json!(["deltoid", "teres minro"]), json!(["eponyms"]));
    let settings = json!({ "nonsense": 1, "reference": "no-such-book", "prefer": prefer, "off": off });
    server.notify("workspace/didChangeConfiguration", &json!({ "settings": { "fascicle": settings } }));
    let mut told = String::new();
    let news = ["no-such-book", "did you mean `eponym`?", "did you mean `teres minor`?"];
    while !news.iter().all(|new| told.contains(new)) {
        told += server.wait_for("window/showMessage")["params"]["message"].as_str().unwrap();
    }
    server.listen(Duration::from_millis(300));
    let more = server.said.iter().filter(|said| said["method"] == "window/showMessage");
    let all = more.map(|said| said["params"]["message"].as_str().unwrap()).fold(told, |all, text| all + text);
    assert!(!all.contains("nonsense") && all.matches("no-such-book").count() == 1, "{all}");
    server.shut_down();
}

#[test]
fn settings_are_asked_for_where_the_editor_answers_and_what_it_pushes_does_not_count() {
    let capabilities = json!({ "workspace": { "configuration": true } });
    let mut server = Server::start("utf-16", capabilities, None);
    server.settings = json!({ "off": ["supply-differs"] });
    let wrong = "Deltoid is supplied by the radial nerve.\n";
    server.open(URI, 1, wrong);
    let pushed = json!({ "settings": { "fascicle": { "off": [] } } });
    server.notify("workspace/didChangeConfiguration", &pushed);
    server.wait_for("workspace/configuration");
    server.listen(Duration::from_millis(500));
    server.shows(URI, <[Value]>::is_empty);
    server.settings = Value::Null;
    server.settings = json!({ "off": [] });
    server.notify("workspace/didChangeConfiguration", &json!({ "settings": null }));
    server.shows(URI, |list| list.len() == 1);
    server.shut_down();
}

#[test]
fn folders_come_and_go() {
    let folder = Folder::new("folders", &[("a.md", "Deltoid.\n")]);
    let mut server = Server::plain();
    let one = json!([{ "uri": folder.uri(""), "name": "one" }]);
    server.notify("workspace/didChangeWorkspaceFolders", &json!({ "event": { "added": one, "removed": [] } }));
    wait_for_index(&mut server, 1);
    server.notify("workspace/didChangeWorkspaceFolders", &json!({ "event": { "added": [], "removed": one } }));
    assert_eq!(server.ask("fascicle/status", &Value::Null)["folders"], json!([]));
    server.shut_down();
}

#[test]
fn files_change_without_the_editor() {
    let folder = Folder::new("watched", &[("a.md", "Deltoid.\n")]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    wait_for_index(&mut server, 1);
    folder.write("b.md", "Teres minor.\n");
    let change = json!([{ "uri": folder.uri("b.md"), "type": 1 }]);
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }));
    wait_for_index(&mut server, 2);
    let found = server.ask("workspace/symbol", &json!({ "query": "teres minor" }));
    assert!(found[0]["location"]["uri"].as_str().unwrap().ends_with("b.md"), "{found}");
    server.shut_down();
}

#[test]
fn files_change_though_nobody_watches_them() {
    let folder = Folder::new("unwatched", &[("a.md", "Deltoid.\n")]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    wait_for_index(&mut server, 1);
    folder.write("b.md", "Teres minor.\n");
    wait_for_index(&mut server, 2);
    fs::remove_file(folder.0.join("a.md")).unwrap();
    wait_for_index(&mut server, 1);
    server.shut_down();
}

#[test]
fn settings_and_vocabulary_change_though_nobody_watches_them() {
    let text = "The sternalis parvus and the infraspinatous.\n";
    let folder = Folder::new("unwatched-settings", &[("a.md", text)]);
    fs::create_dir_all(folder.0.join("inner")).unwrap();
    folder.write("inner/b.md", text);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let (uri, inner) = (folder.uri("a.md"), folder.uri("inner/b.md"));
    server.open(&uri, 1, text);
    server.open(&inner, 1, text);
    server.shows(&uri, |list| list.len() == 1);
    server.shows(&inner, |list| list.len() == 1);
    // A settings file comes.
    folder.write("fascicle.toml", "words = [\"infraspinatous\"]\noverlay = [\"ours.toml\"]\n");
    folder.write("ours.toml", "");
    server.shows(&uri, <[Value]>::is_empty);
    // A vocabulary file changes.
    let place = find(&uri, text, "sternalis");
    let is_known = |server: &mut Server| server.ask("textDocument/hover", &place).to_string().contains("ours.toml");
    assert!(!is_known(&mut server));
    folder.write("ours.toml", &own_muscle("axillary-nerve"));
    for _ in 0..200 {
        if is_known(&mut server) {
            break;
        }
        std::thread::sleep(Duration::from_millis(100));
    }
    assert!(is_known(&mut server));
    // A folder within becomes a course of its own.
    server.shows(&inner, <[Value]>::is_empty);
    folder.write("inner/fascicle.toml", "words = []\n");
    server.shows(&inner, |list| list.len() == 1);
    server.shut_down();
}

/// A vocabulary file with a muscle of its own.
fn own_muscle(nerve: &str) -> String {
    format!(
        "words = [\"sternalis parvus local\"]\n[[muscle]]\nname = \"sternalis parvus\"\nregion = \"thorax\"\n\
         nerves = [{{ nerve = \"{nerve}\", src = \"practice\" }}]\nroots = [{{ main = \"C5\", src = \"practice\" }}]\n"
    )
}

#[test]
fn what_a_course_writes_itself_is_shown_as_its_own() {
    let own = own_muscle("axillary-nerve")
        + "[[muscle]]\nid = \"brachialis\"\nroots = [{ main = \"C6\", src = \"practice\", note = \"As we teach it\" }]\n";
    let text = "The sternalis parvus, the brachialis and the deltoid.\n";
    let files = [("fascicle.toml", "overlay = [\"ours.toml\"]\n"), ("ours.toml", &*own), ("a.md", text)];
    let folder = Folder::new("own", &files);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    for (name, id, line, shown) in
        [("sternalis", "sternalis-parvus", 1, "axillary nerve"), ("brachialis", "brachialis", 6, "C6")]
    {
        let place = find(&uri, text, name);
        let found = server.ask("textDocument/definition", &place);
        assert_eq!(
            (&found[0]["uri"], &found[0]["range"]["start"]["line"]),
            (&json!(folder.uri("ours.toml")), &json!(line))
        );
        let from = format!("From the course's own `ours.toml`, line {}.", line + 1);
        let card = server.ask("textDocument/hover", &place)["contents"]["value"].as_str().unwrap().to_owned();
        assert!(card.contains(&from) && card.contains(shown), "{card}");
        let entry = server.ask("fascicle/entry", &json!({ "id": id }))["text"].as_str().unwrap().to_owned();
        assert!(entry.contains(&from) && entry.contains(shown) && entry.contains("Every fact"), "{entry}");
    }
    let card = server.ask("textDocument/hover", &find(&uri, text, "deltoid")).to_string();
    assert!(!card.contains("the course's own"), "{card}");
    // The nerve's document names what the course adds.
    let nerve = server.ask("fascicle/entry", &json!({ "id": "axillary-nerve" })).to_string();
    assert!(nerve.contains("sternalis parvus"), "{nerve}");
    server.shut_down();
}

#[test]
fn files_and_folders_that_the_editor_moves_are_followed_at_once() {
    let wrong = "Deltoid is supplied by the radial nerve.\n";
    let folder = Folder::new("moved", &[("a.md", wrong), ("b.md", wrong)]);
    fs::create_dir_all(folder.0.join("old")).unwrap();
    folder.write("old/c.md", wrong);
    let watch = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": { "didChangeWatchedFiles": { "dynamicRegistration": true } },
    });
    let mut server = Server::start("utf-16", watch, Some(&folder.uri("")));
    wait_for_index(&mut server, 3);
    let findings = |server: &mut Server| -> Vec<String> {
        let report = server.ask("workspace/diagnostic", &json!({ "previousResultIds": [] }));
        let items = report["items"].as_array().unwrap().iter().filter(|item| item["items"] != json!([]));
        items.map(|item| item["uri"].as_str().unwrap().rsplit_once('/').unwrap().1.to_owned()).collect()
    };
    let mut follow = |method: &str, files: Value, count: u64, shown: &[&str]| {
        server.notify(method, &json!({ "files": files }));
        wait_for_index(&mut server, count);
        for _ in 0..100 {
            if findings(&mut server) == shown {
                return;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        panic!("after {method}: {:?}", findings(&mut server));
    };
    let rename = |old: &str, new: &str| {
        fs::rename(folder.0.join(old), folder.0.join(new)).unwrap();
        json!([{ "oldUri": folder.uri(old), "newUri": folder.uri(new) }])
    };
    follow("workspace/didRenameFiles", rename("a.md", "x.md"), 3, &["b.md", "c.md", "x.md"]);
    follow("workspace/didRenameFiles", rename("old", "new"), 3, &["b.md", "c.md", "x.md"]);
    fs::remove_file(folder.0.join("b.md")).unwrap();
    follow("workspace/didDeleteFiles", json!([{ "uri": folder.uri("b.md") }]), 2, &["c.md", "x.md"]);
    fs::remove_dir_all(folder.0.join("new")).unwrap();
    follow("workspace/didDeleteFiles", json!([{ "uri": folder.uri("new") }]), 1, &["x.md"]);
    folder.write("y.md", wrong);
    follow("workspace/didCreateFiles", json!([{ "uri": folder.uri("y.md") }]), 2, &["x.md", "y.md"]);
    server.shut_down();
}

#[test]
fn a_question_about_the_course_that_waits_can_be_taken_back() {
    let folder = Folder::new("waits", &[("a.md", "Nothing.\n")]);
    let mut server = Server::start("utf-16", json!({ "textDocument": { "diagnostic": {} } }), Some(&folder.uri("")));
    wait_for_index(&mut server, 1);
    let report = server.ask("workspace/diagnostic", &json!({ "previousResultIds": [] }));
    let item = &report["items"][0];
    let known = json!([{ "uri": item["uri"], "value": item["resultId"] }]);
    let id = server.send("workspace/diagnostic", &json!({ "previousResultIds": known }));
    server.listen(Duration::from_millis(200));
    server.notify("$/cancelRequest", &json!({ "id": id }));
    assert_eq!(server.answer(id)["error"]["code"], -32800);
    server.shut_down();
}

#[test]
fn a_trace_says_where_the_time_went() {
    let mut server = Server::plain();
    server.notify("$/setTrace", &json!({ "value": "verbose" }));
    server.open(URI, 1, "Deltoid.\n");
    server.ask("textDocument/hover", &at(URI, 0, 2));
    let trace = server.wait_for("$/logTrace");
    let told = trace["params"]["verbose"].as_str().unwrap();
    let step = told.lines().find(|line| line.starts_with("read the document (")).unwrap_or_else(|| panic!("{told}"));
    for stage in fascicle_analysis::Stage::ALL.map(fascicle_analysis::Stage::name) {
        let time = step.split(['(', ',']).find_map(|part| part.rsplit_once(&format!("{stage} "))).unwrap().1;
        let number = time.split(" ms").next().unwrap();
        assert!(number.parse::<f64>().is_ok_and(|time| time >= 0.0), "{stage} in {step}");
    }
    server.shut_down();
}

/// A client that is told, and shows places that belong to a finding.
fn with_places() -> Value {
    json!({ "textDocument": { "publishDiagnostics": { "relatedInformation": true, "tagSupport": { "valueSet": [2] } } } })
}

#[test]
fn what_documents_tell_differently_is_told_at_both_places_while_it_lasts() {
    // The vocabulary holds both readings of teres minor, the second as a variant.
    let (here, there) =
        ("The nerve roots of the teres minor are C5 and C6.\n", "# Teres minor\n\n**Teres minor**: C5\n");
    let folder = Folder::new("differ", &[("a.md", here), ("b.md", there)]);
    let mut server = Server::start("utf-16", with_places(), Some(&folder.uri("")));
    let (a, b) = (folder.uri("a.md"), folder.uri("b.md"));
    server.open(&a, 1, here);
    let is_told = |list: &[Value]| list.iter().any(|one| one["code"] == "told-differently");
    let list = server.shows(&a, is_told);
    let place = &list[0]["relatedInformation"][0];
    assert_eq!((&place["location"]["uri"], &place["location"]["range"]["start"]["line"]), (&json!(b), &json!(2)));
    // The other document is opened, and made to agree.
    server.open(&b, 1, there);
    server.shows(&b, is_told);
    server.replace(&b, 2, "# Teres minor\n\n**Teres minor**: C5, C6\n");
    server.shows(&b, <[Value]>::is_empty);
    server.shows(&a, <[Value]>::is_empty);
    // It is closed without being saved: what stands on disk counts again.
    server.notify("textDocument/didClose", &document(&b));
    server.shows(&a, is_told);
    // It is deleted without the editor.
    fs::remove_file(folder.0.join("b.md")).unwrap();
    let change = json!([{ "uri": b, "type": 3 }]);
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }));
    server.shows(&a, <[Value]>::is_empty);
    server.shut_down();
}

#[test]
fn one_name_for_one_structure_over_the_documents_of_a_course() {
    let here = "The common peroneal nerve winds round. The common peroneal nerve is at risk.\n";
    let there = "The common fibular nerve, the common fibular nerve and the common fibular nerve.\n";
    let folder = Folder::new("called", &[("a.md", here), ("b.md", there), ("fascicle.toml", "")]);
    let resolve = json!({ "resolveSupport": { "properties": ["edit"] } });
    let capabilities = json!({ "textDocument": { "codeAction": resolve } });
    let mut server = Server::start("utf-16", capabilities, Some(&folder.uri("")));
    let (a, b) = (folder.uri("a.md"), folder.uri("b.md"));
    server.open(&a, 1, here);
    let is_told = |list: &[Value]| list.iter().any(|one| one["code"] == "two-names");
    let list = server.shows(&a, is_told);
    let message = list[0]["message"].as_str().unwrap();
    assert!(message.contains("“common fibular nerve” here (3 times)"), "{message}");
    let fix = titled(&actions(&mut server, &a, 0, 8, "quickfix"), "Write “common fibular nerve”");
    assert!(apply(here, fix["edit"]["changes"][&a].as_array().unwrap()).starts_with("The common fibular nerve winds"));
    // The other document is opened, and made to agree.
    server.open(&b, 1, there);
    server.replace(&b, 2, "The common peroneal nerve.\n");
    server.shows(&a, <[Value]>::is_empty);
    // A folder without settings is no course that has to call things alike.
    server.replace(&b, 3, there);
    server.shows(&a, is_told);
    fs::remove_file(folder.0.join("fascicle.toml")).unwrap();
    let change = json!([{ "uri": folder.uri("fascicle.toml"), "type": 3 }]);
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }));
    server.shows(&a, <[Value]>::is_empty);
    server.shut_down();
}

#[test]
fn a_name_that_was_given_up_is_told_as_such() {
    let text = "The trochlear nerve is the fourth. The trochlear nerve, or pathetic nerve, is thin.\n";
    let mut server = Server::start("utf-16", with_places(), None);
    server.open(URI, 1, text);
    let list = server.shows(URI, |list| !list.is_empty());
    let former = list.iter().find(|one| one["code"] == "former-name").unwrap_or_else(|| panic!("{list:?}"));
    assert_eq!(former["tags"], json!([2]));
    server.shut_down();
}

/// Actions at a place, of some kinds.
fn actions(server: &mut Server, uri: &str, line: u64, character: u64, only: &str) -> Vec<Value> {
    let here = json!({ "line": line, "character": character });
    let range = json!({ "start": here, "end": here });
    let context = json!({ "diagnostics": [], "only": [only] });
    let params = json!({ "textDocument": { "uri": uri }, "range": range, "context": context });
    server.ask("textDocument/codeAction", &params).as_array().unwrap().clone()
}

fn titled(actions: &[Value], words: &str) -> Value {
    let found = actions.iter().find(|action| action["title"].as_str().unwrap().contains(words));
    found.unwrap_or_else(|| panic!("no action “{words}” among {actions:#?}")).clone()
}

#[test]
fn what_was_found_can_be_allowed_here_and_in_the_course() {
    let text = "Deltoid is supplied by the radial nerve, the infraspinatous not.\n";
    let folder = Folder::new("allow", &[("a.md", text)]);
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    assert_eq!(server.shows(&uri, |list| !list.is_empty()).len(), 2);
    // Here.
    let here = titled(&actions(&mut server, &uri, 0, 30, "quickfix"), "Allow `supply-differs` here");
    let allowed = apply(text, here["edit"]["changes"][&uri].as_array().unwrap());
    assert!(allowed.ends_with("<!-- fascicle:allow supply-differs -->\n"), "{allowed}");
    server.replace(&uri, 2, &allowed);
    let left = server.shows(&uri, |list| list.len() == 1);
    assert_eq!(left[0]["code"], "misspelled-name");
    // In the course: the settings file is made if there is none, and counts when it is there.
    let settings = folder.uri("fascicle.toml");
    let say = |server: &mut Server, words: &str| {
        let action = titled(&actions(server, &uri, 0, 50, "quickfix"), words);
        let before = fs::read_to_string(folder.0.join("fascicle.toml")).unwrap_or_default();
        folder.write("fascicle.toml", &apply(&before, action["edit"]["changes"][&settings].as_array().unwrap()));
        let change = json!([{ "uri": settings, "type": 1 }]);
        server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": change }));
        server.shows(&uri, <[Value]>::is_empty);
    };
    say(&mut server, "Add “infraspinatous” to the words of the course");
    assert_eq!(fs::read_to_string(folder.0.join("fascicle.toml")).unwrap(), "words = [\"infraspinatous\"]\n");
    folder.write("fascicle.toml", "words = []\n");
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": [{ "uri": settings, "type": 2 }] }));
    server.shows(&uri, |list| list.len() == 1);
    say(&mut server, "Allow `misspelled-name` in the whole course");
    let text = fs::read_to_string(folder.0.join("fascicle.toml")).unwrap();
    assert_eq!(text, "words = []\noff = [\"misspelled-name\"]\n");
    server.shut_down();
}

#[test]
fn fixes_reach_the_whole_course() {
    let (a, b) = ("The infraspinatous is one.\n", "# B\n\nThe infraspinatous and the supraspinatous.\n");
    let folder = Folder::new("everywhere", &[("a.md", a), ("b.md", b), ("c.md", "Nothing.\n")]);
    let resolve = json!({ "resolveSupport": { "properties": ["edit"] } });
    let capabilities = json!({ "textDocument": { "codeAction": resolve } });
    let mut server = Server::start("utf-16", capabilities, Some(&folder.uri("")));
    wait_for_index(&mut server, 3);
    let uri = folder.uri("a.md");
    server.open(&uri, 1, a);
    let all = titled(&actions(&mut server, &uri, 0, 0, "source"), "in the course");
    assert_eq!(all["kind"], "source.fixCourse", "no editor may take it for one to apply at each save");
    let edit = server.ask("codeAction/resolve", &all)["edit"]["changes"].clone();
    assert_eq!(edit.as_object().unwrap().len(), 2, "{edit}");
    let fixed = apply(b, edit[folder.uri("b.md")].as_array().unwrap());
    assert_eq!(fixed, "# B\n\nThe infraspinatus and the supraspinatus.\n");
    let alike = titled(&actions(&mut server, &uri, 0, 8, "quickfix"), "everywhere in the course");
    let edit = server.ask("codeAction/resolve", &alike)["edit"]["changes"].clone();
    assert_eq!(apply(a, edit[&uri].as_array().unwrap()), "The infraspinatus is one.\n");
    let fixed = apply(b, edit[folder.uri("b.md")].as_array().unwrap());
    assert_eq!(fixed, "# B\n\nThe infraspinatus and the supraspinatous.\n", "that finding and no other");
    server.shut_down();
}

#[test]
fn a_fix_reaches_its_document_without_a_course() {
    let text = "# Infraspinatous\n\nThe infraspinatous and the supraspinatous; the *infraspinatous* again.\n";
    let mut server = Server::start("utf-16", json!({}), None);
    server.open(URI, 1, text);
    let here = actions(&mut server, URI, 2, 6, "quickfix");
    let alike = titled(&here, "Write “infraspinatus” everywhere in this document");
    let fixed = apply(text, alike["edit"]["changes"][URI].as_array().unwrap());
    let expected = "# Infraspinatus\n\nThe infraspinatus and the supraspinatous; the *infraspinatus* again.\n";
    assert_eq!(fixed, expected, "capitals stay, other findings too");
    let once = actions(&mut server, URI, 2, 32, "quickfix");
    assert!(!once.iter().any(|action| action["title"].as_str().unwrap().contains("everywhere")), "{once:#?}");
    server.shut_down();
}

#[test]
fn lenses_show_where_else_a_structure_is_taught() {
    let text = "# Axillary nerve\n\nIt supplies deltoid and teres minor.\n";
    let there = "# Shoulder\n\n## The axillary nerve\n";
    let folder = Folder::new("taught", &[("a.md", text), ("b.md", there)]);
    let capabilities = json!({ "window": { "showDocument": { "support": true } } });
    let mut server = Server::start("utf-16", capabilities, Some(&folder.uri("")));
    wait_for_index(&mut server, 2);
    let uri = folder.uri("a.md");
    server.open(&uri, 1, text);
    let lenses = server.ask("textDocument/codeLens", &document(&uri));
    let titles: Vec<&str> =
        lenses.as_array().unwrap().iter().map(|one| one["command"]["title"].as_str().unwrap()).collect();
    assert_eq!(titles, ["2 of 2 muscles", "also taught: b.md, “The axillary nerve”"]);
    server.ask("workspace/executeCommand", &lenses[1]["command"]);
    let shown = server.wait_for("window/showDocument");
    assert_eq!(shown["params"]["uri"], folder.uri("b.md"));
    assert_eq!(shown["params"]["selection"]["start"]["line"], 2);
    server.shut_down();
}

#[test]
fn a_course_within_a_folder_has_its_own_words_and_vocabulary() {
    let overlay = "words = [\"sternalis parvus local\"]\n[[muscle]]\nname = \"sternalis parvus\"\nregion = \"thorax\"\n\
                   nerves = [{ nerve = \"axillary-nerve\", src = \"practice\" }]\n\
                   roots = [{ main = \"C5\", src = \"practice\" }]\n";
    let own = "# Sternalis parvus\n\nThe sternalis parvus and the deltoid.\n";
    let folder = Folder::new("nested", &[("a.md", "The deltoid.\n")]);
    fs::create_dir_all(folder.0.join("inner")).unwrap();
    folder.write("inner/fascicle.toml", "overlay = [\"ours.toml\"]\nwrods = []\n");
    folder.write("inner/ours.toml", overlay);
    folder.write("inner/b.md", own);
    folder.write("inner/c.md", "The sternalis parvus is small.\n");
    let mut server = Server::start("utf-16", json!({}), Some(&folder.uri("")));
    let settings = folder.uri("inner/fascicle.toml");
    let problems = server.shows(&settings, |list| !list.is_empty());
    assert!(problems[0]["message"].as_str().unwrap().contains("did you mean `words`?"), "{problems:?}");
    let uri = folder.uri("inner/b.md");
    server.open(&uri, 1, own);
    wait_for_folder(&mut server, 1, 2);
    let place = find(&uri, own, "The sternalis");
    let place = with(place, "position", json!({ "line": 2, "character": 8 }));
    assert!(server.ask("textDocument/hover", &place)["contents"]["value"].as_str().unwrap().contains("axillary nerve"));
    let context = json!({ "includeDeclaration": true });
    let found = server.ask("textDocument/references", &with(place, "context", context));
    let of = |name: &str| found.as_array().unwrap().iter().filter(|one| one["uri"] == folder.uri(name)).count();
    assert_eq!((of("inner/ours.toml"), of("inner/b.md"), of("inner/c.md")), (1, 2, 1), "{found}");
    let symbols = server.ask("workspace/symbol", &json!({ "query": "sternalis parvus" }));
    assert!(
        symbols.as_array().unwrap().iter().any(|one| one["location"]["uri"] == folder.uri("inner/c.md")),
        "{symbols}"
    );
    // What is offered in the inner course is worked out there, though it is not the first folder.
    server.replace(&uri, 2, "The sternalis pa");
    let list = server.ask("textDocument/completion", &at(&uri, 0, 16));
    let item =
        list["items"].as_array().unwrap().iter().find(|item| item["label"] == "sternalis parvus").unwrap().clone();
    let resolved = server.ask("completionItem/resolve", &item);
    assert!(resolved["documentation"]["value"].as_str().unwrap().contains("axillary nerve"), "{resolved}");
    // The deltoid is one and the same in both courses.
    let outer = folder.uri("a.md");
    server.open(&outer, 1, "The deltoid.\n");
    server.replace(&uri, 3, own);
    let context = json!({ "includeDeclaration": false });
    let found = server.ask("textDocument/references", &with(at(&outer, 0, 6), "context", context));
    assert_eq!(found.as_array().unwrap().len(), 2, "{found}");
    // A settings file that is gone has nothing wrong with it.
    fs::remove_file(folder.0.join("inner/fascicle.toml")).unwrap();
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": [{ "uri": settings, "type": 3 }] }));
    server.shows(&settings, <[Value]>::is_empty);
    server.shut_down();
}

#[test]
fn findings_of_the_course_come_in_parts_and_follow_a_renamed_file() {
    let wrong = "Deltoid is supplied by the radial nerve.\n";
    let names: Vec<String> = (0..120).map(|number| format!("{number:03}.md")).collect();
    let text = wrong.repeat(10);
    let files: Vec<(&str, &str)> = names.iter().map(|name| (&**name, &*text)).collect();
    let folder = Folder::new("parts", &files);
    let mut server = Server::start("utf-16", json!({ "textDocument": { "diagnostic": {} } }), Some(&folder.uri("")));
    wait_for_index(&mut server, 120);
    let params = json!({ "previousResultIds": [], "partialResultToken": "part" });
    let last = server.ask("workspace/diagnostic", &params);
    assert_eq!(last["items"], json!([]), "who sends a part sends all in parts");
    let parts: Vec<&Value> = server.said.iter().filter(|said| said["params"]["token"] == "part").collect();
    let mut items: Vec<Value> =
        parts.iter().flat_map(|part| part["params"]["value"]["items"].as_array().unwrap().clone()).collect();
    assert!(parts.len() > 1 && items.len() == 120, "{} parts, {} items", parts.len(), items.len());
    // A renamed file: the old name is cleared, the new one told.
    fs::rename(folder.0.join("000.md"), folder.0.join("new.md")).unwrap();
    let changes = json!([{ "uri": folder.uri("000.md"), "type": 3 }, { "uri": folder.uri("new.md"), "type": 1 }]);
    let ids: Vec<Value> =
        items.drain(..).map(|item| json!({ "uri": item["uri"], "value": item["resultId"] })).collect();
    let id = server.send("workspace/diagnostic", &json!({ "previousResultIds": ids }));
    server.notify("workspace/didChangeWatchedFiles", &json!({ "changes": changes }));
    let report = server.answer(id)["result"]["items"].as_array().unwrap().clone();
    let news: Vec<(&str, usize)> = report
        .iter()
        .filter(|item| item["kind"] == "full")
        .map(|item| {
            (item["uri"].as_str().unwrap().rsplit('/').next().unwrap(), item["items"].as_array().unwrap().len())
        })
        .collect();
    assert_eq!(news, [("new.md", 10), ("000.md", 0)]);
    server.shut_down();
}

#[test]
fn a_burst_of_edits_is_not_told_edit_by_edit() {
    let mut server = Server::plain();
    let body = "The axillary nerve supplies deltoid and teres minor.\n\n".repeat(200);
    server.open(URI, 0, &body);
    for version in 1..=200 {
        server.replace(URI, version, &format!("{body}Deltoid is supplied by the radial nerve {version}.\n"));
    }
    let is_last = |said: &Value| said["params"]["version"] == 200;
    let mut versions = Vec::new();
    let mut seen = |said: &Value| {
        versions.extend(said["params"]["version"].as_i64());
        is_last(said)
    };
    loop {
        let said = server.wait_for("textDocument/publishDiagnostics");
        if seen(&said) {
            break;
        }
    }
    assert!(versions.len() < 100, "told {} times", versions.len());
    assert!(versions.is_sorted(), "never an older one after a newer: {versions:?}");
    server.shut_down();
}

#[test]
fn a_word_that_was_left_alone_is_told_after_a_pause_to_clients_that_ask() {
    let capabilities = json!({
        "textDocument": { "diagnostic": {} },
        "workspace": { "diagnostics": { "refreshSupport": true } },
    });
    let mut server = Server::start("utf-16", capabilities, None);
    server.open(URI, 1, "The musculocutaneu");
    let end = json!({ "line": 0, "character": 18 });
    let change = json!({ "range": { "start": end, "end": end }, "text": "o" });
    let params = json!({ "textDocument": { "uri": URI, "version": 2 }, "contentChanges": [change] });
    server.notify("textDocument/didChange", &params);
    let report = server.ask("textDocument/diagnostic", &document(URI));
    assert_eq!(report["items"], json!([]), "flagged while it grows");
    server.wait_for("workspace/diagnostic/refresh");
    let report = server.ask("textDocument/diagnostic", &document(URI));
    assert_eq!(report["items"].as_array().unwrap().len(), 1, "{report}");
    server.shut_down();
}
