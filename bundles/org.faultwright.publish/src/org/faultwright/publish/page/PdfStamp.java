/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a PDF's identity and date are made from, so that the same content gives the same bytes.
 *
 * @param content hexadecimal digits that stand for the content
 * @param dated   the day its revision is dated; absent leaves the date out of the file
 */
public record PdfStamp(String content, Optional<LocalDate> dated) {
}
