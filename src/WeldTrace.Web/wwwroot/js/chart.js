// Draws the strips of a run chart from the bytes that ChartColumns writes: channels of one unit share a strip.
import uPlot from "../lib/uplot/uPlot.esm.js";

const Ink = ["#1c1a17", "#1d3ec2", "#7a5a10", "#565047"];
const Dashes = [[], [6, 3], [2, 3], [10, 3, 2, 3]];
const Alarm = "#9d1f0f";
const Rule = "#d6ccba";
const Font = '13px "Source Sans 3", sans-serif';
const Reach = 8;
const drawn = new Map();

export async function drawCharts() {
  for (const [element, plots] of drawn) {
    if (!element.isConnected) {
      plots.forEach((plot) => plot.destroy());
      drawn.delete(element);
    }
  }
  await document.fonts.ready;
  for (const element of document.querySelectorAll("[data-chart]")) {
    if (!element.querySelector(".uplot")) {
      draw(element).catch(() => fail(element));
    }
  }
}

async function draw(element) {
  const answer = await fetch(element.dataset.chart, { credentials: "same-origin" });
  if (!answer.ok) {
    return fail(element);
  }
  const [horizontal, ...columns] = readColumns(await answer.arrayBuffer());
  const places = JSON.parse(element.dataset.places ?? "[]");
  const series = JSON.parse(element.dataset.series);
  const strips = Map.groupBy(
    series.map((channel, index) => ({ ...channel, values: columns[index] })).filter((channel) => channel.values),
    (channel) => channel.unit,
  );
  element.replaceChildren();
  const setting = {
    bands: JSON.parse(element.dataset.bands),
    phases: JSON.parse(element.dataset.phases ?? "[]"),
    axis: element.dataset.axis,
    places,
    marks: JSON.parse(element.dataset.marks ?? "[]"),
    height: Number(element.dataset.height),
    width: element.clientWidth,
    key: element.dataset.chart,
  };
  const units = [...strips.keys()];
  const plots = units.map((unit) => strip(element, horizontal, strips.get(unit), unit, unit === units.at(-1), setting));
  drawn.set(element, plots);
  lookCloser(element, plots, [...strips.values()], horizontal);
  walkAlong(element, plots, setting);
  leadCursor(element, plots);
  new ResizeObserver(() => {
    plots.forEach((plot) => plot.setSize({ width: element.clientWidth, height: plot.height }));
  }).observe(element);
}

// Copied out of the answer, for a view must begin at a multiple of its own size.
function readColumns(buffer) {
  const view = new DataView(buffer);
  const [count, rows] = [view.getUint32(0, true), view.getUint32(4, true)];
  const columns = [new Float64Array(buffer.slice(8, 8 + 8 * rows))];
  for (let i = 0; i < count; i++) {
    const start = 8 + 8 * rows + 4 * rows * i;
    columns.push(Array.from(new Float32Array(buffer.slice(start, start + 4 * rows)), (v) => (Number.isNaN(v) ? null : v)));
  }
  return columns;
}

function strip(element, horizontal, channels, unit, isLast, setting) {
  const axis = { stroke: Ink[0], font: Font, grid: { stroke: Rule, width: 1 }, ticks: { stroke: Rule, width: 1, size: 5 } };
  const options = {
    width: setting.width,
    class: channels.length > 1 ? "strip-many" : "strip-one",
    height: setting.height + (isLast ? 50 : 0),
    cursor: { sync: { key: setting.key }, drag: { x: true, y: false } },
    scales: { x: { time: false }, y: { range: (plot, low, high) => withLimits(channels, low, high) } },
    axes: [
      isLast ? { ...axis, label: setting.axis, labelFont: Font, labelSize: 22, size: 28, values: (plot, ticks) => (element.dataset.along ? ticks.map((t) => number(placeAt(setting.places, t).place)) : ticks) } : { ...axis, size: 8, values: (plot, ticks) => ticks.map(() => "") },
      { ...axis, size: 62 },
    ],
    series: [
      { label: setting.axis, value: (plot, value) => number(value) },
      ...channels.map((channel, index) => ({ label: `${channel.name} in ${unit}`, stroke: Ink[index % Ink.length], width: 1.4, dash: Dashes[index % Dashes.length], value: (plot, value) => number(value) })),
    ],
    hooks: { drawClear: [(plot) => shade(plot, setting.bands), (plot) => name(plot, setting.phases)], draw: [(plot) => limits(plot, channels), (plot) => marks(plot, setting.marks)] },
  };
  return new uPlot(options, [horizontal, ...channels.map((channel) => channel.values)], element);
}

