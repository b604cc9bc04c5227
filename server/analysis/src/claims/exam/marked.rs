//! Lists of options of which the right ones are marked: by a tick in the box before them (`- [x] Triceps`), in bold, by a sign
//! behind them. A list of things to do has boxes too; it is an item only below a stem that asks. What stands in a list
//! below a question for one thing, none of it marked, are options of which nobody says which is right.

use std::collections::BTreeSet;

use super::items::{Item, is_emphasized};
use super::keys::keyed_claims;
use super::lines::option_label;
use super::stems::{ASKING, asked_by_verb, asks_for_one, whole_word};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::claims::Claim;
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::text::{Plain, Span};

/// Reads the marked options of a document: the claims of the marks, and the blocks of the items.
pub(super) fn read(
    blocks: &Blocks,
    knowledge: &Knowledge,
    taken: &BTreeSet<BlockIx>,
) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let (mut claims, mut consumed) = (Vec::new(), BTreeSet::new());
    let mut at = 0;
    while at < blocks.list.len() {
        let is_beside = |other: &BlockIx| {
            let (own, other) = (blocks.list.get(at), blocks.list.get(*other));
            own.zip(other).is_some_and(|(own, other)| {
                matches!(other.kind, BlockKind::Item(_))
                    && other.ticked.is_some() == own.ticked.is_some()
                    && other.parent == own.parent
                    && (own.parent.is_some() || other.heading == own.heading)
            })
        };
        let run: Vec<BlockIx> = (at..blocks.list.len()).take_while(is_beside).collect();
        let is_free = !run.iter().any(|at| taken.contains(at));
        if run.len() > 1
            && is_free
            && let Some((stem, place)) = stem_of(blocks, at).filter(|(_, place)| !taken.contains(place))
            && let Some(marked) = marked_of(blocks, &run, &stem)
        {
            claims.extend(run_claims(blocks, &marked, &stem, knowledge));
            consumed.extend(run.iter().copied());
            consumed.insert(place);
        }
        at += run.len().max(1);
    }
    (claims, consumed)
}

/// Which of the options are marked; `None` where the list is no list of options.
fn marked_of(blocks: &Blocks, run: &[BlockIx], stem: &Plain) -> Option<Vec<BlockIx>> {
    let block = |at: &BlockIx| blocks.list.get(*at);
    if run.iter().any(|at| block(at).is_some_and(|block| block.ticked.is_some())) {
        return Some(
            run.iter().copied().filter(|at| block(at).is_some_and(|block| block.ticked == Some(true))).collect(),
        );
    }
    let marked: Vec<BlockIx> =
        run.iter().copied().filter(|at| block(at).is_some_and(|block| is_marked(&block.plain))).collect();
    if marked.len() == 1 {
        return Some(marked);
    }
    let is_short = |at: &BlockIx| block(at).is_some_and(|block| block.plain.text.split_whitespace().count() <= LONGEST);
    (marked.is_empty() && asks_for_one(&stem.text) && run.len() > 2 && run.iter().all(is_short)).then(Vec::new)
}

/// An option of a list that nothing marks has no more words.
const LONGEST: usize = 6;

/// Whether an option is marked as the right one.
pub(super) fn is_marked(option: &Plain) -> bool {
    let text = option.text.trim();
    let bare = text.trim_end_matches('.');
    let has_sign = lexicon::RIGHT_MARKS.iter().any(|mark| bare.ends_with(mark) || bare.starts_with(mark));
    has_sign || is_emphasized(option)
}

/// An option without the mark that it is the right one.
pub(super) fn without_mark(option: &Plain) -> Plain {
    let text = option.text.as_str();
    let is_sign = |c: char| {
        c == '*'
            || c == ' '
            || lexicon::RIGHT_MARKS.iter().any(|mark| mark.starts_with(c) && mark.len() > 1 && !mark.starts_with('('))
    };
    let body = text.trim_end_matches('.').trim_end();
    let body = lexicon::RIGHT_MARKS.iter().find_map(|mark| body.strip_suffix(mark)).unwrap_or(text);
    let start = text.len() - text.trim_start_matches(is_sign).len();
    option.slice(Span::new(start.min(body.len()), body.len())).trimmed()
}

/// The stem of the options that begin with a block: the item that they are nested in, or what stands right before them.
fn stem_of(blocks: &Blocks, first: BlockIx) -> Option<(Plain, BlockIx)> {
    let place = blocks.list.get(first)?.parent.or_else(|| first.checked_sub(1))?;
    let block = blocks.list.get(place)?;
    let is_text = matches!(block.kind, BlockKind::Paragraph | BlockKind::Heading(_) | BlockKind::Item(_));
    let plain = block.plain.trimmed();
    let text = plain.text.trim_end_matches([')', ']']);
    let body = text.rfind(['(', '[']).filter(|_| text.len() < plain.text.len());
    let stem = plain.slice(Span::new(0, body.unwrap_or(plain.text.len()))).trimmed();
    let lower = stem.text.to_lowercase();
    let last = stem.text.trim_end_matches('.').rsplit(". ").next().unwrap_or_default();
    let asks = stem.text.ends_with('?')
        || asked_by_verb(last).is_some()
        || stem.text.contains("__")
        || asked_by_verb(&stem.text).is_some()
        || (stem.text.ends_with(':') && ASKING.iter().any(|word| whole_word(&lower, word).is_some()));
    (is_text && asks && block.ticked.is_none()).then_some((stem, place))
}

fn run_claims(blocks: &Blocks, marked: &[BlockIx], stem: &Plain, knowledge: &Knowledge) -> Vec<Claim> {
    let option = |at: &BlockIx| {
        let plain = without_mark(&blocks.list.get(*at)?.plain);
        let from = option_label(&plain.text).map_or(0, |(_, len)| len);
        let body = plain.slice(Span::new(from, plain.text.trim_end_matches('.').len()));
        Some(body.trimmed())
    };
    let item = Item { stem: stem.clone(), ..Item::default() };
    marked.iter().filter_map(|at| Some(keyed_claims(&item, (&option(at)?, *at), knowledge))).flatten().collect()
}
