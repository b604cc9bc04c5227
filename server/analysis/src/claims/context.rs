//! Names that are short where the structure is known that they belong to: *its deep branch*, *the inferior division*, *the
//! long head*.
//!
//! A name of a part or branch says what it is a part of ("deep branch of ulnar nerve"); where the text has just spoken of
//! that structure, the words before "of" are enough. They are looked for among the branches and parts of the structures
//! named before them in the block, else of those that the block stands under. Where several fit, each is meant.

use std::borrow::Cow;

use fascicle_model::{EntryId, Kind, Region, Standing, Vocabulary};

use super::rows;
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
            if matches!(word, "branch" | "branches") && reader.word(at + 1) == "of" {
                added.extend(reader.branch_of_short(at));
            }
        } else if matches!(word, "compartment" | "group") {
            added.extend(reader.compartment(at));
        } else if word == "one" {
            added.extend(reader.other_one(at));
        }
    }
    added.extend(rows::members(knowledge, text, mentions));
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
        let mut places: Vec<(usize, usize)> = Vec::new();
        let mut at = noun;
        // "its deep *terminal* branch"
        while at.checked_sub(1).is_some_and(|before| lexicon::is_of_any_branch(&self.word(before).to_lowercase())) {
            at -= 1;
        }
        let last_word = at;
        while let Some(before) = at.checked_sub(1) {
            let word = self.word(before).to_lowercase();
            if lexicon::contrast_of(&word).is_some() || lexicon::tells_part(&word) {
                places.push((before, before + 1));
                at = before;
            } else if let Some(from) = self.begins_branch(before, one, &written).filter(|_| one == "branch") {
                places.push((from, before + 1));
                at = from;
            } else if !places.is_empty() && (lexicon::is_conjunction(&word) || matches!(&*word, "a" | "an" | "the")) {
                at = before;
            } else {
                break;
            }
        }
        places.reverse();
        let Some((first, _)) = places.first().copied() else { return Vec::new() };
        let article = first.checked_sub(1).map_or("", |place| self.word(place)).to_lowercase();
        let has_article =
            matches!(&*article, "the" | "its" | "their" | "a" | "an" | "this" | "that" | "his" | "her" | "both");
        // "divides into superficial and deep branches": a row of them needs no article.
        let opens_row = is_plural && places.len() > 1 && lexicon::opens_row(&article);
        if !has_article && !opens_row && first > 0 {
            return Vec::new();
        }
        if !is_plural {
            // "the deep motor branch" is one name; so are "long" and "deep" beside each other.
            let adjectives: Vec<String> = (first..last_word).map(|place| self.word(place).to_lowercase()).collect();
            let is_row = places.windows(2).all(|pair| matches!(pair, [a, b] if a.1 == b.0));
            if is_row {
                let words = format!("{} {one}", adjectives.join(" "));
                return self.mention(first, noun + 1, &[&words]).and_then(Result::ok).into_iter().collect();
            }
        }
        let last = places.len().saturating_sub(1);
        // "the anterior divisions" are not the one that a nerve has of that name.
        let is_one = |mention: &Mention| mention.candidates.len() == 1;
        let are_more = is_plural && places.len() == 1;
        let named = places.iter().enumerate().map(|(number, (from, to))| {
            let end = if number == last { noun + 1 } else { *to };
            let words: Vec<String> = (*from..*to).map(|place| self.word(place).to_lowercase()).collect();
            let words = words.join(" ");
            self.mention(*from, end, &[&format!("{words} {one}"), &format!("{words} {written}")])
        });
        // Those that are known as they stand are left as they are.
        let named = named.collect::<Option<Vec<Result<Mention, ()>>>>().unwrap_or_default();
        let named: Vec<Mention> = named.into_iter().flatten().collect();
        if are_more && named.iter().any(is_one) { Vec::new() } else { named }
    }

    /// Where the words begin, one or two, that end before a token and name a branch of what the text speaks of: "*marginal
    /// mandibular* and cervical branches".
    fn begins_branch(&self, last: usize, one: &str, written: &str) -> Option<usize> {
        let is_word = |at: usize| self.word(at).chars().all(char::is_alphabetic) && !self.word(at).is_empty();
        [last.saturating_sub(1), last].into_iter().find(|from| {
            let words: Vec<String> = (*from..=last).map(|place| self.word(place).to_lowercase()).collect();
            let words = words.join(" ");
            let forms = [format!("{words} {one}"), format!("{words} {written}")];
            (*from..=last).all(is_word)
                && !lexicon::is_conjunction(&words)
                && forms.iter().any(|form| !self.meant_below(*from, form).is_empty())
        })
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
            .find_map(|noun| self.mention(from, one + 1, &[&format!("{adjective} {noun}")]).and_then(Result::ok))?;
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

    /// "deep branch of ulnar", "recurrent branch of the median": the noun is left out behind the name of the nerve.
    fn branch_of_short(&self, noun: usize) -> Option<Mention> {
        let from = noun.checked_sub(1)?;
        let of = noun + 2 + usize::from(self.word(noun + 2) == "the");
        let next = self.word(of + 1).to_lowercase();
        let has_noun =
            matches!(&*next, "nerve" | "nerves" | "n" | "artery" | "vein" | "plexus") || self.word(of).is_empty();
        let tokens = &self.mentions.tokens;
        let span = Span::new(tokens.get(from)?.span.start, tokens.get(of)?.span.end);
        let written = format!("{} branch of {} nerve", self.word(from), self.word(of)).to_lowercase();
        let candidates: Vec<EntryId> = self.names.lookup(&written).iter().map(|name| name.entry).collect();
        (!has_noun && !candidates.is_empty()).then_some(Mention {
            span,
            tokens: (from, of + 1),
            candidates,
            standing: Standing::Short,
            plural: false,
            shared: false,
        })
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

    /// The name from a token to another by one of the words for it; an error where it is known as it stands.
    fn mention(&self, from: usize, to: usize, words: &[&str]) -> Option<Result<Mention, ()>> {
        let tokens = &self.mentions.tokens;
        let span = Span::new(tokens.get(from)?.span.start, tokens.get(to.checked_sub(1)?)?.span.end);
        let known = self.mentions.list.iter().find(|mention| mention.span.overlaps(span));
        let meant = |words: &&str| {
            let found = self.meant(from, words);
            if found.is_empty() && words.contains(" branch") { self.meant_below(from, words) } else { found }
        };
        let mut candidates = words.iter().map(meant).find(|found| !found.is_empty())?;
        // "buccal" alone, or for the nerve in a row, is the branch where the text speaks of the nerve that has one.
        let is_adjective = known.is_some_and(|known| {
            known.tokens.1 == known.tokens.0 + 1
                && known.standing == Standing::Short
                && known.candidates.iter().all(|id| self.vocabulary.is_neural(*id))
        });
        if let Some(known) = known.filter(|known| known.tokens == (from, to) && !is_adjective) {
            if known.candidates.iter().all(|id| candidates.contains(id)) {
                return Some(Err(()));
            }
            candidates.retain(|id| known.candidates.contains(id));
        }
        // A name that is known stays, unless it can be several and the context tells which.
        if known.is_some_and(|known| !is_adjective && (known.candidates.len() < 2 || known.tokens != (from, to))) {
            return None;
        }
        let is_fewer = known.is_none_or(|known| is_adjective || candidates.len() < known.candidates.len());
        (!candidates.is_empty() && is_fewer).then_some(Ok(Mention {
            span,
            tokens: (from, to),
            candidates,
            standing: Standing::Short,
            plural: false,
            // Its noun stands behind the last of the row.
            shared: true,
        }))
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

    /// The branches that are called so, however far below what is named right before a token or stands above.
    fn meant_below(&self, at: usize, words: &str) -> Vec<EntryId> {
        let vocabulary = self.vocabulary;
        let is_nerve = |id: &&EntryId| vocabulary.kind(**id) == Kind::Nerve;
        let before = self.mentions.list.iter().filter(|mention| mention.tokens.1 <= at);
        let named = before.flat_map(|mention| mention.candidates.iter()).filter(is_nerve);
        let above = self.subjects.iter().flat_map(|subject| subject.candidates.iter()).filter(is_nerve);
        let called = |id: &EntryId| -> Vec<EntryId> {
            let is_called = |name: &str| name.strip_prefix(words).is_some_and(|rest| rest.starts_with(" of "));
            let mut below = vocabulary.usual_descendants(*id);
            below.retain(|id| vocabulary.entry(*id).names.iter().any(|name| is_called(&name.text)));
            below
        };
        named.chain(above).map(called).find(|found| !found.is_empty()).unwrap_or_default()
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
