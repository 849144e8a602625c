// Says whether the sheet on this page is the newest. It asks a list that no browser and no server keeps, so that it tells
// a correction even where an old page was kept. Without this script the page says its edition mark.
(function () {
  "use strict";
  const state = document.getElementById("state");
  const told = document.getElementById("told");
  const show = document.getElementById("show-newest");
  const kept = document.documentElement.dataset.kept;
  const PATIENCE = 8000;
  let newestAt = null;

  function day(when) { return when.toLocaleDateString("en-GB", { day: "numeric", month: "long" }); }
  function time(when) { return when.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" }); }

  function tell(kind, words) {
    if (state.dataset.is === "old" && kind === "copy") { return; }
    state.dataset.is = kind;
    told.textContent = words;
    show.hidden = kind !== "old";
  }

  function tellUnchecked(why) {
    if (newestAt) { tell("copy", "Newest at " + time(newestAt) + ", not checked since: " + why + "."); return; }
    tell("copy", (kept ? "Kept copy of " + day(new Date(kept)) + ", not checked: " : "Not checked: ") + why + ".");
  }

  function compare(newest) {
    if (!newest) { tell("old", "This sheet is no longer on the site: ask before you cut."); return; }
    if (newest[1] !== state.dataset.numbers) { tell("old", "Corrected since: this sheet has changed."); return; }
    newestAt = new Date();
    tell("newest", "Newest, checked just now.");
  }

  async function asked() {
    const patience = new AbortController();
    const waking = setTimeout(function () { patience.abort(); }, PATIENCE);
    try {
      const answer = await fetch(state.dataset.newest, { cache: "no-store", signal: patience.signal });
      if (!answer.ok) { throw new Error(String(answer.status)); }
      return await answer.json();
    } finally { clearTimeout(waking); }
  }

  async function check() {
    try { compare((await asked())[state.dataset.sheet]); }
    catch (unreachable) { tellUnchecked(navigator.onLine ? "the site does not answer" : "no network"); }
  }

  // The browser's own store may hold an old page: it is asked to fetch a new one before the page is shown again.
  function showNewest() {
    fetch(location.href.split("#")[0], { cache: "reload" }).catch(function () {}).then(function () { location.reload(); });
  }

  if (!location.protocol.startsWith("http") || !state.dataset.numbers) { return; }
  show.addEventListener("click", showNewest);
  window.addEventListener("online", check);
  document.addEventListener("visibilitychange", function () { if (document.visibilityState === "visible") { check(); } });
  if ("serviceWorker" in navigator) {
    navigator.serviceWorker.addEventListener("message", function (event) {
      const newer = event.data.newer;
      if (newer && newer !== state.dataset.numbers) { tell("old", "Corrected since: a newer sheet has just come."); }
    });
  }
  check();
}());
