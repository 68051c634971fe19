/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */

// Draws a walk, one step at a time. What is walked, and how, is the business of FaultwrightWalk.
(function () {
  "use strict";
  var walk = FaultwrightWalk;
  var tree = JSON.parse(document.getElementById("tree").textContent);
  var pictures = JSON.parse(document.getElementById("pictures").textContent);
  var app = document.getElementById("app");
  var KEY = "faultwright " + tree.id + " " + tree.digest;
  var JOB = [["serial", "Serial number"], ["board", "Board"], ["job", "Job"], ["technician", "Technician"]];
  var STORE_FAILS = "This browser keeps nothing: save the record before you close the page.";

  // ---- what is kept

  var kept = fresh();
  var states = [];
  var storing = true;
  var draft = {};
  var ticking;
  var stored = null; // what this window last saw in the store
  var back_ = undefined; // after results were taken back: { notes: due again, was: how the unit is set up, whatever the walk takes it to be }
  var drawn = -1e6;
  var elsewhere = false;

  function fresh() { return FaultwrightRecord.fresh(); }

  function now() { return Date.now(); }

  // False where another window has walked on since: what it kept is then left as it is.
  function store() {
    if (elsewhere) { return false; }
    try {
      if (storing && localStorage.getItem(KEY) !== stored) { otherWindow(); return false; }
      stored = JSON.stringify(kept);
      localStorage.setItem(KEY, stored);
    } catch (refused) {
      storing = false;
    }
    return true;
  }

  function load() {
    kept = fresh();
    states = [];
    draft = {};
    back_ = undefined;
    elsewhere = false;
    try {
      stored = localStorage.getItem(KEY);
      var found = FaultwrightRecord.resumed(tree, stored);
      if (found) { resume(found); }
    } catch (refused) {
      kept = fresh();
      states = [];
      storing = canStore();
    }
  }

  // How the unit stands, and who stands before it, nobody knows now: the notes of the step are due again.
  function resume(found) {
    kept = found;
    states = walk.replay(tree, kept.moves).states;
    var here = state();
    back_ = kept.back;
    var notes = here.step.notes || [];
    walk.callers(here).forEach(function (one) { notes = notes.concat(one.notes || []); });
    if (!walk.isEnd(here)) { states[states.length - 1] = walk.withAgain(here, notes.concat(back_ ? back_.notes : [])); }
  }

  function anew() {
    kept = fresh();
    states = [];
    draft = {};
    back_ = undefined;
    forget();
    begin();
  }

  function canStore() {
    try {
      localStorage.setItem(KEY + " try", "1");
      localStorage.removeItem(KEY + " try");
      return true;
    } catch (refused) {
      return false;
    }
  }

  function forget() {
    stored = null;
    try { localStorage.removeItem(KEY); } catch (refused) { storing = false; }
  }

  function state() { return states[states.length - 1]; }

  // ---- words and elements: an author's words become text and nothing else

  function plain(words) {
    return String(words === undefined ? "" : words).replace(/[\u0000-\u001f\u007f-\u009f\s]+/g, " ")
      .replace(/[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb]/g, "").trim();
  }

  function phrase(key) { return plain(key).replace(/([a-z])([A-Z])(?=[a-z])/g, function (all, a, b) { return a + " " + b.toLowerCase(); }); }

  // Within a sentence; "MOhm" and "HV" stay what they are.
  function small(words) { return /^[A-Z][a-z]/.test(words) ? words.charAt(0).toLowerCase() + words.substring(1) : words; }

  function capital(words) { return words.charAt(0).toUpperCase() + words.substring(1); }

  function add(into, name, style, words) {
    var element = document.createElement(name);
    if (style) { element.className = style; }
    if (words !== undefined) { element.textContent = plain(words); }
    into.appendChild(element);
    return element;
  }

  function button(into, style, words, act) {
    var element = add(into, "button", style, words);
    element.type = "button";
    element.addEventListener("click", act);
    return element;
  }

  function line(into, key, words, style) {
    if (!words) { return undefined; }
    var row = add(into, "p", "line " + (style || ""));
    if (key) {
      add(row, "b", "key", key);
      row.appendChild(document.createTextNode(" "));
    }
    add(row, "span", "", words);
    return row;
  }

  function named(list, id) {
    return (list || []).filter(function (one) { return one.id === id; })[0];
  }

  function titleOf(list, id) {
    var one = named(list, id);
    return one && one.title ? one.title : id;
  }

  function setting(one) { return titleOf(tree.conditions, one.condition) + " " + one.value; }

  // up to the next whole minute, as the card has it: the same time reads the same on both
  function minutes(seconds) {
    if (seconds < 60) { return Math.max(0, Math.ceil(seconds - 1e-6)) + " s"; }
    var whole = Math.ceil(seconds / 60 - 1e-9);
    return whole < 100 ? whole + " min" : Math.floor(whole / 60) + " h " + (whole % 60 === 0 ? "" : whole % 60 + " min");
  }

  function day(iso) {
    var at = new Date(iso);
    function two(number) { return (number < 10 ? "0" : "") + number; }
    return at.getFullYear() + "-" + two(at.getMonth() + 1) + "-" + two(at.getDate()) + " " + two(at.getHours()) + ":" + two(at.getMinutes());
  }

  function clock(seconds) {
    var whole = Math.max(0, Math.ceil(seconds));
    return Math.floor(whole / 60) + ":" + (whole % 60 < 10 ? "0" : "") + whole % 60;
  }

  function percent(share) {
    return share > 0.995 && share < 1 ? "over 99 %" : share < 0.005 ? "under 1 %" : Math.round(share * 100) + " %";
  }

  function range(band, symbol) {
    function value(end) { return walk.shown(end.value) + (symbol ? "\u00a0" + symbol : ""); }
    if (band.lower && band.upper) { return value(band.lower) + " to " + value(band.upper); }
    if (band.lower) { return (band.lower.included ? "at least " : "over ") + value(band.lower); }
    return band.upper ? (band.upper.included ? "at most " : "under ") + value(band.upper) : "any reading";
  }

  function revision() {
    return tree.revision.number === undefined ? "No revision, draft" : "Revision " + tree.revision.number + ", " + tree.revision.status;
  }

  function heading(into, words) {
    var h1 = add(into, "h1", "", words);
    h1.tabIndex = -1;
    return h1;
  }

  function say(words) { document.getElementById("told").textContent = words; }

  // ---- pages

  function page(style, fill) {
    clearInterval(ticking);
    drawn = now();
    document.body.className = "screen bench " + style;
    app.textContent = "";
    var top = add(app, "header", "top");
    add(top, "p", "procedure", tree.title || tree.id);
    add(top, "p", "revision", (tree.equipment ? tree.equipment.title + " \u00b7 " : "") + revision());
    if (tree.findings.error > 0) {
      add(top, "p", "draft", "Draft with open errors: do not work by this.");
    } else if (tree.revision.status !== "released" && style !== "step") {
      add(top, "p", "draft mild", tree.revision.status === "draft" ? "Draft: neither reviewed nor released." : "Reviewed, not released.");
    }
    var body = add(app, "div", "columns");
    fill(body);
    var foot = add(app, "footer", "foot");
    add(foot, "p", "caution", tree.caution);
    add(foot, "p", "small", "Nothing leaves this device: the page sends nothing and fetches nothing."
      + (storing ? " It keeps this walk in this browser until you begin anew." : " " + STORE_FAILS));
    add(foot, "p", "small", "Made from " + tree.id + ", " + revision() + ", SHA-256 " + tree.digest.replace("sha256:", "") + ".");
    var first = app.querySelector("h1");
    if (first && document.activeElement !== first) { first.focus({ preventScroll: true }); }
    window.scrollTo(0, 0);
  }

  function note(into, one, style) {
    var box = add(into, "section", "note " + one.word + " " + (style || ""));
    add(box, "p", "word", (one.word === "notice" ? "" : "\u26a0 ") + one.word.toUpperCase());
    var text = add(box, "div", "text");
    add(text, "p", "strong", one.hazard);
    add(text, "p", "", one.consequence);
    add(text, "p", "", one.avoid);
    return box;
  }

  // What was read before still holds: in one line, in its colour, before the hand is in.
  function brief(into, one) {
    var box = add(into, "p", "note brief " + one.word);
    add(box, "b", "word", (one.word === "notice" ? "" : "\u26a0 ") + one.word.toUpperCase());
    add(box, "span", "text", one.hazard + " " + one.avoid);
  }

  function list(into, title, items, level) {
    if (items.length === 0) { return; }
    if (title) { add(into, level || "h2", "", title); }
    var all = add(into, "ul", "plain");
    items.forEach(function (one) { add(all, "li", "", one); });
  }

  function begin() {
    page("begin", function (body) {
      var main = add(body, "main", "main");
      heading(main, tree.title || tree.id);
      if ((tree.complaints || []).length > 0) {
        add(main, "p", "", "Complaints such as " + tree.complaints.map(function (one) { return "\u201c" + plain(one) + "\u201d"; }).join(", "));
      }
      add(main, "p", "caution strong", tree.caution);
      if (walk.start(tree) === undefined) {
        add(main, "p", "", "This procedure has no step to begin at.");
        return;
      }
      if (kept.begun) { goOn(main); } else { before(main); jobFields(main); }
      if (!storing) { add(main, "p", "warn", STORE_FAILS); }
      var row = add(main, "div", "actions");
      if (!kept.begun) { button(row, "primary", "Begin", start); }
      opener(row, main);
      if (kept.begun) { before(main); }
    });
  }

  // Read before anything is begun, as on the card.
  function before(main) {
    (tree.notes || []).length > 0 && add(main, "h2", "", "Dangers on the way");
    (tree.notes || []).forEach(function (one) { note(main, one); });
    var draining = function (one) { return one.drainsBy !== undefined; };
    var part = function (one) { return (one.title || one.id) + (one.number ? ", " + one.number : ""); };
    var parts = tree.parts || [];
    if ((tree.instruments || []).length + (tree.tools || []).length + parts.length > 0) { add(main, "h2", "", "You will need"); }
    list(main, "", (tree.instruments || []).map(function (one) { return one.title || one.id; }));
    list(main, "Tools, supplies", (tree.tools || []).concat(parts.filter(draining).map(part)), "h3");
    list(main, "Parts", parts.filter(function (one) { return !draining(one); }).map(part), "h3");
    list(main, "Condition on arrival: make it so before the first step", (tree.conditions || []).filter(function (one) { return one.starts !== undefined; })
      .map(function (one) { return setting({ condition: one.id, value: one.starts }); }));
  }

  function jobFields(main) {
    var box = add(main, "details", "job");
    add(box, "summary", "", "For the record: serial number, board, job, technician");
    add(box, "p", "small", "Type only what may stand in the record. It may all stay empty.");
    JOB.forEach(function (field) {
      var label = add(box, "label", "", field[1]);
      var input = add(label, "input");
      input.type = "text";
      input.maxLength = 200;
      input.autocomplete = "off";
      input.value = kept.job[field[0]] || "";
      input.addEventListener("input", function () {
        if (input.value.trim()) { kept.job[field[0]] = input.value.trim(); } else { delete kept.job[field[0]]; }
        if (kept.begun) { store(); }
      });
    });
  }

  function goOn(main) {
    var here = state();
    var box = add(main, "section", "resume");
    add(box, "h2", "", "A walk was begun here");
    add(box, "p", "", "Begun " + day(kept.begun) + ". " + (walk.isEnd(here) ? "It came to its end: "
      : "It stands at step " + walk.numberAt(here) + ": ") + plain(here.step.title));
    var so = Object.keys(here.setUp).map(function (id) { return setting({ condition: id, value: here.setUp[id] }); });
    if (so.length > 0 && !walk.isEnd(here)) {
      line(box, "The unit should be", so.join(", "));
      add(box, "p", "strong", "Look whether it is so before you touch it.");
    }
    var row = add(box, "div", "actions");
    button(row, "primary", "Go on", draw);
    button(row, "", "Begin anew", function () {
      confirm_(box, "Forget this walk?", "Forget it and begin anew", anew);
    });
  }

  function opener(row, main) {
    var label = add(row, "label", "button file", "Open a record");
    var input = add(label, "input");
    input.type = "file";
    input.accept = ".json,application/json";
    input.id = "open";
    input.addEventListener("change", function () {
      var file = input.files[0];
      if (!file) { return; }
      var reader = new FileReader();
      reader.onload = function () { opened(main, String(reader.result)); };
      reader.onerror = function () { refuse(main, "The file cannot be read."); };
      if (file.size > 2000000) { refuse(main, "This file is too large to be a record."); } else { reader.readAsText(file); }
    });
  }

  function refuse(main, words) {
    var old = main.querySelector(".refused");
    if (old) { old.remove(); }
    var told = add(main, "p", "warn refused", words);
    told.setAttribute("role", "alert");
  }

  function opened(main, text) {
    var found = FaultwrightRecord.read(tree, text);
    if (found.refused) { refuse(main, found.refused); return; }
    function take() {
      draft = {};
      resume(found.kept);
      if (store()) { draw(); }
    }
    if (kept.begun && kept.moves.length > 0) {
      confirm_(main, "The walk begun here is replaced by the record.", "Replace it", take);
    } else {
      take();
    }
  }

  function confirm_(into, question, yes, act) {
    var old = into.querySelector(".confirm");
    if (old) { old.remove(); }
    var box = add(into, "div", "confirm");
    box.setAttribute("role", "alertdialog");
    box.setAttribute("aria-label", question);
    add(box, "p", "strong", question);
    var row = add(box, "div", "actions");
    button(row, "danger-button", yes, act).focus();
    button(row, "", "Leave it", function () { box.remove(); });
    box.scrollIntoView({ block: "nearest" });
  }

  function start() {
    kept.begun = new Date(now()).toISOString();
    states = [walk.start(tree)];
    arrived();
    if (store()) { draw(); }
  }

  // Two windows that walk one procedure would each lose what the other did: one of them rests.
  function otherWindow() {
    elsewhere = true;
    page("begin", function (body) {
      var main = add(body, "main", "main");
      heading(main, "This procedure was taken up in another window");
      add(main, "p", "caution strong", tree.caution);
      add(main, "p", "", "This window shows the walk no longer; what was done or begun anew there holds. Go on in one window alone.");
      button(add(main, "div", "actions"), "primary", "Take it up here", function () { load(); begin(); });
    });
    say("This procedure was taken up in another window.");
  }

  // ---- moves

  function arrived() { draft = { at: now(), read: [] }; }

  // Of what the unit is otherwise than the walk takes it to be, what must be seen to here: what the step needs, and what is live or
  // charged though the walk takes it not to be. Nobody is told to make live what the step does not need so, nor to charge anything.
  function amiss(here) {
    if (draft.seenTo) { return []; }
    return otherwise(here).filter(function (id) {
      var wanted = here.setUp[id], needed = (here.step.needs || []).some(function (one) { return one.condition === id; });
      return walk.isDangerous(here, id, wanted) ? needed && !isCharged(id, wanted) : needed || walk.isDangerous(here, id, back_.was[id]);
    });
  }

  function otherwise(here) {
    if (!back_ || !back_.was) { return []; }
    return Object.keys(here.setUp).filter(function (id) { return back_.was[id] !== undefined && back_.was[id] !== here.setUp[id]; });
  }

  function isCharged(id, value) { return ((named(tree.conditions, id) || {}).chargedWhen || []).indexOf(value) >= 0; }

  function makesLive(here) { return amiss(here).some(function (id) { return walk.isDangerous(here, id, here.setUp[id]); }); }

  // How the unit is set up by now.
  function real(here) {
    var was = Object.assign({}, back_.was);
    if (draft.seenTo) { draft.seenTo.forEach(function (id) { was[id] = here.setUp[id]; }); }
    return was;
  }

  // What is not seen to yet goes along until a step sets it, needs it or makes it dangerous.
  function goesAlong(here) {
    if (!back_ || !back_.was) { delete kept.back; back_ = undefined; return; }
    var was = real(here), next = state();
    Object.keys(next.setUp).forEach(function (id) { if (next.setUp[id] !== here.setUp[id]) { was[id] = next.setUp[id]; } });
    back_ = { was: was, notes: [] };
    draft = {};
    if (otherwise(next).length === 0) { delete kept.back; back_ = undefined; return; }
    kept.back = back_;
    remind();
  }

  // Before somebody makes the unit live by hand every note that tells of it is read again.
  function remind() {
    var here = state();
    if (!back_ || walk.isEnd(here) || !makesLive(here)) { return; }
    back_.notes = back_.notes.concat(walk.dueWhenLive(here));
    states[states.length - 1] = walk.withAgain(here, (here.again || []).concat(back_.notes));
  }

  function move(one) {
    var here = state();
    one.at = new Date(now()).toISOString();
    one.seconds = Math.max(0, Math.round((now() - (draft.at || now())) / 1000));
    var due = walk.due(here);
    if (due.length > 0) { one.notes = due; }
    if (draft.waitCut) { one.waitCut = true; }
    states.push(one.enter ? walk.enter(here) : walk.take(here, one.outcome, one.value));
    kept.moves.push(one);
    if (walk.isEnd(state()) && !kept.ended) { kept.ended = one.at; }
    delete kept.waiting;
    goesAlong(here);
    arrived();
    if (store()) { draw(); }
  }

  // What a routine's own step has to say; where it says nothing the routine is entered at once.
  function isSilent(here) {
    var step = here.step;
    return walk.canEnter(here) && walk.due(here).length === 0 && here.unmet.length === 0 && !step.hint && !step.tools && !step.handles
      && !step.liveBecause && !step.waits && picturesOf(step).length === 0;
  }

  function placeOf(one) { return one.path.concat([one.step.id]).join("/"); }

  function takeBack(index) {
    var back = [];
    for (var i = index; i < kept.moves.length; i++) {
      if (!kept.moves[i].enter) { back.push({ step: placeOf(states[i]), outcome: kept.moves[i].outcome, at: kept.moves[i].at }); }
    }
    kept.takenBack = kept.takenBack.concat(back);
    var to = states[index], later = states.slice(index + 1), last = later[later.length - 1];
    var was = back_ && back_.was ? real(state()) : last.setUp;
    var unread = walk.due(state()).filter(function (id) { return draft.read.indexOf(id) < 0 && to.read.indexOf(id) >= 0; });
    back_ = kept.back = { was: was, notes: walk.lapsed(to, later).concat(unread) };
    kept.moves = kept.moves.slice(0, index);
    states = states.slice(0, index).concat([walk.withAgain(to, back_.notes)]);
    delete kept.ended;
    delete kept.waiting;
    arrived();
    remind();
    if (store()) { draw(); }
  }

  // The results of what is entered at once are not taken back alone.
  function back() {
    var index = kept.moves.length - 1;
    while (index >= 0 && kept.moves[index].enter && isSilent(states[index])) { index--; }
    if (index >= 0) { takeBack(index); } else { begin(); }
  }

  // ---- a step

  function draw() {
    if (!draft.at) { arrived(); }
    if (walk.isEnd(state())) { ending(); return; }
    if (isSilent(state()) && amiss(state()).length === 0) { move({ enter: true }); return; }
    var here = state(), step = here.step;
    page("step", function (body) {
      var main = add(body, "main", "main");
      bar(main, here);
      routine(main, here);
      var h1 = heading(main, "");
      add(h1, "span", "number", walk.numberAt(here));
      h1.appendChild(document.createTextNode(" "));
      add(h1, "span", "", step.title || step.id);
      facts(main, step);
      var due = walk.due(here), live = makesLive(here);
      if (!live) { seeTo(main, here); }
      due.forEach(function (id) { dueNote(main, id); });
      (step.notes || []).filter(function (id) { return due.indexOf(id) < 0 && named(tree.notes, id); })
        .forEach(function (id) { brief(main, named(tree.notes, id)); });
      if (live) { seeTo(main, here); }
      detail(main, here, step);
      var work = add(main, "div", "work");
      work.id = "work";
      results(work, here, step);
      after(main, step);
      var row = add(main, "div", "actions last");
      button(row, "", "\u2190 Back", back).id = "back";
      button(row, "", "Stop here", begin);
      aside(body, here);
      gate();
    });
    say("Step " + walk.numberAt(here) + ": " + plain(step.title));
  }

  function bar(main, here) {
    var row = add(main, "p", "times");
    var spent = kept.moves.reduce(function (sum, one) { return sum + (one.seconds || 0); }, 0);
    var go = walk.toGo(here);
    add(row, "span", "", "So far " + minutes(spent) + (here.seconds > 0 ? " (by the plan " + minutes(here.seconds) + ")" : ""));
    row.appendChild(document.createTextNode(" "));
    add(row, "span", "", "To go " + (go.most === undefined ? minutes(go.least) + " or more"
      : go.most - go.least < 30 ? minutes(go.most) : minutes(go.least) + " to " + minutes(go.most)));
  }

  function routine(main, here) {
    var outer = walk.callers(here);
    if (outer.length === 0) { return; }
    var row = add(main, "nav", "routine");
    row.setAttribute("aria-label", "Routines entered");
    outer.forEach(function (one, i) {
      add(row, "span", "", walk.numberAt({ known: here.known, path: here.path.slice(0, i), step: one }) + " " + plain(one.title || one.id));
    });
  }

  function facts(main, step) {
    add(main, "p", "facts", [capital(step.kind), step.confirmsComplaint ? "confirms the complaint" : "", step.verifiesRepair ? "proves the repair" : "",
      step.repairs ? "repair" : "", step.takes ? "about " + step.takes.text : ""].filter(Boolean).join(" \u00b7 "));
  }

  function seeTo(main, here) {
    var wanted = amiss(here);
    var others = otherwise(here).filter(function (id) { return wanted.indexOf(id) < 0 && !isCharged(id, here.setUp[id]); });
    if (others.length > 0 && !draft.seenTo) {
      line(main, "You went back. The unit was last", others.map(function (id) { return setting({ condition: id, value: back_.was[id] }); }).join(", "));
    }
    if (wanted.length === 0) { return; }
    var box = add(main, "section", "seeto due");
    add(box, "h2", "", "You went back: see to the unit first");
    line(box, "It was last", wanted.map(function (id) { return setting({ condition: id, value: back_.was[id] }); }).join(", "), "strong");
    line(box, "Here it must be", wanted.map(function (id) { return setting({ condition: id, value: here.setUp[id] }); }).join(", "), "strong");
    var press = button(add(box, "div", "actions"), "primary", "I have made it so", function () {
      draft.seenTo = wanted;
      press.textContent = "\u2713 Made so";
      press.className = "read";
      press.disabled = true;
      gate();
      onward();
    });
    press.id = "made";
  }

  function onward() {
    var next = app.querySelector(".due button:not(:disabled)") || app.querySelector("#work input:not(:disabled), #work button:not(:disabled)");
    if (next) { next.focus(); }
  }

  function dueNote(main, id) {
    var box = note(main, named(tree.notes, id), "due");
    var read = draft.read.indexOf(id) >= 0;
    var press = button(add(box, "div", "actions"), read ? "read" : "primary", read ? "\u2713 Read" : "I have read this", function () {
      draft.read.push(id);
      press.textContent = "\u2713 Read";
      press.className = "read";
      press.disabled = true;
      gate();
      onward();
    });
    press.disabled = read;
  }

  // Results wait for notes that are due and for a wait that has not run out.
  function gate() {
    var here = state();
    var unread = walk.due(here).filter(function (id) { return draft.read.indexOf(id) < 0; }).length;
    var work = document.getElementById("work");
    var waits = isWaiting(here.step), unset = amiss(here).length > 0;
    var made = document.getElementById("made");
    if (made && unset) { made.disabled = unread > 0 && makesLive(here); }
    if (!work) { return; }
    work.querySelectorAll("button.result, button.primary, input.reading, button.aid").forEach(function (one) {
      one.disabled = unset || unread > 0 || waits || one.dataset.idle === "yes";
    });
    var why = document.getElementById("why");
    if (why) {
      why.textContent = unset && !(unread > 0 && makesLive(here)) ? "See to the unit first." : unread > 0 ? (unread === 1 ? "Read the note first." : "Read the " + unread + " notes first.") : waits ? "Wait first." : "";
    }
  }

  function isWaiting(step) { return step.waits !== undefined && walk.secondsOf({ waits: step.waits }) > 0 && !draft.waited; }

  function timer(work, step) {
    var wait = walk.secondsOf({ waits: step.waits });
    var box = add(work, "section", "timer");
    add(box, "h2", "", "Wait " + plain(step.waits.text));
    var face = add(box, "p", "face", clock(wait));
    face.setAttribute("role", "timer");
    var row = add(box, "div", "actions");
    var go = button(row, "primary-wait", "Start the timer", function () {
      kept.waiting = { until: now() + wait * 1000, place: placeOf(state()) };
      beep(0);
      if (store()) { run(); }
    });
    var cut = button(row, "", "I have waited long enough", function () { draft.waitCut = !draft.over; over(); });
    function over() {
      clearInterval(ticking);
      draft.waited = true;
      box.classList.add("over");
      face.textContent = draft.waitCut ? "Cut short" : "Over";
      go.remove();
      cut.remove();
      gate();
    }
    function tick() {
      var left = (kept.waiting.until - now()) / 1000;
      face.textContent = clock(left);
      if (left <= 0) {
        draft.over = true;
        over();
        say("The wait is over.");
        beep(880);
      }
    }
    function run() {
      go.disabled = true;
      go.textContent = "Running";
      clearInterval(ticking);
      ticking = setInterval(tick, 250);
      tick();
    }
    if (draft.waited) { over(); } else if (kept.waiting && kept.waiting.place === placeOf(state())) { run(); }
  }

  var sound;
  function beep(pitch) {
    try {
      sound = sound || new (window.AudioContext || window.webkitAudioContext)();
      if (pitch > 0) {
        var tone = sound.createOscillator();
        tone.frequency.value = pitch;
        tone.connect(sound.destination);
        tone.start();
        tone.stop(sound.currentTime + 0.4);
      }
      if (pitch > 0 && navigator.vibrate) { navigator.vibrate(400); }
    } catch (mute) {
      sound = undefined;
    }
  }

  function point(id) {
    var one = named(tree.points, id);
    return (one && one.title || id) + (one && one.carries ? " (up to " + one.carries.upTo.text + " " + one.carries.quantity.replace(" voltage", "") + ")" : "");
  }

  function detail(main, here, step) {
    var box = add(main, "section", "detail");
    if ((step.needs || []).length > 0) {
      var row = add(box, "p", "line");
      add(row, "b", "key", "With");
      step.needs.forEach(function (one) {
        var first = here.unmet.indexOf(one) >= 0;
        row.appendChild(document.createTextNode(" "));
        add(row, "span", first ? "chip first" : "chip", setting(one) + (first ? ", to be set first" : ""));
      });
    }
    line(box, "Live work", step.liveBecause, "strong");
    if (step.indicator) { line(box, "At", titleOf(tree.indicators, step.indicator)); }
    if (step.point || step.through) {
      line(box, step.through ? "Through" : "At", point(step.point || step.through) + (step.against ? ", against " + point(step.against) : ""));
    } else if (step.against) {
      line(box, "Against", point(step.against));
    }
    var store_ = (named(tree.points, step.point || step.through) || {}).storedEnergy;
    line(box, "Stores", store_ && store_.words, "strong");
    if (step.kind === "measure") {
      line(box, "Measure", [step.instrument ? titleOf(tree.instruments, step.instrument) : "", step.quantity || "", step.sensor ? "type " + step.sensor : "",
        step.range ? "range " + step.range.text : ""].filter(Boolean).join(", "));
    }
    if (step.expects) { line(box, "Limit", step.expects.limit.text, "strong"); }
    (step.adjusts || []).forEach(function (one) {
      line(box, "Set", (one.to ? one.to.text : "") + (one.quantity ? ", " + one.quantity : "") + (one.of ? " of " + one.of : ""), "strong");
    });
    line(box, "Erases", step.erases, "strong");
    line(box, "In hand", (step.handles || []).map(function (id) {
      var part = named(tree.parts, id);
      return titleOf(tree.parts, id) + (part && part.number ? ", " + part.number : "");
    }).join("; "));
    line(box, "Tools", (step.tools || []).map(function (tool) {
      var rated = (step.ratedTools || []).filter(function (one) { return one.tool === tool; })[0];
      return tool + (rated ? " (rated " + rated.upTo.text + ")" : "");
    }).join(", "));
    line(box, "Mind", hazards(step));
    line(box, "", step.hint);
    picturesOf(step).forEach(function (one) {
      var figure = add(box, "figure");
      if (Object.prototype.hasOwnProperty.call(pictures, one.file)) {
        var image = add(figure, "img");
        image.src = pictures[one.file];
        image.alt = plain(one.shows || one.file);
      }
      add(figure, "figcaption", "", one.shows || one.file);
    });
    if (step.source) { line(box, "Source", step.source.document + (step.source.dated ? ", dated " + step.source.dated : ""), "small"); }
  }

  var HAZARDS = { shock: "electric shock", charge: "stored charge", heat: "hot parts", battery: "battery", motion: "moving parts", light: "strong light",
    chemical: "chemicals", weight: "heavy load", pressure: "pressure", "static": "static charge damages parts", data: "loss of data" };

  function hazards(step) {
    var all = (step.hazards || []).slice();
    (step.handles || []).forEach(function (id) { all = all.concat((named(tree.parts, id) || {}).hazards || []); });
    return all.filter(function (one, i) { return all.indexOf(one) === i; }).map(function (one) { return HAZARDS[one] || one; }).join(", ");
  }

  function picturesOf(step) {
    var all = (step.pictures || []).slice();
    [[tree.points, [step.point, step.through, step.against].concat((step.readings || []).map(function (row) { return row.point; }))],
      [tree.indicators, [step.indicator]], [tree.parts, step.handles || []]].forEach(function (pair) {
      pair[1].forEach(function (id) { all = all.concat((named(pair[0], id) || {}).pictures || []); });
    });
    return all.filter(function (one, i) { return all.findIndex(function (other) { return other.file === one.file; }) === i; });
  }

  function after(main, step) {
    line(main, "Then", (step.sets || []).map(setting).join(", "));
  }

  // ---- results

  function results(work, here, step) {
    if (isWaiting(step) || draft.waited) { timer(work, step); }
    var why = add(work, "p", "why");
    why.id = "why";
    why.setAttribute("role", "status");
    if (walk.canEnter(here)) {
      go(work, "Begin the routine", function () { move({ enter: true }); });
      return;
    }
    if (step.kind === "calculate" && walk.calculated(here) !== undefined) {
      computed(work, here, step);
    } else if (step.kind === "measure" && step.readings) {
      table(work, step);
    } else if ((step.kind === "measure" || step.kind === "calculate") && step.entry) {
      single(work, step);
    } else {
      choices(work, step);
    }
  }

  function go(work, words, act) {
    var press = button(work, "primary", words, act);
    return press;
  }

  function label(step, outcome) {
    if (outcome.kind === "band") { return outcome.label ? capital(phrase(outcome.label)) : outcome.limit.text; }
    var row = /^at (.*) outside$/.exec(outcome.key);
    if (row && step.readings) { return "Outside: " + titleOf(tree.points, row[1]); }
    return outcome.key === "done" ? (step.kind === "measure" ? "Written down" : "Done") : capital(phrase(outcome.key));
  }

  function explained(step, outcome) {
    var bands = (step.entry && step.entry.bands || []).filter(function (one) { return one.outcome === outcome.key; });
    var told = outcome.meaning || bands.filter(function (one) { return one.lower || one.upper; })
      .map(function (one) { return range(one, step.entry.symbol); }).join(" or ");
    var proves = (outcome.proves || []).map(setting).join(", ");
    var counted = "";
    if (outcome.repeat) {
      var taken = state().counts[placeOf(state()) + "\n" + outcome.key] || 0;
      counted = taken >= outcome.repeat.atMost ? "taken as often as it may be" : "at most " + outcome.repeat.atMost
        + (outcome.repeat.atMost === 1 ? " time" : " times") + (taken > 0 ? ", " + taken + " so far" : "");
    }
    return [told, proves ? "proves: " + proves : "", counted].filter(Boolean).join("; ");
  }

  function choices(work, step) {
    var box = add(work, "div", "results");
    (step.outcomes || []).forEach(function (outcome, i) {
      var press = button(box, step.outcomes.length === 1 ? "result primary" : "result", undefined, function () { move({ outcome: outcome.key }); });
      if (kept.keys && step.outcomes.length > 1 && i < 9) {
        add(press, "span", "digit", String(i + 1)).setAttribute("aria-hidden", "true");
        press.appendChild(document.createTextNode(" "));
      }
      var words = add(press, "span", "words");
      add(words, "span", "outcome", label(step, outcome));
      var more = explained(step, outcome);
      if (more) { add(words, "span", "more", more); }
    });
    if ((step.outcomes || []).length === 0) { add(box, "p", "warn", "This step leads nowhere: the text has an error here."); }
  }

  function bands(work, step, lit) {
    var box = add(work, "ul", "bands");
    (step.outcomes || []).forEach(function (outcome) {
      var item = add(box, "li", lit === outcome.key ? "band lit" : "band");
      add(item, "b", "", (lit === outcome.key ? "\u25b6 " : "") + label(step, outcome));
      var more = explained(step, outcome);
      if (more) {
        item.appendChild(document.createTextNode(" "));
        add(item, "span", "", more);
      }
    });
    return box;
  }

  function field(into, words, symbol, value, changed, overload) {
    var wrap = add(into, "label", "entry");
    add(wrap, "span", "asked", words);
    var row = add(wrap, "span", "typed");
    var input = add(row, "input", "reading");
    input.type = "text";
    input.inputMode = "decimal";
    input.autocomplete = "off";
    input.spellcheck = false;
    input.maxLength = 30;
    input.value = value || "";
    add(row, "span", "unit", symbol || "");
    var aids = add(into, "div", "aids");
    button(aids, "aid", "\u00b1", function () {
      input.value = /^[-\u2212]/.test(input.value) ? input.value.substring(1) : "-" + input.value;
      changed(input.value);
    }).setAttribute("aria-label", "Change the sign");
    if (overload) {
      button(aids, "aid", "OL", function () { input.value = "OL"; changed("OL"); }).setAttribute("aria-label", "OL: above the range");
    }
    input.addEventListener("input", function () { changed(input.value); });
    return input;
  }

  // What a typed reading means: { value } as plain text, or { wrong } with what to do.
  function understood(text) {
    if (/^\s*ol\s*$/i.test(text)) { return { value: "OL" }; }
    if (text.trim() === "") { return {}; }
    var value = walk.typed(text);
    return value === undefined ? { wrong: "\u201c" + plain(text) + "\u201d is no number: type digits with a comma or a point." } : { value: value };
  }

  function verdict(into, step, value, symbol, judged) {
    var words = value === "OL" ? "OL" : value.indexOf("/") > 0 ? walk.shown(value) : value;
    var outcome = (step.outcomes || []).filter(function (one) { return one.key === judged.outcome; })[0];
    into.className = "verdict" + (judged.doubtful ? " near" : "");
    into.textContent = words + (value !== "OL" && symbol ? "\u00a0" + plain(symbol) : "") + ": " + (outcome ? small(label(step, outcome)) : "no result takes this in")
      + (judged.doubtful && judged.outcome !== "doubtful" ? ". Doubtful: too near the limit for this instrument to decide." : judged.doubtful
        ? ": too near the limit for this instrument to decide." : ".");
    return outcome;
  }

  function single(work, step) {
    var told, press, shown, current;
    function changed(text) {
      draft.text = text;
      var seen = understood(text);
      current = undefined;
      var judged = {};
      told.className = "verdict";
      told.textContent = seen.wrong || "";
      if (seen.value !== undefined) {
        judged = walk.judge(step, seen.value);
        if (verdict(told, step, seen.value, step.entry.symbol, judged)) { current = { outcome: judged.outcome, value: seen.value, doubtful: judged.doubtful }; }
      }
      var old = shown;
      shown = bands(work, step, judged.outcome);
      work.replaceChild(shown, old);
      ready(press, current && step, current && current.outcome);
      gate();
    }
    var input = field(work, "Reading", step.entry.symbol, draft.text, changed, step.entry.overload);
    told = add(work, "p", "verdict");
    told.setAttribute("role", "status");
    shown = bands(work, step);
    press = go(work, "Type the reading", function () { if (current) { move(withDoubt({ outcome: current.outcome, value: current.value }, current.doubtful)); } });
    input.addEventListener("keydown", function (event) { if (event.key === "Enter" && !event.repeat && current && !press.disabled) { event.preventDefault(); press.click(); } });
    without(work, step);
    changed(draft.text || "");
  }

  function withDoubt(one, doubtful) {
    if (doubtful) { one.doubtful = true; }
    return one;
  }

  function ready(press, step, key) {
    var outcome = step && step.outcomes.filter(function (one) { return one.key === key; })[0];
    press.dataset.idle = outcome ? "no" : "yes";
    press.textContent = outcome ? label(step, outcome) + ": go on" : "Type the reading";
  }

  // An instrument may tell the result without a number.
  function without(work, step) {
    var more = add(work, "details", "without");
    add(more, "summary", "", "Without a number");
    choices(more, step);
  }

  function table(work, step) {
    var texts = draft.rows = draft.rows || step.readings.map(function () { return ""; });
    var told = [], press, sum;
    function changed() {
      var seen = texts.map(understood);
      seen.forEach(function (one, i) {
        var row = step.readings[i];
        var near = one.value !== undefined && walk.isDoubtful(row, one.value);
        told[i].textContent = one.wrong || (one.value === undefined ? "" : isWithin(step, row, one.value) ? "\u2713 within" : "\u2717 outside")
          + (near ? ". Doubtful: too near the limit for this instrument to decide." : "");
        told[i].className = "verdict" + (near ? " near" : one.value !== undefined && !isWithin(step, row, one.value) ? " out" : "");
      });
      var all = seen.every(function (one) { return one.value !== undefined; });
      var doubtful = all && seen.some(function (one, i) { return walk.isDoubtful(step.readings[i], one.value); });
      var key = all ? walk.judgeTable(step, seen.map(function (one) { return one.value; })) : undefined;
      var outcome = step.outcomes.filter(function (one) { return one.key === key; })[0];
      sum.textContent = outcome ? label(step, outcome) + (doubtful ? ", doubtful." : ".") : all ? "No result takes these in." : "";
      press.dataset.idle = outcome ? "no" : "yes";
      press.textContent = outcome ? label(step, outcome) + ": go on" : "Type all readings";
      press.onclick = function () { if (outcome) { move(withDoubt({ outcome: key, value: seen.map(function (one) { return one.value; }) }, doubtful)); } };
      gate();
    }
    step.readings.forEach(function (row, i) {
      var box = add(work, "div", "row");
      field(box, titleOf(tree.points, row.point) + ", limit " + row.limit.text, row.entry && row.entry.symbol, texts[i], function (text) { texts[i] = text; changed(); }, true);
      told[i] = add(box, "p", "verdict");
      told[i].setAttribute("role", "status");
    });
    sum = add(work, "p", "verdict");
    sum.setAttribute("role", "status");
    press = go(work, "Type all readings", function () {});
    without(work, step);
    changed();
  }

  function isWithin(step, row, value) {
    return walk.judgeTable({ readings: [row], outcomes: [{ key: "all within" }] }, [value]) === "all within";
  }

  function computed(work, here, step) {
    var value = walk.calculated(here);
    var judged = walk.judge(step, value);
    add(work, "p", "formula", capital(formula(step.value, here)));
    var told = add(work, "p", "verdict");
    var outcome = verdict(told, step, value, step.entry.symbol, judged);
    bands(work, step, judged.outcome);
    if (outcome) { go(work, label(step, outcome) + ": go on", function () { move(withDoubt({ outcome: judged.outcome, value: value }, judged.doubtful)); }); }
    without(work, step);
  }

  function formula(one, here, inner) {
    if (one.reading !== undefined) {
      var place = here.path.concat([one.reading]).join("/");
      var i = kept.moves.length - 1;
      while (i >= 0 && placeOf(states[i]) !== place) { i--; }
      var step = i < 0 ? undefined : states[i].step;
      return step && typeof kept.moves[i].value === "string" ? "reading of step " + walk.numberAt(states[i]) + " (" + walk.shown(kept.moves[i].value) + (step.entry && step.entry.symbol ? "\u00a0" + step.entry.symbol : "") + ")" : one.reading;
    }
    if (one.constant) { return one.constant.text; }
    var parts = one.arguments.map(function (part) { return formula(part, here, true); });
    var signs = { add: " + ", subtract: " \u2212 ", multiply: " \u00d7 ", divide: " \u00f7 " };
    var text = signs[one.operation] ? parts.join(signs[one.operation]) : one.operation === "negate" ? "\u2212" + parts[0] : one.operation + "(" + parts.join(", ") + ")";
    return inner && signs[one.operation] ? "(" + text + ")" : text;
  }

  // ---- beside the step: what it still can be, and what was done

  function aside(body, here) {
    var side = add(body, "aside", "side");
    side.setAttribute("aria-label", "What it can be, and what was done");
    suspects(side, here);
    history(side);
    var row = add(side, "label", "keys");
    var box = add(row, "input");
    box.type = "checkbox";
    box.checked = kept.keys;
    box.addEventListener("change", function () { kept.keys = box.checked; if (store()) { draw(); } });
    add(row, "span", "", "Keys 1 to 9 choose a result, arrow keys go from one to the next");
  }

  function suspects(side, here) {
    if ((tree.faults || []).length === 0) { return; }
    var all = walk.suspects(here);
    var box = add(side, "details", "suspects");
    box.open = wide();
    add(box, "summary", "", "What it still can be" + (all.length > 0 ? ": " + all.length + " of " + tree.faults.length : ""));
    if (all.length === 0) {
      add(box, "p", "warn", "No fault of the table explains these results. Look for a slip in what was read, or for something new.");
      return;
    }
    var rows = add(box, "ol", "likely");
    all.forEach(function (one) {
      var item = add(rows, "li");
      add(item, "span", "fault", one.title);
      item.appendChild(document.createTextNode(" "));
      add(item, "span", "share", percent(one.share));
      var gauge = add(item, "span", "gauge");
      gauge.setAttribute("aria-hidden", "true");
      add(gauge, "span").style.width = Math.max(1, one.share * 100) + "%";
    });
    add(box, "p", "small", "From the cases in the fault table and the results so far. It may also be something that the table does not know.");
  }

  function wide() { return window.matchMedia("(min-width: 1000px)").matches; }

  function valueText(step, one) {
    if (one.value === undefined) { return ""; }
    return [].concat(one.value).map(function (value, i) {
      var symbol = step.entry ? step.entry.symbol : step.readings && step.readings[i].entry ? step.readings[i].entry.symbol : "";
      return value === "OL" ? "OL" : (value.indexOf("/") > 0 ? walk.shown(value) : value) + (symbol ? "\u00a0" + symbol : "");
    }).join(", ");
  }

  function outcomeWords(step, key) {
    var outcome = (step.outcomes || []).filter(function (one) { return one.key === key; })[0];
    return outcome ? label(step, outcome) : key;
  }

  function history(side) {
    var done = kept.moves.filter(function (one) { return !one.enter; }).length;
    var box = add(side, "details", "history");
    box.open = wide() || walk.isEnd(state());
    add(box, "summary", "", done === 0 ? "Nothing done yet" : done === 1 ? "Done so far: 1 step" : "Done so far: " + done + " steps");
    var rows = add(box, "ol", "done");
    kept.moves.forEach(function (one, i) {
      if (one.enter) { return; }
      var step = states[i].step;
      var item = add(rows, "li");
      var words = add(item, "div", "what");
      add(words, "b", "", walk.numberAt(states[i]));
      words.appendChild(document.createTextNode(" " + plain(step.title || step.id) + " "));
      add(words, "span", "result-told", "\u2192 " + outcomeWords(step, one.outcome) + (one.value === undefined ? "" : " (" + valueText(step, one) + ")")
        + (one.doubtful ? ", doubtful" : ""));
      var press = button(item, "correct", "Correct", function () {
        var later = kept.moves.slice(i).filter(function (other) { return !other.enter; }).length - 1;
        confirm_(item, later === 0 ? "Take this result back?" : "Take this result back, and the " + (later === 1 ? "one" : later) + " after it?", "Take back", function () { takeBack(i); });
      });
      press.setAttribute("aria-label", "Correct step " + walk.numberAt(states[i]) + ", " + plain(step.title || step.id));
    });
  }

  // ---- the end

  function ending() {
    var here = state(), step = here.step;
    page("ending", function (body) {
      var main = add(body, "main", "main");
      if (here.lost) {
        heading(main, "The way leads nowhere here");
        add(main, "p", "", "The text does not say what follows " + walk.numberAt(here) + " " + plain(step.title) + ". Go back, or hand the unit on.");
      } else {
        var h1 = heading(main, "");
        add(h1, "span", "number", walk.numberAt(here));
        h1.appendChild(document.createTextNode(" "));
        add(h1, "span", "", step.title || step.id);
        var found = add(main, "section", "found");
        (step.notes || []).forEach(function (id) { if (named(tree.notes, id)) { note(found, named(tree.notes, id)); } });
        line(found, (step.finds || []).length > 1 ? "Found one of" : "Found", (step.finds || []).map(function (id) { return titleOf(tree.faults, id); }).join("; ") || (step.findsNothing ? "no fault" : ""), "strong");
        line(found, "Refer to", step.refersTo, "strong");
        line(found, "", step.hint);
        if (step.report) { report(main, step.report); }
        checklist(main);
      }
      recordPart(main);
      var row = add(main, "div", "actions last");
      button(row, "", "\u2190 Back", back).id = "back";
      button(row, "", "Print", function () { window.print(); });
      button(row, "", "Begin anew", function () {
        confirm_(main, kept.saved ? "Forget this walk and begin anew?" : "The record is not saved. Forget this walk all the same?", "Forget it and begin anew",
          anew);
      });
      var side = add(body, "aside", "side");
      side.setAttribute("aria-label", "What was done");
      history(side);
    });
    say("The end: " + plain(step.title));
  }

  function report(main, words) {
    add(main, "h2", "", "Report to the customer");
    var text = add(main, "p", "report", words);
    var row = add(main, "div", "actions");
    button(row, "", "Copy", function () { copy(text); });
  }

  function copy(from) {
    var chosen = window.getSelection();
    chosen.selectAllChildren(from);
    var copied = false;
    try { copied = document.execCommand("copy"); } catch (refused) { copied = false; }
    say(copied ? "Copied." : "Selected: copy it with the keys of your device.");
  }

  function checklist(main) {
    var ends = (tree.conditions || []).filter(function (one) { return one.ends !== undefined; });
    if (ends.length === 0) { return; }
    add(main, "h2", "", "Before the unit leaves the bench");
    var box = add(main, "fieldset", "checks");
    add(box, "legend", "", "Check that each is so");
    ends.forEach(function (one) {
      var row = add(box, "label", "tick");
      var tick = add(row, "input");
      tick.type = "checkbox";
      tick.checked = kept.ticks[one.id] === true;
      tick.addEventListener("change", function () { kept.ticks[one.id] = tick.checked; store(); });
      add(row, "span", "", setting({ condition: one.id, value: one.ends }));
    });
  }

  function recordPart(main) {
    add(main, "h2", "", "Record");
    add(main, "p", "", "Steps, readings, results and times" + (kept.moves.length > 0 ? ", begun " + day(kept.begun) : "")
      + ". Names and numbers stand in it only if you type them here.");
    jobFields(main);
    var label_ = add(main, "label", "remarks", "Remarks");
    var text = add(label_, "textarea");
    text.rows = 3;
    text.maxLength = 2000;
    text.value = kept.remarks || "";
    text.addEventListener("input", function () { kept.remarks = text.value; store(); });
    window.onbeforeprint = function () {
      app.querySelectorAll(".printed").forEach(function (one) { one.remove(); });
      JOB.forEach(function (field) {
        var row = line(main, field[1], kept.job[field[0]], "printed");
        if (row) { main.insertBefore(row, label_); }
      });
    };
    var row = add(main, "div", "actions");
    button(row, "primary", "Save the record", function () {
      kept.id = kept.id || identifier();
      var blob = new Blob([JSON.stringify(FaultwrightRecord.write(tree, kept), null, 2) + "\n"], { type: "application/json" });
      var link = document.createElement("a");
      link.href = URL.createObjectURL(blob);
      link.download = tree.id.replace(/[^A-Za-z0-9_-]/g, "_") + "-" + kept.begun.substring(0, 16).replace(/[^0-9]/g, "") + ".record.json";
      document.body.appendChild(link);
      link.click();
      link.remove();
      setTimeout(function () { URL.revokeObjectURL(link.href); }, 1000);
      kept.saved = true;
      store();
      say("Saved as " + link.download);
    }).id = "save";
  }

  // ---- the name of a record

  function identifier() {
    var bytes = new Uint8Array(16);
    crypto.getRandomValues(bytes);
    bytes[6] = bytes[6] & 15 | 64;
    bytes[8] = bytes[8] & 63 | 128;
    var hex = Array.prototype.map.call(bytes, function (one) { return (one + 256).toString(16).substring(1); }).join("");
    return "urn:uuid:" + hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
  }

  // ---- keys and presses

  // Longer than a double press takes, and shorter than anybody reads. Common practice: half a second is the usual limit of a double click.
  var SETTLES = 500;

  // The second of two quick presses, and a key that is held, mean the page before: they press nothing on the one that came.
  document.addEventListener("click", function (event) {
    var since = now() - drawn;
    if (event.target.closest && event.target.closest("button") && since >= 0 && since < SETTLES) {
      event.preventDefault();
      event.stopPropagation();
    }
  }, true);
  document.addEventListener("keydown", function (event) {
    if (event.repeat && (event.key === "Enter" || event.key === " " || /^[1-9]$/.test(event.key)) && !/^(TEXTAREA|INPUT)$/.test(event.target.tagName)) {
      event.preventDefault();
      event.stopPropagation();
    }
  }, true);
  window.addEventListener("storage", function (event) {
    if (event.key === KEY && event.newValue !== stored && kept.begun) { otherWindow(); }
  });

  document.addEventListener("keydown", function (event) {
    var typing = /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.tagName) && event.target.type !== "checkbox";
    if (typing || event.altKey || event.ctrlKey || event.metaKey) { return; }
    var presses = Array.prototype.slice.call(app.querySelectorAll(".due button:not(:disabled), #work button.result:not(:disabled), #work button.primary:not(:disabled)"))
      .filter(function (one) { return one.offsetParent !== null; });
    if (kept.keys && /^[1-9]$/.test(event.key)) {
      var chosen = app.querySelectorAll("#work > .results > button.result")[Number(event.key) - 1];
      if (chosen && !chosen.disabled) { event.preventDefault(); chosen.click(); }
    } else if ((event.key === "ArrowDown" || event.key === "ArrowUp") && (presses.indexOf(event.target) >= 0 || event.target.tagName === "H1" && presses.length > 0)) {
      event.preventDefault();
      var at = presses.indexOf(document.activeElement) + (event.key === "ArrowDown" ? 1 : -1);
      presses[at < 0 ? presses.length - 1 : at % presses.length].focus();
    }
  });

  storing = canStore();
  load();
  begin();
})();
