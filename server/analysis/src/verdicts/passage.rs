//! What passes a landmark, and on which side: a nerve, a muscle with its tendon, or a vessel.
//!
//! What passes an opening is a list that can be told complete, unless the entry leaves it open. Elsewhere something else must
//! exclude a passage: it passes the landmark's counterpart, or on the other side, or in the company of another vessel.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;
use crate::lexicon;

/// Classes of landmarks that enclose what passes, so that what passes them is a list that can be told complete.
const ENCLOSED: &[&str] =
    &["foramen", "canal", "tunnel", "arcade", "notch", "groove", "space", "sheath", "compartment"];

/// Those of them that something may also pass outside, on a side of them.
const WITH_AN_OUTSIDE: &[&str] = &["foramen", "canal", "tunnel", "notch", "space", "sheath", "compartment"];

/// How many names the way from a branch up to its nerve has at most, where the opening of the one is told of the other.
const NEAR: usize = 3;

/// What is said to pass a landmark, and how.
#[derive(Clone, Copy, Debug)]
struct Told<'a> {
    passer: EntryId,
    landmark: EntryId,
    /// It is said to go through it, not only by it.
    through: bool,
    /// On which side it is said to pass.
    side: Option<&'a str>,
}

/// One step of the way of something.
#[derive(Clone, Copy, Debug)]
struct Step<'a> {
    landmark: EntryId,
    how: Option<&'a str>,
    variant: bool,
}

/// Whether an entry may pass a landmark: a nerve, a muscle, or a vessel or duct whose way is known.
pub fn can_pass(vocabulary: &Vocabulary, id: EntryId) -> bool {
    vocabulary.is_neural(id) || vocabulary.kind(id) == Kind::Muscle || steps(vocabulary, id).next().is_some()
}

/// Judges that something passes a landmark; `through` tells that the text says that it goes through it, `side` on which side
/// it is said to pass.
pub fn judge(
    vocabulary: &Vocabulary,
    passer: EntryId,
    landmark: EntryId,
    through: bool,
    side: Option<&str>,
) -> Judgement {
    let told = Told { passer, landmark, through, side };
    if let Some(judgement) = by_side(vocabulary, told) {
        return judgement;
    }
    if let Some(judgement) = of_other_side(vocabulary, told) {
        return judgement;
    }
    let line: Vec<EntryId> =
        std::iter::once(passer).chain(vocabulary.ancestors(passer)).chain(vocabulary.descendants(passer)).collect();
    let own: Vec<EntryId> = usual(vocabulary, passer).map(|step| step.landmark).collect();
    let family = family(vocabulary, landmark, &own);
    // What only a branch passes does not speak for the nerve where it passes the counterpart itself.
    let passes_twin = || own.iter().any(|held| are_twins(vocabulary.name(*held), vocabulary.name(landmark)));
    let is_below = |id: &EntryId| *id != passer && !vocabulary.is_or_above(*id, passer);
    // What only a branch of a branch of a branch goes through is no way of the nerve.
    let is_near = |id: EntryId| {
        vocabulary.kind(passer) != Kind::Nerve || vocabulary.path_up(id, passer).is_none_or(|way| way.len() <= NEAR)
    };
    let passes = |id: EntryId| family.iter().any(|place| is_at(vocabulary, id, *place));
    let speaks = |id: &EntryId| {
        is_below(id) && (!is_enclosed(vocabulary, landmark) || (goes_on_as(vocabulary, passer, *id) && is_near(*id)))
    };
    let is_step = |step: &Step<'_>| family.contains(&step.landmark);
    if steps(vocabulary, passer).any(|step| is_step(&step)) && !usual(vocabulary, passer).any(|step| is_step(&step)) {
        let why = format!("{} passes {} in some people", the(vocabulary, passer), the(vocabulary, landmark));
        return Judgement::new(Verdict::Variant, why);
    }
    if passes(passer)
        || is_passed_above(vocabulary, passer, &family)
        || (line.iter().any(|id| speaks(id) && passes(*id)) && !passes_twin())
    {
        return Judgement::new(
            Verdict::Agrees,
            format!("{} passes {}", the(vocabulary, passer), the(vocabulary, landmark)),
        );
    }
    let mut passers: Vec<EntryId> = family
        .iter()
        .flat_map(|place| vocabulary.pointing_at(*place))
        .filter(|(_, fact)| matches!(fact.relation, Relation::Passes { .. }) && !fact.variant)
        .map(|(owner, _)| owner)
        .collect();
    let mut known = std::collections::BTreeSet::new();
    passers.retain(|id| known.insert(*id));
    if vocabulary.kind(landmark) == Kind::Muscle && through {
        let way: Vec<EntryId> = line.iter().flat_map(|id| usual(vocabulary, *id)).map(|step| step.landmark).collect();
        return pierced(vocabulary, told, &way);
    }
    if let Some(twin) = own.iter().find(|held| are_twins(vocabulary.name(**held), vocabulary.name(landmark))) {
        let why =
            format!("{} passes {}, not {}", the(vocabulary, passer), the(vocabulary, *twin), the(vocabulary, landmark));
        return Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Landmark, vocabulary.name(*twin));
    }
    // Below the name of a place may stand what is attached there.
    let is_attached = vocabulary.entry(passer).facts.iter().any(|fact| match fact.relation {
        Relation::Origin { from: at } | Relation::Insertion { on: at } => {
            at == landmark || family.contains(&at) || vocabulary.wholes(at).contains(&landmark)
        }
        _ => false,
    });
    if passers.is_empty() || is_attached || !is_way_of_others(vocabulary, told, &own, &passers) {
        return Judgement::unknown();
    }
    of_others(vocabulary, told, &own, &passers)
}

