//! How many there are: heads of a muscle, members of a group, parts of a plexus, bones and axes of a joint.
//!
//! The vocabulary tells some numbers outright (`counts`); others are counted in the graph, where what is counted there is
//! all there is.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// Judges how many there are: parts of a muscle (`heads`), members of a group or parts of a plural structure (`muscles`,
/// `named`), parts of a plexus (`cords`). `outright`: the text says so; else it takes the number for known, and a smaller one
/// may mean some of them.
pub fn count(vocabulary: &Vocabulary, id: EntryId, told: u32, noun: &str, outright: bool) -> Judgement {
    let judgement = of_all(vocabulary, id, told, noun);
    let may_be_some = !outright && noun != "heads" && noun != "bellies";
    if judgement.verdict == Verdict::Contradicts && may_be_some && is_fewer(vocabulary, id, told, noun) {
        return Judgement::unknown();
    }
    judgement
}

/// Whether the vocabulary knows how many of what a noun counts a structure has.
pub fn is_counted(vocabulary: &Vocabulary, id: EntryId, noun: &str) -> bool {
    let is_row = |parts: Vec<EntryId>| parts.len() > 1 && parts.iter().all(|part| is_numbered(vocabulary, *part));
    if noun == "named" && vocabulary.kind(id) == Kind::Muscle {
        return counted(vocabulary, id, noun).is_some_and(is_row);
    }
    if noun == "roots" {
        return vocabulary.kind(id) == Kind::Plexus && !vocabulary.roots_of(id).is_empty();
    }
    let in_graph = || match crate::lexicon::owner_of_counted(noun) {
        PartRole::Muscle => vocabulary.kind(id) == Kind::Muscle,
        PartRole::Nerve => matches!(vocabulary.kind(id), Kind::Plexus | Kind::Nerve),
        _ => false,
    };
    !numbers_of(vocabulary, id, noun).is_empty()
        || (in_graph() && counted(vocabulary, id, noun).is_some_and(|parts| parts.len() > 1))
}

/// Whether a structure has more of what a noun counts than is told.
pub fn is_fewer(vocabulary: &Vocabulary, id: EntryId, told: u32, noun: &str) -> bool {
    let numbers = numbers_of(vocabulary, id, noun);
    let all = numbers.iter().map(|(number, _)| *number).max();
    told < all.unwrap_or_else(|| counted(vocabulary, id, noun).map_or(0, |parts| parts.len() as u32))
}

/// Whether a number is so many times that of what a noun counts: both sides of the body have twice as many.
pub fn is_times(vocabulary: &Vocabulary, id: EntryId, told: u32, noun: &str, times: u32) -> bool {
    numbers_of(vocabulary, id, noun).iter().any(|(number, _)| number * times == told)
        || counted(vocabulary, id, noun).is_some_and(|parts| parts.len() as u32 * times == told)
}

