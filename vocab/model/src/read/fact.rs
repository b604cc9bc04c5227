//! One fact: every key of the format, and the relation that it says.

use toml::Spanned;
use toml::de::DeValue;

use super::fields::Fields;
use super::{ANY_NERVE, ANY_PLACE, Reader, Scope};
use crate::entry::{COUNTED_WORDS, Fact, Kind, MOTIONS, Modality, Relation, Role};

/// The key under which a fact is written.
pub(super) const fn key_of(relation: &Relation) -> &'static str {
    match relation {
        Relation::SuppliedBy { .. } | Relation::FeltBy { .. } => "nerves",
        Relation::Roots { .. } => "roots",
        Relation::Origin { .. } | Relation::Insertion { .. } => "attaches",
        Relation::Acts { .. } => "acts",
        Relation::Member { .. } => "member",
        Relation::Carries { .. } => "carries",
        Relation::Modality { .. } => "modality",
        Relation::ArisesFrom { .. } => "arises",
        Relation::ContinuesAs { .. } => "continues",
        Relation::Passes { .. }
        | Relation::Gives { .. }
        | Relation::Supplies { .. }
        | Relation::Feels { .. }
        | Relation::Joins { .. }
        | Relation::Injured { .. } => "course",
        Relation::Sign { .. } => "signs",
        Relation::JointKind { .. } => "kind",
        Relation::Bone { .. } => "bones",
        Relation::Allows { .. } => "allows",
        Relation::Ligament { .. } => "ligaments",
        Relation::KeyMuscle { .. } => "key",
        Relation::KeyPoint { .. } => "point",
        Relation::Reflex { .. } => "reflex",
        Relation::MovedAt { .. } => "moved_at",
        Relation::Binds { .. } => "binds",
        Relation::Limits { .. } => "limits",
        Relation::Count { .. } => "counts",
    }
}

impl<'a> Reader<'a, '_> {
    /// Reads one line of facts under a key.
    pub(super) fn fact(
        &mut self,
        value: &Spanned<DeValue<'a>>,
        kind: Kind,
        key: &str,
        id: &str,
        scope: &Scope<'_>,
    ) -> Option<Fact> {
        let at = value.span().start;
        let line = self.line(at);
        let mut fields = Fields::new(self, value, id);
        let relation = relation(&mut fields, kind, key, scope);
        let sources = fields.citations(scope);
        let (note, variant) =
            (fields.text("note"), fields.flag("variant") | fields.flag("occasional") | fields.is_false("usual"));
        fields.finish();
        if sources.is_empty() {
            self.say(
                at,
                format!("a fact of `{id}` (`{key}`) has no source; write `src = \"memory\"` if it is from memory"),
            );
        }
        Some(Fact { relation: relation?, variant, note, sources, line })
    }
}

