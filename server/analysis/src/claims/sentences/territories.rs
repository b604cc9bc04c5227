//! Claims of skin by what is named: in a clause with one row of nerves (or segments), one description of an area and a word
//! that speaks of feeling or of whose the area is, the nerves feel the area, whatever verb joins the two and whichever comes
//! first. "The medial side of the leg *is in the territory of* the saphenous nerve." "*Touch* at the tip of the thumb travels
//! in the median nerve." Whatever may mean something else (a way past the area, a comparison, a denial, another name) ends
//! the attempt.

use std::ops::Range;

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, PartRole, What};
use crate::lexicon::{self, Form};
use crate::text::Span;
use crate::words::without_possessive;

/// A description of areas in a clause.
struct Stretch {
    at: Range<usize>,
    areas: Vec<Side>,
}

/// Who feels, in a clause.
struct Feeler {
    at: Range<usize>,
    sides: Vec<Side>,
    /// It stands in a possessive: "is the ulnar nerve's".
    owns: bool,
    /// Spinal segments, which tell a level of the trunk as well.
    is_segments: bool,
    /// It is told by its sensory branches, so that nothing else needs to speak of feeling.
    is_sensory: bool,
}

/// No description of an area is longer.
const LONGEST: usize = 12;

impl Sentence<'_, '_> {
    /// The claims of skin of clauses in which no other reading has found any.
    pub(super) fn felt_by_types(&self, told: &[Claim]) -> Vec<Claim> {
        let has_area = (0..self.atoms.len()).any(|at| self.is_area_anchor(at));
        if !has_area || self.speaks_of_lesion() {
            return Vec::new();
        }
        let mut claims = Vec::new();
        for clause in self.clauses() {
            // "MUSCLE (C5, …": the segments are those of the name before the bracket.
            let is_of_name = clause.start.checked_sub(2).is_some_and(|before| self.mention(before).is_some());
            let begins_with_roots =
                matches!(self.atoms.get(clause.start).map(|atom| &atom.kind), Some(AtomKind::Segments(_)));
            if is_of_name && begins_with_roots && self.word(clause.start - 1) == "(" {
                continue;
            }
            let whole = self.felt_within(&clause, &clause, told);
            if whole.is_empty() {
                let pieces = self.pieces(&clause).into_iter();
                claims.extend(pieces.flat_map(|piece| self.felt_within(&piece, &clause, told)));
            } else {
                claims.extend(whole);
            }
        }
        claims
    }

    /// Whether a word of hurting or losing stands in the sentence: what is told of a lesion is read elsewhere.
    pub(super) fn speaks_of_lesion(&self) -> bool {
        let tells = |at: usize| {
            let written = self.written(at);
            let is_hurt = |word: &str| {
                lexicon::is_lesion(word) || lexicon::is_cut(word) || lexicon::is_loss(word) || lexicon::lesions(word)
            };
            written.split(' ').any(is_hurt)
        };
        (0..self.atoms.len()).any(tells)
    }

    /// The clauses of the sentence: what stands between semicolons, colons, dashes, brackets and words of contrast.
    pub(super) fn clauses(&self) -> Vec<Range<usize>> {
        let ends = |at: usize| {
            let word = self.word(at);
            matches!(word, ";" | ":" | "—" | "–" | "(" | ")" | ".") || lexicon::is_contrast(word)
        };
        split(&(0..self.atoms.len()), &ends)
    }

    /// What stands between the commas and conjunctions of a clause.
    pub(super) fn pieces(&self, clause: &Range<usize>) -> Vec<Range<usize>> {
        split(clause, &|at| matches!(self.word(at), "," | "and" | "so"))
    }

    /// Whether a claim that has been read tells of a clause.
    pub(super) fn is_told(&self, range: &Range<usize>, told: &[Claim], kinds: &[ClaimKind]) -> bool {
        let span = self.source(range.start, range.end);
        let is_here = |part: Span| span.contains(part);
        told.iter()
            .filter(|claim| kinds.contains(&claim.kind))
            .any(|claim| claim.block == self.scope.block && claim.parts.iter().any(|part| is_here(part.span)))
    }