/// Judges a number that is said to be that of all.
fn of_all(vocabulary: &Vocabulary, id: EntryId, told: u32, noun: &str) -> Judgement {
    let kind = vocabulary.kind(id);
    if noun == "axes" {
        return axes(vocabulary, id, told);
    }
    let numbers = numbers_of(vocabulary, id, noun);
    if let Some((number, noun)) = numbers.first() {
        let whole = the(vocabulary, id);
        if numbers.iter().any(|(number, _)| *number == told) {
            return Judgement::new(Verdict::Agrees, format!("{whole} has {} {noun}", in_words(told)));
        }
        let names = counted(vocabulary, id, noun).unwrap_or_default();
        let names = if names.len() == *number as usize { names_of(vocabulary, &names) } else { String::new() };
        let (is, told) = (in_words(*number), in_words(told));
        let why = if kind == Kind::Group {
            if whole.ends_with('s') || whole.contains("muscles") {
                format!("{whole} are {is}, not {told}{names}")
            } else {
                format!("there are {is} {noun} in {whole}, not {told}{names}")
            }
        } else {
            format!("{whole} has {is} {noun}, not {told}{names}")
        };
        return Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Number, in_words(*number));
    }
    if !matches!(kind, Kind::Muscle | Kind::Group | Kind::Plexus | Kind::Nerve) {
        return Judgement::unknown();
    }
    if noun == "roots" {
        return count_of_roots(vocabulary, id, told);
    }
    let Some(parts) = counted(vocabulary, id, noun) else { return Judgement::unknown() };
    let Ok(is) = u32::try_from(parts.len()) else { return Judgement::unknown() };
    let whole = the(vocabulary, id);
    // Parts that not everybody has may be counted or not.
    let all = vocabulary.parts(id).len() as u32;
    if is < told && told <= all {
        return Judgement::unknown();
    }
    if is == told && is > 1 {
        return Judgement::new(Verdict::Agrees, format!("{whole} has {is}"));
    }
    if is < 2 || kind == Kind::Group {
        return Judgement::unknown(); // only a number that the vocabulary tells says that the members are all there are
    }
    if noun == "named" && kind == Kind::Muscle && !parts.iter().all(|part| is_numbered(vocabulary, *part)) {
        return Judgement::unknown(); // its parts are kinds, not a row that can be counted
    }
    let singular = crate::lexicon::one_part(noun);
    let is_called_so =
        |part: &&EntryId| vocabulary.entry(**part).short.as_deref().unwrap_or_default().contains(singular);
    if matches!(noun, "heads" | "bellies") && !parts.iter().all(|part| is_called_so(&part)) {
        return Judgement::unknown();
    }
    let names = names_of(vocabulary, &parts);
    let (is, told) = (in_words(is), in_words(told));
    let why = if noun == "named" {
        format!("there are {is} in {whole}, not {told}{names}")
    } else {
        format!("{whole} has {is} {noun}, not {told}{names}")
    };
    Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Number, is)
}

/// Whether a part is one of a row that is counted: "*third* lumbrical".
fn is_numbered(vocabulary: &Vocabulary, part: EntryId) -> bool {
    let first = vocabulary.name(part).split(' ').next();
    first.is_some_and(|word| crate::lexicon::ORDINALS.contains(&word))
}

/// The names of parts behind a colon.
fn names_of(vocabulary: &Vocabulary, parts: &[EntryId]) -> String {
    let names: Vec<String> = parts.iter().map(|id| vocabulary.name(*id).to_owned()).collect();
    if names.is_empty() { String::new() } else { format!(": {}", list(&names)) }
}

/// The numbers that the vocabulary tells of a structure, the usual one first, each with its noun. `named` is any noun of
/// whole structures.
fn numbers_of<'v>(vocabulary: &'v Vocabulary, id: EntryId, noun: &str) -> Vec<(u32, &'v str)> {
    let entry = vocabulary.entry(id);
    // A hand is none of its bones.
    let is_region = entry.class.as_deref() == Some("moved part");
    let is_meant = |of: &str| of == noun || (noun == "named" && !is_region && matches!(of, "muscles" | "bones"));
    let told = entry.facts.iter().filter_map(|fact| match &fact.relation {
        Relation::Count { of, number } if is_meant(of) => Some((u32::from(*number), &**of)),
        _ => None,
    });
    told.collect()
}

