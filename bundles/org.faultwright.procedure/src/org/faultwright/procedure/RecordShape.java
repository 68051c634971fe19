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
    private final MethodHandle constructor;

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
        constructor = any ? handles(type, components) : null;
    }

    static RecordShape of(Class<?> type) {
        return KNOWN.get(type);
    }

    private MethodHandle handles(Class<?> type, RecordComponent[] components) {
        MethodHandles.Lookup lookup = MethodHandles.lookup();
        try {
            for (int i = 0; i < components.length; i++) {
                parts[i] = lookup.unreflect(components[i].getAccessor()).asType(MethodType.methodType(Object.class, Record.class));
            }
            return lookup.findConstructor(type, MethodType.methodType(void.class, types)).asSpreader(Object[].class, types.length)
                    .asType(MethodType.methodType(Object.class, Object[].class));
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

    int size() {
        return parts.length;
    }

    String name(int part) {
        return names[part];
    }

    boolean mayHoldPlaces() {
        return anyPlace;
    }

    boolean mayHoldPlaces(int part) {
        return mayHoldPlaces[part];
    }

    Object part(Record record, int part) {
        try {
            return (Object) parts[part].invokeExact(record);
        } catch (Throwable failed) {
            throw new IllegalStateException(failed);
        }
    }

    Object record(Object[] values) {
        try {
            return (Object) constructor.invokeExact(values);
        } catch (Throwable failed) {
            throw new IllegalStateException(failed);
        }
    }
}
