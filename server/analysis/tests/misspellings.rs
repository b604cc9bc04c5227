//! Misspelled names: what is found, what is meant, and what is left alone.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::sync::LazyLock;

use fascicle_analysis::{Finding, FindingKind, Form, Settings};
use fascicle_analysis::{Knowledge, reading};

static KNOWLEDGE: LazyLock<Knowledge> = LazyLock::new(|| Knowledge::new(fascicle_vocab::built_in()));

fn names(text: &str) -> Vec<Finding> {
    let reading = reading::read(text, Form::Markdown, &KNOWLEDGE, &Settings::default());
    reading.findings.into_iter().filter(|finding| finding.kind == FindingKind::Name).collect()
}

/// The text with the first fix of every finding applied.
fn put_right(text: &str) -> String {
    let mut edits: Vec<_> =
        names(text).iter().filter_map(|finding| finding.fixes.first()).flat_map(|fix| fix.edits.clone()).collect();
    edits.sort_by_key(|edit| edit.span);
    let mut out = text.to_owned();
    for edit in edits.iter().rev() {
        out.replace_range(edit.span.start..edit.span.end, &edit.text);
    }
    out
}

fn all_put_right(pairs: &[(&str, &str)]) {
    let wrong: Vec<String> = pairs
        .iter()
        .filter_map(|(written, meant)| {
            let got = put_right(written);
            (got != *meant).then(|| {
                let told: Vec<String> = names(written)
                    .iter()
                    .map(|finding| format!("{} {:?}", finding.message, finding.candidates))
                    .collect();
                format!("{written:?}: {got:?}, not {meant:?}; {}", told.join(" "))
            })
        })
        .collect();
    assert!(wrong.is_empty(), "{} of {} wrong:\n{}", wrong.len(), pairs.len(), wrong.join("\n"));
}

#[test]
fn puts_names_right() {
    all_put_right(&[
        ("The flexor pollicus brevis lies there.", "The flexor pollicis brevis lies there."),
        ("Test the sternocleidomastiod.", "Test the sternocleidomastoid."),
        ("The levator scapuli is deep.", "The levator scapulae is deep."),
        ("The musculocutanous nerve is mixed.", "The musculocutaneous nerve is mixed."),
        ("the brachial plexis", "the brachial plexus"),
        ("The radail nerve runs down.", "The radial nerve runs down."),
        ("peroneous longus", "peroneus longus"),
        ("The *Flexor* **pollicus** brevis.", "The *Flexor* **pollicis** brevis."),
        ("the flexor pollicus longus and brevis", "the flexor pollicis longus and brevis"),
        ("extensor digiti minimus", "extensor digiti minimi"),
        ("rectus femori", "rectus femoris"),
        ("levator scapula", "levator scapulae"),
        ("FLEXOR POLLICUS BREVIS", "FLEXOR POLLICIS BREVIS"),
        ("dorsel scapuler nerve", "dorsal scapular nerve"),
        ("flexorpollicis longus", "flexor pollicis longus"),
        ("sub scapularis", "subscapularis"),
        ("gluteal minimus", "gluteus minimus"),
        ("the digitorum extensor longus", "the extensor digitorum longus"),
        ("Several foramens of the skull.", "Several foramina of the skull."),
        ("The sternocleido-mastiod turns the head.", "The sternocleido-mastoid turns the head."),
        ("the deltiods and the radail nerves", "the deltoids and the radial nerves"),
        ("the flexor pol*licus* brevis", "the flexor pol*licis* brevis"),
    ]);
}

/// Each word is one of the vocabulary, or the plural or singular of one by rule, and stands where no name has it.
#[test]
fn puts_right_words_out_of_place() {
    all_put_right(&[
        ("The plexus cervicals on the neck.", "The plexus cervicalis on the neck."),
        ("The celiac plexu and the liver.", "The celiac plexus and the liver."),
        ("The caput ulna at the wrist.", "The caput ulnae at the wrist."),
        ("The fron talis and the forehead.", "The frontalis and the forehead."),
        ("The plexus pharyngeum of the pharynx.", "The plexus pharyngeus of the pharynx."),
        ("The dorsal branch of ulna nerve in the hand.", "The dorsal branch of ulnar nerve in the hand."),
        ("The deep temporalis nerve to the temporalis.", "The deep temporal nerve to the temporalis."),
        ("The ramus meningeus nervus hypoglossi on the skull.", "The ramus meningeus nervi hypoglossi on the skull."),
        ("The articulatio radiocarpales of the hand.", "The articulatio radiocarpalis of the hand."),
    ]);
    for text in [
        "The bony plates of the skull, the hard plate and the maxillary process.",
        "The temporalis fascia, the temporalis nerve and the stylohyoideus nerve.",
        "The spinal ganglion, the spiral canal and the genital tubercle.",
    ] {
        let told: Vec<String> = names(text).iter().map(|finding| finding.message.clone()).collect();
        assert!(told.is_empty(), "{text:?}: {told:?}");
    }
}

