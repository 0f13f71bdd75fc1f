package spanwright.notebook.show;

import java.util.Optional;
import spanwright.chart.LoopCharts;
import spanwright.kernel.display.MimeBundle;
import spanwright.kernel.display.Renderer;
import spanwright.kernel.document.Headline;
import spanwright.loop.LoopAnswer;
import spanwright.loop.LoopMargins;
import spanwright.quantity.NumberText;

/** Shows whether a loop reaches the current it must carry. */
public final class LoopRenderer implements Renderer {
    /** For the service loader. */
    public LoopRenderer() { }

    @Override
    public Optional<MimeBundle> render(Object value) {
        if (value instanceof LoopAnswer answer) {
            return Optional.of(new Headline(answer.word().toString(), answer.sentence()).on(sheet(answer)
                .bundle()));
        }
        return Optional.empty();
    }

    private static Sheet sheet(LoopAnswer answer) {
        return Sheet.saying(answer.word().mark() + " " + answer.sentence()).notes("Before field work",
            answer.cautions()).with(margins(answer.margins()))
            .with(LoopCharts.requiredAndAvailable(answer.loop()))
            .notes("Checks", answer.checks().items().stream().map(Object::toString).toList())
            .notes("Assumptions", answer.assumptions());
    }

    private static Grid margins(LoopMargins margins) {
        final Grid.Builder grid = Grid.of("Voltage needed and to spare", "#current (mA)", "#needed (V)",
            "#to spare, nominal (V)", "#to spare, worst case (V)");
        margins.rows().forEach(r -> grid.row(NumberText.plain(r.milliamps(), 4),
            NumberText.fixed(r.requiredVolts(), 2), NumberText.signed(r.nominalVolts(), 2),
            NumberText.signed(r.worstVolts(), 2)));
        return grid.build();
    }
}
