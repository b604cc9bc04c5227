//! What is lost after a lesion of a nerve.
//!
//! For teaching, not for diagnosis: people vary, and so do lesions. A deficit is contradicted only where the nerve reaches
//! nothing that the statement says is lost.

use fascicle_model::{EntryId, Fact, Kind, Relation, Role, Segments, Vocabulary};

use super::{Judgement, Verdict, best, list, the};
use crate::claims::{Claim, PartRole, What};
use crate::lexicon;
use crate::moving::Moved;

/// Judges a loss: of a muscle, of a movement, or the sign of one.
pub fn judge(vocabulary: &Vocabulary, claim: &Claim) -> Judgement {
    let nerves = claim.entries(PartRole::Nerve);
    if let Some(What::Sign(sign)) = claim.part(PartRole::Sign).map(|part| &part.what) {
        let side = claim.part(PartRole::Role).and_then(|part| match part.what {
            What::Word(side) => Some(side),
            _ => None,
        });
        return best(nerves.iter().map(|nerve| of_sign(vocabulary, *nerve, sign, side)));
    }
    let level = claim.entries(PartRole::Landmark);
    if let Some(What::Word(fibres)) = claim.part(PartRole::Modality).map(|part| &part.what) {
        let places = claim.entries(PartRole::Structure);
        return best(nerves.iter().map(|nerve| super::fibres::lost(vocabulary, *nerve, fibres, places, level)));
    }
    let muscles = claim.entries(PartRole::Muscle);
    if !muscles.is_empty() {
        let pairs = nerves.iter().flat_map(|nerve| muscles.iter().map(move |muscle| (*nerve, *muscle)));
        let judge = |nerve, muscle| {
            let few = (claim.all && !claim.negated).then(|| of_few(vocabulary, nerve, muscle)).flatten();
            let few = few.or_else(|| of_no_segment(vocabulary, nerve, muscle));
            if claim.negated && !level.is_empty() {
                return of_spared(vocabulary, nerve, muscle, level);
            }
            few.unwrap_or_else(|| of_muscle(vocabulary, nerve, muscle, level))
        };
        return best(pairs.map(|(nerve, muscle)| judge(nerve, muscle)));
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

/// The paralysis of a group is not that of a nerve that reaches hardly any of its muscles.
fn of_few(vocabulary: &Vocabulary, nerve: EntryId, group: EntryId) -> Option<Judgement> {
    let members = if vocabulary.kind(group) == Kind::Group { vocabulary.members(group) } else { return None };
    let is_supplied = |muscle: &&EntryId| {
        super::supply::judge(vocabulary, nerve, **muscle, false, &[]).verdict != Verdict::Contradicts
    };
    let few = members.iter().filter(is_supplied).count();
    (few > 0 && members.len() > 3 * few + 2).then(|| {
        let why = format!(
            "{} supplies {few} of the {} muscles of {}",
            the(vocabulary, nerve),
            members.len(),
            the(vocabulary, group)
        );
        Judgement::new(Verdict::Contradicts, why)
    })
}

/// A part of a plexus takes nothing from a group of muscles none of which has its segments for its own.
fn of_no_segment(vocabulary: &Vocabulary, nerve: EntryId, group: EntryId) -> Option<Judgement> {
    if vocabulary.kind(nerve) != Kind::Plexus || vocabulary.kind(group) != Kind::Group {
        return None;
    }
    let carried =
        vocabulary.roots_of(nerve).iter().map(fascicle_model::graph::RootReading::all).reduce(Segments::union)?;
    let members = vocabulary.members(group);
    let shares = |muscle: &EntryId| {
        let readings = vocabulary.roots_of(*muscle);
        readings.first().is_none_or(|reading| !reading.main.intersection(carried).is_empty())
    };
    (!members.is_empty() && !members.iter().any(shares)).then(|| {
        let why =
            format!("no muscle of {} has {carried}, which {} carries", the(vocabulary, group), the(vocabulary, nerve));
        Judgement::new(Verdict::Contradicts, why)
    })
}

fn of_muscle(vocabulary: &Vocabulary, nerve: EntryId, muscle: EntryId, level: &[EntryId]) -> Judgement {
    let judgement = super::supply::judge(vocabulary, nerve, muscle, false, &[]);
    if let Some(judgement) = of_other_segments(vocabulary, nerve, muscle) {
        return judgement;
    }
    let is_supplied = matches!(judgement.verdict, Verdict::Agrees | Verdict::LessExact);
    let Some(level) = level.iter().find_map(|level| Level::of(vocabulary, nerve, *level)).filter(|_| is_supplied)
    else {
        return judgement;
    };
    if !level.spares(vocabulary, muscle) {
        return judgement;
    }
    let why = format!(
        "{} keeps its nerve: its twig leaves {} above {}",
        vocabulary.name(muscle),
        the(vocabulary, nerve),
        the(vocabulary, level.at)
    );
    Judgement::new(Verdict::Contradicts, why).path(judgement.path)
}

/// What a lesion at a place along the nerve surely takes away: a muscle whose twigs all leave the nerve beyond it. Whether it is
/// spared is asked, so what is not known says nothing.
fn of_spared(vocabulary: &Vocabulary, nerve: EntryId, muscle: EntryId, level: &[EntryId]) -> Judgement {
    let judgement = of_muscle(vocabulary, nerve, muscle, level);
    let Some(level) = level.iter().find_map(|level| Level::of(vocabulary, nerve, *level)) else {
        return if judgement.verdict == Verdict::Contradicts { judgement } else { Judgement::unknown() };
    };
    let members = vocabulary.members(muscle);
    let all = if members.is_empty() { vec![muscle] } else { members };
    let is_beyond = |id: &EntryId| {
        let parts = vocabulary.all_parts(*id);
        level.beyond.contains(id) || (!parts.is_empty() && parts.iter().all(|part| level.beyond.contains(part)))
    };
    if judgement.verdict == Verdict::Contradicts || all.iter().all(is_beyond) {
        judgement
    } else {
        Judgement::unknown()
    }
}

/// A part of a plexus takes nothing from a muscle none of whose segments it carries, though its branches may reach it: the
/// muscle's own come by another part.
fn of_other_segments(vocabulary: &Vocabulary, nerve: EntryId, muscle: EntryId) -> Option<Judgement> {
    if vocabulary.kind(nerve) != Kind::Plexus {
        return None;
    }
    let all = |id: EntryId| {
        vocabulary.roots_of(id).iter().map(fascicle_model::graph::RootReading::all).reduce(Segments::union)
    };
    let (carried, own) = (all(nerve)?, all(muscle)?);
    if carried.iter().any(|segment| own.iter().any(|other| other == segment)) {
        return None;
    }
    let names = |segments: Segments| -> String { list(&segments.iter().map(Segments::name).collect::<Vec<_>>()) };
    let why = format!(
        "{} carries {}, while {} has {}",
        the(vocabulary, nerve),
        names(carried),
        vocabulary.name(muscle),
        names(own)
    );
    Some(Judgement::new(Verdict::Contradicts, why))
}

/// Whether a root may have a share in a muscle that its nerves reach: the muscle's own segments are its, or lie beside it.
fn is_of_root(vocabulary: &Vocabulary, root: EntryId, muscle: EntryId) -> bool {
    if vocabulary.kind(root) != Kind::Root {
        return true;
    }
    let Some(own) = Segments::parse_one(vocabulary.name(root)) else { return true };
    let readings = vocabulary.roots_of(muscle);
    readings.is_empty() || readings.iter().any(|reading| reading.all().iter().any(|segment| segment.abs_diff(own) <= 1))
}

/// What a lesion at a place along a nerve takes away and leaves.
struct Level {
    at: EntryId,
    /// Muscles whose twigs leave the nerve further on, or nobody knows where.
    lost: Vec<EntryId>,
    /// Of these, those whose twigs are known to leave it beyond the place.
    beyond: Vec<EntryId>,
    /// Muscles whose twigs leave it well before.
    spared: Vec<EntryId>,
}

impl Level {
    /// A landmark as a place along a nerve; `None` if the nerve is not known to pass it.
    fn of(vocabulary: &Vocabulary, nerve: EntryId, landmark: EntryId) -> Option<Self> {
        let family: Vec<EntryId> = std::iter::once(landmark)
            .chain(vocabulary.wholes(landmark))
            .chain(vocabulary.all_parts(landmark))
            .collect();
        let facts = &vocabulary.entry(nerve).facts;
        let place = facts.iter().position(|fact| {
            matches!(fact.relation, Relation::Passes { landmark: at, .. } | Relation::Injured { at, .. } if family.contains(&at))
        })?;
        // What leaves right before the place may be hurt there too: another landmark must lie between.
        let last_before =
            facts.get(..place)?.iter().rposition(|fact| matches!(fact.relation, Relation::Passes { .. }))?;
        let leaving = |fact: &Fact| -> Vec<EntryId> {
            match fact.relation {
                Relation::Supplies { muscle, .. } => vec![muscle],
                Relation::Gives { nerve: branch, .. } | Relation::ContinuesAs { nerve: branch, .. } => {
                    vocabulary.muscles_of(branch).iter().map(|supply| supply.muscle).collect()
                }
                _ => Vec::new(),
            }
        };
        let early: Vec<EntryId> = facts.iter().take(last_before).flat_map(leaving).collect();
        let late: Vec<EntryId> = facts.iter().skip(last_before).flat_map(leaving).collect();
        let all = vocabulary.muscles_of(nerve);
        let lost: Vec<EntryId> =
            all.iter().map(|supply| supply.muscle).filter(|id| late.contains(id) || !early.contains(id)).collect();
        let beyond: Vec<EntryId> = facts.iter().skip(place + 1).flat_map(leaving).collect();
        let beyond = beyond.into_iter().filter(|id| !early.contains(id)).collect();
        let spared = early.into_iter().filter(|id| !lost.contains(id)).collect();
        Some(Self { at: landmark, lost, beyond, spared })
    }

    fn spares(&self, vocabulary: &Vocabulary, muscle: EntryId) -> bool {
        let family = || std::iter::once(muscle).chain(vocabulary.all_parts(muscle)).chain(vocabulary.wholes(muscle));
        family().any(|id| self.spared.contains(&id)) && !family().any(|id| self.lost.contains(&id))
    }
}

fn of_movement(vocabulary: &Vocabulary, nerve: EntryId, movement: EntryId, joints: &Moved, claim: &Claim) -> Judgement {
    let level = claim.entries(PartRole::Landmark).iter().find_map(|level| Level::of(vocabulary, nerve, *level));
    let muscles: Vec<EntryId> = if let Some(level) = level {
        level.lost
    } else {
        let all = vocabulary.muscles_of(nerve).into_iter().map(|supply| supply.muscle);
        all.filter(|muscle| is_of_root(vocabulary, nerve, *muscle)).collect()
    };
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
        let is_far = |mover: &EntryId| {
            let readings = vocabulary.roots_of(*mover);
            let own = Segments::parse_one(vocabulary.name(nerve));
            let far = |segment: u8| own.is_some_and(|own| segment.abs_diff(own) > 1);
            !readings.is_empty() && readings.iter().all(|reading| reading.all().iter().all(far))
        };
        let is_far_root = vocabulary.kind(nerve) == Kind::Root && movers.iter().filter(|id| is_prime(id)).all(is_far);
        if !claim.all && !is_far_root {
            return Judgement::new(Verdict::Unknown, "it reaches only muscles that assist");
        }
        let primes: Vec<String> =
            movers.iter().filter(|mover| is_prime(mover)).map(|id| vocabulary.name(*id).to_owned()).collect();
        let why = format!(
            "{} supplies only muscles that assist {}; {} {} it",
            the(vocabulary, nerve),
            vocabulary.name(movement),
            list(&primes),
            if primes.len() == 1 { "carries" } else { "carry" }
        );
        return Judgement::new(Verdict::Contradicts, why);
    }
    let primes = || movers.iter().filter(|mover| is_prime(mover) && vocabulary.entry(**mover).part_of.is_none());
    let kept: Vec<String> =
        primes().filter(|mover| !reached(mover)).map(|id| vocabulary.name(*id).to_owned()).collect();
    let others = |mover: &EntryId| !reached(mover) && vocabulary.entry(*mover).part_of.is_none();
    if claim.negated && movers.iter().any(others) && movers.iter().any(reached) {
        return Judgement::new(Verdict::Unknown, "other muscles do it too");
    }
    if claim.all
        && !joints.all.is_empty()
        && movers.iter().any(reached)
        && kept.len() > 2
        && kept.len() >= 3 * primes().filter(|mover| reached(mover)).count()
    {
        let why = format!(
            "{} is not lost with {}: {} still do it",
            vocabulary.name(movement),
            the(vocabulary, nerve),
            list(&kept)
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

/// Whether every telling word of one sign stands in the other, whatever its ending: "winged scapula" and "lateral winging
/// of the scapula".
fn is_like(a: &str, b: &str) -> bool {
    let stems = |sign: &str| -> Vec<String> {
        let words = sign
            .split([' ', '-'])
            .filter(|word| (word.len() > 2 || word.chars().any(char::is_uppercase)) && !lexicon::is_preposition(word));
        let words = words.filter(|word| !lexicon::is_determiner(word) && !lexicon::is_conjunction(word));
        words.map(|word| word.to_lowercase().chars().take(4).collect()).collect()
    };
    let (a, b) = (stems(a), stems(b));
    !a.is_empty()
        && !b.is_empty()
        && (a.iter().all(|word| b.contains(word)) || (b.len() > 1 && b.iter().all(|word| a.contains(word))))
}

/// The loss of a reflex as the sign of a root: which roots carry it. Where sources give a neighbouring root a share in it, the
/// vocabulary has that as a variant.
fn of_reflex(vocabulary: &Vocabulary, root: EntryId, sign: &str) -> Option<Judgement> {
    let name = sign.strip_prefix("loss of the ")?.rsplit_once(' ')?.0;
    if vocabulary.kind(root) != Kind::Root {
        return None;
    }
    let carries = |id: EntryId| {
        let facts = vocabulary.entry(id).facts.iter();
        let mut held = facts.filter(|fact| matches!(&fact.relation, Relation::Reflex { reflex } if reflex == name));
        held.next().map(|fact| if fact.variant { Verdict::Variant } else { Verdict::Agrees })
    };
    if let Some(verdict) = carries(root) {
        return Some(Judgement::new(verdict, format!("{} carries it", the(vocabulary, root))));
    }
    let is_usual = |id: &EntryId| carries(*id) == Some(Verdict::Agrees);
    let roots: Vec<EntryId> = vocabulary.iter().map(|(id, _)| id).filter(is_usual).collect();
    if roots.is_empty() {
        return Some(Judgement::unknown());
    }
    let names: Vec<String> = roots.iter().map(|id| the(vocabulary, *id)).collect();
    let mut judgement =
        Judgement::new(Verdict::Contradicts, format!("the {name} reflex is carried by {}", list(&names)));
    for id in roots {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(id));
    }
    Some(judgement)
}

fn of_sign(vocabulary: &Vocabulary, nerve: EntryId, sign: &str, side: Option<&str>) -> Judgement {
    let with = |is: &dyn Fn(&str) -> bool| -> Vec<EntryId> {
        let shows = |fact: &Fact| matches!(&fact.relation, Relation::Sign { sign: held, .. } if is(held));
        vocabulary.iter().filter(|(_, entry)| entry.facts.iter().any(shows)).map(|(id, _)| id).collect()
    };
    if let Some(judgement) = of_reflex(vocabulary, nerve, sign) {
        return judgement;
    }
    let alike = with(&|held| is_like(held, sign));
    // A root shows what is a sign of a part of the plexus only if the part carries it.
    let own = Segments::parse_one(vocabulary.name(nerve)).map(Segments::one);
    let own = own.filter(|_| vocabulary.kind(nerve) == Kind::Root);
    let shows = |owner: &EntryId| {
        if own.is_some_and(|own| !own.within(vocabulary.possible_segments(*owner))) {
            return false;
        }
        if vocabulary.is_or_above(nerve, *owner) {
            return true;
        }
        // What a part of a plexus shows is not what each nerve from it shows; nor what a nerve shows by another branch.
        let is_nerve = vocabulary.kind(*owner) == Kind::Nerve || vocabulary.kind(nerve) != Kind::Nerve;
        let by_another = |other: &EntryId| {
            vocabulary.is_or_above(*owner, *other)
                && !vocabulary.is_or_above(*other, nerve)
                && !vocabulary.is_or_above(nerve, *other)
        };
        is_nerve && vocabulary.is_or_above(*owner, nerve) && !alike.iter().any(by_another)
    };
    if alike.iter().any(shows) {
        let held = lexicon::body_side(sign);
        if let (Some(told), Some(held)) = (side, held)
            && told != held.word()
        {
            let why = format!("with a lesion of {} it is on the {}: {sign}", the(vocabulary, nerve), held.word());
            return Judgement::new(Verdict::Contradicts, why);
        }
        return Judgement::new(Verdict::Agrees, format!("{sign} is a sign of {}", the(vocabulary, nerve)));
    }
    let owners = with(&|held| held.eq_ignore_ascii_case(sign));
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
