//! Slips: misspellings of names as people make them, made up from a seed.
//!
//! Each [`Model`] is one way in which a name goes wrong. The generator is small and its own, so that the same seed gives
//! the same slips on every machine and with every version of a library.

use std::collections::{BTreeMap, BTreeSet};

/// One way in which a name goes wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Model {
    /// A letter replaced by its neighbour on the keyboard.
    Keyboard,
    /// A letter left out.
    Dropped,
    /// A letter doubled, or a double letter written once.
    Doubled,
    /// Two neighbouring letters swapped.
    Swapped,
    /// A vowel replaced by another.
    Vowel,
    /// Written as it sounds.
    Sound,
    /// A word written as two.
    Split,
    /// Two words written as one.
    Joined,
    /// Another Latin ending.
    Ending,
    /// One word of a long name left out.
    Lost,
    /// Two words of a long name in the wrong order.
    Order,
    /// Two slips in one name.
    Twice,
}

impl Model {
    /// Every model.
    pub const ALL: [Self; 12] = [
        Self::Keyboard,
        Self::Dropped,
        Self::Doubled,
        Self::Swapped,
        Self::Vowel,
        Self::Sound,
        Self::Split,
        Self::Joined,
        Self::Ending,
        Self::Lost,
        Self::Order,
        Self::Twice,
    ];

