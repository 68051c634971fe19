/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.faultwright.language.ProcedureReader;

/** The keywords as the generated parser knows them, read from its token table so that no list can lag behind. */
final class GrammarWords {
    private static final String TOKENS =
            "/org/faultwright/language/parser/antlr/internal/InternalProcedure.tokens";
    private static final Pattern WORD = Pattern.compile("^'([a-z][a-z-]*)'=", Pattern.MULTILINE);

    private GrammarWords() {
    }

    static Set<String> all() {
        try (InputStream tokens = ProcedureReader.class.getResourceAsStream(TOKENS)) {
            if (tokens == null) {
                throw new IllegalStateException("the parser's token table is missing from the class path");
            }
            Set<String> words = new TreeSet<>();
            Matcher matcher = WORD.matcher(new String(tokens.readAllBytes(), StandardCharsets.ISO_8859_1));
            while (matcher.find()) {
                words.add(matcher.group(1));
            }
            return Set.copyOf(words);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the parser's token table cannot be read", unreadable);
        }
    }
}
