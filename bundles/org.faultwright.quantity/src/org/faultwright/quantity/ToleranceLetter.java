/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Arrays;
import java.util.Optional;

/**
 * The letter after a resistance or capacitance that tells its tolerance (IEC 60062:2016, clause 5).
 * Capacitances under 10 pF have letters of their own, in picofarad: {@link #of(char, Quantity)} knows.
 */
public enum ToleranceLetter {
    E('E', "0.005", "0.005"), L('L', "0.01", "0.01"), P('P', "0.02", "0.02"), W('W', "0.05", "0.05"),
    B('B', "0.1", "0.1"), C('C', "0.25", "0.25"), D('D', "0.5", "0.5"), F('F', "1", "1"), G('G', "2", "2"),
    H('H', "3", "3"), J('J', "5", "5"), K('K', "10", "10"), M('M', "20", "20"), N('N', "30", "30"),
    Q('Q', "30", "10"), S('S', "50", "20"), T('T', "50", "10"), Z('Z', "80", "20");

    private static final Exact TEN_PICOFARAD = Exact.of("1e-11");

    private final char letter;
    private final Exact plus;
    private final Exact minus;

    ToleranceLetter(char letter, String plus, String minus) {
        this.letter = letter;
        this.plus = Exact.of(plus);
        this.minus = Exact.of(minus);
    }

    public char letter() {
        return letter;
    }

    /** How far above nominal, in percent. */
    public Exact plus() {
        return plus;
    }

    /** How far under nominal, in percent. */
    public Exact minus() {
        return minus;
    }

    public static Optional<ToleranceLetter> of(char letter) {
        return Arrays.stream(values()).filter(known -> known.letter == letter).findFirst();
    }

    /** The limit that a nominal value with that letter states: {@code 4k7} and J is 4.7 kohm ± 5 %. Absent for no such letter. */
    public static Optional<Limit> of(char letter, Quantity nominal) {
        String spelling = nominal.spelling() + " " + letter;
        boolean small = nominal.dimension().equals(Dimension.CAPACITANCE) && nominal.base().compareTo(TEN_PICOFARAD) < 0;
        if (small) {
            return picofarad(letter).map(amount -> new Tolerance.Amount(Quantity.of(amount, "pF")))
                    .map(amount -> new Limit.AroundNominal(nominal, amount, amount, spelling));
        }
        return of(letter).map(known -> new Limit.AroundNominal(nominal, new Tolerance.Percent(known.plus),
                new Tolerance.Percent(known.minus), spelling));
    }

    private static Optional<String> picofarad(char letter) {
        return switch (letter) {
            case 'B' -> Optional.of("0.1");
            case 'C' -> Optional.of("0.25");
            case 'D' -> Optional.of("0.5");
            case 'F' -> Optional.of("1");
            case 'G' -> Optional.of("2");
            default -> Optional.empty();
        };
    }
}
