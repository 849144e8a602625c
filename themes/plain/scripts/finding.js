// Finds projects on the home page by kind, level and time. Without this script the page is a plain list.
(function () {
  "use strict";
  const form = document.getElementById("finding");
  const found = document.getElementById("found");
  const cards = Array.from(document.querySelectorAll("#cards > li"));

  function wanted(card) {
    const kind = form.elements.kind.value;
    const level = form.elements.level.value;
    const time = Number(form.elements.time.value) || Infinity;
    return (!kind || card.dataset.kind === kind)
      && (!level || card.dataset.level === level)
      && Number(card.dataset.minutes) <= time;
  }

  function show() {
    cards.forEach(function (card) { card.hidden = !wanted(card); });
    const shown = cards.filter(function (card) { return !card.hidden; }).length;
    found.textContent = shown === 1 ? "1 project" : shown + " projects";
  }

  form.hidden = false;
  form.addEventListener("change", show);
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  show();
}());
