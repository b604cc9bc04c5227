//! What muscles do at joints, and what joints are.

use fascicle_model::{EntryId, Kind, Region, Relation, Vocabulary};

use super::{Judgement, Verdict, best, list, the};
use crate::claims::{Claim, PartRole, What};
use crate::moving::{Moved, moved_joints};

/// Judges that a muscle does a movement, at a joint if one is named.
pub fn judge(vocabulary: &Vocabulary, claim: &Claim) -> Judgement {
    let movements = claim.entries(PartRole::Movement);
    let targets = claim.entries(PartRole::Joint);
    let joints = moved_joints(vocabulary, targets);
    let way = claim.part(PartRole::Role).and_then(|part| match part.what {
        What::Word(way) => Some(way),
        _ => None,
    });
    let judge = |muscle: EntryId, movement: EntryId| {
        if vocabulary.kind(muscle) == Kind::Group {
            group(vocabulary, muscle, movement, &joints, targets)
        } else {
            one(vocabulary, muscle, movement, &joints, targets)
        }
    };
    let is_everyday = way.is_some();
    best(claim.entries(PartRole::Muscle).iter().map(|muscle| {
        let all = movements.iter().map(|movement| judge(*muscle, *movement));
        let judgement = if is_everyday { best_sense(all) } else { best(all) };
        let told = way.filter(|_| judgement.verdict == Verdict::Agrees);
        let turned =
            |way| movements.iter().find_map(|movement| to_other_side(vocabulary, *muscle, *movement, &joints, way));
        told.and_then(turned).unwrap_or(judgement)
    }))
}

/// The judgement of an everyday word that can mean several movements: one of them that the muscle does, or else one whose
/// opposite it does. That it moves something else does not count against such a word: who moves the knee moves the foot.
fn best_sense(senses: impl Iterator<Item = Judgement>) -> Judgement {
    let mut against = None;
    let mut rest = Vec::new();
    for judgement in senses {
        match judgement.verdict {
            Verdict::Contradicts if !judgement.remedies.is_empty() => against = against.or(Some(judgement)),
            Verdict::Contradicts => rest.push(Judgement::unknown()),
            _ => rest.push(judgement),
        }
    }
    let known = best(rest.into_iter());
    match against {
        Some(against) if known.verdict == Verdict::Unknown => against,
        _ => known,
    }
}

fn group(vocabulary: &Vocabulary, group: EntryId, movement: EntryId, joints: &Moved, targets: &[EntryId]) -> Judgement {
    let members = vocabulary.members(group);
    let judgements: Vec<Judgement> = members.iter().map(|id| one(vocabulary, *id, movement, joints, targets)).collect();
    let agrees = |judgement: &Judgement| matches!(judgement.verdict, Verdict::Agrees | Verdict::LessExact);
    let unknown = judgements.iter().any(|judgement| judgement.verdict == Verdict::Unknown);
    // Where none of its muscles does it and most do the opposite, so does the group.
    let is_against =
        |judgement: &&Judgement| judgement.verdict == Verdict::Contradicts && !judgement.remedies.is_empty();
    if unknown && !judgements.iter().any(agrees) && judgements.iter().filter(is_against).count() * 2 > judgements.len()
    {
        return judgements.into_iter().find(|judgement| is_against(&judgement)).unwrap_or_else(Judgement::unknown);
    }
    if judgements.is_empty() || (unknown && !judgements.iter().any(agrees)) {
        return Judgement::unknown();
    }
    if unknown {
        return Judgement::new(Verdict::LessExact, "some of its muscles do it");
    }
    let against = judgements.iter().filter(|judgement| judgement.verdict == Verdict::Contradicts).count();
    match against {
        0 => Judgement::new(Verdict::Agrees, format!("the muscles of {} do it", the(vocabulary, group))),
        all if all == members.len() => judgements.into_iter().next().unwrap_or_else(Judgement::unknown),
        _ => Judgement::new(Verdict::LessExact, "some of its muscles do it"),
    }
}

