// Asks the server for the figures that follow from a form while it is being typed: form[data-figures] fills #live-figures.
const Pause = 300;
let timer = 0;
let asking = null;

export function watchFigures() {
  document.addEventListener("input", ask);
  document.addEventListener("change", ask);
}

function ask(event) {
  const form = event.target.form;
  if (!form?.dataset.figures) {
    return;
  }
  clearTimeout(timer);
  timer = setTimeout(() => show(form), Pause);
}

async function show(form) {
  asking?.abort();
  asking = new AbortController();
  const typed = new FormData(form);
  for (const [name, value] of [...typed]) {
    if (value instanceof File || name === "_handler") {
      typed.delete(name);
    }
  }
  try {
    const answer = await fetch(form.dataset.figures, { method: "POST", body: typed, signal: asking.signal });
    if (answer.ok) {
      replace(document.getElementById("live-figures"), await answer.text());
    }
  } catch {
    // Without the network the figures stay as they were; the form itself is kept.
  }
}

// A working that was folded out stays so while the figures beside it follow what is typed.
function replace(figures, markup) {
  const open = new Set([...figures.querySelectorAll("details[open]")].map(name));
  figures.innerHTML = markup;
  for (const folded of figures.querySelectorAll("details")) {
    folded.open = open.has(name(folded));
  }
}

function name(folded) {
  const title = folded.querySelector(".working-title")?.textContent ?? "";
  return `${folded.querySelector("summary").textContent} ${title}`;
}
