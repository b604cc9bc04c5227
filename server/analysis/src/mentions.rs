//! From a block to mentions: names in the text, each with the entries that it can mean.
//!
//! The longest name wins. Names that share a word with their neighbours are read too: *extensor pollicis longus and
//! brevis*, *the radial and ulnar nerves*, *first and second lumbricals*.

use std::sync::Arc;

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use smallvec::SmallVec;

use crate::ellipsis;
use crate::lexicon;
use crate::names::{Form, Found, NameIndex, NameRef, is_article, is_case_bound};
use crate::text::Span;
use crate::words::{Token, fold, fold_into, lower, tokens, without_possessive};

/// A name in a text.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Mention {
    /// Where it stands in the visible text.
    pub span: Span,
    /// First token and the token after the last.
    pub tokens: (usize, usize),
    /// The entries that it can mean, as the index has them.
    pub candidates: Vec<EntryId>,
    /// The standing of the name that was written.
    pub standing: Standing,
    /// It speaks of several.
    pub plural: bool,
    /// A neighbour has the other half of the name ("radial" in *the radial and ulnar nerves*).
    pub shared: bool,
}

/// The tokens of a text with the folded word of each, and the mentions among them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mentions {
    /// The tokens.
    pub tokens: Arc<[Token]>,
    /// What each token can stand for in a name.
    pub forms: Arc<[Form]>,
    /// The mentions, in order, none within another.
    pub list: Vec<Mention>,
}

/// Reads the names in a text.
pub fn mentions(text: &str, vocabulary: &Vocabulary, index: &NameIndex) -> Mentions {
    let tokens = tokens(text);
    let reader = Reader::new(text, &tokens, vocabulary, index);
    let mut list = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        match reader.name_at(at) {
            Some(mention) => {
                at = mention.tokens.1;
                list.push(mention);
            }
            None => at += 1,
        }
    }
    let shared = reader.shared(&list);
    list.extend(shared);
    list.sort_by_key(|mention| (mention.span.start, !mention.shared));
    list.dedup_by(|later, first| first.span.overlaps(later.span));
    let elliptic = reader.elliptic(&list);
    if !elliptic.is_empty() {
        list.extend(elliptic);
        list.sort_by_key(|mention| mention.span.start);
    }
    let forms = reader.forms;
    Mentions { tokens: tokens.into(), forms, list }
}

