//! Where things are: skin areas, compartments.

use fascicle_model::{EntryId, Kind, Relation, Segments, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// Judges that a nerve or a segment feels an area.
pub fn skin(vocabulary: &Vocabulary, nerve: EntryId, area: EntryId) -> Judgement {
    if vocabulary.kind(nerve) == Kind::Root {
        return of_segment(vocabulary, nerve, area);
    }
    let family: Vec<EntryId> =
        std::iter::once(area).chain(vocabulary.wholes(area)).chain(vocabulary.all_parts(area)).collect();
    // What a nerve feels of a part in some people makes it no nerve of the whole.
    let parts = vocabulary.all_parts(area);
    let feeders: Vec<(EntryId, bool)> = family
        .iter()
        .flat_map(|area| vocabulary.pointing_at(*area).map(move |(owner, fact)| (area, owner, fact)))
        .filter(|(area, _, fact)| {
            matches!(fact.relation, Relation::Feels { .. }) && !(fact.variant && parts.contains(area))
        })
        .map(|(_, owner, fact)| (owner, fact.variant))
        .collect();
    if let Some((feeder, variant)) = feeders
        .iter()
        .find(|(feeder, _)| vocabulary.is_or_above(nerve, *feeder) || vocabulary.is_or_above(*feeder, nerve))
    {
        let verdict = match (*feeder == nerve, variant) {
            (_, true) => Verdict::Variant,
            (true, false) => Verdict::Agrees,
            (false, false) => Verdict::LessExact,
        };
        return Judgement::new(verdict, format!("{} feels it", the(vocabulary, *feeder)));
    }
    let feel = |area: EntryId| {
        let facts = vocabulary.pointing_at(area);
        let feels = facts.filter(|(_, fact)| matches!(fact.relation, Relation::Feels { .. }) && !fact.variant);
        feels.map(|(owner, _)| owner).collect::<Vec<EntryId>>()
    };
    let mut own = feel(area);
    if own.is_empty() && vocabulary.parts(area).len() > 1 {
        own = vocabulary.parts(area).iter().flat_map(|part| feel(*part)).collect();
    }
    if own.is_empty() {
        own = vocabulary.wholes(area).into_iter().map(feel).find(|own| !own.is_empty()).unwrap_or_default();
    }
    let is_area = vocabulary.entry(area).class.as_deref() == Some("area");
    if own.is_empty() || !is_area {
        return Judgement::unknown();
    }
    let mut told = Vec::new();
    own.retain(|id| {
        !told.contains(id) && {
            told.push(*id);
            true
        }
    });
    let names: Vec<String> = own.iter().map(|id| the(vocabulary, *id)).collect();
    let mut judgement = Judgement::new(
        Verdict::Contradicts,
        format!("{} is felt by {}, not by {}", the(vocabulary, area), list(&names), the(vocabulary, nerve)),
    );
    for id in own {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(id));
    }
    judgement
}

/// Judges that an area lies in the dermatome of a segment. Maps of dermatomes differ by a neighbour, so that a neighbour is
/// wrong only where all of them agree: where the vocabulary knows one segment of an area and no lesser one.
fn of_segment(vocabulary: &Vocabulary, root: EntryId, area: EntryId) -> Judgement {
    let Some(told) = Segments::parse_one(vocabulary.name(root)) else { return Judgement::unknown() };
    let readings = vocabulary.roots_of(area);
    let parts = vocabulary.all_parts(area);
    let of_parts = parts.iter().flat_map(|part| vocabulary.roots_of(*part));
    let of_parts = of_parts.fold(Segments::EMPTY, |all, reading| all.union(reading.all()));
    let main = readings.iter().fold(Segments::EMPTY, |all, reading| all.union(reading.main));
    let known = readings.iter().fold(of_parts, |all, reading| all.union(reading.all()));
    let main = if main.is_empty() { of_parts } else { main };
    let why = || format!("{} has {known}", the(vocabulary, area));
    if Segments::one(told).within(main) {
        return Judgement::new(Verdict::Agrees, why());
    }
    if known.is_empty() || Segments::one(told).within(known) {
        let verdict = if known.is_empty() { Verdict::Unknown } else { Verdict::LessExact };
        return Judgement::new(verdict, why());
    }
    let is_area = vocabulary.entry(area).class.as_deref() == Some("area");
    let is_sharp = is_area && known.len() == 1;
    let is_near = main.union(of_parts).iter().any(|segment| segment.abs_diff(told) < 2);
    if is_near && !is_sharp {
        return Judgement::new(Verdict::Unknown, why());
    }
    let why = format!("{} lies in the dermatome of {main}, not of {}", the(vocabulary, area), Segments::name(told));
    main.iter().fold(Judgement::new(Verdict::Contradicts, why), |judgement, segment| {
        judgement.remedy(PartRole::Nerve, Segments::name(segment))
    })
}

