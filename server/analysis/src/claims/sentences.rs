//! Claims in sentences.
//!
//! A sentence is a row of [`Atom`]s: names, segments, relation phrases, movements, other words, marks. For each relation
//! phrase its subject is looked for on the left and its object on the right. Both are **groups**: names joined by commas
//! and conjunctions. Whatever is not understood between a phrase and a group ends the attempt: silence is the rule, a
//! claim the exception.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::phrases::{MovementForm, MovementWord, Relations};
use super::segments;
use super::{Claim, ClaimKind, Part, PartRole, What};
use crate::blocks::BlockIx;
use crate::lexicon::{self, Form, RelationWord};
use crate::mentions::{Mention, Mentions, is_bare_adjective};
use crate::names::NameIndex;
use crate::text::{Mark, Plain, Span};

/// What a sentence is read with.
#[derive(Clone, Copy)]
pub struct Scope<'a> {
    /// The vocabulary.
    pub vocabulary: &'a Vocabulary,
    /// The index of its names.
    pub names: &'a NameIndex,
    /// Relation and movement words.
    pub relations: &'a Relations,
    /// The block's text.
    pub plain: &'a Plain,
    /// Its tokens and mentions.
    pub mentions: &'a Mentions,
    /// The block.
    pub block: BlockIx,
    /// What the block stands under, nearest first: the subject of a statement that names none.
    pub subjects: &'a [Subject],
}

/// A structure that a statement can be about without naming it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Subject {
    /// What it can be.
    pub candidates: Vec<EntryId>,
    /// Where it is named, in the source.
    pub span: Span,
}

/// What carries over from one sentence to the next.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    /// The subject of the sentence before.
    subject: Vec<Subject>,
    /// All names of the sentence before, in order.
    named: Vec<Subject>,
}

#[derive(Clone, Debug)]
enum AtomKind {
    Name(usize),
    Segments(segments::Reading),
    Relation(&'static RelationWord),
    Movement(MovementWord),
    Word,
}

#[derive(Clone, Debug)]
struct Atom {
    kind: AtomKind,
    /// First token and the token after the last.
    from: usize,
    to: usize,
    /// Lower-case text of a word or mark; empty for the rest.
    word: String,
}

/// Names joined by commas and conjunctions.
#[derive(Clone, Debug, Default)]
struct Group {
    /// Places of the atoms that name its members.
    members: Vec<usize>,
    /// Members that are taken out.
    except: Vec<usize>,
    /// The atom after it.
    end: usize,
    /// "all", "both", "every"
    all: bool,
    /// "medial half of", "two of": a part that the name does not tell.
    partial: bool,
    /// "neither", "no"
    denied: bool,
}

/// One side of a claim: what it is and where it stands in the source.
#[derive(Clone, Debug)]
pub struct Side {
    /// What it is.
    pub what: What,
    /// Where it stands in the source.
    pub span: Span,
}

/// Reads the claims in the sentences of a block from a token on.
pub fn read(scope: &Scope<'_>, from: usize, memory: &mut Memory) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    let mut claims = Vec::new();
    let mut start = from;
    for at in from..tokens.len() {
        if ends_sentence(scope, at) {
            claims.extend(read_sentence(scope, start, at + 1, memory));
            start = at + 1;
        }
    }
    if start < tokens.len() {
        claims.extend(read_sentence(scope, start, tokens.len(), memory));
    }
    claims
}

/// Whether a sentence ends with a token.
fn ends_sentence(scope: &Scope<'_>, at: usize) -> bool {
    let text = &scope.plain.text;
    let tokens = &scope.mentions.tokens;
    let Some(token) = tokens.get(at) else { return false };
    let next = tokens.get(at + 1);
    let gap = next.map_or("\n", |next| Span::new(token.span.end, next.span.start).of(text));
    if gap.contains('\n') && scope.plain.to_source(Span::new(token.span.end, token.span.end + 1)).len() != 1 {
        return true; // a hard line break
    }
    match token.span.of(text) {
        "?" | "!" => true,
        "." => {
            let Some(next) = next else { return true };
            if gap.is_empty() {
                return false;
            }
            let before =
                at.checked_sub(1).and_then(|before| tokens.get(before)).map_or("", |token| token.span.of(text));
            let short = before.len() == 1 && before.chars().all(char::is_alphabetic);
            let known = matches!(
                &*before.to_lowercase(),
                "e.g" | "i.e" | "cf" | "fig" | "vs" | "mm" | "nn" | "approx" | "ca" | "al" | "dr" | "prof" | "no"
            );
            let capital = next.span.of(text).chars().next().is_some_and(|c| !c.is_lowercase());
            capital && !short && !known
        }
        _ => false,
    }
}

fn read_sentence(scope: &Scope<'_>, from: usize, to: usize, memory: &mut Memory) -> Vec<Claim> {
    let atoms = atoms(scope, from, to);
    let sentence = Sentence { scope, atoms: &atoms, memory };
    let mut claims = if sentence.asserts() && !sentence.is_conditional() { sentence.claims() } else { Vec::new() };
    if sentence.asserts() {
        claims.extend(sentence.deficits());
    }
    let (subject, named) = (sentence.main_subject(), sentence.named());
    if !named.is_empty() {
        let goes_on =
            atoms.first().is_some_and(|atom| lexicon::is_pronoun(&atom.word) || lexicon::is_relative(&atom.word));
        if !subject.is_empty() || !goes_on {
            memory.subject = subject;
        }
        memory.named = named;
    }
    claims
}

fn atoms(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Atom> {
    atoms_where(scope, from, to, &|mention| is_usable(mention, scope))
}

fn atoms_where(scope: &Scope<'_>, from: usize, to: usize, is_usable: &dyn Fn(&Mention) -> bool) -> Vec<Atom> {
    let text = &scope.plain.text;
    let tokens = &scope.mentions.tokens;
    let mentions = &scope.mentions.list;
    let lower: Vec<String> =
        tokens.get(from..to).unwrap_or_default().iter().map(|token| token.span.of(text).to_lowercase()).collect();
    let named: Vec<bool> = (from..to)
        .map(|at| {
            mentions.iter().any(|mention| is_usable(mention) && (mention.tokens.0..mention.tokens.1).contains(&at))
        })
        .collect();
    let word = |at: usize| -> &str {
        let place = at.wrapping_sub(from);
        if named.get(place).copied().unwrap_or(true) { "" } else { lower.get(place).map_or("", String::as_str) }
    };
    let mut list = Vec::new();
    let mut at = from;
    while at < to {
        let mention = mentions.iter().position(|mention| mention.tokens.0 == at && is_usable(mention));
        let (kind, end) = if let Some(place) = mention {
            (AtomKind::Name(place), mentions.get(place).map_or(at + 1, |mention| mention.tokens.1))
        } else if let Some(reading) = segments::read(text, tokens.get(..to).unwrap_or_default(), at) {
            let end = reading.end;
            (AtomKind::Segments(reading), end)
        } else {
            let phrase = scope.relations.phrase_at(at, &word);
            let movement = scope.relations.movement_at(at, &word);
            match (phrase, movement) {
                (Some((relation, end)), movement) if movement.as_ref().is_none_or(|(_, other)| end >= *other) => {
                    (AtomKind::Relation(relation), end)
                }
                (_, Some((movement, end))) => (AtomKind::Movement(movement), end),
                _ => (AtomKind::Word, at + 1),
            }
        };
        let word = if matches!(kind, AtomKind::Word) {
            lower.get(at - from).cloned().unwrap_or_default()
        } else {
            String::new()
        };
        list.push(Atom { kind, from: at, to: end, word });
        at = end.max(at + 1);
    }
    list
}

/// Adjectives such as "radial" are short names of nerves; in running text they are adjectives.
fn is_usable(mention: &Mention, scope: &Scope<'_>) -> bool {
    let next = scope.mentions.tokens.get(mention.tokens.1).map_or("", |token| token.span.of(&scope.plain.text));
    matches!(next, "n" | "nn" | "nerve" | "nerves") || !is_bare_adjective(mention, scope.vocabulary)
}

/// Reads a value: the names, segments or movements of a role, where a label or a header already tells what they are to
/// the subject. Names may be bare ("ulnar" for the ulnar nerve).
pub fn values(scope: &Scope<'_>, from: usize, to: usize, role: PartRole) -> Vec<Side> {
    let atoms = atoms_where(scope, from, to, &|_| true);
    if role == PartRole::Skin {
        let memory = Memory::default();
        let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
        let from = (0..atoms.len()).find(|at| !lexicon::is_determiner(sentence.word(*at)));
        return from.and_then(|from| sentence.area(from)).into_iter().collect();
    }
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    if sentence.has_verb() || !sentence.asserts() {
        return Vec::new();
    }
    let mut sides = Vec::new();
    let mut at = 0;
    while at < atoms.len() {
        let word = sentence.word(at);
        if lexicon::is_exception(word)
            || lexicon::is_negation(word)
            || (role == PartRole::Nerve && lexicon::is_not_motor(word))
            || sentence.is_struck(at)
        {
            break;
        }
        if matches!(word, "(" | "[") && role != PartRole::Segments {
            let behind = sentence.behind_bracket(at);
            if behind > at {
                at = behind;
                continue;
            }
        }
        match &atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) if role == PartRole::Landmark && sentence.is_place_within(at) => {}
            Some(AtomKind::Name(_)) => sides.extend(sentence.side(at, role)),
            Some(AtomKind::Word) if role == PartRole::Nerve => {
                if let Some((side, end)) = sentence.bare_nerve(at) {
                    sides.push(side);
                    at = end;
                    continue;
                }
            }
            Some(AtomKind::Segments(reading)) if role == PartRole::Segments => {
                sides.push(Side {
                    what: What::Segments(reading.main, reading.lesser),
                    span: sentence.source(at, at + 1),
                });
            }
            _ => {}
        }
        at += 1;
    }
    if role == PartRole::Segments && sides.len() > 1 {
        sides.clear();
    }
    sides
}

