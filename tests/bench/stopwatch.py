"""Seconds, queries and memory, measured on the path that a page takes."""

import resource
import statistics
import sys
import time
from collections import defaultdict
from contextlib import ExitStack, contextmanager
from functools import wraps
from unittest import mock

from django.db import connection
from django.test.utils import CaptureQueriesContext

BYTES_A_UNIT = 1 if sys.platform == "darwin" else 1024


class Stopwatch:
    """Seconds by station, the middle of several laps."""

    def __init__(self):
        self.laps = defaultdict(list)

    def __getitem__(self, station):
        return statistics.median(self.laps[station])

    def timed(self, station, work):
        @wraps(work)
        def clocked(*args, **more):
            start = time.perf_counter()
            try:
                return work(*args, **more)
            finally:
                self.laps[station].append(time.perf_counter() - start)

        return clocked

    @contextmanager
    def at(self, stations):
        """Time functions where they are called from: names of stations by path."""
        with ExitStack() as stack:
            for path, name in stations.items():
                module, _, attribute = path.rpartition(".")
                work = getattr(sys.modules[module], attribute)
                stack.enter_context(mock.patch(path, self.timed(name, work)))
            yield


def queries_of(work):
    """How many times some work asks the database."""
    with CaptureQueriesContext(connection) as asked:
        work()
    return len(asked)


def peak_mb():
    """The most memory this process ever held."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most * BYTES_A_UNIT / 1e6
