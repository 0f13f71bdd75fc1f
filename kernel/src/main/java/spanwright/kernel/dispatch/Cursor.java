package spanwright.kernel.dispatch;

/** Positions in code: the protocol counts code points from version 5.2 on, Java counts UTF-16 units. */
record Cursor(String code, boolean codePoints) {
    /** The UTF-16 index of a position of the protocol; one outside the code is moved to its nearer end. */
    int toIndex(int position) {
        final int p = Math.max(0, position);
        if (!codePoints) {
            return Math.min(p, code.length());
        }
        return p >= code.codePointCount(0, code.length()) ? code.length() : code.offsetByCodePoints(0, p);
    }

    /** The position of the protocol of a UTF-16 index; one outside the code is moved to its nearer end. */
    int toPosition(int index) {
        final int i = Math.max(0, Math.min(index, code.length()));
        return codePoints ? code.codePointCount(0, i) : i;
    }
}
