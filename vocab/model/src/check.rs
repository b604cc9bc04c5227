//! Checks over a vocabulary that has been read.
//!
//! Reading already tells of unresolved references, unknown keys and missing sources. The checks here need the graph:
//! facts entered from both ends must agree, nothing may go round in a circle, a muscle's segments must reach it through
//! its nerves, and every structure must be joined to something.

use std::collections::HashMap;

use crate::entry::{Kind, Standing};
use crate::{Entry, EntryId, Modality, Problem, Relation, Segments, Vocabulary};

/// Everything that the checks find wrong, in the order of files and lines.
pub fn check(vocabulary: &Vocabulary) -> Vec<Problem> {
    let mut problems = Problems { vocabulary, list: Vec::new() };
    for (id, entry) in vocabulary.iter() {
        both_ends(&mut problems, id, entry);
        circles(&mut problems, id, entry);
        match entry.kind {
            Kind::Muscle => muscle(&mut problems, id, entry),
            Kind::Nerve => nerve(&mut problems, id, entry),
            Kind::Joint => joint(&mut problems, entry),
            Kind::Group if vocabulary.members(id).is_empty() && !is_moved(entry) => {
                problems.say(entry, None, "has no members and is moved at no joint");
            }
            _ => {}
        }
    }
    name_clashes(&mut problems);
    problems.list.sort_by(|a, b| (&a.file, a.line).cmp(&(&b.file, b.line)));
    problems.list
}

struct Problems<'v> {
    vocabulary: &'v Vocabulary,
    list: Vec<Problem>,
}

impl Problems<'_> {
    fn say(&mut self, entry: &Entry, line: Option<u32>, what: &str) {
        self.list.push(Problem {
            file: entry.file.clone(),
            line: line.unwrap_or(entry.line),
            message: format!("`{}` {what}", entry.id),
        });
    }
}

/// A fact that is entered at both of its ends must stand at both.
fn both_ends(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
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

/// Nothing arises from itself or is a part of itself, by however long a way.
fn circles(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
    let vocabulary = problems.vocabulary;
    if vocabulary.arises_from_itself(id) {
        problems.say(entry, None, "arises from itself, by way of its own branches");
    }
    if entry.part_of.is_some_and(|whole| whole == id || vocabulary.wholes(whole).contains(&id)) {
        problems.say(entry, None, "is a part of itself");
    }
}

/// Whether a part of the body is one that authors say is moved.
fn is_moved(entry: &Entry) -> bool {
    entry.facts.iter().any(|fact| matches!(fact.relation, Relation::MovedAt { .. }))
}

fn muscle(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
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

fn nerve(problems: &mut Problems<'_>, id: EntryId, entry: &Entry) {
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

fn joint(problems: &mut Problems<'_>, entry: &Entry) {
    if !entry.facts.iter().any(|fact| matches!(fact.relation, Relation::JointKind { .. })) {
        problems.say(entry, None, "has no `kind`");
    }
    if !entry.facts.iter().any(|fact| matches!(fact.relation, Relation::Bone { .. })) {
        problems.say(entry, None, "has no `bones`");
    }
}

/// Two entries may share a name only where both say that it is ambiguous.
fn name_clashes(problems: &mut Problems<'_>) {
    let vocabulary = problems.vocabulary;
    let mut owners: HashMap<String, Vec<(EntryId, bool, Standing)>> = HashMap::new();
    for (id, entry) in vocabulary.iter() {
        for name in &entry.names {
            owners.entry(plain(&name.text)).or_default().push((id, name.ambiguous, name.standing));
        }
    }
    for (name, list) in owners {
        let first = list.first().map(|(id, ..)| *id);
        if list.iter().all(|(id, ..)| Some(*id) == first) {
            continue;
        }
        for (id, ambiguous, _) in &list {
            let marked = *ambiguous || list.iter().any(|(other, marked, _)| other == id && *marked);
            if !marked {
                let others: Vec<&str> = list
                    .iter()
                    .filter(|(other, ..)| other != id)
                    .map(|(other, ..)| &*vocabulary.entry(*other).id)
                    .collect();
                let what = format!("shares the name \"{name}\" with {} without `ambiguous = true`", others.join(", "));
                problems.say(vocabulary.entry(*id), None, &what);
            }
        }
    }
}

/// A name without letter case, articles and punctuation.
fn plain(name: &str) -> String {
    let words: Vec<String> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty() && !word.eq_ignore_ascii_case("the"))
        .map(str::to_lowercase)
        .collect();
    words.join(" ")
}
