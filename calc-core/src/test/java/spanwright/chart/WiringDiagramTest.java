package spanwright.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;
import static spanwright.quantity.Celsius.degC;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import spanwright.loop.Burden;
import spanwright.loop.Cable;
import spanwright.loop.CircuitState;
import spanwright.loop.Corner;
import spanwright.loop.CurrentLoop;
import spanwright.loop.ElementState;
import spanwright.loop.Isolator;
import spanwright.loop.LoopElement;
import spanwright.loop.LoopState;
import spanwright.loop.Supply;
import spanwright.loop.Transmitter;
import spanwright.quantity.NumberText;

/** What stands on a wiring diagram, and that nothing on it lies on anything else. */
class WiringDiagramTest {
    private static void keep(String name, Picture picture) throws IOException {
        if (System.getProperty("spanwright.pictures") != null) {
            Files.write(Path.of(System.getProperty("spanwright.pictures"), name + ".png"), picture.png());
            Files.writeString(Path.of(System.getProperty("spanwright.pictures"), name + ".svg"),
                picture.svg());
        }
    }

    private static CurrentLoop nested(int depth) {
        LoopElement behind = Burden.receiver("input card", 250);
        for (int i = depth; i > 0; i--) {
            behind = Isolator.inputLoopPowered("isolator " + i, 3.5).feeding(behind);
        }
        return CurrentLoop.of("LT-101", Supply.volts(36).tolerance(10),
            Cable.copper(1.0).metres(600).at(degC(60)), Transmitter.twoWire("LT-101", 12), behind);
    }

    private static CurrentLoop everyKind() {
        return CurrentLoop.of("LT-102", Supply.parallel("redundant supply", Supply.volts(48),
            Supply.volts(48)), Burden.fuse("F1", 2), Burden.barrier("barrier", 30),
            Burden.surgeDevice("surge device", 2), Cable.copper(1.5).metres(800),
            Transmitter.fourWirePassive("LT-102", 10), Burden.meter("meter", 0.3, 5),
            Burden.resistor("for the handheld", 250),
            Isolator.outputLoopPowered("cabinet isolator", 9).outputSupply(Supply.volts(24))
                .feeding(Burden.receiver("logger", 100).tappedThrough(1e6)),
            Isolator.separatelyPowered("outgoing isolator", 12)
                .feeding(Cable.copper(0.75).metres(100).named("cable 2"),
                    Burden.fieldDevice("positioner", 2, 300)));
    }

    @ParameterizedTest(name = "{0} isolators nested")
    @ValueSource(ints = {0, 1, 2, 3})
    void nestedIsolatorsHangUnderEachOther(int depth) throws IOException {
        final CurrentLoop loop = nested(depth);
        final WiringDiagram diagram = WiringDiagram.drawn(loop, loop.at(20));
        keep("wiring-nested-" + depth, WiringDiagram.of(loop, 20));
        assertNothingOverlaps(diagram);
        final List<Double> outputs = parts(diagram).filter(p -> p.symbol().isIsolator())
            .map(WiringItem.Part::railDown).sorted().toList();
        assertThat(outputs).hasSize(depth).doesNotHaveDuplicates();
    }

    @Test
    void everyKindOfElementHasItsSymbol() throws IOException {
        final CurrentLoop loop = everyKind();
        keep("wiring-every-kind", WiringDiagram.of(loop, 20));
        final WiringDiagram diagram = WiringDiagram.drawn(loop, loop.at(20));
        assertNothingOverlaps(diagram);
        assertThat(parts(diagram).map(WiringItem.Part::symbol)).contains(WiringSymbol.SUPPLY,
            WiringSymbol.FUSE, WiringSymbol.BARRIER, WiringSymbol.SURGE_DEVICE, WiringSymbol.CORE,
            WiringSymbol.OWN_SUPPLY_TRANSMITTER, WiringSymbol.METER, WiringSymbol.RESISTOR,
            WiringSymbol.OUTPUT_POWERED_ISOLATOR, WiringSymbol.TAPPED_RECEIVER,
            WiringSymbol.SEPARATE_ISOLATOR, WiringSymbol.FIELD_DEVICE);
    }

    @Test
    void anOutputCardStandsWhereTheSupplyWould() throws IOException {
        final CurrentLoop loop = CurrentLoop.of("FV-201", Transmitter.outputCard("output card", 20),
            Cable.copper(1.0).metres(200), Burden.fieldDevice("positioner", 4, 200));
        keep("wiring-output-card", WiringDiagram.of(loop, 12));
        assertNothingOverlaps(WiringDiagram.drawn(loop, loop.at(12)));
    }

    @Test
    void aShortLoopSaysWhatWasAskedFor() throws IOException {
        final CurrentLoop loop = nested(2).on(Supply.volts(24));
        final Picture picture = WiringDiagram.of(loop, 22.5);
        keep("wiring-short", picture);
        // Worked by hand: see the knee of two isolators in LoopVectorsTest.
        assertThat(picture.svg()).contains(">18.17 mA<", ">of 22.50 mA<");
    }

