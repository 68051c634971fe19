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
import java.util.Optional;
import org.faultwright.analysis.Checker;
import org.faultwright.analysis.faults.TriedDraft;
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
    private static final ProcedureReader READER = new ProcedureReader((library, fromFile) -> Optional.empty());

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
     * A procedure that reads an indicator, from a table with the columns {@code code} and {@code meaning}: each meaning
     * becomes a fault that shows its code.
     *
     * @param table the bytes of a file of comma-, semicolon- or tab-separated values
     * @throws UnusableTable where no text can be written from it
     */
    public static Beginning fromCodes(String name, byte[] table) throws UnusableTable {
        return drafted(CodeTable.text(name, Table.read(table)));
    }

    /**
     * A procedure from a fault table: a column {@code fault}, perhaps {@code cases} and {@code remedy}, and a column for
     * each step with what it shows.
     *
     * @param table the bytes of a file of comma-, semicolon- or tab-separated values
     * @throws UnusableTable where no text can be written from it
     */
    public static Beginning fromFaults(String name, byte[] table) throws UnusableTable {
        return drafted(FaultTableText.text(name, Table.read(table)));
    }

    /** Whether a procedure can have this name. */
    public static boolean isName(String name) {
        return name.matches("[A-Za-z][A-Za-z0-9]*") && Names.isFree(name);
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
