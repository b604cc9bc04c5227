//! What the server holds, and the snapshots that requests work on.
//!
//! There is one owner, [`Session`], behind a mutex that is held for a change or a snapshot and never across an await. A
//! [`View`] is one version of one document with the settings that hold for it; it stays true whatever comes after it.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use fascicle_analysis::Reading;
use fascicle_analysis::Span;
use fascicle_analysis::lines::{Encoding, Position};
use tower_lsp::Client;
use tower_lsp::lsp_types::Url;

use super::capabilities::Can;
use super::document::Document;
use crate::course::{Course, Lazy};

/// What the server holds.
#[derive(Debug)]
pub struct State {
    /// How columns are counted, as agreed with the client.
    pub encoding: Encoding,
    /// What the client can do.
    pub can: Arc<Can>,
    /// The open documents.
    pub documents: HashMap<Url, Arc<Document>>,
    /// Documents that were dropped because an edit could not be applied.
    pub dropped: HashSet<Url>,
    /// The courses, one a workspace folder.
    pub courses: Vec<Arc<Course>>,
    /// What holds outside all folders.
    pub elsewhere: Arc<Course>,
    /// Times of the requests, by method.
    pub times: BTreeMap<&'static str, Times>,
    /// The client wants to see where the time goes.
    pub trace: bool,
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
            courses: Vec::new(),
            elsewhere: Arc::new(Course::none(&known)),
            times: BTreeMap::new(),
            trace: false,
        };
        Self { client, known, state: Arc::new(Mutex::new(state)) }
    }

    /// The state. Hold it shortly, and never across an await.
    pub fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// A snapshot of an open document.
    pub fn view(&self, uri: &Url) -> Option<View> {
        let state = self.state();
        let document = Arc::clone(state.documents.get(uri)?);
        Some(View {
            uri: uri.clone(),
            document,
            course: state.course_of(uri),
            encoding: state.encoding,
            can: Arc::clone(&state.can),
            cancelled: Arc::default(),
        })
    }

    /// Whether a view is of the latest version of its document.
    pub fn is_latest(&self, view: &View) -> bool {
        self.state().documents.get(&view.uri).is_some_and(|latest| Arc::ptr_eq(latest, &view.document))
    }
}

impl State {
    /// The course that a document belongs to: of the folders that hold it, the innermost.
    pub fn course_of(&self, uri: &Url) -> Arc<Course> {
        let path = uri.to_file_path().ok();
        let held = path.and_then(|path| {
            let depth = |course: &Arc<Course>| course.root.as_ref().map_or(0, |root| root.as_os_str().len());
            self.courses.iter().filter(|course| course.holds(&path)).max_by_key(|course| depth(course))
        });
        Arc::clone(held.unwrap_or(&self.elsewhere))
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
    /// The request was taken back.
    pub cancelled: Arc<AtomicBool>,
}

impl View {
    /// The text.
    pub fn text(&self) -> &str {
        &self.document.source().text
    }

    /// What was read of it.
    pub fn reading(&self) -> &Reading {
        self.document.reading(&self.course)
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

    /// Whether the request was taken back, so that the work on it can stop.
    pub fn is_cancelled(&self) -> bool {
        self.cancelled.load(Ordering::Relaxed)
    }
}
