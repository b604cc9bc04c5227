//! Markdown to blocks, by the CommonMark parser with source offsets.

use std::ops::Range;

use pulldown_cmark::{Event, HeadingLevel, MetadataBlockKind, Options, Parser, Tag, TagEnd};

use super::{Block, BlockIx, BlockKind, directives};
use crate::text::{Mark, Plain, Span};

/// The syntax that is understood beyond CommonMark.
fn options() -> Options {
    Options::ENABLE_TABLES
        | Options::ENABLE_FOOTNOTES
        | Options::ENABLE_STRIKETHROUGH
        | Options::ENABLE_TASKLISTS
        | Options::ENABLE_HEADING_ATTRIBUTES
        | Options::ENABLE_YAML_STYLE_METADATA_BLOCKS
        | Options::ENABLE_MATH
        | Options::ENABLE_GFM
        | Options::ENABLE_DEFINITION_LIST
        | Options::ENABLE_WIKILINKS
}

/// Cuts Markdown into blocks.
pub fn blocks(text: &str) -> Vec<Block> {
    let mut builder = Builder { source: text, ..Builder::default() };
    // A byte order mark is no text; behind it, front matter and headings stand at the beginning of their line.
    let body = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    let skipped = text.len() - body.len();
    let opened = directives::open(body);
    builder.titles = opened.titles.iter().map(|title| title.start + skipped..title.end + skipped).collect();
    builder.boxes = opened.boxes.iter().map(|at| at + skipped).collect();
    for (event, range) in Parser::new_ext(&opened.text, options()).into_offset_iter() {
        builder.event(event, range.start + skipped..range.end + skipped);
    }
    builder.close_text();
    builder.list
}

/// The lowest level of a heading.
const LOWEST: u8 = 6;

/// An outer structure that is open.
enum Open {
    /// A list and the number of its next item.
    List(Option<u64>),
    /// An item, its number, and the block of its text once there is one.
    Item(Option<u64>, Option<BlockIx>),
    /// The definition of a term.
    Definition,
    Quote,
    /// A callout, which is a quotation in form only.
    Box,
}

#[derive(Default)]
struct Builder<'t> {
    source: &'t str,
    list: Vec<Block>,
    open: Vec<Open>,
    /// The text being gathered, with what it will be.
    text: Option<(BlockKind, Range<usize>, Plain)>,
    /// Inline marks that are open, with where they began in the text.
    marks: Vec<(Mark, usize)>,
    /// Headings that are open, each with its level and where what stands under it ends.
    headings: Vec<(u8, BlockIx, usize)>,
    /// Titles of boxes, each from its heading to the end of its box.
    titles: Vec<Range<usize>>,
    /// Where the marks of boxes stand that have the form of a quotation.
    boxes: Vec<usize>,
    table: u32,
    row: u32,
    column: u32,
    term: Option<BlockIx>,
    /// The box before the text that is gathered, and whether it is ticked.
    ticked: Option<bool>,
    /// Inside something that is not prose: code block, HTML block, front matter.
    silent: u32,
    metadata: bool,
}

