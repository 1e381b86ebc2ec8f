// The part of the sheet that only the browser can know: where the cursor goes, and what was typed and not yet saved.
const DRAFT = "pt-draft--";

const boxOf = (element) => {
  const holder = element.closest?.(`[class*="${DRAFT}"]`);
  return holder ? [...holder.classList].find((name) => name.startsWith(DRAFT)) : null;
};

const BOXES = "input, textarea, select";

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

    const look = () => {
      const selector = model.get("look_at").selector;
      if (selector) focusIn(selector);
    };

    const leave = () => {
      const address = model.get("go_to");
      // a place on this very server and nowhere else
      if (address.startsWith("/") && !address.startsWith("//")) window.location.assign(address);
    };

    const watcher = new MutationObserver(() => {
      giveBack();
      ours();
    });
    watcher.observe(document.body, { childList: true, subtree: true });
    document.addEventListener("input", keep, true);
    model.on("change:look_at", look);
    model.on("change:saved", forget);
    model.on("change:go_to", leave);
    model.set("woken", Date.now());
    model.save_changes();
    giveBack();
    ours();
    el.style.display = "none";
    return () => {
      watcher.disconnect();
      document.removeEventListener("input", keep, true);
      model.off("change:look_at", look);
      model.off("change:saved", forget);
      model.off("change:go_to", leave);
    };
  },
};