    /// The claims of a stretch of a clause, which may have the word that speaks of feeling outside of it.
    fn felt_within(&self, range: &Range<usize>, clause: &Range<usize>, told: &[Claim]) -> Vec<Claim> {
        const OTHERS: [ClaimKind; 4] = [ClaimKind::Skin, ClaimKind::Roots, ClaimKind::Supply, ClaimKind::Deficit];
        if !range.clone().any(|at| self.is_area_anchor(at)) || self.is_told(range, told, &OTHERS) {
            return Vec::new();
        }
        let [Stretch { at: area, areas }] = &*self.stretches(range) else { return Vec::new() };
        let Some(feeler) = self.feeler(range, area) else { return Vec::new() };
        let is_outside = |at: &usize| !area.contains(at) && !feeler.at.contains(at);
        // "… *down to the wrist*": how far it goes.
        let is_end = |at: usize| {
            let before = self.before_determiners(at).checked_sub(1);
            at >= area.end
                && matches!(self.class(at), Some(3 | 4))
                && before.is_some_and(|place| matches!(self.word(place), "to" | "from" | "at"))
        };
        if range.clone().filter(is_outside).any(|at| self.parts_area(at) && !is_end(at))
            || !self.belongs(range, clause, area, &feeler)
        {
            return Vec::new();
        }
        self.felt(range.start, &feeler.sides, areas, false, false)
    }

    /// Whether the words of a clause say that an area is felt by whom it names.
    fn belongs(&self, range: &Range<usize>, clause: &Range<usize>, area: &Range<usize>, feeler: &Feeler) -> bool {
        let is_word = |at: usize, is: &dyn Fn(&str) -> bool| self.written(at).split([' ', '-']).any(is);
        let is_outside = |at: &usize| !feeler.at.contains(at);
        let feels = |mut atoms: Range<usize>| {
            atoms.any(|at| is_outside(&at) && is_word(at, &|word| lexicon::speaks_of_feeling(word)))
        };
        // "The facial nerve supplies the lower lip": its muscles, or its skin.
        let may_own = feeler.sides.iter().all(|side| self.only_feels(side))
            || (area.start.saturating_sub(3)..area.end).any(|at| {
                is_word(at, &|word| {
                    lexicon::tells_surface(word)
                        || matches!(
                            word,
                            "pulp"
                                | "tip"
                                | "pad"
                                | "cleft"
                                | "area"
                                | "bed"
                                | "eminence"
                                | "crease"
                                | "badge"
                                | "patch"
                        )
                })
            });
        let owns = |mut atoms: Range<usize>| {
            may_own
                && atoms
                    .any(|at| is_outside(&at) && !area.contains(&at) && is_word(at, &|word| lexicon::owns_area(word)))
        };
        if self.governs_way(area.start) {
            return false;
        }
        if feeler.is_sensory {
            return true;
        }
        if feeler.is_segments {
            let is_dermatome = is_word(feeler.at.start, &|word| lexicon::speaks_of_feeling(word));
            // "The umbilicus lies at the level of L3": of a vertebra.
            let tells_level =
                clause.clone().any(|at| is_word(at, &|word| matches!(word, "level" | "opposite" | "height")));
            let tells_segment = is_dermatome
                || feels(clause.clone())
                || clause.clone().any(|at| is_word(at, &|word| matches!(word, "segment" | "segments")));
            // "Big toe L5": no vertebra lies there.
            let is_pair = range.clone().all(|at| {
                area.contains(&at)
                    || feeler.at.contains(&at)
                    || !self.word(at).chars().any(char::is_alphanumeric) && !self.word(at).is_empty()
                    || lexicon::is_determiner(self.word(at))
            });
            return tells_segment || (self.scope.of_skin && !tells_level) || (is_pair && self.is_of_limb(area));
        }
        if feeler.at.start < area.start {
            // "The nerve, a sensory branch, *runs down* the medial side of the leg": what follows the way is what counts.
            let behind =
                (feeler.at.end..area.start).rev().find(|at| self.tells_motion(*at)).map_or(feeler.at.end, |at| at + 1);
            let tested = (feeler.at.end..area.start).any(|at| is_word(at, &|word| lexicon::tests_feeling(word)))
                && area.start.checked_sub(1).is_some_and(|_| {
                    let before = self.before_determiners(area.start);
                    before
                        .checked_sub(1)
                        .is_some_and(|place| matches!(self.word(place), "over" | "on" | "at" | "in" | "along"))
                });
            // "The skin innervated by the nerve is that of the sole"
            let is_plain = |word: &str| {
                lexicon::is_auxiliary(word)
                    || lexicon::is_determiner(word)
                    || lexicon::is_adverb(word)
                    || matches!(word, "of" | "over" | "on" | "includes" | "covers" | "comprises" | "include")
            };
            let is_copula = feels(range.start..feeler.at.start)
                && (feeler.at.end..area.start).all(|at| self.written(at).split(' ').all(is_plain));
            return tested
                || is_copula
                || feels(behind..area.end)
                || owns(behind..area.start)
                || feels(area.end..range.end);
        }
        let ends = self.ends_clause(feeler.at.end) || feeler.at.end >= range.end;
        let is_plain = |word: &str| {
            lexicon::is_auxiliary(word)
                || lexicon::is_adverb(word)
                || lexicon::is_determiner(word)
                || matches!(word, "," | "under" | "with" | "down" | "to" | "by" | "via" | "that's" | "it's" | "well")
        };
        let is_verb = |word: &str| {
            lexicon::is_auxiliary(word) && !matches!(word, "has" | "have") || matches!(word, "that's" | "it's")
        };
        let mut between = area.end..feeler.at.start.max(area.end);
        let is_copula = between.clone().all(|at| self.written(at).split(' ').all(is_plain))
            && between.any(|at| self.written(at).split(' ').any(is_verb));
        (feeler.owns && ends)
            || (is_copula && ends && feeler.at.start > area.end)
            || feels(range.clone())
            || owns(area.end..range.end)
            || (range != clause && (feels(clause.clone()) || owns(clause.clone())) && feeler.at.start > area.end)
    }

