// Calls back for the page as loaded, and again after each page that the framework merges in.
export function onPage(callback) {
  callback();
  window.Blazor?.addEventListener("enhancedload", callback);
}

// A line that a screen reader speaks at once, placed before the given element; one per id.
export function alertBefore(element, id, text) {
  document.getElementById(id)?.remove();
  const line = document.createElement("p");
  line.id = id;
  line.className = "page-alert";
  line.setAttribute("role", "alert");
  element.before(line);
  line.textContent = text;
  return line;
}
