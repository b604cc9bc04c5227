//! Documents that the server itself has: one an entry, made from the vocabulary, and the page that explains the codes of
//! findings. All are read only.
//!
//! A client that says so in its `initializationOptions` (`"entryDocuments": true`) gets addresses of the scheme
//! `fascicle:` and asks for their text by `fascicle/entry`. For every other client they are written into the user's cache
//! folder, where any editor can open them.
//!
//! A course that lays files over the vocabulary has entries of its own making, so its documents stand in a folder of their
//! own, a [`shelf`]. Links from one entry to another are relative and stay on the shelf.

use std::path::{Path, PathBuf};

use fascicle_analysis::features::entry_document::entry_document;
use fascicle_analysis::memo::fingerprint_of;
use fascicle_vocab::EntryId;
use tower_lsp::lsp_types as lsp;

use super::state::View;
use crate::course::Course;
use crate::findings;

/// The scheme of the addresses.
pub const SCHEME: &str = "fascicle";

/// What the addresses of entries begin with.
const ENTRIES: &str = "entry";

/// The name of the page of findings.
const FINDINGS_NAME: &str = "findings";

/// The page is written once a process.
static FINDINGS_WRITTEN: std::sync::Once = std::sync::Once::new();

/// Where a code is explained.
pub fn code_page(virtual_documents: bool, code: &str) -> Option<lsp::Url> {
    let mut url = if virtual_documents {
        lsp::Url::parse(&format!("{SCHEME}:/{FINDINGS_NAME}.md")).ok()?
    } else {
        let path = folder().join(format!("{FINDINGS_NAME}.md"));
        FINDINGS_WRITTEN.call_once(|| write(&path, findings::PAGE));
        lsp::Url::from_file_path(path).ok()?
    };
    url.set_fragment(Some(code));
    Some(url)
}

/// Whether an address is that of the page of findings.
pub fn is_findings(uri: &lsp::Url) -> bool {
    uri.path().rsplit('/').next() == Some(&*format!("{FINDINGS_NAME}.md"))
}

/// Where an entry is to be read: in the overlay that states it, or in its document.
pub fn location(course: &Course, virtual_documents: bool, id: EntryId) -> Option<lsp::Location> {
    let written = course.root.as_ref().zip(course.knowledge().vocabulary.course_line(id));
    if let Some((root, (file, line))) = written {
        let path = root.join(file);
        let start = lsp::Position { line: line.saturating_sub(1), character: 0 };
        return Some(lsp::Location {
            uri: lsp::Url::from_file_path(path).ok()?,
            range: lsp::Range { start, end: start },
        });
    }
    Some(lsp::Location { uri: address(course, virtual_documents, id)?, range: lsp::Range::default() })
}

/// Where the document of an entry is.
pub fn address(course: &Course, virtual_documents: bool, id: EntryId) -> Option<lsp::Url> {
    let name = format!("{}.md", course.knowledge().vocabulary.entry(id).id);
    let shelf = shelf(course);
    if virtual_documents {
        let shelf = if shelf.is_empty() { shelf } else { format!("{shelf}/") };
        return lsp::Url::parse(&format!("{SCHEME}:/{ENTRIES}/{shelf}{name}")).ok();
    }
    let path = folder().join(shelf).join(name);
    write(&path, &text(course, id));
    lsp::Url::from_file_path(path).ok()
}

/// The folder in which the documents of a course's entries stand, apart from those of other courses; an empty one for who
/// reads by the built-in vocabulary. Its name tells a person the course, and the program the course's folder.
pub fn shelf(course: &Course) -> String {
    if !course.has_own_vocabulary {
        return String::new();
    }
    let root = course.root.as_deref().unwrap_or(Path::new(""));
    let reference = course.settings.file.reference.as_deref().filter(|_| course.root.is_none()).unwrap_or_default();
    let whole = format!("{}{reference}", root.display());
    let name = root.file_name().and_then(|name| name.to_str()).unwrap_or(reference);
    let name: String = name.chars().filter(char::is_ascii_alphanumeric).collect();
    format!("{name}-{:016x}", fingerprint_of(&whole, &()) as u64)
}

