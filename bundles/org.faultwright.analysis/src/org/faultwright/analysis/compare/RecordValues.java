/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** Values of a procedure's records: whether two mean the same, and how they read. Where they stand in a file counts for nothing. */
final class RecordValues {
    /** Asked of the machine once for each class: it takes its time over them. */
    private static final ClassValue<List<RecordComponent>> ALL_MEMBERS = new ClassValue<>() {
        @Override
        protected List<RecordComponent> computeValue(Class<?> record) {
            List<RecordComponent> members = List.of(record.getRecordComponents());
            members.forEach(member -> member.getAccessor().setAccessible(true));
            return members;
        }
    };
    private static final ClassValue<List<RecordComponent>> MEMBERS = new ClassValue<>() {
        @Override
        protected List<RecordComponent> computeValue(Class<?> record) {
            return ALL_MEMBERS.get(record).stream().filter(member -> !RecordMembers.isIgnored(member.getName())).toList();
        }
    };

    /** What steps were called earlier, and are called today. */
    private final Map<String, String> renamed;

    RecordValues(Map<String, String> renamed) {
        this.renamed = Map.copyOf(renamed);
    }

    /** Without its place and wrapping; null for nothing. */
    static Object plain(Object value) {
        if (value instanceof Optional<?> optional) {
            return plain(optional.orElse(null));
        }
        if (value instanceof Written<?> written) {
            return plain(written.value());
        }
        boolean nothing = value instanceof String text && text.isEmpty() || value instanceof SourceText;
        return nothing ? null : value;
    }

    static List<RecordComponent> members(Object value) {
        return MEMBERS.get(value.getClass());
    }

    /** The first step begins, whether the text says so or lets it go without saying. */
    static Object member(Object of, RecordComponent member) {
        boolean unsaid = of instanceof StepGraph steps && member.getName().equals("begin") && steps.begin().isEmpty();
        return plain(unsaid ? ((StepGraph) of).first().map(Step::name) : raw(of, member));
    }

    private static Object raw(Object of, RecordComponent member) {
        try {
            return member.getAccessor().invoke(of);
        } catch (IllegalAccessException | InvocationTargetException hidden) {
            throw new IllegalStateException("a record of the procedure hides " + member.getName(), hidden);
        }
    }

    /** Where a member stands in its text, its wrapping looked at too; absent for what has no place of its own. */
    static Optional<SourceRange> place(Object of, RecordComponent member) {
        return place(raw(of, member));
    }

