//! Whether what a block says is meant. Under *True or false?*, below *Common mistakes*, in a list that *What they wrote:*
//! leads in, beside a cross or before *(T/F)*, statements stand that nobody makes.

use std::collections::BTreeMap;

use super::exam::inline::{keyed, keyed_before};
use super::{Claim, Key};
use crate::blocks::{Block, BlockIx, BlockKind, Blocks};
use crate::lexicon;
use crate::text::{Plain, Span};

/// How the statements of each block of a section are meant.
pub struct Frames {
    meant: Vec<Meant>,
    /// Where lines of paragraphs stand that begin with the mark of something wrong, in the source.
    crossed: Vec<Span>,
}

/// How the statements of a block are meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Meant {
    /// As they stand.
    So,
    /// Nobody makes them.
    Open,
    /// They are keyed true or false at a place of the visible text.
    Keyed(bool, Span),
    /// The key stands before them.
    KeyedBefore(bool, Span),
}

impl Frames {
    /// Looks at a section's blocks, headings over it included.
    pub fn new(blocks: &Blocks) -> Self {
        let mut meant: Vec<Meant> = Vec::with_capacity(blocks.list.len());
        // The numbers of the items that are passed, each with its heading.
        let mut numbers: Vec<(u64, Option<BlockIx>)> = Vec::new();
        // The line that leads in the list whose items are passed, if it takes back what they say.
        let mut lead_in = false;
        for block in &blocks.list {
            let text = block.plain.text.as_str();
            let bare = text.trim();
            let is_open = |up: Option<BlockIx>| up.and_then(|up| meant.get(up)) == Some(&Meant::Open);
            let above = is_open(block.heading) || is_open(block.parent);
            let led_in = lead_in;
            let own = match block.kind {
                BlockKind::Heading(_) => {
                    lead_in = false;
                    is_frame(bare)
                }
                BlockKind::Title => false, // of the whole course or document; too far away
                BlockKind::Item(_) | BlockKind::Cell { .. } => lead_in || is_taken_back(bare),
                // "a) …" goes on with the list though it is no list of Markdown.
                BlockKind::Paragraph if lead_in && is_lettered(bare) => true,
                _ => {
                    let count = bare.split_whitespace().count();
                    let leads = bare.ends_with([':', '?'])
                        || count <= LONGEST_LINE
                        || (count <= LONGEST_INSTRUCTION && lexicon::instructs_to_judge(bare));
                    lead_in = leads && is_frame(bare);
                    lead_in || is_taken_back(bare)
                }
            };
            // Below "5. True or false?" the statements stand in a list of its own.
            let leads = matches!(block.kind, BlockKind::Item(_)) && bare.split_whitespace().count() <= LONGEST_ITEM;
            let is_nested = matches!(block.kind, BlockKind::Item(_)) || block.parent.is_some();
            let own = own || leads && asks_to_judge(bare) || is_nested && bare.ends_with([':', '?']) && is_frame(bare);
            let is_line = matches!(block.kind, BlockKind::Item(_) | BlockKind::Paragraph);
            let before = || if is_line && (above || led_in) { keyed_before(text) } else { None };
            let is_explained = is_numbered_again(block, &numbers) || is_below_statement(block, blocks);
            if let BlockKind::Item(Some(number)) = block.kind {
                numbers.push((number, block.heading));
            }
            meant.push(match (keyed(text, above || own), before().filter(|_| !is_explained)) {
                (Some((is_true, at)), _) => Meant::Keyed(is_true, at),
                (None, Some((is_true, at))) => Meant::KeyedBefore(is_true, at),
                (None, None) if above || own => Meant::Open,
                (None, None) => Meant::So,
            });
        }
        open_lists(blocks, &mut meant);
        Self { meant, crossed: blocks.list.iter().flat_map(crossed_lines).collect() }
    }

    /// Where the visible text of a block goes on behind the key of what it states.
    pub fn end_of_key(&self, block: BlockIx) -> Option<usize> {
        match self.meant.get(block) {
            Some(Meant::Keyed(_, at) | Meant::KeyedBefore(_, at)) => Some(at.end),
            _ => None,
        }
    }

    /// Keeps the claims that are made. What is keyed on its own line becomes what its key says.
    pub fn settle(&self, claims: Vec<Claim>, blocks: &Blocks) -> Vec<Claim> {
        let meant = |claim: &Claim| match self.meant.get(claim.block).copied().unwrap_or(Meant::So) {
            // What explains a key is said as it stands.
            Meant::Keyed(_, at) if explains(claim, at, blocks) => Meant::So,
            meant => meant,
        };
        let mut count: BTreeMap<BlockIx, usize> = BTreeMap::new();
        for claim in claims.iter().filter(|claim| meant(claim) != Meant::So) {
            *count.entry(claim.block).or_default() += 1;
        }
        let settled = |mut claim: Claim| {
            let (is_true, at) = match meant(&claim) {
                Meant::So => return Some(claim),
                Meant::Open => return None,
                Meant::Keyed(is_true, at) | Meant::KeyedBefore(is_true, at) => (is_true, at),
            };
            // Of several statements on a line that is keyed false, any one may be the false one.
            if !is_true && count.get(&claim.block).is_some_and(|count| *count > 1) {
                return None;
            }
            let span = blocks.list.get(claim.block)?.plain.to_source(at);
            claim.negated ^= !is_true;
            claim.key = Some(Box::new(Key { span, options: Vec::new(), part: None }));
            claim.span = span;
            Some(claim)
        };
        let is_crossed = |claim: &Claim| self.crossed.iter().any(|line| line.contains(claim.span));
        claims.into_iter().filter(|claim| !is_crossed(claim)).filter_map(settled).collect()
    }
}

