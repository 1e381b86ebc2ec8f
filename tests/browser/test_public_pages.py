"""The pages for everybody in a real browser: printed pages counted, narrow screens, and what a checker of accessibility finds.

The checker is axe-core (WCAG 2 A and AA rules among others), as axe-playwright-python ships it.
"""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job, job_in
from pentools.record.layout import sample_names
from pentools.writeup.card.page import card_page
from pentools.writeup.write import write_pages

pytestmark = pytest.mark.browser

SAMPLES = sample_names()
MOST_PAGES = {"blog.html": 8, "card.html": 1}


@pytest.fixture(scope="module")
def written(tmp_path_factory):
    """Story, post and card of every sample, by name of the sample."""
    bench = open_bench_folder(tmp_path_factory.mktemp("bench"), create=True)
    folders = {}
    for name in SAMPLES:
        job = create_job(bench, name, sample=name)
        write_pages(job, ["story", "post", "card"])
        folders[name] = job.folder / "writeup"
    return folders


def printed(tab, paper):
    pypdf = pytest.importorskip("pypdf")
    import io

    tab.add_style_tag(content=f"@page {{ size: {paper} !important; }}")
    return len(pypdf.PdfReader(io.BytesIO(tab.pdf(prefer_css_page_size=True))).pages)


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_the_story_prints_short_and_the_card_on_one_page(tab, written, paper):
    found = {}
    for name, folder in written.items():
        for file, most in MOST_PAGES.items():
            text = (folder / file).read_text().replace("size: A4;", f"size: {paper};")
            tab.set_content(text)
            if (pages := printed(tab, paper)) > most:
                found[name, file] = pages
    assert found == {}


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_a_card_with_much_to_say_still_is_one_page(tab, tmp_path, paper):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    (bench.folder / "bench.toml").write_text(
        (bench.folder / "bench.toml").read_text().replace('paper = "A4"', f'paper = "{paper}"')
    )
    job = create_job(open_bench_folder(bench.folder), "long")
    job.add("intake", "arrival", {"pen": "wonderfully mottled " * 12})
    for number in range(12):
        job.add("limits", "limit", {"part": "cap", "left": f"{number}: Wo{'w' * 9}rn mouldings, marks; many smaller wounds, all round.", "why": "x"})  # fmt: skip
    for draft in (False, True):
        tab.set_content(card_page(job_in(job.folder), draft=draft))
        assert printed(tab, paper) == 1


def test_nothing_is_cut_off_on_a_telephone(tab, written):
    tab.set_viewport_size({"width": 390, "height": 844})
    for folder in written.values():
        for file in MOST_PAGES:
            tab.goto((folder / file).as_uri())
            wide = tab.evaluate("document.documentElement.scrollWidth")
            assert wide <= 390, (folder.parent.name, file, wide)
    tab.set_viewport_size({"width": 1280, "height": 900})


def test_a_checker_of_accessibility_finds_nothing(tab, written):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()
    found = {}
    for name, folder in written.items():
        for file in MOST_PAGES:
            # the page's own policy keeps the checker's script out; the page is the same without it
            tab.set_content(
                (folder / file).read_text().replace('http-equiv="Content-Security-Policy"', 'name="policy"')
            )
            violations = [each["id"] for each in axe.run(tab).response["violations"]]
            if violations:
                found[name, file] = violations
    assert found == {}


def test_the_post_pasted_into_an_empty_page_shows_its_pictures(tab, written):
    for name, folder in written.items():
        post = folder / "post" / "post.html"
        page = post.parent / "try.html"
        page.write_text(f"<!DOCTYPE html><html lang=en><title>Post</title><body>{post.read_text()}</body></html>")
        tab.goto(page.as_uri())
        sizes = tab.evaluate("[...document.images].map(i => [i.complete && i.naturalWidth, i.width, i.alt])")
        page.unlink()
        assert len(sizes) >= (3 if name in ("button-in-an-evening", "lever-back-again") else 4)  # the short ones
        assert all(natural >= shown > 0 and alt for natural, shown, alt in sizes)
