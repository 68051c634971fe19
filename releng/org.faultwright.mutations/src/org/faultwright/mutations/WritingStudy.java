/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.BetterOrder;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.order.OrderStudy;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/**
 * Lets everything be written that is offered for many procedures, each fix, each better order, each draft, and judges it without the code that tried it
 * before it was offered: by counting findings, by reading what the text must keep, by taking it back, by writing it twice.
 */
public final class WritingStudy {
    private static final String ALL_FIXES = "all fixes";
    private static final int MOST_SHRINKING = 120;
    private static final int MOST_FIXES = 40;
    /** Of so many texts of a kind, one has its fixes applied one after the other. */
    private static final int EVERY = 4;

    /** Something written that should not have been. @param about a word for its kind, such as the rule whose fix it was */
    record Disagreement(String about, String what, SourceText text) {
        String key() {
            return about + ": " + what.replaceFirst(" [@(].*", "");
        }
    }

    /** How often something was there to be written, and was. */
    static final class Counts {
        private final Map<String, AtomicInteger> counts = new TreeMap<>();

        private synchronized void add(String what) {
            counts.computeIfAbsent(what, w -> new AtomicInteger()).incrementAndGet();
        }

        synchronized int of(String what) {
            return counts.containsKey(what) ? counts.get(what).get() : 0;
        }

        synchronized Map<String, AtomicInteger> all() {
            return new TreeMap<>(counts);
        }
    }

    private final ProcedureReader reader = ProcedureReader.overFiles();
    private final Checker checker = new Checker();
    private final FixTrial trial = new FixTrial(reader::read, checker);
    private final Counts counts = new Counts();

    Counts counts() {
        return counts;
    }

    /** Writes all that is offered for one text. @param whole whether the fixes are also applied one after the other until none is left, which takes long */
    List<Disagreement> study(SourceText text, boolean whole) {
        return study(text, whole, about -> true);
    }

    /** @param wanted the rules whose fixes are written, and whether orders and drafts are */
    List<Disagreement> study(SourceText text, boolean whole, Predicate<String> wanted) {
        counts.add("procedures");
        List<Disagreement> found = new ArrayList<>();
        Document document = reader.read(text);
        List<Finding> findings = checker.check(document);
        fixes(text, findings, whole && wanted.test(ALL_FIXES), wanted, found);
        if (document instanceof Procedure procedure && wanted.test("order")) {
            order(text, procedure, findings, found);
        }
        if (document instanceof Procedure procedure && wanted.test("draft")) {
            draft(text, procedure, found);
        }
        return found;
    }

    private Document read(SourceText like, String content) {
        return reader.read(new SourceText(like.name(), content));
    }

    private void fixes(SourceText text, List<Finding> findings, boolean whole, Predicate<String> wanted, List<Disagreement> found) {
        WrittenText before = WrittenText.of(text.content());
        int tried = 0;
        for (Finding finding : findings) {
            for (Fix fix : finding.at().source().name().equals(text.name()) && wanted.test(finding.rule()) ? finding.fixes() : List.<Fix>of()) {
                if (tried++ >= MOST_FIXES) {
                    counts.add("fixes left untried");
                    continue;
                }
                counts.add("fixes proposed");
                if (trial.holds(finding, fix, findings)) {
                    counts.add("fixes offered and applied");
                    judge(text, finding, fix, findings, before).ifPresent(what -> found.add(new Disagreement(finding.rule(), what + " (" + fix.title() + ")", text)));
                }
            }
        }
        if (whole) {
            rest(text, findings).ifPresent(what -> found.add(new Disagreement(ALL_FIXES, what, text)));
        }
    }

    private Optional<String> judge(SourceText text, Finding finding, Fix fix, List<Finding> findings, WrittenText before) {
        if (fix.edits().stream().anyMatch(edit -> !edit.at().source().name().equals(text.name()))) {
            return Optional.of("it changes another file");
        }
        Optional<String> unsound = WrittenText.unsound(fix, text.content());
        if (unsound.isPresent()) {
            return unsound;
        }
        Document after = read(text, fix.applied());
        List<Finding> left = checker.check(after);
        Optional<String> more = more(findings, left, waiting(text));
        if (more.isPresent()) {
            return more;
        }
        if (count(left, finding) >= count(findings, finding)) {
            return Optional.of("its finding stays");
        }
        return before.lost(WrittenText.of(fix.applied()), fix.title()).map(lost -> lost.replaceFirst("^(the \\w+) ", "$1 is lost @"))
                .or(() -> again(fix, finding, left));
    }

