// Shows the procedures that hold every word typed, those that hold them best first. A word counts as a whole, at the beginning of a longer one, or with
// one or two letters slipped; what was typed beside one another and stands so too comes first. Letters with accents count as those without, and a
// code is the same with a space, with a hyphen and without.
(function () {
  "use strict";
  var box = document.getElementById("search");
  var told = document.getElementById("found");
  var list = document.getElementById("procedures");
  var rows = Array.prototype.slice.call(document.querySelectorAll("#procedures > article"));
  // More are not laid out while somebody types: that would take a second for thousands.
  var most = 200;
  // What a word is worth by where it stands: complaints and titles before equipment, codes, faults and parts.
  var weights = { Complaints: 8, Codes: 7, Faults: 4, Parts: 3 };
  // Words that anybody leaves out or puts in.
  var small = { a: true, an: true, the: true, of: true, is: true, it: true, to: true, and: true };
  function words(text) {
    var plain = text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().replace(/['\u2019]/g, "");
    return plain.split(/[^a-z0-9\u00b5-\u024f\u0370-\ufffd]+/).filter(function (word) { return word !== ""; });
  }
  function field(text, weight) {
    var all = words(text);
    var pairs = [];
    for (var i = 0; i + 1 < all.length; i++) {
      if (/[0-9]/.test(all[i] + all[i + 1]) && (all[i] + all[i + 1]).length < 12) { pairs.push(all[i] + all[i + 1]); }
    }
    return { weight: weight, words: all.concat(pairs), single: all, said: " " + all.join(" ") + " ", joined: all.join("") };
  }
  var entries = rows.map(function (row) {
    var fields = [];
    function add(selector, weight) {
      Array.prototype.forEach.call(row.querySelectorAll(selector), function (part) { fields.push(field(part.textContent, weight)); });
    }
    add("h3", 8);
    add(".equipment", 6);
    Array.prototype.forEach.call(row.querySelectorAll(".words"), function (part) {
      var kind = part.querySelector("b");
      var name = kind ? kind.textContent.replace(":", "").trim() : "";
      var weight = weights[name];
      if (weight) {
        part.textContent.slice(kind.textContent.length).split(";").forEach(function (one) { fields.push(field(one, weight)); });
      }
    });
    return fields;
  });
  // Every word that stands anywhere, once: a slip of the finger is looked for among these, and not in thousands of texts.
  var known = new Map();
  entries.forEach(function (fields) {
    fields.forEach(function (one) { one.words.forEach(function (word) { known.set(word, true); }); });
  });
  var vocabulary = Array.from(known.keys());
  // How many letters are missing, too many, wrong or turned round; more than most are not counted.
  function slips(one, other, limit) {
    if (Math.abs(one.length - other.length) > limit) { return limit + 1; }
    var before = [];
    var last = [];
    var i;
    var j;
    for (j = 0; j <= other.length; j++) { last[j] = j; }
    for (i = 1; i <= one.length; i++) {
      var now = [i];
      var least = i;
      for (j = 1; j <= other.length; j++) {
        var same = one[i - 1] === other[j - 1] ? 0 : 1;
        now[j] = Math.min(last[j] + 1, now[j - 1] + 1, last[j - 1] + same);
        if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
          now[j] = Math.min(now[j], before[j - 2] + 1);
        }
        least = Math.min(least, now[j]);
      }
      if (least > limit) { return limit + 1; }
      before = last;
      last = now;
    }
    return last[other.length];
  }
  // Words that count for one that was typed, each with what it is worth. Numbers count only as they are.
  function meant(typed) {
    var like = new Map();
    var digits = /[0-9]/.test(typed);
    vocabulary.forEach(function (word) {
      if (word === typed) {
        like.set(word, 1);
      } else if (!/^[0-9]+$/.test(typed) && typed.length > 1 && word.indexOf(typed) === 0) {
        like.set(word, 0.7);
      }
    });
    if (like.size === 0 && !digits && typed.length > 3) {
      var limit = typed.length > 7 ? 2 : 1;
      vocabulary.forEach(function (word) {
        if (word.length > 2 && !/[0-9]/.test(word)) {
          var far = slips(typed, word, limit);
          if (far <= limit) { like.set(word, 0.5 / far); }
        }
      });
    }
    return like;
  }
  function worth(fields, typed, like, said, joined) {
    var sum = 0;
    for (var w = 0; w < typed.length; w++) {
      var best = 0;
      for (var f = 0; f < fields.length; f++) {
        for (var i = 0; i < fields[f].words.length; i++) {
          var found = like[w].get(fields[f].words[i]);
          if (found !== undefined && found * fields[f].weight > best) { best = found * fields[f].weight; }
        }
      }
      if (best === 0) { sum = 0; break; }
      sum += best;
    }
    for (var k = 0; k < fields.length; k++) {
      if (said.trim().indexOf(" ") > 0 && fields[k].said.indexOf(said) >= 0) {
        sum += 10 * fields[k].weight;
      } else if (joined.length > 2 && /[0-9]/.test(joined) && together(fields[k], joined)) {
        sum += 10 * fields[k].weight;
      }
    }
    return sum;
  }
  // A code such as E 01 or S60-C, however it is spaced.
  function together(one, joined) {
    if (one.joined.indexOf(joined) < 0) { return false; }
    for (var i = 0; i < one.single.length; i++) {
      var run = "";
      for (var j = i; j < one.single.length && run.length < joined.length; j++) {
        run += one.single[j];
        if (run === joined) { return true; }
      }
    }
    return false;
  }
  var hits = rows.slice();
  function show() {
    var all = words(box.value);
    var telling = all.filter(function (word) { return !small[word]; });
    var typed = telling.length > 0 ? telling : all;
    var like = typed.map(meant);
    var said = " " + all.join(" ") + " ";
    var joined = all.join("");
    var found = [];
    for (var i = 0; i < rows.length; i++) {
      var points = typed.length === 0 ? 1 : worth(entries[i], typed, like, said, joined);
      if (points > 0) { found.push({ row: rows[i], points: points, place: i }); }
    }
    if (typed.length > 0) {
      found.sort(function (one, other) { return other.points - one.points || one.place - other.place; });
    }
    var none = typed.length === 0 && box.value.trim() !== "";
    hits = none ? [] : found.map(function (hit) { return hit.row; });
    var shown = new Set(typed.length === 0 ? hits : hits.slice(0, most));
    rows.forEach(function (row) {
      if (row.hidden === shown.has(row)) { row.hidden = !shown.has(row); }
    });
    var order = Array.from(shown);
    for (var n = 0; n < order.length; n++) {
      if (list.children[n] !== order[n]) { list.insertBefore(order[n], list.children[n]); }
    }
    var count = hits.length;
    told.textContent = box.value.trim() === "" ? "" : count === 0 ? "Nothing found. Try fewer words, or the beginning of one."
      : (count === 1 ? "1 procedure" : count + " procedures") + (count > most ? ", the first " + most + " are shown" : "");
  }
  box.addEventListener("input", show);
  box.addEventListener("keydown", function (event) {
    if (event.key === "Enter") {
      event.preventDefault();
      var link = hits.length > 0 && box.value.trim() !== "" ? hits[0].querySelector("a") : null;
      if (hits.length === 1 && link) {
        link.click();
      } else if (link) {
        link.focus();
      }
    } else if (event.key === "Escape") {
      box.value = "";
      show();
    }
  });
  document.getElementById("searching").hidden = false;
  show();
  box.focus({ preventScroll: true });
})();
