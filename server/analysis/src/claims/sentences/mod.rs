//! Claims in sentences.
//!
//! A sentence is a row of [`Atom`]s: names, segments, relation phrases, movements, other words, marks. For each relation
//! phrase its subject is looked for on the left and its object on the right. Both are **groups**: names joined by commas
//! and conjunctions. Whatever is not understood between a phrase and a group ends the attempt: silence is the rule, a
//! claim the exception.
//!
//! The way of a sentence through the files of this folder: [`read`] splits a block into sentences, `atoms` turns each into
//! its row, `assertion` says whether it claims anything and how firmly; then each atom with which a claim can begin is
//! handed to the file that reads its form: `relations` (what a phrase claims by what it joins stands in `kinds`),
//! `brackets`, `areas`, `predicates`, `counts`, `actions`, `everyday`, `unusual` (verbs that no list knows), `fragments`
//! (predicates without their verb) and `gaps` (clauses that leave words out); for the sentence as a whole, `deficits` and
//! `questions`.
//!
//! What no phrase has joined is then read by what a clause names, one file for each kind: `typed` and `supplied` (supply),
//! `territories` (skin), `levels` (roots), `ways` and `passages` (passage), `branches`, `ends` with `end_owners`
//! (attachment), `joints` and `ligaments`, `tallies` (numbers), `belongings` (groups), `fibres` (taste and autonomic fibres).
//!
//! All of these ask `subjects` who does it and `objects` to whom; both find `groups`, and `sides` says which members fit.
//! `values` reads what stands behind a label or in a cell of a table, where no verb is.

mod actions;
mod areas;
mod assertion;
mod atoms;
mod belongings;
mod brackets;
mod branches;
mod counts;
mod deficits;
mod described;
mod end_owners;
mod ends;
mod everyday;
mod fibres;
mod fragments;
mod gaps;
mod groups;
mod joints;
mod kinds;
mod lesions;
mod levels;
mod ligaments;
mod members;
mod objects;
mod passages;
mod predicates;
mod questions;
mod relations;
mod sides;
mod signs;
mod subjects;
mod supplied;
mod tallies;
mod territories;
mod typed;
mod unusual;
mod values;
mod ways;

use fascicle_model::{EntryId, Kind, Vocabulary};

use self::atoms::{Atom, AtomKind, atoms};
use self::objects::Object;
use crate::blocks::BlockIx;
use crate::claims::phrases::Relations;
use crate::claims::{Claim, ClaimKind, Part};
use crate::knowledge::Knowledge;
use crate::lexicon::{self, Form, RelationWord};
use crate::mentions::Mentions;
use crate::names::NameIndex;
use crate::text::{Plain, Span};

pub use self::kinds::passer_role;
pub use self::sides::{Side, side_of};
pub use self::values::{effects, movement_values, values};

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
    /// It speaks of vessels, so that "the radial" need not be a nerve.
    pub of_vessels: bool,
    /// What it stands under speaks of lesions, so that what is lost is lost with the nerve that it stands under.
    pub of_lesions: bool,
    /// What it stands under speaks of skin, so that an area alone is what the subject feels.
    pub of_skin: bool,
    /// Where a verdict on what it states ends in the visible text; what stands behind it is a sentence of its own.
    pub end_of_key: Option<usize>,
}

impl<'a> Scope<'a> {
    /// The scope of a block's text and mentions that stands under nothing.
    pub fn new(knowledge: &'a Knowledge, plain: &'a Plain, mentions: &'a Mentions, block: BlockIx) -> Self {
        Self {
            vocabulary: &knowledge.vocabulary,
            names: &knowledge.names,
            relations: &knowledge.relations,
            plain,
            mentions,
            block,
            subjects: &[],
            of_vessels: false,
            of_lesions: false,
            of_skin: false,
            end_of_key: None,
        }
    }

