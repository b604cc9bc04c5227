//! From text to blocks.
//!
//! A [`Block`] is a stretch of visible text that is read as one: a heading, a paragraph, the text of a list item, a table
//! cell, a caption cue. Blocks know what they stand under (heading, outer list item, table cell's row and column), for
//! that sets the subject of what they say. Reading never fails: whatever the text is, it has blocks.

mod captions;
mod directives;
mod markdown;

use std::sync::Arc;

use crate::text::{Plain, Span};

/// The form in which a document is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Form {
    /// CommonMark with the GitHub tables, and what Markdown dialects of course writers add.
    Markdown,
    /// WebVTT or SRT captions.
    Captions,
    /// Plain text.
    Plain,
}

impl Form {
    /// The form that a file's name tells; `None` for a file that is none of the reader's.
    pub fn of_name(name: &str) -> Option<Self> {
        let (_, extension) = name.rsplit_once('.')?;
        match extension.to_ascii_lowercase().as_str() {
            "md" | "markdown" | "mdx" | "qmd" | "rmd" | "mdown" => Some(Self::Markdown),
            "vtt" | "srt" => Some(Self::Captions),
            "txt" | "text" => Some(Self::Plain),
            _ => None,
        }
    }
}

/// What a block is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BlockKind {
    /// The `title` of the front matter.
    Title,
    /// A heading, level 1 to 6; 7 for the title of a callout or directive.
    Heading(u8),
    /// A paragraph.
    Paragraph,
    /// The text of a list item; its number, if the list is numbered.
    Item(Option<u64>),
    /// A cell: table (numbered through the document), row (0 is the header), column.
    Cell {
        /// Which table of the document.
        table: u32,
        /// Row, 0 for the header.
        row: u32,
        /// Column, from 0.
        column: u32,
    },
    /// The term of a definition list.
    Term,
    /// What a definition list says of its term.
    Definition,
    /// Running text of captions.
    Caption,
}

/// The place of a block in its document.
pub type BlockIx = usize;

/// A stretch of visible text that is read as one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Block {
    /// What it is.
    pub kind: BlockKind,
    /// Where it stands in the source, markup included.
    pub span: Span,
    /// What is read.
    pub plain: Arc<Plain>,
    /// The heading that it stands under (for a heading, the heading above it).
    pub heading: Option<BlockIx>,
    /// The block that it stands inside of or belongs to: outer list item, term of a definition.
    pub parent: Option<BlockIx>,
    /// It is quoted from somebody (a block quotation that is no callout).
    pub quoted: bool,
    /// For an item with a box before it: whether the box is ticked.
    pub ticked: Option<bool>,
}

/// A document cut into blocks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Blocks {
    /// In the order of the text.
    pub list: Vec<Block>,
}

/// Cuts a text into blocks.
pub fn blocks(text: &str, form: Form) -> Blocks {
    let list = match form {
        Form::Markdown => markdown::blocks(text),
        Form::Captions => captions::blocks(text),
        Form::Plain => paragraphs(text),
    };
    Blocks { list }
}

/// Paragraphs of plain text: runs of lines with no empty line between them.
fn paragraphs(text: &str) -> Vec<Block> {
    let mut list = Vec::new();
    let mut start = None;
    let mut at = 0;
    let mut close = |start: &mut Option<usize>, end: usize| {
        if let Some(from) = start.take() {
            let body = text.get(from..end).unwrap_or_default().trim_end();
            list.push(Block {
                kind: BlockKind::Paragraph,
                span: Span::new(from, from + body.len()),
                plain: Plain::verbatim(body, from).into(),
                heading: None,
                parent: None,
                quoted: false,
                ticked: None,
            });
        }
    };
    for line in text.split_inclusive('\n') {
        if line.trim().is_empty() {
            close(&mut start, at);
        } else if start.is_none() {
            start = Some(at);
        }
        at += line.len();
    }
    close(&mut start, at);
    list
}
