"""A picture on its way into a job's photos folder: looked at before it is stored, and never over another one."""

from __future__ import annotations

import io
from pathlib import Path

from pentools.errors import InputError, RecordError

__all__ = ["lay_in"]

ENDINGS = {"JPEG": ".jpg", "PNG": ".png", "WEBP": ".webp", "TIFF": ".tif"}


def lay_in(folder: Path, name: str, content: bytes) -> str:
    """Store a picture.

    Parameters
    ----------
    folder : Path
        The job's photos folder; made where it is missing.
    name : str
        The file's own name.
    content : bytes
        The file.

    Returns
    -------
    str
        The name it got: its own with the ending of what it is, and a number where another lies there already.

    Raises
    ------
    InputError
        If it is no picture that can be read.
    RecordError
        If it cannot be written.
    """
    from PIL import Image, UnidentifiedImageError

    try:
        with Image.open(io.BytesIO(content)) as picture:
            picture.load()
            ending = ENDINGS.get(picture.format or "", "")
    except (UnidentifiedImageError, OSError, ValueError, Image.DecompressionBombError):
        ending = ""
    if not ending:
        raise InputError("picture", "a JPEG, PNG, WebP or TIFF file that can be read", name)
    stem = "".join(c if c.isalnum() or c in "-_" else "-" for c in Path(name).stem).strip("-") or "picture"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        number, fresh = 1, f"{stem}{ending}"
        while (folder / fresh).exists():
            if (folder / fresh).read_bytes() == content:
                return fresh
            number += 1
            fresh = f"{stem}-{number}{ending}"
        (folder / fresh).write_bytes(content)
    except OSError as error:
        raise RecordError(f"{name} could not be stored ({error.strerror or error}).") from error
    return fresh
