// The framework shows nothing when a form could not be sent. This says so, and that the entry is still there.
import { alertBefore } from "./page.js";

const Id = "post-alert";
const NotSent = "Not connected: your entry is kept. Press the button again when the network is back.";
let waiting = null;

export function watchPosts() {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.method !== "post" || !form.hasAttribute("data-enhance")) {
      return;
    }
    document.getElementById(Id)?.remove();
    waiting = event.submitter ?? form.querySelector("button[type=submit]") ?? form.lastElementChild;
    waiting?.setAttribute("aria-busy", "true");
  });
  window.addEventListener("unhandledrejection", (event) => {
    if (waiting && isNetworkFailure(event.reason)) {
      event.preventDefault();
      const button = settle();
      if (button.isConnected) {
        alertBefore(button.closest(".actions") ?? button, Id, NotSent);
      }
    }
  });
  window.Blazor?.addEventListener("enhancedload", settle);
}

function settle() {
  const button = waiting;
  waiting = null;
  button?.removeAttribute("aria-busy");
  return button;
}

function isNetworkFailure(reason) {
  return reason instanceof TypeError || reason?.name === "NetworkError";
}
