/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.procedure.Fault;
import org.faultwright.quantity.Exact;

/**
 * How much of what goes wrong a set of tests notices, and how narrowly it finds it: the fractions of fault
 * detection and fault isolation of MIL-HDBK-2165 and IEEE Std 1522, each fault weighted by how often it
 * is met.
 */
public final class Testability {
    private final Exact detected;
    private final Map<Integer, Exact> rateBySize;

    private Testability(Exact detected, Map<Integer, Exact> rateBySize) {
        this.detected = detected;
        this.rateBySize = rateBySize;
    }

    /**
     * Of a whole procedure. A fault counts as detected as far as it is sure not to end where nothing is found; its group
     * is what {@link Ambiguity} leaves. Absent for a document without faults.
     */
    public static Optional<Testability> in(Subject subject) {
        return subject.procedure().filter(procedure -> !procedure.faults().isEmpty())
                .map(procedure -> subject.shared(Testability.class, Testability::compute));
    }

    private static Testability compute(Subject subject) {
        FaultWalks walks = FaultWalks.in(subject).orElseThrow();
        Ambiguity ambiguity = Ambiguity.in(subject).orElseThrow();
        FaultTable table = walks.table();
        List<Exact> rates = IntStream.range(0, table.size()).mapToObj(table::weight).toList();
        List<Exact> noticed = IntStream.range(0, table.size())
                .mapToObj(i -> rates.get(i).times(noticed(walks.all().get(i)))).toList();
        List<Integer> sizes = table.faults().stream().map((Fault fault) -> ambiguity.groupSize(fault)).toList();
        return gathered(rates, noticed, sizes);
    }

    private static Exact noticed(FaultWalk walk) {
        Exact share = walk.endings().isEmpty() ? Exact.ZERO : Exact.ONE;
        for (FaultWalk.Ending ending : walk.endings()) {
            if (ending.conclusion().findsNothing().isPresent()) {
                share = share.minus(ending.probability().orElse(Exact.ONE));
            }
        }
        return share.max(Exact.ZERO);
    }

    private static Testability gathered(List<Exact> rates, List<Exact> noticed, List<Integer> sizes) {
        Exact all = rates.stream().reduce(Exact.ZERO, Exact::plus);
        Map<Integer, Exact> bySize = new TreeMap<>();
        for (int i = 0; i < noticed.size(); i++) {
            if (all.signum() > 0) {
                bySize.merge(sizes.get(i), noticed.get(i).dividedBy(all), Exact::plus);
            }
        }
        return new Testability(bySize.values().stream().reduce(Exact.ZERO, Exact::plus), bySize);
    }

    /** The fraction of fault detection, from 0 to 1. */
    public Exact detected() {
        return detected;
    }

    /**
     * The fraction of fault isolation, from 0 to 1: how much of what is detected is narrowed down to so many faults.
     *
     * @param size the largest group counted, 1 or more
     */
    public Exact isolated(int size) {
        Exact rate = rateBySize.entrySet().stream().filter(entry -> entry.getKey() <= size).map(Map.Entry::getValue)
                .reduce(Exact.ZERO, Exact::plus);
        return detected.signum() > 0 ? rate.dividedBy(detected) : Exact.ZERO;
    }
}