// Fetches the stretch that is looked at anew, down to the single samples; what was drawn stays until it is here.
function lookCloser(element, plots, strips, whole) {
  const [start, end] = [whole[0], whole.at(-1)];
  let asked = 0;
  const show = async (from, to) => {
    const mine = ++asked;
    const isWhole = from <= start && to >= end;
    const address = isWhole ? element.dataset.chart : `${element.dataset.chart}${element.dataset.chart.includes("?") ? "&" : "?"}from=${from}&to=${to}`;
    const answer = await fetch(address, { credentials: "same-origin" });
    if (!answer.ok || mine !== asked) {
      return;
    }
    const [horizontal, ...columns] = readColumns(await answer.arrayBuffer());
    const order = JSON.parse(element.dataset.series).map((channel) => channel.name);
    plots.forEach((plot, strip) => {
      const values = strips[strip].map((channel) => columns[order.indexOf(channel.name)]);
      plot.setData([horizontal, ...values], false);
      plot.setScale("x", { min: from, max: to });
    });
  };
  for (const plot of plots) {
    plot.hooks.setSelect = [...(plot.hooks.setSelect ?? []), (p) => {
      if (p.select.width > 0) {
        show(p.posToVal(p.select.left, "x"), p.posToVal(p.select.left + p.select.width, "x"));
      }
    }];
    plot.over.addEventListener("dblclick", () => show(start, end));
  }
  element.addEventListener("keydown", (event) => {
    const { min, max } = plots[0].scales.x;
    const [middle, half] = [(min + max) / 2, (max - min) / 2];
    const moves = {
      "+": () => [middle - half / 2, middle + half / 2],
      "=": () => [middle - half / 2, middle + half / 2],
      "-": () => [Math.max(start, middle - 2 * half), Math.min(end, middle + 2 * half)],
      ArrowLeft: () => [Math.max(start, min - half / 2), Math.max(start, min - half / 2) + 2 * half],
      ArrowRight: () => [Math.min(end, max + half / 2) - 2 * half, Math.min(end, max + half / 2)],
      0: () => [start, end],
    };
    if (moves[event.key] && !event.ctrlKey && !event.altKey && !event.shiftKey) {
      event.preventDefault();
      show(...moves[event.key]());
    }
  });
}

// The second axis, and the place under the cursor in words and on the drawing of the seam.
function walkAlong(element, plots, { places, marks }) {
  const bar = element.parentElement.querySelector("[data-chart-axis]");
  if (!bar || places.length < 2) {
    return;
  }
  bar.hidden = false;
  const words = bar.querySelector("[data-chart-cursor]");
  const hand = document.querySelector("[data-seam-cursor]");
  const unit = element.dataset.placeUnit;
  bar.querySelector("[data-chart-along]").addEventListener("change", (event) => {
    element.dataset.along = event.target.checked ? "yes" : "";
    plots.at(-1).axes[0].label = event.target.checked ? `along the seam in ${unit}` : element.dataset.axis;
    plots.forEach((plot) => plot.redraw(false, true));
  });
  for (const plot of plots) {
    plot.hooks.setCursor = [...(plot.hooks.setCursor ?? []), (p) => {
      const at = p.cursor.left >= 0 ? placeAt(places, p.posToVal(p.cursor.left, "x")) : null;
      words.textContent = at ? `${number(at.place)} ${unit} along the seam${at.degrees === null ? "" : `, ${at.degrees.toFixed(1)}° from the start`}${here(marks, p.posToVal(p.cursor.left, "x"), p)}` : "";
      if (hand) {
        hand.setAttribute("visibility", at && at.degrees !== null ? "visible" : "hidden");
        if (at && at.degrees !== null) {
          const turn = Number(hand.dataset.start) + Number(hand.dataset.sign) * at.degrees;
          hand.setAttribute("transform", `rotate(${turn.toFixed(1)} 200 200)`);
        }
      }
    }];
  }
}

// The marks within a few pixels of the cursor, in words.
function here(marks, at, plot) {
  const reach = plot.posToVal(Reach, "x") - plot.posToVal(0, "x");
  return marks.filter((m) => Math.abs(m.at - at) <= reach).map((m) => `; ${m.letter}: ${m.word}`).join("");
}

