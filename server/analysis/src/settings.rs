//! What a course decides about its own texts.

/// The decisions of a course, as its settings file and its editor state them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// Words that are right in this course.
    pub words: Vec<String>,
    /// Codes of findings that are not wanted.
    pub off: Vec<String>,
    /// Names that the course has chosen for their structures.
    pub prefer: Vec<String>,
    /// Codes of kinds of names that the course keeps from even where it uses no other: `former-name`, `eponym`.
    pub avoid: Vec<String>,
    /// The spelling that the course has chosen; without one, what it writes most.
    pub spelling: Option<EnglishSpelling>,
    /// The source whose reading of roots the course adopts.
    pub reference: Option<String>,
}

/// A way to spell English.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EnglishSpelling {
    /// *fibre*, *oesophagus*.
    British,
    /// *fiber*, *esophagus*.
    American,
}
