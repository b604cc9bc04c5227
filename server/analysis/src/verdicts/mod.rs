//! From claims to verdicts: what the graph says of a statement, and why.
//!
//! The graph is open: what it does not hold is unknown. A statement is contradicted only where a list is complete or
//! where a fact excludes it. Where a name is ambiguous, the reading that suits the author best is taken, so that only what
//! is wrong under every reading is contradicted.

mod action;
mod attachment;
mod count;
mod crossing;
mod deficit;
mod fibres;
mod finding;
mod ligament;
mod nerve;
mod passage;
mod place;
mod supply;

use fascicle_model::{EntryId, Kind, Vocabulary};

use crate::claims::{Claim, ClaimKind, PartRole, What};

pub use count::{is_counted, is_fewer, is_times};
pub use finding::finding;
pub use passage::{can_pass, is_enclosed};

/// The graph's answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// So it is.
    Agrees,
    /// So it is in some people or by some sources.
    Variant,
    /// So it is, told less exactly (a parent for the branch).
    LessExact,
    /// It is not so.
    Contradicts,
    /// The graph does not say.
    Unknown,
}

impl Verdict {
    /// The word for outputs.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Agrees => "agrees",
            Self::Variant => "variant",
            Self::LessExact => "less-exact",
            Self::Contradicts => "contradicts",
            Self::Unknown => "unknown",
        }
    }

    /// The better the verdict for the author, the smaller.
    const fn rank(self) -> u8 {
        match self {
            Self::Agrees => 0,
            Self::Variant => 1,
            Self::LessExact => 2,
            Self::Unknown => 3,
            Self::Contradicts => 4,
        }
    }
}

/// A verdict with its reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judgement {
    /// The verdict.
    pub verdict: Verdict,
    /// One sentence that says why.
    pub why: String,
    /// The path through the graph, one step a line.
    pub path: Vec<String>,
    /// What may stand instead of a part of the claim: the part's role and the texts, the likeliest first.
    pub remedies: Vec<(PartRole, String)>,
}

impl Judgement {
    fn new(verdict: Verdict, why: impl Into<String>) -> Self {
        Self { verdict, why: why.into(), path: Vec::new(), remedies: Vec::new() }
    }

    fn unknown() -> Self {
        Self::new(Verdict::Unknown, "the vocabulary does not say")
    }

    fn path(mut self, path: Vec<String>) -> Self {
        self.path = path;
        self
    }

    fn remedy(mut self, role: PartRole, text: impl Into<String>) -> Self {
        self.remedies.push((role, text.into()));
        self
    }
}

/// Judges a claim.
pub fn judge(claim: &Claim, vocabulary: &Vocabulary) -> Judgement {
    let mut judgement = judge_plain(claim, vocabulary);
    if claim.negated {
        judgement = negate(judgement, claim, vocabulary);
    }
    if claim.hedged && judgement.verdict == Verdict::Contradicts {
        judgement = Judgement::new(Verdict::Unknown, format!("told with a reservation; as a rule, {}", judgement.why));
    }
    judgement
}

