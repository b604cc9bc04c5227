//! Which relation a value stands in.
//!
//! A label tells it, yet not always exactly: *Nerve:* below an area of skin tells what feels it, *Branch of: C5, C6* tells
//! roots. Without a label the kinds of the subject and of the value tell it, where they fit one relation only: a muscle and
//! a nerve, a nerve and segments, a muscle and a movement.

use fascicle_model::{EntryId, Kind, Relation};

use super::Sign;
use super::heads::{Head, parts_of};
use super::values::{is_neural, value_claims};
use crate::claims::sentences::{self, Scope, Side, Subject, side_of};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Label};
use crate::text::Span;
use crate::verdicts::is_enclosed;

/// Of whom a value speaks.
#[derive(Clone, Debug)]
pub enum Who {
    /// Of the structures that are named.
    Named(Vec<Subject>),
    /// Of what the block stands under.
    Above,
    /// Of something that is not known.
    Nobody,
}

const fn label(kind: ClaimKind, subject: PartRole, value: PartRole) -> Label {
    Label { kind: Some(kind), value, subject }
}

/// The relations that a subject and a value can stand in without a word between them.
const BARE: [Label; 14] = [
    label(ClaimKind::Supply, PartRole::Muscle, PartRole::Nerve),
    label(ClaimKind::Supply, PartRole::Nerve, PartRole::Muscle),
    label(ClaimKind::Roots, PartRole::Structure, PartRole::Segments),
    label(ClaimKind::Action, PartRole::Muscle, PartRole::Movement),
    label(ClaimKind::Modality, PartRole::Nerve, PartRole::Modality),
    label(ClaimKind::Joint, PartRole::Joint, PartRole::JointKind),
    label(ClaimKind::Joint, PartRole::Joint, PartRole::Movement),
    label(ClaimKind::Skin, PartRole::Skin, PartRole::Nerve),
    label(ClaimKind::Skin, PartRole::Nerve, PartRole::Skin),
    label(ClaimKind::Membership, PartRole::Group, PartRole::Muscle),
    label(ClaimKind::Membership, PartRole::Muscle, PartRole::Group),
    label(ClaimKind::Passage, PartRole::Landmark, PartRole::Nerve),
    label(ClaimKind::Passage, PartRole::Nerve, PartRole::Landmark),
    label(ClaimKind::Count, PartRole::Structure, PartRole::Number),
];

/// A value with more commas is a list of one kind, or no value.
const MOST_CUTS: usize = 8;

/// What a label can mean, the likeliest first.
pub fn meanings(told: Label) -> Vec<Label> {
    use ClaimKind as K;
    use PartRole as P;
    let mut list = vec![told];
    match (told.kind, told.subject, told.value) {
        (None, _, P::Muscle) => {
            list = vec![label(K::Membership, P::Group, P::Muscle), label(K::Supply, P::Nerve, P::Muscle)]
        }
        (Some(K::Supply), P::Muscle, P::Nerve) => {
            list.extend([label(K::Skin, P::Skin, P::Nerve), label(K::Supply, P::Nerve, P::Muscle)]);
        }
        (Some(K::Supply), P::Nerve, P::Muscle) => list.push(label(K::Supply, P::Muscle, P::Nerve)),
        (Some(K::Skin), P::Nerve, P::Skin) => list.push(label(K::Skin, P::Skin, P::Nerve)),
        (Some(K::Branching), P::Nerve, P::Parent) => {
            list.insert(0, label(K::Roots, P::Structure, P::Segments));
            list.push(label(K::Attachment, P::Muscle, P::Landmark));
        }
        (Some(K::Attachment), P::Muscle, P::Landmark) => {
            list.insert(0, label(K::Roots, P::Nerve, P::Segments));
            list.push(label(K::Branching, P::Nerve, P::Parent));
        }
        (Some(K::Renaming), ..) => list.push(label(K::Branching, P::Parent, P::Nerve)),
        (Some(K::Modality), ..) => list.push(label(K::Joint, P::Joint, P::JointKind)),
        // "Type", and of a nerve "Function: motor only"
        (Some(K::Joint), P::Joint, P::JointKind) | (Some(K::Action), P::Muscle, P::Movement) => {
            list.push(label(K::Modality, P::Nerve, P::Modality))
        }
        (Some(K::Joint), P::Joint, P::Movement) => list.push(label(K::Action, P::Muscle, P::Movement)),
        (Some(K::Passage), P::Nerve, P::Landmark) => list.push(label(K::Passage, P::Landmark, P::Nerve)),
        (Some(K::Passage), P::Landmark, P::Nerve) => list.push(label(K::Passage, P::Nerve, P::Landmark)),
        (Some(K::Membership), P::Muscle, P::Group) => list.push(label(K::Membership, P::Group, P::Muscle)),
        _ => {}
    }
    list
}

