/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A part of a document as it stands in a changed text, its words being the same: each place moves with it. */
public final class Relocation {
    private final SourceText to;
    private final int by;

    /**
     * @param to the changed text
     * @param by how many characters further on the part stands there; less than 0 for before
     */
    public Relocation(SourceText to, int by) {
        this.to = to;
        this.by = by;
    }

    /** The same with all its places moved. What holds no place is given back as it is. */
    public <T> T of(T part) {
        @SuppressWarnings("unchecked")
        T moved = (T) moved(part);
        return moved;
    }

    Object moved(Object part) {
        if (part instanceof SourceRange range) {
            return new SourceRange(to, range.offset() + by, range.length());
        }
        if (part instanceof Record record) {
            RecordShape shape = RecordShape.of(record.getClass());
            return shape.mayHoldPlaces() ? shape.moved(record, this) : record;
        }
        if (part instanceof Optional<?> optional) {
            return optional.isEmpty() ? optional : moved(optional);
        }
        return part instanceof List<?> list && !list.isEmpty() ? moved(list) : part;
    }

    private Optional<?> moved(Optional<?> optional) {
        Object before = optional.get();
        Object after = moved(before);
        return after == before ? optional : Optional.of(after);
    }

    private List<?> moved(List<?> list) {
        List<Object> all = new ArrayList<>(list.size());
        boolean changed = false;
        for (Object before : list) {
            Object after = moved(before);
            all.add(after);
            changed |= after != before;
        }
        return changed ? List.copyOf(all) : list;
    }
}
