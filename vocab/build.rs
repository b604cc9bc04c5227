//! Reads and checks `data/` and bakes it into one binary file, so that a broken fact stops the build with its file and
//! line, and nothing is parsed when the program starts.

use std::fs;
use std::path::{Path, PathBuf};

use fascicle_model::read::File;

fn main() {
    let root = Path::new("data");
    println!("cargo::rerun-if-changed=data");
    let mut files = Vec::new();
    collect(root, &mut files);
    files.sort();
    let texts: Vec<(String, String)> = files
        .iter()
        .map(|path| {
            println!("cargo::rerun-if-changed={}", path.display());
            let name = path.strip_prefix(root).unwrap_or(path).to_string_lossy().replace('\\', "/");
            (name, fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display())))
        })
        .collect();
    let input: Vec<File<'_>> = texts.iter().map(|(name, text)| File { name, text }).collect();
    let (vocabulary, mut problems) = fascicle_model::read::read(&input, None);
    problems.extend(fascicle_model::check::check(&vocabulary));
    if !problems.is_empty() {
        let list: Vec<String> = problems.iter().map(|problem| format!("vocab/data/{problem}")).collect();
        panic!("the vocabulary has {} problems:\n{}", list.len(), list.join("\n"));
    }
    let baked = postcard::to_allocvec(&(vocabulary.entries(), vocabulary.sources(), vocabulary.words()))
        .unwrap_or_else(|error| panic!("{error}"));
    let out = PathBuf::from(std::env::var_os("OUT_DIR").unwrap_or_default()).join("vocabulary.bin");
    fs::write(&out, baked).unwrap_or_else(|error| panic!("{}: {error}", out.display()));
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) {
    let list = fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    for path in list.filter_map(Result::ok).map(|item| item.path()) {
        if path.is_dir() {
            collect(&path, files);
        } else if path.extension().is_some_and(|extension| extension == "toml") {
            files.push(path);
        }
    }
}
