"""Words for every member, key and caution."""

import importlib
import inspect
import pkgutil
from enum import StrEnum

import pytest

from farm.models import Field
from records.models import InputProduct
from reports.calc import assumptions, shapes
from reports.calc.shapes.ledger import Assumption
from reports.calc.shapes.rules import RuleId
from reports.calc.sources import SOURCES, Tier
from reports.labels import ASSUMPTIONS, CAUTIONS, INPUTS, LABELS, UNITS, label
from reports.labels.asked import ASKED
from reports.templatetags import wording
from tests.crop_lists import CAUTIONS as KNOWN_CAUTIONS
from tests.reports import samples


def lists_of(module):
    return {
        kind
        for _name, kind in inspect.getmembers(module, inspect.isclass)
        if issubclass(kind, StrEnum) and kind is not StrEnum
    }


def every_list():
    found = lists_of(assumptions) | {Tier}
    for module in pkgutil.iter_modules(shapes.__path__, f"{shapes.__name__}."):
        found |= lists_of(importlib.import_module(module.name))
    return sorted(found, key=lambda kind: kind.__name__)


@pytest.mark.parametrize("members", every_list(), ids=lambda kind: kind.__name__)
def test_every_member_that_leaves_the_workshop_has_words(members):
    assert {member for member in members if not label(member)} == set()


def test_lists_that_spell_a_member_alike_keep_their_own_words():
    assert len(LABELS) == len(every_list())


def test_every_assumption_has_a_sentence_and_a_unit():
    assert set(ASSUMPTIONS) == set(assumptions.BY_KEY)
    assert {row.unit for row in assumptions.CHOICES} <= set(UNITS)


def test_every_caution_that_a_kind_may_carry_has_a_sentence():
    assert set(CAUTIONS) >= set(KNOWN_CAUTIONS)


def test_every_type_of_input_and_status_of_land_has_words():
    assert set(INPUTS) == set(InputProduct.Type.values)
    assert wording.land_status(Field.Status.ORGANIC.value) == "organic"


def test_no_words_say_compliant():
    words = [str(text) for row in LABELS.values() for text in row.values()]
    words += [str(text) for text in [*CAUTIONS.values(), *ASSUMPTIONS.values()]]
    assert not [text for text in words if "complian" in text.lower()]


def test_heat_is_written_in_the_degrees_of_the_farm():
    row = Assumption("buckwheat_canopy_heat", 300 * 5 / 9, "°C-day")
    us, metric = samples.farm(), samples.farm(units="metric")
    assert wording.assumed_value(row, us) == "300\N{NO-BREAK SPACE}°F-days"
    assert wording.assumed_value(row, metric) == "166.7\N{NO-BREAK SPACE}°C-days"


def test_a_source_from_memory_says_unverified_wherever_it_is_named():
    memory = [row for row in SOURCES.values() if row.tier is Tier.M]
    assert memory
    assert all("unverified" in wording.source(row.key) for row in memory)
    assert all("unverified" in wording.cited(row.key) for row in memory)


def test_every_rule_says_in_our_own_words_what_it_asks_and_never_that_it_is_met():
    assert set(ASKED) == set(RuleId)
    for words in ASKED.values():
        assert str(words).endswith(".")
        assert "complian" not in str(words).lower()
