//! Clauses of supply that no phrase reads: whatever verb they have and whatever stands between, one nerve and one row of
//! muscles with a word of supply beside them are a nerve and what it supplies ("MUSCLE and MUSCLE both have NERVE as their
//! motor nerve", "MUSCLE is given a branch by NERVE"), and so are a muscle, a verb that no list knows, *by* and a nerve
//! ("MUSCLE is galvanised by NERVE"). What changes the meaning ends the attempt: a place, a way, a loss, a feeling.

use fascicle_model::{EntryId, Kind};

use super::atoms::AtomKind;
use super::groups::Group;
use super::sides::Side;
use super::{Object, Sentence};
use crate::claims::phrases::MovementForm;
use crate::claims::{Claim, ClaimKind, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

/// How many words that no list knows may stand in such a clause.
const UNKNOWN_WORDS: usize = 7;

/// The two sides of such a clause.
#[derive(Default)]
struct Clause {
    nerves: Option<Group>,
    muscles: Option<Muscles>,
    /// A pronoun, and whether it stands for more than one.
    pronoun: Option<(usize, bool)>,
    /// The word by which it speaks of supply.
    cue: Option<usize>,
    /// A verb of giving or getting, and a noun for what is given.
    gives: bool,
    gift: Option<usize>,
    /// "gives no branch to"
    gives_none: bool,
    negated: bool,
    unknown: usize,
}

/// The muscles of a clause.
enum Muscles {
    Named(Group),
    Described(super::described::Described),
}

impl Sentence<'_, '_> {
    /// The claims of the stretch that ends before an atom, which no other form has read.
    pub(super) fn unread_supply(&self, from: usize, to: usize) -> Vec<Claim> {
        let Some(clause) = self.clause_of_supply(from, to) else { return Vec::new() };
        let gift = clause.gift.filter(|_| clause.gives);
        let passive = || clause.nerves.as_ref().and_then(|nerves| self.passive_of_unknown(from, to, nerves));
        let Some(at) = clause.cue.or(gift).or_else(passive) else { return Vec::new() };
        let nerves = match (clause.nerves, clause.pronoun) {
            (Some(nerves), _) => Object::Names(nerves),
            (None, Some((place, plural))) if clause.muscles.is_some() => {
                Object::Meant(self.possessor(place, PartRole::Nerve, plural))
            }
            _ => return Vec::new(),
        };
        let hedged = self.clause_hedged(at);
        let left = match clause.muscles {
            Some(Muscles::Named(group)) => {
                let sides = self.sides(&group, PartRole::Muscle);
                let negated = clause.negated || group.denied || clause.gives_none;
                let of_all = group.denied || (group.all && !group.partial);
                return self.combine(&supplied(), &sides, &nerves, at, negated, hedged, of_all);
            }
            Some(Muscles::Described(mut described)) => {
                described.denied |= clause.gives_none;
                return self.supply_of_described(&described, &nerves, at, clause.negated, hedged);
            }
            None => match clause.pronoun {
                Some((place, plural)) => self.possessor(place, PartRole::Muscle, plural),
                None => Vec::new(),
            },
        };
        self.combine(&supplied(), &left, &nerves, at, clause.negated || clause.gives_none, hedged, false)
    }

    /// What a stretch holds, if it is a clause of one row of nerves and one of muscles and nothing that changes the meaning.
    fn clause_of_supply(&self, from: usize, to: usize) -> Option<Clause> {
        let mut clause = Clause::default();
        let mut place = from;
        while place < to {
            if let Some(described) = self.described_from(place)
                && clause.muscles.is_none()
            {
                place = described.end;
                clause.muscles = Some(Muscles::Described(described));
                continue;
            }
            if let Some(behind) = self.behind_comparison(place) {
                place = behind;
                continue;
            }
            match &self.atoms.get(place)?.kind {
                AtomKind::Name(_) => {
                    let is_subject = clause.nerves.is_none() && clause.muscles.is_none();
                    let group = self.group_from(place, !is_subject)?;
                    let end = group.end.max(place + 1);
                    match self.class(place) {
                        // ", and MUSCLE likewise"
                        Some(1 | 2) if clause.muscles.is_some() && lexicon::repeats(self.word(end)) => break,
                        Some(0) if clause.nerves.is_none() && !group.denied && group.except.is_empty() => {
                            let written = self.written(place);
                            let is_twig = |word: &str| lexicon::is_gift(word) && !lexicon::is_nerve_noun(word);
                            if clause.gives && written.split(' ').any(is_twig) {
                                clause.gift = clause.gift.or(Some(place));
                            }
                            clause.nerves = Some(group);
                        }
                        Some(1 | 2) if !self.sides(&group, PartRole::Muscle).is_empty() => {
                            if clause.muscles.is_some() || self.is_exception_to(place) {
                                return None;
                            }
                            clause.muscles = Some(Muscles::Named(group));
                        }
                        Some(0 | 1) => return None,
                        // "in the thigh": where it is so
                        _ if self.is_where(place) => {}
                        _ => return None,
                    }
                    place = end;
                    continue;
                }
                AtomKind::Relation(relation) if relation.kind == ClaimKind::Supply => {
                    if relation.form == Form::Verb && self.is_way(place) {
                        return None;
                    }
                    clause.cue = clause.cue.or(Some(place));
                }
                AtomKind::Relation(_) if self.tells_branch(place) => clause.gift = Some(place),
                // "gives deltoid a branch", "the branch to deltoid arises from"
                AtomKind::Relation(relation)
                    if relation.kind == ClaimKind::Branching
                        && (lexicon::gives_or_gets(self.first_token(place))
                            || (relation.right == PartRole::Parent
                                && clause.gift.is_some_and(|gift| self.is_bound(gift)))) =>
                {
                    clause.gives = true;
                }
                AtomKind::Relation(relation)
                    if matches!(relation.kind, ClaimKind::Passage | ClaimKind::Attachment)
                        && clause.gift.is_some_and(|gift| self.is_of_impulses(gift)) =>
                {
                    clause.gives = true;
                }
                // "goes with the hypoglossal", said of a muscle
                AtomKind::Relation(relation)
                    if relation.kind == ClaimKind::Passage
                        && clause.muscles.is_some()
                        && clause.nerves.is_none()
                        && matches!(&*self.written(place), "goes with" | "go with") =>
                {
                    clause.cue = clause.cue.or(Some(place));
                }
                AtomKind::Movement(movement) if movement.form == MovementForm::Agent => {}
                AtomKind::Word => self.weigh_word(place, &mut clause)?,
                _ => return None,
            }
            place += 1;
        }
        (clause.unknown <= UNKNOWN_WORDS).then_some(clause)
    }

    /// ", like its neighbours,": the atom behind a comparison between commas.
    fn behind_comparison(&self, at: usize) -> Option<usize> {
        if self.word(at) != "," || !matches!(self.word(at + 1), "like" | "unlike" | "as" | "along" | "together") {
            return None;
        }
        let close = (at + 2..self.atoms.len()).find(|place| matches!(self.word(*place), "," | ";" | "." | ":"))?;
        let has_verb = (at + 2..close).any(|place| self.begins_predicate(place));
        (self.word(close) == "," && !has_verb).then_some(close + 1)
    }

    /// Takes a word of a clause into account; `None` where it changes what the clause says.
    fn weigh_word(&self, at: usize, clause: &mut Clause) -> Option<()> {
        let word = self.word(at);
        let next = self.word(at + 1);
        if lexicon::moves_on(word)
            && !lexicon::is_auxiliary(word)
            && clause.gift.is_some_and(|gift| self.is_of_impulses(gift))
        {
            clause.gives = true;
            return Some(());
        }
        let tells_place = lexicon::is_away_from_supply(word)
            || (lexicon::is_side(word) && matches!(next, "to" | "and"))
            || (word == "through" && matches!(self.class(self.behind_determiners(at + 1)), Some(1 | 2)))
            || (lexicon::moves_on(word) && !lexicon::is_auxiliary(word) && word != "found");
        let tells_else = lexicon::is_loss(word)
            || lexicon::is_cut(word)
            || lexicon::is_lesion(word)
            || lexicon::is_spared(word)
            || lexicon::is_numbness(word)
            || lexicon::is_not_motor(word)
            || lexicon::is_vessel(word)
            || lexicon::is_other_gift(word)
            || (lexicon::is_of_neighbours(word) && !matches!(word, "around" | "near"));
        if tells_place || tells_else {
            return None;
        }
        if lexicon::is_negation(word) {
            // "no", "neither" and "without" deny what stands behind them, not the verb.
            if !matches!(word, "not" | "never" | "n't" | "doesn't" | "isn't" | "aren't" | "don't" | "cannot")
                || clause.negated
            {
                if word == "no" && (lexicon::is_gift(next) || lexicon::tells_supply(self.first_token(at + 1))) {
                    clause.gives_none = true;
                    return Some(());
                }
                let denies_group = matches!(word, "no" | "neither");
                return denies_group.then_some(());
            }
            clause.negated = true;
        } else if lexicon::tells_supply(word) {
            clause.cue = clause.cue.or(Some(at));
        } else if lexicon::is_gift(word) {
            clause.gift = clause.gift.or(Some(at));
        } else if lexicon::gives_or_gets(word) {
            clause.gives = true;
        } else if clause.pronoun.is_none() && self.stands_for_one(at) {
            clause.pronoun = Some((at, lexicon::is_plural_pronoun(word)));
        } else if word.chars().any(char::is_alphabetic)
            && !(lexicon::is_determiner(word)
                || lexicon::is_adverb(word)
                || lexicon::is_hedge(word)
                || lexicon::is_auxiliary(word)
                || lexicon::is_preposition(word)
                || lexicon::is_conjunction(word)
                || lexicon::is_muscle_noun(word)
                || lexicon::is_part_noun(word)
                || lexicon::means_all(word)
                || lexicon::is_in_plain_clause(word))
        {
            clause.unknown += 1;
        }
        Some(())
    }

    /// "the branch *to* MUSCLE", "fibres *from* NERVE": a noun for what is given, bound to who has it.
    fn is_bound(&self, gift: usize) -> bool {
        let name = self.behind_determiners(gift + 2);
        match self.word(gift + 1) {
            "to" | "for" => matches!(self.class(name), Some(1 | 2)),
            "of" | "from" | "in" => self.class(name) == Some(0),
            _ => false,
        }
    }

    /// "motor fibres to MUSCLE": they go their way, and it is their nerve that is told.
    fn is_of_impulses(&self, gift: usize) -> bool {
        matches!(self.word(gift), "fibres" | "fibers" | "impulses" | "commands") && self.is_bound(gift)
    }

    /// Whether a pronoun stands at an atom, and not before its noun ("*both* gemelli").
    fn stands_for_one(&self, at: usize) -> bool {
        let is_kind = lexicon::is_kind_noun(self.word(at + 1))
            && lexicon::points_back(self.word(at))
            && (self.begins_predicate(at + 2)
                || self.ends_clause(at + 2)
                || (matches!(self.word(at), "that" | "this" | "these" | "those")
                    && lexicon::is_determiner(self.word(at + 2))));
        matches!(self.word(at), "it" | "they" | "them")
            || is_kind
            || (lexicon::is_pronoun(self.word(at)) && self.begins_predicate(at + 1))
    }

    /// "MUSCLE is galvanised by NERVE": the *by* behind a participle that no list knows, right before the nerves.
    fn passive_of_unknown(&self, from: usize, to: usize, nerves: &Group) -> Option<usize> {
        let first = nerves.members.first().copied()?;
        let mut by = first.checked_sub(1)?;
        while lexicon::is_determiner(self.word(by)) || self.tells_branch(by) {
            by = by.checked_sub(1)?;
        }
        let mut participle = by.checked_sub(1).filter(|_| self.word(by) == "by")?;
        while matches!(
            self.word(participle),
            "care" | "of" | "after" | "for" | "to" | "up" | "on" | "over" | "out" | "about" | "charge"
        ) {
            participle = participle.checked_sub(1)?;
        }
        let word = self.word(participle);
        let is_participle = word.len() > 4 && (word.ends_with("ed") || word.ends_with("en"));
        let is = participle.checked_sub(1)?;
        let has_verb = (from..=is).rev().take(3).any(|place| matches!(self.word(place), "is" | "are" | "gets" | "get"));
        let is_alone = (from..to).all(|place| {
            matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Word | AtomKind::Name(_)))
        });
        (is_participle && has_verb && is_alone && self.ends_clause(nerves.end)).then_some(participle)
    }

    /// Whether the name at an atom only tells where something is so: "in the thigh", "of the hand".
    fn is_where(&self, at: usize) -> bool {
        let mut before = at;
        while before.checked_sub(1).is_some_and(|place| {
            let word = self.word(place);
            lexicon::is_determiner(word) || lexicon::is_stretch(word) || lexicon::is_part_noun(word)
        }) {
            before -= 1;
        }
        before
            .checked_sub(1)
            .is_some_and(|place| matches!(self.word(place), "in" | "within" | "inside" | "of" | "at" | "for"))
    }

    /// Whether a phrase of supply is one of the way as well ("goes to").
    fn is_way(&self, at: usize) -> bool {
        lexicon::moves_on(self.first_token(at)) && !lexicon::is_auxiliary(self.first_token(at))
    }

    /// The atom behind the articles at an atom.
    fn behind_determiners(&self, at: usize) -> usize {
        (at..self.atoms.len()).find(|place| !lexicon::is_determiner(self.word(*place))).unwrap_or(at)
    }

    /// "MUSCLE is the NERVE's only muscle", "MUSCLE is a NERVE muscle": a muscle that is told to be a nerve's.
    pub(super) fn muscle_of_nerve(&self, at: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::means_all(self.word(next))
            || lexicon::is_negation(self.word(next))
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let mut noun = next + 1;
        while lexicon::is_before_only(self.word(noun)) || matches!(self.word(noun), "motor" | "'s") {
            noun += 1;
        }
        let is_share = matches!(self.word(noun), "muscle" | "muscles")
            || (self.is_possessive(next) && lexicon::is_domain(self.word(noun)));
        let Some(nerve) = self.side(next, PartRole::Nerve).filter(|_| is_share && self.ends_clause(noun + 1)) else {
            return Vec::new();
        };
        let (before, denied, hedged) = self.before_verb(at + 1);
        let muscles = self.subject(before, &supplied(), &[]);
        let hedged = hedged || self.clause_hedged(at);
        self.combine(&supplied(), &muscles, &Object::Meant(vec![nerve]), at, negated || denied, hedged, false)
    }

    /// "MUSCLE shares its nerve with MUSCLE", "has the same nerve as MUSCLE", "MUSCLE and MUSCLE share a nerve": the nerves of
    /// the one, and those that they come from, are any of them told of the other.
    pub(super) fn same_nerve_claims(&self, at: usize) -> Vec<Claim> {
        let is_noun = |word: &str| lexicon::is_supply_noun(word) || word == "branch";
        let mut noun = at + 1;
        while matches!(self.word(noun), "a" | "one" | "its" | "their" | "the" | "common" | "same" | "nerve" | "motor")
            && (is_noun(self.word(noun + 1)) || self.written(noun + 1) == "supply" || !is_noun(self.word(noun)))
        {
            noun += 1;
        }
        if !is_noun(self.word(noun)) && self.written(noun) != "supply" {
            return Vec::new();
        }
        let is_same = (at..noun).any(|place| matches!(self.word(place), "same" | "common" | "one"));
        let shares = self.written(at).starts_with("share");
        let link = noun + 1;
        let other = match self.word(link) {
            "with" if shares => self.group_from(self.behind_determiners(link + 1), true),
            "as" if is_same => self.group_from(self.behind_determiners(link + 1), true),
            _ => None,
        };
        let (before, negated, hedged) = self.before_verb(self.verb_of_same(at));
        let hedged = hedged || self.clause_hedged(at);
        if negated {
            return Vec::new(); // two nerves may come from one that is not meant
        }
        let own = self.subject(before, &supplied(), &[]);
        let (left, right) = match (other, own.as_slice()) {
            (Some(other), _) if self.ends_clause(other.end) => (own, self.sides(&other, PartRole::Muscle)),
            (None, [first, second]) if self.ends_clause(link) && (shares || is_same) => {
                (vec![first.clone()], vec![second.clone()])
            }
            _ => return Vec::new(),
        };
        let vocabulary = self.scope.vocabulary;
        let mut claims = Vec::new();
        for other in &right {
            let mut nerves: Vec<EntryId> = Vec::new();
            for supply in other.what.entries().iter().flat_map(|id| vocabulary.nerves_of(*id)) {
                let line = std::iter::once(supply.nerve).chain(vocabulary.ancestors(supply.nerve));
                nerves.extend(line.filter(|id| vocabulary.kind(*id) == Kind::Nerve));
            }
            nerves.sort_unstable();
            nerves.dedup();
            if nerves.is_empty() {
                continue;
            }
            let shared = Side { what: What::Entry(nerves), span: other.span };
            claims.extend(self.combine(&supplied(), &left, &Object::Meant(vec![shared]), at, false, hedged, false));
        }
        claims
    }

    /// The first atom of the verb before the words for what is the same: "is supplied by *the same nerve as*".
    fn verb_of_same(&self, at: usize) -> usize {
        let mut verb = at;
        if self.word(at) == "same" {
            while let Some(place) = verb.checked_sub(1) {
                let is_relation = matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Relation(_)));
                let word = self.word(place);
                if !(is_relation
                    || lexicon::is_determiner(word)
                    || lexicon::is_preposition(word)
                    || lexicon::gives_or_gets(word)
                    || lexicon::is_gift(word)
                    || lexicon::tells_supply(word))
                {
                    break;
                }
                verb = place;
            }
        }
        verb
    }

    /// "NERVE is *the nerve to latissimus dorsi*": a nerve that is called by the muscle that it supplies.
    pub(super) fn named_for_muscle(&self, at: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let written = self.written(next);
        let muscle = ["nerve to ", "nerve of ", "nerve for "].iter().find_map(|head| written.strip_prefix(head));
        let Some(muscle) = muscle.filter(|_| self.class(next) == Some(0)) else { return Vec::new() };
        let found = self.scope.names.lookup(muscle);
        let ids: Vec<_> = found.iter().map(|name| name.entry).collect();
        let span = self.source(next, next + 1);
        let subject = super::Subject { candidates: ids, span };
        let Some(muscle) = super::side_of(self.scope.vocabulary, &subject, PartRole::Muscle) else {
            return Vec::new();
        };
        let (before, denied, hedged) = self.before_verb(at + 1);
        let active = RelationWord { left: PartRole::Nerve, right: PartRole::Muscle, ..supplied() };
        let nerves = self.subject(before, &active, &[]);
        let hedged = hedged || self.clause_hedged(at);
        self.combine(&active, &nerves, &Object::Meant(vec![muscle]), at, negated || denied, hedged, false)
    }
}

/// The relation of a supply told with the muscle on the left.
fn supplied() -> RelationWord {
    RelationWord {
        kind: ClaimKind::Supply,
        form: Form::Verb,
        left: PartRole::Muscle,
        right: PartRole::Nerve,
        ..super::actions::action_relation()
    }
}

/// Whether a stretch of a sentence ends at a word.
pub(super) fn ends_stretch(word: &str) -> bool {
    matches!(
        word,
        ";" | ":"
            | "—"
            | "–"
            | "("
            | ")"
            | "."
            | "→"
            | "which"
            | "who"
            | "that"
            | "whose"
            | "where"
            | "when"
            | "because"
            | "since"
            | "so"
    ) || lexicon::is_contrast(word)
}
