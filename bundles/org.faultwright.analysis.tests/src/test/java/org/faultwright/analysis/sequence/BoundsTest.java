/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoundsTest {
    /** Pattipati and Alexandridis 1990: entropy 1.4549 bit, Huffman bound 1.59; recomputed. */
    @Test
    void should_have_the_published_bounds_of_the_published_example() {
        double[] weights = {0.70, 0.01, 0.02, 0.10, 0.05, 0.12};

        assertEquals(1.4549, InformationGain.entropy(weights), 5e-5);
        assertEquals(1.59, length(weights, 2), 1e-12);
    }

    /** Against a heap that merges the least ones (Huffman 1952), filled up with nothing for more than two digits. */
    @Test
    void should_be_as_long_as_a_code_built_with_a_heap() {
        Random random = new Random(12);
        for (int i = 0; i < 2000; i++) {
            double[] weights = random.doubles(1 + i % 12).toArray();
            int digits = 2 + i % 3;

            assertEquals(withHeap(weights, digits), length(weights, digits), 1e-9,
                    Arrays.toString(weights) + " in " + digits);
        }
    }

    private static double length(double[] weights, int digits) {
        double[] sorted = weights.clone();
        Arrays.sort(sorted);
        return HuffmanBound.lengthOfSorted(sorted, sorted.length, digits);
    }

    private static double withHeap(double[] weights, int digits) {
        int fill = weights.length < 2 ? 0 : (digits - 1 - (weights.length - 1) % (digits - 1)) % (digits - 1);
        PriorityQueue<Double> heap = new PriorityQueue<>(Comparator.naturalOrder());
        DoubleStream.concat(Arrays.stream(weights), DoubleStream.generate(() -> 0).limit(fill)).forEach(heap::add);
        double length = 0;
        while (heap.size() > 1) {
            double merged = 0;
            for (int i = 0; i < digits; i++) {
                merged += heap.remove();
            }
            length += merged;
            heap.add(merged);
        }
        return length;
    }

    /** Shannon's theorem: entropy, then the code, then entropy and one digit. */
    @Test
    void should_lie_between_the_entropy_and_one_digit_more() {
        Random random = new Random(2);
        for (int i = 0; i < 500; i++) {
            double[] weights = random.doubles(2 + i % 10).toArray();
            double sum = Arrays.stream(weights).sum();
            double entropy = InformationGain.entropy(weights);
            double length = length(weights, 2) / sum;

            assertTrue(entropy <= length + 1e-12 && length < entropy + 1, entropy + " " + length);
        }
    }

    /** The weather of J. R. Quinlan, Machine Learning 1, 1986: 9 days for and 5 against; recalled and computed again. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            outlook     | 0.2467 | 2 3, 4 0, 3 2
            temperature | 0.0292 | 2 2, 4 2, 3 1
            humidity    | 0.1518 | 3 4, 6 1
            wind        | 0.0481 | 6 2, 3 3
            """)
    void should_gain_as_much_as_in_the_weather_example(String attribute, double gain, String counts) {
        double[][] weights = Arrays.stream(counts.split(", ")).map(row -> Arrays.stream(row.split(" "))
                .mapToDouble(Double::parseDouble).toArray()).toArray(double[][]::new);

        assertEquals(gain, InformationGain.of(weights), 5e-5, attribute);
        assertEquals(0.9403, InformationGain.entropy(new double[] {9, 5}), 5e-5);
    }

    @Test
    void should_count_the_cheapest_tests_for_a_mean_number_of_tests() {
        double[] costs = {1, 3, 10};

        assertEquals(0.5, HuffmanBound.cost(0.5, costs, 3));
        assertEquals(2.5, HuffmanBound.cost(1.5, costs, 3));
        assertEquals(9, HuffmanBound.cost(2.5, costs, 3));
        assertEquals(14, HuffmanBound.cost(7, costs, 3));
    }
}
