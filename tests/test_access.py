"""Who may come in where: every address, as everybody, by both methods."""

import datetime as dt

import pytest
from django import forms
from django.db import transaction
from django.test import Client
from django.urls import reverse

from farm.models import Membership, Role, User
from farm.roles import INSPECTED
from records import acts
from records.acts import ACTS
from records.nouns import NOUNS
from tests.addresses import addresses
from tests.factories import MembershipFactory
from tests.records.typed import typed

EVERYONE = set(Role)
MANAGERS = {Role.OWNER, Role.MANAGER}
WRITERS = {*MANAGERS, Role.CREW}
PRIVY = {*MANAGERS, Role.INSPECTOR}
# Stated here a second time, so that opening a door takes two changes.
ROLES = {
    "invite": {Role.OWNER},
    "invitation-revoke": {Role.OWNER},
    "member": {Role.OWNER},
    "member-end": {Role.OWNER},
    "hand-over": {Role.OWNER},
    "member-password": {Role.OWNER},
    "people": WRITERS,
    "looks": {Role.OWNER},
    "reports:findings-keep": MANAGERS,
    "records:write": WRITERS,
    "records:attach": WRITERS,
    "records:crew-act": WRITERS,
    "records:detach": WRITERS,
    "records:reattach": WRITERS,
    "records:write-act": WRITERS,
    "records:plan": WRITERS,
    "records:plan-one": WRITERS,
    "records:duty-one": WRITERS,
    "farm-edit": MANAGERS,
    "records:review": MANAGERS,
    "records:kind-new": MANAGERS,
    "records:own-figure": MANAGERS,
    "records:archive": {Role.OWNER},
    "records:load": MANAGERS,
    "records:load-save": MANAGERS,
    "records:weather-load": MANAGERS,
    "records:weather-columns": MANAGERS,
    "records:weather-save": MANAGERS,
    "reports:packet": PRIVY,
    "reports:packet-pdf": PRIVY,
    # Here of a packet; a season report is for the crew too.
    "reports:print": PRIVY,
    "reports:print-begin": PRIVY,
    "reports:print-file": PRIVY,
    "reports:print-stop": PRIVY,
}
WRITING = {"records:new", "records:edit", "records:void", "records:undo"}
CREW_WRITES = {
    "plantings",
    "observations",
    "biomass-samples",
    "terminations",
    "applications",
    "compost-batches",
    "grazings",
    "irrigations",
    "mulch-films-and-tarps",
    "soil-tests",
    "harvest-lots",
    "storages",
    "sales",
    "stock-counts",
    "lot-moves",
    "input-lots",
    "calibrations",
    "clean-outs",
    "incidents",
    "duties",
}
OPEN_TO_VISITORS = {
    "sign-in",
    "come-in",
    "password-forgotten",
    "password-sent",
    "password-new",
    "calendar-feed",
    "who",
    "worker",
    "manifest",
    "no-signal",
}

EVERY = list(addresses())
OF_A_FARM = [one for one in EVERY if one.is_of_a_farm]
OF_A_PERSON = [one for one in EVERY if not one.is_of_a_farm]
OF_A_RECORD = [one for one in OF_A_FARM if one.names_a_record]
METHODS = ("get", "post")


@pytest.fixture(scope="module")
def clients(cast):
    """Everybody signed in once, and a visitor."""
    people = [cast.owner, cast.manager, cast.crew, cast.inspector, cast.stranger]
    signed_in = {person: Client() for person in people}
    for person, client in signed_in.items():
        client.force_login(person)
    return {**signed_in, None: Client()}


@pytest.fixture(autouse=True)
def quick_printer(monkeypatch):
    """Whether a paper may be had is asked here; how it looks is tested elsewhere."""
    monkeypatch.setattr("reports.views.print_season", lambda *_: b"%PDF-1.7")
    quick = "reports.inspection.packet_views.print_packet"
    monkeypatch.setattr(quick, lambda *_: b"%PDF-1.7")
    monkeypatch.setattr("reports.seed_views.print_paper", lambda *_: b"%PDF-1.7")
    monkeypatch.setattr("reports.ahead_views.print_paper", lambda *_: b"%PDF-1.7")


# Whose numbers are no business of the crew.
CLOSED_TO_CREW = {"applicator-licences"}


def roles(place):
    allowed = roles_of(place)
    return allowed - {Role.CREW} if place.noun in CLOSED_TO_CREW else allowed


