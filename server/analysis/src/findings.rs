//! What is reported: a range, a code, a sentence, a reason, and what to do about it.

use crate::text::Span;

/// What a finding is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum FindingKind {
    /// How a structure is called.
    Name,
    /// What a statement says.
    Claim,
    /// What two places of a course say.
    Course,
    /// An exam item or its key.
    Item,
    /// A generated block that is out of date.
    Block,
    /// Settings and overlays.
    Setup,
}

impl FindingKind {
    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Claim => "claim",
            Self::Course => "course",
            Self::Item => "item",
            Self::Block => "block",
            Self::Setup => "setup",
        }
    }
}

/// How serious a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Severity {
    /// A student would learn something false.
    Error,
    /// Very likely wrong.
    Warning,
    /// Worth knowing.
    Information,
    /// A matter of taste or consistency.
    Hint,
}

impl Severity {
    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Warning => "warning",
            Self::Information => "information",
            Self::Hint => "hint",
        }
    }
}

/// A change to the source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edit {
    /// What is replaced.
    pub span: Span,
    /// By what.
    pub text: String,
}

/// A remedy that the author can take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// What it does, as a menu shows it.
    pub title: String,
    /// Its changes, none overlapping.
    pub edits: Vec<Edit>,
    /// It may be applied without asking.
    pub safe: bool,
}

/// A name that a misspelling may mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Candidate {
    /// The name.
    pub name: String,
    /// Identifier of the entry.
    pub id: String,
    /// Edits between what was written and the name.
    pub distance: u32,
    /// Both sound alike.
    pub sounds_alike: bool,
    /// From 0 to 1, the best first.
    pub score: f64,
}

/// Something to tell the author.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Plain words in kebab-case.
    pub code: &'static str,
    /// What it is about.
    pub kind: FindingKind,
    /// How serious it is.
    pub severity: Severity,
    /// Where it stands in the source.
    pub span: Span,
    /// One sentence.
    pub message: String,
    /// The steps of the path through the graph, or other reasons, one a line.
    pub reason: Vec<String>,
    /// Other places of the same document that belong to it, each with a remark.
    pub related: Vec<(Span, String)>,
    /// Remedies, the likeliest first.
    pub fixes: Vec<Fix>,
    /// For a misspelling: what it may mean, the likeliest first.
    pub candidates: Vec<Candidate>,
}
