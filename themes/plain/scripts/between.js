// Answers a measure that is typed with the sizes that fit: the one that has it, or the two that it lies between. Without
// this script all sizes stand on the page in order.
(function () {
  "use strict";
  const GLYPHS = { "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8" };
  const LENGTH = /^(?:(\d+(?:\.\d+)?)|(?:(\d+)[ -]+)?(\d+)\/([1-9]\d*))$/;
  // What differs by less than this is the same measure, written as a decimal.
  const NEAR = 0.006;

  // A measure as people write it: 14 1/2, 14-1/2, 14½, 14.5 or 14,5, with or without its unit.
  function read(text) {
    const plain = text.replace(/[½¼¾⅛⅜⅝⅞]/g, function (one) { return GLYPHS[one]; }).replace(",", ".")
      .replace(/\s*(in|cm|inch(es)?|")\s*$/, "").trim();
    const found = LENGTH.exec(plain);
    if (!found) { return null; }
    return found[1] ? Number(found[1]) : Number(found[2] || 0) + Number(found[3]) / Number(found[4]);
  }

  // A link with its measure as it is set on the page, and behind it what is measured.
  function copy(link) {
    const made = document.createElement("a");
    const seen = Array.from(link.childNodes).filter(function (one) { return !(one.matches && one.matches(".unseen")); });
    made.href = link.href;
    made.append(...seen.map(function (one) { return one.cloneNode(true); }), " " + link.closest("ul").dataset.after);
    return made;
  }

  function answer(wanted, links) {
    const number = function (link) { return Number(link.dataset.number); };
    const same = links.find(function (link) { return Math.abs(number(link) - wanted) < NEAR; });
    if (same) { return [same.matches(".named") ? "There is a sheet for it: " : "It is worked out: ", copy(same)]; }
    const larger = links.findIndex(function (link) { return number(link) > wanted; });
    if (larger > 0) { return ["It lies between ", copy(links[larger - 1]), " and ", copy(links[larger]), "."]; }
    return ["The sizes go from ", copy(links[0]), " to ", copy(links[links.length - 1]), ". Ask your teacher for yours."];
  }

  document.querySelectorAll(".between").forEach(function (part) {
    const links = Array.from(part.querySelectorAll(".steps-between a"));
    const field = part.querySelector("input");
    const told = part.querySelector("[role=status]");
    part.querySelector(".typed").hidden = false;
    field.addEventListener("input", function () {
      const wanted = read(field.value.trim());
      const empty = field.value.trim() === "";
      told.replaceChildren(...(empty ? [] : wanted === null ? ["Write it as 14 1/2 or 14.5."] : answer(wanted, links)));
    });
  });
}());
