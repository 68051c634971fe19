/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.SheetChange;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

class FaultTableServicesTest {
    private static final Path DEMO = Path.of("..", "..", "procedures-demo");

    private final EditingServices services = new EditingServices();

    private OpenText open(String file) throws IOException {
        Path path = DEMO.resolve(file).toAbsolutePath().normalize();
        return services.update(path.toString(), Files.readString(path));
    }

    @Test
    void should_make_the_same_table_before_and_after_every_rule_has_run() throws IOException {
        OpenText text = open("LundavikTillDrawer.procedure");
        FaultSheet quick = services.faultSheet(text).orElseThrow();
        FaultSheet full = services.faultSheet(services.withEveryRule(text)).orElseThrow();

        assertEquals(quick.rows().stream().map(FaultSheet.Row::name).toList(), full.rows().stream().map(FaultSheet.Row::name).toList());
        quick.rows().forEach(row -> quick.columns().forEach(column -> assertEquals(quick.cell(row.name(), column.name()), full.cell(row.name(), column.name()))));
        assertTrue(services.faultSheet(open("library/HarbourBench.procedure")).isEmpty());
    }

    @Test
    void should_let_a_table_grow_that_is_not_finished_and_nothing_that_cannot_be_read() throws IOException {
        OpenText text = open("LundavikTillDrawer.procedure");
        SheetChange change = new SheetChange(services.faultSheet(text).orElseThrow());
        change.shows(change.addFault("New"), change.addStep("Is it warm?"), "yes");
        assertEquals(Optional.empty(), services.against(text, change.fix("Add").orElseThrow()));

        Procedure procedure = (Procedure) text.document();
        SourceRange shown = procedure.faults().get(0).shows().get(0).at();
        assertTrue(services.against(text, Fix.replacing("x", shown, "SeeIt } {")).isPresent());
        assertTrue(services.against(text, Fix.replacing("x", shown, "SeeIt gone")).orElseThrow().contains("gone"));
    }

    @Test
    void should_propose_a_better_order_and_a_draft_with_the_change_that_brings_it() throws IOException {
        OpenText text = open("LundavikTillDrawer.procedure");
        ProposedChange order = services.betterOrder(text);
        assertTrue(order.outcome().endsWith("12.3 min saved.") && order.reasons().get(1).startsWith("  KeyLook first settles 45 %"), order.outcome() + order.reasons());
        assertTrue(order.change().orElseThrow().applied().contains("stays -> KeyLook"));
        assertTrue(services.draft((Procedure) text.document()).reasons().get(0).startsWith("The steps are all there"));

        OpenText faults = services.readQuickly(new SourceText("Dim.procedure", "procedure Dim \"Dim\"\n// kept\nfault A \"A\" { shows Look dusty remedy Wipe }\n"
                + "fault B \"B\" { shows Look clean remedy Fit }\n"));
        ProposedChange draft = services.draft((Procedure) faults.document());
        assertTrue(draft.outcome().contains("without an error. By the times that are stated, a case takes"), draft.outcome());
        String after = draft.change().orElseThrow().applied();
        assertTrue(after.contains("// kept") && after.contains("check Look"), after);
    }
}
