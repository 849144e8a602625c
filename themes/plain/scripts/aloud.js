// Reads a stop aloud, by a voice that lives on the device and in the language of the page: nothing is sent anywhere.
// Where there is no such voice the button stays hidden.
(function () {
  "use strict";
  const button = document.getElementById("aloud");
  const language = document.documentElement.lang.split("-")[0];
  const PARTS = { 2: "half", 4: "quarter", 8: "eighth", 16: "sixteenth", 32: "thirty-second" };
  const UNITS = { in: "inches", cm: "centimetres", mm: "millimetres" };
  const NOT_SAID = ".turns, .k, .unseen, .facts, details, figure";
  let reading = false;

  function share(top, under) {
    if (!PARTS[under]) { return top + " over " + under; }
    if (under === "2") { return "a half"; }
    return top === "1" ? "one " + PARTS[under] : top + " " + PARTS[under] + "s";
  }

  // "1 3/8 in" is said "1 and 3 eighths inches".
  function said(text) {
    const fractions = text.replace(/\s+/g, " ").replace(/(?:(\d+) )?\b(\d+)\/(\d+)/g, function (all, whole, top, under) {
      return (whole ? whole + " and " : "") + share(top, under);
    });
    return fractions.replace(/(\d|half|quarters?|eighths?|sixteenths?) (in|cm|mm)\b/g, function (all, number, unit) {
      return number + " " + UNITS[unit];
    }).replace(/×/g, "by");
  }

  function words(stop) {
    const copy = stop.cloneNode(true);
    copy.querySelectorAll(NOT_SAID).forEach(function (found) { found.remove(); });
    const told = Array.from(copy.querySelectorAll("h2, p, li, .caution"), function (found) { return found.textContent.trim(); });
    return said(told.filter(Boolean).join(". ").replace(/([.:,?!])\./g, "$1"));
  }

  function voice() {
    return speechSynthesis.getVoices().find(function (one) { return one.localService && one.lang.split(/[-_]/)[0] === language; });
  }

  function read() {
    const stop = document.querySelector(".stop.on");
    speechSynthesis.cancel();
    if (!reading || !stop || !voice()) { return; }
    const telling = new SpeechSynthesisUtterance(words(stop));
    telling.voice = voice();
    telling.lang = telling.voice.lang;
    telling.rate = 0.92;
    speechSynthesis.speak(telling);
  }

  if (!("speechSynthesis" in window)) { return; }
  const offer = function () { button.hidden = !voice(); };
  offer();
  speechSynthesis.addEventListener("voiceschanged", offer);
  button.addEventListener("click", function () {
    reading = !reading;
    button.setAttribute("aria-pressed", String(reading));
    read();
  });
  document.addEventListener("stop", read);
}());
