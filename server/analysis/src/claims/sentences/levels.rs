//! Claims of roots by what is named: in a clause with one row of nerves or muscles, one set of segments and a word that
//! speaks of roots or supply, the segments are said to be theirs, whatever verb joins the two and whichever comes first. "In
//! the ulnar nerve *run fibres of* C8 and T1." "Tibialis anterior *is largely an* L4 *muscle*." Another name, a denial or a
//! word of place ends the attempt.

use std::ops::Range;

use fascicle_model::{Kind, Relation};

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use super::territories::split;
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

impl Sentence<'_, '_> {
    /// The claims of roots of clauses in which no other reading has found any.
    pub(super) fn rooted_by_types(&self, told: &[Claim]) -> Vec<Claim> {
        let has_segments = self.atoms.iter().any(|atom| matches!(atom.kind, AtomKind::Segments(_)));
        if !has_segments || self.speaks_of_lesion() {
            return Vec::new();
        }
        let mut claims = Vec::new();
        for clause in self.clauses() {
            let whole = self.rooted_within(&clause, &clause, told);
            if whole.is_empty() {
                let pieces = self.pieces(&clause).into_iter();
                claims.extend(pieces.flat_map(|piece| self.rooted_within(&piece, &clause, told)));
            } else {
                claims.extend(whole);
            }
        }
        claims
    }

    /// "C5 – shoulder abduction", "the ankle jerk is mediated by S1": a movement or a reflex and its segments, with nothing beside
    /// them that is not understood.
    pub(super) fn levels_of_movements(&self) -> Vec<Claim> {
        let has_segments = self.atoms.iter().any(|atom| matches!(atom.kind, AtomKind::Segments(_)));
        if !has_segments || self.speaks_of_lesion() {
            return Vec::new();
        }
        let whole = 0..self.atoms.len();
        let claim = self.level_within(&whole);
        if claim.is_some() {
            return claim.into_iter().collect();
        }
        let ends = |at: usize| matches!(self.word(at), ";" | "," | "and") || lexicon::is_contrast(self.word(at));
        split(&whole, &ends).iter().filter_map(|piece| self.level_within(piece)).collect()
    }

    fn level_within(&self, range: &Range<usize>) -> Option<Claim> {
        let mut segments = None;
        let mut carried: Option<Vec<Part>> = None;
        let mut hedged = false;
        let mut at = range.start;
        while at < range.end {
            let atom = self.atoms.get(at)?;
            match &atom.kind {
                AtomKind::Segments(reading) if segments.is_none() => segments = Some((at, *reading)),
                AtomKind::Movement(movement) if movement.form == MovementForm::Noun && carried.is_none() => {
                    let (target, end) = self.moved(at);
                    let span = self.source(at, at + 1);
                    let mut parts =
                        vec![Part { role: PartRole::Movement, span, what: What::Entry(vec![movement.movement]) }];
                    parts.extend(target.map(|side| Part { role: PartRole::Joint, span: side.span, what: side.what }));
                    carried = Some(parts);
                    at = end.max(at + 1);
                    continue;
                }
                // "knee flexion": a joint before its movement
                AtomKind::Name(_)
                    if matches!(self.atoms.get(at + 1).map(|atom| &atom.kind), Some(AtomKind::Movement(_))) =>
                {
                    self.side(at, PartRole::Joint)?;
                }
                AtomKind::Name(_) | AtomKind::Word if carried.is_none() && self.reflex_at(at).is_some() => {
                    let (name, end) = self.reflex_at(at)?;
                    let span = self.source(at, end);
                    carried = Some(vec![Part { role: PartRole::Sign, span, what: What::Sign(name) }]);
                    at = end;
                    continue;
                }
                AtomKind::Word | AtomKind::Relation(_) => {
                    let written = self.written(at);
                    let is_plain = |word: &str| {
                        lexicon::joins_level(word)
                            || lexicon::is_adverb(word)
                            || lexicon::is_auxiliary(word)
                            || lexicon::is_determiner(word)
                    };
                    if !written.split(' ').all(is_plain) {
                        return None;
                    }
                    hedged |= lexicon::is_hedge(&written);
                }
                _ => return None,
            }
            at += 1;
        }
        let ((place, reading), carried) = (segments?, carried?);
        let span = self.source(place, place + 1);
        let first = carried.first()?.span;
        let mut parts = carried;
        parts.push(Part { role: PartRole::Segments, span, what: What::Segments(reading.main, reading.lesser) });
        Some(Claim { span: self.claim_span(place, first, span), parts, hedged, ..self.empty_claim(ClaimKind::Roots) })
    }

