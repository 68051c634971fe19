/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.adding;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** Source files that are written or changed apart from the checkout, compiled against what was built, and run in place of it. */
final class ScratchCopy {
    private static final Path BUNDLES = bundles();

    private final Path sources;
    private final Path classes;
    private final Set<String> touched = new TreeSet<>();

    ScratchCopy(Path folder) throws IOException {
        sources = Files.createDirectories(folder.resolve("src"));
        classes = Files.createDirectories(folder.resolve("classes"));
    }

    /** @param path below the sources of a bundle, such as {@code org/faultwright/procedure/Step.java} */
    void write(String path, String content) throws IOException {
        Path file = sources.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, content);
        touched.add(path.substring(path.lastIndexOf('/') + 1));
    }

    /** Puts something in front of each place named; each must be there. @param changes a place, what is put there, and so on */
    void change(String path, String... changes) throws IOException {
        Path copy = sources.resolve(path);
        String text = Files.readString(Files.exists(copy) ? copy : original(path));
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(text.contains(changes[i]), path + " has \"" + changes[i] + "\"");
            text = text.replace(changes[i], changes[i + 1] + changes[i]);
        }
        write(path, text);
    }

    /** The files that were written or changed, by their names. */
    Set<String> touched() {
        return touched;
    }

    /** Compiles them, and beside them all Java files of the bundles named. @return the errors, each with the name of its file first */
    List<String> compile(String... bundles) throws IOException {
        List<Path> files = new ArrayList<>(javaIn(sources));
        Set<Path> own = new TreeSet<>(files.stream().map(sources::relativize).toList());
        for (String bundle : bundles) {
            Path from = BUNDLES.resolve(bundle).resolve("src");
            javaIn(from).stream().filter(file -> !own.contains(from.relativize(file))).forEach(files::add);
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        DiagnosticCollector<JavaFileObject> told = new DiagnosticCollector<>();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(told, Locale.ROOT, StandardCharsets.UTF_8)) {
            compiler.getTask(null, manager, told, List.of("-proc:none", "-nowarn", "-implicit:none", "-Xmaxerrs", "500", "-d", classes.toString(), "-cp", classPath(),
                    "-sourcepath", sources.toString()), null, manager.getJavaFileObjectsFromPaths(files)).call();
        }
        return told.getDiagnostics().stream().filter(one -> one.getKind() == Diagnostic.Kind.ERROR)
                .map(one -> (one.getSource() == null ? "" : Path.of(one.getSource().toUri()).getFileName()) + ": " + one.getMessage(Locale.ROOT)).toList();
    }

    /** Runs the command line with what was compiled in place of what was built. @return what it prints */
    String faultwright(String... arguments) throws ReflectiveOperationException, IOException {
        StringWriter printed = new StringWriter();
        call("org.faultwright.commandline.Faultwright", "run", new Class<?>[] {PrintWriter.class, PrintWriter.class, String[].class},
                new PrintWriter(printed), new PrintWriter(printed), arguments);
        return printed.toString();
    }

    /** Calls a static method of a class there. */
    Object call(String type, String method, Class<?>[] parameters, Object... arguments) throws ReflectiveOperationException, IOException {
        List<URL> urls = new ArrayList<>(List.of(classes.toUri().toURL(), sources.toUri().toURL()));
        Stream.of(classPath().split(File.pathSeparator)).map(entry -> url(Path.of(entry))).forEach(urls::add);
        Thread thread = Thread.currentThread();
        ClassLoader before = thread.getContextClassLoader();
        try (URLClassLoader loader = new URLClassLoader(urls.toArray(URL[]::new), ClassLoader.getPlatformClassLoader())) {
            thread.setContextClassLoader(loader);
            return loader.loadClass(type).getMethod(method, parameters).invoke(null, arguments);
        } finally {
            thread.setContextClassLoader(before);
        }
    }

    private static URL url(Path entry) {
        try {
            return entry.toUri().toURL();
        } catch (MalformedURLException never) {
            throw new UncheckedIOException(never);
        }
    }

    private static String classPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    }

    /** A file of the checkout. */
    static Path original(String path) throws IOException {
        try (Stream<Path> bundles = Files.list(BUNDLES)) {
            return bundles.filter(bundle -> !bundle.getFileName().toString().endsWith(".tests")).map(bundle -> bundle.resolve("src").resolve(path))
                    .filter(Files::exists).findFirst().orElseThrow(() -> new AssertionError("there is no " + path));
        }
    }

    static Path bundles() {
        Path folder = Path.of("").toAbsolutePath();
        while (folder != null && !Files.isDirectory(folder.resolve("bundles"))) {
            folder = folder.getParent();
        }
        assertTrue(folder != null, "the tests run inside the checkout");
        return folder.resolve("bundles");
    }

    private static List<Path> javaIn(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(".java")).sorted().toList();
        }
    }
}