/// The words of a name, without plural endings.
pub(super) fn words(name: &str) -> Vec<&str> {
    let stem = |word: &'_ str| -> usize {
        // "process" is no plural, "processes" is one.
        let plural = word.strip_suffix("es").or_else(|| word.strip_suffix('s').filter(|stem| !stem.ends_with('s')));
        plural.unwrap_or(word).len()
    };
    name.split(' ').map(|word| word.get(..stem(word)).unwrap_or(word)).collect()
}

/// Judges that a muscle belongs to a group or lies in a compartment.
pub fn membership(vocabulary: &Vocabulary, muscle: EntryId, group: EntryId) -> Judgement {
    if vocabulary.kind(muscle) != Kind::Muscle || muscle == group {
        return Judgement::unknown();
    }
    if vocabulary.kind(group) == Kind::Muscle {
        return part_of(vocabulary, muscle, group);
    }
    let family: Vec<EntryId> =
        std::iter::once(muscle).chain(vocabulary.wholes(muscle)).chain(vocabulary.all_parts(muscle)).collect();
    let groups: Vec<(EntryId, bool)> = family
        .iter()
        .flat_map(|id| vocabulary.entry(*id).facts.iter())
        .filter_map(|fact| match fact.relation {
            Relation::Member { of } => Some((of, fact.variant)),
            _ => None,
        })
        .collect();
    let belongs = |held: EntryId| held == group || vocabulary.wholes(held).contains(&group);
    if let Some((_, variant)) = groups.iter().find(|(held, _)| belongs(*held)) {
        let verdict = if *variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{} belongs to {}", vocabulary.name(muscle), the(vocabulary, group)));
    }
    let class = vocabulary.entry(group).class.as_deref();
    let mut held: Vec<EntryId> = Vec::new();
    for (id, _) in &groups {
        for id in std::iter::once(*id).chain(vocabulary.wholes(*id)) {
            if !held.contains(&id) {
                held.push(id);
            }
        }
    }
    let rivals: Vec<EntryId> = held
        .into_iter()
        .filter(|held| vocabulary.entry(*held).class.as_deref() == class && !vocabulary.wholes(group).contains(held))
        // Layers are layers of something: of the same wall or compartment.
        .filter(|held| {
            let of_group = vocabulary.wholes(group);
            class != Some("layer") || vocabulary.wholes(*held).iter().any(|whole| of_group.contains(whole))
        })
        .collect();
    let has_muscles = !vocabulary.members(group).is_empty();
    // A group whose muscles are counted has no others.
    let is_counted =
        |fact: &fascicle_model::Fact| matches!(&fact.relation, Relation::Count { of, .. } if of == "muscles");
    let is_complete = vocabulary.entry(group).facts.iter().any(is_counted);
    let has_rival = matches!(class, Some("compartment" | "layer")) && !rivals.is_empty();
    if !has_muscles || !(has_rival || is_complete || class == Some("group")) {
        return Judgement::unknown();
    }
    let members: Vec<String> = vocabulary.members(group).iter().map(|id| vocabulary.name(*id).to_owned()).collect();
    let mut why = format!("{} does not belong to {}", vocabulary.name(muscle), the(vocabulary, group));
    if has_rival {
        let names: Vec<String> = rivals.iter().map(|id| the(vocabulary, *id)).collect();
        why = format!("{why} but to {}", list(&names));
    }
    let mut judgement =
        Judgement::new(Verdict::Contradicts, why).path(vec![format!("{}: {}", the(vocabulary, group), list(&members))]);
    if has_rival {
        for id in rivals {
            judgement = judgement.remedy(PartRole::Group, vocabulary.name(id));
        }
    }
    judgement
}

/// Judges that a muscle is one of the parts of another.
fn part_of(vocabulary: &Vocabulary, muscle: EntryId, whole: EntryId) -> Judgement {
    if vocabulary.wholes(muscle).contains(&whole) {
        return Judgement::new(
            Verdict::Agrees,
            format!("{} is a part of {}", vocabulary.name(muscle), vocabulary.name(whole)),
        );
    }
    let names: Vec<String> = vocabulary.parts(whole).iter().map(|id| vocabulary.name(*id).to_owned()).collect();
    Judgement::new(
        Verdict::Contradicts,
        format!("{} is no part of {}, which has {}", vocabulary.name(muscle), vocabulary.name(whole), list(&names)),
    )
}
