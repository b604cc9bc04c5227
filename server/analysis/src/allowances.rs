//! What an author allows at a place: a comment in the text that says which findings are not wanted there.
//!
//! `<!-- fascicle:allow supply-differs -->` behind a line speaks of that line. On a line of its own it speaks of the lines
//! that follow, to the next empty one: of a paragraph, a list, a table. Several codes are separated by spaces or commas. In
//! MDX the comment is `{/* fascicle:allow supply-differs */}`.

use crate::blocks::{BlockKind, Form};
use crate::features::places;
use crate::findings::{Edit, Finding};
use crate::reading::Reading;
use crate::text::Span;

/// What the comment begins with, behind its opening.
const MARK: &str = "fascicle:allow";

/// How a comment opens and closes.
const COMMENTS: [(&str, &str); 2] = [("<!--", "-->"), ("{/*", "*/}")];

/// What a document allows where.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Allowances<'t> {
    list: Vec<(Span, &'t str)>,
}

impl<'t> Allowances<'t> {
    /// Reads the comments of a document.
    pub fn of(text: &'t str, form: Form) -> Self {
        let mut list = Vec::new();
        let marks = if form == Form::Markdown { text.match_indices(MARK) } else { "".match_indices(MARK) };
        for (at, _) in marks {
            let before = text.get(..at).unwrap_or_default().trim_end();
            let opened = COMMENTS.iter().find_map(|(open, close)| Some((before.strip_suffix(open)?, *close)));
            let Some((before, close)) = opened else { continue };
            let Some((codes, _)) = text.get(at + MARK.len()..).and_then(|rest| rest.split_once(close)) else {
                continue;
            };
            let end = at + MARK.len() + codes.len() + close.len();
            let line = Span::new(line_start(text, before.len()), line_end(text, end));
            let is_alone = Span::new(line.start, before.len()).of(text).trim().is_empty()
                && Span::new(end, line.end).of(text).trim().is_empty();
            let span = if is_alone { Span::new(line.start, block_end(text, line.end)) } else { line };
            list.extend(codes.split([' ', ',', '\n']).filter(|code| !code.is_empty()).map(|code| (span, code)));
        }
        Self { list }
    }

    /// Whether a finding is allowed where it stands.
    pub fn allows(&self, finding: &Finding) -> bool {
        let at = finding.span.start;
        self.list
            .iter()
            .any(|(span, code)| *code == finding.code && span.start <= at && at < span.end.max(span.start + 1))
    }
}

fn line_start(text: &str, at: usize) -> usize {
    text.get(..at).and_then(|before| before.rfind(['\n', '\r'])).map_or(0, |end| end + 1)
}

fn line_end(text: &str, at: usize) -> usize {
    text.get(at..).and_then(|rest| rest.find(['\n', '\r'])).map_or(text.len(), |end| at + end)
}

/// Where the lines that follow the end of a line come to an empty one.
fn block_end(text: &str, line_end: usize) -> usize {
    let rest = text.get(line_end..).unwrap_or_default();
    let body = rest.strip_prefix("\r\n").or_else(|| rest.strip_prefix(['\n', '\r'])).unwrap_or(rest);
    let mut end = text.len() - body.len();
    for line in body.split_inclusive('\n') {
        if line.trim().is_empty() {
            break;
        }
        end += line.len();
    }
    end
}

/// The change that allows a finding where it stands: a comment behind its line, or before its table, for a row has no room.
/// `None` in a form of document that has no comments.
pub fn allow(text: &str, form: Form, reading: &Reading, finding: &Finding) -> Option<Edit> {
    if form != Form::Markdown {
        return None;
    }
    let comment = format!("<!-- {MARK} {} -->", finding.code);
    let list = &reading.blocks.list;
    let table = places::blocks_at(reading, finding.span.start).find_map(|block| match list.get(block)?.kind {
        BlockKind::Cell { table, .. } => Some(table),
        _ => None,
    });
    if let Some(table) = table {
        let is_of_it = |kind: BlockKind| matches!(kind, BlockKind::Cell { table: other, .. } if other == table);
        let first = list.iter().filter(|block| is_of_it(block.kind)).map(|block| block.span.start).min()?;
        let start = line_start(text, first);
        let line = Span::new(start, first).of(text);
        let indent = line.len() - line.trim_start().len();
        let indent = line.get(..indent).unwrap_or_default();
        return Some(Edit { span: Span::new(start, start), text: format!("{indent}{comment}\n") });
    }
    let line = Span::new(line_start(text, finding.span.start), line_end(text, finding.span.start));
    let end = line.start + line.of(text).trim_end().len();
    Some(Edit { span: Span::new(end, end), text: format!(" {comment}") })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::{Knowledge, Settings};

    fn codes(text: &str, knowledge: &Knowledge) -> Vec<(&'static str, usize)> {
        let reading = crate::read(text, Form::Markdown, knowledge, &Settings::default());
        reading.findings.iter().map(|finding| (finding.code, finding.span.start)).collect()
    }

    #[test]
    fn what_is_allowed_is_not_told() {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        let wrong = "Deltoid is supplied by the radial nerve.";
        assert_eq!(codes(wrong, &knowledge).len(), 1);
        for text in [
            format!("{wrong} <!-- fascicle:allow supply-differs -->\n"),
            format!("<!--fascicle:allow other, supply-differs-->\n{wrong}\n"),
            format!("- {wrong} {{/* fascicle:allow supply-differs */}}\n"),
            format!("<!-- fascicle:allow supply-differs -->\r\nFirst line\r\n{wrong}\r\n"),
        ] {
            assert_eq!(codes(&text, &knowledge), [], "{text}");
        }
        for text in [
            format!("{wrong} <!-- fascicle:allow roots-differ -->\n"),
            format!("<!-- fascicle:allow supply-differs -->\n\n{wrong}\n"),
            format!("{wrong} fascicle:allow supply-differs\n"),
        ] {
            assert_eq!(codes(&text, &knowledge).len(), 1, "{text}");
        }
    }

    #[test]
    fn allowing_a_finding_takes_it_away_and_nothing_else() {
        let knowledge = Knowledge::new(fascicle_vocab::built_in());
        for text in [
            "Deltoid is supplied by the radial nerve.  \nTeres minor is supplied by the radial nerve.\n",
            "# A\n\n- Deltoid is supplied by the radial nerve.\n- Teres minor is supplied by the radial nerve.\n",
            "x\n\n| Muscle | Nerve |\n|---|---|\n| Deltoid | radial nerve |\n\nTeres minor is supplied by the radial nerve.",
        ] {
            let reading = crate::read(text, Form::Markdown, &knowledge, &Settings::default());
            assert_eq!(reading.findings.len(), 2, "{text}");
            let finding = reading.findings.first().unwrap();
            let edit = allow(text, Form::Markdown, &reading, finding).unwrap();
            let (head, tail) = text.split_at(edit.span.start);
            let allowed = format!("{head}{}{tail}", edit.text);
            let left = crate::read(&allowed, Form::Markdown, &knowledge, &Settings::default());
            let claims = left.claims.len();
            assert_eq!((left.findings.len(), claims), (1, reading.claims.len()), "{allowed}");
        }
    }
}
