"""The form of what went in, and the drawer: what lies there is listed as one types, and what is known of it is filled in."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from pentools.books.stock.match import item_of
from pentools.books.stock.uses import Use, pieces_in
from pentools.money import in_money, read_money
from pentools.record.drawer import Item, same_text
from pentools.record.drawer_facts import drawer_beside

if TYPE_CHECKING:
    from pentools.panels.kind_form import KindForm
    from pentools.record.bench import Bench

__all__ = ["FromDrawer"]


class FromDrawer:
    """Fills a form for what went in from the bench's drawer.

    Parameters
    ----------
    form : KindForm
        It has boxes for what, lot and cost; a box in which something was typed is left as it is.
    bench : Bench
        The bench whose ``stock.csv`` it is.
    """

    def __init__(self, form: KindForm, bench: Bench) -> None:
        self.boxes, self.bench = form.boxes, bench
        self._items: tuple[Item, ...] = ()
        self._filling = False
        self._filled: dict[str, str] = {}

    def refresh(self) -> None:
        """List what lies in the drawer now."""
        self._items = drawer_beside(self.bench.folder, self.bench.facts).items
        for name in ("what", "lot"):
            before = self.boxes[name].input
            self.boxes[name].propose([text for item in self._items if (text := getattr(item, name))])
            if self.boxes[name].input is not before:
                self.boxes[name].input.observe(self._typed, "value")
        self._typed(None)

    def _typed(self, _: Any) -> None:
        if self._filling:
            return
        self._filling = True
        try:
            self._fill()
        finally:
            self._filling = False

    def _fill(self) -> None:
        item = self._meant()
        for name, text in self._known(item).items():
            box = self.boxes[name]
            if box.text in ("", self._filled.get(name)):
                box.suggest(text)
                self._filled[name] = text

    def _known(self, item: Item | None) -> dict[str, str]:
        if item is None:
            return {"what": "", "lot": "", "cost": ""}
        what = (
            item.what if not item.size or same_text(item.size) in same_text(item.what) else f"{item.what}, {item.size}"
        )
        return {"what": what, "lot": item.lot, "cost": self._cost(item)}

    def _cost(self, item: Item) -> str:
        """What the pieces cost; nothing where one piece has no price."""
        if not item.cost:
            return ""
        price = read_money(item.cost)
        return in_money(price.amount * pieces_in(self.boxes["what"].text), price.currency)

    def _meant(self) -> Item | None:
        """The one item that is meant by what was typed; None where that is none, or one of several."""
        texts = {name: self.boxes[name].text for name in ("what", "lot")}
        what, lot = ("" if text == self._filled.get(name) else text for name, text in texts.items())
        if not (what or lot):
            return None
        found = item_of(Use("added", what, lot, "", ""), self._items)
        return found[0] if len(found) == 1 else None
