/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

/** Whether a procedure with open errors may be published, marked as a draft on every page. */
public enum Drafts { REFUSED, ALLOWED }
