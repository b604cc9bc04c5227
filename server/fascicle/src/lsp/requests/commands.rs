//! `workspace/executeCommand`.

use fascicle_analysis::features::insert;
use serde_json::Value;
use tower_lsp::lsp_types as lsp;

use crate::lsp::state::{Session, View};

/// Put the supply table of an entry before a line of a document: its address, the entry's identifier, the line.
pub const INSERT_TABLE: &str = "fascicle.insertSupplyTable";

/// Put the branch tree of an entry before a line of a document; the same arguments.
pub const INSERT_TREE: &str = "fascicle.insertBranchTree";

/// Show a place of a document: its address, the range.
pub const SHOW: &str = "fascicle.show";

/// All commands.
pub const ALL: [&str; 3] = [INSERT_TABLE, INSERT_TREE, SHOW];

/// What the client is asked to show.
pub fn show(arguments: &[Value]) -> Option<lsp::ShowDocumentParams> {
    Some(lsp::ShowDocumentParams {
        uri: serde_json::from_value(arguments.first()?.clone()).ok()?,
        external: Some(false),
        take_focus: Some(true),
        selection: Some(serde_json::from_value(arguments.get(1)?.clone()).ok()?),
    })
}

/// The document that a command is for.
pub fn view(session: &Session, arguments: &[Value]) -> Option<View> {
    session.view(&serde_json::from_value(arguments.first()?.clone()).ok()?)
}

/// The edit that a command asks the client for.
pub fn edit(view: &View, command: &str, arguments: &[Value]) -> Option<lsp::WorkspaceEdit> {
    let vocabulary = &view.course.knowledge().vocabulary;
    let id = vocabulary.find(arguments.get(1)?.as_str()?)?;
    let line = u32::try_from(arguments.get(2)?.as_u64()?).ok()?;
    let text = match command {
        INSERT_TABLE => insert::supply_table(id, vocabulary)?,
        INSERT_TREE => insert::branch_tree(id, vocabulary)?,
        _ => return None,
    };
    Some(insertion(view, line, &text))
}

/// A block of its own before a line.
pub fn insertion(view: &View, line: u32, block: &str) -> lsp::WorkspaceEdit {
    let at = view.offset(fascicle_analysis::lines::Position { line, column: 0 });
    let before = view.text().get(..at).unwrap_or_default();
    let lead = if before.is_empty() || before.ends_with("\n\n") {
        ""
    } else if before.ends_with('\n') {
        "\n"
    } else {
        "\n\n"
    };
    let position = crate::lsp::to_proto::position(view.position(at));
    let edit =
        lsp::TextEdit { range: lsp::Range { start: position, end: position }, new_text: format!("{lead}{block}\n") };
    crate::lsp::to_proto::workspace_edit(view, vec![edit])
}