struct Reader<'a> {
    text: &'a str,
    tokens: &'a [Token],
    forms: Arc<[Form]>,
    vocabulary: &'a Vocabulary,
    index: &'a NameIndex,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str, tokens: &'a [Token], vocabulary: &'a Vocabulary, index: &'a NameIndex) -> Self {
        let mut folded = String::new();
        let form = |token: &Token| {
            if !token.is_word {
                return Form::default();
            }
            let word = token.span.of(text);
            if word.bytes().all(|c| c.is_ascii_lowercase()) {
                return index.form(word);
            }
            fold_into(word, &mut folded);
            let form = index.form(&folded);
            if !form.is_unknown() || without_possessive(word) == word.len() {
                return form;
            }
            // "the ulnar *nerve's* roots"
            fold_into(word.get(..without_possessive(word)).unwrap_or(word), &mut folded);
            index.form(&folded)
        };
        let forms = tokens.iter().map(form).collect();
        Self { text, tokens, forms, vocabulary, index }
    }

    /// Whether a name may run over a token: an article or a hyphen.
    fn is_passable(&self, at: usize) -> bool {
        let Some(token) = self.tokens.get(at) else { return false };
        let word = token.span.of(self.text);
        if token.is_word { word.len() >= 3 && is_article(&fold(word)) } else { lexicon::is_hyphen(word) }
    }

    fn word(&self, at: usize) -> &'a str {
        self.tokens.get(at).map_or("", |token| token.span.of(self.text))
    }

    fn span(&self, from: usize, to: usize) -> Span {
        let start = self.tokens.get(from).map_or(0, |token| token.span.start);
        let last = to.checked_sub(1).and_then(|last| self.tokens.get(last));
        let end = last.map_or(start, |token| token.span.start + without_possessive(token.span.of(self.text)));
        Span::new(start, end)
    }

    /// The longest name that begins at a token.
    fn name_at(&self, at: usize) -> Option<Mention> {
        if !self.index.begins(*self.forms.get(at)?) {
            return None;
        }
        let steps = self.forms.iter().copied().enumerate().skip(at);
        let found = self.index.longest(steps.map(|(at, form)| (form, form.is_unknown() && self.is_passable(at))))?;
        let mut end = at + found.len;
        let mention = self.mention(at, end, &found, false)?;
        let next = lower(self.word(end));
        if lexicon::changes_the_structure(&next) {
            return None;
        }
        let muscles = mention.candidates.iter().all(|id| self.vocabulary.kind(*id) == Kind::Muscle);
        // "rectus *major*": another muscle than the one that goes by the first word alone. "ramus *nasalis*": none.
        let is_of_other = lexicon::ends_muscle_name(&next) && end == at + 1;
        let before = at.checked_sub(1).map(|before| lower(self.word(before)));
        if muscles && (is_of_other || before.is_some_and(|word| lexicon::begins_latin_name(&word))) {
            return None;
        }
        if muscles && matches!(&*next, "muscle" | "muscles") {
            end += 1;
        }
        let plural = mention.plural || next == "muscles" && end > mention.tokens.1;
        Some(Mention { span: self.span(at, end), tokens: (at, end), plural, ..mention })
    }

    fn mention(&self, from: usize, to: usize, found: &Found, shared: bool) -> Option<Mention> {
        let span = self.span(from, to);
        let written = span.of(self.text);
        let fits = |name: &NameRef| {
            let entry = self.vocabulary.entry(name.entry);
            let Some(name) = entry.names.get(name.name as usize) else { return false };
            !is_case_bound(name.standing, &name.text)
                || written == name.text
                || written.strip_suffix('s').is_some_and(|stem| stem == name.text)
        };
        let names: SmallVec<[&NameRef; 4]> =
            found.names.iter().filter(|name| !found.case_bound || fits(name)).collect();
        let first = names.first()?;
        let standing = self.vocabulary.entry(first.entry).names.get(first.name as usize)?.standing;
        let mut candidates: Vec<EntryId> = names.iter().map(|name| name.entry).collect();
        candidates.dedup();
        Some(Mention { span, tokens: (from, to), candidates, standing, plural: found.plural, shared })
    }

    /// Names of which only the word is written that tells them from a name before.
    fn elliptic(&self, whole: &[Mention]) -> Vec<Mention> {
        let mut list: Vec<Mention> = Vec::new();
        for word in ellipsis::elliptic(self.text, self.tokens, &self.forms, whole) {
            if list.last().is_some_and(|last| last.tokens.0 == word.at) {
                continue;
            }
            let found = self.index.exactly(&word.forms);
            let mention = found.and_then(|found| self.mention(word.at, word.at + 1, &found, true));
            list.extend(mention.map(|mention| Mention { plural: false, ..mention }));
        }
        list
    }

    /// Names of which a neighbour has the other half.
    fn shared(&self, whole: &[Mention]) -> Vec<Mention> {
        let taken = |at: usize| {
            let holds = |mention: &Mention| (mention.tokens.0..mention.tokens.1).contains(&at);
            whole.iter().any(|mention| holds(mention) && !is_bare_adjective(mention, self.vocabulary))
        };
        let mut list = Vec::new();
        for mention in whole {
            self.shared_tail(mention, &taken, &mut list);
            self.shared_head(mention, &taken, &mut list);
        }
        list
    }

    /// *the radial and ulnar nerves*: what stands before a conjunction takes the end of the name behind it.
    fn shared_tail(&self, mention: &Mention, taken: &dyn Fn(usize) -> bool, list: &mut Vec<Mention>) {
        let (start, end) = mention.tokens;
        let mut before = start;
        while let Some(conjunction) = self.conjunction_before(before) {
            let found = (1..=3usize).rev().filter(|len| conjunction >= *len).find_map(|len| {
                let from = conjunction - len;
                if (from..conjunction).any(|at| taken(at) || !self.tokens.get(at).is_some_and(|token| token.is_word)) {
                    return None;
                }
                let prefix = self.forms.get(from..conjunction)?;
                (start + 1..end).find_map(|cut| {
                    let forms: SmallVec<[Form; 8]> = prefix.iter().chain(self.forms.get(cut..end)?).copied().collect();
                    let found = self.index.exactly(&forms)?;
                    self.mention(from, conjunction, &found, true)
                })
            });
            let Some(found) = found else { break };
            before = found.tokens.0;
            list.push(Mention { plural: false, ..found });
        }
    }

    /// *extensor pollicis longus and brevis*: what stands behind a conjunction takes the beginning of the name before it.
    fn shared_head(&self, mention: &Mention, taken: &dyn Fn(usize) -> bool, list: &mut Vec<Mention>) {
        let (start, end) = mention.tokens;
        let mut behind = end;
        while let Some(from) = self.conjunction_behind(behind) {
            let found = (1..=3usize).rev().find_map(|len| {
                let to = from + len;
                if (from..to).any(|at| taken(at) || !self.tokens.get(at).is_some_and(|token| token.is_word)) {
                    return None;
                }
                // "obturator internus, *the nerve*": a noun for a kind behind an article is a thing of its own.
                let is_own =
                    len == 1 && lexicon::is_kind_noun(self.word(from)) && is_article(&lower(self.word(from - 1)));
                let suffix = self.forms.get(from..to).filter(|_| !is_own)?;
                (start + 1..end).rev().find_map(|cut| {
                    let forms: SmallVec<[Form; 8]> =
                        self.forms.get(start..cut)?.iter().chain(suffix).copied().collect();
                    let found = self.index.exactly(&forms)?;
                    self.mention(from, to, &found, true)
                })
            });
            let Some(found) = found else { break };
            behind = found.tokens.1;
            list.push(found);
        }
    }

    /// The first token of the conjunction that ends right before a token, if one does: `and`, `or`, `,`, `/`, `, and`.
    fn conjunction_before(&self, at: usize) -> Option<usize> {
        let mut last = at.checked_sub(1)?;
        while is_article(&lower(self.word(last))) {
            last = last.checked_sub(1)?;
        }
        if !lexicon::is_conjunction(self.word(last)) {
            return None;
        }
        match last.checked_sub(1) {
            Some(before) if self.word(before) == "," && self.word(last) != "," => Some(before),
            _ => Some(last),
        }
    }

    /// The token after the conjunction that begins at a token, if one does.
    fn conjunction_behind(&self, at: usize) -> Option<usize> {
        if !lexicon::is_conjunction(self.word(at)) {
            return None;
        }
        let mut next = at + 1;
        if self.word(at) == "," && lexicon::is_conjunction(self.word(next)) {
            next += 1;
        }
        while is_article(&lower(self.word(next))) {
            next += 1;
        }
        Some(next)
    }
}

/// Whether a mention is one word that is the short name of a nerve ("radial"): in running text it is an adjective.
pub fn is_bare_adjective(mention: &Mention, vocabulary: &Vocabulary) -> bool {
    mention.standing == Standing::Short
        && !mention.shared
        && mention.tokens.1 == mention.tokens.0 + 1
        && mention.candidates.iter().all(|id| vocabulary.is_neural(*id))
}
