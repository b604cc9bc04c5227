//! Claims of how many there are: "has three heads", "there are four dorsal interossei", "the three divisions of", "three
//! muscles form", "a biaxial joint".

use fascicle_model::Kind;

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Counted, Form, RelationWord};
use crate::text::Span;
use crate::verdicts;

/// A number with the noun that is counted.
pub(super) struct Told {
    /// The atom of the number.
    pub(super) at: usize,
    /// How many there are said to be.
    pub(super) number: u32,
    /// What is counted.
    pub(super) counted: &'static Counted,
    /// The noun by which the vocabulary counts it.
    pub(super) noun: &'static str,
    /// The atom behind the noun.
    pub(super) end: usize,
    /// A word of size stands before the noun, so that there may be smaller ones.
    pub(super) sized: bool,
    /// A preposition that binds what has them stands behind the noun ("heads *of*").
    pub(super) binds: bool,
    /// Where number and noun stand in the source.
    pub(super) span: Span,
}

/// How many atoms may stand between a structure and the number of what it has.
const LONGEST_LEAD: usize = 10;

impl Sentence<'_, '_> {
    /// The claims of a number: "has three heads", "there are four dorsal interossei", "are four in number"
    pub(super) fn count_claims(&self, at: usize) -> Vec<Claim> {
        let before = at.checked_sub(1).map_or("", |place| self.word(place));
        let is_inner = lexicon::is_hyphen(before)
            && at.checked_sub(2).is_some_and(|place| lexicon::tens(self.word(place)).is_some());
        if is_inner || self.is_range(at) || self.is_shared_out(at) || lexicon::is_roughly(before) {
            return Vec::new();
        }
        let counted = self.number_at(at);
        let mut claims = self.counts_told(at, counted.as_ref());
        self.weaken(&mut claims, at);
        if claims.is_empty() { self.tally_claims(at, counted.as_ref()) } else { claims }
    }

    /// The claims of a number where a verb or another word that is known joins it with what has so many.
    fn counts_told(&self, at: usize, counted: Option<&Told>) -> Vec<Claim> {
        if let Some(number) = counted {
            let claims = self.counts_of(number);
            // "three heads" names no head
            if !claims.is_empty() || number.noun != "muscles" {
                return claims;
            }
        }
        let written = self.written(at);
        let Some(number) = lexicon::number(&written) else { return Vec::new() };
        let span = self.source(at, at + 1);
        let claim = |side: Side, outright: bool| self.count_claim(side, number, "named", span, at, outright);
        let relation = action_relation();
        let back = |is_one: fn(&str) -> bool| (at.saturating_sub(4)..at).rev().find(|place| is_one(self.word(*place)));
        // "The hamstrings are five."
        if self.ends_clause(at + 1)
            && let Some(verb) = at.checked_sub(1).filter(|verb| self.word(*verb) == "are")
            && let Some(group) = self.group_to(verb).filter(|group| group.members.len() == 1 && !group.partial)
            && !group.members.first().is_some_and(|first| self.is_governed(*first))
            && !self.is_of_a_part(verb)
        {
            let sides = self.sides(&group, PartRole::Group).into_iter().filter(|side| self.has_members(side));
            return sides.map(|side| claim(side, true)).collect();
        }
        // "there are four dorsal interossei", "each hand has four lumbricals", "the four rotator cuff muscles are"
        if let Some(side) = self.side(at + 1, PartRole::Structure)
            && self.mention(at + 1).is_some_and(|mention| {
                mention.plural
                    || mention.candidates.iter().all(|id| {
                        self.scope.vocabulary.name(*id).ends_with('s')
                            || self.scope.vocabulary.parts(*id).len() > 1
                            || self.scope.vocabulary.members(*id).len() > 1
                    })
            })
            && !self.speaks_of_a_part(at + 1)
        {
            // "Two gluteal muscles abduct": some of them
            let begins = at.checked_sub(1).is_none_or(|before| self.word(before) == ":");
            let is_told = back(lexicon::precedes_count).is_some();
            let has_article = at.checked_sub(1).is_some_and(|before| lexicon::is_determiner(self.word(before)));
            if (is_told || begins) && !has_article {
                return vec![claim(side, is_told || self.ends_clause(at + 2))];
            }
            let begins = at.checked_sub(1).is_some_and(|article| {
                self.word(article) == "the"
                    && article
                        .checked_sub(1)
                        .is_none_or(|before| self.begins_part(before) || (self.word(before) == "of" && before == 0))
            });
            let is_listed = matches!(self.word(at + 2), "are" | ":" | "comprise" | "include");
            // "Of the six NAME none …"
            let is_whole = at == 2 && self.word(0) == "of";
            if begins && (is_whole || self.goes_on_plainly(at + 2)) {
                return vec![claim(side, is_listed)];
            }
            return Vec::new();
        }
        // NAME number four
        if let Some(verb) = at.checked_sub(1).filter(|verb| matches!(self.word(*verb), "number" | "numbers")) {
            let role = RelationWord { left: PartRole::Group, ..relation };
            return self.subject(verb, &role, &[]).into_iter().map(|side| claim(side, true)).collect();
        }
        // NAME are four in number
        if self.word(at + 1) == "in"
            && self.word(at + 2) == "number"
            && let Some(verb) = back(|word| matches!(word, "are" | "is"))
        {
            let role = RelationWord { left: PartRole::Structure, ..relation };
            return self
                .subject(self.before_verb(verb).0, &role, &[])
                .into_iter()
                .map(|side| claim(side, true))
                .collect();
        }
        Vec::new()
    }

