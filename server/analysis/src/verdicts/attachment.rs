//! Where muscles are attached.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::place::words;
use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;
use crate::lexicon;

/// Judges an attachment of a muscle or of the muscles of a group.
pub fn of_any(vocabulary: &Vocabulary, id: EntryId, landmark: EntryId, end: Option<&str>) -> Judgement {
    if vocabulary.kind(id) != Kind::Group {
        return of(vocabulary, id, landmark, end);
    }
    let mut judgements: Vec<Judgement> =
        vocabulary.members(id).iter().map(|member| of(vocabulary, *member, landmark, end)).collect();
    let has = |verdict: Verdict| judgements.iter().any(|judgement| judgement.verdict == verdict);
    if has(Verdict::Agrees) {
        return Judgement::new(Verdict::LessExact, format!("some of {} do", the(vocabulary, id)));
    }
    if judgements.is_empty() || has(Verdict::Unknown) {
        return Judgement::unknown();
    }
    let mut judgement = judgements.swap_remove(0);
    judgement.remedies.clear();
    judgement
}

/// Judges that a muscle is attached above or below a place: by the notes of its attachments, which tell where on a bone they
/// are. Where none speaks of the place it is not known.
fn beside(vocabulary: &Vocabulary, muscle: EntryId, place: EntryId, told: &str) -> Judgement {
    let entry = vocabulary.entry(place);
    let facts = vocabulary.entry(muscle).facts.iter();
    let notes = facts.filter(|fact| matches!(fact.relation, Relation::Origin { .. } | Relation::Insertion { .. }));
    let sides: Vec<&str> = notes
        .filter_map(|fact| fact.note.as_deref())
        .filter(|note| entry.names.iter().any(|name| note.replace("the ", "").contains(&*name.text)))
        .filter_map(lexicon::side_in_note)
        .collect();
    let Some(first) = sides.first().filter(|first| sides.iter().all(|side| side == *first)) else {
        return Judgement::unknown();
    };
    let why = format!("{} is attached {first} {}", vocabulary.name(muscle), the(vocabulary, place));
    if *first == told {
        return Judgement::new(Verdict::Agrees, why);
    }
    Judgement::new(Verdict::Contradicts, format!("{why}, not {told} it"))
}

