// Answers the foot of a printed sheet, typed in: which sheet it is, and whether anything on it has changed. It reads what
// stands on this page; without it the page is read by eye.
(function () {
  "use strict";
  const form = document.getElementById("check");
  const foot = document.getElementById("foot");
  const verdict = document.getElementById("verdict");
  const projects = JSON.parse(document.getElementById("printed").textContent);
  const UNITS = { inch: ["in", "inch", "inches"], metric: ["cm", "metric", "centimetre", "centimetres", "centimeters"] };

  function plain(text) { return text.toLowerCase().normalize("NFD").replace(/[\u0300-\u036f]/g, ""); }
  function wordsOf(text) { return plain(text).split(/[^a-z0-9]+/).filter(Boolean); }

  // How many of the words typed a name holds, each from its beginning.
  function hits(name, typed) {
    const own = wordsOf(name);
    return typed.filter(function (word) { return own.some(function (one) { return one.startsWith(word); }); }).length;
  }

  function best(all, typed, named) {
    const counted = all.map(function (one) { return hits(named(one), typed); });
    const most = Math.max(0, ...counted);
    return most ? all.filter(function (one, place) { return counted[place] === most; }) : all;
  }

  function markIn(text) {
    const marks = Array.from(new Set(projects.flatMap(function (project) { return project.marks; })));
    const typed = " " + wordsOf(text).join(" ") + " ";
    const held = marks.filter(function (mark) { return typed.includes(" " + wordsOf(mark).join(" ") + " "); });
    return held.sort(function (one, other) { return other.length - one.length; })[0] || "";
  }

  // The sizes that are meant, in the units that are meant. "in" may belong to a size, such as "14 in": then it names no unit.
  function sheetsOf(project, typed) {
    const sizes = best(Object.keys(project.sizes), typed.filter(function (word) { return word !== "in" && word !== "cm"; }),
      function (size) { return project.sizes[size] + " " + size; });
    const held = sizes.length === 1 ? wordsOf(project.sizes[sizes[0]]) : [];
    const units = project.editions.filter(function (edition) {
      return (UNITS[edition] || [edition]).some(function (word) { return typed.includes(word) && !held.includes(word); });
    });
    return sizes.flatMap(function (size) {
      return (units.length ? units : project.editions).map(function (edition) { return { size: size, edition: edition }; });
    });
  }

  function named(project, sheet) { return project.title + ", " + project.sizes[sheet.size] + ", " + sheet.edition; }

  // What changed alike on several sheets stands in one table for all of them.
  function changesOf(project, mark, sheet) {
    return Array.from(document.querySelectorAll("[data-since]")).filter(function (box) {
      return box.dataset.project === project.name && box.dataset.since === mark
        && JSON.parse(box.dataset.sheets).some(function (one) { return one[0] === sheet.size && one[1] === sheet.edition; });
    });
  }

  function say(kind, words, boxes) {
    const line = document.createElement("p");
    line.textContent = words;
    verdict.dataset.is = kind;
    verdict.replaceChildren(line);
    (boxes || []).forEach(function (box) { verdict.append(box.querySelector("table").cloneNode(true)); });
  }

  function answer() {
    const text = foot.value.trim();
    const mark = markIn(text);
    const marked = wordsOf(mark);
    const typed = wordsOf(text).filter(function (word) { return !marked.includes(word); });
    const found = best(projects, typed, function (project) { return project.title + " " + project.name; });
    if (!text) { verdict.replaceChildren(); delete verdict.dataset.is; return; }
    if (!hits(found[0].title + " " + found[0].name, typed)) { say("asked", "Type the name of the project as it is printed, for example: " + projects[0].title + "."); return; }
    if (found.length > 1) { say("asked", "Which one: " + found.map(function (one) { return one.title; }).join(" or ") + "?"); return; }
    const project = found[0];
    if (!mark) { say("asked", project.title + ": now type the edition mark, for example " + project.marks[0] + "."); return; }
    if (!project.marks.includes(mark)) { say("asked", project.title + " has no edition mark " + mark + "; look at the foot again."); return; }
    if (mark === project.marks[0] && !project.draft) { say("good", project.title + ", " + mark + ": that is the newest. Your sheet is good."); return; }
    const sheets = sheetsOf(project, typed);
    const changed = sheets.filter(function (sheet) { return changesOf(project, mark, sheet).length; });
    if (!changed.length) { say("good", (sheets.length === 1 ? named(project, sheets[0]) : project.title) + ", " + mark + ": nothing on it has changed. Your sheet is good."); return; }
    if (sheets.length > 1) {
      say("asked", "Which sheet: " + sheets.map(function (sheet) { return project.sizes[sheet.size] + ", " + sheet.edition; }).join("; ") + "?");
      return;
    }
    say("changed", named(project, sheets[0]) + ", " + mark + ": it has changed.", changesOf(project, mark, sheets[0]));
  }

  if (!projects.length) { return; }
  form.hidden = false;
  form.addEventListener("submit", function (event) { event.preventDefault(); answer(); });
  foot.addEventListener("input", answer);
  answer();
}());
