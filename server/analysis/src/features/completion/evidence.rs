//! What speaks for a structure at a place of a text, and how much.
//!
//! Every sign is a number that is found from the text before and behind the place and from the graph; none knows a
//! structure by name. A structure's score is the sum of its signs, each times its weight. The weights were fitted to one
//! half of the texts in `tests/src/typed.rs` (`typed-report --evidence` writes what they are fitted to, `tests/weigh.py`
//! fits them); the other half is only scored.

use fascicle_model::{EntryId, Kind, Standing, Vocabulary};
use rustc_hash::FxHashMap;

use super::beginnings::Beginnings;
use super::names::{Name, Names};
use crate::features::context::Context;
use crate::names::is_article;
use crate::words::fold;

macro_rules! signs {
    ($($(#[$doc:meta])* $name:ident = $weight:literal),+ $(,)?) => {
        /// What can speak for or against a structure.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Sign { $($(#[$doc])* $name),+ }

        impl Sign {
            /// Every sign, in the order of the numbers in an [`Evidence`].
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// What it counts.
            const fn weight(self) -> f32 {
                match self { $(Self::$name => $weight),+ }
            }

            /// Its name.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$name => stringify!($name)),+ }
            }
        }
    };
}

signs! {
    /// The name begins with what was typed.
    Begins = 4.7,
    /// A later word of the name does.
    LaterWord = -1.81,
    /// What was typed are beginnings of several of its words, in order.
    Beginnings = 1.21,
    /// The first of its words is one of them.
    FirstBegins = 2.89,
    /// The last of them that tells it from others is one of them.
    LastBegins = 1.75,
    /// How many telling words between them are not, as a logarithm.
    Skipped = 0.13,
    /// How well the letters are found in the name, from 0 to 1, where nothing of this is so.
    Letters = -3.09,
    /// The name is what was typed.
    Whole = -0.9,
    /// It is the name that the author would use.
    Own = 3.51,
    /// A Latin name in a document that does not write Latin.
    Latin = -1.35,
    /// A name after a person.
    Eponym = -0.04,
    /// A name that was given up, or one of everyday speech.
    Former = -0.41,
    /// An abbreviation, as it was typed.
    Abbreviation = 9.0,
    /// An abbreviation in other letters, small or capital, or not typed to its end.
    LooseAbbreviation = -1.0,
    /// A short name, clear in its context.
    Short = 1.13,
    /// How many words the name has, as a logarithm.
    Words = -2.35,
    /// How much is known of the structure.
    Facts = 0.72,
    /// How many names it has.
    NamesOf = 0.65,
    /// Not everyone has it.
    Variant = -1.18,
    /// It is a part.
    Part = 0.01,
    /// A nerve.
    IsNerve = 0.81,
    /// A muscle.
    IsMuscle = 0.49,
    /// A plexus.
    IsPlexus = 0.39,
    /// A joint.
    IsJoint = -2.08,
    /// An area of skin.
    IsSkin = 1.79,
    /// A group of muscles.
    IsGroup = 1.38,
    /// It makes the statement true.
    Fits = 0.99,
    /// It makes the statement true, with what few others do.
    FitsFew = 0.55,
    /// It makes the statement false.
    Contrary = -1.99,
    /// A statement is read with a structure of its kind there.
    Taken = 0.79,
    /// Statements are read with other kinds there, with this none.
    NotTaken = -0.79,
    /// The column takes its kind.
    Column = 1.54,
    /// The column takes other kinds.
    OtherColumn = -1.54,
    /// The share of its kind among what stands in the same place of other rows, items or headings.
    Alike = 1.01,
    /// A heading above names it, or what belongs to it, and the section has not named it.
    Near = 0.92,
    /// The same, and the section has named it.
    NearTold = 0.66,
    /// It is the first of what belongs to the heading that the section has not named.
    NearNext = 0.04,
    /// It belongs to what was named before.
    Local = 1.07,
    /// It belongs to what belongs to that.
    LocalFar = 0.66,
    /// It belongs to what the section names.
    Section = -0.13,
    /// It belongs to what belongs to that.
    SectionFar = 1.17,
    /// The share of its region in what the document names.
    Region = 2.08,
    /// How often the document names it.
    Named = 0.24,
    /// The section names it.
    Told = -1.38,
    /// The paragraph, item or cell has named it.
    InBlock = 0.34,
    /// The sentence has named it.
    InSentence = -1.19,
    /// It, its whole or a part of it was named last.
    Last = 0.2,
    /// What stands in the same place of other rows, items or headings has named it, a nerve.
    ListedNerve = 0.21,
    /// The same, any other.
    Listed = 0.14,
    /// It comes right after what was named last, in a list that both are in.
    Next = 1.51,
    /// It is in a list with what was named last, and the section has not named it.
    Sibling = 1.15,
    /// Its name begins with the same word as one that was named shortly before.
    SameWord = 0.04,
    /// An abbreviation or name of it stands right before, and a bracket or equals sign between.
    Alias = 0.66,
    /// A nerve after "the".
    TheNerve = 0.37,
    /// A muscle after "the".
    TheMuscle = -1.24,
    /// A nerve where a sentence, item or cell begins.
    StartNerve = 0.5,
    /// A muscle there.
    StartMuscle = 0.86,
    /// What was typed is what follows on the common words of what was named last and its own name.
    Coordinated = 8.0,
}

/// The numbers of the signs.
pub type Evidence = [f32; Sign::ALL.len()];

/// The sum of the signs, each times its weight.
pub fn weigh(evidence: &Evidence) -> f32 {
    evidence.iter().zip(Sign::ALL).map(|(number, sign)| number * sign.weight()).sum()
}

/// How a name matches what was typed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Match<'a> {
    pub name: &'a Name,
    /// How well the letters are found in it, from 0 to 1.
    pub letters: f32,
    /// The words of it whose beginnings were typed, where there are several.
    pub beginnings: Option<Beginnings>,
    /// What was typed stands for the end of the name, and a name before has its beginning.
    pub coordinated: bool,
}

