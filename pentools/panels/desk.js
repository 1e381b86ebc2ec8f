// The part of the sheet that only the browser can know: where the cursor goes, and what was typed and not yet saved.
const DRAFT = "pt-draft--";

const boxOf = (element) => {
  const holder = element.closest?.(`[class*="${DRAFT}"]`);
  return holder ? [...holder.classList].find((name) => name.startsWith(DRAFT)) : null;
};

const BOXES = "input, textarea, select";
const LONGEST_PRESS_MS = 1000;
const REST_MS = 100;
const STILL_PX = 8;
// presses that were answered, where the sheet is shown twice
const seen = new WeakSet();

const focusIn = (selector, tries = 60) => {
  const places = [...document.querySelectorAll(selector)];
  const boxes = places.flatMap((place) => [...place.querySelectorAll(BOXES)]);
  const buttons = places.flatMap((place) => [place, ...place.querySelectorAll("button")]).filter((e) => e.matches("button"));
  const found = [...boxes, ...buttons].find((box) => box.offsetParent !== null && !box.disabled);
  if (found) {
    found.focus({ preventScroll: true });
    (found.closest(".pt-slot") ?? found).scrollIntoView({ block: "nearest", behavior: "auto" });
    found.scrollIntoView({ block: "nearest", behavior: "auto" });
  } else if (tries > 0) {
    setTimeout(() => focusIn(selector, tries - 1), 50);
  }
};

// on a button, a tick or a choice the notebook would take Enter, space and letters for its own commands
const ours = () => {
  for (const part of document.querySelectorAll(
    ".pentools :is(button, select, summary, a, input[type=checkbox]):not([data-lm-suppress-shortcuts])",
  )) {
    part.setAttribute("data-lm-suppress-shortcuts", "true");
  }
};

const put = (box, text) => {
  const kind = box.tagName === "TEXTAREA" ? HTMLTextAreaElement : HTMLInputElement;
  Object.getOwnPropertyDescriptor(kind.prototype, "value").set.call(box, text);
  box.dispatchEvent(new Event("input", { bubbles: true }));
};

