/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.language.EarlierTexts;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.Published;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.WholeFile;
import org.faultwright.publish.quality.ComparisonPage;
import org.faultwright.publish.since.SinceRelease;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "compare", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Tells what a later revision means otherwise than an earlier one, lost protection first.")
final class CompareCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "OLD", 
            description = "A text, a published tree beside its text, or a folder of texts: of a release (*.procedure.txt) or as written.")
    private Path old;

    @Parameters(index = "1", paramLabel = "NEW", description = "The text or folder of today.")
    private Path now;

    @Option(names = "--page", paramLabel = "FOLDER", description = "Also write the comparison as a page, comparison.html, into this folder.")
    private Optional<Path> page = Optional.empty();

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        EarlierRelease then = release(old);
        EarlierRelease today = release(now);
        boolean one = then.procedures().size() == 1 && today.procedures().size() == 1;
        Map<String, SinceRelease> compared = new TreeMap<>();
        for (Procedure procedure : today.procedures()) {
            Optional<Procedure> earlier = one ? Optional.of(then.procedures().get(0)) : then.of(procedure.name().text());
            earlier.ifPresent(was -> compared.put(procedure.name().text(), SinceRelease.of(was, procedure)));
        }
        List<String> fresh = today.procedures().stream().map(procedure -> procedure.name().text())
                .filter(name -> !compared.containsKey(name)).toList();
        List<String> gone = one ? List.of() : then.procedures().stream().map(procedure -> procedure.name().text())
                .filter(name -> today.of(name).isEmpty()).toList();
        compared.forEach((name, since) -> print(out, name, since));
        fresh.forEach(name -> out.println("\"" + name + "\" is new."));
        gone.forEach(name -> out.println("\"" + name + "\" is gone."));
        page.ifPresent(folder -> write(out, folder, ComparisonPage.of(compared, fresh, gone)));
        boolean same = fresh.isEmpty() && gone.isEmpty() && compared.values().stream().allMatch(since -> since.differences().isEmpty());
        return same ? Faultwright.CLEAN : Faultwright.FINDINGS;
    }

    private static EarlierRelease release(Path place) {
        try {
            return EarlierRelease.of(EarlierTexts.in(place));
        } catch (EarlierTexts.Unusable | PublishingRefused none) {
            throw new CannotProceed(none.getMessage());
        }
    }

    private static void print(PrintWriter out, String name, SinceRelease since) {
        out.println("\"" + name + "\": " + since.inShort());
        Difference.Kind kind = null;
        for (Difference difference : since.differences()) {
            if (difference.kind() != kind) {
                kind = difference.kind();
                out.println("  " + kind.title());
            }
            out.println("    " + difference);
        }
    }

    private static void write(PrintWriter out, Path folder, Published made) {
        try {
            out.println("Written: " + WholeFile.write(folder, made));
        } catch (PublishingRefused refused) {
            throw new CannotProceed(refused.getMessage());
        }
    }
}
