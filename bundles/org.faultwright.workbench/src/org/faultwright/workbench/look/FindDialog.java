/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.lang.reflect.Field;
import java.util.Map;
import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.texteditor.AbstractTextEditor;

/** The platform's dialog for finding and replacing, in words that a technician uses; it has no public way to be given others. */
public final class FindDialog {
    public static final String TITLE = "Find and replace";
    /** {0} stands for what was looked for. */
    public static final String NOT_FOUND = "\"{0}\" is not in this text.";

    /** Where the platform keeps its words: fields that are public and can be set, in classes that are not. */
    private static final String DIALOG = "org.eclipse.ui.internal.findandreplace.FindReplaceMessages";
    private static final String NEXT = "org.eclipse.ui.texteditor.EditorMessages";
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("FindReplace_Dialog_Title", TITLE),
            Map.entry("FindReplace_Scope", "Where"),
            Map.entry("FindReplace_GlobalRadioButton_label", "In the w&hole text"),
            Map.entry("FindReplace_SelectedRangeRadioButton_label", "In the se&lected lines"),
            Map.entry("FindReplace_CaseCheckBox_label", "&Capitals count"),
            Map.entry("FindReplace_WrapCheckBox_label", "&Go on from the other end"),
            Map.entry("FindReplace_WholeWordCheckBox_label", "&Whole words"),
            Map.entry("FindReplace_IncrementalCheckBox_label", "Find while it is &typed"),
            Map.entry("FindReplace_RegExCheckbox_label", "By a pattern (regular e&xpression)"),
            Map.entry("FindReplace_SelectAllButton_label", "&Select all found"),
            Map.entry("FindReplace_ReplaceFindButton_label", "Replace, fin&d next"),
            Map.entry("FindReplace_ReplaceAllButton_label", "Replace &all"),
            Map.entry("FindReplace_Status_noMatch_label", "That is not in this text."),
            Map.entry("FindReplace_Status_noMatchWithValue_label", NOT_FOUND),
            Map.entry("FindReplace_Status_wrapped_label", "Gone on from the other end."),
            Map.entry("FindReplace_Status_replacement_label", "Replaced at 1 place."),
            Map.entry("FindReplace_Status_replacements_label", "Replaced at {0} places."),
            Map.entry("FindReplace_Status_selection_label", "1 place selected."),
            Map.entry("FindReplace_Status_selections_label", "{0} places selected."),
            Map.entry("FindReplaceDialog_read_only", "Nothing was replaced: the file is write-protected."));

    private FindDialog() {
    }

    /** Before it is opened for the first time. */
    public static void inPlainWords() {
        WORDS.forEach((field, words) -> say(DIALOG, field, words));
        say(NEXT, "FindNext_Status_noMatch_label", NOT_FOUND);
    }

    private static void say(String type, String name, String words) {
        try {
            Field field = Class.forName(type, true, AbstractTextEditor.class.getClassLoader()).getField(name);
            field.setAccessible(true);
            field.set(null, words);
        } catch (ReflectiveOperationException other) {
            ILog.of(FindDialog.class).warn("The dialog for finding keeps words of its own.", other);
        }
    }
}
