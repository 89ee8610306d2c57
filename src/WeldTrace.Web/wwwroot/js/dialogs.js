// Native dialogs are opened by command attributes; browsers that do not know these yet are helped here.
export function watchDialogs() {
  if ("commandForElement" in HTMLButtonElement.prototype) {
    return;
  }
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("button[commandfor]");
    const dialog = button && document.getElementById(button.getAttribute("commandfor"));
    if (dialog instanceof HTMLDialogElement) {
      button.getAttribute("command") === "close" ? dialog.close() : dialog.showModal();
    }
  });
}

// A dialog that the server sends open becomes a true modal one.
export function openDialogs() {
  for (const dialog of document.querySelectorAll("dialog[open][data-modal]")) {
    dialog.close();
    dialog.showModal();
  }
}
