/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.ProtectionClass;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/**
 * What a technician must have been told before a step: from the hazards that the step, its points, its
 * parts and the faults it remedies declare, from the voltages at its points, from charge that may be
 * stored, from what it reads to be hot, to turn or to be under pressure, and from data it wipes. The voltages are held against {@link VoltageLimit}.
 */
public final class SafetyNeeds {
    /** The burn threshold of uncoated metal for one second, ISO 13732-1, from memory: 65 degC; in kelvin. */
    private static final Exact BURNS = Exact.of("338.15");
    /** Half a bar above the air around, where pressure equipment begins (directive 2014/68/EU, from memory); in pascal, as a gauge shows it. */
    private static final Exact UNDER_PRESSURE = Exact.of(50_000);
    /** The standard atmosphere, ISO 2533; in pascal. */
    private static final Exact AIR = Exact.of(101_325);
    /** A reading on both sides of {@link #AIR} that keeps to half a bar of it or so is one of the air around; in pascal. */
    private static final Interval AIR_AROUND = Interval.from(Bound.including(Exact.of(50_000)), Bound.including(Exact.of(150_000)));

    /** What a reading alone tells of, besides voltages. */
    private static final Set<QuantityKind> TELLING = EnumSet.of(QuantityKind.TEMPERATURE, QuantityKind.SPEED, QuantityKind.PRESSURE);

    private final ProcedurePaths paths;
    private final List<Condition> live;
    private final List<Condition> charged;
    private final List<Fault> hazardous;
    private final UnitVoltage unit;
    /** By the place: what is asked of it again in each of its states. */
    private final Map<InlinedStep, List<Point>> points = Collections.synchronizedMap(new IdentityHashMap<>());
    private final Map<InlinedStep, List<SafetyNeed>> readVoltages = Collections.synchronizedMap(new IdentityHashMap<>());

    public SafetyNeeds(ProcedurePaths paths) {
        this.paths = paths;
        this.unit = UnitVoltage.of(paths);
        this.live = paths.bench().live();
        this.hazardous = paths.map().procedure().faults().stream().filter(fault -> !fault.hazards().isEmpty()).toList();
        this.charged = paths.bench().charged();
    }

    /** What must have been told at a place in this state, each hazard once, with the reason that weighs most. */
    public List<SafetyNeed> at(BenchStates.State state) {
        InlinedStep place = state.place();
        if (!place.isStep()) {
            return List.of();
        }
        List<SafetyNeed> found = new ArrayList<>();
        declared(place, found);
        fromFaults(place, found);
        fromVoltages(state, found);
        fromOtherReadings(state, found);
        fromCharge(state, found);
        fromLiveWork(place, found);
        fromEnergising(state, found);
        fromWiping(place, found);
        return found.size() < 2 ? found : eachOnce(found);
    }

    private static List<SafetyNeed> eachOnce(List<SafetyNeed> found) {
        Map<Hazard, SafetyNeed> needs = new LinkedHashMap<>();
        found.forEach(need -> needs.merge(need.hazard(), need, SafetyNeed::or));
        return List.copyOf(needs.values());
    }

    /** Whoever works live on purpose must know of the voltage; where no point tells it, it may be any. */
    private void fromLiveWork(InlinedStep place, List<SafetyNeed> needs) {
        boolean asks = place.step().frame().precautions().liveBecause().isPresent();
        if (asks && (unit.isUnknown() || unit.dangerous().isPresent())) {
            needs.add(new SafetyNeed(Hazard.SHOCK, "it is done live, " + unit.dangerous().map(point -> "and " + point.name()
                    + " carries up to " + point.carries().orElseThrow().upTo().value().spelling()).orElse("and no point says what the unit carries"),
                    false));
        }
    }

