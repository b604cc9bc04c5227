//! A card as Markdown.

use std::fmt::Write as _;

use fascicle_model::{EntryId, Standing, Vocabulary};

use super::cite::cite;
use super::{CAUTION, Piece, Row, card};

/// The card of an entry as Markdown.
pub fn markdown(vocabulary: &Vocabulary, id: EntryId) -> String {
    let card = card(vocabulary, id);
    let mut out = format!("**{}** · {}\n", escape(&card.title), escape(&card.what));
    if let Some(latin) = &card.latin {
        let _ = write!(out, "\n*{}*\n", escape(latin));
    }
    if !card.names.is_empty() {
        let names: Vec<String> =
            card.names.iter().map(|(standing, text)| name_with_standing(*standing, text)).collect();
        let _ = write!(out, "\nAlso: {}\n", escape(&names.join(", ")));
    }
    if let Some(note) = &card.note {
        let _ = write!(out, "\n{}\n", escape(note));
    }
    for section in &card.sections {
        let _ = write!(out, "\n**{}**\n\n", escape(&section.title));
        for row in &section.rows {
            let indent = if row.depth == 0 { "" } else { "  " };
            let mut line = String::new();
            if !row.label.is_empty() {
                let _ = write!(line, "*{}:* ", escape(&text_of(&row.label)));
            }
            line.push_str(&escape(&text_of(&row.text)));
            line.push_str(&escape(&tail(vocabulary, row)));
            let _ = writeln!(out, "{indent}- {line}");
        }
        if section.caution {
            let _ = write!(out, "\n*{CAUTION}*\n");
        }
    }
    if !card.sources.is_empty() {
        let _ = write!(out, "\nSources: {}\n", escape(&card.sources.join("; ")));
    }
    if let Some((file, line)) = &card.course {
        let _ = write!(out, "\nFrom the course's own `{file}`, line {line}.\n");
    }
    out
}

/// What follows the text of a row: that it is a variant, who says so, and remarks.
pub fn tail(vocabulary: &Vocabulary, row: &Row) -> String {
    let mut marks: Vec<String> = Vec::new();
    if row.variant {
        let sources: Vec<String> = row.sources.iter().map(|citation| cite(vocabulary, citation)).collect();
        marks.push(format!("variant, {}", sources.join(", ")));
    }
    marks.extend(row.notes.iter().map(|note| note.trim_end_matches('.').to_owned()));
    if marks.is_empty() { String::new() } else { format!(" ({})", marks.join("; ")) }
}

/// The text of pieces, one after the other.
pub fn text_of(pieces: &[Piece]) -> String {
    pieces.iter().map(Piece::text).collect()
}

/// A name with its standing, where the standing says more than that it is a name.
pub fn name_with_standing(standing: Standing, text: &str) -> String {
    match standing {
        Standing::Preferred | Standing::Exact | Standing::Spelling | Standing::Short | Standing::Abbreviation => {
            text.to_owned()
        }
        Standing::Latin | Standing::Eponym | Standing::Former | Standing::Informal => {
            format!("{text} ({})", standing.word())
        }
    }
}

fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if matches!(c, '\\' | '*' | '_' | '`' | '[' | ']' | '<' | '>' | '|' | '#' | '~') {
            out.push('\\');
        }
        out.push(c);
    }
    out
}
