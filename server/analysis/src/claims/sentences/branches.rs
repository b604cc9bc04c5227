//! What comes off a nerve, where the words that tell it stand apart from the names that they join: "N is *its longest branch*",
//! "*its branches* in the neck include A and B", "N is *one of them*", "P, while still in the canal, *gives off* N", "P *has*
//! an anterior and a posterior division".

use fascicle_model::EntryId;

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::groups::Group;
use super::objects::Object;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, PartRole};
use crate::lexicon::{self, Form, RelationWord};

/// How many adjectives may stand between a possessive and its noun.
const ADJECTIVES: usize = 5;

/// How many atoms may stand between a noun or verb and the names that belong to it.
const REACH: usize = 10;

/// How many verbs are gone back over to find of whom one is said.
const VERBS: usize = 6;

impl Sentence<'_, '_> {
    /// What the sentence tells of branches that is not among the claims read so far.
    pub(super) fn branch_claims(&self, claims: &[Claim]) -> Vec<Claim> {
        let is_told = |at: usize| {
            let span = self.source(at, at + 1);
            let tells =
                |claim: &Claim| matches!(claim.kind, ClaimKind::Branching | ClaimKind::Renaming | ClaimKind::Roots);
            claims.iter().any(|claim| tells(claim) && claim.span.contains(span))
        };
        let mut found: Vec<Claim> = Vec::new();
        for at in 0..self.atoms.len() {
            if self.is_struck(at) || is_told(at) {
                continue;
            }
            let own = match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Word) => match self.word(at) {
                    "its" | "their" => self.owned_branches(at),
                    "them" | "these" => self.one_of_them(at, claims),
                    "has" | "have" | "possesses" | "possess" => self.had_branches(at),
                    "from" => self.labelled_source(at),
                    _ => Vec::new(),
                },
                Some(AtomKind::Relation(relation)) => self.far_branches(at, relation),
                _ => Vec::new(),
            };
            found.extend(own);
        }
        found
    }

    /// "N is its longest branch", "its branches are A and B", "its first branch, N, …": of whom the possessive at an atom is.
    fn owned_branches(&self, at: usize) -> Vec<Claim> {
        let is_noun = |place: &usize| lexicon::is_branch_noun(self.word(*place));
        let Some(noun) = (at + 1..(at + 2 + ADJECTIVES).min(self.atoms.len())).find(is_noun) else { return Vec::new() };
        let is_plain = |place: usize| {
            let word = self.word(place);
            !word.is_empty() && word.chars().all(char::is_alphabetic) && !lexicon::is_auxiliary(word)
        };
        if !(at + 1..noun).all(is_plain) || matches!(self.word(noun + 1), "to" | "of" | "from") {
            return Vec::new();
        }
        let before = self.named_before_copula(at);
        let children = before.clone().or_else(|| self.named_behind_noun(noun));
        let Some(children) = children else { return Vec::new() };
        let first = children.members.first().copied().unwrap_or(at);
        let plural = self.word(at) == "their";
        let owner = if before.is_some() {
            // "P does this, and N is its longest branch": whose it is stands before N.
            let own = self.main_group().filter(|group| group.end < first);
            let sides = own.map(|group| self.sides(&group, PartRole::Nerve)).unwrap_or_default();
            if sides.is_empty() { self.recalled(PartRole::Nerve, plural) } else { sides }
        } else {
            self.possessor(at, PartRole::Nerve, plural)
        };
        self.branches_of(&owner, &children, at)
    }

    /// The nerves that are said to be what the words behind an atom tell: "A and B are also two of *its* …".
    fn named_before_copula(&self, at: usize) -> Option<Group> {
        let mut place = at.checked_sub(1)?;
        let mut steps = 0;
        while lexicon::is_before_branch(self.word(place)) || lexicon::is_adverb(self.word(place)) {
            place = place.checked_sub(1)?;
            steps += 1;
            if steps > ADJECTIVES {
                return None;
            }
        }
        if self.word(place) == "," {
            // "N, the larger of its branches"
            return self.nerves_to(place);
        }
        let is_copula = |word: &str| matches!(word, "is" | "are" | "was" | "were" | "being" | "remains" | "remain");
        // "is one of" is a phrase of its own.
        let is_phrase =
            self.word(place).is_empty() && self.class(place).is_none() && is_copula(self.first_token(place));
        if !is_copula(self.word(place)) && !is_phrase {
            return None;
        }
        let (before, negated, _) = self.before_verb(place);
        if negated { None } else { self.nerves_to(before) }
    }

    fn nerves_to(&self, end: usize) -> Option<Group> {
        let group = self.group_to(end)?;
        let first = group.members.first().copied()?;
        let is_nerve = group.members.iter().all(|member| self.class(*member) == Some(0));
        (is_nerve && !group.denied && !self.is_governed(first)).then_some(group)
    }

    /// The nerves that are named behind a noun for branches: after a verb that joins them, or between commas.
    fn named_behind_noun(&self, noun: usize) -> Option<Group> {
        let is_list = |at: usize| {
            let group = self.group_from(at, true)?;
            (self.class(at) == Some(0) && !group.denied).then_some(group)
        };
        let mut next = noun + 1;
        if self.word(next) == "," {
            let name = self.behind_articles(next + 1);
            let group = is_list(name)?;
            return (self.word(group.end) == "," || self.ends_clause(group.end)).then_some(group);
        }
        let end = (noun + REACH).min(self.atoms.len());
        while next < end {
            let word = if self.class(next).is_some() { "" } else { self.first_token(next) };
            if lexicon::joins_branches(word) {
                let name = self.behind_articles(next + 1);
                return is_list(name).filter(|group| !self.begins_predicate(group.end));
            }
            let is_passed = match self.atoms.get(next).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) => matches!(self.class(next), Some(2..=5)),
                Some(AtomKind::Word) => {
                    lexicon::is_preposition(word)
                        || lexicon::is_determiner(word)
                        || lexicon::is_adverb(word)
                        || word.chars().all(char::is_alphabetic) && lexicon::is_preposition(self.word(next - 1))
                        || lexicon::is_determiner(self.word(next - 1))
                }
                _ => false,
            };
            if !is_passed || lexicon::is_relative(word) {
                return None;
            }
            next += 1;
        }
        None
    }

    /// The atom behind the articles, numbers and nouns for nerves that stand before a list.
    fn behind_articles(&self, from: usize) -> usize {
        let mut at = from;
        while lexicon::is_determiner(self.word(at))
            || lexicon::is_muscle_noun(self.word(at))
            || lexicon::is_adverb(self.word(at))
            || (self.word(at) == ":" && at > from)
        {
            at += 1;
        }
        at
    }

    /// "N is one of them", where what was told before were branches.
    fn one_of_them(&self, at: usize, claims: &[Claim]) -> Vec<Claim> {
        let of = at.checked_sub(1).filter(|place| self.word(*place) == "of");
        let Some(children) = of.and_then(|place| self.named_before_copula(place + 1)) else { return Vec::new() };
        let told = claims.iter().rev().chain(self.memory.told.iter().rev());
        let Some(model) = told.into_iter().find(|claim| claim.kind == ClaimKind::Branching && !claim.negated) else {
            // "five branches on the face; N is one of them": those of what the text speaks of
            let first = children.members.first().copied().unwrap_or(at);
            let noun = (0..first).find(|place| matches!(self.word(*place), "branches" | "twigs" | "offshoots"));
            let is_own = noun.is_some_and(|noun| {
                !matches!(self.word(noun + 1), "of" | "from" | "to")
                    && (0..first).all(|place| self.class(place) != Some(0))
            });
            let owner = if is_own { self.recalled(PartRole::Nerve, false) } else { Vec::new() };
            return self.branches_of(&owner, &children, at);
        };
        let owner = model.part(PartRole::Parent).map(|part| Side { what: part.what.clone(), span: part.span });
        self.branches_of(&owner.into_iter().collect::<Vec<_>>(), &children, at)
    }

    /// "Anterior interosseous: from P": what stands behind the colon is where the nerve before it comes from.
    fn labelled_source(&self, at: usize) -> Vec<Claim> {
        let Some(colon) = at.checked_sub(1).filter(|place| matches!(self.word(*place), ":" | "—" | "–")) else {
            return Vec::new();
        };
        let child = self.labelling(colon).map(|side| vec![side]);
        let child = child.or_else(|| {
            let group = self.nerves_to(colon)?;
            Some(self.sides(&group, PartRole::Nerve))
        });
        let (Some(child), Some(Object::Names(parent))) = (child, self.object(at + 1)) else { return Vec::new() };
        let [child] = child.as_slice() else { return Vec::new() };
        let is_neural = parent.members.iter().all(|member| self.class(*member) == Some(0));
        if !is_neural
            || parent.members.len() > 1
            || !(self.ends_clause(parent.end) || lexicon::is_preposition(self.word(parent.end)))
        {
            return Vec::new();
        }
        let (left, right) = (PartRole::Nerve, PartRole::Parent);
        let relation = RelationWord { kind: ClaimKind::Branching, form: Form::Verb, left, right, ..action_relation() };
        self.combine(
            &relation,
            std::slice::from_ref(child),
            &Object::Names(parent),
            at,
            false,
            self.clause_hedged(at),
            false,
        )
    }

    /// "P has an anterior and a posterior division": what is named as a branch or division.
    fn had_branches(&self, at: usize) -> Vec<Claim> {
        let (before, negated, _) = self.before_verb(at);
        let name = self.behind_articles(at + 1);
        let Some(children) = self.group_from(name, true).filter(|_| !negated && self.class(name) == Some(0)) else {
            return Vec::new();
        };
        let last = children.members.last().copied().unwrap_or(name);
        let written = self.written(last);
        if !written.rsplit(' ').next().is_some_and(lexicon::is_branch_noun) {
            return Vec::new();
        }
        let owner = self.goer(before, VERBS);
        self.branches_of(&owner, &children, at)
    }

    /// A verb or noun of branching whose subject or object does not stand beside it.
    fn far_branches(&self, at: usize, relation: &RelationWord) -> Vec<Claim> {
        let tells = matches!(relation.kind, ClaimKind::Branching | ClaimKind::Renaming) && relation.form != Form::Noun;
        if !tells || self.written(at).split(' ').any(|word| word == "not") {
            return Vec::new();
        }
        let Some(object) = self.far_object(at) else { return Vec::new() };
        // "leaves" may be said of any place.
        if matches!(&*self.written(at), "leaves" | "leave" | "comes" | "come" | "drops" | "drop") {
            return Vec::new();
        }
        let (before, negated, hedged) = self.before_verb(at);
        if negated {
            return Vec::new();
        }
        let mut who = if relation.form == Form::Participle {
            self.named_before_copula(at).map(|group| self.sides(&group, PartRole::Nerve)).unwrap_or_default()
        } else {
            self.goer(before, VERBS)
        };
        who.retain(|side| side.what.entries().iter().all(|id| self.scope.vocabulary.is_neural(*id)));
        let is_same = |side: &Side| object_sides(self, &object).iter().any(|other| other.what == side.what);
        if who.iter().any(is_same) {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let mut claims = self.combine(relation, &who, &object, at, false, hedged, false);
        claims.retain(|claim| claim.kind == relation.kind);
        claims
    }

    /// The nerves that a verb has as its object, past the places that stand between the two ("gives off *in the canal* N").
    fn far_object(&self, at: usize) -> Option<Object> {
        let is_nerve = |object: &Object| match object {
            Object::Names(group) => {
                !group.denied
                    && group.members.iter().all(|member| self.class(*member) == Some(0))
                    && !self.begins_predicate(group.end)
                    && self.word(group.end) != "'s"
            }
            Object::Meant(_) => true,
            Object::Segments(..) => false,
        };
        let near = self.object_of(at + 1, PartRole::Parent);
        if let Some(object) = near {
            return Some(object).filter(is_nerve);
        }
        let mut next = at + 1;
        let mut is_place = false;
        while next < (at + REACH).min(self.atoms.len()) {
            let word = self.word(next);
            match self.atoms.get(next).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) if self.class(next) == Some(0) => {
                    return self.object(next).filter(is_nerve).filter(|_| !self.is_governed(next));
                }
                Some(AtomKind::Name(_)) if !matches!(self.class(next), Some(2..=5)) => return None,
                Some(AtomKind::Name(_)) => {}
                Some(AtomKind::Word)
                    if lexicon::is_preposition(word)
                        && !matches!(word, "to" | "with" | "for" | "of" | "from" | "as") =>
                {
                    is_place = true;
                }
                Some(AtomKind::Word)
                    if is_place
                        && word.chars().all(char::is_alphabetic)
                        && !lexicon::ends_way(word)
                        && !lexicon::is_conjunction(word)
                        && !lexicon::is_relative(word)
                        && !lexicon::is_contrast(word)
                        || lexicon::is_determiner(word)
                        || lexicon::is_adverb(word)
                        || matches!(word, "you" | "us") => {}
                _ => return None,
            }
            next += 1;
        }
        None
    }

    fn branches_of(&self, owner: &[Side], children: &Group, at: usize) -> Vec<Claim> {
        let [owner] = owner else { return Vec::new() };
        let is_neural = |id: &EntryId| self.scope.vocabulary.is_neural(*id);
        if !owner.what.entries().iter().all(is_neural) {
            return Vec::new();
        }
        let (left, right) = (PartRole::Nerve, PartRole::Parent);
        let relation = RelationWord { kind: ClaimKind::Branching, form: Form::Verb, left, right, ..action_relation() };
        let mut sides = self.sides(children, PartRole::Nerve);
        sides.retain(|side| side.what != owner.what);
        let object = Object::Meant(vec![owner.clone()]);
        self.combine(&relation, &sides, &object, at, false, self.clause_hedged(at), false)
    }
}

fn object_sides(sentence: &Sentence<'_, '_>, object: &Object) -> Vec<Side> {
    match object {
        Object::Names(group) => sentence.sides(group, PartRole::Nerve),
        Object::Meant(sides) => sides.clone(),
        Object::Segments(..) => Vec::new(),
    }
}
