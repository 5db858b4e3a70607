"""The catalogue of kinds of crop as it stands in the fixture."""

import json

from tests.places import ROOT

TEXT = (ROOT / "fixtures" / "crops.json").read_text(encoding="utf-8")
KINDS = json.loads(TEXT)["kinds"]
BY_SLUG = {kind["slug"]: kind for kind in KINDS}
FIGURES = [(kind["slug"], row) for kind in KINDS for row in kind["figures"]]


def sourced():
    """Every statement of the catalogue that names a source."""
    for kind in KINDS:
        yield kind["slug"], kind["botanical"]
        yield kind["slug"], kind["family"]
        for row in kind["figures"] + kind["cautions"]:
            yield kind["slug"], row


def figures(slug, attribute, source, stage=""):
    return [
        (row["low"], row["high"])
        for row in BY_SLUG[slug]["figures"]
        if row["attribute"] == attribute
        and row["source"] == source
        and row.get("stage", "") == stage
    ]
