//! `textDocument/completion` and `completionItem/resolve`.

use fascicle_analysis::features::{self, completion};
use fascicle_vocab::Kind;
use serde_json::json;
use tower_lsp::lsp_types as lsp;

use crate::course::Course;
use crate::lsp::state::View;
use crate::lsp::{from_proto, to_proto};

/// `textDocument/completion`
pub fn completion(view: &View, params: &lsp::CompletionParams) -> lsp::CompletionResponse {
    let at = view.offset(from_proto::position(params.text_document_position.position));
    let draft = completion::Draft {
        text: view.text(),
        form: view.document.form,
        reading: view.reading(),
        knowledge: view.course.knowledge(),
        names: view.course.names(),
        settings: &view.course.settings.reading,
    };
    let found = completion::complete(&draft, at);
    let range = to_proto::range(view, found.span);
    let typed = view.slice(found.span);
    let items = found.items.iter().enumerate().map(|(rank, item)| self::item(rank, item, range, typed, view)).collect();
    lsp::CompletionResponse::List(lsp::CompletionList { is_incomplete: found.more, items })
}

fn item(rank: usize, item: &completion::Item, range: lsp::Range, typed: &str, view: &View) -> lsp::CompletionItem {
    let vocabulary = &view.course.knowledge().vocabulary;
    let entry = item.entry.map(|id| vocabulary.entry(id));
    let begins = |name: &str| name.to_lowercase().starts_with(&typed.to_lowercase());
    lsp::CompletionItem {
        label: item.text.clone(),
        label_details: Some(lsp::CompletionItemLabelDetails {
            detail: item.matched.as_ref().map(|matched| format!(" ({matched})")),
            description: Some(entry.map_or("segments", |entry| entry.kind.word()).to_owned()),
        }),
        kind: Some(entry.map_or(lsp::CompletionItemKind::CONSTANT, |entry| kind(entry.kind))),
        detail: entry.and_then(|entry| entry.latin()).map(str::to_owned),
        sort_text: Some(format!("{rank:04}")),
        // The client filters by what was typed, and may take nothing but beginnings; names that match in another way must
        // pass until it asks again. They begin with what was typed and go on, since some clients put what is the very word
        // before what begins with it.
        filter_text: Some(if begins(&item.text) { item.text.clone() } else { format!("{typed} {}", item.text) }),
        preselect: (rank == 0 && item.fits).then_some(true),
        text_edit: Some(lsp::CompletionTextEdit::Edit(lsp::TextEdit { range, new_text: item.text.clone() })),
        data: entry.map(|entry| json!({ "entry": entry.id, "of": view.uri })),
        ..Default::default()
    }
}

/// Only to tell kinds apart at a glance: the protocol knows the kinds of programming languages.
const fn kind(kind: Kind) -> lsp::CompletionItemKind {
    match kind {
        Kind::Nerve => lsp::CompletionItemKind::FUNCTION,
        Kind::Plexus => lsp::CompletionItemKind::MODULE,
        Kind::Root => lsp::CompletionItemKind::CONSTANT,
        Kind::Muscle => lsp::CompletionItemKind::CLASS,
        Kind::Joint => lsp::CompletionItemKind::INTERFACE,
        Kind::Landmark => lsp::CompletionItemKind::REFERENCE,
        Kind::Skin => lsp::CompletionItemKind::FIELD,
        Kind::Movement => lsp::CompletionItemKind::EVENT,
        Kind::Group => lsp::CompletionItemKind::ENUM,
    }
}

/// `completionItem/resolve`: the card is made for the item that is looked at, not for all.
pub fn resolve(course: &Course, mut item: lsp::CompletionItem) -> lsp::CompletionItem {
    let id = item.data.as_ref().and_then(|data| data.get("entry")).and_then(serde_json::Value::as_str);
    let knowledge = course.knowledge();
    if let Some(id) = id.and_then(|id| knowledge.vocabulary.find(id)) {
        let card = features::hover::card(knowledge, id);
        item.documentation = Some(lsp::Documentation::MarkupContent(to_proto::markdown(card)));
    }
    item
}
