#!/usr/bin/env python3
"""Set up, serve and test: python3 manage.py start, python3 manage.py test."""

# This one file stays readable to every Python, so that an old one can say so.
import sys

if sys.version_info < (3, 11):
    sys.exit(
        "This program needs Python 3.11 or newer; this is Python %d.%d.\n"
        "Try a newer one by its name, for example: python3.11 manage.py start\n"
        "Or install one: https://www.python.org/downloads/" % sys.version_info[:2]
    )

from farm.setup.launch import main

if __name__ == "__main__":
    sys.exit(main(sys.argv))
