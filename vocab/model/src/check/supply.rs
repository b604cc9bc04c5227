//! Muscles and nerves: what each must have, and what its neighbours in the graph exclude.

use super::Problems;
use crate::{Entry, EntryId, Modality, Relation, Segments, Vocabulary};

/// A muscle has nerves, segments that reach it through them, attachments and actions.
pub(super) fn muscle(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    let supplies = vocabulary.nerves_of(id);
    if !supplies.iter().any(|supply| !supply.variant) && !entry.is_open("nerves") {
        problems.say(entry, None, "has no nerve");
    }
    let reachable =
        supplies.iter().fold(Segments::EMPTY, |all, supply| all.union(vocabulary.possible_segments(supply.nerve)));
    for reading in vocabulary.roots_of(id).iter().filter(|reading| !reading.fact.variant) {
        // A part that has the segments of its whole shares some of them with its own nerves, not all.
        let own = entry.facts.iter().any(|fact| std::ptr::eq(fact, reading.fact));
        let lost = reading.main.minus(reachable);
        let amiss = if own { !lost.is_empty() } else { reading.main.intersection(reachable).is_empty() };
        if !reachable.is_empty() && amiss {
            let nerves: Vec<&str> = supplies.iter().map(|supply| vocabulary.name(supply.nerve)).collect();
            let what = format!("has {lost} among its segments, which no nerve of it ({}) carries", nerves.join(", "));
            problems.say(entry, Some(reading.fact.line), &what);
        }
    }
    let spinal =
        supplies.iter().any(|supply| !supply.variant && !vocabulary.possible_segments(supply.nerve).is_empty());
    let family = family(vocabulary, id);
    let none = |test: fn(&Relation) -> bool| {
        !family.iter().any(|member| vocabulary.entry(*member).facts.iter().any(|fact| test(&fact.relation)))
    };
    if spinal && !entry.is_open("roots") && none(|relation| matches!(relation, Relation::Roots { .. })) {
        problems.say(entry, None, "is supplied by spinal nerves and has no `roots`");
    }
    let needs: [Need; 3] = [
        ("origin", |relation| matches!(relation, Relation::Origin { .. }), "has no origin"),
        ("insertion", |relation| matches!(relation, Relation::Insertion { .. }), "has no insertion"),
        ("acts", |relation| matches!(relation, Relation::Acts { .. }), "has no action"),
    ];
    for (word, test, what) in needs {
        if !entry.is_open(word) && none(test) {
            problems.say(entry, None, what);
        }
    }
}

/// What every muscle must have unless it is left open: its word, how to tell, and what to say.
type Need = (&'static str, fn(&Relation) -> bool, &'static str);

/// A muscle with its wholes, their parts, and its own parts: what one of them lacks another may hold.
fn family(vocabulary: &Vocabulary, id: EntryId) -> Vec<EntryId> {
    let whole = vocabulary.wholes(id).last().copied().unwrap_or(id);
    let mut all = vec![whole];
    all.extend(vocabulary.all_parts(whole));
    all
}

/// A nerve comes from somewhere, carries something, and does not contradict itself.
pub(super) fn nerve(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    if vocabulary.origins(id, true).next().is_none() {
        problems.say(entry, None, "arises from nothing");
    }
    let supplied = vocabulary.muscles_of(id);
    match vocabulary.modality(id) {
        None => problems.say(entry, None, "has no `modality`"),
        Some(Modality::Sensory) => {
            if let Some(supply) = supplied.first() {
                let muscle = vocabulary.name(supply.muscle);
                problems.say(entry, None, &format!("is sensory and yet supplies {muscle}"));
            }
        }
        Some(Modality::Motor | Modality::Mixed) => {
            // The fibres of a part are told at its whole; a nerve that joins another ends in that nerve's muscles.
            let elsewhere = entry.part_of.is_some()
                || entry.is_open("supplies")
                || std::iter::once(id).chain(vocabulary.descendants(id)).any(|nerve| {
                    vocabulary.entry(nerve).facts.iter().any(|fact| {
                        matches!(
                            fact.relation,
                            Relation::Carries { .. } | Relation::Supplies { .. } | Relation::Joins { .. }
                        )
                    })
                });
            if supplied.is_empty() && !elsewhere {
                problems.say(entry, None, "is motor or mixed and supplies no muscle");
            }
        }
    }
}

/// The segments of a branch come to it from what it arises from.
pub(super) fn segments_of_branch(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    let above =
        vocabulary.origins(id, true).fold(Segments::EMPTY, |all, from| all.union(vocabulary.possible_segments(from)));
    if above.is_empty() {
        return;
    }
    for fact in &entry.facts {
        let Relation::Roots { main, .. } = fact.relation else { continue };
        let lost = main.minus(above);
        if !fact.variant && !lost.is_empty() {
            let what = format!("has {lost} among its segments, which nothing that it arises from carries ({above})");
            problems.say(entry, Some(fact.line), &what);
        }
    }
}
