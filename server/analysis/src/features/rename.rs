//! Renaming: one name of a structure for another, in the form in which the author wrote the old one.

use fascicle_model::{EntryId, Name, Standing, Vocabulary};

use super::completion::capitalised;
use super::places::Place;

/// What stands in place of a written name: plural for plural, capital for capital, capitals throughout for capitals.
pub fn replacement(written: &str, place: &Place, new: &str, plural: Option<&str>) -> String {
    let body = if place.plural { plural.map_or_else(|| plural_of(new), str::to_owned) } else { new.to_owned() };
    let letters: Vec<char> = written.chars().filter(|c| c.is_alphabetic()).collect();
    let all_capitals = letters.len() > 1 && letters.iter().all(|c| c.is_uppercase());
    if all_capitals && place.standing != Standing::Abbreviation {
        return body.to_uppercase();
    }
    let mut chars = written.chars();
    let begins_capital = chars.next().is_some_and(char::is_uppercase);
    let is_title = begins_capital
        && written.split_whitespace().count() > 1
        && written.split_whitespace().filter(|word| word.len() > 3).all(|word| word.starts_with(char::is_uppercase));
    if is_title {
        let words: Vec<String> =
            body.split(' ').map(|word| if word.len() > 3 { capitalised(word) } else { word.to_owned() }).collect();
        return capitalised(&words.join(" "));
    }
    let is_capital = begins_capital && place.standing != Standing::Abbreviation && place.standing != Standing::Eponym;
    if is_capital { capitalised(&body) } else { body }
}

/// The names that a structure can be called by, other than as it is written.
pub fn other_names<'v>(id: EntryId, written: &str, vocabulary: &'v Vocabulary) -> Vec<&'v Name> {
    let is_other = |name: &&Name| !name.text.eq_ignore_ascii_case(written);
    vocabulary.entry(id).names.iter().filter(is_other).collect()
}

/// The regular English plural of the last word that can have one: "nerves of the forearm", "lumbricals".
pub fn plural_of(name: &str) -> String {
    let (head, tail) = name.find(" of ").map_or((name, ""), |at| name.split_at(at));
    let plural = if let Some(stem) = head.strip_suffix('y').filter(|stem| !stem.ends_with(['a', 'e', 'o', 'u'])) {
        format!("{stem}ies")
    } else if head.ends_with(['s', 'x']) || head.ends_with("ch") || head.ends_with("sh") {
        format!("{head}es")
    } else {
        format!("{head}s")
    };
    plural + tail
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Span;

    #[test]
    fn follows_the_form_that_was_written() {
        let place = |standing, plural| Place {
            span: Span::default(),
            entries: Vec::new(),
            standing,
            plural,
            shared: false,
            editable: true,
            block: 0,
        };
        let exact = place(Standing::Exact, false);
        assert_eq!(replacement("Common peroneal nerve", &exact, "common fibular nerve", None), "Common fibular nerve");
        assert_eq!(replacement("COMMON PERONEAL NERVE", &exact, "common fibular nerve", None), "COMMON FIBULAR NERVE");
        assert_eq!(replacement("Common Peroneal Nerve", &exact, "common fibular nerve", None), "Common Fibular Nerve");
        let abbreviation = place(Standing::Abbreviation, false);
        assert_eq!(replacement("CPN", &abbreviation, "common fibular nerve", None), "common fibular nerve");
        let plural = place(Standing::Exact, true);
        assert_eq!(replacement("peroneal nerves", &plural, "fibular nerve", None), "fibular nerves");
        assert_eq!(plural_of("cutaneous nerve of the arm"), "cutaneous nerves of the arm");
    }
}
