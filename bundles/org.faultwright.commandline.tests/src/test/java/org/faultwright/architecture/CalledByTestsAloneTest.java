/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.invoke.MethodType;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What main code offers to others and only tests ask for is no capability: it goes, or gets its use. Below the workbench this is read in the class files;
 * the workbench and the studies beside the bundles are not on the class path of this test, and count as users by every word in their sources.
 */
class CalledByTestsAloneTest {
    /** Each with what it is for all the same. */
    private static final Map<String, String> KEPT = Map.of(
            "ProcedureRuntimeModule.bindISyntaxErrorMessageProvider", "Xtext finds it by its name",
            "ProcedureStandaloneSetup.doSetup", "the set-up that Xtext asks every language for",
            "BenchPage.recordSchema", "what saved records promise, for whoever reads them",
            "TreeJson.schema", "what published trees promise, for whoever reads them",
            "Units.ofUcum", "published lists of codes are read by it",
            "Dominators.isReached", "told of each node by the library that it is held against",
            "BenchStates.countsRepeats", "walks are held against states only where bounds were kept",
            "CheckedProcedure.inLibraries", "which findings of a publication stand in other texts",
            "TimeStudy.anyPath", "what stands behind the time of a procedure without faults");

    private final Map<String, byte[]> classes = new TreeMap<>();
    private final Map<String, Set<String>> callers = new HashMap<>();

    @Test
    void should_offer_nothing_that_only_tests_ask_for() throws IOException, ClassNotFoundException {
        for (String entry : System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")).split(Pattern.quote(java.io.File.pathSeparator))) {
            if (entry.contains("org.faultwright.") && !entry.contains(".tests")) {
                addClasses(Path.of(entry));
            }
        }
        assertTrue(classes.size() > 1000, "only " + classes.size() + " classes were found");
        for (Map.Entry<String, byte[]> user : classes.entrySet()) {
            for (MethodCalls.Call call : MethodCalls.in(user.getValue())) {
                callers.computeIfAbsent(call.name() + call.type(), any -> new HashSet<>()).add(call.owner());
            }
        }
        Set<String> elsewhere = ArchitectureTest.studiesAndWorkbench().stream().flatMap(file -> Pattern.compile("\\w+").matcher(ArchitectureTest.text(file)).results())
                .map(MatchResult::group).collect(Collectors.toSet());
        Set<String> written = ArchitectureTest.mainSources().stream().map(file -> file.getFileName().toString().replace(".java", "")).collect(Collectors.toSet());

        Set<String> alone = new TreeSet<>();
        int read = 0;
        for (String name : classes.keySet()) {
            String simple = name.substring(name.lastIndexOf('.') + 1);
            if (written.contains(simple.replaceAll("\\$.*", ""))) {
                Class<?> one = Class.forName(name, false, getClass().getClassLoader());
                for (Method method : one.getDeclaredMethods()) {
                    read++;
                    if (isOffered(method) && !elsewhere.contains(method.getName()) && !isCalled(method)) {
                        alone.add(simple.replace('$', '.') + "." + method.getName());
                    }
                }
            }
        }
        assertTrue(read > 3000, "only " + read + " methods were read");
        assertEquals(new TreeSet<>(KEPT.keySet()), alone);
    }

    private void addClasses(Path place) throws IOException {
        if (Files.isDirectory(place)) {
            addFolder(place);
        } else if (Files.exists(place)) {
            try (FileSystem archive = FileSystems.newFileSystem(place)) {
                addFolder(archive.getPath("/"));
            }
        }
    }

    private void addFolder(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(one -> one.toString().endsWith(".class") && one.toString().contains("org/faultwright/")).toList()) {
                String name = folder.relativize(file).toString().replace('/', '.').replaceAll("\\.class$", "");
                classes.putIfAbsent(name, Files.readAllBytes(file));
            }
        }
    }

    /** Whether it is there to be called by its name: not the accessor of a record, and not what somebody else asks every such class for. */
    private static boolean isOffered(Method method) {
        Class<?> owner = method.getDeclaringClass();
        boolean accessor = owner.isRecord() && Arrays.stream(owner.getRecordComponents()).map(RecordComponent::getAccessor).anyMatch(method::equals);
        boolean ofEnum = owner.isEnum() && Set.of("values", "valueOf").contains(method.getName());
        boolean begins = method.getName().equals("main") && Modifier.isStatic(method.getModifiers());
        return Modifier.isPublic(method.getModifiers()) && !method.isSynthetic() && !accessor && !ofEnum && !begins && !overrides(method, owner);
    }

    private static boolean overrides(Method method, Class<?> below) {
        for (Class<?> above : above(below)) {
            boolean same = Arrays.stream(above.getDeclaredMethods()).anyMatch(one -> one.getName().equals(method.getName())
                    && one.getParameterCount() == method.getParameterCount() && !Modifier.isPrivate(one.getModifiers()) && !Modifier.isStatic(one.getModifiers()));
            if (same || overrides(method, above)) {
                return true;
            }
        }
        return false;
    }

    private static List<Class<?>> above(Class<?> one) {
        return Stream.concat(Stream.ofNullable(one.getSuperclass()), Arrays.stream(one.getInterfaces())).toList();
    }

    /** By its own class, by one above or by one below it. */
    private boolean isCalled(Method method) throws ClassNotFoundException {
        String type = MethodType.methodType(method.getReturnType(), method.getParameterTypes()).toMethodDescriptorString();
        for (String owner : callers.getOrDefault(method.getName() + type, Set.of())) {
            if (classes.containsKey(owner)) {
                Class<?> asked = Class.forName(owner, false, getClass().getClassLoader());
                if (asked.isAssignableFrom(method.getDeclaringClass()) || method.getDeclaringClass().isAssignableFrom(asked)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void should_read_the_calls_of_a_class_file() throws IOException {
        byte[] own;
        try (var in = getClass().getResourceAsStream("MethodCalls.class")) {
            own = in.readAllBytes();
        }
        List<MethodCalls.Call> calls = MethodCalls.in(own);

        assertTrue(calls.contains(new MethodCalls.Call("java.io.DataInputStream", "readUnsignedShort", "()I")), calls.toString());
        assertTrue(calls.contains(new MethodCalls.Call("java.util.List", "add", "(Ljava/lang/Object;)Z")), calls.toString());
        assertThrows(IOException.class, () -> MethodCalls.in(new byte[] { 1, 2, 3, 4 }));
        assertThrows(IOException.class, () -> MethodCalls.in(new byte[0]));
        assertThrows(IOException.class, () -> MethodCalls.in(Arrays.copyOf(own, own.length / 9)));
    }
}
