//! Clauses that leave out what the clause before has said: the verb ("A is supplied by N, *B by M*"), or all but the
//! subject ("*So is B.*", "*as does B*", "*the same is true of B*").

use super::Sentence;
use super::atoms::AtomKind;
use super::objects::Object;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Ending};

/// How many atoms may stand between the word that takes up a statement and the name of which it is repeated.
const REACH: usize = 9;

impl Sentence<'_, '_> {
    /// "…, the lateral rectus by the abducent nerve": the verb of the clause before joins these two as well.
    pub(super) fn gap_claims(&self, at: usize, last: &[Claim]) -> Vec<Claim> {
        let Some(model) = last.last() else { return Vec::new() };
        let [first, second, rest @ ..] = model.parts.as_slice() else { return Vec::new() };
        let joins_two = matches!(
            model.kind,
            ClaimKind::Supply
                | ClaimKind::Roots
                | ClaimKind::Branching
                | ClaimKind::Skin
                | ClaimKind::Passage
                | ClaimKind::Attachment
        );
        if !joins_two || !self.begins_gap(at) {
            return Vec::new();
        }
        let Some((left, end)) = self.gap_subject(at, first.role, second.role) else { return Vec::new() };
        let mut next = end;
        let has_preposition = lexicon::carries_gap(self.word(next));
        if has_preposition {
            next += 1;
        } else if next.checked_sub(1).is_none() || !matches!(model.kind, ClaimKind::Supply) {
            return Vec::new();
        }
        let Some(object) = self.object(next) else { return Vec::new() };
        let (right, behind) = match &object {
            Object::Names(group) => (self.sides(group, PartRole::Structure), group.end),
            Object::Segments(reading, place) => {
                let what = What::Segments(reading.main, reading.lesser);
                (vec![Side { what, span: self.source(*place, *place + 1) }], place + 1)
            }
            Object::Meant(_) => return Vec::new(),
        };
        if !self.ends_clause(behind) {
            return Vec::new();
        }
        let hedged = self.clause_hedged(at);
        let mut claims = Vec::new();
        for left in &left {
            for right in &right {
                let (as_first, as_second) = if self.plays(left, first.role) && self.plays(right, second.role) {
                    (left, right)
                } else if self.plays(right, first.role) && self.plays(left, second.role) {
                    (right, left)
                } else {
                    continue;
                };
                let mut parts = vec![
                    Part { role: first.role, span: as_first.span, what: as_first.what.clone() },
                    Part { role: second.role, span: as_second.span, what: as_second.what.clone() },
                ];
                // "A springs from B and descends to C, *D to E*": the origin told first is not that of E.
                let is_of_other_end = |part: &Part| {
                    let ending = match part.what {
                        What::Word("origin") => Ending::Origin,
                        What::Word("insertion") => Ending::Insertion,
                        _ => return false,
                    };
                    let end = lexicon::end_told(ending, self.word(end));
                    model.kind == ClaimKind::Attachment && has_preposition && end.is_none()
                };
                let roles = rest.iter().filter(|part| part.role == PartRole::Role && !is_of_other_end(part));
                parts.extend(roles.cloned());
                let span = self.claim_span(end - 1, left.span, right.span);
                claims.push(Claim { span, parts, hedged, all: false, ..model.clone() });
            }
        }
        claims
    }

    /// Whether a clause without a verb may begin at an atom: a mark or a conjunction stands before it.
    fn begins_gap(&self, at: usize) -> bool {
        let Some(before) = at.checked_sub(1) else { return true };
        let word = self.word(before);
        lexicon::begins_clause(word) || lexicon::is_contrast(word) || word == ","
    }

    /// What a clause without a verb begins with, and the atom behind it.
    fn gap_subject(&self, at: usize, first: PartRole, second: PartRole) -> Option<(Vec<Side>, usize)> {
        let mut next = at;
        while lexicon::is_determiner(self.word(next))
            || lexicon::means_all(self.word(next))
            || lexicon::is_muscle_noun(self.word(next))
            || lexicon::is_adverb(self.word(next))
        {
            next += 1;
        }
        if matches!(self.word(next), "former" | "latter") {
            let sides = [first, second].into_iter().map(|role| self.former_or_latter(self.word(next), role));
            return sides.into_iter().find(|sides| !sides.is_empty()).map(|sides| (sides, next + 1));
        }
        self.mention(next)?;
        let group = self.group_from(next, true)?;
        Some((self.sides(&group, PartRole::Structure), group.end))
    }

