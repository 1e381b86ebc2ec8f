"""Hostile text in every field of every kind, in the notebook and in bench.toml, opened in a real browser: nothing runs.

Each form is loaded twice: as it is, and with its content policy taken out, so that the policy is never what saved it.
"""

import base64
import itertools
import json
import os
import re
import shutil

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.entries import new_entry
from pentools.record.job import job_in
from pentools.record.registry import all_stages
from pentools.writeup.exporters import StoryExporter
from pentools.writeup.forms import PAGE_FORMS, files_of

pytestmark = pytest.mark.browser

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
NEEDED = bool(os.environ.get("PENTOOLS_NEED_BROWSER"))
RUN = "window.ran=(window.ran||[]).concat({n})"
# {run} is what must not happen; {n} is the number of the place
PAYLOADS = (
    "<script>{run}</script>",
    "</script><script>{run}</script>",
    "</style><script>{run}</script>",
    "</title><script>{run}</script>",
    "</textarea><script>{run}</script>",
    "--><script>{run}</script><!--",
    "]]><script>{run}</script>",
    '"><script>{run}</script>',
    "'><script>{run}</script>",
    '"><img src=x onerror="{run}">',
    "'><img src=x onerror='{run}'>",
    "<img src=https://evil.example/{n}.png>",
    "<img/src=x/onerror={run}>",
    "<svg onload={run}>",
    "<svg><script>{run}</script></svg>",
    "<svg><style><img src=x onerror={run}></style></svg>",
    "<math><mtext><table><mglyph><style><img src=x onerror={run}></style></mglyph></table></mtext></math>",
    "<iframe srcdoc='<script>parent.{run}</script>'></iframe>",
    "<iframe src=https://evil.example/{n}></iframe>",
    "<object data=https://evil.example/{n}></object>",
    "<embed src=https://evil.example/{n}>",
    "<link rel=stylesheet href=https://evil.example/{n}.css>",
    "<style>@import 'https://evil.example/{n}.css';</style>",
    "<style>*{{background:url(https://evil.example/{n}.png)}}</style>",
    "<meta http-equiv=refresh content='0;url=https://evil.example/{n}'>",
    "<base href=https://evil.example/{n}/>",
    "<form action=https://evil.example/{n}><input autofocus onfocus={run}></form>",
    "<details open ontoggle={run}>x</details>",
    "<video><source onerror={run}></video>",
    "<body onload={run}>",
    "<a href=javascript:{run}>x</a>",
    "[x](javascript:{run})",
    "[x](data:text/html,<script>{run}</script>)",
    "![x](https://evil.example/{n}.png)",
    "![x\" onerror=\"{run}](photos/none.jpg)",
    '" onmouseover="{run}" style="position:fixed;inset:0" x="',
    "' onfocus='{run}' autofocus tabindex='1",
    "{{{{ 7*7 }}}}{{% for x in ().__class__.__base__.__subclasses__() %}}{run}{{% endfor %}}",
    "${{{run}}}`{run}`",
    "&lt;script&gt;{run}&lt;/script&gt;",
    "&#60;script&#62;{run}&#60;/script&#62;",
    "\u202e<script>{run}</script>\u202c",
    "\ufeff<script>{run}</script>",
    "<scr\0ipt>{run}</scr\0ipt>",
    "<scr<script>ipt>{run}</scr</script>ipt>",
    "<<script>{run}//<</script>",
    "<script\n>{run}</script\n>",
    "<sCrIpT>{run}</ScRiPt>",
    "\uff1cscript\uff1e{run}\uff1c/script\uff1e",
    "\ue0000\ue000<script>{run}</script>",
    "x}} body {{background:url(https://evil.example/{n})}} @bottom-left {{ content: \"",
)  # fmt: skip


class Hostile:
    """A payload after the other, each with its number."""

    def __init__(self):
        self._count = itertools.count()
        self.planted = 0

    def text(self):
        number = next(self._count)
        self.planted += 1
        return PAYLOADS[number % len(PAYLOADS)].format(run=RUN.format(n=number), n=number)


