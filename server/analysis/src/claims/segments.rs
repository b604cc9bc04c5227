//! Spinal segments as authors write them.
//!
//! `C5-T1`, `C5–T1`, `C5 to T1`, `C5, C6 and C7`, `C5, 6, 7`, `C5/6`, `L2-4`, `(C5) C6 C7`, `L4,5 S1`, and words (*the fifth
//! and sixth cervical nerves*, *the upper four cervical nerves*). What stands in brackets beside bare segments is a lesser one.

use fascicle_model::Segments;

use crate::lexicon;
use crate::lexicon::ORDINALS;
use crate::text::Span;
use crate::words::Token;

/// Segments found in a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The main ones.
    pub main: Segments,
    /// Those in brackets.
    pub lesser: Segments,
    /// Where they stand.
    pub span: Span,
    /// The token after the last.
    pub end: usize,
}

/// Reads segments that begin at a token.
pub fn read(text: &str, tokens: &[Token], at: usize) -> Option<Reading> {
    in_signs(text, tokens, at).or_else(|| counted(text, tokens, at)).or_else(|| in_words(text, tokens, at))
}

/// Reads segments behind the rami that are said to be theirs: *the anterior primary rami of C5 and C6*.
pub fn read_rami(text: &str, tokens: &[Token], at: usize) -> Option<Reading> {
    let mut next = at;
    let mut is_ramus = false;
    while lexicon::is_ramus_word(word(text, tokens, next)) {
        is_ramus |= matches!(word(text, tokens, next), "ramus" | "rami" | "divisions" | "division");
        next += 1;
    }
    if !is_ramus || word(text, tokens, next) != "of" {
        return None;
    }
    next += 1;
    while matches!(word(text, tokens, next), "the" | "spinal" | "nerves" | "nerve" | "roots" | "segments") {
        next += 1;
    }
    read(text, tokens, next)
}

/// The sets that stand joined by "and" between two tokens, each for itself.
pub fn apart(text: &str, tokens: &[Token], from: usize, to: usize) -> Vec<Reading> {
    let mut sets = Vec::new();
    let mut start = from;
    for at in from..=to.min(tokens.len()) {
        if at == to || word(text, tokens, at) == "and" {
            let end = if at > start && word(text, tokens, at - 1) == "," { at - 1 } else { at };
            sets.extend(read(text, tokens.get(..end).unwrap_or_default(), start));
            start = at + 1;
        }
    }
    sets
}

fn word<'t>(text: &'t str, tokens: &[Token], at: usize) -> &'t str {
    tokens.get(at).map_or("", |token| token.span.of(text))
}

fn span(tokens: &[Token], from: usize, end: usize) -> Span {
    let start = tokens.get(from).map_or(0, |token| token.span.start);
    let end = end.checked_sub(1).and_then(|last| tokens.get(last)).map_or(start, |token| token.span.end);
    Span::new(start, end)
}

/// A segment with its letter (`C5`), as letter and number.
fn lettered(word: &str) -> Option<(&str, u8)> {
    if !word.as_bytes().last()?.is_ascii_digit() {
        return None;
    }
    let digits = word.find(|c: char| c.is_ascii_digit())?;
    let (letter, number) = word.split_at(digits);
    if !letter.chars().all(|c| c.is_ascii_uppercase() || letter == "Co") {
        return None;
    }
    let number = number.parse().ok()?;
    Segments::index(letter, number).map(|_| (letter, number))
}

