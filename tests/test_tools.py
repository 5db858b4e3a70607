"""The code's own checks, run as part of the tests."""

import subprocess
import sys

import pytest

from tests.places import ROOT


@pytest.mark.parametrize(
    "words",
    [("ruff", "check"), ("ruff", "format", "--check", "--diff"), ("mypy",)],
    ids=lambda words: " ".join(words[:2]),
)
def test_the_code_is_clean_by(words):
    said = subprocess.run(
        [sys.executable, "-m", *words], cwd=ROOT, capture_output=True, text=True
    )
    assert said.returncode == 0, f"\n{said.stdout}{said.stderr}"
