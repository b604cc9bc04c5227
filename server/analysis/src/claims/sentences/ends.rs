//! Where muscles end, in whatever words: a place that a word of attachment binds, however it is described, and the one
//! muscle that can be its subject. "The middle ones *from the outer lip of the acromion*", "fixed above *to the ilium* and
//! below *to the greater trochanter*", "on its way *to the ulna*".
//!
//! What no phrase of the lexicon has joined is read here from the place backwards: over the words that describe it and the
//! places listed before it to the preposition, from there to the word of attachment, and from that to the subject. A word
//! that is none of these ends the attempt.

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Ending};

/// How many atoms may stand between a place and its preposition, and between that and the word of attachment.
const REACH: usize = 16;

/// How many places may be bound one by the other ("from A over B to C").
const PLACES: usize = 4;

/// What binds a place to a muscle.
#[derive(Clone, Debug)]
struct Bound {
    /// On which side of the place, where it only helps to find the one that is meant ("*above* the groove").
    beside: Option<&'static str>,
    /// What the word of attachment says.
    ending: Ending,
    /// The preposition; empty where the place stands right behind the word.
    preposition: String,
    /// The atom of the word of attachment.
    cue: usize,
    /// The subject, where no verb leads to it.
    subject: Option<Vec<Side>>,
    /// The name only tells of what the place is a feature ("the *cartilages of* the upper ribs").
    is_loose: bool,
}

/// The atom that binds a place, and how.
struct Binder {
    at: usize,
    beside: Option<&'static str>,
    is_loose: bool,
}

/// The side of a place that a word tells, as far as it can be told whether a muscle is attached there.
fn side_of_place(word: &str) -> Option<&'static str> {
    match word {
        "above" => Some("above"),
        "below" => Some("below"),
        _ => None,
    }
}

impl Sentence<'_, '_> {
    /// Claims of attachment for the places that nothing else has been claimed of.
    pub(super) fn end_claims(&self, told: &[Claim]) -> Vec<Claim> {
        let mut claims = Vec::new();
        for at in 0..self.atoms.len() {
            if self.class(at) != Some(4) || self.is_struck(at) {
                continue;
            }
            let span = self.source(at, at + 1);
            let is_told = |claim: &Claim| claim.parts.iter().any(|part| part.span == span);
            if !told.iter().any(is_told) {
                claims.extend(self.end_at(at));
            }
        }
        claims
    }

    fn end_at(&self, at: usize) -> Vec<Claim> {
        // "the spines of all the vertebrae", "the femoral condyle's"
        if matches!(self.word(at + 1), "of" | "'s") || lexicon::ways::is_direction(&self.written(at)) {
            return Vec::new();
        }
        let Some(bound) = self.bound(at, PLACES) else { return Vec::new() };
        let end = match bound.ending {
            Ending::Holds | Ending::Links => None,
            ending => match lexicon::end_told(ending, &bound.preposition) {
                Some(end) => end,
                None => return Vec::new(),
            },
        };
        let end = bound.beside.or(end);
        let (before, negated, hedged) = self.before_verb(bound.cue);
        let muscles = bound.subject.unwrap_or_else(|| self.ending_muscles(bound.cue, before, at));
        let denied = self.group_to(before).is_some_and(|group| group.denied);
        let Some(place) = self.side(at, PartRole::Landmark) else { return Vec::new() };
        let hedged = hedged || bound.is_loose || self.clause_hedged(at);
        let claim = |muscle: Side| {
            let mut parts = vec![
                Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                Part { role: PartRole::Landmark, span: place.span, what: place.what.clone() },
            ];
            parts.extend(end.map(|end| Part {
                role: PartRole::Role,
                span: self.source(bound.cue, bound.cue + 1),
                what: What::Word(end),
            }));
            let span = self.claim_span(at, muscle.span, place.span);
            Claim { span, parts, negated: negated != denied, hedged, ..self.empty_claim(ClaimKind::Attachment) }
        };
        muscles.into_iter().map(claim).collect()
    }

