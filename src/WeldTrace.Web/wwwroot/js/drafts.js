// Keeps half-entered forms on this device. A form takes part by data-draft="its own name"; the person comes from
// data-person on an element around it, so that two people at one tablet do not see each other's entries.
// A button with data-adds-fields sends the form to get more fields, not to save it, so the draft stays.
// Passwords, files, hidden fields and fields marked data-no-draft are never kept.
const Prefix = "draft:";
const Sent = "draft-sent:";
const OldestMilliseconds = 14 * 24 * 3600 * 1000;
const Unkept = new Set(["password", "file", "hidden", "submit", "button"]);

export function watchDrafts() {
  document.addEventListener("input", keep);
  document.addEventListener("change", keep);
  document.addEventListener("submit", (event) => {
    const key = keyOf(event.target);
    if (key && !event.submitter?.hasAttribute("data-adds-fields")) {
      sessionStorage.setItem(Sent + key, "1");
    }
  });
}

function keep(event) {
  const form = event.target.form;
  const key = keyOf(form);
  if (!key) {
    return;
  }
  const values = {};
  for (const field of fieldsOf(form)) {
    if (field.type === "radio" && !field.checked) {
      continue;
    }
    values[field.name] = field.type === "checkbox" ? field.checked : field.value;
  }
  write(key, { at: new Date().toISOString(), values });
}

export function restoreDrafts() {
  forgetSaved();
  for (const form of document.querySelectorAll("form[data-draft]")) {
    restore(form);
  }
}

// A form that was sent and is not shown again with faults has been saved.
function forgetSaved() {
  for (const key of keysWith(sessionStorage, Sent)) {
    const name = key.slice(Sent.length);
    const form = [...document.querySelectorAll("form[data-draft]")].find((f) => keyOf(f) === name);
    const refused = form && (form.querySelector("[aria-invalid=true]") || document.querySelector("[data-error-summary]"));
    sessionStorage.removeItem(key);
    if (!refused) {
      localStorage.removeItem(Prefix + name);
    }
  }
}

function restore(form) {
  const key = keyOf(form);
  const draft = key && read(key);
  if (!draft || Date.now() - Date.parse(draft.at) > OldestMilliseconds) {
    return;
  }
  if (lacksFields(form, draft)) {
    return;
  }
  let changed = false;
  for (const field of fieldsOf(form)) {
    if (!(field.name in draft.values)) {
      continue;
    }
    changed = put(field, draft.values[field.name]) || changed;
  }
  if (changed) {
    say(form, key, draft.at);
  }
}

// A table that had grown is grown again first: the button that adds rows says with which name its fields begin.
function lacksFields(form, draft) {
  const more = form.querySelector("button[data-adds-fields]");
  const names = Object.keys(draft.values);
  const lacks = more && names.some((n) => n.startsWith(more.dataset.addsFields) && !form.elements.namedItem(n));
  if (lacks) {
    form.requestSubmit(more);
  }
  return lacks;
}

function put(field, value) {
  if (field.type === "checkbox") {
    const differs = field.checked !== value;
    field.checked = value;
    return differs;
  }
  if (field.type === "radio") {
    const differs = field.value === value && !field.checked;
    field.checked = field.value === value;
    return differs;
  }
  const differs = field.value !== value;
  field.value = value;
  return differs;
}

function say(form, key, at) {
  form.querySelector(".draft-note")?.remove();
  const note = document.createElement("p");
  note.className = "draft-note";
  note.setAttribute("role", "status");
  const time = new Date(at);
  const stamp = `${time.toLocaleDateString("en-CA")} ${time.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
  note.append(`What you had entered up to ${stamp} stands here again; it is not saved yet. `);
  const button = document.createElement("button");
  button.type = "button";
  button.className = "button plain";
  button.textContent = "Empty it again";
  button.addEventListener("click", () => {
    localStorage.removeItem(Prefix + key);
    form.reset();
    note.remove();
  });
  note.append(button);
  form.prepend(note);
}

function fieldsOf(form) {
  return [...form.elements].filter((f) => f.name && !Unkept.has(f.type) && !f.hasAttribute("data-no-draft"));
}

function keyOf(form) {
  if (!(form instanceof HTMLFormElement) || !form.dataset.draft) {
    return null;
  }
  const person = form.closest("[data-person]")?.dataset.person ?? "";
  return `${person}:${form.dataset.draft}`;
}

function keysWith(storage, prefix) {
  return Object.keys(storage).filter((key) => key.startsWith(prefix));
}

function read(key) {
  try {
    const draft = JSON.parse(localStorage.getItem(Prefix + key));
    return draft && typeof draft.values === "object" && draft.values ? draft : null;
  } catch {
    return null;
  }
}

function write(key, draft) {
  try {
    localStorage.setItem(Prefix + key, JSON.stringify(draft));
  } catch {
    // The device's store is full or closed; the form itself still works.
  }
}
