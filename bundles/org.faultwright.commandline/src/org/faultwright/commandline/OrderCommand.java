/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.OrderStudy;
import org.faultwright.analysis.rules.BetterOrder;
import org.faultwright.procedure.Procedure;
import org.faultwright.quantity.Exact;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "order", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Holds the order of the steps against the best one by the fault table and the times.")
final class OrderCommand implements Callable<Integer> {
    private static final int MOST_REASONS = 12;
    private static final Exact SECONDS_IN_A_MINUTE = Exact.of(60);

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--write", description = "Change the text to the better order; comments stay.")
    private boolean write;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        Checking checking = new Checking(Optional.empty());
        boolean found = false;
        int procedures = 0;
        for (Path file : ProcedureFiles.below(named)) {
            if (checking.read(file) instanceof Procedure procedure) {
                procedures++;
                if (procedure.problems().isEmpty()) {
                    found |= study(file, procedure, out);
                    out.flush();
                } else {
                    found = true;
                    spec.commandLine().getErr().println("faultwright: " + file + " is not studied, because it has words that cannot be read, the first in line "
                            + procedure.problems().get(0).at().line() + "; see faultwright check.");
                }
            }
        }
        if (procedures == 0) {
            throw new CannotProceed("There are only libraries in " + named.stream().map(Path::toString).collect(Collectors.joining(", "))
                    + "; an order is that of a procedure.");
        }
        return found ? Faultwright.FINDINGS : Faultwright.CLEAN;
    }

    /** @return whether there is a better order that has not been written */
    private boolean study(Path file, Procedure procedure, PrintWriter out) {
        Subject subject = new Subject(procedure, Optional.empty());
        OrderStudy study = OrderStudy.in(subject).orElseThrow();
        if (study.best().isEmpty()) {
            out.println(procedure.name() + ": not studied, because " + String.join("; ", study.notStudied()) + ".");
            return false;
        }
        OrderStudy.Comparison best = study.best().get();
        Optional<OrderStudy.Verified> verified = BetterOrder.verified(subject);
        if (verified.isEmpty()) {
            out.println(procedure.name() + ": " + minutes(best.before()) + " on average; " + noneWritten(best));
            study.inTheWay().stream().limit(MOST_REASONS).forEach(reason -> out.println("  " + reason));
            return false;
        }
        OrderStudy.Comparison found = verified.get().comparison();
        out.println(procedure.name() + ": " + minutes(found.before()) + " on average, " + minutes(found.after())
                + " in the better order, " + minutes(found.saving()) + " saved.");
        found.better().lines().forEach(line -> out.println("  " + line));
        out.println("  Why:");
        found.reasons().forEach(reason -> out.println("    " + reason));
        if (!verified.get().dropped().isEmpty()) {
            out.println("  No longer needed, and taken out: " + String.join(", ", verified.get().dropped()) + ".");
        }
        found.presumed().forEach(presumed -> out.println("  It takes it that \"" + presumed + "\" shows for the faults of which the table does not say it."));
        if (!verified.get().otherEnds().isEmpty()) {
            out.println("  Where a unit has several faults at once, another of them is found first:");
            verified.get().otherEnds().stream().limit(MOST_REASONS).forEach(other -> out.println("    " + other));
            if (verified.get().otherEnds().size() > MOST_REASONS) {
                out.println("    and " + (verified.get().otherEnds().size() - MOST_REASONS) + " more");
            }
        }
        if (write) {
            Texts.replace(file, verified.get().fix().applied());
            out.println("  " + file + " changed.");
        }
        return !write;
    }

    private static String noneWritten(OrderStudy.Comparison best) {
        if (best.saving().signum() > 0) {
            return "an order with " + minutes(best.after()) + " is known, and is not proposed, because of:";
        }
        return best.isBest() ? "no better order." : "no better order was found; none has less than " + minutes(best.bound()) + ".";
    }

    private static String minutes(Exact seconds) {
        return seconds.dividedBy(SECONDS_IN_A_MINUTE).toDecimal(2).setScale(1, RoundingMode.HALF_UP).toPlainString() + " min";
    }
}
