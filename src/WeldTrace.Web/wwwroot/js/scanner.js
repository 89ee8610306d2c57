// A scanner types a code and ends it with Enter. In a scan field Enter goes on to the next empty one, and sends the form
// only from the last. Keys that arrive as fast as a scanner's, with no field in focus, go to the first empty scan field.
const FastMilliseconds = 35;
let last = 0;
let before = "";

export function watchScanner() {
  document.addEventListener("keydown", (event) => {
    const target = event.target;
    if (target.matches?.("input[data-scan]")) {
      if (event.key === "Enter") {
        goOn(event, target);
      }
      return;
    }
    const isTyping = target.matches?.("input, textarea, select, [contenteditable]");
    if (!isTyping && event.key.length === 1 && !event.ctrlKey && !event.altKey && !event.metaKey) {
      const isFast = event.timeStamp - last < FastMilliseconds;
      takeOver(event, isFast ? before : "");
      [last, before] = [event.timeStamp, event.key];
    }
  });
}

export function focusScanField() {
  if (document.querySelector("[data-error-summary]")) {
    return;
  }
  document.querySelector("input[data-scan][data-scan-first]")?.focus();
}

function goOn(event, field) {
  const next = [...(field.form?.querySelectorAll("input[data-scan]") ?? [])].find((f) => f !== field && f.value === "");
  if (next) {
    event.preventDefault();
    next.focus();
  }
}

// Only the second key shows that it is a scanner: the first is put into the field with it, and none is lost.
function takeOver(event, earlier) {
  const field = [...document.querySelectorAll("input[data-scan]")].find((f) => f.value === "");
  if (field && (earlier || field.hasAttribute("data-scan-first"))) {
    event.preventDefault();
    field.focus();
    field.value = earlier + event.key;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
}
