/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/** Places for the boxes of one tree: a column for each depth, subtrees below one another, so that no lines cross. */
final class Layout {
    static final int BOX_WIDTH = 230;
    static final int ROW = 18;
    private static final int COLUMN = BOX_WIDTH + 60;
    private static final int GAP = 16;
    private static final int HEADING = 58;

    /** A box. @param x of its left side @param y of its upper side */
    record Box(Branch branch, int x, int y, int height) {
        /** The middle of a result's row. @param index from 0 */
        int row(int index) {
            return y + HEADING + index * ROW + ROW / 2;
        }
    }

    private final Map<Branch, Integer> heights = new IdentityHashMap<>();
    private final Map<Branch, Box> boxes = new IdentityHashMap<>();
    private final List<Box> order = new ArrayList<>();
    private int right;
    private int bottom;

    Layout(Branch tree, int top) {
        measure(tree);
        place(tree, top);
    }

    /** Children before their parents. A chain of steps may be long, so nothing here calls itself. */
    private void measure(Branch tree) {
        List<Branch> all = new ArrayList<>(List.of(tree));
        for (int i = 0; i < all.size(); i++) {
            all.addAll(all.get(i).children());
        }
        Collections.reverse(all);
        for (Branch branch : all) {
            int children = branch.children().stream().mapToInt(heights::get).sum();
            heights.put(branch, Math.max(children, height(branch) + GAP));
        }
    }

    private static int height(Branch branch) {
        return HEADING + branch.ways().size() * ROW + 4;
    }

    private void place(Branch tree, int top) {
        record Spot(Branch branch, int depth, int top) {
        }
        Deque<Spot> next = new ArrayDeque<>(List.of(new Spot(tree, 0, top)));
        while (!next.isEmpty()) {
            Spot spot = next.remove();
            Box box = new Box(spot.branch(), spot.depth() * COLUMN, spot.top(), height(spot.branch()));
            boxes.put(spot.branch(), box);
            order.add(box);
            right = Math.max(right, box.x() + BOX_WIDTH);
            bottom = Math.max(bottom, box.y() + box.height());
            int below = spot.top();
            for (Branch child : spot.branch().children()) {
                next.add(new Spot(child, spot.depth() + 1, below));
                below += heights.get(child);
            }
        }
    }

    List<Box> boxes() {
        return order;
    }

    Box box(Branch branch) {
        return boxes.get(branch);
    }

    int right() {
        return right;
    }

    int bottom() {
        return bottom;
    }
}
