//! What a nerve is: its roots, its parent, its other name, what it carries.

use fascicle_model::{EntryId, Kind, Modality, Relation, Role, Segments, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;
use crate::moving::moved_joints;

/// Judges the segments of a nerve or muscle.
pub fn roots(vocabulary: &Vocabulary, id: EntryId, main: Segments, lesser: Segments) -> Judgement {
    let readings = vocabulary.roots_of(id);
    let told = main.union(lesser);
    let Some(first) = readings.first() else { return without_readings(vocabulary, id, told) };
    let sources = |reading: &fascicle_model::graph::RootReading<'_>| {
        let names: Vec<String> =
            reading.fact.sources.iter().map(|citation| title(vocabulary, &citation.source)).collect();
        list(&names)
    };
    for reading in &readings {
        if reading.main.within(told) && told.within(reading.all()) {
            let why = format!("{} has {} ({})", the(vocabulary, id), reading.all(), sources(reading));
            if vocabulary.is_adopted(first.fact) && !vocabulary.is_adopted(reading.fact) {
                let adopted = format!("the course's reference gives {} {}", the(vocabulary, id), first.all());
                return Judgement::new(Verdict::Variant, format!("{adopted}; by other sources {why}"))
                    .remedy(PartRole::Segments, first.all().to_string());
            }
            let verdict = if reading.fact.variant { Verdict::Variant } else { Verdict::Agrees };
            return Judgement::new(verdict, why);
        }
    }
    let known = readings.iter().fold(Segments::EMPTY, |all, reading| all.union(reading.all()));
    if told.within(known) {
        return Judgement::new(Verdict::LessExact, format!("{} has {} in all", the(vocabulary, id), known));
    }
    if vocabulary.entry(id).is_open("roots") {
        return Judgement::unknown();
    }
    let extra = told.minus(known);
    let missed = first.main.minus(told);
    let far = extra.iter().any(|segment| !known.iter().any(|other| segment.abs_diff(other) <= 1));
    let disjoint = told.intersection(known).is_empty();
    let is_muscle = vocabulary.kind(id) == Kind::Muscle;
    let falls_short = !missed.is_empty() && !is_muscle;
    if !(far || disjoint || falls_short) {
        return Judgement::new(
            Verdict::Unknown,
            format!("{} has {} by the vocabulary's sources", the(vocabulary, id), known),
        );
    }
    let verb = if extra.len() == 1 { "is" } else { "are" };
    let why = format!(
        "{extra} {verb} no {} of {}, which has {}",
        if extra.len() == 1 { "segment" } else { "segments" },
        the(vocabulary, id),
        shown(first.main, first.lesser)
    );
    let path = readings
        .iter()
        .map(|reading| format!("{}: {}", sources(reading), shown(reading.main, reading.lesser)))
        .collect();
    Judgement::new(Verdict::Contradicts, why)
        .path(path)
        .remedy(PartRole::Segments, first.main.union(first.lesser).to_string())
}

/// A structure of which no reading is known: a nerve is judged by what it arises from.
fn without_readings(vocabulary: &Vocabulary, id: EntryId, told: Segments) -> Judgement {
    if matches!(vocabulary.kind(id), Kind::Group | Kind::Muscle) {
        let parts =
            if vocabulary.kind(id) == Kind::Group { vocabulary.members(id) } else { vocabulary.parts(id).to_vec() };
        return of_many(vocabulary, &the(vocabulary, id), &parts, Segments::EMPTY, told);
    }
    let possible = vocabulary.possible_segments(id);
    if vocabulary.kind(id) != Kind::Nerve {
        return Judgement::unknown();
    }
    if !told.intersection(possible).is_empty() {
        return Judgement::new(Verdict::LessExact, format!("it comes from {possible}"));
    }
    let from_brain = vocabulary.origins(id, true).next().is_some()
        && vocabulary
            .ancestors(id)
            .iter()
            .all(|id| vocabulary.kind(*id) != Kind::Root && vocabulary.kind(*id) != Kind::Plexus);
    if !possible.is_empty() {
        return Judgement::new(Verdict::Contradicts, format!("{} comes from {possible}", the(vocabulary, id)))
            .remedy(PartRole::Segments, possible.to_string());
    }
    if from_brain {
        return Judgement::new(
            Verdict::Contradicts,
            format!("{} is a cranial nerve or a branch of one and has no spinal segments", the(vocabulary, id)),
        );
    }
    Judgement::unknown()
}

