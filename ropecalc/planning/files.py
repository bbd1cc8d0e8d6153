"""Writing a file whole or not at all."""

import contextlib
import os
import tempfile
from pathlib import Path


def check_destination(path: str | Path) -> Path:
    """``path``, if a file can be written there. Raises ValueError in words otherwise."""
    path = Path(path)
    folder = path.parent
    if not folder.is_dir():
        raise ValueError(f"{path}: the folder {folder} does not exist. Make it first.")
    if path.is_dir():
        raise ValueError(f"{path}: this is a folder. Add a file name to it.")
    return path


def write_whole(path: str | Path, content: str | bytes) -> None:
    """Write ``content`` at ``path`` so that a failure leaves the old file or none, never a part.

    Raises ValueError in words if it cannot be written.
    """
    path = check_destination(path)
    data = content.encode("utf-8") if isinstance(content, str) else content
    try:
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    except OSError as error:
        raise ValueError(f"{path}: cannot write here ({error.strerror}).") from None
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        os.chmod(temporary, _mode_of(path))
        os.replace(temporary, path)
    except OSError as error:
        raise ValueError(f"{path}: cannot be written ({error.strerror}).") from None
    finally:
        with contextlib.suppress(FileNotFoundError):
            os.unlink(temporary)


def _mode_of(path: Path) -> int:
    """The access rights of the file that is replaced, else the usual ones for a new file."""
    try:
        return path.stat().st_mode & 0o777
    except FileNotFoundError:
        mask = os.umask(0)
        os.umask(mask)
        return 0o666 & ~mask