/// What the signs of all structures at one place are found from.
#[derive(Debug)]
pub(super) struct Scene<'a> {
    context: &'a Context<'a>,
    vocabulary: &'a Vocabulary,
    names: &'a Names,
    local: Spread,
    section: Spread,
    regions: FxHashMap<fascicle_model::Region, f32>,
    next: Vec<EntryId>,
    siblings: Vec<EntryId>,
    near_next: Option<EntryId>,
    words: Vec<&'a str>,
    listed: f32,
    alias: bool,
    article: bool,
    start: bool,
}

/// What is joined to some structures by one fact, and by two.
#[derive(Debug, Default)]
struct Spread {
    one: FxHashMap<EntryId, f32>,
    two: FxHashMap<EntryId, f32>,
}

impl Spread {
    /// Every structure gives what it has in equal shares to those that it is joined to, and these give it on.
    #[allow(clippy::cast_precision_loss)]
    fn new(from: impl Iterator<Item = (EntryId, f32)>, names: &Names) -> Self {
        let mut spread = Self::default();
        for (id, has) in from {
            let links = names.links(id);
            let share = has / (links.len() as f32).sqrt().max(1.0);
            for link in links {
                *spread.one.entry(*link).or_default() += share;
            }
        }
        for (id, has) in &spread.one {
            let links = names.links(*id);
            let share = has / (links.len() as f32).max(1.0);
            for link in links {
                *spread.two.entry(*link).or_default() += share;
            }
        }
        spread
    }

    fn of(map: &FxHashMap<EntryId, f32>, id: EntryId) -> f32 {
        map.get(&id).map_or(0.0, |has| (10.0 * has).ln_1p())
    }
}

