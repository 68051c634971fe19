/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */

// Walks the tree of a procedure, one result after the other. It knows nothing of pages and reads no clock: what it says
// depends on the tree and on the results given alone. A state never changes; each move gives the next one.
var FaultwrightWalk = (function () {
  "use strict";

  // ---- exact numbers: a whole number over a whole number above zero

  function gcd(a, b) {
    var zero = BigInt(0);
    if (a < zero) { a = -a; }
    while (b !== zero) { var rest = a % b; a = b; b = rest; }
    return a;
  }

  function ratio(n, d) {
    var zero = BigInt(0);
    if (d < zero) { n = -n; d = -d; }
    var shared = gcd(n, d);
    return shared > BigInt(1) ? { n: n / shared, d: d / shared } : { n: n, d: d };
  }

  function tens(count) {
    var text = "1";
    for (var i = 0; i < count; i++) { text += "0"; }
    return BigInt(text);
  }

  // Decimal notation, 1e-3, or a fraction such as 1/60; undefined for anything else.
  function number(text) {
    var parts = /^([+-]?)(\d+)(?:\.(\d*))?(?:[eE]([+-]?\d{1,3}))?(?:\/([1-9]\d*))?$/.exec(text);
    if (!parts || text.length > 4000) { return undefined; }
    var digits = parts[3] || "";
    var exponent = Number(parts[4] || 0) - digits.length;
    var n = BigInt(parts[2] + digits);
    if (parts[1] === "-") { n = -n; }
    var d = BigInt(parts[5] || "1");
    return exponent >= 0 ? ratio(n * tens(exponent), d) : ratio(n, d * tens(-exponent));
  }

  // What somebody types: a decimal comma or point, a true minus, spaces between. Undefined where it is no number.
  function typed(text) {
    var plain = String(text).replace(/[\s\u00a0\u202f\u2009']/g, "").replace(/\u2212/g, "-").replace(",", ".");
    if (/^[+-]?\.\d/.test(plain)) { plain = plain.replace(".", "0."); }
    return /^[+-]?\d+(\.\d*)?$/.test(plain) ? plain.replace(/^\+/, "").replace(/\.$/, "") : undefined;
  }

  function compare(a, b) {
    var left = a.n * b.d, right = b.n * a.d;
    return left < right ? -1 : left > right ? 1 : 0;
  }
  function plus(a, b) { return ratio(a.n * b.d + b.n * a.d, a.d * b.d); }
  function negated(a) { return { n: -a.n, d: a.d }; }
  function minus(a, b) { return plus(a, negated(b)); }
  function times(a, b) { return ratio(a.n * b.n, a.d * b.d); }
  function dividedBy(a, b) { return b.n === BigInt(0) ? undefined : ratio(a.n * b.d, a.d * b.n); }
  function absolute(a) { return a.n < BigInt(0) ? negated(a) : a; }

  function bits(n) { return n === BigInt(0) ? 0 : (n < BigInt(0) ? -n : n).toString(2).length; }

  function wholeRoot(n) {
    if (n < BigInt(2)) { return n; }
    var guess = BigInt(1), power = Math.floor(bits(n) / 2) + 1;
    for (var i = 0; i < power; i++) { guess = guess * BigInt(2); }
    for (;;) {
      var next = (guess + n / guess) / BigInt(2);
      if (next >= guess) { return guess; }
      guess = next;
    }
  }

  // A decimal of 20 digits or more that is not above the root.
  function squareRoot(a) {
    if (a.n < BigInt(0)) { return undefined; }
    var whole = Math.trunc((bits(a.n) - bits(a.d)) * 3 / 20);
    var places = Math.max(0, 22 - whole);
    return ratio(wholeRoot(a.n * tens(2 * places) / a.d), tens(places));
  }

  function rounded(a, places) {
    var scaled = absolute(a), unit = tens(places), two = BigInt(2);
    var whole = (scaled.n * unit * two + scaled.d) / (scaled.d * two);
    var text = whole.toString();
    while (text.length <= places) { text = "0" + text; }
    var cut = text.length - places;
    var out = places === 0 ? text : text.substring(0, cut) + "." + text.substring(cut);
    return (a.n < BigInt(0) && whole !== BigInt(0) ? "-" : "") + out;
  }

  // To five digits or more, as a display would show it.
  function shown(a) {
    var size = Math.abs(Number(a.n) / Number(a.d));
    if (!(size > 0)) { return "0"; }
    var places = Math.min(20, Math.max(0, 4 - Math.floor(Math.log(size) / Math.LN10)));
    var text = rounded(a, places);
    return text.indexOf(".") >= 0 ? text.replace(/0+$/, "").replace(/\.$/, "") : text;
  }

  // ---- the tree, looked up by name

  function own(map, key) { return Object.prototype.hasOwnProperty.call(map, key) ? map[key] : undefined; }

  function byId(list) {
    var map = Object.create(null);
    (list || []).forEach(function (one) { if (!own(map, one.id)) { map[one.id] = one; } });
    return map;
  }

  function read(tree) {
    var known = { tree: tree, steps: byId(tree.steps), routines: byId(tree.routines), notes: byId(tree.notes), conditions: tree.conditions || [] };
    known.inside = Object.create(null);
    (tree.routines || []).forEach(function (routine) { known.inside[routine.id] = byId(routine.steps); });
    return known;
  }

  function routineOf(known, step) {
    var routine = step.kind === "perform" && step.routine !== undefined ? own(known.routines, step.routine) : undefined;
    return routine && routine.begin !== undefined && own(known.inside[routine.id], routine.begin) ? routine : undefined;
  }

  // The steps among which the innermost of these performing steps leads on.
  function stepsWithin(known, path) {
    var steps = known.steps;
    for (var i = 0; i < path.length; i++) {
      var step = own(steps, path[i]);
      var routine = step && routineOf(known, step);
      if (!routine) { return undefined; }
      steps = known.inside[routine.id];
    }
    return steps;
  }

  function callers(known, path) {
    return path.map(function (name, i) { return own(stepsWithin(known, path.slice(0, i)), name); });
  }

  // As printed where the walk has come to: a routine in the box of a step has that step's number, with a letter.
  function numberAt(state) {
    var outer = callers(state.known, state.path), names = state.path.concat([state.step.id]);
    for (var i = 0; i < outer.length; i++) {
      var within = names.slice(i + 1).join("/") + "/";
      var places = (outer[i].inPlace || []).filter(function (place) { return (place.path.join("/") + "/").indexOf(within) === 0; });
      if (places.length > 0) { return places[0].number; }
    }
    return state.step.number;
  }

  // ---- the set-up

  function has(condition, value) { return (condition.values || []).indexOf(value) >= 0; }

  function force(known, setUp) {
    var changed = true;
    for (var round = 0; changed && round <= known.conditions.length; round++) {
      changed = false;
      known.conditions.forEach(function (condition) {
        var rule = (condition.becomes || []).filter(function (one) {
          return has(condition, one.value) && setUp[one.when.condition] === one.when.value;
        })[0];
        if (rule && setUp[condition.id] !== rule.value) {
          setUp[condition.id] = rule.value;
          changed = true;
        }
      });
    }
    return setUp;
  }

  function withSettings(known, setUp, settings) {
    if (!settings || settings.length === 0) { return setUp; }
    var next = Object.assign(Object.create(null), setUp);
    settings.forEach(function (one) {
      var condition = known.conditions.filter(function (c) { return c.id === one.condition; })[0];
      if (condition && has(condition, one.value)) { next[one.condition] = one.value; }
    });
    return force(known, next);
  }

  function startingSetUp(known) {
    var setUp = Object.create(null);
    known.conditions.forEach(function (condition) {
      if ((condition.values || []).length > 0) { setUp[condition.id] = has(condition, condition.starts) ? condition.starts : condition.values[0]; }
    });
    return force(known, setUp);
  }

  // Whether something becomes so that was not: what is live, or what is charged.
  function begins(known, key, before, after) {
    return known.conditions.some(function (condition) {
      var values = condition[key] || [];
      return values.indexOf(before[condition.id]) < 0 && values.indexOf(after[condition.id]) >= 0;
    });
  }

  // ---- notes: read at their step, and due again once what they warn of begins anew

  function stillRead(known, state, before, after) {
    var live = begins(known, "liveWhen", before, after), charged = begins(known, "chargedWhen", before, after);
    if (!live && !charged) { return state.read; }
    var told = [];
    callers(known, state.path).concat([state.step]).forEach(function (step) {
      (step.notes || []).forEach(function (name) {
        var note = own(known.notes, name);
        told = told.concat(note && note.covers || []);
      });
    });
    return state.read.filter(function (name) {
      var note = own(known.notes, name);
      return !note || !(note.lapses || []).some(function (lapse) {
        return (lapse.when === "live" ? live : charged) && told.indexOf(lapse.hazard) < 0;
      });
    });
  }

  function due(state) {
    return (state.step.notes || []).concat(state.again || []).filter(function (name, i, all) {
      return own(state.known.notes, name) !== undefined && state.read.indexOf(name) < 0 && all.indexOf(name) === i;
    });
  }

  /** This state, with these notes due again, whether or not the step names them. */
  function withAgain(state, names) {
    return Object.assign({}, state, { again: names, read: state.read.filter(function (name) { return names.indexOf(name) < 0; }) });
  }

  /**
   * The notes read by this state that are due again once results have been taken back: those of what became live or charged
   * after it, whichever step told of it then. What the taken back results did to the unit is not taken back with them.
   * @param later the states after it, in their order
   */
  function lapsed(state, later) {
    function became(key) { return later.some(function (one) { return begins(state.known, key, state.setUp, one.setUp); }); }
    return lapsing(state, became("liveWhen"), became("chargedWhen"));
  }

  function lapsing(state, live, charged) {
    return state.read.filter(function (name) {
      var note = own(state.known.notes, name);
      return note && (note.lapses || []).some(function (lapse) { return lapse.when === "live" ? live : charged; });
    });
  }

  /** Whether a condition with this value is live or charged. */
  function isDangerous(state, id, value) {
    return state.known.conditions.some(function (one) {
      return one.id === id && (one.liveWhen || []).concat(one.chargedWhen || []).indexOf(value) >= 0;
    });
  }

  /** The notes of this step and of what performs it, and those read before that lapse: due where the unit is made live by hand. */
  function dueWhenLive(state) {
    return callers(state.known, state.path).concat([state.step]).reduce(function (all, step) { return all.concat(step.notes || []); }, lapsing(state, true, false));
  }

  function reading(state) {
    return state.read.concat(due(state));
  }

  // ---- moves

  function arrive(state, change, step, path) {
    var next = Object.assign({}, state, change, { step: step, path: path, again: [] });
    next.unmet = (step.needs || []).filter(function (one) { return next.setUp[one.condition] !== undefined && next.setUp[one.condition] !== one.value; });
    next.setUp = withSettings(state.known, next.setUp, step.needs);
    return next;
  }

  /** The beginning; undefined for a tree without a step to begin at. */
  function start(tree) {
    var known = read(tree);
    var first = tree.begin === undefined ? undefined : own(known.steps, tree.begin);
    if (!first) { return undefined; }
    var state = { known: known, path: [], read: [], counts: Object.create(null), readings: Object.create(null), evidence: [], done: [],
      seconds: 0, setUp: startingSetUp(known), lost: false };
    return arrive(state, {}, first, []);
  }

  function isEnd(state) { return state.lost || state.step.kind === "conclude"; }

  // Routines that perform one another round a circle end here.
  var DEEPEST = 12;

  function canEnter(state) { return !isEnd(state) && state.path.length < DEEPEST && routineOf(state.known, state.step) !== undefined; }

  /** Into the routine that the step performs. */
  function enter(state) {
    if (!canEnter(state)) { throw new Error("There is no routine to enter at " + state.step.id + "."); }
    var routine = routineOf(state.known, state.step);
    return arrive(state, { read: reading(state) }, own(state.known.inside[routine.id], routine.begin), state.path.concat([state.step.id]));
  }

  function outcomeOf(step, key) {
    return (step.outcomes || []).filter(function (one) { return one.key === key; })[0];
  }

  function secondsOf(step) {
    var all = [step.takes, step.waits].filter(function (time) { return time && time.baseUnit === "s"; })
      .map(function (time) { return Math.max(0, Number(time.base)); });
    return all.length === 0 ? undefined : Math.max.apply(null, all);
  }

  function isTimedAbove(known, path) {
    return callers(known, path).some(function (step) { return secondsOf(step) !== undefined; });
  }

  /**
   * The result of the step: where it leads. A step that performs a routine is left by the routine itself; its result may be
   * given where there is no routine to enter.
   * @param value of the reading, in the unit of the step's entry, as decimal text; may be undefined
   */
  function take(state, key, value) {
    var outcome = outcomeOf(state.step, key);
    if (isEnd(state) || !outcome) { throw new Error(state.step.id + " has no result " + key + "."); }
    return leave(state, outcome, state.step, state.path, value);
  }

  function leave(state, outcome, step, path, value) {
    var known = state.known;
    var before = state.setUp;
    var setUp = withSettings(known, withSettings(known, before, step.sets), outcome.proves);
    var change = { setUp: setUp, read: stillRead(known, Object.assign({}, state, { step: step, path: path, read: readingAt(state, step, path) }), before, setUp) };
    var place = path.concat([step.id]).join("/");
    // A result without a number leaves none behind: what was read at an earlier visit is no reading of this one.
    if (state.step === step) { change.readings = put(state.readings, place, value); }
    if (path.length === 0) {
      change.evidence = state.evidence.concat([{ step: step.id, outcome: outcome.key }]);
      change.done = state.done.indexOf(step.id) < 0 ? state.done.concat([step.id]) : state.done;
    }
    var own_ = secondsOf(step);
    if (own_ !== undefined && !isTimedAbove(known, path)) { change.seconds = state.seconds + own_; }
    var to = outcome.to;
    if (outcome.repeat) {
      var counted = place + "\n" + outcome.key;
      var taken = own(state.counts, counted) || 0;
      if (taken >= outcome.repeat.atMost) { to = outcome.repeat.then; } else { change.counts = put(state.counts, counted, taken + 1); }
    }
    return follow(state, change, to, step, path);
  }

  // A step read its notes when it was begun; one that performs a routine did so before it was entered.
  function readingAt(state, step, path) {
    return step === state.step && path === state.path ? reading(state) : state.read;
  }

  function put(map, key, value) {
    var next = Object.assign(Object.create(null), map);
    next[key] = value;
    return next;
  }

  function follow(state, change, to, step, path) {
    var known = state.known;
    var target = to && to.step !== undefined ? own(stepsWithin(known, path), to.step) : undefined;
    if (target) { return arrive(state, change, target, path); }
    if (to && to.exit !== undefined && path.length > 0) {
      var outer = path.slice(0, -1);
      var performing = own(stepsWithin(known, outer), path[path.length - 1]);
      var exit = outcomeOf(performing, to.exit);
      if (exit) { return leave(Object.assign({}, state, change, { step: step, path: path }), exit, performing, outer, undefined); }
    }
    return Object.assign({}, state, change, { step: step, path: path, lost: true });
  }

  // ---- readings

  function within(band, value) {
    var low = band.lower && number(band.lower.value), high = band.upper && number(band.upper.value);
    var above = !low || compare(value, low) > 0 || band.lower.included && compare(value, low) === 0;
    var below = !high || compare(value, high) < 0 || band.upper.included && compare(value, high) === 0;
    return above && below;
  }

  /**
   * What a reading means: the key of its outcome, undefined where none fits, and whether it lies too near a limit to decide.
   * @param value in the unit of the entry, as decimal text, or "OL" for what a meter shows above its range
   */
  function judge(step, value) {
    var entry = step.entry;
    var rest = outcomeOf(step, "anything else");
    var other = { outcome: rest && rest.key, doubtful: false };
    if (value === "OL") { return { outcome: entry && entry.overload, doubtful: false }; }
    var exact = number(value);
    if (!entry || !exact) { return { outcome: undefined, doubtful: false }; }
    if (entry.magnitude) { exact = absolute(exact); }
    var band = (entry.bands || []).filter(function (one) { return within(one, exact); })[0];
    var near = (entry.doubtful || []).some(function (one) { return within(one, exact); });
    return band ? { outcome: band.outcome, doubtful: near || band.outcome === "doubtful" } : other;
  }

  /** The same for a table of readings, one value for each row: of the results that apply the first one written. */
  function judgeTable(step, values) {
    var outside = step.readings.filter(function (row, i) {
      var exact = values[i] === "OL" ? undefined : number(values[i]);
      return !exact || !within(row.entry ? row.entry.accepts : {}, exact);
    });
    var keys = outside.length === 0 ? ["all within"]
      : outside.map(function (row) { return "at " + row.point + " outside"; }).concat(["any outside"]);
    var written = (step.outcomes || []).map(function (one) { return one.key; });
    return written.filter(function (key) { return keys.indexOf(key) >= 0; })
      .concat(written.filter(function (key) { return key === "anything else"; }))[0];
  }

  /** Whether the value of a row lies too near its limit to decide. */
  function isDoubtful(row, value) {
    var exact = number(value);
    return exact !== undefined && (row.entry && row.entry.doubtful || []).some(function (one) { return within(one, exact); });
  }

  function toBase(entry, value) {
    return plus(times(value, number(entry.factor)), number(entry.offset || "0"));
  }

  function evaluate(formula, readingOf) {
    if (formula.reading !== undefined) { return readingOf(formula.reading); }
    if (formula.constant) { return formula.constant.base === undefined ? undefined : number(formula.constant.base); }
    var values = formula.arguments.map(function (one) { return evaluate(one, readingOf); });
    if (values.some(function (one) { return one === undefined; })) { return undefined; }
    var first = values[0], second = values[1];
    function fold(f) { return values.slice(1).reduce(f, first); }
    function squares() { return values.map(function (a) { return times(a, a); }).reduce(plus); }
    switch (formula.operation) {
      case "negate": return negated(first);
      case "add": return plus(first, second);
      case "subtract": case "difference": return minus(first, second);
      case "multiply": case "power": return times(first, second);
      case "divide": case "ratio": return dividedBy(first, second);
      case "min": return fold(function (a, b) { return compare(a, b) <= 0 ? a : b; });
      case "max": return fold(function (a, b) { return compare(a, b) >= 0 ? a : b; });
      case "abs": return absolute(first);
      case "sumOfSquares": return squares();
      case "sqrt": return squareRoot(first);
      case "rms": return squareRoot(dividedBy(squares(), ratio(BigInt(values.length), BigInt(1))));
      case "parallel":
        var inverse = values.map(function (a) { return dividedBy(ratio(BigInt(1), BigInt(1)), a); });
        return inverse.some(function (a) { return a === undefined; }) ? undefined
          : dividedBy(ratio(BigInt(1), BigInt(1)), inverse.reduce(plus));
      default: return undefined;
    }
  }

  /** The value of a step that calculates, in the unit of its entry, as text that number() reads; undefined where a reading is missing. */
  function calculated(state) {
    var step = state.step;
    if (step.kind !== "calculate" || !step.value || !step.entry) { return undefined; }
    var steps = stepsWithin(state.known, state.path);
    var base = evaluate(step.value, function (name) {
      var value = own(state.readings, state.path.concat([name]).join("/"));
      var from = own(steps, name);
      if (value === undefined || value === "OL" || Array.isArray(value) || !from || !from.entry) { return undefined; }
      return toBase(from.entry, number(value));
    });
    if (base === undefined) { return undefined; }
    var value = dividedBy(minus(base, number(step.entry.offset || "0")), number(step.entry.factor));
    return value.n.toString() + "/" + value.d.toString();
  }

  // ---- what it still can be

  function sharesOf(fault, step, done, steps) {
    var told = (fault.likelihood || []).filter(function (one) { return one.step === step.id; })[0] || {};
    var remedies = (fault.remedies || []).filter(function (name) { return own(steps, name); });
    var count = remedies.filter(function (name) { return done.indexOf(name) >= 0 || name === step.id; }).length;
    var keys = step.outcomes.map(function (one) { return one.key; });
    function even(some) {
      var shares = Object.create(null);
      some.forEach(function (key) { shares[key] = 1 / some.length; });
      return shares;
    }
    function stated(list) {
      if (!list) { return even(keys); }
      var shares = Object.create(null);
      list.forEach(function (one) { shares[one.outcome] = Number(one.share); });
      return shares;
    }
    if (count === 0) { return stated(told.before); }
    if (count === remedies.length) { return stated(told.after); }
    var before = stated(told.before), after = stated(told.after);
    return even(keys.filter(function (key) { return before[key] !== undefined || after[key] !== undefined; }));
  }

  /**
   * The faults that explain all results so far, the likeliest first, each with its part of 1 among them: cases before any result
   * was known, times the share of each result (Bayes). Empty where no fault of the table explains them all.
   */
  function suspects(state) {
    var steps = state.known.steps;
    var faults = (state.known.tree.faults || []).map(function (fault) {
      var weight = Math.max(0, Number(fault.cases)), done = [], seen = Object.create(null);
      state.evidence.forEach(function (one) {
        var step = own(steps, one.step);
        var remedied = (fault.remedies || []).indexOf(step.id) >= 0;
        var told = step.id + "\n" + one.outcome + "\n" + done.length;
        if (step.outcomes.length > 1 && !seen[told]) { weight *= sharesOf(fault, step, done, steps)[one.outcome] || 0; }
        seen[told] = true;
        if (remedied && done.indexOf(step.id) < 0) { done.push(step.id); }
      });
      return { id: fault.id, title: fault.title || fault.id, weight: weight };
    });
    var sum = faults.reduce(function (all, one) { return all + one.weight; }, 0);
    return faults.filter(function (one) { return one.weight > 0; }).map(function (one) {
      return { id: one.id, title: one.title, share: one.weight / sum };
    }).sort(function (a, b) { return b.share - a.share; });
  }

  // ---- time

  function toGoAfter(known, path, step) {
    var steps = stepsWithin(known, path), least, most = 0;
    (step.outcomes || []).forEach(function (outcome) {
      [outcome.to, outcome.repeat && outcome.repeat.then].forEach(function (to) {
        var target = to && to.step !== undefined ? own(steps, to.step) : undefined;
        var own_ = target ? target.toGo : to && to.exit !== undefined ? { least: 0, most: 0 } : undefined;
        if (own_) {
          least = least === undefined ? Number(own_.least) : Math.min(least, Number(own_.least));
          most = most === undefined || own_.most === undefined ? undefined : Math.max(most, Number(own_.most));
        }
      });
    });
    return { least: least || 0, most: most };
  }

  /** Seconds from the beginning of this step to a conclusion: at least, and at most where anything bounds it. */
  function toGo(state) {
    if (isEnd(state)) { return { least: 0, most: 0 }; }
    var known = state.known, all = callers(known, state.path), least = 0, most = 0;
    function add(part) {
      least += Number(part.least);
      most = most === undefined || part.most === undefined ? undefined : most + Number(part.most);
    }
    for (var i = 0; i < all.length; i++) {
      add(toGoAfter(known, state.path.slice(0, i), all[i]));
      var own_ = secondsOf(all[i]);
      if (own_ !== undefined) {
        add({ least: own_, most: own_ });
        return { least: least, most: most };
      }
    }
    add(state.step.toGo || { least: 0 });
    return { least: least, most: most };
  }

  // ---- a walk as a list of moves

  /**
   * Goes through moves made before: each is { enter: true } or { outcome: key, value: text }. Stops at the first that does not fit.
   * @returns { states: those passed, the beginning first, complete: whether every move fitted }
   */
  function replay(tree, moves) {
    var state = start(tree);
    var states = state ? [state] : [];
    for (var i = 0; i < moves.length && state; i++) {
      var move = moves[i];
      var fits = move.enter === true ? canEnter(state) : !isEnd(state) && !canEnter(state) && outcomeOf(state.step, move.outcome) !== undefined;
      if (!fits) { return { states: states, complete: false }; }
      state = move.enter === true ? enter(state) : take(state, move.outcome, move.value);
      states.push(state);
    }
    return { states: states, complete: state !== undefined };
  }

  return { start: start, enter: enter, canEnter: canEnter, take: take, isEnd: isEnd, due: due, judge: judge, judgeTable: judgeTable, isDoubtful: isDoubtful,
    calculated: calculated, suspects: suspects, toGo: toGo, replay: replay, typed: typed,
    lapsed: lapsed, withAgain: withAgain, isDangerous: isDangerous, dueWhenLive: dueWhenLive, isNumber: function (text) { return typeof text === "string" && number(text) !== undefined; }, shown: function (text) { return shown(number(text)); },
    secondsOf: secondsOf, numberAt: numberAt, callers: function (state) { return callers(state.known, state.path); } };
})();