    fn plays(&self, side: &Side, role: PartRole) -> bool {
        match &side.what {
            What::Entry(ids) => self.fits(role, ids),
            What::Segments(..) => role == PartRole::Segments,
            _ => false,
        }
    }

    /// Whether a clause ends before an atom.
    pub(super) fn ends_clause(&self, at: usize) -> bool {
        at >= self.atoms.len() || lexicon::closes_clause(self.word(at)) || lexicon::is_contrast(self.word(at))
    }

    /// "So does B", "as is B", "the same is true of B", "B does too": what the last clause says, of B.
    pub(super) fn echo_claims(&self, at: usize, last: &[Claim]) -> Vec<Claim> {
        let Some((name, denies)) = self.echo(at) else { return Vec::new() };
        let Some(group) = self.group_from(name, false) else { return Vec::new() };
        let mut end = group.end;
        while lexicon::repeats(self.word(end))
            || lexicon::is_adverb(self.word(end))
            || (end == at && lexicon::stands_for_verb(self.word(end)))
            || (self.word(end) == "as" && self.word(end + 1) == "well")
        {
            end += 1;
        }
        if !self.ends_clause(end) && self.word(at) != "another" {
            return Vec::new();
        }
        let hedged = self.clause_hedged(at);
        let mut claims: Vec<Claim> = Vec::new();
        for model in last {
            if denies && !model.negated {
                return Vec::new();
            }
            for side in self.sides(&group, PartRole::Structure) {
                let mut parts = model.parts.clone();
                let Some(place) = parts.iter().position(|part| {
                    matches!(part.what, What::Entry(_))
                        && !matches!(part.role, PartRole::Movement | PartRole::Joint)
                        && self.plays(&side, part.role)
                }) else {
                    continue;
                };
                let Some(part) = parts.get_mut(place) else { continue };
                if part.what == side.what {
                    continue;
                }
                *part = Part { role: part.role, span: side.span, what: side.what };
                let span = self.claim_span(name, side.span, side.span);
                let claim = Claim { span, parts, hedged, block: self.scope.block, ..model.clone() };
                let is_told = |told: &Claim| {
                    told.kind == claim.kind
                        && told.parts.iter().map(|part| &part.what).eq(claim.parts.iter().map(|part| &part.what))
                };
                if !claims.iter().any(is_told) {
                    claims.push(claim);
                }
            }
        }
        claims
    }

