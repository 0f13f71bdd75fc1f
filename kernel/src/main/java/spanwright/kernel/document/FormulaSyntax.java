package spanwright.kernel.document;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.node.Block;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.parser.Parser;
import org.commonmark.parser.SourceLine;
import org.commonmark.parser.beta.InlineContentParser;
import org.commonmark.parser.beta.InlineContentParserFactory;
import org.commonmark.parser.beta.InlineParserState;
import org.commonmark.parser.beta.ParsedInline;
import org.commonmark.parser.beta.Position;
import org.commonmark.parser.beta.Scanner;
import org.commonmark.parser.block.AbstractBlockParser;
import org.commonmark.parser.block.AbstractBlockParserFactory;
import org.commonmark.parser.block.BlockContinue;
import org.commonmark.parser.block.BlockStart;
import org.commonmark.parser.block.MatchedBlockParser;
import org.commonmark.parser.block.ParserState;

/**
 * Formulas in markdown: {@code $..$} within a line of text, {@code $$..$$} and LaTeX environments as blocks
 * of their own. A dollar sign opens only before something that is not a space, and closes only after such and
 * not before a digit, so that "between $5 and $6" stays text; {@code \$} never opens.
 */
final class FormulaSyntax {
    private FormulaSyntax() { }

    static Parser.Builder addTo(Parser.Builder builder) {
        return builder.customInlineContentParserFactory(new InlineFactory())
            .customBlockParserFactory(new BlockFactory());
    }

    /** A formula within text. */
    static final class Inline extends CustomNode {
        final String latex;
        final boolean display;

        Inline(String latex, boolean display) {
            this.latex = latex;
            this.display = display;
        }
    }

    /** A formula as a block. */
    static final class Displayed extends CustomBlock {
        String latex = "";
    }

    private static final class InlineFactory implements InlineContentParserFactory {
        @Override
        public Set<Character> getTriggerCharacters() {
            return Set.of('$');
        }

        @Override
        public InlineContentParser create() {
            return InlineFactory::parse;
        }

        private static ParsedInline parse(InlineParserState state) {
            final Scanner scanner = state.scanner();
            final int dollars = Math.min(2, scanner.matchMultiple('$'));
            final Position start = scanner.position();
            if (dollars == 1 && isSpace(scanner.peek())) {
                return ParsedInline.none();
            }
            while (scanner.find('$') >= 0) {
                final Position end = scanner.position();
                final int before = scanner.peekPreviousCodePoint();
                final int closing = scanner.matchMultiple('$');
                final boolean closes = closing == dollars && before != '\\'
                    && (dollars == 2 || !isSpace(before) && !Character.isDigit(scanner.peek()));
                if (!closes && dollars == 1 && before != '\\') {
                    // Another opening: the first one was money.
                    return ParsedInline.none();
                }
                if (closes) {
                    final String latex = scanner.getSource(start, end).getContent();
                    return latex.isBlank() ? ParsedInline.none()
                        : ParsedInline.of(new Inline(latex, dollars == 2), scanner.position());
                }
            }
            return ParsedInline.none();
        }

        private static boolean isSpace(int c) {
            return c == Scanner.END || Character.isWhitespace(c);
        }
    }

    private static final class BlockFactory extends AbstractBlockParserFactory {
        private static final Pattern ENVIRONMENT = Pattern.compile(
            "\\\\begin\\{((?:equation|align|gather|multline|eqnarray|alignat|flalign)\\*?)}(.*)",
            Pattern.DOTALL);

        @Override
        public BlockStart tryStart(ParserState state, MatchedBlockParser matched) {
            if (state.getIndent() >= 4) {
                return BlockStart.none();
            }
            final String line = state.getLine().getContent().toString();
            final String rest = line.substring(state.getNextNonSpaceIndex());
            final Matcher environment = ENVIRONMENT.matcher(rest);
            if (environment.matches()) {
                return start(new BlockFormula("\\end{" + environment.group(1) + "}", true, rest), line);
            }
            if (rest.startsWith("$$")) {
                final String after = rest.substring(2).stripTrailing();
                final int close = after.indexOf("$$");
                if (close < 0 || close > 0 && close == after.length() - 2) {
                    return start(new BlockFormula("$$", false, after), line);
                }
            }
            return BlockStart.none();
        }

        private static BlockStart start(BlockFormula block, String line) {
            return BlockStart.of(block).atIndex(line.length());
        }
    }

    private static final class BlockFormula extends AbstractBlockParser {
        private static final Pattern EQUATION = Pattern.compile("\\\\(begin|end)\\{equation\\*?}");

        private final Displayed block = new Displayed();
        private final String end;
        private final boolean keepEnd;
        private final StringBuilder text = new StringBuilder();
        private boolean ended;

        BlockFormula(String end, boolean keepEnd, String first) {
            this.end = end;
            this.keepEnd = keepEnd;
            take(first);
        }

        private void take(CharSequence line) {
            final String content = line.toString();
            final int at = content.indexOf(end);
            ended = at >= 0;
            text.append(ended ? content.substring(0, keepEnd ? at + end.length() : at)
                : content).append('\n');
        }

        @Override
        public Block getBlock() {
            return block;
        }

        @Override
        public BlockContinue tryContinue(ParserState state) {
            return ended ? BlockContinue.none() : BlockContinue.atIndex(state.getIndex());
        }

        @Override
        public void addLine(SourceLine line) {
            if (!ended) {
                take(line.getContent());
            }
        }

        @Override
        public void closeBlock() {
            block.latex = EQUATION.matcher(text.toString().strip()).replaceAll("").strip();
        }
    }
}
