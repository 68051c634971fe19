/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;

/**
 * Lays out the command line's own folder: {@code lib} with the jars it needs, {@code bin} with its start scripts, and in
 * {@code lib} the list of classes from which a class-data archive is made, so that the next start reads them ready-parsed.
 * Run by the build as a single source file: jars, scripts, procedures to train on, folder to make.
 */
class AssembleCommandLine {
    private static final String MAIN = "org.faultwright.commandline.Faultwright";

    private final Path target;
    private final Path lib;

    private AssembleCommandLine(Path target) {
        this.target = target;
        this.lib = target.resolve("lib");
    }

    public static void main(String[] arguments) throws Exception {
        var assembly = new AssembleCommandLine(Path.of(arguments[3]).toAbsolutePath().normalize());
        delete(assembly.target);
        assembly.layOut(Path.of(arguments[0]), Path.of(arguments[1]));
        assembly.checkThatNothingIsMissing();
        assembly.listClasses(Path.of(arguments[2]));
        assembly.makeArchive();
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private void layOut(Path jars, Path scripts) throws Exception {
        Files.createDirectories(lib);
        Files.createDirectories(target.resolve("bin"));
        MessageDigest build = MessageDigest.getInstance("SHA-256");
        List<String> names = new ArrayList<>();
        for (Path jar : sorted(jars, ".jar")) {
            copyWithoutSignature(jar, lib.resolve(jar.getFileName()));
            build.update(Files.readAllBytes(lib.resolve(jar.getFileName())));
            names.add(jar.getFileName().toString());
        }
        writeStarter(names);
        Files.writeString(lib.resolve("build-id"), HexFormat.of().formatHex(build.digest()) + "\n");
        for (Path script : sorted(scripts, "")) {
            Path copy = target.resolve("bin").resolve(script.getFileName());
            Files.copy(script, copy);
            copy.toFile().setExecutable(true, false);
        }
    }

    /** Tests find libraries in more places than the folder that is handed out: whatever its own jars name has to be in it. */
    private void checkThatNothingIsMissing() throws IOException {
        Map<Boolean, List<String>> jars = sorted(lib, ".jar").stream().map(Path::toString)
                .collect(Collectors.partitioningBy(jar -> Path.of(jar).getFileName().toString().startsWith("org.faultwright.")));
        List<String> arguments = new ArrayList<>(List.of("--multi-release", "base", "--class-path",
                String.join(File.pathSeparator, jars.get(false)), "--missing-deps"));
        arguments.addAll(jars.get(true));
        StringWriter missing = new StringWriter();
        ToolProvider.findFirst("jdeps").orElseThrow().run(new PrintWriter(missing, true), new PrintWriter(missing, true), arguments.toArray(String[]::new));
        if (missing.toString().contains("not found")) {
            throw new IllegalStateException("The command line needs classes that no jar in " + lib
                    + " has; name their library in the pom.xml of the bundle that asks for them:\n" + missing);
        }
    }

    private static List<Path> sorted(Path folder, String ending) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }

    /** The virtual machine keeps no archived form of a class from a signed jar. */
    private static void copyWithoutSignature(Path from, Path to) throws IOException {
        try (JarFile jar = new JarFile(from.toFile(), false); JarOutputStream out = new JarOutputStream(Files.newOutputStream(to))) {
            if (jar.getManifest() != null) {
                Manifest manifest = new Manifest();
                manifest.getMainAttributes().putAll(jar.getManifest().getMainAttributes());
                write(out, JarFile.MANIFEST_NAME, manifest::write);
            }
            for (var entry : jar.stream().filter(entry -> !isSignature(entry.getName())).toList()) {
                try (InputStream content = jar.getInputStream(entry)) {
                    write(out, entry.getName(), content::transferTo);
                }
            }
        }
    }

    private static boolean isSignature(String name) {
        return name.equals(JarFile.MANIFEST_NAME) || name.matches("META-INF/[^/]+\\.(SF|RSA|DSA|EC)");
    }

    /** A jar that names the others: the same short command on every system, and one path to compare in the archive. */
    private void writeStarter(List<String> jars) throws IOException {
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, MAIN);
        manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, String.join(" ", jars));
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(lib.resolve("faultwright.jar")))) {
            write(out, JarFile.MANIFEST_NAME, manifest::write);
        }
    }

    /** One time for every entry: the same input gives the same jar, and so the same build-id. */
    private static void write(JarOutputStream out, String name, Content content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(LocalDateTime.of(2026, 1, 1, 0, 0));
        out.putNextEntry(entry);
        content.writeTo(out);
        out.closeEntry();
    }

    private void listClasses(Path procedures) throws Exception {
        Path work = Files.createTempDirectory("faultwright-classes");
        List<List<String>> commands = new ArrayList<>(List.of(List.of("--help")));
        if (Files.isDirectory(procedures)) {
            // the first one reads and checks, the second one takes up what was kept
            commands.add(List.of("check", procedures.toString()));
            commands.add(List.of("check", procedures.toString()));
            // one card loads every class that the others need too
            String first = sorted(procedures, ".procedure").get(0).toString();
            commands.add(List.of("publish", first, "--into", work.resolve("published").toString()));
        }
        Set<String> classes = new LinkedHashSet<>();
        for (List<String> command : commands) {
            Path list = work.resolve("classes-" + command.get(0).replace("-", ""));
            List<String> line = new ArrayList<>(List.of(java(), "-XX:DumpLoadedClassList=" + list, "-jar", lib.resolve("faultwright.jar").toString()));
            line.addAll(command);
            // Findings in the procedures give a non-zero exit; the classes are listed all the same.
            ProcessBuilder process = new ProcessBuilder(line);
            process.environment().put("XDG_CACHE_HOME", work.resolve("cache").toString());
            process.environment().put("XDG_STATE_HOME", work.resolve("state").toString());
            process.redirectErrorStream(true).redirectOutput(work.resolve("output").toFile()).start().waitFor();
            classes.addAll(Files.readAllLines(list));
        }
        Files.write(lib.resolve("classes"), classes, StandardCharsets.UTF_8);
        delete(work);
    }

    /** The key is compared by the start script, which makes an archive of its own where this one does not fit. */
    private void makeArchive() throws Exception {
        Path archive = lib.resolve("faultwright.jsa");
        int exit = new ProcessBuilder(java(), "-XX:+UseSerialGC", "-Xlog:disable", "-Xshare:dump",
                "-XX:SharedClassListFile=" + lib.resolve("classes"), "-XX:SharedArchiveFile=" + archive,
                "-jar", lib.resolve("faultwright.jar").toString()).inheritIO().start().waitFor();
        if (exit != 0) {
            System.out.println("This Java makes no class-data archive: the command line will start a little later.");
            return;
        }
        Path home = Path.of(System.getProperty("java.home")).toRealPath();
        Files.writeString(lib.resolve("faultwright.jsa.key"), Files.readString(lib.resolve("build-id"))
                + lib + "\n" + home + "\n" + Files.readString(home.resolve("release")).stripTrailing() + " " + Files.size(archive) + "\n");
    }

    private static String java() {
        return Path.of(System.getProperty("java.home"), "bin", "java").toString();
    }

    private interface Content {
        void writeTo(OutputStream stream) throws IOException;
    }
}
