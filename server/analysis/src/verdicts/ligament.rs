//! What a ligament is attached to, and what it keeps a joint from.

use fascicle_model::{EntryId, MOTIONS, Relation, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// Words of which each is the other's opposite, so that two features of a bone that differ in them are not the same place.
const SIDES: &[(&str, &str)] = &[
    ("medial", "lateral"),
    ("anterior", "posterior"),
    ("greater", "lesser"),
    ("superior", "inferior"),
    ("spine", "tuberosity"),
];

/// The opposite of a motion.
fn opposite(motion: &str) -> Option<&'static str> {
    MOTIONS.iter().find_map(|(one, other)| match motion {
        _ if motion == *one => Some(*other),
        _ if motion == *other => Some(*one),
        _ => None,
    })
}

/// What a motion is called of a bone whose partner is said to move: a tibia that slides forward on the femur is a femur that
/// slides backward on the tibia.
fn as_of(motion: &str, is_partner: bool) -> &str {
    if is_partner { opposite(motion).unwrap_or(motion) } else { motion }
}

/// Judges that a ligament keeps its joint from a motion, of a bone where one is told.
pub fn limits(vocabulary: &Vocabulary, ligament: EntryId, motion: &str, moved: &[EntryId]) -> Judgement {
    let line = |id: EntryId| -> Vec<EntryId> { std::iter::once(id).chain(vocabulary.wholes(id)).collect() };
    let facts = vocabulary.entry(ligament).facts.iter().filter_map(|fact| match &fact.relation {
        Relation::Limits { motion, of } => Some((&**motion, *of, fact.variant)),
        _ => None,
    });
    let facts: Vec<(&str, Option<EntryId>, bool)> = facts.collect();
    // The partner moves where the bone that is told is another one than that of the fact.
    let is_partner = |of: Option<EntryId>| {
        of.is_some_and(|of| !moved.is_empty() && !moved.iter().any(|told| line(*told).contains(&of)))
    };
    let said = |of: Option<EntryId>| as_of(motion, is_partner(of));
    let name = the(vocabulary, ligament);
    if let Some((known, _, variant)) = facts.iter().find(|(known, of, _)| *known == said(*of)) {
        let verdict = if *variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{name} limits {}", told(vocabulary, known, None)));
    }
    let against = facts.iter().find(|(known, of, variant)| !variant && opposite(said(*of)) == Some(known));
    let Some((known, of, _)) = against else { return Judgement::unknown() };
    let why = format!("{name} limits {}", told(vocabulary, known, *of));
    let mut judgement = Judgement::new(Verdict::Contradicts, why);
    if !is_partner(*of) {
        judgement = judgement.remedy(PartRole::Role, *known);
    }
    judgement
}

fn told(vocabulary: &Vocabulary, motion: &str, of: Option<EntryId>) -> String {
    let of = of.map_or_else(String::new, |of| format!(" of {}", the(vocabulary, of)));
    match motion {
        "forward" | "backward" => format!("sliding {motion}{of}"),
        _ => format!("{motion}{of}"),
    }
}

/// Judges that a ligament is attached to a place.
pub fn binds(vocabulary: &Vocabulary, ligament: EntryId, place: EntryId) -> Judgement {
    let line = |id: EntryId| -> Vec<EntryId> { std::iter::once(id).chain(vocabulary.wholes(id)).collect() };
    let is_bone = |id: &EntryId| vocabulary.entry(*id).class.as_deref() == Some("bone");
    let ends: Vec<EntryId> = vocabulary
        .entry(ligament)
        .facts
        .iter()
        .filter_map(|fact| match fact.relation {
            Relation::Binds { place } => Some(place),
            _ => None,
        })
        .collect();
    let name = the(vocabulary, ligament);
    if ends.iter().any(|end| line(*end).contains(&place) || line(place).contains(end)) {
        return Judgement::new(Verdict::Agrees, format!("{name} is attached to {}", the(vocabulary, place)));
    }
    // "the lateral meniscus" where it is the medial one
    let twin = |end: &EntryId| {
        let (told, known) = (vocabulary.name(place), vocabulary.name(*end));
        SIDES.iter().any(|(one, other)| told.replace(one, other) == known || told.replace(other, one) == known)
    };
    if let Some(end) = ends.iter().find(|end| twin(end)) {
        let why = format!("{name} is attached to {}, not to {}", the(vocabulary, *end), the(vocabulary, place));
        return Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Parent, vocabulary.name(*end));
    }
    let bone_of = |id: EntryId| line(id).into_iter().find(is_bone);
    let Some(bone) = bone_of(place).filter(|_| ends.len() > 1) else { return Judgement::unknown() };
    // Another feature of the same bone may be told loosely, unless it is the opposite one.
    let same: Vec<EntryId> = ends.iter().copied().filter(|end| bone_of(*end) == Some(bone)).collect();
    let has = |id: EntryId, word: &str| vocabulary.name(id).split(' ').any(|known| known == word);
    let is_opposite = |end: &EntryId| {
        SIDES.iter().any(|(one, other)| (has(place, one) && has(*end, other)) || (has(place, other) && has(*end, one)))
    };
    if !same.is_empty() && !same.iter().any(is_opposite) {
        return Judgement::unknown();
    }
    let names: Vec<String> = ends.iter().map(|end| the(vocabulary, *end)).collect();
    let why = format!("{name} is attached to {}, not to {}", list(&names), the(vocabulary, place));
    Judgement::new(Verdict::Contradicts, why)
}
