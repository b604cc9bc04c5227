//! What completion goes by: every name, ready to be matched, and of every entry how much it is spoken of and with what.
//! Made once from a vocabulary.

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};

use crate::words::fold;

/// A name that can be completed to.
#[derive(Clone, Debug)]
pub(super) struct Name {
    /// As it is looked up.
    pub folded: String,
    /// As it is written.
    pub text: String,
    pub entry: EntryId,
    pub standing: Standing,
    pub letters: u32,
}

/// What does not depend on the place where an entry is named.
#[derive(Clone, Debug, Default)]
pub(super) struct About {
    /// How much the vocabulary has to say of it: the logarithm of the number of its facts and of the facts that point at it.
    pub facts: f32,
    /// How many names it has, as a logarithm: what is spoken of much has many.
    pub names: f32,
    /// The structures that facts join it to.
    pub links: Vec<EntryId>,
    /// The first word of its preferred name, folded.
    pub first_word: String,
}

/// All names of a vocabulary, ready to be matched.
#[derive(Clone, Debug, Default)]
pub struct Names {
    /// Sorted by the folded name.
    pub(super) list: Vec<Name>,
    /// In the order of the entries.
    about: Vec<About>,
}

impl Names {
    /// Derives them.
    pub fn new(vocabulary: &Vocabulary) -> Self {
        let mut list: Vec<Name> = vocabulary
            .iter()
            .filter(|(_, entry)| entry.kind != Kind::Movement)
            .flat_map(|(id, entry)| {
                entry.names.iter().map(move |name| Name {
                    folded: fold(&name.text),
                    text: name.text.clone(),
                    entry: id,
                    standing: name.standing,
                    letters: letters(&fold(&name.text)),
                })
            })
            .collect();
        list.sort_by(|a, b| a.folded.cmp(&b.folded));
        let about = vocabulary.iter().map(|(id, _)| About::new(id, vocabulary)).collect();
        Self { list, about }
    }

    /// The names that begin with a folded text.
    pub(super) fn starting_with<'a>(&'a self, prefix: &str) -> impl Iterator<Item = &'a Name> {
        let first = self.list.partition_point(|name| *name.folded < *prefix);
        self.list.iter().skip(first).take_while(move |name| name.folded.starts_with(prefix))
    }

    pub(super) fn about(&self, entry: EntryId) -> Option<&About> {
        self.about.get(entry.0 as usize)
    }

    /// The structures that facts join an entry to.
    pub(super) fn links(&self, entry: EntryId) -> &[EntryId] {
        self.about(entry).map_or(&[], |about| &about.links)
    }
}

impl About {
    #[allow(clippy::cast_precision_loss)] // no entry has millions of facts
    fn new(id: EntryId, vocabulary: &Vocabulary) -> Self {
        let entry = vocabulary.entry(id);
        let own = entry.facts.iter().filter_map(|fact| fact.relation.target());
        let mut links: Vec<EntryId> = own.chain(vocabulary.pointing_at(id).map(|(owner, _)| owner)).collect();
        let facts = entry.facts.len() + vocabulary.pointing_at(id).count();
        links.extend(entry.part_of);
        links.extend_from_slice(vocabulary.parts(id));
        links.retain(|other| *other != id && vocabulary.kind(*other) != Kind::Movement);
        links.sort_unstable();
        links.dedup();
        Self {
            facts: (facts as f32).ln_1p(),
            names: (entry.names.len() as f32).ln_1p(),
            links,
            first_word: fold(entry.name()).split([' ', '-']).next().unwrap_or_default().to_owned(),
        }
    }
}

/// Which letters a folded text has, one bit each, so that most names are passed over without being matched.
pub(super) fn letters(folded: &str) -> u32 {
    folded.bytes().filter(u8::is_ascii_lowercase).fold(0, |set, letter| set | 1 << (letter - b'a'))
}
