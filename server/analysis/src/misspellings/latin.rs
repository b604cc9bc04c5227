//! Latin morphology: forms of one word, and what word two forms belong to.
//!
//! A form of a vocabulary word is a right word by itself (*brachia*, *splenii*, *minimae*, *inguinale*). Inside a longer
//! name only one form is right (*extensor digiti minimi*, not *minimus*): there the family tells which one was meant.

use crate::lexicon;

/// Endings that the forms and derivations of one word differ in, longest first.
const ENDINGS: &[&str] = &[
    "orum", "arum", "ibus", "alis", "aris", "ales", "ares", "osus", "ous", "us", "um", "ae", "is", "es", "os", "as",
    "al", "ar", "a", "i", "e", "o", "s",
];

/// The shortest stem that tells one word from another.
const STEM: usize = 3;

/// What all forms of a word share.
pub fn stem(word: &str) -> String {
    for (end, stem) in [("ex", "ic"), ("ix", "ic"), ("ax", "ac"), ("ux", "uc")] {
        if let Some(rest) = word.strip_suffix(end)
            && rest.len() >= STEM
        {
            return format!("{rest}{stem}");
        }
    }
    let found = ENDINGS.iter().find_map(|end| word.strip_suffix(end).filter(|rest| rest.len() >= STEM));
    found.map_or(word, |rest| rest.trim_end_matches(['e', 'i'])).to_owned()
}

/// Forms of a word in Latin and English that are right words too.
pub fn forms(word: &str, into: &mut Vec<String>) {
    const DECLENSIONS: &[(&str, &[&str])] = &[
        ("orum", &["us", "um", "i", "o", "is", "os", "a"]),
        ("arum", &["a", "ae", "am", "as", "is"]),
        ("us", &["i", "o", "um", "orum", "is", "os", "a", "ae", "am", "arum", "as", "e", "al"]),
        ("um", &["i", "o", "a", "orum", "is", "al"]),
        ("ae", &["a", "am", "arum", "as", "is"]),
        ("a", &["ae", "am", "arum", "as", "is", "al", "ar"]),
        ("alis", &["al", "alem", "ale", "ali", "ales", "alium", "alia", "alibus"]),
        ("aris", &["ar", "arem", "are", "ari", "ares", "arium", "aria", "aribus"]),
        ("ale", &["al", "alis", "ali", "alia", "alium"]),
        ("are", &["ar", "aris", "ari", "aria", "arium"]),
        ("is", &["em", "e", "i", "es", "ium", "um", "ia", "ibus", "eos"]),
        ("ior", &["iors", "ius", "ioris", "iorem", "iore", "iores", "iora", "iorum", "ioribus", "iorly"]),
        ("or", &["ors", "oris", "orem", "ore", "ores", "orum", "oribus"]),
        ("ns", &["ntis", "ntem", "ntes", "ntia", "ntium"]),
        ("ex", &["icis", "icem", "ice", "ices", "icum", "icibus"]),
        ("ix", &["icis", "icem", "ice", "ices", "icum", "icibus"]),
        ("ax", &["acis", "acem", "ace", "aces", "acum"]),
        ("ux", &["ucis", "ucem", "uce", "uces", "ucum"]),
        ("i", &["us", "um", "o", "orum", "is", "os", "a"]),
        ("al", &["alis", "ale", "ales", "alia", "alium", "alem", "ali", "als", "ally"]),
        ("ar", &["aris", "are", "ares", "aria", "arium", "arem", "ars", "arly"]),
        ("oid", &["oids", "oideus", "oidea", "oideum", "oidei", "oideae", "oidal"]),
        ("ic", &["ical", "ically", "ics", "icus", "ica", "icum", "ici", "icae"]),
        ("ous", &["ously", "us", "a", "um", "i", "ae", "eus", "ea", "eum", "ei"]),
    ];
    if let Some((end, others)) = DECLENSIONS.iter().find(|(end, _)| word.ends_with(end)) {
        let rest = &word[..word.len() - end.len()];
        if rest.len() >= STEM {
            // "-ar" stands for "-al" behind an l alone: "scapular", but "femoral".
            let is_derived = |other: &&&str| **other != "ar" || *end != "a" || rest.rfind('l') > rest.rfind('r');
            into.extend(others.iter().filter(is_derived).map(|other| format!("{rest}{other}")));
            into.push(format!("{rest}o"));
        }
    }
    if !word.ends_with('s') {
        into.push(format!("{word}s"));
    }
    if is_adjective(word) {
        into.push(format!("{word}ly"));
    }
    if let Some(rest) = word.strip_suffix("ium").or_else(|| word.strip_suffix("ia")) {
        into.push(format!("{rest}iac"));
    }
    if let Some(rest) = word.strip_suffix("sis") {
        into.push(format!("{rest}tic"));
    }
}

/// Spellings of older nomenclatures beside those of today (*thyreoideus* in the Basle list of 1895, *thyroideus* now).
pub const OLDER: &[(&str, &str)] = &[("thyro", "thyreo")];

/// Pairs of endings of one and of several.
const NUMBERS: &[(&str, &str)] = &[
    ("", "s"),
    ("", "es"),
    ("y", "ies"),
    ("us", "i"),
    ("um", "a"),
    ("a", "ae"),
    ("is", "es"),
    ("on", "a"),
    ("ex", "ices"),
    ("ix", "ices"),
    ("en", "ina"),
    ("x", "ges"),
    ("us", "ora"),
    ("us", "era"),
    ("us", "us"),
    ("or", "ores"),
    ("ns", "ntes"),
];