// The cursor by keyboard, and from the list of places to the chart.
function leadCursor(element, plots) {
  const plot = plots[0];
  const put = (at) => plots.forEach((p) => p.setCursor({ left: p.valToPos(at, "x"), top: 10 }));
  element.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (step && event.shiftKey) {
      event.preventDefault();
      const { min, max } = plot.scales.x;
      const from = plot.cursor.left >= 0 ? plot.posToVal(plot.cursor.left, "x") : min;
      put(Math.min(max, Math.max(min, from + (step * (max - min)) / 200)));
    }
  });
  for (const button of document.querySelectorAll("[data-chart-go]")) {
    button.addEventListener("click", () => {
      element.scrollIntoView({ block: "center" });
      element.focus({ preventScroll: true });
      put(Number(button.dataset.chartGo));
    });
  }
}

function placeAt(places, at) {
  const next = places.findIndex((p) => p.at >= at);
  if (next <= 0) {
    return next === 0 ? places[0] : places.at(-1);
  }
  const [a, b] = [places[next - 1], places[next]];
  const share = (at - a.at) / (b.at - a.at || 1);
  const between = (x, y) => (x === null || y === null ? null : x + share * (y - x));
  return { place: between(a.place, b.place), degrees: between(a.degrees, b.degrees) };
}

function name(plot, phases) {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.font = `${12 * devicePixelRatio}px "Source Sans 3", sans-serif`;
  ctx.textBaseline = "bottom";
  phases.forEach((phase, index) => {
    const [from, to] = [plot.valToPos(phase.from, "x", true), plot.valToPos(phase.to, "x", true)];
    const [left, right] = [Math.max(from, bbox.left), Math.min(to, bbox.left + bbox.width)];
    if (right > left) {
      ctx.fillStyle = index % 2 ? Rule + "33" : Rule + "66";
      ctx.fillRect(left, bbox.top, right - left, bbox.height);
      ctx.fillStyle = Ink[3];
      if (ctx.measureText(phase.number).width < right - left - 4) {
        ctx.fillText(phase.number, left + 3, bbox.top + bbox.height - 2);
      }
    }
  });
  ctx.restore();
}

function number(value) {
  return value === null || value === undefined ? "" : value.toPrecision(4).replace("-", "−");
}

function withLimits(channels, low, high) {
  const stated = channels.flatMap((c) => [c.lowerInUnit, c.upperInUnit]).filter((v) => v !== null && v !== undefined);
  const [bottom, top] = [Math.min(low ?? 0, ...stated), Math.max(high ?? 1, ...stated)];
  const room = (top - bottom || 1) * 0.08;
  return [bottom - room, top + room];
}

function marks(plot, places) {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = Ink[0];
  ctx.fillStyle = Ink[0];
  ctx.lineWidth = devicePixelRatio;
  ctx.font = `600 ${13 * devicePixelRatio}px "Source Sans 3", sans-serif`;
  ctx.textBaseline = "top";
  ctx.textAlign = "left";
  for (const { at, letter } of places) {
    const x = plot.valToPos(at, "x", true);
    if (x >= bbox.left && x <= bbox.left + bbox.width) {
      ctx.beginPath();
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      ctx.fillText(letter, x + 3, bbox.top + 15 * devicePixelRatio);
    }
  }
  ctx.restore();
}

function shade(plot, bands) {
  const { ctx, bbox } = plot;
  ctx.save();
  for (const band of bands) {
    const [from, to] = [plot.valToPos(band.from, "x", true), plot.valToPos(band.to, "x", true)];
    const left = Math.max(from, bbox.left);
    const width = Math.min(Math.max(to, from + 2), bbox.left + bbox.width) - left;
    if (width > 0) {
      ctx.fillStyle = Alarm + "26";
      ctx.fillRect(left, bbox.top, width, bbox.height);
      ctx.fillStyle = Alarm;
      ctx.font = `600 ${13 * devicePixelRatio}px "Source Sans 3", sans-serif`;
      ctx.textBaseline = "top";
      ctx.fillText(band.number, left + 2, bbox.top + 1);
    }
  }
  ctx.restore();
}

function limits(plot, channels) {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = Alarm;
  ctx.lineWidth = devicePixelRatio;
  ctx.setLineDash([7 * devicePixelRatio, 4 * devicePixelRatio]);
  for (const value of channels.flatMap((c) => [c.lowerInUnit, c.upperInUnit])) {
    if (value !== null && value !== undefined) {
      const y = Math.round(plot.valToPos(value, "y", true));
      ctx.beginPath();
      ctx.moveTo(bbox.left, y);
      ctx.lineTo(bbox.left + bbox.width, y);
      ctx.stroke();
    }
  }
  ctx.restore();
}

function fail(element) {
  const line = document.createElement("p");
  line.textContent = "The samples could not be fetched. Load the page again; the figures also stand in the table below.";
  element.replaceChildren(line);
}
