/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.faultwright.quantity.Dimension.CAPACITANCE;
import static org.faultwright.quantity.Dimension.CHARGE;
import static org.faultwright.quantity.Dimension.CURRENT;
import static org.faultwright.quantity.Dimension.ENERGY;
import static org.faultwright.quantity.Dimension.FORCE;
import static org.faultwright.quantity.Dimension.FREQUENCY;
import static org.faultwright.quantity.Dimension.INDUCTANCE;
import static org.faultwright.quantity.Dimension.LENGTH;
import static org.faultwright.quantity.Dimension.MASS;
import static org.faultwright.quantity.Dimension.NONE;
import static org.faultwright.quantity.Dimension.POWER;
import static org.faultwright.quantity.Dimension.PRESSURE;
import static org.faultwright.quantity.Dimension.RESISTANCE;
import static org.faultwright.quantity.Dimension.TEMPERATURE;
import static org.faultwright.quantity.Dimension.TIME;
import static org.faultwright.quantity.Dimension.VOLTAGE;
import static org.faultwright.quantity.Dimension.VOLUME;

import java.util.ArrayList;
import java.util.List;

/**
 * The units of the bench with their exact factors. They are written down rather than taken from a units
 * library (JSR 385 with UCUM): that one needs half a second for its first unit, and does not run where each
 * jar is an OSGi bundle. A test holds every entry, and products of them, against that library.
 */
final class UnitTable {
    /**
     * One unit.
     *
     * @param spelling   in ASCII, as the language writes it
     * @param alsoKnown  further spellings
     * @param prefixes   the SI prefixes proposed with it, one letter each; any of the 24 is read if there is one here
     */
    record Entry(String spelling, Unit unit, String prefixes, List<String> alsoKnown) {
        boolean takesPrefixes() {
            return !prefixes.isEmpty();
        }
    }

    /** π to 35 significant digits: angles are exact among themselves, not in radian. */
    private static final Exact PI = Exact.of("3.1415926535897932384626433832795029");
    private static final Exact RANKINE = Exact.ratio(5, 9);
    private static final Exact ZERO_CELSIUS = Exact.of("273.15");
    private static final Dimension AREA = LENGTH.power(2);
    private static final Dimension VELOCITY = LENGTH.per(TIME);

    static final List<Entry> ENTRIES = new UnitTable().entries();

    private final List<Entry> entries = new ArrayList<>();

    private UnitTable() {
        electrical();
        timeAndTemperature();
        mechanical();
        ratios();
        compounds();
        levels();
    }

    private List<Entry> entries() {
        return List.copyOf(entries);
    }

    private void electrical() {
        metric("V", "V", VOLTAGE, "1", "munk");
        metric("A", "A", CURRENT, "1", "munpk");
        add("ohm", "Ω", "Ohm", RESISTANCE, Exact.ONE, "mkMGT", "Ohm");
        metric("W", "W", POWER, "1", "mukM");
        metric("F", "F", CAPACITANCE, "1", "pnum");
        metric("H", "H", INDUCTANCE, "1", "pnum");
        metric("Hz", "Hz", FREQUENCY, "1", "kMG");
        metric("S", "S", RESISTANCE.power(-1), "1", "mun");
        metric("C", "C", CHARGE, "1", "mun");
        metric("J", "J", ENERGY, "1", "muk");
        metric("Wb", "Wb", VOLTAGE.times(TIME), "1", "mu");
        metric("T", "T", VOLTAGE.times(TIME).per(AREA), "1", "mun");
        metric("VA", "V.A", POWER, "1", "mk");
        metric("var", "V.A{reactive}", POWER, "1", "mk");
        metric("Ah", "A.h", CHARGE, "3600", "m");
        metric("Wh", "W.h", ENERGY, "3600", "mk");
        metric("eV", "eV", ENERGY, "1.602176634e-19", "kM");
        metric("cd", "cd", new Dimension(0, 0, 0, 0, 0, 0, 1), "1", "m");
        metric("lm", "lm", new Dimension(0, 0, 0, 0, 0, 0, 1), "1", "k");
        metric("lx", "lx", new Dimension(-2, 0, 0, 0, 0, 0, 1), "1", "k");
        metric("mol", "mol", new Dimension(0, 0, 0, 0, 0, 1, 0), "1", "mu");
    }