    /// "one head on the scapula, two on the humerus": some of them here, the others there.
    pub(super) fn is_shared_out(&self, at: usize) -> bool {
        let is_place = |place: usize| matches!(self.word(place), "on" | "from" | "in" | "at" | "to");
        let rest = at + 1..self.atoms.len();
        let goes_on = |place: usize| {
            matches!(self.word(place - 1), "," | "and" | ";")
                && lexicon::number(self.word(place)).is_some()
                && is_place(place + 1)
        };
        rest.clone().take(3).any(is_place) && rest.take_while(|place| self.word(*place) != ".").any(goes_on)
    }

    /// "three or four", "5 to 7": no number that can be wrong by itself.
    fn is_range(&self, at: usize) -> bool {
        let joins = |word: &str| matches!(word, "or" | "to" | "–" | "-" | "/");
        let is_number = |place: usize| lexicon::number(&self.written(place)).is_some();
        if lexicon::tens(self.word(at)).is_some() && lexicon::is_hyphen(self.word(at + 1)) {
            return false; // "thirty-one"
        }
        (joins(self.word(at + 1)) && is_number(at + 2))
            || at.checked_sub(2).is_some_and(|before| joins(self.word(before + 1)) && is_number(before))
    }

    /// "is a biaxial joint", "is a two-headed muscle": the number that an adjective tells.
    pub(super) fn told_number_claims(&self, at: usize) -> Vec<Claim> {
        let (mut next, mut negated) = (at + 1, false);
        while lexicon::is_determiner(self.word(next))
            || lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
            || lexicon::JOINT_KINDS.iter().chain(lexicon::JOINT_CLASSES).any(|(word, _)| *word == self.word(next))
            || self.word(next) == ","
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let compound = || {
            let second = self.word(next + 2);
            if lexicon::is_hyphen(self.word(next + 1)) {
                lexicon::told_by_compound(self.word(next), second).map(|told| (told, next + 3))
            } else {
                None
            }
        };
        let Some(((number, noun), end)) =
            lexicon::told_number(self.word(next)).map(|told| (told, next + 1)).or_else(compound)
        else {
            return Vec::new();
        };
        if negated || !(lexicon::is_kind_noun(self.word(end)) || self.ends_clause(end) || self.word(end) == "synovial")
        {
            return Vec::new();
        }
        let (before, negated, _) = self.before_verb(at + 1);
        if negated || self.is_of_a_part(before) {
            return Vec::new();
        }
        let role = RelationWord { left: lexicon::owner_of_counted(noun), ..action_relation() };
        let span = self.source(next, end);
        let sides = self.subject(before, &role, &[]).into_iter();
        sides.map(|side| self.count_claim(side, number, noun, span, next, true)).collect()
    }

