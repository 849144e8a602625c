// Serves what a page at the machine has kept on the device when the network does not answer. It lies at the root of
// the site, because it can only serve what lies beside and below it. What is not kept goes through untouched.
"use strict";
const STORE = "kept at the machine " + self.registration.scope;
const PATIENCE = 4000;

function fetched(request) {
  return new Promise(function (resolve, reject) {
    setTimeout(reject, PATIENCE);
    fetch(request).then(resolve, reject);
  });
}

async function answer(request) {
  const store = await caches.open(STORE);
  const kept = await store.match(request);
  if (!kept) { return fetch(request); }
  try {
    const fresh = await fetched(request);
    if (fresh.ok && !fresh.redirected) { await store.put(request, fresh.clone()); }
    return fresh;
  } catch (unreachable) {
    return kept;
  }
}

self.addEventListener("install", function () { self.skipWaiting(); });
self.addEventListener("activate", function (event) { event.waitUntil(self.clients.claim()); });
self.addEventListener("fetch", function (event) {
  if (event.request.method === "GET") { event.respondWith(answer(event.request)); }
});
