// Shows one step at a time at the machine, and the turns of a row tuck by tuck; keeps the place.
// Without this script all steps stand on the page in order.
(function () {
  "use strict";
  const machine = document.getElementById("machine");
  const stops = Array.from(machine.querySelectorAll(".stop"));
  const part = function (id) { return document.getElementById(id); };
  const next = part("next");
  const back = part("back");
  const go = part("go");
  const storage = ["place", location.pathname, machine.dataset.mark].join(" ");
  const meaning = {
    toward: "onto the side not yet sewn",
    away: "onto the side just sewn",
    upright: "not held: leave it standing",
  };
  let at = 0;
  let tuck = 0;

  function tucksOf(stop) { return Array.from(stop.querySelectorAll(".tucks > li")); }

  // The place is a stop and, in a row, a tuck. A browser may refuse to store it; then only reloading loses it.
  function remember() {
    try { localStorage.setItem(storage, stops[at].id + " " + tuck); } catch (refused) { /* stays for this visit */ }
  }

  function remembered() {
    try { return (localStorage.getItem(storage) || "").split(" "); } catch (refused) { return [""]; }
  }

  function span(name, text) {
    const made = document.createElement("span");
    made.className = name;
    made.textContent = text;
    return made;
  }

  function showTuck() {
    const tucks = tucksOf(stops[at]);
    if (!tucks.length) { return; }
    const word = tucks[tuck].textContent;
    const end = stops[at].querySelector(".tucks").dataset.start;
    const following = tucks.slice(tuck + 1, tuck + 4).map(function (item) { return item.textContent; });
    tucks.forEach(function (item, place) {
      if (place === tuck) { item.setAttribute("aria-current", "step"); } else { item.removeAttribute("aria-current"); }
    });
    stops[at].querySelector(".tuck").replaceChildren(
      span("counted", "Tuck " + (tuck + 1) + " of " + tucks.length + " from the " + end + ": "),
      span("turn " + word, word),
      span("meaning", meaning[word] || "")
    );
    stops[at].querySelector(".then").textContent =
      following.length ? "then " + following.join(", ") : "then the row is done: back stitch";
  }

  function show() {
    const tucks = tucksOf(stops[at]).length;
    stops.forEach(function (stop, place) { stop.hidden = place !== at; });
    showTuck();
    part("progress").textContent = stops[at].dataset.place;
    go.value = stops[at].id;
    back.disabled = at === 0 && tuck === 0;
    next.disabled = at === stops.length - 1 && tuck >= tucks - 1;
    remember();
  }

  function stopAt(place, itsTuck) {
    at = place;
    tuck = itsTuck;
    show();
    window.scrollTo({ top: 0, behavior: "instant" });
    stops[at].querySelector("h2").focus({ preventScroll: true });
  }

  function forward() {
    if (tuck < tucksOf(stops[at]).length - 1) { tuck += 1; show(); return; }
    if (at < stops.length - 1) { stopAt(at + 1, 0); }
  }

  function backward() {
    if (tuck > 0) { tuck -= 1; show(); return; }
    if (at > 0) { stopAt(at - 1, Math.max(0, tucksOf(stops[at - 1]).length - 1)); }
  }

  function onKey(event) {
    const plain = !event.altKey && !event.ctrlKey && !event.metaKey;
    const busy = event.target.closest("a, button, select, summary");
    if (!plain || event.target === go) { return; }
    if (event.key === "ArrowRight" || (!busy && (event.key === "Enter" || event.key === " ") && !event.shiftKey)) {
      event.preventDefault();
      forward();
    } else if (event.key === "ArrowLeft" || (!busy && event.key === " " && event.shiftKey)) {
      event.preventDefault();
      backward();
    }
  }

  // A stroke across the page turns it, as in a book; the buttons do the same.
  let from = null;
  function onTouch(event) { from = event.touches.length === 1 ? event.touches[0] : null; }
  function onLift(event) {
    const to = event.changedTouches[0];
    if (!from) { return; }
    const across = to.clientX - from.clientX;
    const along = Math.abs(to.clientY - from.clientY);
    from = null;
    if (Math.abs(across) < 70 || along > 40) { return; }
    if (across < 0) { forward(); } else { backward(); }
  }

  const place = remembered();
  at = Math.max(0, stops.findIndex(function (stop) { return stop.id === place[0]; }));
  tuck = Math.min(Math.max(0, Number(place[1]) || 0), Math.max(0, tucksOf(stops[at]).length - 1));
  document.documentElement.classList.add("step-by-step");
  machine.querySelectorAll("#places, #moves, .now").forEach(function (found) { found.hidden = false; });
  next.addEventListener("click", forward);
  back.addEventListener("click", backward);
  go.addEventListener("change", function () { stopAt(go.selectedIndex, 0); });
  document.addEventListener("keydown", onKey);
  machine.addEventListener("touchstart", onTouch, { passive: true });
  machine.addEventListener("touchend", onLift, { passive: true });
  show();
}());
