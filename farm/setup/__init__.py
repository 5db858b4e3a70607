"""Setting the farm up on a machine: standard library only, importable anywhere."""
