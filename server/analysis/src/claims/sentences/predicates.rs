//! Claims of "is": what a nerve carries, what kind a joint is, which group a muscle belongs to.

use fascicle_model::Kind;

use super::Sentence;
use super::actions::action_relation;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Form, RelationWord};

impl Sentence<'_, '_> {
    /// "is a purely sensory nerve", "is a hinge joint"
    pub(super) fn predicate_claims(&self, at: usize) -> Vec<Claim> {
        let (before, ..) = self.before_verb(at + 1);
        let mut negated = false;
        let mut hedged = self.clause_hedged(at);
        let mut modality: Option<(&'static str, usize)> = None;
        let mut kinds: Vec<(&'static str, usize)> = Vec::new();
        let mut purely = false;
        for place in at + 1..(at + 9).min(self.atoms.len()) {
            let word = self.word(place);
            if word.is_empty() || lexicon::is_preposition(word) || lexicon::ends_phrase(word) {
                break;
            }
            if lexicon::is_negation(word) && (modality.is_some() || !kinds.is_empty()) {
                break;
            }
            negated |= lexicon::is_negation(word);
            hedged |= lexicon::is_hedge(word);
            purely |= lexicon::means_only(word);
            if let Some((_, is)) = lexicon::MODALITIES.iter().find(|(known, _)| *known == word) {
                modality = Some(match modality {
                    Some((was, first)) if was != *is => ("mixed", first),
                    _ => (*is, place),
                });
            }
            if let Some((_, is)) =
                lexicon::JOINT_KINDS.iter().chain(lexicon::JOINT_CLASSES).find(|(known, _)| *known == word)
                && !kinds.iter().any(|(known, _)| known == is)
                && !(word == "plane" && self.word(place + 1) == "of")
            {
                kinds.push((is, place));
            }
        }
        let mut claims = self.member_claims(at, before);
        claims.extend(self.listed_members(at));
        claims.extend(self.copula_roots(at, before));
        let subject = |role| {
            // "Being purely sensory, NERVE …"
            let comma = (at + 1..at + 8).find(|place| self.word(*place) == ",");
            if let Some(comma) = comma.filter(|_| at == 0 && self.word(at) == "being") {
                let group = self.group_at_start(comma + 1);
                return group.map(|group| self.sides(&group, role)).unwrap_or_default();
            }
            let relation = RelationWord {
                phrase: "",
                kind: ClaimKind::Modality,
                form: Form::Verb,
                left: role,
                right: role,
                example: "",
            };
            self.subject(before, &relation, &[])
        };
        if let Some((is, place)) = modality {
            for nerve in subject(PartRole::Nerve) {
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Modality, span: self.source(place, place + 1), what: What::Word(is) },
                ];
                let span = self.claim_span(place, nerve.span, nerve.span);
                claims.push(Claim {
                    kind: ClaimKind::Modality,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: purely,
                    block: self.scope.block,
                    key: None,
                });
            }
        }
        for (is, place) in kinds {
            for joint in subject(PartRole::Joint) {
                let parts = vec![
                    Part { role: PartRole::Joint, span: joint.span, what: joint.what },
                    Part { role: PartRole::JointKind, span: self.source(place, place + 1), what: What::Word(is) },
                ];
                let span = self.claim_span(place, joint.span, joint.span);
                claims.push(Claim {
                    kind: ClaimKind::Joint,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                });
            }
        }
        claims
    }

