/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.TextFormatter;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/**
 * The text that a new file begins with: whole, with remarks, and to be written over.
 *
 * @param text    without an error, and with remarks that say what to do next
 * @param remarks what the author should know of it, each a sentence
 */
public record Beginning(String text, List<String> remarks) {
    static final ProcedureReader READER = new ProcedureReader((library, fromFile) -> Optional.empty());

    public Beginning {
        remarks = List.copyOf(remarks);
    }

    /** A procedure from nothing. @param name letters and digits, the first a letter */
    public static Beginning procedure(String name) {
        return new Beginning(template("procedure", name), List.of());
    }

    /** A library from nothing. @param name letters and digits, the first a letter */
    public static Beginning library(String name) {
        return new Beginning(template("library", name), List.of());
    }

    /**
     * A procedure, or from ranges a library, from the whole of a table. Each meaning of a code becomes a fault that shows its code; a fault
     * table becomes faults, with a step for each column that holds nothing else; a list of steps is gone through in its order.
     *
     * @param columns by the name of a part, the number of its column; see {@link TableKind#columns(Table)}
     * @throws UnusableTable where no text can be written from it, or a line of it cannot be read
     */
    public static Beginning from(TableKind kind, String name, HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        Beginning begun = switch (kind) {
            case CODES -> drafted(CodeTable.text(name, Tables.codes(table, columns).whole()));
            case FAULTS -> drafted(FaultTableText.text(name, Tables.signs(table, columns), Tables.faults(table, columns).whole()));
            case STEPS -> new Beginning(TextFormatter.format(StepListText.text(name, Tables.steps(table, columns, Interview.Meter.USUAL).whole())), List.of());
            case RANGES -> library(name, "Make and kind", Tables.ranges(table, columns).whole().stream().map(ImportedLines.Range::line).toList());
        };
        return new Beginning(begun.text(), Stream.concat(table.remarks().stream(), begun.remarks().stream()).toList());
    }

    /** A library with an instrument. @param ranges as the language writes them */
    public static Beginning library(String name, String instrument, List<String> ranges) {
        String text = template("library", name).replaceFirst("(?s)instrument HandMeter .*?\\n}\n", Matcher.quoteReplacement("instrument HandMeter "
                + NamesFromWords.quoted(instrument) + " {\n" + ranges.stream().map(range -> "    " + range + "\n").collect(Collectors.joining())
                + "}\n"));
        return new Beginning(TextFormatter.format(text), List.of());
    }

    /** Whether a procedure can have this name. */
    public static boolean isName(String name) {
        return name.matches("[A-Za-z][A-Za-z0-9]*") && NamesFromWords.isFree(name);
    }

    private static Beginning drafted(String text) throws UnusableTable {
        Document read = READER.read(new SourceText("New.procedure", text));
        TriedDraft.Draft draft = TriedDraft.of((Procedure) read, READER::read, new Checker());
        return new Beginning(draft.text().map(TextFormatter::format).orElseThrow(() -> new UnusableTable("No steps can be written from this table: "
                + String.join(" ", draft.remarks()))), draft.remarks());
    }

    private static String template(String which, String name) {
        try (InputStream template = Beginning.class.getResourceAsStream(which + ".template")) {
            if (template == null) {
                throw new IllegalStateException("the template " + which + " is missing from the class path");
            }
            return new String(template.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n").replace("{NAME}", name);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the template " + which + " cannot be read", unreadable);
        }
    }
}
