"""Where tests find data too large for the repository."""

from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
DATA = ROOT.parent / "shared" / "data"


def shared_data(name: str) -> Path:
    """Return the path of a data file beside the checkout, or skip the test."""
    path = DATA / name
    if not path.exists():
        pytest.skip(f"the data file {name} is not beside the checkout")
    return path
