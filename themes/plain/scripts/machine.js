// Shows one step at a time at the machine, and the turns of a row tuck by tuck; keeps the place, and tells what was
// corrected since the work was begun.
// Without this script all steps stand on the page in order.
(function () {
  "use strict";
  const machine = document.getElementById("machine");
  const stops = Array.from(machine.querySelectorAll(".stop"));
  const part = function (id) { return document.getElementById(id); };
  const next = part("next");
  const back = part("back");
  const go = part("go");
  const state = part("state");
  const site = new URL(".", new URL(state.dataset.newest, location.href)).pathname;
  const storage = "place " + site + " " + state.dataset.sheet;
  const meaning = {
    toward: "onto the side not yet sewn",
    away: "onto the side just sewn",
    upright: "not held: leave it standing",
  };
  let at = 0;
  let tuck = 0;
  let began = state.dataset.numbers;

  function tucksOf(stop) { return Array.from(stop.querySelectorAll(".tucks > li")); }

  // The place is a stop and, in a row, a tuck, with the numbers that the work was begun by. A browser may refuse to
  // store it; then only reloading loses it.
  function remember() {
    const place = { stop: stops[at].id, number: at, tuck: tuck, numbers: began };
    try { localStorage.setItem(storage, JSON.stringify(place)); } catch (refused) { /* stays for this visit */ }
  }

  function remembered() {
    try { return JSON.parse(localStorage.getItem(storage)); } catch (refused) { return null; }
  }

  // A stop that is there no longer: the one in its place.
  function takeUp(place) {
    const same = stops.findIndex(function (stop) { return stop.id === place.stop; });
    at = Math.min(Math.max(0, same >= 0 ? same : Number(place.number) || 0), stops.length - 1);
    tuck = same < 0 ? 0 : Math.min(Math.max(0, Number(place.tuck) || 0), Math.max(0, tucksOf(stops[at]).length - 1));
    part("moved").hidden = same >= 0;
  }

  function told(change) {
    const line = document.createElement("li");
    const was = document.createElement("s");
    const now = document.createElement("b");
    was.textContent = change[2] || "not there";
    now.textContent = change[3] || "gone";
    line.append((change[0] ? change[0] + ", " : "") + change[1] + ": ", was, " is now ", now);
    return line;
  }

  // What was corrected since the work was begun, told before a stitch more is sewn; nothing where no number changed.
  function corrected(place) {
    if (!place.numbers || !state.dataset.numbers || place.numbers === state.dataset.numbers) { return false; }
    const given = JSON.parse(part("given").textContent)[place.numbers];
    part("began").textContent = given
      ? "You began by a sheet with the edition mark " + given[0] + ". Since then:"
      : "The sheet was worked again since. Compare what you have cut and marked with it before you go on.";
    part("changes").replaceChildren.apply(part("changes"), (given ? given[1] : []).map(told));
    part("corrected").hidden = false;
    stops.forEach(function (stop) { stop.hidden = true; });
    return true;
  }

  function begin(place, itsTuck) {
    began = state.dataset.numbers;
    part("corrected").hidden = true;
    machine.querySelectorAll("#places, #moves, .now").forEach(function (found) { found.hidden = false; });
    stopAt(place, itsTuck);
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
    if (!part("corrected").hidden) { return; }
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
    if (!from || !part("corrected").hidden) { return; }
    const across = to.clientX - from.clientX;
    const along = Math.abs(to.clientY - from.clientY);
    from = null;
    if (Math.abs(across) < 70 || along > 40) { return; }
    if (across < 0) { forward(); } else { backward(); }
  }

  const place = remembered();
  if (place) { takeUp(place); }
  document.documentElement.classList.add("step-by-step");
  part("go-on").addEventListener("click", function () { begin(at, tuck); });
  part("begin-again").addEventListener("click", function () { begin(0, 0); });
  next.addEventListener("click", forward);
  back.addEventListener("click", backward);
  go.addEventListener("change", function () { stopAt(go.selectedIndex, 0); });
  document.addEventListener("keydown", onKey);
  machine.addEventListener("touchstart", onTouch, { passive: true });
  machine.addEventListener("touchend", onLift, { passive: true });
  if (place && corrected(place)) { part("corrected-title").focus({ preventScroll: true }); return; }
  machine.querySelectorAll("#places, #moves, .now").forEach(function (found) { found.hidden = false; });
  show();
}());
