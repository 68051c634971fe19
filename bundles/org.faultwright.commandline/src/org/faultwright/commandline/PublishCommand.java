/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.language.EarlierTexts;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.Export;
import org.faultwright.publish.LibraryExport;
import org.faultwright.publish.ProcedureExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.ProcedureFolder.CheckedLibrary;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.WholeFile;
import org.faultwright.publish.exports.Exports;
import org.faultwright.publish.exports.FolderForms;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "publish", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Writes bench cards, trees and reports into a folder.")
final class PublishCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders with files ending in .procedure.")
    private List<Path> named;

    @Option(names = "--into", paramLabel = "FOLDER", required = true,
            description = "Where to write; made where it is missing.")
    private Path folder;

    @Option(names = "--as", paramLabel = "FORM", split = ",", completionCandidates = FormNames.class,
            description = "Which forms to write: ${COMPLETION-CANDIDATES} (default: all of them).")
    private List<String> forms = List.of();

    @Option(names = "--drafts",
            description = "Also print procedures with errors, marked DRAFT on every page with their open findings.")
    private boolean drafts;

    @Option(names = "--since", paramLabel = "FOLDER",
            description = "Where the last release was published (its texts, *.procedure.txt), or a folder of earlier texts: the quality report tells what changed, and the index leads to comparison.html, where each change stands.")
    private Optional<Path> since = Optional.empty();

    @Option(names = "--as-of", paramLabel = "DATE",
            description = "The day, such as 2026-05-01, that calibration and the age of sources are held against.")
    private Optional<LocalDate> asOf = Optional.empty();

    @Option(names = "--source-age", paramLabel = "MONTHS", defaultValue = "60",
            description = "Sources older than this on that day are listed in the quality report (default: ${DEFAULT-VALUE}).")
    private int sourceAge;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        if (sourceAge < 1) {
            throw new ParameterException(spec.commandLine(), "--source-age is " + sourceAge + "; give a number of months from 1 on.");
        }
        List<Export> wanted = wanted();
        PrintWriter out = spec.commandLine().getOut();
        List<Path> files = ProcedureFiles.below(named);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new CannotProceed(folder + " is a file, not a folder; name another one after --into.");
        }
        Optional<EarlierRelease> release = release();
        PublicationWriter told = new PublicationWriter(files.size(), out);
        FileChecker checking = new FileChecker(asOf);
        FullCheck check = new FullCheck(asOf);
        ParallelFiles.each(files, file -> made(file, checking, check, wanted), told::tell);
        List<Publication> publications = told.publications;
        Set<String> taken = told.taken;
        if (!publications.isEmpty()) {
            tell(writeLibraries(wanted, publications, taken), out);
            tell(writeCollection(wanted, new ProcedureFolder(title(publications), publications, Set.copyOf(taken),
                    told.libraries, release.map(last -> of(last, publications)), asOf, sourceAge).without(told.leftOut, new ProcedureFolder.Imprint(Version.called(), Version.today())), taken), out);
        }
        out.println(Phrases.counted(taken.size(), "file", "files") + " written into "
                + folder.toAbsolutePath().normalize() + ".");
        return told.refused == 0 ? Faultwright.CLEAN : Faultwright.FINDINGS;
    }

    /** Read before anything is written, since the new files may replace the old ones. */
    private Optional<EarlierRelease> release() {
        try {
            return since.isPresent() ? Optional.of(EarlierRelease.of(EarlierTexts.in(since.get()), since.get().toString())) : Optional.empty();
        } catch (EarlierTexts.Unusable | PublishingRefused problem) {
            throw new CannotProceed(problem.getMessage());
        }
    }

    /** Who names files alone is told of these; only of a folder it can be said what has gone. */
    private EarlierRelease of(EarlierRelease last, List<Publication> publications) {
        boolean whole = named.stream().anyMatch(Files::isDirectory);
        return whole ? last : last.only(publications.stream().map(Publication::procedure).toList());
    }

    private List<Export> wanted() {
        for (String form : forms) {
            if (Exports.named(form).isEmpty()) {
                throw new ParameterException(spec.commandLine(),
                        "There is no form \"" + form + "\"; choose from " + String.join(", ", new FormNames()) + ".");
            }
        }
        return Exports.all().stream().filter(export -> forms.isEmpty() || forms.contains(export.name())).toList();
    }

    /** What one file is made into; by any thread. */
    private record MadeForms(String name, Optional<CheckedLibrary> library, Optional<Publication> publication, List<PublishedFiles> forms, Optional<PublishingRefused> refused) {
    }

    private MadeForms made(Path file, FileChecker checking, FullCheck check, List<Export> wanted) {
        Document document = checking.read(file);
        String name = String.valueOf(document.name());
        if (!(document instanceof Procedure procedure)) {
            return new MadeForms(name, document instanceof Library library ? Optional.of(new CheckedLibrary(library, check.of(library))) : Optional.empty(),
                    Optional.empty(), List.of(), Optional.empty());
        }
        try {
            Publication publication = Publication.of(check.check(procedure), drafts ? Drafts.ALLOWED : Drafts.REFUSED);
            List<PublishedFiles> forms = wanted.stream().filter(ProcedureExport.class::isInstance)
                    .map(export -> ((ProcedureExport) export).publish(publication)).toList();
            return new MadeForms(name, Optional.empty(), Optional.of(publication), forms, Optional.empty());
        } catch (PublishingRefused problem) {
            return new MadeForms(name, Optional.empty(), Optional.empty(), List.of(), Optional.of(problem));
        }
    }

    /** Writes what was made, file by file, and says so. */
    private final class PublicationWriter {
        private final int files;
        private final PrintWriter out;
        private final List<Publication> publications = new ArrayList<>();
        private final List<CheckedLibrary> libraries = new ArrayList<>();
        private final List<ProcedureFolder.LeftOut> leftOut = new ArrayList<>();
        private final Set<String> taken = new TreeSet<>();
        private int number;
        private int refused;

        PublicationWriter(int files, PrintWriter out) {
            this.files = files;
            this.out = out;
        }

        void tell(MadeForms made) {
            number++;
            made.library().ifPresent(libraries::add);
            try {
                if (made.refused().isPresent()) {
                    throw made.refused().get();
                }
                if (made.publication().isPresent()) {
                    List<Path> written = writeAll(made.forms(), taken, made.publication().get().procedure().source().name());
                    publications.add(made.publication().get());
                    // with forms of the whole folder alone a procedure has no file of its own
                    out.printf("%d of %d  %s%s%n", number, files, made.name(), written.isEmpty() ? "" : ": " + names(written));
                }
            } catch (PublishingRefused problem) {
                refused++;
                problem.leftOut().ifPresent(leftOut::add);
                spec.commandLine().getErr().println("faultwright: " + problem.getMessage());
            }
            out.flush();
        }
    }

    /** Each library once, however many procedures use it. */
    private List<Path> writeLibraries(List<Export> wanted, List<Publication> publications, Set<String> taken) {
        Map<String, Library> libraries = new TreeMap<>();
        publications.forEach(one -> one.procedure().libraries().forEach(library ->
                libraries.putIfAbsent(library.name().text(), library)));
        List<PublishedFiles> made = new ArrayList<>();
        for (Export export : wanted) {
            if (export instanceof LibraryExport each) {
                libraries.values().forEach(library -> made.add(each.publish(library)));
            }
        }
        try {
            return writeAll(made, taken, "a library");
        } catch (PublishingRefused problem) {
            throw new CannotProceed(problem.getMessage());
        }
    }

    private List<Path> writeCollection(List<Export> wanted, ProcedureFolder collection, Set<String> taken) {
        try {
            return writeAll(FolderForms.of(collection, wanted, page -> page), taken, "the collection");
        } catch (PublishingRefused problem) {
            throw new CannotProceed(problem.getMessage());
        }
    }

    private List<Path> writeAll(List<PublishedFiles> made, Set<String> taken, String of) throws PublishingRefused {
        for (PublishedFiles one : made) {
            if (taken.contains(one.fileName())) {
                throw new PublishingRefused(of + " would overwrite " + one.fileName()
                        + ", written for another procedure of the same name: rename one of them.");
            }
        }
        List<Path> written = new ArrayList<>();
        for (PublishedFiles one : made) {
            written.add(WholeFile.write(folder, one));
            taken.add(one.fileName());
        }
        return written;
    }

    /** What the library that they all use is called; else the folder that was named, or in which the first of the files lies. */
    private String title(List<Publication> publications) {
        List<String> shared = publications.get(0).procedure().libraries().stream()
                .filter(library -> !library.title().isBlank() && !library.own().instruments().isEmpty()
                        && publications.stream().allMatch(one -> one.procedure().uses().stream()
                                .anyMatch(used -> used.text().equals(library.name().text()))))
                .map(Library::title).toList();
        if (shared.size() == 1) {
            return shared.get(0);
        }
        Path first = named.get(0).toAbsolutePath().normalize();
        Path folder = Files.isDirectory(first) ? first : first.getParent();
        return folder == null || folder.getFileName() == null ? "Procedures" : folder.getFileName().toString();
    }

    private static void tell(List<Path> written, PrintWriter out) {
        if (!written.isEmpty()) {
            out.println(names(written));
        }
    }

    private static String names(List<Path> written) {
        return written.stream().map(path -> path.getFileName().toString()).collect(Collectors.joining(", "));
    }

    /** The names of the exports there are. */
    static final class FormNames extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        FormNames() {
            super(Exports.all().stream().map(Export::name).toList());
        }
    }
}
