//! What a course decides: its folder, its settings file, and what its reader therefore knows.
//!
//! A course is a folder with a `fascicle.toml`, or just a folder. The server and the commands of the terminal read it
//! by the same functions.

pub mod index;
mod preferred;
pub mod settings;
pub mod statements;

use std::fmt;
use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use fascicle_analysis::Knowledge;
use fascicle_analysis::features::completion::Names;
use fascicle_vocab::read::File;
use fascicle_vocab::{Problem, Vocabulary};

use index::Stamp;
pub use settings::{SETTINGS_FILE, Settings};

/// What is known, laid out in memory when it is first asked for.
pub struct Known {
    /// What reading needs.
    pub knowledge: Knowledge,
    /// What completion needs.
    pub names: Names,
    /// What is wrong with the vocabulary files of the course.
    pub problems: Vec<Problem>,
}

impl Known {
    /// Derives all that is needed from a vocabulary.
    pub fn new(vocabulary: Vocabulary) -> Self {
        let names = Names::new(&vocabulary);
        Self { knowledge: Knowledge::new(vocabulary), names, problems: Vec::new() }
    }

    /// Lays the vocabulary files of a course over a vocabulary and adopts the course's reference. A file that is not
    /// there is told of and left out.
    fn overlaid(base: &Vocabulary, root: &Path, settings: &Settings) -> Self {
        let (overlay, reference) = (&settings.file.overlay, settings.file.reference.as_deref());
        let line = |key: &str, place: usize| settings.lines.of(key, place).unwrap_or(1);
        let mut problems = Vec::new();
        let mut texts = Vec::new();
        for (place, name) in overlay.iter().enumerate() {
            match std::fs::read_to_string(root.join(name)) {
                Ok(text) => texts.push((name.clone(), text)),
                Err(error) => problems.push(Problem {
                    file: SETTINGS_FILE.to_owned(),
                    line: line("overlay", place),
                    message: format!("the overlay `{name}` cannot be read: {error}"),
                }),
            }
        }
        let files: Vec<File<'_>> = texts.iter().map(|(name, text)| File { name, text }).collect();
        let (mut vocabulary, told) = fascicle_vocab::read::read(&files, Some(base));
        problems.extend(told);
        if let Some(source) = reference {
            let known = vocabulary.sources_of_segments();
            if !known.contains(&source) {
                let near = fascicle_vocab::problem::did_you_mean(source, known.iter().copied());
                let most = known.into_iter().take(6).collect::<Vec<_>>().join("`, `");
                let message = format!(
                    "no segments rest on the reference `{source}`{near}; the sources with most are `{most}` \
                     (`fascicle facts --audit` lists all)"
                );
                problems.push(Problem { file: SETTINGS_FILE.to_owned(), line: line("reference", 0), message });
            }
            vocabulary.adopt(source);
        }
        let own = |problem: &Problem| overlay.contains(&problem.file);
        problems.extend(fascicle_vocab::check::check(&vocabulary).into_iter().filter(own));
        Self { problems, ..Self::new(vocabulary) }
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

    /// Whether two are one and the same.
    fn is(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
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
    /// Its folder has a settings file, so all its documents are to call things alike.
    pub is_declared: bool,
    /// Its reader knows other things than the built-in vocabulary: it lays files over it or adopts a reference.
    pub has_own_vocabulary: bool,
    /// What it decides.
    pub settings: Settings,
    /// What is wrong with its settings file.
    told: Vec<Problem>,
    /// Its settings and vocabulary files, as they were when it was opened.
    files: Vec<(PathBuf, Option<Stamp>)>,
    known: Lazy,
}

impl Course {
    /// Documents that stand in no folder.
    pub fn none(known: &Lazy) -> Self {
        Self {
            root: None,
            is_declared: false,
            has_own_vocabulary: false,
            settings: Settings::default(),
            told: Vec::new(),
            files: Vec::new(),
            known: known.clone(),
        }
    }

    /// Documents that stand in no folder, for an editor with settings.
    pub fn none_over(known: &Lazy, editor: &settings::File) -> Self {
        let none = Self { settings: editor.clone().into(), ..Self::none(known) };
        if editor.reference.is_none() {
            return none;
        }
        let base = known.clone();
        // Vocabulary files are those of a folder.
        let file = settings::File { overlay: Vec::new(), ..editor.clone() };
        let make = move || Known::overlaid(&base.get().knowledge.vocabulary, Path::new(""), &file.into());
        Self { has_own_vocabulary: true, known: Lazy::of(Box::new(make)), ..none }
    }

    /// The course in a folder. Reads its settings file, if there is one.
    pub fn open(root: &Path, known: &Lazy) -> Self {
        Self::open_over(root, known, &settings::File::default())
    }

    /// The course in a folder, whose settings file stands over what the editor says.
    pub fn open_over(root: &Path, known: &Lazy, editor: &settings::File) -> Self {
        let mut files = vec![(root.join(SETTINGS_FILE), Stamp::of(&root.join(SETTINGS_FILE)))];
        let file = std::fs::read_to_string(root.join(SETTINGS_FILE));
        let is_declared = file.is_ok();
        let (settings, told) = match file {
            Ok(text) => settings::read(&text, editor),
            Err(_) => (editor.clone().into(), Vec::new()),
        };
        let file = &settings.file;
        files.extend(file.overlay.iter().map(|name| (root.join(name), Stamp::of(&root.join(name)))));
        let has_own_vocabulary = !file.overlay.is_empty() || file.reference.is_some();
        let known = if has_own_vocabulary {
            let (base, root, settings) = (known.clone(), root.to_path_buf(), settings.clone());
            let make = move || Known::overlaid(&base.get().knowledge.vocabulary, &root, &settings);
            Lazy::of(Box::new(make))
        } else {
            known.clone()
        };
        Self { root: Some(root.to_path_buf()), is_declared, has_own_vocabulary, settings, told, files, known }
    }

    /// Whether its settings or vocabulary files are others than those that were read.
    pub fn is_stale(&self) -> bool {
        self.files.iter().any(|(path, stamp)| Stamp::of(path) != *stamp)
    }

    /// Whether its reader knows the same as that of another course, so that entries of one are those of the other.
    pub fn knows_what(&self, other: &Self) -> bool {
        self.known.is(&other.known)
    }

    /// What is wrong with its settings and its vocabulary files.
    pub fn problems(&self) -> Vec<Problem> {
        self.problems_beside(&[])
    }

    /// The same for one of several courses. What the editor says holds for all of them, so a name there is right if one of
    /// them has it, and it is told where no settings file is.
    pub fn problems_beside(&self, others: &[Arc<Self>]) -> Vec<Problem> {
        let mut list: Vec<Problem> = self.told.iter().chain(&self.known.get().problems).cloned().collect();
        let has = |course: &Arc<Self>, name: &str| !course.knowledge().names.lookup(name).is_empty();
        let is_known_elsewhere = |name: &str| !self.is_declared && others.iter().any(|course| has(course, name));
        let prefer = &self.settings.reading.prefer;
        for (place, message) in preferred::in_vain(prefer, self.knowledge(), &is_known_elsewhere) {
            let line = self.settings.lines.of("prefer", place);
            if line.is_some() || !self.is_declared {
                list.push(Problem { file: SETTINGS_FILE.to_owned(), line: line.unwrap_or(1), message });
            }
        }
        list.sort_by(|a, b| (&a.file, a.line).cmp(&(&b.file, b.line)));
        list
    }

    /// What its reader knows.
    pub fn knowledge(&self) -> &Knowledge {
        &self.known.get().knowledge
    }

    /// The names that completion offers.
    pub fn names(&self) -> &Names {
        &self.known.get().names
    }
}
