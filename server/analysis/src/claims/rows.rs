//! Words of order that stand for a name of a row before them: "the median and the ulnar nerve …; *the first* passes …, *the
//! second* …". They are read as the names that they stand for.

use fascicle_model::{Kind, Standing};

use crate::knowledge::Knowledge;
use crate::lexicon::{self, ORDINALS};
use crate::mentions::{Mention, Mentions};
use crate::text::Span;

/// A row further back than this many tokens is not meant any more.
const REACH: usize = 60;

/// The names that words of order in a text stand for.
pub fn members(knowledge: &Knowledge, text: &str, mentions: &Mentions) -> Vec<Mention> {
    let reader = Reader { knowledge, text, mentions };
    let has_order = (1..mentions.tokens.len()).any(|at| reader.order(at).is_some());
    if !has_order {
        return Vec::new();
    }
    let rows = reader.rows();
    (1..mentions.tokens.len()).filter_map(|at| reader.member(at, &rows)).collect()
}

/// A word of order.
#[derive(Clone, Copy)]
enum Order {
    Number(usize),
    Last,
    /// The one of two that was not meant last.
    Other,
}

struct Reader<'a> {
    knowledge: &'a Knowledge,
    text: &'a str,
    mentions: &'a Mentions,
}

impl Reader<'_> {
    fn word(&self, at: usize) -> &str {
        self.mentions.tokens.get(at).map_or("", |token| token.span.of(self.text))
    }

    /// "the first", if it ends with a token.
    fn order(&self, at: usize) -> Option<Order> {
        let article = at.checked_sub(1).map(|before| self.word(before))?;
        if !matches!(article, "the" | "The") {
            return None;
        }
        match self.word(at) {
            "last" | "latter" => Some(Order::Last),
            "former" => Some(Order::Number(0)),
            "other" => Some(Order::Other),
            word => ORDINALS.iter().take(5).position(|ordinal| *ordinal == word).map(Order::Number),
        }
    }

    /// The name that the word of order at a token stands for.
    fn member(&self, at: usize, rows: &[&[Mention]]) -> Option<Mention> {
        let order = self.order(at)?;
        // The former and the latter of two are looked for in sentences.
        if matches!(self.word(at), "former" | "latter") {
            return None;
        }
        let of_these = self.word(at + 1) == "of" && matches!(self.word(at + 2), "these" | "them");
        let end = if of_these { at + 3 } else { at + 1 };
        if !self.has_verb(end)
            || self.mentions.list.iter().any(|mention| mention.tokens.0 <= at && at < mention.tokens.1)
        {
            return None;
        }
        let row = rows.iter().rev().find(|row| row.last().is_some_and(|last| last.tokens.1 < at))?;
        let behind = row.last()?.tokens.1;
        // "… and gives two branches. The first …": others are counted there.
        let counts_others = |place: usize| {
            let word = self.word(place).to_lowercase();
            let number = place.checked_sub(1).map_or("", |before| self.word(before)).to_lowercase();
            let is_counted = lexicon::is_part_noun(&word) || lexicon::is_kind_noun(&word);
            is_counted && lexicon::count(&number).is_some() && self.word(place + 1) != "of"
        };
        if at - behind > REACH || (behind..at).any(counts_others) {
            return None;
        }
        let two = row.first().zip(row.get(1)).filter(|_| row.len() == 2);
        let meant = match order {
            Order::Other => {
                let last = (behind..at).rev().find_map(|place| self.order(place))?;
                let (first, second) = two?;
                match last {
                    Order::Number(0) => second,
                    Order::Number(1) | Order::Last => first,
                    _ => return None,
                }
            }
            Order::Number(number) => row.get(number)?,
            Order::Last => row.last()?,
        };
        let tokens = &self.mentions.tokens;
        let span = Span::new(tokens.get(at - 1)?.span.start, tokens.get(end.checked_sub(1)?)?.span.end);
        Some(Mention {
            span,
            tokens: (at - 1, end),
            candidates: meant.candidates.clone(),
            standing: Standing::Short,
            plural: false,
            shared: false,
        })
    }

    /// Whether what is said of a word of order begins at a token; a noun there is what the word tells the order of.
    fn has_verb(&self, at: usize) -> bool {
        let word = self.word(at).to_lowercase();
        let lower = |at: usize| self.word(at).to_lowercase();
        if lexicon::is_auxiliary(&word) {
            let next = self.word(at + 1);
            let is_name = self.mentions.list.iter().any(|mention| mention.tokens.0 == at + 1);
            return !lexicon::is_determiner(next) && !is_name;
        }
        let words: Vec<String> = (at..at + 16).map(lower).collect();
        let look = |place: usize| place.checked_sub(at).and_then(|place| words.get(place)).map_or("", String::as_str);
        let relations = &self.knowledge.relations;
        matches!(&*word, "by" | "from" | "through" | "between" | "to" | "into")
            || relations.phrase_at(at, &look).is_some_and(|(relation, _)| relation.form == lexicon::Form::Verb)
            || relations.movement_at(at, &look).is_some()
    }

    /// The rows of names of one kind, joined by commas and an "and".
    fn rows(&self) -> Vec<&[Mention]> {
        let list = self.mentions.list.as_slice();
        let mut rows = Vec::new();
        let mut from = 0;
        for at in 1..=list.len() {
            let joins = at.checked_sub(1).and_then(|before| Some(self.is_joined(list.get(before)?, list.get(at)?)));
            if joins == Some(true) {
                continue;
            }
            let row = list.get(from..at).unwrap_or_default();
            if row.len() > 1 {
                rows.push(row);
            }
            from = at;
        }
        rows
    }

    fn is_joined(&self, a: &Mention, b: &Mention) -> bool {
        let vocabulary = &self.knowledge.vocabulary;
        let class = |mention: &Mention| {
            mention.candidates.first().map(|id| (vocabulary.is_neural(*id), vocabulary.kind(*id) == Kind::Muscle))
        };
        let between = || (a.tokens.1..b.tokens.0).map(|at| self.word(at).to_lowercase());
        let is_link = |word: String| {
            matches!(&*word, "," | "&")
                || lexicon::is_conjunction(&word)
                || lexicon::is_determiner(&word)
                || lexicon::is_kind_noun(&word)
        };
        class(a) == class(b) && a.tokens.1 < b.tokens.0 && between().all(is_link)
    }
}
