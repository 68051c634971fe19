/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;

/** What a document says, without where it says it. */
final class DocumentMeaning {
    private DocumentMeaning() {
    }

    static String of(Document document) {
        StringBuilder text = new StringBuilder();
        write(document, text, range -> { });
        return text.toString();
    }

    /** Every place that a part of the document points at. */
    static List<SourceRange> ranges(Document document) {
        List<SourceRange> ranges = new ArrayList<>();
        write(document, new StringBuilder(), ranges::add);
        return ranges;
    }

    static List<Name> names(Document document) {
        List<Name> names = new ArrayList<>();
        names(document, names);
        return names;
    }

    private static void write(Object part, StringBuilder text, Consumer<SourceRange> places) {
        if (part instanceof SourceRange range) {
            places.accept(range);
        } else if (part instanceof Optional<?> optional) {
            optional.ifPresent(value -> write(value, text, places));
        } else if (part instanceof List<?> list) {
            text.append('[');
            list.forEach(one -> {
                write(one, text, places);
                text.append(',');
            });
            text.append(']');
        } else if (part instanceof Record record) {
            text.append(record.getClass().getSimpleName()).append('(');
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                write(value(record, component), text.append(component.getName()).append('='), places);
            }
            text.append(')');
        } else if (!(part instanceof SourceText)) {
            text.append(part).append(' ');
        }
    }

    private static void names(Object part, List<Name> names) {
        if (part instanceof Name name) {
            names.add(name);
        } else if (part instanceof Optional<?> optional) {
            optional.ifPresent(value -> names(value, names));
        } else if (part instanceof List<?> list) {
            list.forEach(one -> names(one, names));
        } else if (part instanceof Record record && !(part instanceof SourceRange)) {
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                names(value(record, component), names);
            }
        }
    }

    private static Object value(Record record, RecordComponent component) {
        try {
            return component.getAccessor().invoke(record);
        } catch (IllegalAccessException | InvocationTargetException unreadable) {
            throw new IllegalStateException(unreadable);
        }
    }
}