    /// What a table calls it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Keyboard => "keyboard neighbour",
            Self::Dropped => "letter dropped",
            Self::Doubled => "letter doubled or undoubled",
            Self::Swapped => "letters swapped",
            Self::Vowel => "vowel confused",
            Self::Sound => "written as it sounds",
            Self::Split => "word split",
            Self::Joined => "words joined",
            Self::Ending => "wrong Latin ending",
            Self::Lost => "word left out",
            Self::Order => "words in wrong order",
            Self::Twice => "two slips",
        }
    }

    /// A slip of this kind in a name, if the name allows one.
    pub fn slip(self, name: &str, random: &mut Random) -> Option<String> {
        let words: Vec<&str> = name.split(' ').collect();
        match self {
            Self::Split => change_word(&words, random, 8, |word, random| {
                let cut = 3 + random.below(word.len() - 5);
                Some(format!("{} {}", word.get(..cut)?, word.get(cut..)?))
            }),
            Self::Joined => {
                let places: Vec<usize> = (0..words.len().checked_sub(1)?)
                    .filter(|at| words.get(*at).is_some_and(|word| word.len() > 3) && words[at + 1].len() > 3)
                    .collect();
                let at = *random.of(&places)?;
                let joined = format!("{}{}", words[at], words[at + 1]);
                Some([&words[..at], &[&*joined], &words[at + 2..]].concat().join(" "))
            }
            Self::Lost => lost(name, random).map(|at| without(&words, at)),
            Self::Order => {
                if words.len() < 3 || words.iter().any(|word| word.len() < 4) {
                    return None;
                }
                let at = random.below(words.len() - 1);
                let mut words = words;
                words.swap(at, at + 1);
                Some(words.join(" "))
            }
            Self::Twice => {
                let models = [Self::Keyboard, Self::Dropped, Self::Doubled, Self::Swapped, Self::Vowel];
                let once = random.of(&models)?.slip(name, random)?;
                let twice = random.of(&models)?.slip(&once, random)?;
                (twice != name).then_some(twice)
            }
            _ => change_word(&words, random, 5, |word, random| self.in_word(word, random)),
        }
        .filter(|slip| slip != name)
    }

    fn in_word(self, word: &str, random: &mut Random) -> Option<String> {
        let letters = word.as_bytes();
        let place = random.below(letters.len());
        let with = |range: std::ops::Range<usize>, text: &str| {
            let mut out = word.to_owned();
            out.replace_range(range, text);
            out
        };
        match self {
            Self::Keyboard => {
                let near = neighbours(letters[place]);
                let c = *random.of(near.as_bytes())?;
                Some(with(place..place + 1, &char::from(c).to_string()))
            }
            Self::Dropped => Some(with(place..place + 1, "")),
            Self::Doubled => {
                let doubles: Vec<usize> = (1..letters.len()).filter(|at| letters[*at] == letters[at - 1]).collect();
                match random.of(&doubles) {
                    Some(at) if random.below(2) == 0 => Some(with(*at..at + 1, "")),
                    _ => Some(with(place..place, &char::from(letters[place]).to_string())),
                }
            }
            Self::Swapped => {
                let at = random.below(letters.len() - 1);
                let pair = format!("{}{}", char::from(letters[at + 1]), char::from(letters[at]));
                Some(with(at..at + 2, &pair))
            }
            Self::Vowel => {
                let vowels: Vec<usize> = (0..letters.len()).filter(|at| b"aeiouy".contains(&letters[*at])).collect();
                let at = *random.of(&vowels)?;
                let others: Vec<u8> = b"aeiou".iter().copied().filter(|c| *c != letters[at]).collect();
                Some(with(at..at + 1, &char::from(*random.of(&others)?).to_string()))
            }
            Self::Sound => {
                const RULES: &[(&str, &str)] = &[
                    ("ph", "f"),
                    ("ae", "e"),
                    ("oe", "e"),
                    ("qu", "kw"),
                    ("ll", "l"),
                    ("mm", "m"),
                    ("nn", "n"),
                    ("tt", "t"),
                    ("ss", "s"),
                    ("cc", "k"),
                    ("rh", "r"),
                    ("th", "t"),
                    ("ch", "k"),
                    ("x", "ks"),
                    ("ci", "si"),
                    ("ce", "se"),
                    ("ca", "ka"),
                    ("co", "ko"),
                    ("cu", "ku"),
                    ("ei", "i"),
                    ("oid", "oyd"),
                    ("y", "i"),
                    ("us", "ous"),
                    ("sc", "s"),
                    ("ti", "shi"),
                    ("ge", "je"),
                    ("gi", "ji"),
                    ("pt", "t"),
                    ("eus", "ius"),
                    ("io", "eo"),
                    ("er", "ur"),
                    ("or", "er"),
                    ("al", "el"),
                    ("is", "us"),
                    ("is", "es"),
                    ("ea", "ia"),
                ];
                let fits: Vec<(usize, &(&str, &str))> = RULES
                    .iter()
                    .flat_map(|rule| word.match_indices(rule.0).map(move |(at, _)| (at, rule)))
                    .filter(|(at, rule)| rule.0 != "pt" || *at == 0)
                    .collect();
                let (at, (from, to)) = random.of(&fits)?;
                Some(with(*at..at + from.len(), to))
            }
            Self::Ending => {
                const ENDINGS: &[(&str, &[&str])] = &[
                    ("orum", &["arum", "um"]),
                    ("arum", &["orum", "um"]),
                    ("us", &["is", "um", "i", "ous"]),
                    ("is", &["us", "i", "es"]),
                    ("um", &["us", "is"]),
                    ("ae", &["a", "i"]),
                    ("ii", &["i", "is"]),
                    ("i", &["us", "is", "ae"]),
                    ("a", &["um", "us"]),
                    ("eus", &["ius", "ous"]),
                    ("al", &["alis", "ar"]),
                    ("oid", &["oideus"]),
                ];
                let fits: Vec<&(&str, &[&str])> = ENDINGS.iter().filter(|(end, _)| word.ends_with(end)).collect();
                let (end, others) = fits.first()?;
                Some(format!("{}{}", word.strip_suffix(end)?, random.of(others)?))
            }
            _ => None,
        }
    }
}

/// Which word of a long name is left out, by chance.
pub fn lost(name: &str, random: &mut Random) -> Option<usize> {
    let words: Vec<&str> = name.split(' ').collect();
    if words.len() < 3 {
        return None;
    }
    let places: Vec<usize> = (0..words.len()).filter(|at| words[*at].len() > 3).collect();
    random.of(&places).copied()
}

