/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.card.CardInHand;
import org.faultwright.publish.card.CardPages;
import org.faultwright.publish.card.CardPdf;
import org.faultwright.publish.plan.CardPlan;

/** Prints the processor time of a bench card as PDF: of long procedures the first one, with its check; warm, over the procedures of the demo, and what of it its arrangement takes. */
public final class CardBenchmark {
    private static final int ROUNDS = 13;
    private static final int COUNTED = 7;

    private CardBenchmark() {
    }

    public static void main(String[] arguments) throws IOException, PublishingRefused {
        List<CheckedProcedure> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("procedures-demo"))) {
            for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).sorted().toList()) {
                Procedure procedure = (Procedure) ProcedureReader.overFiles().read(file);
                all.add(new FullCheck(Optional.empty()).check(procedure));
            }
        }
        for (int steps : new int[] {40, 400, 2_000}) {
            made(steps);
        }
        report("a bench card as PDF", all, publication -> new CardPdf().publish(publication));
        report("of it, where each step stands", all, CardPlan::new);
    }

    /** From the text that was read to the pages: first as the window shows them, which waits for no rule, then every rule and the PDF. */
    private static void made(int steps) throws IOException, PublishingRefused {
        Path folder = Files.createTempDirectory("faultwright-card");
        try {
            Files.writeString(folder.resolve("MadeBench.procedure"), MadeProcedures.library());
            Path file = Files.writeString(folder.resolve("Made.procedure"), MadeProcedures.procedure("Made", steps, 1));
            Procedure procedure = (Procedure) ProcedureReader.overFiles().read(file);
            ThreadMXBean clock = ManagementFactory.getThreadMXBean();
            long start = clock.getCurrentThreadCpuTime();
            FullCheck check = new FullCheck(Optional.empty());
            new CardInHand().of(Publication.of(check.soFar(procedure, List.of()), Drafts.ALLOWED)).close();
            long looked = clock.getCurrentThreadCpuTime();
            CheckedProcedure checked = check.check(procedure);
            long middle = clock.getCurrentThreadCpuTime();
            try (CardPages pages = CardPages.open(new CardPdf().publish(Publication.of(checked, Drafts.ALLOWED)).bytes())) {
                System.out.printf(Locale.ROOT, "the first card of %d steps, %d pages: shown after %.1f s, every rule %.1f s, the PDF %.1f s of processor time, in %d MB at most%n", steps,
                        pages.count(), (looked - start) / 1e9, (middle - looked) / 1e9, (clock.getCurrentThreadCpuTime() - middle) / 1e9, Runtime.getRuntime().maxMemory() >> 20);
            }
        } finally {
            for (String name : List.of("Made.procedure", "MadeBench.procedure")) {
                Files.deleteIfExists(folder.resolve(name));
            }
            Files.delete(folder);
        }
    }

    /** Each time from a publication of its own, which keeps where its steps stand. */
    private static void report(String what, List<CheckedProcedure> all, Consumer<Publication> work) throws PublishingRefused {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        long[] times = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = clock.getCurrentThreadCpuTime();
            for (CheckedProcedure checked : all) {
                work.accept(Publication.of(checked, Drafts.ALLOWED));
            }
            times[round] = (clock.getCurrentThreadCpuTime() - start) / all.size();
        }
        long[] warm = Arrays.copyOfRange(times, ROUNDS - COUNTED, ROUNDS);
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT, "%s: middle %.1f ms, %.1f to %.1f ms of processor time%n", what, warm[COUNTED / 2] / 1e6,
                warm[0] / 1e6, warm[COUNTED - 1] / 1e6);
    }
}
