"""Which version of the program this is."""

import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VERSION: str = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"][
    "version"
]