    /// The number at an atom, with the noun behind it that it counts. The number may be the first word of a relation
    /// phrase ("*three* branches of").
    pub(super) fn number_at(&self, at: usize) -> Option<Told> {
        let tokens = &self.scope.mentions.tokens;
        let text = &self.scope.plain.text;
        let atom = self.atoms.get(at)?;
        let last = self.atoms.last()?.to;
        let word = |token: usize| {
            let found = tokens.get(token).filter(|_| token < last);
            found.map_or_else(String::new, |token| token.span.of(text).to_lowercase())
        };
        let first = match atom.kind {
            AtomKind::Word => atom.from,
            AtomKind::Relation(_) => (atom.from..atom.to).find(|token| lexicon::number(&word(*token)).is_some())?,
            _ => return None,
        };
        let (number, mut noun) = match lexicon::tens(&word(first)) {
            // "thirty-one"
            Some(tens) if lexicon::is_hyphen(&word(first + 1)) => {
                (tens + lexicon::number(&word(first + 2)).filter(|unit| *unit < 10)?, first + 3)
            }
            Some(tens) => (tens, first + 1),
            None => match lexicon::number_noun(&word(first)) {
                // "a pair of heads"
                Some(number) if word(first + 1) == "of" => (number, first + 2),
                _ => (lexicon::count(&word(first))?, first + 1),
            },
        };
        let mut sized = false;
        while lexicon::is_before_counted(&word(noun)) || lexicon::tells_size(&word(noun)) {
            sized |= lexicon::tells_size(&word(noun));
            noun += 1;
        }
        let (counted, behind) = (1..=3).rev().find_map(|len| {
            let written: Vec<String> = (noun..noun + len).map(&word).collect();
            lexicon::counted_noun(&written.join(" ")).map(|counted| (counted, noun + len))
        })?;
        let binds = matches!(&*word(behind), "of" | "in" | "within" | "to" | "at");
        // The atom that the noun ends in, which may take the preposition with it.
        let end = (at..self.atoms.len()).find(|place| self.atoms.get(*place).is_some_and(|atom| atom.to >= behind))?;
        let takes_more = self.atoms.get(end).is_some_and(|atom| atom.to > behind);
        if takes_more && !(binds && self.atoms.get(end).is_some_and(|atom| atom.to == behind + 1)) {
            return None;
        }
        let span = Span::new(tokens.get(first)?.span.start, tokens.get(behind.checked_sub(1)?)?.span.end);
        Some(Told {
            at,
            number,
            counted,
            noun: counted.noun,
            sized,
            end: if takes_more { end + 1 } else { end + 1 + usize::from(binds) },
            binds,
            span: self.scope.plain.to_source(span),
        })
    }

    /// The claims of a number with its noun.
    fn counts_of(&self, number: &Told) -> Vec<Claim> {
        let behind = number.end - usize::from(number.binds);
        if number.binds
            && let Some(claims) = self.counts_of_bound(number)
        {
            return claims;
        }
        if self.mention(behind).is_some() {
            return Vec::new(); // "three heads deltoid": no clause
        }
        let claims = self.counts_behind_verb(number);
        if !claims.is_empty() {
            return claims;
        }
        self.counts_before_verb(number, behind)
    }

