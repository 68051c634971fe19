/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.compare.Difference.Kind;
import org.faultwright.analysis.compare.Difference.Loss;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Proof;
import org.faultwright.procedure.ProtectiveTest;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** Holds two records of one class against each other, member by member, so that nothing differs without being told. */
final class RecordComparison {
    private static final String NARROWER = "narrower";
    private static final String EQUIPMENT = "equipment";

    private final RecordValues values;
    private final Protection protection;
    private final List<Difference> found;
    /** The tests that the step is whose members are looked at. */
    private List<ProtectiveTest> tests = List.of();
    /** Whether a limit that lets more through protects less. */
    private boolean guards;
    /** The step whose members are looked at. */
    private Optional<Step> within = Optional.empty();
    /** Where what is looked at stands in the later revision. */
    private Optional<SourceRange> here = Optional.empty();

    RecordComparison(RecordValues values, Procedure was, Procedure now, List<Difference> found) {
        this.values = values;
        this.protection = new Protection(values, was, now);
        this.found = found;
    }

    /** @param of what a reader calls the thing, such as {@code HeadSupply}; empty for the procedure itself */
    void compare(Kind kind, String of, Object was, Object now) {
        Optional<SourceRange> around = here;
        here = RecordValues.place(now).or(() -> around);
        held(kind, of, was, now);
        here = around;
    }

    private void held(Kind kind, String of, Object was, Object now) {
        if (was.getClass() != now.getClass()) {
            boolean lost = protection.isLostWith(was);
            add(lost ? Kind.PROTECTION : kind, of.isEmpty() ? "kind" : of + ": kind", word(was), word(now), protection.wentWith(was), lost ? Loss.WEAKENED : Loss.NONE);
            return;
        }
        boolean readsAsWhole = !was.getClass().isRecord();
        if (readsAsWhole) {
            member(kind, was, of, "value", was, now);
            return;
        }
        List<ProtectiveTest> testsAround = tests;
        boolean guardsAround = guards;
        Optional<Step> withinAround = within;
        Optional<SourceRange> own = here;
        enter(was);
        for (RecordComponent member : RecordValues.members(was)) {
            boolean arrival = was instanceof Condition && member.getName().equals("starts");
            Object before = arrival ? Protection.arrives((Condition) was) : RecordValues.member(was, member);
            Object after = arrival ? Protection.arrives((Condition) now) : RecordValues.member(now, member);
            here = RecordValues.place(now, member).or(() -> own);
            // a fault's, an example's or a point's own members belong to it
            boolean belongs = kind == Kind.FAULTS || kind == Kind.EXAMPLES || kind == Kind.BENCH;
            member(belongs ? kind : RecordMembers.kind(member.getName(), kind), was, of, member.getName(), before, after);
        }
        here = own;
        tests = testsAround;
        guards = guardsAround;
        within = withinAround;
    }

