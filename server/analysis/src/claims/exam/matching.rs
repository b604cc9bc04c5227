//! Matching lists: stems that share one list of options, with a key that pairs their labels.
//!
//! The options are lettered and stand together, the stems are numbered (or the other way round: a pair is a pair). The key
//! is a list of its own (`3. F`), a row of pairs (`1-C, 2-A`), or stands behind each stem (`maxillary nerve — b`). What the
//! two of a pair are tells the relation, as it does on either side of a colon.

use std::collections::{BTreeMap, BTreeSet};

use super::super::labels;
use super::super::sentences::{self, Memory, Scope};
use super::super::subjects::Above;
use super::super::{Claim, Key};
use super::Choice;
use super::keys::options;
use super::lines::{Line, numbered, option_label, options_in_line, row_of_answers};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::resolve;
use crate::text::{Plain, Span};

/// Fewer options or stems than these make no list.
const FEWEST: usize = 3;

/// A set of stems and options.
#[derive(Default)]
struct Set {
    choices: Vec<Choice>,
    stems: BTreeMap<u64, Plain>,
    /// For a stem the label that the key gives it, where it stands, and in which block.
    keys: BTreeMap<u64, (String, Span, BlockIx)>,
    blocks: BTreeSet<BlockIx>,
}

/// Reads the matching lists of a document: the claims of their keys, and the blocks that they are made of.
pub(super) fn read(all: &[Line], blocks: &Blocks, knowledge: &Knowledge) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let mut claims = Vec::new();
    let mut consumed = BTreeSet::new();
    let mut sets: Vec<Set> = Vec::new();
    let is_heading =
        |line: &Line| matches!(blocks.list.get(line.block).map(|block| block.kind), Some(BlockKind::Heading(_)));
    // The set of the section before, of which a section of answers gives the key.
    let mut last: Option<usize> = None;
    let mut start = 0;
    for at in 1..=all.len() {
        if at < all.len() && !all.get(at).is_some_and(is_heading) {
            continue;
        }
        let section = all.get(start..at).unwrap_or_default();
        start = at;
        let heading = section.first().filter(|line| is_heading(line));
        if heading.is_some_and(|line| lexicon::is_heading_of_answers(&line.plain.text)) {
            if let Some(set) = last.take().and_then(|last| sets.get_mut(last)).filter(|set| set.keys.is_empty()) {
                set.take_keys(section);
            }
            continue;
        }
        last = None;
        let in_text = section.iter().position(|line| line.in_table).unwrap_or(section.len());
        let tables = tables(section);
        let of_text =
            if tables.is_empty() { Set::of(section) } else { Set::of(section.get(..in_text).unwrap_or_default()) };
        for set in of_text.into_iter().chain(tables) {
            last = Some(sets.len());
            sets.push(set);
        }
    }
    for set in sets.iter().filter(|set| !set.keys.is_empty()) {
        consumed.extend(set.blocks.iter().copied());
        claims.extend(set.claims(knowledge));
    }
    (claims, consumed)
}

/// The sets that the tables of a section make, each with the lines behind it up to the next numbered one that is no key.
fn tables(section: &[Line]) -> Vec<Set> {
    let mut sets = Vec::new();
    let mut start = 0;
    let find = |from: usize, is_such: &dyn Fn(&Line) -> bool| {
        section.iter().skip(from).position(is_such).map_or(section.len(), |place| from + place)
    };
    while start < section.len() {
        let from = find(start, &|line| line.in_table);
        let behind = find(from, &|line| !line.in_table);
        let mut set = Set::default();
        for line in section.get(from..behind).unwrap_or_default() {
            let options = options_of(line);
            set.blocks.extend((!options.is_empty()).then_some(line.block));
            set.choices.extend(options);
        }
        let is_key = |line: &Line| {
            let value = stem(line).map(|(_, value)| value.text.trim().trim_end_matches('.').to_owned());
            row_of_answers(&line.plain).is_some() || value.is_none_or(|value| set.label(&value).is_some())
        };
        let end = find(behind, &|line| line.in_table || !is_key(line));
        set.take_keys(section.get(from..end).unwrap_or_default());
        if set.choices.len() >= FEWEST && set.stems.len() >= FEWEST {
            sets.push(set);
        }
        start = end.max(start + 1);
    }
    sets
}

