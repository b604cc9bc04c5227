//! From a verdict to a finding: the sentence for a colleague, the path, the fix.

use fascicle_model::{Entry, EntryId, Kind, Vocabulary};

use super::{Judgement, Verdict};
use crate::claims::phrases::verb_forms;
use crate::claims::{Claim, ClaimKind, Key, PartRole, What};
use crate::findings::{Edit, Finding, FindingKind, Fix, Severity};
use crate::text::Span;

/// The code of a contradicted claim.
const fn code(kind: ClaimKind) -> &'static str {
    match kind {
        ClaimKind::Supply => "supply-differs",
        ClaimKind::Roots => "roots-differ",
        ClaimKind::Branching => "origin-differs",
        ClaimKind::Renaming => "renaming-differs",
        ClaimKind::Action => "action-differs",
        ClaimKind::Modality => "modality-differs",
        ClaimKind::Skin => "skin-differs",
        ClaimKind::Passage => "passage-differs",
        ClaimKind::Attachment => "attachment-differs",
        ClaimKind::Joint => "joint-differs",
        ClaimKind::Membership => "membership-differs",
        ClaimKind::Count => "count-differs",
        ClaimKind::Deficit => "deficit-differs",
    }
}

/// The code of segments that the course's reference tells otherwise, though another source has them.
const ROOTS_BY_ANOTHER_SOURCE: &str = "roots-by-another-source";

/// The finding that a judged claim makes, if it makes one. `text` is the source.
pub fn finding(claim: &Claim, judgement: &Judgement, vocabulary: &Vocabulary, text: &str) -> Option<Finding> {
    // A reading that another source has is right; a course that has adopted one source may want to know of it.
    let by_another_source = judgement.verdict == Verdict::Variant
        && claim.kind == ClaimKind::Roots
        && vocabulary.adopted().is_some()
        && !judgement.remedies.is_empty();
    if judgement.verdict != Verdict::Contradicts && !by_another_source {
        return None;
    }
    let severity = match claim.kind {
        _ if by_another_source => Severity::Hint,
        ClaimKind::Roots | ClaimKind::Attachment | ClaimKind::Membership | ClaimKind::Passage | ClaimKind::Skin => {
            Severity::Warning
        }
        _ => Severity::Error,
    };
    if let Some(key) = claim.key.as_ref().filter(|_| !by_another_source) {
        return Some(key_finding(claim, key, judgement, vocabulary));
    }
    let fixes =
        judgement.remedies.iter().filter_map(|(role, with)| fix(claim, *role, with, text, vocabulary)).collect();
    let related = claim
        .parts
        .iter()
        .filter(|part| !claim.span.overlaps(part.span))
        .filter_map(|part| match &part.what {
            What::Entry(ids) => {
                Some((part.span, format!("the statement is read of {}", vocabulary.name(*ids.first()?))))
            }
            _ => None,
        })
        .collect();
    let mut reason = judgement.path.clone();
    if claim.kind == ClaimKind::Deficit {
        reason.push(CAUTION.to_owned());
    }
    Some(Finding {
        code: if by_another_source { ROOTS_BY_ANOTHER_SOURCE } else { code(claim.kind) },
        kind: FindingKind::Claim,
        severity,
        span: claim.span,
        message: sentence(&judgement.why),
        reason,
        related,
        fixes,
        candidates: Vec::new(),
    })
}

/// What is said beside every deficit.
const CAUTION: &str = "For teaching, not for diagnosis or treatment: people and lesions vary, and the course's adopted reference, \
                       local rules and licensed practice decide.";

/// The finding of a key that names the wrong option.
fn key_finding(claim: &Claim, key: &Key, judgement: &Judgement, vocabulary: &Vocabulary) -> Finding {
    let mut fixes = Vec::new();
    for (shown, what) in &key.options {
        let mut other = claim.clone();
        let Some(part) = key.part.and_then(|part| other.parts.get_mut(part)) else { break };
        if part.what == *what {
            continue;
        }
        part.what = what.clone();
        if matches!(super::judge(&other, vocabulary).verdict, Verdict::Agrees | Verdict::LessExact) {
            let edits = vec![Edit { span: key.span, text: shown.clone() }];
            fixes.push(Fix { title: format!("Key “{shown}”"), edits, safe: false });
        }
    }
    if key.part.is_none() {
        let text = if claim.negated { "True" } else { "False" };
        let edits = vec![Edit { span: key.span, text: text.to_owned() }];
        fixes.push(Fix { title: format!("Key “{text}”"), edits, safe: false });
    }
    let related = claim
        .parts
        .iter()
        .filter_map(|part| match &part.what {
            What::Entry(ids) => Some((part.span, format!("the key speaks of {}", vocabulary.name(*ids.first()?)))),
            _ => None,
        })
        .collect();
    Finding {
        code: "key-differs",
        kind: FindingKind::Item,
        severity: Severity::Error,
        span: claim.span,
        message: format!("The key does not hold: {}.", judgement.why.trim_end_matches('.')),
        reason: judgement.path.clone(),
        related,
        fixes,
        candidates: Vec::new(),
    }
}

