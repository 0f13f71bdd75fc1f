package spanwright.readings;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The text of a file, with what had to be decided to get it: UTF-8 with or without a byte order mark, UTF-16
 * by its mark or by its zero bytes, else Latin-1 in the form that is in use (Windows-1252, which adds
 * characters where Latin-1 has none).
 *
 * @param text     the characters
 * @param findings byte order mark and encoding, where they are not the usual ones
 */
record TextFile(String text, List<RecordFinding> findings) {
    private static final Charset LATIN = Charset.forName("windows-1252");

    TextFile {
        findings = List.copyOf(findings);
    }

    /**
     * Decodes the bytes of a file.
     *
     * @throws ReadingsFormatException if they are no text: a control character stands among them
     */
    static TextFile decode(byte[] bytes, String file) {
        final List<RecordFinding> findings = new ArrayList<>();
        final CellAddress start = new CellAddress(file, "", 1, 1);
        final String text;
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            findings.add(RecordFinding.of(Fault.BYTE_ORDER_MARK, start, "",
                "byte order mark of UTF-8 dropped"));
            text = utf8OrLatin(bytes, 3, findings, start);
        } else if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            final Charset set = bytes[0] == (byte) 0xFE ? StandardCharsets.UTF_16BE
                : StandardCharsets.UTF_16LE;
            findings.add(RecordFinding.of(Fault.BYTE_ORDER_MARK, start, "",
                "byte order mark of UTF-16 dropped"));
            text = utf16(bytes, 2, set, findings, start);
        } else if (looksLikeUtf16(bytes)) {
            final Charset set = bytes[0] == 0 ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
            text = utf16(bytes, 0, set, findings, start);
        } else {
            text = utf8OrLatin(bytes, 0, findings, start);
        }
        refuseControls(text, file);
        return new TextFile(text, findings);
    }

    private static String utf8OrLatin(byte[] bytes, int from, List<RecordFinding> findings,
        CellAddress start) {
        final ByteBuffer rest = ByteBuffer.wrap(bytes, from, bytes.length - from);
        try {
            return StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT).decode(rest).toString();
        } catch (CharacterCodingException e) {
            findings.add(RecordFinding.of(Fault.ENCODING, start, "",
                "the bytes are not UTF-8; read as Latin-1 (Windows-1252)"));
            return new String(bytes, from, bytes.length - from, LATIN);
        }
    }

    private static String utf16(byte[] bytes, int from, Charset set, List<RecordFinding> findings,
                                CellAddress start) {
        findings.add(RecordFinding.of(Fault.ENCODING, start, "", "read as " + set.name()));
        return new String(bytes, from, bytes.length - from, set);
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        for (int i = 0; i < mark.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }

    /** Every second byte of the first few is zero, as in Western text in UTF-16. */
    private static boolean looksLikeUtf16(byte[] bytes) {
        final int n = Math.min(bytes.length & ~1, 64);
        int even = 0;
        int odd = 0;
        for (int i = 0; i < n; i += 2) {
            even += bytes[i] == 0 ? 1 : 0;
            odd += bytes[i + 1] == 0 ? 1 : 0;
        }
        return n >= 4 && (even == n / 2 && odd == 0 || odd == n / 2 && even == 0);
    }

    private static void refuseControls(String text, String file) {
        int line = 1;
        int column = 1;
        for (int i = 0; i < text.length(); i++) {
            final char c = text.charAt(i);
            if (c == '\n') {
                line++;
            } else if (c < ' ' && c != '\t' && c != '\r' || c == '\ufffd' || c == '\u007f') {
                throw new ReadingsFormatException(RecordFinding.of(Fault.NOT_A_TEXT,
                    new CellAddress(file, "", line, column), "", String.format(java.util.Locale.ROOT,
                        "character U+%04X is in no text; a text file or XLSX is needed", (int) c)));
            }
        }
    }
}
