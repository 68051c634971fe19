/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.language.EarlierTexts;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.WholeFile;
import org.faultwright.publish.quality.ComparisonPage;
import org.faultwright.publish.since.ReleaseComparison;
import org.faultwright.publish.since.SinceRelease;
import org.faultwright.publish.since.ToldDifference;
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
        ReleaseComparison comparison = ReleaseComparison.of(release(old), release(now));
        comparison.compared().stream().filter(since -> !since.differences().isEmpty() || comparison.compared().size() == 1).forEach(since -> out.println("\"" + since.now().name() + "\": "
                + since.renamedFrom().filter(name -> comparison.compared().size() > 1).map(name -> "renamed, was \"" + name + "\". ").orElse("") + since.inShort()));
        if (comparison.isOfTwoProcedures()) {
            out.println("These are two procedures rather than two revisions of one: little of their equipment, complaints and steps is the same.");
        }
        comparison.gone().forEach(title -> out.println("Gone: " + title + "."));
        comparison.fresh().forEach(title -> out.println("New, so not compared: " + title + "."));
        comparison.told().forEach((of, told) -> print(out, of, told));
        same(out, comparison);
        page.ifPresent(folder -> write(out, folder, ComparisonPage.of(comparison, name(old) + " and " + name(now), "Earlier: " + name(old) + ". Now: " + name(now)
                + ". Compared by " + Version.called() + " on " + Version.today() + ".")));
        return comparison.isSame() ? Faultwright.CLEAN : Faultwright.FINDINGS;
    }

    /** Those without a difference, and which text a tree was compared by. */
    private void same(PrintWriter out, ReleaseComparison comparison) {
        List<SinceRelease> same = comparison.compared().stream().filter(since -> since.differences().isEmpty()).toList();
        if (comparison.compared().size() > 1 && !same.isEmpty()) {
            long letters = same.stream().filter(SinceRelease::sameText).count();
            out.println("No difference in " + same.size() + " of " + comparison.compared().size() + " procedures (" + letters + " unchanged, letter by letter): "
                    + same.stream().map(since -> since.now().name().text()).collect(Collectors.joining(", ")) + ".");
        }
        if (Stream.of(old, now).anyMatch(place -> place.toString().endsWith(".tree.json"))) {
            out.println("A tree is compared by the text beside it; what stands in the tree itself was not read.");
        }
    }

    private static String name(Path place) {
        Path name = place.toAbsolutePath().normalize().getFileName();
        return name == null ? place.toString() : name.toString();
    }

    private static List<Procedure> release(Path place) {
        try {
            return EarlierRelease.of(EarlierTexts.in(place)).procedures();
        } catch (EarlierTexts.Unusable | PublishingRefused none) {
            throw new CannotProceed(none.getMessage());
        }
    }

    private static void print(PrintWriter out, String of, List<ToldDifference> told) {
        out.println(of);
        Difference.Kind kind = null;
        for (ToldDifference one : told) {
            if (one.kind() != kind) {
                kind = one.kind();
                out.println("  " + kind.title());
            }
            out.println("    " + (one.weight().isEmpty() ? "" : one.weight() + ": ") + one.sentence());
        }
    }

    private static void write(PrintWriter out, Path folder, PublishedFiles made) {
        try {
            out.println("Written: " + WholeFile.write(folder, made));
        } catch (PublishingRefused refused) {
            throw new CannotProceed(refused.getMessage());
        }
    }
}
