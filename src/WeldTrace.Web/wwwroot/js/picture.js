// A large picture, drawn tile by tile, with what was measured on it. Points are set by mouse, touch or keys and go into the text
// fields that say data-points, where they can be typed as well.
import { watchPointFields } from "./picture-points.js";

const Ink = "#1d3ec2";
const Halo = "#ffffff";
const MostTiles = 400;
const LargestZoom = 16;

export function showPictures() {
  for (const element of document.querySelectorAll("[data-picture]")) {
    const shown = element.picture;
    // The framework may have merged another picture into the same element.
    if (shown?.source !== element.dataset.picture || !shown.canvas.isConnected) {
      shown?.ending.abort();
      element.picture = new Picture(element);
      watchPointFields(element.picture);
    }
  }
}

class Picture {
  constructor(element) {
    this.element = element;
    this.said = element.parentElement.querySelector("[data-picture-said]");
    this.source = element.dataset.picture;
    this.facts = JSON.parse(this.source);
    this.ending = new AbortController();
    this.tiles = new Map();
    this.drafts = [];
    this.pointers = new Map();
    this.canvas = document.createElement("canvas");
    element.replaceChildren(this.canvas);
    this.cross = { x: this.facts.width / 2, y: this.facts.height / 2 };
    new ResizeObserver(() => this.fit()).observe(element);
    this.fit();
    this.listen();
  }

  fit() {
    const { clientWidth: width, clientHeight: height } = this.element;
    if (!width || !height) {
      return;
    }
    this.canvas.width = width * devicePixelRatio;
    this.canvas.height = height * devicePixelRatio;
    this.least = Math.min(width / this.facts.width, height / this.facts.height);
    if (!this.zoom || this.zoom < this.least) {
      this.zoom = this.least;
      this.left = (this.facts.width - width / this.zoom) / 2;
      this.top = (this.facts.height - height / this.zoom) / 2;
    }
    this.draw();
  }

  listen() {
    const on = (name, act) => this.element.addEventListener(name, act, { signal: this.ending.signal });
    on("wheel", (event) => {
      event.preventDefault();
      this.zoomAt(this.at(event), event.deltaY < 0 ? 1.25 : 0.8);
    });
    on("pointerdown", (event) => {
      this.element.setPointerCapture(event.pointerId);
      this.pointers.set(event.pointerId, event);
      this.moved = this.pointers.size > 1;
    });
    on("pointermove", (event) => this.drag(event));
    on("pointerup", (event) => {
      this.pointers.delete(event.pointerId);
      if (!this.moved && event.button === 0) {
        this.cross = this.at(event);
        this.onPoint?.(this.cross);
        this.draw();
      }
    });
    on("pointercancel", (event) => this.pointers.delete(event.pointerId));
    on("keydown", (event) => this.press(event));
    on("focus", () => this.draw());
    on("blur", () => this.draw());
  }

  // One finger or the mouse moves the picture; two fingers move and zoom it.
  drag(event) {
    const before = this.pointers.get(event.pointerId);
    if (!before) {
      return;
    }
    if (Math.hypot(event.clientX - before.clientX, event.clientY - before.clientY) < 4 && !this.moved) {
      return;
    }
    this.moved = true;
    const other = [...this.pointers.values()].find((p) => p.pointerId !== event.pointerId);
    if (other) {
      const distance = (p) => Math.hypot(p.clientX - other.clientX, p.clientY - other.clientY) || 1;
      this.zoomAt(this.at(other), distance(event) / distance(before));
    } else {
      this.left -= (event.clientX - before.clientX) / this.zoom;
      this.top -= (event.clientY - before.clientY) / this.zoom;
    }
    this.pointers.set(event.pointerId, event);
    this.draw();
  }

