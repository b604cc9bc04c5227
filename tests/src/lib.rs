//! Tests of the built program, end to end; corpora; benches.
//!
//! What several tests and reports share stands here: [`corpus`] reads the annotated texts and scores the claim reader on
//! them, [`course`] knows what is planted in the demo course, [`fixtures`] compares small texts with what is marked in
//! them, [`mutation`] makes true statements false, [`slips`] makes misspellings, [`typed`] types names into right texts.

pub mod corpus;
pub mod course;
pub mod fixtures;
pub mod mutation;
pub mod slips;
pub mod typed;

use std::path::{Path, PathBuf};

/// The allocator of the program, so that what is measured is what the program does.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// The folder of this crate, whose data the tests read.
pub fn folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Every Markdown file under a folder, in the order of their paths.
///
/// # Errors
/// A folder that cannot be read.
pub fn markdown_files(folder: &Path) -> std::io::Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder)? {
            let path = entry?.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "md") {
                files.push(path);
            }
        }
    }
    files.sort();
    Ok(files)
}