def roles_of(place):
    if place.name in WRITING:
        return WRITERS if place.noun in CREW_WRITES else MANAGERS
    return ROLES.get(place.name, EVERYONE if place.name in INSPECTED else WRITERS)


def asked(client, method, url):
    """An answer whose doings are undone: one role must not spoil it for the next."""
    with transaction.atomic():
        answer = getattr(client, method)(url)
        transaction.set_rollback(True)
    return answer


def asks_to_sign_in(answer):
    return answer.status_code == 302 and answer.url.startswith(reverse("sign-in"))


def test_there_are_addresses_to_try():
    assert len(OF_A_FARM) > 60
    assert OF_A_RECORD


@pytest.mark.parametrize("place", OF_A_FARM, ids=str)
@pytest.mark.parametrize("method", METHODS)
def test_an_address_of_a_farm_lets_in_whom_it_should(method, place, world, clients):
    url = place.at(world.ours)

    def status(person):
        answer = asked(clients[person], method, url)
        return answer.status_code

    assert asks_to_sign_in(getattr(clients[None], method)(url))
    if status(world.owner) == 405:
        assert {status(getattr(world, role)) for role in Role} == {405}
        return
    assert status(world.stranger) == 404
    for role in Role:
        answer = status(getattr(world, role))
        if role in roles(place):
            assert answer < 400, role
        else:
            assert answer == 403, role


@pytest.mark.parametrize("place", OF_A_PERSON, ids=str)
@pytest.mark.parametrize("method", METHODS)
def test_an_address_of_no_farm_is_for_whoever_is_signed_in(
    method, place, world, as_person
):
    url = place.at(world.ours)
    visitor = getattr(as_person(None), method)(url)
    if place.name in {"icon", "language"}:
        assert visitor.status_code in {302, 405}
    elif place.name in OPEN_TO_VISITORS:
        assert visitor.status_code in {200, 405}
    else:
        assert asks_to_sign_in(visitor)
    for person in (world.owner, world.inspector, world.stranger):
        answer = getattr(as_person(person), method)(url)
        assert answer.status_code < 400 or answer.status_code == 405


@pytest.mark.parametrize("place", OF_A_RECORD, ids=str)
@pytest.mark.parametrize("method", METHODS)
def test_another_farms_record_is_not_found_under_ones_own_farm(
    method, place, world, clients
):
    url = place.at(world.theirs, under=world.ours)
    answer = getattr(clients[world.owner], method)(url)
    assert answer.status_code in {404, 405}


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.slug)
def test_another_farms_rows_cannot_be_picked_in_any_form(noun, world, owner_client):
    if noun.begins_at:
        return
    url = reverse("records:new", args=[world.farm.slug, noun.slug])
    for name, theirs in foreign_choices(noun, world):
        sent = {**typed(noun.slug, world.ours), name: theirs.pk}
        before = noun.model.objects.count()
        answer = owner_client.post(url, sent)
        assert answer.status_code == 200, name
        assert said_beside(answer.context["form"], name)
        assert noun.model.objects.count() == before


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.slug)
def test_no_record_is_mended_to_point_at_another_farms(noun, world, owner_client):
    row = world.ours[noun.slug]
    url = reverse("records:edit", args=[world.farm.slug, noun.slug, row.pk])
    # Of some records only the figures are mended, never what they are about.
    if noun.begins_at or owner_client.get(url).status_code != 200:
        return
    for name, theirs in foreign_choices(noun, world, instance=row):
        sent = {**typed(noun.slug, world.ours), name: theirs.pk}
        answer = owner_client.post(url, sent)
        assert answer.status_code == 200, name
        assert said_beside(answer.context["form"], name), name


@pytest.mark.parametrize("act", ACTS, ids=lambda act: act.slug)
def test_no_act_is_written_down_on_another_farms_places(act, world, owner_client):
    """Places are chosen in the address, so a number there may be anybody's."""
    url = reverse("records:write-act", args=[world.farm.slug, act.slug])
    today = dt.date(2026, 9, 30)
    theirs = acts.places(act, world.theirs.farm, today=today)
    before = act.noun.model.objects.count()
    for row in theirs:
        page = owner_client.get(f"{url}?go=1&place={row.pk}")
        assert "sheet" not in page.context
        owner_client.post(url, {"place": row.pk, "go": "1"})
    assert act.noun.model.objects.count() == before


