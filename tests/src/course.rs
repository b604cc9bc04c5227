//! The demo course, with errors planted on purpose, and its clean twin.
//!
//! `tests/course/expected.toml` tells each planted error, its place and what is right. The course with every error put
//! right is the clean twin, byte for byte, so the two cannot drift apart.

use std::path::{Path, PathBuf};

use serde::Deserialize;

/// A planted error.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Planted {
    /// File below the course.
    pub file: PathBuf,
    /// The text round the error, `{}` for the error itself.
    pub at: String,
    /// The error.
    pub text: String,
    /// What is right.
    pub right: String,
    /// Kind of the finding, as in the program's output.
    pub kind: String,
    /// Kind of the claim.
    pub about: Option<String>,
}

impl Planted {
    /// Where the error stands in the text of its file.
    ///
    /// # Errors
    /// The place is not there, or there twice.
    pub fn span(&self, text: &str) -> Result<(usize, usize), String> {
        let around = self.at.replacen("{}", &self.text, 1);
        let before = self.at.find("{}").ok_or_else(|| format!("`{}` has no {{}}", self.at))?;
        match text.match_indices(&around).collect::<Vec<_>>().as_slice() {
            [(at, _)] => Ok((at + before, at + before + self.text.len())),
            found => Err(format!("{}: `{around}` stands there {} times, not once", self.file.display(), found.len())),
        }
    }
}

#[derive(Deserialize)]
struct Expected {
    finding: Vec<Planted>,
}

/// The folder of the demo course.
pub fn folder() -> PathBuf {
    crate::folder().join("course")
}

/// The folder of the clean twin.
pub fn clean_folder() -> PathBuf {
    crate::folder().join("course-clean")
}

/// The planted errors.
///
/// # Errors
/// The list cannot be read or is not of the form.
pub fn planted() -> Result<Vec<Planted>, String> {
    let text = read(&folder().join("expected.toml"))?;
    let expected: Expected = toml::from_str(&text).map_err(|error| error.to_string())?;
    Ok(expected.finding)
}

/// Reads a file of the course.
///
/// # Errors
/// With the path and why.
pub fn read(path: &Path) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
}
