"""Notebook cells as plain JSON, and a page read by an ordinary HTML parser: what these tests share."""

import base64
import datetime as dt
import io
from html.parser import HTMLParser

from PIL import Image

CONTACT = "Contactline 17 Rope Row"
VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}


def markdown(source, *tags, **more):
    return {"cell_type": "markdown", "id": "m", "metadata": {"tags": list(tags)}, "source": source, **more}


def code(source, *tags, outputs=()):
    return {
        "cell_type": "code",
        "id": "c",
        "metadata": {"tags": list(tags)},
        "source": source,
        "outputs": list(outputs),
        "execution_count": None,
    }


def stage(key):
    return code(f'bench.stage("{key}")')


def notebook(*cells):
    return {
        "nbformat": 4,
        "nbformat_minor": 5,
        "metadata": {},
        "cells": [{**cell, "id": f"cell{i}"} for i, cell in enumerate(cells)],
    }


class Parsed(HTMLParser):
    """What a page is made of, read by an ordinary HTML parser."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.headings, self.links, self.images, self.ids, self.words, self.open = [], [], [], [], [], [], []
        self.feed(text)
        self.close()

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        self.tags.append((tag, given))
        if tag in ("h1", "h2", "h3", "h4", "h5", "h6"):
            self.headings.append(int(tag[1]))
        self.links += [
            (tag, name, value)
            for name, value in attrs
            if name in ("src", "href", "xlink:href", "srcset", "data", "action")
        ]
        if tag == "img":
            self.images.append(given)
        if "id" in given:
            self.ids.append(given["id"])
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.open.pop()

    def handle_endtag(self, tag):
        if tag in self.open:
            while self.open.pop() != tag:
                pass

    def handle_data(self, data):
        if not {"style", "script"} & set(self.open):
            self.words.append(data)

    @property
    def text(self):
        return " ".join(" ".join(self.words).split())


def plain_date(number):
    return dt.date(2031, 1, 1) + dt.timedelta(days=number)


def png(colour="red"):
    into = io.BytesIO()
    Image.new("RGB", (8, 8), colour).save(into, "PNG")
    return base64.b64encode(into.getvalue()).decode()
