//! What a course lays over a vocabulary: how its facts take the place of others, and how the other end follows.
//!
//! A fact that a course replaces stands at two ends (the muscle names its nerve, the nerve its muscle). The course writes
//! one end; the other is mended here, so that nobody has to copy the built-in data to correct a line of it.

use std::collections::BTreeMap;
use std::mem::{Discriminant, discriminant};

use crate::Vocabulary;
use crate::audit::{MEMORY, PRACTICE};
use crate::check::plain;
use crate::entry::{Citation, Entry, EntryId, Fact, Relation};

/// An entry that a course changed, with the kinds of fact that it brought.
#[derive(Debug)]
pub(crate) struct Change {
    pub entry: EntryId,
    pub kinds: Vec<Discriminant<Relation>>,
}

impl Change {
    fn brings(&self, example: &Relation) -> bool {
        self.kinds.contains(&discriminant(example))
    }
}

/// The facts of an entry once those that a course brings under one key have taken the place of the old ones of their
/// kind. Order is kept: a fact of the same target keeps its place, a new one comes last. A course that tells passages
/// tells the whole course of the nerve.
pub(crate) fn lay(old: &[Fact], new: Vec<Fact>) -> Vec<Fact> {
    let is_step = |fact: &Fact| {
        matches!(
            fact.relation,
            Relation::Passes { .. }
                | Relation::Gives { .. }
                | Relation::Supplies { .. }
                | Relation::Feels { .. }
                | Relation::Joins { .. }
                | Relation::Injured { .. }
        )
    };
    let whole_course = new.iter().any(|fact| matches!(fact.relation, Relation::Passes { .. }));
    let kind = |fact: &Fact| discriminant(&fact.relation);
    let kinds: Vec<_> = new.iter().map(kind).collect();
    let mut new: Vec<Option<Fact>> = new.into_iter().map(Some).collect();
    let mut all = Vec::new();
    for fact in old {
        if whole_course && is_step(fact) {
            continue;
        }
        if !kinds.contains(&kind(fact)) {
            all.push(fact.clone());
            continue;
        }
        let same = |other: &Fact| {
            kind(other) == kind(fact)
                && other.relation.target().is_some()
                && other.relation.target() == fact.relation.target()
        };
        if let Some(place) = new.iter_mut().find(|slot| slot.as_ref().is_some_and(same)) {
            all.extend(place.take());
        }
    }
    all.extend(new.into_iter().flatten());
    all
}

/// Makes the other ends of replaced facts follow.
pub(crate) fn mend(entries: &mut [Entry], changes: &[Change]) {
    for change in changes {
        let id = change.entry;
        if change.brings(&Relation::SuppliedBy { nerve: id }) {
            follow(
                entries,
                changes,
                id,
                &Pair {
                    near: |relation| match relation {
                        Relation::SuppliedBy { nerve } => Some(*nerve),
                        _ => None,
                    },
                    far: |relation| match relation {
                        Relation::Supplies { muscle, .. } => Some(*muscle),
                        _ => None,
                    },
                    make: |muscle| Relation::Supplies { muscle, at: None },
                },
            );
        }
        if change.brings(&Relation::Supplies { muscle: id, at: None }) {
            follow(
                entries,
                changes,
                id,
                &Pair {
                    near: |relation| match relation {
                        Relation::Supplies { muscle, .. } => Some(*muscle),
                        _ => None,
                    },
                    far: |relation| match relation {
                        Relation::SuppliedBy { nerve } => Some(*nerve),
                        _ => None,
                    },
                    make: |nerve| Relation::SuppliedBy { nerve },
                },
            );
        }
        if change.brings(&Relation::ArisesFrom { from: id, at: None }) {
            follow(
                entries,
                changes,
                id,
                &Pair {
                    near: |relation| match relation {
                        Relation::ArisesFrom { from, .. } => Some(*from),
                        _ => None,
                    },
                    far: branch,
                    make: |nerve| Relation::Gives { nerve, at: None },
                },
            );
        }
        if change.brings(&Relation::Gives { nerve: id, at: None })
            || change.brings(&Relation::ContinuesAs { nerve: id, at: None })
        {
            follow(
                entries,
                changes,
                id,
                &Pair {
                    near: branch,
                    far: |relation| match relation {
                        Relation::ArisesFrom { from, .. } => Some(*from),
                        _ => None,
                    },
                    make: |from| Relation::ArisesFrom { from, at: None },
                },
            );
        }
    }
}

/// The branch that a fact of its parent gives.
const fn branch(relation: &Relation) -> Option<EntryId> {
    match relation {
        Relation::Gives { nerve, .. } | Relation::ContinuesAs { nerve, .. } => Some(*nerve),
        _ => None,
    }
}

