/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/**
 * The two ways of deciding wrongly, over all units that come to the bench (JCGM 106:2012, 9.5): both are
 * probabilities from 0 to 1.
 *
 * @param falseAccept a unit out of tolerance is accepted; the consumer's risk
 * @param falseReject a unit in tolerance is not accepted; the producer's risk
 */
public record Risk(double falseAccept, double falseReject) {
    private static final double FAR = 9;

    /**
     * All in units of the spread's standard deviation from its mean; ends may be infinite.
     *
     * @param uncertainty the standard uncertainty of the measurement, above zero
     */
    static Risk of(double lowest, double highest, double acceptFrom, double acceptTo, double uncertainty) {
        return new Risk(falseAccept(lowest, highest, acceptFrom, acceptTo, uncertainty),
                new Gate(acceptFrom, acceptTo, uncertainty).refused(Math.max(lowest, -FAR), Math.min(highest, FAR)));
    }

    static double falseAccept(double lowest, double highest, double acceptFrom, double acceptTo, double uncertainty) {
        Gate gate = new Gate(acceptFrom, acceptTo, uncertainty);
        return gate.accepted(-FAR, Math.min(lowest, FAR)) + gate.accepted(Math.max(highest, -FAR), FAR);
    }

    private record Gate(double from, double to, double uncertainty) {
        double accepted(double a, double b) {
            double reach = FAR * uncertainty;
            return Quadrature.integral(z -> StandardNormal.density(z) * acceptance(z), Math.max(a, from - reach),
                    Math.min(b, to + reach), breaks());
        }

        double refused(double a, double b) {
            return Quadrature.integral(z -> StandardNormal.density(z) * refusal(z), a, b, breaks());
        }

        private double acceptance(double z) {
            return StandardNormal.between((from - z) / uncertainty, (to - z) / uncertainty);
        }

        private double refusal(double z) {
            return to <= from ? 1 : StandardNormal.cumulative((from - z) / uncertainty) + StandardNormal.cumulative((z - to) / uncertainty);
        }

        /** The integrand bends within a few uncertainties of the acceptance limits: pieces end there. */
        private double[] breaks() {
            return new double[] { from - 5 * uncertainty, from, from + 5 * uncertainty, to - 5 * uncertainty, to,
                    to + 5 * uncertainty };
        }
    }
}