    /// The same below what sets its subjects.
    pub fn under(self, subjects: &'a [Subject]) -> Self {
        Self { subjects, ..self }
    }
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
#[allow(clippy::struct_excessive_bools)] // each says one thing of the sentence before
#[derive(Clone, Debug, Default)]
pub struct Memory {
    /// The subject of the sentence before.
    subject: Vec<Subject>,
    /// All names of the sentence before, in order.
    named: Vec<Subject>,
    /// What the last clause of the sentence before claims.
    told: Vec<Claim>,
    /// What the sentence before asks.
    asked: Option<questions::Asked>,
    /// The nerves of the lesion of which the sentence before speaks.
    lesion: Vec<Side>,
    /// The landmark at which that lesion sits.
    lesion_at: Option<Side>,
    /// It was said where along the nerve that lesion sits, or that it is a part of it.
    lesion_of_part: bool,
    /// What somebody is said to have lost, where no lesion was told.
    effects: Vec<deficits::Effect>,
    /// The sentence before is a question.
    asks: bool,
    /// What is spoken of, where a pronoun stands for none of the names.
    topic: Topic,
    /// What a pronoun may stand for that nothing else explains: the names of the last sentence of the block before that
    /// had a subject of its own.
    before: Vec<Subject>,
}

/// What a text speaks of that is no structure of which claims are made.
#[derive(Clone, Copy, Debug, Default)]
struct Topic {
    /// Something that the vocabulary does not name.
    is_unknown: bool,
    /// A vessel.
    is_vessel: bool,
}

impl Memory {
    /// What carries over from one block to the next beside it.
    pub fn of_block_before(self) -> Self {
        let before = if self.subject.is_empty() { self.before } else { self.named };
        Self { before, ..Self::default() }
    }
}

/// What stands before the subject of a sentence, up to its comma, has no more atoms.
const LONGEST_FRONT: usize = 10;

/// A structure that the vocabulary does not name has no more words, with its article.
const LONGEST_UNKNOWN: usize = 7;

/// Reads the claims in the sentences of a block from a token on.
pub fn read(scope: &Scope<'_>, from: usize, memory: &mut Memory) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    // Where each sentence begins and ends, and whether a key behind it takes it back.
    let mut sentences: Vec<(usize, usize, bool)> = Vec::new();
    let mut start = from;
    for at in from..tokens.len() {
        if at >= start && ends_sentence(scope, at) {
            let key = keyed_false(scope, at + 1);
            sentences.push((start, at + 1, key.is_some()));
            start = key.unwrap_or(at + 1);
        }
    }
    if start < tokens.len() {
        sentences.push((start, tokens.len(), false));
    }
    let mut claims = Vec::new();
    let mut next = sentences.iter().skip(1);
    for (from, to, is_false) in &sentences {
        let own = read_sentence(scope, *from, *to, memory);
        // "The ulnar nerve supplies deltoid. Right or wrong?"
        if !next.next().is_some_and(|(from, to, _)| asks_to_judge(scope, *from, *to)) && !is_false {
            claims.extend(own);
        }
    }
    claims
}

/// "… . (F)": where the text goes on behind a key that takes back the sentence before it.
fn keyed_false(scope: &Scope<'_>, at: usize) -> Option<usize> {
    let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let is_key = matches!(word(at), "(" | "[")
        && matches!(word(at + 2), ")" | "]")
        && (word(at + 1) == "F" || lexicon::is_false(&word(at + 1).to_lowercase()) && word(at + 1).len() > 1);
    (is_key && scope.end_of_key.is_none()).then_some(at + 3)
}

/// Whether a sentence does nothing but ask whether the one before it is so.
fn asks_to_judge(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    let tokens = scope.mentions.tokens.get(from..to).unwrap_or_default();
    let (Some(first), Some(last)) = (tokens.first(), tokens.last()) else { return false };
    let text = Span::new(first.span.start, last.span.end).of(&scope.plain.text);
    tokens.len() < LONGEST_VERDICT
        && text.ends_with('?')
        && lexicon::FRAMES.contains(&&*text.trim_end_matches(['?', ' ']).to_lowercase())
}

/// A sentence that asks whether the one before it is so has fewer tokens.
const LONGEST_VERDICT: usize = 7;

/// Whether a sentence ends with a token.
fn ends_sentence(scope: &Scope<'_>, at: usize) -> bool {
    let text = &scope.plain.text;
    let tokens = &scope.mentions.tokens;
    let Some(token) = tokens.get(at) else { return false };
    if scope.end_of_key == Some(token.span.end) {
        return true;
    }
    let next = tokens.get(at + 1);
    let gap = next.map_or("\n", |next| Span::new(token.span.end, next.span.start).of(text));
    if gap.contains('\n') && scope.plain.to_source(Span::new(token.span.end, token.span.end + 1)).len() != 1 {
        return true; // a hard line break
    }
    let is_line_end = || next.is_some_and(|next| scope.plain.is_line_break(Span::new(token.span.end, next.span.start)));
    // A list that is none of Markdown, too.
    let begins_item = || next.is_some_and(|next| matches!(next.span.of(text), "•" | "◦" | "▪" | "●"));
    if (begins_labelled(scope, at + 1) || begins_item()) && is_line_end() {
        return true;
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
            let known = lexicon::is_abbreviation(&before.to_lowercase());
            let capital = next.span.of(text).chars().next().is_some_and(|c| !c.is_lowercase());
            capital && !short && !known
        }
        _ => false,
    }
}