fn in_signs(text: &str, tokens: &[Token], start: usize) -> Option<Reading> {
    let (mut main, mut lesser) = (Segments::EMPTY, Segments::EMPTY);
    let mut at = start;
    let mut end = start;
    let mut letter: Option<&str> = None;
    let mut bracket = None;
    let mut last: Option<u8> = None;
    let mut expect_list = true;
    while at < tokens.len() {
        let here = word(text, tokens, at);
        match here {
            "(" if bracket.is_none()
                && lettered(word(text, tokens, at + 1)).is_some()
                && word(text, tokens, at + 2) == ")" =>
            {
                bracket = Some(at);
                at += 1;
                continue;
            }
            ")" if bracket.is_some() => {
                bracket = None;
                at += 1;
                end = at;
                continue;
            }
            _ if last.is_some() && lexicon::joins_segments(here) => {
                if here == "." && word(text, tokens, at + 1).parse::<u8>().is_err() {
                    break;
                }
                expect_list = true;
                at += 1;
                continue;
            }
            _ if last.is_some() && lexicon::spans_segments(here) => {
                let next = word(text, tokens, at + 1);
                let to = match lettered(next) {
                    Some((next_letter, number)) => {
                        letter = Some(next_letter);
                        Segments::index(next_letter, number)
                    }
                    None => letter.and_then(|letter| Segments::index(letter, next.parse().ok()?)),
                };
                let (Some(from), Some(to)) = (last, to) else { break };
                if from >= to {
                    break;
                }
                let set = Segments::range(from, to);
                if bracket.is_some() {
                    lesser = lesser.union(set)
                } else {
                    main = main.union(set)
                }
                last = Some(to);
                at += 2;
                end = at;
                expect_list = false;
                continue;
            }
            _ => {}
        }
        let one = match lettered(here) {
            Some((found, number)) => {
                letter = Some(found);
                Segments::index(found, number)
            }
            None if expect_list && last.is_some() => {
                letter.and_then(|letter| Segments::index(letter, here.parse().ok()?))
            }
            None => None,
        };
        let Some(one) = one else { break };
        let set = Segments::one(one);
        if bracket.is_some() {
            lesser = lesser.union(set)
        } else {
            main = main.union(set)
        }
        last = Some(one);
        at += 1;
        end = at;
        expect_list = false;
    }
    last?;
    if main.is_empty() {
        (main, lesser) = (lesser, Segments::EMPTY);
    }
    Some(Reading { main, lesser: lesser.minus(main), span: span(tokens, start, end), end })
}

const REGIONS: [(&str, &str); 5] =
    [("cervical", "C"), ("thoracic", "T"), ("lumbar", "L"), ("sacral", "S"), ("coccygeal", "Co")];

/// *the upper four cervical (nerves)*, *the last two thoracic*: so many of the first or the last of a region.
fn counted(text: &str, tokens: &[Token], start: usize) -> Option<Reading> {
    let lower = |at: usize| word(text, tokens, at).to_lowercase();
    let first = lower(start);
    let is_upper = matches!(&*first, "upper" | "first" | "upper-most");
    if !is_upper && !matches!(&*first, "lower" | "last") {
        return None;
    }
    let number = u8::try_from(lexicon::number(&lower(start + 1))?).ok()?;
    let region = lower(start + 2);
    let (_, letter) = REGIONS.iter().find(|(known, _)| *known == region)?;
    let all: Vec<u8> = (1..=12).filter_map(|number| Segments::index(letter, number)).collect();
    let number = usize::from(number);
    if !(2..all.len()).contains(&number) {
        return None;
    }
    let told = if is_upper { all.get(..number)? } else { all.get(all.len() - number..)? };
    let set = told.iter().fold(Segments::EMPTY, |set, one| set.union(Segments::one(*one)));
    let is_noun = |noun: &str| {
        matches!(
            noun,
            "spinal" | "nerves" | "nerve" | "roots" | "segments" | "rami" | "ventral" | "anterior" | "primary"
        )
    };
    if lexicon::is_vertebral(&lower(start + 3)) || matches!(&*lower(start + 3), "vertebrae" | "ribs") {
        return None;
    }
    let mut end = start + 3;
    while is_noun(&lower(end)) {
        end += 1;
    }
    (end > start + 3).then(|| Reading { main: set, lesser: Segments::EMPTY, span: span(tokens, start, end), end })
}

/// *the fifth and sixth cervical (nerves, roots, segments)*
fn in_words(text: &str, tokens: &[Token], start: usize) -> Option<Reading> {
    let first = word(text, tokens, start);
    if !ORDINALS.iter().any(|ordinal| ordinal.eq_ignore_ascii_case(first)) {
        return None;
    }
    let mut numbers = Vec::new();
    let mut set = Segments::EMPTY;
    let mut at = start;
    let mut end = None;
    while at < tokens.len() {
        let here = word(text, tokens, at).to_lowercase();
        if let Some(number) = ORDINALS.iter().position(|ordinal| *ordinal == here) {
            numbers.push(u8::try_from(number + 1).ok()?);
        } else if let Some((_, letter)) = REGIONS.iter().find(|(region, _)| *region == here) {
            if numbers.is_empty() {
                break;
            }
            let is_range = tokens.get(start..at)?.iter().any(|token| token.span.of(text) == "to");
            let all: Vec<u8> = numbers.iter().filter_map(|number| Segments::index(letter, *number)).collect();
            set = match (is_range, all.as_slice()) {
                (true, [from, to]) if from < to => set.union(Segments::range(*from, *to)),
                _ => all.iter().fold(set, |set, one| set.union(Segments::one(*one))),
            };
            numbers.clear();
            let noun = word(text, tokens, at + 1).to_lowercase();
            let noun_two = word(text, tokens, at + 2).to_lowercase();
            end = Some(match (&*noun, &*noun_two) {
                ("spinal" | "nerve", "nerves" | "nerve" | "roots" | "root" | "segments" | "segment") => at + 3,
                ("nerves" | "nerve" | "roots" | "root" | "segments" | "segment", _) => at + 2,
                (noun, _) if lexicon::is_vertebral(noun) => return None,
                _ => at + 1,
            });
            at = end?;
            continue;
        } else if !lexicon::joins_ordinals(&here) || at == start {
            break;
        }
        at += 1;
    }
    let end = end?;
    (!set.is_empty()).then(|| Reading { main: set, lesser: Segments::EMPTY, span: span(tokens, start, end), end })
}