    /// What binds the place at an atom.
    fn bound(&self, at: usize, depth: usize) -> Option<Bound> {
        let depth = depth.checked_sub(1)?;
        let Binder { at: binder, beside, is_loose } = self.binder(at)?;
        let words = self.written(binder);
        let last = words.rsplit(' ').next().unwrap_or_default();
        let told = words.rsplit(' ').find_map(lexicon::ending);
        let preposition = if lexicon::binds_end(last) { last } else { "" };
        match told {
            Some(ending) if !preposition.is_empty() || matches!(ending, Ending::Holds | Ending::Links) => {
                return Some(Bound {
                    ending,
                    preposition: preposition.to_owned(),
                    cue: binder,
                    subject: None,
                    beside,
                    is_loose,
                });
            }
            _ if preposition.is_empty() && last != "with" => return None,
            _ => {}
        }
        let bound = self.word_of_ending(binder, last, at, depth)?;
        Some(Bound { beside, is_loose, ..bound })
    }

    /// Steps back from a place over the words that describe it and the places listed before it, to the atom that binds it.
    fn binder(&self, at: usize) -> Option<Binder> {
        let (mut is_listed, mut is_loose) = (false, false);
        let mut beside = None;
        for place in (at.saturating_sub(REACH)..at).rev() {
            let word = self.word(place);
            match &self.atoms.get(place)?.kind {
                AtomKind::Name(_) => {
                    let next = self.word(place + 1);
                    let is_joined = lexicon::is_conjunction(next)
                        || next == "of"
                        || (beside.is_some() && side_of_place(next).is_some());
                    if !is_joined || !matches!(self.class(place), Some(3..=5)) {
                        return None;
                    }
                    is_loose |= next == "of";
                }
                AtomKind::Segments(_) => {}
                AtomKind::Relation(_) => {
                    let words = self.written(place);
                    let last = words.rsplit(' ').next().unwrap_or_default();
                    let binds = lexicon::binds_end(last)
                        || matches!(lexicon::ending(last), Some(Ending::Holds | Ending::Links));
                    return (binds && !(is_listed && self.has_own_verb(at))).then_some(Binder {
                        at: place,
                        beside,
                        is_loose,
                    });
                }
                AtomKind::Movement(_) => return None,
                AtomKind::Word => {
                    let binds = lexicon::binds_end(word)
                        || matches!(lexicon::ending(word), Some(Ending::Holds | Ending::Links))
                        || word == "with";
                    // "the groove *on* the under surface of the clavicle": a place on what is named
                    let before = place.checked_sub(1).map_or("", |before| self.word(before));
                    if matches!(word, "on" | "in" | "at") && lexicon::is_noun_of_bony_place(before) {
                        is_loose = true;
                        continue;
                    }
                    if binds {
                        return (!(is_listed && self.has_own_verb(at))).then_some(Binder {
                            at: place,
                            beside,
                            is_loose,
                        });
                    }
                    if let Some(side) = side_of_place(word).filter(|_| beside.is_none() && !is_listed) {
                        beside = Some(side);
                        continue;
                    }
                    is_listed |= lexicon::is_conjunction(word);
                    is_loose |= lexicon::is_feature_noun(word);
                    let is_number = word.bytes().all(|c| c.is_ascii_digit());
                    let describes = lexicon::describes_place(word)
                        || lexicon::is_conjunction(word)
                        || lexicon::is_hyphen(word)
                        || (is_number && !word.is_empty());
                    if !describes {
                        return None;
                    }
                }
            }
        }
        None
    }

    /// Whether a name has a verb of its own, so that it does not end the list before it.
    fn has_own_verb(&self, at: usize) -> bool {
        let behind = self.behind_bracket(at + 1);
        self.begins_predicate(behind)
            || self.word(behind).ends_with('s') && !lexicon::is_adverb(self.word(behind)) && self.word(behind).len() > 3
    }

