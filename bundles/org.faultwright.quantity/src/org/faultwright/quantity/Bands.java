/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Whether bands split what can be shown: no value in two bands, none in no band. Exact. */
public final class Bands {
    /**
     * Values that no band takes in.
     *
     * @param below the index of the band that ends under it; absent at the lower end of what is shown
     * @param above the index of the band that begins over it; absent at the upper end of what is shown
     */
    public record Hole(Interval values, OptionalInt below, OptionalInt above) {
    }

    /** Values that two bands take in, with the indices of the bands, the smaller first. */
    public record Overlap(Interval values, int first, int second) {
    }

    /**
     * @param holes    in rising order; none meets the next
     * @param overlaps every value that lies in two bands or more is in one of these, at most one for each band
     * @param empty    the indices of bands that hold no value at all
     */
    public record Partition(List<Hole> holes, List<Overlap> overlaps, List<Integer> empty) {
        public boolean isComplete() {
            return holes.isEmpty();
        }
    }

    private Bands() {
    }

    /** @param shown what the instrument can show; {@link Interval#EVERYTHING} when that is not known */
    public static Partition partition(List<Interval> bands, Interval shown) {
        List<Integer> empty = IntStream.range(0, bands.size()).filter(i -> bands.get(i).isEmpty()).boxed().toList();
        List<Integer> rising = IntStream.range(0, bands.size()).filter(i -> !bands.get(i).isEmpty()).boxed()
                .sorted(Comparator.comparing(bands::get, Interval.BY_LOWER_END)).toList();
        List<Hole> holes = new ArrayList<>();
        List<Overlap> overlaps = new ArrayList<>();
        OptionalInt reached = OptionalInt.empty();
        for (int band : rising) {
            if (reached.isEmpty()) {
                add(holes, under(bands.get(band)), shown, reached, OptionalInt.of(band));
            } else {
                Interval before = bands.get(reached.getAsInt());
                Interval shared = before.intersection(bands.get(band));
                if (!shared.isEmpty()) {
                    overlaps.add(new Overlap(shared, Math.min(band, reached.getAsInt()), Math.max(band, reached.getAsInt())));
                } else {
                    add(holes, between(before, bands.get(band)), shown, reached, OptionalInt.of(band));
                }
            }
            if (reached.isEmpty() || Interval.BY_UPPER_END.compare(bands.get(band), bands.get(reached.getAsInt())) > 0) {
                reached = OptionalInt.of(band);
            }
        }
        if (reached.isEmpty()) {
            add(holes, Optional.of(Interval.EVERYTHING), shown, reached, OptionalInt.empty());
        } else {
            add(holes, over(bands.get(reached.getAsInt())), shown, reached, OptionalInt.empty());
        }
        return new Partition(List.copyOf(holes), List.copyOf(overlaps), empty);
    }

    private static void add(List<Hole> holes, Optional<Interval> values, Interval shown, OptionalInt below,
            OptionalInt above) {
        values.map(shown::intersection).filter(hole -> !hole.isEmpty())
                .ifPresent(hole -> holes.add(new Hole(hole, below, above)));
    }

    private static Optional<Interval> under(Interval band) {
        return band.lower().map(low -> Interval.below(low.opposite()));
    }

    private static Optional<Interval> over(Interval band) {
        return band.upper().map(high -> Interval.above(high.opposite()));
    }

    private static Optional<Interval> between(Interval before, Interval after) {
        return before.upper().flatMap(end -> after.lower().map(start -> Interval.from(end.opposite(), start.opposite())));
    }
}
