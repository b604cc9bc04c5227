//! Names of which only the word that tells them from the one before is written: *the third and fourth* behind *the first
//! and second lumbricals*, *the inferior* behind *the superior gluteal nerve*.

use crate::lexicon;
use crate::mentions::Mention;
use crate::names::Form;
use crate::text::Span;
use crate::words::Token;

/// How many mentions back the name is looked for of which a word was changed.
const REACH: usize = 4;

/// A word that may stand for a name: its token, and the tokens of the name with the word changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elliptic {
    /// The word's token.
    pub at: usize,
    /// The name, as the forms of its words.
    pub forms: Vec<Form>,
}

/// The words of a text that may stand for a name, each with the names that it can be, the likeliest first.
pub fn elliptic(text: &str, tokens: &[Token], forms: &[Form], names: &[Mention]) -> Vec<Elliptic> {
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let mut list: Vec<Elliptic> = Vec::new();
    let Some(first) = names.first() else { return list };
    for (at, token) in tokens.iter().enumerate().skip(first.tokens.1) {
        if !token.is_word {
            continue;
        }
        // Few words stand behind an article, so this is asked first.
        if !has_article(text, tokens, at, &list) {
            continue;
        }
        let Some(family) = lexicon::contrast_of(word(at)) else { continue };
        let later = names.partition_point(|name| name.tokens.1 <= at);
        if names.get(later).is_some_and(|name| name.tokens.0 <= at) || has_noun(text, tokens, at) {
            continue;
        }
        let Some(own) = forms.get(at).copied() else { continue };
        for name in names.get(later.saturating_sub(REACH)..later).unwrap_or_default().iter().rev() {
            let (from, to) = name.tokens;
            let Some(of_name) = forms.get(from..to) else { continue };
            let changed = (from..to).find(|place| family.contains(&&*word(*place).to_lowercase()));
            if let Some(place) = changed {
                let mut of_name = of_name.to_vec();
                if let Some(slot) = of_name.get_mut(place - from) {
                    *slot = own;
                }
                list.push(Elliptic { at, forms: of_name });
            } else if lexicon::ORDINALS.contains(&word(at)) && name.plural {
                let mut of_name = of_name.to_vec();
                of_name.insert(0, own);
                list.push(Elliptic { at, forms: of_name });
            }
        }
    }
    list
}

/// Whether an article stands before a word, or another such word and a conjunction.
fn has_article(text: &str, tokens: &[Token], at: usize, before: &[Elliptic]) -> bool {
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let Some(place) = at.checked_sub(1) else { return false };
    let other = place.checked_sub(1);
    matches!(word(place), "the" | "The")
        || other.is_some_and(|other| before.iter().any(|elliptic| elliptic.at == other))
            && lexicon::is_conjunction(word(place))
}

/// Whether a noun stands behind an adjective, so that it stands for none.
fn has_noun(text: &str, tokens: &[Token], at: usize) -> bool {
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let mut next = at + 1;
    while lexicon::is_conjunction(word(next)) && lexicon::contrast_of(word(next + 1)).is_some() {
        next += 2;
    }
    let behind = word(next);
    let gap = Span::new(
        tokens.get(next.saturating_sub(1)).map_or(0, |token| token.span.end),
        tokens.get(next).map_or(text.len(), |token| token.span.start),
    )
    .of(text);
    !lexicon::ends_noun(behind) || gap.is_empty() && lexicon::is_hyphen(behind)
}
