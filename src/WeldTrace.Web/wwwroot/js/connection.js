// What the dialog "not connected" does. Entries are kept by drafts.js before any reload.
const DialogId = "components-reconnect-modal";

export function watchConnection() {
  const dialog = document.getElementById(DialogId);
  if (!dialog) {
    return;
  }
  dialog.addEventListener("components-reconnect-state-changed", (event) => change(dialog, event.detail.state));
  document.getElementById("reconnect-again").addEventListener("click", () => reconnect(dialog));
  document.getElementById("reconnect-resume").addEventListener("click", () => resume(dialog));
  document.getElementById("reconnect-reload").addEventListener("click", () => location.reload());
  document.addEventListener("visibilitychange", () => visibility(dialog));
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
    if (await Blazor.reconnect()) {
      dialog.close();
    } else if (await Blazor.resumeCircuit()) {
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
async function visibility(dialog) {
  if (!document.querySelector("[data-pause-when-hidden]")) {
    return;
  }
  if (document.visibilityState === "hidden") {
    await Blazor.pauseCircuit?.();
  } else if (dialog.open) {
    await resume(dialog);
  }
}
