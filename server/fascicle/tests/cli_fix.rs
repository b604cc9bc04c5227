//! `fascicle check --fix`: safe fixes are applied, and nothing can be lost.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cli;

use cli::{Desk, NOTE};

const MENDED: &str = "# The arm\n\n\
    The axillary nerve supplies the biceps brachii. The flexor pollicis brevis is a thenar muscle.\n\n\
    The deltoid is supplied by the axillary nerve (C5, C6).\n\n\
    The sternocleidomastoid turns the head; the radial nerve and the ulnar nerve are long.\n";

#[test]
fn only_what_needs_no_decision_is_changed() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    let ran = desk.run(&["check", "arm.md", "--fix"]);
    assert_eq!(desk.read("arm.md"), MENDED);
    assert_eq!(ran.status, 1, "the false statement is left: {}", ran.out);
    assert!(ran.out.ends_with("2 fixes applied in 1 file. 1 finding in 1 file: 1 error.\n"), "{}", ran.out);
    let again = desk.run(&["check", "arm.md", "--fix"]);
    assert!(again.out.ends_with("\n1 finding in 1 file: 1 error.\n"), "{}", again.out);
    assert_eq!(desk.read("arm.md"), MENDED);
    let names: Vec<_> = std::fs::read_dir(desk.path("")).unwrap().collect();
    assert_eq!(names.len(), 1, "no temporary file is left");
}

#[test]
fn a_fix_leaves_every_other_byte() {
    let text = "\u{FEFF}---\r\ntags: flexor pollicus brevis\r\n---\r\n`flexor pollicus brevis`\r\n\r\nFlexor **pollicus** brevis.";
    let desk = Desk::with(&[("a.md", text)]);
    desk.run(&["check", "a.md", "--fix"]);
    assert_eq!(desk.read("a.md"), text.replace("**pollicus**", "**pollicis**"));
}

#[test]
fn captions_keep_their_times_and_cues() {
    // A name that runs over two cues, and one under tags; CRLF, an identifier, settings, a note with the same slip.
    let web = "WEBVTT - week 3\r\n\r\nNOTE the flexor pollicus brevis\r\n\r\nintro\r\n00:01.000 --> 00:02.000 align:start line:0\r\n<v Ines Marlow>Here the flexor\r\n\r\n00:02.000 --> 00:04.000\r\npollicus <i>brevis</i> lies by the <c.big>sternocleido</c>mastiod\r\n";
    let mended = web.replace("pollicus <i>", "pollicis <i>").replace("mastiod", "mastoid");
    let srt = "1\n00:00:01,000 --> 00:00:02,000\nHere the flexor pollicus\n\n2\n00:00:02,000 --> 00:00:03,000\nbrevis lies.\n";
    let plain = "The peroneous longus runs down.\n";
    let desk = Desk::with(&[("talk.vtt", web), ("talk.srt", srt), ("talk.txt", plain)]);
    desk.run(&["check", ".", "--fix", "--only", "names"]);
    assert_eq!(desk.read("talk.vtt"), mended);
    assert_eq!(desk.read("talk.srt"), srt.replace("pollicus", "pollicis"));
    assert_eq!(desk.read("talk.txt"), plain.replace("peroneous", "peroneus"));
}

#[test]
fn standard_input_comes_out_mended() {
    let desk = Desk::new();
    let ran = desk.run_with(&["check", "-", "--fix"], NOTE.as_bytes());
    assert_eq!((ran.status, &*ran.out), (1, MENDED));
    assert!(ran.err.contains("2 fixes applied"), "{}", ran.err);
    let ran = desk.run_with(&["check", "-", "--fix", "--format", "json"], NOTE.as_bytes());
    assert_eq!((ran.status, &*ran.out), (2, ""));
    let ran = desk.run_with(&["check", "-", "--fix"], b"\xFF");
    assert_eq!((ran.status, &*ran.out), (2, ""));
}

#[cfg(unix)]
#[test]
fn permissions_and_links_stay() {
    use std::os::unix::fs::PermissionsExt;

    let desk = Desk::with(&[("real/arm.md", NOTE)]);
    let real = desk.path("real/arm.md");
    std::fs::set_permissions(&real, std::fs::Permissions::from_mode(0o640)).unwrap();
    std::os::unix::fs::symlink("real/arm.md", desk.path("link.md")).unwrap();
    desk.run(&["check", "link.md", "--fix"]);
    assert!(desk.path("link.md").is_symlink());
    assert_eq!(desk.read("real/arm.md"), MENDED);
    assert_eq!(std::fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o640);
}

#[test]
fn a_read_only_file_is_left_and_told() {
    let desk = Desk::with(&[("arm.md", NOTE), ("other.md", NOTE)]);
    let mut permissions = std::fs::metadata(desk.path("arm.md")).unwrap().permissions();
    permissions.set_readonly(true);
    std::fs::set_permissions(desk.path("arm.md"), permissions).unwrap();
    let ran = desk.run(&["check", ".", "--fix"]);
    assert_eq!(ran.status, 2);
    assert_eq!(ran.err, "fascicle: arm.md: not changed: it is read-only\n");
    assert_eq!(desk.read("arm.md"), NOTE);
    assert_eq!(desk.read("other.md"), MENDED);
}