impl Set {
    /// The set that the lines below a heading make, if they make one.
    fn of(section: &[Line]) -> Option<Self> {
        let mut set = Self::default();
        let mut run_ended = false;
        for (at, line) in section.iter().enumerate() {
            let options = options_of(line);
            if options.is_empty() {
                run_ended |= !set.choices.is_empty();
                continue;
            }
            // A second list of options, or one right behind a question, belongs to items of their own.
            let begins = options.first().is_some_and(|choice| choice.label.eq_ignore_ascii_case("a"));
            let before = at.checked_sub(1).and_then(|before| section.get(before));
            let is_of_item = set.choices.is_empty()
                && before.is_some_and(|before| {
                    let text = before.plain.text.trim_end();
                    text.ends_with('?')
                        || before.number.is_some()
                        || (numbered(text).is_some_and(|(_, len)| len < text.len())
                            && row_of_stems(&before.plain).is_empty())
                });
            if run_ended || is_of_item || begins != set.choices.is_empty() {
                return None;
            }
            set.choices.extend(options);
            set.blocks.insert(line.block);
        }
        if set.choices.len() < FEWEST {
            return None;
        }
        set.take_keys(section);
        (set.stems.len() >= FEWEST).then_some(set)
    }

    /// Takes stems and keys from lines.
    fn take_keys(&mut self, section: &[Line]) {
        for line in section {
            if let Some((_, row)) = row_of_answers(&line.plain) {
                // "1 F, 2 T, 3 F" judges statements.
                let is_verdict = |value: &Span| matches!(value.of(&line.plain.text), "T" | "F" | "t" | "f");
                if row.iter().all(|(_, value)| is_verdict(value)) {
                    continue;
                }
                for (number, value) in row {
                    if self.keys.contains_key(&number) {
                        continue;
                    }
                    let label = value.of(&line.plain.text).to_owned();
                    self.keys.insert(number, (label, line.plain.to_source(value), line.block));
                }
                self.blocks.insert(line.block);
                continue;
            }
            let row = row_of_stems(&line.plain);
            if !row.is_empty() {
                self.stems.extend(row);
                self.blocks.insert(line.block);
                continue;
            }
            let Some((number, value)) = stem(line) else { continue };
            let bare = value.text.trim().trim_end_matches('.');
            if let Some(label) = self.label(bare) {
                let span = value.to_source(Span::new(0, value.text.len()));
                self.keys.insert(number, (label, span, line.block));
                self.blocks.insert(line.block);
            } else if self.keys.is_empty() || !self.stems.contains_key(&number) {
                let (stem, key) = self.key_behind(&value);
                if let Some((label, span)) = key {
                    self.keys.insert(number, (label, span, line.block));
                }
                self.stems.insert(number, stem);
                self.blocks.insert(line.block);
            }
        }
    }

    /// The label of an option that a text is.
    fn label(&self, text: &str) -> Option<String> {
        let bare = text.trim_matches(['(', ')', '*', ' ']);
        self.choices.iter().find(|choice| choice.label.eq_ignore_ascii_case(bare)).map(|choice| choice.label.clone())
    }

    /// A stem and the label that stands behind it: `maxillary nerve — b`.
    fn key_behind(&self, value: &Plain) -> (Plain, Option<(String, Span)>) {
        let text = value.text.trim_end_matches(['.', ' ', ')', ']']);
        let cut = text.rfind([' ', '(', '[']).map_or(0, |at| at + 1);
        let before = text.get(..cut).unwrap_or_default();
        let stem = before.trim_end_matches([' ', '(', '[', '—', '–', '-', ':', '=', '→', '.', '>']);
        let is_set_off = stem.len() + 1 < before.len() || before.ends_with(['(', '[']);
        let label = text.get(cut..).and_then(|word| self.label(word)).filter(|_| is_set_off && !stem.is_empty());
        match label {
            Some(label) => {
                let span = value.to_source(Span::new(cut, text.len()));
                (value.slice(Span::new(0, stem.len())), Some((label, span)))
            }
            None => (value.clone(), None),
        }
    }

    fn claims(&self, knowledge: &Knowledge) -> Vec<Claim> {
        let mut claims = Vec::new();
        for (number, (label, span, block)) in &self.keys {
            let choice = self.choices.iter().find(|choice| choice.label.eq_ignore_ascii_case(label));
            let (Some(stem), Some(choice)) = (self.stems.get(number), choice) else { continue };
            let mut found = pair_claims(stem, &choice.plain, *block, knowledge);
            let option = choice.plain.to_source(Span::new(0, choice.plain.text.len()));
            for claim in &mut found {
                let part = claim.parts.iter().position(|part| option.contains(part.span));
                let role = part.and_then(|part| claim.parts.get(part)).map(|part| part.role);
                claim.span = *span;
                let nothing = mentions::Mentions::default();
                let scope = Scope::new(knowledge, stem, &nothing, *block);
                let options = role.map(|role| options(&self.choices, role, true, &scope, knowledge));
                claim.key = Some(Box::new(Key { span: *span, options: options.unwrap_or_default(), part }));
            }
            claims.append(&mut found);
        }
        claims
    }
}

/// "Thoracodorsal" as the thoracodorsal nerve, where it is no name by itself.
fn completed(plain: &Plain, knowledge: &Knowledge) -> Plain {
    let bare = plain.text.trim().trim_end_matches('.');
    let is_name = |text: &str| !knowledge.names.lookup(text).is_empty();
    let mut own = plain.slice(Span::new(0, plain.text.trim_end_matches(['.', ' ']).len()));
    if is_name(bare) || !is_name(&format!("{bare} nerve")) {
        return plain.clone();
    }
    let end = own.to_source(Span::new(0, own.text.len())).end;
    own.push_as(" nerve", Span::new(end, end));
    own
}

