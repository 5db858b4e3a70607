"""The plan of the house: where things live, and which way the arrows go."""

import ast
import graphlib
import re
import tomllib

import pytest
from django.apps import apps
from django.core.management import call_command
from django.db import models
from django.urls import get_resolver

from farm.models import Record
from tests.places import ROOT
from tests.rooms import STOREYS, Module, body_length, modules, within

TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "manage.py",
    "pyproject.toml",
    "farm",
    "records",
    "reports",
    "templates",
    "tests",
    "fixtures",
}
PURE = modules("reports/calc", "farm/units")
# What every formula may know: the shapes that go in and out, and the bibliography.
SHARED_BY_FORMULAS = {"shapes", "sources", "assumptions"}
LONGEST_FILE = 400
LONGEST_FUNCTION = 40
LONGEST_VIEW = 15


def offending(rows):
    """One line an offender, so that a failure reads as a list of what to mend."""
    return "\n".join(sorted(set(rows)))


def test_arrows_only_go_down():
    ups = [
        f"{module.at(line)} imports {name}"
        for place, storey in enumerate(STOREYS)
        for module in modules(storey)
        for name, line in module.imports
        if within(name, *STOREYS[place + 1 :])
    ]
    assert offending(ups) == ""


def test_no_storey_knows_the_tests():
    found = [
        f"{module.at(line)} imports {name}"
        for module in modules()
        for name, line in module.imports
        if within(name, "tests")
    ]
    assert offending(found) == ""


def test_no_import_is_hidden_inside_a_function():
    hidden = [
        f"{module.at(line)} {text}"
        for module in modules()
        for text, line in module.hidden_imports
    ]
    assert offending(hidden) == ""


def test_modules_do_not_import_each_other_in_a_circle():
    house = {module.name: module for module in modules()}
    graph = {
        name: {room_of(told, house) for told in module.imports_at_work} - {None, name}
        for name, module in house.items()
    }
    list(graphlib.TopologicalSorter(graph).static_order())


def room_of(name, house):
    """The module an imported name comes from."""
    if name in house:
        return name
    parent = name.rpartition(".")[0]
    return parent if parent in house else None


@pytest.mark.parametrize("module", PURE, ids=lambda module: module.place)
def test_the_pure_rooms_know_no_tables_no_paper_no_clock_no_files_and_no_chance(module):
    outside = ("django", "weasyprint", "records", "farm.models", "random", "secrets")
    files = ("os", "io", "pathlib", "time", "subprocess", "socket", "numpy.random")
    impure = [
        f"{module.at(line)} imports {name}"
        for name, line in module.imports
        if within(name, *outside, *files)
    ]
    impure += [
        f"{module.at(line)} calls {call}"
        for call, line in module.calls
        if call == "open"
        or re.search(r"\b(now|today|utcnow|read_text|random|default_rng)$", call)
    ]
    assert offending(impure) == ""


def test_formulas_do_not_call_each_other_except_in_the_season():
    knowing = [
        f"{module.at(line)} imports {name}"
        for module in modules("reports/calc")
        for name, line in module.imports
        if within(name, "reports.calc")
        and formula(module.name) not in {"season", *SHARED_BY_FORMULAS}
        and formula(name) not in {formula(module.name), *SHARED_BY_FORMULAS}
    ]
    assert offending(knowing) == ""


def test_shapes_and_sources_know_no_formula():
    knowing = [
        f"{module.at(line)} imports {name}"
        for module in modules("reports/calc")
        if formula(module.name) in SHARED_BY_FORMULAS
        for name, line in module.imports
        if within(name, "reports.calc") and formula(name) not in SHARED_BY_FORMULAS
    ]
    assert offending(knowing) == ""


def formula(name):
    """The room of calc that a dotted name lies in."""
    return (*name.split("."), "", "")[2]


def test_only_the_ledger_and_what_posts_to_records_know_the_tables():
    doors = ("reports.ledger", "reports.forms")
    knowing = [
        f"{module.at(line)} imports {name}"
        for module in modules("reports")
        if not within(module.name, *doors)
        for name, line in module.imports
        if within(name, "records")
    ]
    assert offending(knowing) == ""


def test_only_one_room_knows_the_printer():
    knowing = {
        module.name
        for module in modules()
        for name, _ in module.imports
        if within(name, "weasyprint")
    }
    assert knowing <= {"reports.pdf", "reports.pdf.printing"}


def test_the_clock_is_read_only_in_views_commands_and_the_door():
    """Everywhere else the day is handed in."""
    allowed = re.compile(r"views|management|farm/access|farm/setup|urls")
    # First guesses of an entry form are part of answering a request.
    allowed_by_name = {"records/guesses.py", "records/reading/holding.py"}
    reading = [
        f"{module.at(line)} calls {call}"
        for module in modules()
        if not allowed.search(module.place) and module.place not in allowed_by_name
        for call, line in module.calls
        if re.search(r"\b(timezone\.now|localdate|localtime|utcnow)$", call)
        or re.search(r"\b(date|datetime|dt)\.(today|now)$", call)
        or call == "time.time"
    ]
    assert offending(reading) == ""


def test_nothing_is_done_by_signals():
    found = [
        f"{module.at(line)} imports {name}"
        for module in modules()
        for name, line in module.imports
        if within(name, "django.dispatch") or "signals" in name
    ]
    assert offending(found) == ""


def test_no_room_is_without_a_name_of_its_own():
    nameless = re.compile(r"\b(utils?|helpers?|services?|common|managers?|misc)\b")
    found = [module.place for module in modules() if nameless.search(module.name)]
    assert offending(found) == ""