/// How many words a label has at the most.
const LONGEST_LABEL: usize = 4;

/// Whether a name stands at a token with a colon or dash behind it, or another label with a colon: so a line of notes begins
/// that stands for itself ("Tibial: behind …").
fn begins_labelled(scope: &Scope<'_>, at: usize) -> bool {
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let named = scope.mentions.list.iter().find(|mention| mention.tokens.0 == at);
    let is_named = named.is_some_and(|mention| matches!(token(mention.tokens.1), ":" | "—" | "–" | "-"));
    let words = (at..at + LONGEST_LABEL).take_while(|at| token(*at).chars().all(char::is_alphabetic)).count();
    token(at).starts_with(char::is_uppercase) && (is_named || (words > 0 && token(at + words) == ":"))
}

fn read_sentence(scope: &Scope<'_>, from: usize, to: usize, memory: &mut Memory) -> Vec<Claim> {
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    if token(from).bytes().all(|c| c.is_ascii_digit()) && token(from + 1) == ":" {
        // "10: it is …": an answer of its own
        *memory = Memory::default();
    }
    let mut atoms = atoms(scope, from, to);
    fragments::add_copula(scope, &mut atoms);
    let sentence = Sentence { scope, atoms: &atoms, memory };
    let cause = sentence.cause();
    let (mut claims, told) =
        if sentence.asserts() && !sentence.is_conditional() { sentence.claims() } else { Default::default() };
    if sentence.asserts() {
        if claims.is_empty()
            && let Some(asked) = &memory.asked
        {
            claims = sentence.answers(asked);
        }
        let mut lost = sentence.deficits(cause.as_ref());
        if cause.is_none() {
            lost.extend(sentence.deficits_by_clause());
        }
        // "A lesion of NERVE numbs the sole" is read as what it feels as well.
        let is_told = |lost: &Claim| {
            let is_same = |part: &Part| lost.parts.iter().any(|own| own.role == part.role && own.what == part.what);
            claims.iter().any(|known| known.kind == ClaimKind::Skin && known.parts.iter().all(is_same))
        };
        lost.retain(|claim| !is_told(claim));
        claims.extend(lost);
        if claims.is_empty() {
            claims = sentence.area_of_subject();
        }
    }
    let asked = sentence.asked();
    let effects = if sentence.asserts() { sentence.effects_of_case(cause.as_ref()) } else { Vec::new() };
    let asks = sentence.atoms.last().is_some_and(|atom| atom.word == "?");
    // What somebody is said to do or not to do, where no other nerve is named, leaves the lesion what it was.
    let names_nerve = (0..sentence.atoms.len()).any(|at| sentence.class(at) == Some(0));
    let keeps_lesion = cause.is_none() && !names_nerve && sentence.atoms.iter().any(|a| lexicon::is_person(&a.word));
    let lesion_of_part = cause.as_ref().is_some_and(|cause| cause.is_partial || sentence.tells_a_level(cause));
    let (subject, named, goes_on) = (sentence.main_subject(), sentence.named(), sentence.takes_up_subject());
    let is_of_others = sentence.tells_branch_only() || sentence.lists_unlike();
    let (subject, named) = if is_of_others { Default::default() } else { (subject, named) };
    let pointed_at = sentence.points_above();
    let sentence_of_part = !subject.is_empty() && sentence.speaks_of_part();
    let is_unknown = (memory.topic.is_unknown && (subject.is_empty() || sentence.takes_up_subject()))
        || (subject.is_empty() && sentence.speaks_of_unknown());
    let defined = sentence.defines_above();
    let keeps_topic = sentence.speaks_of_vessel_before();
    let is_vessel = if sentence.takes_up_subject() { memory.topic.is_vessel } else { sentence.begins_with_vessel() };
    memory.topic = Topic { is_unknown, is_vessel };
    memory.told = told;
    memory.asked = asked;
    if !keeps_lesion {
        let (lesion, at) = cause.map(|cause| (cause.nerves, cause.level)).unwrap_or_default();
        (memory.lesion, memory.lesion_at, memory.lesion_of_part) = (lesion, at, lesion_of_part);
    }
    if !memory.lesion.is_empty() {
        memory.effects.clear();
    }
    memory.effects.extend(effects);
    memory.asks = asks;
    let is_of = |subject: &Subject| claims.iter().flat_map(|claim| &claim.parts).any(|part| part.span == subject.span);
    // "Saphenous nerve. Longest branch of the femoral nerve.": the name of which it speaks without naming it.
    let mut unnamed = memory.named.iter().chain(scope.subjects);
    let spoken_of = unnamed.find(|subject| memory.subject.is_empty() && is_of(subject)).cloned();
    memory.subject.extend(spoken_of.filter(|_| subject.is_empty()));
    // What it says of the subject of the sentence before, leaves that the subject.
    let goes_on = goes_on || memory.subject.iter().any(is_of);
    if is_unknown {
        memory.subject.clear();
        memory.named = named;
    } else if !named.is_empty() {
        let told_of = scope.subjects.iter().find(|subject| is_of(subject));
        if let Some(owner) = told_of.filter(|_| subject.is_empty() && memory.subject.is_empty()) {
            // "A branch of the facial nerve that …", said of what stands above: that is what it goes on with.
            memory.subject = vec![owner.clone()];
        } else if subject.is_empty() && defined.is_some() {
            memory.subject = defined.into_iter().collect();
        } else if sentence_of_part {
            // "Its deep branch supplies …": what is spoken of is still whose branch it is.
            if memory.subject.is_empty() {
                memory.subject = scope.subjects.first().cloned().map_or(subject, |owner| vec![owner]);
            }
        } else if !subject.is_empty() {
            // "The artery runs here. The nerve is on *its* lateral side.": either may be spoken of next.
            memory.subject.retain(|known| keeps_topic && !subject.contains(known));
            memory.subject.extend(subject);
        } else if memory.subject.is_empty() && pointed_at.is_some() {
            // "This nerve …", where only what stands above says which.
            memory.subject = pointed_at.into_iter().collect();
        } else if !goes_on && named.iter().any(|subject| is_spoken_of(scope.vocabulary, subject)) {
            memory.subject.clear();
        } else if memory.subject.is_empty() && memory.named.len() == 1 {
            memory.subject.clone_from(&memory.named);
        }
        memory.named = named;
    }
    claims
}