/// What the graph has of what a noun counts; `None` where it does not hold such things.
fn counted(vocabulary: &Vocabulary, id: EntryId, noun: &str) -> Option<Vec<EntryId>> {
    let class = crate::lexicon::COUNTED.iter().find(|known| known.noun == noun).map(|known| known.class);
    let all: Vec<EntryId> = match (class, vocabulary.kind(id)) {
        (Some(Some(class)), Kind::Plexus) => vocabulary
            .descendants(id)
            .into_iter()
            .chain(vocabulary.all_parts(id))
            .filter(|part| vocabulary.entry(*part).class.as_deref() == Some(class))
            .collect(),
        // The branches that are called so ("ophthalmic division")
        (Some(Some(class)), Kind::Nerve) => {
            let is_called = |id: &EntryId| {
                vocabulary.entry(*id).names.iter().any(|name| name.text.split(' ').any(|word| word == class))
            };
            let mut branches = vocabulary.usual_branches(id);
            branches.extend_from_slice(vocabulary.parts(id));
            branches.retain(is_called);
            branches
        }
        (Some(Some(_)), _) => return None,
        // Of branches, tendons and the like the graph need not hold all.
        _ if matches!(
            noun,
            "branches"
                | "terminal branches"
                | "tendons"
                | "layers"
                | "bones"
                | "columns"
                | "phalanges"
                | "pairs"
                | "compartments"
                | "nerves"
                | "cranial nerves"
        ) =>
        {
            return None;
        }
        // A member that is only a part stands for its muscle.
        (_, Kind::Group) => vocabulary
            .members(id)
            .into_iter()
            .map(|member| {
                let wholes = vocabulary.wholes(member);
                wholes.into_iter().rfind(|id| vocabulary.kind(*id) == Kind::Muscle).unwrap_or(member)
            })
            .collect(),
        _ => vocabulary.parts(id).to_vec(),
    };
    let mut parts: Vec<EntryId> = all.into_iter().filter(|id| !vocabulary.entry(*id).variant).collect();
    parts.sort_unstable();
    parts.dedup();
    Some(parts)
}

/// A joint has as many axes as its kind gives it.
fn axes(vocabulary: &Vocabulary, id: EntryId, told: u32) -> Judgement {
    let kinds = vocabulary.entry(id).facts.iter().filter_map(|fact| match &fact.relation {
        Relation::JointKind { subtype, .. } => Some(subtype.as_deref().unwrap_or_default()),
        _ => None,
    });
    let axes_of = |kind: &str| match kind {
        "hinge" | "pivot" => Some(1),
        "condyloid" | "saddle" => Some(2),
        "ball and socket" => Some(3),
        _ => None,
    };
    let known: Option<Vec<(u32, &str)>> = kinds.map(|kind| axes_of(kind).map(|number| (number, kind))).collect();
    let Some(known) = known.filter(|_| vocabulary.kind(id) == Kind::Joint) else { return Judgement::unknown() };
    let Some((is, kind)) = known.first() else { return Judgement::unknown() };
    let why = format!("{} is a {kind} joint and moves about {} ", the(vocabulary, id), in_words(*is));
    let why = if *is == 1 { format!("{why}axis") } else { format!("{why}axes") };
    if known.iter().any(|(number, _)| *number == told) {
        return Judgement::new(Verdict::Agrees, why);
    }
    Judgement::new(Verdict::Contradicts, format!("{why}, not {}", in_words(told)))
        .remedy(PartRole::Number, in_words(*is))
}

/// A number as a text writes it.
fn in_words(number: u32) -> String {
    crate::lexicon::NUMBERS.get(number as usize).map_or_else(|| number.to_string(), |word| (*word).to_owned())
}

/// A plexus has as many roots as main segments; lesser ones may be counted or not.
fn count_of_roots(vocabulary: &Vocabulary, id: EntryId, told: u32) -> Judgement {
    let readings = vocabulary.roots_of(id);
    if vocabulary.kind(id) != Kind::Plexus || readings.is_empty() {
        return Judgement::unknown();
    }
    if let Some(reading) = readings.iter().find(|reading| (reading.main.len()..=reading.all().len()).contains(&told)) {
        let verdict = if reading.fact.variant { Verdict::Variant } else { Verdict::Agrees };
        return Judgement::new(verdict, format!("{} has {}", the(vocabulary, id), in_words(told)));
    }
    let is = in_words(readings.first().map_or(0, |reading| reading.main.len()));
    let why = format!("{} has {is} roots, not {}", the(vocabulary, id), in_words(told));
    Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Number, is)
}
