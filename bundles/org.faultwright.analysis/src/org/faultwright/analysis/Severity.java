/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

/** How much a finding weighs. Errors keep a procedure from being printed as anything but a draft. */
public enum Severity { ERROR, WARNING, ADVICE }
