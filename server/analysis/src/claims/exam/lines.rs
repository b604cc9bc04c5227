//! The lines of a document as exam papers write them: numbered stems, lettered options, lines that give a key.

use super::Choice;
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::lexicon;
use crate::text::{Plain, Span};

/// A line of a block.
pub(super) struct Line {
    pub(super) block: BlockIx,
    pub(super) plain: Plain,
    /// The number of the list item that the line begins, if it begins one.
    pub(super) number: Option<u64>,
    /// The block is nested in another item.
    pub(super) nested: bool,
}

pub(super) fn lines(blocks: &Blocks) -> Vec<Line> {
    let mut list = Vec::new();
    for (at, block) in blocks.list.iter().enumerate() {
        let number = match block.kind {
            BlockKind::Item(number) => number,
            BlockKind::Paragraph | BlockKind::Heading(_) => None,
            _ => continue,
        };
        for (count, plain) in block.plain.lines().into_iter().enumerate() {
            if !plain.text.trim().is_empty() {
                list.push(Line {
                    block: at,
                    plain: plain.trimmed(),
                    number: number.filter(|_| count == 0),
                    nested: block.parent.is_some(),
                });
            }
        }
    }
    list
}

/// `Q12:`, `Question 3.`, `Item 4:`; the number and the length.
pub(super) fn question_number(text: &str) -> Option<(u64, usize)> {
    let lower = text.to_ascii_lowercase();
    let head = ["question", "item", "q"].iter().find(|head| lower.starts_with(*head))?;
    let (number, len) = numbered(text.get(head.len()..)?)?;
    Some((number, head.len() + len))
}

/// A number with its punctuation at the beginning of a text; the number and the length.
pub(super) fn numbered(text: &str) -> Option<(u64, usize)> {
    let start = text.len() - text.trim_start_matches([' ', '.', '#']).len();
    let digits = text.get(start..)?.chars().take_while(char::is_ascii_digit).count();
    let number = text.get(start..start + digits)?.parse().ok()?;
    let rest = text.get(start + digits..)?;
    let len = rest.len() - rest.trim_start_matches([':', '.', ')', ' ', '-', '–']).len();
    (len > 0 || rest.is_empty()).then_some((number, start + digits + len))
}

/// `B) …`, `b. …`, `(b) …`; the label and the length.
pub(super) fn option_label(text: &str) -> Option<(String, usize)> {
    let bare = text.strip_prefix('(').unwrap_or(text);
    let letter = bare.chars().next().filter(|c| c.is_ascii_alphabetic() && c.to_ascii_lowercase() <= 'h')?;
    let rest = bare.get(1..)?;
    let rest = rest.strip_prefix([')', '.'])?;
    let body = rest.trim_start();
    (rest.len() > body.len() && !body.is_empty()).then(|| (letter.to_string(), text.len() - body.len()))
}

/// The options of a line that begins with one: `(A) femoral; (B) obturator`.
pub(super) fn options_in_line(line: &Plain) -> Vec<Choice> {
    let text = line.text.as_str();
    let mut choices: Vec<(String, usize, usize)> = Vec::new();
    let mut at = 0;
    while let Some((label, len)) = text.get(at..).and_then(option_label) {
        let body = at + len;
        let next = char::from(label.as_bytes().first().map_or(b'a', |letter| letter + 1)).to_string();
        // The next option begins behind a mark or a space, with the next letter.
        let end = text.get(body..).into_iter().flat_map(|rest| rest.match_indices(&*next)).find_map(|(place, _)| {
            let place = body + place;
            let open = if text.get(..place).is_some_and(|before| before.ends_with('(')) { place - 1 } else { place };
            let is_apart = text.get(..open).is_some_and(|before| before.ends_with([' ', ';', ',']));
            let is_label = text.get(open..).and_then(option_label).is_some_and(|(found, _)| found == next);
            (is_apart && is_label).then_some(open)
        });
        choices.push((label, body, end.unwrap_or(text.len())));
        match end {
            Some(end) => at = end,
            None => break,
        }
    }
    choices
        .into_iter()
        .map(|(label, from, to)| {
            let body = text.get(from..to).unwrap_or_default().trim_end_matches([' ', ';', ',']);
            Choice { label, plain: line.slice(Span::new(from, from + body.len())).trimmed() }
        })
        .collect()
}

/// Where the value of a key line begins: `Answer: B`.
pub(super) fn key_value(text: &str) -> Option<usize> {
    let lower = text.to_lowercase();
    let head = lexicon::KEY_HEADS.iter().find(|head| lower.starts_with(*head))?;
    let rest = text.get(head.len()..)?;
    let value = rest.trim_start_matches([' ', '.']).strip_prefix([':', '=', '–', '—', '-'])?;
    Some(text.len() - value.len())
}
