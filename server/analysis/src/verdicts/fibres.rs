//! Which nerves carry taste and autonomic fibres, and where to.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::{Judgement, Verdict, list, the};
use crate::claims::PartRole;

/// No more nerves than these are told to carry fibres.
const MOST_TOLD: usize = 4;

/// Judges that a nerve carries fibres of a kind, to or from one of some places if any is named.
pub fn judge(vocabulary: &Vocabulary, nerve: EntryId, fibres: &str, places: &[EntryId]) -> Judgement {
    let carriers = carriers(vocabulary, fibres);
    let is_own = |id: EntryId| vocabulary.is_or_above(nerve, id);
    let is_akin = |id: EntryId| is_own(id) || vocabulary.is_or_above(id, nerve);
    let says = |note: Option<&str>| places.iter().any(|place| names(vocabulary, note, *place));
    // Where it is known for other nerves which of them serves the place, the place counts.
    if !places.is_empty() && carriers.iter().any(|(_, note)| says(*note)) {
        let mut own = carriers.iter().filter(|(id, _)| is_akin(*id));
        if own.clone().any(|(_, note)| says(*note)) {
            return agreed(vocabulary, nerve, fibres, &carriers);
        }
        let is_told = carriers.iter().any(|(id, note)| *id == nerve && note.is_some());
        if !is_told && own.any(|(_, note)| note.is_none()) {
            return Judgement::unknown();
        }
        let others: Vec<EntryId> = carriers.iter().filter(|(_, note)| says(*note)).map(|(id, _)| *id).collect();
        return against(vocabulary, nerve, fibres, &others);
    }
    if carriers.iter().any(|(id, _)| is_own(*id)) {
        return agreed(vocabulary, nerve, fibres, &carriers);
    }
    let has_others = vocabulary
        .entry(nerve)
        .facts
        .iter()
        .any(|fact| matches!(&fact.relation, Relation::Carries { fibres: held } if held != fibres));
    // Nearly every nerve has sympathetic fibres; only one that is made of others is known to have none.
    let is_known = if fibres == "sympathetic" {
        has_others && vocabulary.muscles_of(nerve).is_empty()
    } else {
        vocabulary.kind(nerve) == Kind::Nerve && vocabulary.modality(nerve).is_some()
    };
    if !is_known || carriers.iter().any(|(id, _)| is_akin(*id)) {
        return Judgement::unknown();
    }
    let all: Vec<EntryId> = carriers.iter().map(|(id, _)| *id).collect();
    against(vocabulary, nerve, fibres, &all)
}

/// Judges that such fibres are lost with a lesion of a nerve at a landmark: those that leave the nerve above it are not.
pub fn lost(vocabulary: &Vocabulary, nerve: EntryId, fibres: &str, places: &[EntryId], level: &[EntryId]) -> Judgement {
    let judgement = judge(vocabulary, nerve, fibres, places);
    let facts = &vocabulary.entry(nerve).facts;
    let passes = |at: EntryId| {
        let family: Vec<EntryId> = vocabulary.all_parts(at).into_iter().chain([at]).collect();
        facts
            .iter()
            .position(|fact| matches!(fact.relation, Relation::Passes { landmark, .. } if family.contains(&landmark)))
    };
    let Some((at, place)) = level.iter().find_map(|at| Some((*at, passes(*at)?))) else { return judgement };
    let branches = |facts: &[fascicle_model::Fact]| -> Vec<EntryId> {
        let given = facts.iter().filter_map(|fact| match fact.relation {
            Relation::Gives { nerve, .. } | Relation::ContinuesAs { nerve, .. } => Some(nerve),
            _ => None,
        });
        given.collect()
    };
    let early = branches(facts.get(..place).unwrap_or_default());
    let carriers = carriers(vocabulary, fibres);
    let mut own =
        carriers.iter().map(|(id, _)| *id).filter(|id| *id != nerve && vocabulary.is_or_above(nerve, *id)).peekable();
    let leaves = |id: EntryId| early.iter().any(|branch| vocabulary.is_or_above(*branch, id));
    if own.peek().is_none() || !own.all(leaves) || judgement.verdict == Verdict::Contradicts {
        return judgement;
    }
    let why = format!("{fibres} fibres leave {} above {}", the(vocabulary, nerve), the(vocabulary, at));
    Judgement::new(Verdict::Contradicts, why)
}

/// The nerves that carry fibres of a kind, each with what is noted of them.
fn carriers<'v>(vocabulary: &'v Vocabulary, fibres: &str) -> Vec<(EntryId, Option<&'v str>)> {
    let mut list = Vec::new();
    for (id, entry) in vocabulary.iter() {
        for fact in &entry.facts {
            if matches!(&fact.relation, Relation::Carries { fibres: held } if held == fibres) && !fact.variant {
                list.push((id, fact.note.as_deref()));
            }
        }
    }
    list
}

/// Whether a note names a place, in whatever order and number.
fn names(vocabulary: &Vocabulary, note: Option<&str>, place: EntryId) -> bool {
    let Some(note) = note.map(str::to_lowercase) else { return false };
    vocabulary.name(place).split(' ').filter(|word| word.len() > 2).all(|word| note.contains(word))
}

fn agreed(vocabulary: &Vocabulary, nerve: EntryId, fibres: &str, carriers: &[(EntryId, Option<&str>)]) -> Judgement {
    if carriers.iter().any(|(id, _)| *id == nerve) {
        return Judgement::new(Verdict::Agrees, format!("{} carries {fibres} fibres", the(vocabulary, nerve)));
    }
    Judgement::new(Verdict::LessExact, format!("a branch of {} carries them", the(vocabulary, nerve)))
}

fn against(vocabulary: &Vocabulary, nerve: EntryId, fibres: &str, others: &[EntryId]) -> Judgement {
    // Those that have them from no other of these.
    let is_first = |id: &&EntryId| !others.iter().any(|other| other != *id && vocabulary.is_or_above(*other, **id));
    let first: Vec<EntryId> = others.iter().filter(is_first).copied().take(MOST_TOLD).collect();
    let told: Vec<String> = first.iter().map(|id| the(vocabulary, *id)).collect();
    let why = format!("{fibres} fibres run in {}, not in {}", list(&told), the(vocabulary, nerve));
    let judgement = Judgement::new(Verdict::Contradicts, why);
    first.into_iter().fold(judgement, |judgement, id| judgement.remedy(PartRole::Nerve, vocabulary.name(id)))
}
