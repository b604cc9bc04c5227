//! What muscles do at joints, and what joints are.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::{Judgement, Verdict, best, list, the};
use crate::claims::{Claim, PartRole};

/// Judges that a muscle does a movement, at a joint if one is named.
pub fn judge(vocabulary: &Vocabulary, claim: &Claim) -> Judgement {
    let movements = claim.entries(PartRole::Movement);
    let targets = claim.entries(PartRole::Joint);
    let joints = moved_joints(vocabulary, targets);
    best(claim.entries(PartRole::Muscle).iter().flat_map(|muscle| {
        let joints = &joints;
        movements.iter().map(move |movement| {
            if vocabulary.kind(*muscle) == Kind::Group {
                group(vocabulary, *muscle, *movement, joints, targets)
            } else {
                one(vocabulary, *muscle, *movement, joints, targets)
            }
        })
    }))
}

/// The joints that a named joint or moved part stands for, with their parts and wholes.
pub fn moved_joints(vocabulary: &Vocabulary, targets: &[EntryId]) -> Vec<EntryId> {
    let mut list: Vec<EntryId> = Vec::new();
    for target in targets {
        list.push(*target);
        for fact in &vocabulary.entry(*target).facts {
            if let Relation::MovedAt { joint } = fact.relation {
                list.push(joint);
            }
        }
    }
    let mut all = list.clone();
    for id in list {
        all.extend(vocabulary.all_parts(id));
        all.extend(vocabulary.wholes(id));
    }
    all
}

fn group(
    vocabulary: &Vocabulary,
    group: EntryId,
    movement: EntryId,
    joints: &[EntryId],
    targets: &[EntryId],
) -> Judgement {
    let members = vocabulary.members(group);
    let judgements: Vec<Judgement> = members.iter().map(|id| one(vocabulary, *id, movement, joints, targets)).collect();
    if judgements.is_empty() || judgements.iter().any(|judgement| judgement.verdict == Verdict::Unknown) {
        return Judgement::unknown();
    }
    let against = judgements.iter().filter(|judgement| judgement.verdict == Verdict::Contradicts).count();
    match against {
        0 => Judgement::new(Verdict::Agrees, format!("the muscles of {} do it", the(vocabulary, group))),
        all if all == members.len() => judgements.into_iter().next().unwrap_or_else(Judgement::unknown),
        _ => Judgement::new(Verdict::LessExact, "some of its muscles do it"),
    }
}

fn one(
    vocabulary: &Vocabulary,
    muscle: EntryId,
    movement: EntryId,
    joints: &[EntryId],
    targets: &[EntryId],
) -> Judgement {
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
    let here = |target: EntryId| {
        joints.is_empty() || joints.contains(&target) || vocabulary.wholes(target).iter().any(|id| joints.contains(id))
    };
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
    let moves_a_joint = acts.iter().any(|(_, target, _)| vocabulary.kind(*target) == Kind::Joint);
    let near = acts.iter().any(|(_, target, _)| joints.iter().any(|joint| is_near(vocabulary, *joint, *target)));
    let targets_are_joints = joints.iter().any(|id| vocabulary.kind(*id) == Kind::Joint);
    if !joints.is_empty() && targets_are_joints && !crosses && moves_a_joint && !near {
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
pub fn does(vocabulary: &Vocabulary, relation: &Relation, movement: EntryId, joints: &[EntryId]) -> bool {
    let Relation::Acts { movement: held, target, .. } = relation else { return false };
    let here =
        joints.is_empty() || joints.contains(target) || vocabulary.wholes(*target).iter().any(|id| joints.contains(id));
    here && is_or_is_kind_of(vocabulary, *held, movement)
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

/// Joints of one region, which a muscle may move together.
fn is_near(vocabulary: &Vocabulary, a: EntryId, b: EntryId) -> bool {
    vocabulary.entry(a).region == vocabulary.entry(b).region
        || vocabulary.entry(a).region == fascicle_model::Region::Body
}

fn told(vocabulary: &Vocabulary, muscle: EntryId, movement: EntryId, targets: &[EntryId]) -> String {
    let at = targets.first().map_or_else(String::new, |id| format!(" at {}", the(vocabulary, *id)));
    format!("{} does {}{at}", vocabulary.name(muscle), vocabulary.name(movement))
}

/// Kinds of joints that some books call by each other's name.
const ALIKE: &[(&str, &str)] = &[
    ("hinge", "bicondylar"),
    ("condyloid", "bicondylar"),
    ("hinge", "condyloid"),
    ("saddle", "plane"),
    ("plane", "syndesmosis"),
    ("plane", "pivot"),
    ("ball and socket", "plane"),
    ("condyloid", "ball and socket"),
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
    let Some((first, _)) = kinds.first() else { return Judgement::unknown() };
    if let Some((kind, variant)) = kinds.iter().find(|(kind, _)| kind.contains(told)) {
        let verdict = if *variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{} is a {kind} joint", the(vocabulary, joint)));
    }
    let in_parts = vocabulary.all_parts(joint).iter().any(|part| {
        vocabulary.entry(*part).facts.iter().any(|fact| matches!(&fact.relation, Relation::JointKind { subtype: Some(subtype), .. } if subtype.contains(told)))
    });
    let alike = ALIKE.iter().any(|(a, b)| (told == *a && first.contains(b)) || (told == *b && first.contains(a)));
    if alike || in_parts || *first == "functional" {
        return Judgement::unknown();
    }
    Judgement::new(Verdict::Contradicts, format!("{} is a {first} joint", the(vocabulary, joint)))
        .remedy(PartRole::JointKind, *first)
}
