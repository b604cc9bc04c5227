//! Finds and reads the documents that a command is given, and works on them on all cores, in a stable order.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc;

use fascicle_analysis::Form;
use ignore::WalkBuilder;

use super::paint::safe;

/// The largest document that is read, in bytes (32 MiB). A course's longest handout has a few hundred kilobytes; what is
/// larger is data that was taken for a document, and is refused with a clear line rather than read into memory.
pub const LARGEST: u64 = 32 * 1024 * 1024;

/// A document to be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// As outputs call it: `-` for standard input, else the path as it was given, with `/` between names.
    pub name: String,
    /// Where it is; `None` for standard input.
    pub path: Option<PathBuf>,
    /// The form in which it is written.
    pub form: Form,
    /// The folder in which it was found, where it was not named itself.
    pub folder: Option<PathBuf>,
}

/// A document that was read.
#[derive(Clone, Debug)]
pub struct Document {
    /// Where it came from.
    pub source: Source,
    /// Its text.
    pub text: String,
}

/// In which form a document is written whose name does not tell.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, clap::ValueEnum)]
pub enum FormName {
    /// Markdown of any dialect.
    #[default]
    Markdown,
    /// `WebVTT` or SRT captions.
    Captions,
    /// Plain text.
    Plain,
}

impl From<FormName> for Form {
    fn from(name: FormName) -> Self {
        match name {
            FormName::Markdown => Self::Markdown,
            FormName::Captions => Self::Captions,
            FormName::Plain => Self::Plain,
        }
    }
}

/// The documents at the paths, in the order of the paths, those of a folder sorted; and what could not be looked into.
pub fn find(paths: &[PathBuf], otherwise: FormName) -> (Vec<Source>, Vec<String>) {
    let mut list: Vec<Source> = Vec::new();
    let mut troubles = Vec::new();
    for path in paths {
        if path.as_os_str() == "-" {
            list.push(Source { name: "-".to_owned(), path: None, form: otherwise.into(), folder: None });
        } else if path.is_dir() {
            walk(path, &mut list, &mut troubles);
        } else {
            let name = shown(path);
            let form = Form::of_name(&name).unwrap_or_else(|| otherwise.into());
            list.push(Source { name, path: Some(path.clone()), form, folder: None });
        }
    }
    // One file may be named twice, by itself and by its folder.
    let mut seen = std::collections::HashSet::new();
    list.retain(|source| seen.insert(source.path.clone()));
    (list, troubles)
}

/// The documents below a folder that ignore files do not exclude.
fn walk(folder: &Path, list: &mut Vec<Source>, troubles: &mut Vec<String>) {
    let walk = WalkBuilder::new(folder).require_git(false).sort_by_file_path(Ord::cmp).build();
    for item in walk {
        match item {
            Ok(item) => {
                let path = item.path();
                let name = shown(path);
                let is_file =
                    item.file_type().is_some_and(|kind| kind.is_file()) || (item.path_is_symlink() && path.is_file());
                if let (true, Some(form)) = (is_file, Form::of_name(&name)) {
                    let folder = Some(folder.to_owned());
                    list.push(Source { name, path: Some(path.to_owned()), form, folder });
                }
            }
            Err(error) => troubles.push(walk_trouble(folder, &error)),
        }
    }
}

fn walk_trouble(folder: &Path, error: &ignore::Error) -> String {
    let mut at = folder.to_owned();
    let mut inner = error;
    loop {
        match inner {
            ignore::Error::WithPath { path, err } => {
                at.clone_from(path);
                inner = err;
            }
            ignore::Error::WithDepth { err, .. } | ignore::Error::WithLineNumber { err, .. } => inner = err,
            ignore::Error::Io(error) => return format!("{}: {}", shown(&at), reason(error)),
            other => return format!("{}: {other}", shown(&at)),
        }
    }
}

