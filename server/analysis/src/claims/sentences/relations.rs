//! Claims of relation phrases: `LEFT phrase RIGHT` with a verb or participle ("NERVE supplies MUSCLE"), and
//! `phrase RIGHT is LEFT` with a noun ("the innervation of MUSCLE is by NERVE"). What a phrase claims depends on what its
//! two sides are.

use fascicle_model::Kind;

use super::Sentence;
use super::atoms::AtomKind;
use super::groups::Group;
use super::kinds::{attachment_end, kind_of};
use super::objects::Object;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What, segments};
use crate::lexicon::{self, Form, RelationWord};
use crate::text::Span;

impl Sentence<'_, '_> {
    /// Claims of `LEFT phrase RIGHT`.
    pub(super) fn verb_claims(&self, at: usize, relation: &RelationWord, last_subject: &mut Vec<Side>) -> Vec<Claim> {
        if self.written(at) == "supply" && self.is_noun(at) {
            return self.noun_of_implied(at);
        }
        let (before, negated, hedged) = self.before_verb(at);
        let is_apposition = relation.form == Form::Participle && lexicon::is_determiner(self.first_word(at));
        let begins_clause = before.checked_sub(1).is_none_or(|place| lexicon::begins_clause(self.word(place)));
        if is_apposition && begins_clause && before == at && !self.is_fragment(at, relation) {
            return Vec::new(); // "The anterior divisions of …" begins a clause: it is a subject, no apposition
        }
        // "Branches of the cord: …" leads in what follows.
        let is_header = relation.form == Form::Participle
            && begins_clause
            && before == at
            && self
                .written(at)
                .split(' ')
                .next()
                .is_some_and(|word| matches!(word, "branches" | "divisions" | "twigs"));
        if is_header {
            return Vec::new();
        }
        // "comes away from it as it passes": what a nerve becomes is named.
        if relation.kind == ClaimKind::Renaming && lexicon::is_pronoun(self.word(at + 1)) {
            return Vec::new();
        }
        if relation.kind == ClaimKind::Skin {
            let denies = self.written(at).split(' ').any(|word| matches!(word, "no" | "not"));
            return self.skin_claims(at, before, negated != denies, hedged, relation, last_subject);
        }
        let Some(object) = self.object_of(at + 1, relation.right) else {
            // "The L5 dermatome includes …"
            let is_dermatome = relation.kind == ClaimKind::Membership && relation.left == PartRole::Group;
            // "runs back over" leads somewhere.
            let can_feel = relation.form == Form::Verb
                && !(relation.kind == ClaimKind::Supply && self.first_token(at).starts_with("run"))
                && (is_dermatome || (relation.kind == ClaimKind::Supply && relation.left == PartRole::Nerve));
            let mut claims = Vec::new();
            // "it *goes* into the chest": a part of the body to which a nerve goes is not its skin.
            if can_feel && (!relation.phrase.starts_with("goes") || self.speaks_of_skin(at)) {
                claims = self.skin_claims(at, before, negated, hedged, relation, last_subject);
            }
            if claims.is_empty() && relation.kind == ClaimKind::Supply && !negated {
                claims = self.typed_supply(at);
            }
            return claims;
        };
        let relation = &self.of_passage(at, relation, before, &object);
        let negated = negated != self.written(at).split(' ').any(|word| word == "not");
        let denied = self.group_to(before).is_some_and(|group| group.denied);
        let negated = negated || denied;
        let mut left = match &object {
            _ if relation.form == Form::Participle && before == 0 && self.subject_behind(&object).is_some() => self
                .subject_behind(&object)
                .map(|group| {
                    self.sides(&group, if relation.left == PartRole::Muscle { relation.left } else { PartRole::Nerve })
                })
                .unwrap_or_default(),
            Object::Segments(..) if relation.left != PartRole::Parent => self.subject_with_roots(before, relation),
            _ => self.subject(before, relation, last_subject),
        };
        if relation.kind == ClaimKind::Passage && relation.left == PartRole::Nerve {
            left = self.passers_from_start(before).unwrap_or(left);
        }
        if left.is_empty() && matches!(relation.kind, ClaimKind::Passage | ClaimKind::Attachment) {
            left = self.announced_behind(before, relation, &object);
        }
        if left.is_empty() && relation.form == Form::Participle && relation.left == PartRole::Muscle {
            left = self.listed_behind(&object);
        }
        if left.is_empty() && relation.kind == ClaimKind::Membership && relation.left == PartRole::Muscle {
            left = self.belonging(before, relation, &object);
        }
        let may_be_skin = (relation.kind == ClaimKind::Supply && relation.left == PartRole::Muscle)
            || (relation.kind == ClaimKind::Membership && relation.form == Form::Verb);
        if left.is_empty() && may_be_skin {
            let claims = self.skin_supplied(at, before, &object, negated, hedged);
            if !claims.is_empty() {
                return claims;
            }
        }
        if left.is_empty() {
            if relation.kind == ClaimKind::Supply && !negated {
                return self.typed_supply(at);
            }
            return self.inverted_claims(at, before, relation, &object, negated);
        }
        (*last_subject).clone_from(&left);
        let hedged = hedged || self.clause_hedged(at);
        let object = self.with_all_passers(relation, object);
        let of_all =
            self.group_to(before).or_else(|| self.main_group()).is_some_and(|group| group.all && !group.partial);
        let mut claims = self.combine(relation, &left, &object, at, negated, hedged, of_all);
        // "by C3 and C4 and by the dorsal scapular nerve"
        if let Object::Segments(_, place) = &object
            && relation.kind == ClaimKind::Supply
            && relation.left == PartRole::Muscle
            && lexicon::is_conjunction(self.word(place + 1))
        {
            let next =
                (place + 2..place + 5).find(|next| !matches!(self.word(*next), "by" | "from" | "also" | "the" | "and"));
            if let Some(nerves) = next.filter(|next| self.class(*next) == Some(0)).and_then(|next| self.object(next)) {
                claims.extend(self.combine(relation, &left, &nerves, at, negated, hedged, of_all));
            }
        }
        if negated && let Some(instead) = self.said_instead(&object, relation) {
            claims.extend(self.combine(relation, &left, &instead, at, false, hedged, false));
        }
        if relation.kind == ClaimKind::Passage
            && relation.left == PartRole::Nerve
            && let Object::Names(first) = &object
        {
            claims.extend(self.further_passages(&left, first.end, negated, hedged));
        }
        if relation.kind == ClaimKind::Attachment
            && relation.phrase.ends_with(" from")
            && let Object::Names(from) = &object
            && self.word(from.end) == "to"
            && let Some(to) = self.object(from.end + 1)
        {
            let far_end = RelationWord { phrase: "", ..*relation };
            claims.extend(self.combine(&far_end, &left, &to, at, negated, hedged, false));
        }
        // "C6 supplies the thumb", "the mental nerve supplies the chin": what has no motor fibres feels it.
        if claims.is_empty() && relation.kind == ClaimKind::Supply && left.iter().all(|side| self.only_feels(side)) {
            return self.felt(at, &left, &self.areas_of(at + 1, true), negated, hedged);
        }
        claims
    }

