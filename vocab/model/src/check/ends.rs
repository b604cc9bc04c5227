//! Facts that are entered at both of their ends: nerve and branch, nerve and muscle.

use super::Problems;
use crate::{Entry, EntryId, Kind, Relation};

/// A fact that is entered at both of its ends must stand at both.
pub(super) fn both_ends(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    let has = |owner: EntryId, variant: bool, test: &dyn Fn(&Relation) -> bool| {
        vocabulary.entry(owner).facts.iter().any(|fact| fact.variant == variant && test(&fact.relation))
    };
    for fact in &entry.facts {
        let as_variant = if fact.variant { " (as a variant)" } else { "" };
        let (missing, what) = match fact.relation {
            Relation::Gives { nerve, .. } => (
                !has(nerve, fact.variant, &|other| matches!(other, Relation::ArisesFrom { from, .. } if *from == id)),
                format!("gives `{}`, whose `arises` does not name it", vocabulary.entry(nerve).id),
            ),
            Relation::ContinuesAs { nerve, .. } => (
                !has(nerve, fact.variant, &|other| matches!(other, Relation::ArisesFrom { from, .. } if *from == id)),
                format!("continues as `{}`, whose `arises` does not name it", vocabulary.entry(nerve).id),
            ),
            Relation::ArisesFrom { from, .. } if matches!(vocabulary.kind(from), Kind::Nerve | Kind::Plexus) => (
                !has(from, fact.variant, &|other| match other {
                    Relation::Gives { nerve, .. } | Relation::ContinuesAs { nerve, .. } => *nerve == id,
                    _ => false,
                }),
                format!(
                    "arises from `{}`, whose course neither gives it nor continues as it",
                    vocabulary.entry(from).id
                ),
            ),
            Relation::Supplies { muscle, .. } => (
                !has(muscle, fact.variant, &|other| matches!(other, Relation::SuppliedBy { nerve } if *nerve == id)),
                format!("supplies `{}`, whose `nerves` do not name it so{as_variant}", vocabulary.entry(muscle).id),
            ),
            Relation::SuppliedBy { nerve } if vocabulary.kind(nerve) != Kind::Root => (
                !has(nerve, fact.variant, &|other| matches!(other, Relation::Supplies { muscle, .. } if *muscle == id)),
                format!("is supplied by `{}`, whose course does not supply it{as_variant}", vocabulary.entry(nerve).id),
            ),
            _ => continue,
        };
        if missing {
            problems.say(entry, Some(fact.line), &what);
        }
    }
}
