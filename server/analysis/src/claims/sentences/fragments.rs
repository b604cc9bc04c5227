//! Predicates without their verb: "Ulnar nerve: a branch of the medial cord", and below a heading or behind a name that
//! stands alone "The longest branch of the plexus." What is understood is *is*; an atom that says so is put in its place, and
//! the sentence is read like any other.

use super::Scope;
use super::atoms::{Atom, AtomKind};
use crate::claims::phrases::MovementForm;
use crate::lexicon::{self, Form};
use crate::words::lower;

/// The verb that is understood.
const COPULA: &str = "is";

/// Puts the copula in where a sentence is a predicate without one.
pub(super) fn add_copula(scope: &Scope<'_>, atoms: &mut Vec<Atom>) {
    let word = |at: usize| atoms.get(at).map_or("", |atom| &*atom.word);
    let mut at = 0;
    while lexicon::is_bullet(word(at)) {
        at += 1;
    }
    if opens_predicate(scope, atoms, at) {
        let place = atoms.get(at).map_or(0, |atom| atom.from);
        atoms.insert(at, Atom { kind: AtomKind::Word, from: place, to: place + 1, word: COPULA.to_owned() });
        return;
    }
    // "Ulnar nerve: a branch …", "The ulnar nerve, a branch …" is read as it stands.
    if lexicon::is_determiner(word(at)) {
        at += 1;
    }
    let is_name = matches!(atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Name(_)));
    if is_name
        && lexicon::is_value_sign(word(at + 1))
        && opens_predicate(scope, atoms, at + 2)
        && let Some(sign) = atoms.get_mut(at + 1)
    {
        COPULA.clone_into(&mut sign.word);
    }
}

/// Whether a predicate without a verb begins at an atom: "a branch of", "the longest branch of", "chief flexor of".
fn opens_predicate(scope: &Scope<'_>, atoms: &[Atom], at: usize) -> bool {
    // By their tokens: "a branch of" is one phrase.
    let first = atoms.get(at).map_or(usize::MAX, |atom| atom.from);
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let word = |at: usize| lower(token(at));
    let is_name = matches!(atoms.get(at).map(|atom| &atom.kind), Some(AtomKind::Name(_)));
    let opens = !is_name
        && (matches!(&*word(first), "a" | "an" | "one" | "between")
            || lexicon::sets_off_one(&word(first))
            || (word(first) == "the" && lexicon::sets_off_one(&word(first + 1))));
    let is_verb = |atom: &Atom| match &atom.kind {
        AtomKind::Relation(relation) => relation.form == Form::Verb,
        AtomKind::Movement(movement) => movement.form == MovementForm::Verb,
        _ => lexicon::is_auxiliary(&atom.word) || lexicon::is_link(&atom.word),
    };
    let ends = |atom: &Atom| matches!(&*atom.word, "," | ";" | ":" | "(") || lexicon::is_relative(&atom.word);
    let has_verb = atoms.iter().skip(at).take_while(|atom| !ends(atom)).any(is_verb);
    // "A second:" leads in what follows.
    let leads_in = || atoms.iter().skip(at).find(|atom| ends(atom)).is_some_and(|atom| atom.word == ":");
    opens && !has_verb && !leads_in()
}
