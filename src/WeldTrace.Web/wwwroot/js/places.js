// Marks a place on the drawing of the unrolled vessel: a press fills the next empty row of [data-places].
export function watchPlaces() {
  document.addEventListener("click", (event) => {
    const drawing = event.target.closest?.("[data-places] [data-unrolled]");
    if (drawing) {
      mark(drawing, event);
    }
  });
}

function mark(drawing, event) {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.getScreenCTM().inverse());
  const lines = [...drawing.querySelectorAll("path")].map((path) => ({ path, box: path.getBBox() }));
  const nearest = lines.reduce((a, b) => (Math.abs(a.box.y - at.y) <= Math.abs(b.box.y - at.y) ? a : b));
  const share = (at.x - nearest.box.x) / nearest.box.width;
  const row = [...drawing.closest("[data-places]").querySelectorAll("[data-place-row]")].find((r) => !r.querySelector("input").value);
  if (!row || share < 0 || share > 1) {
    return;
  }
  const angle = row.querySelector("input");
  row.querySelector("select").value = nearest.path.dataset.joint ?? "";
  angle.value = String(Math.round(share * 360));
  angle.dispatchEvent(new Event("input", { bubbles: true }));
  const dot = document.createElementNS(drawing.namespaceURI, "circle");
  dot.setAttribute("class", "reading");
  dot.setAttribute("r", "7");
  dot.setAttribute("cx", String(at.x));
  dot.setAttribute("cy", String(nearest.box.y));
  drawing.append(dot);
}
