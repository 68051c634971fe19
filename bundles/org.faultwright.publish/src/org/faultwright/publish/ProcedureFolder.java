/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.List;
import java.util.Set;

/**
 * A folder of procedures that are published together.
 *
 * @param title      what to call it: the folder's or the library's name
 * @param procedures in the order they are listed
 * @param files      names of the files that stand beside the page, so that it links only to what is there
 */
public record ProcedureFolder(String title, List<Publication> procedures, Set<String> files) {
}
