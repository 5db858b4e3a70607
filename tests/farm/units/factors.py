"""What the tests of measures share."""

EXACT = 1e-12
