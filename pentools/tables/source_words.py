"""The sources of a table's row in words, with how each was read."""

from __future__ import annotations

from collections.abc import Iterable

from pentools import tables

__all__ = ["source_words"]


def source_words(keys: str | Iterable[str], *names: str) -> tuple[str, ...]:
    """What stands behind source keys.

    Parameters
    ----------
    keys : str or iterable of str
        Keys, one text with semicolons between them or one by one.
    *names : str
        The tables whose sidecars explain them.

    Returns
    -------
    tuple of str
        One text a key, without repeats; a key that no sidecar explains stays as it is.
    """
    texts = {source["key"]: source["text"] for name in names for source in tables.sidecar(name)["sources"]}
    wanted = [keys] if isinstance(keys, str) else list(keys)
    parts = [part.strip() for text in wanted for part in text.split(";")]
    return tuple(dict.fromkeys(str(texts.get(part, part)) for part in parts))
