//! Links of a document to others, as the Markdown parser sees them.

use pulldown_cmark::{Event, LinkType, Options, Parser, Tag};

use crate::blocks::Form;
use crate::text::Span;

/// A link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// Where it stands in the source, markup included.
    pub span: Span,
    /// Where it leads, as it is written.
    pub destination: String,
    /// It is a wiki link, whose destination is the name of a document.
    pub wiki: bool,
}

/// The links and images of a document.
pub fn links(text: &str, form: Form) -> Vec<Link> {
    if form != Form::Markdown {
        return Vec::new();
    }
    let options = Options::ENABLE_TABLES | Options::ENABLE_FOOTNOTES | Options::ENABLE_WIKILINKS | Options::ENABLE_GFM;
    Parser::new_ext(text, options)
        .into_offset_iter()
        .filter_map(|(event, range)| match event {
            Event::Start(Tag::Link { link_type, dest_url, .. } | Tag::Image { link_type, dest_url, .. }) => {
                let wiki = matches!(link_type, LinkType::WikiLink { .. });
                Some(Link { span: Span::new(range.start, range.end), destination: dest_url.into_string(), wiki })
            }
            _ => None,
        })
        .filter(|link| !link.destination.is_empty())
        .collect()
}
