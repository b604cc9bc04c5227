//! Texts that can be put into a document: the supply table and the branch tree of a nerve, between marks that say what
//! they are made from.

use fascicle_model::{EntryId, Vocabulary};

use crate::{picture, tables};

/// The supply table of a nerve or group as a block of its own. `None` where there are no muscles.
pub fn supply_table(subject: EntryId, vocabulary: &Vocabulary) -> Option<String> {
    let table = tables::supply_table(vocabulary, subject)?;
    Some(marked("table", subject, table.trim_end(), vocabulary))
}

/// The branch tree of a nerve as a block of text.
pub fn branch_tree(subject: EntryId, vocabulary: &Vocabulary) -> Option<String> {
    let tree = picture::branch_tree(vocabulary, subject)?;
    Some(marked("tree", subject, &format!("```text\n{}\n```", tree.text().trim_end()), vocabulary))
}

fn marked(what: &str, subject: EntryId, body: &str, vocabulary: &Vocabulary) -> String {
    let id = &vocabulary.entry(subject).id;
    format!("<!-- fascicle:{what} {id} -->\n\n{body}\n\n<!-- /fascicle -->\n")
}