fn judge_plain(claim: &Claim, vocabulary: &Vocabulary) -> Judgement {
    match claim.kind {
        ClaimKind::Deficit => deficit::judge(vocabulary, claim),
        // "It supplies no muscle of the forearm": one that it supplies as a rule speaks against it.
        ClaimKind::Supply if claim.negated && claim.all => {
            let muscles = claim.entries(PartRole::Muscle).iter();
            let mut each = muscles
                .flat_map(|muscle| claim.entries(PartRole::Nerve).iter().map(|nerve| (*nerve, *muscle)))
                .map(|(nerve, muscle)| supply::judge(vocabulary, nerve, muscle, false, &[]));
            let supplied = |judgement: &Judgement| matches!(judgement.verdict, Verdict::Agrees | Verdict::LessExact);
            let found = each.clone().find(supplied);
            found.unwrap_or_else(|| best(each.by_ref()))
        }
        ClaimKind::Supply => each(claim, PartRole::Nerve, PartRole::Muscle, |nerve, muscle| {
            // "the posterior thigh muscles": of what goes by the name, it is the muscles that are supplied.
            if !is_of_muscles(vocabulary, muscle) {
                let others = claim.entries(PartRole::Muscle).iter();
                if others.clone().any(|other| is_of_muscles(vocabulary, *other)) {
                    return Judgement::new(Verdict::Contradicts, "it is no muscle");
                }
            }
            let except = claim.parts.iter().filter(|part| part.role == PartRole::Except);
            let except: Vec<EntryId> = except.flat_map(|part| part.what.entries().iter().copied()).collect();
            if claim.part(PartRole::Role).is_some_and(|part| part.what == What::Word("only")) {
                return supply::only(vocabulary, nerve, muscle);
            }
            supply::judge(vocabulary, nerve, muscle, claim.all && !claim.negated, &except)
        }),
        ClaimKind::Roots => {
            let Some(What::Segments(main, lesser)) = claim.part(PartRole::Segments).map(|part| &part.what) else {
                return Judgement::unknown();
            };
            let told = main.union(*lesser);
            if let Some(What::Sign(reflex)) = claim.part(PartRole::Sign).map(|part| &part.what) {
                return nerve::reflex(vocabulary, reflex, told);
            }
            let movements = claim.entries(PartRole::Movement);
            if !movements.is_empty() {
                let targets = claim.entries(PartRole::Joint);
                return best(movements.iter().map(|movement| nerve::myotome(vocabulary, *movement, targets, told)));
            }
            best(claim.entries(PartRole::Structure).iter().map(|id| nerve::roots(vocabulary, *id, *main, *lesser)))
        }
        ClaimKind::Branching => {
            each(claim, PartRole::Nerve, PartRole::Parent, |child, parent| nerve::branching(vocabulary, child, parent))
        }
        ClaimKind::Renaming => {
            each(claim, PartRole::Nerve, PartRole::Parent, |child, parent| nerve::renaming(vocabulary, child, parent))
        }
        ClaimKind::Modality => {
            let Some(What::Word(is)) = claim.part(PartRole::Modality).map(|part| &part.what) else {
                return Judgement::unknown();
            };
            let places = claim.entries(PartRole::Structure);
            best(claim.entries(PartRole::Nerve).iter().map(|id| {
                if crate::lexicon::carried(is).is_some() {
                    fibres::judge(vocabulary, *id, is, places)
                } else {
                    nerve::modality(vocabulary, *id, is, claim.all)
                }
            }))
        }
        ClaimKind::Skin => {
            each(claim, PartRole::Nerve, PartRole::Skin, |nerve, area| place::skin(vocabulary, nerve, area))
        }
        ClaimKind::Passage => {
            let side = match claim.part(PartRole::Role).map(|part| &part.what) {
                Some(What::Word(side)) => Some(*side),
                _ => None,
            };
            let roles = [PartRole::Nerve, PartRole::Muscle, PartRole::Structure];
            let passers = roles.iter().flat_map(|role| claim.entries(*role));
            let passers = passers.copied().filter(|id| passage::can_pass(vocabulary, *id));
            let pairs = passers.flat_map(|passer| {
                near(claim, PartRole::Landmark, passer, vocabulary).into_iter().map(move |at| (passer, at))
            });
            best(pairs.map(|(passer, landmark)| passage::judge(vocabulary, passer, landmark, claim.all, side)))
        }
        ClaimKind::Attachment => {
            let end = match claim.part(PartRole::Role).map(|part| &part.what) {
                Some(What::Word(end)) => Some(*end),
                _ => None,
            };
            // Of several muscles of one name that of the place's limb is meant.
            let limb = |id: EntryId| action::limb(vocabulary.entry(id).region);
            each(claim, PartRole::Muscle, PartRole::Landmark, |muscle, landmark| {
                let is_near = |id: &EntryId| limb(*id).is_some() && limb(*id) == limb(landmark);
                if !is_near(&muscle) && claim.entries(PartRole::Muscle).iter().any(is_near) {
                    return Judgement::unknown();
                }
                attachment::of_any(vocabulary, muscle, landmark, end)
            })
        }
        ClaimKind::Action => action::judge(vocabulary, claim),
        ClaimKind::Joint if claim.part(PartRole::Movement).is_some() => {
            each(claim, PartRole::Joint, PartRole::Movement, |joint, movement| {
                action::joint_movement(vocabulary, joint, movement)
            })
        }
        ClaimKind::Joint if claim.part(PartRole::Muscle).is_some() => {
            each(claim, PartRole::Muscle, PartRole::Joint, |muscle, joint| crossing::judge(vocabulary, muscle, joint))
        }
        ClaimKind::Joint if claim.part(PartRole::Role).is_some() => {
            let Some(What::Word(motion)) = claim.part(PartRole::Role).map(|part| &part.what) else {
                return Judgement::unknown();
            };
            let moved = claim.entries(PartRole::Structure);
            let ligaments = claim.entries(PartRole::Landmark).iter();
            best(ligaments.map(|ligament| ligament::limits(vocabulary, *ligament, motion, moved)))
        }
        ClaimKind::Joint if is_of_ligament(vocabulary, claim) && claim.part(PartRole::Parent).is_some() => {
            each(claim, PartRole::Landmark, PartRole::Parent, |ligament, place| {
                ligament::binds(vocabulary, ligament, place)
            })
        }
        ClaimKind::Joint if claim.part(PartRole::Parent).is_some() => {
            each(claim, PartRole::Landmark, PartRole::Parent, |bone, other| {
                action::articulation(vocabulary, bone, other)
            })
        }
        ClaimKind::Joint if claim.part(PartRole::Landmark).is_some() => {
            each(claim, PartRole::Joint, PartRole::Landmark, |joint, bone| action::joint_bone(vocabulary, joint, bone))
        }
        ClaimKind::Joint => {
            let Some(What::Word(kind)) = claim.part(PartRole::JointKind).map(|part| &part.what) else {
                return Judgement::unknown();
            };
            best(claim.entries(PartRole::Joint).iter().map(|id| action::joint_kind(vocabulary, *id, kind)))
        }
        ClaimKind::Membership => {
            each(claim, PartRole::Muscle, PartRole::Group, |muscle, group| place::membership(vocabulary, muscle, group))
        }
        ClaimKind::Count => {
            let Some(What::Number(number)) = claim.part(PartRole::Number).map(|part| &part.what) else {
                return Judgement::unknown();
            };
            let noun = match claim.part(PartRole::Role).map(|part| &part.what) {
                Some(What::Word(noun)) => noun,
                _ => "named",
            };
            best(
                claim
                    .entries(PartRole::Structure)
                    .iter()
                    .map(|id| count::count(vocabulary, *id, *number, noun, claim.all)),
            )
        }
    }
}