    /** The same change offered once more behind it. */
    private Optional<String> again(Fix fix, Finding finding, List<Finding> left) {
        return left.stream().filter(one -> one.rule().equals(finding.rule()) && one.message().equals(finding.message()))
                .flatMap(one -> one.fixes().stream()).filter(one -> one.title().equals(fix.title()) && one.applied().equals(fix.applied()))
                .findFirst().map(one -> "it is offered again, and changes nothing");
    }

    private static long count(List<Finding> findings, Finding like) {
        return findings.stream().filter(one -> one.rule().equals(like.rule()) && one.severity() == like.severity()).count();
    }

    private List<Finding> waiting(SourceText text) {
        return checker.assess(checker.subject(reader.read(text))).waiting();
    }

    /** A rule that finds more than before, of any weight. What had waited for words that could not be read is nothing new. */
    private static Optional<String> more(List<Finding> before, List<Finding> after, List<Finding> waiting) {
        Map<String, Integer> change = new HashMap<>();
        List.of(before, waiting).forEach(all -> all.forEach(one -> change.merge(one.rule() + " " + one.severity(), -1, Integer::sum)));
        after.forEach(one -> change.merge(one.rule() + " " + one.severity(), 1, Integer::sum));
        Set<String> more = change.entrySet().stream().filter(one -> one.getValue() > 0).map(Map.Entry::getKey).collect(Collectors.toSet());
        return after.stream().filter(one -> more.contains(one.rule() + " " + one.severity())).map(one -> "brings " + one.rule() + " @" + one.message()).findFirst();
    }

    /** Applies the first fix that holds, over and over, as the command does: it must come to rest. */
    private Optional<String> rest(SourceText text, List<Finding> findings) {
        String now = text.content();
        List<Finding> found = findings;
        Set<String> seen = new java.util.HashSet<>(Set.of(now));
        Set<String> inVain = new java.util.HashSet<>();
        for (int i = 0; i < MOST_FIXES; i++) {
            Optional<Fix> next = Optional.empty();
            for (Finding finding : found) {
                if (next.isEmpty() && finding.at().source().name().equals(text.name()) && !finding.fixes().isEmpty()
                        && !inVain.contains(finding.rule() + finding.message())) {
                    List<Finding> all = found;
                    next = finding.fixes().stream().filter(fix -> trial.holds(finding, fix, all)).findFirst();
                    if (next.isEmpty()) {
                        inVain.add(finding.rule() + finding.message());
                    }
                }
            }
            if (next.isEmpty()) {
                return Optional.empty();
            }
            counts.add("fixes applied one after the other");
            now = next.get().applied();
            if (!seen.add(now)) {
                return Optional.of("one fix takes back another (" + next.get().title() + ")");
            }
            found = checker.check(read(text, now));
        }
        counts.add("texts that had more fixes than were applied");
        return Optional.empty();
    }

    private void order(SourceText text, Procedure procedure, List<Finding> findings, List<Disagreement> found) {
        Subject subject = new Subject(procedure, Optional.empty());
        if (OrderStudy.in(subject).orElseThrow().best().isEmpty()) {
            return;
        }
        counts.add("orders studied");
        Optional<OrderStudy.Verified> verified = BetterOrder.verified(subject);
        if (verified.isEmpty()) {
            counts.add(OrderStudy.in(subject).orElseThrow().inTheWay().isEmpty() ? "orders as good already" : "orders refused, and told why");
            return;
        }
        counts.add("orders written");
        judgeOrder(text, procedure, verified.get(), findings).ifPresent(what -> found.add(new Disagreement("order", what, text)));
    }

