//! The lines of a document as exam papers write them: numbered stems, lettered options, lines that give a key.

use super::Choice;
use super::pairs::Pairs;
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
    /// It stands in a table.
    pub(super) in_table: bool,
}

/// The lines of a document; the cells of a table are lines only where they are a matching set.
pub(super) fn lines(blocks: &Blocks, mut pairs: Pairs) -> Vec<Line> {
    let mut list = Vec::new();
    for (at, block) in blocks.list.iter().enumerate() {
        let number = match block.kind {
            BlockKind::Item(number) => number,
            BlockKind::Paragraph | BlockKind::Heading(_) => None,
            BlockKind::Cell { .. } => {
                list.extend(pairs.lines.remove(&at).unwrap_or_default());
                continue;
            }
            _ => continue,
        };
        for (count, plain) in block.plain.lines().into_iter().enumerate() {
            if !plain.text.trim().is_empty() {
                list.push(Line {
                    block: at,
                    plain: plain.trimmed(),
                    number: number.filter(|_| count == 0),
                    nested: block.parent.is_some(),
                    in_table: false,
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

/// `B …`: a capital without a bracket, which is a label only in a row of options on one line.
pub(super) fn bare_label(text: &str) -> Option<(String, usize)> {
    let letter = text.chars().next().filter(|c| ('A'..='H').contains(c))?;
    let body = text.get(1..)?.strip_prefix(' ')?.trim_start();
    (!body.is_empty()).then(|| (letter.to_string(), text.len() - body.len()))
}

/// The place in a line where a row of options begins behind the stem: `Which two? A dorsal scapular; B suprascapular`.
pub(super) fn row_of_options(line: &Plain) -> Option<usize> {
    let text = line.text.as_str();
    let begins = |at: usize| {
        let before = text.get(..at).unwrap_or_default();
        let rest = text.get(at..).unwrap_or_default();
        let is_set_off = before.trim_end().ends_with(['?', ':', '.', '…', '_']) && before.ends_with(' ');
        let is_first = |label: &str| label.eq_ignore_ascii_case("a");
        let is_label = option_label(rest).or_else(|| bare_label(rest)).is_some_and(|(label, _)| is_first(&label));
        is_set_off && is_label && options_in_line(&line.slice(Span::new(at, text.len()))).len() > 1
    };
    text.match_indices(['A', 'a', '(']).map(|(at, _)| at).find(|at| begins(*at))
}

/// The options of a line that begins with one: `(A) femoral; (B) obturator`.
pub(super) fn options_in_line(line: &Plain) -> Vec<Choice> {
    let text = line.text.as_str();
    let mut choices: Vec<(String, usize, usize)> = Vec::new();
    let mut at = 0;
    let is_bare = option_label(text).is_none();
    let label_at = |at: usize| {
        let rest = text.get(at..)?;
        if is_bare { bare_label(rest) } else { option_label(rest) }
    };
    while let Some((label, len)) = label_at(at) {
        let body = at + len;
        let next = char::from(label.as_bytes().first().map_or(b'a', |letter| letter + 1)).to_string();
        // The next option begins behind a mark or a space, with the next letter.
        let end = text.get(body..).into_iter().flat_map(|rest| rest.match_indices(&*next)).find_map(|(place, _)| {
            let place = body + place;
            let open = if text.get(..place).is_some_and(|before| before.ends_with('(')) { place - 1 } else { place };
            let before = text.get(..open).unwrap_or_default();
            let is_apart = before.ends_with([' ', ';', ','])
                && (!is_bare || before.trim_end().ends_with([';', ',']) || before.ends_with("  "));
            let is_label = label_at(open).is_some_and(|(found, _)| found == next);
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
            let body = text.get(from..to).unwrap_or_default().trim_end_matches([' ', ';', ',', '.']);
            Choice { label, plain: line.slice(Span::new(from, from + body.len())).trimmed() }
        })
        .collect()
}

/// The answers of a line that holds nothing else: `Key: 1 – b, 2 – a`, `Q1 A. Q2 false.`, `A-3, B-1`; the words before the
/// first colon, and of each answer the number and the place of its value.
pub(super) fn row_of_answers(line: &Plain) -> Option<(&str, Vec<(u64, Span)>)> {
    let text = line.text.as_str();
    if !text.bytes().any(|byte| byte.is_ascii_digit()) {
        return None;
    }
    // "Answers (for teaching, not for diagnosis): 1 a; 2 b": what stands in brackets is no part of the head.
    let plain = |head: &str| head.split_once('(').map_or(head.to_owned(), |(before, _)| before.trim_end().to_owned());
    let head = text.find(": ").filter(|at| text.get(..*at).is_some_and(|head| plain(head).split(' ').count() <= 4));
    let start = head.map_or(0, |at| at + 2);
    let mut words: Vec<Span> = Vec::new();
    for (at, c) in text.char_indices().filter(|(at, _)| *at >= start) {
        let end = at + c.len_utf8();
        let joins = |last: &Span| {
            let digits = last.of(text).ends_with(|c: char| c.is_ascii_digit());
            last.end == at && (digits == c.is_ascii_digit())
        };
        match words.last_mut() {
            Some(last) if c.is_alphanumeric() && joins(last) => last.end = end,
            _ if c.is_alphanumeric() => words.push(Span::new(at, end)),
            _ if matches!(c, ' ' | '-' | '–' | '—' | ':' | '=' | '.' | ')' | '(' | '→' | '>' | '*' | ',' | ';') =>
                {}
            _ => return None,
        }
    }
    let number = |span: &Span| span.of(text).parse::<u64>().ok();
    let is_value = |span: &Span| {
        let word = span.of(text).to_lowercase();
        (word.len() == 1 && word.starts_with(|c: char| c.is_ascii_alphabetic()))
            || lexicon::is_true(&word)
            || lexicon::is_false(&word)
    };
    // `A-3`: the letter leads.
    let letter_leads = words.first().is_some_and(|first| number(first).is_none() && first.of(text).len() == 1)
        && words.first().is_some_and(|first| !matches!(first.of(text), "Q" | "q"));
    let mut list: Vec<(u64, Span)> = Vec::new();
    let mut open: Option<Span> = None;
    for word in words {
        let is_question = matches!(word.of(text), "Q" | "q") && open.is_none();
        match (number(&word), open) {
            (Some(number), Some(letter)) if letter_leads => {
                list.push((number, letter));
                open = None;
            }
            (Some(_), None) if !letter_leads => open = Some(word),
            (None, Some(at)) if !letter_leads && is_value(&word) => {
                list.push((number(&at)?, word));
                open = None;
            }
            (None, None) if letter_leads && is_value(&word) => open = Some(word),
            // `Q1 A, C`: more than one
            (None, None) if is_question => {}
            (None, None) if !letter_leads && is_value(&word) => {
                let last = list.last_mut()?;
                last.1 = Span::new(last.1.start, word.end);
            }
            _ => return None,
        }
    }
    // "L2, L3, L4" are segments.
    let is_of_segment = |(_, letter): &(u64, Span)| matches!(letter.of(text), "C" | "T" | "L" | "S");
    if letter_leads && list.iter().all(is_of_segment) {
        return None;
    }
    let head = head.and_then(|at| text.get(..at)).unwrap_or_default();
    (list.len() > 1 && open.is_none()).then_some((head, list))
}

/// Where the value of a key line begins: `Answer: B`.
pub(super) fn key_value(text: &str) -> Option<usize> {
    let lower = text.to_lowercase();
    let head = lexicon::KEY_HEADS.iter().find(|head| lower.starts_with(*head))?;
    let rest = text.get(head.len()..)?;
    if let Some(value) = rest.trim_start_matches([' ', '.']).strip_prefix([':', '=', '–', '—', '-', '→', '⇒']) {
        return Some(text.len() - value.trim_start_matches(['>', '-']).len());
    }
    // "Answer B", "Ans (c)"
    let value = rest.strip_prefix([' ', '.'])?.trim();
    let letter = value.trim_matches(['(', ')', '.', '*']);
    (letter.len() == 1 && letter.starts_with(|c: char| c.is_ascii_alphabetic())).then(|| text.len() - value.len())
}
