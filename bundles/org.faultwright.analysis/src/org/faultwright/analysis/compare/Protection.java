/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.compare.Difference.Loss;
import org.faultwright.analysis.quality.UnnamedCode;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * Which changes leave less protection than before. Most clauses protect by being there; some, such as that a point is isolated
 * or a charge proved absent, are claims that the safety rules lean on, and protect less the more they claim.
 */
final class Protection {
    /** Numbers in words, such as 500 V of a test, and words that keep somebody from harm. */
    private static final Pattern NUMBER = Pattern.compile("[0-9]+([.,][0-9]+)?\\s*\\p{L}*");
    private static final Pattern GUARDING = Pattern.compile("(?iu)\\b(second person|alone|glove|goggle|glasses|shield|insulat|earth|ground|never|not|only|one hand|wait|discharg|unplug|plug|cool|off)");

    private final RecordValues values;
    private final Scope then;
    private final Scope now;
    /** The steps of both revisions whose own doing protects, or leads straight to what does. */
    private final Set<Step> guarding = Collections.newSetFromMap(new IdentityHashMap<>());

    Protection(RecordValues values, Procedure was, Procedure now) {
        this.values = values;
        this.then = was.scope();
        this.now = now.scope();
        Stream.of(was, now).flatMap(one -> Stream.concat(Stream.of(one), one.scope().routines().stream())).forEach(this::beforeProofs);
    }

    /** Waits and switching-off before a proof: all of a routine that proves, and of a procedure what leads straight to the proof. */
    private void beforeProofs(StepGraph graph) {
        List<Step> proving = graph.steps().stream().filter(Protection::provesOrTests).toList();
        if (graph instanceof Routine && !proving.isEmpty()) {
            guarding.addAll(graph.steps());
        } else {
            graph.steps().stream().filter(step -> step.outcomes().stream().flatMap(outcome -> outcome.target().stream())
                    .anyMatch(target -> proving.stream().anyMatch(proof -> proof.name().text().equals(target.text())))).forEach(guarding::add);
        }
    }

