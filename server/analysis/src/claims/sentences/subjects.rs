//! Who does it: the subject of a verb. It stands right before the verb, or before a relative pronoun; or it is the subject
//! of the clause, or of the verb before; or a pronoun stands for that of the sentence before, or of the heading.

use fascicle_model::EntryId;

use super::atoms::AtomKind;
use super::groups::Group;
use super::sides::{Side, side_of};
use super::{Sentence, Subject};
use crate::claims::{ClaimKind, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

impl Sentence<'_, '_> {
    /// The subject of a relation phrase, whose words before it end at `end`. What passes a place is a nerve before a muscle
    /// or a vessel.
    pub(super) fn subject(&self, end: usize, relation: &RelationWord, last: &[Side]) -> Vec<Side> {
        // What goes on under another name is a nerve.
        let of_nerve = RelationWord { left: PartRole::Nerve, ..*relation };
        let is_renamed = relation.kind == ClaimKind::Renaming && relation.left == PartRole::Parent;
        let relation = if is_renamed { &of_nerve } else { relation };
        let goes_for_supply = relation.kind == ClaimKind::Supply && relation.phrase.starts_with("goes");
        let others: &[PartRole] = match (relation.kind, relation.left) {
            (ClaimKind::Branching, PartRole::Nerve) => &[PartRole::Structure],
            (ClaimKind::Passage, PartRole::Nerve) => &[PartRole::Nerve, PartRole::Structure],
            (_, PartRole::Nerve) if goes_for_supply => &[PartRole::Nerve, PartRole::Muscle],
            // "runs to platysma" is said of nerves as well
            (ClaimKind::Attachment, PartRole::Muscle) if relation.phrase.ends_with(" to") => {
                &[PartRole::Muscle, PartRole::Nerve]
            }
            (_, role) => &[role],
        };
        let sides = others.iter().map(|role| self.subject_of_role(end, relation, *role, last));
        let mut sides = sides.into_iter().find(|sides| !sides.is_empty()).unwrap_or_default();
        // "A is joined by B, whose branch pierces C and goes on to D": the verbs behind are not said of A.
        let end = end.min(self.atoms.len());
        let owner = |at: usize| if self.word(at) == "whose" { self.antecedent(at) } else { None };
        if let Some(from) = (0..end).rev().find_map(owner).and_then(|group| group.members.first().copied()) {
            let begin = self.source(from, from + 1).start;
            sides.retain(|side| side.span.start >= begin);
        }
        sides
    }

    fn subject_of_role(&self, end: usize, relation: &RelationWord, role: PartRole, last: &[Side]) -> Vec<Side> {
        // "MUSCLE's *tendon* attaches to", "the MUSCLE *fibres* converge on"
        let is_of_muscle = end.checked_sub(1).is_some_and(|place| lexicon::is_of_muscle(self.word(place)));
        let behind_muscle = end.checked_sub(2).is_some_and(|place| matches!(self.class(place), Some(1 | 2)));
        let end = if role == PartRole::Muscle && is_of_muscle && behind_muscle { end - 1 } else { end };
        // A name may be of anything that arises from somewhere; what is only meant is rather a nerve.
        let meant = relation.left;
        let Some(mut before) = end.checked_sub(1) else { return self.implied(role, false) };
        if self.word(before) == "own" && before > 0 {
            before -= 1; // "its own roots are"
        }
        let word = self.word(before);
        if relation.kind == ClaimKind::Supply && role == PartRole::Nerve && self.tells_purpose(before) {
            return self.owner_of_purpose(before);
        }
        if lexicon::is_relative(word) || word == "whose" {
            let antecedent = self.antecedent(before);
            let sides = antecedent.map(|group| self.sides(&group, role)).unwrap_or_default();
            let mut noun = before.saturating_sub(1);
            noun -= usize::from(self.word(noun) == "," && noun > 0);
            // What a branch passes that is not named, need not be the way of the nerve.
            let is_of_main = lexicon::is_part_noun(self.word(noun)) && relation.kind != ClaimKind::Passage;
            return if sides.is_empty() && is_of_main && word != "whose" {
                self.main_sides(role) // "gives branches, which supply"
            } else {
                sides
            };
        }
        // "all three", "all of them", "each of these"
        let of_them = matches!(word, "them" | "these") && before > 1 && self.word(before - 1) == "of";
        let is_number = lexicon::count(word).is_some() && before > 0 && self.word(before - 1) == "all";
        let all = if of_them { before - 2 } else { before - usize::from(is_number) };
        if matches!(self.word(all), "all" | "each") && self.begins_at(all) {
            // "All are supplied by …": of what was just spoken of, not of a heading.
            let spoken_of = [&self.memory.subject, &self.memory.before].into_iter().find(|list| !list.is_empty());
            let list = spoken_of.map(Vec::as_slice).unwrap_or_default();
            let sides = |role| -> Vec<Side> {
                list.iter().filter_map(|subject| side_of(self.scope.vocabulary, subject, role)).collect()
            };
            let by_kind = sides(meant);
            return if by_kind.is_empty() { sides(role) } else { by_kind };
        }
        if lexicon::is_pronoun(word) {
            let is_governed = before.checked_sub(1).is_some_and(|place| {
                let of_them = place.checked_sub(1).map_or("", |noun| self.word(noun));
                lexicon::leads_inverted(self.word(place))
                    && !lexicon::means_all(of_them)
                    && !lexicon::is_part_noun(of_them)
            });
            if is_governed || self.is_led_in(before) {
                return Vec::new();
            }
            // "MUSCLE crosses the hip, so it …": the subject of this sentence before that of the one before.
            let plural = lexicon::is_plural_pronoun(word);
            let own = self.main_group().filter(|group| group.end < before && matches!(word, "it" | "they"));
            if let Some(group) = own {
                let sides = self.sides(&group, role);
                let is_plural = sides.len() > 1
                    || group.members.iter().any(|at| self.ends_plural(*at))
                    || self.class(group.members.first().copied().unwrap_or(0)) == Some(2);
                if !sides.is_empty() && plural == is_plural {
                    return sides;
                }
            }
            if self.has_unknown_subject(before) {
                return Vec::new();
            }
            let by_kind = self.possessor(before, meant, plural);
            let sides = if by_kind.is_empty() { self.possessor(before, role, plural) } else { by_kind };
            // "Acting together *they* flex the neck": a muscle and that of the other side
            let is_of_both = sides.is_empty() && plural && role == PartRole::Muscle && self.speaks_of_both_sides();
            return if is_of_both { self.possessor(before, role, false) } else { sides };
        }
        if lexicon::is_kind_noun(word)
            && before.checked_sub(1).is_some_and(|place| lexicon::points_back(self.word(place)))
        {
            // "the skin *over the muscle* is"
            let governor = before.checked_sub(2).map_or("", |place| self.word(place));
            if lexicon::is_preposition(governor) && governor != "of" {
                return Vec::new();
            }
            let kind = kind_meant(word, meant);
            let sides = self.recalled(kind, word.ends_with('s'));
            let is_of_both = sides.is_empty() && kind == PartRole::Muscle && self.speaks_of_both_sides();
            return if is_of_both { self.recalled(kind, false) } else { sides };
        }
        let mut owner = before;
        while lexicon::means_part(self.word(owner)) || lexicon::is_part_noun(self.word(owner)) {
            let Some(place) = owner.checked_sub(1) else { break };
            owner = place;
        }
        if owner < before && lexicon::is_part_noun(word) && matches!(self.word(owner), "its" | "their") {
            // "A and B do this; their anterior fibres do that": those of this sentence before those of the one before.
            let own = self.main_group().filter(|group| group.end < owner && self.word(owner) == "their");
            let sides = own.map(|group| self.sides(&group, role)).unwrap_or_default();
            if sides.len() > 1 {
                return sides;
            }
            // "its medial half"
            let own = self.one_owner_within(owner, role);
            return if own.is_empty() { self.recalled(role, self.word(owner) == "their") } else { own };
        }
        if role == PartRole::Muscle
            && matches!(relation.kind, ClaimKind::Action | ClaimKind::Attachment | ClaimKind::Branching)
            && let Some(start) = self.part_phrase(before)
        {
            let owners = self.owners_of_part(start);
            if !owners.is_empty() {
                return owners;
            }
        }
        let before_noun = before.checked_sub(1).map_or("", |place| self.word(place));
        if matches!(before_noun, "its" | "their")
            && (lexicon::is_part_noun(word) || matches!(word, "origin" | "supply" | "innervation"))
        {
            let own = self.one_owner_within(before - 1, role);
            return if own.is_empty() { self.recalled(role, before_noun == "their") } else { own };
        }
        if matches!(word, "(" | "[") {
            // "MUSCLE (supplied by NERVE)"
            let group = self.group_to(before).map(|mut group| {
                // "A (made up of B) and C (made up of D)": behind each stands what is said of it alone.
                if !lexicon::means_all(self.word(before + 1)) && group.members.len() > 1 {
                    group.members.drain(..group.members.len() - 1);
                }
                group
            });
            return group.map(|group| self.sides(&group, role)).unwrap_or_default();
        }
        if matches!(word, "former" | "latter") {
            return self.former_or_latter(word, role);
        }
        if matches!(word, "its" | "their") {
            // "psoas *has its* own branches from": of what stands before the verb, whether that can have them or not.
            let has = before.checked_sub(1).filter(|place| matches!(self.word(*place), "has" | "have"));
            if let Some(group) = has.and_then(|place| self.group_to(place)) {
                return self.sides(&group, role);
            }
            return self.recalled(role, word == "their");
        }
        // "The C5 *root* supplies"
        let before = if lexicon::is_segment_noun(word) { before.saturating_sub(1) } else { before };
        if let Some(AtomKind::Segments(reading)) = self.atoms.get(before).map(|atom| &atom.kind)
            && matches!(
                relation.kind,
                ClaimKind::Supply | ClaimKind::Membership | ClaimKind::Branching | ClaimKind::Roots | ClaimKind::Skin
            )
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
            if let Some(owner) = self.told_to_be_of(first).filter(|_| relation.form == Form::Participle) {
                return self.sides(&owner, role);
            }
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
        if lexicon::is_conjunction(word) || lexicon::keeps_subject(word) {
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
            // "A does this; *B does that and* is supplied by": of B, with which the clause begins.
            let own = self.own_subject_of_clause(end, role);
            let is_before = |own: &Side| same.iter().all(|side| side.span.start < own.span.start);
            if !own.is_empty() && own.iter().all(is_before) {
                return own;
            }
            return if same.is_empty() { self.main_sides_before(end, role) } else { same };
        }
        if lexicon::is_value_sign(word)
            && let Some(group) = self.group_to(before)
            && group.members.first().is_some_and(|first| (0..*first).all(|at| self.may_lead(at)))
        {
            let sides = self.sides(&group, role);
            if !sides.is_empty() {
                return sides;
            }
        }
        if let Some(side) = self.labelling(before).filter(|_| matches!(role, PartRole::Nerve | PartRole::Structure)) {
            return vec![side];
        }
        if lexicon::is_bullet(word) || (before == 0 && lexicon::is_determiner(word)) {
            return self.implied(role, false);
        }
        Vec::new()
    }

    /// Whether the sentence speaks of a muscle and its fellow of the other side.
    fn speaks_of_both_sides(&self) -> bool {
        (0..self.atoms.len()).any(|at| lexicon::means_both_sides(&self.written(at)))
    }

    /// "Motor root of V: *it* goes …": a pronoun that stands for what is not named as the vocabulary has it.
    fn is_led_in(&self, pronoun: usize) -> bool {
        let Some(colon) = pronoun.checked_sub(1).filter(|place| self.word(*place) == ":") else { return false };
        colon > 1
            && (0..colon).all(|place| self.mention(place).is_none())
            && (0..colon).any(|place| matches!(self.word(place), "of" | "root" | "branch" | "nerve" | "division"))
    }

    /// "descends *to* supply", "ends *by* supplying"
    fn tells_purpose(&self, at: usize) -> bool {
        let last = self.written(at);
        matches!(last.rsplit(' ').next(), Some("to" | "before" | "by"))
            && !last.contains("motor")
            && self.mention(at).is_none()
    }

    /// Whose purpose it is: that of the relative clause, of the pronoun, or of the nerve with which the clause begins, where
    /// no other nerve is named since.
    fn owner_of_purpose(&self, at: usize) -> Vec<Side> {
        let role = PartRole::Nerve;
        let ends = |place: &usize| {
            matches!(self.word(*place), ";" | ":" | "." | "—" | "–") || lexicon::is_contrast(self.word(*place))
        };
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let relative = (start..at)
            .rev()
            .find(|place| matches!(self.word(*place), "which" | "that") && self.begins_predicate(place + 1));
        let pronoun = (start..at).rev().find(|place| self.word(*place) == "it" && self.begins_predicate(place + 1));
        let names_other = |from: usize| (from..at).any(|place| self.class(place) == Some(0));
        if let Some(relative) = relative {
            let sides = self.antecedent(relative).map(|group| self.sides(&group, role)).unwrap_or_default();
            return if names_other(relative) { Vec::new() } else { sides };
        }
        if let Some(pronoun) = pronoun {
            return if names_other(pronoun) { Vec::new() } else { self.possessor(pronoun, role, false) };
        }
        let Some(group) = self.group_at_start(start) else {
            // "It descends …", "Descends … to supply": of what is spoken of
            let is_bare = start == 0 && !names_other(0) && (0..at).all(|place| self.class(place) != Some(1));
            return if is_bare { self.implied(role, false) } else { Vec::new() };
        };
        if names_other(group.end) { Vec::new() } else { self.sides(&group, role) }
    }

    /// "MUSCLE is *the only* tongue muscle supplied by", "MUSCLE is *one of the* muscles of the tongue supplied by": what is
    /// said to be of the group that a name at an atom names.
    fn told_to_be_of(&self, name: usize) -> Option<Group> {
        if self.class(name) != Some(2) {
            return None;
        }
        let mut place = name.checked_sub(1)?;
        let mut one = false;
        while lexicon::is_determiner(self.word(place))
            || lexicon::is_before_group(self.word(place))
            || lexicon::is_before_only(self.word(place))
            || lexicon::sets_off_one(self.word(place))
            || lexicon::is_adverb(self.word(place))
        {
            one |= matches!(self.word(place), "only" | "one" | "sole" | "single");
            place = place.checked_sub(1)?;
        }
        let is = matches!(self.word(place), "is" | "remains" | "being");
        (one && is).then(|| self.group_to(place)).flatten()
    }

    /// "The artery has no branches here; *it* …": the sentence begins with a subject that has no name, and a pronoun behind it
    /// stands for that.
    pub(super) fn has_unknown_subject(&self, at: usize) -> bool {
        if !matches!(self.word(0), "the" | "a" | "an" | "each" | "another") {
            return false;
        }
        let is_verb = |place: &usize| match self.atoms.get(*place).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => relation.form == Form::Verb,
            Some(AtomKind::Word) => lexicon::is_auxiliary(self.word(*place)) || lexicon::is_motion(self.word(*place)),
            _ => false,
        };
        let Some(verb) = (1..at).find(is_verb) else { return false };
        let is_plain = |place: usize| {
            let word = self.word(place);
            !word.is_empty()
                && !lexicon::is_kind_noun(word)
                && !lexicon::is_part_noun(word)
                && !lexicon::is_pronoun(word)
        };
        verb > 1 && (1..verb).all(is_plain)
    }

    /// The group that a relative pronoun stands for: right before it, before a parenthesis ("MUSCLE, again, that …"), or
    /// the subject of "is the one that".
    fn antecedent(&self, relative: usize) -> Option<Group> {
        let is_comma = |place: usize| self.word(place) == ",";
        let end = if relative.checked_sub(1).is_some_and(is_comma) { relative - 1 } else { relative };
        if let Some(group) = self.group_to(end) {
            return Some(group).filter(|group| !group.denied && !self.is_beside_what_is_defined(group));
        }
        let near = end.saturating_sub(7)..end;
        let is_plain = |from: usize| (from..end).all(|place| self.mention(place).is_none());
        if end < relative {
            let comma = near.rev().find(|place| is_comma(*place)).filter(|comma| is_plain(*comma))?;
            return self.group_to(comma);
        }
        let noun = self.word(end.checked_sub(1)?);
        let stands_for = noun == "one" || lexicon::is_kind_noun(noun);
        if stands_for && let Some(group) = self.before_apposition(end - 1) {
            return Some(group);
        }
        let is = near
            .rev()
            .find(|place| matches!(self.word(*place), "is" | "are"))
            .filter(|is| stands_for && is_plain(*is))?;
        self.group_to(is)
    }

    /// "A *muscle* behind A that arises from …": the first name only tells where it is that is spoken of.
    pub(super) fn is_beside_what_is_defined(&self, group: &Group) -> bool {
        let Some(first) = group.members.first().copied() else { return false };
        let is_defined = (0..first.min(4)).any(|at| matches!(self.word(at), "muscle" | "muscles"));
        is_defined && self.class(first) == Some(1) && (0..first).all(|at| self.mention(at).is_none())
    }

    /// "MUSCLE, a muscle": the group that a noun behind a comma and an article is said of.
    pub(super) fn before_apposition(&self, noun: usize) -> Option<Group> {
        let article = noun.checked_sub(1).filter(|place| matches!(self.word(*place), "a" | "an" | "the"))?;
        let comma = article.checked_sub(1).filter(|place| self.word(*place) == ",")?;
        self.group_to(comma)
    }

    /// The subject that the sentence before or the heading sets.
    pub(super) fn implied(&self, role: PartRole, plural: bool) -> Vec<Side> {
        let sides = |list: &[Subject]| -> Vec<Side> {
            list.iter().filter_map(|subject| side_of(self.scope.vocabulary, subject, role)).collect()
        };
        // A vessel that is spoken of is what "it" means, though a nerve was named beside it.
        let is_vessel = |subject: &Subject| {
            let class = |id: &EntryId| self.scope.vocabulary.entry(*id).class.as_deref();
            subject.candidates.iter().all(|id| class(id) == Some("vessel"))
        };
        let of_vessels = self.memory.subject.iter().any(is_vessel);
        if self.memory.topic.is_unknown || (of_vessels && role == PartRole::Nerve) || self.speaks_of_unknown() {
            return Vec::new();
        }
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

    /// "MUSCLE fills the fossa, and *its* tendon …": the one subject of the clauses before.
    fn one_owner_within(&self, at: usize, role: PartRole) -> Vec<Side> {
        // "Adductors: MUSCLE is attached to A, and *its* lower end": what a sign sets apart is a head.
        let is_headed = self.main_group().is_some_and(|group| lexicon::is_value_sign(self.word(group.end)));
        let main =
            if self.word(at) == "its" && !is_headed { self.main_sides_ending_before(at, role) } else { Vec::new() };
        if main.len() == 1 { main } else { Vec::new() }
    }

    /// Whom a pronoun at an atom means: one that this sentence has named, else one before it.
    pub(super) fn possessor(&self, at: usize, role: PartRole, plural: bool) -> Vec<Side> {
        self.meant_within(at, role, plural).unwrap_or_else(|| self.recalled(role, plural))
    }

    /// Whom a pronoun at an atom means, where nothing but this sentence, the one before and what stands above can tell.
    pub(super) fn meant_here(&self, at: usize, role: PartRole) -> Vec<Side> {
        self.meant_within(at, role, false).unwrap_or_else(|| self.implied(role, false))
    }

    /// What a pronoun stands for: the implied subject, else the one of the block before.
    pub(super) fn recalled(&self, role: PartRole, plural: bool) -> Vec<Side> {
        let implied = self.implied(role, plural);
        if !implied.is_empty() || !self.memory.named.is_empty() || self.memory.topic.is_unknown {
            return implied;
        }
        let before = self.memory.before.iter();
        let sides: Vec<Side> = before.filter_map(|subject| side_of(self.scope.vocabulary, subject, role)).collect();
        if sides.len() == 1 || plural { sides } else { Vec::new() }
    }

    /// What a pronoun stands for within its sentence: the subject of the clause before it, else the one name that fits;
    /// nothing where several fit. `None` where no name before it fits.
    fn meant_within(&self, at: usize, role: PartRole, plural: bool) -> Option<Vec<Side>> {
        // "After branching off A, it …": whoever does so is meant, and not A.
        let is_doing = self.first_token(1).ends_with("ing") && lexicon::fronts_participle(self.word(0));
        let start = if is_doing { (0..at).find(|place| self.word(*place) == ",").unwrap_or(at) } else { 0 };
        let main = self.main_sides_ending_before(at, role);
        let is_of_number = plural || !self.main_group().is_some_and(|group| self.is_one_name_for_many(&group));
        if (main.len() == 1 && is_of_number) || (plural && !main.is_empty()) {
            return Some(main);
        }
        // "The first branch it gives is A, and it …": both times the same is meant.
        let first_name = (0..at).find(|place| self.mention(*place).is_some());
        if first_name.is_some_and(|name| (0..name).any(|place| self.word(place) == self.word(at))) {
            return None;
        }
        // "On the front of the thigh it …": a place that hangs on a preposition is not what is meant.
        let is_where = |place: &usize| matches!(self.class(*place), Some(3..=5)) && self.is_governed(*place);
        let is_many = |place: usize| !plural && self.ends_plural(place);
        let named: Vec<Side> = (start..at)
            .filter(|place| !is_where(place) && !is_many(*place))
            .filter_map(|place| self.side(place, role))
            .collect();
        match named.len() {
            0 => None,
            1 => Some(named),
            _ => Some(Vec::new()),
        }
    }

    /// Whether a group is one name for many ("the ciliary nerves").
    fn is_one_name_for_many(&self, group: &Group) -> bool {
        group.members.len() == 1 && group.members.first().is_some_and(|first| self.ends_plural(*first))
    }

    /// Whether the noun of a name is a plural: "posterior superior alveolar *branches*".
    fn ends_plural(&self, at: usize) -> bool {
        let is_many = |word: &str| {
            matches!(word, "branches" | "nerves" | "muscles" | "rami" | "roots" | "twigs" | "arteries" | "veins")
        };
        self.mention(at).is_some_and(|mention| mention.plural)
            || (self.mention(at).is_some() && self.written(at).split(' ').any(is_many))
    }

    /// The group with which the sentence begins, if it plays a role and a clause has ended between it and an atom.
    pub(super) fn main_sides_ending_before(&self, at: usize, role: PartRole) -> Vec<Side> {
        let Some(group) = self.main_group() else { return Vec::new() };
        let ends = |place: usize| {
            let word = self.word(place);
            matches!(word, ";" | "," | ":" | "because" | "since" | "as" | "and" | "but") || lexicon::is_contrast(word)
        };
        if (group.end..at).any(ends) { self.sides(&group, role) } else { Vec::new() }
    }

    fn has_main(&self, role: PartRole) -> bool {
        !self.main_sides(role).is_empty()
    }

    fn main_sides(&self, role: PartRole) -> Vec<Side> {
        self.main_group().map(|group| self.sides(&group, role)).unwrap_or_default()
    }

    /// The subject with which the clause of an atom begins, where another clause stands before it.
    fn own_subject_of_clause(&self, at: usize, role: PartRole) -> Vec<Side> {
        let start = (0..at).rev().find(|place| matches!(self.word(*place), ";" | ":" | "—"));
        let group = start.and_then(|start| self.group_at_start(start + 1)).filter(|group| group.end < at);
        let goes_on = group.filter(|group| {
            let word = self.word(group.end);
            self.begins_predicate(group.end)
                || (word.starts_with(char::is_alphabetic)
                    && !lexicon::is_preposition(word)
                    && !lexicon::is_conjunction(word)
                    && !lexicon::is_relative(word))
        });
        goes_on.map(|group| self.sides(&group, role)).unwrap_or_default()
    }

    /// The subject of the clause in which an atom stands.
    fn main_sides_before(&self, at: usize, role: PartRole) -> Vec<Side> {
        let start = (0..at)
            .rev()
            .find(|place| matches!(self.word(*place), ";" | ":" | "—") || lexicon::is_contrast(self.word(*place)));
        let Some(start) = start else { return self.main_sides(role) };
        let sides = self.group_at_start(start + 1).map(|group| self.sides(&group, role)).unwrap_or_default();
        // "…; *the smaller one*, which is A, leaves": a clause with a subject of its own that names nothing.
        let is_own = lexicon::is_determiner(self.word(start + 1)) && self.word(start) != "—";
        if sides.is_empty() && !is_own { self.main_sides(role) } else { sides }
    }

    pub(super) fn main_subject(&self) -> Vec<Subject> {
        // "There are four muscles of mastication."
        let first_name = || (2..self.atoms.len()).find(|at| self.mention(*at).is_some());
        let is_there = self.word(0) == "there" && matches!(self.word(1), "are" | "is");
        let told = if is_there { first_name().and_then(|name| self.group_from(name, false)) } else { None };
        self.main_group()
            .or(told)
            .map(|group| group.members.iter().filter_map(|at| self.subject_at(*at)).collect())
            .unwrap_or_default()
    }

    /// Whether a clause begins at an atom.
    fn begins_at(&self, at: usize) -> bool {
        at.checked_sub(1).is_none_or(|before| {
            matches!(self.word(before), ";" | "," | ":" | "—" | "–" | "and" | "but")
                || lexicon::is_contrast(self.word(before))
        })
    }

    /// The group with which the sentence begins.
    pub(super) fn main_group(&self) -> Option<Group> {
        self.group_at_start(0)
    }

    /// The group with which a clause begins at an atom.
    pub(super) fn group_at_start(&self, start: usize) -> Option<Group> {
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
        // "**H** Posterior cutaneous nerve": the letter of a picture
        let is_letter = word.len() == 1 && word.starts_with(char::is_alphabetic);
        if at == 0 && is_letter && self.is_strong(at) && !self.is_strong(1) {
            return true;
        }
        lexicon::is_determiner(word)
            || lexicon::is_adverb(word)
            || lexicon::means_all(word)
            || lexicon::is_part_noun(word)
            || lexicon::is_preposition(word)
            || lexicon::is_muscle_noun(word)
            || lexicon::may_lead(word)
            || (at == 0 && word.len() == 1 && word.chars().all(char::is_alphabetic)) // "**P** Sural nerve: …"
    }
}

/// The role of what a noun names the kind of, where the relation leaves it open: "*this nerve* has the roots …".
fn kind_meant(noun: &str, role: PartRole) -> PartRole {
    match noun.trim_end_matches('s') {
        _ if role != PartRole::Structure => role,
        "nerve" | "branche" | "branch" | "trunk" | "cord" => PartRole::Nerve,
        "muscle" => PartRole::Muscle,
        "joint" => PartRole::Joint,
        _ => role,
    }
}