/// Judges segments that are told of several muscles together: what is far from all of theirs is wrong. `key` is what a standard
/// names for them.
fn of_many(vocabulary: &Vocabulary, name: &str, muscles: &[EntryId], key: Segments, told: Segments) -> Judgement {
    let (mut main, mut known) = (key, key);
    let has_own = |muscle: &EntryId| !vocabulary.roots_of(*muscle).is_empty();
    let own = |muscle: &EntryId| if has_own(muscle) { vec![*muscle] } else { vocabulary.all_parts(*muscle) };
    for muscle in muscles.iter().flat_map(own) {
        let readings = vocabulary.roots_of(muscle);
        if readings.is_empty() || vocabulary.entry(muscle).is_open("roots") {
            return Judgement::unknown();
        }
        main =
            readings.iter().filter(|reading| !reading.fact.variant).fold(main, |all, reading| all.union(reading.main));
        known = readings.iter().fold(known, |all, reading| all.union(reading.all()));
    }
    if muscles.is_empty() || known.is_empty() {
        return Judgement::unknown();
    }
    let why = format!("{name} has {main}");
    if told.within(known) {
        let verdict = if told == main { Verdict::Agrees } else { Verdict::LessExact };
        return Judgement::new(verdict, why);
    }
    let is_far = |from: Segments| {
        !from.is_empty() && told.iter().all(|segment| from.iter().all(|other| segment.abs_diff(other) > 1))
    };
    if !told.intersection(known).is_empty() || !(is_far(main) || is_far(key)) {
        return Judgement::new(Verdict::Unknown, why);
    }
    let remedy = if key.is_empty() { main } else { key };
    Judgement::new(Verdict::Contradicts, format!("{told} does not move it: {why}"))
        .remedy(PartRole::Segments, remedy.to_string())
}

/// Judges the segments of a movement: those of the muscles that chiefly do it.
pub fn myotome(vocabulary: &Vocabulary, movement: EntryId, targets: &[EntryId], told: Segments) -> Judgement {
    let joints = moved_joints(vocabulary, targets);
    let (mut prime, mut key) = (Vec::new(), Segments::EMPTY);
    for (id, entry) in vocabulary.iter() {
        for fact in &entry.facts {
            match fact.relation {
                Relation::Acts { movement: held, target, role }
                    if held == movement && !fact.variant && role == Role::Prime && joints.holds(vocabulary, target) =>
                {
                    prime.push(id);
                }
                _ => {}
            }
        }
    }
    prime.sort_unstable();
    prime.dedup();
    for (id, entry) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Root) {
        let is_key = |fact: &fascicle_model::Fact| {
            matches!(fact.relation, Relation::KeyMuscle { muscle, movement: held } if held == movement
            && vocabulary.entry(muscle).facts.iter().any(|fact| {
                matches!(fact.relation, Relation::Acts { movement: held, target, .. } if held == movement && joints.holds(vocabulary, target))
            }))
        };
        if entry.facts.iter().any(is_key)
            && let Some(segment) = Segments::parse_one(vocabulary.name(id))
        {
            key = key.union(Segments::one(segment));
        }
    }
    let at = targets.first().map_or_else(String::new, |id| format!(" of {}", the(vocabulary, *id)));
    of_many(vocabulary, &format!("{}{at}", vocabulary.name(movement)), &prime, key, told)
}

