//! Relation phrases: what they claim of the names on their two sides, each with a sentence in which it is read.
//!
//! A **phrase** is a row of slots. A slot lists alternatives (`supplies|innervates`); `?` behind it says that it may be
//! missing; `~` stands for up to five words of any kind. Adverbs may stand between slots.

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
    verb("provides|provide|gives|give|sends|send|carries|carry|supplies|supply|furnishes|furnish|delivers|deliver|brings|bring|conveys|convey|contains|contain|includes|include|contributes|contribute|distributes|distribute|dispatches|lends off? the|its|some|all|separate? motor|muscular|nerve|efferent|nervous? innervation|supply|fibres|fibers|branches|twigs|filaments|power|function|control|input to|for|into", K::Supply, P::Nerve, P::Muscle, "The axillary nerve provides motor innervation to deltoid."),
    verb("provides|provide|gives|give|sends|send|has|have|contributes|contribute|lends off? a|an|one|two|three|several|both|small? motor|muscular|separate|long|short|special|large? innervation|supply|branches|branch|twigs|twig|filament|filaments|offshoot to|for|into", K::Supply, P::Nerve, P::Muscle, "The axillary nerve sends branches to deltoid."),
    verb("gives|give off? branches|twigs that|which supply|innervate", K::Supply, P::Nerve, P::Muscle, "The axillary nerve gives off branches that innervate deltoid."),
    verb("is|are responsible for the? motor? innervation|supply of|to", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for the innervation of deltoid."),
    verb("is|are responsible for innervating|supplying", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for innervating deltoid."),
    verb("energises|energise|energizes|energize|motors|actuates|actuate|tends|tend|minds|mind|rules|rule|manages|manage|directs|direct|fires|owns|enervates|enervate|galvanises|attends|attend|sees|see to?", K::Supply, P::Nerve, P::Muscle, "The axillary nerve energises deltoid."),
    verb("contributes|contribute|shares|share|takes|take|participates|helps|assists part? to|in? the? motor|nerve? supply|innervation of|to", K::Supply, P::Nerve, P::Muscle, "The axillary nerve contributes to the supply of deltoid."),
    verb("is|are the? source|parent|origin|mother of", K::Branching, P::Parent, P::Nerve, "The posterior cord is the source of the axillary nerve."),
    verb("is|are|remains a|an|the|one|also? only|sole|main|chief|usual|motor? supplier|suppliers|provider of|for the|its? motor|nerve? innervation|supply|power? of|for|to?", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is the supplier of deltoid."),
    verb("is|are a|the|one|also? only|sole|main|chief|usual|motor? source of|for the|its? motor|nerve? innervation|supply of|for|to", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is the source of the innervation of deltoid."),
    verb("has|have|exerts|exert|holds|takes the? motor? control|command|charge over|of", K::Supply, P::Nerve, P::Muscle, "The axillary nerve has motor control over deltoid."),
    verb("breaks|break|ramifies|ramify|fans|fan|spends|spend|ends|end|exhausts|terminates|terminate|distributes|distribute itself? up|out? in|within|among", K::Supply, P::Nerve, P::Muscle, "The axillary nerve breaks up in deltoid."),
    verb("is|are exhausted|spent|concerned in|within|with", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is exhausted in deltoid."),
    verb("goes|go straight|direct|off to|into", K::Supply, P::Nerve, P::Muscle, "The axillary nerve goes straight to deltoid."),
    verb("travels|travel|leads|lead|heads|head|makes|make straight|direct|on|down|up? to|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve heads for deltoid."),
    verb("controls|control|drives|drive|powers|power", K::Supply, P::Nerve, P::Muscle, "The axillary nerve powers deltoid."),
    verb("animates|animate|commands|command|governs|govern|operates|operate|feeds|feed|works|work|runs|run|keeps|keep|handles|handle|claims|claim", K::Supply, P::Nerve, P::Muscle, "The axillary nerve operates deltoid."),
    verb("looks|look|caters|cater|accounts|account|provides|provide|cares|care after|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve caters for deltoid."),
    verb("takes|take|has|have care|charge of", K::Supply, P::Nerve, P::Muscle, "The axillary nerve takes care of deltoid."),
    verb("goes|go to|into|on to? supply|innervate?", K::Supply, P::Nerve, P::Muscle, "The axillary nerve goes to deltoid."),
    verb("goes|go on to supply|innervate", K::Supply, P::Nerve, P::Muscle, "The axillary nerve goes on to supply deltoid."),
    verb("is|are|was distributed|destined|dedicated|devoted to|for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is distributed to deltoid."),
    verb("ends|end|finishes|finish|terminates|terminate by|in supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The axillary nerve ends by supplying deltoid."),
    verb("picks|pick|takes|take up|on|in", K::Supply, P::Nerve, P::Muscle, "The axillary nerve picks up deltoid."),
    verb("is|are responsible for", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is responsible for deltoid."),
    verb("responsible", K::Supply, P::Nerve, P::Muscle, "For deltoid is the axillary nerve responsible."),
    participle("supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The axillary nerve, supplying deltoid, winds round the bone."),
    participle("supplied|innervated|served|driven|powered|controlled|fed|operated|activated|moved|worked by|via|through|from", K::Supply, P::Muscle, P::Nerve, "Deltoid is supplied by the axillary nerve."),
    verb("receives|receive|gets|get|takes|take|derives|derive|has|have|obtains|obtain|draws|draw|owes|owe|gains|gain|enjoys|enjoy its|their|the|a? motor|nerve|nervous? supply|innervation|fibres|fibers from|to|via|through|by", K::Supply, P::Muscle, P::Nerve, "Deltoid receives its innervation from the axillary nerve."),
    verb("receives|receive|gets|get a|an|its|their? motor? supply|innervation|branch|branches|twig|twigs|fibres|fibers from|of", K::Supply, P::Muscle, P::Nerve, "Deltoid receives twigs from the axillary nerve."),
    participle("taken|looked care|charge of by", K::Supply, P::Muscle, P::Nerve, "Deltoid is taken care of by the axillary nerve."),
    participle("stimulated|energised|energized|tended|minded|ruled|directed|fired|owned|enervated|animated|commanded|governed|handled|managed|picked|run|looked|catered|cared|reached|actuated|provided|claimed|kept|taken|covered|motored after|for|up|of|over? by", K::Supply, P::Muscle, P::Nerve, "Deltoid is looked after by the axillary nerve."),
    participle("furnished|provided|supplied|equipped with|of its|their|a? motor|nerve? fibres|fibers|supply|twigs|branches|innervation by|from", K::Supply, P::Muscle, P::Nerve, "Deltoid is furnished with its motor fibres by the axillary nerve."),
    verb("obeys|obey", K::Supply, P::Muscle, P::Nerve, "Deltoid obeys the axillary nerve."),
    verb("falls|fall|comes|come to|under", K::Supply, P::Muscle, P::Nerve, "Deltoid falls to the axillary nerve."),
    verb("is|are left|wired|tied|linked|hooked|plugged|entrusted|assigned|allotted|given up|over? to|into", K::Supply, P::Muscle, P::Nerve, "Deltoid is left to the axillary nerve."),
    verb("takes|take|gets|get|receives|receive|has|have its|their? orders|instructions|impulses|input|stimulus|drive|command from|through|via", K::Supply, P::Muscle, P::Nerve, "Deltoid takes its orders from the axillary nerve."),
    verb("belongs|belong to the? territory|domain|share|province|field of", K::Supply, P::Muscle, P::Nerve, "Deltoid belongs to the territory of the axillary nerve."),
    verb("is|are a? part of the? territory|domain|share|province|field of", K::Supply, P::Muscle, P::Nerve, "Deltoid is part of the territory of the axillary nerve."),
    verb("is|are one? among|of the? muscles supplied|innervated|served by", K::Supply, P::Muscle, P::Nerve, "Deltoid is one of the muscles supplied by the axillary nerve."),
    verb("answers|answer|listens|listen|responds|respond to", K::Supply, P::Muscle, P::Nerve, "Deltoid answers to the axillary nerve."),
    verb("hangs|hang|works|work|lives|live|feeds|feed on|off|from", K::Supply, P::Muscle, P::Nerve, "Deltoid works off the axillary nerve."),
    verb("owes|owe its|their? motor|nerve? supply|innervation|power|fibres|fibers|nerve|twigs|strength|movement|action to", K::Supply, P::Muscle, P::Nerve, "Deltoid owes its power to the axillary nerve."),
    verb("receives|receive|gets|get|takes|take|derives|derive|has|have|obtains|obtain|draws|draw|gains|gain its|their|the|a motor? nerve|nerves|fibres|fibers|twig|twigs|branch|branches|motor from|off|via|through|by", K::Supply, P::Muscle, P::Nerve, "Deltoid gets its nerve from the axillary nerve."),
    verb("is|are|falls|fall|comes|come|lies|lie|remains|remain|stays|belongs in|under|within|inside|to? the? sole|exclusive? charge|territory|domain|business|property|province|responsibility|realm|command|control|preserve|job|share|care|hands|gift|field|keeping|remit|sphere|rule|sway|district|patch of", K::Supply, P::Muscle, P::Nerve, "Deltoid is the charge of the axillary nerve."),
    verb("makes|make use of", K::Supply, P::Muscle, P::Nerve, "Deltoid makes use of the axillary nerve."),
    verb("shares|share a|one|the nerve ,|:|, the?", K::Supply, P::Muscle, P::Nerve, "Deltoid and teres minor share a nerve, the axillary nerve."),
    verb("has|have a nerve of its|their own ,|:", K::Supply, P::Muscle, P::Nerve, "Deltoid has a nerve of its own, the axillary nerve."),
    verb("has|have two|three nerves|suppliers ,|:|, the?", K::Supply, P::Muscle, P::Nerve, "Deltoid has two suppliers, the axillary nerve and no other."),
    verb("depends|depend|relies|rely on|upon", K::Supply, P::Muscle, P::Nerve, "Deltoid depends on the axillary nerve."),
    verb("does|do your|my", K::Supply, P::Nerve, P::Muscle, "The axillary nerve does your deltoid."),
    participle("done|dealt|seen with|to? by", K::Supply, P::Muscle, P::Nerve, "Deltoid is done by the axillary nerve."),
    verb("shares|share the|a|an|its|their?", K::Supply, P::Muscle, P::Nerve, "Deltoid and teres minor share the axillary nerve."),
    verb("gets|get|receives|receive|takes|take its|their|the|a|an? motor? supply|innervation|nerve directly|segmentally? from|via|through|by", K::Supply, P::Muscle, P::Nerve, "Deltoid takes its supply directly from the axillary nerve."),
    verb("is|are|remains|remain a|an|the|another|also|one? of? the? only|main|chief|sole? muscle|muscles of", K::Supply, P::Muscle, P::Nerve, "Deltoid is a muscle of the axillary nerve."),
    verb("supplies|innervates|serves are|include|comprise|is", K::Supply, P::Nerve, P::Muscle, "The axillary nerve is mixed. Among the muscles it supplies are deltoid and teres minor."),
    verb("only|sole|single muscle is", K::Supply, P::Nerve, P::Muscle, "The thoracodorsal nerve is motor. Its only muscle is latissimus dorsi."),
    noun("nerve in charge of", K::Supply, P::Nerve, P::Muscle, "The nerve in charge of deltoid is the axillary nerve."),
    noun("nerve responsible|needed for", K::Supply, P::Nerve, P::Muscle, "The nerve responsible for deltoid is the axillary nerve."),
    noun("motor|nerve? innervation|supply of|to|for", K::Supply, P::Nerve, P::Muscle, "The innervation of deltoid is by the axillary nerve."),
    noun("motor? nerve of|to|for", K::Supply, P::Nerve, P::Muscle, "The motor nerve to deltoid is the axillary nerve."),
    noun("nerve supplying|innervating", K::Supply, P::Nerve, P::Muscle, "The nerve supplying deltoid is the axillary nerve."),
    noun("nerve that|which supplies|innervates|serves|moves|works|drives|powers|controls", K::Supply, P::Nerve, P::Muscle, "The nerve that supplies deltoid is the axillary nerve."),
    noun("muscle|muscles supplied|innervated by", K::Supply, P::Muscle, P::Nerve, "The muscles supplied by the axillary nerve are deltoid and teres minor."),

    // Where a nerve comes from; with segments on the right the same words tell its roots, with a muscle on the left its origin.
    verb("arises|arise|originates|originate|springs|spring|comes|come|emerges|emerge|stems|stem|derives|derive|originate|issues|issue|starts|start|departs|depart from|off|by|in|out of?", K::Branching, P::Nerve, P::Parent, "The axillary nerve arises from the posterior cord."),
    verb("takes|take|has|have its|their? origin|origins from|in|on|at|over", K::Branching, P::Nerve, P::Parent, "The axillary nerve takes its origin from the posterior cord."),
    verb("begins|begin as|from|in", K::Branching, P::Nerve, P::Parent, "The axillary nerve begins from the posterior cord."),
    verb("branches|branch off? from", K::Branching, P::Nerve, P::Parent, "The axillary nerve branches from the posterior cord."),
    verb("branches|branch off", K::Branching, P::Nerve, P::Parent, "The axillary nerve branches off the posterior cord."),
    participle("arising|derived|originating|springing|formed|coming|made|built|given|drawn|descended off? up? from|by|of", K::Branching, P::Nerve, P::Parent, "The axillary nerve is derived from the posterior cord."),
    participle("is|are|was? a|an|the|its|one|both? of? the|its? terminal|direct|main|principal|only|sole|large|larger|largest|long|longest|thick|thickest|shortest|small|smaller|smallest|named|chief|motor|sensory|muscular|cutaneous|collateral|infraclavicular|supraclavicular|two|three|four|long|short|deep|superficial|first|second|last|medial|lateral|anterior|posterior|upper|lower|slender|delicate|purely|important? terminal|direct|main|principal|only|sole|large|larger|largest|long|longest|thick|thickest|shortest|small|smaller|smallest|named|chief|motor|sensory|muscular|cutaneous|collateral|infraclavicular|supraclavicular|two|three|four|long|short|deep|superficial|first|second|last|medial|lateral|anterior|posterior|upper|lower|slender|delicate|purely|important? branch|branches|offshoot|offshoots|division|divisions|twig of|from", K::Branching, P::Nerve, P::Parent, "The axillary nerve is one of the two terminal branches of the posterior cord."),
    participle("member|part|one of", K::Membership, P::Muscle, P::Group, "Supraspinatus, member of the rotator cuff, abducts."),
    participle("counted|numbered|reckoned|grouped|listed|classed|classified|ranked|included among|amongst|with|as|in|under one? of?", K::Membership, P::Muscle, P::Group, "Supraspinatus is counted among the rotator cuff."),
    verb("counts|count|ranks|rank|figures|figure among|amongst|as one? of?", K::Membership, P::Muscle, P::Group, "Supraspinatus counts among the rotator cuff."),
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

    verb("ends|end|terminates|terminate|finishes|finish by giving off? rise? to?", K::Branching, P::Parent, P::Nerve, "The posterior cord ends by giving off the axillary nerve."),
    verb("parts|part company|ways with|into|from", K::Branching, P::Parent, P::Nerve, "The posterior cord parts company with the axillary nerve."),
    verb("breaks|break|forks|fork|parts|part|opens|open|fans|fan out? into", K::Branching, P::Parent, P::Nerve, "The posterior cord forks into the axillary nerve and the radial nerve."),
    verb("comes|come|joins|join|unites|unite|fuses|fuse|meets|meet|merges|merge together? as|into", K::Branching, P::Parent, P::Nerve, "The posterior division of the upper trunk unites as the posterior cord."),
    verb("comes|come|joins|join|unites|unite|fuses|fuse|meets|meet|merges|merge together? to? form|make|become", K::Branching, P::Parent, P::Nerve, "The posterior division of the upper trunk joins to form the posterior cord."),
    participle("a|an|the? slip|shoot|child|daughter|descendant of", K::Branching, P::Nerve, P::Parent, "The axillary nerve is a daughter of the posterior cord."),

    verb("terminal|main|chief|two|three|four|five|cutaneous|muscular? terminal|main|cutaneous|muscular|motor? branches|divisions are|include|comprise|:", K::Branching, P::Parent, P::Nerve, "The posterior cord branches are the axillary nerve and the radial nerve."),
    verb("first|second|third|last|largest|longest|main|chief|only|smallest|biggest|highest|lowest|next branch is", K::Branching, P::Parent, P::Nerve, "The posterior cord lies deep. Its largest branch is the radial nerve."),
    verb("branch|branches in|at|within|on|to ~ is|are", K::Branching, P::Parent, P::Nerve, "The posterior cord lies deep. Its branches in the axilla are the axillary nerve and the radial nerve."),
    verb("bifurcates|bifurcate|trifurcates|subdivides|subdivide|separates|separate into", K::Branching, P::Parent, P::Nerve, "The posterior cord bifurcates into the axillary nerve and the radial nerve."),
    verb("ends|end|terminates|terminate by|in splitting|bifurcating|forking|breaking up? into", K::Branching, P::Parent, P::Nerve, "The posterior cord ends by splitting into the axillary nerve and the radial nerve."),
    verb("throws|throw|sends|send|shoots|shoot|drops|drop|sheds|shed|detaches|detach|emits|emit|dispatches|dispatch|buds|bud|puts|put off|out", K::Branching, P::Parent, P::Nerve, "The posterior cord throws off the axillary nerve."),
    verb("is|are off|from", K::Branching, P::Nerve, P::Parent, "The axillary nerve is off the posterior cord."),
    verb("ends|end|finishes|finish|winds|wind up as", K::Branching, P::Parent, P::Nerve, "The posterior cord ends up as the radial nerve."),
    verb("parts|part with", K::Branching, P::Parent, P::Nerve, "The posterior cord parts with the axillary nerve."),
    verb("hops|hop|breaks|break|splits|split|separates|separate|detaches|detach|parts|part away|itself? off? from", K::Branching, P::Nerve, P::Parent, "The axillary nerve splits off from the posterior cord."),
    verb("owes|owe its|their origin|existence to", K::Branching, P::Nerve, P::Parent, "The axillary nerve owes its origin to the posterior cord."),
    verb("traces|trace its|their? origin|origins? back? to", K::Branching, P::Nerve, P::Parent, "The axillary nerve traces its origin back to the posterior cord."),

    // Renaming.
    verb("continues|continue as|into", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve continues as the posterior interosseous nerve."),
    verb("continues|continue|proceeds|proceed|goes|go|runs|run|passes|pass|carries|carry on? ~ as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve continues beyond the supinator as the posterior interosseous nerve."),
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
    verb("goes|go by|under the name of?", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve goes by the name posterior interosseous nerve."),
    participle("continued as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is continued as the posterior interosseous nerve."),

    verb("emerges|emerge|reemerges|reappears|reappear|appears|appear|surfaces|surface|descends|descend|enters|enter|exits|exit ~ as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve emerges from supinator as the posterior interosseous nerve."),
    verb("emerges|emerge|reemerges|reappears|reappear|appears|appear|surfaces|surface as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve emerges as the posterior interosseous nerve."),
    verb("is|are represented|prolonged below|beyond|there? by|as", K::Renaming, P::Parent, P::Nerve, "The deep branch of the radial nerve is represented by the posterior interosseous nerve."),
    participle("the? direct|terminal|distal? continuation|prolongation of", K::Renaming, P::Nerve, P::Parent, "The posterior interosseous nerve is the prolongation of the deep branch of the radial nerve."),

    // Roots.
    verb("root|segmental|spinal? roots|segments|levels|value|values|root|origin is|are", K::Roots, P::Structure, P::Segments, "The axillary nerve roots are C5 and C6."),
    noun("root|segmental|spinal|nerve? roots|segments|levels|value|values|supply of", K::Roots, P::Segments, P::Structure, "The roots of the axillary nerve are C5 and C6."),
    verb("has|have|carries|carry|contains|contain|receives|receive|bears|bear|with the|a|its? root|segmental|spinal|nerve? roots|root|segments|fibres|fibers|value|values|contributions|contribution|levels from|of?", K::Roots, P::Structure, P::Segments, "The axillary nerve carries fibres from C5 and C6."),
    verb("draws|draw|gets|get|takes|take|derives|derive|has|have|obtains|obtain its|their root|nerve? fibres|fibers|roots|supply|segments|origin from|of|in all|part? of?", K::Roots, P::Structure, P::Segments, "The axillary nerve draws its fibres from C5 and C6."),
    participle("fed|composed|constituted up? by|of|from", K::Roots, P::Structure, P::Segments, "The axillary nerve is fed by C5 and C6."),
    participle(", root|segmental|spinal root|roots|value|values|segments|levels :?", K::Roots, P::Structure, P::Segments, "The axillary nerve, root value C5 and C6, is short."),
    participle("with root|nerve? fibres|fibers|roots|contributions from|of", K::Roots, P::Structure, P::Segments, "The axillary nerve, with fibres from C5 and C6, is short."),
    verb("carries|carry|contains|contain|receives|receive", K::Roots, P::Structure, P::Segments, "The axillary nerve carries C5 and C6."),

    // Skin.
    verb("supplies|supply|innervates|innervate|serves|serve|reaches|reach|ends|end sensation? to? in? the? overlying? skin of|over|on|covering|along", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm supplies the skin of the lateral side of the forearm."),
    verb("provides|provide|gives|give|carries|carry|supplies|supply|conveys|convey no? the? cutaneous|sensory|general? sensation|innervation|supply|feeling to|of|from|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm provides sensation to the lateral side of the forearm."),
    verb("receives|receive|gets|get|derives|derive|takes|take|has|have its|their? sensation|feeling|sensory|cutaneous supply|innervation? from|by|through", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm gets its feeling from the lateral cutaneous nerve of the forearm."),
    noun("the? cutaneous|sensory innervation|supply of|to|for|over the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The cutaneous supply of the lateral side of the forearm comes from the lateral cutaneous nerve of the forearm."),
    participle("is|are? the? cutaneous|sensory innervation|supply|nerve of|to|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is the sensory nerve of the lateral side of the forearm."),
    verb("owes|owe|gets|get|has|have|draws|draw|takes|take|receives|receive its|their? feeling|sensation|sensibility|touch|cutaneous|sensory|nerve innervation|supply|nerves? to|from|by|through|via", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm owes its feeling to the lateral cutaneous nerve of the forearm."),
    verb("carries|carry|conveys|convey|brings|bring|picks|pick|collects|collect|takes|take|relays|relay|transmits|transmit up? no? general? sensation|feeling|touch|sensory|sensibility fibres|information|impulses? from|of|for|to the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm carries sensation from the lateral side of the forearm."),
    verb("looks|look|caters|cater|cares|care after|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm looks after the skin of the lateral side of the forearm."),
    verb("covers|cover|feels|feel|numbs the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm covers the lateral side of the forearm."),
    verb("is|are responsible for the? sensation|feeling|skin|sensory|cutaneous innervation|supply? of|over|on|to the? skin? of|over?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is responsible for the skin of the lateral side of the forearm."),
    noun("general|cutaneous|common|somatic? sensation|feeling|sensibility|touch|sensations from|of|over|to|in|on|for the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "Sensation from the lateral side of the forearm is carried by the lateral cutaneous nerve of the forearm."),
    noun("autonomous|autogenous|exclusive|sensory|cutaneous|main? zone|area|territory|distribution|field|patch of|for", K::Skin, P::Skin, P::Nerve, "The sensory territory of the lateral cutaneous nerve of the forearm is the lateral side of the forearm."),
    verb("sensation|sensations|feeling|sensibility is|are|runs|travels|comes carried|conveyed|mediated|provided|supplied|transmitted|relayed|served|given? by|through|via|in|from", K::Skin, P::Skin, P::Nerve, "Lateral forearm sensation is carried by the lateral cutaneous nerve of the forearm."),
    verb("sensory? sensation|function is|are|can|should|may be? best? tested|checked|assessed|examined over|on|at|in the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "Lateral cutaneous nerve of forearm sensation is tested over the lateral side of the forearm."),
    noun("dermatome|dermatomes of|for|over|at|around|round the? skin? of|over?", K::Skin, P::Nerve, P::Skin, "The dermatome of the thumb is C6."),
    participle("felt|covered|served by", K::Skin, P::Skin, P::Nerve, "The lateral side of the forearm is felt by the lateral cutaneous nerve of the forearm."),
    participle("sensory|cutaneous to the? skin? of|over|on?", K::Skin, P::Nerve, P::Skin, "The lateral cutaneous nerve of the forearm is sensory to the lateral side of the forearm."),

    // Passage.
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|enters|enter|exits|exit|leaves|leave|descends|descend|emerges|emerge|winds|wind by|via|through|within|in|inside", K::Passage, P::Nerve, P::Landmark, "The median nerve passes through the carpal tunnel."),
    verb("leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain|passes|pass|crosses|cross|runs|run|descends|descend|comes|come|emerges|emerge|gets|get|appears|appear|goes|go|travels|travel ~ through|via", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm through the carpal tunnel."),
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|comes|come|swings|swing|slips|slip|lies|lie|turns|turn|curves|curve|curls|curl|winds|wind|hooks|hook|dives|dive|dips|dip|crosses|cross|descends|descend|ascends|ascend|climbs|climb|emerges|emerge|enters|enter|reaches|reach|sits|sit itself|backwards|forwards|forward|down|up|out|in|on? behind|under|over|round|around|beneath|below|above|between|along", K::Passage, P::Nerve, P::Landmark, "The ulnar nerve passes behind the medial epicondyle."),
    verb("passes|pass|runs|run|travels|travel|courses|course|goes|go|comes|come|lies|lie|crosses|cross|swings|swing itself|down|up|out|in|on? in|deep|superficial front|to of?", K::Passage, P::Nerve, P::Landmark, "The saphenous nerve runs in front of the medial malleolus."),
    verb("passes|pass|runs|run|travels|travel|goes|go|comes|come|slips|slip|emerges|emerge|drops|drop|dives|dive|gets|get|makes|make|finds|find its? way? backwards|forwards|forward|down|up|out|in|on|back|straight through|via|by|within", K::Passage, P::Nerve, P::Landmark, "The median nerve goes out through the carpal tunnel."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain|gets|get|comes|come|goes|go ~ by way|means of", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm by way of the carpal tunnel."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|reaches|reach|gains|gain ~ through|by|via", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm by the carpal tunnel."),
    verb("uses|use|negotiates|negotiate|threads|thread", K::Passage, P::Nerve, P::Landmark, "The median nerve uses the carpal tunnel."),
    participle("winding|swinging|curving|hooking|turning|travelling|running|passing|lying|going|coming behind|under|over|round|around|beneath|along|between", K::Passage, P::Nerve, P::Landmark, "The median nerve, winding round the medial epicondyle, reaches the hand."),
    verb("traverses|traverse|enters|enter|pierces|pierce|perforates|perforate", K::Passage, P::Nerve, P::Landmark, "The median nerve traverses the carpal tunnel."),
    participle("passing|running|travelling|traveling|coursing through|within|in|inside", K::Passage, P::Nerve, P::Landmark, "The median nerve, passing through the carpal tunnel, reaches the hand."),
    participle("pierced by", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel is traversed by the median nerve."),
    participle("traversed by", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel is traversed by the median nerve."),
    participle("left|entered|exited|emerged|passed|come|gone ~ through|via|by|above|below|behind|under|between", K::Passage, P::Nerve, P::Landmark, "The median nerve, having entered the palm through the carpal tunnel, divides."),
    participle("left|entered|exited|emerged|passed|come|gone through|via|above|below|behind|under|between", K::Passage, P::Nerve, P::Landmark, "The median nerve, having passed through the carpal tunnel, divides."),
    participle("pierced|traversed|perforated", K::Passage, P::Nerve, P::Landmark, "The median nerve, having traversed the carpal tunnel, divides."),
    participle("piercing|traversing|perforating|entering", K::Passage, P::Nerve, P::Landmark, "The median nerve, traversing the carpal tunnel, reaches the hand."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|emerges|emerge|reaches|reach|gains|gain|appears|appear ~ above|below|over|at|round|around|underneath|alongside", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm at the carpal tunnel."),
    verb("quits|quit|leaves|leave|enters|enter|exits|exit|emerges|emerge|reaches|reach|gains|gain|appears|appear ~ in|deep|superficial|posterior|anterior|lateral|medial front|to of?", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the palm deep to the flexor retinaculum of hand."),
    verb("exits|exit|emerges|emerge|appears|appear|surfaces|surface at|above|below|over|beneath|underneath|under", K::Passage, P::Nerve, P::Landmark, "The median nerve emerges below the flexor retinaculum of hand."),
    verb("emerges|emerge|appears|appear|comes|come|issues|issue|runs|run|passes|pass|descends|descend|lies|lie|leaves|leave out? from|at|along|by|on|beside? the? lateral|medial|outer|inner|upper|lower|superior|inferior border|edge|margin|side of", K::Passage, P::Nerve, P::Landmark, "The femoral nerve emerges from the lateral border of psoas major."),
    verb("lies|lie|runs|run|passes|pass|sits|sit|descends|descend|is|are|courses|course|stands|stand|found|enters|enter|goes|go just|immediately? lateral|medial|posterior|anterior to", K::Passage, P::Nerve, P::Landmark, "The ulnar nerve is posterior to the medial epicondyle."),
    verb("is|are|was found|located|situated|seen? just|immediately? behind|under|beneath|underneath|over|above|below|alongside", K::Passage, P::Nerve, P::Landmark, "The ulnar nerve is behind the medial epicondyle."),
    participle("found|located|situated|seen just|immediately? behind|under|beneath|underneath|between|over|above|below|alongside", K::Passage, P::Nerve, P::Landmark, "The ulnar nerve can be found behind the medial epicondyle."),
    verb("is|are|was found|located|situated|seen? just|immediately? in|deep|superficial front|to of?", K::Passage, P::Nerve, P::Landmark, "The median nerve is deep to the flexor retinaculum of hand."),
    verb("lies|lie|runs|run|passes|pass|descends|descend|courses|course|ascends|ascend|travels|travel|rests|rest|goes|go down|up? on|upon|over|along|across the? front|back|surface|anterior|posterior|superficial|deep|outer|lateral|medial aspect|surface|border? of", K::Passage, P::Nerve, P::Landmark, "The median nerve lies on the deep surface of the flexor digitorum superficialis."),
    verb("accompanies|accompany", K::Passage, P::Nerve, P::Landmark, "The saphenous nerve accompanies the great saphenous vein."),
    participle("accompanied by", K::Passage, P::Nerve, P::Landmark, "The saphenous nerve is accompanied by the great saphenous vein."),
    verb("runs|run|travels|travel|passes|pass|courses|course|descends|descend|ascends|ascend|goes|go|lies|lie|enters|enter down|up|along|there|together|close? with|alongside|beside|by", K::Passage, P::Nerve, P::Landmark, "The saphenous nerve runs with the great saphenous vein."),
    verb("runs|run|travels|travel|passes|pass|courses|course|descends|descend|ascends|ascend|goes|go|lies|lie|keeps|keep|is|are down|up? in? the? company of|with", K::Passage, P::Nerve, P::Landmark, "The saphenous nerve runs in company with the great saphenous vein."),
    verb("loops|loop|hooks|hook|recurs|recur|turns|turn|bends|bend|curls|curl|sweeps|sweep|wraps|wrap itself? up|back? round|around|under|beneath|below|behind", K::Passage, P::Nerve, P::Landmark, "The median nerve loops round the medial epicondyle."),
    verb("has|have|makes|make|finds|find|takes|take its|their exit|entry|entrance|way|course|passage|outlet out|in? at|in|through|by|via|under|behind|between|along", K::Passage, P::Nerve, P::Landmark, "The median nerve has its entry at the carpal tunnel."),
    participle("transmitted|housed|lodged|contained|enclosed|sheltered|admitted|conducted by|in|within|through", K::Passage, P::Nerve, P::Landmark, "The median nerve is transmitted by the carpal tunnel."),
    verb("transmits|transmit|houses|house|admits|admit|conducts|conduct|encloses|enclose|shelters|shelter|conveys|convey|harbours|harbour|holds|hold|accommodates|accommodate", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel transmits the median nerve."),
    verb("gives|give|affords|afford|allows|allow|offers|offer|provides|provide a? safe? passage|exit|way|entry out? of|to|for", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel gives passage to the median nerve."),
    verb("lets|let|allows|allow through|out|in", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel lets through the median nerve."),
    verb("is|are the? exit|way|passage|opening|route|canal|foramen|tunnel|path|hole|door out|through? of|for|to", K::Passage, P::Landmark, P::Nerve, "The carpal tunnel is the passage for the median nerve."),
    noun("exit|passage|route|path|portal|entry|entrance of|for", K::Passage, P::Landmark, P::Nerve, "The exit of the median nerve is the carpal tunnel."),
    participle("compressed|trapped|entrapped at|in|within", K::Passage, P::Nerve, P::Landmark, "The median nerve is compressed in the carpal tunnel."),

    // Attachment.
    verb("inserts|insert into|on|onto|to|in|at|by", K::Attachment, P::Muscle, P::Landmark, "Brachialis inserts on the tuberosity of ulna."),
    verb("attaches|attach into|on|onto|to|in|at|by", K::Attachment, P::Muscle, P::Landmark, "Brachialis attaches to the tuberosity of ulna."),
    verb("is|are attached above|below|distally|proximally? to|on", K::Attachment, P::Muscle, P::Landmark, "Brachialis is attached to the tuberosity of ulna."),
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
    verb("gives|give|affords|afford|provides|provide|offers|offer a|an|the? origin|insertion|attachment|anchorage|anchor|purchase to|for", K::Attachment, P::Landmark, P::Muscle, "The tuberosity of ulna gives insertion to brachialis."),
    verb("receives|receive the? insertion|tendon|attachment of", K::Attachment, P::Landmark, P::Muscle, "The tuberosity of ulna receives the insertion of brachialis."),
    verb("is|are the? point|place|site|area|common? of? the? origin|insertion|attachment of|for", K::Attachment, P::Landmark, P::Muscle, "The tuberosity of ulna is the site of insertion of brachialis."),
    verb("finds|find|takes|take|gains|gain|shares|share|makes|make|has|have its|their|a|an|one|the? distal|lower|common|final? insertion|attachment|end at|on|in|into|onto|to", K::Attachment, P::Muscle, P::Landmark, "Brachialis finds its insertion at the tuberosity of ulna."),
    verb("finds|find|takes|take|gains|gain|shares|share|has|have its|their|a|an|one|the? proximal|upper|common? origin at|on|in", K::Attachment, P::Muscle, P::Landmark, "Brachialis has its origin on the shaft of humerus."),
    verb("originates|originate|arises|arise|springs|spring on|above|at|over", K::Attachment, P::Muscle, P::Landmark, "Brachialis originates on the shaft of humerus."),
    verb("attaches|attach|inserts|insert distally|below|finally|chiefly|mainly|mostly to|on|onto|into|at", K::Attachment, P::Muscle, P::Landmark, "Brachialis attaches distally to the tuberosity of ulna."),
    verb("attaches|attach proximally|above to|on|onto|at", K::Attachment, P::Muscle, P::Landmark, "Brachialis attaches proximally to the shaft of humerus."),
    noun("muscle|muscles attached|inserted|fixed to|on|into|at", K::Attachment, P::Muscle, P::Landmark, "The muscle attached to the tuberosity of ulna is brachialis."),
    noun("muscle|muscles that|which attaches|attach|inserts|insert to|on|into|at", K::Attachment, P::Muscle, P::Landmark, "The muscle that inserts on the tuberosity of ulna is brachialis."),
    noun("origin of", K::Attachment, P::Landmark, P::Muscle, "The origin of brachialis is the shaft of humerus."),
    noun("insertion of", K::Attachment, P::Landmark, P::Muscle, "The insertion of brachialis is the tuberosity of ulna."),
    verb("upper|lower|proximal|distal|superior|inferior attachment is|are|lies|lie on|at|to|into|in?", K::Attachment, P::Muscle, P::Landmark, "Brachialis flexes the elbow. Its lower attachment is the tuberosity of ulna."),
    noun("proximal attachment of", K::Attachment, P::Landmark, P::Muscle, "The proximal attachment of brachialis is the shaft of humerus."),
    noun("distal attachment of", K::Attachment, P::Landmark, P::Muscle, "The distal attachment of brachialis is the tuberosity of ulna."),
    noun("attachment of", K::Attachment, P::Landmark, P::Muscle, "The attachment of brachialis is the tuberosity of ulna."),

    // Joint.
    verb("is|are the|a? joint|articulation|union? between", K::Joint, P::Joint, P::Landmark, "The elbow joint is the joint between the humerus and the ulna."),
    verb("crosses|cross|spans|span|bridges|bridge both?", K::Joint, P::Muscle, P::Joint, "Brachialis crosses the elbow joint."),
    verb("acts|act|works|work on|upon|at|over|across both?", K::Joint, P::Muscle, P::Joint, "Brachialis acts on the elbow joint."),
    verb("takes|take|has|have|plays|play a? part|share in", K::Joint, P::Landmark, P::Joint, "The humerus takes part in the elbow joint."),
    verb("participates|participate|shares|share|partakes in", K::Joint, P::Landmark, P::Joint, "The humerus participates in the elbow joint."),
    verb("enters|enter into the? formation of", K::Joint, P::Landmark, P::Joint, "The humerus enters into the formation of the elbow joint."),
    verb("forms|form part of", K::Joint, P::Landmark, P::Joint, "The humerus forms part of the elbow joint."),
    verb("is|are one? of? the? bones|bone of|in|at", K::Joint, P::Landmark, P::Joint, "The humerus is one of the bones of the elbow joint."),
    verb("is|are a|an|the|one? of? the? main|chief|strongest|capsular|extracapsular|intracapsular|intra-articular|accessory|important? ligament|ligaments of|in|at", K::Joint, P::Landmark, P::Joint, "The patellar ligament is a ligament of the knee joint."),
    verb("strengthens|strengthen|reinforces|reinforce|stabilises|stabilise|stabilizes|stabilize|supports|support|steadies|steady|braces|brace", K::Joint, P::Landmark, P::Joint, "The patellar ligament strengthens the knee joint."),
    participle("strengthened|reinforced|stabilised|stabilized|supported|steadied|braced|held in? front|behind|medially|laterally|together? by", K::Joint, P::Joint, P::Landmark, "The knee joint is strengthened by the patellar ligament."),
    verb("connects|connect|links|link", K::Joint, P::Joint, P::Landmark, "The elbow joint connects the humerus and the ulna."),
    verb("articulates|articulate directly? with", K::Joint, P::Landmark, P::Parent, "The humerus articulates with the ulna."),
    verb("is|are|lies|lie formed? between", K::Joint, P::Joint, P::Landmark, "The elbow joint is formed between the humerus and the ulna."),
    noun("ligaments|ligament|bones|bone of|at|in", K::Joint, P::Landmark, P::Joint, "The bones of the elbow joint are the humerus and the ulna."),
    verb("allows|allow|permits|permit", K::Joint, P::Joint, P::Movement, "The elbow joint allows flexion and extension."),

    // Membership.
    verb("belongs|belong to", K::Membership, P::Muscle, P::Group, "Supraspinatus belongs to the rotator cuff."),
    verb("is|are|lies|lie|sits|sit|counts|count|found|member|members|part a|an|the|one? part|one|member|members|muscle|muscles|located|found|among? in|of|within|among", K::Membership, P::Muscle, P::Group, "Supraspinatus is a member of the rotator cuff."),
    verb("is|are to? be? counted|reckoned|numbered|ranked|classed|classified|grouped|included|placed|listed|put also? as|among|with|in|to|under one|part? of?", K::Membership, P::Muscle, P::Group, "Supraspinatus is counted among the rotator cuff."),
    verb("belongs|belong|counted|numbered|reckoned", K::Membership, P::Muscle, P::Group, "To the rotator cuff belong supraspinatus and infraspinatus."),
    verb("join|unite|combine|fuse|come|unites|joins|combines together? to form|make|build|give|as|in", K::Roots, P::Segments, P::Structure, "C5 and C6 unite to form the axillary nerve."),
    verb("provides|provide|furnishes|furnish|equips|equip|endows|endow", K::Supply, P::Nerve, P::Muscle, "The axillary nerve provides deltoid with its motor supply."),
    verb("enters|enter|leaves|leave|reaches|reach|gains|gain|quits|quit|exits|exit ~ between|behind|under|beneath", K::Passage, P::Nerve, P::Landmark, "The median nerve enters the forearm between the heads of pronator teres."),
    verb("draws|draw|calls|call|relies|rely|depends|depend on|upon", K::Roots, P::Structure, P::Segments, "The axillary nerve draws on C5 and C6."),
    verb("gets|get|receives|receive|takes|take|has|have a? contributions|contribution|fibres|fibers|roots|root|input from|in", K::Roots, P::Structure, P::Segments, "The axillary nerve gets contributions from C5 and C6."),
    verb("results|result|is|are from? the? union|junction|confluence|fusion of", K::Roots, P::Structure, P::Segments, "The axillary nerve is the union of C5 and C6."),
    verb("makes|make|forms|form|composes|compose|constitutes|constitute|builds|build together? up?", K::Membership, P::Muscle, P::Group, "Supraspinatus and infraspinatus make up the rotator cuff."),
    verb("is|are a|an|the|one? first|second|third|fourth|fifth|important|typical? member|part|muscle|column|component|constituent|element of", K::Membership, P::Muscle, P::Group, "Supraspinatus is a fourth member of the rotator cuff."),
    verb("comprises|comprise|consists|consist|includes|include|contains|contain of?", K::Membership, P::Group, P::Muscle, "The rotator cuff comprises supraspinatus and infraspinatus."),
];
