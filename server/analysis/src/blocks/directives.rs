//! Callouts and directives: the boxes of Markdown dialects, which CommonMark takes for quotations, code or text.
//!
//! ```text
//! > [!note] Title        ::: {.callout-tip title="Title"}        ```{warning} Title
//! > text                 text                                    text
//!                        :::                                     ```
//! > **Title**
//! > text
//! ```
//!
//! They are laid open before the parser sees them: their marks become blanks and their title a heading, **byte for byte
//! in place**, so that every place in the source stays what it is. A box of the kinds that hold somebody else's words or
//! what is wrong (`[!quote]`, `[!bug]`) stays the quotation that it is.

use std::borrow::Cow;
use std::ops::Range;

use crate::lexicon;

/// The mark of the heading that a title becomes.
const HEADING: &str = "###### ";

/// The mark of the heading that a title in bold becomes, in place of its stars. That it stands in a box tells its level.
const SHORT_HEADING: &str = "# ";

/// Boxes in which the author does not speak, or asks.
const QUOTING: &[&str] =
    &["quote", "cite", "bug", "failure", "fail", "missing", "error", "question", "help", "faq", "wrong"];

/// Directives whose fence is that of code and whose body is prose.
const PROSE: &[&str] = &[
    "admonition",
    "note",
    "tip",
    "hint",
    "important",
    "warning",
    "caution",
    "danger",
    "attention",
    "seealso",
    "topic",
    "sidebar",
    "margin",
    "figure",
    "card",
    "dropdown",
    "exercise-note",
    "abstract",
    "summary",
    "todo",
];

/// A text laid open.
#[derive(Debug, Default)]
pub struct Opened<'t> {
    /// The text for the parser, as long as the source.
    pub text: Cow<'t, str>,
    /// Where a title's heading begins, and where its box ends.
    pub titles: Vec<Range<usize>>,
    /// Where the mark of a box stands that is a quotation in form only.
    pub boxes: Vec<usize>,
}

/// Lays the boxes of a text open.
pub fn open(source: &str) -> Opened<'_> {
    if !source.contains("[!")
        && !source.contains(":::")
        && !source.contains("```{")
        && !source.contains("> **")
        && !source.contains(">**")
    {
        return Opened { text: Cow::Borrowed(source), ..Opened::default() };
    }
    let mut opener = Opener { source, text: source.as_bytes().to_vec(), ..Opener::default() };
    let mut at = 0;
    for line in source.split_inclusive('\n') {
        let body = line.trim_end_matches(['\n', '\r']);
        opener.line(at, body);
        at += line.len();
    }
    opener.close_quote(at);
    while let Some(title) = opener.fences.pop() {
        opener.close(title, at);
    }
    let text = String::from_utf8(opener.text).map_or(Cow::Borrowed(source), Cow::Owned);
    Opened { text, titles: opener.titles, boxes: opener.boxes }
}

/// What stands between fences of code.
#[derive(Clone, Copy)]
enum Fenced {
    Code,
    /// The prose of a directive, with its title.
    Prose(Option<usize>),
}

#[derive(Default)]
struct Opener<'t> {
    source: &'t str,
    text: Vec<u8>,
    titles: Vec<Range<usize>>,
    boxes: Vec<usize>,
    /// The title of the quotation box that is open.
    quote: Option<usize>,
    in_quote: bool,
    /// The colon fences that are open, each with its title.
    fences: Vec<Option<usize>>,
    /// The code fence that is open: its mark, and what stands in it.
    code: Option<(&'t str, Fenced)>,
    /// Options of a directive may stand here.
    in_options: bool,
}

