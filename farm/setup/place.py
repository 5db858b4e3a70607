"""Where a farm's data lives: a folder outside the checkout, and the key in it."""

import errno
import hashlib
import os
import secrets
import sys
from collections.abc import Mapping
from pathlib import Path

from farm.setup.errors import SetupError

CHECKOUT = Path(__file__).resolve().parents[2]
NAME = "cover-between"
KEY_FILE = "secret-key"
SHORTEST_KEY = 32
PRIVATE = 0o077
REMEDIES = {
    errno.ENOSPC: "The disk is full. Free some space and start again.",
    errno.EDQUOT: "The disk quota is used up. Free some space and start again.",
    errno.EROFS: "That disk is read-only.",
    errno.EACCES: "This account may not write there.",
    errno.EPERM: "This account may not write there.",
    errno.ENOTDIR: "Part of that path is a file, not a folder.",
    errno.EEXIST: "There is a file of that name, not a folder.",
}


def personal_place(
    environ: Mapping[str, str], home: Path, platform: str = sys.platform
) -> Path:
    """Give the folder in which this kind of machine keeps a person's data."""
    if platform == "win32":
        said, usual = environ.get("LOCALAPPDATA"), home / "AppData" / "Local"
    elif platform == "darwin":
        said, usual = None, home / "Library" / "Application Support"
    else:
        said, usual = environ.get("XDG_DATA_HOME"), home / ".local" / "share"
    return (Path(said) if said and Path(said).is_absolute() else usual) / NAME


def data_folder(
    environ: Mapping[str, str] = os.environ, checkout: Path = CHECKOUT
) -> Path:
    """Name the data folder: FARM_DATA, or one of its own for every checkout."""
    said = environ.get("FARM_DATA", "").strip()
    mark = hashlib.sha256(os.fsencode(checkout)).hexdigest()[:10]
    try:
        if said:
            return Path(said).expanduser().absolute()
        home = Path.home()
    except RuntimeError as error:
        raise SetupError(
            "This account has no home folder to keep the farm's data in.\n"
            "Name a folder for it: FARM_DATA=/path/to/folder"
        ) from error
    return personal_place(environ, home) / mark


def made(folder: Path) -> Path:
    """Make a folder only its owner can read, unless it is there already."""
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        raise unwritable(folder, error) from error
    if not os.access(folder, os.W_OK | os.X_OK):
        raise unwritable(folder, OSError(errno.EACCES, os.strerror(errno.EACCES)))
    return folder


def unwritable(folder: Path, error: OSError) -> SetupError:
    """Say why a folder takes no files, and what to do about it."""
    remedy = REMEDIES.get(error.errno or 0, f"{error.strerror or error}.")
    return SetupError(
        f"Cannot write in {folder}.\n{remedy}\n"
        "To keep the farm's data elsewhere, name a folder: FARM_DATA=/path/to/folder"
    )


def secret_key(folder: Path) -> str:
    """Read the key that signs sessions, or make it once for its owner's eyes only."""
    path = folder / KEY_FILE
    try:
        if not path.exists():
            _keep(path, secrets.token_urlsafe(50))
        key = path.read_text("ascii").strip()
    except UnicodeDecodeError:
        key = ""
    except OSError as error:
        raise unwritable(folder, error) from error
    if len(key) < SHORTEST_KEY:
        raise SetupError(
            f"The secret key in {path} is damaged.\n"
            "Delete that file and start again; everyone then signs in anew."
        )
    return key


def _keep(path: Path, text: str) -> None:
    """Write a new file nobody else can read; whoever came first wins."""
    draft = path.with_name(f"{path.name}.{secrets.token_hex(4)}")
    try:
        with os.fdopen(
            os.open(draft, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600), "w"
        ) as file:
            file.write(text)
        if not path.exists():
            draft.replace(path)
    finally:
        draft.unlink(missing_ok=True)