  press(event) {
    const step = (event.shiftKey ? 1 : 12) / this.zoom;
    const moves = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
    if (event.ctrlKey || event.altKey || event.metaKey) {
      return;
    }
    if (moves[event.key]) {
      this.moveCross(...moves[event.key]);
    } else if (event.key === "+" || event.key === "=") {
      this.zoomAt(this.cross, 1.25);
    } else if (event.key === "-") {
      this.zoomAt(this.cross, 0.8);
    } else if (event.key === "Enter") {
      this.onPoint?.(this.cross);
    } else if (event.key === "Backspace") {
      this.onTakeBack?.();
    } else if (event.key === "Escape") {
      this.onLeave?.();
    } else {
      return;
    }
    event.preventDefault();
    this.draw();
  }

  moveCross(x, y) {
    const clamp = (value, most) => Math.min(Math.max(value, 0), most);
    this.cross = { x: clamp(this.cross.x + x, this.facts.width), y: clamp(this.cross.y + y, this.facts.height) };
    const [width, height] = [this.element.clientWidth / this.zoom, this.element.clientHeight / this.zoom];
    this.left = Math.min(Math.max(this.left, this.cross.x - width), this.cross.x);
    this.top = Math.min(Math.max(this.top, this.cross.y - height), this.cross.y);
    this.say(`Cross at ${round(this.cross.x)}, ${round(this.cross.y)}.`);
  }

  zoomAt(point, factor) {
    const zoom = Math.min(Math.max(this.zoom * factor, this.least), LargestZoom);
    this.left = point.x - ((point.x - this.left) * this.zoom) / zoom;
    this.top = point.y - ((point.y - this.top) * this.zoom) / zoom;
    this.zoom = zoom;
    this.draw();
  }

  at(event) {
    const box = this.element.getBoundingClientRect();
    return { x: this.left + (event.clientX - box.left) / this.zoom, y: this.top + (event.clientY - box.top) / this.zoom };
  }

  say(text) {
    this.said.textContent = text;
  }

  draw() {
    if (!this.waiting) {
      this.waiting = requestAnimationFrame(() => {
        this.waiting = 0;
        this.paint();
      });
    }
  }