/// Words without one of them.
pub fn without(words: &[&str], at: usize) -> String {
    [&words[..at], words.get(at + 1..).unwrap_or_default()].concat().join(" ")
}

/// What is left of a name without one of its words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Left {
    /// It cannot stand: a slip.
    Broken,
    /// A right phrase: a wider term, a shorter name, or a noun of kind left to be understood.
    Right,
    /// Latin with a hole that several structures fill, so that nobody can tell which was meant.
    Open,
}

/// What names tell about what is left of one of them without a word.
#[derive(Debug, Default)]
pub struct Phrases {
    /// English words that end a name.
    last: BTreeSet<String>,
    /// English words that stand before *of* or another such word.
    before_link: BTreeSet<String>,
    /// What is left of names without one or two words, with the structures that are meant.
    left: BTreeMap<String, BTreeSet<String>>,
}

impl Phrases {
    /// From names with the structures that they mean.
    pub fn new<'a>(names: impl Iterator<Item = (&'a str, &'a str)>) -> Self {
        let mut phrases = Self::default();
        for (name, id) in names {
            let words: Vec<&str> = name.split(' ').collect();
            for at in 0..words.len() {
                let (from, to) = part(&words, at);
                if at + 1 == to && !is_latin(&words[from..to]) {
                    if to == words.len() {
                        phrases.last.insert(words[at].to_owned());
                    } else if !is_adjective(words[at]) {
                        phrases.before_link.insert(words[at].to_owned());
                    }
                }
            }
            for one in 0..words.len() {
                let rest = without(&words, one);
                let shorter: Vec<&str> = rest.split(' ').collect();
                for two in one..shorter.len() {
                    phrases.left.entry(without(&shorter, two)).or_default().insert(id.to_owned());
                }
                phrases.left.entry(rest.clone()).or_default().insert(id.to_owned());
            }
        }
        phrases
    }

    /// What is left of a name without one of its words. The part of the name that the word stands in, between words like
    /// *of*, decides.
    ///
    /// - Without a word like *of*, or without a whole part, it is broken: *skin popliteal fossa*, *muscles of*, *of back*.
    /// - An English part ends in its noun. Without a word before that it names something wider (*muscles of forearm*);
    ///   without the noun it is broken (*posterior of thigh*, *skin of superior gluteal*), unless the word that ends it
    ///   now does so in other names too (*mandibular arch* without *muscles*), or the noun only tells the kind and ends
    ///   the name (*the inferior alveolar*).
    /// - A Latin part begins with its noun. Without its last word it is a shorter name (*musculus triceps*), without its
    ///   first it is broken, without one between it is broken where one structure alone can be meant (*extensor carpi
    ///   longus*), and open where several can (*articulatio distalis*). *Musculus* and its cases may always go.
    pub fn left(&self, name: &str, at: usize) -> Left {
        let words: Vec<&str> = name.split(' ').collect();
        let (from, to) = part(&words, at);
        if links(words[at]) || to - from == 1 {
            return Left::Broken;
        }
        if !is_latin(&words[from..to]) {
            let is_kind = to == words.len() && KINDS.contains(&words[at]);
            let ends = if to == words.len() { &self.last } else { &self.before_link };
            let is_noun = at > from && ends.contains(words[at - 1]);
            return if at + 1 < to || is_kind || is_noun { Left::Right } else { Left::Broken };
        }
        if at + 1 == to || words[at].starts_with("muscul") {
            return Left::Right;
        }
        let fills = self.left.get(&without(&words, at)).map_or(1, BTreeSet::len);
        if at == from || fills <= 1 { Left::Broken } else { Left::Open }
    }
}

/// The part of a name that a word stands in, between words like *of*.
fn part(words: &[&str], at: usize) -> (usize, usize) {
    let from = (0..at).rev().find(|place| links(words[*place])).map_or(0, |place| place + 1);
    let to = (at..words.len()).find(|place| links(words[*place])).unwrap_or(words.len());
    (from, to)
}

