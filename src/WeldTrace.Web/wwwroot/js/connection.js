// What the dialog "not connected" does. Its elements may be replaced when another layout is merged in, so everything is
// listened for on the document; the framework's own event does not bubble, but it can be caught on its way down.
const DialogId = "components-reconnect-modal";
const dialogNow = () => document.getElementById(DialogId);
const acts = {
  "reconnect-again": reconnect,
  "reconnect-resume": resume,
  "reconnect-reload": () => location.reload(),
};

export function watchConnection() {
  document.addEventListener("components-reconnect-state-changed", (event) => change(event.target, event.detail.state), true);
  document.addEventListener("click", (event) => acts[event.target.id]?.(dialogNow()));
  document.addEventListener("visibilitychange", visibility);
}

function change(dialog, state) {
  if (state === "show" && !dialog.open) {
    dialog.showModal();
  } else if (state === "hide") {
    dialog.close();
  } else if (state === "rejected") {
    location.reload();
  }
}

async function reconnect(dialog) {
  try {
    if ((await Blazor.reconnect()) || (await Blazor.resumeCircuit())) {
      dialog.close();
    } else {
      location.reload();
    }
  } catch {
    dialog.classList.add("components-reconnect-failed");
  }
}

async function resume(dialog) {
  try {
    if (await Blazor.resumeCircuit()) {
      dialog.close();
    } else {
      location.reload();
    }
  } catch {
    dialog.classList.replace("components-reconnect-paused", "components-reconnect-resume-failed");
  }
}

// A sleeping tablet: pages whose whole state can be brought back say so by data-pause-when-hidden.
async function visibility() {
  const dialog = dialogNow();
  if (!dialog || !document.querySelector("[data-pause-when-hidden]")) {
    return;
  }
  if (document.visibilityState === "hidden") {
    await Blazor.pauseCircuit?.();
  } else if (dialog.open) {
    await resume(dialog);
  }
}
