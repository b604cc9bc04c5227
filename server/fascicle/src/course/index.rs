//! The index of a course: what its documents name, kept fresh and without their texts.
//!
//! Folders are walked as version control sees them: ignore files hold, and so does `exclude` of the course's settings.

use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::SystemTime;

use fascicle_analysis::features::index::{self, Contents};
use fascicle_analysis::{Form, Knowledge};
use ignore::WalkBuilder;
use ignore::overrides::OverrideBuilder;

use super::SETTINGS_FILE;

/// A longer file is no lecture note.
const LONGEST: u64 = 64 * 1024 * 1024;

/// By what a file on disk is known to be the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Stamp {
    /// Length in bytes.
    pub len: u64,
    /// Last change.
    pub modified: Option<SystemTime>,
}

impl Stamp {
    /// The stamp of a file that is there and can be read as a document.
    pub fn of(path: &Path) -> Option<Self> {
        let data = fs::metadata(path).ok().filter(fs::Metadata::is_file)?;
        Some(Self { len: data.len(), modified: data.modified().ok() })
    }
}

/// A document of the index.
#[derive(Clone, Debug)]
pub struct Indexed {
    /// The state of the file that was read.
    pub stamp: Stamp,
    /// What it names.
    pub contents: Arc<Contents>,
}

/// The documents of a course.
#[derive(Clone, Debug, Default)]
pub struct Index {
    /// By path.
    pub files: HashMap<PathBuf, Indexed>,
}

/// What a walk through a folder found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// Documents of the course, by path.
    pub documents: Vec<PathBuf>,
    /// Folders below that are courses of their own, for they have a settings file. Their documents are not in the list.
    pub nested: Vec<PathBuf>,
}

/// The documents in a folder.
pub fn documents(root: &Path, exclude: &[String]) -> Found {
    let mut overrides = OverrideBuilder::new(root);
    for pattern in exclude {
        // A pattern that is none was told of when the settings were read; it excludes nothing.
        let _ = overrides.add(&format!("!{pattern}"));
    }
    let mut walk = WalkBuilder::new(root);
    if let Ok(overrides) = overrides.build() {
        walk.overrides(overrides);
    }
    let nested = Arc::new(Mutex::new(Vec::new()));
    let met = Arc::clone(&nested);
    walk.require_git(false).filter_entry(move |entry| {
        let is_course = entry.depth() > 0
            && entry.file_type().is_some_and(|kind| kind.is_dir())
            && entry.path().join(SETTINGS_FILE).is_file();
        if is_course {
            met.lock().unwrap_or_else(PoisonError::into_inner).push(entry.path().to_path_buf());
        }
        !is_course
    });
    let is_document =
        |path: &Path| path.file_name().and_then(|name| name.to_str()).is_some_and(|name| Form::of_name(name).is_some());
    let mut documents: Vec<PathBuf> = walk
        .build()
        .filter_map(Result::ok)
        .filter(|entry| entry.file_type().is_some_and(|kind| kind.is_file()) && is_document(entry.path()))
        .map(ignore::DirEntry::into_path)
        .collect();
    documents.sort();
    let mut nested = std::mem::take(&mut *nested.lock().unwrap_or_else(PoisonError::into_inner));
    nested.sort();
    Found { documents, nested }
}

/// Reads documents on all processors. What has not changed since `before` is taken from there. `tell` is called now and
/// then with how many are done and how many there are; `stop` ends the work early.
pub fn build(
    paths: &[PathBuf],
    knowledge: &Knowledge,
    before: &Index,
    stop: &AtomicBool,
    tell: &(dyn Fn(usize, usize) + Sync),
) -> Index {
    let next = AtomicUsize::new(0);
    let files = Mutex::new(HashMap::with_capacity(paths.len()));
    let workers = thread::available_parallelism().map_or(1, usize::from);
    thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                let mut own = Vec::new();
                while !stop.load(Ordering::Relaxed) {
                    let at = next.fetch_add(1, Ordering::Relaxed);
                    let Some(path) = paths.get(at) else { break };
                    if let Some(indexed) = file(path, knowledge, before.files.get(path)) {
                        own.push((path.clone(), indexed));
                    }
                    if at.is_multiple_of(64) {
                        tell(at, paths.len());
                    }
                }
                files.lock().unwrap_or_else(PoisonError::into_inner).extend(own);
            });
        }
    });
    if !stop.load(Ordering::Relaxed) {
        tell(paths.len(), paths.len());
    }
    Index { files: files.into_inner().unwrap_or_else(PoisonError::into_inner) }
}

/// Indexes one file; `None` if there is none or if it is no text.
pub fn file(path: &Path, knowledge: &Knowledge, before: Option<&Indexed>) -> Option<Indexed> {
    let stamp = Stamp::of(path).filter(|stamp| stamp.len <= LONGEST)?;
    if let Some(same) = before.filter(|before| before.stamp == stamp) {
        return Some(same.clone());
    }
    let form = Form::of_name(path.file_name()?.to_str()?)?;
    let text = fs::read_to_string(path).ok()?;
    Some(Indexed { stamp, contents: Arc::new(index::contents(&text, form, knowledge)) })
}
