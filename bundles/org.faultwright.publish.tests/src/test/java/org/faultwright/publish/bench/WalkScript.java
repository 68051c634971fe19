/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.Optional;
import org.mozilla.javascript.Context;
import org.mozilla.javascript.Function;
import org.mozilla.javascript.Scriptable;
import org.mozilla.javascript.ScriptableObject;

/** The walk of the bench page, run by an engine for scripts that knows nothing of browsers. */
final class WalkScript implements AutoCloseable {
    private static final String HARNESS = """
            var state;
            function tell() {
              var suspects = {};
              FaultwrightWalk.suspects(state).forEach(function (one) { suspects[one.id] = one.share; });
              return JSON.stringify({ label: state.path.concat([state.step.id]).join("/"), end: FaultwrightWalk.isEnd(state), lost: state.lost,
                canEnter: FaultwrightWalk.canEnter(state), number: FaultwrightWalk.numberAt(state), due: FaultwrightWalk.due(state), read: state.read.slice().sort(), setUp: state.setUp,
                seconds: state.seconds, suspects: suspects, toGo: FaultwrightWalk.toGo(state), calculated: FaultwrightWalk.calculated(state),
                unmet: state.unmet.map(function (one) { return one.condition + " " + one.value; }),
                taken: (state.step.outcomes || []).map(function (one) { return state.counts[state.path.concat([state.step.id]).join("/") + "\\n" + one.key] || 0; }) });
            }
            function start(tree) { state = FaultwrightWalk.start(JSON.parse(tree)); return tell(); }
            function enter() { state = FaultwrightWalk.enter(state); return tell(); }
            function take(key, value) { state = FaultwrightWalk.take(state, key, value); return tell(); }
            function judge(value) { return JSON.stringify(FaultwrightWalk.judge(state.step, value)); }
            function judgeTable(values) { return JSON.stringify({ outcome: FaultwrightWalk.judgeTable(state.step, JSON.parse(values)) }); }
            function written(tree, kept) { return JSON.stringify(FaultwrightRecord.write(JSON.parse(tree), Object.assign(FaultwrightRecord.fresh(), JSON.parse(kept)))); }
            function opened(tree, text) { return JSON.stringify(FaultwrightRecord.read(JSON.parse(tree), text)); }
            function typed(text) { var plain = FaultwrightWalk.typed(text); return plain === undefined ? "" : plain; }
            """;

    private final Context context = Context.enter();
    private final Scriptable scope = scope(context);

    private static Scriptable scope(Context context) {
        context.setLanguageVersion(Context.VERSION_ES6);
        Scriptable scope = context.initSafeStandardObjects();
        context.evaluateString(scope, BenchPage.walkScript(), "walk.js", 1, null);
        context.evaluateString(scope, BenchPage.recordScript(), "record.js", 1, null);
        context.evaluateString(scope, HARNESS, "harness", 1, null);
        return scope;
    }

    private String call(String name, Object... arguments) {
        return Context.toString(((Function) ScriptableObject.getProperty(scope, name)).call(context, scope, scope, arguments));
    }

    private JsonObject told(String name, Object... arguments) {
        return JsonParser.parseString(call(name, arguments)).getAsJsonObject();
    }

    JsonObject start(String tree) {
        return told("start", tree);
    }

    JsonObject enter() {
        return told("enter");
    }

    JsonObject take(String key, Optional<String> value) {
        return told("take", key, value.isPresent() ? value.get() : Context.getUndefinedValue());
    }

    JsonObject judge(String value) {
        return told("judge", value);
    }

    JsonObject judgeTable(String values) {
        return told("judgeTable", values);
    }

    /** The record of what a page keeps. */
    JsonObject written(String tree, String kept) {
        return told("written", tree, kept);
    }

    /** What a page keeps for a record, or why it is refused. */
    JsonObject opened(String tree, String record) {
        return told("opened", tree, record);
    }

    /** Empty where the text is no number. */
    String typed(String text) {
        return call("typed", text);
    }

    @Override
    public void close() {
        Context.exit();
    }
}
