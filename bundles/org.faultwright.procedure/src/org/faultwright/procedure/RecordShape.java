/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What a record consists of, so that all parts of a document can be gone through without a list of them. */
final class RecordShape {
    private static final ClassValue<RecordShape> KNOWN = new ClassValue<>() {
        @Override
        protected RecordShape computeValue(Class<?> type) {
            return new RecordShape(type);
        }
    };

    private final String[] names;
    private final Class<?>[] types;
    private final MethodHandle[] parts;
    private final boolean[] mayHoldPlaces;
    private final boolean anyPlace;
    private final boolean hasAlways;
    /** From a record and a relocation the record with its places moved: one call, which is compiled as a whole. */
    private final MethodHandle moved;

    private RecordShape(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        types = Stream.of(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        names = Stream.of(components).map(RecordComponent::getName).toArray(String[]::new);
        parts = new MethodHandle[components.length];
        mayHoldPlaces = new boolean[components.length];
        boolean any = false;
        for (int i = 0; i < components.length; i++) {
            mayHoldPlaces[i] = mayHoldPlaces(components[i].getGenericType(), new HashSet<>());
            any |= mayHoldPlaces[i];
        }
        anyPlace = any;
        hasAlways = hasAlways(type);
        moved = any ? moved(type, components) : null;
    }

    static RecordShape of(Class<?> type) {
        return KNOWN.get(type);
    }

    private MethodHandle moved(Class<?> type, RecordComponent[] components) {
        MethodHandles.Lookup lookup = MethodHandles.lookup();
        try {
            MethodHandle relocation = lookup.findVirtual(Relocation.class, "moved", MethodType.methodType(Object.class, Object.class));
            MethodHandle made = lookup.findConstructor(type, MethodType.methodType(void.class, types));
            int[] both = new int[2 * components.length];
            for (int i = components.length - 1; i >= 0; i--) {
                MethodHandle part = lookup.unreflect(components[i].getAccessor());
                parts[i] = part.asType(MethodType.methodType(Object.class, Record.class));
                MethodHandle kept = MethodHandles.dropArguments(part.asType(MethodType.methodType(types[i], Record.class)), 0, Relocation.class);
                made = MethodHandles.collectArguments(made, i, mayHoldPlaces[i] ? MethodHandles.filterArguments(relocation, 1, parts[i])
                        .asType(kept.type()) : kept);
                both[2 * i + 1] = 1;
            }
            return MethodHandles.permuteArguments(made, MethodType.methodType(type, Relocation.class, Record.class), both)
                    .asType(MethodType.methodType(Object.class, Relocation.class, Record.class));
        } catch (IllegalAccessException | NoSuchMethodException closed) {
            throw new IllegalStateException("The record " + type.getName() + " cannot be gone through", closed);
        }
    }

    /** Whether a place may stand in a value of that type; what another package declares outside all documents knows none. */
    private static boolean mayHoldPlaces(Type type, Set<Class<?>> asked) {
        if (type instanceof ParameterizedType parameterized) {
            return mayHoldPlaces(parameterized.getRawType(), asked)
                    || Stream.of(parameterized.getActualTypeArguments()).anyMatch(argument -> mayHoldPlaces(argument, asked));
        }
        if (type instanceof TypeVariable || type instanceof WildcardType) {
            return true;
        }
        Class<?> plain = (Class<?>) type;
        if (plain == SourceRange.class) {
            return true;
        }
        if (plain == List.class || plain == Optional.class || !asked.add(plain)) {
            return false;
        }
        if (plain.isSealed()) {
            return Stream.of(plain.getPermittedSubclasses()).anyMatch(kind -> mayHoldPlaces(kind, asked));
        }
        return plain.isRecord() && Stream.of(plain.getRecordComponents()).anyMatch(component -> mayHoldPlaces(component.getGenericType(), asked));
    }

    /** Whether every record of that type holds a place, whatever else it holds. */
    private static boolean hasAlways(Class<?> type) {
        return Stream.of(type.getRecordComponents()).map(RecordComponent::getType)
                .anyMatch(part -> part == SourceRange.class || part.isRecord() && hasAlways(part));
    }

    int size() {
        return parts.length;
    }

    String name(int part) {
        return names[part];
    }

    boolean mayHoldPlaces() {
        return anyPlace;
    }

    Object part(Record record, int part) {
        try {
            return (Object) parts[part].invokeExact(record);
        } catch (Throwable failed) {
            throw new IllegalStateException(failed);
        }
    }

    /** Whether a place stands anywhere in a record of this shape. */
    private boolean holdsPlace(Record record) {
        boolean holds = hasAlways;
        for (int i = 0; !holds && i < parts.length; i++) {
            holds = mayHoldPlaces[i] && isPlaceIn(part(record, i));
        }
        return holds;
    }

    private static boolean isPlaceIn(Object part) {
        if (part instanceof SourceRange) {
            return true;
        }
        if (part instanceof Record record) {
            RecordShape shape = of(record.getClass());
            return shape.anyPlace && shape.holdsPlace(record);
        }
        if (part instanceof Optional<?> optional) {
            return optional.isPresent() && isPlaceIn(optional.get());
        }
        boolean holds = false;
        // most lists are empty, and every record that is moved asks
        if (part instanceof List<?> list) {
            for (int i = 0; !holds && i < list.size(); i++) {
                holds = isPlaceIn(list.get(i));
            }
        }
        return holds;
    }

    /** The same record with all its places moved; the record itself where it holds none. */
    Object moved(Record record, Relocation relocation) {
        if (!holdsPlace(record)) {
            return record;
        }
        try {
            return (Object) moved.invokeExact(relocation, record);
        } catch (RuntimeException | Error failed) {
            throw failed;
        } catch (Throwable failed) {
            throw new IllegalStateException(failed);
        }
    }
}
