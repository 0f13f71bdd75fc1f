package spanwright.readings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Distinct texts of a column, found by their bytes, so that a tag that stands in a million rows is decoded
 * once. Not thread safe.
 */
final class TextDictionary {
    private final List<byte[]> keys = new ArrayList<>();
    private int[] slots = new int[64];
    private int[] hashes = new int[32];
    private int last = -1;

    TextDictionary() {
        Arrays.fill(slots, -1);
    }

    /** The code of a text, from 0 in the order of first appearance. */
    int code(byte[] bytes, int from, int to) {
        if (last >= 0 && same(keys.get(last), bytes, from, to)) {
            return last;
        }
        final int hash = hash(bytes, from, to);
        int slot = hash & slots.length - 1;
        while (slots[slot] >= 0) {
            final int code = slots[slot];
            if (hashes[code] == hash && same(keys.get(code), bytes, from, to)) {
                last = code;
                return code;
            }
            slot = slot + 1 & slots.length - 1;
        }
        last = add(slot, hash, Arrays.copyOfRange(bytes, from, to));
        return last;
    }

    /** The texts as bytes, in the order of their codes. */
    List<byte[]> keys() {
        return keys;
    }

    private int add(int slot, int hash, byte[] key) {
        final int code = keys.size();
        keys.add(key);
        if (code == hashes.length) {
            hashes = Arrays.copyOf(hashes, 2 * code);
        }
        hashes[code] = hash;
        slots[slot] = code;
        if (2 * keys.size() > slots.length) {
            grow();
        }
        return code;
    }

    private void grow() {
        slots = new int[2 * slots.length];
        Arrays.fill(slots, -1);
        for (int code = 0; code < keys.size(); code++) {
            int slot = hashes[code] & slots.length - 1;
            while (slots[slot] >= 0) {
                slot = slot + 1 & slots.length - 1;
            }
            slots[slot] = code;
        }
    }

    private static boolean same(byte[] key, byte[] bytes, int from, int to) {
        return Arrays.equals(key, 0, key.length, bytes, from, to);
    }

    private static int hash(byte[] bytes, int from, int to) {
        int h = to - from;
        for (int i = from; i < to; i++) {
            h = 31 * h + bytes[i];
        }
        h ^= h >>> 15;
        return h * 0x2c1b3c6d ^ h >>> 13;
    }
}