/// Reads a document.
///
/// # Errors
/// One line that says what is wrong and what to do.
pub fn load(source: &Source) -> Result<Document, String> {
    let name = safe(&source.name);
    let mut bytes = Vec::new();
    let read = match &source.path {
        None => io::stdin().lock().take(LARGEST + 1).read_to_end(&mut bytes),
        Some(path) => File::open(path).and_then(|file| file.take(LARGEST + 1).read_to_end(&mut bytes)),
    };
    read.map_err(|error| format!("{name}: {}", reason(&error)))?;
    if bytes.len() as u64 > LARGEST {
        let limit = LARGEST / 1024 / 1024;
        return Err(format!("{name}: larger than {limit} MiB, which no lecture note is; split it or leave it out"));
    }
    let text = String::from_utf8(bytes).map_err(|error| format!("{name}: {}", not_utf8(error.as_bytes())))?;
    Ok(Document { source: source.clone(), text })
}

/// Where bytes are not UTF-8, and what they may be instead.
fn not_utf8(bytes: &[u8]) -> String {
    let at = std::str::from_utf8(bytes).err().map_or(0, |error| error.valid_up_to());
    let valid = bytes.get(..at).unwrap_or_default();
    let start = valid.iter().rposition(|byte| matches!(byte, b'\n' | b'\r')).map_or(0, |place| place + 1);
    let line = fascicle_analysis::lines::LineIndex::new(&String::from_utf8_lossy(valid)).count();
    let column = String::from_utf8_lossy(valid.get(start..).unwrap_or_default()).chars().count() + 1;
    let guess = match bytes {
        [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..] => "it looks like UTF-16",
        _ if valid.contains(&0) || bytes.iter().take(8000).any(|byte| *byte == 0) => "it looks like no text at all",
        _ => "it may be Latin-1 or Windows-1252",
    };
    let byte = bytes.get(at).copied().unwrap_or_default();
    format!("not UTF-8 at byte {at} (line {line}, column {column}, 0x{byte:02X}); {guess}; save it as UTF-8")
}

/// A path as outputs show it.
pub fn shown(path: &Path) -> String {
    let name = path.to_string_lossy();
    let name = if cfg!(windows) { name.replace('\\', "/") } else { name.into_owned() };
    name.strip_prefix("./").filter(|rest| !rest.is_empty()).map_or_else(|| name.clone(), str::to_owned)
}

/// An error of the system in plain words.
pub fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "no such file or folder".to_owned(),
        io::ErrorKind::PermissionDenied => "no permission to read it".to_owned(),
        io::ErrorKind::IsADirectory => "it is a folder".to_owned(),
        _ => error.to_string(),
    }
}

/// Works on every source, on all cores, and hands the results to `sink` in the order of the sources, each as soon as
/// those before it are there. Work that panics becomes an error, so that one document cannot take the others with it.
///
/// # Errors
/// What `sink` returns; the rest is then left.
pub fn each<T: Send>(
    sources: &[Source],
    work: impl Fn(Document) -> Result<T, String> + Sync,
    mut sink: impl FnMut(Result<T, String>) -> io::Result<()>,
) -> io::Result<()> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from).min(sources.len().max(1));
    let next = AtomicUsize::new(0);
    let one = |source: &Source| {
        load(source).and_then(|document| {
            catch_unwind(AssertUnwindSafe(|| work(document))).unwrap_or_else(|_| {
                Err(format!("{}: reading it failed inside the program; please report this", safe(&source.name)))
            })
        })
    };
    std::thread::scope(|scope| {
        let (send, receive) = mpsc::sync_channel(threads * 4);
        for _ in 0..threads {
            let (send, next, one) = (send.clone(), &next, &one);
            scope.spawn(move || {
                loop {
                    let place = next.fetch_add(1, Ordering::Relaxed);
                    let Some(source) = sources.get(place) else { return };
                    if send.send((place, one(source))).is_err() {
                        return;
                    }
                }
            });
        }
        drop(send);
        let mut waiting = BTreeMap::new();
        let mut turn = 0;
        for (place, result) in receive {
            waiting.insert(place, result);
            while let Some(result) = waiting.remove(&turn) {
                sink(result)?;
                turn += 1;
            }
        }
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_where_bytes_are_no_text() {
        let message = not_utf8(b"one\ntwo \xE9\n");
        assert!(message.starts_with("not UTF-8 at byte 8 (line 2, column 5, 0xE9)"), "{message}");
        assert!(not_utf8(b"\xFF\xFEa\0").contains("UTF-16"));
    }
}
