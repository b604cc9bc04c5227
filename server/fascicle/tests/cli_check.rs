//! `fascicle check` on the command line: what it reads, how it tells, and how it ends.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cli;

use std::io::Read;
use std::process::Stdio;

use cli::{CLEAN, Desk, NOTE, finish, snapshot};
use serde_json::Value;

fn codes(report: &Value) -> Vec<(String, Vec<String>)> {
    let files = report["files"].as_array().unwrap();
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    files
        .iter()
        .map(|file| {
            let findings = file["findings"].as_array().unwrap();
            (text(&file["path"]), findings.iter().map(|finding| text(&finding["code"])).collect())
        })
        .collect()
}

#[test]
fn people_see_the_line_the_reason_and_the_remedy() {
    let ran = Desk::with(&[("arm.md", NOTE)]).run(&["check", "arm.md"]);
    assert_eq!((ran.status, &*ran.err), (1, ""));
    snapshot("check.txt", &ran.out);
}

#[test]
fn a_clean_note_ends_with_status_0() {
    let ran = Desk::with(&[("a.md", CLEAN)]).run(&["check", "."]);
    assert_eq!((ran.status, &*ran.out, &*ran.err), (0, "Nothing found in 1 file.\n", ""));
}

#[test]
fn folders_are_read_in_order_and_ignore_files_are_heeded() {
    let desk = Desk::with(&[
        ("b/two.md", CLEAN),
        ("a/one.md", NOTE),
        ("a/captions.vtt", "WEBVTT\n\n00:00.000 --> 00:01.000\nThe flexor pollicus brevis.\n"),
        ("a/picture.svg", "<svg/>"),
        ("drafts/old.md", NOTE),
        (".hidden/x.md", NOTE),
        (".gitignore", "drafts/\n"),
    ]);
    let report = desk.run(&["check", ".", "--format", "json"]).json();
    let paths: Vec<String> = codes(&report).into_iter().map(|(path, _)| path).collect();
    assert_eq!(paths, ["a/captions.vtt", "a/one.md", "b/two.md"]);
    // A file that is named itself is read, whatever ignore files say; once, however often it is named.
    let report = desk.run(&["check", "drafts/old.md", "b", "drafts/old.md", "--format", "json"]).json();
    let paths: Vec<String> = codes(&report).into_iter().map(|(path, _)| path).collect();
    assert_eq!(paths, ["drafts/old.md", "b/two.md"]);
}

#[test]
fn many_files_come_in_a_stable_order() {
    let desk = Desk::new();
    for number in 0..24 {
        let long = if number % 7 == 0 { 8 } else { 1 };
        desk.write(&format!("{number:03}.md"), NOTE.repeat(long).as_bytes());
    }
    let first = desk.run(&["check", "."]);
    let second = desk.run(&["check", "."]);
    assert_eq!(first.out, second.out);
    let report = desk.run(&["check", ".", "--format", "json"]).json();
    let paths: Vec<String> = codes(&report).into_iter().map(|(path, _)| path).collect();
    assert_eq!(paths, (0..24).map(|number| format!("{number:03}.md")).collect::<Vec<_>>());
}

#[test]
fn only_some_kinds_in_singular_and_plural() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    for (only, expected) in [
        ("names", &["misspelled-name", "misspelled-name"][..]),
        ("name", &["misspelled-name", "misspelled-name"]),
        ("claims", &["supply-differs"]),
        ("claim", &["supply-differs"]),
        ("course,items,item,blocks,block,setup", &[]),
        ("names,claims", &["supply-differs", "misspelled-name", "misspelled-name"]),
    ] {
        let ran = desk.run(&["check", "arm.md", "--format", "json", "--only", only]);
        assert_eq!(codes(&ran.json())[0].1, expected, "{only}");
        assert_eq!(ran.status, i32::from(!expected.is_empty()), "{only}");
    }
    assert_eq!(desk.run(&["check", "arm.md", "--only", "nonsense"]).status, 2);
}

