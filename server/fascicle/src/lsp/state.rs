//! What the server holds, and the snapshots that requests work on.
//!
//! There is one owner, [`Session`], behind a mutex that is held for a change or a snapshot and never across an await. A
//! [`View`] is one version of one document with the settings that hold for it; it stays true whatever comes after it.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, LazyLock, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use fascicle_analysis::Reading;
use fascicle_analysis::Span;
use fascicle_analysis::lines::{Encoding, Position};
use tokio::sync::watch;
use tower_lsp::Client;
use tower_lsp::lsp_types::{SemanticToken, Url};

use super::capabilities::Can;
use super::document::Document;
use super::everywhere::Everywhere;
use super::library;
use super::requests::workspace_diagnostics::Told;
use crate::course::index::Index;
use crate::course::settings::File;
use crate::course::statements::Statements;
use crate::course::{Course, Lazy, SETTINGS_FILE};

/// What the server holds.
#[derive(Debug)]
pub struct State {
    /// How columns are counted, as agreed with the client.
    pub encoding: Encoding,
    /// What the client can do.
    pub can: Arc<Can>,
    /// The open documents, changed by [`State::put`] and [`State::remove`].
    pub documents: HashMap<Url, Arc<Document>>,
    /// Documents that were dropped because an edit could not be applied.
    pub dropped: HashSet<Url>,
    /// The workspace folders, and the courses found below them.
    pub folders: Vec<Folder>,
    /// Courses by their folders, each opened when a document of it is first asked for.
    pub courses: HashMap<PathBuf, Arc<Course>>,
    /// What holds outside all folders.
    pub elsewhere: Arc<Course>,
    /// What the editor's settings say.
    pub editor: File,
    /// Times of the requests, by method.
    pub times: BTreeMap<&'static str, Times>,
    /// The client wants to see where the time goes.
    pub trace: bool,
    /// The semantic tokens that the client has, with the name of the result.
    pub tokens: HashMap<Url, (String, Arc<Vec<SemanticToken>>)>,
    /// What was last told of files on disk.
    pub told: Arc<Told>,
    /// Settings and vocabulary files of which something was told.
    pub told_settings: HashSet<Url>,
    /// What was told of settings that stand in no file.
    pub told_at_no_line: HashSet<String>,
    known: Lazy,
}

/// A folder whose documents belong to one course: a workspace folder, or a course in one.
#[derive(Clone, Debug)]
pub struct Folder {
    /// Its path.
    pub root: PathBuf,
    /// It was found below a workspace folder, for it has a settings file.
    pub is_nested: bool,
    /// Its course.
    pub course: Arc<Course>,
    /// What its documents name.
    pub index: Arc<Index>,
    /// What they state.
    pub statements: Arc<Statements>,
    /// The index was built once.
    pub is_indexed: bool,
}

/// How long the requests of one method took.
#[derive(Clone, Copy, Debug, Default)]
pub struct Times {
    /// How many there were.
    pub count: u64,
    /// The last one.
    pub last: Duration,
    /// The longest one.
    pub longest: Duration,
}

/// The state and the way to the client, shared by all handlers.
#[derive(Clone, Debug)]
pub struct Session {
    /// The way to the client.
    pub client: Client,
    /// The built-in vocabulary.
    pub known: Lazy,
    state: Arc<Mutex<State>>,
    changes: watch::Sender<u64>,
}

impl Session {
    /// A session before `initialize`.
    pub fn new(client: Client) -> Self {
        let known = Lazy::built_in();
        let state = State {
            encoding: Encoding::default(),
            can: Arc::default(),
            documents: HashMap::new(),
            dropped: HashSet::new(),
            folders: Vec::new(),
            courses: HashMap::new(),
            elsewhere: Arc::new(Course::none(&known)),
            editor: File::default(),
            times: BTreeMap::new(),
            trace: false,
            tokens: HashMap::new(),
            told: Arc::default(),
            told_settings: HashSet::new(),
            told_at_no_line: HashSet::new(),
            known: known.clone(),
        };
        Self { client, known, state: Arc::new(Mutex::new(state)), changes: watch::Sender::new(0) }
    }

    /// The state. Hold it shortly, and never across an await.
    pub fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Says that something has changed that diagnostics depend on.
    pub fn bump(&self) {
        self.changes.send_modify(|count| *count += 1);
    }

    /// Tells when something changes from now on.
    pub fn changes(&self) -> watch::Receiver<u64> {
        self.changes.subscribe()
    }

    /// A snapshot of an open document.
    pub fn view(&self, uri: &Url) -> Option<View> {
        self.state().view(uri)
    }