    /** What is known of the members of a record before they are looked at. */
    private void enter(Object record) {
        if (record instanceof Step step) {
            within = Optional.of(step);
            tests = step.frame().precautions().tests().stream().map(Written::value).toList();
            guards = !tests.isEmpty() || step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty());
        } else if (record instanceof Outcome outcome) {
            guards = Protection.guards(outcome, tests);
        } else if (record instanceof Declaration || record instanceof Procedure) {
            guards = false;
            within = Optional.empty();
        } else if (record instanceof Proof) {
            guards = true;
        }
    }

    private static String word(Object step) {
        return step instanceof Step one ? one.keyword() : step.getClass().getSimpleName();
    }

    /** The same for a member that stands somewhere else than what was looked at last. @param at in the later revision */
    void member(Kind kind, Object owner, String of, String member, Object before, Object after, Optional<SourceRange> at) {
        Optional<SourceRange> around = here;
        here = at;
        member(kind, owner, of, member, before, after);
        here = around;
    }

    /** @param owner what the member belongs to, in the earlier revision */
    private void member(Kind kind, Object owner, String of, String member, Object before, Object after) {
        if (isNamedList(before) || isNamedList(after)) {
            named(kind, of, member, list(before), list(after));
        } else if (opens(before, after)) {
            compare(kind, before instanceof Equipment ? EQUIPMENT : of, before, after);
        } else if (!values.same(before, after)) {
            String meaning = meaning(before, after);
            boolean weaker = protection.isLess(owner, member, before, after)
                    || guards && before instanceof Limit && (after == null || !meaning.startsWith(NARROWER))
                    || within.isPresent() && isLessIn(within.get(), member, before, after);
            boolean reworded = owner instanceof Step && member.equals("title") && before instanceof String && after instanceof String;
            add(weaker ? Kind.PROTECTION : kind, called(of, member), values.words(before), values.words(after),
                    reworded ? Protection.numbers((String) before, (String) after) : meaning, weaker ? protection.loss(member, before, after) : Loss.NONE);
        } else if (!values.words(before).equals(values.words(after)) && !(before instanceof List<?>)) {
            add(kind, called(of, member), values.words(before), values.words(after), "the same value");
        }
    }

    /** What protects only for the step that it belongs to. */
    private boolean isLessIn(Step step, String member, Object before, Object after) {
        return switch (member) {
            case "hint" -> before instanceof String was && Protection.losesWords(was, after instanceof String now ? now : "");
            case "takes" -> step instanceof Step.Do && protection.carries(step) && before instanceof Quantity && (after == null || Protection.isLower(before, after));
            // how often what proves or tests may be tried, and where it leads then
            case "repeat" -> before != null && (!tests.isEmpty() || step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty()));
            case "uncertainties" -> after == null && before != null && (guards || !tests.isEmpty());
            default -> false;
        };
    }

    private static String called(String of, String member) {
        boolean itself = member.equals("possible") || of.equals(EQUIPMENT) && member.equals("title");
        if (itself) {
            return of;
        }
        return of.isEmpty() ? RecordMembers.words(member) : of + ": " + RecordMembers.words(member);
    }

    /** Records that only gather what else belongs to the thing itself. */
    private static boolean opens(Object before, Object after) {
        return before instanceof StepFrame && after instanceof StepFrame
                || before instanceof Step.Expectation && after instanceof Step.Expectation
                || before instanceof Outcome.Band && after instanceof Outcome.Band
                || before instanceof Precautions && after instanceof Precautions
                || before instanceof Equipment && after instanceof Equipment
                || before instanceof Proof && after instanceof Proof;
    }

    /** Of a limit: whether more or less is let through, in the earlier limit's unit. */
    private static String meaning(Object before, Object after) {
        if (!(before instanceof Limit was && after instanceof Limit now)) {
            return "";
        }
        Optional<QuantityKind> kind = RecordValues.kindOf(was);
        if (kind.isEmpty() || !kind.equals(RecordValues.kindOf(now))) {
            return "";
        }
        Interval earlier = was.interval(kind.get());
        Interval later = now.interval(kind.get());
        String way = later.contains(earlier) ? "wider" : earlier.contains(later) ? NARROWER : "moved";
        var unit = was.quantities().get(0).unit();
        return way + ": " + IntervalText.of(later, unit) + ", was " + IntervalText.of(earlier, unit);
    }

    private void add(Kind kind, String what, String was, String now, String meaning) {
        add(kind, what, was, now, meaning, Loss.NONE);
    }

    private void add(Kind kind, String what, String was, String now, String meaning, Loss loss) {
        found.add(new Difference(kind, what, was, now, meaning, loss, here));
    }

    private static List<?> list(Object value) {
        return value instanceof List<?> list ? list : List.of();
    }

    private static boolean isNamedList(Object value) {
        return value instanceof List<?> list && !list.isEmpty() && list.stream().allMatch(item -> !key(item).isEmpty());
    }

    /** What tells the things of a list apart; empty where only all of them together have a meaning. */
    private static String key(Object item) {
        Object plain = RecordValues.plain(item);
        if (plain instanceof Declaration declared) {
            return declared.name().text();
        }
        if (plain instanceof Outcome outcome) {
            return outcome.key();
        }
        if (plain instanceof Showing showing) {
            return showing.step().text();
        }
        if (plain instanceof Example example) {
            return example.title().text();
        }
        if (plain instanceof Indicator.Code code) {
            return code.pattern().text();
        }
        if (plain instanceof Step.Row row) {
            return row.point().text();
        }
        return plain instanceof MeterRange range ? range.kind().words() + " up to " + range.upTo() : "";
    }

    private static String noun(Object item) {
        Object plain = RecordValues.plain(item);
        if (plain instanceof Showing) {
            return "shows at";
        }
        if (plain instanceof Step.Row) {
            return "reading at";
        }
        return plain instanceof Outcome ? "outcome" : plain instanceof Step ? "step" : plain instanceof Indicator.Code ? "code"
                : plain instanceof MeterRange ? "range" : plain instanceof Fault ? "fault" : plain instanceof Example ? "example"
                        : plain.getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }

    /** Things with names of their own. */
    void named(Kind kind, String of, String member, List<?> before, List<?> after) {
        Map<String, Object> was = byKey(before);
        Map<String, Object> now = byKey(after);
        alignBands(was, now);
        int from = found.size();
        now.forEach((name, item) -> {
            if (was.containsKey(name)) {
                compare(kind, lead(of, item) + name, was.get(name), item);
            } else {
                Optional<SourceRange> around = here;
                here = RecordValues.place(item).or(() -> around);
                add(kind, lonely(of, item, name), Difference.ABSENT, brief(item), "");
                here = around;
            }
        });
        oneBoundary(before, after, from);
        was.forEach((name, item) -> {
            if (!now.containsKey(name)) {
                boolean moved = item instanceof Indicator.Code code && now.values().stream().anyMatch(other -> other instanceof Indicator.Code same
                        && !code.meaning().isBlank() && same.meaning().equals(code.meaning()));
                boolean lost = !moved && protection.isLostWith(item);
                add(lost ? Kind.PROTECTION : kind, lonely(of, item, name), brief(item), Difference.ABSENT, protection.wentWith(item), lost ? Loss.REMOVED : Loss.NONE);
            }
        });
    }

    /** Where one end of two bands moved, what is let through is told, and not the other side of it as if that were another change. */
    private void oneBoundary(List<?> before, List<?> after, int from) {
        List<Difference> fresh = List.copyOf(found.subList(from, found.size()));
        Optional<Difference> weaker = fresh.stream().filter(one -> one.kind() == Kind.PROTECTION && one.meaning().startsWith("wider")).findFirst();
        boolean twoBands = before.size() == 2 && after.size() == 2 && before.stream().allMatch(RecordComparison::isBand) && after.stream().allMatch(RecordComparison::isBand);
        if (twoBands && weaker.isPresent()) {
            found.removeIf(one -> one.kind() == Kind.LIMITS && one.meaning().startsWith(NARROWER) && fresh.stream().anyMatch(other -> other == one)
                    && numbersOf(one.was()).equals(numbersOf(weaker.get().was())) && numbersOf(one.now()).equals(numbersOf(weaker.get().now())));
        }
    }

    private static String numbersOf(String limit) {
        return limit.replaceFirst("^\\D+", "");
    }

    private static String lead(String of, Object item) {
        boolean says = item instanceof Showing || item instanceof Indicator.Code || item instanceof MeterRange || item instanceof Step.Row;
        return (of.isEmpty() ? "" : of + " ") + (says ? noun(item) + " " : "");
    }

    private static String lonely(String of, Object item, String name) {
        String noun = noun(item);
        return (of.isEmpty() ? Character.toUpperCase(noun.charAt(0)) + noun.substring(1) : of + " " + noun) + " " + name;
    }

    /** What tells a reader which one it is. */
    private String brief(Object item) {
        if (item instanceof Outcome outcome) {
            return outcome.target().map(target -> "leads to " + target).orElse("leads nowhere");
        }
        if (item instanceof Example example) {
            return example.endsAt().map(end -> "ends at " + end).orElse("without an end");
        }
        if (item instanceof Step.Row row) {
            return values.words(row.limit());
        }
        return item instanceof Showing showing ? values.words(showing.possible())
                : item instanceof Indicator.Code code ? code.meaning() : values.words(item);
    }

    private Map<String, Object> byKey(List<?> items) {
        Map<String, Object> named = new LinkedHashMap<>();
        for (Object item : items) {
            Object plain = RecordValues.plain(item);
            String first = values.today(key(plain));
            String name = first;
            for (int i = 2; named.containsKey(name); i++) {
                name = first + " (" + i + ")";
            }
            named.put(name, plain);
        }
        return named;
    }

    /** A band without a label is named by its limit; when that changes, the bands left over match in their order. */
    private static void alignBands(Map<String, Object> was, Map<String, Object> now) {
        List<String> gone = new ArrayList<>(was.keySet().stream().filter(name -> isBand(was.get(name)) && !now.containsKey(name)).toList());
        List<String> fresh = now.keySet().stream().filter(name -> isBand(now.get(name)) && !was.containsKey(name)).toList();
        if (gone.size() == fresh.size()) {
            for (int i = 0; i < gone.size(); i++) {
                was.put(fresh.get(i), was.remove(gone.get(i)));
            }
        }
    }

    private static boolean isBand(Object item) {
        return item instanceof Outcome outcome && outcome.head() instanceof Outcome.Band;
    }
}
