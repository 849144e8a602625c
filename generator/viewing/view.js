// Reads the page again when a file of the room was saved, and tells beside it what is to be said of its project.
(function () {
  "use strict";

  function show(findings) {
    const said = findings.filter(function (finding) { return finding.level !== "note"; });
    if (!said.length) { return; }
    const aside = document.createElement("aside");
    aside.className = "told";
    aside.setAttribute("aria-label", "Findings");
    const list = aside.appendChild(document.createElement("ul"));
    said.forEach(function (finding) {
      list.appendChild(document.createElement("li")).textContent = finding.text;
    });
    document.body.appendChild(aside);
  }

  async function tell() {
    const answer = await fetch("/-/told?page=" + encodeURIComponent(location.pathname));
    if (answer.ok) { show(await answer.json()); }
  }

  const saved = new EventSource("/-/saved");
  saved.addEventListener("saved", function () { location.reload(); });
  // The command may have been ended and begun anew: then the page is read again as soon as it is there.
  let lost = false;
  saved.addEventListener("error", function () { lost = true; });
  saved.addEventListener("open", function () { if (lost) { location.reload(); } });
  tell().catch(function () { /* the page is left */ });
}());
