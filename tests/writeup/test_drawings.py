"""Drawings from outputs keep what is drawn, and lose all that is written beside it."""

import base64
import io
import re
from xml.etree import ElementTree

import pytest
from PIL import Image, PngImagePlugin

from pentools.writeup.drawings import clean_svg

SECRET = "Secretword51N"
HEAD = (
    'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
    'xmlns:ed="http://editor.example/ns" xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"'
)


def svg(inner, more=""):
    return f'<svg {HEAD} width="40" height="20" viewBox="0 0 40 20" {more}>{inner}</svg>'


def telltale_png():
    words = PngImagePlugin.PngInfo()
    words.add_text("Author", SECRET)
    into = io.BytesIO()
    Image.new("RGB", (4, 4), "red").save(into, "PNG", pnginfo=words)
    return "data:image/png;base64," + base64.b64encode(into.getvalue()).decode()


@pytest.mark.parametrize(
    "inner",
    [
        f"<metadata><rdf:RDF><rdf:li>{SECRET}</rdf:li></rdf:RDF></metadata>",
        f"<!-- {SECRET} -->",
        f"<?note {SECRET}?>",
        f"<title>{SECRET}</title><desc>{SECRET}</desc>",
        f'<ed:view ed:path="/home/{SECRET}">{SECRET}</ed:view>',
        f'<g ed:label="{SECRET}" data-name="{SECRET}" aria-label="{SECRET}" id="{SECRET}" class="{SECRET}"/>',
        f"<foreignObject><p>{SECRET}</p></foreignObject>",
        f"<script>{SECRET}</script>",
        f'<rect onclick="{SECRET}()" width="2" height="2"/>',
        f'<a href="https://{SECRET}.example"><rect width="1" height="1"/></a>',
        f'<image href="https://x.example/{SECRET}.png" width="2" height="2"/>',
        f'<image href="file:///{SECRET}.png" width="2" height="2"/>',
        f'<image xlink:href="{telltale_png()}" width="2" height="2"/>',
        f'<use href="https://x.example/{SECRET}.svg#a"/>',
        f'<rect style="fill: url(https://{SECRET}.example/x)" width="2" height="2"/>',
        f'<rect style="--note: {SECRET}; fill: red /* {SECRET} */" width="2" height="2"/>',
        f'<rect fill="url(//{SECRET}.example)" width="2" height="2"/>',
        f"<style>/* {SECRET} */ .a {{ fill: red }}</style>",
        f"<style>@import url(https://{SECRET}.example/x.css);</style>",
        f'<style>.a::after {{ content: "{SECRET}" }}</style>',
        f'<text display="none">{SECRET}</text>',
        f'<g style="display : none"><text>{SECRET}</text></g>',
        f'<animate attributeName="x" values="{SECRET}"/>',
        f"<g>{SECRET}</g>",
    ],
)
def test_what_is_not_drawn_goes(inner):
    raw = svg(f'{inner}<path d="M0 0L9 9" stroke="red"/>')
    made = clean_svg(raw)
    assert made is not None
    assert SECRET not in made
    assert SECRET.encode() not in b"".join(base64.b64decode(part) for part in re.findall(r"base64,([\w+/=]+)", made))
    assert 'd="M0 0L9 9"' in made


def test_what_is_drawn_stays():
    inner = (
        '<defs><linearGradient id="Layer of mine" x1="0"><stop offset="1" stop-color="#f00"/></linearGradient>'
        '<clipPath id="c"><rect width="3" height="3"/></clipPath></defs>'
        "<style>.line { stroke: red }</style>"
        '<g clip-path="url(#c)" transform="rotate(20)"><path class="line other" d="M0 0h3" style="fill:url(#Layer of mine);stroke-width:2"/></g>'
        '<text x="1" y="2" font-size="3">12.31 <tspan dy="1">mm</tspan> wide</text><use xlink:href="#c"/>'
    )
    root = ElementTree.fromstring(clean_svg(svg(inner)))
    space = "{http://www.w3.org/2000/svg}"
    tags = [node.tag.removeprefix(space) for node in root.iter()]
    assert tags == [
        "svg", "defs", "linearGradient", "stop", "clipPath", "rect", "style", "g", "path", "text", "tspan", "use",
    ]  # fmt: skip
    gradient = root.find(f".//{space}linearGradient").get("id")
    clip = root.find(f".//{space}clipPath").get("id")
    path = root.find(f".//{space}path")
    assert path.get("style") == f"fill: url(#{gradient}); stroke-width: 2"
    assert path.get("class") == "line"
    assert root.find(f"{space}g").get("clip-path") == f"url(#{clip})"
    assert root.find(f"{space}use").get("href") == f"#{clip}"
    assert "".join(root.find(f"{space}text").itertext()) == "12.31 mm wide"
    assert root.get("viewBox") == "0 0 40 20"


def test_a_chart_of_the_plotting_library_is_drawn_as_before():
    """The outside reader is the library's own file: every path and letter of it is still there."""
    import matplotlib as mpl
    from matplotlib.figure import Figure

    with mpl.rc_context({"svg.fonttype": "none"}):
        figure = Figure()
        axes = figure.add_subplot()
        axes.plot([1, 2, 3], [2, 1, 4])
        axes.set_xlabel("Days at rest")
        into = io.StringIO()
        figure.savefig(into, format="svg", metadata={"Creator": SECRET, "Title": SECRET})
    raw = into.getvalue()
    assert SECRET in raw
    made = clean_svg(raw)
    assert SECRET not in made
    assert "Days at rest" in made
    count = lambda text, tag: len(re.findall(rf"<{tag}\b", text))  # noqa: E731
    for tag in ("path", "text", "use", "clipPath"):
        assert count(made, tag) == count(raw, tag) > 0


@pytest.mark.parametrize(
    "raw",
    [
        "",
        "no drawing",
        "<svg",
        "<html xmlns='http://www.w3.org/1999/xhtml'/>",
        '<!DOCTYPE svg [<!ENTITY a "aaaa">]><svg xmlns="http://www.w3.org/2000/svg"><text>&a;</text></svg>',
        '<!DOCTYPE svg SYSTEM "x"><!DOCTYPE svg [ ]><svg/>',
    ],
)
def test_what_is_no_drawing_or_brings_definitions_is_refused(raw):
    assert clean_svg(raw) is None


def test_a_drawing_nested_without_end_is_refused_or_cut_in_time():
    made = clean_svg(svg("<g>" * 5000 + "<rect/>" + "</g>" * 5000))
    assert made is None or "<rect" not in made