    private void timeAndTemperature() {
        metric("s", "s", TIME, "1", "pnum");
        fixed("min", "min", "min", TIME, "60");
        fixed("h", "h", "h", TIME, "3600");
        fixed("d", "d", "d", TIME, "86400");
        // the mean month of UCUM, a twelfth of 365.25 d: for calibration intervals
        add("months", "months", "mo", TIME, Exact.of("2629800"), "", "month");
        metric("K", "K", TEMPERATURE, "1", "mu");
        entries.add(new Entry("degC", known("°C", "Cel", TEMPERATURE, Exact.ONE, ZERO_CELSIUS), "", List.of()));
        entries.add(new Entry("degF", known("°F", "[degF]", TEMPERATURE, RANKINE,
                Exact.of("459.67").times(RANKINE)), "", List.of()));
        add("rpm", "rpm", "{rev}/min", FREQUENCY, Exact.ratio(1, 60), "", "r/min");
    }

    private void mechanical() {
        metric("m", "m", LENGTH, "1", "kcmun");
        fixed("in", "in", "[in_i]", LENGTH, "0.0254");
        fixed("mil", "mil", "[mil_i]", LENGTH, "0.0000254");
        fixed("ft", "ft", "[ft_i]", LENGTH, "0.3048");
        metric("g", "g", MASS, "0.001", "kmu");
        fixed("t", "t", "t", MASS, "1000");
        fixed("lb", "lb", "[lb_av]", MASS, "0.45359237");
        fixed("oz", "oz", "[oz_av]", MASS, "0.028349523125");
        metric("N", "N", FORCE, "1", "mk");
        fixed("lbf", "lbf", "[lbf_av]", FORCE, "4.4482216152605");
        fixed("kgf", "kgf", "kgf", FORCE, "9.80665");
        fixed("gf", "gf", "gf", FORCE, "0.00980665");
        metric("Pa", "Pa", PRESSURE, "1", "hkM");
        metric("bar", "bar", PRESSURE, "100000", "m");
        entries.add(new Entry("psi", known("psi", "[psi]", PRESSURE,
                Exact.of("4.4482216152605").dividedBy(Exact.of("0.00064516")), Exact.ZERO), "", List.of()));
        fixed("atm", "atm", "atm", PRESSURE, "101325");
        fixed("mmHg", "mmHg", "mm[Hg]", PRESSURE, "133.322");
        add("L", "L", "L", VOLUME, Exact.of("0.001"), "mu", "l");
        fixed("m2", "m²", "m2", AREA, "1");
        fixed("cm2", "cm²", "cm2", AREA, "0.0001");
        fixed("mm2", "mm²", "mm2", AREA, "0.000001");
        fixed("m3", "m³", "m3", VOLUME, "1");
        fixed("cm3", "cm³", "cm3", VOLUME, "0.000001");
    }

    private void ratios() {
        add("1", "1", "1", NONE, Exact.ONE, "");
        add("%", "%", "%", NONE, Exact.of("0.01"), "", "percent");
        add("permille", "‰", "[ppth]", NONE, Exact.of("0.001"), "");
        fixed("ppm", "ppm", "[ppm]", NONE, "0.000001");
        fixed("ppb", "ppb", "[ppb]", NONE, "0.000000001");
        add("counts", "counts", "{count}", NONE, Exact.ONE, "", "count");
        metric("rad", "rad", NONE, "1", "mu");
        add("deg", "°", "deg", NONE, PI.dividedBy(Exact.of(180)), "");
        metric("sr", "sr", NONE, "1", "m");
    }

