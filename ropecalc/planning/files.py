"""Writing files whole or not at all."""

import contextlib
import os
import re
import secrets
from collections.abc import Iterable, Mapping
from pathlib import Path

_DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])", re.IGNORECASE)
"""Names that Windows keeps for devices, whatever ending follows."""
UTF8_MARK = "\ufeff"
"""Before a table: spreadsheets that see it read letters like ö and ° as what they are."""


def check_destination(path: str | Path, read_from: Iterable[Path] = ()) -> Path:
    """``path``, if a file can be written there and it is none of ``read_from``.

    Raises ValueError in words otherwise.
    """
    path = Path(path)
    folder = path.parent
    if not folder.is_dir():
        raise ValueError(f"{path}: the folder {folder} does not exist. Make it first.")
    if path.is_dir():
        raise ValueError(f"{path}: this is a folder. Add a file name to it.")
    if _DEVICES.fullmatch(path.name.partition(".")[0].strip()):
        raise ValueError(f"{path}: Windows keeps this name for a device. Choose another name.")
    if path.exists() and not path.is_file():
        raise ValueError(f"{path}: this is not an ordinary file. Choose another name.")
    for source in read_from:
        if same_file(path, source):
            raise ValueError(
                f"{path}: the site is read from this file. Choose another name to write."
            )
    return path


def same_file(one: str | Path, other: str | Path) -> bool:
    """Whether two names lead to one file, also by links; files that do not exist yet count."""
    if os.path.exists(one) and os.path.exists(other):
        return os.path.samefile(one, other)
    first, second = (os.path.normcase(os.path.realpath(name)) for name in (one, other))
    return first == second


def write_whole(path: str | Path, content: str | bytes) -> None:
    """Write ``content`` at ``path`` so that a failure leaves the old file or none, never a part.

    Raises ValueError in words if it cannot be written.
    """
    write_all({path: content})


def write_all(contents: Mapping[str, str | bytes] | Mapping[str | Path, str | bytes]) -> None:
    """Write several files: all are ready beside their places before the first is put there.

    So a full disk or a folder that refuses leaves every old file as it was. Raises ValueError in
    words if one cannot be written or two have the same name.
    """
    paths = [check_destination(path) for path in contents]
    for index, path in enumerate(paths):
        if any(same_file(path, other) for other in paths[:index]):
            raise ValueError(f"{path}: two results would go into this file. Name two files.")
    ready: dict[str, str] = {}
    path = Path()
    try:
        for path, content in zip(paths, contents.values(), strict=True):
            place = os.path.realpath(path)  # a link stays a link
            ready[place] = _temporary(place)
            _fill(ready[place], content, place)
        for place, temporary in ready.items():
            path = Path(place)
            os.replace(temporary, place)
    except OSError as error:
        raise ValueError(f"{path}: cannot be written ({error.strerror}).") from None
    finally:
        for temporary in ready.values():
            with contextlib.suppress(OSError):
                os.unlink(temporary)


def _temporary(place: str) -> str:
    folder, name = os.path.split(place)
    return os.path.join(folder, f".{name}.{secrets.token_hex(4)}")


def _fill(temporary: str, content: str | bytes, place: str) -> None:
    """Write a new file with the access rights of the one at ``place``, else the usual ones."""
    data = content.encode("utf-8") if isinstance(content, str) else content
    handle = os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o666)
    with os.fdopen(handle, "wb") as stream:
        stream.write(data)
        stream.flush()
        os.fsync(stream.fileno())
    with contextlib.suppress(FileNotFoundError):
        os.chmod(temporary, os.stat(place).st_mode & 0o777)


_BINARY: int = getattr(os, "O_BINARY", 0)
"""Windows would otherwise change the ends of lines."""
