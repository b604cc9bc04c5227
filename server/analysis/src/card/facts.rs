//! The facts of a structure with those of its parts and wholes, and the muscles below a nerve.

use fascicle_model::{EntryId, Fact, Relation, Vocabulary};

/// Facts, each with the entry at which it stands.
pub type OwnedFacts<'v> = Vec<(EntryId, &'v Fact)>;

/// The facts of an entry that an edge's test accepts, with their owner: its own and those of its parts; where there are
/// none that hold as a rule, those of the nearest whole that has any.
pub fn family_facts(vocabulary: &Vocabulary, id: EntryId, test: impl Fn(&Relation) -> bool) -> OwnedFacts<'_> {
    let own = |owner: EntryId| {
        let facts = vocabulary.entry(owner).facts.iter().filter(|fact| test(&fact.relation));
        facts.map(|fact| (owner, fact)).collect::<Vec<_>>()
    };
    let mut list = own(id);
    for part in vocabulary.all_parts(id) {
        list.extend(own(part));
    }
    if !list.iter().any(|(_, fact)| !fact.variant)
        && let Some(found) = vocabulary.wholes(id).into_iter().map(own).find(|found| !found.is_empty())
    {
        list.extend(found);
    }
    list
}

/// The muscles that a nerve supplies as a rule, itself and through the branches that it has as a rule, each once, in order.
pub fn usual_muscles(vocabulary: &Vocabulary, nerve: EntryId) -> Vec<EntryId> {
    let mut list = Vec::new();
    for branch in std::iter::once(nerve).chain(vocabulary.usual_descendants(nerve)) {
        for supply in vocabulary.twigs(branch) {
            if !supply.variant && !list.contains(&supply.muscle) {
                list.push(supply.muscle);
            }
        }
    }
    list
}
