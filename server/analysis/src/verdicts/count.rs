//! How many there are: heads of a muscle, members of a group, parts of a plexus.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// Judges how many there are: parts of a muscle (`heads`), members of a group or parts of a plural structure (`muscles`,
/// `named`), parts of a plexus (`cords`).
pub fn count(vocabulary: &Vocabulary, id: EntryId, told: u32, noun: &str) -> Judgement {
    if !matches!(vocabulary.kind(id), Kind::Muscle | Kind::Group | Kind::Plexus | Kind::Nerve) {
        return Judgement::unknown();
    }
    if noun == "roots" {
        return count_of_roots(vocabulary, id, told);
    }
    let class = crate::lexicon::COUNTED.iter().find(|(known, _)| *known == noun).map(|(_, class)| *class);
    let counted: Vec<EntryId> = match (class, vocabulary.kind(id)) {
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
        (Some(Some(_)), _) => return Judgement::unknown(),
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
    let mut parts: Vec<EntryId> = counted.into_iter().filter(|id| !vocabulary.entry(*id).variant).collect();
    parts.sort_unstable();
    parts.dedup();
    let Ok(is) = u32::try_from(parts.len()) else { return Judgement::unknown() };
    if is < 2 || (vocabulary.kind(id) == Kind::Group && is.abs_diff(told) < 2) {
        return if is == told && is > 1 {
            Judgement::new(Verdict::Agrees, format!("{} has {is}", the(vocabulary, id)))
        } else {
            Judgement::unknown()
        };
    }
    if is == told {
        return Judgement::new(Verdict::Agrees, format!("{} has {is}", the(vocabulary, id)));
    }
    let are_numbered = parts.iter().all(|part| {
        vocabulary.name(*part).split(' ').next().is_some_and(|word| crate::lexicon::ORDINALS.contains(&word))
    });
    if noun == "named" && vocabulary.kind(id) == Kind::Muscle && !are_numbered {
        return Judgement::unknown(); // its parts are kinds, not a row that can be counted
    }
    let heads = parts
        .iter()
        .filter(|part| {
            vocabulary.entry(**part).short.as_deref().unwrap_or_default().contains(if noun == "bellies" {
                "belly"
            } else {
                noun.trim_end_matches('s')
            })
        })
        .count();
    if matches!(noun, "heads" | "head" | "bellies") && heads < parts.len() {
        return Judgement::unknown();
    }
    let names: Vec<String> = parts.iter().map(|id| vocabulary.name(*id).to_owned()).collect();
    let whole = the(vocabulary, id);
    let (is, told) = (in_words(is), in_words(told));
    let why = if noun == "named" || vocabulary.kind(id) == Kind::Group {
        format!("there are {is} in {whole}, not {told}: {}", list(&names))
    } else {
        format!("{whole} has {is} {noun}, not {told}: {}", list(&names))
    };
    Judgement::new(Verdict::Contradicts, why).remedy(PartRole::Number, is)
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