@pytest.mark.parametrize("place", OF_A_FARM, ids=str)
def test_no_page_offers_a_row_of_another_farm(place, world, clients):
    """Neither the forms nor the boxes that narrow a list."""
    answer = clients[world.owner].get(place.at(world.ours))
    rows = [*world.theirs.records.values(), world.theirs.kind, world.stranger]
    theirs = {type(row): row.pk for row in rows}
    for form in forms_of(answer):
        for name, field in form.fields.items():
            if isinstance(field, forms.ModelChoiceField):
                offered = field.queryset.values_list("pk", flat=True)
                number = theirs[field.queryset.model]
                assert number not in offered, name
                with pytest.raises(forms.ValidationError):
                    field.clean(number)


def forms_of(answer):
    """Every form a page was given under any name, with the rows under it."""
    told = answer.context or []
    layers = told if isinstance(told, list) else [told]
    flat = {key: value for one in layers for key, value in one.flatten().items()}
    for value in flat.values():
        for form in value if isinstance(value, list | tuple) else [value]:
            form = getattr(form, "form", form)
            if isinstance(form, forms.BaseForm):
                yield form
                rows = getattr(form, "formsets", [])
                yield from (row.empty_form for row in rows)
            if hasattr(form, "ROWS") and not isinstance(form, type):
                yield form.rows.empty_form


def foreign_choices(noun, world, **options):
    """Each choice a form offers, with a row of the neighbour's that would fit it."""
    rows = [*world.theirs.records.values(), world.theirs.kind]
    theirs = {type(row): row for row in rows}
    form = noun.form(farm=world.farm, today=dt.date(2026, 9, 30), **options)
    parts = [("", form)]
    for rows in getattr(form, "formsets", []):
        parts.append((f"{rows.prefix}-0-", rows.empty_form))
    for before, part in parts:
        for name, field in part.fields.items():
            if isinstance(field, forms.ModelChoiceField):
                yield before + name, theirs[field.queryset.model]


def said_beside(form, name):
    """The messages that stand beside one box of a form, or of its rows."""
    if name in form.fields:
        return form.errors.get(name)
    prefix, place, part = name.rsplit("-", 2)
    (told,) = [rows for rows in form.formsets if rows.prefix == prefix]
    return told.forms[int(place)].errors.get(part)


@pytest.mark.parametrize(
    ("since", "until", "status"),
    [
        (-30, None, 200),
        (-30, 0, 200),
        (-30, -1, 404),
        (0, None, 200),
        (1, None, 404),
    ],
)
def test_a_person_comes_in_from_the_first_day_to_the_last(
    since, until, status, world, as_person
):
    today = dt.datetime.now(dt.UTC).date()
    passing = MembershipFactory(
        farm=world.farm,
        role=Role.INSPECTOR,
        since=today + dt.timedelta(days=since),
        until=None if until is None else today + dt.timedelta(days=until),
    )
    client = as_person(passing.user)
    listed = reverse("records:list", args=[world.farm.slug, "plantings"])
    assert client.get(listed).status_code == status
    # Whose days are over, or have not begun, is told of which farm, without a way in.
    page = client.get("/").content.decode()
    assert world.farm.name in page
    way_in = f'href="{reverse("farm", args=[world.farm.slug])}"'
    assert (way_in in page) == (status == 200)


def test_a_person_who_may_no_longer_sign_in_is_sent_to_the_door(world, as_person):
    client = as_person(world.crew)
    User.objects.filter(pk=world.crew.pk).update(is_active=False)
    assert asks_to_sign_in(client.get(reverse("farm", args=[world.farm.slug])))


def test_a_farm_that_does_not_exist_is_not_found(owner_client):
    assert owner_client.get("/farms/nowhere/").status_code == 404


def test_an_owner_of_two_farms_sees_each_under_its_own_name(world, as_person):
    Membership.objects.create(
        farm=world.theirs.farm,
        user=world.owner,
        role=Role.INSPECTOR,
        since=dt.date(2020, 1, 1),
    )
    client = as_person(world.owner)
    theirs = reverse("records:new", args=[world.theirs.farm.slug, "plantings"])
    assert client.get(theirs).status_code == 403
    assert client.get(reverse("farm", args=[world.theirs.farm.slug])).status_code == 200


def test_a_form_without_its_token_is_refused(world):
    strict = Client(enforce_csrf_checks=True)
    strict.force_login(world.owner)
    url = reverse("records:new", args=[world.farm.slug, "fields"])
    assert strict.post(url, typed("fields", world.ours)).status_code == 403
