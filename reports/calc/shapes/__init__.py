"""Frozen values that cross the border of the workshop."""
