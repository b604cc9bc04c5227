//! Claims of membership that "is" makes: "is one of the hamstrings", "is another member", "the scalenes are A, B and C", and
//! those of an apposition: "A, a thenar muscle, …".

use fascicle_model::Kind;

use super::Sentence;
use super::actions::action_relation;
use super::sides::{Side, side_of};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, RelationWord};

impl Sentence<'_, '_> {
    /// "These are A, B and C", "the scalenes are A, B and C": the members of the group of which the sentence before speaks,
    /// or of the one that is named.
    pub(super) fn listed_members(&self, at: usize) -> Vec<Claim> {
        let pronoun = at.checked_sub(1).filter(|place| matches!(self.word(*place), "these" | "they" | "those"));
        let mut next = at + 1;
        while lexicon::number(self.word(next)).is_some()
            || matches!(self.word(next), ":" | "," | "the" | "as" | "follows" | "namely")
        {
            next += 1;
        }
        let listed = self.group_from(next, true).filter(|group| group.members.len() > 1 && !group.partial);
        // A list may end with what has no name of its own ("and the two pterygoids").
        let ends = |end: usize| self.ends_clause(end) || lexicon::is_conjunction(self.word(end));
        let Some(listed) = listed.filter(|group| ends(group.end)) else {
            return Vec::new();
        };
        let named = self
            .group_to(at)
            .filter(|group| group.members.len() == 1 && !group.partial && pronoun.is_none())
            .filter(|group| group.members.first().is_some_and(|first| self.leads_clause(*first)));
        if named.is_none() && pronoun != Some(0) {
            return Vec::new();
        }
        let is_group = |side: &Side| match &side.what {
            What::Entry(ids) => ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Group),
            _ => false,
        };
        let implied =
            named.map_or_else(|| self.implied(PartRole::Group, true), |named| self.sides(&named, PartRole::Group));
        let [group] = implied.as_slice() else { return Vec::new() };
        if !is_group(group) {
            return Vec::new();
        }
        let muscles = self.sides(&listed, PartRole::Muscle);
        if muscles.len() < listed.members.len() || muscles.iter().any(is_group) {
            return Vec::new();
        }
        let hedged = self.clause_hedged(at);
        let claim = |muscle: Side| {
            let span = muscle.span;
            let parts = vec![
                Part { role: PartRole::Group, span: group.span, what: group.what.clone() },
                Part { role: PartRole::Muscle, span, what: muscle.what },
            ];
            Claim { span, parts, hedged, ..self.empty_claim(ClaimKind::Membership) }
        };
        muscles.into_iter().map(claim).collect()
    }

    /// Whether a name is the subject of its clause: only articles and numbers stand before it.
    pub(super) fn leads_clause(&self, at: usize) -> bool {
        let mut first = at;
        while first.checked_sub(1).is_some_and(|place| {
            let word = self.word(place);
            lexicon::is_determiner(word) || lexicon::number(word).is_some() || lexicon::means_all(word)
        }) {
            first -= 1;
        }
        first.checked_sub(1).is_none_or(|place| {
            let word = self.word(place);
            lexicon::begins_clause(word) || lexicon::is_bullet(word) || word == ","
        })
    }

    /// "is a hypothenar muscle", "is one of the hamstrings"
    pub(super) fn member_claims(&self, at: usize, before: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
            || lexicon::is_before_group(self.word(next))
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        // "A and B are rotator cuff muscles"
        let is_plural = self.word(at) == "are" && self.written(next).ends_with("muscles");
        let Some(group) = self.side(next, PartRole::Group).filter(|_| next > at + 1 || is_plural) else {
            return self.member_of_meant(at);
        };
        // "is an oblique muscle", "is one of the obliques", not "is an oblique fibre"
        let written = self.written(next);
        let is_of_kind = matches!(self.word(next - 1), "a" | "an") && self.ends_clause(next + 1);
        if !(written.ends_with('s') || written.contains("muscle") || self.word(next - 1) == "of" || is_of_kind) {
            return Vec::new();
        }
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

    /// "is one of them", "is another member", "is the fourth": of the group of which the text speaks.
    fn member_of_meant(&self, at: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let (mut negated, mut is_member, mut of) = (false, false, None);
        loop {
            let word = self.word(next);
            if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_one_of_some(word) {
                is_member = true;
            } else if word == "of" {
                of = Some(next);
            } else if !(lexicon::is_determiner(word)
                || lexicon::is_adverb(word)
                || matches!(word, "them" | "group" | "muscle" | "muscles" | "another"))
            {
                break;
            }
            next += 1;
        }
        if !is_member || !self.ends_clause(next) {
            return Vec::new();
        }
        let told = self.group_to(self.before_verb(at + 1).0);
        let Some(told) = told.filter(|told| told.members.first().is_some_and(|first| self.leads_clause(*first))) else {
            return Vec::new();
        };
        let first = told.members.first().copied().unwrap_or(0);
        // The group that this sentence names last, if it names no other row; else that of the sentence before, or what the
        // text stands under.
        let within = (0..first).rev().find(|place| self.class(*place) == Some(2));
        let is_clear = |place: usize| (place + 1..first).all(|between| self.mention(between).is_none());
        // What stands before the clause may name another row ("several others do; A is one of them").
        let begins_sentence = (0..first).all(|place| lexicon::is_determiner(self.word(place)));
        if within.is_none() && !begins_sentence {
            return Vec::new();
        }
        let group = match within {
            Some(place) => self.side(place, PartRole::Group).filter(|_| is_clear(place)),
            None if of.is_some() && !self.memory.named.is_empty() => {
                let groups = self.implied(PartRole::Group, true);
                groups.first().cloned().filter(|_| groups.len() == 1 && self.memory.named.len() == 1)
            }
            None => {
                let mut above = self.scope.subjects.iter();
                above.find_map(|subject| side_of(self.scope.vocabulary, subject, PartRole::Group))
            }
        };
        let is_group = |side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Group));
        let Some(group) = group.filter(is_group) else { return Vec::new() };
        let muscles = self.sides(&told, PartRole::Muscle);
        muscles.into_iter().map(|muscle| self.membership(at, muscle, &group, negated)).collect()
    }

    /// "A, a thenar muscle, wastes": the group that an apposition behind a muscle's name tells.
    pub(super) fn apposed_members(&self, at: usize) -> Vec<Claim> {
        let is_muscle_of_group = self.class(at) == Some(2) && self.written(at).contains("muscle");
        let mut before = at;
        let mut has_article = false;
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if matches!(word, "a" | "an" | "another" | "one") {
                has_article = true;
            } else if !(matches!(word, "of" | "the" | "also") || lexicon::is_before_only(word)) {
                break;
            }
            before = place;
        }
        let Some(mark) = before.checked_sub(1).filter(|_| is_muscle_of_group && has_article) else { return Vec::new() };
        let closes = matches!(self.word(at + 1), "," | ")" | "—" | "–") || self.ends_clause(at + 1);
        if !matches!(self.word(mark), "," | "(" | "—" | "–") || !closes {
            return Vec::new();
        }
        let host = self.group_to(mark).filter(|host| host.members.len() == 1 && !host.partial);
        let (Some(host), Some(group)) = (host, self.side(at, PartRole::Group)) else { return Vec::new() };
        let is_muscle = |side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Muscle));
        let muscles = self.sides(&host, PartRole::Muscle).into_iter().filter(is_muscle);
        muscles.map(|muscle| self.membership(at, muscle, &group, false)).collect()
    }

    fn membership(&self, at: usize, muscle: Side, group: &Side, negated: bool) -> Claim {
        let span = self.claim_span(at, muscle.span, group.span);
        let parts = vec![
            Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
            Part { role: PartRole::Group, span: group.span, what: group.what.clone() },
        ];
        Claim { span, parts, negated, hedged: self.clause_hedged(at), ..self.empty_claim(ClaimKind::Membership) }
    }
}