def test_no_file_is_longer_than_four_hundred_lines():
    paths = [module.path for module in modules()]
    paths += [*ROOT.glob("templates/**/*.html"), *ROOT.glob("farm/static/**/*.css")]
    long = [
        f"{path.relative_to(ROOT)}: {lines} lines"
        for path in paths
        if (lines := len(path.read_text(encoding="utf-8").splitlines())) >= LONGEST_FILE
    ]
    assert offending(long) == ""


def test_half_of_all_files_have_no_more_than_eighty_lines():
    lengths = sorted(module.line_count for module in modules() if module.text.strip())
    assert lengths[len(lengths) // 2] <= 80


def test_no_function_is_longer_than_forty_lines():
    long = [
        f"{module.at(function.lineno)} {function.name}: {body_length(function)} lines"
        for module in modules()
        for function in module.functions
        if body_length(function) > LONGEST_FUNCTION
    ]
    assert offending(long) == ""


def test_no_view_is_longer_than_fifteen_lines():
    rooms = [module for module in modules() if "views" in module.name]
    long = [
        f"{module.at(function.lineno)} {function.name}: {body_length(function)} lines"
        for module in rooms
        for function in module.functions
        if body_length(function) > LONGEST_VIEW
    ]
    assert rooms
    assert offending(long) == ""


def test_every_module_says_in_one_line_what_it_is():
    silent = [
        module.place
        for module in [*modules(), *modules("tests"), *modules("manage.py")]
        if module.text.strip()
        and not first_line(ast.get_docstring(module.tree)).endswith((".", "?"))
    ]
    assert offending(silent) == ""


def first_line(docstring):
    return (docstring or "").partition("\n")[0]


def test_nothing_new_stands_at_the_top_level():
    passing = {"__pycache__", "htmlcov"}
    visible = {
        path.name
        for path in ROOT.iterdir()
        if not path.name.startswith(".") and path.suffix != ".egg-info"
    }
    assert visible - passing <= TOP_LEVEL


def test_every_package_is_a_package_by_its_own_file():
    found = {module.path.parent for module in modules()}
    bare = [str(folder) for folder in found if not (folder / "__init__.py").exists()]
    assert offending(bare) == ""


@pytest.mark.django_db
def test_the_tables_are_as_the_models_say():
    call_command("makemigrations", check=True, dry_run=True, verbosity=0)


def concrete_models():
    return [
        model for name in STOREYS for model in apps.get_app_config(name).get_models()
    ]


def checks(model):
    return " ".join(
        str(rule.condition)
        for rule in model._meta.constraints
        if isinstance(rule, models.CheckConstraint)
    )


@pytest.mark.parametrize("model", concrete_models(), ids=lambda m: m.__name__)
def test_the_tables_themselves_refuse_what_cannot_be(model):
    told = {field.name for field in model._meta.fields}
    rules = checks(model)
    for name in told & {"area_m2", "received_kg", "mass_kg", "amount_si", "wet_kg"}:
        assert f"('{name}__gt', 0)" in rules or f"('{name}__gte', 0)" in rules
    for early, late in (("first", "last"), ("low", "high")):
        if {early, late} <= told:
            assert f"F({early})" in rules


@pytest.mark.parametrize(
    "model",
    [model for model in concrete_models() if issubclass(model, Record)],
    ids=lambda m: m.__name__,
)
def test_every_record_is_sent_once_and_voided_whole(model):
    assert model._meta.get_field("client_key").unique
    assert model._meta.get_field("farm").remote_field.on_delete is models.PROTECT
    assert any(rule.name.endswith("_void_is_whole") for rule in model._meta.constraints)


def routes(resolver=None, before=""):
    """Every address with its view."""
    for pattern in (resolver or get_resolver()).url_patterns:
        path = before + str(pattern.pattern)
        if hasattr(pattern, "url_patterns"):
            yield from routes(pattern, path)
        else:
            yield path, pattern.callback


def test_every_address_of_a_farm_goes_through_the_door():
    doorless = [
        path
        for path, view in routes()
        if "<slug:slug>" in path and not getattr(view, "door", None)
    ]
    assert offending(doorless) == ""


def test_no_address_without_a_farm_shows_a_farms_records():
    free = {path for path, _ in routes() if "<slug:slug>" not in path}
    assert free <= {
        "",
        "sign-in/",
        "sign-out/",
        "password/",
        "password/changed/",
        "farms/new/",
        "account/",
        "language/",
        "account/sign-ins/",
        "account/second/",
        "sign-in/second/",
        "favicon.ico",
        # What a telephone asks for, wherever it stands.
        "today/",
        "who/",
        "worker.js",
        "farm.webmanifest",
        "no-signal/",
        "password/forgotten/",
        "password/sent/",
        # Opened by whoever holds the link, once.
        "password/new/<uidb64>/<token>/",
        "come-in/<str:token>/",
        # Read by whoever knows its token, and by nobody else.
        "calendar/<str:token>.ics",
    }


def test_the_packages_named_are_the_packages_used():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]
    named = {re.split(r"[^\w-]", line)[0] for line in project["dependencies"]}
    assert {"django", "numpy", "weasyprint"} <= named


def test_a_circle_would_be_found(tmp_path):
    with pytest.raises(graphlib.CycleError):
        list(graphlib.TopologicalSorter({"a": {"b"}, "b": {"a"}}).static_order())
    hidden = tmp_path / "room.py"
    hidden.write_text("def f():\n    import records.models\n")
    assert Module(hidden).imports == [("records.models", 2)]