    private static boolean provesOrTests(Step step) {
        return !step.frame().precautions().tests().isEmpty() || step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty());
    }

    /**
     * Whether the words of a step, and the time it takes, are protection: it reads notes, names hazards, waits, is done live or makes something live,
     * is a protective test or a proof, or leads to one.
     */
    boolean carries(Step step) {
        StepFrame frame = step.frame();
        return guarding.contains(step) || provesOrTests(step) || !frame.notes().isEmpty() || !frame.hazards().isEmpty() || frame.waits().isPresent()
                || frame.precautions().liveBecause().isPresent() || !frame.precautions().tries().isEmpty() || !frame.precautions().rated().isEmpty()
                || frame.sets().stream().anyMatch(this::isLive) || frame.needs().stream().anyMatch(this::isLive)
                || Stream.of(then, now).flatMap(scope -> scope.performedBy(step).stream()).anyMatch(routine -> routine.steps().stream()
                        .anyMatch(inner -> inner.frame().sets().stream().anyMatch(this::isLive)));
    }

    private boolean isLive(Setting setting) {
        return Stream.of(then, now).flatMap(scope -> scope.condition(setting.condition()).stream()).anyMatch(condition -> isDangerous(condition, setting.value()));
    }

    /** Whether words that changed told of a number that is another one now, or of a precaution that is not told any more. */
    static boolean losesWords(String before, String after) {
        return !found(NUMBER, before).equals(found(NUMBER, after)) || !found(GUARDING, after).containsAll(found(GUARDING, before));
    }

    /** Such as {@code 500 V dc → 50 V dc}; empty where no number changed. */
    static String numbers(String before, String after) {
        Set<String> was = found(NUMBER, before);
        Set<String> is = found(NUMBER, after);
        if (was.equals(is)) {
            return "";
        }
        Set<String> gone = new LinkedHashSet<>(was);
        gone.removeAll(is);
        Set<String> fresh = new LinkedHashSet<>(is);
        fresh.removeAll(was);
        return (gone.isEmpty() ? "no number" : String.join(", ", gone)) + " \u2192 " + (fresh.isEmpty() ? "no number" : String.join(", ", fresh));
    }

    private static Set<String> found(Pattern pattern, String words) {
        return pattern.matcher(words).results().map(found -> found.group().strip()).map(word -> pattern == NUMBER ? word : word.toLowerCase(Locale.ROOT)).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** @param owner what the member belongs to, in the earlier revision; values are without their wrapping, null for nothing */
    boolean isLess(Object owner, String member, Object before, Object after) {
        return switch (member) {
            case "needs", "notes", "hazards", "handles", "confirms", "verifies", "erases", "repairs", "remedies", "tests", "tries",
                    "live", "charged", "becomes", "ends", "covers", "closesBy", "proved", "protection", "drains", "rated" ->
                    isLost(before, after);
            case "word" -> before instanceof SignalWord was && after instanceof SignalWord then && then.ordinal() > was.ordinal();
            case "hazard", "consequence", "avoid" -> owner instanceof Note;
            case "title" -> owner instanceof Note || owner instanceof Step step && isLessSaid(step, before, after);
            case "meaning" -> owner instanceof Indicator.Code code && UnnamedCode.mayTellOfDanger(code.meaning());
            case "equipment" -> after == null && before instanceof Equipment equipment && equipment.protection().isPresent();
            case "starts" -> owner instanceof Condition condition && isDangerous(condition, before) && !isDangerous(condition, after);
            case "waits", "stores" -> before != null && (after == null || isLower(before, after));
            case "carries" -> before instanceof Point.Carried was && !(after instanceof Point.Carried then && then.kind() == was.kind()
                    && !isLower(was.upTo().value(), then.upTo().value()));
            // a wait is reckoned from it
            case "drainedBy" -> after != null && (before == null || isLower(before, after));
            // what an instrument is good for and what a circuit asks for
            case "category" -> owner instanceof Instrument || before != null && (after == null || isLower(before, after));
            case "sets" -> isLost(before, after) || gained(before, after).anyMatch(this::isSafe);
            case "proves", "liveBecause" -> true;
            case "points" -> gained(before, after).findAny().isPresent();
            case "isolated" -> after instanceof Isolation then && !(before instanceof Isolation was && !isLost(was.when(), then.when()));
            case "mayChangeLive" -> Boolean.TRUE.equals(after);
            default -> false;
        };
    }

    private boolean isLost(Object before, Object after) {
        if (before instanceof List<?> was) {
            List<?> then = after instanceof List<?> list ? list : List.of();
            return was.stream().anyMatch(item -> then.stream().noneMatch(like -> values.same(item, like)));
        }
        return before != null;
    }

    private Stream<?> gained(Object before, Object after) {
        List<?> was = before instanceof List<?> list ? list : List.of();
        List<?> then = after instanceof List<?> list ? list : List.of();
        return then.stream().filter(item -> was.stream().noneMatch(like -> values.same(like, item)));
    }

    static boolean isLower(Object before, Object after) {
        if (before instanceof Quantity was && after instanceof Quantity then) {
            return !was.unit().isKnown() || !then.unit().isKnown() || !was.dimension().equals(then.dimension())
                    || then.base().compareTo(was.base()) < 0;
        }
        return !(before instanceof Integer was && after instanceof Integer then) || then < was;
    }

    /** Whether a setting says that something dangerous is gone. */
    private boolean isSafe(Object item) {
        return item instanceof Setting setting && now.condition(setting.condition())
                .filter(condition -> condition.live().size() + condition.charged().size() > 0 && !isDangerous(condition, setting.value()))
                .isPresent();
    }

    private static boolean isDangerous(Condition condition, Object value) {
        return value instanceof Name name && Stream.concat(condition.live().stream(), condition.charged().stream())
                .anyMatch(one -> one.text().equals(name.text()));
    }

    private boolean isLessSaid(Step step, Object before, Object after) {
        return before instanceof String was && (carries(step) || losesWords(was, after instanceof String is ? is : ""));
    }

    /** What went with a step that is gone as a whole, in words; empty where nothing of it protected. */
    String wentWith(Object gone) {
        if (!(gone instanceof Step step) || ClosingStep.is(step)) {
            return "";
        }
        List<String> parts = new ArrayList<>();
        Set<Step> all = new LinkedHashSet<>();
        addWithRoutines(step, all);
        add(parts, "notes ", step.frame().notes().stream().map(values::words));
        add(parts, "needs ", step.frame().needs().stream().map(values::words));
        add(parts, "hazards ", step.frame().hazards().stream().map(values::words));
        add(parts, "protective tests ", all.stream().flatMap(one -> one.frame().precautions().tests().stream()).map(values::words));
        add(parts, "proofs ", all.stream().flatMap(one -> one.outcomes().stream()).flatMap(outcome -> outcome.proves().stream()).map(values::words));
        add(parts, "waits ", all.stream().flatMap(one -> one.frame().waits().stream()).map(values::words));
        add(parts, "tries ", all.stream().flatMap(one -> one.frame().precautions().tries().stream()).map(values::words));
        return parts.isEmpty() ? "" : "with its " + String.join("; ", parts);
    }

    private void addWithRoutines(Step step, Set<Step> all) {
        if (all.add(step)) {
            then.performedBy(step).ifPresent(routine -> routine.steps().forEach(inner -> addWithRoutines(inner, all)));
        }
    }

    private static void add(List<String> parts, String what, Stream<String> words) {
        String all = words.distinct().collect(Collectors.joining(", "));
        if (!all.isEmpty()) {
            parts.add(what + all);
        }
    }

    /** Whether something that is gone as a whole was there for protection. */
    boolean isLostWith(Object gone) {
        if (gone instanceof Step step) {
            StepFrame frame = step.frame();
            return !wentWith(step).isEmpty() || frame.confirms().isPresent() || frame.verifies().isPresent()
                    || frame.precautions().liveBecause().isPresent() || !frame.precautions().rated().isEmpty()
                    || step instanceof Step.Do act && act.erases().isPresent() || frame.sets().stream().anyMatch(this::isSafe);
        }
        if (gone instanceof Indicator.Code code) {
            return UnnamedCode.mayTellOfDanger(code.meaning());
        }
        if (gone instanceof Indicator indicator) {
            return indicator.codes().stream().anyMatch(this::isLostWith);
        }
        if (gone instanceof Routine routine) {
            return routine.steps().stream().anyMatch(this::isLostWith);
        }
        if (gone instanceof Condition condition) {
            return !condition.live().isEmpty() || !condition.charged().isEmpty() || condition.ends().isPresent();
        }
        return gone instanceof Note || gone instanceof Outcome outcome && !outcome.proves().isEmpty();
    }

    /** Whether what the outcome takes in decides over somebody's safety: that a charge is gone, or that a protective test is passed. */
    static boolean guards(Outcome outcome, List<ProtectiveTest> tests) {
        return !outcome.proves().isEmpty() || outcome.head() instanceof Outcome.Band band && tests.stream()
                .anyMatch(test -> passes(band.limit().value(), test));
    }

    /** A good protective conductor and a small current have no lower end, good insulation has no upper one (EN 50678). */
    private static boolean passes(Limit limit, ProtectiveTest test) {
        Optional<QuantityKind> kind = RecordValues.kindOf(limit);
        if (kind.isEmpty()) {
            return true;
        }
        Interval interval = limit.interval(kind.get());
        return test == ProtectiveTest.INSULATION ? interval.upper().isEmpty() : interval.lower().filter(end -> end.value().signum() > 0).isEmpty();
    }

    /** How much goes with a member that is less than it was. */
    Loss loss(String member, Object before, Object after) {
        if (after == null || after instanceof List<?> list && list.isEmpty() || before instanceof List<?> && gained(before, after).findAny().isEmpty()) {
            return Loss.REMOVED;
        }
        return before instanceof String ? Loss.REWORDED : Loss.WEAKENED;
    }

    /** What a declaration says of a unit that comes in. */
    static Object arrives(Condition condition) {
        return condition.starts().or(() -> condition.values().stream().findFirst()).orElse(null);
    }
}
