/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** What our own style sheets say of an element: rules by element, class and ancestor, the more particular one stronger. */
final class Styles {
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");

    /** @param parts an element and its ancestors, the outermost first, each as its name and classes */
    private record Rule(List<List<String>> parts, Map<String, String> says) {
        int weight() {
            return parts.stream().flatMap(List::stream).mapToInt(part -> part.startsWith(".") ? 100 : part.isEmpty() ? 0 : 1).sum();
        }

        boolean matches(Element element) {
            return matches(element, parts.size() - 1) && above(element, parts.size() - 2);
        }

        private boolean matches(Element element, int part) {
            List<String> classes = Arrays.asList(element.getAttribute("class").split(" "));
            return parts.get(part).stream().allMatch(one -> one.isEmpty() || (one.startsWith(".")
                    ? classes.contains(one.substring(1)) : one.equals(element.getTagName())));
        }

        private boolean above(Element element, int part) {
            Node parent = element.getParentNode();
            for (int left = part; left >= 0; parent = parent.getParentNode()) {
                if (!(parent instanceof Element ancestor)) {
                    return false;
                }
                left -= matches(ancestor, left) ? 1 : 0;
            }
            return true;
        }
    }

    private final List<Rule> rules = new ArrayList<>();

    Styles(String sheet) {
        String plain = sheet.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("(?s)@page\\s*\\{.*?\\}\\s*\\}", "");
        Matcher rule = RULE.matcher(plain);
        while (rule.find()) {
            Map<String, String> says = says(rule.group(2));
            for (String selector : rule.group(1).strip().split("\\s*,\\s*")) {
                if (selector.matches("[a-z0-9. -]+")) {
                    rules.add(new Rule(Arrays.stream(selector.split("\\s+")).map(Styles::part).toList(), says));
                }
            }
        }
        rules.sort(Comparator.comparingInt(Rule::weight));
    }

    private static List<String> part(String compound) {
        return Arrays.asList(compound.split("(?=\\.)"));
    }

    private static Map<String, String> says(String declarations) {
        Map<String, String> says = new LinkedHashMap<>();
        for (String declaration : declarations.split(";")) {
            int colon = declaration.indexOf(':');
            if (colon > 0) {
                says.put(declaration.substring(0, colon).strip(), declaration.substring(colon + 1).strip());
            }
        }
        return says;
    }

    Map<String, String> of(Element element) {
        Map<String, String> says = new LinkedHashMap<>();
        rules.stream().filter(rule -> rule.matches(element)).forEach(rule -> rule.says().forEach((property, value) -> {
            says.remove(property);
            says.put(property, value);
        }));
        return says;
    }
}
