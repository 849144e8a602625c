// Shows one instruction at a time at the machine: pages down before it goes on, keeps the place with its ticks, and tells
// what was corrected since the work was begun. Without this script all stand on the page in order.
(function () {
  "use strict";
  const root = document.documentElement;
  const machine = document.getElementById("machine");
  const stops = Array.from(machine.querySelectorAll(".stop"));
  const part = function (id) { return document.getElementById(id); };
  const next = part("next");
  const back = part("back");
  const moves = part("moves");
  const state = part("state");
  const last = stops[stops.length - 1].dataset.step;
  const site = new URL(".", new URL(state.dataset.newest, location.href)).pathname;
  const storage = "place " + site + " " + state.dataset.sheet;
  // What lies this little below the edge [px] counts as seen; a page down leaves this much of what was read.
  const SEEN = 8;
  const OVERLAP = 90;
  let at = 0;
  let ticked = [];
  const given = JSON.parse(part("given").textContent);
  let began = state.dataset.numbers;
  // The numbers themselves, where no edition keeps them: then this device tells what is otherwise later.
  let printed = given[""];

  // The place is a stop with everything ticked or touched so far, and the numbers that the work was begun by. A browser
  // may refuse to store it; then only reloading loses it.
  function remember() {
    const place = {
      stop: stops[at].id, number: at, numbers: began, printed: printed, ticked: ticked,
      step: stops[at].dataset.step, of: last, heading: stops[at].querySelector("h2").textContent,
      title: machine.dataset.title, size: machine.dataset.size, edition: machine.dataset.edition,
      page: location.href.split("#")[0], when: new Date().toISOString(),
    };
    try { localStorage.setItem(storage, JSON.stringify(place)); } catch (refused) { /* stays for this visit */ }
  }

  function remembered() {
    try { return JSON.parse(localStorage.getItem(storage)); } catch (refused) { return null; }
  }

  // Where the bar rests below the words, or stands beside them, it covers nothing.
  function barRests() { return getComputedStyle(moves).position === "static"; }
  function barBeside() { return !barRests() && moves.getBoundingClientRect().left > innerWidth / 2; }
  function floor() { return barRests() || barBeside() ? innerHeight : innerHeight - moves.offsetHeight; }

  // How far [px] this stop goes on below what is seen. A picture beside or after a list, a check or a row need not be seen.
  function below() {
    const words = stops[at].matches(".told") && !barBeside() ? "h2, .say > *, .show > *" : "h2, .say > *";
    const bottoms = Array.from(stops[at].querySelectorAll(words), function (one) { return one.getBoundingClientRect().bottom; });
    return Math.max(...bottoms) - floor();
  }

  function label() {
    const more = below() > SEEN && !barRests();
    const end = at === stops.length - 1;
    next.textContent = more ? "More ↓" : stops[at].matches(".row") ? "Row finished" : end ? "Done" : "Next";
    next.classList.toggle("down", more);
    next.disabled = end && !more;
    back.disabled = at === 0;
  }

  function show() {
    stops.forEach(function (stop, place) { stop.classList.toggle("on", place === at); });
    part("progress").textContent = "Step " + stops[at].dataset.step + " of " + last;
    part("track").style.width = 100 * (at + 1) / stops.length + "%";
    label();
  }

  function stopAt(place) {
    at = place;
    part("moved").hidden = true;
    part("places").open = false;
    show();
    remember();
    window.scrollTo({ top: 0, behavior: "instant" });
    stops[at].querySelector("h2").focus({ preventScroll: true });
    label();
    document.dispatchEvent(new CustomEvent("stop", { detail: stops[at] }));
  }

  // The button of a bar that rests below the words goes on; keys and strokes page down first everywhere.
  function forward(tapped) {
    if (below() > SEEN && !(tapped && barRests())) {
      window.scrollBy({ top: Math.max(OVERLAP, floor() - OVERLAP), behavior: "instant" });
      label();
    } else if (at < stops.length - 1) { stopAt(at + 1); }
  }

  function backward() { if (at > 0) { stopAt(at - 1); } }

  function asked() { return stops.findIndex(function (stop) { return "#" + stop.id === location.hash; }); }
  function answering() { return !part("corrected").hidden; }

  function onKey(event) {
    const own = event.target.closest("a, button, input, select, summary");
    const space = event.key === " " && !own;
    if (answering() || event.altKey || event.ctrlKey || event.metaKey) { return; }
    if (["ArrowRight", "PageDown"].includes(event.key) || (space && !event.shiftKey) || (event.key === "Enter" && !own)) {
      event.preventDefault();
      forward(false);
    } else if (["ArrowLeft", "PageUp"].includes(event.key) || (space && event.shiftKey)) {
      event.preventDefault();
      backward();
    }
  }

  // A stroke across the page turns it, as in a book; the buttons do the same.
  let from = null;
  function onTouch(event) { from = event.touches.length === 1 ? event.touches[0] : null; }
  function onLift(event) {
    const to = event.changedTouches[0];
    if (!from || answering()) { return; }
    const across = to.clientX - from.clientX;
    const along = Math.abs(to.clientY - from.clientY);
    from = null;
    if (Math.abs(across) < 70 || along > 40) { return; }
    if (across < 0) { forward(false); } else { backward(); }
  }

  function tick(id, done) {
    ticked = ticked.filter(function (one) { return one !== id; });
    if (done) { ticked.push(id); }
    remember();
  }

  // In a row one tuck is held by a touch: where the hand was when the telephone rang.
  function holdTuck(button) {
    const row = button.closest(".turns");
    const cells = Array.from(row.querySelectorAll("button"));
    const name = function (cell) { return button.closest(".stop").id + " " + (cells.indexOf(cell) + 1); };
    cells.forEach(function (cell) {
      cell.setAttribute("aria-pressed", String(cell === button));
      if (cell !== button) { ticked = ticked.filter(function (one) { return one !== name(cell); }); }
    });
    tick(name(button), true);
  }

  function showTicks() {
    stops.forEach(function (stop) {
      stop.querySelectorAll("input").forEach(function (box) { box.checked = ticked.includes(box.id); });
      stop.querySelectorAll(".turns button").forEach(function (cell, place) {
        cell.setAttribute("aria-pressed", String(ticked.includes(stop.id + " " + (place + 1))));
      });
    });
  }

  // A stop that is there no longer: the one in its place.
  function takeUp(place) {
    const same = stops.findIndex(function (stop) { return stop.id === place.stop; });
    at = Math.min(Math.max(0, same >= 0 ? same : Number(place.number) || 0), stops.length - 1);
    ticked = Array.isArray(place.ticked) ? place.ticked : [];
    part("moved").hidden = same >= 0;
    showTicks();
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

  // The numbers that are otherwise now than those that were printed when the work was begun.
  function changedSince(before) {
    const named = function (one) { return one[0] + ": " + one[1]; };
    const after = new Map((given[""] || []).map(function (one) { return [named(one), one[2]]; }));
    const gone = before.filter(function (one) { return after.get(named(one)) !== one[2]; });
    return gone.map(function (one) { return [one[0], one[1], one[2], after.get(named(one))]; });
  }

  // What was corrected since the work was begun, told before a stitch more is sewn; nothing where no number changed.
  function corrected(place) {
    if (!place.numbers || !state.dataset.numbers || place.numbers === state.dataset.numbers) { return false; }
    const edition = given[place.numbers];
    const changes = edition ? edition[1] : changedSince(place.printed || []);
    part("began").textContent = edition
      ? "You began by a sheet with the edition mark " + edition[0] + ". Since then:"
      : "The sheet was worked again since. Compare what you have cut and marked with it before you go on.";
    part("changes").replaceChildren.apply(part("changes"), changes.map(told));
    part("corrected").hidden = false;
    part("corrected-title").focus({ preventScroll: true });
    return true;
  }

  function begin(place) {
    began = state.dataset.numbers;
    printed = given[""];
    part("corrected").hidden = true;
    moves.hidden = false;
    stopAt(place);
  }

  function letters(size) {
    root.dataset.letters = size;
    try { localStorage.setItem("letters " + site, size); } catch (refused) { /* for this visit */ }
    label();
  }

  function keptLetters() { try { return localStorage.getItem("letters " + site) || "1"; } catch (refused) { return "1"; } }

  function open() {
    const place = remembered();
    root.classList.add("one-at-a-time");
    root.dataset.letters = keptLetters();
    part("helps").hidden = false;
    if (place) { takeUp(place); }
    if (place && corrected(place)) { return; }
    if (asked() >= 0) { at = asked(); }
    moves.hidden = false;
    show();
    remember();
  }

  next.addEventListener("click", function () { forward(true); });
  back.addEventListener("click", backward);
  part("larger").addEventListener("click", function () { letters(String(1 + Number(root.dataset.letters) % 3)); });
  part("go-on").addEventListener("click", function () { begin(at); });
  part("begin-again").addEventListener("click", function () { ticked = []; showTicks(); begin(0); });
  machine.querySelectorAll(".stop input").forEach(function (box) {
    box.addEventListener("change", function () { tick(box.id, box.checked); });
  });
  machine.querySelectorAll(".turns button").forEach(function (cell) {
    cell.addEventListener("click", function () { holdTuck(cell); });
  });
  window.addEventListener("scroll", label, { passive: true });
  window.addEventListener("resize", label);
  window.addEventListener("hashchange", function () { if (asked() >= 0 && !answering()) { stopAt(asked()); } });
  document.addEventListener("toggle", label, true);
  document.addEventListener("keydown", onKey);
  machine.addEventListener("touchstart", onTouch, { passive: true });
  machine.addEventListener("touchend", onLift, { passive: true });
  document.fonts.ready.then(label);
  // A stop is shown from its top, also where the address names it.
  history.scrollRestoration = "manual";
  window.addEventListener("load", function () { window.scrollTo({ top: 0, behavior: "instant" }); });
  open();
}());
