"""The days on which made rows lie."""

import datetime as dt

WRITTEN_AT = dt.datetime(2026, 9, 30, 12, tzinfo=dt.UTC)


ARRIVED = dt.date(2020, 1, 1)


SOWN = dt.date(2026, 6, 1)


FLOWERED = dt.date(2026, 7, 4)


ENDED = dt.date(2026, 7, 20)