    /// The tendon reflex that is named at an atom, as the vocabulary calls it, and the atom behind its noun.
    fn reflex_at(&self, at: usize) -> Option<(String, usize)> {
        let mut noun = at + 1;
        while matches!(self.word(noun), "tendon" | "deep" | "stretch") {
            noun += 1;
        }
        if !lexicon::is_reflex_noun(self.word(noun)) {
            return None;
        }
        let written = self.written(at);
        let first = written.split(' ').next()?;
        let other = lexicon::REFLEX_WORDS.iter().find(|(word, _)| *word == first).map(|(_, name)| *name);
        let name = other.unwrap_or(first);
        let is_known =
            |fact: &fascicle_model::Fact| matches!(&fact.relation, Relation::Reflex { reflex } if reflex == name);
        let mut entries = self.scope.vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Root);
        entries.any(|(_, entry)| entry.facts.iter().any(is_known)).then(|| (name.to_owned(), noun + 1))
    }

    fn rooted_within(&self, range: &Range<usize>, clause: &Range<usize>, told: &[Claim]) -> Vec<Claim> {
        let is_segments =
            |at: &usize| matches!(self.atoms.get(*at).map(|atom| &atom.kind), Some(AtomKind::Segments(_)));
        let mut all = range.clone().filter(is_segments);
        let (Some(segments), None) = (all.next(), all.next()) else { return Vec::new() };
        let Some(AtomKind::Segments(reading)) = self.atoms.get(segments).map(|atom| &atom.kind) else {
            return Vec::new();
        };
        if self.is_told(range, told, &[ClaimKind::Roots, ClaimKind::Skin, ClaimKind::Branching, ClaimKind::Deficit]) {
            return Vec::new();
        }
        let Some((owner, sides)) = self.rooted(range) else { return Vec::new() };
        let is_outside = |at: &usize| *at != segments && !owner.contains(at);
        let words = |at: usize, is: &dyn Fn(&str) -> bool| self.written(at).split([' ', '-']).any(is);
        if range.clone().filter(is_outside).any(|at| words(at, &|word| lexicon::parts_segments(word))) {
            return Vec::new();
        }
        let speaks = |mut atoms: Range<usize>| {
            atoms.any(|at| is_outside(&at) && words(at, &|word| lexicon::speaks_of_segments(word)))
        };
        if !(speaks(range.clone())
            || self.is_said_to_be(range, &owner, segments)
            || (range != clause && speaks(clause.clone())))
        {
            return Vec::new();
        }
        let hedged = self.clause_hedged(segments);
        let span = self.source(segments, segments + 1);
        let claim = |side: Side| {
            let parts = vec![
                Part { role: PartRole::Structure, span: side.span, what: side.what },
                Part { role: PartRole::Segments, span, what: What::Segments(reading.main, reading.lesser) },
            ];
            Claim {
                span: self.claim_span(segments, side.span, span),
                parts,
                hedged,
                ..self.empty_claim(ClaimKind::Roots)
            }
        };
        sides.into_iter().map(claim).collect()
    }

    /// "X is C5", "X is largely an L4 muscle": nothing but a copula between the two.
    fn is_said_to_be(&self, range: &Range<usize>, owner: &Range<usize>, segments: usize) -> bool {
        let is_plain = |at: usize| {
            let word = self.word(at);
            lexicon::is_auxiliary(word)
                || lexicon::is_adverb(word)
                || lexicon::is_determiner(word)
                || matches!(
                    word,
                    "," | "from"
                        | "by"
                        | "with"
                        | "essentially"
                        | "basically"
                        | "strictly"
                        | "mostly"
                        | "that's"
                        | "it's"
                        | "well"
                )
        };
        let behind = segments + 1;
        let ends = behind >= range.end
            || self.ends_clause(behind)
            || matches!(self.word(behind), "muscle" | "muscles" | "nerve");
        let is_copula = |at: usize| lexicon::is_auxiliary(self.word(at)) || matches!(self.word(at), "that's" | "it's");
        let mut between = owner.end..segments.max(owner.end);
        ends && between.clone().all(is_plain) && between.any(is_copula)
    }

    /// The nerves or muscles whose segments a stretch tells; `None` if it names something else as well.
    fn rooted(&self, range: &Range<usize>) -> Option<(Range<usize>, Vec<Side>)> {
        let mut found: Option<(Range<usize>, Vec<Side>)> = None;
        let mut at = range.start;
        while at < range.end {
            match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) => {
                    let group = self.group_from(at, true)?;
                    let place = at..group.end;
                    at = group.end.max(at + 1);
                    let before =
                        self.before_determiners(place.start).checked_sub(1).filter(|before| *before >= range.start);
                    let governs = before.map(|before| self.written(before)).unwrap_or_default();
                    let governs = governs.rsplit(' ').next().unwrap_or_default();
                    if matches!(governs, "from" | "off") || (found.is_some() && self.is_source_of_nerve(place.start)) {
                        continue; // where it comes from
                    }
                    let is_place = matches!(governs, "within" | "in" | "inside" | "behind" | "on" | "beneath");
                    if is_place && self.class(place.start) != Some(0) {
                        continue; // "is formed *within psoas major* from …"
                    }
                    // "the roots *contributing to* the nerve"
                    let goes_in = matches!(governs, "to" | "into" | "for")
                        && (range.start..place.start).any(|at| self.written(at).split(' ').any(lexicon::goes_into));
                    if !goes_in && matches!(governs, "via" | "through" | "by" | "with" | "to" | "into") {
                        return None;
                    }
                    let fits = group.members.iter().all(|member| self.has_roots(*member));
                    if found.is_some() || !fits || group.denied || group.partial || !group.except.is_empty() {
                        return None;
                    }
                    let sides = self.sides(&group, PartRole::Structure);
                    found = Some((place, sides));
                    continue;
                }
                Some(AtomKind::Movement(_)) => return None,
                _ => {}
            }
            at += 1;
        }
        let (place, sides) = found.or_else(|| self.pronoun_with_roots(range)).or_else(|| self.rooted_above(range))?;
        (!sides.is_empty()).then_some((place, sides))
    }

    /// "Below a heading: *From the medial cord, with fibres of C8 and T1.*": the nerve that was spoken of.
    fn rooted_above(&self, range: &Range<usize>) -> Option<(Range<usize>, Vec<Side>)> {
        let first = range.clone().find(|at| !lexicon::is_bullet(self.word(*at)))?;
        let written = self.written(first);
        let leads = matches!(
            written.split(' ').next().unwrap_or_default(),
            "from" | "with" | "carries" | "carrying" | "arises" | "derived" | "formed" | "off"
        );
        let sides = if leads && !self.has_verb() { self.implied(PartRole::Nerve, false) } else { Vec::new() };
        (sides.len() == 1).then_some((first..first, sides))
    }

    /// Whether the name at an atom is one of what has roots, and what is named is a structure of its own.
    fn has_roots(&self, at: usize) -> bool {
        let vocabulary = self.scope.vocabulary;
        self.mention(at).is_some_and(|mention| {
            mention.candidates.iter().all(|id| match vocabulary.kind(*id) {
                Kind::Nerve | Kind::Plexus | Kind::Muscle => true,
                Kind::Group => !vocabulary.members(*id).is_empty(),
                _ => false,
            })
        })
    }

    /// "*Its* fibres come from …", "*this nerve* takes …"
    fn pronoun_with_roots(&self, range: &Range<usize>) -> Option<(Range<usize>, Vec<Side>)> {
        let noun = |at: usize| if lexicon::points_back(self.word(at)) { self.word(at + 1) } else { "" };
        let is_pronoun = |at: &usize| matches!(self.word(*at), "it" | "its") || matches!(noun(*at), "nerve" | "muscle");
        let mut pronouns = range.clone().filter(is_pronoun);
        let (at, None) = (pronouns.next()?, pronouns.next()) else { return None };
        let roles: &[PartRole] = match noun(at) {
            "nerve" => &[PartRole::Nerve],
            "muscle" => &[PartRole::Muscle],
            _ => &[PartRole::Nerve, PartRole::Muscle],
        };
        let meant = |role: &PartRole| {
            let sides = if noun(at).is_empty() { self.meant_here(at, *role) } else { self.implied(*role, false) };
            (!sides.is_empty()).then_some(sides)
        };
        let sides = roles.iter().find_map(meant)?;
        Some((at..at + 1 + usize::from(!noun(at).is_empty()), sides))
    }
}
