//! `textDocument/hover`: the card of a structure, and what the graph says of a claim.

use fascicle_analysis::features;
use fascicle_analysis::picture::{self, Tree};
use fascicle_vocab::{EntryId, Vocabulary};
use percent_encoding::{AsciiSet, CONTROLS, utf8_percent_encode};
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// No more lines of a tree are shown; all of it stands in the document of the entry.
const LINES: usize = 40;

/// `textDocument/hover`
pub fn hover(view: &View, params: &lsp::HoverParams) -> Option<lsp::Hover> {
    let at = view.offset(from_proto::position(params.text_document_position_params.position));
    let mut hover = features::hover::hover(view.reading(), at, view.course.knowledge())?;
    if let Some(tree) = hover.nerve.and_then(|nerve| tree(view, nerve)) {
        hover.markdown.push_str(&tree);
    }
    Some(lsp::Hover {
        contents: lsp::HoverContents::Markup(to_proto::markdown(hover.markdown)),
        range: Some(to_proto::range(view, hover.span)),
    })
}

/// What may not stand as it is in an address within Markdown. All else does, for editors cut what is too long.
const RESERVED: &AsciiSet = &CONTROLS
    .add(b' ')
    .add(b'"')
    .add(b'#')
    .add(b'%')
    .add(b'&')
    .add(b'\'')
    .add(b'(')
    .add(b')')
    .add(b'<')
    .add(b'>')
    .add(b'[')
    .add(b']')
    .add(b'\\')
    .add(b'^')
    .add(b'`')
    .add(b'{')
    .add(b'|')
    .add(b'}');

/// The ground on which the picture lies, for its colours follow the system and those of the editor may not.
const GROUND: &str = "<style>svg{background:#fcfbf8}@media(prefers-color-scheme:dark){svg{background:#20262c}}</style>";

/// A tree as a picture in Markdown.
fn picture(tree: &Tree, vocabulary: &Vocabulary) -> String {
    let svg = tree.svg(vocabulary).replacen("</svg>", &format!("{GROUND}</svg>"), 1);
    let name = vocabulary.name(tree.nerve);
    format!("\n\n![Branch tree of the {name}](data:image/svg+xml,{})\n", utf8_percent_encode(&svg, RESERVED))
}

/// The branches of a nerve: a picture where the client shows pictures, else text.
fn tree(view: &View, nerve: EntryId) -> Option<String> {
    let vocabulary = &view.course.knowledge().vocabulary;
    let tree = picture::branch_tree(vocabulary, nerve)?;
    if view.can.pictures {
        return Some(picture(&tree, vocabulary));
    }
    let text = tree.text();
    let shown: Vec<&str> = text.lines().take(LINES).collect();
    let more = text.lines().count().saturating_sub(LINES);
    let rest = if more > 0 { format!("\n… {more} more lines") } else { String::new() };
    Some(format!("\n\n**Branch tree**\n\n```\n{}{rest}\n```\n", shown.join("\n")))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use fascicle_vocab::Kind;

    #[test]
    fn no_card_with_its_picture_is_cut_by_an_editor() {
        let vocabulary = fascicle_vocab::built_in();
        let nerves = vocabulary.iter().filter(|(_, entry)| matches!(entry.kind, Kind::Nerve | Kind::Plexus));
        let (longest, name) = nerves
            .filter_map(|(id, entry)| {
                let picture = picture(&picture::branch_tree(&vocabulary, id)?, &vocabulary);
                let address = picture.split_once("](").unwrap().1.trim_end().strip_suffix(')').unwrap().to_owned();
                assert!(!address.contains([' ', '(', ')', '<', '>', '"', '#']), "{address}");
                Some((fascicle_analysis::card::markdown(&vocabulary, id).len() + picture.len(), entry.name()))
            })
            .max()
            .unwrap();
        assert!(longest < 100_000, "{name}: {longest} characters");
    }
}
