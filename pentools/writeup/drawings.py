"""Drawings (SVG) that come from a notebook's outputs: only what is drawn goes on, nothing that is written beside it."""

from __future__ import annotations

import base64
import binascii
import re
from collections.abc import Callable
from xml.etree import ElementTree as Tree

from pentools.writeup.photos import embed_bytes

__all__ = ["clean_svg"]

_SVG, _LINK = "http://www.w3.org/2000/svg", "http://www.w3.org/1999/xlink"
_ELEMENTS = frozenset(
    [
        "svg",
        "g",
        "path",
        "rect",
        "circle",
        "ellipse",
        "line",
        "polyline",
        "polygon",
        "text",
        "tspan",
        "textPath",
        "defs",
        "linearGradient",
        "radialGradient",
        "stop",
        "clipPath",
        "mask",
        "pattern",
        "marker",
        "symbol",
        "use",
        "image",
        "style",
    ]
)
_WRITTEN_IN = frozenset({"text", "tspan", "textPath"})
_ATTRIBUTES = frozenset(
    [
        "x",
        "y",
        "x1",
        "y1",
        "x2",
        "y2",
        "dx",
        "dy",
        "cx",
        "cy",
        "r",
        "rx",
        "ry",
        "fx",
        "fy",
        "d",
        "points",
        "width",
        "height",
        "viewBox",
        "preserveAspectRatio",
        "transform",
        "rotate",
        "pathLength",
        "fill",
        "fill-opacity",
        "fill-rule",
        "stroke",
        "stroke-width",
        "stroke-opacity",
        "stroke-linecap",
        "stroke-linejoin",
        "stroke-miterlimit",
        "stroke-dasharray",
        "stroke-dashoffset",
        "opacity",
        "color",
        "clip-path",
        "clip-rule",
        "mask",
        "marker-start",
        "marker-mid",
        "marker-end",
        "font-family",
        "font-size",
        "font-style",
        "font-weight",
        "font-stretch",
        "font-variant",
        "text-anchor",
        "text-decoration",
        "dominant-baseline",
        "alignment-baseline",
        "baseline-shift",
        "letter-spacing",
        "word-spacing",
        "textLength",
        "lengthAdjust",
        "writing-mode",
        "offset",
        "stop-color",
        "stop-opacity",
        "gradientUnits",
        "gradientTransform",
        "spreadMethod",
        "patternUnits",
        "patternContentUnits",
        "patternTransform",
        "clipPathUnits",
        "maskUnits",
        "maskContentUnits",
        "markerWidth",
        "markerHeight",
        "markerUnits",
        "orient",
        "refX",
        "refY",
        "startOffset",
        "overflow",
        "shape-rendering",
        "text-rendering",
        "paint-order",
        "vector-effect",
        "visibility",
        "version",
    ]
)
_OF_STYLE = _ATTRIBUTES - {"d", "points", "version", "transform"}
_VALUE = re.compile(r"[\w\s.,;:#%()+\-*/|\"'°]*")
_LONGEST = 8_000_000  # letters; a drawing of more is a picture
_DEEPEST = 60


def clean_svg(text: str, kept_back: Callable[[bytes], bool] | None = None) -> str | None:
    """A drawing made anew from what is drawn in it.

    Parameters
    ----------
    text : str
        An SVG file.
    kept_back : callable or None
        Takes the file of a photograph embedded in the drawing, and says whether it must not be shown.

    Returns
    -------
    str or None
        The drawing; None where it is no well-formed SVG, or holds definitions of its own (a document type with entities).

    Notes
    -----
    Only shapes, letters, gradients, patterns and embedded photographs are kept, with the attributes that say how they are
    drawn: an allow-list, from the elements of Scalable Vector Graphics 1.1 (W3C, 2011). Metadata, titles, descriptions,
    comments, processing instructions, foreign and editors' elements, scripts, handlers, links, animations and what is
    not displayed are gone; names of elements are numbered anew; photographs are made anew from their pixels.
    """
    if len(text) > _LONGEST or "<!ENTITY" in text.upper():
        return None
    bare = re.sub(r"<!DOCTYPE[^>\[]*>", "", text, count=1, flags=re.IGNORECASE)
    if "<!DOCTYPE" in bare.upper():
        return None
    try:
        root = Tree.fromstring(bare.strip().encode())  # noqa: S314 - without a document type there are no entities to expand
    except (Tree.ParseError, ValueError, RecursionError):
        return None
    if root.tag not in (f"{{{_SVG}}}svg", "svg"):
        return None
    cleaner = _Cleaner(root, kept_back)
    made = cleaner.element(root, 0)
    if made is None:
        return None
    made.set("xmlns", _SVG)
    return Tree.tostring(made, encoding="unicode")


