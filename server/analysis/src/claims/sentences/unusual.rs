//! Verbs that the lexicon does not know, where the preposition behind them tells the relation: a nerve that *hops off*
//! another branches from it, one that *squeezes through* a canal passes it, a muscle that *lodges in* a compartment belongs
//! to it. What verb it is does not matter as long as it does not say that the two are apart.

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::objects::Object;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, PartRole};
use crate::lexicon::{self, Form, RelationWord};

/// How many particles may stand between the verb and the preposition ("nips *back in* through").
const PARTICLES: usize = 3;

impl Sentence<'_, '_> {
    /// The claims of a verb that is not known and the preposition at an atom.
    pub(super) fn unusual_claims(&self, at: usize, last: &mut Vec<Side>) -> Vec<Claim> {
        let Some(verb) = self.unusual_verb(at) else { return Vec::new() };
        let behind = at + 1 + usize::from(self.word(at + 1) == "of" && matches!(self.word(at), "out" | "front"));
        let Some(Object::Names(group)) = self.object(behind) else { return Vec::new() };
        let Some(class) = group.members.first().and_then(|first| self.class(*first)) else { return Vec::new() };
        let relation = |kind, left, right| RelationWord { kind, form: Form::Verb, left, right, ..action_relation() };
        let word = self.word(at);
        let relation = match class {
            0 if lexicon::tells_source(word) => relation(ClaimKind::Branching, PartRole::Nerve, PartRole::Parent),
            2 if lexicon::tells_place(word) => relation(ClaimKind::Membership, PartRole::Muscle, PartRole::Group),
            4 if lexicon::tells_way(word) => relation(ClaimKind::Passage, PartRole::Nerve, PartRole::Landmark),
            _ => return Vec::new(),
        };
        let (before, negated, hedged) = self.before_verb(verb);
        let left = self.subject(before, &relation, last);
        // What stands behind "from" and the like goes with a nerve alone.
        let fits = left.iter().all(|side| match &side.what {
            crate::claims::What::Entry(ids) => self.fits(relation.left, ids),
            _ => false,
        });
        if left.is_empty() || !fits {
            return Vec::new();
        }
        (*last).clone_from(&left);
        let hedged = hedged || self.clause_hedged(at);
        self.combine(&relation, &left, &Object::Names(group), at, negated, hedged, false)
    }

    /// The verb that belongs to the preposition at an atom, where it is one that no list knows.
    fn unusual_verb(&self, at: usize) -> Option<usize> {
        let mut verb = at.checked_sub(1)?;
        if self.word(at) == "front" {
            verb = verb.checked_sub(1).filter(|_| self.word(verb) == "in")?;
        }
        let mut passed = 0;
        while passed < PARTICLES && (lexicon::is_particle(self.word(verb)) || lexicon::is_adverb(self.word(verb))) {
            verb = verb.checked_sub(1)?;
            passed += 1;
        }
        if !matches!(self.atoms.get(verb)?.kind, AtomKind::Word) {
            return None;
        }
        let word = self.word(verb);
        let is_inflected =
            (word.ends_with('s') && !word.ends_with("ss") && !word.ends_with("us")) || word.ends_with("ed");
        let is_other = lexicon::is_auxiliary(word)
            || lexicon::is_determiner(word)
            || lexicon::is_preposition(word)
            || lexicon::is_adverb(word)
            || lexicon::is_part_noun(word)
            || lexicon::is_kind_noun(word)
            || lexicon::is_negation(word)
            || lexicon::is_loss(word)
            || lexicon::is_cut(word)
            || lexicon::is_spared(word)
            || lexicon::sets_apart(word)
            || lexicon::is_pronoun(word);
        if word.len() < 4 || !is_inflected || is_other {
            return None;
        }
        // A verb has its subject before it; a noun has an article or another noun's preposition there.
        let Some(before) = verb.checked_sub(1) else { return Some(verb) };
        let word = self.word(before);
        let has_subject = self.mention(before).is_some()
            || lexicon::is_pronoun(word)
            || lexicon::is_relative(word)
            || lexicon::is_adverb(word)
            || lexicon::is_bullet(word)
            || matches!(word, "and" | "then" | "," | ")" | "—" | "–" | ";");
        has_subject.then_some(verb)
    }
}
