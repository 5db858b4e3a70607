"""How far from the edges of its sheets a printed paper keeps its words."""

import re
import shutil
import subprocess

import pytest

needs_poppler = pytest.mark.skipif(
    shutil.which("pdftotext") is None, reason="needs poppler-utils"
)
PT_PER_MM = 72 / 25.4
# What a letter may lean over, and what most printers cannot reach.
LEANS_PT, UNREACHED_MM = 1.4, 7.0


def told_margins_pt(css):
    """The sides and the foot of the first style of a page, from its words."""
    told = re.search(r"margin: \d+mm (\d+)mm (\d+)mm;", css)
    side_mm, foot_mm = float(told[1]), float(told[2])
    assert min(side_mm, foot_mm) > UNREACHED_MM
    return side_mm * PT_PER_MM, foot_mm * PT_PER_MM


def words_beyond(printed, side_pt, folder):
    """Words that stand nearer to a side than the margin, and how many there are."""
    (folder / "paper.pdf").write_bytes(printed)
    line = ["pdftotext", "-bbox", str(folder / "paper.pdf"), "-"]
    told = subprocess.run(line, check=True, capture_output=True, text=True).stdout
    beyond, words, width = [], 0, 0.0
    for one in re.finditer(
        r'<page width="([\d.]+)"|<word xMin="([\d.]+)".*?xMax="([\d.]+)".*?>(.*)<', told
    ):
        if one[1]:
            width = float(one[1])
            continue
        words += 1
        left, right = float(one[2]), float(one[3])
        if min(left, width - right) < side_pt - LEANS_PT:
            beyond.append(one[4])
    return beyond, words
