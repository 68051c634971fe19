/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** A procedure whose author means no good: every text in it tries to be something else. */
public final class Hostile {
    /** Markup, script, style, escapes of strings and of comments, template marks, control characters, long words. */
    public static final String WORDS = "</title></style><script>alert(1)</script><img src=x onerror=alert(2)>"
            + "&lt;b&gt;&amp;&#0;'`${7*7}{{7*7}}<!--]]>*/ } body { display: none } @page { margin: 0 } \\00003c"
            + " javascript:alert(3) file:///etc/passwd \u0001\u0007\u001B[31m\u202Etxt\u2028\u2029\uFEFF"
            + "\u4F60\u597D \uD83D\uDD25 \u05D0\u05D1 \u0627 " + "W".repeat(400);

    private Hostile() {
    }

    public static Publication publication() {
        return Samples.text(text());
    }

    static String text() {
        String quoted = "\"" + WORDS.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        return ("""
                procedure Hostile %1$s
                equipment %1$s boards %1$s
                revision 1 draft by %1$s
                complaints %1$s
                tools %1$s
                condition Supply %1$s { off, on } live when on starts off ends off
                instrument Meter %1$s { dc voltage up to 6 V resolution 1 mV accuracy 1 %% of reading }
                point Rail %1$s carries up to 5 V dc
                part Board %1$s
                indicator Lamp %1$s { %1$s means %1$s source %1$s }
                note Note notice { covers data hazard %1$s consequence %1$s avoid %1$s }
                fault Fault %1$s { shows Look %1$s remedy Act }
                routine Routine %1$s { exits done do Inner %1$s { then -> done } }
                begin at Look
                observe Look %1$s at Lamp { hint %1$s notes Note handles Board tools %1$s %1$s -> Read anything else -> Act }
                measure Read %1$s { dc voltage at Rail using Meter expects 3 V +/- 50 %% source %1$s within -> Act outside -> Perform }
                perform Perform %1$s by Routine { done -> Act }
                do Act %1$s { erases %1$s sets Supply off then -> End at most 2 times, else End }
                conclude End %1$s { finds Fault refers to %1$s report %1$s }
                example %1$s of Fault { Look %1$s ends at End }
                """).formatted(quoted);
    }
}
