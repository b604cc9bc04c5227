//! The signs of lesions that the vocabulary knows, ready to be found in a text: by their names ("foot drop"), and where a
//! clause says in other words what happens ("the foot then drops", "the tongue points to the side of the lesion").

use fascicle_model::{EntryId, Relation, Vocabulary};

use rustc_hash::FxHashSet;

use crate::lexicon;
use crate::words::{fold, lower};

/// How many words a clause may take to tell a sign.
const LONGEST_TELLING: usize = 9;

/// A sign found in a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Its name, as the vocabulary has it.
    pub sign: String,
    /// How many words of the text tell it.
    pub len: usize,
    /// The text names a loss as a part of it ("cannot close the eye"), so that a word of loss is no effect of its own.
    pub is_of_loss: bool,
}

/// A sign by what is said to happen in it.
#[derive(Clone, Debug)]
struct Told {
    /// What must stand in the clause, each in the form of [`key`].
    keys: Vec<String>,
    is_of_loss: bool,
    sign: String,
}

/// The signs of lesions.
#[derive(Debug, Default)]
pub struct Signs {
    /// Names of signs, in lower case, as words.
    named: Vec<(Vec<String>, String)>,
    told: Vec<Told>,
    /// The first words of names, and all keys of what is told: with no other word does a sign begin.
    beginnings: FxHashSet<String>,
    /// The first letters of these and of what else is said of what happens in a sign.
    first_letters: FxHashSet<[u8; 3]>,
}

impl Signs {
    /// Takes the signs of a vocabulary. `is_movement` says whether a word is one for a movement: what is lost of movements
    /// is read as a loss.
    pub fn new(vocabulary: &Vocabulary, is_movement: &dyn Fn(&str) -> bool) -> Self {
        let mut signs = Self::default();
        let mut all: Vec<&str> = Vec::new();
        for (_, sign, _) in held(vocabulary) {
            if !all.contains(&sign) {
                all.push(sign);
            }
        }
        let words = |text: &str| -> Vec<String> {
            let words = text.to_lowercase();
            words
                .split(' ')
                .flat_map(|word| if word == "-" { vec![word] } else { word.split('-').collect() })
                .map(|word| word.trim_end_matches("'s").to_owned())
                .collect()
        };
        for sign in &all {
            if sign.split(' ').count() <= 3 || is_name(sign) {
                signs.named.push((words(sign), (*sign).to_owned()));
                if sign.contains('-') {
                    // a text's hyphen is a word of its own
                    signs.named.push((words(&sign.replace('-', " - ")), (*sign).to_owned()));
                }
            }
        }
        // "Erb's paralysis" beside "Erb palsy"
        let palsies = all.iter().filter_map(|sign| Some((*sign, sign.strip_suffix(" palsy")?)));
        for (sign, whose) in palsies {
            signs.named.push((words(&format!("{whose} paralysis")), sign.to_owned()));
        }
        // "the knee jerk is lost" beside "loss of the knee jerk"
        let reflexes = all.iter().filter_map(|sign| Some((*sign, sign.strip_prefix("loss of the ")?)));
        for (sign, reflex) in reflexes.filter(|(_, reflex)| reflex.ends_with(" reflex") || reflex.ends_with(" jerk")) {
            signs.named.push((words(reflex), sign.to_owned()));
            let other = match reflex.rsplit_once(' ') {
                Some((of, "reflex")) => format!("{of} jerk"),
                Some((of, _)) => format!("{of} reflex"),
                None => continue,
            };
            signs.named.push((words(&other), sign.to_owned()));
        }
        for sign in all {
            // "palate drooping on the side of the lesion and uvula pulled to the sound side"
            let halves: Vec<&str> = sign.split(" and ").filter(|half| half.split(' ').count() > 2).collect();
            let parts = if halves.len() > 1 { halves } else { vec![sign] };
            signs.told.extend(parts.into_iter().filter_map(|part| told(part, sign, is_movement)));
        }
        signs.beginnings.extend(signs.named.iter().filter_map(|(words, _)| words.first()).cloned());
        signs.beginnings.extend(signs.told.iter().flat_map(|told| &told.keys).cloned());
        let written = lexicon::HAPPENINGS.iter().flat_map(|(_, words)| *words).copied();
        signs.first_letters.extend(signs.beginnings.iter().map(String::as_str).chain(written).map(first_letters));
        signs
    }

    /// Whether a sign can begin with a word. Few words of a text are such, and only these need a closer look.
    pub fn may_begin(&self, word: &str) -> bool {
        if word.is_ascii() && !self.first_letters.contains(&first_letters(word)) {
            return false;
        }
        let word = lower(word);
        let word = without_genitive(&word);
        self.beginnings.contains(word) || key(word).is_some_and(|key| self.beginnings.contains(&key))
    }

