/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.regex.Pattern;

/**
 * What an export made.
 *
 * @param fileName  letters, digits, {@code _} and {@code -}, then one or more endings; never a path
 * @param mediaType such as {@code application/pdf}
 * @param bytes     the whole file
 */
public record PublishedFiles(String fileName, String mediaType, byte[] bytes) {
    private static final Pattern FILE_NAME = Pattern.compile("[A-Za-z0-9_-]+(\\.[a-z0-9]+)+");

    public PublishedFiles {
        if (!FILE_NAME.matcher(fileName).matches()) {
            throw new IllegalArgumentException("not a plain file name: " + fileName);
        }
    }
}