/// What is known of the nerve of the other side of the body, where the two go different ways: what the right one passes and the
/// left one does not.
fn of_other_side(vocabulary: &Vocabulary, told: Told<'_>) -> Option<Judgement> {
    let (passer, landmark) = (told.passer, told.landmark);
    let name = vocabulary.name(passer);
    let other = name.strip_prefix("left ").map(|rest| format!("right {rest}"));
    let other = other.or_else(|| name.strip_prefix("right ").map(|rest| format!("left {rest}")))?;
    let whole = vocabulary.entry(passer).part_of?;
    let twin = vocabulary.parts(whole).iter().copied().find(|id| vocabulary.name(*id) == other)?;
    let own: Vec<EntryId> = usual(vocabulary, passer).map(|step| step.landmark).collect();
    let is_here = |id: EntryId| id == landmark || vocabulary.wholes(id).contains(&landmark);
    let passes = |id: EntryId| usual(vocabulary, id).any(|step| is_here(step.landmark));
    if own.is_empty() || !passes(twin) || passes(passer) {
        return None;
    }
    let why =
        format!("{} passes {}, {} does not", the(vocabulary, twin), the(vocabulary, landmark), the(vocabulary, passer));
    let way: Vec<&str> = own.iter().map(|id| vocabulary.name(*id)).collect();
    let way = format!("the way of {}: {}", the(vocabulary, passer), way.join(" → "));
    Some(Judgement::new(Verdict::Contradicts, why).path(vec![way]))
}

/// The contradiction that others pass a landmark, each of which is named.
fn of_others(vocabulary: &Vocabulary, told: Told<'_>, own: &[EntryId], passers: &[EntryId]) -> Judgement {
    let nerves: Vec<EntryId> = passers.iter().copied().filter(|id| vocabulary.is_neural(*id)).collect();
    // Of the like of what is told, where there is any: of a nerve the nerves, of a tendon the muscles.
    let alike: Vec<EntryId> = passers.iter().copied().filter(|id| are_alike(vocabulary, *id, told.passer)).collect();
    let named = if alike.is_empty() { passers } else { &alike };
    let names: Vec<String> = named.iter().map(|id| the(vocabulary, *id)).collect();
    let way: Vec<String> = own.iter().map(|id| vocabulary.name(*id).to_owned()).collect();
    let why = format!(
        "{} does not pass {}; {} {}",
        the(vocabulary, told.passer),
        the(vocabulary, told.landmark),
        list(&names),
        if names.len() == 1 { "does" } else { "do" }
    );
    let mut judgement = Judgement::new(Verdict::Contradicts, why);
    if !way.is_empty() {
        judgement = judgement.path(vec![format!("the way of {}: {}", the(vocabulary, told.passer), way.join(" → "))]);
    }
    if let ([only], true) = (nerves.as_slice(), vocabulary.is_neural(told.passer)) {
        judgement = judgement.remedy(PartRole::Nerve, vocabulary.name(*only));
    }
    // An opening of the same class is likelier to be meant than another.
    let is_same = |id: &&EntryId| vocabulary.entry(**id).class == vocabulary.entry(told.landmark).class;
    let openings = || own.iter().filter(|id| is_enclosed(vocabulary, **id) && is_enclosed(vocabulary, told.landmark));
    for id in openings().filter(is_same).chain(openings().filter(|id| !is_same(id))) {
        judgement = judgement.remedy(PartRole::Landmark, vocabulary.name(*id));
    }
    judgement
}

