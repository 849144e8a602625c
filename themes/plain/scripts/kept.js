// Keeps the screen on and this page on the device, where the browser can do so. The page works without either.
(function () {
  "use strict";
  const machine = document.getElementById("machine");
  const page = location.href.split("#")[0];
  const note = document.getElementById("kept");

  async function stayAwake() {
    if (!("wakeLock" in navigator) || document.visibilityState !== "visible") { return; }
    try {
      const lock = await navigator.wakeLock.request("screen");
      document.getElementById("awake").hidden = false;
      lock.addEventListener("release", function () { document.getElementById("awake").hidden = true; });
    } catch (refused) { /* a low battery, for example: the screen goes off as always */ }
  }

  function hear(event) {
    if (event.data.page !== page) { return; }
    note.textContent = event.data.kept
      ? "This page is kept on this device: it opens without a network, too."
      : "This page could not be kept on this device: it needs the network to open again.";
    note.hidden = false;
  }

  async function keep() {
    if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) { return; }
    navigator.serviceWorker.addEventListener("message", hear);
    try {
      await navigator.serviceWorker.register(machine.dataset.worker, { updateViaCache: "none" });
      const ready = await navigator.serviceWorker.ready;
      await document.fonts.ready;
      const loaded = performance.getEntriesByType("resource").map(function (entry) { return entry.name; });
      const fonts = loaded.filter(function (name) { return name.endsWith(".woff2") && new URL(name).origin === location.origin; });
      const linked = Array.from(machine.querySelectorAll("a[data-keep]"), function (link) { return link.href; });
      ready.active.postMessage({ keep: [page, ...linked], fonts: fonts });
    } catch (refused) { /* not allowed: the page needs the network to be opened again */ }
  }

  document.addEventListener("visibilitychange", stayAwake);
  stayAwake();
  if (document.readyState === "complete") { keep(); } else { window.addEventListener("load", keep); }
}());
