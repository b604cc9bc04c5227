//! Numbers in clauses that no list of verbs knows: what is counted, and the one structure of the clause that has so many
//! of it, tell what is claimed, whatever words stand between ("breaks up, within the gland, into four terminal branches").
//!
//! A number that is too small may be that of some of them; it is read only where the clause says that it tells of all.

use fascicle_model::{EntryId, Kind};

use super::Sentence;
use super::counts::Told;
use super::sides::Side;
use crate::claims::{Claim, PartRole, What};
use crate::lexicon;
use crate::verdicts;

impl Sentence<'_, '_> {
    /// The claims of the number at an atom, by what the names of its clause are.
    pub(super) fn tally_claims(&self, at: usize, counted: Option<&Told>) -> Vec<Claim> {
        let (start, stop) = self.clause_around(at);
        if (start..at).any(|place| lexicon::is_negation(self.word(place))) || self.is_vague(at) {
            return Vec::new();
        }
        match counted {
            Some(told) => self.tally_of_parts(told, start, stop),
            None => self.tally_of_members(at, start, stop),
        }
    }

    /// The clause in which an atom stands, from mark to mark.
    pub(super) fn clause_around(&self, at: usize) -> (usize, usize) {
        let ends = |place: &usize| {
            let word = self.word(*place);
            matches!(word, ";" | ":" | "—" | "–" | "(" | ")" | ".")
                || lexicon::is_contrast(word)
                || lexicon::is_bullet(word)
        };
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let stop = (at..self.atoms.len()).find(ends).unwrap_or(self.atoms.len());
        (start, stop)
    }

    /// "about three", "at least two", "two of the three": no number that can be wrong by itself.
    fn is_vague(&self, at: usize) -> bool {
        let before = at.checked_sub(1).map_or("", |place| self.word(place));
        let two_before = at.checked_sub(2).map_or("", |place| self.word(place));
        lexicon::leaves_number_open(before)
            || (before == "than" && two_before != "more")
            || lexicon::ORDINALS.contains(&before)
            || (before == "the" && two_before == "of")
            || matches!(self.word(at + 1), "of" | "or" | "other" | "more" | "further" | "additional" | "%")
    }

    /// "… three heads": of the one structure of the clause that has heads.
    fn tally_of_parts(&self, told: &Told, start: usize, stop: usize) -> Vec<Claim> {
        let claims = self.tally_of_noun(told, told.noun, start, stop);
        match lexicon::also_counted(told.noun).filter(|_| claims.is_empty()) {
            Some(noun) => self.tally_of_noun(told, noun, start, stop),
            None => claims,
        }
    }

    fn tally_of_noun(&self, told: &Told, noun: &'static str, start: usize, stop: usize) -> Vec<Claim> {
        let behind = told.end - usize::from(told.binds);
        let knows = |id: &EntryId| verdicts::is_counted(self.scope.vocabulary, *id, noun);
        let mut bound = told.end;
        while told.binds && (lexicon::is_determiner(self.word(bound)) || lexicon::means_all(self.word(bound))) {
            bound += 1;
        }
        let is_bound_to = |place: usize| told.binds && place == bound;
        let owner = |place: usize| -> Option<Side> {
            // "the front *of NAME* has two"
            if place < told.at && self.is_of_a_part(place + 1) {
                return None;
            }
            // "two of the medial pterygoid laminae"
            if place >= behind && !is_bound_to(place) && !self.goes_on_plainly(place + 1) {
                return None;
            }
            let side = self.side(place, PartRole::Structure)?;
            let ids: Vec<EntryId> = side.what.entries().iter().copied().filter(knows).collect();
            (!ids.is_empty()).then_some(Side { what: What::Entry(ids), ..side })
        };
        let is_bound = told.binds && self.mention(bound).is_some();
        let owners: Vec<(usize, Side)> = if is_bound {
            owner(bound).into_iter().map(|side| (bound, side)).collect()
        } else {
            let others = (start..told.at).chain(behind..stop);
            others.filter_map(|place| Some((place, owner(place)?))).collect()
        };
        let (place, side) = match owners.as_slice() {
            [(place, side)] => (Some(*place), side.clone()),
            [] if !is_bound => {
                let Some(side) = self.meant_owner(told, start, stop) else { return Vec::new() };
                if !side.what.entries().iter().all(knows) {
                    return Vec::new();
                }
                (None, side)
            }
            owners => {
                // Of several the one that stands right before the number.
                let is_plain =
                    |place: usize| (place + 1..told.at).all(|between| lexicon::is_before_number(self.word(between)));
                let next = owners.iter().rev().find(|(place, _)| *place < told.at && is_plain(*place));
                let Some((place, side)) = next else { return Vec::new() };
                (Some(*place), side.clone())
            }
        };
        let (from, to) = match place {
            Some(place) if place < told.at => (place, told.at),
            Some(place) => (start, place),
            None => (start, stop),
        };
        let behind_word = self.word(behind);
        let is_limited = noun == "branches"
            && !is_bound
            && (lexicon::is_preposition(behind_word) || lexicon::is_relative(behind_word));
        let after = self.word(bound + 1);
        let tells = (from..to).any(|place| lexicon::tells_all(&self.written(place)))
            || (is_bound && matches!(after, "are" | "is" | "have") && lexicon::tells_of_parts(self.word(bound + 2)));
        let outright = tells && !is_limited && !told.sized && !self.narrows(start, told.at, stop);
        self.tally(side, told.number, noun, told.at, told.end, outright)
    }