    /// The word of attachment to which the preposition at an atom belongs.
    fn word_of_ending(&self, binder: usize, preposition: &str, place: usize, depth: usize) -> Option<Bound> {
        let bound = |ending, cue| Bound {
            ending,
            preposition: preposition.to_owned(),
            cue,
            subject: None,
            beside: None,
            is_loose: false,
        };
        let mut weak: Option<usize> = None;
        let mut at = binder;
        let mut passed = 0;
        while passed < REACH {
            passed += 1;
            let Some(before) = at.checked_sub(1) else {
                return weak
                    .map(|cue| bound(Ending::Way, cue))
                    .or_else(|| self.inverted_end(binder, preposition, place));
            };
            let word = self.word(before);
            match &self.atoms.get(before)?.kind {
                AtomKind::Name(_) if weak.is_some() => return weak.map(|cue| bound(Ending::Way, cue)),
                AtomKind::Name(_) if matches!(self.class(before), Some(3..=5)) => {
                    // "from A to B", "fixed above to A and below to B"
                    if let Some(first) = self.bound(before, depth) {
                        let goes_on = match first.ending {
                            Ending::Way => preposition != "with",
                            Ending::Either | Ending::Links => true,
                            Ending::Origin | Ending::Source => preposition == "from",
                            Ending::Insertion => matches!(preposition, "to" | "into" | "onto" | "on"),
                            Ending::Holds => false,
                        };
                        return goes_on.then_some(Bound { preposition: preposition.to_owned(), ..first });
                    }
                    // "by way of the patella to", "under the ligament to"
                    at = self.before_way(before)?;
                }
                AtomKind::Name(_) => {
                    if self.word(before + 1).is_empty() && before + 1 != binder {
                        return None;
                    }
                    if let Some(way) = self.before_way(before) {
                        at = way;
                        continue;
                    }
                    let group = self.group_to(before + 1)?;
                    let first = *group.members.first()?;
                    let sides = self.sides(&group, PartRole::Muscle);
                    // "it has a sternal head *from the manubrium*"
                    let is_part = |side: &Side| {
                        side.what.entries().iter().all(|id| self.scope.vocabulary.entry(*id).part_of.is_some())
                    };
                    if before + 1 == binder
                        && !sides.is_empty()
                        && sides.iter().all(is_part)
                        && !self.is_subject_at(first)
                    {
                        return Some(Bound { subject: Some(sides), ..bound(Ending::Way, binder) });
                    }
                    return self.elliptical(first, &sides, binder, preposition, depth);
                }
                AtomKind::Relation(_) => {
                    let words = self.written(before);
                    let told = words.split(' ').find_map(lexicon::ending);
                    return told
                        .map(|ending| bound(ending, before))
                        .or_else(|| weak.map(|cue| bound(Ending::Way, cue)));
                }
                AtomKind::Movement(_) | AtomKind::Segments(_) => return None,
                AtomKind::Word => {
                    // "MUSCLE: *from the radius* to the thumb"
                    if before + 1 == binder && lexicon::is_value_sign(word) {
                        let head = self.main_group().filter(|group| group.end == before);
                        let subject = head.map(|head| self.sides(&head, PartRole::Muscle)).unwrap_or_default();
                        return (!subject.is_empty())
                            .then(|| Bound { subject: Some(subject), ..bound(Ending::Way, binder) });
                    }
                    if before + 1 == binder
                        && let Some(start) = self.part_phrase(before)
                        && let Some(found) =
                            self.elliptical(start, &self.owners_of_part(start), binder, preposition, depth)
                    {
                        return Some(found);
                    }
                    let is_end =
                        lexicon::begins_clause(word) || matches!(word, "(" | ".") || lexicon::is_contrast(word);
                    if let Some(ending) = lexicon::ending(word).filter(|_| !is_end) {
                        let is_weak = matches!(
                            word,
                            "tendon"
                                | "tendons"
                                | "fibres"
                                | "fibers"
                                | "bundles"
                                | "slip"
                                | "slips"
                                | "way"
                                | "expansion"
                                | "head"
                                | "heads"
                        );
                        if !is_weak {
                            return Some(bound(ending, before));
                        }
                        weak = weak.or(Some(before));
                        at = before;
                        continue;
                    }
                    let fills = lexicon::fills_ending(word)
                        || lexicon::is_adverb(word)
                        || lexicon::is_hyphen(word)
                        || (word.len() > 4 && (word.ends_with("ly") || word.ends_with("wards")));
                    if !fills {
                        return weak.map(|cue| bound(Ending::Way, cue));
                    }
                    at = before;
                }
            }
        }
        None
    }

