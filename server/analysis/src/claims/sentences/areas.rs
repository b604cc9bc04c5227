//! Claims of skin: which nerve feels which area. An area is described in words, not always named, so that it is read from
//! a stretch of words rather than from a group.

use super::atoms::AtomKind;
use super::objects::Object;
use super::sides::{Side, side_of};
use super::{Sentence, Subject};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, RelationWord};
use crate::text::Span;

/// A name leads a block if no more tokens stand before it.
const LEADS_WITHIN: usize = 2;

/// The words of a description of areas are no more atoms than these.
const LONGEST_AREA: usize = 16;

impl Sentence<'_, '_> {
    /// "supplies the skin of the lateral forearm"
    pub(super) fn skin_claims(
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
        let areas = self.areas_of(at + 1, true);
        self.felt(at, &nerves, &areas, negated, hedged)
    }

    /// The claims that each of some nerves feels each of some areas.
    pub(super) fn felt(&self, at: usize, nerves: &[Side], areas: &[Side], negated: bool, hedged: bool) -> Vec<Claim> {
        let hedged = hedged || self.clause_hedged(at);
        let pairs = nerves.iter().flat_map(|nerve| areas.iter().map(move |area| (nerve, area)));
        let claim = |(nerve, area): (&Side, &Side)| {
            let span = self.claim_span(at, nerve.span, area.span);
            let parts = vec![
                Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what.clone() },
                Part { role: PartRole::Skin, span: area.span, what: area.what.clone() },
            ];
            Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Skin) }
        };
        pairs.map(claim).collect()
    }

    /// "The skin of the upper lip is supplied by NERVE"
    pub(super) fn skin_supplied(
        &self,
        at: usize,
        before: usize,
        object: &Object,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let nerves = match object {
            Object::Names(group) => self.sides(group, PartRole::Nerve),
            Object::Segments(reading, place) => {
                let what = What::Segments(reading.main, reading.lesser);
                vec![Side { what, span: self.source(*place, *place + 1) }]
            }
            Object::Meant(_) => return Vec::new(),
        };
        let areas = self.areas_to(before);
        self.felt(at, &nerves, &areas, negated, hedged)
    }

    /// "SUBJECT. *Skin of the axilla.*": an area and nothing else, which the nerve that was spoken of feels.
    pub(super) fn area_of_subject(&self) -> Vec<Claim> {
        let is_passed = |at: &usize| lexicon::is_determiner(self.word(*at)) || lexicon::is_bullet(self.word(*at));
        let Some(first) = (0..self.atoms.len()).find(|at| !is_passed(at)) else { return Vec::new() };
        if !(self.scope.of_skin || self.word(first) == "skin") || self.has_verb() {
            return Vec::new();
        }
        let areas = self.areas_of(first, true);
        let Some(end) = areas.last().map(|area| self.behind_source(area.span)) else { return Vec::new() };
        if !self.ends_clause(end) || end + 1 < self.atoms.len() {
            return Vec::new();
        }
        // The nerve with which the block begins, or else the one that it stands under.
        let leads = self.scope.mentions.list.first().filter(|mention| mention.tokens.0 <= LEADS_WITHIN);
        let leading = leads.map(|mention| Subject {
            candidates: mention.candidates.clone(),
            span: self.scope.plain.to_source(mention.span),
        });
        let subject = leading.as_ref().or_else(|| self.scope.subjects.first());
        let nerve = subject.and_then(|subject| side_of(self.scope.vocabulary, subject, PartRole::Nerve));
        self.felt(first, nerve.as_slice(), &areas, false, false)
    }

    /// The areas of skin that the words from an atom on describe, up to a mark or a verb.
    /// `is_skin` tells that a verb or a label says that it is skin.
    pub(super) fn areas_of(&self, at: usize, is_skin: bool) -> Vec<Side> {
        let mut end = at;
        while end < self.atoms.len() && end < at + LONGEST_AREA {
            let word = self.word(end);
            // "the lateral *part of* the palm" is read as a phrase
            let is_relation = matches!(&self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Relation(_)));
            let is_part = || self.written(end).split(' ').next().is_some_and(lexicon::is_area_noun);
            let is_verb = (is_relation && !is_part()) || lexicon::is_auxiliary(word);
            if is_verb || (lexicon::ends_area(word) && word != ",") {
                break;
            }
            end += 1;
        }
        let ends_well = |end: usize| {
            let word = self.word(end);
            !matches!(self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Word))
                || !word.chars().any(char::is_alphabetic)
                || lexicon::is_conjunction(word)
                || (is_skin
                    && (lexicon::is_auxiliary(word)
                        || lexicon::is_condition(word)
                        || lexicon::points_to(word)
                        || lexicon::is_contrast(word)
                        || lexicon::links_feeling(word)
                        || lexicon::comes_of(word)))
        };
        let ends = (at + 1..=end).rev().filter(|end| ends_well(*end));
        ends.map(|end| self.areas_between(at, end, is_skin)).find(|areas| !areas.is_empty()).unwrap_or_default()
    }

    /// The areas of skin that the words right before an atom describe, from the beginning of their clause.
    pub(super) fn areas_to(&self, end: usize) -> Vec<Side> {
        let begins = |at: &usize| {
            at.checked_sub(1)
                .is_none_or(|place| lexicon::precedes_area(self.word(place)) || lexicon::is_contrast(self.word(place)))
        };
        // "hip and *knee* share": the last of several joints is a joint as well.
        let is_joint = |at: usize| self.mention(at).is_some() && self.class(at) == Some(3);
        let goes_on = |at: &usize| {
            let behind_and = at.checked_sub(1).filter(|place| lexicon::is_conjunction(self.word(*place)));
            behind_and.and_then(|place| place.checked_sub(1)).is_some_and(is_joint)
        };
        let starts = (end.saturating_sub(LONGEST_AREA)..end).filter(begins).filter(|at| !goes_on(at));
        let areas = starts.map(|start| {
            let is_told = |at: &usize| !lexicon::is_determiner(self.word(*at)) && !lexicon::is_adverb(self.word(*at));
            (start..end).find(is_told).map_or_else(Vec::new, |start| self.areas_between(start, end, true))
        });
        areas.into_iter().find(|areas| !areas.is_empty()).unwrap_or_default()
    }

    /// The areas that a stretch describes: one, or a list whose members share what stands before the first of them ("the
    /// medial side of the leg and foot") or the noun behind the last ("the index and middle fingers"). Nothing unless each
    /// member is an area.
    pub(super) fn areas_between(&self, from: usize, to: usize, is_skin: bool) -> Vec<Side> {
        if let Some(area) = self.area_described(from, to, &["", ""], is_skin) {
            return vec![area];
        }
        let mut members = Vec::new();
        let mut start = from;
        for at in from..=to {
            // "one and a half digits"
            let is_number = at.checked_sub(1).is_some_and(|place| lexicon::number(self.word(place)).is_some());
            if at < to && (!lexicon::is_conjunction(self.word(at)) || is_number) {
                continue;
            }
            let is_passed = |at: &usize| lexicon::is_determiner(self.word(*at)) || self.word(*at) == "also";
            let first = (start..at).find(|at| !is_passed(at)).unwrap_or(at);
            if first < at {
                members.push((first, at));
            }
            start = at + 1;
        }
        let (Some((first, first_end)), true) = (members.first().copied(), members.len() > 1) else { return Vec::new() };
        let shared = self.text_between(first, first_end);
        let cut = [" of ", " over "].iter().filter_map(|of| Some(shared.rfind(of)? + of.len())).max();
        let shared = cut.and_then(|cut| shared.get(..cut)).unwrap_or_default();
        let noun = self.text_between(to - 1, to);
        let noun = noun.rsplit(' ').next().unwrap_or_default();
        let noun = noun.strip_suffix('s').unwrap_or(noun);
        let mut areas = Vec::new();
        for (at, end) in members {
            let is_first = at == first;
            let shared = if is_first { "" } else { shared };
            let tries = [[shared, ""], ["", ""], ["", noun], [shared, noun]];
            let area = tries.iter().find_map(|around| self.area_described(at, end, around, is_skin));
            let Some(area) = area else { return Vec::new() };
            areas.push(area);
        }
        areas
    }

    /// The area that a stretch describes together with words before and behind it.
    fn area_described(&self, from: usize, to: usize, around: &[&str; 2], is_skin: bool) -> Option<Side> {
        let written = self.text_between(from, to);
        let last = self.word(to.checked_sub(1)?);
        if lexicon::is_determiner(last) || lexicon::is_preposition(last) || lexicon::is_conjunction(last) {
            return None;
        }
        let [before, behind] = around;
        let text = format!("{before} {written} {behind}");
        let areas = &self.scope.relations;
        let candidates = if is_skin { areas.areas_of_skin(text.trim()) } else { areas.areas(text.trim()) };
        let subject = Subject { candidates, span: self.source(from, to) };
        side_of(self.scope.vocabulary, &subject, PartRole::Skin)
    }

    /// The text of the atoms of a stretch.
    fn text_between(&self, from: usize, to: usize) -> &str {
        let tokens = &self.scope.mentions.tokens;
        let first = self.atoms.get(from).and_then(|atom| tokens.get(atom.from));
        let last = to.checked_sub(1).and_then(|last| self.atoms.get(last));
        let last = last.and_then(|atom| tokens.get(atom.to.checked_sub(1)?));
        let (Some(first), Some(last)) = (first, last) else { return "" };
        Span::new(first.span.start, last.span.end).of(&self.scope.plain.text)
    }
}