/// The shelf on which the document of an entry stands; nothing where the address is none of ours.
pub fn shelf_of(uri: &lsp::Url) -> Option<String> {
    let path = if uri.scheme() == SCHEME {
        PathBuf::from(uri.path()).strip_prefix(format!("/{ENTRIES}")).ok()?.to_path_buf()
    } else {
        uri.to_file_path().ok()?.strip_prefix(folder()).ok()?.to_path_buf()
    };
    path.parent()?.to_str().map(str::to_owned)
}

/// Where a link from the document of one entry leads: to the document of another, of the same course.
pub fn linked(course: &Course, from: &lsp::Url, to: &str) -> Option<lsp::Url> {
    let to = from.join(to).ok().filter(is_ours)?;
    entry_at(course, &to).map(|_| to)
}

/// The text of the document of an entry.
pub fn text(course: &Course, id: EntryId) -> String {
    entry_document(&course.knowledge().vocabulary, id, &|other| format!("{other}.md"))
}

/// The entry whose document an address is.
pub fn entry_at(course: &Course, uri: &lsp::Url) -> Option<EntryId> {
    let name = uri.path().rsplit('/').next()?.strip_suffix(".md")?;
    course.knowledge().vocabulary.find(name)
}

/// Whether an address is one of ours, so that nothing is reported in it.
pub fn is_ours(uri: &lsp::Url) -> bool {
    uri.scheme() == SCHEME || uri.to_file_path().is_ok_and(|path| path.starts_with(folder()))
}

/// Whether a view is of one of our own documents.
pub fn is_own(view: &View) -> bool {
    is_ours(&view.uri)
}

fn folder() -> PathBuf {
    let given = |name: &str| std::env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    let cache = given("XDG_CACHE_HOME")
        .or_else(|| given("LOCALAPPDATA"))
        .or_else(|| given("HOME").map(|home| home.join(".cache")))
        .unwrap_or_else(std::env::temp_dir);
    cache.join("fascicle").join("documents")
}

/// Writes a document if it is not there as it should be. Where it cannot be written, the editor will say that there is
/// none.
fn write(path: &Path, text: &str) {
    if std::fs::read_to_string(path).is_ok_and(|there| there == text) {
        return;
    }
    let written = path.parent().map_or(Ok(()), std::fs::create_dir_all).and_then(|()| std::fs::write(path, text));
    if let Err(error) = written {
        tracing::warn!(%error, path = %path.display(), "cannot write the document of an entry");
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn every_code_is_explained() {
        let analysis = Path::new(env!("CARGO_MANIFEST_DIR")).join("../analysis/src");
        let mut codes = Vec::new();
        let mut folders = vec![analysis];
        while let Some(folder) = folders.pop() {
            for path in std::fs::read_dir(folder).unwrap().map(|item| item.unwrap().path()) {
                if path.is_dir() {
                    folders.push(path);
                    continue;
                }
                let text = std::fs::read_to_string(&path).unwrap();
                let words = text.split('"').skip(1).step_by(2);
                codes.extend(
                    words.filter(|word| word.ends_with("-differs") || word.ends_with("-differ")).map(str::to_owned),
                );
                for line in text.lines().filter(|line| line.contains("const") && line.contains(": &str = ")) {
                    let is_code = text.contains("code:") && line.trim_start().starts_with("pub const");
                    codes.extend(line.split('"').nth(1).filter(|_| is_code).map(str::to_owned));
                }
            }
        }
        let missing: Vec<&String> = codes.iter().filter(|code| findings::codes().all(|known| known != *code)).collect();
        assert!(codes.len() > 15 && missing.is_empty(), "not explained in FINDINGS.md: {missing:?}");
    }
}