    /// A snapshot of all documents.
    pub fn everywhere(&self, uri: &Url) -> Option<Everywhere> {
        let mut state = self.state();
        let here = state.view(uri)?;
        Some(state.everywhere(here))
    }

    /// A snapshot of all documents, asked about none of them.
    pub fn anywhere(&self) -> Everywhere {
        let mut state = self.state();
        let course =
            state.folders.first().map_or_else(|| Arc::clone(&state.elsewhere), |folder| Arc::clone(&folder.course));
        let here = View {
            uri: Url::from_file_path(std::env::temp_dir()).unwrap_or_else(|()| nowhere()),
            document: Arc::new(Document::on_disk(fascicle_analysis::Form::Plain, "")),
            course,
            encoding: state.encoding,
            can: Arc::clone(&state.can),
            wish: Wish::default(),
        };
        state.everywhere(here)
    }
}

/// An address of nothing.
#[allow(clippy::expect_used)]
fn nowhere() -> Url {
    Url::parse("fascicle:/").expect("a constant that parses")
}

impl State {
    /// A snapshot of an open document.
    pub fn view(&mut self, uri: &Url) -> Option<View> {
        let document = Arc::clone(self.documents.get(uri)?);
        Some(View {
            uri: uri.clone(),
            document,
            course: self.course_of(uri),
            encoding: self.encoding,
            can: Arc::clone(&self.can),
            wish: Wish::default(),
        })
    }

    /// Keeps the tokens that the client has now, so that next time only the difference is sent. Returns their name.
    pub fn keep_tokens(&mut self, uri: Url, data: &[SemanticToken]) -> String {
        let number = self.tokens.get(&uri).and_then(|(id, _)| id.parse::<u64>().ok()).map_or(1, |id| id + 1);
        let id = number.to_string();
        self.tokens.insert(uri, (id.clone(), Arc::new(data.to_vec())));
        id
    }

    /// Takes a document, or its next version, in place of the one that was there.
    pub fn put(&mut self, uri: Url, document: Document) {
        if let Some(before) = self.documents.insert(uri, Arc::new(document)) {
            before.overtake();
        }
    }

    /// Lets go of a document.
    pub fn remove(&mut self, uri: &Url) {
        if let Some(document) = self.documents.remove(uri) {
            document.overtake();
        }
    }

    /// A snapshot of all documents, of which all are read for the one that was asked about.
    fn everywhere(&mut self, here: View) -> Everywhere {
        let open: Vec<Url> = self.documents.keys().cloned().collect();
        let view = |uri: &Url| Some(View { wish: here.wish.clone(), ..self.view(uri)? });
        let mut open: Vec<View> = open.iter().filter_map(view).collect();
        open.sort_by(|a, b| a.uri.cmp(&b.uri));
        Everywhere { here, open, folders: self.folders.clone() }
    }

    /// The course that a document belongs to: for one of our own that of its entry, else the nearest folder above it with a settings file, else the innermost
    /// workspace folder, else none.
    pub fn course_of(&mut self, uri: &Url) -> Arc<Course> {
        if let Some(shelf) = library::shelf_of(uri) {
            return self.course_on(&shelf).unwrap_or_else(|| Arc::new(Course::none(&self.known)));
        }
        let Ok(path) = uri.to_file_path() else { return Arc::clone(&self.elsewhere) };
        self.course_in(path.parent().unwrap_or(&path))
    }

    /// A course whose entries have their documents on a shelf.
    pub fn course_on(&self, shelf: &str) -> Option<Arc<Course>> {
        let folders = self.folders.iter().map(|folder| &folder.course);
        let mut all = std::iter::once(&self.elsewhere).chain(folders).chain(self.courses.values());
        all.find(|course| library::shelf(course) == shelf).cloned()
    }

    /// The course to which the documents of a folder belong.
    fn course_in(&mut self, folder: &Path) -> Arc<Course> {
        if let Some(course) = self.courses.get(folder) {
            return Arc::clone(course);
        }
        let course = if let Some(root) = folder.ancestors().find(|folder| folder.join(SETTINGS_FILE).is_file()) {
            self.course_at(root)
        } else {
            let inner = self.folders.iter().filter(|inner| folder.starts_with(&inner.root));
            let inner = inner.max_by_key(|folder| folder.root.as_os_str().len());
            Arc::clone(inner.map_or(&self.elsewhere, |folder| &folder.course))
        };
        self.courses.insert(folder.to_path_buf(), Arc::clone(&course));
        course
    }

    /// The course of a folder with a settings file.
    fn course_at(&self, root: &Path) -> Arc<Course> {
        let opened = self.courses.values().chain(self.folders.iter().map(|folder| &folder.course));
        if let Some(course) = opened.into_iter().find(|course| course.root.as_deref() == Some(root)) {
            return Arc::clone(course);
        }
        Arc::new(Course::open_over(root, &self.known, &self.editor))
    }

