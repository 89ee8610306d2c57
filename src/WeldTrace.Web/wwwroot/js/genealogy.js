// Walks the drawing of a genealogy by keyboard: one thing at a time has the focus, and the arrow keys follow its lines.
export function walkGenealogies() {
  for (const drawing of document.querySelectorAll("[data-genealogy]")) {
    // The framework merges the next page into the same element; its things are then new.
    const things = [...drawing.querySelectorAll("[data-thing]")];
    if (things.length && !things.some((thing) => thing.getAttribute("tabindex"))) {
      new Walk(drawing, things);
    }
  }
}

class Walk {
  constructor(drawing, things) {
    this.things = new Map(things.map((thing) => [thing.dataset.thing, thing]));
    this.lines = [...drawing.querySelectorAll("[data-line]")];
    this.start = drawing.querySelector(".vessel") ?? things[0];
    this.from = null;
    for (const thing of things) {
      thing.setAttribute("tabindex", thing === this.start ? "0" : "-1");
      thing.addEventListener("focus", () => this.reach(thing));
      thing.addEventListener("pointerenter", () => this.light(thing));
      thing.addEventListener("keydown", (event) => this.press(event, thing));
    }
    this.light(this.start);
    const middle = this.start.getBoundingClientRect().left - drawing.getBoundingClientRect().left;
    drawing.scrollLeft = middle - drawing.clientWidth / 3;
  }

  press(event, thing) {
    const goal = { ArrowLeft: () => this.along(thing, -1), ArrowRight: () => this.along(thing, 1), ArrowUp: () => this.aside(thing, -1), ArrowDown: () => this.aside(thing, 1), Home: () => this.start }[event.key];
    if (!goal || event.altKey || event.ctrlKey || event.metaKey) {
      return;
    }
    event.preventDefault();
    const next = goal();
    if (next) {
      next.focus();
    }
  }

  // The nearest thing at the other end of a line to that side.
  along(thing, side) {
    const reached = this.neighbours(thing).filter((other) => Math.sign(column(other) - column(thing)) === side);
    const next = reached.sort((a, b) => Math.abs(column(a) - column(thing)) - Math.abs(column(b) - column(thing)) || distance(a, thing) - distance(b, thing))[0];
    if (next) {
      this.from = thing;
    }
    return next;
  }

  // Up and down stay among the ends of the lines of the thing that one came from; without one, in the column.
  aside(thing, step) {
    const ends = this.from ? this.neighbours(this.from).filter((other) => Math.sign(column(other) - column(this.from)) === Math.sign(column(thing) - column(this.from))) : [];
    const rank = ends.includes(thing) && ends.length > 1 ? ends : [...this.things.values()].filter((other) => column(other) === column(thing));
    const sorted = rank.sort((a, b) => column(a) - column(b) || top(a) - top(b));
    return sorted[sorted.indexOf(thing) + step];
  }

  reach(thing) {
    for (const other of this.things.values()) {
      other.setAttribute("tabindex", other === thing ? "0" : "-1");
    }
    this.light(thing);
    thing.scrollIntoView({ block: "nearest", inline: "nearest" });
  }

  light(thing) {
    const near = new Set(thing.dataset.lines.split(" "));
    for (const [id, other] of this.things) {
      other.classList.toggle("near", near.has(id));
      other.classList.toggle("here", other === thing);
    }
    for (const line of this.lines) {
      line.classList.toggle("lit", line.dataset.line.split(" ").includes(thing.dataset.thing));
    }
  }

  neighbours(thing) {
    return thing.dataset.lines.split(" ").map((id) => this.things.get(id)).filter(Boolean);
  }
}

function column(thing) {
  return Number(thing.dataset.column);
}

function top(thing) {
  return Number(thing.querySelector("rect").getAttribute("y"));
}

function distance(one, other) {
  return Math.abs(top(one) - top(other));
}
