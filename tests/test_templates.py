"""Every page as written: tables that can be heard, words that can be translated."""

import re

import pytest
from django.template.loader import get_template

from tests.places import ROOT

TEMPLATES = sorted((ROOT / "templates").rglob("*.html"))
NAMES = [path.relative_to(ROOT).as_posix() for path in TEMPLATES]
TAGS = r"\{%.*?%\}"
SAID = r"\{%-?\s*blocktrans(?:late)?\b.*?\{%\s*endblocktrans(?:late)?\s*%\}"
# Attributes whose words a person reads or hears.
SPOKEN = r'\b(?:alt|aria-label|placeholder|title|data-label)="([^"]*)"'
WORD = r"[A-Za-zÀ-ÿ]{3,}"


@pytest.fixture(params=TEMPLATES, ids=NAMES)
def page(request):
    return request.param.read_text(encoding="utf-8")


def without(text, *patterns):
    for pattern in patterns:
        text = re.sub(pattern, " ", text, flags=re.DOTALL)
    return text


def test_there_are_pages_to_look_at():
    assert len(TEMPLATES) > 20


def test_every_table_has_a_caption(page):
    for table in re.findall(r"<table\b.*?</table>", page, flags=re.DOTALL):
        assert re.match(r"<table\b[^>]*>\s*<caption\b", table), table[:120]


def test_every_heading_cell_says_what_it_heads(page):
    plain = without(page, TAGS)
    headings = re.findall(r"<th\b[^>]*>", plain)
    assert [cell for cell in headings if 'scope="' not in cell] == []


def test_no_style_and_no_script_is_written_into_a_page(page):
    plain = without(page, TAGS, r"\{\{.*?\}\}")
    assert re.findall(r"<style\b|\sstyle=|\son[a-z]+=|javascript:", plain) == []
    assert re.findall(r"<script\b(?![^>]*\bsrc=)[^>]*>", plain) == []


def test_nothing_is_fetched_from_another_machine(page):
    assert re.findall(r'\b(?:src|href)="(?:https?:)?//[^"]*"', page) == []


def test_every_form_that_writes_is_guarded_against_forgery(page):
    for form in re.findall(r'<form\b[^>]*method="post".*?</form>', page, re.DOTALL):
        assert "{% csrf_token %}" in form


def test_every_word_a_person_reads_can_be_translated(page):
    text = without(page, r"<!--.*?-->", r"\{#.*?#\}", SAID, TAGS, r"\{\{.*?\}\}")
    spoken = " ".join(re.findall(SPOKEN, text))
    shown = without(text, r"<[^>]*>")
    assert re.findall(WORD, f"{spoken} {shown}") == []


def test_no_value_is_let_through_unescaped(page):
    assert re.findall(r"\|\s*safe\b|\bautoescape off\b", page) == []


def test_every_input_written_by_hand_has_a_label(page):
    plain = without(page, r'<input\b[^>]*type="hidden"[^>]*>')
    for name in re.findall(r'<(?:input|select|textarea)\b[^>]*\bid="([^"]+)"', plain):
        assert f'for="{name}"' in plain
    unlabelled = without(plain, r"<label\b.*?</label>")
    for field in re.findall(r"<(?:input|select|textarea)\b[^>]*>", unlabelled):
        assert "id=" in field or "aria-label" in field


@pytest.mark.parametrize("name", NAMES)
def test_every_page_can_be_read_by_the_template_engine(name):
    get_template(name.removeprefix("templates/"))
