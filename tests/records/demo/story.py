"""The story of the demonstration farm, as its files tell it."""

import datetime as dt
import json

from farm import units
from records.management.commands import load_demo
from records.reading.demo import layered, plain, read, skies
from tests.places import ROOT

STORY = layered(*(read(ROOT / "fixtures" / layer) for layer in load_demo.LAYERS))


CROPS = json.loads((ROOT / "fixtures" / "crops.json").read_text(encoding="utf-8"))


KINDS = {kind["slug"]: kind for kind in CROPS["kinds"]}


WEATHER = {
    row.date: row
    for row in skies.days_of(ROOT / "fixtures" / "weather" / STORY["station"]["file"])
}


def as_it_stands(told):
    """A record with what was mended laid over it."""
    mended = {key: row for key, row in told.get("mended", {}).items() if key != "on"}
    return {**told, **mended}


def live(rows):
    return [as_it_stands(row) for row in rows if "voided" not in row]


def land(field):
    field = as_it_stands(field)
    if "outline" in field:
        return plain.outlined(field["outline"])["area_m2"]
    return units.parse_area(field.get("area") or field["sides"])


FIELDS = {field["name"]: field for field in live(STORY["fields"])}


LAND = {name: land(field) for name, field in FIELDS.items()}


LOTS = {lot["lot"]: lot for lot in live(STORY["seed_lots"])}


PLANTINGS = live(STORY["plantings"])


IN_THE_GROUND = [row for row in PLANTINGS if "sown" in row]


def day(text):
    return dt.date.fromisoformat(text)


def area(planting):
    return (
        units.parse_area(planting["area"])
        if "area" in planting
        else LAND[planting["field"]]
    )


def kinds(planting):
    return [
        LOTS[line["lot"]]["kind"] if "lot" in line else line["kind"]
        for line in planting["seed"]
    ]


def called(planting):
    return f"{planting['field']} {planting.get('sown') or planting['planned']}"


def for_good(planting):
    ends = live(planting.get("ended", []))
    return [end for end in ends if end.get("outcome") != "regrows"]


def spans(rows):
    """Each planting on a field with its first day and its last."""
    for row in rows:
        ends = [day(end["on"]) for end in for_good(row)]
        yield row, day(row["sown"]), max(ends, default=dt.date.max)