  paint() {
    const pen = this.canvas.getContext("2d");
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.canvas.width, this.canvas.height);
    pen.scale(devicePixelRatio, devicePixelRatio);
    this.paintTiles(pen);
    this.paintMarks(pen);
    this.paintScale(pen);
    if (document.activeElement === this.element) {
      this.paintCross(pen);
    }
  }

  // The smallest level first, so that there is always something; then the level that fits the zoom.
  paintTiles(pen) {
    let last = 0;
    for (let side = Math.max(this.facts.width, this.facts.height); side > this.facts.tile; side = Math.ceil(side / 2)) {
      last++;
    }
    const wanted = Math.min(Math.max(Math.floor(Math.log2(1 / (this.zoom * devicePixelRatio))), 0), last);
    for (const level of new Set([last, Math.min(wanted + 1, last), wanted])) {
      this.paintLevel(pen, level);
    }
  }

  paintLevel(pen, level) {
    const side = this.facts.tile * 2 ** level;
    const [width, height] = [this.element.clientWidth / this.zoom, this.element.clientHeight / this.zoom];
    const [right, bottom] = [Math.min(this.left + width, this.facts.width), Math.min(this.top + height, this.facts.height)];
    for (let y = Math.max(Math.floor(this.top / side), 0); y * side < bottom; y++) {
      for (let x = Math.max(Math.floor(this.left / side), 0); x * side < right; x++) {
        const image = this.tile(level, x, y);
        if (image.complete && image.naturalWidth) {
          const shown = 2 ** level * this.zoom;
          pen.drawImage(image, (x * side - this.left) * this.zoom, (y * side - this.top) * this.zoom, image.naturalWidth * shown, image.naturalHeight * shown);
        }
      }
    }
  }

  tile(level, x, y) {
    const key = `${level}/${x}/${y}`;
    let image = this.tiles.get(key);
    if (!image) {
      if (this.tiles.size > MostTiles) {
        this.tiles.clear();
      }
      image = new Image();
      image.onload = () => {
        this.element.dataset.shown = key;
        this.draw();
      };
      image.onerror = () => this.say("A part of the picture could not be fetched. Load the page again.");
      image.src = `${this.facts.tiles}/${key}`;
      this.tiles.set(key, image);
    }
    return image;
  }

  paintMarks(pen) {
    const known = (points) => points.map(([x, y]) => ({ x, y }));
    if (this.facts.known) {
      this.path(pen, known(this.facts.known), false, "scale", [2, 3]);
    }
    if (this.facts.face) {
      const [advancing, retreating] = known(this.facts.face);
      this.path(pen, [advancing, retreating], false, "", [8, 4]);
      this.label(pen, advancing, "AS");
      this.label(pen, retreating, "RS");
    }
    for (const mark of this.facts.marks) {
      this.path(pen, known(mark.points), mark.shape === "Area", String(mark.number));
    }
    for (const draft of this.drafts) {
      this.path(pen, draft.points, draft.isClosed, draft.name, [4, 4]);
    }
  }

  path(pen, points, isClosed, name, dashes = []) {
    if (points.length === 0) {
      return;
    }
    pen.beginPath();
    for (const point of points) {
      pen.lineTo(...this.onScreen(point));
    }
    if (isClosed) {
      pen.closePath();
    }
    this.stroke(pen, dashes);
    for (const point of points) {
      const [x, y] = this.onScreen(point);
      pen.beginPath();
      pen.arc(x, y, 4, 0, 2 * Math.PI);
      this.stroke(pen);
    }
    this.label(pen, points[0], name);
  }

  stroke(pen, dashes = []) {
    pen.setLineDash(dashes);
    for (const [colour, width] of [[Halo, 4], [Ink, 1.6]]) {
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      pen.stroke();
    }
    pen.setLineDash([]);
  }

  label(pen, point, text) {
    const [x, y] = this.onScreen(point);
    pen.font = '600 16px "Source Sans 3", sans-serif';
    pen.lineWidth = 4;
    pen.strokeStyle = Halo;
    pen.strokeText(text, x + 8, y - 8);
    pen.fillStyle = Ink;
    pen.fillText(text, x + 8, y - 8);
  }

  // A bar of a round length, at most a quarter of the view.
  paintScale(pen) {
    if (!this.facts.micrometresPerPixel) {
      return;
    }
    const perScreen = this.facts.micrometresPerPixel / this.zoom;
    const most = (this.element.clientWidth / 4) * perScreen;
    const power = 10 ** Math.floor(Math.log10(most));
    const length = [5, 2, 1].map((n) => n * power).find((n) => n <= most);
    const [x, y] = [16, this.element.clientHeight - 16];
    pen.fillStyle = Halo;
    pen.fillRect(x - 8, y - 28, length / perScreen + 16, 38);
    pen.fillStyle = "#1c1a17";
    pen.fillRect(x, y - 4, length / perScreen, 6);
    pen.font = '16px "Source Sans 3", sans-serif';
    pen.fillText(length >= 1000 ? `${length / 1000} mm` : `${length} µm`, x, y - 10);
  }

  paintCross(pen) {
    const [x, y] = this.onScreen(this.cross);
    pen.beginPath();
    for (const [fromX, fromY, toX, toY] of [[-16, 0, -4, 0], [4, 0, 16, 0], [0, -16, 0, -4], [0, 4, 0, 16]]) {
      pen.moveTo(x + fromX, y + fromY);
      pen.lineTo(x + toX, y + toY);
    }
    this.stroke(pen);
  }

  onScreen(point) {
    return [(point.x - this.left) * this.zoom, (point.y - this.top) * this.zoom];
  }
}

function round(value) {
  return Math.round(value * 10) / 10;
}