export default {
  render({ model, el }) {
    const prefix = () => `pentools:${model.get("job")}:`;
    const given = new WeakSet();

    const keep = (event) => {
      const name = event.isTrusted && boxOf(event.target);
      if (!name || event.target.tagName === "SELECT") return;
      if (event.target.value.trim()) localStorage.setItem(prefix() + name, event.target.value);
      else localStorage.removeItem(prefix() + name);
    };

    // a box that comes up without what was typed into it before gets it back
    const giveBack = () => {
      for (const holder of document.querySelectorAll(`[class*="${DRAFT}"]`)) {
        if (given.has(holder)) continue;
        const box = holder.querySelector("input[type=text], textarea");
        if (!box) continue;
        given.add(holder);
        const text = localStorage.getItem(prefix() + boxOf(holder));
        if (text && text !== box.value) put(box, text);
      }
    };

    const forget = () => {
      for (const start of model.get("saved").forms ?? []) {
        for (const key of Object.keys(localStorage)) {
          if (key.startsWith(`${prefix()}${DRAFT}${start}`)) localStorage.removeItem(key);
        }
      }
    };

    // The cursor goes where the kernel asks, but not away from a hand that is at another box by then, and not while
    // a press is under way, for the sheet would move under it.
    let handAtBox = false;
    let down = null;
    let later = null;

    const look = () => {
      const selector = model.get("look_at").selector;
      if (!selector || handAtBox) return;
      if (down && performance.now() - down.at < LONGEST_PRESS_MS) later = look;
      else focusIn(selector);
    };

    const handAt = (event) => {
      if (!event.isTrusted || !event.target.closest?.(".pentools")) return;
      if (event.type === "input" || event.type === "pointerdown") handAtBox = event.target.matches(BOXES);
      else if (event.key === "Enter") handAtBox = event.target.tagName === "TEXTAREA" && !event.ctrlKey && !event.metaKey;
    };

    // A press counts where it began: were the sheet redrawn between down and up, the browser would click on nothing.
    const pressDown = (event) => {
      const button = event.target.closest?.(".pentools button");
      down = { button, at: performance.now(), x: event.clientX, y: event.clientY, clicked: false };
    };

    const pressUp = (event) => {
      const began = down;
      // a mouse's click, where there is one, comes before this; a finger's may come after it
      setTimeout(() => {
        down = null;
        const still = Math.hypot(event.clientX - began?.x, event.clientY - began?.y) < STILL_PX;
        const lost = event.pointerType === "mouse" && event.type === "pointerup" && !began?.clicked && !seen.has(event);
        if (lost && still && began?.button?.isConnected) began.button.click();
        seen.add(event);
        later?.();
        later = null;
      });
    };

    const pressed = (event) => {
      if (down?.button?.contains(event.target)) down.clicked = true;
      if (event.isTrusted && event.target.closest?.(".pentools button")) handAtBox = false;
    };

    const leave = () => {
      const address = model.get("go_to");
      // a place on this very server and nowhere else
      if (address.startsWith("/") && !address.startsWith("//")) window.location.assign(address);
    };

    // What is typed reaches the kernel letter by letter, one message at a time, and the rest waits; an Enter or a press
    // would overtake it. So it is held until the kernel has answered a question put after the last letter: by then
    // what waited has been sent. It is asked as soon as the hand rests, so that an Enter after that need not wait.
    const held = new Map();
    let typedSince = false;
    let asked = 0;
    let rests = 0;

    const ask = (go) => {
      asked += 1;
      held.set(asked, go);
      model.send({ settle: asked });
    };

    const typed = (event) => {
      if (!event.target.closest?.(".pentools")) return;
      typedSince = true;
      clearTimeout(rests);
      const rest = setTimeout(() => ask(() => {
        if (rests === rest) typedSince = false;
      }), REST_MS);
      rests = rest;
    };

    const stop = (event) => {
      event.preventDefault();
      event.stopImmediatePropagation();
    };

    const hold = (event, go) => {
      stop(event);
      clearTimeout(rests);
      typedSince = false;
      ask(go);
    };

    const enter = (event) => {
      const box = event.target;
      if (!event.isTrusted || !typedSince || event.key !== "Enter" || !box.matches?.(".pentools input")) return;
      hold(event, () => {
        const again = new KeyboardEvent("keypress", { key: "Enter", bubbles: true, cancelable: true });
        Object.defineProperty(again, "keyCode", { value: 13 });
        box.dispatchEvent(again);
      });
    };

    // in a large box Enter is a new line; with Ctrl or Cmd it saves, and runs no cell
    const save = (event) => {
      if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
      const button = event.target.closest?.(".pt-form")?.querySelector("button.pt-main");
      if (!button) return;
      if (typedSince) hold(event, () => button.click());
      else {
        stop(event);
        button.click();
      }
    };

    const press = (event) => {
      const button = event.target.closest?.(".pentools button.widget-button");
      if (!event.isTrusted || !typedSince || !button) return;
      hold(event, () => button.click());
    };

    const settled = (message) => {
      const go = held.get(message.settled);
      held.delete(message.settled);
      go?.();
    };

    const heard = [
      ["input", keep], ["input", typed], ["input", handAt], ["keydown", handAt], ["keydown", save],
      ["keypress", enter], ["pointerdown", handAt], ["pointerdown", pressDown], ["pointerup", pressUp],
      ["pointercancel", pressUp], ["click", pressed], ["click", press],
    ];
    const told = [
      ["msg:custom", settled], ["change:look_at", look], ["change:saved", forget], ["change:go_to", leave],
    ];

    const watcher = new MutationObserver(() => {
      giveBack();
      ours();
    });
    watcher.observe(document.body, { childList: true, subtree: true });
    for (const [name, hear] of heard) document.addEventListener(name, hear, true);
    for (const [name, hear] of told) model.on(name, hear);
    model.set("woken", Date.now());
    model.save_changes();
    giveBack();
    ours();
    el.style.display = "none";
    return () => {
      watcher.disconnect();
      for (const [name, hear] of heard) document.removeEventListener(name, hear, true);
      for (const [name, hear] of told) model.off(name, hear);
    };
  },
};
