/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/**
 * The voltages above which standards no longer take touching for granted, in volts. All are for dry
 * conditions and healthy adults; none of them says that a lower voltage does no harm.
 */
public enum VoltageLimit {
    /** For places where a limit lower than the usual one is asked for, such as wet or confining ones. */
    REDUCED("the reduced extra-low voltage of IEC 61140", 60, 25, Optional.empty()),
    /** The accessible circuits of audio, video, information and communication equipment; ac up to 1 kHz. */
    ENERGY_CLASS_1("energy source class 1 of IEC 62368-1", 60, 30, Optional.of("42.4")),
    EXTRA_LOW("extra-low voltage after IEC 61140", 120, 50, Optional.empty());

    private final String source;
    private final Exact dc;
    private final Exact rms;
    private final Optional<Exact> peak;

    VoltageLimit(String source, int dc, int rms, Optional<String> peak) {
        this.source = source;
        this.dc = Exact.of(dc);
        this.rms = Exact.of(rms);
        this.peak = peak.map(Exact::of);
    }

    /** What the limit is called and which standard states it. */
    public String source() {
        return source;
    }

    /** The limit for a kind of voltage, in volts; absent where the standard states none, and for other kinds. */
    public Optional<Exact> volts(QuantityKind kind) {
        if (kind == QuantityKind.DC_VOLTAGE) {
            return Optional.of(dc);
        }
        if (kind == QuantityKind.AC_VOLTAGE_RMS) {
            return Optional.of(rms);
        }
        return kind == QuantityKind.AC_VOLTAGE_PEAK ? peak : Optional.empty();
    }

    /** Whether going above it asks for a shock note wherever one works; the reduced limit alone only advises one. */
    public boolean asksForNote() {
        return this != REDUCED;
    }

    /**
     * The highest limit that a voltage lies above; of equal ones the stricter in what it asks for. A
     * voltage at the limit itself does not lie above it.
     */
    public static Optional<VoltageLimit> exceededBy(QuantityKind kind, Exact volts) {
        List<VoltageLimit> exceeded = Arrays.stream(values()).filter(limit -> limit.volts(kind)
                .map(most -> volts.absolute().compareTo(most) > 0).orElse(false)).toList();
        return exceeded.stream().max(Comparator.comparing((VoltageLimit limit) -> limit.volts(kind).orElseThrow())
                .thenComparing(VoltageLimit::asksForNote));
    }
}