impl Builder<'_> {
    fn event(&mut self, event: Event<'_>, range: Range<usize>) {
        match event {
            Event::Start(tag) => self.start(&tag, range),
            Event::End(tag) => self.end(tag),
            Event::Text(text) if self.metadata => self.front_matter(&text, range),
            Event::Text(text) => self.visible(&text, range),
            Event::SoftBreak => {
                if self.silent == 0
                    && let Some((_, _, plain)) = &mut self.text
                {
                    plain.push_break(Span::new(range.start, range.end));
                }
            }
            Event::HardBreak => self.not_prose("\n", range),
            Event::Code(_) | Event::InlineMath(_) | Event::DisplayMath(_) => self.not_prose("\u{FFFC}", range),
            Event::InlineHtml(html) => {
                if html.to_ascii_lowercase().starts_with("<br") {
                    self.not_prose("\n", range);
                }
            }
            Event::FootnoteReference(_) | Event::Html(_) | Event::Rule => {}
            Event::TaskListMarker(is_ticked) => self.ticked = Some(is_ticked),
        }
    }

    fn start(&mut self, tag: &Tag<'_>, range: Range<usize>) {
        match tag {
            Tag::Paragraph => {
                let kind = self.paragraph_kind();
                self.open_text(kind, range);
            }
            Tag::Heading { level, .. } => {
                let level = if self.title_at(range.start).is_some() { TITLE_OF_BOX } else { depth(*level) };
                self.open_text(BlockKind::Heading(level), range);
            }
            Tag::List(first) => {
                self.close_text();
                self.open.push(Open::List(*first));
            }
            Tag::Item => {
                self.close_text();
                let mut number = None;
                if let Some(Open::List(next)) = self.open.last_mut() {
                    number = *next;
                    *next = next.map(|number| number + 1);
                }
                self.open.push(Open::Item(number, None));
            }
            Tag::BlockQuote(kind) => {
                self.close_text();
                if kind.is_none() {
                    let next = self.boxes.partition_point(|at| *at < range.start);
                    let marks = self.boxes.get(next).and_then(|at| self.source.get(range.start..*at));
                    let is_box = marks.is_some_and(|marks| marks.bytes().all(|c| matches!(c, b'>' | b' ')));
                    self.open.push(if is_box { Open::Box } else { Open::Quote });
                }
            }
            Tag::DefinitionListTitle => self.open_text(BlockKind::Term, range),
            Tag::DefinitionListDefinition => {
                self.close_text();
                self.open.push(Open::Definition);
            }
            Tag::Table(_) => {
                self.close_text();
                self.table += 1;
                self.row = 0;
                self.column = 0;
            }
            Tag::TableHead | Tag::TableRow => self.column = 0,
            Tag::TableCell => {
                let kind = BlockKind::Cell { table: self.table, row: self.row, column: self.column };
                self.open_text(kind, range);
            }
            Tag::CodeBlock(_) | Tag::HtmlBlock => {
                self.close_text();
                self.silent += 1;
            }
            Tag::MetadataBlock(MetadataBlockKind::YamlStyle) => self.metadata = true,
            Tag::MetadataBlock(_) => self.silent += 1,
            Tag::Emphasis => self.open_mark(Mark::Emphasis, range),
            Tag::Strong => self.open_mark(Mark::Strong, range),
            Tag::Strikethrough => self.open_mark(Mark::Struck, range),
            Tag::Link { .. } => self.open_mark(Mark::Link, range),
            Tag::FootnoteDefinition(_) => self.close_text(),
            _ => {}
        }
    }

    fn end(&mut self, tag: TagEnd) {
        match tag {
            TagEnd::Paragraph | TagEnd::Heading(_) | TagEnd::DefinitionListTitle | TagEnd::TableCell => {
                self.close_text();
                if matches!(tag, TagEnd::TableCell) {
                    self.column += 1;
                }
            }
            TagEnd::List(_) | TagEnd::Item | TagEnd::DefinitionListDefinition => {
                self.close_text();
                self.open.pop();
            }
            TagEnd::BlockQuote(kind) => {
                self.close_text();
                if kind.is_none() {
                    self.open.pop();
                }
            }
            TagEnd::TableHead | TagEnd::TableRow => self.row += 1,
            TagEnd::MetadataBlock(MetadataBlockKind::YamlStyle) => self.metadata = false,
            TagEnd::CodeBlock | TagEnd::HtmlBlock | TagEnd::MetadataBlock(_) => {
                self.silent = self.silent.saturating_sub(1);
            }
            TagEnd::Emphasis => self.close_mark(Mark::Emphasis),
            TagEnd::Strong => self.close_mark(Mark::Strong),
            TagEnd::Strikethrough => self.close_mark(Mark::Struck),
            TagEnd::Link => self.close_mark(Mark::Link),
            TagEnd::FootnoteDefinition => self.close_text(),
            _ => {}
        }
    }

    /// The title of a box that begins at a place. Titles stand in the order of the text.
    fn title_at(&self, start: usize) -> Option<&Range<usize>> {
        let place = self.titles.binary_search_by_key(&start, |title| title.start).ok()?;
        self.titles.get(place)
    }

    /// What loose text or a paragraph is, by what it stands in.
    fn paragraph_kind(&self) -> BlockKind {
        for open in self.open.iter().rev() {
            match open {
                Open::Item(number, _) => return BlockKind::Item(*number),
                Open::Definition => return BlockKind::Definition,
                Open::List(_) | Open::Quote | Open::Box => {}
            }
        }
        BlockKind::Paragraph
    }

    fn open_text(&mut self, kind: BlockKind, range: Range<usize>) {
        self.close_text();
        self.text = Some((kind, range, Plain::default()));
    }

    fn close_text(&mut self) {
        self.marks.clear();
        let Some((kind, range, plain)) = self.text.take() else { return };
        let is_cell = matches!(kind, BlockKind::Cell { .. });
        if plain.text.trim().is_empty() && !is_cell {
            return;
        }
        let at = self.list.len();
        self.headings.retain(|(.., end)| range.start < *end);
        let is_title = self.title_at(range.start).is_some();
        // The title of a box stands below all headings outside of it.
        let kind = if is_title { BlockKind::Heading(LOWEST) } else { kind };
        let heading = if let BlockKind::Heading(level) = kind {
            while self.headings.last().is_some_and(|(other, ..)| *other >= level) {
                self.headings.pop();
            }
            let above = self.headings.last().map(|(_, at, _)| *at);
            let end = self.title_at(range.start).map_or(usize::MAX, |title| title.end);
            self.headings.push((level, at, end));
            above
        } else {
            self.headings.last().map(|(_, at, _)| *at)
        };
        let mut parent = None;
        let mut own = true;
        for open in self.open.iter_mut().rev() {
            match open {
                Open::Item(_, block @ None) if own => {
                    *block = Some(at);
                    own = false;
                }
                Open::Item(_, Some(block)) => {
                    parent = Some(*block);
                    break;
                }
                Open::Item(_, None) => own = false,
                Open::Definition => {
                    parent = self.term;
                    break;
                }
                Open::List(_) | Open::Quote | Open::Box => {}
            }
        }
        if kind == BlockKind::Term {
            self.term = Some(at);
        }
        let quoted = self.open.iter().any(|open| matches!(open, Open::Quote));
        self.list.push(Block {
            kind,
            span: Span::new(range.start, range.end),
            plain: plain.into(),
            heading,
            parent,
            quoted,
            ticked: self.ticked.take(),
        });
    }

    fn visible(&mut self, text: &str, range: Range<usize>) {
        if self.silent > 0 {
            return;
        }
        if self.text.is_none() {
            let kind = self.paragraph_kind();
            self.text = Some((kind, range.clone(), Plain::default()));
        }
        let Some((_, whole, plain)) = &mut self.text else { return };
        whole.end = whole.end.max(range.end);
        if plain.text.is_empty() || plain.text.ends_with(['\n', ' ']) {
            // Fences of divs and shortcodes are markup of dialects, no prose.
            let line = text.trim_start();
            if line.starts_with(":::") || line.starts_with("{{<") || line.starts_with("{{%") {
                plain.push_as("\n", Span::new(range.start, range.end));
                return;
            }
        }
        if self.source.get(range.clone()) == Some(text) {
            plain.push(text, range.start);
        } else {
            plain.push_as(text, Span::new(range.start, range.end));
        }
    }

    fn not_prose(&mut self, shown: &str, range: Range<usize>) {
        if self.silent == 0
            && let Some((_, whole, plain)) = &mut self.text
        {
            whole.end = whole.end.max(range.end);
            plain.push_as(shown, Span::new(range.start, range.end));
        }
    }

    fn open_mark(&mut self, mark: Mark, range: Range<usize>) {
        if self.text.is_none() && self.silent == 0 {
            let kind = self.paragraph_kind();
            self.text = Some((kind, range, Plain::default()));
        }
        let at = self.text.as_ref().map_or(0, |(_, _, plain)| plain.text.len());
        self.marks.push((mark, at));
    }

    fn close_mark(&mut self, mark: Mark) {
        let Some(place) = self.marks.iter().rposition(|(open, _)| *open == mark) else { return };
        let (_, start) = self.marks.remove(place);
        if let Some((_, _, plain)) = &mut self.text {
            let end = plain.text.len();
            plain.marks.push((Span::new(start, end), mark));
        }
    }

    /// The title of the front matter is read as the document's subject.
    fn front_matter(&mut self, text: &str, range: Range<usize>) {
        let mut at = range.start;
        for line in text.split_inclusive('\n') {
            if let Some(value) = line.strip_prefix("title:") {
                let bare = value.trim().trim_matches(['"', '\'']);
                let offset = value.find(bare).unwrap_or(0);
                let from = at + "title:".len() + offset;
                if self.source.get(from..from + bare.len()) == Some(bare) && !bare.is_empty() {
                    let place = self.list.len();
                    self.headings.push((0, place, usize::MAX));
                    self.list.push(Block {
                        kind: BlockKind::Title,
                        span: Span::new(at, at + line.trim_end().len()),
                        plain: Plain::verbatim(bare, from).into(),
                        heading: None,
                        parent: None,
                        quoted: false,
                        ticked: None,
                    });
                }
            }
            at += line.len();
        }
    }
}

/// The level of the title of a callout or directive, below that of every heading.
const TITLE_OF_BOX: u8 = 7;

const fn depth(level: HeadingLevel) -> u8 {
    match level {
        HeadingLevel::H1 => 1,
        HeadingLevel::H2 => 2,
        HeadingLevel::H3 => 3,
        HeadingLevel::H4 => 4,
        HeadingLevel::H5 => 5,
        HeadingLevel::H6 => 6,
    }
}