    private Optional<String> judgeOrder(SourceText text, Procedure procedure, OrderStudy.Verified verified, List<Finding> findings) {
        Fix fix = verified.fix();
        Optional<String> unsound = WrittenText.unsound(fix, text.content());
        if (unsound.isPresent()) {
            return unsound;
        }
        Procedure after = (Procedure) read(text, fix.applied());
        List<Finding> others = checker.check(after).stream().filter(finding -> !finding.rule().equals("better-order")).toList();
        Optional<String> more = more(findings, others, waiting(text));
        if (more.isPresent()) {
            return more;
        }
        Optional<String> lost = WrittenText.of(text.content()).lost(WrittenText.of(fix.applied()), fix.title());
        if (lost.isPresent()) {
            return lost.map(one -> one.replaceFirst("^(the \\w+) ", "$1 is lost @"));
        }
        if (passing(after) < passing(procedure)) {
            return Optional.of("an example fails behind it");
        }
        if (!reaching(after).containsAll(reaching(procedure))) {
            return Optional.of("a fault misses its conclusion behind it");
        }
        String told = verified.comparison().after().toString();
        String taken = TimeStudy.of(after).inAll().expected().map(Object::toString).orElse("none");
        if (!told.equals(taken)) {
            return Optional.of("it takes " + "another time than told @" + taken + " s, told " + told + " s");
        }
        Optional<OrderStudy.Verified> again = BetterOrder.verified(new Subject(after, Optional.empty()));
        again.ifPresent(twice -> counts.add("orders with another part to better"));
        return again.filter(twice -> twice.fix().applied().equals(fix.applied()) || twice.comparison().saving().compareTo(verified.comparison().saving()) >= 0)
                .map(twice -> "written once more it changes again");
    }

    private static long passing(Procedure procedure) {
        return ExampleCoverage.of(procedure).runs().stream().filter(ExampleRun::passes).count();
    }

    private static Set<String> reaching(Procedure procedure) {
        return FaultWalks.of(procedure).all().stream().filter(FaultWalk::reachesFinding).map(walk -> walk.fault().name().text()).collect(Collectors.toSet());
    }

    private void draft(SourceText text, Procedure procedure, List<Disagreement> found) {
        if (procedure.faults().isEmpty()) {
            return;
        }
        counts.add("drafts asked for");
        TriedDraft.Draft draft = TriedDraft.of(procedure, reader::read, checker);
        if (draft.text().isEmpty()) {
            boolean isWhole = draft.remarks().stream().anyMatch(remark -> remark.startsWith("The steps are all there"));
            counts.add(isWhole ? "drafts not needed: the steps are all there" : "drafts refused, and told why");
            if (draft.remarks().isEmpty()) {
                found.add(new Disagreement("draft", "refused without a word", text));
            }
            return;
        }
        counts.add("drafts written");
        judgeDraft(text, procedure, draft.text().get()).ifPresent(what -> found.add(new Disagreement("draft", what, text)));
    }

    private Optional<String> judgeDraft(SourceText text, Procedure procedure, String content) {
        if (!(read(text, content) instanceof Procedure after) || !after.problems().isEmpty()) {
            return Optional.of("it cannot be read");
        }
        Map<String, Long> before = errors(checker.check(procedure), text);
        Map<String, Long> now = errors(checker.check(after), text);
        Optional<String> error = now.keySet().stream().filter(one -> !before.containsKey(one)).findFirst();
        if (error.isPresent()) {
            return error.map(one -> "has an error @" + one);
        }
        Optional<String> lost = WrittenText.of(text.content()).lostAny(WrittenText.of(content));
        if (lost.isPresent()) {
            return lost.map(one -> one.replaceFirst("^(the \\w+) ", "$1 is lost @"));
        }
        Optional<String> invented = invented(procedure, after);
        if (invented.isPresent()) {
            return invented;
        }
        return TriedDraft.of(after, reader::read, checker).text().filter(twice -> !twice.equals(content)).map(twice -> "drafted once more it changes again");
    }

    private static Map<String, Long> errors(List<Finding> findings, SourceText text) {
        return findings.stream().filter(one -> one.severity() == Severity.ERROR && one.at().source().name().equals(text.name()))
                .collect(Collectors.groupingBy(one -> one.rule() + " " + one.message(), Collectors.counting()));
    }

