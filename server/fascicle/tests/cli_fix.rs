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
