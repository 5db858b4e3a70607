"""Walking the books from any lot back and forward, and striking balances."""

from reports.calc.trace.balance import balances
from reports.calc.trace.path import startable, trace, woven

__all__ = ["balances", "startable", "trace", "woven"]