#[test]
fn ranges_are_bytes_and_utf_16_units() {
    // An astral character has two UTF-16 units and four bytes; a byte order mark has one and three.
    let text = "\u{FEFF}Intro.\r\n\r\n🦴🦴 The flexor pollicus brevis.\r\n";
    let desk = Desk::with(&[("a.md", text)]);
    let report = desk.run(&["check", "a.md", "--format", "json"]).json();
    let finding = &report["files"][0]["findings"][0];
    let at = text.find("pollicus").unwrap();
    assert_eq!(finding["bytes"], serde_json::json!([at, at + 8]));
    let start = serde_json::json!({ "line": 2, "character": 16 });
    assert_eq!(finding["range"]["start"], start, "{finding}");
    assert_eq!(finding["range"]["end"], serde_json::json!({ "line": 2, "character": 24 }));
    assert_eq!(finding["text"], "pollicus");
    assert_eq!(finding["fixes"][0]["edits"][0]["text"], "pollicis");
    assert!(finding["candidates"][0]["score"].as_f64().unwrap() > 0.0, "{finding}");
}

#[test]
fn colours_only_where_they_are_wanted() {
    let desk = Desk::with(&[("arm.md", NOTE)]);
    let escape = '\u{1b}';
    assert!(!desk.run(&["check", "arm.md"]).out.contains(escape));
    assert!(!desk.run(&["check", "arm.md", "--color", "never"]).out.contains(escape));
    assert!(desk.run(&["check", "arm.md", "--color", "always"]).out.contains(escape));
    let mut command = desk.command(&["check", "arm.md"]);
    command.env("NO_COLOR", "1");
    assert!(!finish(command, b"").out.contains(escape));
}

#[test]
fn a_document_cannot_steer_the_terminal() {
    let desk = Desk::with(&[("a.md", "\u{1b}[2J\u{202E}The flexor pollicus brevis.\u{7}\n")]);
    let ran = desk.run(&["check", "a.md"]);
    assert_eq!(ran.status, 1, "{}", ran.out);
    assert!(!ran.out.contains(['\u{1b}', '\u{202E}', '\u{7}']), "{}", ran.out);
}

#[test]
fn standard_input_is_a_document() {
    let desk = Desk::new();
    let ran = desk.run_with(&["check", "-", "--format", "json"], NOTE.as_bytes());
    assert_eq!((ran.status, codes(&ran.json())[0].0.as_str()), (1, "-"));
    let captions = b"WEBVTT\n\n00:00.000 --> 00:01.000\nThe flexor\npollicus brevis.\n";
    assert_eq!(desk.run_with(&["check", "-", "--form", "captions"], captions).status, 1);
    let empty = desk.run_with(&["check", "-"], b"");
    assert_eq!((empty.status, &*empty.err), (0, ""));
}

#[test]
fn what_cannot_be_read_is_told_and_the_rest_is_checked() {
    let desk = Desk::with(&[("good.md", NOTE)]);
    desk.write("latin.md", b"Fine.\nM\xFCnster\n");
    desk.write("wide.md", b"\xFF\xFEa\0b\0");
    let ran = desk.run(&["check", "gone.md", ".", "--format", "json"]);
    assert_eq!(ran.status, 2);
    assert_eq!(codes(&ran.json()).len(), 1, "the good file is there");
    assert_eq!(codes(&ran.json())[0].1.len(), 3);
    let lines: Vec<&str> = ran.err.lines().collect();
    assert_eq!(lines.len(), 3, "{}", ran.err);
    assert_eq!(lines[0], "fascicle: gone.md: no such file or folder");
    assert!(lines[1].starts_with("fascicle: latin.md: not UTF-8 at byte 7 (line 2, column 2, 0xFC)"), "{}", lines[1]);
    assert!(lines[2].contains("wide.md") && lines[2].contains("UTF-16"), "{}", lines[2]);
    let alone = desk.run(&["check", "latin.md"]);
    assert_eq!((alone.status, &*alone.out), (2, "No document was read.\n"));
}

#[test]
fn bad_bytes_on_standard_input_are_told() {
    let ran = Desk::new().run_with(&["check", "-"], b"ok \xC3");
    assert_eq!(ran.status, 2);
    assert!(ran.err.starts_with("fascicle: -: not UTF-8 at byte 3 (line 1, column 4, 0xC3)"), "{}", ran.err);
}

