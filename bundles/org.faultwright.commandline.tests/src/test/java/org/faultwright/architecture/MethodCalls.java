/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.architecture;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * The methods that a class file names, to call them or to hand them on: the entries of its constant pool (The Java Virtual Machine Specification,
 * Java SE 17 Edition, 4.4).
 */
final class MethodCalls {
    /** @param owner the class by which it is called, with dots. @param type parameters and result, as {@code (I)V} */
    record Call(String owner, String name, String type) {
    }

    private static final int UTF_8 = 1;
    private static final int CLASS = 7;
    private static final int METHOD = 10;
    private static final int INTERFACE_METHOD = 11;
    private static final int NAME_AND_TYPE = 12;

    private MethodCalls() {
    }

    /** @throws IOException where it is no class file */
    static List<Call> in(byte[] classFile) throws IOException {
        DataInputStream in = new DataInputStream(new ByteArrayInputStream(classFile));
        if (in.readInt() != 0xCAFEBABE) {
            throw new IOException("no class file");
        }
        in.readInt();
        int count = in.readUnsignedShort();
        int[] kinds = new int[count];
        int[][] links = new int[count][2];
        String[] words = new String[count];
        for (int i = 1; i < count; i++) {
            kinds[i] = in.readUnsignedByte();
            switch (kinds[i]) {
                case UTF_8 -> words[i] = in.readUTF();
                // strings, method types, modules and packages; a class
                case CLASS, 8, 16, 19, 20 -> links[i][0] = in.readUnsignedShort();
                case 15 -> {
                    in.readUnsignedByte();
                    in.readUnsignedShort();
                }
                case 5, 6 -> {
                    in.readLong();
                    // the specification regrets it: a long number takes two places
                    i++;
                }
                case 3, 4 -> in.readInt();
                case 9, METHOD, INTERFACE_METHOD, NAME_AND_TYPE, 17, 18 -> {
                    links[i][0] = in.readUnsignedShort();
                    links[i][1] = in.readUnsignedShort();
                }
                default -> throw new IOException("no constant has the kind " + kinds[i]);
            }
        }
        List<Call> calls = new ArrayList<>();
        for (int i = 1; i < count; i++) {
            if (kinds[i] == METHOD || kinds[i] == INTERFACE_METHOD) {
                int[] signature = links[links[i][1]];
                calls.add(new Call(words[links[links[i][0]][0]].replace('/', '.'), words[signature[0]], words[signature[1]]));
            }
        }
        return calls;
    }
}
