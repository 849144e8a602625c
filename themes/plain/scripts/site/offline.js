// Keeps the sheets that were opened at the machine, and never hides a newer one while the network answers. It lies at
// the root of the site, because it can only serve what lies beside and below it. What is not kept goes through untouched.
//
// A page and all that it names are kept as one set, in a store of their own: there is never a new page with old styles,
// and where there is no room for a new set the old one stays whole. The page is put into its set last.
(function () {
  "use strict";
  const ROOM = 'name="room" content="SIGN-OF-THE-ROOM"';
  const STORE = "kept sheet " + self.registration.scope + " ";
  const FORMER = "kept at the machine " + self.registration.scope;
  const PATIENCE = 3000;
  const PARTS = ["style", "script", "image", "font"];
  const copies = new Set();

  function bare(address) { return address.split(/[?#]/)[0]; }
  function isPage(answer) { return (answer.headers.get("content-type") || "").startsWith("text/html"); }
  function numbersIn(text) { return (text.match(/ data-numbers="([^"]*)"/) || ["", ""])[1]; }

  // The text of an answer that is a whole page of this room: not a network's own page, an error, or half a page.
  async function pageText(answer) {
    if (!answer.ok || answer.redirected || !isPage(answer)) { return ""; }
    const text = await answer.text();
    return text.includes(ROOM) && text.trimEnd().endsWith("</html>") ? text : "";
  }

  function named(pattern, text, base) {
    const found = Array.from(text.matchAll(pattern), function (one) { return new URL(one[1], base).href; });
    return found.filter(function (address) { return new URL(address).origin === self.location.origin; });
  }

  async function fetched(addresses) {
    return Promise.all(addresses.map(async function (address) {
      const answer = await fetch(address, { cache: "no-cache" });
      if (!answer.ok || answer.redirected || isPage(answer)) { throw new Error(address); }
      return [address, answer];
    }));
  }

  // All that a page names, and the fonts that it has needed.
  function gathered(page, text, fonts) {
    const parts = named(/<(?:link|script|img)\s[^>]*?\b(?:href|src)="([^":#?]+\.(?:css|js|svg|webp|png))"/g, text, page);
    return fetched(Array.from(new Set([...parts, ...fonts])));
  }

  async function fontsOf(kept) {
    const parts = await kept.store.keys();
    return parts.map(function (part) { return part.url; }).filter(function (address) { return address.endsWith(".woff2"); });
  }

  async function namesOf(page) {
    return (await caches.keys()).filter(function (name) { return name.startsWith(STORE + page + " "); }).sort().reverse();
  }

  async function keptSet(page) {
    for (const name of await namesOf(page)) {
      const store = await caches.open(name);
      const answer = await store.match(page);
      if (answer) { return { store: store, answer: answer, when: name.slice((STORE + page + " ").length) }; }
    }
    return null;
  }

  async function keep(page, text, fonts) {
    if (!text) { return false; }
    const name = STORE + page + " " + new Date().toISOString();
    try {
      const parts = await gathered(page, text, fonts);
      const store = await caches.open(name);
      for (const [address, answer] of parts) { await store.put(address, answer); }
      await store.put(page, new Response(text, { headers: { "content-type": "text/html; charset=utf-8" } }));
    } catch (missingOrFull) {
      await caches.delete(name);
      return false;
    }
    for (const older of await namesOf(page)) { if (older < name) { await caches.delete(older); } }
    return true;
  }

  // The copy says of itself that it is one, and of when; its page tells whoever reads it.
  async function copy(kept, client) {
    copies.add(client);
    const text = (await kept.answer.text()).replace("<html ", '<html data-kept="' + kept.when + '" ');
    return new Response(text, { headers: { "content-type": "text/html; charset=utf-8" } });
  }

  async function tell(page, numbers) {
    for (const client of await self.clients.matchAll({ type: "window" })) {
      if (bare(client.url) === page) { client.postMessage({ newer: numbers }); }
    }
  }

  // A page that is kept: asked for anew each time; after some patience, or with no answer, the copy. What is gone is
  // gone; anything else that is no page of this room counts as no answer. What comes late is kept all the same.
  async function sheet(event) {
    const page = bare(event.request.url);
    const asking = fetch(event.request, { cache: "no-cache" });
    const kept = await keptSet(page).catch(function () { return null; });
    if (!kept) { return asking; }
    let late = false;
    const reading = asking.then(function (answer) { return pageText(answer.clone()); }).catch(function () { return ""; });
    event.waitUntil(reading.then(async function (text) {
      if (await keep(page, text, await fontsOf(kept)) && late) { await tell(page, numbersIn(text)); }
    }));
    const good = reading.then(async function (text) {
      const answer = text ? await asking : await asking.catch(function () { return null; });
      return answer && (text || answer.status === 404 || answer.status === 410) ? answer : null;
    });
    const wake = new Promise(function (resolve) { setTimeout(resolve, PATIENCE, null); });
    const first = await Promise.race([good, wake]);
    if (first) { return first; }
    late = true;
    return copy(kept, event.resultingClientId);
  }

  // What a page needs: a copy gets what was kept with it, a page from the network asks the network first.
  async function part(event) {
    const client = await self.clients.get(event.clientId);
    const kept = client && await keptSet(bare(client.url));
    const own = kept && await kept.store.match(event.request);
    if (!own) { return fetch(event.request); }
    if (copies.has(event.clientId)) { return own; }
    const asked = fetch(event.request, { cache: "no-cache" }).then(function (answer) { return answer.ok ? answer : own; });
    return asked.catch(function () { return own; });
  }

  self.addEventListener("install", function () { self.skipWaiting(); });
  self.addEventListener("activate", function (event) {
    event.waitUntil(Promise.all([caches.delete(FORMER), self.clients.claim()]));
  });
  self.addEventListener("message", function (event) {
    event.waitUntil(Promise.all((event.data.keep || []).map(async function (page) {
      const text = await fetch(page, { cache: "no-cache" }).then(pageText).catch(function () { return ""; });
      event.source.postMessage({ page: page, kept: await keep(page, text, event.data.fonts || []) || Boolean(await keptSet(page)) });
    })));
  });
  self.addEventListener("fetch", function (event) {
    const request = event.request;
    const ours = request.method === "GET" && new URL(request.url).origin === self.location.origin && !request.headers.has("range");
    if (ours && request.mode === "navigate" && !bare(request.url).endsWith(".pdf")) { event.respondWith(sheet(event)); }
    if (ours && PARTS.includes(request.destination)) { event.respondWith(part(event)); }
  });
}());
