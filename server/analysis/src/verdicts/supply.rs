//! Which nerve supplies which muscle.

use fascicle_model::{EntryId, Kind, Relation, Segments, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// Judges that a nerve supplies a muscle or the muscles of a group, `all` of them or as a rule, without those that the
/// text takes out.
pub fn judge(vocabulary: &Vocabulary, nerve: EntryId, target: EntryId, all: bool, except: &[EntryId]) -> Judgement {
    if vocabulary.kind(target) == Kind::Group {
        return group(vocabulary, nerve, target, all, except);
    }
    let judgement = muscle(vocabulary, nerve, target);
    if all && judgement.verdict != Verdict::Contradicts && vocabulary.parts(target).len() > 1 {
        let of_parts = group(vocabulary, nerve, target, all, except);
        if of_parts.verdict == Verdict::Contradicts {
            return of_parts;
        }
    }
    judgement
}

/// Judges that a nerve supplies a muscle and no other: what else it supplies as a rule speaks against it.
pub fn only(vocabulary: &Vocabulary, nerve: EntryId, target: EntryId) -> Judgement {
    let judgement = judge(vocabulary, nerve, target, false, &[]);
    let mut family = vocabulary.all_parts(target);
    family.extend(vocabulary.wholes(target));
    family.extend(vocabulary.members(target));
    family.push(target);
    let other =
        vocabulary.muscles_of(nerve).into_iter().find(|supply| !supply.variant && !family.contains(&supply.muscle));
    match other {
        Some(other) if matches!(judgement.verdict, Verdict::Agrees | Verdict::LessExact) => Judgement::new(
            Verdict::Contradicts,
            format!("{} supplies {} as well", the(vocabulary, nerve), vocabulary.name(other.muscle)),
        ),
        _ => judgement,
    }
}

fn group(vocabulary: &Vocabulary, nerve: EntryId, group: EntryId, all: bool, except: &[EntryId]) -> Judgement {
    let is_out = |id: &EntryId| {
        except.iter().any(|out| {
            out == id
                || vocabulary.members(*out).contains(id)
                || vocabulary.wholes(*id).contains(out)
                || vocabulary.all_parts(*id).contains(out)
        })
    };
    let members = if vocabulary.kind(group) == Kind::Group {
        vocabulary.members(group)
    } else {
        vocabulary.parts(group).to_vec()
    };
    let members: Vec<(EntryId, Judgement)> =
        members.into_iter().filter(|id| !is_out(id)).map(|id| (id, muscle(vocabulary, nerve, id))).collect();
    let against: Vec<EntryId> =
        members.iter().filter(|(_, judgement)| judgement.verdict == Verdict::Contradicts).map(|(id, _)| *id).collect();
    let unknown = members.iter().any(|(_, judgement)| judgement.verdict == Verdict::Unknown);
    let for_it = members.len() - against.len();
    if members.is_empty() || (unknown && against.len() < members.len()) {
        return Judgement::unknown();
    }
    if against.is_empty() {
        return Judgement::new(
            Verdict::Agrees,
            format!("{} supplies every muscle of {}", the(vocabulary, nerve), the(vocabulary, group)),
        );
    }
    if for_it > 0 && !all {
        return Judgement::new(Verdict::LessExact, format!("it supplies {for_it} of the {} muscles", members.len()));
    }
    let told: Vec<String> = against
        .iter()
        .map(|id| {
            let givers: Vec<String> = givers(vocabulary, *id).into_iter().map(|nerve| the(vocabulary, nerve)).collect();
            format!("{} is supplied by {}", vocabulary.name(*id), list(&givers))
        })
        .collect();
    let why = if for_it == 0 {
        format!("{} supplies no muscle of {}", the(vocabulary, nerve), the(vocabulary, group))
    } else {
        let names: Vec<String> = against.iter().map(|id| vocabulary.name(*id).to_owned()).collect();
        format!(
            "not all muscles of {}: {} {} supplied otherwise",
            the(vocabulary, group),
            list(&names),
            if names.len() == 1 { "is" } else { "are" }
        )
    };
    let mut judgement = Judgement::new(Verdict::Contradicts, why).path(told);
    if for_it == 0 {
        let mut common: Vec<EntryId> = against.first().map(|id| givers(vocabulary, *id)).unwrap_or_default();
        common.retain(|giver| against.iter().all(|id| givers(vocabulary, *id).contains(giver)));
        for giver in common {
            judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(giver));
        }
    }
    judgement
}

