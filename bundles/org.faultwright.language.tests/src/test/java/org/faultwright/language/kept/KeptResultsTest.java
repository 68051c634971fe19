/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.kept;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What was found is given back where it would be found again, and nowhere else. */
@Timeout(300)
class KeptResultsTest {
    private static final String BENCH = """
            library Bench "Bench"
            instrument Meter "Meter" {
                dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
                calibrated every 1 year until 2026-11-25
            }
            point Rail "Rail" picture "rail.png" shows "where the rail is"
            """;
    private static final String USER = """
            procedure Faint "Faint labels"
            uses Bench
            revision 1 draft by "N. Sand" dated 2026-06-30
            point Own "Own" picture "own.png" shows "where it is"
            measure Supply "Supply" {
                dc voltage at Rail against Own using Meter
                expects 24 V +/- 5 %
                within -> Fine
                below -> Nowhere
            }
            conclude Fine "Fine" { report "All is well." }
            """;

    @TempDir
    private Path work;
    private Path folder;
    private Path user;

    @BeforeEach
    void aFolder() throws IOException {
        folder = Files.createDirectories(work.resolve("procedures"));
        user = write("a/Faint.procedure", USER);
        write("Bench.procedure", BENCH);
    }

    private Path write(String file, String text) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
        // two writes within one tick of the clock are told apart by size alone
        Files.setLastModifiedTime(path, FileTime.from(Instant.now().plusSeconds(ticks++)));
        return path;
    }

    private static int ticks = 1;

    /** One run of the program over one folder of kept results. */
    private final class Run {
        private final FileLibraryFinder finder = new FileLibraryFinder();
        private final ProcedureReader reader = new ProcedureReader(finder);
        private final Optional<LocalDate> today;
        private final KeptResults kept;

        Run(Optional<LocalDate> today, Path entries, Path key) {
            this.today = today;
            this.kept = KeptResults.in(KeptResultsTest.class, entries, key, "every rule", today, finder);
        }

        Run(Optional<LocalDate> today) {
            this(today, work.resolve("kept"), work.resolve("key"));
        }

        Run() {
            this(Optional.empty());
        }

        Optional<List<String>> known() throws IOException {
            return kept.of(ProcedureReader.text(user)).map(answer -> words(answer.findings()));
        }

        List<String> anew() throws IOException {
            return words(kept.anew(ProcedureReader.text(user), reader, this::found).findings());
        }

        List<Finding> found(Document document) {
            return new Checker(RuleSet.all(), today).check(document).stream()
                    .filter(finding -> finding.at().source().name().equals(document.source().name())).toList();
        }
    }

    /** All that a finding says, with its places. */
    private static List<String> words(List<Finding> findings) {
        return findings.stream().map(finding -> finding.toString() + finding.at().length() + finding.path()
                + finding.fixes().stream().map(fix -> fix.title() + fix.edits() + fix.applied()).toList()).toList();
    }

    private List<Path> entries() throws IOException {
        try (Stream<Path> all = Files.list(work.resolve("kept"))) {
            return all.filter(file -> file.toString().endsWith(".kept")).sorted().toList();
        }
    }

    @Test
    void should_give_back_what_was_found() throws IOException {
        assertTrue(new Run().known().isEmpty());
        List<String> found = new Run().anew();

        assertTrue(found.size() > 3, found.toString());
        assertTrue(found.stream().anyMatch(words -> words.contains("own.png")), found.toString());
        assertEquals(Optional.of(found), new Run().known());
    }

    @Test
    void should_give_back_that_nothing_was_found_and_the_libraries() throws IOException {
        Run run = new Run();
        SourceText text = ProcedureReader.text(user);
        run.kept.anew(text, run.reader, document -> List.of());

        KeptResults.Answer answer = new Run().kept.of(text).orElseThrow();

        assertEquals(List.of(), answer.findings());
        assertEquals(List.of(folder.resolve("Bench.procedure").toString()), answer.libraries());
    }

    @Test
    void should_find_anew_what_has_another_text() throws IOException {
        new Run().anew();

        write("a/Faint.procedure", USER.replace("24 V", "25 V"));

        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_what_was_moved_to_another_folder() throws IOException {
        new Run().anew();

        user = write("b/Faint.procedure", USER);

        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_what_uses_a_library_that_says_something_else() throws IOException {
        Run open = new Run();
        open.anew();

        write("Bench.procedure", BENCH.replace("60 V", "20 V"));

        assertTrue(new Run().known().isEmpty());
        assertTrue(open.known().isEmpty(), "within one run too");
    }

    @Test
    void should_find_anew_when_a_nearer_library_appears() throws IOException {
        new Run().anew();

        write("a/library/Bench.procedure", BENCH.replace("60 V", "20 V"));

        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_when_a_library_goes_or_comes() throws IOException {
        new Run().anew();
        Files.delete(folder.resolve("Bench.procedure"));
        assertTrue(new Run().known().isEmpty());

        List<String> without = new Run().anew();
        assertEquals(Optional.of(without), new Run().known());
        write("Bench.procedure", BENCH);
        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_when_a_library_of_a_library_changes() throws IOException {
        write("Bench.procedure", BENCH.replace("\"Bench\"\n", "\"Bench\"\n\nuses Far\n"));
        write("Far.procedure", "library Far \"Far\"\n");
        new Run().anew();
        assertTrue(new Run().known().isPresent());

        write("Far.procedure", "library Far \"Farther\"\n");

        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_when_a_picture_comes_or_is_no_picture_any_more() throws IOException {
        new Run().anew();
        byte[] png = HexFormat.of().parseHex("89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c489");
        Files.write(folder.resolve("a/own.png"), png);
        assertTrue(new Run().known().isEmpty());

        List<String> found = new Run().anew();
        assertTrue(found.stream().noneMatch(words -> words.contains("own.png\" is")), found.toString());
        assertEquals(Optional.of(found), new Run().known());
        Files.writeString(folder.resolve("a/own.png"), "no picture");
        assertTrue(new Run().known().isEmpty());
    }

    @Test
    void should_find_anew_what_was_found_in_another_way() throws IOException {
        Run run = new Run();
        run.anew();

        assertTrue(KeptResults.in(KeptResultsTest.class, work.resolve("kept"), work.resolve("key"), "quick", Optional.empty(), run.finder).of(ProcedureReader.text(user)).isEmpty());
        assertTrue(new Run(Optional.of(LocalDate.of(2026, 1, 1))).known().isEmpty());
    }

    /** The command line tries fixes, the window does not: what one of them kept is not the other's, nor that of another build of it. */
    @Test
    void should_find_anew_what_another_program_kept() throws IOException {
        Run run = new Run();
        run.anew();

        assertTrue(run.known().isPresent());
        assertTrue(KeptResults.in(Test.class, work.resolve("kept"), work.resolve("key"), "every rule", Optional.empty(), run.finder)
                .of(ProcedureReader.text(user)).isEmpty());
    }

    @Test
    void should_empty_no_file_that_a_link_in_its_folder_leads_to() throws IOException {
        Path other = Files.writeString(work.resolve("other"), "words of somebody");
        Files.createDirectories(work.resolve("kept"));
        Files.createSymbolicLink(work.resolve("kept").resolve("swept"), other);
        FileTime longAgo = FileTime.from(Instant.now().minusSeconds(1_000_000));
        Files.setLastModifiedTime(other, longAgo);
        Run run = new Run();
        run.anew();
        run.kept.sweep();

        assertEquals("words of somebody", Files.readString(other));
        assertEquals(longAgo.toMillis() / 1000, Files.getLastModifiedTime(other).toMillis() / 1000);
    }

    /** On each day about the days that the texts speak of, kept on each other: the same as is found anew, or nothing. */
    @Test
    void should_know_on_which_days_the_same_is_found() throws IOException {
        // what only follows from a name that leads nowhere would wait
        write("a/Faint.procedure", USER.replace("Nowhere", "Fine"));
        List<LocalDate> days = Stream.of("2026-06-30", "2026-11-25").map(LocalDate::parse)
                .flatMap(day -> Stream.of(-40, -2, -1, 0, 1, 2, 40).map(day::plusDays)).toList();
        int given = 0;
        for (LocalDate kept : days) {
            new Run(Optional.of(kept)).anew();
            for (LocalDate today : days) {
                Run run = new Run(Optional.of(today));
                Optional<List<String>> known = run.known();
                given += known.isPresent() ? 1 : 0;
                if (known.isPresent()) {
                    assertEquals(words(run.found(run.reader.read(user))), known.get(), "kept on " + kept + ", asked on " + today);
                }
            }
        }
        assertTrue(given > days.size() + 20, given + " of " + days.size() * days.size());
        assertNotEquals(new Run(Optional.of(LocalDate.of(2026, 11, 25))).anew(), new Run(Optional.of(LocalDate.of(2026, 11, 26))).anew());
    }

    @Test
    void should_keep_nothing_that_changed_while_it_was_checked() throws IOException {
        Run run = new Run();
        run.kept.anew(ProcedureReader.text(user), run.reader, document -> {
            try {
                write("Bench.procedure", BENCH.replace("60 V", "600 V"));
            } catch (IOException impossible) {
                throw new IllegalStateException(impossible);
            }
            return List.of();
        });

        assertTrue(new Run().known().isEmpty());
        assertTrue(Files.notExists(work.resolve("kept")));
    }

    @Test
    void should_keep_nothing_of_a_rule_that_stopped() throws IOException {
        Run run = new Run();
        SourceText text = ProcedureReader.text(user);
        run.kept.anew(text, run.reader, document -> List.of(new Finding("rule-failed", Severity.ERROR, new SourceRange(document.source(), 0, 1),
                "The rule stopped.", "Report it.", List.of(), List.of())));

        assertTrue(run.kept.of(text).isEmpty());
    }

    @Test
    void should_count_a_damaged_entry_as_none_and_make_it_anew() throws IOException {
        List<String> found = new Run().anew();
        Path entry = entries().get(0);
        byte[] whole = Files.readAllBytes(entry);
        Run run = new Run();
        for (int at = 0; at < whole.length; at++) {
            byte[] damaged = whole.clone();
            damaged[at] ^= (byte) (1 << at % 8);
            Files.write(entry, damaged);
            assertTrue(run.known().isEmpty(), "byte " + at);
        }
        for (int length = 0; length < whole.length; length++) {
            Files.write(entry, java.util.Arrays.copyOf(whole, length));
            assertTrue(run.known().isEmpty(), length + " bytes");
        }
        Files.write(entry, java.util.Arrays.copyOf(whole, whole.length + 1));
        assertTrue(run.known().isEmpty());

        assertEquals(found, run.anew());
        assertArrayEquals(whole, Files.readAllBytes(entry));
    }

    @Test
    void should_not_believe_an_entry_of_another_text() throws IOException {
        Run run = new Run();
        SourceText sound = new SourceText(user.toString(), USER.replace("Nowhere", "Fine"));
        run.kept.anew(sound, run.reader, document -> List.of());
        byte[] nothingFound = Files.readAllBytes(entries().get(0));
        run.anew();

        for (Path entry : entries()) {
            Files.write(entry, nothingFound);
        }

        assertTrue(new Run().known().isEmpty());
        assertTrue(new Run().kept.of(sound).isPresent());
    }

    /** Whoever may write into the folder of results but may not read the key cannot make a danger disappear. */
    @Test
    void should_not_believe_an_entry_that_was_sealed_with_another_key() throws IOException {
        new Run().anew();
        Path mine = entries().get(0);
        Run hostile = new Run(Optional.empty(), work.resolve("theirs"), work.resolve("their-key"));
        hostile.kept.anew(ProcedureReader.text(user), hostile.reader, document -> List.of());
        assertEquals(Optional.of(List.of()), hostile.known());

        Files.copy(work.resolve("theirs").resolve(mine.getFileName()), mine, java.nio.file.StandardCopyOption.REPLACE_EXISTING);

        assertTrue(new Run().known().isEmpty());
        assertFalse(new Run().anew().isEmpty());
    }

    @Test
    void should_keep_nothing_with_a_key_that_others_may_read_or_that_is_no_file() throws IOException {
        new Run().anew();
        Path key = work.resolve("key");
        Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r--r--"));
        assertTrue(new Run().known().isEmpty());

        Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
        assertTrue(new Run().known().isPresent());
        Files.move(key, work.resolve("elsewhere"));
        Files.createSymbolicLink(key, work.resolve("elsewhere"));
        assertTrue(new Run().known().isEmpty());
        assertFalse(new Run().anew().isEmpty());
    }

    @Test
    void should_make_a_damaged_key_anew_and_believe_nothing_of_before() throws IOException {
        new Run().anew();
        Files.write(work.resolve("key"), new byte[3]);

        assertTrue(new Run().known().isEmpty());
        List<String> found = new Run().anew();
        assertEquals(Optional.of(found), new Run().known());
        assertEquals(Secret.LENGTH, Files.size(work.resolve("key")));
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(work.resolve("key"))));
    }

    @Test
    void should_check_all_the_same_where_nothing_can_be_kept() throws IOException {
        Path file = Files.writeString(work.resolve("file"), "in the way");
        List<String> found = new Run().anew();

        Run noFolder = new Run(Optional.empty(), file, work.resolve("key"));
        assertEquals(found, noFolder.anew());
        assertTrue(noFolder.known().isEmpty());
        noFolder.kept.sweep();
        Run noKey = new Run(Optional.empty(), work.resolve("kept"), file.resolve("key"));
        assertEquals(found, noKey.anew());
        assertTrue(noKey.known().isEmpty());
    }

    @Test
    void should_serve_several_at_once() throws Exception {
        List<String> found = new Run().anew();
        List<Callable<List<String>>> work = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            boolean writes = i % 3 == 0;
            work.add(() -> writes ? new Run().anew() : new Run().known().orElseThrow());
        }
        var pool = Executors.newFixedThreadPool(6);
        try {
            for (Future<List<String>> answer : pool.invokeAll(work)) {
                assertEquals(found, answer.get());
            }
        } finally {
            pool.shutdownNow();
        }
        assertEquals(1, entries().size());
    }

    @Test
    void should_take_off_the_oldest_where_there_is_no_room_and_nothing_else() throws IOException {
        Path entries = work.resolve("full");
        KeptFolder kept = new KeptFolder(entries, new byte[32], 10_000);
        for (int i = 0; i < 40; i++) {
            byte[] key = key(i);
            kept.write(key, new byte[1_000]);
            Files.setLastModifiedTime(entries.resolve(HexFormat.of().formatHex(key) + ".kept"), FileTime.from(Instant.now().minusSeconds(1_000 - i)));
        }
        Files.setLastModifiedTime(entries.resolve(HexFormat.of().formatHex(key(39)) + ".kept"), FileTime.from(Instant.now().minusSeconds(61L * 86_400)));
        Files.writeString(entries.resolve("letter.txt"), "of somebody else");

        kept.sweep();

        List<Integer> left = Stream.iterate(0, i -> i < 40, i -> i + 1).filter(i -> kept.read(key(i)).isPresent()).toList();
        assertEquals(List.of(30, 31, 32, 33, 34, 35, 36, 37, 38), left);
        assertTrue(Files.exists(entries.resolve("letter.txt")));
    }

    private static byte[] key(int number) {
        return Seal.digest().digest(new byte[] {(byte) number});
    }

    /** RFC 4231, "Identifiers and Test Vectors for HMAC-SHA-256 ...", test cases 1, 2, 3, 6 and 7. */
    @Test
    void should_seal_as_the_standard_says() {
        assertSeal("b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7", filled(20, 0x0b), bytes("Hi There"));
        assertSeal("5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843", bytes("Jefe"), bytes("what do ya want for nothing?"));
        assertSeal("773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe", filled(20, 0xaa), filled(50, 0xdd));
        assertSeal("60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54", filled(131, 0xaa),
                bytes("Test Using Larger Than Block-Size Key - Hash Key First"));
        assertSeal("9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2", filled(131, 0xaa),
                bytes("This is a test using a larger than block-size key and a larger than block-size data. "
                        + "The key needs to be hashed before being used by the HMAC algorithm."));
    }

    /** The platform's own is the witness for all lengths of key. */
    @Test
    void should_seal_as_the_platform_does() throws Exception {
        for (int length = 1; length < 140; length++) {
            var platform = javax.crypto.Mac.getInstance("HmacSHA256");
            platform.init(new javax.crypto.spec.SecretKeySpec(filled(length, length), "HmacSHA256"));
            assertArrayEquals(platform.doFinal(filled(200, 7)), new Seal(filled(length, length)).over(filled(120, 7), filled(80, 7)));
        }
    }

    private static void assertSeal(String expected, byte[] key, byte[] data) {
        assertEquals(expected, HexFormat.of().formatHex(new Seal(key).over(data)));
    }

    private static byte[] bytes(String words) {
        return words.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] filled(int length, int with) {
        byte[] bytes = new byte[length];
        java.util.Arrays.fill(bytes, (byte) with);
        return bytes;
    }
}
