// A date control shows the date in the browser's own order; the same date stands beside it as year-month-day.
export function echoDates() {
  for (const field of document.querySelectorAll("input[type=date], input[type=datetime-local]")) {
    const echo = document.getElementById(`${field.id}-echo`);
    if (echo && !field.dataset.echoed) {
      field.dataset.echoed = "1";
      field.addEventListener("input", () => (echo.textContent = field.value.replace("T", " ")));
    }
  }
}
