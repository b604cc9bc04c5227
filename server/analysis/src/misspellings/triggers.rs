//! Which words of a block may be wrong: a quick look at each word and its neighbours, before any name is searched for.

use smallvec::SmallVec;

use crate::names::Form;

use super::find::Finder;
use super::guard::Known;
use super::index::{Near, SHORTEST};
use super::latin;
use super::word::{LONG, PREFIXES, Status, Word};

/// Longer rare words are what they are, though they sound like a name's.
pub(super) const LONGEST_HEARD: usize = 6;

impl Finder<'_> {
    pub(super) fn is_trigger(&self, at: usize) -> bool {
        let beside_vocabulary = || {
            [true, false].into_iter().any(|back| {
                let next = self.neighbour(at, back);
                let small = |place: &usize| self.is_small(*place);
                let next = next.filter(small).and_then(|place| self.neighbour(place, back)).or(next);
                next.is_some_and(|place| self.status(place) == Status::Vocabulary && !small(&place))
            })
        };
        match self.status(at) {
            Status::Unknown => beside_vocabulary() || self.may_be_meant(at),
            Status::Inflected => true,
            Status::Stub => self.begins_word(at),
            Status::Aside | Status::Passable => false,
            Status::Vocabulary => self.may_be_out_of_place(at),
            Status::Short => PREFIXES.contains(&self.folded(at)) && self.begins_word(at),
            Status::Right(Known::Rare) => beside_vocabulary() && self.may_slip(at),
            Status::Right(Known::Common) => self.in_subject && beside_vocabulary() && self.may_slip(at),
        }
    }

    /// Whether a word of the vocabulary stands where no name has it, and one near to it would make a name with its
    /// neighbours: another form (*plexus pharyngeum*), or a word at one edit (*ulna nerve*).
    fn may_be_out_of_place(&self, at: usize) -> bool {
        let form = |place: usize| self.mentions.forms.get(place).copied();
        let own = form(at).unwrap_or_default();
        if self.mentions.tokens.get(at).is_none_or(|token| token.span.len() < SHORTEST) {
            return false;
        }
        let before = self.neighbour(at, true);
        let is_known = |place: Option<usize>| place.and_then(form).is_some_and(|form| !form.is_unknown());
        if own.exact.is_some() && !is_known(before) && !is_known(self.neighbour(at, false)) {
            return false;
        }
        let Some(word) = self.word(at).filter(|word| word.folded.len() >= SHORTEST) else { return false };
        if own.exact.is_none() && self.begins_word(at) {
            return true;
        }
        let list = &self.mentions.list;
        let mention = list.get(list.partition_point(|mention| mention.tokens.1 <= at));
        let mention = mention.filter(|one| one.tokens.0 <= at && one.tokens.1 - one.tokens.0 > 1);
        // The first word of a name inside a longer one may have the wrong case (*ramus posterior nervus axillaris*).
        let is_led = |before: usize| latin::looks_latin(self.folded(before)) && latin::looks_latin(&word.folded);
        if mention.is_some_and(|one| one.tokens.0 < at || !before.is_some_and(is_led)) {
            return false;
        }
        let behind = self.neighbour(at, false).filter(|_| mention.is_none());
        let (before, behind) = (before.and_then(form), behind.and_then(form));
        let stands = |near: Near, before: Option<Form>, behind: Option<Form>| {
            let form = self.index.target(near.target).map(|target| target.form).unwrap_or_default();
            self.index.stands_beside(form, before, behind)
        };
        self.index.may_be_wrong_form(own, before, behind)
            || own.exact.is_none() && self.index.family(&word.folded).any(|near| stands(near, before, behind))
            || [(before, None), (None, behind)].into_iter().any(|(before, behind)| {
                let is_known = before.or(behind).is_some_and(|form| !form.is_unknown());
                is_known
                    && !self.index.stands_beside(own, before, behind)
                    && self.endings(at, word).into_iter().any(|near| stands(near, before, behind))
            })
    }

    /// Targets that differ from a word of the vocabulary in its end and are of another family: a letter is lost there, or the
    /// word is no name's itself.
    pub(super) fn endings(&self, at: usize, word: &Word) -> SmallVec<[Near; 2]> {
        let folded = &*word.folded;
        let is_other = |near: &Near| {
            let target = self.index.target(near.target);
            target.is_some_and(|target| latin::stem(folded) != latin::stem(&target.text))
        };
        if !self.is_derived(at) {
            return self.index.with_one_more(folded).filter(is_other).collect();
        }
        let is_end = |near: &Near| {
            let target = self.index.target(near.target).map_or("", |target| &*target.text);
            let same = folded.bytes().zip(target.bytes()).take_while(|(a, b)| a == b).count();
            same + 3 >= folded.len()
        };
        word.at_one_edit(self.index).iter().copied().filter(|near| is_end(near) && is_other(near)).collect()
    }

    /// Whether a right word stands so near to a word of the vocabulary that its neighbours would make a name with that.
    fn may_slip(&self, at: usize) -> bool {
        let Some(word) = self.word(at) else { return false };
        let rare = self.status(at) == Status::Right(Known::Rare);
        if !rare && !word.is_beside(self.index) {
            return self.begins_word(at);
        }
        let (before, behind) = (self.neighbour(at, true), self.neighbour(at, false));
        let unknown = |place: Option<usize>| place.is_some_and(|place| self.status(place) == Status::Unknown);
        if unknown(before) || unknown(behind) {
            return true;
        }
        let form = |place: Option<usize>| place.and_then(|place| self.mentions.forms.get(place).copied());
        let (before, behind) = (form(before), form(behind));
        let fits = |near: Near| {
            let form = self.index.target(near.target).map(|target| target.form).unwrap_or_default();
            [form.exact, form.singular].into_iter().flatten().any(|word| self.index.may_stand(word, before, behind))
        };
        let heard = rare && word.folded.len() <= LONGEST_HEARD;
        if heard && word.nearest(self.index).iter().copied().any(fits)
            || rare && self.index.family(&word.folded).any(fits)
        {
            return true;
        }
        word.at_one_edit(self.index).iter().copied().any(fits) || self.begins_word(at)
    }

    /// Whether an unknown word by itself may be a slip: a long one, or one near to a word of the vocabulary.
    fn may_be_meant(&self, at: usize) -> bool {
        let Some(word) = self.word(at) else { return false };
        let folded = &word.folded;
        folded.len() >= LONG
            || word.is_beside(self.index)
            || self.index.sounds_known(folded)
            || self.begins_word(at)
            || (3..folded.len().saturating_sub(2)).any(|cut| {
                let (head, tail) = folded.split_at(cut);
                self.index.is_name_word(head) && self.index.is_name_word(tail)
            })
    }

    /// Whether a word and its neighbour make one word of the vocabulary together.
    fn begins_word(&self, at: usize) -> bool {
        let mut joined = String::new();
        [at.checked_sub(1), Some(at)].into_iter().flatten().any(|first| {
            let (head, tail) = (self.folded(first), self.folded(first + 1));
            if head.is_empty() || tail.is_empty() || head.len() + tail.len() <= 6 {
                return false;
            }
            joined.clear();
            joined.push_str(head);
            joined.push_str(tail);
            self.index.is_name_word(&joined)
        })
    }
}