#[test]
fn a_file_that_is_no_note_by_its_size_is_refused() {
    let desk = Desk::with(&[("small.md", CLEAN)]);
    desk.write("big.md", "The deltoid abducts the arm.\n\n".repeat(1_700_000).as_bytes());
    let ran = desk.run(&["check", "."]);
    assert_eq!(ran.status, 2);
    assert!(ran.err.starts_with("fascicle: big.md: larger than 32 MiB"), "{}", ran.err);
    assert_eq!(ran.out, "Nothing found in 1 file. 1 file could not be read.\n");
    let input = "x".repeat(33 * 1024 * 1024);
    assert_eq!(desk.run_with(&["check", "-"], input.as_bytes()).status, 2);
}

/// To root nothing is forbidden, so the program is run as nobody in particular.
#[cfg(unix)]
#[test]
fn a_folder_without_permission_is_told_and_the_rest_is_checked() {
    use std::os::unix::fs::PermissionsExt;
    use std::os::unix::process::CommandExt;

    let desk = Desk::with(&[("open/a.md", NOTE), ("locked/b.md", NOTE), ("shut.md", NOTE)]);
    let mode = |name: &str, mode: u32| {
        std::fs::set_permissions(desk.path(name), std::fs::Permissions::from_mode(mode)).unwrap();
    };
    mode("", 0o755);
    mode("locked", 0o000);
    mode("shut.md", 0o000);
    let program = desk.path("program");
    std::fs::copy(env!("CARGO_BIN_EXE_fascicle"), &program).unwrap();
    mode("program", 0o755);
    let root = std::fs::metadata("/proc/self").is_ok_and(|data| std::os::unix::fs::MetadataExt::uid(&data) == 0);
    let mut command = std::process::Command::new(&program);
    command.args(["check", "open", "locked", "shut.md"]).current_dir(desk.path(""));
    if root {
        command.uid(65534).gid(65534);
    }
    let ran = finish(command, b"");
    mode("locked", 0o755);
    assert_eq!(ran.status, 2, "{ran:?}");
    assert!(ran.err.contains("fascicle: locked: no permission to read it\n"), "{}", ran.err);
    assert!(ran.err.contains("fascicle: shut.md: no permission to read it\n"), "{}", ran.err);
    assert!(ran.out.contains("open/a.md:3:5"), "{}", ran.out);
}

#[test]
fn what_is_no_option_is_told() {
    for arguments in [&["check"][..], &["check", "--nope", "a.md"], &["nope"], &["check", "a.md", "--format", "nope"]] {
        let ran = Desk::new().run(arguments);
        assert_eq!((ran.status, &*ran.out), (2, ""), "{arguments:?}");
        assert!(ran.err.starts_with("error: "), "{}", ran.err);
    }
}

