//! Colours, only where a person looks.

use std::io::IsTerminal;

use anstyle::{AnsiColor, Style};
use fascicle_analysis::Severity;

/// When to use colours.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum When {
    /// On a terminal, unless `NO_COLOR` is set or the terminal is dumb.
    Auto,
    /// Always.
    Always,
    /// Never.
    Never,
}

/// What a stretch of output is, and with it how it looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// The title of something.
    Title,
    /// A heading within it.
    Heading,
    /// Latin names.
    Latin,
    /// What stands aside: line numbers, sources, codes.
    Faint,
    /// Something of this severity.
    Severity(Severity),
    /// What is right.
    Good,
}

/// Paints, or leaves plain.
#[derive(Clone, Copy, Debug)]
pub struct Paint {
    on: bool,
}

impl Paint {
    /// Decides once for standard output.
    pub fn new(when: When) -> Self {
        let wanted = || {
            let set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
            !set("NO_COLOR")
                && std::env::var_os("TERM").is_none_or(|terminal| terminal != "dumb")
                && std::io::stdout().is_terminal()
        };
        let on = match when {
            When::Auto => wanted(),
            When::Always => true,
            When::Never => false,
        };
        Self { on }
    }

    /// A text in its look.
    pub fn paint(self, look: Look, text: &str) -> String {
        if !self.on || text.is_empty() {
            return text.to_owned();
        }
        let style = match look {
            Look::Title => Style::new().bold(),
            Look::Heading => Style::new().bold().fg_color(Some(AnsiColor::Blue.into())),
            Look::Latin => Style::new().italic(),
            Look::Faint => Style::new().dimmed(),
            Look::Severity(Severity::Error) => Style::new().bold().fg_color(Some(AnsiColor::Red.into())),
            Look::Severity(Severity::Warning) => Style::new().bold().fg_color(Some(AnsiColor::Yellow.into())),
            Look::Severity(Severity::Information) => Style::new().fg_color(Some(AnsiColor::Cyan.into())),
            Look::Severity(Severity::Hint) => Style::new().fg_color(Some(AnsiColor::Magenta.into())),
            Look::Good => Style::new().fg_color(Some(AnsiColor::Green.into())),
        };
        format!("{style}{text}{style:#}")
    }
}

/// How many columns the output has: those of the terminal, at most 120; 100 where there is none.
pub fn columns() -> usize {
    if !std::io::stdout().is_terminal() {
        return 100;
    }
    terminal_size::terminal_size().map_or(100, |(width, _)| usize::from(width.0).clamp(40, 120))
}

/// A text from a document or a file name, safe for a terminal: control characters and what turns the direction of writing
/// are shown as a replacement character, so that no document can steer the terminal of who checks it.
pub fn safe(text: &str) -> String {
    text.chars().map(|c| if is_unsafe(c) { char::REPLACEMENT_CHARACTER } else { c }).collect()
}

/// Whether a character would steer the terminal rather than show.
pub fn is_unsafe(c: char) -> bool {
    c.is_control() || matches!(c, '\u{200E}' | '\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_unless_wanted_and_never_steered() {
        assert_eq!(Paint::new(When::Never).paint(Look::Title, "a"), "a");
        assert_eq!(Paint::new(When::Always).paint(Look::Title, "a"), "\u{1b}[1ma\u{1b}[0m");
        assert_eq!(safe("a\u{1b}[31mb\u{202E}c"), "a\u{FFFD}[31mb\u{FFFD}c");
    }
}