    @Test
    void aLoopWithoutASolutionIsNotDrawn() {
        final CurrentLoop loop = nested(1).on(Supply.volts(5));
        assertThatThrownBy(() -> WiringDiagram.of(loop, 20)).isInstanceOf(IllegalStateException.class)
            .hasMessageContaining("No solution");
        assertThatThrownBy(() -> WiringDiagram.of(loop, nested(1).exchanging("input card",
            e -> Burden.receiver("another card", 250)).at(20))).isInstanceOf(IllegalArgumentException.class)
            .hasMessageContaining("another card");
    }

    @Property(tries = 300)
    void nothingOverlapsAndEveryFigureIsTheSolvers(@ForAll @IntRange(min = 1, max = 6) int elements,
                                                    @ForAll long seed) {
        final CurrentLoop loop = new RandomLoop(seed).of(elements);
        for (Corner corner : Corner.values()) {
            final LoopState state = loop.at(12, corner);
            assertThat(state.isSolved()).as(state.sentence()).isTrue();
            final WiringDiagram diagram = WiringDiagram.drawn(loop, state);
            assertNothingOverlaps(diagram);
            assertThat(volts(diagram)).as(loop.toString()).containsExactlyInAnyOrderElementsOf(
                expected(state));
            if (parts(diagram).noneMatch(p -> p.symbol().isIsolator())) {
                assertThat(clockwise(diagram)).isEqualTo(potentials(state.primary()));
            }
        }
    }

    private static List<String> potentials(CircuitState circuit) {
        return Stream.concat(circuit.elements().stream().map(ElementState::plusVolts), circuit.elements()
            .stream().skip(Math.max(0, circuit.elements().size() - 1)).map(ElementState::minusVolts))
            .map(v -> NumberText.fixed(v, 2) + " V").toList();
    }

    /** Potentials at the wires of a single ring as the current meets them. */
    private static List<String> clockwise(WiringDiagram diagram) {
        final double lowest = diagram.items().stream().filter(WiringItem.Wire.class::isInstance)
            .mapToDouble(w -> w.box().bottom()).max().orElseThrow();
        final List<WiringItem.Label> all = labels(diagram).filter(l -> l.style() == WiringItem.Style.POTENTIAL
            && l.text().endsWith(" V")).sorted(Comparator.comparingDouble(WiringItem.Label::left)).toList();
        final List<WiringItem.Label> flow = new ArrayList<>(all.stream()
            .filter(l -> l.baseline() < lowest - 20).toList());
        final List<WiringItem.Label> back = new ArrayList<>(all.stream()
            .filter(l -> l.baseline() >= lowest - 20).toList());
        Collections.reverse(back);
        flow.addAll(back);
        return flow.stream().map(WiringItem.Label::text).toList();
    }

    /** Of every ring: the voltage of its source, of each element, and the potential of each wire. */
    private static List<String> expected(LoopState state) {
        final List<Double> all = new ArrayList<>();
        for (CircuitState circuit : state.circuits()) {
            final List<ElementState> elements = circuit.elements();
            if (!elements.isEmpty()) {
                all.add(circuit.sourceVolts());
                elements.forEach(e -> all.add(e.volts()));
                elements.forEach(e -> all.add(e.plusVolts()));
                all.add(elements.get(elements.size() - 1).minusVolts());
            }
        }
        return all.stream().map(v -> NumberText.fixed(v, 2) + " V").toList();
    }

    private static List<String> volts(WiringDiagram diagram) {
        return labels(diagram).map(l -> l.text().replaceFirst("^(input|output) ", ""))
            .filter(t -> t.matches("\u2212?[0-9.]+ V")).toList();
    }

    private static Stream<WiringItem.Label> labels(WiringDiagram diagram) {
        return diagram.items().stream().filter(WiringItem.Label.class::isInstance)
            .map(WiringItem.Label.class::cast);
    }

    private static Stream<WiringItem.Part> parts(WiringDiagram diagram) {
        return diagram.items().stream().filter(WiringItem.Part.class::isInstance)
            .map(WiringItem.Part.class::cast);
    }

    /** No text on a text, a symbol or a wire; no symbol on another; no wire through a symbol or a wire. */
    private static void assertNothingOverlaps(WiringDiagram diagram) {
        final List<WiringItem> items = diagram.items();
        for (int i = 0; i < items.size(); i++) {
            final WiringItem.Box page = new WiringItem.Box(0, 0, diagram.getWidth(), diagram.getHeight());
            final WiringItem.Box box = items.get(i).box();
            assertThat(box.left() >= page.left() && box.top() >= page.top() && box.right() <= page.right()
                && box.bottom() <= page.bottom()).as("%s is on the page", items.get(i)).isTrue();
            for (int k = 0; k < i; k++) {
                if (overlap(items.get(i), items.get(k))) {
                    fail(items.get(i) + " lies on " + items.get(k));
                }
            }
        }
    }