/// The steps of the way of something, in order.
fn steps(vocabulary: &Vocabulary, id: EntryId) -> impl Iterator<Item = Step<'_>> {
    vocabulary.entry(id).facts.iter().filter_map(|fact| match &fact.relation {
        Relation::Passes { landmark, how } => {
            Some(Step { landmark: *landmark, how: how.as_deref(), variant: fact.variant })
        }
        _ => None,
    })
}

/// The steps that it takes as a rule.
fn usual(vocabulary: &Vocabulary, id: EntryId) -> impl Iterator<Item = Step<'_>> {
    steps(vocabulary, id).filter(|step| !step.variant)
}

/// A landmark with its parts and wholes. What passes the whole need not pass the part, if it is known to pass another one.
fn family(vocabulary: &Vocabulary, landmark: EntryId, own: &[EntryId]) -> Vec<EntryId> {
    let passes_other_part = |whole: &EntryId| {
        own.iter().any(|held| *held != landmark && *held != *whole && vocabulary.wholes(*held).contains(whole))
    };
    let wholes = vocabulary.wholes(landmark).into_iter().filter(|whole| !passes_other_part(whole));
    std::iter::once(landmark).chain(wholes).chain(vocabulary.all_parts(landmark)).collect()
}

/// Whether a nerve goes on as what is below it, so that what that passes is said of the nerve as well; a branch that it gives
/// before an opening of its own is another one.
fn goes_on_as(vocabulary: &Vocabulary, nerve: EntryId, below: EntryId) -> bool {
    let facts = &vocabulary.entry(nerve).facts;
    let last = facts.iter().rposition(|fact| {
        matches!(fact.relation, Relation::Passes { landmark, .. } if !fact.variant && is_enclosed(vocabulary, landmark))
    });
    let Some(last) = last else { return true };
    let leaves_early = |fact: &fascicle_model::Fact| match fact.relation {
        Relation::Gives { nerve: branch, .. } => vocabulary.is_or_above(branch, below),
        _ => false,
    };
    !facts.iter().take(last).any(leaves_early)
}

/// Whether something is said to be at a place: it passes it, is hurt there, or begins, branches or ends there.
fn is_at(vocabulary: &Vocabulary, id: EntryId, place: EntryId) -> bool {
    vocabulary.entry(id).facts.iter().any(|fact| is_step_at(&fact.relation, place))
}

fn is_step_at(relation: &Relation, place: EntryId) -> bool {
    match relation {
        Relation::Passes { landmark: at, .. } | Relation::Injured { at, .. } => *at == place,
        Relation::Gives { at, .. } | Relation::Supplies { at, .. } | Relation::ArisesFrom { at, .. } => {
            *at == Some(place)
        }
        _ => false,
    }
}