/// Whether a name is one of what statements are about: a nerve or a muscle. A bone or an area that is named in passing is not.
fn is_spoken_of(vocabulary: &Vocabulary, subject: &Subject) -> bool {
    let is_of_kind = |id: &EntryId| !matches!(vocabulary.kind(*id), Kind::Landmark | Kind::Joint | Kind::Skin);
    subject.candidates.iter().any(is_of_kind)
}

/// Whether a stretch of a block is read as a sentence: it has a verb that claims something.
pub fn is_sentence(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    let atoms = atoms(scope, from, to);
    Sentence { scope, atoms: &atoms, memory: &Memory::default() }.has_verb()
}

#[derive(Clone, Copy)]
struct Sentence<'a, 's> {
    scope: &'a Scope<'s>,
    atoms: &'a [Atom],
    memory: &'a Memory,
}

impl Sentence<'_, '_> {
    /// The claims of the sentence, and those of its last clause.
    fn claims(&self) -> (Vec<Claim>, Vec<Claim>) {
        let mut claims = Vec::new();
        let mut last_subject: Vec<Side> = Vec::new();
        let mut told: Vec<Claim> = self.memory.told.clone();
        let (mut begun, mut read) = (0, 0);
        for at in 0..=self.atoms.len() {
            if at == self.atoms.len() || supplied::ends_stretch(self.word(at)) {
                if claims.len() == read {
                    let unread = self.unread_supply(begun, at);
                    if !unread.is_empty() {
                        let echoes = (begun..at).filter(|place| self.may_take_up(*place));
                        let echoed: Vec<Claim> = echoes.flat_map(|place| self.echo_claims(place, &unread)).collect();
                        told.clone_from(&unread);
                        claims.extend(unread);
                        claims.extend(echoed);
                    }
                }
                (begun, read) = (at + 1, claims.len());
            }
            if self.is_struck(at) {
                continue;
            }
            let mut found = self.claims_at(at, &mut last_subject);
            if found.is_empty() && (self.word(at) == "same" || self.written(at).starts_with("share")) {
                found = self.same_nerve_claims(at);
            }
            if found.is_empty() {
                claims.extend(self.exception_claims(at, &told));
            }
            if found.is_empty() && self.may_take_up(at) {
                found = self.gap_claims(self.before_determiners(at), &told);
                if found.is_empty() {
                    found = self.echo_claims(at, &told);
                }
            }
            if !found.is_empty() {
                told.clone_from(&found);
                claims.extend(found);
            }
        }
        let by_types = [self.felt_by_types(&claims), self.rooted_by_types(&claims)];
        claims.extend(by_types.into_iter().flatten());
        let ends = self.end_claims(&claims);
        if !ends.is_empty() {
            told.clone_from(&ends);
            claims.extend(ends);
        }
        claims.extend(self.ligament_claims());
        // "Elbow extension tests C7" is told of the segment before it is told of the joint.
        if claims.is_empty() {
            claims = self.levels_of_movements();
        }
        if claims.iter().all(|claim| claim.kind != ClaimKind::Roots) {
            let of_joints = self.typed_joint_claims(&claims);
            claims.extend(of_joints);
        }
        let belongings = self.typed_member_claims(&claims);
        claims.extend(belongings);
        if claims.is_empty() {
            claims = self.kind_of_implied();
        }
        let branches = self.branch_claims(&claims);
        claims.extend(branches.iter().cloned());
        let ways = self.way_claims(&claims);
        claims.extend(ways.iter().cloned());
        let same = self.same_way_claims(&claims);
        claims.extend(same.iter().cloned());
        if let Some(last) = [same, ways, branches].into_iter().find(|list| !list.is_empty()) {
            told = last;
        }
        if claims.is_empty() {
            told.clear();
        }
        (claims, told)
    }