    /// What has the parts where its clause does not name it: a pronoun stands for it, or nothing but the number is said.
    fn meant_owner(&self, told: &Told, start: usize, stop: usize) -> Option<Side> {
        let others = (start..told.at).chain(told.end - usize::from(told.binds)..stop);
        let mut others = others.filter(|place| !lexicon::is_bullet(self.word(*place)));
        let is_pronoun = |place: usize| matches!(self.word(place), "it" | "they" | "this" | "these");
        let has_pronoun = others.clone().any(is_pronoun);
        let is_alone =
            others.all(|place| lexicon::is_before_number(self.word(place)) || lexicon::is_adverb(self.word(place)));
        let sides = match (has_pronoun, is_alone) {
            (true, _) => self.recalled(PartRole::Structure, false),
            (_, true) => self.implied(told.counted.of, false),
            _ => Vec::new(),
        };
        let [side] = sides.as_slice() else { return None };
        Some(side.clone())
    }

    /// "… seven tarsal bones", "of the X there are five": how many members a group has.
    fn tally_of_members(&self, at: usize, start: usize, stop: usize) -> Vec<Claim> {
        let written = self.written(at);
        let Some(number) = lexicon::number(&written).filter(|number| *number > 1) else { return Vec::new() };
        let knows = |id: &EntryId| {
            let kind = self.scope.vocabulary.kind(*id);
            matches!(kind, Kind::Group | Kind::Muscle | Kind::Landmark)
                && verdicts::is_counted(self.scope.vocabulary, *id, "named")
        };
        let group = |place: usize| -> Option<Side> {
            let side = self.side(place, PartRole::Structure)?;
            let What::Entry(ids) = &side.what else { return None };
            ids.iter().all(knows).then_some(side)
        };
        let mut next = at + 1;
        while lexicon::is_before_counted(self.word(next)) || matches!(self.word(next), "short" | "small" | "little") {
            next += 1;
        }
        if let Some(side) = group(next) {
            if !self.is_plural_name(next) {
                return Vec::new();
            }
            let tells = (start..at).any(|place| lexicon::tells_all(&self.written(place)));
            let is_whole = !self.speaks_of_a_part(next) && !self.narrows(start, at, stop);
            let outright = tells && is_whole && self.goes_on_plainly(next + 1);
            return self.tally(side, number, "named", at, next + 1, outright);
        }
        // "Of NAME there are five", "NAME, five in all"
        let said = |from: usize| {
            let words: Vec<&str> = (from..from + 4).map(|place| self.word(place)).collect();
            from + lexicon::said_of_each(&words)
        };
        if !self.ends_clause(said(at + 1)) || self.word(at + 1) == "," {
            return Vec::new();
        }
        if let Some(claims) = self.tally_in_gap(at, number, start) {
            return claims;
        }
        let named: Vec<(usize, Side)> = (start..at).filter_map(|place| Some((place, group(place)?))).collect();
        let [(place, side)] = named.as_slice() else { return Vec::new() };
        let only = (start..at).filter(|place| self.mention(*place).is_some()).count() == 1;
        let plain = (place + 1..at).all(|between| lexicon::is_before_number(self.word(between)));
        let leads = *place == start || (start..*place).all(|before| lexicon::is_before_owner(self.word(before)));
        if !(only && plain && leads && self.is_plural_name(*place)) {
            return Vec::new();
        }
        self.tally(side.clone(), number, "named", at, at + 1, true)
    }

