/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Finds units by their spelling. ASCII and Unicode spellings are the same unit: {@code ohm} and {@code Ω}. */
public final class Units {
    private static final int LONGEST_SPELLING = 40;
    private static final int MOST_KEPT = 2000;
    private static final Map<String, UnitTable.Entry> ENTRIES = bySpelling();
    private static final Map<String, Unit> FOUND = new ConcurrentHashMap<>();

    private Units() {
    }

    /** Proposals in the order of the bench: electrical, time, temperature, mechanical, ratios, compounds, levels. */
    private static final class Proposed {
        static final List<Unit> ALL = proposals();
        static final Map<String, Unit> BY_CODE = byCode();

        private static List<Unit> proposals() {
            List<Unit> units = new ArrayList<>();
            for (UnitTable.Entry entry : UnitTable.ENTRIES) {
                units.add(entry.unit());
                entry.prefixes().chars().mapToObj(Character::toString).flatMap(p -> Prefix.spelled(p).stream())
                        .forEach(prefix -> units.add(prefixed(prefix, entry.unit())));
            }
            return List.copyOf(units);
        }

        private static Map<String, Unit> byCode() {
            Map<String, Unit> units = new LinkedHashMap<>();
            ALL.forEach(unit -> units.putIfAbsent(unit.ucum(), unit));
            return units;
        }
    }

    private static Map<String, UnitTable.Entry> bySpelling() {
        Map<String, UnitTable.Entry> entries = new LinkedHashMap<>();
        for (UnitTable.Entry entry : UnitTable.ENTRIES) {
            entries.put(entry.spelling(), entry);
            entry.alsoKnown().forEach(spelling -> entries.put(spelling, entry));
        }
        return entries;
    }

    /**
     * The unit with that spelling: of the bench's table, with any of the 24 SI prefixes where it takes
     * prefixes, or a product or quotient such as {@code uV/degC}, in which degC means a difference.
     *
     * @return {@link Unit#MISSING} for no text at all, {@link Unit#unknown} when no unit is spelled so
     */
    public static Unit named(String spelling) {
        String stripped = spelling.strip();
        if (stripped.isEmpty()) {
            return Unit.MISSING;
        }
        if (stripped.length() > LONGEST_SPELLING) {
            return Unit.unknown(stripped);
        }
        Unit known = FOUND.get(stripped);
        if (known != null) {
            return known;
        }
        Optional<Unit> found = find(UnitSpelling.plain(stripped));
        if (FOUND.size() < MOST_KEPT) {
            found.ifPresent(unit -> FOUND.put(stripped, unit));
        }
        return found.orElseGet(() -> Unit.unknown(stripped));
    }

    private static Optional<Unit> find(String plain) {
        return single(plain).or(() -> CompoundUnit.read(plain));
    }

    /** A unit of the table, with or without a prefix. */
    static Optional<Unit> single(String plain) {
        UnitTable.Entry entry = ENTRIES.get(plain);
        if (entry != null) {
            return Optional.of(entry.unit());
        }
        for (int length = 1; length <= 2 && length < plain.length(); length++) {
            UnitTable.Entry stem = ENTRIES.get(plain.substring(length));
            Optional<Prefix> prefix = Prefix.spelled(plain.substring(0, length));
            if (stem != null && stem.takesPrefixes() && prefix.isPresent()) {
                return Optional.of(prefixed(prefix.get(), stem.unit()));
            }
        }
        return Optional.empty();
    }

    private static Unit prefixed(Prefix prefix, Unit unit) {
        return new Unit(prefix.symbol() + unit.symbol(), prefix.ascii() + unit.ucum(), unit.dimension(),
                unit.factor().times(prefix.factor()), Exact.ZERO, Unit.Status.KNOWN);
    }

    /**
     * The unit with that UCUM code, as exported trees carry it; absent when the code is none, or names a unit
     * that the bench does not use.
     */
    public static Optional<Unit> ofUcum(String code) {
        Unit known = Proposed.BY_CODE.get(code);
        return known != null ? Optional.of(known)
                : UcumCode.read(code).map(product -> new Unit(UnitSpelling.printed(code), code, product.dimension(),
                        product.factor(), Exact.ZERO, Unit.Status.KNOWN));
    }

    /** The spelling that the language writes for it, in ASCII: {@code kohm} for the unit printed as kΩ. */
    public static String spelling(Unit unit) {
        return unit.isKnown() ? UnitSpelling.plain(unit.symbol()) : unit.symbol();
    }

    /** The units to propose while typing, with the prefixes a bench uses. */
    public static List<Unit> all() {
        return Proposed.ALL;
    }

    /** The units in which a reading of that kind can be written, its usual unit first. */
    public static List<Unit> of(QuantityKind kind) {
        Unit usual = named(kind.usualUnit());
        List<Unit> units = new ArrayList<>(List.of(usual));
        all().stream().filter(unit -> !unit.isLogarithmic() && unit.dimension().equals(kind.dimension())
                && !unit.equals(usual)).forEach(units::add);
        return List.copyOf(units);
    }

    /** The spelling of the unit that was probably meant, such as {@code kHz} for {@code khz} and {@code V} for {@code volt}. */
    public static Optional<String> nearest(String spelling) {
        return NearestUnit.among(all(), spelling);
    }

    /** As {@link #nearest(String)}, among the units of that kind first. */
    public static Optional<String> nearest(String spelling, QuantityKind kind) {
        return NearestUnit.among(of(kind), spelling).or(() -> nearest(spelling));
    }

    /** The same unit with the prefix that puts the value between 1 and 1000, where such a one is in use; else the unit given. */
    static Unit readable(Exact base, Unit like) {
        if (!like.offset().equals(Exact.ZERO) || like.isLogarithmic()) {
            return like;
        }
        String stem = stem(like);
        Exact thousand = Exact.of(1000);
        return all().stream().filter(unit -> !unit.isLogarithmic() && unit.dimension().equals(like.dimension())
                && stem(unit).equals(stem) && !unit.ucum().startsWith("c"))
                .filter(unit -> {
                    Exact shown = base.absolute().dividedBy(unit.factor());
                    return shown.compareTo(Exact.ONE) >= 0 && shown.compareTo(thousand) < 0;
                }).findFirst().orElse(like);
    }

    private static String stem(Unit unit) {
        String spelling = spelling(unit);
        boolean whole = ENTRIES.containsKey(spelling) || spelling.length() < 2;
        return whole ? spelling : spelling.substring(1);
    }
}
