"""Seconds, queries and memory, measured on the path that a page takes."""

import os
import resource
import statistics
import sys
from collections import defaultdict
from contextlib import ExitStack, contextmanager
from functools import wraps
from pathlib import Path
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
            start = processor_s()
            try:
                return work(*args, **more)
            finally:
                self.laps[station].append(processor_s() - start)

        return clocked

    @contextmanager
    def at(self, stations):
        """Time functions wherever a room of ours has taken them up."""
        with ExitStack() as stack:
            for work, name in stations.items():
                clocked = self.timed(name, work)
                for module, attribute in _held_as(work):
                    patch = mock.patch.object(module, attribute, clocked)
                    stack.enter_context(patch)
            yield


def _held_as(work):
    """Every module that calls a function by a name of its own, with that name."""
    return [
        (module, attribute)
        for name, module in list(sys.modules.items())
        if name.startswith("reports")
        for attribute, held in list(vars(module).items())
        if held is work
    ]


def processor_s():
    """Seconds of the processor so far, which a busy machine does not stretch."""
    whose = (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)
    spent = [resource.getrusage(one) for one in whose]
    return sum(one.ru_utime + one.ru_stime for one in spent)


def family_s():
    """The same with every process below this one, however it was started.

    Only waited-for children of its own are in the sums that a process is told; of
    those that a server forked for it, the kernel's table of processes tells, where
    there is one.
    """
    told = dict(filter(None, map(_told_of, Path("/proc").glob("[0-9]*/stat"))))
    if not told:
        return processor_s()
    below, size = {os.getpid()}, 0
    while size != len(below):
        size = len(below)
        below |= {pid for pid, (parent, _) in told.items() if parent in below}
    ticks = sum(spent for pid, (_, spent) in told.items() if pid in below)
    return ticks / os.sysconf("SC_CLK_TCK")


def _told_of(path):
    """A process, its parent, and the ticks that it and its children worked."""
    try:
        told = path.read_text().rpartition(")")[2].split()
    except OSError:
        return None
    return int(path.parent.name), (int(told[1]), sum(map(int, told[11:15])))


def queries_of(work):
    """How many times some work asks the database."""
    with CaptureQueriesContext(connection) as asked:
        work()
    return len(asked)


def peak_mb():
    """The most memory this process ever held."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most * BYTES_A_UNIT / 1e6