    /// The course of a workspace folder, whose settings file may stand above it.
    fn course_of_folder(&self, root: &Path) -> Arc<Course> {
        let above = root.ancestors().find(|folder| folder.join(SETTINGS_FILE).is_file());
        self.course_at(above.unwrap_or(root))
    }

    /// Adds a folder to those whose documents are kept in an index. Returns whether it is new.
    pub fn add_folder(&mut self, root: PathBuf, is_nested: bool) -> bool {
        if self.folders.iter().any(|folder| folder.root == root) {
            return false;
        }
        self.courses.clear();
        let course = self.course_of_folder(&root);
        let (index, statements) = (Arc::default(), Arc::default());
        self.folders.push(Folder { root, is_nested, course, index, statements, is_indexed: false });
        true
    }

    /// Reads all settings anew; what was read by the old ones is read again.
    pub fn reopen_courses(&mut self) {
        self.courses.clear();
        self.told = Arc::default();
        self.elsewhere = Arc::new(Course::none_over(&self.known, &self.editor));
        let mut old = std::mem::take(&mut self.folders);
        old.retain(|folder| !folder.is_nested || folder.root.join(SETTINGS_FILE).is_file());
        for mut folder in old {
            let course = self.course_of_folder(&folder.root);
            if !course.knows_what(&folder.course) {
                // The numbers of the entries are others now.
                folder.index = Arc::default();
            }
            folder.statements = Arc::default();
            folder.course = course;
            self.folders.push(folder);
        }
        for document in self.documents.values_mut() {
            document.overtake();
            *document = Arc::new(document.unread());
        }
    }
}

/// Who waits for an answer, and so for all that is read for it.
#[derive(Clone, Debug, Default)]
pub struct Wish {
    is_cancelled: Arc<AtomicBool>,
    /// The document of which only the latest version is asked about.
    latest: Option<Arc<Document>>,
}

impl Wish {
    /// Whether somebody still waits.
    pub fn holds(&self) -> bool {
        !self.is_cancelled.load(Ordering::Relaxed)
            && !self.latest.as_ref().is_some_and(|document| document.is_overtaken())
    }

    /// Gives the wish up when what is returned is dropped.
    pub fn until_dropped(&self) -> impl Drop + use<> {
        GiveUpWhenDropped(Arc::clone(&self.is_cancelled))
    }
}

/// Tells the work on a request that nobody waits for it any more.
struct GiveUpWhenDropped(Arc<AtomicBool>);

impl Drop for GiveUpWhenDropped {
    fn drop(&mut self) {
        self.0.store(true, Ordering::Relaxed);
    }
}

/// One version of one document, and what holds for it.
#[derive(Clone, Debug)]
pub struct View {
    /// The document's address.
    pub uri: Url,
    /// The version.
    pub document: Arc<Document>,
    /// Its course.
    pub course: Arc<Course>,
    /// How columns are counted.
    pub encoding: Encoding,
    /// What the client can do.
    pub can: Arc<Can>,
    /// Who waits for what is made of it.
    pub wish: Wish,
}

impl View {
    /// The same for an answer that is of use only while this is the latest version.
    pub fn only_latest(mut self) -> Self {
        self.wish.latest = Some(Arc::clone(&self.document));
        self
    }

    /// Whether it is of the latest version of its document.
    pub fn is_latest(&self) -> bool {
        !self.document.is_overtaken()
    }

    /// The text.
    pub fn text(&self) -> &str {
        &self.document.source().text
    }

    /// What is read of it; `None` once nobody waits for the answer, which is then not sent.
    pub fn wanted_reading(&self) -> Option<&Reading> {
        self.document.reading(&self.course, &|| self.wish.holds())
    }

    /// What was read of it. Who answers has had it read before; else it is read now, to its end.
    pub fn reading(&self) -> &Reading {
        static NOTHING: LazyLock<Reading> = LazyLock::new(Reading::default);
        self.document.reading(&self.course, &|| true).unwrap_or(&NOTHING)
    }

    /// The byte at a position of the protocol.
    pub fn offset(&self, position: Position) -> usize {
        let source = self.document.source();
        source.lines.offset(position, &source.text, self.encoding)
    }

    /// The line and column of a byte.
    pub fn position(&self, at: usize) -> Position {
        let source = self.document.source();
        source.lines.position(at, &source.text, self.encoding)
    }

    /// The text at a range.
    pub fn slice(&self, span: Span) -> &str {
        span.of(self.text())
    }
}