/// The claims of a value that a label tells.
pub fn labelled(
    scope: &Scope<'_>,
    (from, to): (usize, usize),
    (told, word): (Label, &str),
    who: &Who,
    parts: &[String],
) -> Vec<Claim> {
    let is_end = lexicon::end_of_attachment(word) == Some("insertion");
    let mut meant = meanings(told);
    if matches!(who, Who::Above) {
        // Of several meanings the one is likeliest whose subject stands nearest above.
        meant.sort_by_key(|meant| distance(scope, meant.subject, parts));
    }
    meant
        .into_iter()
        // A nerve comes from its origin; where it goes to is no branch.
        .filter(|meant| {
            !(is_end && told.kind == Some(ClaimKind::Attachment) && meant.kind == Some(ClaimKind::Branching))
        })
        .map(|meant| {
            let mut claims = value_claims(scope, from, to, meant, word, &sides_of(scope, who, meant, parts));
            if meant.kind == Some(ClaimKind::Membership) && meant.value == PartRole::Group {
                // What a muscle belongs to is a group; its own parts are told the other way round.
                claims.retain(|claim| {
                    claim.entries(PartRole::Group).iter().any(|id| scope.vocabulary.kind(*id) == Kind::Group)
                });
            }
            if told.kind.is_none() && meant.kind == Some(ClaimKind::Membership) {
                // Below "Muscles" the members of a group stand, not the parts of a muscle.
                claims.retain(|claim| {
                    claim.entries(PartRole::Group).iter().all(|id| {
                        scope.vocabulary.kind(*id) == Kind::Group && !scope.vocabulary.members(*id).is_empty()
                    })
                });
            }
            claims
        })
        .find(|claims| !claims.is_empty())
        .unwrap_or_default()
}

/// The claims of a value that only the kinds of its names tell. `sign` is what stands before it.
pub fn bare(scope: &Scope<'_>, value: (usize, usize), sign: Sign, who: &Who, parts: &[String]) -> Vec<Claim> {
    let claims = bare_as_one(scope, value, sign, who, parts);
    if claims.is_empty() { composite(scope, value, sign, who, parts) } else { claims }
}

/// "tibial nerve, S1 and S2, plantar flexion": a value that tells several things, each between commas. Of whom the segments
/// are told, the muscle or its nerve, is left open.
fn composite(scope: &Scope<'_>, (from, to): (usize, usize), sign: Sign, who: &Who, parts: &[String]) -> Vec<Claim> {
    let is_comma = |at: &usize| {
        let is = |at: usize, mark| {
            scope.mentions.tokens.get(at).is_some_and(|token| token.span.of(&scope.plain.text) == mark)
        };
        let depth = (from..*at).map(|at| i32::from(is(at, "(")) - i32::from(is(at, ")"))).sum::<i32>();
        is(*at, ",") && depth == 0
    };
    let mut cuts: Vec<usize> = (from..to).filter(is_comma).collect();
    if cuts.is_empty() || cuts.len() > MOST_CUTS {
        return Vec::new();
    }
    cuts.push(to);
    let mut list: Vec<Claim> = Vec::new();
    let mut start = from;
    while start < to {
        let read = cuts.iter().rev().filter(|cut| **cut > start && (start > from || **cut < to)).find_map(|cut| {
            let claims = bare_as_one(scope, (start, *cut), sign, who, parts);
            (!claims.is_empty()).then_some((claims, *cut))
        });
        let Some((claims, cut)) = read else { return Vec::new() };
        list.extend(claims);
        start = cut + 1;
    }
    let nerves: Vec<EntryId> = list
        .iter()
        .filter(|claim| claim.kind == ClaimKind::Supply)
        .flat_map(|claim| claim.entries(PartRole::Nerve).to_vec())
        .collect();
    let of_roots = list.iter_mut().filter(|claim| claim.kind == ClaimKind::Roots);
    for part in of_roots.flat_map(|claim| &mut claim.parts).filter(|part| part.role == PartRole::Structure) {
        if let What::Entry(ids) = &mut part.what {
            ids.extend(&nerves);
        }
    }
    list
}

