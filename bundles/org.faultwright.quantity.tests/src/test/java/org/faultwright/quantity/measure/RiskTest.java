/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.faultwright.quantity.measure.MeasurementSamples.atLeast;
import static org.faultwright.quantity.measure.MeasurementSamples.closed;
import static org.faultwright.quantity.measure.MeasurementSamples.dcVoltage;
import static org.faultwright.quantity.measure.MeasurementSamples.quantity;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RiskTest {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    // JCGM 106:2012, 7.3 and 7.4: 509.7 with u = 8.6 against ≥ 490; 13.6 with u = 1.8 against 12.5 … 16.3.
    @Test
    void should_reproduce_the_conformance_probabilities_of_the_guide() {
        assertEquals(0.989, Conformity.probability(Exact.of("509.7"), Exact.of("8.6"), atLeast("490")), 0.0005);
        assertEquals(0.66, Conformity.probability(Exact.of("13.6"), Exact.of("1.8"), closed("12.5", "16.3")), 0.005);
        assertEquals(1, Conformity.probability(Exact.of(5), Exact.ZERO, closed("4", "6")));
        assertEquals(0, Conformity.probability(Exact.of(7), Exact.ZERO, closed("4", "6")));
    }

    // Deaver, "How to maintain your confidence", NCSL 1993: ±2σ at a ratio of 4: 0.8 % and 1.5 %; ±2.5σ: 0.25 %. His ratio is
    // that of the standard deviations, u = σ/4 in both rows; the second then has a tolerance of 5 times U.
    @ParameterizedTest
    @CsvSource({ "2,0.25 V,4,0.008,0.015", "2.5,0.25 V,5,0.0025,NaN" })
    void should_reproduce_published_risks(String limit, String uncertainty, long ratio, double accept, double reject) {
        MeasurementBudget budget = MeasurementBudget.of(closed("-" + limit, limit), dcVoltage("6 V", "1 mV", "0", "0"),
                List.of(UncertaintyContribution.standard("all", quantity(uncertainty))), new DecisionRule.Simple());

        Risk risk = budget.risk(new UnitSpread(Optional.empty(), Exact.ONE)).orElseThrow();

        assertEquals(Optional.of(Exact.of(ratio)), budget.ratio());
        assertEquals(accept, risk.falseAccept(), accept > 0.005 ? 0.0005 : 0.0001);
        if (!Double.isNaN(reject)) {
            assertEquals(reject, risk.falseReject(), 0.0005);
        }
    }

    // Independent of this project: Apache Commons Statistics.
    @Test
    void should_agree_with_a_statistics_library_on_the_normal_distribution() {
        for (double z = -12; z <= 12; z += 0.0625) {
            double expected = STANDARD.cumulativeProbability(z);
            assertEquals(expected, StandardNormal.cumulative(z), 1e-12 * expected, "at " + z);
            assertEquals(STANDARD.density(z), StandardNormal.density(z), 1e-14);
        }
        assertEquals(STANDARD.survivalProbability(8) - STANDARD.survivalProbability(9), StandardNormal.between(8, 9), 1e-27);
        assertEquals(0, StandardNormal.between(2, 1));
        assertEquals(1, StandardNormal.between(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    // Independent of this project: the integral done by Apache Commons Math over the distribution of Commons Statistics.
    @Test
    void should_agree_with_an_independent_integration() {
        Random random = new Random(106);
        for (int i = 0; i < 60; i++) {
            double lowest = -0.5 - 3 * random.nextDouble();
            double highest = 0.3 + 3 * random.nextDouble();
            double uncertainty = 0.05 + random.nextDouble();
            double guard = random.nextDouble() * uncertainty;
            UnivariateFunction accepted = x -> STANDARD.density(x)
                    * (STANDARD.cumulativeProbability((highest - guard - x) / uncertainty)
                            - STANDARD.cumulativeProbability((lowest + guard - x) / uncertainty));
            double falseAccept = integral(accepted, -9, lowest) + integral(accepted, highest, 9);
            double falseReject = STANDARD.probability(lowest, highest) - integral(accepted, lowest, highest);

            Risk risk = Risk.of(lowest, highest, lowest + guard, highest - guard, uncertainty);

            if (lowest + guard < highest - guard) {
                assertEquals(falseAccept, risk.falseAccept(), 1e-9);
                assertEquals(falseReject, risk.falseReject(), 1e-9);
            }
        }
    }

    private static double integral(UnivariateFunction function, double a, double b) {
        return new IterativeLegendreGaussIntegrator(16, 1e-10, 1e-12).integrate(10_000_000, function, a, b);
    }

    @Test
    void should_widen_the_guard_band_only_as_far_as_needed() {
        for (double uncertainty : new double[] { 0.05, 0.2, 0.5, 1, 3 }) {
            for (double most : new double[] { 0.0001, 0.001, 0.02, 0.2 }) {
                double guard = GuardByRisk.width(-2, 2, uncertainty, most);
                double risk = Risk.falseAccept(-2, 2, -2 + guard, 2 - guard, uncertainty);
                assertTrue(risk <= most, risk + " over " + most);
                assertTrue(guard == 0 || Risk.falseAccept(-2, 2, -2 + guard - 0.001 * uncertainty,
                        2 - guard + 0.001 * uncertainty, uncertainty) > most || guard < 0.001 * uncertainty);
            }
        }
    }
}