    /// Whether words behind an atom say that it is skin of which they speak.
    fn speaks_of_skin(&self, at: usize) -> bool {
        (at..self.atoms.len()).any(|place| self.written(place).split(' ').any(lexicon::tells_surface))
    }

    /// Whether a side is a segment or a nerve without motor fibres.
    pub(super) fn only_feels(&self, side: &Side) -> bool {
        match &side.what {
            What::Segments(..) => true,
            What::Entry(ids) => {
                ids.iter().all(|id| self.scope.vocabulary.modality(*id) == Some(fascicle_model::Modality::Sensory))
            }
            _ => false,
        }
    }

    /// "A branch of the facial nerve.", said of what stands above: a phrase with its object, and no verb behind it.
    fn is_fragment(&self, at: usize, relation: &RelationWord) -> bool {
        if at.checked_sub(1).is_some_and(|place| !lexicon::is_value_sign(self.word(place))) {
            return false;
        }
        let end = match self.object_of(at + 1, relation.right) {
            Some(Object::Names(group)) => group.end,
            Some(Object::Segments(_, place)) => place + 1,
            _ => return false,
        };
        self.first_word(at) != "the" && (self.ends_clause(end) || lexicon::is_relative(self.word(end)))
    }

    /// "The phrenic nerve belongs to the cervical plexus", "the cruciate ligaments belong to the knee": nerves and ligaments
    /// belong as muscles do.
    fn belonging(&self, before: usize, relation: &RelationWord, object: &Object) -> Vec<Side> {
        let Object::Names(group) = object else { return Vec::new() };
        let class = group.members.first().and_then(|first| self.class(*first));
        let left = match class {
            Some(0) => PartRole::Nerve,
            Some(3) => PartRole::Landmark,
            _ => return Vec::new(),
        };
        self.subject(before, &RelationWord { left, ..*relation }, &[])
    }

