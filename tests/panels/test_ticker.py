"""The clock calls again and again, once for however often it was started, and no more once stopped."""

import asyncio

from pentools.panels.ticker import Ticker


def test_it_calls_until_it_is_stopped():
    calls = []

    async def at_the_bench():
        ticker = Ticker(lambda: calls.append("called"), 0.001)
        ticker.run(True)
        first = ticker._task
        ticker.run(True)
        assert ticker._task is first
        while len(calls) < 2:
            await asyncio.sleep(0.001)
        ticker.run(False)
        assert not ticker.running
        known = len(calls)
        await asyncio.sleep(0.02)
        assert len(calls) == known

    asyncio.run(asyncio.wait_for(at_the_bench(), 10))


def test_without_a_loop_it_does_nothing():
    ticker = Ticker(lambda: None, 0.001)
    ticker.run(True)
    assert not ticker.running
