//! Matching sets in tables: numbered stems in one column, lettered options in another, so that what stands in a row does not
//! belong together. The rows assert nothing; as lines of stems and of options they are read with the key, like any other set.

use std::collections::{BTreeMap, BTreeSet};

use super::lines::{Line, numbered};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::lexicon;
use crate::text::{Plain, Span};

/// The matching sets in the tables of a document.
#[derive(Default)]
pub(super) struct Pairs {
    /// For the first cell of each the lines that it stands for.
    pub(super) lines: BTreeMap<BlockIx, Vec<Line>>,
    /// All cells of the sets.
    pub(super) cells: BTreeSet<BlockIx>,
}

impl Pairs {
    /// Looks for them.
    pub(super) fn of(blocks: &Blocks) -> Self {
        let mut tables: BTreeMap<u32, Vec<BlockIx>> = BTreeMap::new();
        for (at, block) in blocks.list.iter().enumerate() {
            if let BlockKind::Cell { table, .. } = block.kind {
                tables.entry(table).or_default().push(at);
            }
        }
        let mut pairs = Self::default();
        for cells in tables.values() {
            let Some(first) = cells.first() else { continue };
            let table = Table::new(blocks, cells);
            let options = table.options();
            if options.is_none() && !is_led_in(blocks, *first) {
                continue;
            }
            pairs.cells.extend(cells);
            pairs.lines.insert(*first, options.map(|options| table.lines(&options)).unwrap_or_default());
        }
        pairs
    }
}

/// Whether the line before a table asks to match what stands in it.
fn is_led_in(blocks: &Blocks, first: BlockIx) -> bool {
    let before = first.checked_sub(1).and_then(|at| blocks.list.get(at));
    let is_text = |kind| matches!(kind, BlockKind::Paragraph | BlockKind::Heading(_) | BlockKind::Item(_));
    before.filter(|block| is_text(block.kind)).is_some_and(|block| {
        block.plain.text.split(|c: char| !c.is_alphabetic()).any(|word| lexicon::asks_to_match(&word.to_lowercase()))
    })
}

struct Table<'a> {
    blocks: &'a Blocks,
    /// The cells below the header that are not empty, by row and column.
    rows: BTreeMap<u32, BTreeMap<u32, BlockIx>>,
}

/// Where the options of a set stand.
struct Options {
    /// The column of their letters.
    letters: u32,
    /// The letters stand in cells of their own, the options in the next column.
    apart: bool,
}

impl<'a> Table<'a> {
    fn new(blocks: &'a Blocks, cells: &[BlockIx]) -> Self {
        let mut rows: BTreeMap<u32, BTreeMap<u32, BlockIx>> = BTreeMap::new();
        for at in cells {
            let Some(block) = blocks.list.get(*at) else { continue };
            if let BlockKind::Cell { row, column, .. } = block.kind
                && row > 0
                && !block.plain.text.trim().is_empty()
            {
                rows.entry(row).or_default().insert(column, *at);
            }
        }
        Self { blocks, rows }
    }

    fn plain(&self, at: BlockIx) -> Option<Plain> {
        self.blocks.list.get(at).map(|block| block.plain.trimmed())
    }

    /// The column behind the first whose cells are lettered in order.
    fn options(&self) -> Option<Options> {
        let last = self.rows.values().flat_map(BTreeMap::keys).max().copied()?;
        (1..=last).find_map(|column| {
            let cells: Vec<Plain> =
                self.rows.values().filter_map(|row| row.get(&column)).filter_map(|at| self.plain(*at)).collect();
            let letters: Vec<(char, usize)> = cells.iter().filter_map(|cell| letter(&cell.text)).collect();
            let is_row = letters.windows(2).all(|pair| matches!(pair, [(a, _), (b, _)] if *b as u32 == *a as u32 + 1));
            let apart = letters.iter().zip(&cells).all(|((_, len), cell)| *len == cell.text.len());
            let inside = letters.iter().zip(&cells).all(|((_, len), cell)| *len < cell.text.len());
            let is_set =
                letters.len() > 1 && letters.len() == cells.len() && is_row && (inside || (apart && column < last));
            is_set.then_some(Options { letters: column, apart })
        })
    }

    /// The lines of options, then those of stems: behind a stem a list of options would be its own.
    fn lines(&self, options: &Options) -> Vec<Line> {
        let mut stems = Vec::new();
        let mut lettered = Vec::new();
        for (count, row) in self.rows.values().enumerate() {
            let value = if options.apart { options.letters + 1 } else { options.letters };
            let cell = |column: u32| row.get(&column).and_then(|at| Some((*at, self.plain(*at)?)));
            if let Some((block, plain)) = cell(options.letters)
                && let Some((letter, len)) = letter(&plain.text)
                && let Some((_, option)) = if options.apart { cell(value) } else { Some((block, plain.clone())) }
            {
                let body =
                    if options.apart { option } else { option.slice(Span::new(len, option.text.len())).trimmed() };
                let mut line = Plain::default();
                let place = body.to_source(Span::new(0, body.text.len())).start;
                line.push_as(&format!("{letter}) "), Span::new(place, place));
                line.append(&body);
                lettered.push(Line { block, plain: line, number: None, nested: false, in_table: true });
            }
            let stem = row.iter().filter(|(column, _)| **column < options.letters).map(|(_, at)| *at);
            let mut number = None;
            let mut text = None;
            for at in stem {
                let Some(plain) = self.plain(at) else { continue };
                let (own, len) = numbered(&plain.text).or_else(|| spaced_number(&plain.text)).unzip();
                number = number.or(own);
                let rest = plain.slice(Span::new(len.unwrap_or(0), plain.text.len())).trimmed();
                if !rest.text.is_empty() {
                    text = text.or(Some((at, rest)));
                }
            }
            if let Some((block, plain)) = text {
                let number = number.or_else(|| u64::try_from(count + 1).ok());
                stems.push(Line { block, plain, number, nested: false, in_table: true });
            }
        }
        lettered.append(&mut stems);
        lettered
    }
}

/// `1 Masseter`: a number with nothing but a space behind it.
fn spaced_number(text: &str) -> Option<(u64, usize)> {
    let (digits, rest) = text.split_once(' ')?;
    Some((digits.parse().ok()?, text.len() - rest.len()))
}

/// The letter of an option with which a cell begins or which it is, and its length: `B`, `(b) ulnar nerve`, `B ulnar nerve`.
fn letter(text: &str) -> Option<(char, usize)> {
    let bare = text.trim_matches(['(', ')', '.', '*']);
    let mut letters = bare.chars();
    if let (Some(letter), None) = (letters.next(), letters.next()) {
        return letter.is_ascii_alphabetic().then(|| (letter.to_ascii_uppercase(), text.len()));
    }
    // Sets may be lettered from P on as well as from A.
    let open = text.strip_prefix('(').unwrap_or(text);
    let letter = open.chars().next().filter(char::is_ascii_alphabetic)?;
    let behind = open.get(1..)?;
    let body = behind.strip_prefix(['.', ')']).map(str::trim_start).filter(|body| !body.is_empty());
    // The letters of a column stand in order, so a small one is no article.
    let bare = || {
        let body = open.get(1..)?.strip_prefix(' ')?.trim_start();
        (open.len() == text.len() && !body.is_empty()).then(|| text.len() - body.len())
    };
    let len = body.map(|body| text.len() - body.len()).or_else(bare)?;
    Some((letter.to_ascii_uppercase(), len))
}
