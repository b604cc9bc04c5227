//! Which course a document belongs to: the nearest folder above it with a settings file.

use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use ignore::gitignore::{Gitignore, GitignoreBuilder};

use super::files::Source;
use crate::course::{Course, Lazy, SETTINGS_FILE};

/// The courses that were met, each opened once.
pub struct Courses {
    known: Lazy,
    none: Arc<Opened>,
    opened: Mutex<HashMap<PathBuf, Arc<Opened>>>,
}

/// A course, with what of its folder is not read.
pub struct Opened {
    /// The course.
    pub course: Course,
    excluded: Gitignore,
}

impl Courses {
    /// No course yet.
    pub fn new() -> Self {
        let known = Lazy::built_in();
        let none = Arc::new(Opened { course: Course::none(&known), excluded: Gitignore::empty() });
        Self { known, none, opened: Mutex::default() }
    }

    /// The course of a document. Standard input belongs to the course of the folder in which the program was started.
    pub fn of(&self, source: &Source) -> Arc<Opened> {
        let path = source.path.clone().unwrap_or_else(|| PathBuf::from("./-"));
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or_else(|| Path::new("."));
        let Ok(folder) = folder.canonicalize() else { return Arc::clone(&self.none) };
        let Some(root) = folder.ancestors().find(|folder| folder.join(SETTINGS_FILE).is_file()) else {
            return Arc::clone(&self.none);
        };
        let mut opened = self.opened.lock().unwrap_or_else(PoisonError::into_inner);
        Arc::clone(opened.entry(root.to_path_buf()).or_insert_with(|| Arc::new(Opened::new(root, &self.known))))
    }

    /// Takes out of what was found in folders what a course does not want read.
    pub fn drop_excluded(&self, sources: &mut Vec<Source>) {
        sources.retain(|source| source.folder.is_none() || !self.of(source).excludes(source));
    }

    /// Every course that was met so far, by its folder.
    pub fn met(&self) -> Vec<(PathBuf, Arc<Opened>)> {
        let opened = self.opened.lock().unwrap_or_else(PoisonError::into_inner);
        let mut list: Vec<_> = opened.iter().map(|(root, course)| (root.clone(), Arc::clone(course))).collect();
        list.sort_by(|a, b| a.0.cmp(&b.0));
        list
    }
}

impl Opened {
    fn new(root: &Path, known: &Lazy) -> Self {
        let course = Course::open(root, known);
        let mut builder = GitignoreBuilder::new(root);
        for line in &course.settings.file.exclude {
            // A line that is no pattern excludes nothing.
            let _ = builder.add_line(None, line);
        }
        let excluded = builder.build().unwrap_or_else(|_| Gitignore::empty());
        Self { course, excluded }
    }

    fn excludes(&self, source: &Source) -> bool {
        let path = source.path.as_ref().and_then(|path| path.canonicalize().ok());
        path.is_some_and(|path| {
            path.starts_with(self.excluded.path())
                && self.excluded.matched_path_or_any_parents(&path, false).is_ignore()
        })
    }
}
