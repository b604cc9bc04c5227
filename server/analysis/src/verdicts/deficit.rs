//! What is lost after a lesion of a nerve.
//!
//! For teaching, not for diagnosis: people vary, and so do lesions. A deficit is contradicted only where the nerve reaches
//! nothing that the statement says is lost.

use fascicle_model::{EntryId, Fact, Relation, Role, Vocabulary};

use super::{Judgement, Verdict, best, list, the};
use crate::claims::{Claim, PartRole, What};

/// Judges a loss: of a muscle, of a movement, or the sign of one.
pub fn judge(vocabulary: &Vocabulary, claim: &Claim) -> Judgement {
    let nerves = claim.entries(PartRole::Nerve);
    if let Some(What::Sign(sign)) = claim.part(PartRole::Sign).map(|part| &part.what) {
        return best(nerves.iter().map(|nerve| of_sign(vocabulary, *nerve, sign)));
    }
    let muscles = claim.entries(PartRole::Muscle);
    if !muscles.is_empty() {
        return best(nerves.iter().flat_map(|nerve| {
            muscles.iter().map(|muscle| super::supply::judge(vocabulary, *nerve, *muscle, false, &[]))
        }));
    }
    let areas = claim.entries(PartRole::Skin);
    if !areas.is_empty() {
        return best(
            nerves.iter().flat_map(|nerve| areas.iter().map(|area| super::place::skin(vocabulary, *nerve, *area))),
        );
    }
    let joints = crate::moving::moved_joints(vocabulary, claim.entries(PartRole::Joint));
    best(nerves.iter().flat_map(|nerve| {
        claim
            .entries(PartRole::Movement)
            .iter()
            .map(|movement| of_movement(vocabulary, *nerve, *movement, &joints, claim))
    }))
}

fn of_movement(
    vocabulary: &Vocabulary,
    nerve: EntryId,
    movement: EntryId,
    joints: &[EntryId],
    claim: &Claim,
) -> Judgement {
    let muscles: Vec<EntryId> = vocabulary.muscles_of(nerve).iter().map(|supply| supply.muscle).collect();
    if muscles.is_empty() && vocabulary.modality(nerve).is_none() {
        return Judgement::unknown();
    }
    let movers: Vec<EntryId> = vocabulary
        .iter()
        .filter(|(_, entry)| {
            entry.facts.iter().any(|fact| super::action::does(vocabulary, &fact.relation, movement, joints))
        })
        .map(|(id, _)| id)
        .collect();
    let is_prime = |id: &EntryId| {
        let does = |fact: &Fact| super::action::does(vocabulary, &fact.relation, movement, joints);
        let prime = |fact: &Fact| matches!(fact.relation, Relation::Acts { role: Role::Prime, .. });
        vocabulary.entry(*id).facts.iter().any(|fact| does(fact) && prime(fact))
    };
    if movers.is_empty() {
        return Judgement::unknown();
    }
    let reached = |mover: &EntryId| {
        muscles.contains(mover)
            || vocabulary.all_parts(*mover).iter().any(|part| muscles.contains(part))
            || vocabulary.wholes(*mover).iter().any(|whole| muscles.contains(whole))
    };
    let reached_prime = movers.iter().any(|mover| is_prime(mover) && reached(mover));
    if movers.iter().any(is_prime) && !reached_prime && movers.iter().any(reached) {
        if !claim.all {
            return Judgement::new(Verdict::Unknown, "it reaches only muscles that assist");
        }
        let primes: Vec<String> =
            movers.iter().filter(|mover| is_prime(mover)).map(|id| vocabulary.name(*id).to_owned()).collect();
        let why = format!(
            "{} supplies only muscles that assist {}; {} carry it",
            the(vocabulary, nerve),
            vocabulary.name(movement),
            list(&primes)
        );
        return Judgement::new(Verdict::Contradicts, why);
    }
    let own: Vec<String> =
        movers.iter().filter(|mover| reached(mover)).map(|id| vocabulary.name(*id).to_owned()).collect();
    if !own.is_empty() {
        return Judgement::new(Verdict::Agrees, format!("{} supplies {}", the(vocabulary, nerve), list(&own)));
    }
    let at =
        claim.entries(PartRole::Joint).first().map_or_else(String::new, |id| format!(" at {}", the(vocabulary, *id)));
    let does: Vec<String> = muscles.iter().take(6).map(|id| vocabulary.name(*id).to_owned()).collect();
    let movers: Vec<String> = movers.iter().take(6).map(|id| vocabulary.name(*id).to_owned()).collect();
    let why = format!("{} supplies no muscle that does {}{at}", the(vocabulary, nerve), vocabulary.name(movement));
    let mut path = vec![format!("{}{at}: {}", vocabulary.name(movement), list(&movers))];
    path.push(if does.is_empty() {
        format!("{} supplies no muscle", the(vocabulary, nerve))
    } else {
        format!("{} supplies {}", the(vocabulary, nerve), list(&does))
    });
    Judgement::new(Verdict::Contradicts, why).path(path)
}

fn of_sign(vocabulary: &Vocabulary, nerve: EntryId, sign: &str) -> Judgement {
    let owners: Vec<EntryId> = vocabulary
        .iter()
        .filter(|(_, entry)| {
            entry.facts.iter().any(
                |fact| matches!(&fact.relation, Relation::Sign { sign: held, .. } if held.eq_ignore_ascii_case(sign)),
            )
        })
        .map(|(id, _)| id)
        .collect();
    if owners.iter().any(|owner| vocabulary.is_or_above(*owner, nerve) || vocabulary.is_or_above(nerve, *owner)) {
        return Judgement::new(Verdict::Agrees, format!("{sign} is a sign of {}", the(vocabulary, nerve)));
    }
    if owners.is_empty() {
        return Judgement::unknown();
    }
    let names: Vec<String> = owners.iter().map(|id| the(vocabulary, *id)).collect();
    let mut judgement = Judgement::new(
        Verdict::Contradicts,
        format!("{sign} is a sign of {}, not of {}", list(&names), the(vocabulary, nerve)),
    );
    for id in owners {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(id));
    }
    judgement
}
