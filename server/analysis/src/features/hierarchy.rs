//! Hierarchies: where a nerve comes from and what it reaches; of which larger structures something is a part, and of which
//! class a joint is.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

/// One step above or below.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// What is reached.
    pub entry: EntryId,
    /// How: "arises from", "branch", "muscle" …
    pub how: &'static str,
    /// In some people, or by some sources.
    pub variant: bool,
}

fn push(list: &mut Vec<Step>, entry: EntryId, how: &'static str, variant: bool) {
    if !list.iter().any(|step| step.entry == entry) {
        list.push(Step { entry, how, variant });
    }
}

/// Towards the roots: what a nerve arises from, what supplies a muscle, what feels an area of skin or a joint.
pub fn incoming(id: EntryId, vocabulary: &Vocabulary) -> Vec<Step> {
    let mut list = Vec::new();
    for fact in &vocabulary.entry(id).facts {
        match fact.relation {
            Relation::ArisesFrom { from, .. } => push(&mut list, from, "arises from", fact.variant),
            Relation::FeltBy { nerve } => push(&mut list, nerve, "felt by", fact.variant),
            _ => {}
        }
    }
    if vocabulary.kind(id) == Kind::Muscle {
        for supply in vocabulary.nerves_of(id) {
            push(&mut list, supply.nerve, "supplied by", supply.variant);
        }
    }
    for (owner, fact) in vocabulary.pointing_at(id) {
        match fact.relation {
            Relation::Gives { .. } => push(&mut list, owner, "branch of", fact.variant),
            Relation::ContinuesAs { .. } => push(&mut list, owner, "continues", fact.variant),
            Relation::Feels { .. } => push(&mut list, owner, "felt by", fact.variant),
            _ => {}
        }
    }
    list
}

/// Away from the roots: branches, muscles, skin and joints, in the order of the course.
pub fn outgoing(id: EntryId, vocabulary: &Vocabulary) -> Vec<Step> {
    let mut list = Vec::new();
    for fact in &vocabulary.entry(id).facts {
        match fact.relation {
            Relation::Gives { nerve, .. } => push(&mut list, nerve, "branch", fact.variant),
            Relation::ContinuesAs { nerve, .. } => push(&mut list, nerve, "continues as", fact.variant),
            Relation::Supplies { muscle, .. } => push(&mut list, muscle, "muscle", fact.variant),
            Relation::Feels { target } => push(&mut list, target, "sensory to", fact.variant),
            _ => {}
        }
    }
    for branch in vocabulary.branches(id) {
        push(&mut list, branch, "branch", vocabulary.entry(branch).variant);
    }
    for supply in vocabulary.twigs(id) {
        push(&mut list, supply.muscle, "muscle", supply.variant);
    }
    list
}

/// What something is a part or a member of.
pub fn above(id: EntryId, vocabulary: &Vocabulary) -> Vec<Step> {
    let mut list = Vec::new();
    let entry = vocabulary.entry(id);
    if let Some(whole) = entry.part_of {
        push(&mut list, whole, "part of", false);
    }
    for fact in &entry.facts {
        if let Relation::Member { of } = fact.relation {
            push(&mut list, of, "member of", fact.variant);
        }
    }
    list
}

/// What is a part or a member of something.
pub fn below(id: EntryId, vocabulary: &Vocabulary) -> Vec<Step> {
    let mut list = Vec::new();
    for part in vocabulary.parts(id) {
        push(&mut list, *part, "part", false);
    }
    for (owner, fact) in vocabulary.pointing_at(id) {
        if matches!(fact.relation, Relation::Member { .. }) {
            push(&mut list, owner, "member", fact.variant);
        }
    }
    list
}

/// A class of joints ("synovial"), or a kind within a class ("hinge").
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JointClass {
    /// The class.
    pub class: String,
    /// The kind within it.
    pub subtype: Option<String>,
}

impl JointClass {
    /// What such a joint is called.
    pub fn name(&self) -> String {
        self.subtype
            .as_ref()
            .map_or_else(|| format!("{} joint", self.class), |subtype| format!("{subtype} joint ({})", self.class))
    }

    /// The class of which it is a kind.
    pub fn above(&self) -> Option<Self> {
        self.subtype.as_ref().map(|_| Self { class: self.class.clone(), subtype: None })
    }
}

/// What kind of joint something is; more than one where sources differ.
pub fn joint_classes(id: EntryId, vocabulary: &Vocabulary) -> Vec<JointClass> {
    let class = |fact: &fascicle_model::Fact| match &fact.relation {
        Relation::JointKind { class, subtype } => Some(JointClass { class: class.clone(), subtype: subtype.clone() }),
        _ => None,
    };
    let mut list: Vec<JointClass> = vocabulary.entry(id).facts.iter().filter_map(class).collect();
    list.dedup();
    list
}

/// The kinds within a class, in the order of their names, and the joints that are of the class and of no kind within it.
pub fn below_class(wanted: &JointClass, vocabulary: &Vocabulary) -> (Vec<JointClass>, Vec<EntryId>) {
    let (mut kinds, mut joints) = (Vec::new(), Vec::new());
    for (id, _) in vocabulary.iter().filter(|(_, entry)| entry.kind == Kind::Joint) {
        for class in joint_classes(id, vocabulary) {
            if class == *wanted {
                joints.push(id);
            } else if class.above().as_ref() == Some(wanted) && !kinds.contains(&class) {
                kinds.push(class);
            }
        }
    }
    kinds.sort_by_key(JointClass::name);
    (kinds, joints)
}
