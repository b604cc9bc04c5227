//! Whether a sentence asserts anything, and how firmly: questions, quotations and conditions assert nothing; a negation
//! turns a claim round, a hedge makes it a soft one.

use super::Sentence;
use super::atoms::AtomKind;
use crate::claims::ClaimKind;
use crate::claims::phrases::MovementForm;
use crate::lexicon::{self, Form};

impl Sentence<'_, '_> {
    /// Whether it has a verb that claims something.
    pub(super) fn has_verb(&self) -> bool {
        // "It descends on …", "Iliacus has …": who does it stands right before a verb, whatever verb it is.
        let has_owner = |at: usize| self.mention(at).is_some() && matches!(self.word(at + 1), "has" | "have");
        if matches!(self.word(0), "it" | "they") || (0..self.atoms.len()).any(has_owner) {
            return true;
        }
        self.atoms.iter().any(|atom| match &atom.kind {
            AtomKind::Relation(relation) => {
                relation.form == Form::Verb
                    && relation.kind != ClaimKind::Passage
                    && !relation.phrase.starts_with("motor")
            }
            _ => matches!(&*atom.word, "is" | "are"),
        })
    }

    /// Whether it only tells of what the structure above is a branch: "Longest branch of the femoral nerve", "A branch of the
    /// facial nerve that crosses the membrane". What it names is not what the next sentence speaks of.
    pub(super) fn tells_branch_only(&self) -> bool {
        let Some(name) = (0..self.atoms.len()).find(|at| self.mention(*at).is_some()).filter(|at| *at < 7) else {
            return false;
        };
        let tells_branch = |at: usize| self.written(at).split(' ').any(|word| matches!(word, "branch" | "division"));
        let behind = self.word(name + 1);
        let ends = name + 1 >= self.atoms.len()
            || lexicon::is_relative(behind)
            || matches!(behind, "," | "." | ";" | ":" | "(" | "in" | "at" | "near");
        (0..name).any(tells_branch) && ends
    }

    /// Whether the sentence asserts something of its own.
    pub(super) fn asserts(&self) -> bool {
        let is_question = self.atoms.last().is_some_and(|atom| atom.word == "?")
            || self.atoms.first().is_some_and(|atom| lexicon::begins_question(&atom.word));
        let is_quoted = self.atoms.iter().any(|atom| matches!(&*atom.word, "“" | "\"" | "«"));
        !is_question
            && !is_quoted
            && !self.denies_a_clause()
            && !self.denies_with_inversion()
            && !self.reports_a_claim()
            && !(0..self.atoms.len()).any(|at| self.has_nothing_to_do(at) || self.still_feels(at))
            && !(0..self.atoms.len()).any(|at| lexicon::asserts_nothing(self.word(at)) && !self.tells_of_a_case(at))
    }

    /// "She *could* not spread her fingers": what somebody could not do is told, not imagined.
    fn tells_of_a_case(&self, at: usize) -> bool {
        self.word(at) == "could" && matches!(self.word(at + 1), "not" | "no" | "neither" | "never")
    }

    /// Whether it speaks of what is so only under a condition.
    pub(super) fn is_conditional(&self) -> bool {
        self.atoms.iter().any(|atom| matches!(&*atom.word, "if" | "unless"))
    }

    /// "It is not true that …", "do not write that …": the clause is denied as a whole.
    fn denies_a_clause(&self) -> bool {
        let Some(that) = (0..self.atoms.len()).find(|at| self.word(*at) == "that") else { return false };
        let denial = (0..that).rev().find(|at| lexicon::is_negation(self.word(*at)));
        denial.is_some_and(|denial| that - denial < 6 && (denial..that).all(|at| self.mention(at).is_none()))
    }

    /// "Neither is A a branch of B", "Nor does A supply C": the denial stands before the verb, and the verb before its subject.
    fn denies_with_inversion(&self) -> bool {
        matches!(self.word(0), "neither" | "nor") && lexicon::is_auxiliary(self.word(1))
    }

    /// "A patient with a lesion of NERVE *still feels* the area": it is the patient who feels.
    fn still_feels(&self, at: usize) -> bool {
        self.word(at) == "still" && matches!(self.first_token(at + 1), "feel" | "feels" | "felt")
    }

    /// "It has nothing to do with the diaphragm"
    fn has_nothing_to_do(&self, at: usize) -> bool {
        self.word(at) == "nothing" && self.word(at + 1) == "to" && self.word(at + 2) == "do"
    }

    /// "A student once claimed that …": what somebody said is told as his, not as true.
    fn reports_a_claim(&self) -> bool {
        let is_report = |at: usize| matches!(self.word(at), "claimed" | "claims" | "alleged" | "alleges" | "insisted");
        (0..self.atoms.len()).any(|at| is_report(at) && self.word(at + 1) == "that")
    }

    /// Steps back from a verb over auxiliaries and adverbs: the atom after which the subject ends, and what was said of
    /// the verb on the way.
    pub(super) fn before_verb(&self, at: usize) -> (usize, bool, bool) {
        let (mut before, mut negated, mut hedged) = (at, false, false);
        while let Some(place) = before.checked_sub(1) {
            let word = self.word(place);
            if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_hedge(word) {
                hedged = true;
            } else if matches!(word, "both" | "all" | "each")
                && place
                    .checked_sub(1)
                    .is_some_and(|place| lexicon::is_auxiliary(self.word(place)) || self.mention(place).is_some())
            {
                // "A and B are *both* supplied by"
            } else if word == "having" {
                // "having left the pelvis through"
            } else if lexicon::is_hyphen(word) && place.checked_sub(1).is_some_and(|re| self.word(re) == "re") {
                before = place - 1; // "re-enters"
                continue;
            } else if !(lexicon::is_auxiliary(word) || lexicon::is_adverb(word)) {
                break;
            }
            before = place;
        }
        (before, negated, hedged)
    }

    pub(super) fn clause_hedged(&self, at: usize) -> bool {
        let stops = |word: &str| matches!(word, ";" | ":") || lexicon::is_contrast(word);
        let back = (0..at).rev().take_while(|place| !stops(self.word(*place)));
        let forth = (at..self.atoms.len()).take_while(|place| !stops(self.word(*place)) && self.word(*place) != ",");
        back.chain(forth).any(|place| lexicon::is_hedge(&self.written(place)) || self.word(place) == "%")
    }

    /// Whether a verb begins at an atom.
    pub(super) fn begins_predicate(&self, at: usize) -> bool {
        let mut at = at;
        while lexicon::is_adverb(self.word(at))
            || lexicon::is_negation(self.word(at))
            || lexicon::is_hedge(self.word(at))
        {
            at += 1;
        }
        match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => relation.form == Form::Verb,
            Some(AtomKind::Movement(movement)) => movement.form == MovementForm::Verb,
            _ => lexicon::is_auxiliary(self.word(at)),
        }
    }
}
