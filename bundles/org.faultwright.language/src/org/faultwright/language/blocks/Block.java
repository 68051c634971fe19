/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.blocks;

import java.util.Optional;

/**
 * A piece of a text that is read on its own: the beginning of the text, a declaration, a step, or words that begin nothing.
 *
 * @param head    what begins it; absent for the beginning of the text and for words that begin nothing
 * @param name    its name, or title where that is what it has; empty where it cannot be made out
 * @param start   of its first word, counted from 0
 * @param end     behind its last word; of no block with a word, the start
 * @param opening of the brace that opens its body; -1 where there is none
 * @param closed  whether as many braces close in it as open
 */
record Block(Optional<BlockHead> head, String name, int start, int end, int opening, boolean closed) {
    String text(String content) {
        return content.substring(start, end);
    }
}