    private void compounds() {
        metric("N.m", "N.m", ENERGY, "1", "mkc");
        fixed("lbf.in", "lbf·in", "[lbf_av].[in_i]", ENERGY, "0.1129848290276167");
        fixed("lbf.ft", "lbf·ft", "[lbf_av].[ft_i]", ENERGY, "1.3558179483314004");
        metric("m/s", "m/s", VELOCITY, "1", "mkcu");
        fixed("km/h", "km/h", "km/h", VELOCITY, Exact.ratio(1000, 3600));
        metric("m/s2", "m/s2", VELOCITY.per(TIME), "1", "m");
        metric("V/s", "V/s", VOLTAGE.per(TIME), "1", "mkM");
        fixed("V/ms", "V/ms", "V/ms", VOLTAGE.per(TIME), "1000");
        fixed("V/us", "V/µs", "V/us", VOLTAGE.per(TIME), "1000000");
        metric("A/s", "A/s", CURRENT.per(TIME), "1", "mkM");
        // the sensitivity of a bridge: output for each volt of its supply
        metric("V/V", "V/V", NONE, "1", "mu");
        metric("V/A", "V/A", RESISTANCE, "1", "mk");
        metric("A/V", "A/V", RESISTANCE.power(-1), "1", "mu");
        metric("V/K", "V/K", VOLTAGE.per(TEMPERATURE), "1", "mu");
        metric("V/m", "V/m", VOLTAGE.per(LENGTH), "1", "mk");
        metric("ohm.m", "Ohm.m", RESISTANCE.times(LENGTH), "1", "mk");
        metric("ohm/m", "Ohm/m", RESISTANCE.per(LENGTH), "1", "mk");
        metric("K/W", "K/W", TEMPERATURE.per(POWER), "1", "m");
        fixed("K/s", "K/s", "K/s", TEMPERATURE.per(TIME), "1");
        fixed("K/min", "K/min", "K/min", TEMPERATURE.per(TIME), Exact.ratio(1, 60));
        fixed("ppm/K", "ppm/K", "[ppm]/K", TEMPERATURE.power(-1), "0.000001");
        fixed("%/K", "%/K", "%/K", TEMPERATURE.power(-1), "0.01");
        fixed("A2.s", "A²·s", "A2.s", CURRENT.power(2).times(TIME), "1");
        metric("V.s", "V.s", VOLTAGE.times(TIME), "1", "mu");
        fixed("L/min", "L/min", "L/min", VOLUME.per(TIME), Exact.ratio(1, 60000));
        fixed("mL/min", "mL/min", "mL/min", VOLUME.per(TIME), Exact.ratio(1, 60000000));
        fixed("m3/h", "m³/h", "m3/h", VOLUME.per(TIME), Exact.ratio(1, 3600));
        fixed("1/s", "1/s", "/s", FREQUENCY, "1");
        fixed("1/min", "1/min", "/min", FREQUENCY, Exact.ratio(1, 60));
    }

    /** The factor of a level is its reference value in the coherent SI unit; {@link DecibelLevels} has the formulas. */
    private void levels() {
        // A-weighted sound level over 20 µPa (IEC 61672-1); UCUM has dB[SPL] and leaves the weighting to a remark in braces
        add("dB(A)", "dB(A)", "dB[SPL]{A}", Dimension.SOUND_LEVEL, Exact.ONE, "", "dBA");
        level("dB", "dB", NONE, "1");
        level("dBV", "dB[V]", VOLTAGE, "1");
        level("dBmV", "dB[mV]", VOLTAGE, "0.001");
        level("dBuV", "dB[uV]", VOLTAGE, "0.000001");
        level("dBW", "dB[W]", POWER, "1");
        level("dBm", "dB{1mW}", POWER, "0.001");
    }

    private void metric(String spelling, String ucum, Dimension dimension, String factor, String prefixes) {
        add(spelling, UnitSpelling.printed(spelling.replace("ohm", "Ω")), ucum, dimension, Exact.of(factor), prefixes);
    }

    private void fixed(String spelling, String symbol, String ucum, Dimension dimension, String factor) {
        fixed(spelling, symbol, ucum, dimension, Exact.of(factor));
    }

    private void fixed(String spelling, String symbol, String ucum, Dimension dimension, Exact factor) {
        add(spelling, symbol, ucum, dimension, factor, "");
    }

    private void add(String spelling, String symbol, String ucum, Dimension dimension, Exact factor, String prefixes,
            String... alsoKnown) {
        entries.add(new Entry(spelling, known(symbol, ucum, dimension, factor, Exact.ZERO), prefixes,
                List.of(alsoKnown)));
    }

    private void level(String spelling, String ucum, Dimension dimension, String reference) {
        String symbol = spelling.replace('u', 'µ');
        entries.add(new Entry(spelling, new Unit(symbol, ucum, dimension, Exact.of(reference), Exact.ZERO,
                Unit.Status.KNOWN, Unit.Scale.LOGARITHMIC), "", List.of()));
    }

    private static Unit known(String symbol, String ucum, Dimension dimension, Exact factor, Exact offset) {
        return new Unit(symbol, ucum, dimension, factor, offset, Unit.Status.KNOWN);
    }
}
