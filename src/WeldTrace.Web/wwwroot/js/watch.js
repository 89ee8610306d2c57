// Asks how far long work is, tells it on the page, and shows the result when it has ended. Without a script a link does the same.
const Pause = 1000;

export function watchWork() {
  const element = document.querySelector("[data-watch]");
  if (element && !element.hasAttribute("data-watched")) {
    element.setAttribute("data-watched", "");
    follow(element);
  }
}

async function follow(element) {
  while (element.isConnected) {
    await new Promise((resolve) => setTimeout(resolve, Pause));
    const answer = await ask(element.dataset.watch);
    const isElsewhere = element.dataset.watchState && answer?.state !== element.dataset.watchState;
    if (answer && (!answer.running || isElsewhere)) {
      location.reload();
      return;
    }
    if (answer) {
      show(element, answer.progress);
    }
  }
}

// Null when there is no answer this time.
async function ask(address) {
  try {
    const answer = await fetch(address, { credentials: "same-origin" });
    return answer.ok ? await answer.json() : null;
  } catch {
    return null;
  }
}

function show(element, { part, done, total }) {
  const bar = element.querySelector("progress");
  bar.max = Math.max(1, total);
  bar.value = done;
  element.querySelector("[data-watch-part]").textContent = part;
  element.querySelector("[data-watch-status]").textContent = `${done} of ${total} ${part} ${element.dataset.watchDid ?? "read"}.`;
}