impl<'t> Opener<'t> {
    fn line(&mut self, at: usize, line: &'t str) {
        let bare = line.trim_start();
        let start = at + line.len() - bare.len();
        let in_options = std::mem::take(&mut self.in_options);
        if let Some((fence, fenced)) = self.code {
            if bare.starts_with(fence) && bare.trim_start_matches('`').trim_start_matches('~').trim().is_empty() {
                self.code = None;
                if let Fenced::Prose(title) = fenced {
                    self.blank(start..at + line.len());
                    self.close(title, at);
                }
            } else if matches!(fenced, Fenced::Prose(_)) && in_options && bare.starts_with(':') {
                self.blank(start..at + line.len());
                self.in_options = true;
            }
            return;
        }
        if !bare.starts_with('>') {
            self.close_quote(at);
        }
        if bare.starts_with("```") || bare.starts_with("~~~") {
            self.code_fence(start, bare);
        } else if bare.starts_with(":::") {
            self.colon_fence(start, bare);
        } else if bare.starts_with('>') && !self.in_quote {
            self.in_quote = true;
            self.quote_mark(start, bare);
        }
    }

    /// `> [!note]- Title`
    fn quote_mark(&mut self, at: usize, line: &str) {
        let body = line.trim_start_matches(['>', ' ']);
        let start = at + line.len() - body.len();
        if let Some(lead) = body.strip_prefix("**") {
            self.box_in_bold(start, lead);
            return;
        }
        let Some((kind, rest)) = body.strip_prefix("[!").and_then(|body| body.split_once(']')) else { return };
        let is_kind = !kind.is_empty() && kind.bytes().all(|c| c.is_ascii_alphabetic() || c == b'-');
        if !is_kind || QUOTING.contains(&&*kind.to_ascii_lowercase()) {
            return;
        }
        self.boxes.push(start);
        let title = rest.trim_start_matches(['-', '+', ' ']);
        let from = start + body.len() - title.len();
        self.quote = self.title(start, from, title);
    }

    /// `> **Box 1. Title**`: who sets off the first words of a quotation writes a box, unless they tell who says what is
    /// quoted. A line that is nothing else is its title.
    fn box_in_bold(&mut self, start: usize, lead: &str) {
        let Some((bold, rest)) = lead.split_once("**") else { return };
        let words = || bold.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase);
        let is_said = words().next().is_some_and(|first| lexicon::is_speaker(&first));
        if is_said || words().any(|word| QUOTING.contains(&&*word)) {
            return;
        }
        self.boxes.push(start);
        if rest.trim_matches([' ', '.', ':']).is_empty() {
            let close = start + SHORT_HEADING.len() + bold.len();
            self.blank(close..close + "**".len());
            if let Some(place) = self.text.get_mut(start..start + SHORT_HEADING.len()) {
                place.copy_from_slice(SHORT_HEADING.as_bytes());
            }
            self.titles.push(start..self.source.len());
            self.quote = Some(self.titles.len() - 1);
        }
    }

    fn close_quote(&mut self, end: usize) {
        self.in_quote = false;
        let title = self.quote.take();
        self.close(title, end);
    }

    /// `::: {.note title="Title"}`, `:::note[Title]`, `:::{note} Title`, `:::`
    fn colon_fence(&mut self, start: usize, line: &str) {
        let body = line.trim_start_matches(':');
        if body.trim().is_empty() {
            self.blank(start..start + line.len());
            if let Some(title) = self.fences.pop() {
                self.close(title, start);
            }
            return;
        }
        let end = start + line.trim_end().len();
        let title = if let Some((from, to)) = title_of(line) {
            self.blank(start + to..end);
            self.title(start, start + from, line.get(from..to).unwrap_or_default())
        } else {
            self.blank(start..end);
            None
        };
        self.fences.push(title);
        self.in_options = false;
    }

    /// A fence of code; that of a directive of prose is laid open.
    fn code_fence(&mut self, start: usize, line: &'t str) {
        let mark = line.chars().next().unwrap_or('`');
        let len = line.len() - line.trim_start_matches(mark).len();
        let fence = line.get(..len).unwrap_or("```");
        let info = line.get(len..).unwrap_or_default();
        let name = info.strip_prefix('{').and_then(|info| info.split_once('}'));
        let Some((name, rest)) = name.filter(|(name, _)| PROSE.contains(&name.trim())) else {
            self.code = Some((fence, Fenced::Code));
            return;
        };
        let shown = rest.trim_start();
        // What stands behind the name of a figure is its file.
        let shown = if matches!(name.trim(), "figure" | "card") { "" } else { shown };
        let from = start + line.len() - shown.len();
        let title = if shown.is_empty() {
            self.blank(start..start + line.len());
            None
        } else {
            self.title(start, from, shown)
        };
        self.code = Some((fence, Fenced::Prose(title)));
        self.in_options = true;
    }

    /// Makes a title a heading: blanks from `start` to the title, the heading's mark first.
    fn title(&mut self, start: usize, from: usize, title: &str) -> Option<usize> {
        self.blank(start..from);
        if title.trim().is_empty() || from < start + HEADING.len() {
            return None;
        }
        if let Some(place) = self.text.get_mut(start..start + HEADING.len()) {
            place.copy_from_slice(HEADING.as_bytes());
        }
        self.titles.push(start..self.source.len());
        Some(self.titles.len() - 1)
    }

    fn close(&mut self, title: Option<usize>, end: usize) {
        if let Some(title) = title.and_then(|title| self.titles.get_mut(title)) {
            title.end = end;
        }
    }

    fn blank(&mut self, range: Range<usize>) {
        // The marks of boxes are ASCII; what is not stays, so the text stays valid.
        if self.source.get(range.clone()).is_some_and(str::is_ascii)
            && let Some(bytes) = self.text.get_mut(range)
        {
            bytes.fill(b' ');
        }
    }
}

