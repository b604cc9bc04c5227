"""The key muscles of the International Standards for Neurological Classification of Spinal Cord Injury, C5 to T1
(American Spinal Injury Association and International Spinal Cord Society, revised 2019): the standard's ten key muscle
functions are tested on the worksheet by root; these are the five of the arm. What the standard names by function ("elbow
flexors") is asked here for the muscles that textbooks name for it (common practice).

Roots are tested for teaching, not for diagnosis: a real examination follows the standard itself.
"""

import json

import pytest

KEY = [
    ("C5", "elbow flexors", ["biceps brachii", "brachialis"], "flexion", "extension"),
    ("C6", "wrist extensors", ["extensor carpi radialis longus", "extensor carpi radialis brevis"], "extension", "flexion"),
    ("C7", "elbow extensors", ["triceps brachii"], "extension", "flexion"),
    ("C8", "finger flexors", ["flexor digitorum profundus"], "flexion", "extension"),
    ("T1", "finger abductors", ["abductor digiti minimi of hand"], "abduction", "adduction"),
]


@pytest.fixture(scope="module")
def vocabulary(program):
    dumped = program("facts", "--format", "json")
    assert dumped.returncode == 0, dumped.stderr
    return json.loads(dumped.stdout)


@pytest.mark.parametrize("root,function,muscles,right,wrong", KEY, ids=[key[0] for key in KEY])
def test_the_vocabulary_holds_the_key_muscle(vocabulary, root, function, muscles, right, wrong):
    names = {entry["id"]: entry["name"] for entry in vocabulary["entries"]}
    keyed = {names[edge["to"]] for edge in vocabulary["edges"] if edge["from"] == root.lower() and edge["edge"] == "key-muscle"}
    assert keyed & set(muscles), f"{root}, {function}: {sorted(keyed)}"


@pytest.mark.parametrize("root,function,muscles,right,wrong", KEY, ids=[key[0] for key in KEY])
def test_the_standard_is_read_and_not_contradicted(program, root, function, muscles, right, wrong):
    joint = {"elbow": "elbow", "wrist": "wrist", "finger": "fingers"}[function.split()[0]]
    text = "".join(f"The {muscle} is supplied by {root}. Its action is {right} of the {joint}.\n\n" for muscle in muscles)
    checked = program("check", "-", "--format", "json", stdin=text)
    assert checked.returncode == 0, checked.stdout
    claimed = program("claims", "-", "--format", "json", stdin=text)
    claims = [claim for file in json.loads(claimed.stdout)["files"] for claim in file["claims"]]
    assert any(claim["kind"] == "roots" and claim["verdict"] in ("agrees", "variant", "less-exact") for claim in claims)


@pytest.mark.parametrize("root,function,muscles,right,wrong", KEY, ids=[key[0] for key in KEY])
def test_another_root_is_told(program, root, function, muscles, right, wrong):
    other = "L3" if root != "L3" else "L4"
    text = f"- **{muscles[0].capitalize()}**\n  - Roots: {other}\n"
    checked = program("check", "-", "--format", "json", stdin=text)
    findings = [finding for file in json.loads(checked.stdout)["files"] for finding in file["findings"]]
    assert [finding["kind"] for finding in findings] == ["claim"], checked.stdout