    /// The claims that begin with an atom.
    fn claims_at(&self, at: usize, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        match &self.atoms.get(at).map(|atom| &atom.kind) {
            // "Division of the nerve means that the patient cannot …": cut it is, and no branch.
            Some(AtomKind::Relation(relation)) if relation.kind == ClaimKind::Branching && self.is_cutting(at) => {
                Vec::new()
            }
            Some(AtomKind::Relation(relation)) => match relation.form {
                Form::Noun => self.noun_claims(at, relation),
                Form::Verb | Form::Participle => {
                    let mut claims = self.verb_claims(at, relation, last_subject);
                    if claims.is_empty() && relation.kind == ClaimKind::Supply {
                        claims = self.described_supply(at, relation, last_subject);
                    }
                    let is_empty = claims.is_empty() && lexicon::ways::manner(self.first_token(at)).is_some();
                    if is_empty { self.everyday_claims(at, last_subject) } else { claims }
                }
            },
            Some(AtomKind::Movement(movement)) => self.action_claims(at, movement, last_subject),
            Some(AtomKind::Name(_)) => {
                let mut claims = self.bracket_claims(at);
                claims.extend(self.apposed_members(at));
                claims
            }
            Some(AtomKind::Word) if matches!(self.word(at), "is" | "are" | "remains" | "being") => {
                let mut claims = self.predicate_claims(at);
                claims.extend(self.adjective_claims(at));
                claims.extend(self.told_number_claims(at));
                claims.extend(self.named_for_muscle(at));
                claims.extend(self.muscle_of_nerve(at));
                claims
            }
            Some(AtomKind::Word) if lexicon::ways::manner(self.word(at)).is_some() => {
                self.everyday_claims(at, last_subject)
            }
            Some(AtomKind::Word) if lexicon::ways::manner_done(self.word(at)).is_some() => self.everyday_passive(at),
            Some(AtomKind::Word) if lexicon::count(self.word(at)).is_some() => self.count_claims(at),
            Some(AtomKind::Word) if matches!(self.word(at), "that's" | "it's" | "they're" | "was") => {
                self.adjective_claims(at)
            }
            Some(AtomKind::Word) if lexicon::carried(self.word(at)).is_some() => self.carried_claims(at),
            Some(AtomKind::Word) if self.word(at) == "no" => {
                let claims = self.lacking_claims(at);
                if claims.is_empty() { self.noun_of_implied(at) } else { claims }
            }
            Some(AtomKind::Word) if lexicon::MODALITIES.iter().any(|(word, _)| *word == self.word(at)) => {
                self.fibre_claims(at)
            }
            Some(AtomKind::Word)
                if lexicon::tells_source(self.word(at))
                    || lexicon::tells_way(self.word(at))
                    || lexicon::tells_place(self.word(at)) =>
            {
                let claims = self.unusual_claims(at, last_subject);
                if claims.is_empty() && lexicon::tells_way(self.word(at)) { self.inverted_passage(at) } else { claims }
            }
            Some(AtomKind::Word) => self.noun_of_implied(at),
            _ => Vec::new(),
        }
    }

