//! A branch tree as lines of text.

use std::fmt::Write as _;

use super::{Row, RowKind, Tree};

impl Row {
    pub(super) fn words(&self) -> String {
        let names: Vec<&str> = self.parts.iter().map(|(name, _)| name.as_str()).collect();
        let mut words = String::new();
        if !self.lead.is_empty() {
            words.push_str(&self.lead);
            words.push(' ');
        }
        words.push_str(&names.join(" + "));
        if self.variant {
            words.push_str(" (sometimes)");
        }
        if !self.remark.is_empty() {
            let _ = write!(words, "  {}", self.remark);
        }
        words
    }
}

impl Tree {
    /// For each row at which depths a line goes on below it.
    pub(super) fn open_below(&self) -> Vec<Vec<bool>> {
        let deepest = self.rows.iter().map(|row| row.depth).max().unwrap_or(0);
        let mut open = vec![false; deepest + 1];
        let mut list = vec![Vec::new(); self.rows.len()];
        for (slot, row) in list.iter_mut().zip(&self.rows).rev() {
            slot.clone_from(&open);
            for (depth, is_open) in open.iter_mut().enumerate() {
                *is_open = match depth.cmp(&row.depth) {
                    std::cmp::Ordering::Less => *is_open,
                    std::cmp::Ordering::Equal => true,
                    std::cmp::Ordering::Greater => false,
                };
            }
        }
        list
    }

    /// The tree as lines of text.
    pub fn text(&self) -> String {
        let mut out = String::new();
        for (row, open) in self.rows.iter().zip(self.open_below()) {
            if row.depth == 0 {
                if !out.is_empty() {
                    out.push_str("↓ ");
                }
            } else {
                for depth in 1..row.depth {
                    out.push_str(if open.get(depth) == Some(&true) { "│  " } else { "   " });
                }
                out.push_str(if open.get(row.depth) == Some(&true) { "├─ " } else { "└─ " });
            }
            match row.kind {
                RowKind::Landmark => {
                    let _ = writeln!(out, "· {}", row.words());
                }
                _ => {
                    let _ = writeln!(out, "{}", row.words());
                }
            }
        }
        out
    }
}
