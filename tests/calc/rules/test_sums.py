"""Ground under two names, nitrogen of a season, whole records of restricted use."""

import pytest

from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId, RuleSet
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import MANURE, RESTRICTED, found, rich, sprayed


@pytest.mark.parametrize(
    ("drawn_over", "waits"), [({(1, 6)}, True), ({(6, 7)}, False), (set(), False)]
)
def test_a_field_waits_for_what_was_used_where_another_is_drawn_over_it(
    drawn_over, waits
):
    """7 CFR 205.202(b) speaks of the land, whatever its pieces are called."""
    others = (but(at.GROUND, id=n, name=str(n)) for n in (6, 7))
    used = rows.Statement(1, 6, day("2020-01-01"), day("2025-01-01"), "2,4-D")
    books = spoiled(
        fields=(at.GROUND, *others),
        statements=(used,),
        drawn_over=frozenset(drawn_over),
    )
    clock = [rule(RuleId.LAND_CLOCK)]
    assert (Matter.LAND_NOT_YET in found(books, clock)) is waits


@pytest.mark.parametrize(
    ("share", "told", "over"),
    [
        (0.34, {}, False),
        (0.35, {}, True),
        (0.35, {"on": day("2025-12-31")}, False),
        (0.35, {"measure": "volume"}, False),
    ],
)
def test_nitrogen_is_summed_over_the_season_and_the_land_under_the_rules(
    share, told, over
):
    """500 kg a hectare of 34 % is 170 kg; the most allowed is the rule's own number."""
    cap = rule(RuleId.MANURE_NITROGEN)
    assert round(0.34 * 500) == cap["nitrogen_kg_ha"]
    assert (Matter.NITROGEN_OVER in found(rich(share, **told), [cap])) is over


def test_manure_in_canada_waits_by_a_number_the_certifier_may_put_right():
    cut = but(at.CROP, on=day("09-02"))
    put = but(at.PUT, id=3, product_id=3, worked_in_on=day("05-20"))
    books = spoiled(
        products=(*CLEAN.products, MANURE), puts=(*CLEAN.puts, put), crops=(cut,)
    )
    asked = rule(RuleId.MANURE, RuleSet.ORGANIC_CA)
    assert Matter.MANURE_SOON in found(books, [asked])
    assert found(books, [asked.overruled("contact_days", 100)]) == set()


def test_a_whole_restricted_use_record_lacks_nothing_and_an_empty_one_everything():
    """7 CFR 110.3(a): nine elements, the day among them."""
    asked = [rule(RuleId.RESTRICTED_RECORD), rule(RuleId.LICENCE)]
    held = rows.Licence(1, "C 12", "Nebraska", None, day("2026-12-31"))
    whole = but(sprayed(RESTRICTED, licence="C 12"), licences=(held,))
    assert found(whole, asked) == set()
    bare = {"amount": 0.0, "area_m2": 0.0, "field_id": 99, "target": "", "done_by": ""}
    books = sprayed(but(RESTRICTED, name="", registration=""), **bare)
    assert len(found(books, asked)) == 8