    /// "NAME has four muscles, OTHER three": the noun of the number before, and what stands right before this one. `None`
    /// where no number stands before.
    fn tally_in_gap(&self, at: usize, number: u32, start: usize) -> Option<Vec<Claim>> {
        let before = (start..at).rev().find_map(|place| self.number_at(place))?;
        let mut place = at.checked_sub(1)?;
        while place > before.end
            && (lexicon::is_before_number(self.word(place)) || lexicon::is_preposition(self.word(place)))
        {
            place -= 1;
        }
        let mut first = place;
        while first > before.end && lexicon::is_determiner(self.word(first - 1)) {
            first -= 1;
        }
        let begins = first.checked_sub(1).is_some_and(|mark| matches!(self.word(mark), "and" | ","));
        let side = self.side(place, PartRole::Structure).filter(|_| begins && first >= before.end);
        let knows = |id: &EntryId| verdicts::is_counted(self.scope.vocabulary, *id, before.noun);
        let side = side.filter(|side| side.what.entries().iter().all(knows));
        Some(side.map(|side| self.tally(side, number, before.noun, at, at + 1, true)).unwrap_or_default())
    }

    /// Whether the name at an atom is that of several.
    fn is_plural_name(&self, at: usize) -> bool {
        self.mention(at).is_some_and(|mention| {
            let is_of_many = |id: &EntryId| {
                self.scope.vocabulary.name(*id).ends_with('s')
                    || self.scope.vocabulary.members(*id).len() > 1
                    || self.scope.vocabulary.parts(*id).len() > 1
            };
            mention.plural || mention.candidates.iter().all(is_of_many)
        })
    }

    /// Whether words of a clause speak of a part of what is there: "on its medial side there are two", "two that flex".
    fn narrows(&self, start: usize, at: usize, stop: usize) -> bool {
        self.speaks_of_side(start, at)
            || (at + 1..stop).any(|place| lexicon::is_relative(self.word(place)))
            || self.is_shared_out(at)
    }

    /// Whether words before a number speak of one side or part: "*on its medial side* there are two".
    fn speaks_of_side(&self, start: usize, at: usize) -> bool {
        let is_of_each = |place: usize| {
            place.checked_sub(1).is_some_and(|before| matches!(self.word(before), "each" | "either" | "per" | "every"))
        };
        (start..at).any(|place| lexicon::tells_side(self.word(place)) && !is_of_each(place))
    }

    /// Makes claims of what is said of a side or of both sides of the body such as leave open how many there are in all.
    pub(super) fn weaken(&self, claims: &mut Vec<Claim>, at: usize) {
        let (start, stop) = self.clause_around(at);
        if self.speaks_of_side(start, at) {
            for claim in claims.iter_mut() {
                claim.all = false;
            }
        }
        if (start..stop).any(|place| lexicon::tells_both(self.word(place))) {
            claims.retain(|claim| !self.is_doubled(claim));
        }
    }

    /// Whether the number of a claim is that of both sides of the body.
    fn is_doubled(&self, claim: &Claim) -> bool {
        let Some(What::Number(number)) = claim.part(PartRole::Number).map(|part| &part.what) else { return false };
        let Some(What::Word(noun)) = claim.part(PartRole::Role).map(|part| &part.what) else { return false };
        let ids = claim.entries(PartRole::Structure);
        ids.iter().any(|id| verdicts::is_times(self.scope.vocabulary, *id, *number, noun, 2))
    }

    fn tally(&self, side: Side, number: u32, noun: &'static str, at: usize, end: usize, outright: bool) -> Vec<Claim> {
        let vocabulary = self.scope.vocabulary;
        let ids = side.what.entries();
        // What everybody has on both sides may be counted on both.
        let is_doubled = noun == "named" && ids.iter().any(|id| verdicts::is_times(vocabulary, *id, number, noun, 2));
        // A number that fits is taken for known as often as it is told ("between the two heads of NAME").
        let fits = ids.iter().any(|id| verdicts::is_times(vocabulary, *id, number, noun, 1));
        let is_fewer = ids.iter().any(|id| verdicts::is_fewer(vocabulary, *id, number, noun));
        if is_doubled || ((fits || is_fewer) && !outright) {
            return Vec::new();
        }
        let told = self.source(at, end);
        vec![self.count_claim(side, number, noun, told, at, outright)]
    }
}
