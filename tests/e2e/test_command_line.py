"""The built program on the command line: exit status, clear complaints, outputs that keep to their published schemas."""

import json
import os
import pathlib
import subprocess

import jsonschema
import pytest


def lines(text):
    return [line for line in text.splitlines() if line.strip()]


def test_the_demo_course_has_findings_and_its_twin_has_none(program, course):
    found = program("check", course)
    assert found.returncode == 1 and found.stderr == ""
    assert "serratus anterior" in found.stdout.lower()
    clean = program("check", pathlib.Path(__file__).parent.parent / "course-clean")
    assert clean.returncode == 0, clean.stdout


@pytest.mark.parametrize(
    "arguments,says",
    [
        (["check", "not/there.md"], "not/there.md"),
        (["check", "--no-such-option", "."], "--no-such-option"),
        (["no-such-command"], "no-such-command"),
        (["check"], "PATH"),
    ],
)
def test_bad_input_gets_a_clear_line_and_status_2(program, arguments, says):
    run = program(*arguments)
    assert run.returncode == 2 and "Nothing found" not in run.stdout
    assert says in run.stderr and "panicked" not in run.stderr


def test_a_file_that_is_not_utf_8_is_named_with_the_place_and_the_others_are_read(program, course):
    (course / "bad.md").write_bytes(b"Fine.\nNot \xff fine.\n")
    run = program("check", course, "--format", "json")
    assert run.returncode == 2
    assert "bad.md" in run.stderr and ("2:5" in run.stderr or "line 2" in run.stderr)
    assert sum(len(file["findings"]) for file in json.loads(run.stdout)["files"]) >= 30


@pytest.mark.skipif(os.geteuid() == 0, reason="nothing is forbidden to root")
def test_a_folder_without_permission_is_named(program, course):
    (course / "exam").chmod(0)
    try:
        run = program("check", course)
    finally:
        (course / "exam").chmod(0o755)
    assert run.returncode == 2 and "exam" in run.stderr


def test_a_50_mb_file_is_read_or_refused_but_not_lost_in(program, tmp_path):
    big = tmp_path / "big.md"
    big.write_text("The deltoid is a muscle of the shoulder.\n\n" * 1_250_000, encoding="utf-8")
    run = program("check", big)
    assert run.returncode in (0, 2) and "panicked" not in run.stderr
    assert run.returncode == 0 or "big.md" in run.stderr


def test_standard_input(program):
    run = program("check", "-", stdin="The flexor pollicus brevis.\n")
    assert run.returncode == 1 and "pollicis" in run.stdout


def test_safe_fixes_are_applied(program, course):
    before = json.loads(program("check", course, "--format", "json").stdout)
    program("check", course, "--fix")
    after = json.loads(program("check", course, "--format", "json").stdout)
    count = lambda report, kind: sum(f["kind"] == kind for file in report["files"] for f in file["findings"])
    assert count(after, "name") < count(before, "name")
    assert "flexor pollicis brevis" in (course / "lectures/03-hand.md").read_text(encoding="utf-8")
    again = program("check", course, "--fix")
    assert again.returncode == 1, "what needs a decision is left"


@pytest.mark.parametrize("output,command", [("check", "check"), ("claims", "claims")])
def test_json_keeps_to_its_published_schema(program, course, output, command):
    schema = json.loads(program("generate", "schema", output).stdout)
    report = json.loads(program(command, course, "--format", "json").stdout)
    jsonschema.Draft202012Validator(schema).validate(report)
    assert report["version"] == 1 and len(report["files"]) >= 5


def test_ranges_of_the_json_are_those_of_the_text(program, course):
    report = json.loads(program("check", course, "--format", "json", cwd=course).stdout)
    for file in report["files"]:
        data = pathlib.Path(course, file["path"]).read_bytes()
        for finding in file["findings"]:
            start, end = finding["bytes"]
            assert data[start:end].decode() == finding["text"]
            position = finding["range"]["start"]
            line = data.decode().split("\n")[position["line"]]
            assert data[:start].decode().count("\n") == position["line"]
            before = line.encode("utf-16-le")[: 2 * position["character"]].decode("utf-16-le")
            assert line[len(before) :].startswith(finding["text"].split("\n")[0])


@pytest.fixture(scope="module")
def sarif_schema():
    """The schema that OASIS published, out of a crate that carries it (see standards/Cargo.toml)."""
    manifest = pathlib.Path(__file__).parent / "standards/Cargo.toml"
    metadata = subprocess.run(
        ["cargo", "metadata", "--format-version", "1", "--locked", "--manifest-path", str(manifest)],
        check=True,
        capture_output=True,
        text=True,
    )
    [crate] = [package for package in json.loads(metadata.stdout)["packages"] if package["name"] == "serde-sarif"]
    schema = json.loads((pathlib.Path(crate["manifest_path"]).parent / "src/schema.json").read_text())
    assert "2.1.0" in schema["title"]
    return schema


def test_sarif_keeps_to_the_schema_of_the_standard(program, course, sarif_schema):
    (course / "bad.md").write_bytes(b"\xff")
    log = json.loads(program("check", course, "--format", "sarif").stdout)
    validator = jsonschema.Draft7Validator(sarif_schema)
    assert [f"{error.json_path}: {error.message}" for error in validator.iter_errors(log)] == []
    [run] = log["runs"]
    assert len(run["results"]) >= 30
    rules = [rule["id"] for rule in run["tool"]["driver"]["rules"]]
    assert all(result["ruleId"] in rules for result in run["results"])
    # The validator can fail: a log without a version is none.
    assert list(validator.iter_errors({"runs": log["runs"]}))