    /// The sign that a text names from a word on.
    pub fn named_at<'w>(&self, at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<Found> {
        self.named
            .iter()
            .filter(|(words, _)| words.iter().zip(at..).all(|(wanted, at)| word(at) == wanted))
            .max_by_key(|(words, _)| words.len())
            .map(|(words, sign)| Found { sign: sign.clone(), len: words.len(), is_of_loss: false })
    }

    /// The sign that the words of a clause tell from the first of them on. `has_loss` says whether the clause tells of a loss.
    pub fn told_in(&self, clause: &[&str], has_loss: &dyn Fn() -> bool) -> Option<Found> {
        let first = key(clause.first()?)?;
        let mut begun = self.told.iter().filter(|told| told.keys.contains(&first)).peekable();
        begun.peek()?;
        let has_loss = has_loss();
        let keys: Vec<Option<String>> = clause.iter().take(LONGEST_TELLING).map(|word| key(word)).collect();
        let mut best: Option<(usize, Found)> = None;
        for told in begun.filter(|told| has_loss || !told.is_of_loss) {
            // "with radial deviation": two signs begin so, and what is said tells neither.
            let is_tie = best.as_ref().is_some_and(|(most, found)| *most == told.keys.len() && found.sign != told.sign);
            let is_beaten = best.as_ref().is_some_and(|(most, _)| *most >= told.keys.len());
            if is_beaten && !is_tie {
                continue;
            }
            let places = told.keys.iter().map(|wanted| keys.iter().position(|key| key.as_ref() == Some(wanted)));
            let Some(last) = places.collect::<Option<Vec<usize>>>().and_then(|places| places.into_iter().max()) else {
                continue;
            };
            let both = best.as_ref().filter(|_| is_tie).map(|(_, found)| common_words(&found.sign, &told.sign));
            let sign = match both {
                Some(both) if both.contains(' ') => both,
                Some(_) => continue,
                None => told.sign.clone(),
            };
            let found = Found { sign, len: last + 1, is_of_loss: told.is_of_loss };
            best = Some((told.keys.len(), found));
        }
        best.map(|(_, found)| found)
    }
}

/// Every sign of the vocabulary: whose it is, its name, and where along the nerve a lesion shows it.
pub fn held(vocabulary: &Vocabulary) -> impl Iterator<Item = (EntryId, &str, Option<EntryId>)> {
    vocabulary.iter().flat_map(|(id, entry)| {
        entry.facts.iter().filter_map(move |fact| match &fact.relation {
            Relation::Sign { sign, at } => Some((id, sign.as_str(), *at)),
            _ => None,
        })
    })
}

/// The words with which both of two signs begin.
fn common_words(a: &str, b: &str) -> String {
    let words = a.split(' ').zip(b.split(' ')).take_while(|(a, b)| a == b).map(|(a, _)| a);
    words.collect::<Vec<&str>>().join(" ")
}

/// A sign by what happens in it; `None` where its words tell too little, name a movement or a loss of feeling, or name it
/// as a whole.
fn told(part: &str, sign: &str, is_movement: &dyn Fn(&str) -> bool) -> Option<Told> {
    let mut keys: Vec<String> = Vec::new();
    let mut is_of_loss = false;
    for word in part.split([' ', '-']) {
        let bare = word.trim_end_matches(',');
        if keys.len() > 1 && lexicon::ends_sign(bare) {
            break;
        }
        if lexicon::is_numbness(bare) || bare == "numb" || lexicon::names_whole_sign(bare) || is_movement(bare) {
            return None;
        }
        if lexicon::is_loss(bare) && lexicon::happening(bare).is_none() {
            is_of_loss = true;
        } else if let Some(key) = key(bare)
            && !keys.contains(&key)
        {
            keys.push(key);
        }
        if word.ends_with(',') && keys.len() > 1 {
            break;
        }
    }
    let happens = |key: &String| lexicon::happening(key).is_some();
    let tells = keys.len() > 1 || (is_of_loss && keys.iter().any(happens));
    tells.then(|| Told { keys, is_of_loss, sign: sign.to_owned() })
}

/// What a word says in a sign, whatever its ending; `None` for words that say nothing.
fn key(word: &str) -> Option<String> {
    let word = fold(without_genitive(word));
    if let Some(happening) = lexicon::happening(&word) {
        return Some(happening.to_owned());
    }
    let is_empty = lexicon::is_determiner(&word)
        || lexicon::is_auxiliary(&word)
        || lexicon::is_conjunction(&word)
        || lexicon::means_part(&word)
        || lexicon::is_adverb(&word)
        || (lexicon::is_preposition(&word) && !lexicon::is_way(&word))
        || !word.starts_with(char::is_alphabetic);
    let stem = word.strip_suffix('s').filter(|stem| stem.len() > 2).unwrap_or(&word);
    (!is_empty).then(|| stem.chars().take(4).collect())
}

/// A word without the mark of the genitive.
pub fn without_genitive(word: &str) -> &str {
    word.trim_end_matches("'s").trim_end_matches("’s")
}

/// The first letters of a word without its genitive, whatever their case.
fn first_letters(word: &str) -> [u8; 3] {
    let mut letters = [0; 3];
    for (letter, byte) in letters.iter_mut().zip(without_genitive(word).bytes()) {
        *letter = byte.to_ascii_lowercase();
    }
    letters
}

/// Whether the words of a sign name it, as "winging of the scapula" does, and do not describe a loss, which is read as one.
fn is_name(sign: &str) -> bool {
    let first = sign.split(' ').next().unwrap_or_default();
    sign.split(' ').count() <= 5 && !lexicon::is_loss(first) && !lexicon::is_numbness(first) && first != "numb"
}
