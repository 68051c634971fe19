/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

/** What stands at the head and foot of every printed page; the page number is set by the style sheet. */
public final class RunningLines {
    private RunningLines() {
    }

    public static void add(Page page, String left, String right, String foot) {
        Tag head = page.body().add("div", "runhead");
        head.say("span", "right", right);
        head.say("b", "", left);
        Tag line = page.body().add("div", "runfoot");
        line.add("span", "right pages");
        line.say("span", "foot", foot);
    }
}