#[test]
fn a_reader_that_has_seen_enough_is_no_error() {
    let desk = Desk::with(&[("arm.md", &NOTE.repeat(100))]);
    let mut command = desk.command(&["check", "arm.md"]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut few = [0; 100];
    let mut out = child.stdout.take().unwrap();
    out.read_exact(&mut few).unwrap();
    drop(out);
    let mut complaints = String::new();
    child.stderr.take().unwrap().read_to_string(&mut complaints).unwrap();
    assert_eq!((child.wait().unwrap().code(), &*complaints), (Some(0), ""));
}

#[test]
fn a_course_decides_for_its_own_documents() {
    let desk = Desk::with(&[
        ("course/fascicle.toml", "off = [\"supply-differs\"]\nexclude = [\"old/\"]\nofff = []\n"),
        ("course/notes/arm.md", NOTE),
        ("course/old/arm.md", NOTE),
        ("other/arm.md", NOTE),
    ]);
    let ran = desk.run(&["check", ".", "--format", "json"]);
    let two = ["misspelled-name", "misspelled-name"].map(str::to_owned).to_vec();
    let three = ["supply-differs", "misspelled-name", "misspelled-name"].map(str::to_owned).to_vec();
    let expected = [
        ("course/fascicle.toml".to_owned(), vec!["setting".to_owned()]),
        ("course/notes/arm.md".to_owned(), two),
        ("other/arm.md".to_owned(), three),
    ];
    assert_eq!(codes(&ran.json()), expected);
    let setting = &ran.json()["files"][0]["findings"][0];
    assert_eq!(setting["kind"], "setup");
    assert_eq!(setting["text"], "offf = []");
    assert!(setting["message"].as_str().unwrap().contains("did you mean `off`?"), "{setting}");
}

#[test]
fn two_places_of_a_course_are_compared() {
    let notes = "The nerve roots of the teres minor are C5 and C6.\n";
    let sheet = "**Teres minor**: C5\n";
    let desk = Desk::with(&[("a/notes.md", notes), ("a/sheet.md", sheet), ("b/sheet.md", sheet)]);
    let report = desk.run(&["check", "a", "b", "--format", "json", "--only", "course"]).json();
    let told = ["told-differently".to_owned()].to_vec();
    let expected = [("a/notes.md", told.clone()), ("a/sheet.md", told), ("b/sheet.md", Vec::new())];
    assert_eq!(codes(&report), expected.map(|(path, codes)| (path.to_owned(), codes)), "each folder is a course");
    let finding = &report["files"][0]["findings"][0];
    assert_eq!((&finding["kind"], &finding["elsewhere"][0]["path"]), (&"course".into(), &"a/sheet.md".into()));
    let told = desk.run(&["check", "a"]).out;
    assert!(told.contains("see:  a/sheet.md:1: teres minor: C5\n"), "{told}");
}

#[test]
fn a_course_is_held_to_the_reference_that_it_adopts() {
    let note = "The median nerve has the roots C5 to T1.\n\nThe median nerve has the roots C6 to T1.\n";
    let told = |settings: &str| {
        let desk = Desk::with(&[("fascicle.toml", settings), ("note.md", note)]);
        codes(&desk.run(&["check", ".", "--format", "json"]).json())
    };
    let file = |name: &str, codes: &[&str]| (name.to_owned(), codes.iter().map(|&code| code.to_owned()).collect());
    assert_eq!(told(""), [file("note.md", &[])], "both readings have a source");
    assert_eq!(told("reference = \"gray1918\"\n"), [file("note.md", &["roots-by-another-source"])]);
    let unknown = [file("fascicle.toml", &["setting"]), file("note.md", &[])];
    assert_eq!(told("reference = \"gray1719\"\n"), unknown, "a source that the vocabulary does not have");
}

#[test]
fn names_in_settings_that_nothing_has_are_told_at_their_lines_with_the_nearest() {
    let settings = concat!(
        "prefer = [\n  \"Common Fibular Nreve\",\n  \"common peroneal nerve\",\n  \"common fibular nerve\",\n]\n",
        "overlay = [\"own.toml\", \"gone.toml\"]\n",
        "reference = \"gray1981\"\n",
    );
    let own = "[[muscle]]\nname = \"aldermoor muscle\"\nregion = \"thorax\"\n";
    let desk = Desk::with(&[("fascicle.toml", settings), ("own.toml", own), ("note.md", CLEAN)]);
    let told = desk.run(&["check", ".", "--format", "json"]).json();
    let findings = told["files"][0]["findings"].as_array().unwrap();
    let told: Vec<(u64, &str)> = findings
        .iter()
        .map(|finding| (finding["range"]["start"]["line"].as_u64().unwrap(), finding["message"].as_str().unwrap()))
        .collect();
    let expected = [
        (1, "`prefer`: nothing is called `Common Fibular Nreve`; did you mean `common fibular nerve`?"),
        (3, "`prefer`: `common fibular nerve` is called `common peroneal nerve` already, by the name before it"),
        (5, "the overlay `gone.toml` cannot be read"),
        (6, "no segments rest on the reference `gray1981`; did you mean `gray1918`?"),
    ];
    for (told, expected) in told.iter().zip(expected) {
        assert!(told.0 == expected.0 && told.1.starts_with(expected.1), "{told:?} and not {expected:?}");
    }
    assert_eq!(told.len(), expected.len(), "{told:?}");
    // A name that the course itself gives is one.
    let settings = "prefer = [\"aldermoor muscle\", \"fibularis longus\"]\noverlay = [\"own.toml\"]\n";
    let desk = Desk::with(&[("fascicle.toml", settings), ("own.toml", own), ("note.md", CLEAN)]);
    let told = desk.run(&["check", ".", "--format", "json"]).json().to_string();
    assert!(told.contains("own.toml") && !told.contains("fascicle.toml"), "{told}");
}

#[test]
fn names_are_compared_over_the_files_of_a_course() {
    let fibular = "The common fibular nerve winds round. The common fibular nerve divides. Muscle fibres.\n";
    let peroneal = "The common peroneal nerve is at risk. Muscle fibers.\n";
    let desk = Desk::with(&[("a/one.md", fibular), ("a/two.md", peroneal), ("b/two.md", peroneal)]);
    let told = |desk: &Desk| codes(&desk.run(&["check", "a", "b", "--format", "json", "--only", "names"]).json());
    let all = [("a/one.md", vec![]), ("a/two.md", vec!["two-names", "mixed-spelling"]), ("b/two.md", vec![])];
    let owned = |(path, codes): (&str, Vec<&str>)| (path.to_owned(), codes.into_iter().map(str::to_owned).collect());
    let none = [("a/one.md", vec![]), ("a/two.md", vec![]), ("b/two.md", vec![])];
    assert_eq!(told(&desk), none.map(owned), "only a settings file makes a course");
    desk.write("a/fascicle.toml", b"");
    assert_eq!(told(&desk), all.map(owned));
    desk.write("a/fascicle.toml", b"off = [\"two-names\"]\nspelling = \"american\"\n");
    let chosen = [("a/one.md", vec!["mixed-spelling"]), ("a/two.md", vec![]), ("b/two.md", vec![])];
    assert_eq!(told(&desk), chosen.map(owned));
    desk.write("a/fascicle.toml", b"prefer = [\"common peroneal nerve\"]\noff = [\"mixed-spelling\"]\n");
    let chosen = [("a/one.md", vec!["two-names"]), ("a/two.md", vec![]), ("b/two.md", vec![])];
    assert_eq!(told(&desk), chosen.map(owned));
}

#[test]
fn a_misspelled_name_comes_with_ranked_candidates() {
    let text = "# The hand\n\nThe flexor pollicus brevis is a thenar muscle. The pronator kwadratus is deep.\n";
    let desk = Desk::with(&[("arm.md", text)]);
    let report = desk.run(&["check", "arm.md", "--only", "names", "--format", "json"]).json();
    let finding = &report["files"][0]["findings"][0];
    assert_eq!((&finding["code"], &finding["text"]), (&"misspelled-name".into(), &"pollicus".into()), "{finding}");
    let candidates = finding["candidates"].as_array().unwrap();
    assert_eq!(candidates[0]["name"], "flexor pollicis brevis");
    assert_eq!(candidates[0]["distance"], 1);
    assert_eq!(candidates[0]["sounds_alike"], false, "a soft c and a hard one");
    let heard = &report["files"][0]["findings"][1]["candidates"][0];
    assert_eq!((&heard["name"], &heard["sounds_alike"]), (&"pronator quadratus".into(), &true.into()), "{report}");
    let scores: Vec<f64> = candidates.iter().map(|one| one["score"].as_f64().unwrap()).collect();
    assert!(scores.iter().all(|score| (0.0..=1.0).contains(score)), "{scores:?}");
    assert!(scores.is_sorted_by(|a, b| a >= b), "{scores:?}");
}

#[test]
fn what_is_wrong_in_a_vocabulary_file_of_a_course_is_told_there() {
    let desk = Desk::with(&[
        ("fascicle.toml", "overlay = [\"local.toml\"]\n"),
        ("local.toml", "[[muscle]]\nname = \"deltoid\"\nnonsense = 1\n"),
        ("note.md", CLEAN),
    ]);
    let report = desk.run(&["check", ".", "--format", "json"]).json();
    let expected = [("local.toml".to_owned(), vec!["setting".to_owned()]), ("note.md".to_owned(), Vec::new())];
    assert_eq!(codes(&report), expected, "{report}");
    assert_eq!(report["files"][0]["findings"][0]["range"]["start"]["line"], 2, "{report}");
}
