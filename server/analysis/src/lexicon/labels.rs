//! Labels, headings and headers of tables: what the values below or behind them are.

use ClaimKind as K;
use PartRole as P;

use crate::claims::{ClaimKind, PartRole};

/// A label (`Innervation:`), a heading (`## Innervates`) or a header of a table, and what its value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Label {
    /// The claim that a value makes; `None` for a column or heading that only names subjects.
    pub kind: Option<ClaimKind>,
    /// What the value is.
    pub value: PartRole,
    /// What the subject is.
    pub subject: PartRole,
}

const fn label(kind: ClaimKind, subject: PartRole, value: PartRole) -> Label {
    Label { kind: Some(kind), value, subject }
}

const fn naming(value: PartRole) -> Label {
    Label { kind: None, value, subject: value }
}

/// Labels and headers, by their words in lower case without articles.
#[rustfmt::skip]
pub const LABELS: &[(&str, Label)] = &[
    ("prime mover", naming(P::Muscle)), ("prime movers", naming(P::Muscle)), ("mover", naming(P::Muscle)), ("movers", naming(P::Muscle)), ("agonist", naming(P::Muscle)), ("agonists", naming(P::Muscle)), ("muscles involved", naming(P::Muscle)), ("muscles responsible", naming(P::Muscle)),
    ("muscle", naming(P::Muscle)), ("muscles", naming(P::Muscle)), ("muscle or part", naming(P::Muscle)), ("muscle group", naming(P::Muscle)), ("muscles and parts", naming(P::Muscle)),
    ("cn", naming(P::Nerve)), ("cranial nerve", naming(P::Nerve)), ("lesion", naming(P::Nerve)), ("nerve injured", naming(P::Nerve)), ("injured nerve", naming(P::Nerve)), ("nerve lesion", naming(P::Nerve)), ("injury to", naming(P::Nerve)), ("lesion of", naming(P::Nerve)),
    ("deficit", label(K::Deficit, P::Nerve, P::Sign)), ("deficits", label(K::Deficit, P::Nerve, P::Sign)), ("loss", label(K::Deficit, P::Nerve, P::Sign)), ("motor loss", label(K::Deficit, P::Nerve, P::Sign)), ("motor deficit", label(K::Deficit, P::Nerve, P::Sign)), ("sign", label(K::Deficit, P::Nerve, P::Sign)), ("signs", label(K::Deficit, P::Nerve, P::Sign)), ("result", label(K::Deficit, P::Nerve, P::Sign)), ("effect of injury", label(K::Deficit, P::Nerve, P::Sign)), ("what is lost", label(K::Deficit, P::Nerve, P::Sign)), ("lost", label(K::Deficit, P::Nerve, P::Sign)),
    ("motor effects", label(K::Deficit, P::Nerve, P::Sign)), ("motor effect", label(K::Deficit, P::Nerve, P::Sign)), ("motor deficits", label(K::Deficit, P::Nerve, P::Sign)), ("motor signs", label(K::Deficit, P::Nerve, P::Sign)), ("motor weakness", label(K::Deficit, P::Nerve, P::Sign)), ("deformity", label(K::Deficit, P::Nerve, P::Sign)), ("posture", label(K::Deficit, P::Nerve, P::Sign)), ("hand posture", label(K::Deficit, P::Nerve, P::Sign)), ("gait", label(K::Deficit, P::Nerve, P::Sign)), ("consequence", label(K::Deficit, P::Nerve, P::Sign)), ("consequences", label(K::Deficit, P::Nerve, P::Sign)), ("effect", label(K::Deficit, P::Nerve, P::Sign)), ("effects", label(K::Deficit, P::Nerve, P::Sign)), ("effect of lesion", label(K::Deficit, P::Nerve, P::Sign)), ("effects of lesion", label(K::Deficit, P::Nerve, P::Sign)), ("effect of damage", label(K::Deficit, P::Nerve, P::Sign)), ("effects of damage", label(K::Deficit, P::Nerve, P::Sign)), ("clinical sign", label(K::Deficit, P::Nerve, P::Sign)), ("clinical signs", label(K::Deficit, P::Nerve, P::Sign)), ("clinical feature", label(K::Deficit, P::Nerve, P::Sign)), ("clinical features", label(K::Deficit, P::Nerve, P::Sign)), ("features", label(K::Deficit, P::Nerve, P::Sign)), ("presentation", label(K::Deficit, P::Nerve, P::Sign)), ("lesion causes", label(K::Deficit, P::Nerve, P::Sign)), ("lesion produces", label(K::Deficit, P::Nerve, P::Sign)), ("injury causes", label(K::Deficit, P::Nerve, P::Sign)), ("damage causes", label(K::Deficit, P::Nerve, P::Sign)), ("injury results in", label(K::Deficit, P::Nerve, P::Sign)), ("result of injury", label(K::Deficit, P::Nerve, P::Sign)), ("result of lesion", label(K::Deficit, P::Nerve, P::Sign)), ("results of lesion", label(K::Deficit, P::Nerve, P::Sign)), ("movement lost", label(K::Deficit, P::Nerve, P::Sign)), ("movements lost", label(K::Deficit, P::Nerve, P::Sign)), ("muscles paralysed", label(K::Deficit, P::Nerve, P::Sign)), ("muscles paralyzed", label(K::Deficit, P::Nerve, P::Sign)), ("paralysed", label(K::Deficit, P::Nerve, P::Sign)), ("paralysis", label(K::Deficit, P::Nerve, P::Sign)), ("weak movement", label(K::Deficit, P::Nerve, P::Sign)), ("weak movements", label(K::Deficit, P::Nerve, P::Sign)), ("functional loss", label(K::Deficit, P::Nerve, P::Sign)), ("loss of function", label(K::Deficit, P::Nerve, P::Sign)), ("if lost", label(K::Deficit, P::Nerve, P::Sign)), ("if lesioned", label(K::Deficit, P::Nerve, P::Sign)), ("after injury", label(K::Deficit, P::Nerve, P::Sign)), ("after a lesion", label(K::Deficit, P::Nerve, P::Sign)), ("classic sign", label(K::Deficit, P::Nerve, P::Sign)), ("characteristic sign", label(K::Deficit, P::Nerve, P::Sign)), ("typical sign", label(K::Deficit, P::Nerve, P::Sign)), ("lesion effect", label(K::Deficit, P::Nerve, P::Sign)), ("what goes", label(K::Deficit, P::Nerve, P::Sign)), ("what is weak", label(K::Deficit, P::Nerve, P::Sign)), ("weak", label(K::Deficit, P::Nerve, P::Sign)),
    ("sensory loss", label(K::Skin, P::Nerve, P::Skin)), ("sensory deficit", label(K::Skin, P::Nerve, P::Skin)), ("sensory deficits", label(K::Skin, P::Nerve, P::Skin)), ("area of numbness", label(K::Skin, P::Nerve, P::Skin)), ("numb area", label(K::Skin, P::Nerve, P::Skin)), ("numbness", label(K::Skin, P::Nerve, P::Skin)), ("sensory change", label(K::Skin, P::Nerve, P::Skin)), ("sensory changes", label(K::Skin, P::Nerve, P::Skin)), ("loss of sensation", label(K::Skin, P::Nerve, P::Skin)), ("area of sensory loss", label(K::Skin, P::Nerve, P::Skin)), ("skin numb", label(K::Skin, P::Nerve, P::Skin)), ("numb", label(K::Skin, P::Nerve, P::Skin)), ("anaesthesia", label(K::Skin, P::Nerve, P::Skin)), ("anaesthetic area", label(K::Skin, P::Nerve, P::Skin)), ("autonomous zone", label(K::Skin, P::Nerve, P::Skin)), ("autonomous area", label(K::Skin, P::Nerve, P::Skin)), ("skin area supplied", label(K::Skin, P::Nerve, P::Skin)), ("area of skin supplied", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous distribution", label(K::Skin, P::Nerve, P::Skin)), ("sensory distribution", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous territory", label(K::Skin, P::Nerve, P::Skin)), ("skin territory", label(K::Skin, P::Nerve, P::Skin)), ("area supplied", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous area", label(K::Skin, P::Nerve, P::Skin)), ("sensory function", label(K::Skin, P::Nerve, P::Skin)), ("sensory innervation", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous innervation", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous supply to", label(K::Skin, P::Nerve, P::Skin)), ("sensory supply to", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous to", label(K::Skin, P::Nerve, P::Skin)), ("supplies skin of", label(K::Skin, P::Nerve, P::Skin)), ("sensory branches", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous branches", label(K::Skin, P::Nerve, P::Skin)),
    ("joint", naming(P::Joint)),
    ("joints crossed", label(K::Joint, P::Muscle, P::Joint)), ("joint crossed", label(K::Joint, P::Muscle, P::Joint)), ("joint acted upon", label(K::Joint, P::Muscle, P::Joint)), ("joint acted on", label(K::Joint, P::Muscle, P::Joint)), ("joint moved", label(K::Joint, P::Muscle, P::Joint)), ("joints moved", label(K::Joint, P::Muscle, P::Joint)),
    ("lesions", label(K::Deficit, P::Nerve, P::Sign)), ("palsies", label(K::Deficit, P::Nerve, P::Sign)), ("palsy", label(K::Deficit, P::Nerve, P::Sign)), ("injuries", label(K::Deficit, P::Nerve, P::Sign)), ("if cut", label(K::Deficit, P::Nerve, P::Sign)), ("when cut", label(K::Deficit, P::Nerve, P::Sign)), ("if injured", label(K::Deficit, P::Nerve, P::Sign)), ("if damaged", label(K::Deficit, P::Nerve, P::Sign)), ("damage", label(K::Deficit, P::Nerve, P::Sign)), ("injury", label(K::Deficit, P::Nerve, P::Sign)), ("effects of injury", label(K::Deficit, P::Nerve, P::Sign)), ("weakness", label(K::Deficit, P::Nerve, P::Sign)),
    ("number", label(K::Count, P::Structure, P::Number)), ("how many", label(K::Count, P::Structure, P::Number)), ("how many are there", label(K::Count, P::Structure, P::Number)), ("heads", label(K::Count, P::Structure, P::Number)), ("number of heads", label(K::Count, P::Structure, P::Number)), ("bellies", label(K::Count, P::Structure, P::Number)), ("number of bellies", label(K::Count, P::Structure, P::Number)), ("count", label(K::Count, P::Structure, P::Number)), ("number of muscles", label(K::Count, P::Structure, P::Number)),
    ("innervation", label(K::Supply, P::Muscle, P::Nerve)), ("nerve", label(K::Supply, P::Muscle, P::Nerve)),
    ("nerves", label(K::Supply, P::Muscle, P::Nerve)), ("nerve supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("motor nerve", label(K::Supply, P::Muscle, P::Nerve)), ("n", label(K::Supply, P::Muscle, P::Nerve)),
    ("ns", label(K::Supply, P::Muscle, P::Nerve)), ("motor supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("supplied by", label(K::Supply, P::Muscle, P::Nerve)), ("innervated by", label(K::Supply, P::Muscle, P::Nerve)),
    ("motor innervation", label(K::Supply, P::Muscle, P::Nerve)), ("supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("nn", label(K::Supply, P::Muscle, P::Nerve)), ("innervated", label(K::Supply, P::Muscle, P::Nerve)), ("supplying nerve", label(K::Supply, P::Muscle, P::Nerve)), ("nerve innervation", label(K::Supply, P::Muscle, P::Nerve)), ("motor nerve supply", label(K::Supply, P::Muscle, P::Nerve)), ("nerve of supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("nerve(s)", label(K::Supply, P::Muscle, P::Nerve)), ("nervous supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("supplies", label(K::Supply, P::Nerve, P::Muscle)), ("innervates", label(K::Supply, P::Nerve, P::Muscle)),
    ("motor", label(K::Supply, P::Nerve, P::Muscle)), ("motor to", label(K::Supply, P::Nerve, P::Muscle)),
    ("muscles supplied", label(K::Supply, P::Nerve, P::Muscle)), ("muscles innervated", label(K::Supply, P::Nerve, P::Muscle)),
    ("muscular branches", label(K::Supply, P::Nerve, P::Muscle)), ("muscular", label(K::Supply, P::Nerve, P::Muscle)), ("muscle branches", label(K::Supply, P::Nerve, P::Muscle)), ("motor supply to", label(K::Supply, P::Nerve, P::Muscle)), ("muscular supply", label(K::Supply, P::Nerve, P::Muscle)), ("motor branches to", label(K::Supply, P::Nerve, P::Muscle)), ("muscles it supplies", label(K::Supply, P::Nerve, P::Muscle)),
    ("motor branches", label(K::Supply, P::Nerve, P::Muscle)), ("motor function", label(K::Supply, P::Nerve, P::Muscle)),
    ("roots", label(K::Roots, P::Structure, P::Segments)), ("root", label(K::Roots, P::Structure, P::Segments)),
    ("root value", label(K::Roots, P::Structure, P::Segments)), ("root values", label(K::Roots, P::Structure, P::Segments)),
    ("segments", label(K::Roots, P::Structure, P::Segments)), ("nerve root", label(K::Roots, P::Structure, P::Segments)), ("root level", label(K::Roots, P::Structure, P::Segments)), ("root levels", label(K::Roots, P::Structure, P::Segments)), ("roots of origin", label(K::Roots, P::Structure, P::Segments)), ("level", label(K::Roots, P::Structure, P::Segments)), ("levels", label(K::Roots, P::Structure, P::Segments)), ("r", label(K::Roots, P::Structure, P::Segments)), ("segmental value", label(K::Roots, P::Structure, P::Segments)), ("segmental origin", label(K::Roots, P::Structure, P::Segments)),
    ("nerve roots", label(K::Roots, P::Structure, P::Segments)),
    ("spinal roots", label(K::Roots, P::Structure, P::Segments)), ("spinal segments", label(K::Roots, P::Structure, P::Segments)),
    ("segmental supply", label(K::Roots, P::Structure, P::Segments)), ("spinal levels", label(K::Roots, P::Structure, P::Segments)),
    ("dermatome", label(K::Roots, P::Structure, P::Segments)), ("dermatomes", label(K::Roots, P::Structure, P::Segments)), ("myotomes", label(K::Roots, P::Structure, P::Segments)), ("segmental", label(K::Roots, P::Structure, P::Segments)), ("segment", label(K::Roots, P::Structure, P::Segments)), ("myotome", label(K::Roots, P::Structure, P::Segments)),
    ("root(s)", label(K::Roots, P::Structure, P::Segments)),
    ("action", label(K::Action, P::Muscle, P::Movement)), ("actions", label(K::Action, P::Muscle, P::Movement)),
    ("act", label(K::Action, P::Muscle, P::Movement)), ("fx", label(K::Action, P::Muscle, P::Movement)), ("fn", label(K::Action, P::Muscle, P::Movement)), ("prime action", label(K::Action, P::Muscle, P::Movement)), ("produces", label(K::Action, P::Muscle, P::Movement)), ("what it does", label(K::Action, P::Muscle, P::Movement)), ("acts", label(K::Action, P::Muscle, P::Movement)), ("does", label(K::Action, P::Muscle, P::Movement)), ("chief action", label(K::Action, P::Muscle, P::Movement)), ("main function", label(K::Action, P::Muscle, P::Movement)), ("job", label(K::Action, P::Muscle, P::Movement)), ("f", label(K::Action, P::Muscle, P::Movement)), ("movement produced", label(K::Action, P::Muscle, P::Movement)),
    ("main action", label(K::Action, P::Muscle, P::Movement)), ("main actions", label(K::Action, P::Muscle, P::Movement)),
    ("function", label(K::Action, P::Muscle, P::Movement)), ("functions", label(K::Action, P::Muscle, P::Movement)),
    ("movement", label(K::Action, P::Muscle, P::Movement)), ("a", label(K::Action, P::Muscle, P::Movement)),
    ("origin", label(K::Attachment, P::Muscle, P::Landmark)), ("o", label(K::Attachment, P::Muscle, P::Landmark)),
    ("origins", label(K::Attachment, P::Muscle, P::Landmark)), ("proximal attachment", label(K::Attachment, P::Muscle, P::Landmark)),
    ("insertion", label(K::Attachment, P::Muscle, P::Landmark)), ("i", label(K::Attachment, P::Muscle, P::Landmark)),
    ("insertions", label(K::Attachment, P::Muscle, P::Landmark)), ("distal attachment", label(K::Attachment, P::Muscle, P::Landmark)),
    ("proximal", label(K::Attachment, P::Muscle, P::Landmark)), ("distal", label(K::Attachment, P::Muscle, P::Landmark)), ("prox attachment", label(K::Attachment, P::Muscle, P::Landmark)), ("dist attachment", label(K::Attachment, P::Muscle, P::Landmark)), ("from", label(K::Attachment, P::Muscle, P::Landmark)), ("to", label(K::Attachment, P::Muscle, P::Landmark)),
    ("inferior attachment", label(K::Attachment, P::Muscle, P::Landmark)), ("superior attachment", label(K::Attachment, P::Muscle, P::Landmark)),
    ("lower attachment", label(K::Attachment, P::Muscle, P::Landmark)), ("upper attachment", label(K::Attachment, P::Muscle, P::Landmark)),
    ("attachment", label(K::Attachment, P::Muscle, P::Landmark)), ("attachments", label(K::Attachment, P::Muscle, P::Landmark)), ("at", label(K::Attachment, P::Muscle, P::Landmark)), ("ins", label(K::Attachment, P::Muscle, P::Landmark)), ("orig", label(K::Attachment, P::Muscle, P::Landmark)), ("or", label(K::Attachment, P::Muscle, P::Landmark)), ("attaches to", label(K::Attachment, P::Muscle, P::Landmark)), ("inserts", label(K::Attachment, P::Muscle, P::Landmark)),
    ("arises from", label(K::Branching, P::Nerve, P::Parent)), ("branch of", label(K::Branching, P::Nerve, P::Parent)),
    ("given off by", label(K::Branching, P::Nerve, P::Parent)), ("comes from", label(K::Branching, P::Nerve, P::Parent)),
    ("derived from", label(K::Branching, P::Nerve, P::Parent)),
    ("parent nerve", label(K::Branching, P::Nerve, P::Parent)), ("parent", label(K::Branching, P::Nerve, P::Parent)),
    ("source", label(K::Branching, P::Nerve, P::Parent)), ("cord", label(K::Branching, P::Nerve, P::Parent)), ("plexus", label(K::Branching, P::Nerve, P::Parent)), ("trunk", label(K::Branching, P::Nerve, P::Parent)), ("comes off", label(K::Branching, P::Nerve, P::Parent)), ("division of", label(K::Branching, P::Nerve, P::Parent)), ("from which nerve", label(K::Branching, P::Nerve, P::Parent)),
    ("arises", label(K::Branching, P::Nerve, P::Parent)),
    ("branch", label(K::Branching, P::Parent, P::Nerve)), ("divides into", label(K::Branching, P::Parent, P::Nerve)), ("ends as", label(K::Branching, P::Parent, P::Nerve)),
    ("branches", label(K::Branching, P::Parent, P::Nerve)), ("terminal branches", label(K::Branching, P::Parent, P::Nerve)),
    ("gives off", label(K::Branching, P::Parent, P::Nerve)), ("gives", label(K::Branching, P::Parent, P::Nerve)),
    ("continues as", label(K::Renaming, P::Parent, P::Nerve)), ("becomes", label(K::Renaming, P::Parent, P::Nerve)),
    ("leaves by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves through", label(K::Passage, P::Nerve, P::Landmark)), ("leaves via", label(K::Passage, P::Nerve, P::Landmark)), ("enters by", label(K::Passage, P::Nerve, P::Landmark)), ("enters through", label(K::Passage, P::Nerve, P::Landmark)), ("pierces", label(K::Passage, P::Nerve, P::Landmark)), ("runs through", label(K::Passage, P::Nerve, P::Landmark)), ("runs in", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull via", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull via", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull by", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull through", label(K::Passage, P::Nerve, P::Landmark)), ("exits via", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis through", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis via", label(K::Passage, P::Nerve, P::Landmark)), ("enters perineum by", label(K::Passage, P::Nerve, P::Landmark)), ("enters perineum through", label(K::Passage, P::Nerve, P::Landmark)), ("way out", label(K::Passage, P::Nerve, P::Landmark)), ("goes through", label(K::Passage, P::Nerve, P::Landmark)), ("passes through", label(K::Passage, P::Nerve, P::Landmark)), ("hole", label(K::Passage, P::Nerve, P::Landmark)), ("exits through", label(K::Passage, P::Nerve, P::Landmark)), ("exits by", label(K::Passage, P::Nerve, P::Landmark)), ("canal", label(K::Passage, P::Nerve, P::Landmark)), ("space", label(K::Passage, P::Nerve, P::Landmark)),
    ("foramen", label(K::Passage, P::Nerve, P::Landmark)),
    ("transmits", label(K::Passage, P::Landmark, P::Nerve)), ("lets through", label(K::Passage, P::Landmark, P::Nerve)), ("lets out", label(K::Passage, P::Landmark, P::Nerve)), ("what goes through", label(K::Passage, P::Landmark, P::Nerve)), ("traversed by", label(K::Passage, P::Landmark, P::Nerve)), ("passed by", label(K::Passage, P::Landmark, P::Nerve)), ("nerve passing", label(K::Passage, P::Landmark, P::Nerve)), ("nerve transmitted", label(K::Passage, P::Landmark, P::Nerve)), ("nerves transmitted", label(K::Passage, P::Landmark, P::Nerve)),
    ("felt by", label(K::Skin, P::Skin, P::Nerve)), ("nerve of skin", label(K::Skin, P::Skin, P::Nerve)), ("sensory supply by", label(K::Skin, P::Skin, P::Nerve)), ("which is a branch of", label(K::Branching, P::Nerve, P::Parent)), ("a branch of", label(K::Branching, P::Nerve, P::Parent)),
    ("leaves skull by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull through", label(K::Passage, P::Nerve, P::Landmark)),
    ("opening", label(K::Passage, P::Nerve, P::Landmark)), ("skull exit", label(K::Passage, P::Nerve, P::Landmark)), ("course", label(K::Passage, P::Nerve, P::Landmark)),
    ("passes", label(K::Passage, P::Nerve, P::Landmark)), ("tunnel", label(K::Passage, P::Nerve, P::Landmark)), ("exit foramen", label(K::Passage, P::Nerve, P::Landmark)),
    ("exit", label(K::Passage, P::Nerve, P::Landmark)), ("passage", label(K::Passage, P::Nerve, P::Landmark)),
    ("exits", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull at", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull at", label(K::Passage, P::Nerve, P::Landmark)), ("exits at", label(K::Passage, P::Nerve, P::Landmark)), ("leaves at", label(K::Passage, P::Nerve, P::Landmark)), ("emerges", label(K::Passage, P::Nerve, P::Landmark)), ("emerges at", label(K::Passage, P::Nerve, P::Landmark)), ("emerges through", label(K::Passage, P::Nerve, P::Landmark)), ("emerges from", label(K::Passage, P::Nerve, P::Landmark)), ("emerges between", label(K::Passage, P::Nerve, P::Landmark)), ("enters", label(K::Passage, P::Nerve, P::Landmark)), ("enters between", label(K::Passage, P::Nerve, P::Landmark)), ("enters at", label(K::Passage, P::Nerve, P::Landmark)), ("enters via", label(K::Passage, P::Nerve, P::Landmark)), ("route", label(K::Passage, P::Nerve, P::Landmark)), ("path", label(K::Passage, P::Nerve, P::Landmark)), ("pathway", label(K::Passage, P::Nerve, P::Landmark)), ("outlet", label(K::Passage, P::Nerve, P::Landmark)), ("exit point", label(K::Passage, P::Nerve, P::Landmark)), ("skull foramen", label(K::Passage, P::Nerve, P::Landmark)), ("skull opening", label(K::Passage, P::Nerve, P::Landmark)), ("foramen of exit", label(K::Passage, P::Nerve, P::Landmark)), ("opening used", label(K::Passage, P::Nerve, P::Landmark)), ("doorway", label(K::Passage, P::Nerve, P::Landmark)), ("portal", label(K::Passage, P::Nerve, P::Landmark)), ("gateway", label(K::Passage, P::Nerve, P::Landmark)), ("bony canal", label(K::Passage, P::Nerve, P::Landmark)), ("bony opening", label(K::Passage, P::Nerve, P::Landmark)), ("passes via", label(K::Passage, P::Nerve, P::Landmark)), ("passes behind", label(K::Passage, P::Nerve, P::Landmark)), ("passes under", label(K::Passage, P::Nerve, P::Landmark)), ("passes between", label(K::Passage, P::Nerve, P::Landmark)), ("passes deep to", label(K::Passage, P::Nerve, P::Landmark)), ("runs behind", label(K::Passage, P::Nerve, P::Landmark)), ("runs under", label(K::Passage, P::Nerve, P::Landmark)), ("lies in", label(K::Passage, P::Nerve, P::Landmark)), ("lies behind", label(K::Passage, P::Nerve, P::Landmark)), ("found in", label(K::Passage, P::Nerve, P::Landmark)), ("travels in", label(K::Passage, P::Nerve, P::Landmark)), ("travels through", label(K::Passage, P::Nerve, P::Landmark)), ("runs with", label(K::Passage, P::Nerve, P::Landmark)), ("travels with", label(K::Passage, P::Nerve, P::Landmark)), ("accompanies", label(K::Passage, P::Nerve, P::Landmark)), ("accompanied by", label(K::Passage, P::Nerve, P::Landmark)), ("companion artery", label(K::Passage, P::Nerve, P::Landmark)), ("companion vessel", label(K::Passage, P::Nerve, P::Landmark)), ("companion vein", label(K::Passage, P::Nerve, P::Landmark)), ("accompanying artery", label(K::Passage, P::Nerve, P::Landmark)), ("accompanying vessel", label(K::Passage, P::Nerve, P::Landmark)), ("site of entrapment", label(K::Passage, P::Nerve, P::Landmark)), ("entrapment site", label(K::Passage, P::Nerve, P::Landmark)), ("site of compression", label(K::Passage, P::Nerve, P::Landmark)), ("compression site", label(K::Passage, P::Nerve, P::Landmark)), ("entrapment", label(K::Passage, P::Nerve, P::Landmark)), ("entrapped at", label(K::Passage, P::Nerve, P::Landmark)), ("entrapped in", label(K::Passage, P::Nerve, P::Landmark)), ("trapped at", label(K::Passage, P::Nerve, P::Landmark)), ("trapped in", label(K::Passage, P::Nerve, P::Landmark)), ("compressed at", label(K::Passage, P::Nerve, P::Landmark)), ("compressed in", label(K::Passage, P::Nerve, P::Landmark)), ("muscle pierced", label(K::Passage, P::Nerve, P::Landmark)), ("muscle it pierces", label(K::Passage, P::Nerve, P::Landmark)), ("pierced muscle", label(K::Passage, P::Nerve, P::Landmark)), ("site", label(K::Passage, P::Nerve, P::Landmark)), ("where it passes", label(K::Passage, P::Nerve, P::Landmark)), ("key relation", label(K::Passage, P::Nerve, P::Landmark)), ("lies between", label(K::Passage, P::Nerve, P::Landmark)), ("groove", label(K::Passage, P::Nerve, P::Landmark)), ("space traversed", label(K::Passage, P::Nerve, P::Landmark)), ("fissure", label(K::Passage, P::Nerve, P::Landmark)),
    ("contents", label(K::Passage, P::Landmark, P::Nerve)), ("content", label(K::Passage, P::Landmark, P::Nerve)), ("structures", label(K::Passage, P::Landmark, P::Nerve)), ("structures transmitted", label(K::Passage, P::Landmark, P::Nerve)), ("structure transmitted", label(K::Passage, P::Landmark, P::Nerve)), ("structures passing", label(K::Passage, P::Landmark, P::Nerve)), ("structures passing through", label(K::Passage, P::Landmark, P::Nerve)), ("structure passing through", label(K::Passage, P::Landmark, P::Nerve)), ("nerves passing", label(K::Passage, P::Landmark, P::Nerve)), ("nerves passing through", label(K::Passage, P::Landmark, P::Nerve)), ("nerve passing through", label(K::Passage, P::Landmark, P::Nerve)), ("passing through", label(K::Passage, P::Landmark, P::Nerve)), ("what passes", label(K::Passage, P::Landmark, P::Nerve)), ("what passes through", label(K::Passage, P::Landmark, P::Nerve)), ("what passes through it", label(K::Passage, P::Landmark, P::Nerve)), ("what runs through", label(K::Passage, P::Landmark, P::Nerve)), ("what runs through it", label(K::Passage, P::Landmark, P::Nerve)), ("what runs in it", label(K::Passage, P::Landmark, P::Nerve)), ("runs in it", label(K::Passage, P::Landmark, P::Nerve)), ("passes through it", label(K::Passage, P::Landmark, P::Nerve)), ("structures in it", label(K::Passage, P::Landmark, P::Nerve)), ("structures contained", label(K::Passage, P::Landmark, P::Nerve)), ("nerve contained", label(K::Passage, P::Landmark, P::Nerve)), ("passengers", label(K::Passage, P::Landmark, P::Nerve)), ("main contents", label(K::Passage, P::Landmark, P::Nerve)), ("nerve in it", label(K::Passage, P::Landmark, P::Nerve)), ("occupants", label(K::Passage, P::Landmark, P::Nerve)), ("occupant", label(K::Passage, P::Landmark, P::Nerve)), ("traffic", label(K::Passage, P::Landmark, P::Nerve)), ("nerve it transmits", label(K::Passage, P::Landmark, P::Nerve)), ("what it transmits", label(K::Passage, P::Landmark, P::Nerve)), ("carried through", label(K::Passage, P::Landmark, P::Nerve)), ("tendons", label(K::Passage, P::Landmark, P::Nerve)), ("tendons in it", label(K::Passage, P::Landmark, P::Nerve)), ("tendon", label(K::Passage, P::Landmark, P::Nerve)), ("tendons contained", label(K::Passage, P::Landmark, P::Nerve)),
    ("way", label(K::Passage, P::Nerve, P::Landmark)), ("way taken", label(K::Passage, P::Nerve, P::Landmark)),
    ("nature", label(K::Modality, P::Nerve, P::Modality)), ("carries", label(K::Modality, P::Nerve, P::Modality)),
    ("modality", label(K::Modality, P::Nerve, P::Modality)), ("fibres", label(K::Modality, P::Nerve, P::Modality)),
    ("type", label(K::Modality, P::Nerve, P::Modality)), ("movements", label(K::Joint, P::Joint, P::Movement)), ("movements allowed", label(K::Joint, P::Joint, P::Movement)), ("allows", label(K::Joint, P::Joint, P::Movement)),
    ("joint type", label(K::Joint, P::Joint, P::JointKind)), ("type of joint", label(K::Joint, P::Joint, P::JointKind)), ("class", label(K::Joint, P::Joint, P::JointKind)),
    ("skin", label(K::Skin, P::Nerve, P::Skin)), ("sensory to", label(K::Skin, P::Nerve, P::Skin)), ("sensory area", label(K::Skin, P::Nerve, P::Skin)), ("skin supplied", label(K::Skin, P::Nerve, P::Skin)), ("feels", label(K::Skin, P::Nerve, P::Skin)), ("skin supply", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous supply", label(K::Skin, P::Nerve, P::Skin)), ("sensory territory", label(K::Skin, P::Nerve, P::Skin)), ("sensory nerve", label(K::Skin, P::Skin, P::Nerve)), ("cutaneous nerve", label(K::Skin, P::Skin, P::Nerve)), ("sensory", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous", label(K::Skin, P::Nerve, P::Skin)), ("sensation", label(K::Skin, P::Nerve, P::Skin)), ("sensory supply", label(K::Skin, P::Nerve, P::Skin)),
    ("area", naming(P::Skin)), ("skin area", naming(P::Skin)), ("region", naming(P::Skin)), ("area of skin", naming(P::Skin)),
    ("kind", label(K::Joint, P::Joint, P::JointKind)), ("kind of joint", label(K::Joint, P::Joint, P::JointKind)), ("classification", label(K::Joint, P::Joint, P::JointKind)), ("variety", label(K::Joint, P::Joint, P::JointKind)), ("subtype", label(K::Joint, P::Joint, P::JointKind)),
    ("bones", label(K::Joint, P::Joint, P::Landmark)), ("bones involved", label(K::Joint, P::Joint, P::Landmark)), ("articulating bones", label(K::Joint, P::Joint, P::Landmark)), ("bones taking part", label(K::Joint, P::Joint, P::Landmark)), ("bones that meet", label(K::Joint, P::Joint, P::Landmark)), ("bones that take part", label(K::Joint, P::Joint, P::Landmark)), ("formed by", label(K::Joint, P::Joint, P::Landmark)), ("between", label(K::Joint, P::Joint, P::Landmark)), ("articulation", label(K::Joint, P::Joint, P::Landmark)), ("ligaments", label(K::Joint, P::Joint, P::Landmark)), ("ligament", label(K::Joint, P::Joint, P::Landmark)), ("main ligaments", label(K::Joint, P::Joint, P::Landmark)), ("main ligament", label(K::Joint, P::Joint, P::Landmark)),
    ("degrees of freedom", label(K::Count, P::Structure, P::Number)), ("degree of freedom", label(K::Count, P::Structure, P::Number)), ("axes", label(K::Count, P::Structure, P::Number)), ("axis", label(K::Count, P::Structure, P::Number)), ("number of axes", label(K::Count, P::Structure, P::Number)), ("axes of movement", label(K::Count, P::Structure, P::Number)), ("number of members", label(K::Count, P::Structure, P::Number)), ("number of branches", label(K::Count, P::Structure, P::Number)), ("number of bones", label(K::Count, P::Structure, P::Number)), ("number of parts", label(K::Count, P::Structure, P::Number)), ("no of heads", label(K::Count, P::Structure, P::Number)), ("no of muscles", label(K::Count, P::Structure, P::Number)),
    ("parts", label(K::Membership, P::Group, P::Muscle)), ("members", label(K::Membership, P::Group, P::Muscle)), ("one of them", label(K::Membership, P::Group, P::Muscle)), ("another", label(K::Membership, P::Group, P::Muscle)), ("another of them", label(K::Membership, P::Group, P::Muscle)), ("consists of", label(K::Membership, P::Group, P::Muscle)), ("comprises", label(K::Membership, P::Group, P::Muscle)), ("layer", label(K::Membership, P::Muscle, P::Group)), ("includes", label(K::Membership, P::Group, P::Muscle)), ("made up of", label(K::Membership, P::Group, P::Muscle)), ("belongs to", label(K::Membership, P::Muscle, P::Group)), ("part of", label(K::Membership, P::Muscle, P::Group)), ("member of", label(K::Membership, P::Muscle, P::Group)),
    ("compartment or layer", label(K::Membership, P::Muscle, P::Group)), ("layer or compartment", label(K::Membership, P::Muscle, P::Group)), ("belongs in", label(K::Membership, P::Muscle, P::Group)), ("depth", label(K::Membership, P::Muscle, P::Group)),
    ("compartment", label(K::Membership, P::Muscle, P::Group)), ("group", label(K::Membership, P::Muscle, P::Group)),
    ("done by", naming(P::Muscle)), ("performed by", naming(P::Muscle)), ("produced by", naming(P::Muscle)), ("carried out by", naming(P::Muscle)), ("effected by", naming(P::Muscle)), ("brought about by", naming(P::Muscle)), ("muscle acting", naming(P::Muscle)), ("acting muscles", naming(P::Muscle)), ("acting muscle", naming(P::Muscle)), ("by which muscle", naming(P::Muscle)), ("by which muscles", naming(P::Muscle)), ("chief muscle", naming(P::Muscle)), ("chief muscles", naming(P::Muscle)), ("main muscle", naming(P::Muscle)), ("main muscles", naming(P::Muscle)), ("key muscles", naming(P::Muscle)), ("muscle responsible", naming(P::Muscle)), ("muscle(s)", naming(P::Muscle)), ("muscle name", naming(P::Muscle)), ("name of muscle", naming(P::Muscle)),
    ("nerve cut", naming(P::Nerve)), ("nerve damaged", naming(P::Nerve)), ("damaged nerve", naming(P::Nerve)), ("nerve affected", naming(P::Nerve)), ("affected nerve", naming(P::Nerve)), ("nerve hit", naming(P::Nerve)), ("nerve at fault", naming(P::Nerve)), ("nerve lost", naming(P::Nerve)), ("name of nerve", naming(P::Nerve)), ("nerve name", naming(P::Nerve)), ("nerve(s) injured", naming(P::Nerve)), ("nerve divided", naming(P::Nerve)), ("palsy of", naming(P::Nerve)),
    ("innerv", label(K::Supply, P::Muscle, P::Nerve)), ("inn", label(K::Supply, P::Muscle, P::Nerve)), ("nerve supply to", label(K::Supply, P::Muscle, P::Nerve)), ("nerve to", label(K::Supply, P::Muscle, P::Nerve)), ("wired by", label(K::Supply, P::Muscle, P::Nerve)), ("driven by", label(K::Supply, P::Muscle, P::Nerve)), ("motor n", label(K::Supply, P::Muscle, P::Nerve)), ("which nerve", label(K::Supply, P::Muscle, P::Nerve)), ("what nerve", label(K::Supply, P::Muscle, P::Nerve)), ("which nerve supplies it", label(K::Supply, P::Muscle, P::Nerve)), ("what supplies it", label(K::Supply, P::Muscle, P::Nerve)), ("who supplies it", label(K::Supply, P::Muscle, P::Nerve)), ("what nerve supplies it", label(K::Supply, P::Muscle, P::Nerve)), ("who drives it", label(K::Supply, P::Muscle, P::Nerve)), ("what drives it", label(K::Supply, P::Muscle, P::Nerve)), ("what innervates it", label(K::Supply, P::Muscle, P::Nerve)), ("which nerve innervates it", label(K::Supply, P::Muscle, P::Nerve)), ("its nerve", label(K::Supply, P::Muscle, P::Nerve)), ("by which nerve", label(K::Supply, P::Muscle, P::Nerve)),
    ("targets", label(K::Supply, P::Nerve, P::Muscle)), ("target", label(K::Supply, P::Nerve, P::Muscle)), ("target muscle", label(K::Supply, P::Nerve, P::Muscle)), ("target muscles", label(K::Supply, P::Nerve, P::Muscle)), ("muscle targets", label(K::Supply, P::Nerve, P::Muscle)), ("motor targets", label(K::Supply, P::Nerve, P::Muscle)), ("muscle example", label(K::Supply, P::Nerve, P::Muscle)), ("example muscle", label(K::Supply, P::Nerve, P::Muscle)), ("muscles driven", label(K::Supply, P::Nerve, P::Muscle)), ("which muscles", label(K::Supply, P::Nerve, P::Muscle)), ("what does it supply", label(K::Supply, P::Nerve, P::Muscle)), ("which muscles does it supply", label(K::Supply, P::Nerve, P::Muscle)), ("muscles reached", label(K::Supply, P::Nerve, P::Muscle)), ("muscles served", label(K::Supply, P::Nerve, P::Muscle)), ("motor to muscles", label(K::Supply, P::Nerve, P::Muscle)), ("what it supplies", label(K::Supply, P::Nerve, P::Muscle)),
    ("which roots", label(K::Roots, P::Structure, P::Segments)), ("what roots", label(K::Roots, P::Structure, P::Segments)), ("from which roots", label(K::Roots, P::Structure, P::Segments)), ("which segments", label(K::Roots, P::Structure, P::Segments)), ("what segments", label(K::Roots, P::Structure, P::Segments)), ("spinal root", label(K::Roots, P::Structure, P::Segments)), ("root(s) of origin", label(K::Roots, P::Structure, P::Segments)), ("segments of origin", label(K::Roots, P::Structure, P::Segments)),
    ("ori", label(K::Attachment, P::Muscle, P::Landmark)), ("start", label(K::Attachment, P::Muscle, P::Landmark)), ("starts", label(K::Attachment, P::Muscle, P::Landmark)), ("starts at", label(K::Attachment, P::Muscle, P::Landmark)), ("starts on", label(K::Attachment, P::Muscle, P::Landmark)), ("starts from", label(K::Attachment, P::Muscle, P::Landmark)), ("begins", label(K::Attachment, P::Muscle, P::Landmark)), ("begins at", label(K::Attachment, P::Muscle, P::Landmark)), ("begins on", label(K::Attachment, P::Muscle, P::Landmark)), ("where from", label(K::Attachment, P::Muscle, P::Landmark)), ("where it starts", label(K::Attachment, P::Muscle, P::Landmark)), ("where it begins", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it start", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it begin", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it arise", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it come from", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it originate", label(K::Attachment, P::Muscle, P::Landmark)), ("proximal end", label(K::Attachment, P::Muscle, P::Landmark)), ("fixed end", label(K::Attachment, P::Muscle, P::Landmark)),
    ("end", label(K::Attachment, P::Muscle, P::Landmark)), ("ends", label(K::Attachment, P::Muscle, P::Landmark)), ("ends on", label(K::Attachment, P::Muscle, P::Landmark)), ("ends at", label(K::Attachment, P::Muscle, P::Landmark)), ("ends in", label(K::Attachment, P::Muscle, P::Landmark)), ("where to", label(K::Attachment, P::Muscle, P::Landmark)), ("where it ends", label(K::Attachment, P::Muscle, P::Landmark)), ("where it goes", label(K::Attachment, P::Muscle, P::Landmark)), ("where it inserts", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it end", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it insert", label(K::Attachment, P::Muscle, P::Landmark)), ("where does it go", label(K::Attachment, P::Muscle, P::Landmark)), ("distal end", label(K::Attachment, P::Muscle, P::Landmark)), ("moving end", label(K::Attachment, P::Muscle, P::Landmark)), ("insert", label(K::Attachment, P::Muscle, P::Landmark)),
    ("what does it do", label(K::Action, P::Muscle, P::Movement)), ("its action", label(K::Action, P::Muscle, P::Movement)), ("what is its action", label(K::Action, P::Muscle, P::Movement)), ("its job", label(K::Action, P::Muscle, P::Movement)), ("which movement", label(K::Action, P::Muscle, P::Movement)), ("moves", label(K::Action, P::Muscle, P::Movement)), ("main movement", label(K::Action, P::Muscle, P::Movement)), ("acts as", label(K::Action, P::Muscle, P::Movement)), ("what it moves", label(K::Action, P::Muscle, P::Movement)),
    ("from which cord", label(K::Branching, P::Nerve, P::Parent)), ("from which cords", label(K::Branching, P::Nerve, P::Parent)), ("which cord", label(K::Branching, P::Nerve, P::Parent)), ("which cords", label(K::Branching, P::Nerve, P::Parent)), ("off which nerve", label(K::Branching, P::Nerve, P::Parent)), ("from which trunk", label(K::Branching, P::Nerve, P::Parent)),
    ("through which tunnel", label(K::Passage, P::Nerve, P::Landmark)), ("through which foramen", label(K::Passage, P::Nerve, P::Landmark)), ("through which canal", label(K::Passage, P::Nerve, P::Landmark)), ("through which opening", label(K::Passage, P::Nerve, P::Landmark)), ("through which hole", label(K::Passage, P::Nerve, P::Landmark)), ("by which foramen", label(K::Passage, P::Nerve, P::Landmark)), ("which foramen", label(K::Passage, P::Nerve, P::Landmark)), ("which hole", label(K::Passage, P::Nerve, P::Landmark)),
    ("which skin", label(K::Skin, P::Nerve, P::Skin)), ("what skin", label(K::Skin, P::Nerve, P::Skin)), ("which skin does it supply", label(K::Skin, P::Nerve, P::Skin)), ("skin it supplies", label(K::Skin, P::Nerve, P::Skin)), ("skin it feels", label(K::Skin, P::Nerve, P::Skin)), ("skin patch", label(K::Skin, P::Nerve, P::Skin)), ("patch of skin", label(K::Skin, P::Nerve, P::Skin)), ("skin field", label(K::Skin, P::Nerve, P::Skin)),
    ("how many heads", label(K::Count, P::Structure, P::Number)),
    ("goes to", label(K::Attachment, P::Muscle, P::Landmark)),
    ("muscles in it", naming(P::Muscle)), ("its muscles", naming(P::Muscle)), ("muscles found", naming(P::Muscle)), ("muscle content", naming(P::Muscle)), ("muscles it holds", naming(P::Muscle)), ("muscles contained", naming(P::Muscle)), ("muscles inside", naming(P::Muscle)),
    ("nerve of the compartment", label(K::Supply, P::Muscle, P::Nerve)), ("nerve of compartment", label(K::Supply, P::Muscle, P::Nerve)), ("compartment nerve", label(K::Supply, P::Muscle, P::Nerve)), ("its nerve supply", label(K::Supply, P::Muscle, P::Nerve)), ("wiring", label(K::Supply, P::Muscle, P::Nerve)), ("wire", label(K::Supply, P::Muscle, P::Nerve)), ("nerve supply of the muscle", label(K::Supply, P::Muscle, P::Nerve)), ("who supplies", label(K::Supply, P::Muscle, P::Nerve)), ("supplied from", label(K::Supply, P::Muscle, P::Nerve)), ("nerve(s) of supply", label(K::Supply, P::Muscle, P::Nerve)),
    ("attached above to", label(K::Attachment, P::Muscle, P::Landmark)), ("attached above", label(K::Attachment, P::Muscle, P::Landmark)), ("attached proximally to", label(K::Attachment, P::Muscle, P::Landmark)), ("attached proximally", label(K::Attachment, P::Muscle, P::Landmark)), ("runs from", label(K::Attachment, P::Muscle, P::Landmark)), ("leaves from", label(K::Attachment, P::Muscle, P::Landmark)), ("springs from", label(K::Attachment, P::Muscle, P::Landmark)), ("rises from", label(K::Attachment, P::Muscle, P::Landmark)), ("taken from", label(K::Attachment, P::Muscle, P::Landmark)),
    ("attached below to", label(K::Attachment, P::Muscle, P::Landmark)), ("attached below", label(K::Attachment, P::Muscle, P::Landmark)), ("attached distally to", label(K::Attachment, P::Muscle, P::Landmark)), ("attached distally", label(K::Attachment, P::Muscle, P::Landmark)), ("runs to", label(K::Attachment, P::Muscle, P::Landmark)), ("reaches", label(K::Attachment, P::Muscle, P::Landmark)), ("inserts on", label(K::Attachment, P::Muscle, P::Landmark)), ("inserts into", label(K::Attachment, P::Muscle, P::Landmark)), ("inserted on", label(K::Attachment, P::Muscle, P::Landmark)), ("inserted into", label(K::Attachment, P::Muscle, P::Landmark)), ("ends by", label(K::Attachment, P::Muscle, P::Landmark)),
    ("task", label(K::Action, P::Muscle, P::Movement)), ("duty", label(K::Action, P::Muscle, P::Movement)), ("acts to", label(K::Action, P::Muscle, P::Movement)), ("does what", label(K::Action, P::Muscle, P::Movement)), ("works to", label(K::Action, P::Muscle, P::Movement)), ("serves to", label(K::Action, P::Muscle, P::Movement)), ("moves it into", label(K::Action, P::Muscle, P::Movement)),
    ("seg", label(K::Roots, P::Structure, P::Segments)), ("segs", label(K::Roots, P::Structure, P::Segments)), ("rami", label(K::Roots, P::Structure, P::Segments)), ("root supply", label(K::Roots, P::Structure, P::Segments)), ("segmental level", label(K::Roots, P::Structure, P::Segments)), ("segmental levels", label(K::Roots, P::Structure, P::Segments)), ("spinal level", label(K::Roots, P::Structure, P::Segments)),
    ("pierced by", label(K::Passage, P::Landmark, P::Nerve)),
];

/// No label is longer than this, in bytes.
const LONGEST_LABEL: usize = 30;

/// The label that a text is, whatever its case, articles and end punctuation.
pub fn label_of(text: &str) -> Option<Label> {
    if text.len() > LONGEST_LABEL + 8 {
        return None;
    }
    let first = text.split_whitespace().next().unwrap_or_default().trim_end_matches([':', '=', '?']);
    let is_plain = first.is_ascii() && !first.contains('.');
    if is_plain && !may_begin_label(first) {
        return None;
    }
    let mut plain = String::with_capacity(text.len());
    for word in text.trim().trim_end_matches([':', '=', '?', ' ']).split_whitespace() {
        if ["the", "its", "their"].iter().any(|article| article.eq_ignore_ascii_case(word)) {
            continue;
        }
        if !plain.is_empty() {
            plain.push(' ');
        }
        plain.extend(word.chars().filter(|c| *c != '.').flat_map(char::to_lowercase));
    }
    let at = from_sorted(&plain);
    labels_from(at).next().filter(|(known, _)| *known == plain).map(|(_, label)| *label)
}

/// The places of [`LABELS`] by their words; of two alike the first comes first.
static SORTED: [u16; LABELS.len()] = {
    let mut sorted = [0; LABELS.len()];
    let mut len = 0;
    while len < LABELS.len() {
        // Binary search for the place behind all that are not greater.
        let (mut from, mut to) = (0, len);
        while from < to {
            let middle = from.midpoint(to);
            if is_less(LABELS[len].0.as_bytes(), LABELS[sorted[middle] as usize].0.as_bytes()) {
                to = middle;
            } else {
                from = middle + 1;
            }
        }
        let mut at = len;
        while at > from {
            sorted[at] = sorted[at - 1];
            at -= 1;
        }
        sorted[from] = len as u16;
        len += 1;
    }
    sorted
};

const fn is_less(a: &[u8], b: &[u8]) -> bool {
    let mut at = 0;
    while at < a.len() && at < b.len() {
        if a[at] != b[at] {
            return a[at] < b[at];
        }
        at += 1;
    }
    a.len() < b.len()
}

/// Where in [`SORTED`] the labels begin that are not less than a text.
fn from_sorted(text: &str) -> usize {
    SORTED.partition_point(|at| LABELS.get(usize::from(*at)).is_some_and(|(known, _)| *known < text))
}

/// The labels from a place of [`SORTED`] on, in order.
fn labels_from(at: usize) -> impl Iterator<Item = &'static (&'static str, Label)> {
    SORTED.get(at..).unwrap_or_default().iter().filter_map(|at| LABELS.get(usize::from(*at)))
}

/// Whether a label can begin with a word, whatever its case.
pub fn may_begin_label(word: &str) -> bool {
    let lower = || word.bytes().map(|byte| byte.to_ascii_lowercase());
    let is_less = |at: &u16| LABELS.get(usize::from(*at)).is_some_and(|(known, _)| known.bytes().lt(lower()));
    let begins =
        |(known, _): &(&str, Label)| known.len() >= word.len() && known.bytes().zip(lower()).all(|(a, b)| a == b);
    // Articles and possessives before a label are no part of it.
    ["the", "its", "their"].iter().any(|article| article.eq_ignore_ascii_case(word))
        || labels_from(SORTED.partition_point(is_less)).next().is_some_and(begins)
}

/// Whether a label is a verb, which is a label only before a sign.
pub fn is_verb_label(label: &str) -> bool {
    let first = label.split_whitespace().next().unwrap_or_default().to_lowercase();
    matches!(
        &*first,
        "goes"
            | "ends"
            | "end"
            | "starts"
            | "start"
            | "begins"
            | "moves"
            | "acts"
            | "runs"
            | "reaches"
            | "rises"
            | "springs"
            | "leaves"
            | "taken"
            | "attached"
            | "inserted"
    )
}

/// Whether a header only says that the column names something.
pub fn is_naming_header(text: &str) -> bool {
    matches!(&*text.trim().to_lowercase(), "name" | "structure" | "" | "what" | "which" | "who")
}

/// The end of a muscle that a label of attachments means; `None` if it means either.
pub fn end_of_attachment(label: &str) -> Option<&'static str> {
    if is_insertion(label) {
        return Some("insertion");
    }
    let label = label.trim().to_lowercase();
    let is_either = label.starts_with("at") && !label.contains("from");
    (!is_either).then_some("origin")
}

/// Whether a label of attachments means the insertion.
pub fn is_insertion(label: &str) -> bool {
    let label = label.trim().trim_end_matches(['?', ' ', '.', ':']).to_lowercase();
    label.starts_with("insert")
        || label.contains(" below")
        || label.ends_with("distally")
        || label.contains("distally ")
        || matches!(&*label, "runs to" | "reaches")
        || label.starts_with("inferior")
        || label.starts_with("lower")
        || label.starts_with("dist")
        || matches!(&*label, "to" | "end" | "ends" | "goes to" | "moving end")
        || label.starts_with("to ")
        || label.starts_with("ends ")
        || (label.starts_with("where")
            && ["to", "end", "ends", "go", "goes", "insert", "inserts"].iter().any(|end| label.ends_with(end)))
        || label.starts_with("distal")
        || label == "i"
        || label == "ins"
        || label == "i:"
}
