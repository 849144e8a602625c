// Runs before anything is drawn: shows measures in the unit and all pages in the look that were chosen last, on this page
// and on every other. Without it the choice at the head of a page holds for that page, and the look is that of the device.
(function () {
  "use strict";
  const root = document.documentElement;
  const manifest = document.currentScript.dataset.manifest;

  function kept(key) { try { return localStorage.getItem(key); } catch (refused) { return null; } }
  function keep(key, value) { try { localStorage.setItem(key, value); } catch (refused) { /* for this page */ } }

  // One of the room's own units, else the one that stands there.
  function show(choices, wanted) {
    const chosen = choices.find(function (one) { return one.value === wanted; }) || choices.find(function (one) { return one.checked; });
    if (!chosen) { return; }
    chosen.checked = true;
    root.dataset.unit = chosen.value;
  }

  function begin() {
    const choices = Array.from(document.querySelectorAll("#units input"));
    show(choices, kept("unit"));
    choices.forEach(function (one) {
      one.addEventListener("change", function () { keep("unit", one.value); show(choices, one.value); });
    });
    const look = document.getElementById("look-of");
    if (!look) { return; }
    look.value = kept("look") || "";
    look.closest("[hidden]").hidden = false;
    look.addEventListener("change", function () { keep("look", look.value); root.dataset.look = look.value; });
  }

  // A page that is opened from its folder may not ask for this file.
  function nameTheRoom() {
    const link = document.createElement("link");
    link.rel = "manifest";
    link.href = manifest;
    document.head.append(link);
  }

  if (kept("unit")) { root.dataset.unit = kept("unit"); }
  if (kept("look")) { root.dataset.look = kept("look"); }
  if (manifest && location.protocol.startsWith("http")) { nameTheRoom(); }
  document.addEventListener("DOMContentLoaded", begin);
}());