/// Whether what a nerve comes from passes one of the places before the nerve leaves it.
fn is_passed_above(vocabulary: &Vocabulary, nerve: EntryId, places: &[EntryId]) -> bool {
    let mut seen = vec![nerve];
    let mut open = vec![nerve];
    while let Some(child) = open.pop() {
        let parents = vocabulary.origins(child, true).chain(vocabulary.entry(child).part_of);
        for parent in parents.collect::<Vec<_>>() {
            if seen.contains(&parent) {
                continue;
            }
            seen.push(parent);
            open.push(parent);
            let facts = &vocabulary.entry(parent).facts;
            // What goes on under another name is one nerve, and writers use both names for the whole of it.
            let leaves =
                facts.iter().position(|fact| matches!(fact.relation, Relation::Gives { nerve: id, .. } if id == child));
            let before = facts.iter().take(leaves.unwrap_or(facts.len()));
            if before.into_iter().any(|fact| places.iter().any(|place| is_step_at(&fact.relation, *place))) {
                return true;
            }
        }
    }
    false
}

/// Whether a landmark encloses what passes it.
pub fn is_enclosed(vocabulary: &Vocabulary, id: EntryId) -> bool {
    vocabulary.entry(id).class.as_deref().is_some_and(|class| ENCLOSED.contains(&class))
}

/// Whether two are of one kind: both nerves, both muscles, both vessels.
fn are_alike(vocabulary: &Vocabulary, a: EntryId, b: EntryId) -> bool {
    let is_neural = vocabulary.is_neural(a);
    is_neural == vocabulary.is_neural(b) && (is_neural || vocabulary.kind(a) == vocabulary.kind(b))
}

/// Whether what passes a landmark is known, and excludes what is told.
fn is_way_of_others(vocabulary: &Vocabulary, told: Told<'_>, own: &[EntryId], passers: &[EntryId]) -> bool {
    let entry = vocabulary.entry(told.landmark);
    let class = entry.class.as_deref().unwrap_or_default();
    let is_on_that_side = |id: &EntryId| {
        steps(vocabulary, *id).any(|step| {
            step.landmark == told.landmark
                && step.how.zip(told.side).is_some_and(|(how, side)| lexicon::are_one_side(how, side))
        })
    };
    let is_known = if vocabulary.kind(told.passer) == Kind::Muscle {
        // The muscles that pass an opening are told together.
        !own.is_empty() || passers.iter().any(|id| vocabulary.kind(*id) == Kind::Muscle)
    } else {
        !own.is_empty()
    };
    if !is_known || entry.is_open("passers") {
        return false;
    }
    let is_outside = told.side.is_some_and(lexicon::is_outside) && !passers.iter().any(is_on_that_side);
    if is_enclosed(vocabulary, told.landmark) {
        return !(is_outside && WITH_AN_OUTSIDE.contains(&class));
    }
    let alike = || passers.iter().filter(|id| are_alike(vocabulary, **id, told.passer));
    match class {
        "organ" => told.through && alike().any(|id| is_through(vocabulary, *id, told.landmark)),
        "ligament" => {
            let is_held = told.side.is_some_and(|side| lexicon::are_one_side(side, "deep to") || side == "through");
            is_held && (own.len() > 1 || !vocabulary.is_neural(told.passer)) && alike().any(is_on_that_side)
        }
        "vessel" => {
            let is_vessel = |id: &EntryId| vocabulary.entry(*id).class.as_deref() == Some("vessel");
            let has_company = own.iter().any(is_vessel);
            told.side.is_some_and(lexicon::is_company) && has_company && alike().any(is_on_that_side)
        }
        _ => own.len() > 1 && is_way_by_bone(vocabulary, told, own, passers.iter().any(is_on_that_side)),
    }
}

/// Whether something is known to go through a landmark, or to lie in it.
fn is_through(vocabulary: &Vocabulary, id: EntryId, landmark: EntryId) -> bool {
    steps(vocabulary, id).any(|step| step.landmark == landmark && matches!(step.how, Some("through" | "in")))
}

/// Whether a bone feature, or the side of it that is told, is known as the way of others, while of the nerve another way is
/// known: it passes another feature of the same bone, or those others are what is known to pass on that side.
fn is_way_by_bone(vocabulary: &Vocabulary, told: Told<'_>, own: &[EntryId], is_side_of_others: bool) -> bool {
    let bones = vocabulary.wholes(told.landmark);
    let is_bone = |id: &EntryId| vocabulary.entry(*id).class.as_deref() == Some("bone");
    if !bones.iter().any(is_bone) || !vocabulary.is_neural(told.passer) {
        return false;
    }
    is_side_of_others || own.iter().any(|held| vocabulary.wholes(*held).iter().any(|whole| bones.contains(whole)))
}