/// The contradiction that a muscle moves something to one side of the body, where it is known to move it to the other alone.
fn to_other_side(
    vocabulary: &Vocabulary,
    muscle: EntryId,
    movement: EntryId,
    joints: &Moved,
    told: &str,
) -> Option<Judgement> {
    let sides: Vec<crate::lexicon::BodySide> = vocabulary
        .entry(muscle)
        .facts
        .iter()
        .filter(|fact| does(vocabulary, &fact.relation, movement, joints))
        .map(|fact| crate::lexicon::body_side(&fact.note.as_deref()?.to_lowercase()))
        .collect::<Option<_>>()?;
    let held = sides.first()?;
    let is_side = ["same side", "opposite side"].contains(&told);
    (is_side && sides.iter().all(|side| side == held && side.word() != told)).then(|| {
        let why = format!("{} does it to the {}", vocabulary.name(muscle), held.word());
        Judgement::new(Verdict::Contradicts, why)
    })
}

fn one(vocabulary: &Vocabulary, muscle: EntryId, movement: EntryId, joints: &Moved, targets: &[EntryId]) -> Judgement {
    let family: Vec<EntryId> =
        std::iter::once(muscle).chain(vocabulary.all_parts(muscle)).chain(vocabulary.wholes(muscle)).collect();
    let acts: Vec<(EntryId, EntryId, bool)> = family
        .iter()
        .flat_map(|id| vocabulary.entry(*id).facts.iter())
        .filter_map(|fact| match fact.relation {
            Relation::Acts { movement, target, .. } => Some((movement, target, fact.variant)),
            _ => None,
        })
        .collect();
    if acts.is_empty() {
        return Judgement::unknown();
    }
    let here = |target: EntryId| joints.holds(vocabulary, target);
    let is_kind_of = |held: EntryId| is_or_is_kind_of(vocabulary, held, movement);
    if let Some((_, _, variant)) = acts.iter().find(|(held, target, _)| is_kind_of(*held) && here(*target)) {
        let verdict = if *variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, told(vocabulary, muscle, movement, targets));
    }
    let opposite = vocabulary.entry(movement).opposite;
    let does_opposite = acts.iter().any(|(held, target, variant)| Some(*held) == opposite && here(*target) && !variant);
    let shown = |acts: &[(EntryId, EntryId, bool)]| -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for (held, target, variant) in acts {
            let line = format!("{} of {}", vocabulary.name(*held), the(vocabulary, *target));
            if !variant && !lines.contains(&line) {
                lines.push(line);
            }
        }
        lines
    };
    if does_opposite {
        let name = opposite.map_or("", |id| vocabulary.name(id));
        let at = targets.first().map_or_else(String::new, |id| format!(" at {}", the(vocabulary, *id)));
        let why = format!("{} does the opposite{at}: {name}", vocabulary.name(muscle));
        return Judgement::new(Verdict::Contradicts, why).path(shown(&acts)).remedy(PartRole::Movement, name);
    }
    let crosses = acts.iter().any(|(_, target, _)| here(*target));
    let moves_a_joint = acts.iter().any(|(_, target, _)| vocabulary.kind(*target) == Kind::Joint)
        || is_of_another_limb(vocabulary, acts.iter().map(|(_, target, _)| *target).chain([muscle]), &joints.all);
    let near = acts.iter().any(|(_, target, _)| joints.all.iter().any(|joint| is_near(vocabulary, *joint, *target)));
    let targets_are_joints = joints.all.iter().any(|id| vocabulary.kind(*id) == Kind::Joint);
    if !joints.all.is_empty() && targets_are_joints && !crosses && moves_a_joint && !near {
        let lines = shown(&acts);
        let why = format!(
            "{} does not move {}; it does {}",
            vocabulary.name(muscle),
            targets.first().map_or_else(String::new, |id| the(vocabulary, *id)),
            list(&lines)
        );
        return Judgement::new(Verdict::Contradicts, why);
    }
    Judgement::unknown()
}

/// Whether a fact says that its muscle does a movement at one of the joints (at any, if none is named).
pub fn does(vocabulary: &Vocabulary, relation: &Relation, movement: EntryId, joints: &Moved) -> bool {
    let Relation::Acts { movement: held, target, .. } = relation else { return false };
    joints.holds(vocabulary, *target) && is_or_is_kind_of(vocabulary, *held, movement)
}

