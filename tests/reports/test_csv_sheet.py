"""Sheets for other programs carry text, never something that is reckoned or run.

The starts are those of the OWASP page "CSV Injection".
"""

import csv
import io

import pytest

from reports.csv_sheet import csv_answer


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "'=", "''@"])
def test_no_cell_begins_a_formula(start):
    hostile = f"{start}HYPERLINK(1)"
    answer = csv_answer("x", ["name"], [[hostile]])
    text = answer.content.decode("utf-8-sig")
    cell = list(csv.reader(io.StringIO(text, newline="")))[1][0]
    assert cell == f"'{hostile}"
    assert "attachment" in answer.headers["Content-Disposition"]
    assert answer.headers["Content-Type"].startswith("text/csv")


def test_a_number_stays_a_number():
    answer = csv_answer("x", ["n"], [[-1.5]])
    assert answer.content.decode("utf-8-sig").splitlines()[1] == "-1.5"
