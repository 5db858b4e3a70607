"""Print long papers beside the server, until told to end."""

from __future__ import annotations

import datetime as dt
import threading
from argparse import ArgumentParser
from typing import Any

from django.core.management.base import BaseCommand
from django.db import connection
from django.utils import timezone
from django.utils.crypto import get_random_string
from django_tasks import DEFAULT_TASK_BACKEND_ALIAS, DEFAULT_TASK_QUEUE_NAME
from django_tasks_db.management.commands.db_worker import Worker

from farm.tidying import clear_door
from reports.ledger.prints import clear_old
from reports.prints.jobs import put_lost_back

LOOK_S, SWEEP_S = 1.0, 20.0
A_DAY = dt.timedelta(days=1)


class Command(BaseCommand):
    help = "Print long papers beside the server, until told to end."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument(
            "--batch", action="store_true", help="end when nothing is waiting"
        )

    def handle(self, *args: Any, batch: bool, **options: Any) -> None:
        worker = Worker(
            queue_names=[DEFAULT_TASK_QUEUE_NAME],
            interval=LOOK_S,
            batch=batch,
            backend_name=DEFAULT_TASK_BACKEND_ALIAS,
            startup_delay=False,
            max_tasks=None,
            worker_id=get_random_string(32),
            excluded_queue_names=[],
        )
        put_lost_back()
        clear_old()
        clear_door(timezone.now())
        if not batch:
            worker.configure_signals()
            threading.Thread(target=_sweep, daemon=True).start()
        worker.run()


def _sweep() -> None:
    """Look for papers whose worker was lost, and for old files, time and again."""
    pause, door = threading.Event(), timezone.now()
    while not pause.wait(SWEEP_S):
        put_lost_back()
        clear_old()
        if timezone.now() - door > A_DAY:
            door = timezone.now()
            clear_door(door)
        connection.close()
