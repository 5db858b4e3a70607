"""Names, keys and voids in a table."""

from django.db import connection
from django.test.utils import CaptureQueriesContext

from farm.models import Change, Field
from farm.writing import void
from records.nouns import BY_SLUG, NOUNS
from tests.factories import (
    FieldFactory,
    PlantingFactory,
    SeedLotFactory,
)
from tests.records.tables.papers import (
    FIELDS,
    LOTS,
    NOW,
    as_csv,
    counts,
    faults,
    fields_csv,
    load,
    out,
    rows_in,
)


def test_a_name_that_two_records_have_is_no_name(world):
    for lot_number in ("A", "B"):
        lot = SeedLotFactory(
            farm=world.farm, kind=world.ours.kind, lot_number=lot_number
        )
        PlantingFactory(
            farm=world.farm, field=world.ours["fields"], line__kind=lot.kind
        )
    text = "planting_name,seen_on,seen\r\nNorth · 2026-06-01,2026-07-04,emerged\r\n"
    told = faults(load(world.farm, BY_SLUG["observations"], text, by=world.owner))
    assert [fault[2] for fault in told] == ["planting"]
    assert "More than one is called" in told[0][3]


def test_records_of_another_farm_can_neither_be_named_nor_changed(world):
    theirs = world.theirs["fields"]
    text = f"record_key,name,area_m2\r\n{theirs.client_key},Mine,9\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told[:3] == ("fields", 2, "record_key")
    text = f"name,area_m2,parent\r\nBed,9,{theirs.client_key}\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told[:3] == ("fields", 2, "parent")
    assert "Nothing here has the key" in told[3]
    kind = world.theirs.kind.slug
    text = f"kind,lot_number,received_on,received_kg\r\n{kind},1,2026-04-01,2\r\n"
    (told,) = faults(load(world.farm, LOTS, text, by=world.owner))
    assert told[:3] == ("seed-lots", 2, "kind")
    theirs.refresh_from_db()
    assert theirs.name == "North"


def test_a_key_that_stands_twice_is_refused(world):
    key = world.ours["fields"].client_key
    text = f"record_key,name\r\n{key},A\r\n{str(key).upper()},B\r\n"
    (told,) = faults(load(world.farm, FIELDS, text, by=world.owner))
    assert told == ("fields", 3, "record_key", "This key is there twice.")


def test_voided_records_go_out_with_who_when_and_why(world):
    void(world.ours["incidents"], by=world.owner, now=NOW, reason="=written twice")
    header, row = rows_in(as_csv(world.farm, "incidents"))
    told = dict(zip(header, row, strict=True))
    assert told["void_reason"] == "'=written twice"
    assert told["voided_by"] == world.owner.email
    assert told["voided_at"] == "2026-11-25T09:30:00+00:00"


def test_a_reason_in_the_table_voids_a_record_that_nothing_leans_on(world):
    for slug, count in (("incidents", (0, 1, 0)), ("fields", None)):
        row = world.ours[slug]
        text = f"record_key,void_reason\r\n{row.client_key},written twice\r\n"
        tried = load(world.farm, BY_SLUG[slug], text, by=world.manager)
        row.refresh_from_db()
        if count:
            assert counts(tried) == count
            assert (row.voided_by, row.void_reason) == (world.manager, "written twice")
            assert Change.objects.latest("pk").verb == "voided"
        else:
            assert faults(tried)[0][:3] == ("fields", 2, "void_reason")
            assert row.voided_at is None


def test_what_is_voided_stays_as_it_is(world):
    row = world.ours["incidents"]
    void(row, by=world.owner, now=NOW, reason="written twice")
    for text in (
        f"record_key,void_reason\r\n{row.client_key},\r\n",
        f"record_key,notes\r\n{row.client_key},but still\r\n",
    ):
        (told,) = faults(load(world.farm, BY_SLUG["incidents"], text, by=world.owner))
        assert told[1:] == (2, "void_reason", "What is voided stays as it is.")


def test_a_row_new_and_voided_is_kept_voided(world):
    text = fields_csv("North,900,double", header="name,area_m2,void_reason")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (1, 0, 0)
    row = Field.objects.get(void_reason="double")
    assert (row.voided_by, row.voided_at) == (world.owner, NOW)
    verbs = Change.objects.filter(object_id=row.pk, noun="field").order_by("pk")
    assert [change.verb for change in verbs] == ["wrote", "voided"]


def test_words_of_a_choice_may_be_the_spoken_ones(world):
    text = fields_csv("Upper,900,Not organic", "Lower,900,NOT_ORGANIC")
    assert counts(load(world.farm, FIELDS, text, by=world.owner)) == (2, 0, 0)
    assert Field.objects.filter(status="not_organic").count() == 2


def test_a_table_takes_the_same_questions_however_long_it_is(
    world, django_assert_num_queries
):
    asked = []
    for _ in range(2):
        with CaptureQueriesContext(connection) as queries:
            for noun in NOUNS:
                out(world.farm, noun)
        asked.append(len(queries))
        for _ in range(4):
            field = FieldFactory(farm=world.farm, parent=world.ours["fields"])
            PlantingFactory(
                farm=world.farm, field=field, line__lot=world.ours["seed-lots"]
            )
    assert asked[0] == asked[1]