/// Judges the segments of a tendon reflex.
pub fn reflex(vocabulary: &Vocabulary, name: &str, told: Segments) -> Judgement {
    let (mut main, mut known) = (Segments::EMPTY, Segments::EMPTY);
    for (id, entry) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Root) {
        let Some(segment) = Segments::parse_one(vocabulary.name(id)).map(Segments::one) else { continue };
        for fact in &entry.facts {
            if matches!(&fact.relation, Relation::Reflex { reflex } if reflex == name) {
                known = known.union(segment);
                main = if fact.variant { main } else { main.union(segment) };
            }
        }
    }
    if known.is_empty() {
        return Judgement::unknown();
    }
    let why = format!("the {name} reflex is carried by {main}");
    if told.within(known) {
        let verdict = if told.intersection(main).is_empty() { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, why);
    }
    if !told.intersection(known).is_empty() {
        return Judgement::new(Verdict::Unknown, why);
    }
    Judgement::new(Verdict::Contradicts, format!("{why}, not by {told}")).remedy(PartRole::Segments, main.to_string())
}

fn shown(main: Segments, lesser: Segments) -> String {
    if lesser.is_empty() { main.to_string() } else { format!("{main} ({lesser} less)") }
}

fn title(vocabulary: &Vocabulary, source: &str) -> String {
    vocabulary.sources().iter().find(|known| known.id == source).map_or_else(
        || source.to_owned(),
        |known| match (&known.author, known.year) {
            (Some(author), Some(year)) => format!("{} {year}", author.split(',').next().unwrap_or(author)),
            _ => known.title.clone(),
        },
    )
}

/// Judges that a nerve arises from another, from a plexus part, a root or a landmark.
pub fn branching(vocabulary: &Vocabulary, child: EntryId, parent: EntryId) -> Judgement {
    if child == parent {
        return Judgement::unknown();
    }
    let origins: Vec<EntryId> = vocabulary.origins(child, false).collect();
    let names: Vec<String> = origins.iter().map(|id| the(vocabulary, *id)).collect();
    let path: Vec<String> = vec![format!("{} arises from {}", the(vocabulary, child), list(&names))];
    if origins.contains(&parent) {
        return Judgement::new(Verdict::Agrees, path.concat());
    }
    if vocabulary.origins(child, true).any(|id| id == parent) {
        return Judgement::new(
            Verdict::Variant,
            format!(
                "in some people or by some sources {} arises from {}",
                the(vocabulary, child),
                the(vocabulary, parent)
            ),
        );
    }
    if let Some(way) = vocabulary.path_up(child, parent) {
        let steps: Vec<String> = way.iter().map(|id| vocabulary.name(*id).to_owned()).collect();
        return Judgement::new(Verdict::LessExact, format!("by way of {}", steps.join(" ← ")));
    }
    if is_of_its_roots(vocabulary, &origins, parent) {
        return Judgement::new(Verdict::LessExact, path.concat());
    }
    if vocabulary.kind(parent) == Kind::Root {
        let Ok(set) = Segments::parse(vocabulary.name(parent)) else { return Judgement::unknown() };
        return roots(vocabulary, child, set, Segments::EMPTY);
    }
    if origins.is_empty() || !vocabulary.is_neural(child) {
        return Judgement::unknown();
    }
    if vocabulary.kind(parent) == Kind::Landmark {
        return Judgement::unknown();
    }
    let all_landmarks = origins.iter().all(|id| vocabulary.kind(*id) == Kind::Landmark);
    let why = if vocabulary.is_or_above(child, parent) {
        format!("it is the other way round: {} arises from {}", the(vocabulary, parent), the(vocabulary, child))
    } else {
        format!("{} arises from {}, not from {}", the(vocabulary, child), list(&names), the(vocabulary, parent))
    };
    if all_landmarks && !vocabulary.is_or_above(child, parent) && vocabulary.kind(child) != Kind::Nerve {
        return Judgement::unknown();
    }
    let mut judgement = Judgement::new(Verdict::Contradicts, why).path(path);
    for origin in origins.iter().filter(|id| vocabulary.kind(**id) != Kind::Landmark) {
        judgement = judgement.remedy(PartRole::Parent, vocabulary.name(*origin));
    }
    judgement
}

