"""The system libraries the printed report needs, and how each system gets them."""

import ctypes
import ctypes.util
import os
import shutil
import subprocess
import sys
from collections.abc import Callable

LINUX = (
    "libgobject-2.0.so.0",
    "libpango-1.0.so.0",
    "libpangoft2-1.0.so.0",
    "libharfbuzz.so.0",
    "libfontconfig.so.1",
)
ELSEWHERE = ("pango-1.0", "pangoft2-1.0")
DEBIAN = ("libpango-1.0-0", "libpangoft2-1.0-0", "fonts-dejavu-core")
BY_INSTALLER = {
    "apt-get": "sudo apt-get install " + " ".join(DEBIAN),
    "dnf": "sudo dnf install pango dejavu-sans-fonts",
    "zypper": "sudo zypper install libpango-1_0-0 dejavu-fonts",
    "pacman": "sudo pacman -S pango ttf-dejavu",
    "apk": "sudo apk add pango fontconfig ttf-dejavu",
    "brew": "brew install pango",
}
WINDOWS = (
    "install MSYS2 from https://www.msys2.org, run there: "
    "pacman -S mingw-w64-x86_64-pango\n"
    "    then set WEASYPRINT_DLL_DIRECTORIES=C:\\msys64\\mingw64\\bin"
)
Which = Callable[[str], str | None]


def present(platform: str = sys.platform) -> bool:
    """Tell whether the libraries can be loaded."""
    try:
        if platform.startswith("linux"):
            for name in LINUX:
                ctypes.CDLL(name)
            return True
        return all(
            ctypes.util.find_library(name) or ctypes.util.find_library(f"lib{name}-0")
            for name in ELSEWHERE
        )
    except OSError:
        return False


def may_install(which: Which = shutil.which) -> bool:
    """Tell whether this account can install them without being asked for more."""
    root = hasattr(os, "geteuid") and os.geteuid() == 0
    return root and sys.platform.startswith("linux") and which("apt-get") is not None


def install() -> bool:
    """Install them with apt-get, refreshing its lists if it does not know them."""
    wanted = ["apt-get", "install", "-y", "--no-install-recommends", *DEBIAN]
    return _quietly(wanted) or (_quietly(["apt-get", "update"]) and _quietly(wanted))


def advice(platform: str = sys.platform, which: Which = shutil.which) -> str:
    """Give the one line that installs them here."""
    if platform == "win32":
        return WINDOWS
    for installer, line in BY_INSTALLER.items():
        if which(installer):
            return line
    return (
        "brew install pango" if platform == "darwin" else "install Pango 1.44 or newer"
    )


def _quietly(command: list[str]) -> bool:
    environ = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    try:
        done = subprocess.run(command, env=environ, capture_output=True, check=False)
    except OSError:
        return False
    return done.returncode == 0