/// The two ends of one kind of fact: how to read either, and how to make the far one.
struct Pair {
    near: fn(&Relation) -> Option<EntryId>,
    far: fn(&Relation) -> Option<EntryId>,
    make: fn(EntryId) -> Relation,
}

/// Takes away far ends that the near one no longer has, and adds those that it lacks. A far end that the course wrote
/// itself stays as it is: if the two disagree, the check says so.
fn follow(entries: &mut [Entry], changes: &[Change], id: EntryId, pair: &Pair) {
    let near: Vec<(EntryId, Fact)> = entries
        .get(id.0 as usize)
        .into_iter()
        .flat_map(|entry| &entry.facts)
        .filter_map(|fact| Some(((pair.near)(&fact.relation)?, fact.clone())))
        .collect();
    for (place, other) in (0u32..).map(EntryId).zip(entries.iter_mut()) {
        if !other.kind.can_have(&(pair.make)(id)) {
            continue;
        }
        let written = changes.iter().any(|change| {
            change.entry == place
                && other.facts.iter().any(|fact| {
                    (pair.far)(&fact.relation).is_some() && change.kinds.contains(&discriminant(&fact.relation))
                })
        });
        if written {
            continue;
        }
        let wanted = |variant: bool| near.iter().find(|(target, fact)| *target == place && fact.variant == variant);
        other.facts.retain(|fact| (pair.far)(&fact.relation) != Some(id) || wanted(fact.variant).is_some());
        for variant in [false, true] {
            let Some((_, fact)) = wanted(variant) else { continue };
            let there =
                other.facts.iter().any(|far| (pair.far)(&far.relation) == Some(id) && far.variant == fact.variant);
            if !there {
                let relation = (pair.make)(id);
                other.facts.push(Fact { relation, line: other.line, ..fact.clone() });
            }
        }
    }
}

impl Vocabulary {
    /// Makes a source's reading of the segments the preferred one wherever it has one; what was preferred becomes a
    /// variant. Returns how many entries changed.
    pub fn adopt(&mut self, source: &str) -> usize {
        let cites = |fact: &Fact| fact.sources.iter().any(|citation| citation.source == source);
        let is_roots = |fact: &Fact| matches!(fact.relation, Relation::Roots { .. });
        let mut changed = 0;
        for entry in &mut self.entries {
            let mut readings: Vec<&mut Fact> = entry.facts.iter_mut().filter(|fact| is_roots(fact)).collect();
            if readings.iter().any(|fact| !fact.variant && cites(fact)) || !readings.iter().any(|fact| cites(fact)) {
                continue;
            }
            let chosen = readings.iter().position(|fact| cites(fact));
            for (place, fact) in readings.iter_mut().enumerate() {
                fact.variant = Some(place) != chosen;
            }
            changed += 1;
        }
        self.adopted = Some(source.to_owned());
        changed
    }

    /// The identifiers of the works on which segments rest, any of which a course can adopt, the most used first.
    pub fn sources_of_segments(&self) -> Vec<&str> {
        let facts = self.entries.iter().flat_map(|entry| &entry.facts);
        let readings = facts.filter(|fact| matches!(fact.relation, Relation::Roots { .. }));
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        let is_work = |citation: &&Citation| ![MEMORY, PRACTICE].contains(&&*citation.source);
        for citation in readings.flat_map(|fact| &fact.sources).filter(is_work) {
            *counts.entry(&citation.source).or_default() += 1;
        }
        let mut list: Vec<(&str, usize)> = counts.into_iter().collect();
        list.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
        list.into_iter().map(|(source, _)| source).collect()
    }

    /// The source whose reading of the segments is adopted, if one is.
    pub fn adopted(&self) -> Option<&str> {
        self.adopted.as_deref()
    }

    /// Whether a fact rests on the adopted source.
    pub fn is_adopted(&self, fact: &Fact) -> bool {
        self.adopted().is_some_and(|source| fact.sources.iter().any(|citation| citation.source == source))
    }
}

/// Marks as ambiguous every built-in name that a course gives to another entry: the course's own entry has to say so
/// itself, the built-in one cannot.
pub(crate) fn mark_shared_names(entries: &mut [Entry], from_course: &[EntryId]) {
    let is_ours = |place: usize| from_course.iter().any(|id| id.0 as usize == place);
    let mut names: Vec<String> = Vec::new();
    for id in from_course {
        names.extend(
            entries.get(id.0 as usize).into_iter().flat_map(|entry| &entry.names).map(|name| plain(&name.text)),
        );
    }
    names.sort_unstable();
    for (_, entry) in entries.iter_mut().enumerate().filter(|(place, _)| !is_ours(*place)) {
        for name in &mut entry.names {
            name.ambiguous |= names.binary_search(&plain(&name.text)).is_ok();
        }
    }
}
