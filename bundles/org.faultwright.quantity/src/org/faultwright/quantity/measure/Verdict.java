/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/** What a reading says about a limit. */
public enum Verdict { ACCEPT, DOUBTFUL, REJECT }
