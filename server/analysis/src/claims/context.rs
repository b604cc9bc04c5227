//! Names that are short where the structure is known that they belong to: *its deep branch*, *the inferior division*, *the
//! long head*.
//!
//! A name of a part or branch says what it is a part of ("deep branch of ulnar nerve"); where the text has just spoken of
//! that structure, the words before "of" are enough. They are looked for among the branches and parts of the structures
//! named before them in the block, else of those that the block stands under. Where several fit, each is meant.

use std::borrow::Cow;

use fascicle_model::{EntryId, Kind, Region, Standing, Vocabulary};

use super::sentences::Subject;
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions::{Mention, Mentions, is_bare_adjective};
use crate::names::NameIndex;
use crate::text::Span;

/// The mentions of a block with those names added that its context completes.
pub fn named<'m>(knowledge: &Knowledge, text: &str, mentions: &'m Mentions, subjects: &[Subject]) -> Cow<'m, Mentions> {
    let reader = Reader { vocabulary: &knowledge.vocabulary, names: &knowledge.names, text, mentions, subjects };
    let mut added: Vec<Mention> = Vec::new();
    for (at, token) in mentions.tokens.iter().enumerate() {
        let word = token.span.of(text);
        if token.is_word && lexicon::is_noun_of_part(word) {
            added.extend(reader.ending_with(at));
        } else if matches!(word, "compartment" | "group") {
            added.extend(reader.compartment(at));
        } else if word == "one" {
            added.extend(reader.other_one(at));
        }
    }
    let is_unknown_branch = |mention: &Mention| is_unknown_branch(mention, mentions, text, &knowledge.vocabulary);
    if added.is_empty() && !mentions.list.iter().any(is_unknown_branch) {
        return Cow::Borrowed(mentions);
    }
    let mut all = mentions.clone();
    all.list.retain(|mention| !is_unknown_branch(mention));
    all.list.retain(|mention| !added.iter().any(|own| own.span.overlaps(mention.span)));
    all.list.extend(added);
    all.list.sort_by_key(|mention| mention.span.start);
    Cow::Owned(all)
}

/// "Pharyngeal branch" is not the pharyngeal nerve: of which nerve it is a branch is not known.
pub fn is_unknown_branch(mention: &Mention, mentions: &Mentions, text: &str, vocabulary: &Vocabulary) -> bool {
    let noun = mentions.tokens.get(mention.tokens.1).map_or("", |token| token.span.of(text));
    matches!(noun, "branch" | "branches") && is_bare_adjective(mention, vocabulary)
}

struct Reader<'a> {
    vocabulary: &'a Vocabulary,
    names: &'a NameIndex,
    text: &'a str,
    mentions: &'a Mentions,
    subjects: &'a [Subject],
}