/// Where the title of a colon fence stands in its line.
fn title_of(line: &str) -> Option<(usize, usize)> {
    if let Some(at) = line.find("title=\"") {
        let from = at + "title=\"".len();
        return line.get(from..)?.find('"').map(|len| (from, from + len));
    }
    let close = line.rfind(['}', ']']);
    if let Some(close) = close {
        if line.get(close..)?.starts_with(']') {
            let open = line.find('[')? + 1;
            return (open < close).then_some((open, close));
        }
        let rest = line.get(close + 1..)?;
        let title = rest.trim();
        let from = close + 1 + rest.len() - rest.trim_start().len();
        return (!title.is_empty()).then_some((from, from + title.len()));
    }
    // `::: note Title`
    let body = line.trim_start_matches(':');
    let name = body.trim_start().split(' ').next()?;
    let rest = body.trim_start().get(name.len()..)?;
    let title = rest.trim();
    let from = line.len() - rest.trim_start().len();
    (!title.is_empty()).then_some((from, from + title.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_become_headings_in_place() {
        for (source, opened) in [
            ("> [!note] Deltoid\n> text", "> ######  Deltoid\n> text"),
            ("> [!warning]- Deltoid", "> ######      Deltoid"),
            ("> [!note]\n> text", ">        \n> text"),
            ("> [!quote] Deltoid", "> [!quote] Deltoid"),
            ("::: {.callout-note title=\"Deltoid\"}\ntext\n:::", "######                    Deltoid  \ntext\n   "),
            (":::{tip}\ntext\n:::", "        \ntext\n   "),
            (":::tip[Deltoid]\n:::", "###### Deltoid \n   "),
            ("```{note} Deltoid\n:class: tip\ntext\n```", "######    Deltoid\n           \ntext\n   "),
            ("```python\n:::\n```", "```python\n:::\n```"),
        ] {
            assert_eq!(open(source).text, opened, "{source}");
        }
    }

    #[test]
    fn a_title_holds_as_far_as_its_box() {
        let opened = open("> [!note] Deltoid\n> text\n\nmore");
        assert_eq!(opened.titles.as_slice(), std::slice::from_ref(&(2..25)));
        assert_eq!(opened.boxes, [2]);
    }
}