/// Whether what a claim of a joint speaks of is a ligament.
fn is_of_ligament(vocabulary: &Vocabulary, claim: &Claim) -> bool {
    let ids = claim.entries(PartRole::Landmark);
    !ids.is_empty() && ids.iter().all(|id| vocabulary.entry(*id).class.as_deref() == Some("ligament"))
}

/// A denial: what agrees is contradicted and the other way round.
fn negate(judgement: Judgement, claim: &Claim, vocabulary: &Vocabulary) -> Judgement {
    let told = || {
        let names: Vec<&str> = claim
            .parts
            .iter()
            .filter_map(|part| match &part.what {
                What::Entry(ids) => ids.first().map(|id| vocabulary.name(*id)),
                _ => None,
            })
            .collect();
        names.join(" – ")
    };
    match judgement.verdict {
        // Spared may be what leaves the nerve above the lesion; of muscles that is known.
        Verdict::Agrees
            if claim.kind == ClaimKind::Deficit
                && claim.part(PartRole::Landmark).is_some()
                && claim.part(PartRole::Muscle).is_none() =>
        {
            Judgement::unknown()
        }
        // That a nerve has no such fibres may be said of its own, not of those that join it.
        Verdict::Agrees if claim.kind == ClaimKind::Modality && claim.is_of_passengers() => Judgement::unknown(),
        Verdict::Agrees if claim.kind == ClaimKind::Deficit => Judgement {
            verdict: Verdict::Contradicts,
            why: format!("it is not spared: {}", judgement.why),
            remedies: Vec::new(),
            path: judgement.path,
        },
        Verdict::Agrees => Judgement {
            verdict: Verdict::Contradicts,
            why: format!("it does, all the same: {}", judgement.why),
            remedies: Vec::new(),
            path: judgement.path,
        },
        Verdict::LessExact
            if (matches!(claim.kind, ClaimKind::Supply | ClaimKind::Branching)
                && (claim.all || !is_group(claim, vocabulary))
                && !supply::is_of_rami(vocabulary, claim.entries(PartRole::Nerve)))
                || (claim.kind == ClaimKind::Skin && feels_by_branch(claim, vocabulary)) =>
        {
            Judgement {
                verdict: Verdict::Contradicts,
                why: format!("it does, through a branch: {}", judgement.why),
                remedies: Vec::new(),
                path: judgement.path,
            }
        }
        Verdict::Contradicts => {
            Judgement { verdict: Verdict::Agrees, why: format!("rightly denied: {}", told()), ..judgement }
        }
        Verdict::Variant | Verdict::LessExact | Verdict::Unknown => Judgement::unknown(),
    }
}

