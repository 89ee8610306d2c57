// Connects the fields that take points with the picture: a button beside each starts setting them there.
const OfShape = { Line: 2, Angle: 3, Point: 1, Area: 200 };

export function watchPointFields(picture) {
  const fields = [...document.querySelectorAll("input[data-points]")];
  let active = null;

  for (const field of fields) {
    addButton(field, () => begin(field));
    field.addEventListener("input", show, { signal: picture.ending.signal });
    field.form.addEventListener("change", show, { signal: picture.ending.signal });
  }
  show();

  picture.onPoint = (point) => {
    if (!active) {
      picture.say("Press the button beside a field of points first.");
      return;
    }
    const points = read(active);
    points.push(point);
    write(active, points);
    if (points.length >= most(active)) {
      const field = active;
      stop();
      picture.say(`${points.length} points set.`);
      next(field).focus();
    } else {
      picture.say(`Point ${points.length} set at ${text(point)}. ${most(active) > 3 ? "Escape when the outline is closed." : `${most(active) - points.length} to go.`}`);
    }
  };
  picture.onTakeBack = () => {
    if (active) {
      write(active, read(active).slice(0, -1));
      picture.say("The last point was taken back.");
    }
  };
  picture.onLeave = () => {
    const field = active;
    stop();
    (field ? next(field) : picture.element).focus();
  };

  function begin(field) {
    stop();
    active = field;
    write(field, []);
    picture.element.classList.add("picking");
    picture.element.focus();
    picture.element.scrollIntoView({ block: "nearest" });
    picture.say(`Set the points of: ${labelOf(field)}.`);
  }

  function stop() {
    active = null;
    picture.element.classList.remove("picking");
  }

  function write(field, points) {
    field.value = points.map(text).join(" ");
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function show() {
    picture.drafts = fields
      .map((field) => ({ field, points: read(field) }))
      .filter(({ field, points }) => points.length && field.value !== field.defaultValue)
      .map(({ field, points }) => ({ points, name: labelOf(field), isClosed: most(field) > 3 && points.length > 2 }));
    picture.draw();
  }
}

function addButton(field, act) {
  field.closest(".field").querySelector("[data-sets-points]")?.remove();
  const button = document.createElement("button");
  button.dataset.setsPoints = "";
  button.type = "button";
  button.className = "button plain";
  button.textContent = "Set on the picture";
  button.setAttribute("aria-label", `Set on the picture: ${labelOf(field)}`);
  button.addEventListener("click", act);
  field.closest(".control").after(button);
}

function next(field) {
  const all = [...field.form.querySelectorAll("input:not([type=hidden]), select, textarea, button[type=submit]")];
  return all[all.indexOf(field) + 1] ?? field;
}

function most(field) {
  if (field.dataset.points !== "shape") {
    return Number(field.dataset.points);
  }
  return OfShape[field.form.elements.namedItem(field.dataset.shape).value] ?? 2;
}

function labelOf(field) {
  return document.querySelector(`label[for="${field.id}"]`).firstChild.textContent.trim();
}

function read(field) {
  return field.value
    .split(/[\s;]+/)
    .map((part) => part.split(",").map(Number))
    .filter((part) => part.length === 2 && part.every(Number.isFinite))
    .map(([x, y]) => ({ x, y }));
}

function text(point) {
  return `${Math.round(point.x * 10) / 10},${Math.round(point.y * 10) / 10}`;
}