/// The claims of a value that stands in one relation.
fn bare_as_one(scope: &Scope<'_>, (from, to): (usize, usize), sign: Sign, who: &Who, parts: &[String]) -> Vec<Claim> {
    // A plexus, trunk or cord with nerves below it or behind it has them as branches.
    let is_plexus = |subject: &Subject| subject.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Plexus);
    let of_plexus = matches!(who, Who::Named(list) if !list.is_empty() && list.iter().all(is_plexus));
    let between_nerves = match sign {
        Sign::Colon | Sign::None if of_plexus => Some(label(ClaimKind::Branching, PartRole::Parent, PartRole::Nerve)),
        Sign::Right => Some(label(ClaimKind::Branching, PartRole::Parent, PartRole::Nerve)),
        Sign::Left => Some(label(ClaimKind::Branching, PartRole::Nerve, PartRole::Parent)),
        Sign::Colon | Sign::None => None,
    };
    // "From the lumbar plexus", "from C3 and C4"
    let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let is_source = word(from).eq_ignore_ascii_case("from");
    let from = from + usize::from(is_source);
    let between_nerves =
        if is_source { Some(label(ClaimKind::Branching, PartRole::Nerve, PartRole::Parent)) } else { between_nerves };
    let mut found: Vec<Vec<Claim>> = Vec::new();
    for meant in BARE.into_iter().chain(between_nerves) {
        let mut sides = sides_of(scope, who, meant, parts);
        sides.retain(|side| may_stand_bare(scope, meant, side));
        let is_way = meant.kind == Some(ClaimKind::Passage) && meant.value == PartRole::Landmark;
        let is_of_skin = meant.kind == Some(ClaimKind::Skin) && meant.value == PartRole::Skin;
        if is_of_skin && !describes_skin(scope, from, to) {
            continue;
        }
        if meant.kind == Some(ClaimKind::Roots) && leads_to_landmark(scope, to) {
            continue;
        }
        if sides.is_empty() {
            continue;
        }
        let mut claims = value_claims(scope, from, to, meant, "", &sides);
        if is_way && !begins_with_way(scope, from) {
            // An arrow from a nerve to a muscle is a supply; behind a colon only an opening tells a way.
            let is_place = |id: &EntryId| {
                scope.vocabulary.kind(*id) == Kind::Landmark
                    && (sign == Sign::Right || (sign == Sign::Colon && is_enclosed(scope.vocabulary, *id)))
            };
            claims.retain(|claim| claim.entries(PartRole::Landmark).iter().all(is_place));
        }
        if meant.kind == Some(ClaimKind::Branching) {
            claims.retain(|claim| claim.parts.iter().all(|part| is_neural(scope.vocabulary, &part.what)));
        }
        if !claims.is_empty() && is_nothing_else(scope, from, to, meant, &claims) {
            found.push(claims);
        }
    }
    if found.len() == 1 { found.pop().unwrap_or_default() } else { Vec::new() }
}

/// "C7–T1 → medial border": segments from which an arrow leads to a place are levels of the spine.
fn leads_to_landmark(scope: &Scope<'_>, to: usize) -> bool {
    let is_arrow =
        scope.mentions.tokens.get(to).is_some_and(|token| lexicon::is_arrow(token.span.of(&scope.plain.text)));
    let next = scope.mentions.list.iter().find(|mention| mention.tokens.0 > to);
    is_arrow && next.is_some_and(|next| next.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Landmark))
}

/// Whether a value says that it is skin of which it speaks, or a surface: a part of the body by itself may be anything.
fn describes_skin(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    let mut words = scope.mentions.tokens.get(from..to).unwrap_or_default().iter();
    words.any(|token| lexicon::tells_surface(&token.span.of(&scope.plain.text).to_lowercase()))
}

/// Whether a value begins with a preposition of a way ("behind the medial epicondyle").
fn begins_with_way(scope: &Scope<'_>, from: usize) -> bool {
    let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    lexicon::begins_way(word(from)) || (word(from) == "in" && word(from + 1) == "front")
}

