/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.util.Optional;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.tree.TreeJson;

/** A procedure tree that was published earlier. What a reader of trees cannot rely on is read as absent. */
public final class EarlierTree {
    private static final int SHORT_DIGEST = 12;

    private final String file;
    private final JsonObject tree;

    private EarlierTree(String file, JsonObject tree) {
        this.file = file;
        this.tree = tree;
    }

    /**
     * @param file what to call it in a message
     * @throws PublishingRefused with one sentence where the text is no procedure tree
     */
    public static EarlierTree read(String file, String json) throws PublishingRefused {
        JsonElement read;
        try {
            read = JsonParser.parseString(json);
        } catch (JsonParseException broken) {
            throw new PublishingRefused(file + " is not readable JSON, so that nothing can be held against it:"
                    + " name an unchanged tree, as it was published.", broken);
        }
        if (!read.isJsonObject() || !text(read.getAsJsonObject(), "$schema").filter(TreeJson.SCHEMA::equals).isPresent()
                || text(read.getAsJsonObject(), "id").isEmpty()) {
            throw new PublishingRefused(file + " is JSON, but not a procedure tree: name one that was published as"
                    + " tree-json.");
        }
        return new EarlierTree(file, read.getAsJsonObject());
    }

    public String file() {
        return file;
    }

    /** The procedure's name. */
    public String procedure() {
        return text(tree, "id").orElseThrow();
    }

    /** Without {@code sha256:}; empty where the tree tells none. */
    public String digest() {
        return text(tree, "digest").orElse("").replaceFirst("^sha256:", "");
    }

    /** Such as {@code Revision 4, released 2026-02-09 by T. Aldous, digest 0f00ba4b5a11}. */
    public String words() {
        JsonElement element = tree.get("revision");
        JsonObject revision = element != null && element.isJsonObject() ? element.getAsJsonObject() : new JsonObject();
        String digest = digest();
        return PlainText.line(text(revision, "number").map(number -> "Revision " + number).orElse("No revision") + ", "
                + text(revision, "status").orElse("draft")
                + text(revision, "dated").map(date -> " " + date).orElse("")
                + text(revision, "by").map(by -> " by " + by).orElse("")
                + (digest.isEmpty() ? "" : ", digest " + digest.substring(0, Math.min(SHORT_DIGEST, digest.length()))));
    }

    Optional<String> revisionNumber() {
        JsonElement revision = tree.get("revision");
        return revision != null && revision.isJsonObject() ? text(revision.getAsJsonObject(), "number") : Optional.empty();
    }

    JsonObject tree() {
        return tree;
    }

    private static Optional<String> text(JsonObject object, String key) {
        JsonElement value = object.get(key);
        return value != null && value.isJsonPrimitive() ? Optional.of(value.getAsString()) : Optional.empty();
    }
}