/// A word of the name is left out, and what is left is no phrase by itself.
#[test]
fn puts_in_what_is_left_out() {
    all_put_right(&[
        (
            "# The hand\n\nThe long extensor of thumb and the radial nerve. We saw the long of thumb.",
            "# The hand\n\nThe long extensor of thumb and the radial nerve. We saw the long extensor of thumb.",
        ),
        (
            "The pectinea ossis femoris was shown on the femur.",
            "The linea pectinea ossis femoris was shown on the femur.",
        ),
    ]);
    for text in ["The posterior wall of the axilla.", "Branches of the radial.", "The superior of the two nerves."] {
        assert!(names(text).is_empty(), "{text}");
    }
}

/// The same slip is read by what the document is about.
#[test]
fn the_context_decides() {
    let first = |text: &str| names(text).first().and_then(|one| one.candidates.first()).map(|one| one.id.clone());
    let hand = first("# The hand\n\nThenar muscles and the median nerve.\n\nNext comes the abductor digiti minimy.\n");
    let foot =
        first("# The foot\n\nThe medial plantar nerve and the calcaneus.\n\nNext comes the abductor digiti minimy.\n");
    assert_eq!(hand.as_deref(), Some("abductor-digiti-minimi-of-hand"));
    assert_eq!(foot.as_deref(), Some("abductor-digiti-minimi-of-foot"));
}

/// Slips that were seen in notes, each in a sentence that its name could stand in.
#[test]
fn puts_right_what_was_seen() {
    all_put_right(&[
        ("the accesory nerve", "the accessory nerve"),
        ("the anteriro interosseous nerve", "the anterior interosseous nerve"),
        ("the atnerior interosseous nerve", "the anterior interosseous nerve"),
        ("the axilliary nerve", "the axillary nerve"),
        ("the axullary nerve", "the axillary nerve"),
        ("the bulbospngiosus", "the bulbospongiosus"),
        ("the cervial plexus", "the cervical plexus"),
        ("the circumfex nerve", "the circumflex nerve"),
        ("the medial cutaneos nerve of the forearm", "the medial cutaneous nerve of the forearm"),
        ("the phrenic nerve and the diaphrgm", "the phrenic nerve and the diaphragm"),
        ("the externsor digitorum", "the extensor digitorum"),
        ("the fermoral nerve", "the femoral nerve"),
        ("the gracillis", "the gracilis"),
        ("the illiacus", "the iliacus"),
        ("an infeiror gluteal nerve", "an inferior gluteal nerve"),
        ("the inferiro gluteal nerve", "the inferior gluteal nerve"),
        ("the innrevation of deltoid", "the innervation of deltoid"),
        ("the innrvation of deltoid", "the innervation of deltoid"),
        ("the intrcostal nerves", "the intercostal nerves"),
        ("external obique", "external oblique"),
        ("internal obilque", "internal oblique"),
        ("the oburator nerve", "the obturator nerve"),
        ("the phernic nerve", "the phrenic nerve"),
        ("the phrnic nerve", "the phrenic nerve"),
        ("the poeterior interosseous nerve", "the posterior interosseous nerve"),
        ("flexor digitorum profundis", "flexor digitorum profundus"),
        ("the pudenal nerve", "the pudendal nerve"),
        ("the puidendal nerve", "the pudendal nerve"),
        ("flexor policis longus", "flexor pollicis longus"),
        ("the sicatic nerve", "the sciatic nerve"),
        ("the sterocleidomastoid", "the sternocleidomastoid"),
        ("the superfical peroneal nerve", "the superficial peroneal nerve"),
        ("flexor digitorum superficilis", "flexor digitorum superficialis"),
        ("the supraspinatous", "the supraspinatus"),
        ("the suprior gluteal nerve", "the superior gluteal nerve"),
        ("the sytlohyoid", "the stylohyoid"),
        ("the tibual nerve", "the tibial nerve"),
        ("trasverse cervical nerve", "transverse cervical nerve"),
        ("thansversus abdominis", "transversus abdominis"),
    ]);
}

#[test]
fn leaves_right_words_alone() {
    for text in [
        "Both brachia were dissected; the splenii and the minimae were traced, the digitals and the profundal vessels too.",
        "The inguinale lies there; superiors and phrenico-abdominal branches were seen.",
        "The sterno-cleido-mastoid, the brachio-radialis and the flexor-pollicis-longus.",
        "They linger at supper, with lumber and humoral immunity; a vesicle is small.",
        "Flexor pollicis brevis, extensor digiti minimi, the levatores costarum and the musculi interossei.",
        "The radial and ulnar nerves; extensor pollicis longus and brevis; gluteus medius and minimus.",
        "`flexor pollicus brevis` and [flexor pollicus](https://example.org/radail) and https://example.org/radail-nerve",
        "---\ntitle: flexor pollicus brevis\n---\n\nText.",
        "~~flexor pollicus brevis~~ and [@radail2020] and @radail and radail.png",
        "```\nradail nerve\n```\n\n<div class=\"radail nerve\"></div>\n\n$radail nerve$",
        "The medial nerve of that region.",
        "Der Nervus medianus versorgt den Muskel und zieht durch den Karpaltunnel zur Hand.",
    ] {
        let told: Vec<String> = names(text).iter().map(|finding| finding.message.clone()).collect();
        assert!(told.is_empty(), "{text:?}: {told:?}");
    }
}