/// Whether what a nerve arises from are roots of a plexus, so that it is counted among the branches of that plexus.
fn is_of_its_roots(vocabulary: &Vocabulary, origins: &[EntryId], plexus: EntryId) -> bool {
    let is_root_of_it =
        |id: &EntryId| vocabulary.kind(*id) == Kind::Root && vocabulary.origins(plexus, false).any(|root| root == *id);
    vocabulary.kind(plexus) == Kind::Plexus
        && vocabulary.entry(plexus).class.as_deref() == Some("plexus")
        && !origins.is_empty()
        && origins.iter().all(is_root_of_it)
}

/// Judges that a nerve goes on as another.
pub fn renaming(vocabulary: &Vocabulary, child: EntryId, parent: EntryId) -> Judgement {
    let next = |id: EntryId| -> Vec<EntryId> {
        vocabulary
            .entry(id)
            .facts
            .iter()
            .filter_map(|fact| match fact.relation {
                Relation::ContinuesAs { nerve, .. } => Some(nerve),
                _ => None,
            })
            .collect()
    };
    if next(parent).contains(&child) {
        return Judgement::new(
            Verdict::Agrees,
            format!("{} continues as {}", the(vocabulary, parent), the(vocabulary, child)),
        );
    }
    // What another name is known for, goes on as no other branch.
    let goes_on_otherwise = {
        let next = next(parent);
        !next.is_empty() && !next.iter().any(|next| vocabulary.is_or_above(*next, child))
    };
    if vocabulary.is_or_above(parent, child) && !goes_on_otherwise {
        return Judgement::new(
            Verdict::LessExact,
            format!("{} comes from {}", the(vocabulary, child), the(vocabulary, parent)),
        );
    }
    let continues = next(parent);
    let names: Vec<String> = continues.iter().map(|id| the(vocabulary, *id)).collect();
    if vocabulary.is_or_above(child, parent) {
        return Judgement::new(
            Verdict::Contradicts,
            format!("it is the other way round: {} comes from {}", the(vocabulary, parent), the(vocabulary, child)),
        );
    }
    let origins: Vec<String> = vocabulary.origins(child, false).map(|id| the(vocabulary, id)).collect();
    if origins.is_empty() {
        return Judgement::unknown();
    }
    let why = if names.is_empty() {
        format!(
            "{} does not continue as {}, which arises from {}",
            the(vocabulary, parent),
            the(vocabulary, child),
            list(&origins)
        )
    } else {
        format!("{} continues as {}, not as {}", the(vocabulary, parent), list(&names), the(vocabulary, child))
    };
    let mut judgement = Judgement::new(Verdict::Contradicts, why).path(vec![format!(
        "{} arises from {}",
        the(vocabulary, child),
        list(&origins)
    )]);
    for id in continues {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(id));
    }
    judgement
}

/// Judges what a nerve carries. `purely` tells that the text says "purely" or the like.
pub fn modality(vocabulary: &Vocabulary, nerve: EntryId, told: &str, purely: bool) -> Judgement {
    let (Some(is), Some(told)) = (vocabulary.modality(nerve), Modality::from_word(told)) else {
        return Judgement::unknown();
    };
    if is == told {
        return Judgement::new(Verdict::Agrees, format!("{} is {}", the(vocabulary, nerve), is.word()));
    }
    if is == Modality::Mixed && !purely {
        return Judgement::new(Verdict::LessExact, format!("{} is mixed", the(vocabulary, nerve)));
    }
    let facts = &vocabulary.entry(nerve).facts;
    if facts.iter().any(|fact| matches!(fact.relation, Relation::Modality { is } if is == told)) {
        return Judgement::new(Verdict::Variant, format!("some count {} as {}", the(vocabulary, nerve), told.word()));
    }
    let example = match is {
        Modality::Sensory => "it supplies no muscle".to_owned(),
        _ => vocabulary.muscles_of(nerve).first().map_or_else(
            || "it carries motor fibres".to_owned(),
            |supply| format!("it supplies {}", vocabulary.name(supply.muscle)),
        ),
    };
    Judgement::new(Verdict::Contradicts, format!("{} is {}", the(vocabulary, nerve), is.word()))
        .path(vec![example])
        .remedy(PartRole::Modality, is.word())
}
