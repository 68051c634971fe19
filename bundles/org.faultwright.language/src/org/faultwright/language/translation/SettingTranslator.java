/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.translation;

import java.util.List;
import org.faultwright.language.text.SettingText;
import org.faultwright.language.text.TextPackage;
import org.faultwright.procedure.Setting;

/** Conditions at a value. */
final class SettingTranslator {
    private final ModelSource passage;

    SettingTranslator(ModelSource passage) {
        this.passage = passage;
    }

    List<Setting> all(List<SettingText> written) {
        return written.stream().map(this::setting).toList();
    }

    Setting setting(SettingText written) {
        return new Setting(passage.nameOrNone(written, TextPackage.Literals.SETTING_TEXT__CONDITION),
                passage.nameOrNone(written, TextPackage.Literals.SETTING_TEXT__VALUE), passage.range(written));
    }
}
