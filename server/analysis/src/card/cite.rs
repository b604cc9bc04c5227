//! Where the facts of a card were read.

use fascicle_model::{Citation, Vocabulary};

/// A citation in a few words: author and year, or the title, and the place.
pub fn cite(vocabulary: &Vocabulary, citation: &Citation) -> String {
    let work = work(vocabulary, &citation.source);
    citation.place.as_ref().map_or_else(|| work.clone(), |place| format!("{work}, {place}"))
}

/// Every work that is cited, once, each with all its places.
pub(super) fn bibliography<'a>(vocabulary: &Vocabulary, citations: impl Iterator<Item = &'a Citation>) -> Vec<String> {
    let mut works: Vec<(&str, Vec<&str>)> = Vec::new();
    for citation in citations {
        let at = works.iter().position(|(source, _)| *source == citation.source).unwrap_or_else(|| {
            works.push((&citation.source, Vec::new()));
            works.len() - 1
        });
        if let (Some((_, places)), Some(place)) = (works.get_mut(at), citation.place.as_deref())
            && !places.contains(&place)
        {
            places.push(place);
        }
    }
    let list = works.into_iter().map(|(source, places)| {
        let work = work(vocabulary, source);
        if places.is_empty() { work } else { format!("{work} ({})", places.join(", ")) }
    });
    list.collect()
}

/// A work of the bibliography in a few words.
fn work(vocabulary: &Vocabulary, id: &str) -> String {
    let Some(source) = vocabulary.sources().iter().find(|source| source.id == id) else {
        return id.to_owned();
    };
    let name = match &source.author {
        Some(author) => {
            let first = author.split(", ").next().unwrap_or(author);
            let several = author.contains(", ") && !first.contains(" and ");
            if several { format!("{first} and others") } else { first.to_owned() }
        }
        None => source.title.split([':', '(']).next().unwrap_or_default().trim().to_owned(),
    };
    source.year.map_or_else(|| name.clone(), |year| format!("{name} {year}"))
}