/// Whether a branch of the nerve feels the area or a part of it.
fn feels_by_branch(claim: &Claim, vocabulary: &Vocabulary) -> bool {
    let areas = claim.entries(PartRole::Skin).iter();
    let mut places = areas.flat_map(|area| std::iter::once(*area).chain(vocabulary.all_parts(*area)));
    places.any(|place| {
        vocabulary.pointing_at(place).any(|(owner, fact)| {
            matches!(fact.relation, fascicle_model::Relation::Feels { .. })
                && !fact.variant
                && claim.entries(PartRole::Nerve).iter().any(|nerve| vocabulary.is_or_above(*nerve, owner))
        })
    })
}

/// The entries at a part, those alone that lie in a region with the nerve where any does: a landmark's name that arm and leg
/// share means the one that the nerve can meet.
fn near(claim: &Claim, role: PartRole, nerve: EntryId, vocabulary: &Vocabulary) -> Vec<EntryId> {
    let all = claim.entries(role);
    let region = vocabulary.entry(nerve).region;
    let near: Vec<EntryId> = all.iter().copied().filter(|id| vocabulary.entry(*id).region == region).collect();
    if near.is_empty() { all.to_vec() } else { near }
}

/// Whether an entry is a muscle or a group of muscles.
fn is_of_muscles(vocabulary: &Vocabulary, id: EntryId) -> bool {
    matches!(vocabulary.kind(id), Kind::Muscle | Kind::Group)
}

fn is_group(claim: &Claim, vocabulary: &Vocabulary) -> bool {
    claim.entries(PartRole::Muscle).iter().any(|id| vocabulary.kind(*id) == Kind::Group)
}

/// The verdict over all readings of two parts.
fn each(claim: &Claim, left: PartRole, right: PartRole, judge: impl Fn(EntryId, EntryId) -> Judgement) -> Judgement {
    let pairs = claim.entries(left).iter().flat_map(|l| claim.entries(right).iter().map(move |r| (*l, *r)));
    best(pairs.map(|(l, r)| judge(l, r)))
}

/// The judgement that suits the author best.
fn best(judgements: impl Iterator<Item = Judgement>) -> Judgement {
    judgements.min_by_key(|judgement| judgement.verdict.rank()).unwrap_or_else(Judgement::unknown)
}

/// A name with its article, for a sentence: "the axillary nerve", "deltoid".
fn the(vocabulary: &Vocabulary, id: EntryId) -> String {
    let name = vocabulary.name(id);
    if vocabulary.kind(id) == Kind::Muscle || vocabulary.kind(id) == Kind::Root {
        name.to_owned()
    } else {
        format!("the {name}")
    }
}

/// "a", "a and b", "a, b and c"
fn list(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}
