"""The one door to the tables: rows become plain values, in few queries."""

from reports.ledger.register import Register, season_register
from reports.ledger.season import SeasonLedger, season_ledger

__all__ = ["Register", "SeasonLedger", "season_ledger", "season_register"]
