//! What a course decides: its folder, its settings file, and what its reader therefore knows.
//!
//! A course is a folder with a `fascicle.toml`, or just a folder. The server and the commands of the terminal read it
//! by the same functions.
#![allow(dead_code)] // the commands of the terminal do not ask for all of it yet

pub mod settings;

use std::fmt;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use fascicle_analysis::Knowledge;
use fascicle_analysis::features::completion::Names;

pub use settings::{SETTINGS_FILE, Settings};

/// What is known, laid out in memory when it is first asked for.
pub struct Known {
    /// What reading needs.
    pub knowledge: Knowledge,
    /// What completion needs.
    pub names: Names,
}

impl Known {
    /// Derives all that is needed from a vocabulary.
    pub fn new(vocabulary: fascicle_vocab::Vocabulary) -> Self {
        let names = Names::new(&vocabulary);
        Self { knowledge: Knowledge::new(vocabulary), names }
    }
}

type Make = Box<dyn FnOnce() -> Known + Send>;

/// What is known, made once, by whoever asks first; the others wait.
#[derive(Clone)]
pub struct Lazy(Arc<LazyLock<Known, Make>>);

impl Lazy {
    /// The built-in vocabulary.
    pub fn built_in() -> Self {
        Self::of(Box::new(|| Known::new(fascicle_vocab::built_in())))
    }

    fn of(make: Make) -> Self {
        Self(Arc::new(LazyLock::new(make)))
    }

    /// What is known. Waits until it is laid out.
    pub fn get(&self) -> &Known {
        LazyLock::force(&self.0)
    }
}

impl fmt::Debug for Lazy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Lazy")
    }
}

/// A course.
#[derive(Clone, Debug)]
pub struct Course {
    /// Its folder, where it has one.
    pub root: Option<PathBuf>,
    /// What it decides.
    pub settings: Settings,
    /// What is wrong with its settings.
    pub problems: Vec<fascicle_vocab::Problem>,
    known: Lazy,
}

impl Course {
    /// Documents that stand in no folder.
    pub fn none(known: &Lazy) -> Self {
        Self { root: None, settings: Settings::default(), problems: Vec::new(), known: known.clone() }
    }

    /// The course in a folder. Reads its settings file, if there is one.
    pub fn open(root: &Path, known: &Lazy) -> Self {
        let (settings, problems) = match std::fs::read_to_string(root.join(SETTINGS_FILE)) {
            Ok(text) => settings::read(&text),
            Err(_) => (Settings::default(), Vec::new()),
        };
        Self { root: Some(root.to_path_buf()), settings, problems, known: known.clone() }
    }

    /// What its reader knows.
    pub fn knowledge(&self) -> &Knowledge {
        &self.known.get().knowledge
    }

    /// The names that completion offers.
    pub fn names(&self) -> &Names {
        &self.known.get().names
    }

    /// Whether a path lies in its folder.
    pub fn holds(&self, path: &Path) -> bool {
        self.root.as_ref().is_some_and(|root| path.starts_with(root))
    }
}
