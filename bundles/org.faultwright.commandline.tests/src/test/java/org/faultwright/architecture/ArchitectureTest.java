/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.Manifest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The arrows between bundles and the few things that must not occur in their sources. */
class ArchitectureTest {
    private static final String OWN = "org.faultwright.";

    /** Each bundle and those of our own that it may require. */
    private static final Map<String, Set<String>> ALLOWED = Map.of(
            "quantity", Set.of(),
            "procedure", Set.of("quantity"),
            "analysis", Set.of("quantity", "procedure"),
            "publish", Set.of("quantity", "procedure", "analysis"),
            "language", Set.of("quantity", "procedure", "analysis"),
            "language.server", Set.of("quantity", "procedure", "analysis", "language"),
            "commandline", Set.of("quantity", "procedure", "analysis", "publish", "language", "language.server"),
            "workbench", Set.of("quantity", "procedure", "analysis", "publish", "language", "language.server"));

    private static final Set<String> PLAIN = Set.of("quantity", "procedure", "analysis", "publish");
    private static final Path BUNDLES = bundles();

    @Test
    void should_require_only_bundles_below() throws IOException {
        Map<String, Set<String>> required = new TreeMap<>();
        try (Stream<Path> folders = Files.list(BUNDLES)) {
            for (Path folder : folders.filter(f -> Files.exists(f.resolve("META-INF/MANIFEST.MF"))).toList()) {
                required.put(folder.getFileName().toString(), ownBundlesRequiredBy(folder));
            }
        }
        required.remove(OWN + "workbench.tests");

        assertEquals(names(ALLOWED.keySet()), required.keySet(), "every bundle has a row in the table of arrows");
        required.forEach((bundle, uses) -> {
            Set<String> allowed = names(ALLOWED.get(bundle.substring(OWN.length())));
            assertTrue(allowed.containsAll(uses), bundle + " requires " + uses + " but may require " + allowed);
        });
    }

    @Test
    void should_keep_windows_out_of_everything_below_the_workbench() {
        Set<String> below = new TreeSet<>(ALLOWED.keySet());
        below.remove("workbench");

        int read = noSourceMatches(below, "import (static )?org\\.eclipse\\.(swt|jface|ui)\\.");

        assertTrue(read > 100, "only " + read + " source files were read");
    }

    @Test
    void should_keep_the_language_tools_out_of_plain_bundles() {
        int read = noSourceMatches(PLAIN,
                "import (static )?(org\\.eclipse\\.(?!elk\\.)|org\\.antlr\\.|com\\.google\\.inject|org\\.osgi\\.)");

        assertTrue(read > 80, "only " + read + " source files were read");
    }

    @Test
    void should_ask_the_layout_library_in_one_place() {
        List<String> asking = sources(ALLOWED.keySet()).stream().filter(file -> text(file).contains("import org.eclipse.elk."))
                .map(file -> file.getFileName().toString()).toList();

        assertEquals(List.of("LayeredPlaces.java"), asking);
    }

    @Test
    void should_have_no_packages_in_a_circle() {
        Pattern own = Pattern.compile("^(package|import(?: static)?) (org\\.faultwright(?:\\.[a-z]\\w*)*)", Pattern.MULTILINE);
        Map<String, Set<String>> uses = new TreeMap<>();
        for (Path file : sources(ALLOWED.keySet())) {
            Matcher names = own.matcher(text(file));
            assertTrue(names.find(), file.toString());
            Set<String> used = uses.computeIfAbsent(names.group(2), first -> new TreeSet<>());
            String here = names.group(2);
            names.results().map(one -> one.group(2)).filter(other -> !other.equals(here)).forEach(used::add);
        }
        assertTrue(uses.size() > 40, "only " + uses.keySet());
        // what uses nothing that is left is in no circle; in the end only circles are left, and what leads to them
        while (uses.values().removeIf(used -> used.stream().noneMatch(uses::containsKey))) {
            continue;
        }
        assertEquals(Map.of(), uses);
    }