def readable(hostile, field):
    """A value with a hostile text wherever the field's kind has room for one."""
    low = field.low if field.low is not None else 1.0
    return {
        "text": hostile.text,
        "long text": lambda: "\n\n".join(hostile.text() for _ in range(3)),
        "items": lambda: [hostile.text(), hostile.text()],
        "money": hostile.text,
        "choice": lambda: field.choices[0][0],
        "ticks": lambda: [key for key, _ in field.choices],
        "yes-no": lambda: True,
        "quantity": lambda: {"value": low + 0.5, "unit": field.unit, "u": None, "typed": hostile.text()},
        "quantities": lambda: [{"value": low + 0.5, "unit": field.unit, "u": None, "typed": hostile.text()}],
        "number": lambda: low,
        "count": lambda: int(low) + 1,
    }.get(field.kind, lambda: None)()


def entries(hostile):
    for stage in all_stages():
        for kind in stage.kinds:
            good = {field.name: readable(hostile, field) for field in kind.fields}
            yield new_entry(stage.key, kind.key, {k: v for k, v in good.items() if v is not None}, note=hostile.text())
            # in every field, whatever its kind: an entry that cannot be read, whose reason is told
            for field in kind.fields:
                yield new_entry(stage.key, kind.key, {field.name: hostile.text()}, note=hostile.text())
        yield new_entry(stage.key, hostile.text(), {hostile.text(): hostile.text()})
    yield new_entry(hostile.text(), hostile.text(), {"x": hostile.text()})


def cell(kind, source, *tags, **more):
    code = {"outputs": [], "execution_count": None} if kind == "code" else {}
    return {"cell_type": kind, "id": "c", "metadata": {"tags": list(tags)}, "source": source, **code, **more}


def notebook(hostile):
    """A story cell for each payload, outputs of every sort with one each, and all stages."""
    stories = [
        cell(
            "markdown",
            f"# {hostile.text()}\n\n{hostile.text()}\n\n> {hostile.text()}\n\n| a |\n|---|\n| {hostile.text()} |",
        )
        for _ in PAYLOADS
    ]
    outputs = []
    for _ in PAYLOADS:
        drawing = (
            f'<svg xmlns="http://www.w3.org/2000/svg" onload="{RUN.format(n=1)}"><text>x</text>{hostile.text()}</svg>'
        )
        alt = {"image/svg+xml": {"alt": hostile.text()}}
        outputs += [
            {"output_type": "display_data", "data": {"text/html": f"<p>x</p>{hostile.text()}"}, "metadata": {}},
            {"output_type": "display_data", "data": {"image/svg+xml": drawing}, "metadata": alt},
            {
                "output_type": "display_data",
                "data": {"image/svg+xml": '<svg xmlns="http://www.w3.org/2000/svg"/>'},
                "metadata": alt,
            },
            {"output_type": "stream", "name": "stdout", "text": hostile.text()},
        ]
    stages = [cell("code", f'bench.stage("{stage.key}")') for stage in all_stages()]
    odd = cell("code", f"bench.stage({hostile.text()!r})")
    return {
        "nbformat": 4,
        "nbformat_minor": 5,
        "metadata": {},
        "cells": [*stories, cell("code", "1", "publish", outputs=outputs), *stages, odd],
    }


@pytest.fixture(scope="module")
def hostile_pages(tmp_path_factory):
    """Every HTML file of every form, by name; and how many texts were planted."""
    hostile = Hostile()
    folder = tmp_path_factory.mktemp("bench") / "pen"
    (folder / "photos").mkdir(parents=True)
    bench = open_bench_folder(folder.parent, create=True)
    path = bench.folder / "bench.toml"
    text = path.read_text().replace('name = ""', f"name = {json.dumps(hostile.text())}", 1)
    path.write_text(
        text.replace("contact = []", f"contact = [{json.dumps(hostile.text())}, {json.dumps(hostile.text())}]", 1)
    )
    job = job_in(folder)
    for entry in entries(hostile):
        job.record.append(entry)
    cells = notebook(hostile)
    pages = {"held export": StoryExporter().from_notebook_node(cells, {"metadata": {"path": str(folder)}})[0]}
    job.add("intake", "consent", {"publish": "yes", "pictures": "yes"})
    for form in PAGE_FORMS.values():
        for name, content in files_of(form, job, cells, draft=True).items():
            if isinstance(content, str) and name.endswith(".html"):
                pages[f"{form.key}: {name}"] = content
    return pages, hostile.planted


@pytest.fixture(scope="module")
def browser():
    if CHROMIUM is None:
        if NEEDED:
            pytest.fail("Chromium is missing, and PENTOOLS_NEED_BROWSER asks for it")
        pytest.skip("Chromium is not installed")
    sync_api = pytest.importorskip("playwright.sync_api")
    with sync_api.sync_playwright() as play:
        quiet = [
            "--no-sandbox",
            "--disable-gpu",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
        ]
        found = play.chromium.launch(executable_path=CHROMIUM, args=quiet)
        yield found
        found.close()


