/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/** The narrowest guard band that keeps the probability of a wrong acceptance (JCGM 106:2012, 9.5). */
final class GuardByRisk {
    private static final int MOST_STEPS = 60;
    private static final double WIDEST = 4;

    private GuardByRisk() {
    }

    /**
     * Everything in standard deviations of the spread from its mean.
     *
     * @param most the largest probability of a false acceptance
     * @return rounded up, so that the probability is kept; at most 4 standard uncertainties
     */
    static double width(double lowest, double highest, double uncertainty, double most) {
        double little = 0;
        double tooRisky = risk(lowest, highest, little, uncertainty) - most;
        double enough = WIDEST * uncertainty;
        double cautious = risk(lowest, highest, enough, uncertainty) - most;
        if (tooRisky <= 0 || cautious > 0) {
            return tooRisky <= 0 ? 0 : enough;
        }
        // False position with the Illinois step; the risk falls as the guard band grows.
        for (int step = 0; step < MOST_STEPS && enough - little > 1e-4 * uncertainty && cautious < 0; step++) {
            double next = enough - cautious * (enough - little) / (cautious - tooRisky);
            double found = risk(lowest, highest, next, uncertainty) - most;
            if (found <= 0) {
                enough = next;
                cautious = found;
                tooRisky /= 2;
            } else {
                little = next;
                tooRisky = found;
                cautious /= 2;
            }
        }
        return enough;
    }

    private static double risk(double lowest, double highest, double guard, double uncertainty) {
        return Risk.falseAccept(lowest, highest, lowest + guard, highest - guard, uncertainty);
    }
}