/// Whether a subject may have a value of a relation that no word tells.
fn may_stand_bare(scope: &Scope<'_>, meant: Label, side: &Side) -> bool {
    let What::Entry(ids) = &side.what else { return false };
    let vocabulary = scope.vocabulary;
    match (meant.kind, meant.subject) {
        // What stands behind a group's name may be its neighbours as well as its nerve.
        (Some(ClaimKind::Supply), PartRole::Muscle) => !ids.iter().any(|id| vocabulary.kind(*id) == Kind::Group),
        (Some(ClaimKind::Roots), _) => {
            ids.iter().all(|id| matches!(vocabulary.kind(*id), Kind::Nerve | Kind::Plexus | Kind::Muscle | Kind::Skin))
        }
        (Some(ClaimKind::Membership), PartRole::Group) => ids.iter().all(|id| vocabulary.kind(*id) == Kind::Group),
        (Some(ClaimKind::Passage | ClaimKind::Skin), PartRole::Nerve) => ids.iter().all(|id| vocabulary.is_neural(*id)),
        (Some(ClaimKind::Passage), _) => ids.iter().any(|id| {
            vocabulary.kind(*id) == Kind::Landmark
                && vocabulary
                    .pointing_at(*id)
                    .any(|(_, fact)| matches!(fact.relation, Relation::Passes { landmark, .. } if landmark == *id))
        }),
        _ => true,
    }
}

/// Whether a value holds nothing but what was read of it, and what joins names.
fn is_nothing_else(scope: &Scope<'_>, from: usize, to: usize, meant: Label, claims: &[Claim]) -> bool {
    let text = &scope.plain.text;
    let tokens = &scope.mentions.tokens;
    let read = |span: Span| claims.iter().any(|claim| claim.parts.iter().any(|part| part.span.overlaps(span)));
    // An area and a movement are described; it is enough that the value begins with them.
    let is_described = matches!(meant.value, PartRole::Movement | PartRole::Skin);
    let is_way = meant.kind == Some(ClaimKind::Passage) && meant.value == PartRole::Landmark;
    let mut at = from;
    while at < to {
        let Some(token) = tokens.get(at) else { break };
        let word = token.span.of(text);
        if matches!(word, "(" | "[") {
            at = (at..to)
                .find(|at| tokens.get(*at).is_some_and(|token| matches!(token.span.of(text), ")" | "]")))
                .map_or(to, |close| close + 1);
            continue;
        }
        let is_read = read(scope.plain.to_source(token.span));
        if is_read && is_described {
            return true;
        }
        let lower = word.to_lowercase();
        let is_of_modality = meant.value == PartRole::Modality
            && (lexicon::means_only(&lower) || lexicon::is_kind_noun(&lower) || lexicon::is_fibre_noun(&lower));
        let is_of_segments = meant.value == PartRole::Segments
            && (lexicon::is_in_bracket(&lower) || lexicon::is_fibre_noun(&lower) || matches!(&*lower, "from" | "of"));
        let is_of_kind = meant.value == PartRole::JointKind && lexicon::fills_joint_kind(&lower);
        let joins = is_of_modality
            || is_of_segments
            || is_of_kind
            || !lower.chars().any(char::is_alphanumeric)
            || lexicon::is_conjunction(&lower)
            || lexicon::is_determiner(&lower)
            || lexicon::joins_values(&lower)
            || lexicon::is_adverb(&lower)
            || (is_way && (lexicon::is_preposition(&lower) || lower == "front"))
            || (lexicon::is_part_noun(&lower) && meant.value != PartRole::Number);
        if !is_read && !joins {
            return false;
        }
        at += 1;
    }
    !is_described
}

/// How far above a block the first structure stands that fits a role.
fn distance(scope: &Scope<'_>, role: PartRole, parts: &[String]) -> usize {
    let is_fit = |subject: &Subject| !sides(scope, &Who::Named(vec![subject.clone()]), role, parts).is_empty();
    scope.subjects.iter().position(is_fit).unwrap_or(usize::MAX)
}

/// The subjects of a value, as far as they fit a role.
pub fn sides(scope: &Scope<'_>, who: &Who, role: PartRole, parts: &[String]) -> Vec<Side> {
    let roles: &[PartRole] =
        if role == PartRole::Structure { &[PartRole::Muscle, PartRole::Nerve, PartRole::Skin] } else { &[role] };
    sides_as(scope, who, roles, parts)
}