/// What the side says on which something is known to pass a landmark: it excludes the side that is told, or is that one in
/// some people.
fn by_side(vocabulary: &Vocabulary, told: Told<'_>) -> Option<Judgement> {
    let side = told.side?;
    let here = |variant: bool| {
        let steps = steps(vocabulary, told.passer);
        steps.filter(move |step| step.landmark == told.landmark && step.variant == variant).filter_map(|step| step.how)
    };
    let first = here(false).next()?;
    let is_beside = lexicon::is_beside(side);
    // What others go through may be passed outside as well, and then not through it.
    let is_ring = || {
        let passing = vocabulary.pointing_at(told.landmark).map(|(owner, _)| owner);
        passing.filter(|id| are_alike(vocabulary, *id, told.passer)).any(|id| is_through(vocabulary, id, told.landmark))
    };
    let is_pierced = side == "through" && (vocabulary.kind(told.landmark) == Kind::Muscle || is_ring());
    let excludes = |held: &str| {
        let opposite = lexicon::OPPOSITE_SIDES.iter().any(|(one, other)| {
            (one.contains(&held) && other.contains(&side)) || (other.contains(&held) && one.contains(&side))
        });
        // What goes through it comes out at one of its borders.
        opposite || (is_pierced && lexicon::is_outside(held)) || (is_beside && !lexicon::is_beside(held))
    };
    let tells_beside = here(false).any(lexicon::is_beside);
    if !here(false).all(excludes) || (is_beside && !tells_beside) {
        return None;
    }
    let names = (the(vocabulary, told.passer), the(vocabulary, told.landmark));
    if here(true).any(|held| lexicon::are_one_side(held, side)) {
        return Some(Judgement::new(Verdict::Variant, format!("{} passes {side} {} in some people", names.0, names.1)));
    }
    Some(Judgement::new(Verdict::Contradicts, format!("{} passes {first} {}", names.0, names.1)))
}

/// Whether two names differ in one word alone, and that word tells a thing from its twin (*medial* and *lateral*).
fn are_twins(a: &str, b: &str) -> bool {
    let (a, b): (Vec<&str>, Vec<&str>) = (a.split(' ').collect(), b.split(' ').collect());
    let mut differ = a.iter().zip(&b).filter(|(a, b)| a != b);
    let (Some((one, other)), None) = (differ.next(), differ.next()) else { return false };
    a.len() == b.len() && lexicon::contrast_of(one).is_some_and(|row| row.contains(other))
}

/// A muscle is pierced by what is known to pierce it, or to pass between its heads, where anything is.
fn pierced(vocabulary: &Vocabulary, told: Told<'_>, way: &[EntryId]) -> Judgement {
    let muscle = told.landmark;
    let that = |hows: &[&str]| -> Vec<String> {
        let passing = vocabulary.pointing_at(muscle);
        let piercing = passing.filter(
            |(_, fact)| matches!(&fact.relation, Relation::Passes { how: Some(how), .. } if hows.contains(&&**how)),
        );
        piercing.map(|(owner, _)| the(vocabulary, owner)).collect()
    };
    let between_heads = told.side == Some("between");
    let piercing = if between_heads { that(&["through", "between"]) } else { that(&["through"]) };
    // What has openings of its own lets nerves through there.
    let opening = format!(" of {}", vocabulary.name(muscle));
    let has_openings = |id: &EntryId| {
        vocabulary.wholes(*id).contains(&muscle)
            || vocabulary.entry(*id).names.iter().any(|name| name.text.ends_with(&opening))
    };
    if piercing.is_empty() || way.len() < 2 || way.iter().any(has_openings) {
        return Judgement::unknown();
    }
    let passer = the(vocabulary, told.passer);
    let why = if between_heads {
        format!("{} passes through {}, not {passer}", list(&piercing), vocabulary.name(muscle))
    } else {
        format!("{} is pierced by {}, not by {passer}", vocabulary.name(muscle), list(&piercing))
    };
    Judgement::new(Verdict::Contradicts, why)
}