    /// "The three heads of NAME", "there are four muscles in NAME". `None` where no name is bound, so that the words may mean
    /// something else.
    fn counts_of_bound(&self, number: &Told) -> Option<Vec<Claim>> {
        let mut name = number.end;
        while lexicon::is_determiner(self.word(name)) || lexicon::means_all(self.word(name)) {
            name += 1;
        }
        self.mention(name)?;
        let is_of = self.written(number.end - 1).ends_with("of");
        let group = self.group_from(name, true);
        let Some(group) = group.filter(|group| group.members.len() == 1) else {
            // "consists of the two heads of A and B"
            return is_of.then(Vec::new);
        };
        // What has a number of its own before it, has it ("NAME has two bellies in the neck").
        let inner = self.atoms.get(number.at).is_some_and(|atom| matches!(atom.kind, AtomKind::Relation(_)));
        let before = number.at.checked_sub(1).map_or("", |before| self.word(before));
        let two_before = number.at.checked_sub(2).map_or("", |before| self.word(before));
        let is_there = (matches!(before, "are" | "is") && two_before == "there") || before == "there're";
        let is_definite = matches!(before, "the" | "all" | "these" | "its") && !lexicon::binds_some(two_before);
        if inner || number.sized || !(is_there || is_definite) {
            return is_of.then(Vec::new);
        }
        let mut sides = self.sides(&group, number.counted.of);
        sides.retain(|side| self.may_have(side, number.counted));
        if !self.goes_on_plainly(group.end) {
            return Some(Vec::new());
        }
        let outright = is_there || matches!(self.word(group.end), "are" | ":");
        Some(sides.into_iter().map(|side| self.claim_of(side, number, outright)).collect())
    }