    /// The first of the articles and the like that stand right before an atom.
    fn before_determiners(&self, at: usize) -> usize {
        let mut first = at;
        while first.checked_sub(1).is_some_and(|place| {
            let word = self.word(place);
            lexicon::is_determiner(word) || lexicon::means_all(word) || lexicon::is_muscle_noun(word)
        }) {
            first -= 1;
        }
        first
    }

    /// Whether the sentence speaks on of what the sentence before speaks of: its subject is a pronoun.
    fn takes_up_subject(&self) -> bool {
        let starts =
            self.atoms.first().is_some_and(|atom| lexicon::is_pronoun(&atom.word) || lexicon::is_relative(&atom.word));
        let points_back = lexicon::points_back(self.word(0)) && lexicon::is_kind_noun(self.word(1));
        starts
            || points_back
            || (0..self.atoms.len())
                .any(|at| matches!(self.word(at), "it" | "they") && at > 0 && self.begins_predicate(at + 1))
    }

    /// "This nerve …": the nerve, or muscle, right above that is meant where no sentence before has named one.
    fn points_above(&self) -> Option<Subject> {
        let points = lexicon::points_back(self.word(0));
        let is_fit = |subject: &&Subject| {
            let all = |is: &dyn Fn(&EntryId) -> bool| subject.candidates.iter().all(is);
            match self.word(1) {
                "nerve" => all(&|id| self.scope.vocabulary.is_neural(*id)),
                "muscle" => all(&|id| self.scope.vocabulary.kind(*id) == Kind::Muscle),
                _ => false,
            }
        };
        self.scope.subjects.first().filter(is_fit).filter(|_| points).cloned()
    }

    /// Whether a vessel of which the sentence before speaks is meant in it by a pronoun, beside a subject of its own.
    fn speaks_of_vessel_before(&self) -> bool {
        let is_vessel = |subject: &Subject| {
            let class = |id: &EntryId| self.scope.vocabulary.entry(*id).class.as_deref();
            subject.candidates.iter().all(|id| class(id) == Some("vessel"))
        };
        let first = (0..self.atoms.len()).find(|at| self.mention(*at).is_some()).unwrap_or(self.atoms.len());
        let is_meant = (first..self.atoms.len()).any(|at| matches!(self.word(at), "it" | "its"));
        is_meant && !self.memory.subject.is_empty() && self.memory.subject.iter().all(is_vessel)
    }

    /// "Tibial nerve, popliteal vein, popliteal artery.": a list of unlike things, none of which is what is spoken of.
    fn lists_unlike(&self) -> bool {
        let Some(group) = self.main_group().filter(|_| !self.has_verb()) else { return false };
        let mut next = group.end;
        while lexicon::is_conjunction(self.word(next)) || lexicon::is_determiner(self.word(next)) {
            next += 1;
        }
        next > group.end && self.mention(next).is_some()
    }

