// Keeps the screen on and this page on the device, where the browser can do so. The page works without either.
(function () {
  "use strict";
  const machine = document.getElementById("machine");

  async function stayAwake() {
    if (!("wakeLock" in navigator) || document.visibilityState !== "visible") { return; }
    try {
      const lock = await navigator.wakeLock.request("screen");
      document.getElementById("awake").hidden = false;
      lock.addEventListener("release", function () { document.getElementById("awake").hidden = true; });
    } catch (refused) { /* a low battery, for example: the screen goes off as always */ }
  }

  function ownFile(address) { return new URL(address).origin === location.origin; }

  async function keep() {
    if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) { return; }
    try {
      const registration = await navigator.serviceWorker.register(machine.dataset.worker);
      await navigator.serviceWorker.ready;
      await document.fonts.ready;
      const store = await caches.open("kept at the machine " + registration.scope);
      const loaded = performance.getEntriesByType("resource").map(function (entry) { return entry.name; });
      const linked = Array.from(machine.querySelectorAll("a[data-keep]"), function (link) { return link.href; });
      const page = location.href.split("#")[0];
      const wanted = new Set([page, ...linked, ...loaded.filter(ownFile)]);
      await Promise.allSettled(Array.from(wanted, function (address) { return store.add(address); }));
      document.getElementById("kept").hidden = !(await store.match(page));
    } catch (refused) { /* no room or not allowed: the page needs the network to be opened again */ }
  }

  document.addEventListener("visibilitychange", stayAwake);
  stayAwake();
  if (document.readyState === "complete") { keep(); } else { window.addEventListener("load", keep); }
}());