    /**
     * Whoever switches an open unit on brings the voltage within reach of the hands at that moment: a note read long before does not tell of it. A
     * battery that is put in brings its own.
     */
    private void fromEnergising(BenchStates.State state, List<SafetyNeed> needs) {
        boolean battery = state.place().handles().stream().flatMap(name -> paths.map().scope().part(name).stream())
                .anyMatch(part -> part.hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.BATTERY));
        if (!battery && !state.openWhenMadeLive().isEmpty()) {
            unit.dangerous().map(point -> point.name() + " carries up to " + point.carries().orElseThrow().upTo().value().spelling()).or(this::mainsInside)
                    .map(why -> switchesOn(why, false))
                    .or(() -> Optional.of(switchesOn("no point says what the unit carries", true)).filter(any -> unit.isUnknown()))
                    .ifPresent(needs::add);
        }
    }

    private static SafetyNeed switchesOn(String why, boolean advised) {
        return new SafetyNeed(Hazard.SHOCK, "it switches on while something is open, and " + why, advised, true);
    }

    /** Mains comes into a unit of class I and II, whatever its points say (IEC 61140); one of class III is fed by extra-low voltage. */
    private Optional<String> mainsInside() {
        return paths.map().procedure().equipment().flatMap(Equipment::protection).map(Written::value).filter(protection -> protection != ProtectionClass.III)
                .map(protection -> "mains is inside a unit of class " + protection);
    }

    private void declared(InlinedStep place, List<SafetyNeed> needs) {
        add(needs, place.hazards(), "it", "declares");
        points(place).forEach(point -> add(needs, point.hazards(), point.name().text(), "declares"));
        place.handles().forEach(name -> paths.map().scope().part(name).ifPresent(part -> add(needs, part.hazards(), part.name().text(), "declares")));
    }

    private void fromFaults(InlinedStep place, List<SafetyNeed> needs) {
        if (place.caller().isEmpty() && !hazardous.isEmpty()) {
            hazardous.stream().filter(fault -> fault.remedies().stream().anyMatch(name -> isNamed(place, name)))
                    .forEach(fault -> add(needs, fault.hazards(), "it", "remedies " + fault.name() + ", which declares"));
        }
    }

    private static boolean isNamed(InlinedStep place, Name name) {
        return place.step().name().text().equals(name.text());
    }

    private static void add(List<SafetyNeed> needs, List<Written<Hazard>> hazards, String who, String tells) {
        hazards.forEach(hazard -> needs.add(new SafetyNeed(hazard.value(), who + " " + tells + " " + hazard.value().word(), false)));
    }

    private List<Point> points(InlinedStep place) {
        return place.step() instanceof Step.Measure measure
                ? points.computeIfAbsent(place, any -> ProbePoints.points(measure, paths.map().scope())) : List.of();
    }

    private void fromVoltages(BenchStates.State state, List<SafetyNeed> needs) {
        InlinedStep place = state.place();
        if (!(place.step() instanceof Step.Measure measure) || !mayBeEnergised(state)) {
            return;
        }
        List<Point> points = points(place);
        boolean cutOff = !points.isEmpty();
        for (Point point : points) {
            if (!isOutOfReach(state, point)) {
                cutOff = false;
                point.carries().ifPresent(carried -> above(carried.kind(), carried.upTo().value().fits(carried.kind()) ? carried.upTo().value().base() : Exact.ZERO,
                        () -> point.name() + " carries up to " + carried.upTo().value().spelling() + form(carried.kind()), needs));
            }
        }
        if (!cutOff) {
            needs.addAll(readVoltages.computeIfAbsent(place, any -> fromReading(measure)));
        }
    }

    private static List<SafetyNeed> fromReading(Step.Measure measure) {
        List<SafetyNeed> needs = new ArrayList<>();
        Optional<QuantityKind> kind = measure.kind().map(Written::value).filter(QuantityKind::isVoltage);
        kind.ifPresent(voltage -> limits(measure).filter(limit -> limit.fits(voltage)).forEach(limit ->
                above(voltage, highest(limit.interval()), () -> "it reads " + limit.spelling() + form(voltage), needs)));
        return needs;
    }

    /** What is read to be hot, to turn in the open unit or to be under pressure is so. */
    private static void fromOtherReadings(BenchStates.State state, List<SafetyNeed> needs) {
        if (state.place().step() instanceof Step.Measure measure && measure.kind().map(Written::value).filter(TELLING::contains).isPresent()) {
            QuantityKind kind = measure.kind().get().value();
            limits(measure).filter(limit -> limit.fits(kind)).forEach(limit -> {
                Exact highest = highest(limit.interval(kind));
                if (kind == QuantityKind.TEMPERATURE && highest.compareTo(BURNS) > 0) {
                    needs.add(new SafetyNeed(Hazard.HEAT, "it reads " + limit.spelling() + ", above 65 degC, where bare metal burns at a touch (ISO 13732-1)", false));
                } else if (kind == QuantityKind.SPEED && highest.signum() > 0 && state.isOpen()) {
                    needs.add(new SafetyNeed(Hazard.MOTION, "it reads " + limit.spelling() + " in the open unit", false));
                } else if (kind == QuantityKind.PRESSURE && highest.compareTo(UNDER_PRESSURE) > 0
                        && !isOfTheAir(limit.interval(kind))) {
                    needs.add(new SafetyNeed(Hazard.PRESSURE, "it reads " + limit.spelling() + ", above half a bar", true));
                }
            });
        }
    }

    /** Up to 8 bar takes in the air too, and is no reading of it. */
    private static boolean isOfTheAir(Interval reading) {
        return reading.contains(AIR) && AIR_AROUND.contains(reading);
    }

    /** Whether what a step reads tells of no danger, wherever it is read. */
    public static boolean isHarmless(Step.Measure measure) {
        Optional<QuantityKind> kind = measure.kind().map(Written::value).filter(known -> !TELLING.contains(known));
        return kind.isPresent() && (!kind.get().isVoltage() || limits(measure).filter(limit -> limit.fits(kind.get()))
                .allMatch(limit -> VoltageLimit.exceededBy(kind.get(), highest(limit.interval())).isEmpty()));
    }

    private static Stream<Limit> limits(Step.Measure measure) {
        return Stream.concat(measure.readings().stream().flatMap(reading -> reading.expects().stream())
                .map(expected -> expected.limit().value()), measure.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                        .map(head -> ((Outcome.Band) head).limit().value()));
    }

    private static Exact highest(Interval interval) {
        return Stream.of(interval.lower(), interval.upper()).flatMap(Optional::stream).map(Bound::value)
                .map(Exact::absolute).reduce(Exact.ZERO, Exact::max);
    }

    private static void above(QuantityKind kind, Exact volts, Supplier<String> what, List<SafetyNeed> needs) {
        VoltageLimit.exceededBy(kind, volts).ifPresent(limit -> needs.add(new SafetyNeed(Hazard.SHOCK, what.get() + ", above "
                + limit.volts(kind).orElseThrow() + " V" + form(kind) + " (" + limit.source() + ")",
                !limit.asksForNote())));
    }

    private static String form(QuantityKind kind) {
        return kind == QuantityKind.DC_VOLTAGE ? " dc" : kind == QuantityKind.AC_VOLTAGE_RMS ? " ac rms" : " ac peak";
    }

    /** Without any condition that is live when something, nobody knows, and it may be. */
    private boolean mayBeEnergised(BenchStates.State state) {
        return live.isEmpty() || state.isEnergised();
    }

    /** What is isolated here and declares no charge of its own. */
    private static boolean isOutOfReach(BenchStates.State state, Point point) {
        return state.keepsAway(point.isolated()) && point.stores().isEmpty()
                && point.hazards().stream().noneMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE);
    }

    private void fromCharge(BenchStates.State state, List<SafetyNeed> needs) {
        if (charged.isEmpty() || charged.stream().noneMatch(state::isCharged)) {
            return;
        }
        InlinedStep place = state.place();
        boolean handles = PartContact.inside(place, paths.map().scope()).stream()
                .anyMatch(name -> !state.keepsAway(paths.map().scope().part(name).flatMap(Part::isolated)));
        boolean probes = probes(place) && points(place).stream().anyMatch(point -> !isOutOfReach(state, point) && !isHarmlessReading(place, point)
                && !isOutside(state, point));
        if (probes || handles) {
            charged.stream().filter(state::isCharged).forEach(condition -> needs.add(new SafetyNeed(Hazard.STORED_CHARGE,
                    "charge may still be stored (" + condition.name() + ")", false)));
        }
    }

    /** An alternating voltage met while the unit is closed, as at an outlet or a plug: a charge that is stored is out of reach inside. */
    private boolean isOutside(BenchStates.State state, Point point) {
        boolean reads = state.place().step() instanceof Step.Measure measure && measure.kind().filter(kind -> kind.value().isAlternating()).isPresent();
        return reads && hasClosure() && !state.isOpen() && !state.movesClosure() && point.stores().isEmpty()
                && point.hazards().stream().noneMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE)
                && point.carries().filter(carried -> carried.kind().isAlternating()).isPresent();
    }

    private boolean hasClosure() {
        return paths.map().scope().conditions().stream().anyMatch(Closures::isClosure);
    }

    /** A voltage or current read where no more than extra-low voltage is met: no charge there is higher. */
    private static boolean isHarmlessReading(InlinedStep place, Point point) {
        boolean fed = place.step() instanceof Step.Measure measure
                && measure.kind().filter(kind -> kind.value().needsDeadCircuit()).isPresent();
        return !fed && point.hazards().stream().noneMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE) && point.carries()
                .filter(carried -> carried.upTo().value().fits(carried.kind()))
                .filter(carried -> VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point))
                        .filter(VoltageLimit::asksForNote).isEmpty()).isPresent();
    }

    /** Whether the circuit itself is touched: a temperature or a speed is taken from outside. */
    private boolean probes(InlinedStep place) {
        return place.step() instanceof Step.Measure measure && !points(place).isEmpty() && measure.kind()
                .map(Written::value).filter(kind -> kind.isVoltage() || kind.isCurrent() || kind.needsDeadCircuit())
                .isPresent();
    }

    private static void fromWiping(InlinedStep place, List<SafetyNeed> needs) {
        if (place.step() instanceof Step.Do task && task.erases().isPresent()) {
            needs.add(new SafetyNeed(Hazard.DATA_LOSS, "it erases " + task.erases().get().value(), false));
        }
    }
}