/// The subjects of a label, as far as they fit it. What is counted may be of anything.
fn sides_of(scope: &Scope<'_>, who: &Who, label: Label, parts: &[String]) -> Vec<Side> {
    const COUNTED: [PartRole; 4] = [PartRole::Muscle, PartRole::Nerve, PartRole::Joint, PartRole::Landmark];
    if label.kind == Some(ClaimKind::Count) {
        sides_as(scope, who, &COUNTED, parts)
    } else {
        sides(scope, who, label.subject, parts)
    }
}

fn sides_as(scope: &Scope<'_>, who: &Who, roles: &[PartRole], parts: &[String]) -> Vec<Side> {
    // What stands behind the name of a joint may be the nerves of the joint, not of the skin over it.
    let is_joint = |subject: &Subject| subject.candidates.iter().any(|id| scope.vocabulary.kind(*id) == Kind::Joint);
    let is_skin = roles == [PartRole::Skin];
    let fit = |subject: &Subject| roles.iter().find_map(|role| side_of(scope.vocabulary, subject, *role));
    let narrowed = |subject: &Subject| -> Vec<Side> {
        if is_skin && is_joint(subject) {
            return Vec::new();
        }
        if parts.is_empty() {
            return fit(subject).into_iter().collect();
        }
        parts_of(scope.vocabulary, subject, parts).iter().filter_map(fit).collect()
    };
    match who {
        Who::Named(list) => {
            let sides: Vec<Side> = list.iter().flat_map(narrowed).collect();
            // Of several subjects none may be left out.
            if sides.len() < list.len() { Vec::new() } else { sides }
        }
        Who::Above => scope.subjects.iter().map(narrowed).find(|sides| !sides.is_empty()).unwrap_or_default(),
        Who::Nobody => Vec::new(),
    }
}

/// `Flexors: hamstrings, gastrocnemius`, `opens the jaw = lateral pterygoid`: the head names a movement, and the joint, if
/// the head does not name it, stands above.
pub fn movers(scope: &Scope<'_>, (from, to): (usize, usize), head: &Head) -> Vec<Claim> {
    let Some(movement) = &head.movement else { return Vec::new() };
    let named = head.names.iter().find_map(|subject| side_of(scope.vocabulary, subject, PartRole::Joint));
    let above = || sides(scope, &Who::Above, PartRole::Joint, &[]).into_iter().next();
    let Some(joint) = named.or_else(above) else { return Vec::new() };
    sentences::values(scope, from, to, PartRole::Muscle)
        .into_iter()
        .map(|muscle| {
            let parts = vec![
                Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                Part { role: PartRole::Movement, span: movement.span, what: movement.what.clone() },
                Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
            ];
            plain(scope, ClaimKind::Action, muscle.span, parts)
        })
        .collect()
}

/// `S1-S3 -> pudendal nerve`, `C5, C6 = axillary nerve`
pub fn segments_first(scope: &Scope<'_>, (from, to): (usize, usize), segments: &Side, nouns: &[String]) -> Vec<Claim> {
    let mut owners = sentences::values(scope, from, to, PartRole::Nerve);
    if owners.is_empty() {
        owners = super::values::completed_values(scope, from, to, PartRole::Nerve, nouns);
    }
    for role in [PartRole::Muscle, PartRole::Skin] {
        if owners.is_empty() {
            owners = sentences::values(scope, from, to, role);
        }
    }
    let claims: Vec<Claim> = owners
        .into_iter()
        .map(|owner| {
            let span = segments.span.cover(owner.span);
            let parts = vec![
                Part { role: PartRole::Structure, span: owner.span, what: owner.what },
                Part { role: PartRole::Segments, span: segments.span, what: segments.what.clone() },
            ];
            plain(scope, ClaimKind::Roots, span, parts)
        })
        .collect();
    let meant = label(ClaimKind::Roots, PartRole::Segments, PartRole::Structure);
    let is_felt = claims.iter().all(|claim| {
        let structure = claim.entries(PartRole::Structure);
        structure.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Skin)
    });
    if !claims.is_empty() && (claims.len() == 1 || is_felt) && is_nothing_else(scope, from, to, meant, &claims) {
        claims
    } else {
        Vec::new()
    }
}

fn plain(scope: &Scope<'_>, kind: ClaimKind, span: Span, parts: Vec<Part>) -> Claim {
    Claim { kind, span, parts, negated: false, hedged: false, all: false, block: scope.block, key: None }
}
