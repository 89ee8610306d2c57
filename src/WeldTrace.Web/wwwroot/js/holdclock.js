// Clock of a hold: [data-hold-clock]. Its begin is kept in the browser, so that it goes on after a reload or a closed tab.
let timer = 0;

export function startHoldClock() {
  clearInterval(timer);
  const clock = document.querySelector("[data-hold-clock]");
  if (!clock) {
    return;
  }
  clock.hidden = false;
  const key = `hold ${clock.dataset.key}`;
  clock.querySelector("[data-hold-start]").onclick = () => {
    localStorage.setItem(key, String(Date.now()));
    show(clock, key);
  };
  clock.querySelector("[data-hold-stop]").onclick = () => stop(clock, key);
  timer = setInterval(() => show(clock, key), 1000);
  show(clock, key);
}

function held(key) {
  const begun = Number(localStorage.getItem(key));
  return begun ? Math.max(0, Math.floor((Date.now() - begun) / 1000)) : 0;
}

function show(clock, key) {
  const seconds = held(key);
  clock.querySelector("[data-hold-time]").textContent = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  const state = clock.querySelector("[data-hold-state]");
  const word = seconds === 0 ? "" : seconds < Number(clock.dataset.seconds) ? "holding" : "long enough";
  if (state.textContent !== word) {
    state.textContent = word;
  }
}

function stop(clock, key) {
  const field = document.getElementById(clock.dataset.target);
  if (field && localStorage.getItem(key)) {
    field.value = String(held(key));
    field.dispatchEvent(new Event("input", { bubbles: true }));
    localStorage.removeItem(key);
    show(clock, key);
    field.focus();
  }
}
