//! What is released together has one version: the program, the extension, the page, and what other editors load.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;

/// The version of everything.
const VERSION: &str = env!("CARGO_PKG_VERSION");

fn read(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn toml(name: &str) -> toml::Table {
    read(name).parse().expect(name)
}

fn json(name: &str) -> serde_json::Value {
    serde_json::from_str(&read(name)).expect(name)
}

#[test]
fn versions_are_in_step() {
    let cargo = |name: &str| toml(name)["package"]["version"].as_str().unwrap().to_owned();
    let top = |name: &str| json(name)["version"].as_str().unwrap().to_owned();
    let all = [
        ("Cargo.toml", toml("Cargo.toml")["workspace"]["package"]["version"].as_str().unwrap().to_owned()),
        ("editors/zed/Cargo.toml", cargo("editors/zed/Cargo.toml")),
        ("editors/web/glue/Cargo.toml", cargo("editors/web/glue/Cargo.toml")),
        ("editors/zed/extension.toml", toml("editors/zed/extension.toml")["version"].as_str().unwrap().to_owned()),
        ("editors/vscode/package.json", top("editors/vscode/package.json")),
        ("editors/vscode/package-lock.json", top("editors/vscode/package-lock.json")),
        ("editors/web/package.json", top("editors/web/package.json")),
        ("editors/web/package-lock.json", top("editors/web/package-lock.json")),
    ];
    for (name, version) in all {
        assert_eq!(version, VERSION, "{name}");
    }
    let changes = read("editors/vscode/CHANGELOG.md");
    assert!(changes.contains(&format!("## {VERSION}\n")), "the changes of {VERSION} are not told");
    // The page's glue and the library that it is made for must be the same release.
    let (page, glue) = (toml("editors/web/wasm/Cargo.toml"), toml("editors/web/glue/Cargo.toml"));
    assert_eq!(page["dependencies"]["wasm-bindgen"], glue["dependencies"]["wasm-bindgen-cli-support"]);
}
