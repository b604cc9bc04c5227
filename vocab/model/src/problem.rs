//! What is wrong with a data file, said so that its author can mend it.

use std::fmt;

/// Something wrong in a vocabulary or overlay file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The file, as it was handed in.
    pub file: String,
    /// Line, from 1.
    pub line: u32,
    /// What is wrong, and what to do about it.
    pub message: String,
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.message)
    }
}

/// The candidate that a mistyped word most likely means, if one is near.
pub fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    candidates
        .into_iter()
        .map(|candidate| (strsim::jaro_winkler(word, candidate), candidate))
        .filter(|(likeness, _)| *likeness > 0.85)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, candidate)| candidate)
}

/// A sentence that offers the nearest candidate, or nothing.
pub fn did_you_mean<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> String {
    nearest(word, candidates).map_or_else(String::new, |near| format!("; did you mean `{near}`?"))
}
