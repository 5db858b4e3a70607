"""The demonstration farm: three invented years, from a file a person can read."""

from records.reading.demo.loading import layered, load, load_lines, read

__all__ = ["layered", "load", "load_lines", "read"]
