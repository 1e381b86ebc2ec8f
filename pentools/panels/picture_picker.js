// Thumbnails to choose from, and a picture in which two ends are set.
const made = (tag, name, text) => {
  const element = document.createElement(tag);
  if (name) element.className = name;
  if (text) element.textContent = text;
  return element;
};

const thumbnail = (model, picture) => {
  const button = made("button", "pt-thumb");
  button.type = "button";
  if (picture.uri) {
    const image = made("img");
    image.src = picture.uri;
    image.alt = picture.alt;
    button.append(image);
  }
  button.append(made("span", "pt-thumb-name", picture.file));
  button.append(made("span", picture.problem ? "pt-thumb-problem" : "pt-thumb-state", picture.problem || picture.state));
  button.disabled = Boolean(picture.problem);
  button.addEventListener("click", () => {
    model.set("chosen", { file: picture.file, count: (model.get("chosen").count ?? 0) + 1 });
    model.save_changes();
  });
  return button;
};

const renderThumbnails = (model, el) => {
  const grid = made("div", "pt-thumbs");
  el.append(grid);
  const draw = () => {
    const at = [...grid.children].indexOf(document.activeElement);
    grid.replaceChildren(...model.get("pictures").map((picture) => thumbnail(model, picture)));
    press();
    if (at >= 0) grid.children[Math.min(at, grid.children.length - 1)]?.focus({ preventScroll: true });
  };
  const press = () => {
    const names = model.get("pictures").map((picture) => picture.file);
    [...grid.children].forEach((button, i) => button.setAttribute("aria-pressed", names[i] === model.get("chosen").file));
  };
  model.on("change:pictures", draw);
  model.on("change:chosen", press);
  draw();
  return () => {
    model.off("change:pictures", draw);
    model.off("change:chosen", press);
  };
};

const renderEnds = (model, el) => {
  const frame = made("div", "pt-ends");
  const image = made("img");
  image.alt = "the picture, to set two ends of a known length in";
  const marks = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  frame.append(image, marks);
  el.append(frame);
  const draw = () => {
    const [wide, high] = model.get("size");
    image.src = model.get("uri");
    marks.setAttribute("viewBox", `0 0 ${wide} ${high}`);
    const r = Math.max(wide, high) / 120;
    const ends = model.get("ends");
    const lines = ends.length === 2 ? [`<line x1="${ends[0][0]}" y1="${ends[0][1]}" x2="${ends[1][0]}" y2="${ends[1][1]}"/>`] : [];
    const crosses = ends.map(([x, y]) => `<path d="M${x - r} ${y}H${x + r}M${x} ${y - r}V${y + r}"/>`);
    marks.innerHTML = [...lines, ...crosses].join("");
  };
  const set = (event) => {
    const box = image.getBoundingClientRect();
    const [wide, high] = model.get("size");
    const end = [((event.clientX - box.left) / box.width) * wide, ((event.clientY - box.top) / box.height) * high];
    const before = model.get("ends");
    model.set("ends", before.length === 1 ? [before[0], end] : [end]);
    model.save_changes();
  };
  frame.addEventListener("click", set);
  model.on("change:uri change:ends change:size", draw);
  draw();
  return () => model.off("change:uri change:ends change:size", draw);
};

export default {
  render({ model, el }) {
    return model.get("sort") === "ends" ? renderEnds(model, el) : renderThumbnails(model, el);
  },
};
