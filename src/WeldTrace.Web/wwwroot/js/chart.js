// Draws the strips of a run chart from the bytes that ChartColumns writes: channels of one unit share a strip.
import uPlot from "../lib/uplot/uPlot.esm.js";

const Ink = ["#1c1a17", "#1d3ec2", "#7a5a10", "#565047"];
const Alarm = "#9d1f0f";
const Rule = "#d6ccba";
const Font = '13px "Source Sans 3", sans-serif';
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
  const series = JSON.parse(element.dataset.series);
  const strips = Map.groupBy(
    series.map((channel, index) => ({ ...channel, values: columns[index] })).filter((channel) => channel.values),
    (channel) => channel.unit,
  );
  element.replaceChildren();
  const setting = {
    bands: JSON.parse(element.dataset.bands),
    axis: element.dataset.axis,
    height: Number(element.dataset.height),
    width: element.clientWidth,
    key: element.dataset.chart,
  };
  const units = [...strips.keys()];
  const plots = units.map((unit) => strip(element, horizontal, strips.get(unit), unit, unit === units.at(-1), setting));
  drawn.set(element, plots);
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
      isLast ? { ...axis, label: setting.axis, labelFont: Font, labelSize: 22, size: 28 } : { ...axis, size: 8, values: (plot, ticks) => ticks.map(() => "") },
      { ...axis, size: 62 },
    ],
    series: [
      { label: setting.axis, value: (plot, value) => number(value) },
      ...channels.map((channel, index) => ({ label: `${channel.name} in ${unit}`, stroke: Ink[index % Ink.length], width: 1.4, dash: index ? [6, 3] : undefined, value: (plot, value) => number(value) })),
    ],
    hooks: { drawClear: [(plot) => shade(plot, setting.bands)], draw: [(plot) => limits(plot, channels)] },
  };
  return new uPlot(options, [horizontal, ...channels.map((channel) => channel.values)], element);
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