/// Whether two words are the singular and the plural of one English word.
pub fn is_number_pair(a: &str, b: &str) -> bool {
    let (a, b) = (a.to_ascii_lowercase(), b.to_ascii_lowercase());
    let pair = |one: &str, many: &str| {
        many.strip_suffix('s').is_some_and(|stem| stem == one && !stem.ends_with(['i', 'u', 's']))
            || many.strip_suffix("es").is_some_and(|stem| stem == one)
            || many.strip_suffix("ies").is_some_and(|stem| one.strip_suffix('y') == Some(stem))
    };
    pair(&a, &b) || pair(&b, &a)
}

/// Whether two words are the singular and the plural of one word, English or Latin, whichever is which.
pub fn is_plural_of(a: &str, b: &str) -> bool {
    NUMBERS.iter().any(|(one, many)| {
        let pair = |a: &str, b: &str| {
            let stems = a.strip_suffix(one).zip(b.strip_suffix(many));
            stems.is_some_and(|(a, b)| a == b && a.len() >= STEM && !(*many == "s" && a.ends_with(['i', 'u'])))
        };
        pair(a, b) || pair(b, a)
    })
}

/// Whether two forms of one word are of different number, and the word behind them goes with the second: *nervus* for *nervi*
/// before *splanchnici sacrales*, *fibulares* for *fibularis* before *brevis*.
pub fn disagrees(written: &str, meant: &str, behind: &[&str]) -> bool {
    let many = |word: &str| word.ends_with("ales") || word.ends_with("ares") || word.ends_with("ores");
    let is_one = |word: &str| word.ends_with("is") || word.ends_with("us");
    if written.ends_with("us") && meant.ends_with('i') {
        return behind.iter().any(|word| many(word));
    }
    written.ends_with("es") && meant.ends_with("is") && behind.first().is_some_and(|word| is_one(word))
}

/// Whether an adjective is not of the gender of the noun before it, and another form of it is (*plexus pharyngeum* for
/// *pharyngeus*).
pub fn differs_in_gender(noun: &str, written: &str, meant: &str) -> bool {
    let agrees = |word: &str, end: &str| noun.ends_with(end) && word.ends_with(end);
    ["us", "um", "a"].iter().any(|end| agrees(meant, end) && !agrees(written, end))
        && ["us", "um", "a"].iter().any(|end| written.ends_with(end))
}

/// Whether a word is another one in a Latin case or gender that no English sentence has it in, its plural aside.
pub fn is_oblique_of(written: &str, meant: &str) -> bool {
    const OBLIQUE: &[(&str, &[&str])] = &[
        ("us", &["um", "is", "o", "orum"]),
        ("um", &["us", "is", "o", "orum"]),
        ("is", &["i", "us", "em"]),
        ("a", &["um", "us", "am", "is"]),
    ];
    OBLIQUE.iter().any(|(right, wrong)| {
        let stem = meant.strip_suffix(right).filter(|stem| stem.len() > STEM && !stem.ends_with("ari"));
        stem.is_some_and(|stem| written.strip_prefix(stem).is_some_and(|end| wrong.contains(&end)))
    })
}

/// Whether a word looks like an English adjective.
pub fn is_adjective(word: &str) -> bool {
    const ENDS: &[&str] = &["al", "ar", "ic", "ous", "ior", "ary", "ine", "ate", "ed"];
    ENDS.iter().any(|end| word.ends_with(end)) || lexicon::is_plain_adjective(word)
}

/// Whether a word ends as Latin words do and English ones seldom.
pub fn looks_latin(word: &str) -> bool {
    !word.ends_with("ous")
        && [
            "is", "us", "um", "ae", "orum", "arum", "ii", "ei", "ci", "gi", "li", "ni", "ri", "ti", "ales", "ares",
            "ores",
        ]
        .iter()
        .any(|end| word.ends_with(end))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_families_together() {
        for (a, b) in [
            ("minimus", "minimi"),
            ("scapula", "scapulae"),
            ("femoris", "femoral"),
            ("hallux", "hallucis"),
            ("pollex", "pollicis"),
            ("superficial", "superficialis"),
            ("gluteal", "gluteus"),
            ("peroneal", "peroneus"),
            ("digitorum", "digiti"),
            ("tibial", "tibialis"),
            ("interosseous", "interossei"),
            ("profundis", "profundus"),
        ] {
            assert_eq!(stem(a), stem(b), "{a} {b}");
        }
        assert_ne!(stem("median"), stem("medial"));
    }

    #[test]
    fn forms_are_right_words() {
        for (word, form) in [
            ("brachium", "brachia"),
            ("splenius", "splenii"),
            ("minimus", "minimae"),
            ("digital", "digitals"),
            ("inguinal", "inguinale"),
            ("superior", "superiors"),
            ("hallux", "halluces"),
        ] {
            let mut list = Vec::new();
            forms(word, &mut list);
            assert!(list.iter().any(|known| known == form), "{form}: {list:?}");
        }
        let mut list = Vec::new();
        forms("scapula", &mut list);
        forms("pollicis", &mut list);
        assert!(!list.iter().any(|form| form == "scapuli" || form == "pollicus"));
    }
}
