"""Makes a picture (SVG) of what a command prints, colours and all. Only Python's own library is needed.

    python3 tests/pictures/render.py OUT.svg [--lines N] [--title TEXT] -- COMMAND...

The command runs on a terminal of 110 columns, as it would for a person. Its exit status is not judged.
"""

import os
import pty
import re
import subprocess
import sys
import unicodedata
from xml.sax.saxutils import escape

COLUMNS, CELL, LINE, PAD, BAR = 100, 8.4, 18, 16, 34
FOREGROUND, BACKGROUND = "#d8dee9", "#1f2430"
PALETTE = ["#4c566a", "#e06c75", "#98c379", "#e5c07b", "#61afef", "#c678dd", "#56b6c2", "#abb2bf"]
BRIGHT = ["#6b7489", "#ff7b86", "#b5e08f", "#ffd787", "#7cc4ff", "#dd94f5", "#6fd3df", "#ffffff"]


def output_of(command):
    """What the command prints on a terminal."""
    import fcntl
    import struct
    import termios

    leader, follower = pty.openpty()
    fcntl.ioctl(follower, termios.TIOCSWINSZ, struct.pack("HHHH", 50, COLUMNS, 0, 0))
    environment = {**os.environ, "TERM": "xterm-256color", "COLUMNS": str(COLUMNS)}
    environment.pop("NO_COLOR", None)
    process = subprocess.Popen(command, stdin=follower, stdout=follower, stderr=follower, env=environment)
    os.close(follower)
    data = b""
    while True:
        try:
            chunk = os.read(leader, 1 << 16)
        except OSError:  # the terminal is closed: the command has ended
            break
        if not chunk:
            break
        data += chunk
    process.wait()
    return data.decode("utf-8").replace("\r\n", "\n")


def runs(line, style):
    """Stretches of a line that look the same; changes the style as the line says."""
    parts = re.split(r"\x1b\[([0-9;?]*)([A-Za-z])", line)
    for text, codes, final in zip(parts[::3], parts[1::3] + [""], parts[2::3] + [""]):
        if text:
            yield text, dict(style)
        numbers = [int(code or 0) for code in codes.split(";")] if final == "m" else []
        while numbers:
            code = numbers.pop(0)
            if code == 0:
                style.clear()
            elif code == 1:
                style["bold"] = True
            elif code == 2:
                style["faint"] = True
            elif code == 3:
                style["italic"] = True
            elif code == 4:
                style["underline"] = True
            elif code == 22:
                style.pop("bold", None), style.pop("faint", None)
            elif code in (23, 24):
                style.pop({23: "italic", 24: "underline"}[code], None)
            elif 30 <= code <= 37:
                style["colour"] = PALETTE[code - 30]
            elif 90 <= code <= 97:
                style["colour"] = BRIGHT[code - 90]
            elif code == 39:
                style.pop("colour", None)
            elif code == 38 and numbers[:1] == [5]:
                index = numbers[1]
                style["colour"] = (PALETTE + BRIGHT)[index] if index < 16 else FOREGROUND
                del numbers[:2]


def width(text):
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def rows(text):
    """What stands in each row of the terminal: (column, run, look). Long lines go on in the next row, as there."""
    style, screen = {}, []
    for line in text.rstrip("\n").split("\n"):
        row, column = [], 0
        for run, look in runs(line, style):
            while run:
                fits = run
                while column + width(fits) > COLUMNS:
                    fits = fits[:-1]
                if fits:
                    row.append((column, fits, look))
                    column += width(fits)
                run = run[len(fits) :]
                if run:
                    screen.append(row)
                    row, column = [], 0
        screen.append(row)
    return screen


def picture(text, title):
    screen = rows(text)
    height = BAR + PAD + LINE * len(screen) + PAD
    total = COLUMNS * CELL + 2 * PAD
    label = escape(title, {chr(34): "&quot;"})
    out = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{total:.0f}" height="{height}" viewBox="0 0 {total:.0f} {height}"'
        f' role="img" aria-label="{label}">',
        f'<rect width="100%" height="100%" rx="8" fill="{BACKGROUND}"/>',
        f'<g font-family="DejaVu Sans Mono, Menlo, Consolas, monospace" font-size="14" fill="{FOREGROUND}">',
        f'<text x="{PAD}" y="23" fill="{BRIGHT[0]}">$ {escape(title)}</text>',
    ]
    for number, row in enumerate(screen):
        y = BAR + PAD + LINE * number + 4
        for column, run, look in row:
            body = run.strip(" ")
            if not body:
                continue
            x = PAD + CELL * (column + len(run) - len(run.lstrip(" ")))
            attributes = [f'x="{x:.1f}" y="{y}" textLength="{CELL * width(body):.1f}"']
            if colour := look.get("colour"):
                attributes.append(f'fill="{colour}"')
            if look.get("bold"):
                attributes.append('font-weight="bold"')
            if look.get("italic"):
                attributes.append('font-style="italic"')
            if look.get("faint"):
                attributes.append('opacity="0.6"')
            if look.get("underline"):
                attributes.append('text-decoration="underline"')
            out.append(f'<text {" ".join(attributes)} xml:space="preserve">{escape(body)}</text>')
    out += ["</g>", "</svg>", ""]
    return "\n".join(out)


def main():
    options, command = sys.argv[1 : sys.argv.index("--")], sys.argv[sys.argv.index("--") + 1 :]
    target = options.pop(0)
    settings = dict(zip(options[::2], options[1::2]))
    text = output_of(command)
    if limit := int(settings.get("--lines", 0)):
        lines = text.rstrip("\n").split("\n")
        if len(lines) > limit:
            # Cut where a paragraph ends.
            end = max((at for at in range(limit // 2, limit) if not lines[at].strip()), default=limit)
            text = "\n".join(lines[:end] + ["", "…"])
    with open(target, "w", encoding="utf-8") as file:
        file.write(picture(text, settings.get("--title") or " ".join(command)))


if __name__ == "__main__":
    main()