impl<'a> Scene<'a> {
    #[allow(clippy::cast_precision_loss)]
    pub fn new(
        context: &'a Context<'a>,
        line: &str,
        start: bool,
        vocabulary: &'a Vocabulary,
        names: &'a Names,
    ) -> Self {
        let before = line.trim_end();
        let article = before.rsplit(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
        let ages = (1_u8..).map(|age| 1.0 / f32::from(age).sqrt());
        let local = Spread::new(context.last.iter().copied().zip(ages), names);
        let told = context.headed.iter().chain(context.told.iter()).map(|id| (*id, 1.0));
        let section = Spread::new(told, names);
        let mut regions: FxHashMap<_, f32> = FxHashMap::default();
        for id in context.named.keys() {
            *regions.entry(vocabulary.entry(*id).region).or_default() += 1.0;
        }
        let all: f32 = regions.values().sum::<f32>() + 1.0;
        for count in regions.values_mut() {
            *count /= all;
        }
        let mut scene = Self {
            context,
            vocabulary,
            names,
            local,
            section,
            regions,
            next: Vec::new(),
            siblings: Vec::new(),
            near_next: context.near.iter().copied().find(|id| !context.told.contains(id)),
            words: context.last.iter().take(3).filter_map(|id| Some(&*names.about(*id)?.first_word)).collect(),
            listed: context.listed.len().max(1) as f32,
            alias: context.follows_last && before.ends_with(['(', '[', '=']),
            article: is_article(&fold(article)),
            start,
        };
        scene.look_at_lists();
        scene
    }

    /// The lists that what was named last is in.
    fn look_at_lists(&mut self) {
        let Some(last) = self.context.last.first().copied() else { return };
        let vocabulary = self.vocabulary;
        let mut lists: Vec<Vec<EntryId>> = Vec::new();
        for relation in vocabulary.entry(last).usual() {
            let Some(target) = relation.target() else { continue };
            match vocabulary.kind(target) {
                Kind::Nerve | Kind::Plexus => {
                    lists.push(vocabulary.twigs(target).into_iter().map(|supply| supply.muscle).collect());
                    lists.push(vocabulary.branches(target));
                }
                Kind::Group => lists.push(vocabulary.members(target)),
                _ => {}
            }
        }
        if let Some(whole) = vocabulary.entry(last).part_of {
            lists.push(vocabulary.parts(whole).to_vec());
        }
        for list in lists {
            let Some(place) = list.iter().position(|id| *id == last) else { continue };
            let is_open = |id: &&EntryId| !self.context.told.contains(id);
            self.next.extend(list.iter().skip(place + 1).find(is_open));
            self.siblings.extend(list.iter().filter(is_open));
        }
    }

    /// The signs of an entry that is meant by a name.
    #[allow(clippy::cast_precision_loss)]
    pub fn evidence(&self, found: Match, folded: &str, typed: &str, is_own: bool) -> Evidence {
        let Match { name, .. } = found;
        let (id, context, vocabulary) = (name.entry, self.context, self.vocabulary);
        let entry = vocabulary.entry(id);
        let about = self.names.about(id);
        let mut evidence = [0.0; Sign::ALL.len()];
        let mut set = |sign: Sign, number: f32| {
            if let Some(slot) = evidence.get_mut(sign as usize) {
                *slot = number;
            }
        };
        let said = |says: bool| f32::from(u8::from(says));

        let begins = name.folded.starts_with(folded);
        let later = !begins && name.folded.split([' ', '-']).any(|word| word.starts_with(folded));
        set(Sign::Begins, said(begins && !found.coordinated));
        set(Sign::LaterWord, said(later && !found.coordinated));
        let is_found = begins || later || found.coordinated || found.beginnings.is_some();
        set(Sign::Letters, if is_found { 0.0 } else { found.letters });
        if let Some(beginnings) = found.beginnings.filter(|_| !begins && !found.coordinated) {
            set(Sign::Beginnings, 1.0);
            set(Sign::FirstBegins, said(beginnings.first));
            set(Sign::LastBegins, said(beginnings.last));
            set(Sign::Skipped, f32::from(beginnings.skipped).ln_1p());
        }
        set(Sign::Whole, said(name.folded == folded));
        set(Sign::Coordinated, said(found.coordinated));
        set(Sign::Own, said(is_own));
        let is_as_typed = name.text == typed;
        match name.standing {
            Standing::Latin => set(Sign::Latin, said(!context.is_latin)),
            Standing::Eponym => set(Sign::Eponym, 1.0),
            Standing::Former | Standing::Informal => set(Sign::Former, said(!is_own)),
            Standing::Abbreviation if is_as_typed => set(Sign::Abbreviation, 1.0),
            Standing::Abbreviation => set(Sign::LooseAbbreviation, 1.0),
            Standing::Short => set(Sign::Short, 1.0),
            Standing::Preferred | Standing::Exact | Standing::Spelling => {}
        }
        set(Sign::Words, (name.folded.split([' ', '-']).count() as f32).ln());

        set(Sign::Facts, about.map_or(0.0, |about| about.facts));
        set(Sign::NamesOf, about.map_or(0.0, |about| about.names));
        set(Sign::Variant, said(entry.variant));
        set(Sign::Part, said(entry.part_of.is_some()));
        match entry.kind {
            Kind::Nerve => set(Sign::IsNerve, 1.0),
            Kind::Muscle => set(Sign::IsMuscle, 1.0),
            Kind::Plexus => set(Sign::IsPlexus, 1.0),
            Kind::Joint => set(Sign::IsJoint, 1.0),
            Kind::Skin => set(Sign::IsSkin, 1.0),
            Kind::Group => set(Sign::IsGroup, 1.0),
            Kind::Root | Kind::Landmark | Kind::Movement => {}
        }

        let fits = context.fitting.contains(&id);
        set(Sign::Fits, said(fits));
        set(Sign::FitsFew, if fits { 1.0 / (context.fitting.len() as f32).sqrt() } else { 0.0 });
        set(Sign::Contrary, said(!fits && context.contrary.contains(&id)));
        let taken = context.taken.contains(&entry.kind);
        set(Sign::Taken, said(taken));
        set(Sign::NotTaken, said(!taken && !context.taken.is_empty()));
        let column = context.kinds.contains(&entry.kind);
        set(Sign::Column, said(column));
        set(Sign::OtherColumn, said(!column && !context.kinds.is_empty()));
        let alike = context.listed.iter().filter(|other| vocabulary.kind(**other) == entry.kind).count();
        set(Sign::Alike, alike as f32 / self.listed);

        let told = context.told.contains(&id);
        let near = context.near.contains(&id);
        set(Sign::Near, said(near && !told));
        set(Sign::NearTold, said(near && told));
        set(Sign::NearNext, said(self.near_next == Some(id)));
        set(Sign::Local, Spread::of(&self.local.one, id));
        set(Sign::LocalFar, Spread::of(&self.local.two, id));
        set(Sign::Section, Spread::of(&self.section.one, id));
        set(Sign::SectionFar, Spread::of(&self.section.two, id));
        set(Sign::Region, self.regions.get(&entry.region).copied().unwrap_or_default());

        let named = context.named.get(&id).copied().unwrap_or_default();
        set(Sign::Named, (named as f32).ln_1p());
        set(Sign::Told, said(told));
        set(Sign::InBlock, said(context.in_block.contains(&id)));
        set(Sign::InSentence, said(context.in_sentence.contains(&id)));
        let last = context.last.first().copied();
        let is_last = last.is_some_and(|last| {
            last == id || entry.part_of == Some(last) || vocabulary.entry(last).part_of == Some(id)
        });
        set(Sign::Last, said(is_last));
        let listed = context.listed.contains(&id);
        set(Sign::ListedNerve, said(listed && entry.kind == Kind::Nerve));
        set(Sign::Listed, said(listed && entry.kind != Kind::Nerve));
        set(Sign::Next, said(self.next.contains(&id)));
        set(Sign::Sibling, said(self.siblings.contains(&id) && last != Some(id)));
        set(Sign::Alias, said(self.alias && last == Some(id)));
        set(Sign::TheNerve, said(self.article && entry.kind == Kind::Nerve));
        set(Sign::TheMuscle, said(self.article && entry.kind == Kind::Muscle));
        set(Sign::StartNerve, said(self.start && entry.kind == Kind::Nerve));
        set(Sign::StartMuscle, said(self.start && entry.kind == Kind::Muscle));
        let same = about.is_some_and(|about| self.words.contains(&&*about.first_word));
        set(Sign::SameWord, said(same && !told));
        evidence
    }
}
