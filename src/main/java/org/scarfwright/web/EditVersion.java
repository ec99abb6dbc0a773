package org.scarfwright.web;

import org.jspecify.annotations.Nullable;

/** The version of a thing as an entity tag (RFC 9110, section 8.8.3). */
public final class EditVersion {
    private EditVersion() {}

    public static String etag(long version) {
        return "\"" + version + "\"";
    }

    /**
     * @param ifMatch the header as sent
     * @return the version the editor saw
     * @throws EditConditionException when it is missing or no version of ours
     */
    public static long seen(@Nullable String ifMatch) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw EditConditionException.missing();
        }
        String tag = ifMatch.strip();
        if (!tag.matches("\"\\d{1,18}\"")) {
            throw EditConditionException.stale();
        }
        return Long.parseLong(tag.substring(1, tag.length() - 1));
    }
}