    /// Whether the areas of a stretch lie on a limb.
    fn is_of_limb(&self, area: &Range<usize>) -> bool {
        use fascicle_model::Region::{Arm, Foot, Forearm, Hand, Leg, Thigh};
        let areas = self.areas_between(area.start, area.end, true);
        let mut ids = areas.iter().flat_map(|side| side.what.entries());
        ids.all(|id| matches!(self.scope.vocabulary.entry(*id).region, Arm | Foot | Forearm | Hand | Leg | Thigh))
    }

    /// Whether an atom tells of a way, so that an area behind it is where the nerve runs.
    fn tells_motion(&self, at: usize) -> bool {
        match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => {
                matches!(relation.kind, ClaimKind::Passage | ClaimKind::Attachment | ClaimKind::Renaming)
            }
            _ => lexicon::moves_on(self.word(at)) && !lexicon::is_auxiliary(self.word(at)),
        }
    }

    /// Whether the area at an atom hangs on a word of the way past it.
    fn governs_way(&self, at: usize) -> bool {
        let before = self.before_determiners(at);
        let is_way = |place: usize| self.written(place).split(' ').any(lexicon::passes_area);
        let Some(place) = before.checked_sub(1) else { return false };
        // "is deep to the palm", "enters the palm"
        is_way(place) || (matches!(self.word(place), "to" | "of" | "the") && place.checked_sub(1).is_some_and(is_way))
    }

    /// Whether an atom keeps a nerve and an area of its clause apart.
    fn parts_area(&self, at: usize) -> bool {
        match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_) | AtomKind::Movement(_)) => true,
            Some(AtomKind::Relation(relation)) => {
                (relation.kind == ClaimKind::Branching && relation.form == Form::Verb)
                    || matches!(relation.kind, ClaimKind::Joint | ClaimKind::Attachment)
                    || self.written(at).split([' ', '-']).any(lexicon::parts_area)
            }
            _ => lexicon::parts_area(self.word(at)),
        }
    }

    /// The one that feels, among what a clause names outside of an area; `None` if there is none or more than one row.
    fn feeler(&self, range: &Range<usize>, area: &Range<usize>) -> Option<Feeler> {
        let mut found: Option<Feeler> = None;
        let mut at = range.start;
        while at < range.end {
            if area.contains(&at) {
                at = area.end;
                continue;
            }
            let here = match self.atoms.get(at).map(|atom| &atom.kind) {
                Some(AtomKind::Name(_)) if self.class(at) == Some(0) => {
                    let group = self.group_from(at, true).filter(|group| !group.denied && group.except.is_empty())?;
                    let sides = self.sides(&group, PartRole::Nerve);
                    let last = self.written(group.end.checked_sub(1)?);
                    let owns = without_possessive(&last) < last.len();
                    Some(Feeler { at: at..group.end, sides, owns, is_segments: false, is_sensory: false })
                }
                Some(AtomKind::Segments(reading)) => {
                    let what = What::Segments(reading.main, reading.lesser);
                    let sides = vec![Side { what, span: self.source(at, at + 1) }];
                    Some(Feeler { at: at..at + 1, sides, owns: false, is_segments: true, is_sensory: false })
                }
                _ => None,
            };
            let Some(here) = here else {
                at += 1;
                continue;
            };
            // "the greater occipital nerve, from the dorsal ramus of C2": where it comes from.
            let is_origin = found.is_some() && self.is_source_of_nerve(here.at.start);
            at = here.at.end.max(at + 1);
            if is_origin {
                continue;
            }
            if found.is_some() || here.sides.is_empty() {
                return None;
            }
            found = Some(here);
        }
        found
            .or_else(|| self.pronoun_that_feels(range, area))
            .or_else(|| self.label_that_feels(range))
            .or_else(|| self.branches_that_feel(range))
    }

    /// "*Axillary nerve:* check light touch over …": the nerve that leads a clause.
    fn label_that_feels(&self, range: &Range<usize>) -> Option<Feeler> {
        let sign = range.start.checked_sub(1).filter(|sign| lexicon::is_value_sign(self.word(*sign)))?;
        let group = self.group_to(sign)?;
        let first = group.members.first().copied()?;
        let leads = (0..first).all(|at| lexicon::is_determiner(self.word(at)) || lexicon::is_bullet(self.word(at)));
        let sides = self.sides(&group, PartRole::Nerve);
        (leads && self.class(first) == Some(0) && !sides.is_empty()).then_some(Feeler {
            at: range.start..range.start,
            sides,
            owns: false,
            is_segments: false,
            is_sensory: false,
        })
    }

    /// "*Sensory branches* go to …", below a heading or behind a sentence that names the nerve.
    fn branches_that_feel(&self, range: &Range<usize>) -> Option<Feeler> {
        let first =
            range.clone().find(|at| !lexicon::is_bullet(self.word(*at)) && !lexicon::is_determiner(self.word(*at)))?;
        let written = self.written(first);
        let mut words = written.split(' ');
        let leads = matches!(words.next(), Some("sensory" | "cutaneous"));
        let next = words.next().map_or_else(|| self.written(first + 1), str::to_owned);
        let leads = leads
            && (lexicon::is_noun_of_part(&next)
                || matches!(
                    &*next,
                    "fibres"
                        | "fibers"
                        | "twigs"
                        | "supply"
                        | "territory"
                        | "distribution"
                        | "area"
                        | "field"
                        | "zone"
                        | "innervation"
                        | "component"
                ));
        let sides = if leads { self.implied(PartRole::Nerve, false) } else { Vec::new() };
        (sides.len() == 1).then_some(Feeler {
            at: first..first + 1,
            sides,
            owns: false,
            is_segments: false,
            is_sensory: true,
        })
    }

    /// Whether the name at an atom tells where another nerve comes from.
    pub(super) fn is_source_of_nerve(&self, at: usize) -> bool {
        let before = self.before_determiners(at);
        before.checked_sub(1).is_some_and(|place| {
            matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Relation(relation)) if relation.kind == ClaimKind::Branching)
                || matches!(self.word(place), "of" | "from") && place > 0 && lexicon::is_noun_of_part(self.word(place - 1))
        })
    }

    /// A pronoun that stands for the nerve: "*it* brings back sensation from …", "*its* field is …".
    fn pronoun_that_feels(&self, range: &Range<usize>, area: &Range<usize>) -> Option<Feeler> {
        let is_pronoun = |at: &usize| {
            matches!(self.word(*at), "it" | "its")
                || (lexicon::points_back(self.word(*at)) && lexicon::is_nerve_noun(self.word(*at + 1)))
        };
        let mut pronouns = range.clone().filter(|at| !area.contains(at) && is_pronoun(at));
        let (at, None) = (pronouns.next()?, pronouns.next()) else { return None };
        // "The palm keeps *its* feeling": that of the palm.
        let is_of_area = self.word(at) == "its"
            && at > area.start
            && !at.checked_sub(1).is_some_and(|place| lexicon::is_auxiliary(self.word(place)));
        if is_of_area {
            return None;
        }
        let is_noun = !matches!(self.word(at), "it" | "its");
        let sides = if is_noun { self.implied(PartRole::Nerve, false) } else { self.meant_here(at, PartRole::Nerve) };
        let end = at + 1 + usize::from(is_noun);
        (!sides.is_empty()).then_some(Feeler { at: at..end, sides, owns: false, is_segments: false, is_sensory: false })
    }

    /// Whether the description of an area may end with an atom: with the noun of one.
    fn is_area_anchor(&self, at: usize) -> bool {
        if matches!(self.atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Segments(_))) {
            return false;
        }
        match self.class(at) {
            Some(0) => false,
            Some(5) => true,
            _ => {
                let tokens = &self.scope.mentions.tokens;
                let last = self.atoms.get(at).and_then(|atom| tokens.get(atom.to.checked_sub(1)?));
                let word = last.map_or("", |token| token.span.of(&self.scope.plain.text)).to_lowercase();
                self.scope.relations.is_area_noun(&word)
            }
        }
    }

    /// Whether the name at an atom is that of muscles or a joint. A part of the body that is moved has skin.
    fn is_muscle_or_joint(&self, at: usize) -> bool {
        let vocabulary = self.scope.vocabulary;
        self.mention(at).is_some_and(|mention| {
            mention.candidates.iter().any(|id| match vocabulary.kind(*id) {
                Kind::Muscle | Kind::Joint => true,
                Kind::Group => !vocabulary.members(*id).is_empty(),
                _ => false,
            })
        })
    }

    /// The areas that a clause describes, each description as long as it can be.
    fn stretches(&self, range: &Range<usize>) -> Vec<Stretch> {
        let mut list: Vec<Stretch> = Vec::new();
        let mut from = range.start;
        while from < range.end {
            let may_begin = self.class(from) != Some(0)
                && !lexicon::is_determiner(self.word(from))
                && (!lexicon::is_preposition(self.word(from)) || lexicon::tells_part(self.word(from)))
                && !lexicon::is_conjunction(self.word(from));
            // "Deltoid" alone is the muscle, though there is skin over it.
            let is_structure = |end: usize| end == from + 1 && self.is_muscle_or_joint(from);
            let ends = (from + 1..=range.end.min(from + LONGEST)).rev();
            let ends = ends.filter(|end| self.is_area_anchor(*end - 1) && !is_structure(*end));
            let found = if may_begin {
                ends.map(|end| (end, self.areas_between(from, end, true))).find(|(_, areas)| !areas.is_empty())
            } else {
                None
            };
            let Some((end, areas)) = found else {
                from += 1;
                continue;
            };
            if self.is_whole_description(range, from, end) {
                list.push(Stretch { at: from..end, areas });
            } else {
                // Part of something that is not understood: as good as an unknown area.
                list.push(Stretch { at: from..end, areas: Vec::new() });
            }
            from = end;
        }
        list
    }

    /// Whether nothing right before or behind a description makes it that of another place ("the *medial side of the* elbow",
    /// "the thumb *joints*").
    fn is_whole_description(&self, range: &Range<usize>, from: usize, end: usize) -> bool {
        let first = self.before_determiners(from).max(range.start);
        let before = first.checked_sub(1).filter(|place| *place >= range.start);
        let fits_before = before.is_none_or(|place| {
            let word = self.word(place);
            if word == "of" {
                let noun = place.checked_sub(1).map_or("", |noun| self.word(noun));
                return noun.is_empty()
                    || lexicon::is_neutral_of(noun)
                    || lexicon::speaks_of_feeling(noun)
                    || lexicon::owns_area(noun);
            }
            first < from
                || !word.chars().any(char::is_alphabetic)
                || lexicon::is_preposition(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_auxiliary(word)
                || lexicon::is_adverb(word)
                || lexicon::speaks_of_feeling(word)
                || lexicon::owns_area(word)
                || lexicon::is_size(word)
                || word.is_empty()
        });
        let word = self.word(end);
        let fits_behind = end >= range.end
            || !word.chars().any(char::is_alphabetic)
            || lexicon::is_auxiliary(word)
            || lexicon::is_preposition(word)
            || lexicon::is_conjunction(word)
            || lexicon::is_adverb(word)
            || lexicon::is_relative(word)
            || lexicon::is_neutral_behind(word)
            || lexicon::owns_area(word)
            || (word.ends_with('s')
                && (lexicon::is_preposition(self.word(end + 1)) || lexicon::is_determiner(self.word(end + 1))))
            || word.ends_with("ed");
        let is_name =
            matches!(self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Name(_) | AtomKind::Movement(_)));
        fits_before && fits_behind && !(is_name && end < range.end)
    }
}

/// The stretches of a range between the atoms that end one.
pub(super) fn split(range: &Range<usize>, ends: &dyn Fn(usize) -> bool) -> Vec<Range<usize>> {
    let mut list = Vec::new();
    let mut start = range.start;
    for at in range.start..=range.end {
        if at == range.end || ends(at) {
            if start < at {
                list.push(start..at);
            }
            start = at + 1;
        }
    }
    list
}
