"""What stops a set-up, said in a sentence the grower can act on."""


class SetupError(Exception):
    """A set-up that cannot go on; its text is shown as it stands."""
