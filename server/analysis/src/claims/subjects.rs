//! What a block stands under: the structures that a heading, an outer list item, a term or the title names. They are the
//! subject of statements that name none.

use fascicle_model::Vocabulary;

use super::sentences::Subject;
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::lexicon::{self, Label};
use crate::mentions::Mentions;

/// How many blocks below it a paragraph that is nothing but a name serves as a heading.
const HEAD_LINE_REACH: usize = 40;

/// The subjects of all blocks.
pub struct Subjects<'a> {
    blocks: &'a Blocks,
    mentions: &'a [Mentions],
    vocabulary: &'a Vocabulary,
}

impl<'a> Subjects<'a> {
    /// Looks at a document's blocks and mentions.
    pub const fn new(blocks: &'a Blocks, mentions: &'a [Mentions], vocabulary: &'a Vocabulary) -> Self {
        Self { blocks, mentions, vocabulary }
    }

    /// What a block stands under, nearest first.
    pub fn of(&self, block: BlockIx) -> Vec<Subject> {
        let mut list = Vec::new();
        let mut parent = self.blocks.list.get(block).and_then(|block| block.parent);
        while let Some(at) = parent {
            list.extend(self.named_first(at));
            parent = self.blocks.list.get(at).and_then(|block| block.parent);
        }
        list.extend(self.head_line(block));
        let mut heading = self.blocks.list.get(block).and_then(|block| block.heading);
        while let Some(at) = heading {
            if self.is_of_something_else(at) {
                break;
            }
            list.extend(self.named_alone(at));
            heading = self.blocks.list.get(at).and_then(|block| block.heading);
        }
        list
    }

    /// The label that a block stands right under: a heading or an outer list item that is nothing but a label.
    pub fn label(&self, block: BlockIx) -> Option<(Label, String)> {
        let own = self.blocks.list.get(block)?;
        let mut above = Vec::new();
        let mut parent = own.parent;
        while let Some(at) = parent {
            above.push(at);
            parent = self.blocks.list.get(at).and_then(|block| block.parent);
        }
        above.extend(own.heading);
        above.into_iter().find_map(|at| {
            let text = self.blocks.list.get(at)?.plain.text.trim();
            let label = lexicon::label_of(text)?;
            label.kind.is_some().then(|| (label, text.to_owned()))
        })
    }

    /// The nerve that the block's own heading names, for an item that is nothing but a muscle.
    pub fn nerve_of_heading(&self, block: BlockIx) -> Option<Subject> {
        let own = self.blocks.list.get(block)?;
        let BlockKind::Item(_) = own.kind else { return None };
        let heading = own.heading?;
        let subject = self.named_alone(heading)?;
        let mentions = self.mentions.get(heading)?;
        let text = &self.blocks.list.get(heading)?.plain.text;
        let named = mentions.list.first()?.tokens;
        let is_other =
            |word: &str| word.chars().all(char::is_alphabetic) && !lexicon::adds_nothing(&word.to_lowercase());
        let has_other = mentions
            .tokens
            .iter()
            .enumerate()
            .any(|(at, token)| !(named.0..named.1).contains(&at) && is_other(token.span.of(text)));
        if has_other {
            return None;
        }
        subject.candidates.iter().all(|id| self.vocabulary.is_neural(*id)).then_some(subject)
    }

    /// The structure with which a list item or a term begins.
    fn named_first(&self, at: BlockIx) -> Option<Subject> {
        let mention = self.mentions.get(at)?.list.first()?;
        let is_first = mention.tokens.0 <= 2 || self.blocks.list.get(at)?.kind == BlockKind::Term;
        is_first.then(|| self.subject(at, 0)).flatten()
    }

    /// A paragraph above, under the same heading, that is nothing but one name: it serves as a heading.
    fn head_line(&self, block: BlockIx) -> Option<Subject> {
        let own = self.blocks.list.get(block)?;
        for at in (block.saturating_sub(HEAD_LINE_REACH)..block).rev() {
            let other = self.blocks.list.get(at)?;
            if other.heading != own.heading || matches!(other.kind, BlockKind::Heading(_) | BlockKind::Title) {
                return None;
            }
            let mentions = self.mentions.get(at)?;
            let words = mentions.tokens.iter().filter(|token| token.is_word).count();
            if other.kind == BlockKind::Paragraph
                && let [only] = mentions.list.as_slice()
                && only.tokens.1 - only.tokens.0 >= words
            {
                return self.subject(at, 0);
            }
        }
        None
    }

    /// Whether a block or what stands above it speaks of vessels.
    pub fn is_of_vessels(&self, block: BlockIx) -> bool {
        let Some(own) = self.blocks.list.get(block) else { return false };
        let Some(mentions) = self.mentions.get(block) else { return false };
        let text = &own.plain.text;
        mentions.tokens.iter().any(|token| lexicon::is_vessel(token.span.of(text)))
            || own.heading.is_some_and(|heading| self.is_of_something_else(heading))
    }

    /// A heading that speaks of vessels and the like: what stands above it is not the subject of what stands below.
    fn is_of_something_else(&self, at: BlockIx) -> bool {
        let Some(block) = self.blocks.list.get(at) else { return false };
        let words = block.plain.text.to_lowercase();
        words
            .split(|c: char| !c.is_alphabetic())
            .any(|word| lexicon::changes_the_structure(word) || lexicon::is_vessel(word))
    }

    /// The structure that a heading names, if it names one.
    fn named_alone(&self, at: BlockIx) -> Option<Subject> {
        let mentions = &self.mentions.get(at)?.list;
        let neural = mentions
            .iter()
            .filter(|mention| mention.candidates.iter().any(|id| self.vocabulary.is_neural(*id)))
            .count();
        if mentions.len() == 1 || (neural == 1 && mentions.len() == 2 && mentions.first()?.tokens.0 == 0) {
            return self.subject(at, 0);
        }
        None
    }

    fn subject(&self, at: BlockIx, number: usize) -> Option<Subject> {
        let mention = self.mentions.get(at)?.list.get(number)?;
        let span = self.blocks.list.get(at)?.plain.to_source(mention.span);
        Some(Subject { candidates: mention.candidates.clone(), span })
    }
}