/// What the two of a pair claim of each other.
pub(super) fn pair_claims(stem: &Plain, option: &Plain, block: BlockIx, knowledge: &Knowledge) -> Vec<Claim> {
    let [stem, option] = [stem, option].map(|plain| completed(plain, knowledge));
    let (stem, option) = (&stem, &option);
    let cut = stem.text.find([',', '(']).unwrap_or(stem.text.len());
    let short = stem.slice(Span::new(0, cut)).trimmed();
    let read = |first: &Plain, sign: &str, second: &Plain| -> Vec<Claim> {
        let mut joined = first.clone();
        let place = first.to_source(Span::new(0, first.text.len())).end;
        joined.push_as(sign, Span::new(place, place));
        joined.append(second);
        let mentions = resolve::mentions_of(&joined, knowledge);
        let scope = Scope::new(knowledge, &joined, &mentions, block);
        if sign.contains(':') {
            labels::read(&scope, &Above::default())
        } else {
            sentences::read(&scope, 0, &mut Memory::default())
        }
    };
    let spans = [stem, option].map(|plain| plain.to_source(Span::new(0, plain.text.len())));
    let joins_both = |claim: &Claim| spans.iter().all(|span| claim.parts.iter().any(|part| span.contains(part.span)));
    [(&short, ": ", option), (option, ": ", &short), (option, " ", stem), (stem, " ", option)]
        .into_iter()
        .map(|(first, sign, second)| {
            let mut claims = read(first, sign, second);
            claims.retain(joins_both);
            claims
        })
        .find(|claims| !claims.is_empty())
        .unwrap_or_default()
}

/// The options with which a line begins, behind "Options:" or the like.
fn options_of(line: &Line) -> Vec<Choice> {
    let text = line.plain.text.as_str();
    let from = behind_head(text);
    if text.get(from..).is_none_or(|body| option_label(body.trim_start()).is_none()) {
        return Vec::new();
    }
    options_in_line(&line.plain.slice(Span::new(from, text.len())).trimmed())
}

/// A numbered line, by Arabic or by Roman numerals: its number and the rest of it.
fn stem(line: &Line) -> Option<(u64, Plain)> {
    let text = line.plain.text.as_str();
    if let Some(number) = line.number {
        return Some((number, line.plain.clone()));
    }
    let (number, len) = numbered(text).filter(|(_, len)| *len < text.len()).or_else(|| roman(text))?;
    Some((number, line.plain.slice(Span::new(len, text.len())).trimmed()))
}

/// `iv. …`, `(ii) …`; the number and the length.
fn roman(text: &str) -> Option<(u64, usize)> {
    const NUMERALS: [&str; 12] = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"];
    let bare = text.trim_start_matches('(');
    let len = bare.find(['.', ')'])?;
    let place =
        NUMERALS.iter().position(|numeral| bare.get(..len).is_some_and(|word| word.eq_ignore_ascii_case(numeral)))?;
    let body = bare.get(len + 1..)?.trim_start();
    Some((u64::try_from(place).ok()? + 1, text.len() - body.len()))
}

/// The stems of a line that holds several: `Column P: 1 femoral; 2 obturator; 3 tibial`.
fn row_of_stems(line: &Plain) -> Vec<(u64, Plain)> {
    let text = line.text.as_str();
    let start = behind_head(text);
    let mut list: Vec<(u64, Plain)> = Vec::new();
    let mut at = start;
    for part in text.get(start..).unwrap_or_default().split_inclusive([';', ',']) {
        let from = at;
        at += part.len();
        let body = part.trim_start();
        let digits = body.len() - body.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let begin = from + part.len() - body.len() + digits;
        let end = from + part.trim_end_matches([';', ',', ' ', '.']).len();
        match body.get(..digits).and_then(|digits| digits.parse().ok()) {
            Some(number) if number == list.len() as u64 + 1 && begin < end => {
                let stem = line.slice(Span::new(begin, end));
                let lead = stem.text.len() - stem.text.trim_start_matches(['.', ')', ' ']).len();
                list.push((number, stem.slice(Span::new(lead, stem.text.len()))));
            }
            // "1 pudendal, entering the perineum": the stem goes on.
            _ if !list.is_empty() => {}
            _ => return Vec::new(),
        }
    }
    if list.len() < FEWEST { Vec::new() } else { list }
}

/// Where a line goes on behind a short head: `Column Q: (a) saphenous`.
fn behind_head(text: &str) -> usize {
    let head = text.find(": ").filter(|at| text.get(..*at).is_some_and(|head| head.split(' ').count() <= 3));
    head.map_or(0, |at| at + 2)
}