    /// "not by NERVE *but by NERVE*": what is said instead of what is denied.
    fn said_instead(&self, object: &Object, relation: &RelationWord) -> Option<Object> {
        let Object::Names(denied) = object else { return None };
        let mut next = denied.end + usize::from(self.word(denied.end) == ",");
        if self.word(next) != "but" {
            return None;
        }
        next += 1;
        while lexicon::carries_gap(self.word(next)) || lexicon::is_adverb(self.word(next)) {
            next += 1;
        }
        self.object_of(next, relation.right).filter(|object| match object {
            Object::Names(group) => !self.begins_predicate(group.end),
            _ => true,
        })
    }

    /// "Supplied by NERVE, MUSCLE …": the subject of a sentence that begins with a participle stands behind the comma.
    fn subject_behind(&self, object: &Object) -> Option<Group> {
        let end = match object {
            Object::Names(group) => group.end,
            Object::Segments(_, place) => place + 1,
            Object::Meant(_) => return None,
        };
        let mut next = end + 1;
        while lexicon::is_determiner(self.word(next)) {
            next += 1;
        }
        let group = self.mention(next).filter(|_| self.word(end) == ",").and_then(|_| self.group_from(next, false))?;
        let goes_on = self.begins_predicate(group.end) || lexicon::is_auxiliary(self.word(group.end));
        goes_on.then_some(group)
    }

    /// The subject of a statement of segments: a nerve before all, or a muscle.
    fn subject_with_roots(&self, before: usize, relation: &RelationWord) -> Vec<Side> {
        let of = |left: PartRole| RelationWord { kind: ClaimKind::Roots, left, ..*relation };
        let nerves = self.subject(before, &of(PartRole::Nerve), &[]);
        if nerves.is_empty() { self.subject(before, &of(PartRole::Muscle), &[]) } else { nerves }
    }

    /// "From LANDMARK spring MUSCLES"
    fn inverted_attachments(
        &self,
        at: usize,
        before: usize,
        relation: &RelationWord,
        object: &Object,
        negated: bool,
    ) -> Vec<Claim> {
        let from = self.group_to(before).filter(|group| {
            group.members.iter().all(|member| self.class(*member) == Some(4))
                && group.members.first().is_some_and(|first| (0..*first).any(|place| self.word(place) == "from"))
        });
        let (Some(from), Object::Names(muscles)) = (from, object) else { return Vec::new() };
        if relation.kind != ClaimKind::Branching || relation.right != PartRole::Parent || relation.form != Form::Verb {
            return Vec::new();
        }
        let left = self.sides(muscles, PartRole::Muscle);
        let places = Object::Meant(self.sides(&from, PartRole::Landmark));
        self.combine(relation, &left, &places, at, negated, self.clause_hedged(at), false)
    }

    /// "Out of it come NERVES", "to GROUP belong MUSCLES": the subject stands behind the verb, and what the verb binds
    /// stands before it.
    fn inverted_claims(
        &self,
        at: usize,
        before: usize,
        relation: &RelationWord,
        object: &Object,
        negated: bool,
    ) -> Vec<Claim> {
        let claims = self.inverted_attachments(at, before, relation, object, negated);
        if !claims.is_empty() {
            return claims;
        }
        if !matches!(relation.kind, ClaimKind::Branching | ClaimKind::Membership) || relation.form != Form::Verb {
            return Vec::new();
        }
        let Some(place) = before.checked_sub(1) else { return Vec::new() };
        let governs = |place: usize| {
            let mut first = place;
            while first.checked_sub(1).is_some_and(|before| lexicon::is_determiner(self.word(before))) {
                first -= 1;
            }
            first.checked_sub(1).is_some_and(|before| lexicon::leads_inverted(self.word(before)))
        };
        let role = if relation.kind == ClaimKind::Branching && relation.left == PartRole::Nerve {
            PartRole::Nerve
        } else {
            relation.right
        };
        let bound = if lexicon::is_pronoun(self.word(place)) && governs(place) {
            self.implied(role, lexicon::is_plural_pronoun(self.word(place)))
        } else if let Some(group) =
            self.group_to(before).filter(|group| group.members.first().is_some_and(|first| governs(*first)))
        {
            self.sides(&group, role)
        } else {
            Vec::new()
        };
        let turned = RelationWord { left: relation.right, right: relation.left, ..*relation };
        self.combine(&turned, &bound, object, at, negated, self.clause_hedged(at), false)
    }

