//! The annotated corpus: texts in which every statement that matters is marked as true, false or silent, and the score
//! of the claim reader on them.
//!
//! The form of the marks is told in `tests/corpus/README.md`. [`Document::parse`] takes the marks out and remembers where
//! each stood; [`score`] reads what is left and lays the claims beside the marks.

use std::path::Path;

use fascicle_analysis::claims::{Claim, ClaimKind};
use fascicle_analysis::coverage::{self, Sentence};
use fascicle_analysis::verdicts::{self, Judgement, Verdict};
use fascicle_analysis::{Finding, Form, Settings, Span};
use fascicle_analysis::{Knowledge, Reading, reading};

/// What a mark says of its statement.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Truth {
    /// True by the current textbooks.
    True,
    /// False by every textbook.
    False,
    /// It asserts nothing that may be reported.
    Silent,
}

impl Truth {
    /// The sign in the text.
    pub const fn sign(self) -> char {
        match self {
            Self::True => '+',
            Self::False => '-',
            Self::Silent => '0',
        }
    }
}

/// A marked statement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// Where it stands in the text without marks.
    pub span: Span,
    /// True, false or silent.
    pub truth: Truth,
    /// What it is about.
    pub kind: ClaimKind,
    /// What would have been right, where the writer told it.
    pub right: Option<String>,
}

/// A text of the corpus.
#[derive(Clone, Debug)]
pub struct Document {
    /// Path below the corpus, with forward slashes.
    pub name: String,
    /// The text without marks.
    pub text: String,
    /// Its marks, in order.
    pub marks: Vec<Mark>,
}

impl Document {
    /// Takes the marks out of a text.
    ///
    /// # Errors
    /// A mark that is not of the form, with its line.
    pub fn parse(name: &str, marked: &str) -> Result<Self, String> {
        let mut text = String::with_capacity(marked.len());
        let mut marks = Vec::new();
        let mut rest = marked;
        let line = |text: &str| text.matches('\n').count() + 1;
        while let Some(open) = rest.find('⟦') {
            let (before, from) = rest.split_at(open);
            text.push_str(before);
            let wrong = |what: &str| format!("{name}:{}: {what}", line(&text));
            let from = from.trim_start_matches('⟦');
            let (body, after) = from.split_once('⟧').ok_or_else(|| wrong("a mark without its end"))?;
            let (head, body) = body.split_once('|').ok_or_else(|| wrong("a mark without `|`"))?;
            if body.contains(['⟦', '\n']) {
                return Err(wrong("a mark within a mark or across lines"));
            }
            let (truth, head) = [Truth::True, Truth::False, Truth::Silent]
                .into_iter()
                .find_map(|truth| Some((truth, head.strip_prefix(truth.sign())?)))
                .ok_or_else(|| wrong("a mark that begins with none of + - 0"))?;
            let (word, right) = match head.split_once('>') {
                Some((word, right)) => (word, Some(right.to_owned())),
                None => (head, None),
            };
            let kind = ClaimKind::ALL
                .into_iter()
                .find(|kind| kind.word() == word)
                .ok_or_else(|| wrong(&format!("no kind of claim is called `{word}`")))?;
            let start = text.len();
            text.push_str(body);
            marks.push(Mark { span: Span::new(start, text.len()), truth, kind, right });
            rest = after;
        }
        text.push_str(rest);
        Ok(Self { name: name.to_owned(), text, marks })
    }

    /// The line of a byte, from 1.
    pub fn line(&self, at: usize) -> usize {
        self.text.get(..at).map_or(1, |before| before.matches('\n').count() + 1)
    }
}