    /** What a fault is said to show that its author did not write; of a second place of a step the same may be said. */
    private static Optional<String> invented(Procedure before, Procedure after) {
        return after.faults().stream().flatMap(fault -> fault.shows().stream().map(showing -> showing.at().text()).filter(shown ->
                before.fault(fault.name()).stream().flatMap(old -> old.shows().stream()).noneMatch(old -> old.at().text().equals(shown)
                        || (shown.replaceFirst("^(\\w*?)\\d+ ", "$1 ")).equals(old.at().text().replaceFirst("^(\\w*?)\\d+ ", "$1 "))))
                .map(shown -> "a signature is invented @" + fault.name() + " " + shown)).findFirst();
    }

    /** The smallest text with the same disagreement: one declaration or line less at a time. */
    SourceText shrunk(Disagreement disagreement) {
        boolean readable = reader.read(disagreement.text()).problems().isEmpty();
        Predicate<String> shows = content -> {
            try {
                if (readable && !reader.read(new SourceText(disagreement.text().name(), content)).problems().isEmpty()) {
                    return false;
                }
                return new WritingStudy().study(new SourceText(disagreement.text().name(), content), true, disagreement.about()::equals).stream().anyMatch(one -> one.key().equals(disagreement.key()));
            } catch (RuntimeException unfit) {
                return false;
            }
        };
        String smallest = disagreement.text().content();
        int tries = MOST_SHRINKING;
        for (boolean whole : new boolean[] {true, false}) {
            for (boolean smaller = true; smaller && tries > 0;) {
                smaller = false;
                List<String> parts = List.of(smallest.split(whole ? "(?m)(?<=\\n)(?=^\\w)" : "(?<=\\n)"));
                for (int i = parts.size() - 1; i >= 0 && tries > 0; i--) {
                    int gone = i;
                    List<String> current = List.of(smallest.split(whole ? "(?m)(?<=\\n)(?=^\\w)" : "(?<=\\n)"));
                    if (gone >= current.size()) {
                        continue;
                    }
                    String less = IntStream.range(0, current.size()).filter(n -> n != gone).mapToObj(current::get).collect(Collectors.joining());
                    tries--;
                    if (shows.test(less)) {
                        smallest = less;
                        smaller = true;
                    }
                }
            }
        }
        return new SourceText(disagreement.text().name(), smallest);
    }

    /** @param arguments the folder of the demo, how many procedures, where the texts of disagreements go, and the number to begin at */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 3 || !arguments[1].matches("[1-9]\\d{0,5}")) {
            System.err.println("Give the folder of procedures to put defects into, how many procedures to study, and a folder for the texts of what should not be.");
            System.exit(2);
        }
        StudyTexts texts = new StudyTexts(MutationStudy.specimens(Path.of(arguments[0])));
        int first = arguments.length > 3 ? Integer.parseInt(arguments[3]) : 0;
        WritingStudy study = new WritingStudy();
        Map<String, List<Disagreement>> found = IntStream.range(first, first + Integer.parseInt(arguments[1])).parallel().boxed()
                .flatMap(number -> study.study(texts.text(number), number / 4 % EVERY == 0).stream()).collect(Collectors.groupingBy(Disagreement::key, TreeMap::new, Collectors.toList()));
        study.counts().all().forEach((what, count) -> System.out.printf("%7d %s%n", count.get(), what));
        int all = found.values().stream().mapToInt(List::size).sum();
        System.out.printf("%7d disagreements of %d kinds%n", all, found.size());
        Path into = Path.of(arguments[2]);
        Files.createDirectories(into);
        int number = 1;
        for (List<Disagreement> same : found.values()) {
            Disagreement one = same.get(0);
            Path file = into.resolve("Disagreement" + number++ + ".procedure");
            System.out.printf("%7d %s: %s%n        %s%n", same.size(), one.about(), one.what(), file);
            Files.writeString(file, one.text().content());
            Files.writeString(file, "// " + one.about() + ": " + one.what().replace("\n", " ") + "\n" + study.shrunk(one).content());
        }
        System.exit(all == 0 ? 0 : 1);
    }
}
