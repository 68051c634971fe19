/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;

/** Which settings cannot hold at the same time: another value of the same condition, or one that another forces. */
final class Contradictions {
    private Contradictions() {
    }

    /** One that cannot hold beside this one, with the words that say why not; absent when all can. */
    static Optional<String> with(Setting setting, List<Setting> others, Scope scope) {
        for (Setting other : others) {
            for (Setting implied : implied(other, scope)) {
                if (differs(setting, implied)) {
                    return Optional.of(implied == other ? spoken(other)
                            : spoken(other) + ", which makes it " + implied.value());
                }
            }
        }
        return Optional.empty();
    }

    static boolean isContradicted(Setting setting, List<Setting> all, Scope scope) {
        return with(setting, all, scope).isPresent()
                || all.stream().anyMatch(other -> with(other, List.of(setting), scope).isPresent());
    }

    static String spoken(Setting setting) {
        return setting.condition() + " " + setting.value();
    }

    private static boolean differs(Setting one, Setting other) {
        return one.condition().text().equals(other.condition().text())
                && !one.value().text().equals(other.value().text());
    }

    /** The setting itself, what it forces, what that forces and so on. */
    private static List<Setting> implied(Setting setting, Scope scope) {
        List<Setting> implied = new ArrayList<>(List.of(setting));
        for (int i = 0; i < implied.size(); i++) {
            Setting cause = implied.get(i);
            for (Condition condition : scope.conditions()) {
                condition.becomes().stream().filter(becomes -> becomes.when().says(cause)).findFirst()
                        .map(becomes -> new Setting(condition.name(), becomes.value(), becomes.at()))
                        .filter(forced -> implied.stream().noneMatch(known -> known.says(forced)))
                        .ifPresent(implied::add);
            }
        }
        return implied;
    }
}
