//! What words mean, and nothing else: relation words, labels and headers of tables, and the words that decide whether a
//! sentence asserts anything.
//!
//! A new verb, label or header word is one line here, with an example beside it; the examples of [`RELATIONS`] are run by
//! the tests. No structure is named: structures are the vocabulary's.
//!
//! A **phrase** is a row of slots. A slot lists alternatives (`supplies|innervates`); `?` behind it says that it may be
//! missing; `~` stands for up to five words of any kind. Adverbs may stand between slots.

pub mod ways;

use crate::claims::{ClaimKind, PartRole};

/// How a relation phrase joins its two sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// `LEFT phrase RIGHT`, a verb with its subject before it.
    Verb,
    /// `LEFT, phrase RIGHT`: a participle or an apposition right behind the name that it speaks of.
    Participle,
    /// `phrase RIGHT is LEFT`: a noun whose object follows at once, and whose other side follows a linking word.
    Noun,
}

/// A relation phrase.
#[derive(Clone, Copy, Debug)]
pub struct RelationWord {
    /// The phrase.
    pub phrase: &'static str,
    /// What it claims.
    pub kind: ClaimKind,
    /// How it joins its sides.
    pub form: Form,
    /// What stands on the left (for [`Form::Noun`]: behind the linking word).
    pub left: PartRole,
    /// What stands on the right.
    pub right: PartRole,
    /// A sentence in which it is read.
    pub example: &'static str,
}

const fn verb(
    phrase: &'static str,
    kind: ClaimKind,
    left: PartRole,
    right: PartRole,
    example: &'static str,
) -> RelationWord {
    RelationWord { phrase, kind, form: Form::Verb, left, right, example }
}

const fn participle(
    phrase: &'static str,
    kind: ClaimKind,
    left: PartRole,
    right: PartRole,
    example: &'static str,
) -> RelationWord {
    RelationWord { phrase, kind, form: Form::Participle, left, right, example }
}

const fn noun(
    phrase: &'static str,
    kind: ClaimKind,
    left: PartRole,
    right: PartRole,
    example: &'static str,
) -> RelationWord {
    RelationWord { phrase, kind, form: Form::Noun, left, right, example }
}

use ClaimKind as K;
use PartRole as P;

