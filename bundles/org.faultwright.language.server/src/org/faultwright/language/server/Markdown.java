/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.regex.Pattern;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;

/** The Markdown that help, pages of rules and explanations are written in: CommonMark, with the tables of its GitHub dialect. */
public final class Markdown {
    private static final Pattern SIGNS = Pattern.compile("[\\\\`*_{}\\[\\]<>#|&]");
    /** What at the beginning of a line would make it the entry of a list, a rule, or the line under a heading. */
    private static final Pattern BEGINNING = Pattern.compile("^([-+=~])|^(\\d{1,9})(?=[.)]( |$))");

    private Markdown() {
    }

    /** A page as a tree; whatever it is, it can be read. */
    public static Node read(String markdown) {
        return Reading.PARSER.parse(markdown);
    }

    /** Words that mean nothing but themselves, in one line. */
    public static String plain(String words) {
        String line = SIGNS.matcher(words.replaceAll("\\s+", " ")).replaceAll("\\\\$0");
        return BEGINNING.matcher(line).replaceFirst("$2\\\\$1");
    }

    static String cell(String words) {
        return words.isEmpty() ? " " : plain(words);
    }

    /** Made when the first page is read; whoever only writes Markdown does without. */
    private static final class Reading {
        static final Parser PARSER = Parser.builder().extensions(List.of(TablesExtension.create())).build();
    }
}
