"""Takes what a README says to paste, as a new user would: pasted.py README LANGUAGE NUMBER CLONE.

Prints the NUMBERth fenced block of the language (from 1), with the path of the clone in place of /path/to/fascicle."""

import re
import sys

readme, language, number, clone = sys.argv[1:]
blocks = re.findall(rf"^```{language}\n(.*?)^```", open(readme, encoding="utf-8").read(), re.M | re.S)
print(blocks[int(number) - 1].replace("/path/to/fascicle", clone))
