//! The page that explains what is found, a section for each code.

/// The page, in Markdown. A code is the heading and so the anchor of its section.
pub const PAGE: &str = include_str!("../FINDINGS.md");

/// The codes, in the order of the page.
pub fn codes() -> impl Iterator<Item = &'static str> {
    PAGE.lines().filter_map(|line| line.strip_prefix("## "))
}