    /// The atom before the prepositional phrase to which the name at an atom belongs: "*by way of the patella*",
    /// "*with* iliacus".
    fn before_way(&self, name: usize) -> Option<usize> {
        let mut place = name;
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            match &self.atoms.get(before)?.kind {
                AtomKind::Relation(_) => {
                    let words = self.written(before);
                    let last = words.rsplit(' ').next().unwrap_or_default();
                    return lexicon::is_preposition(last).then_some(before + 1);
                }
                AtomKind::Word if lexicon::is_preposition(word) && word != "of" && !lexicon::binds_end(word) => {
                    return Some(before);
                }
                AtomKind::Word
                    if lexicon::describes_place(word)
                        || lexicon::is_muscle_noun(word)
                        || lexicon::is_conjunction(word)
                        || matches!(word, "way" | "means") =>
                {
                    place = before;
                }
                AtomKind::Name(_)
                    if lexicon::is_conjunction(self.word(place)) && self.class(before) == self.class(name) =>
                {
                    place = before;
                }
                _ => return None,
            }
        }
        None
    }

    /// "…, the middle ones *from B*", "…, semimembranosus *into B*": a clause without a verb goes on with that of the one
    /// before; a line without any verb tells a way.
    fn elliptical(
        &self,
        start: usize,
        subject: &[Side],
        binder: usize,
        preposition: &str,
        depth: usize,
    ) -> Option<Bound> {
        let start = self.before_determiners(start);
        let begins = start.checked_sub(1).is_none_or(|before| {
            let word = self.word(before);
            lexicon::begins_clause(word) || lexicon::is_contrast(word) || lexicon::is_bullet(word) || word == ","
        });
        if !begins || subject.is_empty() {
            return None;
        }
        let bound = |ending| Bound {
            ending,
            preposition: preposition.to_owned(),
            cue: binder,
            subject: Some(subject.to_vec()),
            beside: None,
            is_loose: false,
        };
        let before = (0..start).rev().filter(|place| self.class(*place) == Some(4));
        let model = before.take(PLACES).find_map(|place| self.bound(place, depth));
        if let Some(model) = model {
            let is_same = lexicon::end_told(model.ending, preposition).is_some();
            return is_same.then(|| bound(model.ending));
        }
        let told = self.memory.told.last().filter(|claim| start == 0 && claim.kind == ClaimKind::Attachment);
        if let Some(claim) = told {
            let ending = match claim.part(PartRole::Role).map(|part| &part.what) {
                Some(What::Word("origin")) => Ending::Origin,
                Some(What::Word("insertion")) => Ending::Insertion,
                _ => Ending::Either,
            };
            return lexicon::end_told(ending, preposition).is_some().then(|| bound(ending));
        }
        let is_first = (0..start).all(|place| self.mention(place).is_none());
        (is_first && !self.has_verb() && self.names_no_nerve()).then(|| bound(Ending::Way))
    }

    /// "*From the ischial tuberosity* spring semitendinosus and …": the verb and its subject stand behind the place.
    fn inverted_end(&self, binder: usize, preposition: &str, place: usize) -> Option<Bound> {
        let mut next = self.behind_bracket(place + 1);
        while lexicon::is_adverb(self.word(next))
            || lexicon::is_auxiliary(self.word(next))
            || matches!(self.word(next), "," | "there")
        {
            next += 1;
        }
        let words = self.written(next);
        let ending = words.split(' ').find_map(lexicon::ending)?;
        lexicon::end_told(ending, preposition)?;
        let mut name = next + 1;
        while lexicon::is_determiner(self.word(name))
            || lexicon::is_muscle_noun(self.word(name))
            || lexicon::is_adverb(self.word(name))
        {
            name += 1;
        }
        let group = self.mention(name).and_then(|_| self.group_from(name, true))?;
        let subject = self.sides(&group, PartRole::Muscle);
        (!subject.is_empty()).then(|| Bound {
            ending,
            preposition: preposition.to_owned(),
            cue: binder,
            subject: Some(subject),
            beside: None,
            is_loose: false,
        })
    }
}
