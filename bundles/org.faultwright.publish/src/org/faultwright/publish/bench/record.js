/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */

// Turns a walk that was kept into the record that is saved (walk-record-1.schema.json), and back. It draws nothing and reads no clock.
var FaultwrightRecord = (function () {
  "use strict";
  var walk = FaultwrightWalk;
  var SCHEMA = "urn:faultwright:walk-record:1";
  var LONGEST = 60; // letters of a reading
  var JOB = ["serial", "board", "job", "technician"];

  function fresh() { return { moves: [], takenBack: [], job: {}, ticks: {}, keys: true }; }

  function plain(words) { return String(words).replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\s]+/g, " ").substring(0, 100); }

  function readings(step, value) {
    return [].concat(value).map(function (one, row) {
      var from = step.readings ? step.readings[row].entry : step.entry;
      var reading = one === "OL" ? { overload: true } : { value: one.indexOf("/") > 0 ? walk.shown(one) : one };
      if (from && from.unit) { reading.unit = from.unit; }
      if (step.readings) { reading.point = step.readings[row].point; }
      return reading;
    });
  }

  /** The record of a walk. @param kept { id, begun, moves, … } as the page keeps it */
  function write(tree, kept) {
    var states = walk.replay(tree, kept.moves).states;
    var here = states[states.length - 1];
    var steps = [], seconds = 0, notes = [];
    kept.moves.forEach(function (one, i) {
      var step = states[i].step;
      notes = notes.concat(one.notes || []);
      seconds += one.seconds || 0;
      if (one.enter) { return; }
      var entry = { step: step.id, number: walk.numberAt(states[i]), outcome: one.outcome };
      if (states[i].path.length > 0) { entry.within = states[i].path; }
      if (one.value !== undefined) { entry.readings = readings(step, one.value); }
      if (one.doubtful) { entry.doubtful = true; }
      if (one.waitCut) { entry.waitCut = true; }
      if (notes.length > 0) { entry.notes = notes; }
      entry.ended = one.at;
      entry.seconds = seconds;
      seconds = 0;
      notes = [];
      steps.push(entry);
    });
    var made = { $schema: SCHEMA, schemaVersion: "1.0", id: kept.id,
      procedure: { id: tree.id, title: tree.title || tree.id, revision: { status: tree.revision.status }, digest: tree.digest }, begun: kept.begun };
    if (tree.revision.number !== undefined) { made.procedure.revision.number = tree.revision.number; }
    if (kept.ended) { made.ended = kept.ended; }
    if (Object.keys(kept.job).length > 0) { made.job = kept.job; }
    made.steps = steps;
    if (kept.takenBack.length > 0) { made.takenBack = kept.takenBack; }
    if (walk.isEnd(here) && !here.lost) {
      made.conclusion = here.step.id;
      if (here.step.finds) { made.found = here.step.finds; }
    }
    var ticked = (tree.conditions || []).filter(function (one) { return kept.ticks[one.id]; }).map(function (one) { return one.id; });
    if (ticked.length > 0) { made.checked = ticked; }
    if (kept.remarks && kept.remarks.trim()) { made.remarks = kept.remarks.trim(); }
    return made;
  }

  function isTime(text) { return typeof text === "string" && /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/.test(text) && !isNaN(Date.parse(text)); }

  // ---- what the browser kept

  /** A walk as a page kept it, up to the first move that is damaged; undefined where there is none. Anything may stand in the store. */
  function resumed(tree, text) {
    var found;
    try { found = JSON.parse(text); } catch (damaged) { return undefined; }
    if (!found || !isTime(found.begun) || !Array.isArray(found.moves) || !walk.start(tree)) { return undefined; }
    var moves = [], here = walk.start(tree);
    for (var i = 0; i < found.moves.length && isMove(here, found.moves[i]); i++) {
      moves.push(found.moves[i]);
      here = found.moves[i].enter === true ? walk.enter(here) : walk.take(here, found.moves[i].outcome, found.moves[i].value);
    }
    var kept = rest({ id: found.id, begun: found.begun, ended: walk.isEnd(here) ? found.ended : undefined, job: found.job, takenBack: found.takenBack,
      remarks: found.remarks }, moves);
    kept.saved = found.saved === true;
    kept.keys = found.keys !== false;
    (tree.conditions || []).forEach(function (one) { if (found.ticks && found.ticks[one.id] === true) { kept.ticks[one.id] = true; } });
    if (moves.length < found.moves.length) { return kept; }
    var waiting = found.waiting, back = found.back;
    if (waiting && typeof waiting.until === "number" && typeof waiting.place === "string") { kept.waiting = { until: waiting.until, place: waiting.place }; }
    if (back && typeof back.was === "object" && back.was && Array.isArray(back.notes)) { kept.back = { was: back.was, notes: back.notes.map(String) }; }
    return kept;
  }

  function isMove(here, one) {
    if (!one || walk.isEnd(here)) { return false; }
    if (one.seconds !== undefined && !(typeof one.seconds === "number" && one.seconds >= 0 && one.seconds <= 1e7)) { return false; }
    if (one.notes !== undefined && !(Array.isArray(one.notes) && one.notes.every(function (id) { return typeof id === "string"; }))) { return false; }
    if (one.enter === true) { return walk.canEnter(here); }
    return !walk.canEnter(here) && isTime(one.at) && (here.step.outcomes || []).some(function (outcome) { return outcome.key === one.outcome; })
      && (one.value === undefined || isValue(here.step, one.value));
  }

  function isValue(step, value) {
    var all = [].concat(value);
    return Array.isArray(value) === (step.readings !== undefined) && all.length === (step.readings ? step.readings.length : 1)
      && all.every(function (one) { return one === "OL" || walk.isNumber(one); });
  }

  // ---- records

  function numberOf(revision) { return revision && revision.number !== undefined ? revision.number : "none"; }

  /** { kept } of a record, or { refused: one sentence }. */
  function read(tree, text) {
    var found;
    try { found = JSON.parse(text); } catch (damaged) { return { refused: "This file is no record: it is not JSON, or it is damaged." }; }
    var from = found && found.procedure;
    if (!found || found.$schema !== SCHEMA || !from || typeof from !== "object" || !Array.isArray(found.steps) || !isTime(found.begun)) {
      return { refused: "This file is no record of a walk." };
    }
    if (from.id !== tree.id) {
      return { refused: "This record is of " + plain(from.id) + ", and this page walks " + plain(tree.id) + ": open it in the page of its own procedure." };
    }
    if (numberOf(from.revision) !== numberOf(tree.revision)) {
      return { refused: "This record is of revision " + plain(numberOf(from.revision)) + ", and this page is of revision " + numberOf(tree.revision)
        + ": open it in the page of its own revision." };
    }
    if (from.digest !== tree.digest) { return { refused: "This record was made from another text of the same revision: open it in the page that it was made with." }; }
    var moves = moved(tree, found.steps);
    if (!moves) { return { refused: "This record does not fit the steps of its procedure: it was changed or damaged." }; }
    return { kept: rest(found, moves) };
  }

  function moved(tree, steps) {
    var moves = [], here = walk.start(tree);
    for (var i = 0; i < steps.length; i++) {
      var one = steps[i];
      while (one && walk.canEnter(here)) {
        moves.push({ enter: true });
        here = walk.enter(here);
      }
      var fits = one && !walk.isEnd(here) && one.step === here.step.id && isTime(one.ended)
        && JSON.stringify(one.within || []) === JSON.stringify(here.path)
        && (here.step.outcomes || []).some(function (outcome) { return outcome.key === one.outcome; });
      var next = fits && move(here.step, one);
      if (!next) { return undefined; }
      moves.push(next);
      here = walk.take(here, next.outcome, next.value);
    }
    return moves;
  }

  function move(step, one) {
    var next = { outcome: one.outcome, at: one.ended, seconds: Math.min(1e7, Math.max(0, Math.round(Number(one.seconds) || 0))) };
    if (one.readings !== undefined) {
      var rows = step.readings ? step.readings.length : 1;
      if (!Array.isArray(one.readings) || one.readings.length !== rows) { return undefined; }
      var values = one.readings.map(function (reading) { return reading && reading.overload === true ? "OL" : walk.typed(reading && reading.value); });
      if (values.some(function (value) { return value === undefined || value.length > LONGEST; })) { return undefined; }
      next.value = step.readings ? values : values[0];
    }
    if (one.doubtful === true) { next.doubtful = true; }
    if (one.waitCut === true) { next.waitCut = true; }
    if (Array.isArray(one.notes)) { next.notes = one.notes.map(String); }
    return next;
  }

  function rest(found, moves) {
    var kept = fresh();
    kept.moves = moves;
    kept.begun = found.begun;
    kept.saved = true;
    if (/^urn:uuid:[0-9a-f-]{36}$/.test(found.id)) { kept.id = found.id; }
    if (isTime(found.ended)) { kept.ended = found.ended; }
    JOB.forEach(function (field) {
      if (found.job && typeof found.job[field] === "string" && found.job[field].trim()) { kept.job[field] = found.job[field].substring(0, 200); }
    });
    (Array.isArray(found.checked) ? found.checked : []).forEach(function (id) { kept.ticks[String(id)] = true; });
    kept.takenBack = (Array.isArray(found.takenBack) ? found.takenBack : []).filter(function (one) { return one && isTime(one.at); })
      .map(function (one) { return { step: String(one.step), outcome: String(one.outcome), at: one.at }; });
    if (typeof found.remarks === "string") { kept.remarks = found.remarks.substring(0, 2000); }
    return kept;
  }

  return { fresh: fresh, write: write, read: read, resumed: resumed };
})();