/// Nouns that tell only the kind of what an adjective before them names.
const KINDS: &[&str] = &[
    "nerve",
    "nerves",
    "muscle",
    "muscles",
    "joint",
    "joints",
    "articulation",
    "articulations",
    "ligament",
    "ligaments",
    "artery",
    "arteries",
    "vein",
    "veins",
    "vessels",
    "ganglion",
    "ganglia",
    "plexus",
    "plexuses",
    "bone",
    "bones",
];

/// Whether a word stands between the nouns of a name.
fn links(word: &str) -> bool {
    matches!(
        word,
        "of" | "to"
            | "over"
            | "with"
            | "for"
            | "on"
            | "in"
            | "below"
            | "above"
            | "behind"
            | "around"
            | "and"
            | "as"
            | "far"
    )
}

/// Whether a word is an adjective however often it stands before *of*.
fn is_adjective(word: &str) -> bool {
    const ORDINALS: &[&str] = &["first", "second", "third", "fourth", "fifth", "sixth"];
    word.ends_with("ior") || word.ends_with("al") || ORDINALS.contains(&word)
}

/// Whether words are Latin by their endings: one that English seldom has, none that Latin does not have, and no adjective
/// before the noun (*posterior rami*).
fn is_latin(words: &[&str]) -> bool {
    const LATIN: &[&str] = &["is", "us", "um", "ae", "i", "orum", "arum", "ales", "ares", "ores"];
    const EITHER: &[&str] = &["a", "or", "ex", "x", "e", "ceps", "os", "en", "o", "caput", "pars", "crus"];
    let ends = |word: &str, list: &[&str]| list.iter().any(|end| word.ends_with(end));
    let latin = |word: &&str| !word.ends_with("ous") && ends(word, LATIN);
    words.iter().any(latin)
        && words.iter().all(|word| latin(word) || ends(word, EITHER))
        && !words.first().is_some_and(|word| word.ends_with("ior"))
}

/// Changes one word of at least so many letters.
fn change_word(
    words: &[&str],
    random: &mut Random,
    least: usize,
    change: impl Fn(&str, &mut Random) -> Option<String>,
) -> Option<String> {
    let places: Vec<usize> = (0..words.len())
        .filter(|at| words[*at].len() >= least && words[*at].bytes().all(|c| c.is_ascii_lowercase()))
        .collect();
    let at = *random.of(&places)?;
    let changed = change(words[at], random)?;
    Some([&words[..at], &[&*changed], &words[at + 1..]].concat().join(" "))
}

/// The keys round a key of the QWERTY layout.
fn neighbours(key: u8) -> &'static str {
    match key {
        b'a' => "qwsz",
        b'b' => "vghn",
        b'c' => "xdfv",
        b'd' => "serfcx",
        b'e' => "wsdr",
        b'f' => "drtgvc",
        b'g' => "ftyhbv",
        b'h' => "gyujnb",
        b'i' => "ujko",
        b'j' => "huikmn",
        b'k' => "jiolm",
        b'l' => "kop",
        b'm' => "njk",
        b'n' => "bhjm",
        b'o' => "iklp",
        b'p' => "ol",
        b'q' => "wa",
        b'r' => "edft",
        b's' => "awedxz",
        b't' => "rfgy",
        b'u' => "yhji",
        b'v' => "cfgb",
        b'w' => "qase",
        b'x' => "zsdc",
        b'y' => "tghu",
        b'z' => "asx",
        _ => "",
    }
}

/// A small generator of numbers (`SplitMix64`).
#[derive(Clone, Debug)]
pub struct Random(u64);

impl Random {
    /// A generator from a seed.
    pub const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// The next number.
    pub fn number(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number below a limit; 0 for the limit 0.
    pub fn below(&mut self, limit: usize) -> usize {
        let number = usize::try_from(self.number() >> 33).unwrap_or(0);
        number.checked_rem(limit).unwrap_or(0)
    }

    /// One of a list.
    pub fn of<'a, T>(&mut self, list: &'a [T]) -> Option<&'a T> {
        let at = self.below(list.len());
        list.get(at)
    }
}