/// Reads the relation of a line. Each arm is one key of the format.
fn relation(fields: &mut Fields<'_, '_, '_>, kind: Kind, key: &str, scope: &Scope<'_>) -> Option<Relation> {
    match key {
        "roots" => {
            let main = fields.segments("main").unwrap_or_default();
            let lesser = fields.segments("lesser").unwrap_or_default();
            Some(Relation::Roots { main, lesser })
        }
        "nerves" if kind == Kind::Joint => Some(Relation::FeltBy { nerve: fields.id("nerve", ANY_NERVE, scope)? }),
        "nerves" => Some(Relation::SuppliedBy { nerve: fields.id("nerve", ANY_NERVE, scope)? }),
        "attaches" if fields.has("origin") => Some(Relation::Origin { from: fields.id("origin", ANY_PLACE, scope)? }),
        "attaches" => Some(Relation::Insertion { on: fields.id("insertion", ANY_PLACE, scope)? }),
        "acts" => {
            let movement = fields.id("movement", &[Kind::Movement], scope);
            let role = fields.word("role", Role::from_word, Role::ALL.iter().map(|role| role.word()));
            let target = if fields.has("joint") {
                fields.id("joint", &[Kind::Joint], scope)
            } else {
                fields.id("on", ANY_PLACE, scope)
            };
            Some(Relation::Acts { movement: movement?, target: target?, role: role? })
        }
        "member" => Some(Relation::Member { of: fields.id("of", &[Kind::Group], scope)? }),
        "modality" => {
            let is = fields.word("is", Modality::from_word, Modality::ALL.iter().map(|is| is.word()))?;
            Some(Relation::Modality { is })
        }
        "carries" => Some(Relation::Carries { fibres: fields.required("fibres")? }),
        "arises" => {
            let from = fields.id("from", &[Kind::Nerve, Kind::Plexus, Kind::Root, Kind::Landmark], scope);
            let at = fields.optional_id("at", scope);
            Some(Relation::ArisesFrom { from: from?, at })
        }
        "continues" => {
            let nerve = fields.id("as", &[Kind::Nerve, Kind::Plexus], scope);
            let at = fields.optional_id("at", scope);
            Some(Relation::ContinuesAs { nerve: nerve?, at })
        }
        "course" => course_step(fields, kind, scope),
        "signs" => {
            let sign = fields.required("sign");
            let at = fields.optional_id("at", scope);
            Some(Relation::Sign { sign: sign?, at })
        }
        "kind" => {
            let class = fields.required("class");
            let subtype = fields.text("subtype");
            Some(Relation::JointKind { class: class?, subtype })
        }
        "bones" => Some(Relation::Bone { bone: fields.id("bone", ANY_PLACE, scope)? }),
        "allows" => {
            let movement = fields.id("movement", &[Kind::Movement], scope);
            let degrees = fields.number("degrees");
            Some(Relation::Allows { movement: movement?, degrees })
        }
        "ligaments" => Some(Relation::Ligament { ligament: fields.id("ligament", &[Kind::Landmark], scope)? }),
        "key" => {
            let muscle = fields.id("muscle", &[Kind::Muscle], scope);
            let movement = fields.id("movement", &[Kind::Movement], scope);
            Some(Relation::KeyMuscle { muscle: muscle?, movement: movement? })
        }
        "point" => Some(Relation::KeyPoint { skin: fields.id("skin", &[Kind::Skin], scope)? }),
        "reflex" => Some(Relation::Reflex { reflex: fields.required("reflex")? }),
        "moved_at" => Some(Relation::MovedAt { joint: fields.id("joint", &[Kind::Joint], scope)? }),
        "binds" => Some(Relation::Binds { place: fields.id("place", &[Kind::Landmark], scope)? }),
        "limits" => {
            let words = || MOTIONS.iter().flat_map(|(one, other)| [*one, *other]);
            let known = |word: &str| words().any(|known| known == word).then(|| word.to_owned());
            let motion = fields.word("motion", known, words());
            let of = fields.optional_id("of", scope);
            Some(Relation::Limits { motion: motion?, of })
        }
        "counts" => {
            let known = |word: &str| COUNTED_WORDS.contains(&word).then(|| word.to_owned());
            let of = fields.word("of", known, COUNTED_WORDS.iter().copied());
            let number = fields.number("number");
            if number.is_none() {
                let at = fields.at();
                fields.reader.say(at, "a line of `counts` has a `number`".to_owned());
            }
            Some(Relation::Count { of: of?, number: number? })
        }
        _ => None,
    }
}

/// Reads one step of a course. A muscle's tendon or a vessel passes landmarks and does nothing else on its way.
fn course_step(fields: &mut Fields<'_, '_, '_>, kind: Kind, scope: &Scope<'_>) -> Option<Relation> {
    if fields.has("passes") {
        let landmark = fields.id("passes", ANY_PLACE, scope);
        let how = fields.text("how");
        Some(Relation::Passes { landmark: landmark?, how })
    } else if matches!(kind, Kind::Muscle | Kind::Landmark) {
        let at = fields.at();
        fields.reader.say(at, format!("a step of the course of a {} has `passes`", kind.word()));
        None
    } else if fields.has("gives") {
        let nerve = fields.id("gives", &[Kind::Nerve, Kind::Plexus], scope);
        let at = fields.optional_id("at", scope);
        Some(Relation::Gives { nerve: nerve?, at })
    } else if fields.has("supplies") {
        let muscle = fields.id("supplies", &[Kind::Muscle], scope);
        let at = fields.optional_id("at", scope);
        Some(Relation::Supplies { muscle: muscle?, at })
    } else if fields.has("feels") {
        let target = fields.id("feels", &[Kind::Skin, Kind::Joint, Kind::Landmark], scope);
        fields.optional_id("at", scope);
        Some(Relation::Feels { target: target? })
    } else if fields.has("joins") {
        let with = fields.id("joins", ANY_NERVE, scope);
        fields.optional_id("at", scope);
        Some(Relation::Joins { with: with? })
    } else if fields.has("injured") {
        let at = fields.id("injured", ANY_PLACE, scope);
        let cause = fields.text("cause");
        Some(Relation::Injured { at: at?, cause })
    } else {
        let at = fields.at();
        fields.reader.say(
            at,
            "a step of a course has one of `passes`, `gives`, `supplies`, `feels`, `joins`, `injured`".to_owned(),
        );
        None
    }
}
