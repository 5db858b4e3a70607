"""A table that is loaded, seen first, and saved whole or not at all."""

from farm.models import Change
from tests.records.tables.papers import (
    FIELDS,
    NOW,
    as_csv,
    counts,
    faults,
    fields_csv,
    load,
)


def test_a_new_record_is_written_by_whoever_loads_it_and_so_are_its_changes(world):
    load(world.farm, FIELDS, fields_csv("Upper,900,organic"), by=world.manager)
    field = world.farm.fields.get(name="Upper")
    assert (field.written_by, field.written_at) == (world.manager, NOW)
    text = as_csv(world.farm, "fields").replace("900", "950")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (0, 1, 1)
    field.refresh_from_db()
    assert (field.area_m2, field.written_by) == (950, world.manager)
    changes = Change.objects.filter(object_id=field.pk, noun="field")
    wrote, changed = changes.order_by("number")
    assert (wrote.verb, wrote.by) == ("wrote", world.manager)
    assert (changed.verb, changed.by) == ("changed", world.owner)
    assert changed.before == {"area_m2": "900.0"}
    assert changed.after == {"area_m2": "950.0"}


def test_columns_left_out_are_left_as_they_are(world):
    field = world.ours["fields"]
    field.notes = "Stony at the gate."
    field.save()
    text = f"record_key,status\r\n{field.client_key},buffer\r\n"
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (0, 1, 0)
    field.refresh_from_db()
    assert (field.status, field.notes) == ("buffer", "Stony at the gate.")


def test_seeing_a_table_first_saves_nothing(world):
    text = fields_csv("Upper,900,organic")
    tried = load(world.farm, FIELDS, text, by=world.owner, keep=False)
    assert counts(tried) == (1, 0, 0)
    assert tried.first_rows == [(2, "new", ["Upper", "900", "organic"])]
    assert not world.farm.fields.filter(name="Upper").exists()


def test_nothing_is_saved_while_one_row_is_wrong(world):
    before = Change.objects.count()
    text = fields_csv("Upper,900,organic", "Lower,none,organic")
    tried = load(world.farm, FIELDS, text, by=world.owner)
    assert faults(tried) == [
        ("fields", 3, "area_m2", "“none” is not a number. Write it like 1234.5.")
    ]
    assert not world.farm.fields.filter(name="Upper").exists()
    assert Change.objects.count() == before