/// Reads the documents of one part of the corpus (`tuned`, `held`) or of all of it.
///
/// # Errors
/// A folder or file that cannot be read, a mark that is not of the form.
pub fn documents(part: &str) -> Result<Vec<Document>, String> {
    let root = crate::folder().join("corpus");
    let folder = if part == "all" { root.clone() } else { root.join(part) };
    let files = crate::markdown_files(&folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    files.iter().filter(|path| path.parent() != Some(&root)).map(|path| document(&root, path)).collect()
}

fn document(root: &Path, path: &Path) -> Result<Document, String> {
    let name = path.strip_prefix(root).unwrap_or(path).to_string_lossy().replace('\\', "/");
    let marked = std::fs::read_to_string(path).map_err(|error| format!("{name}: {error}"))?;
    Document::parse(&name, &marked)
}

/// A claim as it was read, with what the graph says and what the author would be told.
#[derive(Clone, Debug)]
pub struct Told {
    /// The claim.
    pub claim: Claim,
    /// The graph's answer.
    pub judgement: Judgement,
    /// The finding of a contradiction.
    pub finding: Option<Finding>,
}

impl Told {
    /// Where it is laid beside the marks.
    pub fn span(&self) -> Span {
        self.finding.as_ref().map_or(self.claim.span, |finding| finding.span)
    }

    /// The author would be told that this is wrong.
    pub fn contradicts(&self) -> bool {
        self.judgement.verdict == Verdict::Contradicts && self.finding.is_some()
    }

    /// It was read and found right.
    pub fn agrees(&self) -> bool {
        matches!(self.judgement.verdict, Verdict::Agrees | Verdict::Variant | Verdict::LessExact)
    }
}

/// A document laid beside its marks.
#[derive(Clone, Debug)]
pub struct Scored<'a> {
    /// The document.
    pub document: &'a Document,
    /// For each mark the claims that were read there.
    pub marks: Vec<(&'a Mark, Vec<Told>)>,
    /// Claims where no mark stands.
    pub unmarked: Vec<Told>,
    /// The sentences with two or more names.
    pub sentences: Vec<Sentence>,
}

/// Reads a document and lays its claims beside its marks.
///
/// A claim belongs to the mark that its finding (or else the claim itself) overlaps. Among several, a mark of the same
/// kind goes first, then the mark that holds the finding's place, then the one that holds most parts of the claim, then
/// the last, for what decides a statement tends to stand at its end.
pub fn score<'a>(document: &'a Document, knowledge: &Knowledge) -> Scored<'a> {
    let reading = reading::read(&document.text, Form::Markdown, knowledge, &Settings::default());
    let sentences = coverage::coverage(&reading);
    let Reading { claims, .. } = reading;
    let mut scored = Scored {
        document,
        marks: document.marks.iter().map(|mark| (mark, Vec::new())).collect(),
        unmarked: Vec::new(),
        sentences,
    };
    for (claim, judgement) in claims {
        let finding = verdicts::finding(&claim, &judgement, &knowledge.vocabulary, &document.text);
        let told = Told { claim, judgement, finding };
        let best = scored
            .marks
            .iter_mut()
            .enumerate()
            .filter(|(_, (mark, _))| mark.span.overlaps(told.span()) || mark.span.overlaps(told.claim.span))
            .max_by_key(|(at, (mark, _))| {
                let parts = told.claim.parts.iter().filter(|part| mark.span.contains(part.span)).count();
                (mark.kind == told.claim.kind, mark.span.overlaps(told.span()), parts, *at)
            });
        match best {
            Some((_, (_, list))) => list.push(told),
            None => scored.unmarked.push(told),
        }
    }
    scored
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn takes_marks_out() {
        let document = Document::parse("a.md", "One.\n⟦-supply>b|| x | y |⟧ ⟦0roots|C5⟧.\n").unwrap();
        assert_eq!(document.text, "One.\n| x | y | C5.\n");
        let marks: Vec<_> =
            document.marks.iter().map(|m| (m.span.of(&document.text), m.truth, m.kind, m.right.as_deref())).collect();
        assert_eq!(
            marks,
            [("| x | y |", Truth::False, ClaimKind::Supply, Some("b")), ("C5", Truth::Silent, ClaimKind::Roots, None)]
        );
        assert_eq!(document.line(marks.len() + 4), 2);
        for wrong in ["⟦+supply|a", "⟦+supply⟧", "⟦?supply|a⟧", "⟦+sup|a⟧", "⟦+supply|a ⟦+supply|b⟧⟧"]
        {
            assert!(Document::parse("a.md", wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn the_corpus_is_of_the_form_and_no_smaller_than_it_was() {
        let count = |part| documents(part).unwrap().iter().map(|document| document.marks.len()).sum::<usize>();
        let (tuned, held) = (count("tuned"), count("held"));
        assert!(tuned >= 868 && held >= 549, "{tuned} {held}");
        assert_eq!(count("all"), tuned + held);
    }
}