/// The segments that a text writes, one by one, each where it stands ("C5", the 6 of "C5, 6"), and the ranges with what
/// lies between their ends ("C5–C8"). A vertebra is no segment.
pub fn written(text: &str, tokens: &[Token]) -> Vec<(Segments, Span)> {
    let mut list = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let Some(reading) = in_signs(text, tokens, at) else {
            at += 1;
            continue;
        };
        let (from, end) = (at, reading.end.max(at + 1));
        at = end;
        if lexicon::is_vertebral(&word(text, tokens, end).to_lowercase()) {
            continue;
        }
        let mut letter = None;
        let mut last: Option<(u8, usize)> = None;
        let mut spans = false;
        for token in tokens.get(from..end).unwrap_or_default() {
            let here = token.span.of(text);
            let one = match lettered(here) {
                Some((found, number)) => {
                    letter = Some(found);
                    Segments::index(found, number)
                }
                None => letter.and_then(|letter| Segments::index(letter, here.parse().ok()?)),
            };
            let Some(one) = one else {
                spans = lexicon::spans_segments(here);
                continue;
            };
            if let Some((first, start)) = last.filter(|(first, _)| spans && first + 1 < one) {
                list.push((Segments::range(first + 1, one - 1), Span::new(start, token.span.end)));
            }
            list.push((Segments::one(one), token.span));
            last = Some((one, token.span.start));
            spans = false;
        }
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::tokens;

    #[test]
    fn reads_every_spelling() {
        for (written, main, lesser) in [
            ("C5-T1", "C5-T1", ""),
            ("C5–T1", "C5-T1", ""),
            ("T10 – L1", "T10-L1", ""),
            ("C5 to T1", "C5-T1", ""),
            ("L2 through L4", "L2-L4", ""),
            ("C5, C6 and C7", "C5 C6 C7", ""),
            ("C5, 6, 7", "C5 C6 C7", ""),
            ("C5/6", "C5 C6", ""),
            ("C5/C6", "C5 C6", ""),
            ("L2-4", "L2-L4", ""),
            ("(C5) C6 C7", "C6 C7", "C5"),
            ("C5, C6, (C7)", "C5 C6", "C7"),
            ("L4,5 S1", "L4 L5 S1", ""),
            ("L4, 5, S1, 2", "L4 L5 S1 S2", ""),
            ("fifth and sixth cervical nerves", "C5 C6", ""),
            ("eighth cervical and first thoracic", "C8 T1", ""),
            ("second to fourth sacral nerves", "S2-S4", ""),
            ("upper four cervical nerves", "C1-C4", ""),
            ("first four lumbar nerves", "L1-L4", ""),
            ("last two thoracic nerves", "T11 T12", ""),
        ] {
            let list = tokens(written);
            let reading = read(written, &list, 0);
            let Some(reading) = reading else { panic!("{written} is not read") };
            assert_eq!(Ok(reading.main), Segments::parse(main), "{written}");
            assert_eq!(Ok(reading.lesser), Segments::parse(lesser), "{written}");
            assert_eq!(reading.end, list.len(), "{written}");
        }
        let text = "C5, 6 and (C7), T1–T4, the L4 vertebra, L4/5";
        let told: Vec<String> = written(text, &tokens(text))
            .iter()
            .map(|(segments, span)| format!("{segments}: {}", span.of(text)))
            .collect();
        let wanted = ["C5: C5", "C6: 6", "C7: C7", "T1: T1", "T2, T3: T1–T4", "T4: T4", "L4: L4", "L5: 5"];
        assert_eq!(told, wanted);
        for not in [
            "V1",
            "c5",
            "C9",
            "fifth rib",
            "first lumbar vertebra",
            "T1w",
            "upper four ribs",
            "first two thoracic vertebrae",
        ] {
            assert_eq!(read(not, &tokens(not), 0), None, "{not}");
        }
    }
}