    /// Claims of `phrase RIGHT is LEFT`.
    pub(super) fn noun_claims(&self, at: usize, relation: &RelationWord) -> Vec<Claim> {
        if self.written(at).split(' ').any(|word| word == "not") {
            return Vec::new();
        }
        let described = if relation.right == PartRole::Skin { self.areas_of(at + 1, true) } else { Vec::new() };
        let (right, behind) = match self.object_of(at + 1, relation.right) {
            _ if !described.is_empty() => {
                let end = described.last().map_or(at, |area| self.behind_source(area.span));
                (described, end)
            }
            Some(Object::Names(group)) => (self.sides(&group, relation.right), group.end),
            Some(Object::Meant(sides)) if lexicon::is_kind_noun(self.word(at + 2)) => (sides, at + 3),
            _ => return Vec::new(),
        };
        if right.is_empty() {
            return Vec::new();
        }
        let mut next = behind;
        let (mut linked, mut negated, mut hedged) = (false, false, false);
        loop {
            let word = self.word(next);
            if lexicon::is_link(word)
                || lexicon::links_supply(word)
                || (relation.kind == ClaimKind::Attachment && lexicon::is_at(word))
                || (relation.kind == ClaimKind::Skin && lexicon::links_feeling(word))
            {
                linked = true;
            } else if linked && word == "of" && lexicon::links_supply(self.word(next - 1)) {
                // "by way of"
            } else if lexicon::is_negation(word) {
                negated = true;
            } else if lexicon::is_hedge(word) {
                hedged = true;
            } else if !(lexicon::is_adverb(word) || lexicon::is_determiner(word) || lexicon::is_muscle_noun(word)) {
                break;
            }
            next += 1;
        }
        // A participle may be the link: "is supplied by", "is derived from".
        if let Some(AtomKind::Relation(link)) = self.atoms.get(next).map(|atom| &atom.kind)
            && (matches!(link.kind, ClaimKind::Supply | ClaimKind::Branching)
                || (relation.kind == ClaimKind::Skin && link.form != Form::Noun))
        {
            linked = true;
            next += 1;
            while lexicon::is_determiner(self.word(next)) {
                next += 1;
            }
        }
        let only = self.is_said_to_be_only(at);
        if !linked {
            // "MUSCLE, a muscle supplied by NERVE"
            if let Some(group) = self.before_apposition(at).filter(|_| relation.left == PartRole::Muscle) {
                let left = self.sides(&group, PartRole::Muscle);
                let hedged = self.clause_hedged(at);
                return self.combine(relation, &left, &Object::Meant(right), at, false, hedged, false);
            }
            let Some(verb) = self.copula_before(at) else { return Vec::new() };
            let (before, negated, hedged) = self.before_verb(verb + 1);
            let left = self.subject(before, relation, &[]);
            let mut claims = self.combine(
                relation,
                &left,
                &Object::Meant(right),
                at,
                negated,
                hedged || self.clause_hedged(at),
                false,
            );
            self.say_only(&mut claims, only, at);
            return claims;
        }
        let hedged = hedged || self.clause_hedged(at);
        let left: Vec<Side> = match self.atoms.get(next).map(|atom| &atom.kind) {
            Some(AtomKind::Name(_)) => {
                self.group_from(next, true).map(|group| self.sides(&group, relation.left)).unwrap_or_default()
            }
            Some(AtomKind::Segments(reading)) => {
                vec![Side { what: What::Segments(reading.main, reading.lesser), span: self.source(next, next + 1) }]
            }
            _ => Vec::new(),
        };
        let left = if relation.left == PartRole::Skin { self.areas_of(next, true) } else { left };
        let object = self.object_of(at + 1, relation.right).filter(|_| relation.right != PartRole::Skin);
        let object = object.unwrap_or(Object::Meant(right));
        let mut claims = self.combine(relation, &left, &object, at, negated, hedged, false);
        self.say_only(&mut claims, only, at);
        claims
    }