/// The nerves that give a muscle its twigs, as a rule.
fn givers(vocabulary: &Vocabulary, muscle: EntryId) -> Vec<EntryId> {
    let mut list = Vec::new();
    for supply in vocabulary.nerves_of(muscle) {
        if !supply.variant && !list.contains(&supply.nerve) {
            list.push(supply.nerve);
        }
    }
    list
}

fn muscle(vocabulary: &Vocabulary, nerve: EntryId, muscle: EntryId) -> Judgement {
    if vocabulary.kind(nerve) == Kind::Root {
        return segment(vocabulary, nerve, muscle);
    }
    let supplies = vocabulary.nerves_of(muscle);
    let usual = || supplies.iter().filter(|supply| !supply.variant);
    let path = |giver: EntryId| path_from(vocabulary, muscle, giver);
    if usual().any(|supply| supply.nerve == nerve) {
        let why = format!("{} supplies {}", the(vocabulary, nerve), vocabulary.name(muscle));
        return Judgement::new(Verdict::Agrees, why).path(path(nerve));
    }
    if let Some(supply) = usual().find(|supply| vocabulary.is_usually_or_above(nerve, supply.nerve)) {
        let why = format!(
            "{} supplies {} through {}",
            the(vocabulary, nerve),
            vocabulary.name(muscle),
            the(vocabulary, supply.nerve)
        );
        return Judgement::new(Verdict::LessExact, why).path(path(supply.nerve));
    }
    if let Some(supply) = supplies.iter().find(|supply| {
        supply.variant
            && (vocabulary.is_usually_or_above(nerve, supply.nerve)
                || (vocabulary.is_or_above(supply.nerve, nerve) && is_fine_branch(vocabulary, nerve)))
    }) {
        let why = format!(
            "in some people or by some sources {} supplies {}",
            the(vocabulary, supply.nerve),
            vocabulary.name(muscle)
        );
        return Judgement::new(Verdict::Variant, why).path(path(supply.nerve));
    }
    if let Some(supply) = usual().find(|supply| is_same_nerve_further_on(vocabulary, supply.nerve, nerve)) {
        let why = format!("{} is {} under another name", the(vocabulary, nerve), the(vocabulary, supply.nerve));
        return Judgement::new(Verdict::LessExact, why);
    }
    let givers = givers(vocabulary, muscle);
    if givers.is_empty() || !is_closed(vocabulary, muscle) {
        return Judgement::unknown();
    }
    if givers.iter().any(|giver| vocabulary.is_or_above(*giver, nerve) && is_fine_branch(vocabulary, nerve)) {
        return Judgement::new(Verdict::LessExact, format!("{} is a branch of its nerve", the(vocabulary, nerve)));
    }
    let is_ramus = vocabulary.kind(nerve) == Kind::Plexus && vocabulary.entry(nerve).class.as_deref() == Some("ramus");
    let shared = |giver: &EntryId| {
        !vocabulary.possible_segments(*giver).intersection(vocabulary.possible_segments(nerve)).is_empty()
    };
    if is_ramus && givers.iter().any(shared) && !is_of_other_rami(vocabulary, nerve, &givers) {
        return Judgement::new(Verdict::LessExact, "its nerve has fibres of these rami");
    }
    if givers.iter().any(|giver| is_joined(vocabulary, *giver, nerve)) {
        return Judgement::unknown();
    }
    let names: Vec<String> = givers.iter().map(|giver| the(vocabulary, *giver)).collect();
    let why = format!("{} is supplied by {}, not by {}", vocabulary.name(muscle), list(&names), the(vocabulary, nerve));
    let mut judgement = Judgement::new(Verdict::Contradicts, why);
    for giver in &givers {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(*giver));
    }
    let mut path = givers.first().map(|giver| path(*giver)).unwrap_or_default();
    if let Some(giver) = givers.iter().find(|giver| vocabulary.is_or_above(**giver, nerve)) {
        path.push(format!("{} leaves {} for other muscles", the(vocabulary, nerve), the(vocabulary, *giver)));
    }
    judgement.path(path)
}