/// Capital at the beginning, full stop at the end.
fn sentence(why: &str) -> String {
    let mut chars = why.chars();
    let mut text: String = chars.next().map(|first| first.to_uppercase().chain(chars).collect()).unwrap_or_default();
    if !text.ends_with(['.', '!', '?']) {
        text.push('.');
    }
    text
}

/// A fix that puts another text in the place of a part, where the part stands within the claim.
fn fix(claim: &Claim, role: PartRole, with: &str, text: &str, vocabulary: &Vocabulary) -> Option<Fix> {
    let part = claim.part(role)?;
    if !claim.span.contains(part.span) {
        return None;
    }
    let written = part.span.of(text);
    if written.contains(['*', '_', '[', '`', '\n', '|']) {
        return None;
    }
    let ids = claim.entries(role);
    let with = adapt(written, with, part.span, text, role, ids, vocabulary)?;
    let edits = vec![Edit { span: part.span, text: with.clone() }];
    Some(Fix { title: format!("Write “{with}”"), edits, safe: false })
}

/// Keeps what the author's wording needs: the capital, a noun that a neighbour carries, the dash of a range.
fn adapt(
    written: &str,
    with: &str,
    span: Span,
    text: &str,
    role: PartRole,
    ids: &[EntryId],
    vocabulary: &Vocabulary,
) -> Option<String> {
    let mut with = of_the_same_standing(written, with, ids, vocabulary).unwrap_or_else(|| with.to_owned());
    match role {
        PartRole::Nerve | PartRole::Parent => {
            let lower = written.to_lowercase();
            if !lower.contains("nerve") && with.ends_with(" nerve") && !written.contains(' ') {
                with.truncate(with.len() - " nerve".len());
            }
        }
        PartRole::Segments if written.contains('-') => with = with.replace('–', "-"),
        PartRole::Movement => with = of_the_same_form(written, &with, ids, vocabulary)?,
        _ => {}
    }
    let starts_sentence = written.starts_with(char::is_uppercase)
        && text
            .get(..span.start)
            .is_none_or(|before| before.trim_end().is_empty() || !before.ends_with(char::is_alphabetic));
    if starts_sentence && role != PartRole::Segments && written.chars().skip(1).any(char::is_lowercase) {
        let mut chars = with.chars();
        with = chars.next().map(|first| first.to_uppercase().chain(chars).collect()).unwrap_or_default();
    }
    Some(with)
}

/// The name of another structure that has the standing of the one that the author chose: short for short, abbreviation for
/// abbreviation.
fn of_the_same_standing(written: &str, with: &str, ids: &[EntryId], vocabulary: &Vocabulary) -> Option<String> {
    let folded = written.to_lowercase();
    let chosen = ids
        .iter()
        .flat_map(|id| vocabulary.entry(*id).names.iter().skip(1))
        .find(|name| name.text.to_lowercase() == folded)?;
    let (_, other) = vocabulary.iter().find(|(_, entry)| entry.name() == with)?;
    other
        .names
        .iter()
        .skip(1)
        .find(|name| name.standing == chosen.standing && !name.ambiguous)
        .map(|name| name.text.clone())
}

/// The word for another movement in the form of the one that stands there: a noun for a noun, a verb for a verb.
fn of_the_same_form(written: &str, with: &str, ids: &[EntryId], vocabulary: &Vocabulary) -> Option<String> {
    let folded = written.to_lowercase();
    let is_name = |id: &EntryId| vocabulary.entry(*id).names.iter().any(|name| name.text.to_lowercase() == folded);
    if ids.iter().any(is_name) {
        return Some(with.to_owned());
    }
    let forms = |entry: &Entry| -> Vec<String> {
        let Some((verb, agent)) = &entry.verb else { return Vec::new() };
        let verbs = verb_forms(verb).into_iter().flatten();
        verbs.chain([agent.clone(), format!("{agent}s")]).collect()
    };
    let at = ids.iter().find_map(|id| forms(vocabulary.entry(*id)).iter().position(|form| *form == folded))?;
    let (_, other) = vocabulary.iter().find(|(_, entry)| entry.kind == Kind::Movement && entry.name() == with)?;
    forms(other).into_iter().nth(at)
}
