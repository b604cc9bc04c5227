//! `textDocument/semanticTokens/full`, `full/delta` and `range`.

use fascicle_analysis::features::tokens::{self, Token};
use fascicle_analysis::lines::Encoding;
use fascicle_vocab::Kind;
use tower_lsp::lsp_types as lsp;

use crate::lsp::from_proto;
use crate::lsp::state::View;

/// What tokens can be told of a name, in the order of the bits.
const MODIFIERS: [&str; 4] = ["abbreviation", "former", "contradicted", "ambiguous"];

/// The kinds of tokens and their modifiers.
pub fn legend() -> lsp::SemanticTokensLegend {
    lsp::SemanticTokensLegend {
        token_types: Kind::ALL.iter().map(|kind| lsp::SemanticTokenType::new(kind.word())).collect(),
        token_modifiers: MODIFIERS.iter().map(|word| lsp::SemanticTokenModifier::new(word)).collect(),
    }
}

/// The tokens of a document, as the protocol counts them: from the one before, in lines and columns.
pub fn full(view: &View) -> Vec<lsp::SemanticToken> {
    encode(view, &tokens::all(view.reading(), view.course.knowledge()))
}

/// `textDocument/semanticTokens/range`
pub fn range(view: &View, range: lsp::Range) -> Vec<lsp::SemanticToken> {
    let within = from_proto::span(view, range);
    let mut list = tokens::all(view.reading(), view.course.knowledge());
    list.retain(|token| token.span.overlaps(within));
    encode(view, &list)
}

fn encode(view: &View, tokens: &[Token]) -> Vec<lsp::SemanticToken> {
    let width = |text: &str| {
        let units = match view.encoding {
            Encoding::Utf8 => text.len(),
            Encoding::Utf16 => text.encode_utf16().count(),
            Encoding::Utf32 => text.chars().count(),
        };
        u32::try_from(units).unwrap_or(u32::MAX)
    };
    let mut list = Vec::new();
    let (mut line, mut column) = (0, 0);
    for token in tokens {
        // A name that runs over a line end is one token a line.
        let mut at = token.span.start;
        for piece in view.slice(token.span).split_inclusive(['\n', '\r']) {
            let body = piece.trim_end_matches(['\n', '\r']);
            let position = view.position(at);
            at += piece.len();
            if body.trim().is_empty() {
                continue;
            }
            let delta_line = position.line - line;
            let delta_start = if delta_line == 0 { position.column - column } else { position.column };
            (line, column) = (position.line, position.column);
            list.push(lsp::SemanticToken {
                delta_line,
                delta_start,
                length: width(body),
                token_type: Kind::ALL
                    .iter()
                    .position(|kind| *kind == token.kind)
                    .and_then(|place| u32::try_from(place).ok())
                    .unwrap_or(0),
                token_modifiers_bitset: u32::from(token.abbreviation)
                    | u32::from(token.former) << 1
                    | u32::from(token.contradicted) << 2
                    | u32::from(token.ambiguous) << 3,
            });
        }
    }
    list
}

/// What turns one list of tokens into another: one edit, between what both begin and end with.
pub fn delta(old: &[lsp::SemanticToken], new: &[lsp::SemanticToken]) -> Vec<lsp::SemanticTokensEdit> {
    let head = old.iter().zip(new).take_while(|(a, b)| a == b).count();
    let rest = old.len().min(new.len()) - head;
    let tail = old.iter().rev().zip(new.iter().rev()).take(rest).take_while(|(a, b)| a == b).count();
    if head == old.len() && head == new.len() {
        return Vec::new();
    }
    let changed = new.get(head..new.len() - tail).unwrap_or_default();
    let numbers = |count: usize| u32::try_from(count * 5).unwrap_or(u32::MAX);
    vec![lsp::SemanticTokensEdit {
        start: numbers(head),
        delete_count: numbers(old.len() - tail - head),
        data: (!changed.is_empty()).then(|| changed.to_vec()),
    }]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_delta_makes_the_new_list_of_the_old_one() {
        let token = |length| lsp::SemanticToken { length, ..Default::default() };
        for (old, new) in [
            (vec![1, 2, 3], vec![1, 4, 3]),
            (vec![1, 1], vec![1, 1, 1]),
            (vec![1, 1, 1], vec![1]),
            (vec![], vec![5]),
            (vec![5], vec![]),
            (vec![7, 8], vec![7, 8]),
        ] {
            let (old, new): (Vec<_>, Vec<_>) =
                (old.into_iter().map(token).collect(), new.into_iter().map(token).collect());
            let mut made = old.clone();
            for edit in delta(&old, &new) {
                let start = edit.start as usize / 5;
                made.splice(start..start + edit.delete_count as usize / 5, edit.data.unwrap_or_default());
            }
            assert_eq!(made, new);
        }
    }
}
