"""The server hands a notebook over once its cells have run; that it serves at all, test_live.py tries."""

import asyncio

from pentools.serving import until_ready


def test_it_waits_for_the_file_and_no_longer_than_was_said(tmp_path):
    ready = tmp_path / "ready"

    async def both():
        waiting = asyncio.create_task(until_ready(str(ready), 30))
        await asyncio.sleep(0.12)
        before = waiting.done()
        ready.touch()
        return before, await waiting

    assert asyncio.run(both()) == (False, True)
    assert not asyncio.run(until_ready(str(tmp_path / "never"), 0.1))


def test_where_nothing_is_brought_to_life_nothing_is_waited_for():
    assert asyncio.run(until_ready("", 0.0))