    /// "A hinge joint.", "A synovial joint of the hinge type.": said of the joint that the text stands under.
    pub(super) fn kind_of_implied(&self) -> Vec<Claim> {
        if !matches!(self.word(0), "a" | "an") {
            return Vec::new();
        }
        let mut kinds: Vec<(&'static str, usize)> = Vec::new();
        let mut next = 0;
        while let Some(atom) = self.atoms.get(next) {
            let word = &*atom.word;
            let known = lexicon::JOINT_KINDS.iter().chain(lexicon::JOINT_CLASSES).find(|(known, _)| *known == word);
            if word == "plane" && self.word(next + 1) == "of" {
                break; // a plane of cleavage is no joint
            }
            if let Some((_, is)) = known {
                kinds.push((is, next));
            } else if !(matches!(
                word,
                "a" | "an" | "joint" | "of" | "the" | "type" | "variety" | "and" | "-" | "socket"
            ) || lexicon::is_adverb(word))
            {
                break;
            }
            next += 1;
        }
        let is_over = self.ends_clause(next) || matches!(self.word(next), "between" | "with" | "in" | "at");
        if kinds.is_empty() || !is_over || self.has_verb() {
            return Vec::new();
        }
        let implied = self.implied(PartRole::Joint, false);
        let [joint] = implied.as_slice() else { return Vec::new() };
        let is_joint = joint.what.entries().iter().all(|id| self.scope.vocabulary.kind(*id) == Kind::Joint);
        if !is_joint {
            return Vec::new();
        }
        let hedged = self.clause_hedged(0);
        let claim = |(is, place): (&'static str, usize)| {
            let told = self.source(place, place + 1);
            let parts = vec![
                Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
                Part { role: PartRole::JointKind, span: told, what: What::Word(is) },
            ];
            Claim { span: self.claim_span(place, told, told), parts, hedged, ..self.empty_claim(ClaimKind::Joint) }
        };
        kinds.into_iter().map(claim).collect()
    }

    /// "carries no motor fibres", "contains only sensory fibres", "carries both motor and sensory fibres"
    pub(super) fn fibre_claims(&self, at: usize) -> Vec<Claim> {
        let told =
            |place: usize| lexicon::MODALITIES.iter().find(|(word, _)| *word == self.word(place)).map(|(_, is)| *is);
        let Some(mut is) = told(at) else { return Vec::new() };
        let mut fibres = at + 1;
        while lexicon::is_conjunction(self.word(fibres))
            || lexicon::carries_list_on(self.word(fibres))
            || told(fibres).is_some()
        {
            is = if told(fibres).is_some_and(|other| other != is) { "mixed" } else { is };
            fibres += 1;
        }
        // "a cutaneous *territory*", "no motor *function*"; what it has only somewhere tells less
        let is_of_skin = self.word(at) == "cutaneous";
        let is_noun = matches!(self.word(fibres), "fibres" | "fibers" | "fibre" | "fiber")
            || (lexicon::is_function_noun(self.word(fibres), is_of_skin) && self.ends_clause(fibres + 1));
        if !is_noun {
            return Vec::new();
        }
        let (mut verb, mut denied, mut purely) = (at, false, false);
        loop {
            let Some(place) = verb.checked_sub(1) else { return Vec::new() };
            let word = self.word(place);
            verb = place;
            if lexicon::is_negation(word) || matches!(word, "single" | "any") {
                denied |= word != "any";
            } else if lexicon::means_only(word) {
                purely = true;
            } else if !(lexicon::is_determiner(word) || lexicon::is_adverb(word) || lexicon::means_all(word)) {
                break;
            }
        }
        // "supplies motor fibres", said of a nerve that has none; sensory ones any nerve may send to a joint
        let gives = is == "motor"
            && matches!(
                &*self.written(verb),
                "supplies" | "gives" | "provides" | "sends" | "distributes" | "gives off"
            );
        if !lexicon::has_fibres(&self.written(verb)) && !gives {
            return Vec::new();
        }
        denied |= matches!(self.word(verb), "without" | "lacks");
        let (before, negated, _) = self.before_verb(verb);
        denied |= negated;
        is = match (denied, is) {
            (true, "motor") => "sensory",
            (true, "sensory") => "motor",
            (true, _) => return Vec::new(),
            (false, is) => is,
        };
        let relation = RelationWord { kind: ClaimKind::Modality, left: PartRole::Nerve, ..action_relation() };
        let hedged = self.clause_hedged(at);
        let claim = |nerve: Side| {
            let span = self.claim_span(at, nerve.span, nerve.span);
            let parts = vec![
                Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                Part { role: PartRole::Modality, span: self.source(at, fibres + 1), what: What::Word(is) },
            ];
            let all = denied || purely;
            let kind = ClaimKind::Modality;
            Claim { kind, span, parts, negated: false, hedged, all, block: self.scope.block, key: None }
        };
        self.subject(before, &relation, &[]).into_iter().map(claim).collect()
    }

    /// "The femoral nerve is L2 to L4", "is from C5": segments that are said to be those of a nerve or muscle.
    fn copula_roots(&self, at: usize, before: usize) -> Vec<Claim> {
        let mut next = at + 1;
        let mut negated = false;
        while lexicon::is_adverb(self.word(next))
            || lexicon::is_negation(self.word(next))
            || matches!(self.word(next), "by" | "from" | "out" | "of")
        {
            negated |= lexicon::is_negation(self.word(next));
            next += 1;
        }
        let Some(AtomKind::Segments(reading)) = self.atoms.get(next).map(|atom| &atom.kind) else { return Vec::new() };
        let Some(group) = self.group_to(before).filter(|group| group.members.len() == 1 && !group.partial) else {
            return Vec::new();
        };
        // "The roots of the sciatic nerve are": read by its noun.
        let is_governed = group.members.first().is_some_and(|first| {
            let mut before = *first;
            while before.checked_sub(1).is_some_and(|place| lexicon::is_determiner(self.word(place))) {
                before -= 1;
            }
            before.checked_sub(1).is_some_and(|place| {
                let word = self.word(place);
                !(lexicon::begins_clause(word) || lexicon::is_adverb(word) || word == ",")
            })
        });
        if is_governed || !self.ends_clause(next + 1) {
            return Vec::new();
        }
        let has_roots = |side: &Side| match &side.what {
            What::Entry(ids) => ids
                .iter()
                .all(|id| matches!(self.scope.vocabulary.kind(*id), Kind::Nerve | Kind::Plexus | Kind::Muscle)),
            _ => false,
        };
        let hedged = self.clause_hedged(at);
        let claim = |side: Side| {
            let span = self.claim_span(next, side.span, side.span);
            let parts = vec![
                Part { role: PartRole::Structure, span: side.span, what: side.what },
                Part {
                    role: PartRole::Segments,
                    span: self.source(next, next + 1),
                    what: What::Segments(reading.main, reading.lesser),
                },
            ];
            Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Roots) }
        };
        self.sides(&group, PartRole::Structure).into_iter().filter(has_roots).map(claim).collect()
    }
}
