//! Claims of exam items: what the keyed option says when it is put into the stem.
//!
//! Stems and options assert nothing; their blocks are taken out of the ordinary reading. Only the key asserts: the option
//! that it names takes the place of the question word, of the blank, or of the end of the stem. *EXCEPT* and *NOT* turn the
//! statement round, and so does a key *False*.
//!
//! [`lines`] tells stems, options and keys by how they begin; [`items`] puts items together from them, [`matching`] lists
//! of stems that share one list of options, [`pairs`] those that stand in tables, [`judged`] tables of statements with a verdict
//! on each, [`marked`] lists of options of which the right ones are marked; [`keys`] and [`stems`] say what a key claims; [`inline`] reads the key that
//! stands behind a statement on its own line.

pub mod inline;
mod items;
mod judged;
mod keys;
mod lines;
mod marked;
mod matching;
mod pairs;
mod stems;

use std::collections::BTreeSet;

use super::Claim;
use crate::blocks::{BlockIx, Blocks};
use crate::knowledge::Knowledge;
use crate::text::Plain;

/// Whether a text is an option of an item, by the letter with which it begins.
pub fn is_option(text: &str) -> bool {
    lines::option_label(text).is_some()
}

/// What a question claims together with its answer.
pub fn answered(question: &Plain, answer: &Plain, block: BlockIx, knowledge: &Knowledge) -> Vec<Claim> {
    let stem = stems::declarative(question, knowledge);
    let item = items::Item { stem, key: Some((answer.clone(), block)), ..items::Item::default() };
    let claims = keys::keyed_claims(&item, (answer, block), knowledge);
    claims.into_iter().map(|claim| Claim { key: None, ..claim }).collect()
}

/// Whether a text asks in the imperative: "Name the nerve that …".
pub fn asks_by_verb(text: &str) -> bool {
    stems::asked_by_verb(text).is_some()
}

/// What the two sides of a card claim of each other.
pub fn paired(front: &Plain, back: &Plain, block: BlockIx, knowledge: &Knowledge) -> Vec<Claim> {
    matching::pair_claims(front, back, block, knowledge)
}

/// An option: its label and its text.
struct Choice {
    label: String,
    plain: Plain,
}

/// Reads the items of a document: the claims of their keys, and the blocks that they are made of.
pub fn read(blocks: &Blocks, knowledge: &Knowledge) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let pairs = pairs::Pairs::of(blocks);
    let cells = pairs.cells.clone();
    let lines = lines::lines(blocks, pairs);
    let (mut claims, mut consumed) = matching::read(&lines, blocks, knowledge);
    consumed.extend(cells);
    for item in &items::items(&lines, blocks, &consumed) {
        consumed.extend(item.blocks.iter().copied());
        claims.extend(keys::key_claims(item, knowledge));
    }
    let marked = marked::read(blocks, knowledge, &consumed);
    let judged = judged::read(blocks, knowledge);
    for (own, blocks) in [marked, judged] {
        claims.extend(own);
        consumed.extend(blocks);
    }
    (claims, consumed)
}
