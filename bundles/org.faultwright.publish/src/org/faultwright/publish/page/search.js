// Shows the procedures that hold every word typed. Letters with accents count as those without.
(function () {
  "use strict";
  var box = document.getElementById("search");
  var told = document.getElementById("found");
  var rows = Array.prototype.slice.call(document.querySelectorAll("#procedures > article"));
  function plain(words) {
    return words.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().replace(/\s+/g, " ");
  }
  // More are not laid out while somebody types: that would take a second for thousands.
  var most = 200;
  var texts = rows.map(function (row) { return plain(row.textContent); });
  function show() {
    var wanted = plain(box.value).trim().split(" ").filter(function (word) { return word !== ""; });
    var count = 0;
    for (var i = 0; i < rows.length; i++) {
      var fits = true;
      for (var w = 0; w < wanted.length && fits; w++) {
        fits = texts[i].indexOf(wanted[w]) >= 0;
      }
      count += fits ? 1 : 0;
      var shown = fits && (wanted.length === 0 || count <= most);
      if (rows[i].hidden === shown) {
        rows[i].hidden = !shown;
      }
    }
    told.textContent = wanted.length === 0 ? "" : count === 0 ? "Nothing found. Try fewer words, or part of one."
      : (count === 1 ? "1 procedure" : count + " procedures") + (count > most ? ", the first " + most + " are shown" : "");
  }
  box.addEventListener("input", show);
  box.addEventListener("keydown", function (event) {
    if (event.key === "Enter") {
      var first = document.querySelector("#procedures > article:not([hidden]) a");
      if (first) { first.click(); }
    } else if (event.key === "Escape") {
      box.value = "";
      show();
    }
  });
  document.getElementById("searching").hidden = false;
  show();
})();
