//! The document of an entry: its card, and every fact with its source, as Markdown that links to other entries.

use std::fmt::Write;

use fascicle_model::{EntryId, Vocabulary};

use crate::card;

/// The document of an entry. `link` makes the address of another entry's document.
pub fn entry_document(vocabulary: &Vocabulary, id: EntryId, link: &dyn Fn(&str) -> String) -> String {
    let entry = vocabulary.entry(id);
    let mut text = card::markdown(vocabulary, id);
    text.push_str("\n\n## Every fact\n\n");
    for fact in &entry.facts {
        let _ = write!(text, "- {}", fact.relation.word());
        if let Some(target) = fact.relation.target() {
            let _ = write!(text, " [{}]({})", vocabulary.name(target), link(&vocabulary.entry(target).id));
        }
        if let fascicle_model::Relation::Roots { main, lesser } = fact.relation {
            let _ = write!(text, " {}", card::segments(main, lesser));
        }
        if fact.variant {
            text.push_str(" (variant)");
        }
        if let Some(note) = &fact.note {
            let _ = write!(text, ", {note}");
        }
        let sources: Vec<String> = fact.sources.iter().map(|citation| card::cite(vocabulary, citation)).collect();
        let _ = writeln!(text, ". {}", sources.join("; "));
    }
    let pointing: Vec<_> = vocabulary.pointing_at(id).collect();
    if !pointing.is_empty() {
        text.push_str("\n## Named by\n\n");
        for (owner, fact) in pointing {
            let owner = vocabulary.entry(owner);
            let variant = if fact.variant { " (variant)" } else { "" };
            let _ = writeln!(text, "- [{}]({}): {}{variant}", owner.name(), link(&owner.id), fact.relation.word());
        }
    }
    if !entry.ids.is_empty() {
        let _ = writeln!(text, "\nOpen identifiers: {}", entry.ids.join(", "));
    }
    // Where a course writes it stands in its card.
    if vocabulary.course_line(id).is_none() {
        let _ = writeln!(text, "\nWritten in `{}`, line {}.", entry.file, entry.line);
    }
    text
}