    private static boolean overlap(WiringItem a, WiringItem b) {
        final boolean wires = a instanceof WiringItem.Wire && b instanceof WiringItem.Wire;
        final boolean joined = a instanceof WiringItem.Wire != b instanceof WiringItem.Wire
            && !(a instanceof WiringItem.Label) && !(b instanceof WiringItem.Label);
        // A wire is as thick as its stroke; it ends at the terminal of a symbol and at the corner of a ring.
        final WiringItem.Box first = a instanceof WiringItem.Wire && !wires && !joined
            ? a.box().shrunk(-0.7) : a.box();
        final WiringItem.Box second = b instanceof WiringItem.Wire && !wires && !joined
            ? b.box().shrunk(-0.7) : b.box();
        return wires ? crosses((WiringItem.Wire) a, (WiringItem.Wire) b) : first.overlaps(second);
    }

    private static boolean crosses(WiringItem.Wire a, WiringItem.Wire b) {
        final boolean flatA = a.y1() == a.y2();
        final boolean flatB = b.y1() == b.y2();
        if (flatA == flatB) {
            return flatA ? a.y1() == b.y1() && a.box().left() < b.box().right()
                && b.box().left() < a.box().right() : a.x1() == b.x1() && a.box().top() < b.box().bottom()
                && b.box().top() < a.box().bottom();
        }
        final WiringItem.Box flat = (flatA ? a : b).box();
        final WiringItem.Box tall = (flatA ? b : a).box();
        return flat.left() < tall.left() && tall.left() < flat.right() && tall.top() < flat.top()
            && flat.top() < tall.bottom();
    }

    /** Loops of one to six elements of every kind, isolators up to three deep. */
    private static final class RandomLoop {
        private static final List<String> NAMES = List.of("card", "input of the controller",
            "Niederspannungshauptverteilung 7", "x", "kiosk isolator, spare", "LT-101A");

        private final Random random;
        private int count;
        private int left;

        RandomLoop(long seed) {
            random = new Random(seed);
        }

        CurrentLoop of(int elements) {
            left = elements - 1;
            final int way = random.nextInt(4);
            final List<LoopElement> all = new ArrayList<>();
            while (left > 0) {
                all.add(element(0));
            }
            final Transmitter transmitter = way == 0 ? Transmitter.fourWire(name(), 300)
                : way == 1 ? Transmitter.outputCard(name(), 300)
                : way == 2 ? Transmitter.fourWirePassive(name(), 9) : Transmitter.twoWire(name(), 12);
            all.add(random.nextInt(all.size() + 1), transmitter);
            final LoopElement[] array = all.toArray(new LoopElement[0]);
            return way < 2 ? CurrentLoop.of("loop", array) : CurrentLoop.of("loop", supply(), array);
        }

        private Supply supply() {
            return random.nextBoolean() ? Supply.volts(400).tolerance(10)
                : Supply.split("a split supply, long name", Supply.volts(200), Supply.volts(200));
        }

        private String name() {
            return NAMES.get(random.nextInt(NAMES.size())) + " " + ++count;
        }

        private LoopElement element(int depth) {
            left--;
            final int kind = random.nextInt(depth < 3 && left > 0 ? 12 : 8);
            return kind < 8 ? plain(kind) : isolator(kind, depth);
        }

        private LoopElement plain(int kind) {
            return switch (kind) {
                case 0 -> Cable.copper(1.0).metres(random.nextInt(2000)).named(name());
                case 1 -> Burden.receiver(name(), 250);
                case 2 -> Burden.receiver(name(), 100).tappedThrough(1e5);
                case 3 -> Burden.meter(name(), 0.5, 3).tolerance(10);
                case 4 -> Burden.barrier(name(), 60);
                case 5 -> Burden.surgeDevice(name(), 4);
                case 6 -> Burden.fieldDevice(name(), 3, 150);
                default -> random.nextBoolean() ? Burden.fuse(name(), 1) : Burden.resistor(name(), 250);
            };
        }

        private LoopElement isolator(int kind, int depth) {
            final String name = name();
            final List<LoopElement> fed = new ArrayList<>();
            do {
                fed.add(element(depth + 1));
            } while (left > 0 && random.nextBoolean());
            final LoopElement[] array = fed.toArray(new LoopElement[0]);
            return switch (kind) {
                case 8, 9 -> Isolator.inputLoopPowered(name, 3.5).feeding(array);
                case 10 -> Isolator.outputLoopPowered(name, 8).outputSupply(supply()).feeding(array);
                default -> Isolator.separatelyPowered(name, 300).feeding(array);
            };
        }
    }
}
