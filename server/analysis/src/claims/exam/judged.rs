//! Tables of statements with a verdict on each: `| The ulnar nerve supplies deltoid | F |`.

use std::collections::{BTreeMap, BTreeSet};

use super::items::Item;
use super::keys::keyed_claims;
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::claims::Claim;
use crate::knowledge::Knowledge;
use crate::lexicon;

/// Reads the judged statements in the tables of a document: the claims of the verdicts, and the cells of the tables.
pub(super) fn read(blocks: &Blocks, knowledge: &Knowledge) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let mut tables: BTreeMap<u32, BTreeMap<u32, BTreeMap<u32, BlockIx>>> = BTreeMap::new();
    for (at, block) in blocks.list.iter().enumerate() {
        if let BlockKind::Cell { table, row, column } = block.kind {
            tables.entry(table).or_default().entry(row).or_default().insert(column, at);
        }
    }
    let (mut claims, mut consumed) = (Vec::new(), BTreeSet::new());
    let text = |at: BlockIx| blocks.list.get(at).map_or("", |block| block.plain.text.trim());
    for rows in tables.values() {
        let below: Vec<&BTreeMap<u32, BlockIx>> =
            rows.iter().filter(|(row, _)| **row > 0).map(|(_, cells)| cells).collect();
        let width = below.iter().flat_map(|row| row.keys()).max().copied().unwrap_or(0);
        let holds = |column: u32, is_such: &dyn Fn(&str) -> bool| {
            let mut cells = below.iter().filter_map(|row| row.get(&column)).map(|at| text(*at)).peekable();
            cells.peek().is_some() && cells.all(is_such)
        };
        let verdicts = (0..=width).find(|column| holds(*column, &|cell| verdict(cell).is_some()));
        let statements = (0..=width).find(|column| holds(*column, &is_statement));
        let (Some(verdicts), Some(statements)) = (verdicts, statements) else { continue };
        for row in &below {
            let (Some(stated), Some(judged)) = (row.get(&statements), row.get(&verdicts)) else { continue };
            let (Some(statement), Some(key)) = (blocks.list.get(*stated), blocks.list.get(*judged)) else { continue };
            let item = Item { stem: statement.plain.trimmed(), ..Item::default() };
            claims.extend(keyed_claims(&item, (&key.plain.trimmed(), *judged), knowledge));
        }
        consumed.extend(rows.values().flat_map(BTreeMap::values));
    }
    (claims, consumed)
}

/// What a cell that is nothing but a verdict says.
fn verdict(cell: &str) -> Option<bool> {
    let word = cell.trim_matches(['(', ')', '.', '*']).to_lowercase();
    let is_word = word.starts_with(char::is_alphabetic);
    match (lexicon::is_true(&word), lexicon::is_false(&word)) {
        (true, _) if is_word => Some(true),
        (_, true) if is_word => Some(false),
        _ => None,
    }
}

/// Whether a cell has as many words as a statement has.
fn is_statement(cell: &str) -> bool {
    cell.split_whitespace().count() > 3
}