impl Reader<'_> {
    fn word(&self, at: usize) -> &str {
        self.mentions.tokens.get(at).map_or("", |token| token.span.of(self.text))
    }

    /// The short names that end with a noun: one, or as many as adjectives are joined before a plural.
    fn ending_with(&self, noun: usize) -> Vec<Mention> {
        let written = self.word(noun).to_lowercase();
        if matches!(self.word(noun + 1), "of" | "from") {
            return Vec::new();
        }
        let one = lexicon::one_part(&written);
        let is_plural = one != written;
        let mut places = Vec::new();
        let mut at = noun;
        while let Some(before) = at.checked_sub(1) {
            let word = self.word(before).to_lowercase();
            if lexicon::contrast_of(&word).is_some() || lexicon::tells_part(&word) {
                places.push(before);
            } else if !(!places.is_empty() && (lexicon::is_conjunction(&word) || matches!(&*word, "a" | "an" | "the")))
            {
                break;
            }
            at = before;
        }
        places.reverse();
        let Some(first) = places.first().copied() else { return Vec::new() };
        let article = first.checked_sub(1).map_or("", |place| self.word(place)).to_lowercase();
        let has_article =
            matches!(&*article, "the" | "its" | "their" | "a" | "an" | "this" | "that" | "his" | "her" | "both");
        if !has_article && first > 0 {
            return Vec::new();
        }
        if !is_plural {
            // "the deep motor branch" is one name; so are "long" and "deep" beside each other.
            let adjectives: Vec<String> = places.iter().map(|place| self.word(*place).to_lowercase()).collect();
            let is_row = places.windows(2).all(|pair| matches!(pair, [a, b] if a + 1 == *b));
            if is_row {
                let words = format!("{} {one}", adjectives.join(" "));
                return self.mention(first, noun + 1, &words).into_iter().collect();
            }
        }
        let last = places.len().saturating_sub(1);
        // "the anterior divisions" are not the one that a nerve has of that name.
        let is_one = |mention: &Mention| mention.candidates.len() == 1;
        let are_more = is_plural && places.len() == 1;
        let named = places.iter().enumerate().map(|(number, place)| {
            let end = if number == last { noun + 1 } else { place + 1 };
            self.mention(*place, end, &format!("{} {one}", self.word(*place).to_lowercase()))
        });
        let named = named.collect::<Option<Vec<Mention>>>().unwrap_or_default();
        if are_more && named.iter().any(is_one) { Vec::new() } else { named }
    }

    /// "the long head …, *the short one* …": the other part of what one part is named of.
    fn other_one(&self, one: usize) -> Option<Mention> {
        let from = one.checked_sub(1)?;
        let adjective = self.word(from).to_lowercase();
        let article = from.checked_sub(1).map_or("", |place| self.word(place));
        if lexicon::contrast_of(&adjective).is_none() || !matches!(article, "the" | "The") {
            return None;
        }
        let found = ["head", "belly", "part"]
            .iter()
            .find_map(|noun| self.mention(from, one + 1, &format!("{adjective} {noun}")))?;
        // Another part of the same must have been named, else "the inferior one" may be anything.
        let whole = |id: &EntryId| self.vocabulary.entry(*id).part_of;
        let mut before = self.mentions.list.iter().filter(|mention| mention.tokens.1 <= from);
        let is_of_same = before.any(|mention| {
            mention
                .candidates
                .iter()
                .any(|id| whole(id).is_some() && found.candidates.iter().any(|own| whole(own) == whole(id)))
        });
        is_of_same.then_some(found)
    }

    /// "the lateral compartment": that of the regions whose muscles the block names.
    fn compartment(&self, noun: usize) -> Option<Mention> {
        let from = noun.checked_sub(1)?;
        let adjective = self.word(from).to_lowercase();
        let tokens = &self.mentions.tokens;
        let span = Span::new(tokens.get(from)?.span.start, tokens.get(noun)?.span.end);
        let is_known = self.mentions.list.iter().any(|mention| mention.span.overlaps(span));
        if lexicon::contrast_of(&adjective).is_none() || self.word(noun + 1) == "of" || is_known {
            return None;
        }
        let named = self.mentions.list.iter().flat_map(|mention| mention.candidates.iter());
        let above = self.subjects.iter().flat_map(|subject| subject.candidates.iter());
        let mut regions: Vec<Region> = named
            .chain(above)
            .filter(|id| matches!(self.vocabulary.kind(**id), Kind::Muscle | Kind::Group))
            .map(|id| self.vocabulary.entry(*id).region)
            .collect();
        regions.sort_unstable();
        regions.dedup();
        let candidates: Vec<EntryId> = regions
            .iter()
            .flat_map(|region| self.names.lookup(&format!("{adjective} compartment of {}", region.word())))
            .map(|name| name.entry)
            .collect();
        let tokens = (from, noun + 1);
        (!candidates.is_empty()).then_some(Mention {
            span,
            tokens,
            candidates,
            standing: Standing::Short,
            plural: false,
            shared: false,
        })
    }

    fn mention(&self, from: usize, to: usize, words: &str) -> Option<Mention> {
        let tokens = &self.mentions.tokens;
        let span = Span::new(tokens.get(from)?.span.start, tokens.get(to.checked_sub(1)?)?.span.end);
        let known = self.mentions.list.iter().find(|mention| mention.span.overlaps(span));
        // A name that is known stays, unless it can be several and the context tells which.
        if known.is_some_and(|known| known.candidates.len() < 2 || known.tokens != (from, to)) {
            return None;
        }
        let mut candidates = self.meant(from, words);
        if let Some(known) = known {
            candidates.retain(|id| known.candidates.contains(id));
        }
        (!candidates.is_empty() && known.is_none_or(|known| candidates.len() < known.candidates.len())).then_some(
            Mention { span, tokens: (from, to), candidates, standing: Standing::Short, plural: false, shared: false },
        )
    }

    /// The parts and branches that are called so, of what is named before a token or stands above.
    fn meant(&self, at: usize, words: &str) -> Vec<EntryId> {
        let before = self.mentions.list.iter().filter(|mention| mention.tokens.1 <= at);
        let mut found: Vec<EntryId> = Vec::new();
        for id in before.flat_map(|mention| mention.candidates.iter()) {
            self.add_called(*id, words, &mut found);
        }
        let mut above = self.subjects.iter();
        while found.is_empty()
            && let Some(subject) = above.next()
        {
            for id in &subject.candidates {
                self.add_called(*id, words, &mut found);
            }
        }
        found
    }

    fn add_called(&self, whole: EntryId, words: &str, found: &mut Vec<EntryId>) {
        let vocabulary = self.vocabulary;
        let mut parts = match vocabulary.kind(whole) {
            Kind::Nerve | Kind::Plexus => vocabulary.usual_branches(whole),
            Kind::Muscle => Vec::new(),
            _ => return,
        };
        parts.extend(vocabulary.all_parts(whole));
        if vocabulary.kind(whole) == Kind::Muscle {
            parts.extend(vocabulary.wholes(whole).into_iter().flat_map(|whole| vocabulary.all_parts(whole)));
        }
        for part in parts {
            let entry = vocabulary.entry(part);
            let is_called = |name: &str| name.strip_prefix(words).is_some_and(|rest| rest.starts_with(" of "));
            let is_short = entry.short.as_deref() == Some(words);
            if (is_short || entry.names.iter().any(|name| is_called(&name.text))) && !found.contains(&part) {
                found.push(part);
            }
        }
    }
}
