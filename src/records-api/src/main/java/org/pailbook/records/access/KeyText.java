package org.pailbook.records.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.regex.Pattern;

/** The text of a key: {@code pb_<8 characters>_<43 characters>}, 256 random bits; only its SHA-256 is kept. */
public final class KeyText {
    private static final String LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
    private static final int NAME_LENGTH = 8;
    /** 43 letters out of 62 hold 256 bits: 43 x log2(62) = 256.03. */
    private static final int SECRET_LENGTH = 43;

    private static final Pattern LOOKS_LIKE_ONE = Pattern.compile("pb_[0-9A-Za-z]{8}_[0-9A-Za-z]{20,}");

    private static final SecureRandom RANDOM = new SecureRandom();

    private KeyText() {}

    static String next() {
        return "pb_" + random(NAME_LENGTH) + "_" + random(SECRET_LENGTH);
    }

    /** A secret that stands in an address: the random part of a key, 256 bits. */
    public static String nextForAddress() {
        return random(SECRET_LENGTH);
    }

    /** Whether somewhere in a text there is what looks like a key. */
    static boolean isIn(String text) {
        return LOOKS_LIKE_ONE.matcher(text).find();
    }

    public static String sha256(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private static String random(int length) {
        StringBuilder text = new StringBuilder(length);
        for (int i = 0; i < length; i++) {
            text.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
        }
        return text.toString();
    }
}
