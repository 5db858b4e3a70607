"""The calendar feed against RFC 5545, and who may read it."""

import datetime as dt
import re

import pytest
from django.urls import reverse
from hypothesis import given
from hypothesis import strategies as st

from farm.models import Membership
from records.feeds import Event, calendar, folded
from records.models import CalendarAddress
from tests.factories import DutyFactory

WRITTEN = dt.datetime(2026, 7, 1, 18, 30, tzinfo=dt.UTC)
# RFC 5545: where each rule stands.
NEEDED_OF_CALENDAR = ("PRODID", "VERSION")  # 3.6
NEEDED_OF_EVENT = ("UID", "DTSTAMP", "DTSTART")  # 3.6.1
UTC_STAMP = r"\d{8}T\d{6}Z"  # 3.8.7.2
DAY = r"\d{8}"  # 3.3.4


def faults(sent):
    """Everything RFC 5545 would find wrong with a calendar of whole days."""
    found = []
    if re.search(rb"(?<!\r)\n|\r(?!\n)", sent) or not sent.endswith(b"\r\n"):
        found.append("3.1 lines end in CRLF")
    lines = sent.split(b"\r\n")
    found += [f"3.1 line of {len(row)} octets" for row in lines if len(row) > 75]
    whole = sent.decode().replace("\r\n ", "").split("\r\n")[:-1]
    if [*whole[:1], *whole[-1:]] != ["BEGIN:VCALENDAR", "END:VCALENDAR"]:
        found.append("3.4 begins and ends as a calendar")
    head, *events = "\n".join(whole).split("BEGIN:VEVENT\n")
    for name in NEEDED_OF_CALENDAR:
        if head.count(f"\n{name}:") != 1:
            found.append(f"3.6 {name} once")
    return found + _faults_of(events)


def _faults_of(events):
    found, keys = [], []
    for text in events:
        told = dict(row.split(":", 1) for row in text.splitlines() if ":" in row)
        names = {name.partition(";")[0]: value for name, value in told.items()}
        found += [f"3.6.1 {name}" for name in NEEDED_OF_EVENT if name not in names]
        keys.append(names.get("UID"))
        if not re.fullmatch(UTC_STAMP, names.get("DTSTAMP", "")):
            found.append("3.8.7.2 stamp in UTC")
        first, after = told["DTSTART;VALUE=DATE"], told["DTEND;VALUE=DATE"]
        if not re.fullmatch(DAY, first) or not re.fullmatch(DAY, after):
            found.append("3.3.4 days")
        if after <= first:
            found.append("3.8.2.2 ends after it starts")
        if re.search(r"(?<!\\)[;,]", names["SUMMARY"].replace(r"\\", "")):
            found.append("3.3.11 text escaped")
    if len(keys) != len(set(keys)):
        found.append("3.8.4.7 keys are one's own")
    return found


def event(**more):
    day = dt.date(2026, 7, 10)
    return Event(**{
        "key": "1@duties", "title": "End it · North", "first": day, "last": day,
        "written_at": WRITTEN, **more,
    })  # fmt: skip


def test_a_calendar_has_no_faults():
    sent = calendar("Alder Hill", [event(), event(key="2@duties", words="a, b; c\nd")])
    assert faults(sent) == []


def test_the_checks_themselves_find_faults():
    good = calendar("Alder Hill", [event()])
    assert faults(good.replace(b"\r\n", b"\n"))
    assert faults(good.replace(b"VERSION:2.0\r\n", b""))
    assert faults(good.replace(b"Z\r\n", b"\r\n", 1))
    assert faults(calendar("A", [event(), event()])) == ["3.8.4.7 keys are one's own"]


@given(st.text(), st.text())
def test_any_words_make_a_calendar_without_faults(title, words):
    assert faults(calendar(title, [event(title=title, words=words)])) == []


@given(st.text(alphabet=st.characters(exclude_categories=["Cs", "Cc"]), max_size=300))
def test_a_folded_line_is_the_same_line(line):
    parts = list(folded(line))
    assert parts[0] + "".join(part[1:] for part in parts[1:]) == line
    assert all(len(part.encode()) <= 75 for part in parts)


def test_the_last_day_of_a_duty_is_counted_in():
    sent = calendar("A", [event(last=dt.date(2026, 7, 12))]).decode()
    assert "DTSTART;VALUE=DATE:20260710" in sent and "DTEND;VALUE=DATE:20260713" in sent


# --- The address ------------------------------------------------------------


@pytest.fixture
def address(world, as_person):
    page = reverse("records:calendar", args=[world.farm.slug])
    return as_person(world.crew).post(page).context["address"]


def test_whoever_knows_the_address_reads_the_persons_duties(world, as_person, address):
    here = {"farm": world.farm, "written_by": world.owner}
    field = world.ours["fields"]
    DutyFactory(**here, field=field, who_for=world.crew, words="Mow, then rake")
    DutyFactory(**here, field=field, who_for=world.owner, words="Ring the buyer")
    answer = as_person(None).get(address)
    assert answer["Content-Type"].startswith("text/calendar")
    assert faults(answer.content) == []
    told = answer.content.decode()
    assert r"Mow\, then rake" in told and "Ring the buyer" not in told


def test_the_token_itself_is_not_kept(world, address):
    token = address.rpartition("/")[2].removesuffix(".ics")
    kept = CalendarAddress.objects.filter(user=world.crew).values_list("token_hash")
    assert token not in {row for (row,) in kept} and len(token) >= 40


def test_a_new_address_closes_the_old_one(world, as_person, address):
    page = reverse("records:calendar", args=[world.farm.slug])
    new = as_person(world.crew).post(page).context["address"]
    assert as_person(None).get(address).status_code == 404
    assert as_person(None).get(new).status_code == 200


def test_an_address_taken_back_opens_nothing(world, as_person, address):
    revoke = reverse("records:calendar-revoke", args=[world.farm.slug])
    as_person(world.crew).post(revoke)
    assert as_person(None).get(address).status_code == 404


def test_an_address_closes_when_its_person_has_left(world, as_person, address):
    gone = dt.date(2020, 2, 1)
    Membership.objects.filter(user=world.crew).update(until=gone)
    assert as_person(None).get(address).status_code == 404


def test_a_guessed_token_opens_nothing(world, as_person):
    guess = reverse("calendar-feed", args=["0" * 43])
    assert as_person(None).get(guess).status_code == 404