/// Whether rami are told of the one side (anterior, posterior), while all that supplies a muscle comes from the other.
fn is_of_other_rami(vocabulary: &Vocabulary, ramus: EntryId, givers: &[EntryId]) -> bool {
    let sides = |id: EntryId| -> Vec<&'static str> {
        let line = std::iter::once(id).chain(vocabulary.ancestors(id)).chain(vocabulary.wholes(id));
        let names: Vec<&str> = line.map(|id| vocabulary.name(id)).filter(|name| name.contains(" ram")).collect();
        ["anterior", "posterior"].into_iter().filter(|side| names.iter().any(|name| name.contains(side))).collect()
    };
    let [told] = sides(ramus)[..] else { return false };
    // The plexuses of the spinal nerves are woven of anterior rami; their branches need not say so.
    let of_plexus = |giver: EntryId| {
        let is_plexus =
            |id: &EntryId| vocabulary.kind(*id) == Kind::Plexus && vocabulary.name(*id).ends_with(" plexus");
        let line = std::iter::once(giver).chain(vocabulary.ancestors(giver));
        line.into_iter().any(|id| is_plexus(&id) || vocabulary.wholes(id).iter().any(is_plexus))
    };
    let held = |giver: EntryId| match sides(giver)[..] {
        [held] => Some(held),
        [] if of_plexus(giver) => Some("anterior"),
        _ => None,
    };
    !givers.is_empty() && givers.iter().all(|giver| held(*giver).is_some_and(|held| held != told))
}

/// Whether these are rami, of which any nerve has fibres.
pub fn is_of_rami(vocabulary: &Vocabulary, nerves: &[EntryId]) -> bool {
    nerves.iter().any(|id| vocabulary.name(*id).contains(" ram"))
}

fn is_closed(vocabulary: &Vocabulary, muscle: EntryId) -> bool {
    std::iter::once(muscle).chain(vocabulary.wholes(muscle)).all(|id| !vocabulary.entry(id).is_open("nerves"))
}

/// A branch of which no muscle is known: a twig that the vocabulary names and does not follow.
fn is_fine_branch(vocabulary: &Vocabulary, nerve: EntryId) -> bool {
    vocabulary.muscles_of(nerve).is_empty() && vocabulary.modality(nerve) != Some(fascicle_model::Modality::Sensory)
}

/// Whether one nerve goes on as the other.
fn is_same_nerve_further_on(vocabulary: &Vocabulary, nerve: EntryId, further: EntryId) -> bool {
    vocabulary
        .entry(nerve)
        .facts
        .iter()
        .any(|fact| matches!(fact.relation, Relation::ContinuesAs { nerve: next, .. } if next == further))
}

fn is_joined(vocabulary: &Vocabulary, a: EntryId, b: EntryId) -> bool {
    let joins = |from: EntryId, to: EntryId| {
        vocabulary.entry(from).facts.iter().any(|fact| matches!(fact.relation, Relation::Joins { with } if with == to))
    };
    vocabulary.modality(b) != Some(fascicle_model::Modality::Sensory)
        && (joins(a, b) || joins(b, a))
        && vocabulary.muscles_of(b).is_empty()
}

/// A segment as the supplier: it agrees if any source names it for the muscle.
fn segment(vocabulary: &Vocabulary, root: EntryId, muscle: EntryId) -> Judgement {
    let Ok(set) = Segments::parse(vocabulary.name(root)) else { return Judgement::unknown() };
    super::nerve::roots(vocabulary, muscle, set, Segments::EMPTY)
}

/// From a muscle by its nerve up to where the nerve comes from.
pub fn path_from(vocabulary: &Vocabulary, muscle: EntryId, giver: EntryId) -> Vec<String> {
    let mut path = vec![format!("{} is supplied by {}", vocabulary.name(muscle), the(vocabulary, giver))];
    let mut at = giver;
    for _ in 0..8 {
        let origins: Vec<EntryId> = vocabulary.origins(at, false).collect();
        let Some(next) = origins.first() else { break };
        let names: Vec<String> = origins.iter().map(|id| the(vocabulary, *id)).collect();
        path.push(format!("{} arises from {}", the(vocabulary, at), list(&names)));
        if origins.len() > 1 || matches!(vocabulary.kind(*next), Kind::Root | Kind::Landmark) {
            break;
        }
        at = *next;
    }
    path
}