    /// "The exception is MUSCLE", "MUSCLE is the exception": the nerve of the group of which the clause before speaks does not
    /// supply it.
    pub(super) fn exception_claims(&self, at: usize, last: &[Claim]) -> Vec<Claim> {
        if !matches!(self.word(at), "exception" | "exceptions") || self.word(at + 1) == "of" {
            return Vec::new();
        }
        let is = at + 1;
        let behind = self.behind_article(is + 1);
        let group = if matches!(self.word(is), "is" | "are" | "being" | ":") {
            self.group_from(behind, true)
                .filter(|group| self.ends_clause(group.end) || lexicon::is_relative(self.word(group.end)))
        } else {
            let copula =
                (at.saturating_sub(4)..at).rev().find(|place| matches!(self.word(*place), "is" | "are" | "being"));
            copula.and_then(|copula| self.group_to(copula)).filter(|_| self.ends_clause(is))
        };
        let Some(group) = group else { return Vec::new() };
        let is_group = |part: &Part| match &part.what {
            What::Entry(ids) => {
                ids.len() > 1 || ids.iter().all(|id| self.scope.vocabulary.kind(*id) == fascicle_model::Kind::Group)
            }
            _ => false,
        };
        let muscles = self.sides(&group, PartRole::Muscle);
        let of_groups = last.iter().filter(|told| {
            told.kind == ClaimKind::Supply
                && !told.negated
                && told.parts.iter().any(|part| part.role == PartRole::Muscle && is_group(part))
        });
        let mut claims = Vec::new();
        for told in of_groups {
            let Some(nerve) = told.part(PartRole::Nerve) else { continue };
            for muscle in &muscles {
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() },
                    Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what.clone() },
                ];
                let span = self.claim_span(at, muscle.span, muscle.span);
                claims.push(Claim {
                    span,
                    parts,
                    negated: true,
                    hedged: self.clause_hedged(at),
                    ..self.empty_claim(ClaimKind::Supply)
                });
            }
        }
        claims
    }

    fn behind_article(&self, at: usize) -> usize {
        at + usize::from(lexicon::is_determiner(self.word(at)))
    }

    /// The name of which a statement is repeated by the words from an atom on, and whether they deny.
    fn echo(&self, at: usize) -> Option<(usize, bool)> {
        let first_name =
            |from: usize| (from..(from + REACH).min(self.atoms.len())).find(|at| self.mention(*at).is_some());
        match self.word(at) {
            word @ ("so" | "as" | "nor" | "neither") => {
                let name = first_name(at + 1)?;
                let verb = name - usize::from(lexicon::is_determiner(self.word(name - 1))) - 1;
                let is_next =
                    verb == at + 1 || (word == "so" && self.word(at + 1) == "," && self.word(verb - 1) == ",");
                let is_verb = lexicon::stands_for_verb(self.word(verb));
                (is_verb && is_next).then_some((name, matches!(word, "nor" | "neither")))
            }
            "same" => {
                let name = first_name(at + 1)?;
                let holds = (at + 1..name).any(|place| lexicon::holds(self.word(place)));
                let ends = matches!(self.word(name - 1), "of" | "for" | "to")
                    || (lexicon::is_determiner(self.word(name - 1))
                        && matches!(self.word(name - 2), "of" | "for" | "to"));
                (holds && ends).then_some((name, false))
            }
            "another" => {
                // "B is another (of them)"
                let is = at.checked_sub(1).filter(|is| matches!(self.word(*is), "is" | "are"))?;
                let end = at + 1 + 2 * usize::from(self.word(at + 1) == "of" && self.word(at + 2) == "them");
                let group = self.group_to(is).filter(|_| self.ends_clause(end))?;
                let first = group.members.first().copied()?;
                (!self.is_governed(first)).then_some((first, false))
            }
            "like" => {
                // "…, like B.", at the end of what is said: "which, like B, …" is said of B only behind it
                let name = self.behind_article(at + 1);
                let group = self.group_from(name, false)?;
                let ends = group.end >= self.atoms.len() || matches!(self.word(group.end), "." | ";");
                (at > 0 && self.begins_gap(at) && ends).then_some((name, false))
            }
            "likewise" | "too" | "similarly" | "ditto" => {
                // "Likewise B."
                let name = self.behind_article(at + 1 + usize::from(self.word(at + 1) == ","));
                let leads = at == 0 || self.begins_gap(at);
                if leads && self.mention(name).is_some() && lexicon::begins_comparison(self.word(at)) {
                    return Some((name, false));
                }
                // "and B likewise"
                let group = self.group_to(at).filter(|_| self.ends_clause(at + 1))?;
                let first = group.members.first().copied()?;
                self.begins_gap(self.before_determiners(first)).then_some((first, false))
            }
            word if lexicon::stands_for_verb(word) => {
                // "B does too", "B is also"
                let mut end = at + 1;
                while lexicon::is_adverb(self.word(end)) {
                    end += 1;
                }
                let repeats = lexicon::repeats(self.word(at + 1)) && self.ends_clause(end.max(at + 2));
                let group = self.group_to(at).filter(|_| repeats)?;
                let first = group.members.first().copied()?;
                (!self.is_governed(first)).then_some((first, false))
            }
            _ => None,
        }
    }
}

impl Sentence<'_, '_> {
    /// The first or the second of the two that were named before.
    pub(super) fn former_or_latter(&self, word: &str, role: PartRole) -> Vec<Side> {
        let two = |list: &[super::Subject]| -> Option<[Side; 2]> {
            let sides: Vec<Side> =
                list.iter().filter_map(|subject| super::side_of(self.scope.vocabulary, subject, role)).collect();
            sides.try_into().ok()
        };
        let Some([former, latter]) = two(&self.memory.subject).or_else(|| two(&self.memory.named)) else {
            return Vec::new();
        };
        vec![if word == "former" { former } else { latter }]
    }

    /// Whether the atom is one that a claim of this file can begin with.
    pub(super) fn may_take_up(&self, at: usize) -> bool {
        match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) => true,
            Some(AtomKind::Word) => {
                lexicon::stands_for_verb(self.word(at))
                    || matches!(
                        self.word(at),
                        "so" | "as"
                            | "nor"
                            | "neither"
                            | "same"
                            | "former"
                            | "latter"
                            | "likewise"
                            | "too"
                            | "similarly"
                            | "ditto"
                            | "another"
                            | "like"
                    )
            }
            _ => false,
        }
    }
}
