//! Claims of how many there are: "has three heads", "there are four dorsal interossei".

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, RelationWord};

impl Sentence<'_, '_> {
    /// "has three heads", "there are four dorsal interossei", "consists of four muscles", "are four in number"
    pub(super) fn count_claims(&self, at: usize) -> Vec<Claim> {
        let Some(number) = lexicon::number(self.word(at)) else { return Vec::new() };
        let hedged = self.clause_hedged(at);
        let claim = |counted: Side, noun: &'static str| {
            let span = self.claim_span(at, counted.span, counted.span);
            let parts = vec![
                Part { role: PartRole::Structure, span: counted.span, what: counted.what },
                Part { role: PartRole::Number, span: self.source(at, at + 1), what: What::Number(number) },
                Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(noun) },
            ];
            Claim {
                kind: ClaimKind::Count,
                span,
                parts,
                negated: false,
                hedged,
                all: false,
                block: self.scope.block,
                key: None,
            }
        };
        let back = |is_one: fn(&str) -> bool| (at.saturating_sub(4)..at).rev().find(|place| is_one(self.word(*place)));
        let relation = action_relation();
        // NAME has three heads / consists of four muscles
        let noun = lexicon::COUNTED.iter().find(|(noun, _)| *noun == self.written(at + 1)).map(|(noun, _)| *noun);
        let noun = noun.or_else(|| matches!(&*self.written(at + 1), "muscles" | "members").then_some("muscles"));
        if let Some(noun) = noun {
            let verb = back(lexicon::precedes_parts);
            let relation_verb = (at.saturating_sub(2)..at)
                .rev()
                .find(|place| matches!(&self.atoms.get(*place).map(|atom| &atom.kind), Some(AtomKind::Relation(_))));
            let Some(verb) = verb.or(relation_verb) else { return Vec::new() };
            let is_parted = matches!(self.word(at + 2), "of");
            if is_parted {
                return Vec::new();
            }
            let (before, negated, _) = self.before_verb(verb);
            if negated {
                return Vec::new();
            }
            let before = if before
                .checked_sub(1)
                .is_some_and(|place| lexicon::is_done(self.word(place)) || lexicon::is_made_of(self.word(place)))
            {
                self.before_verb(before - 1).0
            } else {
                before
            };
            // What has heads is a muscle; the nearest heading may speak of something else.
            let class = lexicon::COUNTED.iter().find(|(known, _)| *known == noun).map(|(_, class)| *class);
            let left = match class {
                Some(None) => PartRole::Muscle,
                Some(Some(_)) => PartRole::Nerve,
                None => PartRole::Group,
            };
            let role = RelationWord { left, ..relation };
            let mut counted = self.subject(before, &role, &[]);
            // "There are three cords": of what the text speaks of.
            if counted.is_empty() && class.is_some() && before.checked_sub(1).is_none_or(|at| self.word(at) == "and") {
                counted = self.implied(left, false);
            }
            return counted.into_iter().map(|side| claim(side, noun)).collect();
        }
        // "The hamstrings are five."
        if self.ends_clause(at + 1)
            && let Some(verb) = at.checked_sub(1).filter(|verb| self.word(*verb) == "are")
            && let Some(group) = self.group_to(verb).filter(|group| group.members.len() == 1 && !group.partial)
            && !group.members.first().is_some_and(|first| self.is_governed(*first))
        {
            let fits = |side: &Side| match &side.what {
                What::Entry(ids) => ids.iter().all(|id| self.scope.vocabulary.members(*id).len() > 1),
                _ => false,
            };
            return self
                .sides(&group, PartRole::Group)
                .into_iter()
                .filter(fits)
                .map(|side| claim(side, "named"))
                .collect();
        }
        // there are four dorsal interossei / each hand has four lumbricals
        if let Some(side) = self.side(at + 1, PartRole::Structure)
            && self.mention(at + 1).is_some_and(|mention| {
                mention.plural
                    || mention.candidates.iter().all(|id| {
                        self.scope.vocabulary.name(*id).ends_with('s')
                            || self.scope.vocabulary.parts(*id).len() > 1
                            || self.scope.vocabulary.members(*id).len() > 1
                    })
            })
            && !self.speaks_of_a_part(at + 1)
            && (back(lexicon::precedes_count).is_some() || at == 0 || self.word(at - 1) == ":")
            && !at.checked_sub(1).is_some_and(|before| lexicon::is_determiner(self.word(before)))
        {
            return vec![claim(side, "named")];
        }
        // NAME number four
        if let Some(verb) = at.checked_sub(1).filter(|verb| matches!(self.word(*verb), "number" | "numbers")) {
            let role = RelationWord { left: PartRole::Group, ..relation };
            return self.subject(verb, &role, &[]).into_iter().map(|side| claim(side, "named")).collect();
        }
        // NAME are four in number
        if self.word(at + 1) == "in"
            && self.word(at + 2) == "number"
            && let Some(verb) = back(|word| matches!(word, "are" | "is"))
        {
            let role = RelationWord { left: PartRole::Structure, ..relation };
            return self
                .subject(self.before_verb(verb).0, &role, &[])
                .into_iter()
                .map(|side| claim(side, "named"))
                .collect();
        }
        Vec::new()
    }

    /// "The middle finger has two dorsal interossei": how many there are at a part of the body says nothing of how many
    /// there are in all.
    fn speaks_of_a_part(&self, counted: usize) -> bool {
        (0..self.atoms.len()).filter(|at| *at != counted).any(|at| {
            self.mention(at).is_some_and(|mention| {
                mention.candidates.iter().any(|id| self.scope.vocabulary.entry(*id).part_of.is_some())
            })
        })
    }
}
