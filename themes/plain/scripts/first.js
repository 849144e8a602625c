// Runs before anything is drawn: shows measures in the unit that was chosen last, on this page and on every other. Without
// it the choice at the head of a page holds for that page.
(function () {
  "use strict";
  const root = document.documentElement;
  const KEY = "unit";

  function kept() { try { return localStorage.getItem(KEY); } catch (refused) { return null; } }
  function keep(unit) { try { localStorage.setItem(KEY, unit); } catch (refused) { /* for this page */ } }

  // One of the room's own units, else the one that stands there.
  function show(choices, wanted) {
    const chosen = choices.find(function (one) { return one.value === wanted; }) || choices.find(function (one) { return one.checked; });
    if (!chosen) { return; }
    chosen.checked = true;
    root.dataset.unit = chosen.value;
  }

  function begin() {
    const choices = Array.from(document.querySelectorAll("#units input"));
    show(choices, kept());
    choices.forEach(function (one) {
      one.addEventListener("change", function () { keep(one.value); show(choices, one.value); });
    });
  }

  if (kept()) { root.dataset.unit = kept(); }
  document.addEventListener("DOMContentLoaded", begin);
}());