/// Judges an origin (`end` is `origin`), an insertion (`insertion`) or either.
pub fn of(vocabulary: &Vocabulary, muscle: EntryId, landmark: EntryId, end: Option<&str>) -> Judgement {
    if let Some(side @ ("above" | "below")) = end {
        return beside(vocabulary, muscle, landmark, side);
    }
    let family: Vec<EntryId> =
        std::iter::once(muscle).chain(vocabulary.all_parts(muscle)).chain(vocabulary.wholes(muscle)).collect();
    let facts = || family.iter().flat_map(|id| vocabulary.entry(*id).facts.iter());
    let at = |wanted: &str| -> Vec<EntryId> {
        facts()
            .filter_map(|fact| match fact.relation {
                Relation::Origin { from } if wanted == "origin" => Some(from),
                Relation::Insertion { on } if wanted == "insertion" => Some(on),
                _ => None,
            })
            .collect()
    };
    let (origins, insertions) = (at("origin"), at("insertion"));
    let line = |id: EntryId| -> Vec<EntryId> { std::iter::once(id).chain(vocabulary.wholes(id)).collect() };
    let told = words(vocabulary.name(landmark));
    let is_named_in = |held: EntryId| {
        let held = words(vocabulary.name(held));
        told.iter().all(|word| held.contains(word)) || held.iter().all(|word| told.contains(word))
    };
    let related = |held: EntryId| is_named_in(held) || line(held).contains(&landmark) || line(landmark).contains(&held);
    let (wanted, other, verb, else_) = match end {
        Some("insertion") => (&insertions, &origins, "inserts on", "arises from"),
        _ => (&origins, &insertions, "arises from", "inserts on"),
    };
    let verb = if end.is_none() { "is attached to" } else { verb };
    if wanted.iter().any(|held| related(*held)) || (end.is_none() && other.iter().any(|held| related(*held))) {
        return Judgement::new(
            Verdict::Agrees,
            format!("{} {verb} {}", vocabulary.name(muscle), the(vocabulary, landmark)),
        );
    }
    if wanted.is_empty() || (end.is_none() && other.is_empty()) {
        return Judgement::unknown();
    }
    // Where the text does not say which end it means, it may be either.
    let either: Vec<EntryId>;
    let wanted = if end.is_none() {
        either = origins.iter().chain(&insertions).copied().collect();
        &either
    } else {
        wanted
    };
    // The cartilages of the larynx are to its muscles what bones are to others.
    let is_bone = |id: EntryId| {
        vocabulary.entry(id).class.as_deref() == Some("bone") || lexicon::is_cartilage(vocabulary.name(id))
    };
    let bone = |id: EntryId| line(id).into_iter().find(|id| is_bone(*id));
    let Some(claimed) = bone(landmark) else { return Judgement::unknown() };
    let held: Vec<EntryId> = wanted.iter().filter_map(|id| bone(*id)).collect();
    let swapped = end.is_some() && other.iter().any(|held| related(*held));
    // A bone and the bone that it is a part of are one.
    let same_bone = wanted.iter().any(|id| bone(*id).is_some() && line(*id).contains(&claimed));
    let is_point = |id: EntryId| vocabulary.name(id).split(' ').any(|word| lexicon::POINTS.contains(&word));
    // A small point is not any other feature of the bone that is a place of its own.
    let is_place = |id: EntryId| {
        let name = vocabulary.name(id);
        is_point(id) || name.split(' ').any(|word| lexicon::PLACES.contains(&word))
    };
    let is_clear = |id: EntryId| vocabulary.name(id).split(' ').any(|word| lexicon::CLEAR_POINTS.contains(&word));
    let is_twin =
        |id: EntryId| line(id).into_iter().any(|id| lexicon::are_twins(vocabulary.name(id), vocabulary.name(landmark)));
    let apart = (is_point(landmark) && wanted.iter().filter(|id| bone(**id) == Some(claimed)).all(|id| is_point(*id)))
        || (is_clear(landmark) && wanted.iter().filter(|id| bone(**id) == Some(claimed)).all(|id| is_place(*id)))
        || wanted.iter().any(|id| is_twin(*id));
    // Of a membrane or a tendon the bone is not known; in another region it can be none of this one's.
    let is_elsewhere =
        |id: &EntryId| bone(*id).is_some() || vocabulary.entry(*id).region != vocabulary.entry(landmark).region;
    // "the long head of biceps": a part of a muscle of the other limb may go by the same name.
    let limb = |id: EntryId| super::action::limb(vocabulary.entry(id).region);
    let is_of_other_limb = vocabulary.entry(muscle).part_of.is_some()
        && limb(muscle).zip(limb(landmark)).is_some_and(|(own, other)| own != other);
    if is_of_other_limb {
        return Judgement::unknown();
    }
    // A whole bone has room beside the membranes and edges that are told, unless another bone is told as well.
    let is_kin = |id: &EntryId| line(*id).contains(&claimed) || line(claimed).contains(id);
    let is_bone = vocabulary.entry(landmark).class.as_deref() == Some("bone") && held.iter().any(is_kin);
    let borders =
        |id: &EntryId| bone(*id).is_none() && vocabulary.entry(*id).region == vocabulary.entry(landmark).region;
    if is_bone && wanted.iter().any(borders) {
        return Judgement::unknown();
    }
    let all_known = end.is_some() || wanted.iter().all(is_elsewhere) || apart;
    // What ends in a fascia or an aponeurosis of the region ends at its bones as well.
    let is_bound_nearby = |id: &EntryId| {
        let is_sheet = |word: &str| matches!(word, "fascia" | "aponeurosis");
        vocabulary.entry(*id).region == vocabulary.entry(landmark).region
            && vocabulary.name(*id).split(' ').any(is_sheet)
    };
    let is_whole = vocabulary.entry(landmark).class.as_deref() == Some("bone");
    if end == Some("insertion") && is_whole && wanted.iter().any(is_bound_nearby) && !swapped && !apart {
        return Judgement::unknown();
    }
    // Of ribs and their cartilages the one is often named for the other.
    let is_of_ribs = |id: EntryId| vocabulary.name(id).split(' ').any(lexicon::is_rib_noun);
    let number = |id: EntryId| {
        let words = vocabulary.name(id).split(' ');
        words.filter(|word| lexicon::ORDINALS.contains(word)).max().map(str::to_owned)
    };
    let may_be_same = |id: EntryId| match (number(landmark), number(id)) {
        (Some(own), Some(other)) => own == other,
        _ => true,
    };
    if is_of_ribs(landmark) && wanted.iter().any(|id| is_of_ribs(*id) && may_be_same(*id)) {
        return Judgement::unknown();
    }
    if held.is_empty() || (same_bone && !swapped && !apart) || !all_known {
        return Judgement::unknown();
    }
    let mut names: Vec<String> = Vec::new();
    for id in wanted {
        let name = the(vocabulary, *id);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let mut why = format!("{} {verb} {}, not {}", vocabulary.name(muscle), list(&names), the(vocabulary, landmark));
    if swapped {
        why = format!("{why}; there it {else_}");
    }
    let why = why
        .replace("there it arises from", "that is its origin")
        .replace("there it inserts on", "that is its insertion");
    let mut judgement = Judgement::new(Verdict::Contradicts, why);
    for id in wanted {
        judgement = judgement.remedy(PartRole::Landmark, vocabulary.name(*id));
    }
    judgement
}