/// Reads the movements of a value, each with what it moves.
pub fn movement_values(scope: &Scope<'_>, from: usize, to: usize) -> Vec<(Side, Option<Side>)> {
    let atoms = atoms_where(scope, from, to, &|mention| is_usable(mention, scope));
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    if !sentence.asserts() {
        return Vec::new();
    }
    let mut list = Vec::new();
    for at in 0..atoms.len() {
        let word = sentence.word(at);
        if lexicon::is_negation(word)
            || lexicon::is_hedge(word)
            || word == "resists"
            || word == "prevents"
            || word == "against"
        {
            break;
        }
        if let Some(AtomKind::Movement(movement)) = atoms.get(at).map(|atom| &atom.kind) {
            let side = Side { what: What::Entry(vec![movement.movement]), span: sentence.source(at, at + 1) };
            list.push((side, sentence.moved(at).0));
        }
    }
    list
}

/// What a lesion is said to take away.
pub struct Effect {
    /// The muscle, the movement with its joint, the area, or the sign.
    pub parts: Vec<Part>,
    /// It is lost altogether, not only weakened.
    pub whole: bool,
}

/// Reads a value that tells what a lesion takes away.
pub fn effects(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Effect> {
    let atoms = atoms(scope, from, to);
    let memory = Memory::default();
    let sentence = Sentence { scope, atoms: &atoms, memory: &memory };
    if sentence.asserts() { sentence.effects_from(0, true) } else { Vec::new() }
}

/// Whether a stretch of a block is read as a sentence: it has a verb that claims something.
pub fn is_sentence(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    let atoms = atoms(scope, from, to);
    Sentence { scope, atoms: &atoms, memory: &Memory::default() }.has_verb()
}

struct Sentence<'a, 's> {
    scope: &'a Scope<'s>,
    atoms: &'a [Atom],
    memory: &'a Memory,
}

impl<'a> Sentence<'a, '_> {
    fn word(&self, at: usize) -> &'a str {
        self.atoms.get(at).map_or("", |atom| &*atom.word)
    }

    /// The first word of an atom, if it is in lower case; articles may begin a sentence.
    fn first_word(&self, at: usize) -> &'a str {
        let tokens = &self.scope.mentions.tokens;
        let text = &self.scope.plain.text;
        match self.atoms.get(at).and_then(|atom| tokens.get(atom.from)).map_or("", |token| token.span.of(text)) {
            "The" => "the",
            "A" => "a",
            "An" => "an",
            word => word,
        }
    }

    /// The words of an atom as they are written, in lower case.
    fn written(&self, at: usize) -> String {
        let tokens = &self.scope.mentions.tokens;
        let Some(atom) = self.atoms.get(at) else { return String::new() };
        let (Some(first), Some(last)) =
            (tokens.get(atom.from), atom.to.checked_sub(1).and_then(|last| tokens.get(last)))
        else {
            return String::new();
        };
        Span::new(first.span.start, last.span.end).of(&self.scope.plain.text).to_lowercase()
    }

    fn mention(&self, at: usize) -> Option<&'a Mention> {
        match self.atoms.get(at)?.kind {
            AtomKind::Name(place) => self.scope.mentions.list.get(place),
            _ => None,
        }
    }

    fn source(&self, from: usize, to: usize) -> Span {
        let tokens = &self.scope.mentions.tokens;
        let first = self.atoms.get(from).and_then(|atom| tokens.get(atom.from));
        let last = to
            .checked_sub(1)
            .and_then(|last| self.atoms.get(last))
            .and_then(|atom| tokens.get(atom.to.checked_sub(1)?));
        match (first, last) {
            (Some(first), Some(last)) => self.scope.plain.to_source(Span::new(first.span.start, last.span.end)),
            _ => Span::default(),
        }
    }

    /// Whether it has a verb that claims something.
    fn has_verb(&self) -> bool {
        self.atoms.iter().any(|atom| match &atom.kind {
            AtomKind::Relation(relation) => {
                relation.form == Form::Verb
                    && relation.kind != ClaimKind::Passage
                    && !relation.phrase.starts_with("motor")
            }
            _ => matches!(&*atom.word, "is" | "are"),
        })
    }

    /// Whether the sentence asserts something of its own.
    fn asserts(&self) -> bool {
        let is_question = self.atoms.last().is_some_and(|atom| atom.word == "?");
        let is_quoted = self.atoms.iter().any(|atom| matches!(&*atom.word, "“" | "\"" | "«"));
        !is_question
            && !is_quoted
            && !self.denies_a_clause()
            && !self.atoms.iter().any(|atom| lexicon::asserts_nothing(&atom.word))
    }

    /// Whether it speaks of what is so only under a condition.
    fn is_conditional(&self) -> bool {
        self.atoms.iter().any(|atom| matches!(&*atom.word, "if" | "unless"))
    }

    /// "It is not true that …", "do not write that …": the clause is denied as a whole.
    fn denies_a_clause(&self) -> bool {
        let Some(that) = (0..self.atoms.len()).find(|at| self.word(*at) == "that") else { return false };
        let denial = (0..that).rev().find(|at| lexicon::is_negation(self.word(*at)));
        denial.is_some_and(|denial| that - denial < 6 && (denial..that).all(|at| self.mention(at).is_none()))
    }

    fn is_struck(&self, at: usize) -> bool {
        let tokens = &self.scope.mentions.tokens;
        self.atoms
            .get(at)
            .and_then(|atom| tokens.get(atom.from))
            .is_some_and(|token| self.scope.plain.has_mark(token.span, Mark::Struck))
    }

    fn named(&self) -> Vec<Subject> {
        (0..self.atoms.len()).filter_map(|at| self.subject_at(at)).collect()
    }

    fn subject_at(&self, at: usize) -> Option<Subject> {
        let mention = self.mention(at)?;
        Some(Subject { candidates: mention.candidates.clone(), span: self.scope.plain.to_source(mention.span) })
    }

    fn main_subject(&self) -> Vec<Subject> {
        self.main_group()
            .map(|group| group.members.iter().filter_map(|at| self.subject_at(*at)).collect())
            .unwrap_or_default()
    }

    /// The group with which the sentence begins.
    fn main_group(&self) -> Option<Group> {
        self.group_at_start(0)
    }

    /// The group with which a clause begins at an atom.
    fn group_at_start(&self, start: usize) -> Option<Group> {
        let mut at = start;
        while at < self.atoms.len() {
            match self.atoms.get(at)?.kind {
                AtomKind::Name(_) => {
                    let group = self.group_from(at, false)?;
                    if self.is_place(&group) && self.is_governed(at) && self.word(group.end) == "," {
                        at = group.end + 1; // "In the forearm, …"
                        continue;
                    }
                    return (!self.is_governed(at)).then_some(group);
                }
                AtomKind::Word if self.may_lead(at) => at += 1,
                _ => return None,
            }
        }
        None
    }

    /// Words that may stand before the subject of a sentence.
    fn may_lead(&self, at: usize) -> bool {
        let word = self.word(at);
        lexicon::is_determiner(word)
            || lexicon::is_adverb(word)
            || lexicon::means_all(word)
            || lexicon::is_part_noun(word)
            || lexicon::is_preposition(word)
            || lexicon::is_muscle_noun(word)
            || matches!(word, "," | "*" | "•" | "-" | "–" | "and" | "so" | "again" | "since" | "because" | ":")
    }

    fn is_place(&self, group: &Group) -> bool {
        group.members.first().is_some_and(|at| {
            self.mention(*at).is_some_and(|mention| {
                mention.candidates.iter().all(|id| {
                    matches!(self.scope.vocabulary.kind(*id), Kind::Landmark | Kind::Joint | Kind::Skin | Kind::Group)
                })
            })
        })
    }

    /// Whether the name at an atom hangs on a preposition, so that it is no subject.
    fn is_governed(&self, at: usize) -> bool {
        let mut before = at;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if lexicon::is_determiner(word) || lexicon::means_all(word) || lexicon::is_muscle_noun(word) {
                before = place;
                continue;
            }
            if word == "of" {
                let noun = place.checked_sub(1).map_or("", |noun| self.word(noun));
                return !lexicon::is_part_noun(noun);
            }
            return lexicon::is_preposition(word);
        }
        false
    }

    /// "floor of the orbit": the name tells what holds the place that is meant.
    fn is_place_within(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let Some(of) = before.checked_sub(1).filter(|place| self.word(*place) == "of") else { return false };
        of.checked_sub(1).is_some_and(|noun| {
            let word = self.word(noun);
            !word.is_empty()
                && !lexicon::is_part_noun(word)
                && !matches!(
                    word,
                    "surface"
                        | "side"
                        | "aspect"
                        | "third"
                        | "thirds"
                        | "border"
                        | "end"
                        | "shaft"
                        | "body"
                        | "upper"
                        | "lower"
                )
        })
    }

    fn class(&self, at: usize) -> Option<u8> {
        let mention = self.mention(at)?;
        let kind = self.scope.vocabulary.kind(*mention.candidates.first()?);
        Some(match kind {
            Kind::Nerve | Kind::Plexus | Kind::Root => 0,
            Kind::Muscle => 1,
            Kind::Group => 2,
            Kind::Joint => 3,
            Kind::Landmark => 4,
            Kind::Skin => 5,
            Kind::Movement => 6,
        })
    }

    /// The group that begins with the name at an atom. As an object it ends before a name that has a verb of its own.
    fn group_from(&self, at: usize, is_object: bool) -> Option<Group> {
        let class = self.class(at)?;
        let is_same = |other: u8| other == class || (class, other) == (1, 2) || (class, other) == (2, 1);
        let mut group = Group { members: vec![at], end: self.behind_bracket(at + 1), ..Group::default() };
        self.quantify(at, &mut group);
        loop {
            let mut next = group.end;
            let is_but = self.word(next) == "but" && self.mention(next + 1).is_some() && group.all;
            if is_but
                || lexicon::is_exception(self.word(next))
                || (self.word(next) == "apart" && self.word(next + 1) == "from")
                || (self.word(next) == "with" && self.word(next + 2) == "exception")
            {
                self.take_exceptions(next, &mut group);
                break;
            }
            if !lexicon::is_conjunction(self.word(next)) && !(self.word(next) == "as" && self.word(next + 1) == "well")
            {
                break;
            }
            while lexicon::is_conjunction(self.word(next))
                || matches!(self.word(next), "as" | "well" | "also" | "with" | "then")
                || lexicon::is_determiner(self.word(next))
                || lexicon::is_muscle_noun(self.word(next))
                || lexicon::is_adverb(self.word(next))
            {
                next += 1;
            }
            if !self.class(next).is_some_and(is_same) {
                break;
            }
            let behind = self.behind_bracket(next + 1);
            let has_own_verb = self.begins_predicate(behind) || matches!(self.word(behind), "from" | "by" | "via");
            if is_object && has_own_verb {
                break;
            }
            group.members.push(next);
            group.end = behind;
        }
        Some(group)
    }

    /// What stands before a group: "all", "both heads of", "the medial half of".
    fn quantify(&self, at: usize, group: &mut Group) {
        let mut before = at;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if matches!(word, "neither" | "no") {
                group.denied = true;
                break;
            }
            if lexicon::means_all(word) {
                group.all = true;
            } else if matches!(
                word,
                "half"
                    | "halves"
                    | "two"
                    | "three"
                    | "four"
                    | "most"
                    | "part"
                    | "parts"
                    | "portion"
                    | "lateral"
                    | "medial"
                    | "upper"
                    | "lower"
                    | "rest"
                    | "some"
                    | "fibres"
                    | "fibers"
                    | "remaining"
                    | "remainder"
                    | "deep"
                    | "superficial"
                    | "other"
                    | "anterior"
                    | "posterior"
                    | "one"
            ) {
                group.partial = true;
            } else if !(lexicon::is_determiner(word) || lexicon::is_muscle_noun(word) || word == "of" || word == "in") {
                break;
            }
            before = place;
        }
    }

    fn take_exceptions(&self, at: usize, group: &mut Group) {
        let mut next = at;
        while next < self.atoms.len() && self.mention(next).is_none() && !matches!(self.word(next), "." | ";" | ":") {
            next += 1;
        }
        if let Some(except) = self.mention(next).and_then(|_| self.group_from_plain(next)) {
            group.end = except.end;
            group.except = except.members;
        }
    }

    fn group_from_plain(&self, at: usize) -> Option<Group> {
        self.group_from(at, true)
    }

    /// The atom behind a bracket that opens at an atom; the atom itself if none does.
    fn behind_bracket(&self, at: usize) -> usize {
        if !matches!(self.word(at), "(" | "[") {
            return at;
        }
        (at + 1..self.atoms.len()).find(|place| matches!(self.word(*place), ")" | "]")).map_or(at, |close| close + 1)
    }

    /// Whether a verb begins at an atom.
    fn begins_predicate(&self, at: usize) -> bool {
        let mut at = at;
        while lexicon::is_adverb(self.word(at))
            || lexicon::is_negation(self.word(at))
            || lexicon::is_hedge(self.word(at))
        {
            at += 1;
        }
        match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => relation.form == Form::Verb,
            Some(AtomKind::Movement(movement)) => movement.form == MovementForm::Verb,
            _ => lexicon::is_auxiliary(self.word(at)),
        }
    }

    fn fits(&self, role: PartRole, candidates: &[EntryId]) -> bool {
        candidates.iter().any(|id| fits(self.scope.vocabulary, role, *id))
    }

    /// Words that are the name of a nerve without the noun: "facial", "deep fibular".
    fn bare_nerve(&self, at: usize) -> Option<(Side, usize)> {
        (1..=4).rev().find_map(|len| {
            let end = at + len;
            let tokens = &self.scope.mentions.tokens;
            let (first, last) = (self.atoms.get(at)?, self.atoms.get(end - 1)?);
            let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
            let written = span.of(&self.scope.plain.text);
            let names = self.scope.names.lookup(&format!("{written} nerve"));
            let candidates: Vec<EntryId> = names.iter().map(|name| name.entry).collect();
            let subject = Subject { candidates, span: self.scope.plain.to_source(span) };
            side_of(self.scope.vocabulary, &subject, PartRole::Nerve).map(|side| (side, end))
        })
    }

    /// The members of a group as sides of a claim, those that fit the role.
    fn sides(&self, group: &Group, role: PartRole) -> Vec<Side> {
        group.members.iter().filter(|at| !self.is_struck(**at)).filter_map(|at| self.side(*at, role)).collect()
    }

    fn side(&self, at: usize, role: PartRole) -> Option<Side> {
        let subject = self.subject_at(at)?;
        side_of(self.scope.vocabulary, &subject, role)
    }

    /// The claims of the sentence.
    fn claims(&self) -> Vec<Claim> {
        let mut claims = Vec::new();
        let mut last_subject: Vec<Side> = Vec::new();
        for at in 0..self.atoms.len() {
            if self.is_struck(at) {
                continue;
            }
            match &self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Relation(relation)) => match relation.form {
                    Form::Noun => claims.extend(self.noun_claims(at, relation)),
                    Form::Verb | Form::Participle => claims.extend(self.verb_claims(at, relation, &mut last_subject)),
                },
                Some(AtomKind::Movement(movement)) => {
                    claims.extend(self.action_claims(at, movement, &mut last_subject))
                }
                Some(AtomKind::Name(_)) => claims.extend(self.bracket_claims(at)),
                Some(AtomKind::Word) if matches!(self.word(at), "is" | "are" | "remains") => {
                    claims.extend(self.predicate_claims(at));
                }
                Some(AtomKind::Word) if lexicon::number(self.word(at)).is_some() => {
                    claims.extend(self.count_claims(at));
                }
                _ => {}
            }
        }
        claims
    }

    /// Claims of `LEFT phrase RIGHT`.
    fn verb_claims(&self, at: usize, relation: &RelationWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        let (before, negated, hedged) = self.before_verb(at);
        let is_apposition = relation.form == Form::Participle && lexicon::is_determiner(self.first_word(at));
        let begins_clause =
            before.checked_sub(1).is_none_or(|place| matches!(self.word(place), ";" | ":" | "and" | "but" | "–" | "—"));
        if is_apposition && begins_clause && before == at {
            return Vec::new(); // "The anterior divisions of …" begins a clause: it is a subject, no apposition
        }
        if relation.kind == ClaimKind::Skin {
            return self.skin_claims(at, before, negated, hedged, relation, last_subject);
        }
        let Some(object) = self.object(at + 1) else {
            let can_feel =
                relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve && relation.form == Form::Verb;
            return if can_feel {
                self.skin_claims(at, before, negated, hedged, relation, last_subject)
            } else {
                Vec::new()
            };
        };
        let negated = negated || self.group_to(before).is_some_and(|group| group.denied);
        let mut left = self.subject(before, relation, last_subject);
        if left.is_empty() && relation.form == Form::Participle && relation.left == PartRole::Muscle {
            left = self.listed_behind(&object);
        }
        if left.is_empty() && relation.kind == ClaimKind::Supply && relation.form == Form::Participle {
            return self.skin_supplied(at, before, &object, negated, hedged);
        }
        if left.is_empty() {
            return Vec::new();
        }
        (*last_subject).clone_from(&left);
        let hedged = hedged || self.clause_hedged(at);
        let mut claims = self.combine(relation, &left, &object, at, negated, hedged);
        if relation.kind == ClaimKind::Attachment
            && relation.phrase.ends_with(" from")
            && let Object::Names(from) = &object
            && self.word(from.end) == "to"
            && let Some(to) = self.object(from.end + 1)
        {
            let insertion = RelationWord { phrase: "insert", ..*relation };
            claims.extend(self.combine(&insertion, &left, &to, at, negated, hedged));
        }
        claims
    }

    /// "The skin of the upper lip is supplied by NERVE"
    fn skin_supplied(&self, at: usize, before: usize, object: &Object, negated: bool, hedged: bool) -> Vec<Claim> {
        let Object::Names(group) = object else { return Vec::new() };
        let Some(area) = self.area_to(before) else { return Vec::new() };
        let hedged = hedged || self.clause_hedged(at);
        self.sides(group, PartRole::Nerve)
            .into_iter()
            .map(|nerve| {
                let span = self.claim_span(at, nerve.span, area.span);
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Skin, span: area.span, what: area.what.clone() },
                ];
                Claim {
                    kind: ClaimKind::Skin,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// The area of skin that the words right before an atom describe, from the beginning of their clause.
    fn area_to(&self, end: usize) -> Option<Side> {
        let start = (0..end)
            .rev()
            .find(|place| {
                matches!(self.word(*place), "," | ";" | ":" | "." | "—" | "and")
                    || lexicon::is_contrast(self.word(*place))
            })
            .map_or(0, |place| place + 1);
        let start =
            (start..end).find(|at| !lexicon::is_determiner(self.word(*at)) && !lexicon::is_adverb(self.word(*at)))?;
        let tokens = &self.scope.mentions.tokens;
        let (first, last) = (self.atoms.get(start)?, self.atoms.get(end.checked_sub(1)?)?);
        let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
        let candidates = self.scope.relations.areas(span.of(&self.scope.plain.text));
        side_of(self.scope.vocabulary, &Subject { candidates, span: self.scope.plain.to_source(span) }, PartRole::Skin)
    }

    /// "Posterior thigh - innervated by NERVE; MUSCLE, MUSCLE": the muscles stand behind a semicolon or colon.
    fn listed_behind(&self, object: &Object) -> Vec<Side> {
        let Object::Names(group) = object else { return Vec::new() };
        if !matches!(self.word(group.end), ";" | ":") || self.class(group.end + 1) != Some(1) {
            return Vec::new();
        }
        let listed = self.group_from(group.end + 1, false);
        listed
            .filter(|listed| listed.end + 1 >= self.atoms.len() || matches!(self.word(listed.end), "." | "*" | ";"))
            .map(|listed| self.sides(&listed, PartRole::Muscle))
            .unwrap_or_default()
    }

    /// "supplies the skin of the lateral forearm"
    fn skin_claims(
        &self,
        at: usize,
        before: usize,
        negated: bool,
        hedged: bool,
        relation: &RelationWord,
        last: &mut Vec<Side>,
    ) -> Vec<Claim> {
        if relation.left == PartRole::Skin {
            let object = self.object(at + 1);
            return object.map(|object| self.skin_supplied(at, before, &object, negated, hedged)).unwrap_or_default();
        }
        let nerves = self.subject(before, relation, last);
        if nerves.is_empty() {
            return Vec::new();
        }
        (*last).clone_from(&nerves);
        let Some(area) = self.area(at + 1) else { return Vec::new() };
        let hedged = hedged || self.clause_hedged(at);
        nerves
            .into_iter()
            .map(|nerve| {
                let span = self.claim_span(at, nerve.span, area.span);
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Skin, span: area.span, what: area.what.clone() },
                ];
                Claim {
                    kind: ClaimKind::Skin,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// Steps back from a verb over auxiliaries and adverbs: the atom after which the subject ends, and what was said of
    /// the verb on the way.
    fn before_verb(&self, at: usize) -> (usize, bool, bool) {
        let (mut before, mut negated, mut hedged) = (at, false, false);
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_hedge(word) {
                hedged = true;
            } else if !(lexicon::is_auxiliary(word) || lexicon::is_adverb(word)) {
                break;
            }
            before = place;
        }
        (before, negated, hedged)
    }

    fn clause_hedged(&self, at: usize) -> bool {
        let stops = |word: &str| matches!(word, ";" | ":") || lexicon::is_contrast(word);
        let back = (0..at).rev().take_while(|place| !stops(self.word(*place)));
        let forth = (at..self.atoms.len()).take_while(|place| !stops(self.word(*place)) && self.word(*place) != ",");
        back.chain(forth).any(|place| lexicon::is_hedge(&self.written(place)) || self.word(place) == "%")
    }

    /// The subject of a relation phrase, whose words before it end at `end`.
    fn subject(&self, end: usize, relation: &RelationWord, last: &[Side]) -> Vec<Side> {
        let role = relation.left;
        let roles = [role, PartRole::Structure];
        let role = if role == PartRole::Nerve && relation.kind == ClaimKind::Branching { roles[1] } else { role };
        let Some(before) = end.checked_sub(1) else { return self.implied(role, false) };
        let word = self.word(before);
        if lexicon::is_relative(word) {
            let antecedent =
                if before.checked_sub(1).is_some_and(|comma| self.word(comma) == ",") { before - 1 } else { before };
            return self.group_to(antecedent).map(|group| self.sides(&group, role)).unwrap_or_default();
        }
        if lexicon::is_pronoun(word) {
            return self.implied(role, matches!(word, "they" | "these" | "both" | "them"));
        }
        if lexicon::is_kind_noun(word)
            && before
                .checked_sub(1)
                .is_some_and(|place| matches!(self.word(place), "this" | "these" | "the" | "both" | "that"))
        {
            return self.implied(role, word.ends_with('s'));
        }
        let before_noun = before.checked_sub(1).map_or("", |place| self.word(place));
        if matches!(before_noun, "its" | "their")
            && (lexicon::is_part_noun(word) || matches!(word, "origin" | "supply" | "innervation"))
        {
            return self.implied(role, before_noun == "their");
        }
        if matches!(word, "former" | "latter") {
            let list: Vec<Side> = self
                .memory
                .subject
                .iter()
                .filter_map(|subject| side_of(self.scope.vocabulary, subject, role))
                .collect();
            let one = if word == "former" { list.first() } else { list.last() };
            return one.filter(|_| list.len() == 2).cloned().into_iter().collect();
        }
        if let Some(AtomKind::Segments(reading)) = self.atoms.get(before).map(|atom| &atom.kind)
            && relation.kind == ClaimKind::Supply
            && !before.checked_sub(1).is_some_and(|place| lexicon::is_preposition(self.word(place)))
        {
            return vec![Side {
                what: What::Segments(reading.main, reading.lesser),
                span: self.source(before, before + 1),
            }];
        }
        if let Some(group) = self.group_to(end) {
            let sides = self.sides(&group, role);
            let first = group.members.first().copied().unwrap_or(0);
            if self.is_exception_to(first) {
                return self.main_sides(role);
            }
            if !sides.is_empty() && !self.is_governed(first) {
                return sides;
            }
            if relation.form == Form::Verb || self.word(end) != "," {
                return if self.has_main(role) && relation.form == Form::Participle {
                    self.main_sides(role)
                } else {
                    Vec::new()
                };
            }
        }
        if lexicon::is_conjunction(word) || matches!(word, "then" | "but" | ";" | "–" | "—" | "while") {
            if relation.form == Form::Participle && word == "," {
                if let Some(group) = self.group_to(before) {
                    let sides = self.sides(&group, role);
                    let governed = group.members.first().is_some_and(|first| self.is_governed(*first));
                    if !sides.is_empty() && !governed {
                        return sides;
                    }
                }
                return self.main_sides_before(end, role);
            }
            if word == "," {
                let main = self.main_sides_before(end, role);
                if !main.is_empty() {
                    return main;
                }
            }
            let fits = |side: &&Side| matches!(&side.what, What::Entry(ids) if self.fits(role, ids));
            let same: Vec<Side> = last.iter().filter(fits).cloned().collect();
            return if same.is_empty() { self.main_sides_before(end, role) } else { same };
        }
        if matches!(word, ":" | "—" | "–" | "-" | "=")
            && let Some(group) = self.group_to(before)
            && group.members.first().is_some_and(|first| (0..*first).all(|at| self.may_lead(at)))
        {
            let sides = self.sides(&group, role);
            if !sides.is_empty() {
                return sides;
            }
        }
        if matches!(word, "•" | "*" | ":" | "→") || (before == 0 && lexicon::is_determiner(word)) {
            return self.implied(role, false);
        }
        Vec::new()
    }

    /// Whether the name at an atom is taken out of what stands before it: "all muscles but X".
    fn is_exception_to(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
            before -= 1;
        }
        let Some(place) = before.checked_sub(1) else { return false };
        let word = self.word(place);
        let two = place.checked_sub(1).map_or("", |place| self.word(place));
        lexicon::is_exception(word)
            || word == "but"
            || (word == "from" && two == "apart")
            || (word == "of" && two == "exception")
            || (word == "than" && two == "other")
            || (word == "for" && matches!(two, "except" | "save"))
    }

    fn has_main(&self, role: PartRole) -> bool {
        !self.main_sides(role).is_empty()
    }

    /// The subject of the clause in which an atom stands.
    fn main_sides_before(&self, at: usize, role: PartRole) -> Vec<Side> {
        let start = (0..at)
            .rev()
            .find(|place| matches!(self.word(*place), ";" | ":" | "—") || lexicon::is_contrast(self.word(*place)));
        let Some(start) = start else { return self.main_sides(role) };
        let sides = self.group_at_start(start + 1).map(|group| self.sides(&group, role)).unwrap_or_default();
        if sides.is_empty() { self.main_sides(role) } else { sides }
    }

    fn main_sides(&self, role: PartRole) -> Vec<Side> {
        self.main_group().map(|group| self.sides(&group, role)).unwrap_or_default()
    }

    /// The subject that the sentence before or the heading sets.
    fn implied(&self, role: PartRole, plural: bool) -> Vec<Side> {
        let sides = |list: &[Subject]| -> Vec<Side> {
            list.iter().filter_map(|subject| side_of(self.scope.vocabulary, subject, role)).collect()
        };
        let before = sides(&self.memory.subject);
        if before.len() == 1 || (plural && !before.is_empty()) {
            return before;
        }
        if !self.memory.named.is_empty() {
            let named = sides(&self.memory.named);
            if named.len() == 1 {
                return named;
            }
            if !named.is_empty() && !before.is_empty() {
                return Vec::new();
            }
        }
        self.scope
            .subjects
            .iter()
            .find_map(|subject| side_of(self.scope.vocabulary, subject, role))
            .into_iter()
            .collect()
    }

    /// The group that ends right before an atom.
    fn group_to(&self, end: usize) -> Option<Group> {
        let mut last = end.checked_sub(1)?;
        if matches!(self.word(last), ")" | "]") {
            last = (0..last).rev().find(|place| matches!(self.word(*place), "(" | "["))?.checked_sub(1)?;
        }
        let class = self.class(last)?;
        let mut members = vec![last];
        let mut at = last;
        loop {
            let Some(mut before) = at.checked_sub(1) else { break };
            while lexicon::is_determiner(self.word(before)) || lexicon::is_muscle_noun(self.word(before)) {
                let Some(next) = before.checked_sub(1) else { break };
                before = next;
            }
            if !lexicon::is_conjunction(self.word(before)) {
                break;
            }
            let mut joined = false;
            while lexicon::is_conjunction(self.word(before)) {
                joined |= self.word(before) != ",";
                let Some(next) = before.checked_sub(1) else { break };
                before = next;
            }
            if matches!(self.word(before), ")" | "]") {
                let Some(open) = (0..before)
                    .rev()
                    .find(|place| matches!(self.word(*place), "(" | "["))
                    .and_then(|open| open.checked_sub(1))
                else {
                    break;
                };
                before = open;
            }
            if self.class(before) != Some(class) || (members.len() == 1 && !joined) {
                break;
            }
            members.push(before);
            at = before;
        }
        members.reverse();
        if members.len() > 1 && members.first().is_some_and(|first| self.is_object_of_another(*first)) {
            members.drain(..members.len() - 1);
        }
        let first = members.first().copied()?;
        let mut group = Group { members, end, ..Group::default() };
        self.quantify(first, &mut group);
        Some(group)
    }

    /// Whether a verb or another word of content stands right before a name, so that what follows an "and" behind it
    /// begins a clause of its own.
    fn is_object_of_another(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| {
            lexicon::is_determiner(self.word(place))
                || lexicon::means_all(self.word(place))
                || lexicon::is_muscle_noun(self.word(place))
        }) {
            before -= 1;
        }
        let Some(place) = before.checked_sub(1) else { return false };
        match self.atoms.get(place).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(_) | AtomKind::Movement(_)) => true,
            Some(AtomKind::Word) => {
                let word = self.word(place);
                let leads = lexicon::is_conjunction(word)
                    || lexicon::is_contrast(word)
                    || lexicon::is_preposition(word)
                    || lexicon::is_adverb(word)
                    || lexicon::is_part_noun(word)
                    || lexicon::is_negation(word);
                word.chars().all(char::is_alphabetic) && !leads
            }
            _ => false,
        }
    }

    /// The object of a relation phrase that begins at an atom.
    fn object(&self, at: usize) -> Option<Object> {
        let mut at = at;
        let mut after_noun = false;
        loop {
            let atom = self.atoms.get(at)?;
            match &atom.kind {
                AtomKind::Name(_) => {
                    let group = self.group_from(at, true)?;
                    if self.word(group.end) == "'s" {
                        return None;
                    }
                    return Some(Object::Names(group));
                }
                AtomKind::Segments(reading) => return Some(Object::Segments(*reading, at)),
                AtomKind::Word => {
                    let word = &*atom.word;
                    if lexicon::is_not_motor(word) || lexicon::is_negation(word) {
                        return None;
                    }
                    let skips = lexicon::is_determiner(word)
                        || lexicon::is_adverb(word)
                        || lexicon::is_muscle_noun(word)
                        || lexicon::means_all(word)
                        || lexicon::is_part_noun(word)
                        || matches!(
                            word,
                            "medial"
                                | "lateral"
                                | "half"
                                | ":"
                                | "*"
                                | "both"
                                | "anterior"
                                | "posterior"
                                | "rami"
                                | "ramus"
                                | "ventral"
                                | "primary"
                                | "upper"
                                | "lower"
                                | "roots"
                        )
                        || (after_noun && matches!(word, "of" | "in" | "to"));
                    if !skips {
                        return None;
                    }
                    after_noun = after_noun
                        || lexicon::is_part_noun(word)
                        || lexicon::is_muscle_noun(word)
                        || matches!(word, "half" | "rami" | "ramus" | "roots");
                    at += 1;
                }
                _ => return None,
            }
        }
    }

    /// The area of skin that the words from an atom on describe, up to a mark or a verb.
    fn area(&self, at: usize) -> Option<Side> {
        let mut end = at;
        while end < self.atoms.len() && end < at + 12 {
            let word = self.word(end);
            let is_verb = matches!(&self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Relation(_)))
                || lexicon::is_auxiliary(word);
            if is_verb || matches!(word, "." | "," | ";" | ":" | "(" | "while" | "but" | "whereas" | "which") {
                break;
            }
            end += 1;
        }
        (at + 1..=end).rev().find_map(|end| {
            let tokens = &self.scope.mentions.tokens;
            let (first, last) = (self.atoms.get(at)?, self.atoms.get(end - 1)?);
            let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
            let ends_well = end >= self.atoms.len()
                || !matches!(&self.atoms.get(end)?.kind, AtomKind::Word)
                || !self.word(end).chars().any(char::is_alphabetic)
                || lexicon::is_conjunction(self.word(end));
            let candidates = self.scope.relations.areas(span.of(&self.scope.plain.text));
            let subject = Subject { candidates, span: self.scope.plain.to_source(span) };
            side_of(self.scope.vocabulary, &subject, PartRole::Skin).filter(|_| ends_well)
        })
    }

    /// Claims of all pairs of the two sides, or of pairs in order where the sentence says "respectively".
    fn combine(
        &self,
        relation: &RelationWord,
        left: &[Side],
        object: &Object,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let vocabulary = self.scope.vocabulary;
        let (group, right): (Option<&Group>, Vec<Side>) = match object {
            Object::Names(group) => (Some(group), self.sides(group, PartRole::Structure)),
            Object::Segments(reading, place) => {
                let span = self.source(*place, *place + 1);
                (None, vec![Side { what: What::Segments(reading.main, reading.lesser), span }])
            }
        };
        if group.is_some_and(|group| group.partial) && relation.kind != ClaimKind::Supply {
            return Vec::new();
        }
        let pairwise = self.atoms.iter().any(|atom| atom.word == "respectively");
        if pairwise && matches!(object, Object::Segments(..)) {
            return Vec::new();
        }
        let mut claims = Vec::new();
        for (l, left) in left.iter().enumerate() {
            for (r, right) in right.iter().enumerate() {
                if pairwise && l != r {
                    continue;
                }
                let Some((kind, left_role, right_role)) = kind_of(vocabulary, relation, left, right) else { continue };
                let mut all = group.is_some_and(|group| group.all && !group.partial);
                all &= group.is_none_or(|group| group.except.is_empty());
                if kind == ClaimKind::Passage {
                    all =
                        ["through", "pierc", "travers", "perforat"].iter().any(|word| self.written(at).contains(word));
                }
                let mut parts = vec![
                    Part { role: left_role, span: left.span, what: left.what.clone() },
                    Part { role: right_role, span: right.span, what: right.what.clone() },
                ];
                if kind == ClaimKind::Attachment
                    && let Some(end) = attachment_end(relation)
                {
                    parts.push(Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(end) });
                }
                let span = self.claim_span(at, left.span, right.span);
                claims.push(Claim { kind, span, parts, negated, hedged, all, block: self.scope.block, key: None });
            }
            if let Some(group) = group
                && relation.kind == ClaimKind::Supply
                && !group.except.is_empty()
            {
                claims.extend(self.exception_claims(relation, left, group, at, negated, hedged));
            }
        }
        if pairwise && left.len() != right.len() {
            claims.clear();
        }
        claims
    }

    /// "all … except X": that X is not supplied.
    fn exception_claims(
        &self,
        relation: &RelationWord,
        left: &Side,
        group: &Group,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let mut claims = Vec::new();
        for except in &group.except {
            let Some(right) = self.side(*except, PartRole::Structure) else { continue };
            let Some((kind, left_role, right_role)) = kind_of(self.scope.vocabulary, relation, left, &right) else {
                continue;
            };
            let span = self.claim_span(at, left.span, right.span);
            let parts = vec![
                Part { role: left_role, span: left.span, what: left.what.clone() },
                Part { role: right_role, span: right.span, what: right.what },
            ];
            claims.push(Claim {
                kind,
                span,
                parts,
                negated: !negated,
                hedged,
                all: false,
                block: self.scope.block,
                key: None,
            });
        }
        claims
    }

    /// The stretch of the source that a claim covers: its phrase and the parts that stand in this sentence.
    fn claim_span(&self, at: usize, left: Span, right: Span) -> Span {
        let whole = self.source(0, self.atoms.len());
        let mut span = self.source(at, at + 1);
        for side in [left, right] {
            if whole.contains(side) {
                span = span.cover(side);
            }
        }
        span
    }

    /// Claims of `phrase RIGHT is LEFT`.
    fn noun_claims(&self, at: usize, relation: &RelationWord) -> Vec<Claim> {
        let Some(Object::Names(object)) = self.object(at + 1) else { return Vec::new() };
        let right = self.sides(&object, relation.right);
        if right.is_empty() {
            return Vec::new();
        }
        let mut next = object.end;
        let (mut linked, mut negated, mut hedged) = (false, false, false);
        loop {
            let word = self.word(next);
            if lexicon::is_link(word) {
                linked = true;
            } else if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_hedge(word) {
                hedged = true;
            } else if !(lexicon::is_adverb(word) || lexicon::is_determiner(word) || lexicon::is_muscle_noun(word)) {
                break;
            }
            next += 1;
        }
        // A participle may be the link: "is supplied by", "is derived from".
        if let Some(AtomKind::Relation(link)) = self.atoms.get(next).map(|atom| &atom.kind)
            && matches!(link.kind, ClaimKind::Supply | ClaimKind::Branching)
        {
            linked = true;
            next += 1;
            while lexicon::is_determiner(self.word(next)) {
                next += 1;
            }
        }
        if !linked {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let left: Vec<Side> = match self.atoms.get(next).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) => {
                self.group_from(next, true).map(|group| self.sides(&group, relation.left)).unwrap_or_default()
            }
            Some(AtomKind::Segments(reading)) => {
                vec![Side { what: What::Segments(reading.main, reading.lesser), span: self.source(next, next + 1) }]
            }
            _ => Vec::new(),
        };
        self.combine(relation, &left, &Object::Names(object), at, negated, hedged)
    }

    /// "Injury to NERVE causes weakness of MUSCLE", "MUSCLE wastes after an ulnar lesion", "if NERVE is cut, the patient
    /// cannot extend the knee": one cause, and what is lost before or behind it.
    fn deficits(&self) -> Vec<Claim> {
        let Some((nerves, from, to)) = self.cause() else { return Vec::new() };
        let is_denied = self.atoms.iter().any(|atom| {
            lexicon::is_spared(&atom.word)
                || (lexicon::is_negation(&atom.word) && !matches!(&*atom.word, "cannot" | "no"))
        });
        if is_denied {
            return Vec::new();
        }
        let hedged = self.clause_hedged(from);
        let mut effects: Vec<Effect> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            if (from..to).contains(&at) {
                at = to;
                continue;
            }
            if lexicon::is_loss(self.word(at)) || self.sign_at(at).is_some() || lexicon::is_numbness(self.word(at)) {
                let behind = self.effects_from(at, false);
                let is_sign = self.sign_at(at).is_some();
                effects.extend(if behind.is_empty() && !is_sign { self.effect_before(at) } else { behind });
                // The words of loss of one effect stand together.
                while lexicon::is_loss(self.word(at + 1)) {
                    at += 1;
                }
                if is_sign {
                    at += 1;
                }
            }
            at += 1;
        }
        let mut claims: Vec<Claim> = Vec::new();
        for nerve in &nerves {
            for effect in &effects {
                let Some(first) = effect.parts.first() else { continue };
                let span = self.claim_span(from, nerve.span, first.span);
                let mut parts = vec![Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() }];
                parts.extend(effect.parts.iter().cloned());
                if claims.iter().any(|known| known.parts == parts) {
                    continue;
                }
                let block = self.scope.block;
                claims.push(Claim {
                    kind: ClaimKind::Deficit,
                    span,
                    parts,
                    negated: false,
                    hedged,
                    all: effect.whole,
                    block,
                    key: None,
                });
            }
        }
        claims
    }

    /// The nerves whose lesion the sentence speaks of, and the atoms that say so; `None` if it speaks of none or of several.
    fn cause(&self) -> Option<(Vec<Side>, usize, usize)> {
        let mut causes: Vec<(Vec<Side>, usize, usize)> = Vec::new();
        let mut at = 0;
        while at < self.atoms.len() {
            let found = self.cause_at(at).filter(|(nerves, ..)| !nerves.is_empty());
            at = found.as_ref().map_or(at + 1, |(.., end)| *end);
            causes.extend(found);
        }
        if causes.len() == 1 { causes.pop() } else { None }
    }

    fn cause_at(&self, at: usize) -> Option<(Vec<Side>, usize, usize)> {
        let word = self.word(at);
        let before = at.checked_sub(1).map_or("", |before| self.word(before));
        if lexicon::is_lesion(word) || lexicon::lesions(word) {
            let mut next = at + 1;
            while lexicon::is_determiner(self.word(next))
                || (lexicon::is_lesion(word) && matches!(self.word(next), "of" | "to" | "on" | "or"))
            {
                next += 1;
            }
            if next > at + 1 && self.mention(next).is_some() {
                let group = self.group_from(next, true)?;
                return Some((self.sides(&group, PartRole::Nerve), at, group.end));
            }
            let is_its = matches!(before, "its" | "their" | "such" | "this");
            return is_its.then(|| (self.implied(PartRole::Nerve, false), at, at + 1));
        }
        // "an axillary nerve lesion", "ulnar palsy"
        let bare = if word.is_empty() { None } else { self.bare_nerve(at) };
        if let Some((side, end)) = bare
            && lexicon::is_lesion(self.word(end))
        {
            return Some((vec![side], at, end + 1));
        }
        self.mention(at)?;
        let group = self.group_from(at, true)?;
        let nerves = self.sides(&group, PartRole::Nerve);
        if lexicon::is_lesion(self.word(group.end)) {
            return Some((nerves, at, group.end + 1));
        }
        // "when the nerve is cut"
        let mut next = group.end;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        (next > group.end && lexicon::is_cut(self.word(next))).then_some((nerves, at, next + 1))
    }

    /// The muscle or movement right before a word of loss: "brachialis wastes", "extension is lost".
    fn effect_before(&self, at: usize) -> Vec<Effect> {
        let whole = lexicon::is_whole_loss(self.word(at));
        let (before, ..) = self.before_verb(at);
        if let Some(group) = self.group_to(before) {
            let muscles = self.sides(&group, PartRole::Muscle);
            return muscles
                .into_iter()
                .map(|side| Effect {
                    parts: vec![Part { role: PartRole::Muscle, span: side.span, what: side.what }],
                    whole,
                })
                .collect();
        }
        Vec::new()
    }

    /// What a lesion is said to take away, from a word of loss on: muscles, movements, feeling, or a sign by its name. As a
    /// value ("Deficit: foot drop") it needs no word of loss.
    fn effects_from(&self, start: usize, is_value: bool) -> Vec<Effect> {
        let mut effects: Vec<Effect> = Vec::new();
        let (mut whole, mut lost) = (false, is_value);
        let mut next = start;
        while next < self.atoms.len() {
            let word = self.word(next);
            lost |= lexicon::is_loss(word) && !lexicon::brings_about(word);
            whole |= lexicon::is_whole_loss(word);
            if let Some((sign, len)) = self.sign_at(next) {
                let span = self.source(next, next + 1).cover(self.source_of_tokens(next, len));
                effects
                    .push(Effect { parts: vec![Part { role: PartRole::Sign, span, what: What::Sign(sign) }], whole });
                break;
            }
            if lexicon::is_numbness(word)
                || (lexicon::is_loss(word)
                    && matches!(self.word(next + 1), "of")
                    && lexicon::is_numbness(self.word(next + 2)))
            {
                let mut at = next + 1;
                while matches!(
                    self.word(at),
                    "of" | "over" | "in" | "on" | "to" | "the" | "sensation" | "feeling" | "loss"
                ) {
                    at += 1;
                }
                let area = self.area(at);
                effects.extend(area.map(|side| Effect {
                    parts: vec![Part { role: PartRole::Skin, span: side.span, what: side.what }],
                    whole,
                }));
                break;
            }
            match &self.atoms.get(next).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) if lost => {
                    let Some(group) = self.group_from(next, true) else { break };
                    // "elbow flexion": a joint before its movement
                    if matches!(&self.atoms.get(group.end).map(|atom| &atom.kind), Some(AtomKind::Movement(_))) {
                        next = group.end;
                        continue;
                    }
                    for side in self.sides(&group, PartRole::Muscle) {
                        effects.push(Effect {
                            parts: vec![Part { role: PartRole::Muscle, span: side.span, what: side.what }],
                            whole,
                        });
                    }
                    break;
                }
                Some(AtomKind::Movement(movement)) if lost => {
                    let (target, end) = self.moved(next);
                    let movement = self.with_adverb(next, end, movement);
                    let span = self.source(next, next + 1);
                    let mut parts =
                        vec![Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) }];
                    parts.extend(target.map(|side| Part { role: PartRole::Joint, span: side.span, what: side.what }));
                    effects.push(Effect { parts, whole });
                    next += 1;
                    continue;
                }
                Some(AtomKind::Word) if matches!(word, "." | ";") || lexicon::is_not_motor(word) => break,
                _ => {}
            }
            let skips = next == start
                || lexicon::is_loss(word)
                || lexicon::brings_about(word)
                || lexicon::is_determiner(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::means_all(word)
                || lexicon::is_adverb(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_of_loss(word);
            if !skips {
                break;
            }
            next += 1;
        }
        effects
    }

    /// The sign of a lesion that begins at an atom, with how many words it has.
    fn sign_at(&self, at: usize) -> Option<(String, usize)> {
        let tokens = &self.scope.mentions.tokens;
        let from = self.atoms.get(at)?.from;
        let words: Vec<String> = tokens
            .iter()
            .skip(from)
            .take(4)
            .map(|token| token.span.of(&self.scope.plain.text).to_lowercase())
            .collect();
        self.scope.relations.sign_at(0, &|at| words.get(at).map_or("", String::as_str))
    }

    fn source_of_tokens(&self, at: usize, len: usize) -> Span {
        let tokens = &self.scope.mentions.tokens;
        let from = self.atoms.get(at).map_or(0, |atom| atom.from);
        let (Some(first), Some(last)) = (tokens.get(from), tokens.get(from + len - 1)) else { return Span::default() };
        self.scope.plain.to_source(Span::new(first.span.start, last.span.end))
    }

    /// What stands in brackets behind a name: segments are its roots, a nerve behind a muscle supplies it.
    fn bracket_claims(&self, at: usize) -> Vec<Claim> {
        if !matches!(self.word(at + 1), "(" | "[") {
            return Vec::new();
        }
        let close = self.behind_bracket(at + 1);
        if close == at + 1 {
            return Vec::new();
        }
        let Some(host) = self.side(at, PartRole::Structure) else { return Vec::new() };
        let is_muscle = matches!(&host.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Muscle));
        let (mut segments, mut nerves) = (None, Vec::new());
        let mut hedged = self.clause_hedged(at);
        for place in at + 2..close - 1 {
            match &self.atoms.get(place).map(|atom| &atom.kind) {
                Some(AtomKind::Segments(reading)) if segments.is_none() => segments = Some((*reading, place)),
                Some(AtomKind::Name(_)) if is_muscle => match self.side(place, PartRole::Nerve) {
                    Some(side) => nerves.push(side),
                    None => return Vec::new(),
                },
                Some(AtomKind::Word) => {
                    let word = self.word(place);
                    hedged |= lexicon::is_hedge(word);
                    let skips = lexicon::is_adverb(word)
                        || lexicon::is_determiner(word)
                        || lexicon::is_conjunction(word)
                        || matches!(
                            word,
                            "from"
                                | "root"
                                | "roots"
                                | "value"
                                | "values"
                                | "segments"
                                | "segment"
                                | ":"
                                | "spinal"
                                | "by"
                                | "of"
                                | "anterior"
                                | "ventral"
                                | "rami"
                                | ";"
                                | "nerve"
                                | "levels"
                                | "–"
                        );
                    if !skips && !lexicon::is_hedge(word) {
                        return Vec::new();
                    }
                }
                _ => return Vec::new(),
            }
        }
        let whole = self.source(at, close);
        let claim = |kind, parts| Claim {
            kind,
            span: whole,
            parts,
            negated: false,
            hedged,
            all: false,
            block: self.scope.block,
            key: None,
        };
        let mut claims: Vec<Claim> = nerves
            .iter()
            .map(|nerve| {
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() },
                    Part { role: PartRole::Muscle, span: host.span, what: host.what.clone() },
                ];
                claim(ClaimKind::Supply, parts)
            })
            .collect();
        if let Some((reading, place)) = segments
            && nerves.len() < 2
            && host_has_roots(self.scope.vocabulary, &host)
        {
            let owner = nerves.first().unwrap_or(&host);
            let parts = vec![
                Part { role: PartRole::Structure, span: owner.span, what: owner.what.clone() },
                Part {
                    role: PartRole::Segments,
                    span: self.source(place, place + 1),
                    what: What::Segments(reading.main, reading.lesser),
                },
            ];
            claims.push(claim(ClaimKind::Roots, parts));
        }
        claims
    }

    /// "is a purely sensory nerve", "is a hinge joint"
    fn predicate_claims(&self, at: usize) -> Vec<Claim> {
        let (before, ..) = self.before_verb(at + 1);
        let mut negated = false;
        let mut hedged = self.clause_hedged(at);
        let (mut modality, mut kinds): (Option<(&'static str, usize)>, Vec<(&'static str, usize)>) = (None, Vec::new());
        let mut purely = false;
        for place in at + 1..(at + 9).min(self.atoms.len()) {
            let word = self.word(place);
            if word.is_empty() || lexicon::is_preposition(word) || matches!(word, "." | "," | ";" | ":" | "(") {
                break;
            }
            if lexicon::is_negation(word) && (modality.is_some() || !kinds.is_empty()) {
                break;
            }
            negated |= lexicon::is_negation(word);
            hedged |= lexicon::is_hedge(word);
            purely |= matches!(word, "purely" | "entirely" | "solely" | "exclusively" | "wholly" | "only");
            if let Some((_, is)) = lexicon::MODALITIES.iter().find(|(known, _)| *known == word) {
                modality = Some(match modality {
                    Some((was, first)) if was != *is => ("mixed", first),
                    _ => (*is, place),
                });
            }
            if let Some((_, is)) = lexicon::JOINT_KINDS.iter().find(|(known, _)| *known == word)
                && !kinds.iter().any(|(known, _)| known == is)
            {
                kinds.push((is, place));
            }
        }
        let mut claims = self.member_claims(at, before);
        let subject = |role| {
            let relation = RelationWord {
                phrase: "",
                kind: ClaimKind::Modality,
                form: Form::Verb,
                left: role,
                right: role,
                example: "",
            };
            self.subject(before, &relation, &[])
        };
        if let Some((is, place)) = modality {
            for nerve in subject(PartRole::Nerve) {
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Modality, span: self.source(place, place + 1), what: What::Word(is) },
                ];
                let span = self.claim_span(place, nerve.span, nerve.span);
                claims.push(Claim {
                    kind: ClaimKind::Modality,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: purely,
                    block: self.scope.block,
                    key: None,
                });
            }
        }
        for (is, place) in kinds {
            for joint in subject(PartRole::Joint) {
                let parts = vec![
                    Part { role: PartRole::Joint, span: joint.span, what: joint.what },
                    Part { role: PartRole::JointKind, span: self.source(place, place + 1), what: What::Word(is) },
                ];
                let span = self.claim_span(place, joint.span, joint.span);
                claims.push(Claim {
                    kind: ClaimKind::Joint,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                });
            }
        }
        claims
    }

    /// "is a hypothenar muscle", "is one of the hamstrings"
    fn member_claims(&self, at: usize, before: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
            || matches!(self.word(next), "one" | "of" | "member" | "muscle" | "muscles")
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let Some(group) = self.side(next, PartRole::Group).filter(|_| next > at + 1) else { return Vec::new() };
        let relation = RelationWord { kind: ClaimKind::Membership, ..action_relation() };
        let span = self.source(at, at + 1);
        self.subject(before, &relation, &[])
            .into_iter()
            .filter(|muscle| matches!(&muscle.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Muscle)))
            .map(|muscle| {
                let span = span.cover(self.claim_span(at, muscle.span, group.span));
                let parts = vec![
                    Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                    Part { role: PartRole::Group, span: group.span, what: group.what.clone() },
                ];
                Claim { kind: ClaimKind::Membership, span, parts, negated, hedged: self.clause_hedged(at), all: false, block: self.scope.block, key: None }
            })
            .collect()
    }

    /// "has three heads", "there are four dorsal interossei", "consists of four muscles", "are four in number"
    fn count_claims(&self, at: usize) -> Vec<Claim> {
        let Some(number) = lexicon::number(self.word(at)) else { return Vec::new() };
        let hedged = self.clause_hedged(at);
        let claim = |counted: Side, noun: &'static str| {
            let span = self.claim_span(at, counted.span, counted.span);
            let parts = vec![
                Part { role: PartRole::Structure, span: counted.span, what: counted.what },
                Part { role: PartRole::Number, span: self.source(at, at + 1), what: What::Number(number) },
                Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(noun) },
            ];
            Claim {
                kind: ClaimKind::Count,
                span,
                parts,
                negated: false,
                hedged,
                all: false,
                block: self.scope.block,
                key: None,
            }
        };
        let back = |words: &[&str]| (at.saturating_sub(4)..at).rev().find(|place| words.contains(&self.word(*place)));
        let relation = action_relation();
        // NAME has three heads / consists of four muscles
        let noun = lexicon::COUNTED.iter().find(|(noun, _)| *noun == self.written(at + 1)).map(|(noun, _)| *noun);
        let noun = noun.or_else(|| matches!(&*self.written(at + 1), "muscles" | "members").then_some("muscles"));
        if let Some(noun) = noun {
            let verb = back(&["has", "have", "with", "by", "of", "into", "are", "is", "possesses"]);
            let relation_verb = (at.saturating_sub(2)..at)
                .rev()
                .find(|place| matches!(&self.atoms.get(*place).map(|atom| &atom.kind), Some(AtomKind::Relation(_))));
            let Some(verb) = verb.or(relation_verb) else { return Vec::new() };
            let is_parted = matches!(self.word(at + 2), "of");
            if is_parted {
                return Vec::new();
            }
            let (before, negated, _) = self.before_verb(verb);
            if negated {
                return Vec::new();
            }
            let before = if before.checked_sub(1).is_some_and(|place| {
                lexicon::is_done(self.word(place))
                    || matches!(
                        self.word(place),
                        "formed"
                            | "made"
                            | "composed"
                            | "consists"
                            | "comprises"
                            | "up"
                            | "divides"
                            | "splits"
                            | "arises"
                    )
            }) {
                self.before_verb(before - 1).0
            } else {
                before
            };
            let role = RelationWord { left: PartRole::Structure, ..relation };
            return self.subject(before, &role, &[]).into_iter().map(|side| claim(side, noun)).collect();
        }
        // there are four dorsal interossei / each hand has four lumbricals
        if let Some(side) = self.side(at + 1, PartRole::Structure)
            && self.mention(at + 1).is_some_and(|mention| {
                mention.plural
                    || mention.candidates.iter().all(|id| {
                        self.scope.vocabulary.name(*id).ends_with('s') || self.scope.vocabulary.parts(*id).len() > 1
                    })
            })
            && (back(&["are", "has", "have", "were"]).is_some() || at == 0)
        {
            return vec![claim(side, "named")];
        }
        // NAME are four in number
        if self.word(at + 1) == "in"
            && self.word(at + 2) == "number"
            && let Some(verb) = back(&["are", "is"])
        {
            let role = RelationWord { left: PartRole::Structure, ..relation };
            return self
                .subject(self.before_verb(verb).0, &role, &[])
                .into_iter()
                .map(|side| claim(side, "named"))
                .collect();
        }
        Vec::new()
    }

    /// "flexes the elbow", "is a flexor of the elbow", "produces flexion of the elbow", "elbow flexion is produced by"
    fn action_claims(&self, at: usize, movement: &MovementWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        if movement.form == MovementForm::Noun {
            let joints = self.joint_movement_claims(at, movement);
            if !joints.is_empty() {
                return joints;
            }
        }
        let (target, end) = self.moved(at);
        let movement = &self.with_adverb(at, end, movement);
        let muscles = match movement.form {
            MovementForm::Verb => {
                let (before, negated, hedged) = self.before_verb(at);
                let relation = action_relation();
                let before = self.before_coordinated_verbs(before);
                let muscles = self.subject(before, &relation, last_subject);
                if !muscles.is_empty() {
                    (*last_subject).clone_from(&muscles);
                }
                (muscles, negated, hedged)
            }
            MovementForm::Agent | MovementForm::Noun => self.movers(at, end, movement.form, last_subject),
        };
        let (muscles, negated, hedged) = muscles;
        if muscles.len() > 1 && self.atoms.iter().any(|atom| atom.word == "respectively") {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let span = self.source(at, at + 1);
        muscles
            .into_iter()
            .map(|muscle| {
                let whole = self.claim_span(at, muscle.span, target.as_ref().map_or(span, |target| target.span));
                let mut parts = vec![
                    Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                    Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) },
                ];
                if let Some(target) = &target {
                    parts.push(Part { role: PartRole::Joint, span: target.span, what: target.what.clone() });
                }
                Claim {
                    kind: ClaimKind::Action,
                    span: whole,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// "The elbow joint allows flexion", "inversion occurs at the subtalar joint"
    fn joint_movement_claims(&self, at: usize, movement: &MovementWord) -> Vec<Claim> {
        let is_movement =
            |place: usize| matches!(&self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
        let passes = |place: usize| {
            is_movement(place)
                || lexicon::is_conjunction(self.word(place))
                || lexicon::is_determiner(self.word(place))
                || lexicon::is_adverb(self.word(place))
        };
        let mut joints: Vec<Side> = Vec::new();
        let (mut negated, mut hedged) = (false, self.clause_hedged(at));
        if let Some(verb) = (0..at).rev().find(|place| !passes(*place))
            && let Some(AtomKind::Relation(relation)) = self.atoms.get(verb).map(|atom| &atom.kind)
            && relation.kind == ClaimKind::Joint
        {
            let (before, no, may) = self.before_verb(verb);
            (negated, hedged) = (no, hedged || may);
            let role = RelationWord { left: PartRole::Joint, ..action_relation() };
            joints = self.subject(before, &role, &[]);
        } else if let Some(verb) = (at + 1..self.atoms.len()).find(|place| !passes(*place))
            && lexicon::happens(self.word(verb))
        {
            let mut next = verb + 1;
            while next < self.atoms.len()
                && (lexicon::is_adverb(self.word(next))
                    || lexicon::is_determiner(self.word(next))
                    || matches!(self.word(next), "place" | "at" | "in" | "possible" | "only"))
            {
                next += 1;
            }
            joints.extend(self.side(next, PartRole::Joint));
        }
        let span = self.source(at, at + 1);
        joints
            .into_iter()
            .filter(|joint| matches!(&joint.what, What::Entry(ids) if ids.iter().any(|id| self.scope.vocabulary.kind(*id) == Kind::Joint)))
            .map(|joint| {
                let whole = self.claim_span(at, joint.span, joint.span);
                let parts = vec![
                    Part { role: PartRole::Joint, span: joint.span, what: joint.what },
                    Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) },
                ];
                Claim { kind: ClaimKind::Joint, span: whole, parts, negated, hedged, all: false, block: self.scope.block, key: None }
            })
            .collect()
    }

    /// "rotates the arm medially": the adverb behind what is moved belongs to the verb.
    fn with_adverb(&self, at: usize, end: usize, movement: &MovementWord) -> MovementWord {
        let tokens = &self.scope.mentions.tokens;
        let verb = self
            .atoms
            .get(at)
            .and_then(|atom| tokens.get(atom.from))
            .map_or("", |token| token.span.of(&self.scope.plain.text));
        let joined = format!("{verb} {}", self.word(end));
        match self.scope.relations.movement(&joined) {
            Some(found) if movement.form == MovementForm::Verb => MovementWord { movement: found, form: movement.form },
            _ => movement.clone(),
        }
    }

    /// Steps back over verbs that share a subject: "flexes, adducts and medially rotates".
    fn before_coordinated_verbs(&self, end: usize) -> usize {
        let mut at = end;
        while let Some(before) = at.checked_sub(1) {
            let is_verb = matches!(&self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Movement(word)) if word.form == MovementForm::Verb);
            if is_verb
                || lexicon::is_adverb(self.word(before))
                || (lexicon::is_conjunction(self.word(before))
                    && before.checked_sub(1).is_some_and(|place| {
                        matches!(&self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Movement(_)))
                    }))
            {
                at = before;
            } else {
                break;
            }
        }
        at
    }

    /// What a movement word moves: the joint or moved part behind it ("of the elbow", "the elbow") or right before a noun.
    fn moved(&self, at: usize) -> (Option<Side>, usize) {
        let mut next = at + 1;
        while next < self.atoms.len() {
            if let Some(side) = self.side(next, PartRole::Joint) {
                return (Some(side), next + 1);
            }
            let word = self.word(next);
            let is_movement = matches!(&self.atoms.get(next).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
            if is_movement
                || lexicon::is_determiner(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_adverb(word)
                || matches!(word, "of" | "at" | "both" | "it" | "them")
            {
                next += 1;
            } else {
                break;
            }
        }
        if let Some(before) = at.checked_sub(1)
            && let Some(side) = self.side(before, PartRole::Joint)
        {
            return (Some(side), at + 1);
        }
        (None, at + 1)
    }

    /// The muscles that do a movement told by a noun.
    fn movers(&self, at: usize, end: usize, form: MovementForm, last: &[Side]) -> (Vec<Side>, bool, bool) {
        let relation = action_relation();
        // "… is produced by MUSCLE"
        let mut next = end;
        while lexicon::is_auxiliary(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        if form == MovementForm::Noun
            && lexicon::is_done(self.word(next))
            && self.word(next + 1) == "by"
            && let Some(Object::Names(group)) = self.object(next + 2)
        {
            return (self.sides(&group, PartRole::Muscle), false, false);
        }
        // "MUSCLE is the main flexor of", "MUSCLE produces (…) flexion of"
        let (mut place, mut negated, mut hedged, mut found) = (at, false, false, false);
        let mut is_mover = false;
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            negated |= lexicon::is_negation(word);
            hedged |= lexicon::is_hedge(word);
            let is_verb = if form == MovementForm::Agent {
                lexicon::is_auxiliary(word)
            } else {
                lexicon::does(word) || (is_mover && lexicon::is_auxiliary(word))
            };
            is_mover |= matches!(word, "mover" | "movers" | "agent" | "agents" | "muscle" | "muscles");
            let is_joint = self.side(before, PartRole::Joint).is_some();
            let is_movement = matches!(&self.atoms.get(before).map(|atom| &atom.kind), Some(AtomKind::Movement(_)));
            if is_verb {
                found = true;
            } else if !(is_joint
                || is_movement
                || lexicon::is_determiner(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_adverb(word)
                || lexicon::is_negation(word)
                || lexicon::is_hedge(word)
                || matches!(
                    word,
                    "main"
                        | "chief"
                        | "prime"
                        | "powerful"
                        | "strong"
                        | "weak"
                        | "important"
                        | "of"
                        | "at"
                        | "in"
                        | "to"
                        | "with"
                        | "for"
                        | "mover"
                        | "principal"
                        | "primary"
                        | "strongest"
                        | "pure"
                        | "one"
                        | "active"
                ))
            {
                break;
            }
            place = before;
            if found
                && !place.checked_sub(1).is_some_and(|before| {
                    lexicon::is_auxiliary(self.word(before))
                        || lexicon::is_adverb(self.word(before))
                        || lexicon::is_negation(self.word(before))
                        || lexicon::is_hedge(self.word(before))
                        || lexicon::does(self.word(before))
                })
            {
                break;
            }
        }
        if found { (self.subject(place, &relation, last), negated, hedged) } else { (Vec::new(), negated, hedged) }
    }
}

/// What stands on the right of a relation phrase.
enum Object {
    Names(Group),
    Segments(segments::Reading, usize),
}

/// Which end of a muscle a relation phrase speaks of; `None` where it may be either.
fn attachment_end(relation: &RelationWord) -> Option<&'static str> {
    if relation.kind == ClaimKind::Branching || relation.phrase.ends_with(" from") {
        Some("origin")
    } else {
        (relation.phrase.contains("insert")).then_some("insertion")
    }
}

const fn action_relation() -> RelationWord {
    RelationWord {
        phrase: "",
        kind: ClaimKind::Action,
        form: Form::Verb,
        left: PartRole::Muscle,
        right: PartRole::Movement,
        example: "",
    }
}

fn host_has_roots(vocabulary: &Vocabulary, host: &Side) -> bool {
    matches!(&host.what, What::Entry(ids) if ids.iter().all(|id| matches!(vocabulary.kind(*id), Kind::Nerve | Kind::Plexus | Kind::Muscle)))
}

/// Whether an entry can play a role.
pub fn fits(vocabulary: &Vocabulary, role: PartRole, id: EntryId) -> bool {
    let kind = vocabulary.kind(id);
    match role {
        PartRole::Nerve => matches!(kind, Kind::Nerve | Kind::Plexus | Kind::Root),
        PartRole::Parent => matches!(kind, Kind::Nerve | Kind::Plexus | Kind::Root | Kind::Landmark),
        PartRole::Muscle => kind == Kind::Muscle || (kind == Kind::Group && !vocabulary.members(id).is_empty()),
        PartRole::Structure => true,
        PartRole::Joint => kind == Kind::Joint
            || vocabulary
                .entry(id)
                .facts
                .iter()
                .any(|fact| matches!(fact.relation, fascicle_model::Relation::MovedAt { .. }))
            || (kind == Kind::Landmark
                && vocabulary.pointing_at(id).any(
                    |(_, fact)| matches!(fact.relation, fascicle_model::Relation::Acts { target, .. } if target == id),
                )),
        PartRole::Skin => kind == Kind::Skin,
        PartRole::Landmark => matches!(kind, Kind::Landmark | Kind::Muscle),
        PartRole::Group => kind == Kind::Group || (kind == Kind::Muscle && vocabulary.parts(id).len() > 1),
        PartRole::Movement => kind == Kind::Movement,
        PartRole::Segments
        | PartRole::Role
        | PartRole::Modality
        | PartRole::Number
        | PartRole::JointKind
        | PartRole::Sign => false,
    }
}

/// A subject as a side of a claim, as far as it fits the role.
pub fn side_of(vocabulary: &Vocabulary, subject: &Subject, role: PartRole) -> Option<Side> {
    let ids: Vec<EntryId> = subject.candidates.iter().copied().filter(|id| fits(vocabulary, role, *id)).collect();
    (!ids.is_empty()).then(|| Side { what: What::Entry(ids), span: subject.span })
}

/// What a relation claims of its two sides, by what they are: *arises from* speaks of roots, of a parent nerve or of a
/// muscle's origin.
fn kind_of(
    vocabulary: &Vocabulary,
    relation: &RelationWord,
    left: &Side,
    right: &Side,
) -> Option<(ClaimKind, PartRole, PartRole)> {
    let first = |side: &Side| match &side.what {
        What::Entry(ids) => ids.first().map(|id| vocabulary.kind(*id)),
        _ => None,
    };
    let is_neural = |kind: Option<Kind>| matches!(kind, Some(Kind::Nerve | Kind::Plexus | Kind::Root));
    let all_fit = |role: PartRole, side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().any(|id| fits(vocabulary, role, *id)));
    match (&left.what, &right.what) {
        (What::Entry(_), What::Segments(..)) => {
            let speaks_of_roots =
                matches!(relation.kind, ClaimKind::Branching | ClaimKind::Roots) && relation.left != PartRole::Parent;
            let supplied = relation.kind == ClaimKind::Supply && relation.left == PartRole::Muscle;
            let has_roots = is_neural(first(left)) || first(left) == Some(Kind::Muscle);
            (has_roots && (speaks_of_roots || supplied)).then_some((
                ClaimKind::Roots,
                PartRole::Structure,
                PartRole::Segments,
            ))
        }
        (What::Segments(..), What::Entry(_)) => {
            let has_roots = is_neural(first(right)) || first(right) == Some(Kind::Muscle);
            let speaks_of_roots = relation.kind == ClaimKind::Roots
                || (relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve);
            (has_roots && speaks_of_roots).then_some((ClaimKind::Roots, PartRole::Segments, PartRole::Structure))
        }
        (What::Entry(_), What::Entry(_)) => {
            if relation.kind == ClaimKind::Branching
                && relation.right == PartRole::Parent
                && first(left) == Some(Kind::Muscle)
            {
                return (first(right) == Some(Kind::Landmark)).then_some((
                    ClaimKind::Attachment,
                    PartRole::Muscle,
                    PartRole::Landmark,
                ));
            }
            if relation.kind == ClaimKind::Branching
                && relation.left == PartRole::Parent
                && first(right) == Some(Kind::Muscle)
            {
                return None;
            }
            (all_fit(relation.left, left) && all_fit(relation.right, right)).then_some((
                relation.kind,
                relation.left,
                relation.right,
            ))
        }
        _ => None,
    }
}
