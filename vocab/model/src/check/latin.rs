//! Latin: the adjectives of a name agree with its noun in gender and number.
//!
//! Only what cannot be right is told: an adjective in a form of the nominative that its noun excludes
//! (`nervus … anterius`, `ligamentum … lateralis`). A form that could also be a genitive (`musculi flexoris … ulnaris`) is
//! let be once a genitive has gone before.

use super::Problems;
use crate::Entry;
use crate::entry::Standing;

/// The grammatical gender of a noun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Gender {
    Masculine,
    Feminine,
    Neuter,
}

/// A form of the nominative.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Form {
    gender: Gender,
    plural: bool,
}

/// Nouns with which names begin, by gender: singulars, then plurals.
const NOUNS: [(Gender, &[&str], &[&str]); 3] = [
    (
        Gender::Masculine,
        &[
            "musculus",
            "nervus",
            "ramus",
            "plexus",
            "truncus",
            "fasciculus",
            "canalis",
            "sulcus",
            "processus",
            "margo",
            "angulus",
            "venter",
            "arcus",
            "tendo",
            "discus",
            "meniscus",
            "trochanter",
            "condylus",
            "epicondylus",
            "malleolus",
            "digitus",
            "hiatus",
            "sinus",
            "nucleus",
            "meatus",
            "ductus",
            "porus",
            "recessus",
            "anulus",
            "lobulus",
            "bulbus",
            "isthmus",
            "aditus",
            "nodus",
            "funiculus",
            "tractus",
            "lacertus",
            "limbus",
        ],
        &[
            "musculi",
            "nervi",
            "rami",
            "plexus",
            "trunci",
            "fasciculi",
            "canales",
            "processus",
            "tendines",
            "digiti",
            "condyli",
            "ductus",
        ],
    ),
    (
        Gender::Feminine,
        &[
            "articulatio",
            "fossa",
            "fascia",
            "membrana",
            "arteria",
            "vena",
            "tuberositas",
            "linea",
            "crista",
            "spina",
            "incisura",
            "facies",
            "pars",
            "basis",
            "radix",
            "sutura",
            "symphysis",
            "synchondrosis",
            "syndesmosis",
            "bursa",
            "vagina",
            "aponeurosis",
            "cartilago",
            "trochlea",
            "phalanx",
            "chorda",
            "ansa",
            "regio",
            "area",
            "cavitas",
            "glandula",
            "lamina",
            "apertura",
            "fissura",
            "capsula",
            "eminentia",
            "fovea",
            "impressio",
            "ala",
            "squama",
            "tunica",
            "cutis",
            "vertebra",
            "costa",
            "plica",
            "protuberantia",
            "cavitas",
            "columna",
            "valva",
            "concha",
            "papilla",
            "zona",
            "valvula",
            "massa",
            "medulla",
            "divisio",
            "curvatura",
        ],
        &[
            "articulationes",
            "arteriae",
            "venae",
            "partes",
            "radices",
            "suturae",
            "lineae",
            "phalanges",
            "cartilagines",
            "vertebrae",
            "costae",
            "fibrae",
            "divisiones",
            "aponeuroses",
            "synchondroses",
        ],
    ),
    (
        Gender::Neuter,
        &[
            "ligamentum",
            "foramen",
            "os",
            "tuberculum",
            "caput",
            "collum",
            "corpus",
            "septum",
            "retinaculum",
            "spatium",
            "trigonum",
            "labrum",
            "acetabulum",
            "cornu",
            "ganglion",
            "crus",
            "cavum",
            "tuber",
            "rostrum",
            "sternum",
            "manubrium",
            "centrum",
            "velum",
            "vestibulum",
            "filum",
            "segmentum",
            "brachium",
            "antrum",
            "diaphragma",
            "frenulum",
            "capitulum",
            "olecranon",
            "compartimentum",
            "organum",
            "tendinum",
        ],
        &[
            "ligamenta",
            "foramina",
            "ossa",
            "tubercula",
            "capita",
            "corpora",
            "septa",
            "retinacula",
            "spatia",
            "ganglia",
            "crura",
            "vincula",
            "segmenta",
        ],
    ),
];