class _Cleaner:
    """One drawing: the new names of its elements, and whether its style sheet can be kept."""

    def __init__(self, root: Tree.Element, kept_back: Callable[[bytes], bool] | None) -> None:
        self._kept_back = kept_back
        self._names: dict[str, str] = {}
        for node in root.iter():
            if isinstance(node.tag, str) and (name := node.get("id")):
                self._names.setdefault(name, f"n{len(self._names) + 1}")
        sheets = [_sheet(node.text or "") for node in root.iter() if _local(node.tag) == "style"]
        self._classes = set(re.findall(r"\.([A-Za-z_][\w-]*)", " ".join(sheets)))

    def element(self, node: Tree.Element, depth: int) -> Tree.Element | None:
        """An element with what may stay of it; None where nothing may."""
        tag = _local(node.tag)
        if tag not in _ELEMENTS or depth > _DEEPEST or _not_displayed(node):
            return None
        if tag == "style":
            return self._style(node)
        made = Tree.Element(tag)
        for name, value in node.attrib.items():
            self._attribute(made, name, value)
        if tag == "image" and not made.get("href"):
            return None
        if tag in _WRITTEN_IN:
            made.text = node.text
        for child in node:
            kept = self.element(child, depth + 1)
            if kept is not None:
                made.append(kept)
                if tag in _WRITTEN_IN:
                    kept.tail = child.tail
            elif tag in _WRITTEN_IN and child.tail:
                _append_text(made, child.tail)
        return made

    def _attribute(self, made: Tree.Element, name: str, value: str) -> None:
        local = _local(name)
        if name == "id":
            made.set("id", self._names[value])
        elif name == "class":
            classes = [word for word in value.split() if word in self._classes]
            if classes:
                made.set("class", " ".join(classes))
        elif name in ("href", f"{{{_LINK}}}href"):
            target = self._target(made.tag, value)
            if target:
                made.set("href", target)
        elif name == "style":
            style = "; ".join(self._declarations(value))
            if style:
                made.set("style", style)
        elif name == local and local in _ATTRIBUTES and (kept := self._value(value)) is not None:
            made.set(local, kept)

    def _target(self, tag: str, value: str) -> str:
        if value.startswith("#"):
            named = self._names.get(value[1:])
            return f"#{named}" if named and tag != "image" else ""
        if tag != "image":
            return ""
        head, _, body = value.partition(",")
        if not re.fullmatch(r"data:image/(?:png|jpe?g|gif|webp);base64", head.strip()):
            return ""
        try:
            raw = base64.b64decode(body)
        except (binascii.Error, ValueError):
            return ""
        found = None if self._kept_back is not None and self._kept_back(raw) else embed_bytes(raw)
        return found.uri if found else ""

    def _declarations(self, style: str) -> list[str]:
        kept = []
        for part in _sheet_without_comments(style).split(";"):
            name, _, value = part.partition(":")
            if name.strip() in _OF_STYLE and (clean := self._value(value.strip())) is not None:
                kept.append(f"{name.strip()}: {clean}")
        return kept

    def _value(self, value: str) -> str | None:
        """A value of a drawing attribute; a reference only to an element of this drawing."""
        if not _VALUE.fullmatch(value):
            return None
        outside = re.sub(r"url\(\s*['\"]?#[^)'\"]*['\"]?\s*\)", "", value)
        if "url" in outside.lower() or "//" in outside or "/*" in outside:
            return None
        return re.sub(
            r"url\(\s*['\"]?#([^)'\"]*)['\"]?\s*\)", lambda found: f"url(#{self._names.get(found[1], 'none')})", value
        )

    @staticmethod
    def _style(node: Tree.Element) -> Tree.Element | None:
        text = _sheet(node.text or "")
        if not text:
            return None
        made = Tree.Element("style")
        made.text = text
        return made


def _sheet_without_comments(text: str) -> str:
    return re.sub(r"/\*.*?(?:\*/|\Z)", "", text, flags=re.DOTALL)


def _sheet(text: str) -> str:
    """A style sheet without comments; empty where it holds anything but plain rules."""
    clean = _sheet_without_comments(text).strip()
    plain = re.fullmatch(r"(?:[\w\s.,#*>:-]+\{[\w\s.,;:#%()+-]*\}\s*)*", clean)
    return clean if plain and "url" not in clean.lower() else ""


def _not_displayed(node: Tree.Element) -> bool:
    said = re.sub(
        r"\s", "", f"{node.get('style', '')};display:{node.get('display', '')};visibility:{node.get('visibility', '')}"
    ).lower()
    return "display:none" in said or "visibility:hidden" in said or "visibility:collapse" in said


def _append_text(made: Tree.Element, text: str) -> None:
    if len(made):
        made[-1].tail = (made[-1].tail or "") + text
    else:
        made.text = (made.text or "") + text


def _local(tag: object) -> str:
    if not isinstance(tag, str):
        return ""
    space, _, name = tag.rpartition("}")
    return name if space in ("", f"{{{_SVG}") else ""
