// The framework shows nothing when a form could not be sent. This says so, and that the entry is still there.
import { alertBefore } from "./page.js";

const Id = "post-alert";
const NotSent = "Not connected: your entry is kept. Press the button again when the network is back.";
// A glove presses twice within this time, in milliseconds; a form whose answer is a file can be sent again after it.
const Twice = 1500;
const sent = new Map();
let waiting = null;

export function watchPosts() {
  document.addEventListener("submit", sendOnce, true);
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

// Before the framework sees it: the second of two presses is no second act.
function sendOnce(event) {
  const form = event.target;
  if (form.method !== "post") {
    return;
  }
  const isSending = waiting && form.contains(waiting);
  if (isSending || event.timeStamp - (sent.get(form) ?? -Infinity) < Twice) {
    event.preventDefault();
    event.stopImmediatePropagation();
    return;
  }
  sent.set(form, event.timeStamp);
}

function settle() {
  const button = waiting;
  waiting = null;
  sent.clear();
  button?.removeAttribute("aria-busy");
  return button;
}

function isNetworkFailure(reason) {
  return reason instanceof TypeError || reason?.name === "NetworkError";
}
