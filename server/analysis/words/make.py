#!/usr/bin/env python3
"""Makes the lists of right words from openly licensed sources. Run it only to renew them; a build reads what it made.

    apt-get download scowl wordnet-base        # Debian packages; unpack each with: dpkg-deb -x FILE.deb debian/
    pip download --no-deps cellxgene-ontology-guide==1.11.1   # unpack with: unzip FILE.whl -d ontologies/
    pip install zstandard
    python3 make.py debian ontologies

`common.txt.gz` holds the words of English that many people know: SCOWL 2020.12.07 up to size 60, without proper names.
`rare.txt.gz` holds the others, with names of people and places: SCOWL up to size 80, and WordNet 3.0.
`medical.txt.gz` holds words of the labels and synonyms of three ontologies, UBERON, the Cell Ontology and MONDO, and
words that the descriptions of the latter two use three times or more. The descriptions of UBERON are not read: they are
a text on which false alarms are counted. A word of an ontology that is used less than three times and stands one edit
from a word of our vocabulary is left out, for it may be a slip itself. The licences stand beside this file in
LICENCES.md.

One word a line, lower case, no accents, only letters, at least three of them, sorted, deflated with gzip.
"""

import collections
import gzip
import json
import pathlib
import re
import sys
import unicodedata

import zstandard

HERE = pathlib.Path(__file__).parent
VOCABULARY = HERE.parent.parent.parent / "vocab" / "data"
COMMON_SIZE = 60
LARGEST_SIZE = 80
OFTEN = 3
ONTOLOGIES = ["UBERON-ontology-v2026-04-01", "CL-ontology-v2026-03-26", "MONDO-ontology-v2026-05-05"]


def fold(text):
    text = unicodedata.normalize("NFKD", text.replace("æ", "ae").replace("œ", "oe").replace("Æ", "AE").replace("Œ", "OE"))
    return "".join(c for c in text if not unicodedata.combining(c)).lower()


def words(text):
    for word in re.findall(r"[^\W_]+(?:['’][^\W\d_]+)*", fold(text)):
        word = re.sub(r"['’]s?$", "", re.sub(r"['’]s$", "", word))
        if len(word) >= 3 and re.fullmatch(r"[a-z]+", word):
            yield word


def general(debian):
    common, found = set(), set()
    folder = debian / "usr/share/dict/scowl"
    for path in sorted(folder.iterdir()):
        kind, _, size = path.name.rpartition(".")
        if size.isdigit() and int(size) <= LARGEST_SIZE and kind.split("-")[0] != "special" and "abbreviations" not in kind:
            here = set(words(path.read_text(encoding="utf-8")))
            found.update(here)
            if int(size) <= COMMON_SIZE and kind.endswith("-words"):
                common.update(here)
    for path in sorted((debian / "usr/share/wordnet").glob("index.*")):
        for line in path.read_text().splitlines():
            if line and not line.startswith(" "):
                found.update(words(line.split()[0].replace("_", " ")))
    for path in sorted((debian / "usr/share/wordnet").glob("*.exc")):
        for line in path.read_text().splitlines():
            found.update(words(line.replace("_", " ")))
    return common, found - common


def edits(word):
    letters = "abcdefghijklmnopqrstuvwxyz"
    for i in range(len(word) + 1):
        head, tail = word[:i], word[i:]
        if tail:
            yield head + tail[1:]
        if len(tail) > 1:
            yield head + tail[1] + tail[0] + tail[2:]
        for c in letters:
            if tail:
                yield head + c + tail[1:]
            yield head + c + tail


def vocabulary():
    found = set()
    for path in VOCABULARY.rglob("*.toml"):
        for value in re.findall(r'(?:name|latin|text|plural|short) = "([^"]*)"', path.read_text()):
            found.update(word for word in words(value) if len(word) >= 5)
    return found


def medical(folder):
    count, described = collections.Counter(), collections.Counter()
    for name in ONTOLOGIES:
        path = next(folder.rglob(name + ".json.zst"))
        with path.open("rb") as file:
            terms = json.loads(zstandard.ZstdDecompressor().stream_reader(file).read())
        for term in terms.values():
            if term.get("deprecated"):
                continue
            for text in [term.get("label") or "", *term.get("synonyms", [])]:
                count.update(words(text))
            if not name.startswith("UBERON"):
                described.update(words(term.get("description") or ""))
    count.update({word: times for word, times in described.items() if times >= OFTEN})
    ours = vocabulary()
    near = {edit for word in ours for edit in edits(word)} - ours
    return {word for word, times in count.items() if times >= OFTEN or word not in near}


def write(name, found):
    text = "\n".join(sorted(found)) + "\n"
    (HERE / name).write_bytes(gzip.compress(text.encode(), 9, mtime=0))
    print(name, len(found), "words,", (HERE / name).stat().st_size, "bytes")


def main():
    debian, ontologies = map(pathlib.Path, sys.argv[1:3])
    common, rare = general(debian)
    write("common.txt.gz", common)
    write("rare.txt.gz", rare)
    write("medical.txt.gz", medical(ontologies) - common - rare)


main()