    /** Where something stands in its text: a thing with a name at its name. */
    static Optional<SourceRange> place(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.flatMap(RecordValues::place);
        }
        if (value instanceof Written<?> written) {
            return Optional.of(written.at());
        }
        if (value instanceof Name name) {
            return Optional.of(name.at());
        }
        if (value instanceof Declaration declared) {
            return Optional.of(declared.name().at());
        }
        if (value instanceof List<?> list) {
            return list.isEmpty() ? Optional.empty() : place(list.get(0));
        }
        if (value instanceof SourceRange at) {
            return Optional.of(at);
        }
        return value == null || !value.getClass().isRecord() ? Optional.empty()
                : ALL_MEMBERS.get(value.getClass()).stream().filter(member -> member.getType() == SourceRange.class
                        && member.getName().equals("at")).findFirst().flatMap(member -> place(raw(value, member)));
    }

    /** Whether both mean the same: 5 V and 5000 mV do. */
    boolean same(Object was, Object now) {
        Object one = plain(was);
        Object other = plain(now);
        if (one == null || other == null) {
            return one == other;
        }
        if (one instanceof Name first && other instanceof Name second) {
            return today(first).equals(second.text());
        }
        if (one instanceof Quantity first && other instanceof Quantity second) {
            return first.unit().isKnown() && second.unit().isKnown() ? first.dimension().equals(second.dimension())
                    && first.base().equals(second.base()) : first.spelling().equals(second.spelling());
        }
        if (one instanceof Limit first && other instanceof Limit second) {
            return sameLimit(first, second);
        }
        if (one instanceof List<?> first && other instanceof List<?> second) {
            return first.size() == second.size() && first.stream().allMatch(item -> second.stream().anyMatch(like -> same(item, like)));
        }
        if (one instanceof SourceRange && other instanceof SourceRange) {
            return true;
        }
        boolean records = one.getClass().isRecord() && one.getClass() == other.getClass();
        return records ? members(one).stream().allMatch(member -> same(member(one, member), member(other, member))) : one.equals(other);
    }

    private static boolean sameLimit(Limit one, Limit other) {
        Optional<QuantityKind> kind = kindOf(one);
        return one.spelling().equals(other.spelling()) || kind.isPresent() && kind.equals(kindOf(other))
                && one.interval(kind.get()).equals(other.interval(kind.get()));
    }

    /** Some kind of quantity with the dimension of the limit; absent where its unit is not known. */
    static Optional<QuantityKind> kindOf(Limit limit) {
        return limit.quantities().stream().filter(quantity -> quantity.unit().isKnown() && !quantity.unit().isLogarithmic()).findFirst()
                .flatMap(quantity -> Arrays.stream(QuantityKind.values()).filter(kind -> quantity.fits(kind)).findFirst());
    }

    /** What the step that was called so is called now. */
    String today(String earlier) {
        return renamed.getOrDefault(earlier, earlier);
    }

    private String today(Name earlier) {
        return today(earlier.text());
    }

    String words(Object value) {
        Object plain = plain(value);
        if (plain == null) {
            return Difference.ABSENT;
        }
        if (plain instanceof Name name) {
            return today(name);
        }
        if (plain instanceof List<?> list) {
            return list.isEmpty() ? Difference.ABSENT : list.stream().map(this::words).collect(Collectors.joining(", "));
        }
        if (plain instanceof Setting setting) {
            return setting.condition() + " " + setting.value();
        }
        if (plain instanceof Source source) {
            return source.document() + source.dated().map(day -> ", " + day).orElse("");
        }
        if (plain instanceof Accuracy accuracy) {
            return accuracy(accuracy);
        }
        if (plain instanceof Point.Carried carried) {
            return "up to " + carried.upTo().value() + ", " + carried.kind().words()
                    + carried.frequency().map(frequency -> " at " + frequency).orElse("");
        }
        if (plain instanceof Boolean said) {
            return said ? "yes" : Difference.ABSENT;
        }
        if (plain instanceof Isolation isolation) {
            return isolation.when().isEmpty() ? "always" : "when " + words(isolation.when());
        }
        if (plain instanceof ProtectionClass protection) {
            return protection.name();
        }
        if (plain instanceof Outcome.Repeat repeat) {
            return "at most " + repeat.atMost() + " times, else " + today(repeat.otherwise());
        }
        if (plain instanceof Showing showing) {
            return today(showing.step()) + " " + words(showing.possible());
        }
        if (plain instanceof Showing.Possible possible) {
            return possible.words() + possible.share().map(share -> " " + share + " %").orElse("");
        }
        return other(plain);
    }

    /** As a data sheet says it: {@code 2 % of reading + 3 digits}. */
    private static String accuracy(Accuracy accuracy) {
        List<String> parts = new ArrayList<>();
        part(parts, accuracy.percentOfReading(), " % of reading");
        part(parts, accuracy.percentOfRange(), " % of range");
        part(parts, accuracy.digits(), accuracy.digits().equals(Exact.of(1)) ? " digit" : " digits");
        accuracy.amount().ifPresent(amount -> parts.add(amount.toString()));
        return parts.isEmpty() ? "without error" : String.join(" + ", parts);
    }

    private static void part(List<String> parts, Exact share, String of) {
        if (share.signum() != 0) {
            parts.add(share + of);
        }
    }

    private String other(Object plain) {
        if (plain instanceof QuantityKind kind) {
            return kind.words();
        }
        if (plain instanceof Hazard hazard) {
            return hazard.word();
        }
        if (plain instanceof Limit limit) {
            return limit.spelling();
        }
        if (plain instanceof SourceRange) {
            return "yes";
        }
        if (plain instanceof Enum<?> constant) {
            return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
        boolean speaks = plain instanceof Quantity || plain instanceof Exact || plain instanceof Formula || !plain.getClass().isRecord();
        if (speaks) {
            return plain.toString();
        }
        if (plain instanceof Declaration declared && !declared.title().isEmpty()) {
            return declared.title();
        }
        List<String> parts = new ArrayList<>();
        for (RecordComponent member : members(plain)) {
            Object part = member(plain, member);
            if (part != null && !(part instanceof SourceRange) && !(part instanceof List<?> list && list.isEmpty()) && !Boolean.FALSE.equals(part)) {
                parts.add(parts.isEmpty() ? words(part) : RecordMembers.words(member.getName()) + " " + words(part));
            }
        }
        return parts.isEmpty() ? plain.getClass().getSimpleName().toLowerCase(Locale.ROOT) : String.join(", ", parts);
    }
}
