// Finds projects on the home page by kind, level and time, and anything on the site by words; leaves out classes that are over. The choice stands in the
// address, so that Back and a shared link keep it. Without this script the kinds can still be chosen.
(function () {
  "use strict";
  const part = function (id) { return document.getElementById(id); };
  const form = part("finding");
  const search = part("search");
  const asked = part("asked");
  const hits = part("hits");
  const cards = Array.from(document.querySelectorAll("#cards > li"));
  const site = new URL(".", location.href).pathname;
  const MOST_HITS = 8;
  const MOST_CLASSES = 3;
  let index = null;

  function choice() {
    return { kind: form.elements.kind.value, level: part("level").value, time: part("time").value, words: asked.value.trim() };
  }

  function fits(card, wanted) {
    return (!wanted.kind || card.dataset.kind === wanted.kind)
      && (!wanted.level || Number(card.dataset.level) <= Number(wanted.level))
      && (!wanted.time || Number(card.dataset.minutes) <= Number(wanted.time));
  }

  function sift() {
    const wanted = choice();
    cards.forEach(function (card) { card.hidden = !fits(card, wanted); });
    const shown = cards.filter(function (card) { return !card.hidden; }).length;
    const all = cards.length === 1 ? "1 project" : cards.length + " projects";
    part("found").textContent = shown === cards.length ? all : shown + " of " + all;
    // How many there are stands before all kinds already.
    part("found").classList.toggle("unseen", shown === cards.length);
  }

  function remember() {
    const chosen = Object.entries(choice()).filter(function (pair) { return pair[1]; });
    const told = new URLSearchParams(chosen).toString();
    history.replaceState(null, "", told ? "#?" + told : location.pathname);
  }

  function recall() {
    const told = new URLSearchParams(location.hash.startsWith("#?") ? location.hash.slice(2) : "");
    const kinds = Array.from(form.elements.kind, function (one) { return one.value; });
    form.elements.kind.value = kinds.includes(told.get("kind")) ? told.get("kind") : "";
    part("level").value = told.get("level") || "";
    part("time").value = told.get("time") || "";
    asked.value = told.get("words") || "";
    sift();
    seek();
  }

  function plain(text) { return text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, ""); }
  function wordsOf(text) { return " " + plain(text).split(/[^\p{L}\p{N}/]+/u).filter(Boolean).join(" "); }

  // The index comes when it is first wanted, as a script: that also works from a folder.
  function wordsOfTheRoom() {
    index = index || new Promise(function (resolve) {
      const script = document.createElement("script");
      script.src = search.dataset.index;
      script.addEventListener("load", function () {
        resolve(window.roomWords.map(function (one) {
          return { title: one[0], address: one[1], kind: one[2], named: wordsOf(one[0]), all: wordsOf([one[0], one[2], one[3]].join(" ")) };
        }));
      });
      document.head.append(script);
    });
    return index;
  }

  // Each word asked must begin a word; the more of them stand in the title, and the nearer its start, the earlier. Words that
  // stand together as they were asked come first: "17 in" is a pad of 17 in, and then one of 17 1/2 in.
  function score(entry, wanted) {
    let points = entry.kind === "Project" ? 3 : 0;
    if (wanted.length > 1 && entry.all.includes(" " + wanted.join(" "))) { points += 10; }
    for (const word of wanted) {
      if (entry.named.startsWith(" " + word)) { points += 8; }
      else if (entry.named.includes(" " + word)) { points += 5; }
      else if (entry.all.includes(" " + word)) { points += 2; }
      else { return 0; }
    }
    return points;
  }

  function line(entry) {
    const item = document.createElement("li");
    const link = document.createElement("a");
    const kind = document.createElement("span");
    link.href = entry.address;
    link.textContent = entry.title;
    kind.textContent = entry.kind;
    item.append(link, " ", kind);
    return item;
  }

  async function seek() {
    const wanted = wordsOf(asked.value).trim().split(" ").filter(Boolean);
    if (!wanted.length) { hits.hidden = true; part("hits-told").textContent = ""; part("hits-told").classList.add("unseen"); return; }
    const scored = (await wordsOfTheRoom()).map(function (entry) { return [score(entry, wanted), entry]; });
    if (wordsOf(asked.value).trim() !== wanted.join(" ")) { return; }
    const best = scored.filter(function (one) { return one[0]; }).sort(function (one, other) { return other[0] - one[0]; });
    const found = best.slice(0, MOST_HITS).map(function (one) { return one[1]; });
    hits.replaceChildren.apply(hits, found.map(line));
    hits.hidden = !found.length;
    part("hits-told").classList.toggle("unseen", found.length > 0);
    part("hits-told").textContent = found.length ? found.length + " found" : "Nothing has these words.";
  }

  // The work that was left at the machine last, on this device.
  function lastPlace() {
    try {
      const keys = Object.keys(localStorage).filter(function (key) { return key.startsWith("place " + site + " "); });
      const places = keys.map(function (key) { return JSON.parse(localStorage.getItem(key)); });
      return places.filter(function (one) { return one.number > 0 && one.page; })
        .sort(function (one, other) { return other.when.localeCompare(one.when); })[0];
    } catch (refused) { return undefined; }
  }

  function offerToGoOn() {
    const place = lastPlace();
    if (!place) { return; }
    const link = part("go-on");
    link.href = place.page;
    link.textContent = "Go on with " + place.title + ", " + place.size;
    part("go-on-where").textContent = place.edition + " edition, step " + place.step + " of " + place.of + ": " + place.heading;
    part("left").hidden = false;
  }

  // Classes whose last day is over, by the clock of this device.
  function leaveOutWhatIsOver() {
    const now = new Date();
    const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(function (one) { return String(one).padStart(2, "0"); }).join("-");
    let shown = 0;
    document.querySelectorAll("#next-classes > li").forEach(function (one) {
      one.hidden = one.dataset.day < today || shown === MOST_CLASSES;
      shown += one.hidden ? 0 : 1;
    });
  }

  leaveOutWhatIsOver();
  part("sift-more").hidden = false;
  search.hidden = false;
  form.addEventListener("change", function () { sift(); remember(); });
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  asked.addEventListener("input", function () { seek(); remember(); });
  search.addEventListener("submit", function (event) {
    event.preventDefault();
    const first = hits.querySelector("a");
    if (first && !hits.hidden) { location.href = first.href; }
  });
  window.addEventListener("hashchange", recall);
  window.addEventListener("pageshow", function (event) { if (event.persisted) { offerToGoOn(); } });
  offerToGoOn();
  recall();
}());
