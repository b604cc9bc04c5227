//! Turns the lists of right words in `words/` into filters, so that a word is looked up in a few nanoseconds.

#[path = "src/misspellings/key.rs"]
mod key;

use std::fs;
use std::io::Read as _;
use std::path::{Path, PathBuf};

use xorf::{BinaryFuse16, DmaSerializable as _};

fn main() {
    println!("cargo::rerun-if-changed=words");
    println!("cargo::rerun-if-changed=src/misspellings/key.rs");
    filter("common", &["common.txt.gz"]);
    filter("other", &["rare.txt.gz", "medical.txt.gz"]);
}

/// Writes a filter over the words of some lists.
fn filter(name: &str, lists: &[&str]) {
    let mut keys = Vec::new();
    for list in lists {
        let path = Path::new("words").join(list);
        let file = fs::File::open(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let mut text = String::new();
        flate2::read::GzDecoder::new(file)
            .read_to_string(&mut text)
            .unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        keys.extend(text.lines().map(key::key));
    }
    keys.sort_unstable();
    keys.dedup();
    let filter = BinaryFuse16::try_from(&keys).unwrap_or_else(|error| panic!("{name}: {error}"));
    let mut descriptor = vec![0; BinaryFuse16::DESCRIPTOR_LEN];
    filter.dma_copy_descriptor_to(&mut descriptor);
    let prints = filter.fingerprints.iter().flat_map(|print| print.to_le_bytes());
    let bytes: Vec<u8> = descriptor.into_iter().chain(prints).collect();
    let out = PathBuf::from(std::env::var_os("OUT_DIR").unwrap_or_default()).join(format!("{name}.filter"));
    fs::write(&out, bytes).unwrap_or_else(|error| panic!("{}: {error}", out.display()));
}
