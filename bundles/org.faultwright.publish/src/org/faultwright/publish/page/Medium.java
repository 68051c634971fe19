/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

/** What a page is made for. */
public enum Medium {
    /** HTML for a browser. */
    SCREEN,
    /** PDF. */
    PAPER
}
