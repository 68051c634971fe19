/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SignalWord;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * Which changes leave less protection than before. Most clauses protect by being there; some, such as that a point is isolated
 * or a charge proved absent, are claims that the safety rules lean on, and protect less the more they claim.
 */
final class Protection {
    private final Values values;
    private final Scope now;

    /** @param now what the later revision declares */
    Protection(Values values, Scope now) {
        this.values = values;
        this.now = now;
    }

    /** @param owner what the member belongs to, in the earlier revision; values are without their wrapping, null for nothing */
    boolean isLess(Object owner, String member, Object before, Object after) {
        return switch (member) {
            case "needs", "notes", "hazards", "handles", "confirms", "verifies", "erases", "repairs", "remedies", "tests", "tries",
                    "live", "charged", "becomes", "ends", "covers", "closesBy", "proved", "protection", "drains", "rated" ->
                    isLost(before, after);
            case "word" -> before instanceof SignalWord was && after instanceof SignalWord then && then.ordinal() > was.ordinal();
            case "hazard", "consequence", "avoid" -> owner instanceof Note;
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

    private static boolean isLower(Object before, Object after) {
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

    /** Whether something that is gone as a whole was there for protection. */
    boolean isLostWith(Object gone) {
        if (gone instanceof Step step) {
            StepFrame frame = step.frame();
            return !frame.precautions().tests().isEmpty() || !frame.precautions().tries().isEmpty() || frame.confirms().isPresent()
                    || frame.verifies().isPresent() || frame.waits().isPresent() || frame.sets().stream().anyMatch(this::isSafe)
                    || step.outcomes().stream().anyMatch(this::isLostWith);
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
        Optional<QuantityKind> kind = Values.kindOf(limit);
        if (kind.isEmpty()) {
            return true;
        }
        Interval interval = limit.interval(kind.get());
        return test == ProtectiveTest.INSULATION ? interval.upper().isEmpty() : interval.lower().filter(end -> end.value().signum() > 0).isEmpty();
    }

    /** What a declaration says of a unit that comes in. */
    static Object arrives(Condition condition) {
        return condition.starts().or(() -> condition.values().stream().findFirst()).orElse(null);
    }
}
