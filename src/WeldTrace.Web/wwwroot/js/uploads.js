// Sends the file of a form that says data-upload, and tells how far it is. Without a script the form works all the same.
import { alertBefore } from "./page.js";

const Id = "upload-alert";
const NotSent = "Not connected: the file did not arrive whole and was not kept. Press the button again when the network is back.";

export function watchUploads() {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.hasAttribute("data-upload")) {
      event.preventDefault();
      start(form);
    } else if (form.hasAttribute("data-busy")) {
      status(form).textContent = form.dataset.busy;
    }
  });
}

function start(form) {
  const [file] = form.querySelector("input[type=file]").files;
  const button = form.querySelector("button[type=submit]");
  if (!file || button.getAttribute("aria-busy") === "true") {
    return;
  }
  document.getElementById(Id)?.remove();
  if (file.size > Number(form.dataset.mostBytes)) {
    alertBefore(button, Id, form.dataset.tooLarge);
    return;
  }
  button.setAttribute("aria-busy", "true");
  send(form, button);
}

function send(form, button) {
  const request = new XMLHttpRequest();
  const line = status(form);
  request.upload.addEventListener("progress", (event) => {
    line.textContent = event.lengthComputable ? `${megabytes(event.loaded)} of ${megabytes(event.total)} MB sent.` : "";
  });
  request.upload.addEventListener("load", () => (line.textContent = "Sent. Looking at its columns."));
  request.addEventListener("load", () => (request.status < 400 ? location.assign(request.responseURL) : fail(button, line)));
  request.addEventListener("error", () => fail(button, line));
  request.addEventListener("abort", () => end(button, line, "Stopped. Nothing was kept."));
  const cancel = form.querySelector("[data-upload-cancel]");
  if (cancel) {
    cancel.hidden = false;
    cancel.onclick = () => request.abort();
    request.addEventListener("loadend", () => (cancel.hidden = true));
  }
  request.open("POST", form.action);
  request.send(new FormData(form));
}

function end(button, line, words) {
  line.textContent = words;
  button.removeAttribute("aria-busy");
}

function fail(button, line) {
  end(button, line, "");
  alertBefore(button, Id, NotSent);
}

function status(form) {
  return form.querySelector("[data-upload-status]");
}

function megabytes(bytes) {
  return (bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0);
}
