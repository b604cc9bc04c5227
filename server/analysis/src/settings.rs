//! What a course decides about its own texts.

/// The decisions of a course, as its settings file and its editor state them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// Words that are right in this course.
    pub words: Vec<String>,
    /// Codes of findings that are not wanted.
    pub off: Vec<String>,
    /// The source whose reading of roots the course adopts.
    pub reference: Option<String>,
}
