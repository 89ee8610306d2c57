// Shows the weld pitch while the windows are being typed.
const toMillimetresPerMinute = { "mm/min": 1, "mm/s": 60, "in/min": 25.4 };

const number = (id) => {
  const text = document.getElementById(id)?.value.trim().replace(",", ".");
  return text ? Number(text) : NaN;
};

const show = (output) => {
  const [spindle, travel] = output.dataset.pitch.split(" ");
  const unit = document.getElementById(`${travel}-Unit`)?.value;
  const pitch = (number(`${travel}-SetPoint`) * (toMillimetresPerMinute[unit] ?? NaN)) / number(`${spindle}-SetPoint`);
  output.textContent = Number.isFinite(pitch) && pitch > 0 ? `${pitch.toPrecision(3)} mm/rev` : "not known yet";
};

export const showPitches = () => document.querySelectorAll("output[data-pitch]").forEach(show);

export const watchPitches = () => document.addEventListener("input", showPitches);