/// Endings of adjectives in the nominative, each with the forms that it can have. Longer endings stand first.
const ENDINGS: &[(&str, &[(Gender, bool)])] = {
    use Gender::{Feminine as F, Masculine as M, Neuter as N};
    &[
        ("iores", &[(M, true), (F, true)]),
        ("iora", &[(N, true)]),
        ("rior", &[(M, false), (F, false)]),
        ("major", &[(M, false), (F, false)]),
        ("minor", &[(M, false), (F, false)]),
        ("perius", &[(N, false)]),
        ("ferius", &[(N, false)]),
        ("terius", &[(N, false)]),
        ("majus", &[(N, false)]),
        ("minus", &[(N, false)]),
        ("breves", &[(M, true), (F, true)]),
        ("brevis", &[(M, false), (F, false)]),
        ("breve", &[(N, false)]),
        ("ales", &[(M, true), (F, true)]),
        ("ares", &[(M, true), (F, true)]),
        ("alia", &[(N, true)]),
        ("alis", &[(M, false), (F, false)]),
        ("aris", &[(M, false), (F, false)]),
        ("ale", &[(N, false)]),
        ("are", &[(N, false)]),
        ("icus", &[(M, false)]),
        ("eus", &[(M, false)]),
        ("osus", &[(M, false)]),
        ("longus", &[(M, false)]),
        ("magnus", &[(M, false)]),
        ("ternus", &[(M, false)]),
        ("profundus", &[(M, false)]),
        ("obliquus", &[(M, false)]),
        ("transversus", &[(M, false)]),
        ("icum", &[(N, false)]),
        ("eum", &[(N, false)]),
        ("osum", &[(N, false)]),
        ("longum", &[(N, false)]),
        ("magnum", &[(N, false)]),
        ("ternum", &[(N, false)]),
        ("profundum", &[(N, false)]),
        ("obliquum", &[(N, false)]),
        ("transversum", &[(N, false)]),
        ("osa", &[(F, false), (N, true)]),
        ("longa", &[(F, false), (N, true)]),
        ("magna", &[(F, false), (N, true)]),
        ("terna", &[(F, false), (N, true)]),
        ("profunda", &[(F, false), (N, true)]),
        ("obliqua", &[(F, false), (N, true)]),
        ("transversa", &[(F, false), (N, true)]),
    ]
};

/// Words that end like adjectives and are none, or that belong to another noun of the name.
const NOT_ADJECTIVES: &[&str] = &["canalis", "calcaneus", "humerus", "trigeminus"];

/// What follows one of these belongs to another noun.
const PREPOSITIONS: &[&str] = &["ad", "cum", "in", "et", "seu"];

/// Tells of adjectives that do not agree with the noun that a Latin name begins with.
pub(super) fn agreement(problems: &mut Problems<'_>, entry: &Entry) {
    for name in entry.names.iter().filter(|name| name.standing == Standing::Latin) {
        if let Some((noun, word)) = disagreement(&name.text) {
            let what = format!("has the Latin name \"{}\", in which `{word}` does not agree with `{noun}`", name.text);
            problems.say(entry, None, &what);
        }
    }
}

/// The noun of a Latin name and the first adjective that cannot agree with it.
fn disagreement(text: &str) -> Option<(&str, &str)> {
    let mut words = text.split([' ', '-']).take_while(|word| !PREPOSITIONS.contains(word));
    let noun = words.next()?;
    let forms: Vec<Form> = NOUNS
        .iter()
        .flat_map(|(gender, singular, plural)| {
            [(singular, false), (plural, true)]
                .into_iter()
                .filter(|(nouns, _)| nouns.contains(&noun))
                .map(|(_, plural)| Form { gender: *gender, plural })
        })
        .collect();
    if forms.is_empty() {
        return None;
    }
    let mut after_genitive = false;
    for word in words {
        let ending = ENDINGS.iter().find(|(ending, _)| word.ends_with(ending) && !NOT_ADJECTIVES.contains(&word));
        match ending {
            Some((ending, could_be)) => {
                let agrees = forms.iter().any(|form| could_be.contains(&(form.gender, form.plural)));
                let genitive = after_genitive && ending.ends_with("is");
                if !agrees && !genitive {
                    return Some((noun, word));
                }
            }
            None => after_genitive = true,
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tells_what_cannot_agree() {
        for right in [
            "nervus cutaneus brachii medialis",
            "ligamentum talofibulare anterius",
            "musculus extensor carpi radialis longus",
            "caput ulnare musculi flexoris carpi ulnaris",
            "nervi digitales palmares communes",
            "foramen magnum",
            "facies articularis inferior atlantis",
            "ramus superficialis nervi radialis",
            "ossa metacarpalia",
        ] {
            assert_eq!(disagreement(right), None, "{right}");
        }
        for (wrong, word) in [
            ("nervus cutaneus brachii mediale", "mediale"),
            ("ligamentum talofibulare anterior", "anterior"),
            ("ligamentum collateralis", "collateralis"),
            ("nervi digitalis palmares", "digitalis"),
            ("articulatio talocruralis inferius", "inferius"),
            ("musculus longum capitis", "longum"),
        ] {
            assert_eq!(disagreement(wrong).map(|found| found.1), Some(word), "{wrong}");
        }
    }
}
