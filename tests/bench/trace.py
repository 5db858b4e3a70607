"""How long the way of any lot takes on the demonstration farm.

Every so many of its lots is picked, as an inspector would, and its whole page asked
for: python -m tests.bench.trace. Seconds are those of the processor.
"""

import argparse
from functools import partial

from django.core.management import call_command
from django.test import Client
from django.test.utils import override_settings, setup_test_environment
from django.urls import reverse

from farm.models import Farm, User
from reports.papers.trace import choice_paper
from tests.bench.farms import TODAY
from tests.bench.lists import PLAIN_FILES
from tests.bench.stopwatch import Stopwatch

AIM_S = 1.0


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.bench.trace")
    parser.add_argument("--every", type=int, default=10, help="pick one lot of so many")
    every = parser.parse_args().every
    setup_test_environment()
    call_command("migrate", verbosity=0)
    owner = User.objects.create_user("owner@example.org", name="Ada")
    call_command("load_demo", owner=owner.email, with_faults=True, verbosity=0)
    farm = Farm.objects.get()
    with override_settings(STORAGES=PLAIN_FILES):
        _tell(farm, owner, every)


def _tell(farm, owner, every):
    client, watch = Client(), Stopwatch()
    client.force_login(owner)
    choices = choice_paper(farm, today=TODAY)["choices"]
    stops = [stop for choice in choices for stop in choice.stops]
    for stop in stops[::every]:
        at = reverse("reports:trace", args=[farm.slug, stop.noun, stop.id])
        page = watch.timed("way", partial(client.get, at))()
        assert page.status_code == 200, at
    slowest = max(watch.laps["way"])
    print(f"{len(watch.laps['way'])} of {len(stops)} lots picked")
    print(f"the middle way {watch['way']:.2f} s, the slowest {slowest:.2f} s")
    print(f"aim {AIM_S:.0f} s: {'met' if slowest <= AIM_S else 'MISSED'}")


if __name__ == "__main__":
    main()