/// The lines of a paragraph that begin with the mark of something wrong: "✔ …", "✘ …" below one another.
fn crossed_lines(block: &Block) -> Vec<Span> {
    let lines = if block.kind == BlockKind::Paragraph { block.plain.lines() } else { Vec::new() };
    let is_crossed = |line: &Plain| {
        let lower = line.text.trim_start().to_lowercase();
        lexicon::TAKEN_BACK_BEFORE.iter().any(|mark| lower.starts_with(mark))
    };
    let crossed = lines.iter().filter(|line| lines.len() > 1 && is_crossed(line));
    crossed.map(|line| line.to_source(Span::new(0, line.text.len()))).collect()
}

/// Whether an item has the number of one that stands further up under the same heading: it may explain the key of that one.
fn is_numbered_again(block: &Block, numbers: &[(u64, Option<BlockIx>)]) -> bool {
    matches!(block.kind, BlockKind::Item(Some(number)) if numbers.contains(&(number, block.heading)))
}

/// How many items of a list must wait for a verdict, so that the others do as well.
const OPEN_ITEMS: usize = 2;

/// "- … T/F", "- T/F: …", "- F …": what stands in a list of statements to be judged is such a statement, however it is marked.
fn open_lists(blocks: &Blocks, meant: &mut [Meant]) {
    let is_item = |at: usize| blocks.list.get(at).is_some_and(|block| matches!(block.kind, BlockKind::Item(_)));
    let mut from = 0;
    while from < meant.len() {
        let to = (from..meant.len()).find(|at| !is_item(*at)).unwrap_or(meant.len());
        let list = meant.get_mut(from..to).unwrap_or_default();
        if list.iter().filter(|meant| **meant != Meant::So).count() >= OPEN_ITEMS {
            list.iter_mut().filter(|meant| **meant == Meant::So).for_each(|meant| *meant = Meant::Open);
        }
        from = to.max(from) + 1;
    }
}

/// Whether an item is nested in one that states something: it explains how that is judged.
fn is_below_statement(block: &Block, blocks: &Blocks) -> bool {
    let above = block.parent.and_then(|above| blocks.list.get(above));
    above.is_some_and(|above| matches!(above.kind, BlockKind::Item(_)) && !asks_to_judge(above.plain.text.trim()))
}

/// Whether a claim stands behind the key of its block.
fn explains(claim: &Claim, key: Span, blocks: &Blocks) -> bool {
    blocks.list.get(claim.block).is_some_and(|block| block.plain.to_source(key).end <= claim.span.start)
}

/// Whether a line begins with a letter or number and a bracket.
fn is_lettered(text: &str) -> bool {
    let text = text.trim_start_matches('(');
    text.split_once(')')
        .is_some_and(|(letter, _)| (1..3).contains(&letter.len()) && letter.chars().all(char::is_alphanumeric))
}

/// A line of more words that does not end with a colon is a statement, no heading of a list.
const LONGEST_LINE: usize = 8;

/// A paragraph that tells what to do with the list below it has no more words.
const LONGEST_INSTRUCTION: usize = 30;

/// A line of a list that leads in the list below it has no more words.
const LONGEST_ITEM: usize = 12;

/// Whether a line asks to judge what stands below it.
fn asks_to_judge(text: &str) -> bool {
    let lower = text.to_lowercase();
    lexicon::FRAMES.iter().any(|phrase| lower.contains(phrase))
}

/// Whether words that stand over others take back what these say.
fn is_frame(text: &str) -> bool {
    let lower = text.to_lowercase();
    if lexicon::tells_of_failing(text) {
        return false;
    }
    asks_to_judge(text) || lower.split(|c: char| !c.is_alphanumeric()).any(lexicon::is_frame_word)
}

/// Whether a line carries the mark of something to be judged, or judged wrong.
fn is_taken_back(text: &str) -> bool {
    let lower = text.to_lowercase();
    lower.ends_with("__")
        || lexicon::TAKEN_BACK_BEFORE.iter().any(|mark| lower.starts_with(mark))
        || ends_with_one_of(&lower, lexicon::TAKEN_BACK_BEHIND)
}

/// Whether a text ends with one of some marks, brackets and full stops aside.
fn ends_with_one_of(text: &str, marks: &[&str]) -> bool {
    let bare = text.trim_end_matches(['.', ' ', ')', ']', '*', '_']);
    let stands_free = |rest: &str| rest.ends_with([' ', '(', '[', '—', '–', '→']);
    marks.iter().any(|mark| bare.strip_suffix(mark).is_some_and(stands_free))
}