/// Every relation phrase. Where two fit, the longer one is read.
#[rustfmt::skip]
pub const RELATIONS: &[RelationWord] = &[
    // Supply.
    verb("supplies|supply|innervates|innervate|serves|serve|activates|activate|moves|move|works|work", K::Supply, P::Nerve, P::Muscle, "The axillary nerve supplies deltoid."),
    verb("supplied|innervated", K::Supply, P::Nerve, P::Muscle, "The axillary nerve supplied deltoid."),
    verb("motor to", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is motor to deltoid."),
    verb("is|are the? motor? nerve of|to|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is the nerve of deltoid."),
    verb("provides|provide|gives|give|sends|send|carries|carry|supplies|supply|furnishes|furnish|delivers|deliver|brings|bring the|its? motor|muscular|nerve|efferent? innervation|supply|fibres|fibers|branches|twigs|power to|for|into", K::Supply, P::Nerve, P::Muscle, "The axillary nerve provides motor innervation to deltoid."),
    verb("provides|provide|gives|give|sends|send a? muscular? innervation|supply|branches|branch|twigs|twig to|for|into", K::Supply, P::Nerve, P::Muscle, "The axillary nerve sends branches to deltoid."),
    verb("gives|give off? branches|twigs that|which supply|innervate", K::Supply, P::Nerve, P::Muscle, "The axillary nerve gives off branches that innervate deltoid."),
    verb("is|are responsible for the? motor? innervation|supply of|to", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for the innervation of deltoid."),
    verb("is|are responsible for innervating|supplying", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for innervating deltoid."),
    verb("controls|control|drives|drive|powers|power", K::Supply, P::Nerve, P::Muscle, "The axillary nerve powers deltoid."),
    verb("animates|animate|commands|command|governs|govern|operates|operate|feeds|feed|works|work|runs|run|keeps|keep|handles|handle|claims|claim", K::Supply, P::Nerve, P::Muscle, "The axillary nerve operates deltoid."),
    verb("looks|look|caters|cater|accounts|account|provides|provide|cares|care after|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve caters for deltoid."),
    verb("takes|take|has|have care|charge of", K::Supply, P::Nerve, P::Muscle, "The axillary nerve takes care of deltoid."),
    verb("goes|go to|into|on to? supply|innervate?", K::Supply, P::Nerve, P::Muscle, "The axillary nerve goes to deltoid."),
    verb("goes|go on to supply|innervate", K::Supply, P::Nerve, P::Muscle, "The axillary nerve goes on to supply deltoid."),
    verb("is|are|was distributed|destined|dedicated|devoted to|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is distributed to deltoid."),
    verb("ends|end|finishes|finish|terminates|terminate by|in supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The axillary nerve ends by supplying deltoid."),
    verb("picks|pick|takes|take up|on", K::Supply, P::Nerve, P::Muscle, "The axillary nerve picks up deltoid."),
    verb("is|are responsible for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for deltoid."),
    verb("responsible", K::Supply, P::Nerve, P::Muscle, "For deltoid is the axillary nerve responsible."),
    participle("supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The axillary nerve, supplying deltoid, winds round the bone."),
    participle("supplied|innervated|served|driven|powered|controlled|fed|operated|activated|moved|worked by|via|through|from", K::Supply, P::Muscle, P::Nerve, "Deltoid is supplied by the axillary nerve."),
    verb("receives|receive|gets|get|takes|take|derives|derive|has|have|obtains|obtain|draws|draw|owes|owe|gains|gain|enjoys|enjoy its|their|the|a? motor|nerve|nervous? supply|innervation|fibres|fibers from|to|via|through|by", K::Supply, P::Muscle, P::Nerve, "Deltoid receives its innervation from the axillary nerve."),
    verb("receives|receive|gets|get a|an|its|their? motor? supply|innervation|branch|branches|twig|twigs|fibres|fibers from|of", K::Supply, P::Muscle, P::Nerve, "Deltoid receives twigs from the axillary nerve."),
    participle("animated|commanded|governed|handled|managed|picked|run|looked|catered|cared|reached|actuated|provided|claimed|kept|taken|covered|motored after|for|up|of|over? by", K::Supply, P::Muscle, P::Nerve, "Deltoid is looked after by the axillary nerve."),
    participle("furnished|provided|supplied|equipped with|of its|their|a? motor|nerve? fibres|fibers|supply|twigs|branches|innervation by|from", K::Supply, P::Muscle, P::Nerve, "Deltoid is furnished with its motor fibres by the axillary nerve."),
    verb("answers|answer|listens|listen|responds|respond to", K::Supply, P::Muscle, P::Nerve, "Deltoid answers to the axillary nerve."),
    verb("hangs|hang|works|work|lives|live|feeds|feed on|off|from", K::Supply, P::Muscle, P::Nerve, "Deltoid works off the axillary nerve."),
    verb("owes|owe its|their? motor|nerve? supply|innervation|power|fibres|fibers|nerve|twigs|strength|movement|action to", K::Supply, P::Muscle, P::Nerve, "Deltoid owes its power to the axillary nerve."),
    verb("receives|receive|gets|get|takes|take|derives|derive|has|have|obtains|obtain|draws|draw|gains|gain its|their|the|a motor? nerve|nerves|fibres|fibers|twig|twigs|branch|branches|motor from|off|via|through|by", K::Supply, P::Muscle, P::Nerve, "Deltoid gets its nerve from the axillary nerve."),
    verb("is|are|falls|fall|comes|come in|under? the? charge|territory|domain|business|property|province|responsibility|realm|command|control|preserve|job of", K::Supply, P::Muscle, P::Nerve, "Deltoid is the charge of the axillary nerve."),
    verb("makes|make use of", K::Supply, P::Muscle, P::Nerve, "Deltoid makes use of the axillary nerve."),
    verb("shares|share a|one|the nerve ,|:|, the?", K::Supply, P::Muscle, P::Nerve, "Deltoid and teres minor share a nerve, the axillary nerve."),
    verb("has|have a nerve of its|their own ,|:", K::Supply, P::Muscle, P::Nerve, "Deltoid has a nerve of its own, the axillary nerve."),
    verb("has|have two|three nerves|suppliers ,|:|, the?", K::Supply, P::Muscle, P::Nerve, "Deltoid has two suppliers, the axillary nerve and no other."),
    verb("depends|depend|relies|rely on|upon", K::Supply, P::Muscle, P::Nerve, "Deltoid depends on the axillary nerve."),
    noun("motor|nerve? innervation|supply of|to|for", K::Supply, P::Nerve, P::Muscle, "The innervation of deltoid is by the axillary nerve."),
    noun("motor? nerve of|to|for", K::Supply, P::Nerve, P::Muscle, "The motor nerve to deltoid is the axillary nerve."),
    noun("nerve supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The nerve supplying deltoid is the axillary nerve."),
    noun("nerve that|which supplies|innervates", K::Supply, P::Nerve, P::Muscle, "The nerve that supplies deltoid is the axillary nerve."),
    noun("muscle|muscles supplied|innervated by", K::Supply, P::Muscle, P::Nerve, "The muscles supplied by the axillary nerve are deltoid and teres minor."),

    // Where a nerve comes from; with segments on the right the same words tell its roots, with a muscle on the left its origin.
    verb("arises|arise|originates|originate|springs|spring|comes|come|emerges|emerge|stems|stem|derives|derive|originate|issues|issue|starts|start|departs|depart from|off|by|in|out of?", K::Branching, P::Nerve, P::Parent, "The axillary nerve arises from the posterior cord."),
    verb("takes|take|has|have its|their? origin|origins from|in|on|at|over", K::Branching, P::Nerve, P::Parent, "The axillary nerve takes its origin from the posterior cord."),
    verb("begins|begin as|from|in", K::Branching, P::Nerve, P::Parent, "The axillary nerve begins from the posterior cord."),
    verb("branches|branch off? from", K::Branching, P::Nerve, P::Parent, "The axillary nerve branches from the posterior cord."),
    verb("branches|branch off", K::Branching, P::Nerve, P::Parent, "The axillary nerve branches off the posterior cord."),
    participle("arising|derived|originating|springing|formed|coming|made|built|given|drawn|descended off? up? from|by|of", K::Branching, P::Nerve, P::Parent, "The axillary nerve is derived from the posterior cord."),
    participle("is|are|was? a|an|the|its|one|both? of? the|its? terminal|direct|main|large|larger|largest|small|smaller|smallest|named|chief|motor|sensory|muscular|cutaneous|collateral|infraclavicular|supraclavicular|two|three|four|long|short|deep|superficial|first|second|last|medial|lateral|anterior|posterior|upper|lower|slender|delicate|purely|important? terminal|direct|main|large|larger|largest|small|smaller|smallest|named|chief|motor|sensory|muscular|cutaneous|collateral|infraclavicular|supraclavicular|two|three|four|long|short|deep|superficial|first|second|last|medial|lateral|anterior|posterior|upper|lower|slender|delicate|purely|important? branch|branches|offshoot|offshoots|division|divisions|twig of|from", K::Branching, P::Nerve, P::Parent, "The axillary nerve is one of the two terminal branches of the posterior cord."),
    participle("member|part|one of", K::Membership, P::Muscle, P::Group, "Supraspinatus, member of the rotator cuff, abducts."),
    participle("given off by|from", K::Branching, P::Nerve, P::Parent, "The axillary nerve is given off by the posterior cord."),
    verb("gives|give off", K::Branching, P::Parent, P::Nerve, "The posterior cord gives off the axillary nerve."),
    verb("gives|give rise|origin to", K::Branching, P::Parent, P::Nerve, "The posterior cord gives rise to the axillary nerve."),
    verb("divides|divide|splits|split|bifurcates|branches into", K::Branching, P::Parent, P::Nerve, "The posterior cord divides into the axillary nerve and the radial nerve."),
    verb("ends|end|terminates|terminate by|as|in dividing? into?", K::Branching, P::Parent, P::Nerve, "The posterior cord ends by dividing into the axillary nerve and the radial nerve."),
    verb("sends|send a? root|contribution to", K::Branching, P::Parent, P::Nerve, "The posterior cord sends a root to the axillary nerve."),
    verb("comes|come|leaves|leave|drops|drop|peels|peel|buds|bud off? from?", K::Branching, P::Nerve, P::Parent, "The axillary nerve comes off the posterior cord."),
    verb("gives|give|supplies|supply", K::Branching, P::Parent, P::Nerve, "The posterior cord gives the axillary nerve."),
    verb("divides|divide|splits|split|forks|fork|breaks|break|parts|part itself|up? into", K::Branching, P::Parent, P::Nerve, "The posterior cord splits up into the axillary nerve and the radial nerve."),
    verb("arises|arise|springs|spring|issues|issue|originates|originate|emerges|emerge|stems|stem", K::Branching, P::Nerve, P::Parent, "From the posterior cord arises the axillary nerve."),
    verb("comes|come|springs|spring|rises|rise|takes|take out|its|origin of|from|off", K::Branching, P::Nerve, P::Parent, "The axillary nerve comes out of the posterior cord."),
    participle("offshoot|twig|derivative of", K::Branching, P::Nerve, P::Parent, "The axillary nerve is an offshoot of the posterior cord."),
    verb("has|have its|their origin|origins|beginning|source|roots in|from", K::Branching, P::Nerve, P::Parent, "The axillary nerve has its origin in the posterior cord."),
    verb("contributes|contribute to", K::Branching, P::Parent, P::Nerve, "The posterior cord contributes to the axillary nerve."),

    // Renaming.
    verb("continues|continue as|into", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve continues as the posterior interosseous nerve."),
    verb("turns|turn into", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve turns into the posterior interosseous nerve."),
    participle("called|known as?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is called the posterior interosseous nerve."),
    verb("takes|take the? name of?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve takes the name posterior interosseous nerve."),
    verb("becomes|become", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve becomes the posterior interosseous nerve."),
    participle("renamed", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is renamed the posterior interosseous nerve."),
    verb("changes|change its name to", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve changes its name to the posterior interosseous nerve."),
    participle("the? direct? continuation of", K::Renaming, P::Nerve, P::Parent, "The posterior interosseous nerve is the continuation of the deep branch of the radial nerve."),
    participle("known|named|called|termed|styled now|nowadays|also|then|there|here? as?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is then known as the posterior interosseous nerve."),
    verb("goes|go|runs|run|carries|carry|passes|pass on as|under the? name? of?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve goes on as the posterior interosseous nerve."),
    verb("changes|change|alters|alter name|names|its|their|name to|into", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve changes name to posterior interosseous nerve."),
    verb("assumes|assume|adopts|adopt|gets|get|receives|receive|acquires|acquire the name of?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve acquires the name posterior interosseous nerve."),
    verb("loses|lose|swaps|swap|drops|drop its name and becomes", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve loses its name and becomes the posterior interosseous nerve."),
    participle("continued as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is continued as the posterior interosseous nerve."),

    // Roots.
    verb("root|segmental|spinal? roots|segments|levels|value|values|root|origin is|are", K::Roots, P::Structure, P::Segments, "The axillary nerve roots are C5 and C6."),
    noun("root|segmental|spinal|nerve? roots|segments|levels|value|values|supply of", K::Roots, P::Segments, P::Structure, "The roots of the axillary nerve are C5 and C6."),
    verb("has|have|carries|carry|contains|contain|receives|receive|bears|bear|with the|a|its? root|segmental|spinal|nerve? roots|root|segments|fibres|fibers|value|values|contributions|contribution|levels from|of?", K::Roots, P::Structure, P::Segments, "The axillary nerve carries fibres from C5 and C6."),
    verb("draws|draw|gets|get|takes|take|derives|derive|has|have|obtains|obtain its|their root|nerve? fibres|fibers|roots|supply|segments|origin from|of|in all|part? of?", K::Roots, P::Structure, P::Segments, "The axillary nerve draws its fibres from C5 and C6."),
    participle("fed|composed|constituted|joined up? by|of|from", K::Roots, P::Structure, P::Segments, "The axillary nerve is fed by C5 and C6."),
    participle(", root|segmental|spinal root|roots|value|values|segments|levels :?", K::Roots, P::Structure, P::Segments, "The axillary nerve, root value C5 and C6, is short."),
    verb("carries|carry|contains|contain|receives|receive", K::Roots, P::Structure, P::Segments, "The axillary nerve carries C5 and C6."),

    // Skin.
    verb("supplies|supply|innervates|innervate|serves|serve|reaches|reach|ends|end sensation? to? in? the? overlying? skin of|over|on|covering|along", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm supplies the skin of the lateral side of the forearm."),
    verb("provides|provide|gives|give|carries|carry|supplies|supply|conveys|convey the? cutaneous|sensory? sensation|innervation|supply|feeling to|of|from|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm provides sensation to the lateral side of the forearm."),
    verb("receives|receive|gets|get|derives|derive|takes|take|has|have its|their? sensation|feeling|sensory|cutaneous supply|innervation? from|by|through", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm gets its feeling from the lateral cutaneous nerve of the forearm."),
    participle("is|are? the? cutaneous|sensory innervation|supply|nerve of|to|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is the sensory nerve of the lateral side of the forearm."),
    verb("owes|owe|gets|get|has|have|draws|draw|takes|take|receives|receive its|their? feeling|sensation|sensibility|touch|cutaneous|sensory|nerve innervation|supply|nerves? to|from|by|through|via", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm owes its feeling to the lateral cutaneous nerve of the forearm."),
    verb("carries|carry|conveys|convey|brings|bring|picks|pick|collects|collect|takes|take|relays|relay up? general? sensation|feeling|touch|sensory|sensibility fibres|information|impulses? from|of|for|to the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm carries sensation from the lateral side of the forearm."),
    verb("looks|look|caters|cater|cares|care after|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm looks after the skin of the lateral side of the forearm."),
    verb("covers|cover|feels|feel|numbs|numb the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm covers the lateral side of the forearm."),
    verb("is|are responsible for the? sensation|feeling|skin|sensory|cutaneous innervation|supply? of|over|on|to the? skin? of|over?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is responsible for the skin of the lateral side of the forearm."),
    participle("felt|covered|served by", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm is felt by the lateral cutaneous nerve of the forearm."),
    participle("sensory to the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is sensory to the lateral side of the forearm."),

    // Passage.
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|enters|enter|exits|exit|leaves|leave|descends|descend|emerges|emerge|winds|wind by|via|through|within|in|inside", K::Passage, P::Nerve, P::Landmark, "The median nerve passes through the carpal tunnel."),
    verb("leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain|passes|pass|crosses|cross|runs|run|descends|descend|comes|come|emerges|emerge ~ through|via", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm through the carpal tunnel."),
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|comes|come|swings|swing|slips|slip|lies|lie|turns|turn|curves|curve|curls|curl|winds|wind|hooks|hook|dives|dive|dips|dip|crosses|cross|descends|descend|ascends|ascend|climbs|climb|emerges|emerge|enters|enter|reaches|reach|sits|sit itself|backwards|forwards|forward|down|up|out|in|on? behind|under|over|round|around|beneath|below|above|between|along", K::Passage, P::Nerve, P::Landmark, "The median nerve passes behind the medial epicondyle."),
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|comes|come|lies|lie|crosses|cross|swings|swing itself|down|up|out|in|on? in|deep|superficial front|to of?", K::Passage, P::Nerve, P::Landmark, "The median nerve runs in front of the medial epicondyle."),
    verb("passes|pass|runs|run|travels|travel|goes|go|comes|come|slips|slip|emerges|emerge|drops|drop|dives|dive|gets|get|makes|make|finds|find its? way? backwards|forwards|forward|down|up|out|in|on|back|straight through|via|by|within", K::Passage, P::Nerve, P::Landmark, "The median nerve goes out through the carpal tunnel."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain ~ by way|means of", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm by way of the carpal tunnel."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain ~ through|by|via", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm by the carpal tunnel."),
    verb("uses|use|negotiates|negotiate|threads|thread", K::Passage, P::Nerve, P::Landmark, "The median nerve uses the carpal tunnel."),
    participle("winding|swinging|curving|hooking|turning|travelling|running|passing|lying|going|coming behind|under|over|round|around|beneath|along|between", K::Passage, P::Nerve, P::Landmark, "The median nerve, winding round the medial epicondyle, reaches the hand."),
    verb("traverses|traverse|enters|enter|pierces|pierce|perforates|perforate", K::Passage, P::Nerve, P::Landmark, "The median nerve traverses the carpal tunnel."),
    participle("passing|running|travelling|traveling|coursing through|within|in|inside", K::Passage, P::Nerve, P::Landmark, "The median nerve, passing through the carpal tunnel, reaches the hand."),
    participle("pierced by", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel is traversed by the median nerve."),
    participle("traversed by", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel is traversed by the median nerve."),
    participle("piercing|traversing|perforating|entering", K::Passage, P::Nerve, P::Landmark, "The median nerve, traversing the carpal tunnel, reaches the hand."),
    participle("compressed|trapped|entrapped at|in|within", K::Passage, P::Nerve, P::Landmark, "The median nerve is compressed in the carpal tunnel."),

    // Attachment.
    verb("inserts|insert into|on|onto|to|in|at|by", K::Attachment, P::Muscle, P::Landmark, "Brachialis inserts on the tuberosity of ulna."),
    verb("attaches|attach into|on|onto|to|in|at|by", K::Attachment, P::Muscle, P::Landmark, "Brachialis attaches to the tuberosity of ulna."),
    verb("is|are attached to|on", K::Attachment, P::Muscle, P::Landmark, "Brachialis is attached to the tuberosity of ulna."),
    participle("inserted|attached into|on|onto|to|in|at", K::Attachment, P::Muscle, P::Landmark, "Brachialis is inserted into the tuberosity of ulna."),
    verb("runs|run|extends|extend|stretches|stretch|goes|go|spans|span from", K::Attachment, P::Muscle, P::Landmark, "Brachialis runs from the shaft of humerus to the tuberosity of ulna."),
    participle("fixed|anchored|fastened|inserted to|on|into|onto|at", K::Attachment, P::Muscle, P::Landmark, "Brachialis is anchored to the tuberosity of ulna."),
    verb("has|have its|their? insertion on|in|into|at|onto", K::Attachment, P::Muscle, P::Landmark, "Brachialis has its insertion on the tuberosity of ulna."),

    verb("ends|end|terminates|terminate|finishes|finish on|upon|at|near|over", K::Attachment, P::Muscle, P::Landmark, "Brachialis ends on the tuberosity of ulna."),
    verb("starts|start|begins|begin|originates|originate at|on|upon|over", K::Attachment, P::Muscle, P::Landmark, "Brachialis starts at the shaft of humerus."),
    verb("converges|converge on|upon", K::Attachment, P::Muscle, P::Landmark, "Brachialis converges on the tuberosity of ulna."),
    verb("reaches|reach|gains|gain", K::Attachment, P::Muscle, P::Landmark, "Brachialis reaches the tuberosity of ulna."),
    verb("climbs|climb|descends|descend|ascends|ascend|passes|pass|goes|go|runs|run down|up|on? to", K::Attachment, P::Muscle, P::Landmark, "Brachialis descends to the tuberosity of ulna."),
    verb("rises|rise|spring|springs from", K::Attachment, P::Muscle, P::Landmark, "Brachialis rises from the shaft of humerus."),
    verb("origin is|are|lies|lie on|at|from|in?", K::Attachment, P::Muscle, P::Landmark, "Brachialis flexes the elbow. Its origin lies on the shaft of humerus."),
    verb("insertion is|are|lies|lie|occurs on|at|into|in?", K::Attachment, P::Muscle, P::Landmark, "Brachialis flexes the elbow. Its insertion is the tuberosity of ulna."),
    noun("origin of", K::Attachment, P::Landmark, P::Muscle, "The origin of brachialis is the shaft of humerus."),
    noun("insertion of", K::Attachment, P::Landmark, P::Muscle, "The insertion of brachialis is the tuberosity of ulna."),
    verb("upper|lower|proximal|distal|superior|inferior attachment is|are|lies|lie on|at|to|into|in?", K::Attachment, P::Muscle, P::Landmark, "Brachialis flexes the elbow. Its lower attachment is the tuberosity of ulna."),
    noun("proximal attachment of", K::Attachment, P::Landmark, P::Muscle, "The proximal attachment of brachialis is the shaft of humerus."),
    noun("distal attachment of", K::Attachment, P::Landmark, P::Muscle, "The distal attachment of brachialis is the tuberosity of ulna."),
    noun("attachment of", K::Attachment, P::Landmark, P::Muscle, "The attachment of brachialis is the tuberosity of ulna."),

    // Joint.
    verb("is|are the|a? joint|articulation|union? between", K::Joint, P::Joint, P::Landmark, "The elbow joint is the joint between the humerus and the ulna."),
    verb("allows|allow|permits|permit", K::Joint, P::Joint, P::Movement, "The elbow joint allows flexion and extension."),

    // Membership.
    verb("belongs|belong to", K::Membership, P::Muscle, P::Group, "Supraspinatus belongs to the rotator cuff."),
    verb("is|are|lies|lie|sits|sit|counts|count|found|member|members|part a|an|the|one? part|one|member|members|muscle|muscles|located|found|among? in|of|within|among", K::Membership, P::Muscle, P::Group, "Supraspinatus is a member of the rotator cuff."),
    verb("is|are to? be? counted|reckoned|numbered|ranked|classed|classified|grouped|included|placed|listed|put also? as|among|with|in|to|under one|part? of?", K::Membership, P::Muscle, P::Group, "Supraspinatus is counted among the rotator cuff."),
    verb("belongs|belong|counted|numbered|reckoned", K::Membership, P::Muscle, P::Group, "To the rotator cuff belong supraspinatus and infraspinatus."),
    verb("join|unite|combine|fuse|come|unites|joins|combines together? to form|make|build|give|as|in", K::Roots, P::Segments, P::Structure, "C5 and C6 unite to form the axillary nerve."),
    verb("provides|provide|furnishes|furnish|equips|equip|endows|endow", K::Supply, P::Nerve, P::Muscle, "The axillary nerve provides deltoid with its motor supply."),
    verb("enters|enter|leaves|leave|reaches|reach ~ between|behind|under|beneath", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the forearm between the heads of pronator teres."),
    verb("draws|draw|calls|call|relies|rely|depends|depend on|upon", K::Roots, P::Structure, P::Segments, "The axillary nerve draws on C5 and C6."),
    verb("gets|get|receives|receive|takes|take|has|have a? contributions|contribution|fibres|fibers|roots|root|input from|in", K::Roots, P::Structure, P::Segments, "The axillary nerve gets contributions from C5 and C6."),
    verb("results|result|is|are from? the? union|junction|confluence|fusion of", K::Roots, P::Structure, P::Segments, "The axillary nerve is the union of C5 and C6."),
    verb("makes|make|forms|form|composes|compose|constitutes|constitute|builds|build together? up?", K::Membership, P::Muscle, P::Group, "Supraspinatus and infraspinatus make up the rotator cuff."),
    verb("is|are a|an|the|one? first|second|third|fourth|fifth|important|typical? member|part|muscle|column|component|constituent|element of", K::Membership, P::Muscle, P::Group, "Supraspinatus is a fourth member of the rotator cuff."),
    verb("comprises|comprise|consists|consist|includes|include|contains|contain of?", K::Membership, P::Group, P::Muscle, "The rotator cuff comprises supraspinatus and infraspinatus."),
];

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
    ("muscle", naming(P::Muscle)), ("muscles", naming(P::Muscle)), ("muscle or part", naming(P::Muscle)), ("muscle group", naming(P::Muscle)), ("muscles and parts", naming(P::Muscle)),
    ("cn", naming(P::Nerve)), ("cranial nerve", naming(P::Nerve)), ("lesion", naming(P::Nerve)), ("nerve injured", naming(P::Nerve)), ("injured nerve", naming(P::Nerve)), ("nerve lesion", naming(P::Nerve)), ("injury to", naming(P::Nerve)), ("lesion of", naming(P::Nerve)),
    ("deficit", label(K::Deficit, P::Nerve, P::Sign)), ("deficits", label(K::Deficit, P::Nerve, P::Sign)), ("loss", label(K::Deficit, P::Nerve, P::Sign)), ("motor loss", label(K::Deficit, P::Nerve, P::Sign)), ("motor deficit", label(K::Deficit, P::Nerve, P::Sign)), ("sign", label(K::Deficit, P::Nerve, P::Sign)), ("signs", label(K::Deficit, P::Nerve, P::Sign)), ("result", label(K::Deficit, P::Nerve, P::Sign)), ("effect of injury", label(K::Deficit, P::Nerve, P::Sign)), ("what is lost", label(K::Deficit, P::Nerve, P::Sign)), ("lost", label(K::Deficit, P::Nerve, P::Sign)),
    ("joint", naming(P::Joint)),
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
    ("leaves by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves through", label(K::Passage, P::Nerve, P::Landmark)), ("leaves via", label(K::Passage, P::Nerve, P::Landmark)), ("enters by", label(K::Passage, P::Nerve, P::Landmark)), ("enters through", label(K::Passage, P::Nerve, P::Landmark)), ("pierces", label(K::Passage, P::Nerve, P::Landmark)), ("runs through", label(K::Passage, P::Nerve, P::Landmark)), ("runs in", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull via", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull via", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull by", label(K::Passage, P::Nerve, P::Landmark)), ("exits skull through", label(K::Passage, P::Nerve, P::Landmark)), ("exits via", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis through", label(K::Passage, P::Nerve, P::Landmark)), ("leaves pelvis via", label(K::Passage, P::Nerve, P::Landmark)), ("enters perineum by", label(K::Passage, P::Nerve, P::Landmark)), ("enters perineum through", label(K::Passage, P::Nerve, P::Landmark)), ("way out", label(K::Passage, P::Nerve, P::Landmark)), ("goes through", label(K::Passage, P::Nerve, P::Landmark)), ("passes through", label(K::Passage, P::Nerve, P::Landmark)), ("hole", label(K::Passage, P::Nerve, P::Landmark)), ("gap", label(K::Passage, P::Nerve, P::Landmark)), ("exits through", label(K::Passage, P::Nerve, P::Landmark)), ("exits by", label(K::Passage, P::Nerve, P::Landmark)), ("canal", label(K::Passage, P::Nerve, P::Landmark)), ("space", label(K::Passage, P::Nerve, P::Landmark)),
    ("foramen", label(K::Passage, P::Nerve, P::Landmark)),
    ("leaves skull by", label(K::Passage, P::Nerve, P::Landmark)), ("leaves skull through", label(K::Passage, P::Nerve, P::Landmark)),
    ("opening", label(K::Passage, P::Nerve, P::Landmark)), ("skull exit", label(K::Passage, P::Nerve, P::Landmark)), ("course", label(K::Passage, P::Nerve, P::Landmark)),
    ("passes", label(K::Passage, P::Nerve, P::Landmark)), ("tunnel", label(K::Passage, P::Nerve, P::Landmark)), ("exit foramen", label(K::Passage, P::Nerve, P::Landmark)),
    ("exit", label(K::Passage, P::Nerve, P::Landmark)), ("passage", label(K::Passage, P::Nerve, P::Landmark)),
    ("nature", label(K::Modality, P::Nerve, P::Modality)), ("carries", label(K::Modality, P::Nerve, P::Modality)),
    ("modality", label(K::Modality, P::Nerve, P::Modality)), ("fibres", label(K::Modality, P::Nerve, P::Modality)),
    ("type", label(K::Modality, P::Nerve, P::Modality)), ("movements", label(K::Joint, P::Joint, P::Movement)), ("movements allowed", label(K::Joint, P::Joint, P::Movement)), ("allows", label(K::Joint, P::Joint, P::Movement)),
    ("joint type", label(K::Joint, P::Joint, P::JointKind)), ("type of joint", label(K::Joint, P::Joint, P::JointKind)), ("class", label(K::Joint, P::Joint, P::JointKind)),
    ("skin", label(K::Skin, P::Nerve, P::Skin)), ("sensory to", label(K::Skin, P::Nerve, P::Skin)), ("sensory area", label(K::Skin, P::Nerve, P::Skin)), ("skin supplied", label(K::Skin, P::Nerve, P::Skin)), ("feels", label(K::Skin, P::Nerve, P::Skin)), ("skin supply", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous supply", label(K::Skin, P::Nerve, P::Skin)), ("sensory territory", label(K::Skin, P::Nerve, P::Skin)), ("sensory nerve", label(K::Skin, P::Skin, P::Nerve)), ("cutaneous nerve", label(K::Skin, P::Skin, P::Nerve)), ("sensory", label(K::Skin, P::Nerve, P::Skin)), ("cutaneous", label(K::Skin, P::Nerve, P::Skin)), ("sensation", label(K::Skin, P::Nerve, P::Skin)), ("sensory supply", label(K::Skin, P::Nerve, P::Skin)),
    ("area", naming(P::Skin)), ("skin area", naming(P::Skin)), ("region", naming(P::Skin)), ("area of skin", naming(P::Skin)),
    ("kind", label(K::Joint, P::Joint, P::JointKind)),
    ("parts", label(K::Membership, P::Group, P::Muscle)), ("members", label(K::Membership, P::Group, P::Muscle)), ("one of them", label(K::Membership, P::Group, P::Muscle)), ("includes", label(K::Membership, P::Group, P::Muscle)), ("made up of", label(K::Membership, P::Group, P::Muscle)), ("belongs to", label(K::Membership, P::Muscle, P::Group)), ("part of", label(K::Membership, P::Muscle, P::Group)), ("member of", label(K::Membership, P::Muscle, P::Group)),
    ("compartment", label(K::Membership, P::Muscle, P::Group)), ("group", label(K::Membership, P::Muscle, P::Group)),
];

/// No label is longer than this, in bytes.
const LONGEST_LABEL: usize = 24;

/// The label that a text is, whatever its case, articles and end punctuation.
pub fn label_of(text: &str) -> Option<Label> {
    if text.len() > LONGEST_LABEL + 8 {
        return None;
    }
    let plain = text.trim().trim_end_matches([':', '=']).to_lowercase().replace('.', "");
    let words: Vec<&str> = plain.split_whitespace().filter(|word| !matches!(*word, "the" | "its" | "their")).collect();
    let plain = words.join(" ");
    LABELS.iter().find(|(known, _)| *known == plain).map(|(_, label)| *label)
}

/// Whether a label can begin with a word, whatever its case.
pub fn may_begin_label(word: &str) -> bool {
    let begins = |known: &str| known.get(..word.len()).is_some_and(|begin| begin.eq_ignore_ascii_case(word));
    // Articles and possessives before a label are no part of it.
    matches!(word, "the" | "The" | "its" | "Its" | "their" | "Their") || LABELS.iter().any(|(known, _)| begins(known))
}

/// Whether a header only says that the column names something.
pub fn is_naming_header(text: &str) -> bool {
    matches!(&*text.trim().to_lowercase(), "name" | "structure" | "" | "what" | "which")
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
    let label = label.trim().to_lowercase();
    label.starts_with("insert")
        || label.starts_with("inferior")
        || label.starts_with("lower")
        || label.starts_with("dist")
        || label == "to"
        || label.starts_with("distal")
        || label == "i"
        || label == "ins"
        || label == "i:"
}

/// Words that join the members of a list.
pub fn is_conjunction(word: &str) -> bool {
    matches!(word, "and" | "or" | "nor" | "," | "/" | "&" | "+" | "And" | "plus")
}

macro_rules! word_lists {
    ($($(#[$doc:meta])* $name:ident: $($word:literal)+;)+) => {
        $(
            $(#[$doc])*
            pub fn $name(word: &str) -> bool {
                matches!(word, $($word)|+)
            }
        )+
    };
}

word_lists! {
    /// A word behind a name that makes it the name of something else ("radial *artery*").
    changes_the_structure:
        "artery" "arteries" "vein" "veins" "vessel" "vessels" "fascia" "fasciae" "ligament" "ligaments" "tuberosity"
        "region" "regions" "area" "triangle" "sheath" "bursa" "bursae" "groove" "fossa" "notch" "line" "lines" "gland"
        "glands" "node" "nodes" "lymph" "aponeurosis" "crest" "surface" "border" "borders" "collateral" "recurrent"
        "lesion-like" "tubercle" "impression" "flap" "graft";
    /// Articles, possessives and quantifiers before a name.
    is_determiner:
        "the" "a" "an" "its" "their" "his" "her" "this" "that" "these" "those" "each" "every" "any" "some" "such"
        "following" "remaining" "named" "respective" "same";
    /// Words that make a statement one about every member.
    means_all: "all" "both" "every" "each" "entire" "whole";
    /// Auxiliary verbs between a subject and its relation word.
    is_auxiliary:
        "is" "are" "was" "were" "be" "been" "being" "has" "have" "does" "do" "did" "can" "will" "gets" "get";
    /// Adverbs and the like that change nothing.
    is_adverb:
        "also" "mainly" "mostly" "usually" "normally" "typically" "generally" "chiefly" "primarily" "then" "therefore"
        "thus" "directly" "only" "solely" "exclusively" "together" "largely" "principally" "predominantly" "finally"
        "subsequently" "always" "entirely" "purely" "itself" "themselves" "alone" "further" "next" "first" "later"
        "ultimately" "eventually" "instead" "indeed" "thereby" "hence" "here" "there" "commonly" "classically"
        "in-turn" "meanwhile" "lastly" "besides" "additionally" "furthermore" "simply" "just" "still" "even" "too" "however" "moreover" "likewise"
        "similarly" "distally" "proximally" "again" "nevertheless" "conversely" "naturally" "completely";
    /// Negations.
    is_negation:
        "not" "no" "never" "neither" "nor" "without" "cannot" "n't" "doesn't" "isn't" "aren't" "don't" "lacks";
    /// Words that say that something may be so, or is so in some people.
    is_hedge:
        "may" "might" "sometimes" "occasionally" "rarely" "perhaps" "possibly" "variably" "inconstantly" "probably"
        "infrequently" "seldom" "bodies" "individuals" "subjects" "persons" "people";
    /// Relative pronouns.
    is_relative: "which" "that" "who";
    /// Words that begin a new clause with a subject of its own.
    is_contrast: "while" "whereas" "but" "although" "though";
    /// Words that take members out.
    is_exception: "bar" "except" "excepting" "excluding" "besides" "but-for" "save" "barring";
    /// Pronouns that stand for the subject of the sentence before.
    is_pronoun: "it" "they" "this" "these" "both" "them";
    /// Nouns that name a kind, so that "this nerve" stands for the last nerve.
    is_kind_noun:
        "nerve" "nerves" "muscle" "muscles" "branch" "branches" "structure" "structures" "trunk" "cord" "joint";
    /// Nouns before "of" that leave the name behind it what it is ("branches of the radial nerve", "both heads of biceps").
    is_part_noun:
        "branch" "branches" "twig" "twigs" "fibres" "fibers" "part" "parts" "head" "heads" "belly" "bellies" "half"
        "halves" "all" "both" "most" "portion" "division" "divisions" "muscle" "muscles" "muscles:" "trunk" "root"
        "roots" "component" "union" "junction" "contributions" "contribution" "two" "three" "four" "rest" "remainder" "each" "one";
    /// Nouns that may stand between a relation word and the names that it takes ("supplies the muscles deltoid and …").
    is_muscle_noun:
        "muscle" "muscles" "following" "heads" "head" "belly" "bellies" "parts" "part" "both" "all" "of" "two" "three"
        "four" "five" "six" "seven" "namely" "nerve" "nerves" "called" "named" "branch" "branches:" "intrinsic:" "i.e"
        "viz";
    /// Words that link a noun with its value ("the innervation of deltoid *is by* …").
    is_link:
        "is" "are" "comes" "come" "by" "from" "via" "through" ":" "was" "were" "provided" "given" "supplied"
        "mediated" "derives" "derived" "arises" "carried" "—" "–" "=" "->" "→";
    /// Words before the place at which a muscle is attached ("the insertion of … *lies on*").
    is_at: "lies" "on" "at" "into" "in" "to" "occurs";
    /// Prepositions: a name behind one is no subject.
    is_preposition:
        "of" "to" "with" "in" "at" "from" "by" "via" "through" "under" "over" "behind" "between" "beneath" "near" "on"
        "into" "onto" "around" "round" "along" "across" "towards" "toward" "deep" "superficial" "against" "beside"
        "for" "than" "unlike" "like" "within" "as" "after" "before" "lateral" "medial" "posterior" "anterior"
        "proximal" "distal";
    /// Words with which a sentence asserts nothing of its own.
    asserts_nothing:
        "suppose" "imagine" "hypothetical" "hypothetically" "would" "could" "should" "whether" "mistake" "mistakes"
        "misconception" "misconceptions" "myth" "wrongly" "incorrectly" "incorrect" "erroneously" "falsely" "confuse"
        "confused" "confuses" "mistaken" "mistakenly" "false" "untrue" "wrong" "dog" "dogs" "canine" "cat" "cats"
        "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit" "rabbits" "sheep" "pig" "pigs"
        "porcine" "bovine" "cattle" "monkey" "monkeys" "frog" "frogs" "primate" "primates" "ape" "apes" "quadruped" "quadrupeds"
        "mammals" "amphibian" "amphibians" "fish" "bird" "birds" "reptile" "reptiles" "embryo" "embryonic"
        "embryologically" "embryology" "branchial" "somite" "somites" "historically" "formerly" "previously" "thought"
        "reported" "reports" "studies" "study" "cadavers" "cadaveric" "specimens" "variant" "variants" "variation"
        "variations" "anomalous" "anomaly" "anomalies" "variably" "instead" "write" "writes" "wrote" "think" "thinks"
        "mnemonic" "nobody" "no-one" "doubt" "doubts" "believes" "believed" "neither-of";
    /// Words with which only a question begins, whether or not it ends with a question mark.
    begins_question: "does" "do" "did" "why" "whose";
    /// Words in a heading or before a list that take back what stands below ("*Common mistakes*", "*In the dog:*").
    is_frame_word:
        "mistake" "mistakes" "error" "errors" "howler" "howlers" "misconception" "misconceptions" "myth" "myths"
        "wrong" "wrongly" "incorrect" "untrue" "fallacy" "fallacies" "blunder" "blunders" "confusions" "pitfalls"
        "dog" "dogs" "canine" "cat" "cats" "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit"
        "rabbits" "sheep" "pig" "pigs" "porcine" "bovine" "cattle" "monkey" "monkeys" "frog" "frogs" "quadrupeds"
        "embryology" "embryo" "variants" "variations" "anomalies";
    /// Words that make what follows no motor supply: vessels, sensation, nuclei.
    is_not_motor:
        "artery" "arteries" "arterial" "blood" "vein" "veins" "venous" "vascular" "perfusion" "vessel" "vessels"
        "lymphatic" "sympathetic" "parasympathetic" "autonomic" "proprioceptive" "proprioception" "nucleus" "nuclei"
        "tract" "tracts" "cortex" "skin" "cutaneous" "sensory" "sensation" "mucosa" "membrane" "articular" "capsule"
        "periosteum" "dermatome" "vasomotor" "secretomotor" "dura";
    /// Participles of doing: "flexion is *produced* by".
    is_done:
        "produced" "performed" "caused" "effected" "achieved" "carried" "assisted" "initiated" "brought";
    /// Verbs of doing: "*produces* flexion".
    does:
        "produces" "produce" "performs" "perform" "causes" "cause" "effects" "effect" "assists" "assist" "aids" "aid"
        "helps" "help" "contributes" "contribute" "initiates" "initiate" "enables" "enable" "does" "do" "brings"
        "about" "acts" "act" "in" "responsible" "for" "serves" "serve" "functions" "works";
    /// Verbs that help another ("*helps* to flex").
    is_helper:
        "helps" "help" "acts" "act" "serves" "serve" "works" "work" "contracts" "contract" "functions" "function"
        "assists" "assist" "able" "used" "tends" "tend" "combine" "combines" "unite";
    /// Verbs that list who does it ("the flexors *include*").
    includes: "include" "includes" "comprise" "comprises" "number";
    /// Nouns for what a muscle does ("the *action* of").
    is_task: "action" "actions" "function" "job" "task" "role" "work" "effect" "contraction" "pull" "use" "business";
    /// Nouns for a lesion.
    is_lesion:
        "injury" "injuries" "lesion" "lesions" "damage" "section" "division" "palsy" "palsies" "transection"
        "neuropathy" "compression" "loss" "paralysis" "entrapment" "block" "laceration" "cut" "pressure" "trauma"
        "injured";
    /// Verbs of lesion: "*cutting* the nerve".
    lesions:
        "cutting" "severing" "dividing" "injuring" "damaging" "compressing" "blocking" "destroying" "losing"
        "crushing" "tearing" "stretching" "trapping" "bruising" "pinching" "squashing" "anaesthetising";
    /// Participles that tell of a lesion: "when the nerve is *cut*".
    is_cut:
        "cut" "divided" "severed" "damaged" "injured" "bruised" "compressed" "torn" "crushed" "destroyed" "blocked"
        "trapped" "transected" "paralysed" "paralyzed" "lost" "sectioned" "stretched" "lesioned" "gone" "squeezed"
        "pinched" "nicked" "caught" "interrupted" "sacrificed" "anaesthetised" "anesthetized" "dead";
    /// Verbs by which a nerve fails, at the end of a clause ("when the nerve *goes*").
    is_failing: "goes" "fails" "fail" "suffers" "suffer" "dies";
    /// Nouns for a lesion that mean nothing else.
    is_injury:
        "injury" "injuries" "lesion" "lesions" "damage" "transection" "neuropathy" "entrapment" "palsy" "laceration";
    /// Words that tell where along a nerve, or how much of it, is hurt.
    is_level:
        "level" "distal" "proximal" "distally" "proximally" "above" "below" "beyond" "high" "low" "higher" "lower"
        "there" "here" "partial" "incomplete" "branch" "branches" "fascicle" "early" "mild" "sometimes";
    /// Verbs of becoming, before a word of loss ("*goes* numb").
    is_change:
        "goes" "go" "becomes" "become" "feels" "feel" "gets" "get" "turns" "being" "remains" "remain" "made" "stays"
        "stay";
    /// Verbs with a muscle and what becomes of it behind them ("*leaves* it weak").
    leaves: "leaves" "leave" "makes" "make" "renders" "render" "keeps" "keep";
    /// Words with which a statement about a lesion is only negative.
    is_spared:
        "spares" "spare" "spared" "sparing" "intact" "unaffected" "preserved" "escapes" "escape" "normal" "untouched"
        "unharmed" "retained" "kept" "unimpaired";
    /// Words that make a condition of a lesion.
    is_condition: "if" "when" "whenever" "once" "after" "following" "with";
    /// Words that tell of a loss.
    is_loss:
        "lacks" "paralysis" "paralyses" "paralyzes" "paralyse" "paralyze" "weakness" "weakens" "weaken" "denervation"
        "denervates" "wasting" "wastes" "atrophy" "palsy" "paresis" "paralysed" "paralyzed" "weak" "weakened"
        "denervated" "lost" "loses" "lose" "loss" "abolishes" "abolish" "abolished" "impairs" "impair" "impaired"
        "cannot" "can't" "can’t" "unable" "inability" "difficulty" "impossible" "costs" "cost" "wipes" "wipe" "knocks"
        "knock" "robs" "rob" "prevents" "prevent" "limits" "limit" "restricts" "restrict" "absent" "diminished" "diminishes" "fails" "fail" "failure" "waste" "wasted" "paretic" "flaccid" "useless" "ceases";
    /// Nouns for skin and its places that tell no area from another.
    is_area_noun:
        "skin" "of" "over" "on" "in" "to" "surface" "surfaces" "aspect" "aspects" "side" "sides" "border" "margin"
        "edge" "part" "area" "region" "and" "covering" "overlying" "most" "strip" "patch" "mucosa" "mucous" "membrane"
        "between" "from";
    /// Verbs of taking place: "inversion *occurs* at".
    happens: "occur" "occurs" "takes" "take" "happens" "happen" "is" "are";
    /// Words for vessels and blood.
    is_vessel:
        "artery" "arteries" "vein" "veins" "vessel" "vessels" "blood" "perfusion" "lymphatic" "lymphatics" "drainage"
        "vasculature";
    /// Words that tell of a loss of all, not of some.
    is_whole_loss:
        "abolishes" "abolish" "abolished" "cannot" "can't" "can’t" "unable" "inability" "impossible" "wipes" "loses"
        "lose" "lost" "loss" "paralysis"
        "paralyses" "paralysed" "paralyzed";
    /// Words for a loss of feeling.
    is_numbness: "numbness" "numb" "anaesthesia" "anesthesia" "sensation" "feeling" "sensory";
    /// Words that may stand between a word of loss and what is lost.
    is_of_loss:
        "of" "in" "to" "power" "function" "complete" "partial" "or" "and" "patient" "with" "active" "marked" "total"
        "severe" "use" "ability" "able" "be" "movement" "movements" "person" "longer" "no" "strength" "hand-grip"
        "difficulty" "him" "her" "them" "you" "out" "not" "sufferer" "victim" "fully" "properly" "actively" "small" "half"
        "side";
    /// Verbs by which a lesion brings about a sign: "causes wrist drop".
    brings_about:
        "causes" "cause" "produces" "produce" "results" "result" "leads" "lead" "gives" "give" "brings" "bring"
        "shows" "show" "presents" "present" "means";
}

word_lists! {
    // Sentences: where they and their clauses end, who is meant.
    /// Abbreviations whose full stop ends no sentence.
    is_abbreviation: "e.g" "i.e" "cf" "fig" "vs" "mm" "nn" "approx" "ca" "al" "dr" "prof" "no";
    /// Marks and words behind which a clause begins.
    begins_clause: ";" ":" "and" "but" "–" "—";
    /// Marks at which a phrase ends.
    ends_phrase: "." "," ";" ":" "(";
    /// Pronouns that stand for more than one.
    is_plural_pronoun: "they" "these" "both" "them";
    /// Words before a noun for a kind that mean what was named last ("*this* nerve").
    points_back: "this" "these" "the" "both" "that" "same" "latter";
    /// Marks and words, besides conjunctions, behind which a verb may keep the subject of the verb before.
    keeps_subject: "then" "but" ";" "–" "—" "while";
    /// Marks and words before the subject of a sentence ("*So* the radial nerve …").
    may_lead: "," "*" "•" "-" "–" "and" "so" "again" "since" "because" ":";
    /// Marks that begin an item whose subject stands above it.
    is_bullet: "•" "*" ":" "→";

    /// Words for which a stretch between commas is not passed over: it hedges, denies or sets a condition.
    is_weighty: "if" "when" "unless" "not" "no" "never" "nor" "neither" "or" "except" "save" "bar" "apart";
    /// Prepositions that join the two of a clause whose verb the clause before has ("B *by* M").
    carries_gap: "by" "from" "via" "through" "to" "into" "in" "on" "onto" "at";
    /// Marks and words at which a clause is over.
    closes_clause: "." "," ";" ":" ")" "—" "–" "and" "because" "since" "so" "or";
    /// Auxiliaries that stand for the verb of the clause before ("so *does* B").
    stands_for_verb: "does" "do" "is" "are" "did" "was" "were" "has" "have";
    /// Words with which a question asks for a name.
    asks: "which" "what" "who" "whose" "where";
    /// Words before the name that an answer gives.
    opens_answer: "by" "it's" "that's" "of" "it" "is" "from" "via" "through" "answer" ":" "yes" "—" "–" "-" ",";
    /// Words that say that a statement is made again ("B does *too*").
    repeats: "too" "likewise" "also" "similarly" "well" "same";
    /// Words by which a statement is said to be one of another as well ("the same *is true* of B").
    holds: "true" "holds" "hold" "goes" "applies" "said" "case" "serves";
    /// Words of a clause of supply that change nothing, whatever its order.
    is_in_plain_clause:
        "by" "through" "via" "from" "responsible" "for" "what" "it" "that" "which" "," "and" "same" "entirety" "of" "in"
        "takes" "place" "occurs" "occur" "effected" "comes" "way" "means" "also" "group" "groups" "whole";
    /// Words between "is" and "muscle" besides articles ("is *another* muscle supplied by").
    is_before_only: "only" "sole" "another" "also" "other" "first" "second" "third" "large" "small" "main";
    /// Words before "all" that take it back ("*nearly* all").
    takes_back_all: "not" "nearly" "almost" "hardly" "virtually" "practically" "but";
    /// Words that speak of exceptions, named or not.
    speaks_of_exceptions:
        "except" "exception" "exceptions" "apart" "bar" "barring" "save" "besides" "excepting" "excluding" "but"
        "mostly" "mainly" "nearly" "almost" "largely" "usually";
    /// Words that tell no area of skin from others by themselves: sides, and regions too wide.
    is_wide_area:
        "arm" "forearm" "thigh" "leg" "hand" "foot" "face" "neck" "trunk" "shoulder" "abdomen" "chest" "back"
        "buttock" "head" "scalp" "perineum" "limb" "body" "thorax" "digit" "dorsum" "tip" "root" "half" "third"
        "two" "three" "one" "medial" "lateral" "anterior" "posterior" "superior" "inferior" "upper" "lower" "proximal"
        "distal" "dorsal" "palmar" "plantar" "middle" "central" "deep" "superficial" "left" "right" "base" "angle"
        "muscle" "joint" "nerve" "tooth" "teeth" "surface" "mater" "wall" "cavity" "sinus" "duct" "first" "second";
    /// Nouns for what a nerve gives a muscle, where the sentence names no muscle ("*Innervation* is by").
    is_supply_noun: "innervation" "supply" "nerve";
    /// Verbs and words between such a noun and the nerve.
    links_supply:
        "occurs" "occur" "takes" "effected" "receives" "receive" "gets" "get" "has" "remains" "way" "means" "course";
    /// Verbs that say of a nerve that it has fibres of a kind ("*carries* no motor fibres").
    has_fibres:
        "carries" "carry" "contains" "contain" "has" "have" "conveys" "convey" "with" "without" "lacks" "bears" "holds"
        "transmits" "includes" "composed" "consists" "made" "up" "is" "are";
    /// Prepositions that bind what stands before a verb to it, where the verb's subject stands behind it ("*out of* it
    /// come").
    leads_inverted: "from" "of" "off" "to" "by" "through" "via" "for" "within" "in" "among";
    /// Words that may stand behind a noun, besides auxiliaries, adverbs and conjunctions.
    stands_behind_noun:
        "by" "in" "at" "on" "from" "through" "to" "via" "for" "with" "beyond" "near" "below" "above" "behind" "between"
        "before" "after" "alone" "too" "as" "unlike" "like" "into" "over" "under" "round" "around" "along" "supplies"
        "innervates" "serves" "gives" "sends" "carries" "passes" "runs" "arises" "comes" "leaves" "enters" "pierces"
        "divides" "ends" "continues" "becomes" "feels" "goes" "winds" "lies" "crosses" "descends" "emerges" "controls"
        "takes" "keeps" "gets" "supplying" "innervating" "branches" "does";
    /// Words before the segments of a ramus ("the *anterior primary rami* of C5").
    is_ramus_word: "anterior" "ventral" "posterior" "dorsal" "primary" "ramus" "rami" "division" "divisions";

    // Groups and objects.
    /// Words beside a conjunction that carry a list on ("as *well* as").
    carries_list_on: "as" "well" "also" "with" "then";
    /// Words before a name that make a statement one about a part of it ("the medial *half* of").
    means_part:
        "half" "halves" "two" "three" "four" "most" "part" "parts" "portion" "lateral" "medial" "upper" "lower" "rest"
        "some" "fibres" "fibers" "remaining" "remainder" "deep" "superficial" "other" "anterior" "posterior" "one";
    /// Words and marks between a relation word and its object ("supplies the *medial half* of").
    is_before_object:
        "medial" "lateral" "half" ":" "*" "both" "anterior" "posterior" "rami" "ramus" "ventral" "primary" "upper"
        "lower" "roots";
    /// Nouns for a part of an object, with "of" behind them ("the *rami* of").
    is_division: "half" "rami" "ramus" "roots";
    /// Nouns for a nerve, behind an adjective that names it ("the radial *nerve*").
    is_nerve_noun: "n" "nn" "nerve" "nerves";
    /// Nouns for a side or stretch of a place, which leave the place the one that is meant ("*shaft* of the humerus").
    is_stretch: "surface" "side" "aspect" "third" "thirds" "border" "end" "shaft" "body" "upper" "lower";

    // Forms of claims.
    /// Words between "is" and the group that a muscle belongs to ("is *one of* the hamstrings").
    is_before_group: "one" "of" "member" "muscle" "muscles";
    /// Adverbs that deny everything else ("*purely* sensory").
    means_only: "purely" "entirely" "solely" "exclusively" "wholly" "only";
    /// Words and marks in brackets beside segments or a nerve ("(*root value* C5)").
    is_in_bracket:
        "from" "root" "roots" "value" "values" "segments" "segment" ":" "spinal" "by" "of" "anterior" "ventral" "rami"
        ";" "nerve" "levels" "–";
    /// Words before a count of parts ("*has* three heads").
    precedes_parts: "has" "have" "with" "by" "of" "into" "are" "is" "possesses";
    /// Words before a count of structures ("there *are* four dorsal interossei").
    precedes_count: "are" "has" "have" "were";
    /// Verbs and participles of being made of parts ("is *formed* by three heads").
    is_made_of: "formed" "made" "composed" "consists" "comprises" "up" "divides" "splits" "arises";
    /// Words between a verb of taking place and the joint ("occurs *only at* the elbow").
    is_before_place: "place" "at" "in" "possible" "only";
    /// Words between a verb and the movement that it brings about ("is the *chief* flexor of").
    is_before_movement:
        "main" "chief" "prime" "powerful" "strong" "weak" "important" "of" "at" "in" "to" "with" "for" "mover"
        "principal" "primary" "strongest" "pure" "one" "active" "as" "most" "only" "second" "small" "large" "great" "common"
        "true" "key" "major";
    /// Nouns for a muscle by what it does ("the *mover* of the elbow is").
    is_mover: "mover" "movers" "agent" "agents" "muscle" "muscles";
    /// Words between a movement and what is moved ("flexion *at* the elbow").
    is_before_moved: "of" "at" "both" "it" "them";

    // Areas and lesions.
    /// Marks and words behind which the description of an area begins.
    precedes_area: "," ";" ":" "." "—" "and";
    /// Marks and words at which the description of an area ends.
    ends_area: "." "," ";" ":" "(" "while" "but" "whereas" "which";
    /// Words between a noun for a lesion and the nerve ("injury *to* the nerve").
    is_before_injured: "of" "to" "on" "or" "through" "one" "both" "either" "across";
    /// Words before a noun for a lesion that mean the nerve last spoken of ("*its* division").
    is_lesion_of_last: "its" "their" "such" "this";
    /// Words between a word for a loss of feeling and the area ("numbness *over the* thumb").
    is_of_numbness: "of" "over" "in" "on" "to" "the" "sensation" "feeling" "loss";

    // Segments.
    /// Words and marks between the members of a list of segments ("C5, C6 *and* C7").
    joins_segments: "," "/" "&" "and" "+" "." "or";
    /// Words and marks between the ends of a range of segments ("C5 *to* T1").
    spans_segments: "-" "–" "—" "to" "through" "‐" "‑";
    /// Words and marks between segments in words ("fifth *and* sixth cervical").
    joins_ordinals: "and" "," "to" "the" "or" "through";
    /// Nouns that make a number one of bones, discs or ribs, not of segments ("C5 *vertebra*").
    is_vertebral: "vertebra" "vertebrae" "vertebral" "rib" "ribs" "intercostal" "level" "disc" "disk";

    // Labels, headings, cells and keys.
    /// Marks between a label and its value.
    is_value_sign: ":" "—" "–" "-" "=";
    /// Marks between labels that stand in one line.
    separates_labels: "—" "–" "|" "·" "•";
    /// Nouns before the number of a picture or table ("*Fig.* 3").
    is_figure: "fig" "figs" "figure" "plate" "table" "box" "card" "slide" "panel" "image" "photo";
    /// Adjectives before the noun of a header ("*one* muscle").
    is_header_adjective:
        "one" "a" "an" "example" "main" "chief" "typical" "sample" "principal" "usual" "important" "major" "some"
        "first" "named" "only";
    /// Words that leave a head what it is ("nerve *of* deltoid", "*main* action").
    fills_head:
        "of" "to" "for" "by" "from" "via" "in" "is" "are" "main" "chief" "n" "nn" "m" "mm" "with" "most" "own" "'s"
        "s" "usual" "their" "it" "who" "that" "which" "proper" "name" "muscle" "muscles" "nerve" "nerves" "branch"
        "branches";
    /// Words for a part of a muscle or nerve, beside ordinals ("*medial* half").
    tells_part:
        "medial" "lateral" "upper" "lower" "superficial" "deep" "anterior" "posterior" "long" "short" "dorsal" "palmar"
        "plantar" "superior" "inferior" "middle" "half" "belly" "head" "part" "portion" "fibres" "fibers" "division"
        "oblique" "transverse" "clavicular" "sternal" "sternocostal" "humeral" "ulnar-head" "adductor" "hamstring"
        "ischiocondylar" "pubofemoral" "reflected" "straight" "external" "internal" "left" "right" "recti" "obliques";
    /// Words with which a heading adds where or why ("Branches of CN VII *on* the face").
    begins_addition: "on" "in" "at" "for" "about" "from" "with";
    /// Words of a heading below which names stand side by side without a relation that is ours.
    is_of_neighbours:
        "relation" "relations" "near" "close" "neighbour" "neighbours" "neighbor" "neighbors" "beside" "behind"
        "around" "adjacent" "landmarks" "gland" "glands" "organs" "organ" "articular" "proprioception"
        "autonomic" "sympathetic" "parasympathetic" "embryology" "development" "arches" "reflex" "reflexes" "wrong"
        "errors" "error" "mistakes" "slips" "synergists" "synergist" "antagonists" "antagonist" "opponents"
        "palpation" "palpate" "vertebral" "openings" "discs" "disc" "vertebrae" "arts" "art";
    /// Words of a heading below which nothing is said of the anatomy that is taught: other animals, errors, variations.
    is_of_others:
        "dog" "dogs" "canine" "cat" "cats" "feline" "horse" "horses" "equine" "rat" "rats" "mouse" "mice" "rabbit"
        "rabbits" "sheep" "pig" "pigs" "porcine" "bovine" "cattle" "cow" "cows" "goat" "goats" "monkey" "monkeys"
        "ape" "apes" "quadruped" "quadrupeds" "animal" "animals" "veterinary" "species" "mistake" "mistakes" "myth"
        "myths" "misconception" "misconceptions" "wrong" "wrongly" "variation" "variations" "variant" "variants"
        "anomaly" "anomalies" "embryo" "embryology";
    /// Nouns that names below or behind them may leave out ("*cords*: lateral").
    is_completing_noun:
        "cord" "cords" "trunk" "trunks" "plexus" "branch" "branches" "division" "divisions" "canal" "foramen"
        "foramina" "foramens" "tunnel" "head" "heads" "belly" "bellies" "fossa" "compartment" "compartments" "group"
        "nerves";
    /// Shortened words behind which a full stop ends no sentence.
    is_short_word:
        "nn" "mm" "ant" "post" "med" "lat" "sup" "inf" "prox" "dist" "orig" "ins" "act" "fig" "figs" "nerv" "musc"
        "br" "brs" "div" "ext" "int" "digit" "long" "brev" "vs" "approx" "no" "e.g" "i.e";
    /// Marks and words before a label ("*its* innervation:").
    precedes_label: ":" "—" "–" "-" "," "*" "•" "(" ")" "its";
    /// Marks behind a name that stands at the head of an item.
    ends_head: ":" "—" "–" "-" "." "(" ",";
    /// Words beside the names of a value that is nothing but names.
    joins_values: "n" "nn" "m" "mm" "nerve" "nerves" "of" "supplies" "via" "motor" "to" "medial" "lateral";
    /// Words of a heading that add nothing to the name in it.
    adds_nothing: "the" "nerve" "n" "and" "to";
    /// Marks and words for a cell that says nothing.
    is_empty_cell: "-" "–" "—" "/" "n/a" "none";
    /// Answers to a statement that is true.
    is_true: "true" "t" "1" "yes";
    /// Answers to a statement that is false.
    is_false: "false" "f" "0" "no";

    // Names.
    /// Hyphens and the dash that is written for one.
    is_hyphen: "-" "‐" "‑" "–";
    /// Words of two letters.
    is_small_word:
        "am" "an" "as" "at" "be" "by" "do" "go" "he" "if" "in" "is" "it" "me" "my" "no" "of" "on" "or" "so" "to" "up" "we";
    /// Marks at which a clause ends.
    ends_clause: "." ";" ":" "!" "?" ",";
    /// Words that begin no noun phrase: what stands before one has ended.
    ends_noun_phrase:
        "is" "are" "was" "were" "be" "been" "has" "have" "had" "does" "did" "may" "can" "will" "must" "in" "at" "on" "by"
        "with" "from" "for" "after" "before" "during" "into" "onto" "over" "under" "through" "to" "as" "but"
        "when" "while" "because" "if" "so" "then" "than" "lies" "runs" "passes" "arises" "supplies" "not";
    /// Adjectives of names that no ending tells ("*deep*").
    is_plain_adjective:
        "upper" "lower" "middle" "deep" "first" "second" "third" "fourth" "fifth" "inner" "outer" "great" "small"
        "lesser" "greater" "long" "short";
}

/// Turns of phrase of several words that change nothing, as "however" does.
const ASIDES: &[&[&str]] = &[
    &["on", "the", "other", "hand"],
    &["on", "the", "one", "hand"],
    &["by", "contrast"],
    &["in", "contrast"],
    &["of", "course"],
    &["in", "turn"],
    &["in", "fact"],
    &["for", "its", "part"],
    &["as", "a", "rule"],
    &["for", "example"],
    &["for", "instance"],
    &["at", "last"],
    &["in", "addition"],
    &["in", "particular"],
];

/// How many words an aside has that begins at a word.
pub fn aside_at<'w>(at: usize, word: &dyn Fn(usize) -> &'w str) -> Option<usize> {
    ASIDES.iter().find(|aside| aside.iter().zip(at..).all(|(wanted, at)| word(at) == *wanted)).map(|aside| aside.len())
}

/// Whether a word or mark may stand behind a noun, so that an adjective right before it stands for one ("the *radial*
/// supplies").
pub fn ends_noun(word: &str) -> bool {
    if !word.chars().any(char::is_alphanumeric) {
        return !matches!(word, "'" | "’");
    }
    is_auxiliary(word)
        || is_adverb(word)
        || is_relative(word)
        || is_contrast(word)
        || is_conjunction(word)
        || stands_behind_noun(word)
}

/// Rows of words that tell names from one another that are otherwise alike.
const CONTRASTS: &[&[&str]] = &[
    &ORDINALS,
    &["medial", "lateral", "intermediate"],
    &["anterior", "posterior"],
    &["superior", "inferior", "middle"],
    &["upper", "middle", "lower"],
    &["deep", "superficial"],
    &["internal", "external"],
    &["long", "short"],
    &["greater", "lesser"],
    &["dorsal", "ventral", "plantar", "palmar"],
];

/// The row of words from which a word tells its name: *inferior* from *superior*.
pub fn contrast_of(word: &str) -> Option<&'static [&'static str]> {
    CONTRASTS.iter().find(|row| row.contains(&word)).copied()
}

/// Whether the words of a relation phrase say that something goes through what it passes, not only by it.
pub fn goes_through(phrase: &str) -> bool {
    ["through", "pierc", "travers", "perforat"].iter().any(|stem| phrase.contains(stem))
}

/// On which side of it a relation phrase says that something passes, where it says so.
pub fn side_of_passage(phrase: &str) -> Option<&'static str> {
    let sides: [(&str, &'static str); 8] = [
        ("behind", "behind"),
        ("front", "in front of"),
        ("superficial", "superficial to"),
        (" over", "superficial to"),
        ("deep", "deep to"),
        (" under", "deep to"),
        ("beneath", "deep to"),
        (" above", "superficial to"),
    ];
    sides.iter().find(|(word, _)| phrase.contains(word)).map(|(_, side)| *side)
}

/// Sides that exclude each other, as the vocabulary writes them.
pub const OPPOSITE_SIDES: &[(&[&str], &[&str])] =
    &[(&["behind"], &["in front of"]), (&["deep to", "under"], &["superficial to", "over"])];

/// Everyday words for a side, with the trade's, for descriptions of an area.
pub const EVERYDAY_SIDES: &[(&str, &str)] = &[
    ("back", "posterior"),
    ("front", "anterior"),
    ("outer", "lateral"),
    ("inner", "medial"),
    ("outside", "lateral"),
    ("inside", "medial"),
];

/// Whether the words between two names make the first a part of the second ("heads *of the* triceps").
pub fn joins_part_and_whole(between: &str) -> bool {
    matches!(between, "of" | "of the" | "of all" | "of all the" | "of both" | "of each")
}

/// Whether the words between two names make them names of one thing ("FDP *(*flexor digitorum profundus)").
pub fn joins_name_and_alias(between: &str) -> bool {
    matches!(between, "(" | "[" | "," | "=" | ":" | "—" | "–" | "-" | ", the" | ", or")
}

/// The adjective that a shortened one stands for ("lat" for "lateral").
pub fn full_adjective(short: &str) -> Option<&'static str> {
    Some(match short.trim_end_matches('.').to_lowercase().as_str() {
        "lat" => "lateral",
        "med" => "medial",
        "post" => "posterior",
        "ant" => "anterior",
        "sup" => "superior",
        "inf" => "inferior",
        "mid" => "middle",
        _ => return None,
    })
}

/// Whether a cell says that it is as the cell above it.
pub fn is_ditto(cell: &str) -> bool {
    matches!(
        cell.to_lowercase().as_str(),
        "\"" | "″"
            | "as above"
            | "ditto"
            | "do."
            | "do"
            | "〃"
            | "same"
            | "see above"
            | "same as above"
            | "''"
            | "〃."
            | "the same"
    )
}

/// Words with which the line of an exam item that gives its key begins; of two that fit, the first is read.
pub const KEY_HEADS: &[&str] =
    &["correct answer", "answer key", "right answer", "answer", "key", "ans", "correct option", "solution"];

/// Words with which a stem begins that only instruct.
pub const INSTRUCTIONS: &[&str] =
    &["true or false", "true/false", "t/f", "complete", "complete the sentence", "fill in"];

/// Phrases in a heading or before a list that take back what stands below ("*True or false?*", "*What they wrote:*").
pub const FRAMES: &[&str] = &[
    "true or false",
    "true/false",
    "true / false",
    "true – false",
    "t/f",
    "t / f",
    "t or f",
    "right or wrong",
    "correct or incorrect",
    "which of",
    "decide whether",
    "say whether",
    "state whether",
    "judge whether",
    "each statement",
    "these statements",
    "following statements",
    "statements to",
    "false statements",
    "do not write",
    "never write",
    "don't write",
    "don’t write",
    "do not say",
    "never say",
    "students wrote",
    "they wrote",
    "people wrote",
    "candidates wrote",
    "students say",
    "to discuss",
    "for discussion",
    "to correct",
    "correct the",
    "find the",
    "spot the",
    "agree or disagree",
    "not true",
    "last year's answers",
    "read in scripts",
];

/// What stands before a statement that is judged wrong.
pub const TAKEN_BACK_BEFORE: &[&str] = &[
    "❌",
    "✗",
    "✘",
    "✖",
    "☒",
    "🚫",
    "[f]",
    "(f)",
    "(false)",
    "[false]",
    "false:",
    "false –",
    "false —",
    "wrong:",
    "wrong –",
    "wrong —",
    "incorrect:",
    "not true:",
    "myth:",
    "mistake:",
    "error:",
];

/// What stands behind a statement that is to be judged or is judged wrong.
pub const TAKEN_BACK_BEHIND: &[&str] = &[
    "t/f",
    "t / f",
    "true/false",
    "true / false",
    "true or false?",
    "t or f",
    "false",
    "wrong",
    "incorrect",
    "f",
    "✗",
    "✘",
    "❌",
];

/// Everyday verbs for movements, with the movement that they mean.
pub const PLAIN_VERBS: &[(&str, &str)] = &[
    ("bend", "flexion"),
    ("straighten", "extension"),
    ("evert", "eversion"),
    ("invert", "inversion"),
    ("plantar-flex", "plantar flexion"),
    ("dorsi-flex", "dorsiflexion"),
    ("lift", "elevation"),
    ("raise", "elevation"),
    ("turn outwards", "lateral rotation"),
    ("turn inwards", "medial rotation"),
    ("rotate outwards", "lateral rotation"),
    ("rotate inwards", "medial rotation"),
];

/// Ordinals, from the first on.
pub const ORDINALS: [&str; 12] = [
    "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh",
    "twelfth",
];

/// Numbers in words.
pub const NUMBERS: &[&str] = &[
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
    "twenty",
];

/// The number that a word or numeral is.
pub fn number(word: &str) -> Option<u32> {
    let place = NUMBERS.iter().position(|known| *known == word).and_then(|place| u32::try_from(place).ok());
    place.or_else(|| word.parse().ok().filter(|number| *number < 100))
}

/// Nouns by which parts are counted, with the class or kind of part that they name; `None` for parts of a muscle.
pub const COUNTED: &[(&str, Option<&str>)] = &[
    ("heads", None),
    ("head", None),
    ("bellies", None),
    ("parts", None),
    ("columns", None),
    ("trunks", Some("trunk")),
    ("cords", Some("cord")),
    ("divisions", Some("division")),
    ("roots", Some("root")),
];

/// Nouns of bone features so small that a muscle which is attached to one is not attached to another of the same bone.
pub const POINTS: &[&str] = &[
    "tuberosity",
    "tubercle",
    "trochanter",
    "epicondyle",
    "process",
    "acromion",
    "olecranon",
    "spine",
    "malleolus",
    "patella",
    "angle",
];

/// Pairs of words that make the names of two places of one structure, at one of which something is.
pub const TWINS: &[(&str, &str)] = &[
    ("medial", "lateral"),
    ("anterior", "posterior"),
    ("superior", "inferior"),
    ("greater", "lesser"),
    ("upper", "lower"),
    ("ulnar", "radial"),
    ("supraglenoid", "infraglenoid"),
    ("coracoid", "coronoid"),
];

/// Whether one name has a word where the other has its counterpart, and is the same otherwise: "medial epicondyle of humerus"
/// and "lateral epicondyle of humerus".
pub fn are_twins(a: &str, b: &str) -> bool {
    let mut differing = 0;
    let (mut left, mut right) = (a.split(' '), b.split(' '));
    loop {
        match (left.next(), right.next()) {
            (None, None) => return differing == 1,
            (Some(a), Some(b)) if a == b => {}
            (Some(a), Some(b)) if TWINS.iter().any(|pair| *pair == (a, b) || *pair == (b, a)) => differing += 1,
            _ => return false,
        }
    }
}

/// Classes of joints by what joins the bones.
pub const JOINT_CLASSES: &[(&str, &str)] =
    &[("synovial", "synovial"), ("fibrous", "fibrous"), ("cartilaginous", "cartilaginous")];

/// Words for what a nerve carries, with the modality.
pub const MODALITIES: &[(&str, &str)] = &[
    ("motor", "motor"),
    ("sensory", "sensory"),
    ("cutaneous", "sensory"),
    ("mixed", "mixed"),
    ("sensorimotor", "mixed"),
];

/// Words for the subtypes of joints, with the subtype as the vocabulary writes it.
pub const JOINT_KINDS: &[(&str, &str)] = &[
    ("hinge", "hinge"),
    ("ginglymus", "hinge"),
    ("pivot", "pivot"),
    ("trochoid", "pivot"),
    ("condyloid", "condyloid"),
    ("ellipsoid", "condyloid"),
    ("ellipsoidal", "condyloid"),
    ("condylar", "condyloid"),
    ("saddle", "saddle"),
    ("sellar", "saddle"),
    ("ball-and-socket", "ball and socket"),
    ("ball", "ball and socket"),
    ("spheroidal", "ball and socket"),
    ("plane", "plane"),
    ("gliding", "plane"),
    ("bicondylar", "bicondylar"),
    ("suture", "suture"),
    ("syndesmosis", "syndesmosis"),
    ("gomphosis", "gomphosis"),
    ("synchondrosis", "synchondrosis"),
    ("symphysis", "symphysis"),
];