/// Whether a movement is another or a kind of it: medial rotation is a rotation, while lateral flexion is no flexion.
fn is_or_is_kind_of(vocabulary: &Vocabulary, held: EntryId, movement: EntryId) -> bool {
    let is_general = vocabulary.entry(movement).opposite.is_none();
    held == movement || (is_general && vocabulary.name(held).ends_with(&format!(" {}", vocabulary.name(movement))))
}

/// Judges that a joint allows a movement.
pub fn joint_movement(vocabulary: &Vocabulary, joint: EntryId, movement: EntryId) -> Judgement {
    let family: Vec<EntryId> =
        std::iter::once(joint).chain(vocabulary.all_parts(joint)).chain(vocabulary.wholes(joint)).collect();
    let allowed: Vec<EntryId> = family
        .iter()
        .flat_map(|id| vocabulary.entry(*id).facts.iter())
        .filter_map(|fact| match fact.relation {
            Relation::Allows { movement, .. } => Some(movement),
            _ => None,
        })
        .collect();
    let name = vocabulary.name(movement);
    let is = |held: EntryId| is_or_is_kind_of(vocabulary, held, movement);
    if allowed.iter().any(|held| is(*held)) {
        return Judgement::new(Verdict::Agrees, format!("{} allows {name}", the(vocabulary, joint)));
    }
    let family = Moved { own: family.clone(), all: family };
    let moved_there = vocabulary
        .entries()
        .iter()
        .any(|entry| entry.facts.iter().any(|fact| does(vocabulary, &fact.relation, movement, &family)));
    if allowed.len() < 2 || moved_there || matches!(name, "gliding" | "stabilisation") {
        return Judgement::unknown();
    }
    let mut names: Vec<String> = Vec::new();
    for held in allowed {
        let name = vocabulary.name(held).to_owned();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    Judgement::new(
        Verdict::Contradicts,
        format!("{} does not allow {name}; it allows {}", the(vocabulary, joint), list(&names)),
    )
}

/// The limb of a region, with its root: whether it is the upper one.
pub const fn limb(region: Region) -> Option<bool> {
    match region {
        Region::Shoulder => Some(true),
        Region::Hip => Some(false),
        _ => free_limb(region),
    }
}

/// The limb of a region, beyond its root.
const fn free_limb(region: Region) -> Option<bool> {
    match region {
        Region::Arm | Region::Forearm | Region::Hand => Some(true),
        Region::Thigh | Region::Leg | Region::Foot => Some(false),
        _ => None,
    }
}

/// Whether these joints lie in a free limb, and everything that is moved in another part of the body.
fn is_of_another_limb(vocabulary: &Vocabulary, moved: impl Iterator<Item = EntryId>, joints: &[EntryId]) -> bool {
    let mut limbs = joints.iter().map(|joint| free_limb(vocabulary.entry(*joint).region));
    let Some(Some(limb)) = limbs.next() else { return false };
    let roots = if limb { [Region::Shoulder, Region::Body] } else { [Region::Hip, Region::Body] };
    limbs.all(|other| other == Some(limb))
        && moved
            .map(|id| vocabulary.entry(id).region)
            .all(|region| free_limb(region) != Some(limb) && !roots.contains(&region))
}

/// Joints of one region, which a muscle may move together.
fn is_near(vocabulary: &Vocabulary, a: EntryId, b: EntryId) -> bool {
    vocabulary.entry(a).region == vocabulary.entry(b).region || vocabulary.entry(a).region == Region::Body
}

fn told(vocabulary: &Vocabulary, muscle: EntryId, movement: EntryId, targets: &[EntryId]) -> String {
    let at = targets.first().map_or_else(String::new, |id| format!(" at {}", the(vocabulary, *id)));
    format!("{} does {}{at}", vocabulary.name(muscle), vocabulary.name(movement))
}

/// Kinds of joints that some books call by each other's name.
const ALIKE: &[(&str, &str)] = &[
    ("hinge", "bicondylar"),
    ("condyloid", "bicondylar"),
    ("saddle", "plane"),
    ("plane", "syndesmosis"),
    ("plane", "pivot"),
    ("ball and socket", "plane"),
];

/// Judges what kind of joint a joint is.
pub fn joint_kind(vocabulary: &Vocabulary, joint: EntryId, told: &str) -> Judgement {
    let kinds: Vec<(&str, bool)> = vocabulary
        .entry(joint)
        .facts
        .iter()
        .filter_map(|fact| match &fact.relation {
            Relation::JointKind { subtype: Some(subtype), .. } => Some((&**subtype, fact.variant)),
            _ => None,
        })
        .collect();
    if crate::lexicon::JOINT_CLASSES.iter().any(|(_, class)| *class == told) {
        return joint_class(vocabulary, joint, told);
    }
    let Some((first, _)) = kinds.first() else { return Judgement::unknown() };
    if let Some((kind, variant)) = kinds.iter().find(|(kind, _)| kind.contains(told)) {
        let verdict = if *variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{} is a {kind} joint", the(vocabulary, joint)));
    }
    let alike = ALIKE.iter().any(|(a, b)| (told == *a && first.contains(b)) || (told == *b && first.contains(a)));
    if alike || *first == "functional" {
        return Judgement::unknown();
    }
    Judgement::new(Verdict::Contradicts, format!("{} is a {first} joint", the(vocabulary, joint)))
        .remedy(PartRole::JointKind, *first)
}

/// Judges whether a joint is synovial, fibrous or cartilaginous.
fn joint_class(vocabulary: &Vocabulary, joint: EntryId, told: &str) -> Judgement {
    let classes = |joint: EntryId| {
        vocabulary.entry(joint).facts.iter().filter_map(|fact| match &fact.relation {
            Relation::JointKind { class, .. } => Some((&**class, fact.variant)),
            _ => None,
        })
    };
    if let Some((class, variant)) = classes(joint).find(|(class, _)| *class == told) {
        let verdict = if variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{} is a {class} joint", the(vocabulary, joint)));
    }
    let in_parts = vocabulary.all_parts(joint).into_iter().any(|part| classes(part).any(|(class, _)| class == told));
    let Some((first, _)) = classes(joint).next().filter(|(class, _)| !in_parts && *class != "functional") else {
        return Judgement::unknown();
    };
    Judgement::new(Verdict::Contradicts, format!("{} is a {first} joint", the(vocabulary, joint)))
        .remedy(PartRole::JointKind, first)
}

/// Judges that a bone takes part in a joint.
pub fn joint_bone(vocabulary: &Vocabulary, joint: EntryId, place: EntryId) -> Judgement {
    if vocabulary.entry(place).class.as_deref() == Some("ligament") {
        return joint_ligament(vocabulary, joint, place);
    }
    let line = |id: EntryId| -> Vec<EntryId> { std::iter::once(id).chain(vocabulary.wholes(id)).collect() };
    let bones = |joint: EntryId| -> Vec<EntryId> {
        let of = |fact: &fascicle_model::Fact| match fact.relation {
            Relation::Bone { bone } => Some(bone),
            _ => None,
        };
        vocabulary.entry(joint).facts.iter().filter_map(of).collect()
    };
    let family: Vec<EntryId> =
        std::iter::once(joint).chain(vocabulary.all_parts(joint)).chain(vocabulary.wholes(joint)).collect();
    let held: Vec<EntryId> = family.iter().flat_map(|id| bones(*id)).collect();
    let is_one = |held: &EntryId| line(*held).contains(&place) || line(place).contains(held);
    if held.iter().any(is_one) {
        return Judgement::new(Verdict::Agrees, format!("{} has {}", the(vocabulary, joint), the(vocabulary, place)));
    }
    // "the transverse process" may be that of the vertebra that is meant.
    let told = super::place::words(vocabulary.name(place));
    if held.iter().any(|held| super::place::words(vocabulary.name(*held)).starts_with(&told)) {
        return Judgement::unknown();
    }
    // A bone of a neighbouring joint may be meant loosely.
    let region = vocabulary.entry(joint).region;
    let is_near = vocabulary
        .iter()
        .any(|(id, entry)| entry.kind == Kind::Joint && entry.region == region && bones(id).iter().any(is_one));
    let is_bone = line(place).iter().any(|id| vocabulary.entry(*id).class.as_deref() == Some("bone"));
    let own = bones(joint);
    // Where the vocabulary counts the bones, they are all there are.
    let is_told = |fact: &fascicle_model::Fact| matches!(&fact.relation, Relation::Count { of, .. } if of == "bones");
    let is_complete = vocabulary.entry(joint).facts.iter().any(is_told);
    if (is_near && !is_complete) || !is_bone || own.len() < 2 {
        return Judgement::unknown();
    }
    let names: Vec<String> = own.iter().map(|id| the(vocabulary, *id)).collect();
    Judgement::new(
        Verdict::Contradicts,
        format!("{} is formed by {}, not by {}", the(vocabulary, joint), list(&names), the(vocabulary, place)),
    )
}

/// Judges that a ligament is one of a joint. One that is known to hold another joint may help this one as well if it is near.
fn joint_ligament(vocabulary: &Vocabulary, joint: EntryId, ligament: EntryId) -> Judgement {
    let line: Vec<EntryId> =
        std::iter::once(ligament).chain(vocabulary.wholes(ligament)).chain(vocabulary.all_parts(ligament)).collect();
    let held: Vec<EntryId> = line
        .iter()
        .flat_map(|id| vocabulary.pointing_at(*id))
        .filter(|(_, fact)| matches!(fact.relation, Relation::Ligament { .. }))
        .map(|(owner, _)| owner)
        .collect();
    let family: Vec<EntryId> =
        std::iter::once(joint).chain(vocabulary.all_parts(joint)).chain(vocabulary.wholes(joint)).collect();
    if held.iter().any(|owner| family.contains(owner)) {
        let why = format!("{} is a ligament of {}", the(vocabulary, ligament), the(vocabulary, joint));
        return Judgement::new(Verdict::Agrees, why);
    }
    let region = |id: EntryId| vocabulary.entry(id).region;
    let is_near = |owner: &EntryId| region(*owner) == region(joint);
    let is_joint = vocabulary.kind(joint) == Kind::Joint;
    if held.is_empty() || !is_joint || held.iter().any(is_near) || region(ligament) == region(joint) {
        return Judgement::unknown();
    }
    let mut names: Vec<String> = Vec::new();
    for owner in held {
        let name = the(vocabulary, owner);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let why =
        format!("{} is a ligament of {}, not of {}", the(vocabulary, ligament), list(&names), the(vocabulary, joint));
    Judgement::new(Verdict::Contradicts, why)
}

/// Judges that two bones meet in a joint. Those of the limbs meet where the vocabulary says; those of skull and trunk are
/// not all told.
pub fn articulation(vocabulary: &Vocabulary, bone: EntryId, other: EntryId) -> Judgement {
    let family = |id: EntryId| -> Vec<EntryId> {
        std::iter::once(id).chain(vocabulary.wholes(id)).chain(vocabulary.all_parts(id)).collect()
    };
    let (own, others) = (family(bone), family(other));
    let has = |joint: EntryId, bones: &[EntryId]| {
        vocabulary.entry(joint).facts.iter().any(|fact| match fact.relation {
            Relation::Bone { bone } => bones.contains(&bone),
            _ => false,
        })
    };
    let joints = vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Joint).map(|(id, _)| id);
    let (mut of_own, mut of_others) = (Vec::new(), Vec::new());
    for joint in joints {
        let (one, two) = (has(joint, &own), has(joint, &others));
        if one && two {
            let why =
                format!("{} and {} meet in {}", the(vocabulary, bone), the(vocabulary, other), the(vocabulary, joint));
            return Judgement::new(Verdict::Agrees, why);
        }
        if one {
            of_own.push(joint);
        }
        if two {
            of_others.push(joint);
        }
    }
    let is_of_limb = |joint: &EntryId| limb(vocabulary.entry(*joint).region).is_some();
    let all_in_limbs = of_own.iter().chain(&of_others).all(is_of_limb);
    if of_own.is_empty() || of_others.is_empty() || !all_in_limbs || own.iter().any(|id| others.contains(id)) {
        return Judgement::unknown();
    }
    let names: Vec<String> = of_own.iter().take(3).map(|id| the(vocabulary, *id)).collect();
    let why = format!(
        "{} and {} meet in no joint; {} is in {}",
        the(vocabulary, bone),
        the(vocabulary, other),
        the(vocabulary, bone),
        list(&names)
    );
    Judgement::new(Verdict::Contradicts, why)
}
