//! The published schemas: up to date, and kept to by what the program writes.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cli;

use std::fs;
use std::path::Path;
use std::process::Command;

use cli::{Desk, NOTE, schema, violations};
use serde_json::{Value, json};

#[test]
fn published_schemas_are_those_of_the_program() {
    for output in ["check", "claims", "facts", "settings"] {
        let made = Desk::new().run(&["generate", "schema", output]);
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("schemas/{output}.schema.json"));
        if std::env::var_os("UPDATE_SNAPSHOTS").is_some() {
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(&path, &made.out).unwrap();
        }
        let kept = fs::read_to_string(&path).unwrap_or_default();
        assert!(kept == made.out, "schemas/{output}.schema.json is out of date: run with UPDATE_SNAPSHOTS=1");
    }
}

#[test]
fn outputs_keep_to_their_schemas() {
    let desk = Desk::with(&[("a.md", NOTE), ("b.md", "")]);
    for (name, arguments) in [
        ("check", &["check", ".", "--format", "json"][..]),
        ("claims", &["claims", ".", "--format", "json"]),
        ("facts", &["facts", "--format", "json"]),
        ("facts", &["facts", "deltiod", "--format", "json"]),
    ] {
        let value = desk.run(arguments).json();
        assert_eq!(violations(&schema(name), &value), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn the_schemas_can_say_no() {
    let finding = json!({ "code": "x", "kind": "nonsense", "severity": "error", "bytes": [0, 1], "text": "", "message": "",
        "range": { "start": { "line": 0, "character": 0 }, "end": { "line": 0, "character": 1 } },
        "reason": [], "fixes": [] });
    let report = json!({ "version": 1, "files": [{ "path": "a.md", "findings": [finding] }] });
    assert_eq!(violations(&schema("check"), &report).len(), 1);
    assert!(!violations(&schema("check"), &json!({ "version": 2, "files": [] })).is_empty());
    assert!(!violations(&schema("claims"), &json!({ "version": 1 })).is_empty());
    assert!(!violations(&schema("facts"), &json!({ "version": 1, "entries": [] })).is_empty());
}

/// The schema of SARIF 2.1.0 that OASIS published, out of a crate that carries it.
fn sarif_schema() -> Value {
    let manifest = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/e2e/standards/Cargo.toml");
    let metadata = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--locked", "--manifest-path"])
        .arg(manifest)
        .output()
        .unwrap();
    assert!(metadata.status.success(), "{}", String::from_utf8_lossy(&metadata.stderr));
    let metadata: Value = serde_json::from_slice(&metadata.stdout).unwrap();
    let mut packages = metadata["packages"].as_array().unwrap().iter();
    let package = packages.find(|package| package["name"] == "serde-sarif").unwrap();
    let folder = Path::new(package["manifest_path"].as_str().unwrap()).parent().unwrap().to_path_buf();
    serde_json::from_str(&fs::read_to_string(folder.join("src/schema.json")).unwrap()).unwrap()
}

#[test]
fn sarif_keeps_to_the_schema_of_the_standard() {
    let desk = Desk::with(&[("a note ä.md", NOTE), ("b.md", "")]);
    desk.write("bad.md", b"\xFF");
    let schema = sarif_schema();
    assert!(schema["title"].as_str().unwrap().contains("2.1.0"), "{}", schema["title"]);
    let log = desk.run(&["check", ".", "--format", "sarif"]).json();
    assert_eq!(violations(&schema, &log), Vec::<String>::new());
    let run = &log["runs"][0];
    assert_eq!(run["results"].as_array().unwrap().len(), 3);
    let result = &run["results"][0];
    let place = &result["locations"][0]["physicalLocation"];
    assert_eq!(place["artifactLocation"]["uri"], "a%20note%20%C3%A4.md");
    assert_eq!((&place["region"]["startLine"], &place["region"]["startColumn"]), (&json!(3), &json!(5)));
    let rules = run["tool"]["driver"]["rules"].as_array().unwrap();
    let index = usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap();
    assert_eq!(rules[index]["id"], result["ruleId"]);
    let invocation = &run["invocations"][0];
    assert_eq!(invocation["executionSuccessful"], false);
    assert!(invocation["toolExecutionNotifications"][0]["message"]["text"].as_str().unwrap().contains("bad.md"));
    assert!(!violations(&schema, &json!({ "version": "2.1.0" })).is_empty(), "the schema can say no");
}

#[test]
fn a_release_has_a_man_page_and_completions() {
    let desk = Desk::new();
    let page = desk.run(&["generate", "man"]).out;
    for said in [".TH fascicle 1", ".SH NAME", "CHECK", "CLAIMS", "FACTS", "SERVE", "Exit status"] {
        assert!(page.contains(said), "{said}: {page}");
    }
    assert!(!page.contains("GENERATE"));
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        assert!(desk.run(&["generate", "completions", shell]).out.contains("fascicle"), "{shell}");
    }
}
