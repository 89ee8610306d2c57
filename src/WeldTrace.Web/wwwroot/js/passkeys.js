// A passkey is asked of the browser by a button; its answer goes into the hidden field of the same form, which is then sent.
// Without the script, or where the browser or the address can't do it, no button is shown.
import { alertBefore } from "./page.js";

const Id = "passkey-alert";
const Failed = "The passkey was not used: it was put off, or this device has none for this site. Try again, or use the password.";

export function offerPasskeys() {
  // An address of numbers has no passkeys: they belong to a host name.
  const can = window.PublicKeyCredential?.parseRequestOptionsFromJSON && !/^[\d.]+$|:/.test(location.hostname);
  for (const actions of document.querySelectorAll("[data-passkey-actions]")) {
    actions.hidden = !can;
  }
  for (const note of document.querySelectorAll("[data-passkey-absent]")) {
    note.hidden = Boolean(can);
  }
}

export function watchPasskeys() {
  document.addEventListener("click", (event) => {
    const button = event.target.closest?.("[data-passkey]");
    if (button) {
      answer(button);
    }
  });
}

async function answer(button) {
  document.getElementById(Id)?.remove();
  const form = button.form;
  try {
    const response = await fetch(button.dataset.passkeyOptions);
    if (!response.ok) {
      throw new Error(response.statusText);
    }
    const options = await response.json();
    const credential =
      button.dataset.passkey === "create"
        ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
        : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
    form.querySelector("input[type=hidden][name$=Credential], input[type=hidden][name$=SignerPasskey]").value =
      JSON.stringify(credential);
    const submit = form.querySelector("button[type=submit].next");
    if (submit) {
      form.requestSubmit(submit);
    } else {
      form.submit();
    }
  } catch {
    alertBefore(button, Id, Failed);
  }
}