    /// The "is" before a noun: "MUSCLE *is* one of the muscles supplied by".
    fn copula_before(&self, at: usize) -> Option<usize> {
        let mut place = at.checked_sub(1)?;
        while lexicon::is_determiner(self.word(place))
            || lexicon::is_before_group(self.word(place))
            || lexicon::means_only(self.word(place))
            || lexicon::is_before_only(self.word(place))
        {
            place = place.checked_sub(1)?;
        }
        matches!(self.word(place), "is" | "are" | "was" | "were").then_some(place)
    }

    /// "the *only* muscle supplied by", where no place limits it.
    fn is_said_to_be_only(&self, at: usize) -> bool {
        let is_only = at.checked_sub(1).is_some_and(|place| matches!(self.word(place), "only" | "sole"));
        is_only && !self.atoms.iter().any(|atom| matches!(&*atom.word, "of" | "in" | "at" | "below" | "above" | "here"))
    }

    /// Marks a claim as one that leaves nothing else.
    fn say_only(&self, claims: &mut [Claim], only: bool, at: usize) {
        if let ([claim], true) = (claims, only) {
            claim.parts.push(Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word("only") });
        }
    }

    /// Claims of all pairs of the two sides, or of pairs in order where the sentence says "respectively". `of_all` says that
    /// the left side is said to be all of its members.
    #[allow(clippy::too_many_arguments)]
    pub(super) fn combine(
        &self,
        relation: &RelationWord,
        left: &[Side],
        object: &Object,
        at: usize,
        negated: bool,
        hedged: bool,
        of_all: bool,
    ) -> Vec<Claim> {
        let vocabulary = self.scope.vocabulary;
        let pairwise = self.atoms.iter().any(|atom| atom.word == "respectively");
        let (group, right): (Option<&Group>, Vec<Side>) = match object {
            Object::Names(group) => (Some(group), self.sides(group, PartRole::Structure)),
            Object::Segments(_, place) if pairwise => (None, self.segments_apart(*place, left.len())),
            Object::Segments(reading, place) => {
                let span = self.source(*place, *place + 1);
                (None, vec![Side { what: What::Segments(reading.main, reading.lesser), span }])
            }
            Object::Meant(sides) => (None, sides.clone()),
        };
        let of_group = |side: &Side| matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| vocabulary.kind(*id) == Kind::Group));
        let taken_out = if relation.kind == ClaimKind::Supply && left.iter().chain(&right).any(of_group) {
            self.taken_out(at)
        } else {
            Vec::new()
        };
        let may_be_part = matches!(relation.kind, ClaimKind::Supply | ClaimKind::Membership);
        if group.is_some_and(|group| group.partial) && !may_be_part {
            return Vec::new();
        }
        let of_side;
        let left = if relation.kind == ClaimKind::Passage && relation.left == PartRole::Nerve {
            of_side = self.of_side(left, at, group.map(|group| group.end));
            &*of_side
        } else {
            left
        };
        let mut claims = Vec::new();
        for (l, left) in left.iter().enumerate() {
            for (r, right) in right.iter().enumerate() {
                if pairwise && l != r {
                    continue;
                }
                let Some((kind, left_role, right_role)) = kind_of(vocabulary, relation, left, right) else { continue };
                if kind == ClaimKind::Skin && self.is_of_muscles(at, group) {
                    continue;
                }
                let mut hedged = hedged;
                if kind == ClaimKind::Attachment
                    && let Some(group) = group
                    && let Some(place) = group.members.iter().find(|at| self.source(**at, **at + 1) == right.span)
                {
                    if lexicon::ways::is_direction(&self.written(*place)) {
                        continue;
                    }
                    hedged |= self.is_a_place_of_another(group, *place);
                }
                let mut all =
                    group.is_some_and(|group| group.all && !group.partial) && left_role == PartRole::Nerve && !negated;
                all |= of_all && left_role == PartRole::Muscle;
                all &= !taken_out.is_empty() || !self.speaks_of_exceptions();
                if kind == ClaimKind::Passage {
                    let phrase = self.written(at);
                    let between_heads = phrase.contains("between")
                        && group.and_then(|group| group.members.first()).is_some_and(|first| {
                            (at + 1..*first).any(|place| matches!(&*self.written(place), "heads" | "bellies"))
                        });
                    all = between_heads || lexicon::goes_through(&phrase);
                }
                let mut parts = vec![
                    Part { role: left_role, span: left.span, what: left.what.clone() },
                    Part { role: right_role, span: right.span, what: right.what.clone() },
                ];
                if kind == ClaimKind::Attachment
                    && let Some(end) = attachment_end(relation, &self.written(at))
                {
                    parts.push(Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(end) });
                }
                if kind == ClaimKind::Passage
                    && let Some(side) = lexicon::side_of_passage(&self.written(at))
                {
                    parts.push(Part { role: PartRole::Role, span: self.source(at, at + 1), what: What::Word(side) });
                }
                if kind == ClaimKind::Supply && (of_group(left) || of_group(right)) {
                    parts.extend(taken_out.iter().filter_map(|place| {
                        let side = self.side(*place, PartRole::Muscle)?;
                        Some(Part { role: PartRole::Except, span: side.span, what: side.what })
                    }));
                }
                let span = self.claim_span(at, left.span, right.span);
                claims.push(Claim { kind, span, parts, negated, hedged, all, block: self.scope.block, key: None });
            }
        }
        let members = if relation.left == PartRole::Nerve { left } else { &right };
        for (nerve, place) in members.iter().flat_map(|nerve| taken_out.iter().map(move |place| (nerve, *place))) {
            claims.extend(self.exception_claim(relation, nerve, place, at, negated, hedged));
        }
        if pairwise && left.len() != right.len() {
            claims.clear();
        }
        claims
    }

    /// "the anterior and lateral surfaces of the styloid process", "the spines of all the vertebrae": the words that were
    /// read as a name are only the beginning of the place that is meant.
    fn is_a_place_of_another(&self, group: &Group, at: usize) -> bool {
        let ends_with_of = |end: usize| self.word(end) == "of";
        !self.written(at).contains(" of ")
            && (ends_with_of(at + 1) || (group.members.len() > 1 && ends_with_of(group.end)))
    }

    /// "all … except X": that X is not supplied.
    pub(super) fn exception_claim(
        &self,
        relation: &RelationWord,
        nerve: &Side,
        except: usize,
        at: usize,
        negated: bool,
        hedged: bool,
    ) -> Option<Claim> {
        let muscle = self.side(except, PartRole::Muscle)?;
        let active = RelationWord { left: PartRole::Nerve, right: PartRole::Muscle, ..*relation };
        let (kind, left_role, right_role) = kind_of(self.scope.vocabulary, &active, nerve, &muscle)?;
        let span = self.claim_span(at, nerve.span, muscle.span);
        let parts = vec![
            Part { role: left_role, span: nerve.span, what: nerve.what.clone() },
            Part { role: right_role, span: muscle.span, what: muscle.what },
        ];
        Some(Claim { kind, span, parts, negated: !negated, hedged, all: false, block: self.scope.block, key: None })
    }

    /// "C3–C5 and S2–S4, respectively": the segments at an atom as so many sets.
    fn segments_apart(&self, at: usize, count: usize) -> Vec<Side> {
        let Some(atom) = self.atoms.get(at) else { return Vec::new() };
        let (text, tokens) = (&self.scope.plain.text, &self.scope.mentions.tokens);
        let sets = segments::apart(text, tokens, atom.from, atom.to);
        if sets.len() != count {
            return Vec::new();
        }
        let side = |set: segments::Reading| Side {
            what: What::Segments(set.main, set.lesser),
            span: self.scope.plain.to_source(set.span),
        };
        sets.into_iter().map(side).collect()
    }

    /// "supplies the *muscles of* the face": what is said of the muscles there is not said of the skin.
    fn is_of_muscles(&self, at: usize, group: Option<&Group>) -> bool {
        let Some(first) = group.and_then(|group| group.members.first()) else { return false };
        (at + 1..*first).any(|place| matches!(self.word(place), "muscle" | "muscles"))
    }

    /// The stretch of the source that a claim covers: its phrase and the parts that stand in this sentence.
    pub(super) fn claim_span(&self, at: usize, left: Span, right: Span) -> Span {
        let whole = self.source(0, self.atoms.len());
        let mut span = self.source(at, at + 1);
        for side in [left, right] {
            if whole.contains(side) {
                span = span.cover(side);
            }
        }
        span
    }
}