IN_THE_PAGE = """() => {
  const all = [...document.querySelectorAll('*')];
  for (const node of all) {
    for (const kind of ['mouseover', 'focus', 'error', 'load', 'toggle', 'click'])
      if (!(kind === 'click' && node.tagName === 'A')) node.dispatchEvent(new Event(kind));
  }
  return {
    ran: window.ran || [],
    handlers: all.flatMap(node => [...node.attributes].filter(a => /^on/i.test(a.name)).map(a => node.tagName + ' ' + a.name)),
    tags: all.map(node => node.tagName.toLowerCase()).filter(tag => ['script', 'iframe', 'object', 'embed', 'link', 'base', 'form', 'input',
      'video', 'audio', 'source', 'foreignobject', 'animate', 'set', 'textarea', 'button'].includes(tag)),
    refresh: document.querySelectorAll('meta[http-equiv=refresh]').length,
    links: all.flatMap(node => ['href', 'src', 'srcset', 'data', 'action', 'xlink:href'].map(name => node.getAttribute(name)).filter(Boolean))
      .filter(value => !/^(#|data:image\\/|https?:|mailto:)/i.test(value)),
    images: all.filter(node => node.tagName === 'IMG').map(node => node.getAttribute('src')).filter(value => !value.startsWith('data:image/')),
    nodes: all.length,
  };
}"""
OWN_PICTURE = re.compile(r"\d\d-[a-z0-9-]+\.(?:png|svg|jpg)")
"""A picture that lies beside the post."""
NOTHING = {"ran": [], "handlers": [], "tags": [], "refresh": 0, "links": [], "images": []}


@pytest.mark.parametrize("policy", ["with the policy", "without the policy"])
def test_nothing_runs_in_any_form(hostile_pages, browser, tmp_path, policy):
    pages, planted = hostile_pages
    assert planted > 500
    assert len(pages) >= 4
    for name, content in pages.items():
        loaded = content
        if policy == "without the policy":
            loaded, taken = re.subn(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", content)
            assert taken == (0 if "post/post" in name else 1), name  # what is pasted has no head of its own
        path = tmp_path / "page.html"
        path.write_text(loaded, encoding="utf-8")
        tab = browser.new_page()
        asked, dialogs = [], []
        tab.on("request", lambda request, asked=asked: asked.append(request.url))
        tab.on("dialog", lambda dialog, dialogs=dialogs: (dialogs.append(dialog.message), dialog.dismiss()))
        tab.goto(path.as_uri(), wait_until="load", timeout=120_000)
        found = tab.evaluate(IN_THE_PAGE)
        tab.wait_for_timeout(200)
        assert found.pop("nodes") > 5
        if "post/post" in name:
            for kind in ("links", "images"):
                found[kind] = [value for value in found[kind] if not OWN_PICTURE.fullmatch(value)]
        assert found == NOTHING, (name, policy)
        assert tab.evaluate("window.ran || []") == [], (name, policy)
        assert dialogs == [], (name, policy)
        beside = tmp_path.as_uri() + "/"
        others = [url for url in asked if not url.startswith(("data:", path.as_uri()))]
        if "post/post" in name:
            others = [url for url in others if not OWN_PICTURE.fullmatch(url.removeprefix(beside))]
        assert others == [], (name, policy)
        tab.close()


def test_the_browser_notices_what_runs(browser, tmp_path):
    """The watch itself: without our cleaning these payloads do run, load and ask."""
    path = tmp_path / "page.html"
    image = base64.b64encode(b"<svg xmlns='http://www.w3.org/2000/svg'/>").decode()
    raw = "".join(PAYLOADS[n].format(run=RUN.format(n=n), n=n) for n in (0, 11, 13, 27))
    path.write_text(f"<!doctype html><p>x</p><img src='data:image/svg+xml;base64,{image}'>{raw}")
    tab = browser.new_page()
    asked = []
    tab.on("request", lambda request: asked.append(request.url))
    tab.route(re.compile("evil"), lambda route: route.abort())
    tab.goto(path.as_uri(), wait_until="load", timeout=120_000)
    found = tab.evaluate(IN_THE_PAGE)
    assert found["ran"]
    assert found["handlers"]
    assert "script" in found["tags"]
    assert any("evil.example" in url for url in asked)
    tab.close()