    /// Whether it speaks of a structure that has no name in the vocabulary: "The greater palatine *artery* descends",
    /// "The *cleidomastoideus* is".
    fn speaks_of_unknown(&self) -> bool {
        // "A little above the wrist, the …"
        let is_article = |at: usize| matches!(self.word(at), "the" | "a" | "an");
        let fronted = (0..self.atoms.len().min(LONGEST_FRONT)).find(|at| self.word(*at) == ",").map(|comma| comma + 1);
        let Some(start) = [Some(0), fronted].into_iter().flatten().find(|at| is_article(*at)) else { return false };
        let is_plain = |at: &usize| {
            let word = self.word(*at);
            // "superficial" is a preposition before "to" only
            let is_preposition =
                lexicon::is_preposition(word) && (lexicon::contrast_of(word).is_none() || self.word(at + 1) == "to");
            word.starts_with(char::is_alphabetic) && !is_preposition && !self.begins_predicate(*at)
        };
        let is_latin =
            |noun: &str| noun.len() > 7 && ["eus", "alis", "aris", "icus"].iter().any(|ending| noun.ends_with(ending));
        let mut words = (start + 1..self.atoms.len().min(start + LONGEST_UNKNOWN)).take_while(is_plain);
        let noun = words.find(|at| {
            let word = self.word(*at);
            // "the superficial palmar *branch* arises"; what "the longest branch *is*" is told right behind it.
            let is_branch = matches!(word, "branch" | "twig") && !lexicon::is_auxiliary(self.word(at + 1));
            (*at == start + 1 && (is_latin(word) || matches!(word, "ganglion" | "artery" | "vein" | "duct")))
                || (*at > start + 1 && (is_branch || lexicon::is_other_structure(word)))
        });
        // "The *infraorbital* is": a nerve by its adjective, or the artery beside it.
        let is_bare = start == 0 && self.bare_nerve(1).is_some_and(|(_, end)| self.begins_predicate(end));
        is_bare
            || noun.is_some_and(|noun| {
                let next = noun + 1;
                let is_verb =
                    matches!(self.atoms.get(next).map(|atom| &atom.kind), Some(AtomKind::Word | AtomKind::Relation(_)));
                is_verb && !lexicon::is_preposition(self.word(next)) && !lexicon::is_conjunction(self.word(next))
            })
    }

    /// "A muscle between A and B …" below the name of a muscle: what stands above is defined.
    fn defines_above(&self) -> Option<Subject> {
        let (copula, first) = (self.atoms.first()?, self.atoms.get(1)?);
        let is_fragment = copula.word == "is" && copula.from == first.from;
        let above = self.scope.subjects.first().filter(|_| is_fragment)?;
        let all = |is: &dyn Fn(&EntryId) -> bool| above.candidates.iter().all(is);
        let kind = (2..5).find_map(|at| match self.word(at) {
            "muscle" => Some(all(&|id| self.scope.vocabulary.kind(*id) == Kind::Muscle)),
            "nerve" => Some(all(&|id| self.scope.vocabulary.is_neural(*id))),
            _ => None,
        });
        kind.filter(|fits| *fits).map(|_| above.clone())
    }

    /// Whether its subject is a nerve that a possessive says to be of another: "*its* deep branch".
    fn speaks_of_part(&self) -> bool {
        let group = self.main_group();
        let first = group.and_then(|group| group.members.first().copied());
        first.is_some_and(|first| {
            self.class(first) == Some(0) && (0..first).any(|place| matches!(self.word(place), "its" | "their"))
        })
    }

    /// Whether it begins with a vessel: "The radial artery lies …".
    fn begins_with_vessel(&self) -> bool {
        let is_vessel = |at: usize| {
            lexicon::is_vessel(self.word(at))
                || self.mention(at).is_some_and(|mention| {
                    let class = |id: &EntryId| self.scope.vocabulary.entry(*id).class.as_deref();
                    mention.candidates.iter().all(|id| class(id) == Some("vessel"))
                })
        };
        let first =
            (0..self.atoms.len()).find(|at| self.class(*at).is_some() || is_vessel(*at) || self.begins_predicate(*at));
        first.is_some_and(is_vessel)
    }

    fn named(&self) -> Vec<Subject> {
        (0..self.atoms.len()).filter_map(|at| self.subject_at(at)).collect()
    }
}