    /// "NAME has three heads", "NAME divides into two branches", "NAME is made up of five roots, three trunks"
    fn counts_behind_verb(&self, number: &Told) -> Vec<Claim> {
        let mut start = number.at;
        // "five roots, *three trunks*": the verb stands before the first of the row.
        while let Some(before) = self.counted_before(start) {
            start = before;
        }
        let mut place = start;
        let (mut leads, mut is_there, mut words) = (false, false, String::new());
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            let is_lead = match self.atoms.get(before).map(|atom| &atom.kind) {
                Some(AtomKind::Word) if lexicon::leads_to_count(word) => {
                    let verb = !lexicon::is_determiner(word) && !lexicon::is_kind_noun(word) && word != "group";
                    leads |= verb;
                    is_there |= word == "there";
                    true
                }
                Some(AtomKind::Word) => lexicon::is_adverb(word) || matches!(word, "both" | "each" | "already" | "all"),
                Some(AtomKind::Relation(relation)) => {
                    let is_verb = matches!(
                        relation.kind,
                        ClaimKind::Membership
                            | ClaimKind::Branching
                            | ClaimKind::Joint
                            | ClaimKind::Attachment
                            | ClaimKind::Roots
                    ) || (relation.kind == ClaimKind::Supply
                        && relation.form == Form::Verb
                        && matches!(number.counted.noun, "branches" | "terminal branches" | "tendons"));
                    leads |= is_verb;
                    is_verb
                }
                _ => false,
            };
            if !is_lead || start - before > LONGEST_LEAD {
                break;
            }
            words = format!("{} {words}", self.written(before));
            place = before;
        }
        // "NAME: three heads", "NAME: a deep muscle, three heads"
        if place == start
            && let Some(sign) = self.line_sign(start)
        {
            (leads, place) = (true, sign + 1);
        }
        if !leads || words.contains("not ") {
            return Vec::new();
        }
        let noun = if number.noun == "branches" && lexicon::ends_in_branches(&words) {
            "terminal branches"
        } else {
            number.noun
        };
        let (before, negated, _) = self.before_verb(place);
        // "gives off two branches in the arm": not all of them
        let is_limited = number.noun == "branches" && noun == "branches" && {
            let behind = self.word(number.end - usize::from(number.binds));
            lexicon::is_preposition(behind) || lexicon::is_relative(behind)
        };
        if negated || is_limited || self.is_of_a_part(before) || (number.sized && !lexicon::ends_in_branches(&words)) {
            return Vec::new();
        }
        let role = RelationWord { left: number.counted.of, ..action_relation() };
        let mut sides = if is_there {
            // "In NAME there are three muscles"
            let group = self.group_to(before - usize::from(before > 0 && self.word(before - 1) == ","));
            let sides = group.filter(|group| group.members.len() == 1).map(|group| self.sides(&group, role.left));
            sides.unwrap_or_default()
        } else {
            self.subject(before, &role, &[])
        };
        // "There are three cords": of what the text speaks of.
        if sides.is_empty()
            && number.counted.of != PartRole::Group
            && before.checked_sub(1).is_none_or(|at| self.word(at) == "and")
        {
            sides = self.implied(role.left, false);
        }
        sides.retain(|side| self.may_have(side, number.counted));
        let claim = |side: Side| self.count_claim(side, number.number, noun, number.span, number.at, true);
        sides.into_iter().map(claim).collect()
    }

    /// The sign behind the name that leads the line of an atom, where nothing between says of whom else it may speak.
    fn line_sign(&self, at: usize) -> Option<usize> {
        let sign = (0..at).find(|place| lexicon::is_value_sign(self.first_token(*place)))?;
        let head = self.group_to(sign).filter(|head| head.members.len() == 1)?;
        let first = *head.members.first()?;
        let is_head = self.leads_clause(first) && (0..first).all(|place| self.word(place) != ",");
        let is_plain = (sign + 1..at).all(|place| {
            let is_word = matches!(self.atoms.get(place).map(|atom| &atom.kind), Some(AtomKind::Word));
            let is_place = matches!(self.class(place), Some(2 | 4 | 5));
            (is_word && !matches!(self.word(place), ";" | "." | ":") && !lexicon::is_auxiliary(self.word(place)))
                || is_place
        });
        let begins = at.checked_sub(1).is_some_and(|before| before == sign || self.word(before) == ",");
        (is_head && is_plain && begins).then_some(sign)
    }

    /// "Three muscles form NAME", "three bones meet at NAME"
    fn counts_before_verb(&self, number: &Told, behind: usize) -> Vec<Claim> {
        let starts = number.at.checked_sub(1).is_none_or(|before| {
            let word = self.word(before);
            self.begins_part(before) || (lexicon::means_only(word) && before == 0)
        });
        let phrase: String =
            (behind..(behind + 2).min(self.atoms.len())).map(|at| self.written(at)).collect::<Vec<_>>().join(" ");
        let is_all = match number.noun {
            "bones" => lexicon::meets(&phrase) || lexicon::fills(&phrase),
            _ => lexicon::fills(&phrase),
        };
        if !starts || !is_all || number.binds || number.sized {
            return Vec::new();
        }
        let verb_end = (behind..(behind + 5).min(self.atoms.len())).find(|place| self.mention(*place).is_some());
        let Some(name) = verb_end else { return Vec::new() };
        let is_plain = (behind + 1..name).all(|place| {
            let word = self.word(place);
            lexicon::is_determiner(word) || lexicon::is_preposition(word) || matches!(word, "part" | "up" | "together")
        });
        let group = self.group_from(name, true).filter(|group| group.members.len() == 1 && is_plain);
        let Some(group) = group.filter(|group| self.goes_on_plainly(group.end)) else { return Vec::new() };
        let mut sides = self.sides(&group, number.counted.of);
        sides.retain(|side| self.may_have(side, number.counted));
        sides.into_iter().map(|side| self.claim_of(side, number, true)).collect()
    }

    /// The number before a number, in a row of counted nouns: "five roots, three trunks".
    fn counted_before(&self, at: usize) -> Option<usize> {
        let mut end = at.checked_sub(1)?;
        if !lexicon::is_conjunction(self.word(end)) {
            return None;
        }
        while lexicon::is_conjunction(self.word(end)) {
            end = end.checked_sub(1)?;
        }
        (end.saturating_sub(3)..=end).rev().find(|place| {
            self.number_at(*place).is_some_and(|number| number.end - usize::from(number.binds) == end + 1)
        })
    }

    /// Whether a structure can have what is counted.
    fn may_have(&self, side: &Side, counted: &Counted) -> bool {
        let What::Entry(ids) = &side.what else { return false };
        if ids.iter().all(|id| verdicts::is_counted(self.scope.vocabulary, *id, counted.noun)) {
            return true;
        }
        let fits = |kind: Kind| match counted.noun {
            "bones" | "pairs" => matches!(kind, Kind::Joint | Kind::Landmark),
            "phalanges" => matches!(kind, Kind::Group | Kind::Landmark),
            "axes" => kind == Kind::Joint,
            _ => matches!(kind, Kind::Muscle | Kind::Group | Kind::Nerve | Kind::Plexus | Kind::Root),
        };
        ids.iter().all(|id| fits(self.scope.vocabulary.kind(*id)))
    }

    /// Whether the name that ends before an atom only tells of what a part has so many: "the front *of NAME* has two".
    pub(super) fn is_of_a_part(&self, end: usize) -> bool {
        let Some(group) = self.group_to(end) else { return false };
        let mut place = group.members.first().copied().unwrap_or(0);
        while let Some(before) = place.checked_sub(1) {
            let word = self.word(before);
            if word == "of" {
                let noun = before.checked_sub(1).map_or("", |noun| self.word(noun));
                return !(lexicon::is_kind_noun(noun) || noun == "group");
            }
            if !(lexicon::is_determiner(word) || lexicon::means_all(word)) {
                return false;
            }
            place = before;
        }
        false
    }

    fn has_members(&self, side: &Side) -> bool {
        matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| self.scope.vocabulary.members(*id).len() > 1))
    }

    /// Whether a clause begins behind an atom.
    fn begins_part(&self, before: usize) -> bool {
        let word = self.word(before);
        lexicon::begins_clause(word) || lexicon::is_bullet(word) || word == ","
    }

    /// Whether what stands behind a name does not narrow it: a verb, a mark, the end.
    pub(super) fn goes_on_plainly(&self, at: usize) -> bool {
        let word = self.word(at);
        let is_name_of_more = matches!(word, "'s" | "’s" | "'");
        let is_narrowed = lexicon::is_relative(word) || lexicon::is_preposition(word);
        let narrows = word == "," && lexicon::is_exception(self.word(at + 1));
        if is_name_of_more || is_narrowed || narrows {
            return false;
        }
        self.ends_clause(at)
            || self.begins_predicate(at)
            || matches!(word, "," | ":" | "—" | "–" | "(" | ")" | "and")
            || lexicon::includes(word)
    }

    fn claim_of(&self, side: Side, number: &Told, outright: bool) -> Claim {
        self.count_claim(side, number.number, number.noun, number.span, number.at, outright)
    }

    /// A claim that a structure has so many of something. `outright`: it says so; else it takes it for known, and may speak
    /// of some of them.
    pub(super) fn count_claim(
        &self,
        side: Side,
        number: u32,
        noun: &'static str,
        told: Span,
        at: usize,
        outright: bool,
    ) -> Claim {
        let span = self.claim_span(at, side.span, told);
        let knows =
            |noun: &str| side.what.entries().iter().all(|id| verdicts::is_counted(self.scope.vocabulary, *id, noun));
        let noun = lexicon::also_counted(noun).filter(|also| !knows(noun) && knows(also)).unwrap_or(noun);
        let parts = vec![
            Part { role: PartRole::Structure, span: side.span, what: side.what },
            Part { role: PartRole::Number, span: self.source(at, at + 1), what: What::Number(number) },
            Part { role: PartRole::Role, span: told, what: What::Word(noun) },
        ];
        let hedged = self.clause_hedged(at);
        Claim { span, parts, hedged, all: outright, ..self.empty_claim(ClaimKind::Count) }
    }

    /// "The middle finger has two dorsal interossei": how many there are at a part of the body says nothing of how many
    /// there are in all.
    pub(super) fn speaks_of_a_part(&self, counted: usize) -> bool {
        (0..self.atoms.len()).filter(|at| *at != counted).any(|at| {
            self.mention(at).is_some_and(|mention| {
                mention.candidates.iter().any(|id| self.scope.vocabulary.entry(*id).part_of.is_some())
            })
        })
    }
}