    /** Also of the studies beside the bundles: somebody who reads or looks for a class meets one. */
    @Test
    void should_have_one_class_for_one_name() {
        Map<String, List<Path>> byName = mainSources().stream().collect(Collectors.groupingBy(file -> file.getFileName().toString(), TreeMap::new, Collectors.toList()));
        byName.remove("package-info.java");
        assertTrue(byName.size() > 900, "only " + byName.size() + " names were read");

        byName.values().removeIf(files -> files.size() == 1);
        assertEquals(Map.of(), byName);
    }

    @Test
    void should_never_print_stack_traces_or_leave_an_exception_unused() {
        int read = noSourceMatches(ALLOWED.keySet(), "printStackTrace|catch \\([^)]*\\) \\{\\s*\\}");

        assertTrue(read > 100, "only " + read + " source files were read");
    }

    @Test
    void should_start_every_source_with_its_licence() {
        int read = 0;
        for (Path file : sources(ALLOWED.keySet())) {
            assertTrue(text(file).startsWith("/*\n * Copyright (c) 2026 The Faultwright contributors\n"
                    + " * SPDX-License-Identifier: EPL-2.0\n */\n"), file.toString());
            read++;
        }
        assertTrue(read > 100, "only " + read + " source files were read");
    }

    private static int noSourceMatches(Set<String> bundles, String forbidden) {
        Pattern pattern = Pattern.compile(forbidden);
        List<String> hits = new ArrayList<>();
        List<Path> files = sources(bundles);
        for (Path file : files) {
            Matcher matcher = pattern.matcher(text(file));
            if (matcher.find()) {
                hits.add(BUNDLES.relativize(file) + ": " + matcher.group());
            }
        }
        assertEquals(List.of(), hits);
        return files.size();
    }

    /** Of all bundles, and of the studies in releng. */
    static List<Path> mainSources() {
        List<Path> found = new ArrayList<>(sources(ALLOWED.keySet()));
        addStudies(found);
        return found;
    }

    static List<Path> studiesAndWorkbench() {
        List<Path> found = new ArrayList<>(sources(Set.of("workbench")));
        addStudies(found);
        return found;
    }

    private static void addStudies(List<Path> found) {
        for (String study : List.of("benchmarks", "mutations")) {
            addSources(BUNDLES.resolveSibling("releng").resolve(OWN + study).resolve("src"), found);
        }
    }

    private static List<Path> sources(Set<String> bundles) {
        List<Path> found = new ArrayList<>();
        for (String bundle : new TreeSet<>(bundles)) {
            addSources(BUNDLES.resolve(OWN + bundle).resolve("src"), found);
        }
        return found;
    }

    private static void addSources(Path folder, List<Path> found) {
        if (Files.isDirectory(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(file -> file.toString().endsWith(".java")).sorted().forEach(found::add);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
    }

    private static Set<String> ownBundlesRequiredBy(Path folder) throws IOException {
        try (InputStream in = Files.newInputStream(folder.resolve("META-INF/MANIFEST.MF"))) {
            String required = new Manifest(in).getMainAttributes().getValue("Require-Bundle");
            Set<String> own = new TreeSet<>();
            Matcher names = Pattern.compile("(?:^|,)\\s*(org\\.faultwright\\.[a-z.]+)")
                    .matcher(required == null ? "" : required);
            while (names.find()) {
                own.add(names.group(1));
            }
            return own;
        }
    }

    private static Set<String> names(Set<String> shortNames) {
        Set<String> whole = new TreeSet<>();
        shortNames.forEach(name -> whole.add(OWN + name));
        return whole;
    }

    static String text(Path file) {
        try {
            return Files.readString(file).replace("\r\n", "\n");
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Path bundles() {
        Path folder = Path.of("").toAbsolutePath();
        while (folder != null && !Files.isDirectory(folder.resolve("bundles"))) {
            folder = folder.getParent();
        }
        assertTrue(folder != null, "the tests run inside the checkout");
        return folder.resolve("bundles");
    }
}
