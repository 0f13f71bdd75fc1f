package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Panels with several supplies and modules: who draws what, and who falls with whom; by hand. */
class PanelCausesTest {
    private static final Supply G1 = Supply.volts(24).named("G1").efficiency(90).sharedOhms(1)
        .alsoFeeding(5, 22.5);
    private static final Supply G2 = Supply.volts(48).named("G2").efficiency(80).rated(100);
    private static final Burden CARD = Burden.receiver("card", 250);

    private static CurrentLoop loop(int number, Supply supply) {
        return CurrentLoop.of("LT-" + number, supply, Transmitter.twoWire("LT", 12),
            Burden.receiver("first", 100), Isolator.separatelyPowered("channel", 12).feeding(CARD));
    }

    /** Two loops on G1 through a module on G2, a third on G2 through none. */
    private static Panel panel() {
        return Panel.of("MK-2", IsolatorModule.of("MK-81", 4).drawing(G2, 50).inrush(300)
            .channel(2, loop(1, G1)).channel(4, loop(2, G1))).withDirect(loop(3, G2)
                .exchanging("channel", i -> ((Isolator) i).ownMilliwatts(500)));
    }

    @Test
    @DisplayName("each supply carries its own loops, modules and others: 2 x 20 + 60 mA, and 20 + 50 mA")
    void everySupplyCarriesItsOwn() {
        final PanelState state = panel().at(20);
        assertThat(state.supply("G1").currents().loopMilliamps()).isEqualTo(40, within(1e-9));
        assertThat(state.supply("G1").currents().othersMilliamps()).isEqualTo(60, within(1e-9));
        assertThat(state.supply("G1").volts()).isEqualTo(24 - 0.100, within(1e-12));
        assertThat(state.supply("G2").currents().totalMilliamps()).isEqualTo(70, within(1e-9));
        // In: 24 V x 100 mA / 0.9, 48 V x 70 mA / 0.8 and 500 mW; the others on G1 get 23.9 V x 60 mA of it.
        assertThat(state.power().inMilliwatts().orElseThrow())
            .isEqualTo(2400 / 0.9 + 3360 / 0.8 + 500, within(1e-9));
        assertThat(state.power().othersMilliwatts()).isEqualTo(23.9 * 60, within(1e-9));
        assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
        // Module: 48 V x 50 mA in, two outputs of 250 ohm x (20 mA)^2 out.
        assertThat(state.module("MK-81").heatMilliwatts().orElseThrow()).isEqualTo(2400 - 200, within(1e-9));
        assertThat(panel().at(20, Corner.LEAST_VOLTAGE).supply("G1").volts())
            .isEqualTo(24 - 0.040 - 5 * 0.0225, within(1e-12));
        assertThat(state.toString()).contains("G1 gives 100.0 mA at 23.90 V, G2 gives 70.0 mA at 48.00 V",
            "every loop carries what it is asked for", "MK-81: heat 2.200 W",
                "LT-3: 20.00 mA, +34.00 V to spare");
        assertThat(panel().at(20).channel("LT-3").module()).isEmpty();
        assertThat(panel().moduleOf("LT-2").orElseThrow().spare()).isEqualTo(2);
        assertThat(panel().toString()).contains("3 loops", "MK-81: 2 of 4 channels used, draws 50 mA from G2",
            "without module: LT-3", "supply G1");
    }

    @Test
    void theLoadOfEachSupplyCountsOnlyItsOwn() {
        final PanelLoad load = panel().load();
        final PanelLoad.Row first = load.row("G1");
        assertThat(first.circuits()).isEqualTo(2);
        assertThat(first.currents().fullScaleMilliamps()).isEqualTo(40 + 60, within(1e-9));
        assertThat(first.currents().worstMilliamps()).isEqualTo(45 + 112.5, within(1e-9));
        assertThat(first.inrushMilliamps().orElseThrow()).isEqualTo(157.5, within(1e-9));
        final PanelLoad.Row second = load.row("G2");
        assertThat(second.currents().fullScaleMilliamps()).isEqualTo(70, within(1e-9));
        assertThat(second.currents().failureHighMilliamps()).isEqualTo(71, within(1e-9));
        assertThat(second.percentOfRating().orElseThrow()).isEqualTo(72.5, within(1e-9));
        assertThat(second.mainsMilliwatts().orElseThrow()).isEqualTo(48 * 72.5 / 0.8, within(1e-9));
        assertThat(second.inrushMilliamps().orElseThrow()).isEqualTo(322.5, within(1e-9));
        assertThat(load.toString()).contains("allowed: G2 gives up to 72.5 mA", "within its rating of 100 mA",
            "not determined: G1", "inrush 322.5 mA");
    }

    @Test
    void whatFallsWithEachSupplyAndModule() {
        final List<CommonCause> causes = panel().commonCauses(12);
        assertThat(causes).extracting(CommonCause::cause).containsExactly("G1", "G2", "MK-81");
        assertThat(causes.get(0).channels()).containsExactly("LT-1", "LT-2");
        assertThat(causes.get(0).effects()).allSatisfy(e -> assertThat(e.primary())
            .isEqualTo(FaultTable.Survival.NO));
        // G2 takes the loop that hangs on it, and only the outputs of the module's channels.
        assertThat(causes.get(1).effects()).extracting(CommonCause.Effect::channel,
            CommonCause.Effect::primary)
            .containsExactly(org.assertj.core.groups.Tuple.tuple("LT-1", FaultTable.Survival.YES),
                org.assertj.core.groups.Tuple.tuple("LT-2", FaultTable.Survival.YES),
                org.assertj.core.groups.Tuple.tuple("LT-3", FaultTable.Survival.NO));
        assertThat(causes.get(1).effects().get(0).readings()).extracting(r -> r.milliamps().orElseThrow())
            .containsExactly(12.0, 0.0);
        // "first" still reads its 12 mA and is no failure.
        assertThat(causes.get(1).effects().get(0).isFlagged()).isFalse();
        assertThat(causes.get(2).channels()).containsExactly("LT-1", "LT-2");
        assertThat(causes.get(2).toString()).contains("MK-81 (module out): 2 channels fall",
            "LT-1 (first reads 0.00");
    }

    @Test
    @DisplayName("a module behind another isolator with its own power leaves the transmitter's loop")
    void aModuleInASecondCircuit() {
        final CurrentLoop kiosk = CurrentLoop.of("LT-9", G1, Transmitter.twoWire("LT", 12),
            Burden.receiver("first", 100), Isolator.separatelyPowered("kiosk", 15).ownMilliwatts(900)
                .feeding(Isolator.separatelyPowered("channel", 12).inputDrop(1, 0).feeding(CARD)));
        final Panel panel = Panel.of("MK-2", IsolatorModule.of("MK-81", 4).drawing(G2, 50)
            .channel(1, PanelChannel.of(kiosk).through("channel")));
        final CommonCause out = panel.commonCauses(12).stream().filter(c -> c.cause().equals("MK-81"))
            .findFirst().orElseThrow();
        assertThat(out.effects()).singleElement().satisfies(e -> {
            assertThat(e.primary()).isEqualTo(FaultTable.Survival.YES);
            assertThat(e.readings()).extracting(r -> r.milliamps().orElseThrow()).containsExactly(12.0, 0.0);
        });
        // G2 powers the channel, not the kiosk's isolator.
        assertThat(panel.commonCauses(12).stream().filter(c -> c.cause().equals("G2")).findFirst()
            .orElseThrow().effects().get(0).readings().get(0).milliamps()).hasValue(12);
        // Its heat: 48 V x 50 mA and 1 V x 20 mA in, 250 ohm x (20 mA)^2 out.
        assertThat(panel.at(20).module("MK-81").heatMilliwatts().orElseThrow())
            .isEqualTo(2400 + 20 - 100, within(1e-9));
        assertThat(panel.at(20).power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
    }

    @Test
    void losingTheUnitThatAloneSufficesTakesEveryLoop() {
        // 10 V are below the lift-off of 12 V: nothing flows.
        final Supply pair = Supply.parallel("G1", Supply.volts(24), Supply.volts(10));
        final Panel panel = Panel.of("MK-2", loop(1, pair), loop(2, pair));
        final CommonCause lost = panel.commonCauses(12).get(1);
        assertThat(lost.kind()).isEqualTo(CommonCause.Kind.SUPPLY_UNIT);
        assertThat(lost.effects()).hasSize(2).allSatisfy(e -> {
            assertThat(e.primary()).isEqualTo(FaultTable.Survival.NO);
            assertThat(e.readings()).extracting(r -> r.milliamps().orElseThrow()).containsExactly(0.0, 0.0);
        });
        assertThat(lost.note()).startsWith("These do not reach").contains("not determined");
        assertThat(panel.commonCauses(12).get(2).note()).startsWith("Every loop still reaches");
        assertThat(panel.commonCauses(12).get(2).toString()).contains("no channel falls");
        final PanelState dark = panel.exchanging(pair, pair.withoutUnit(0)).at(12);
        assertThat(dark.isSolved()).isTrue();
        assertThat(dark.shortOfVoltage()).hasSize(2);
        assertThat(dark.toString()).contains("short of voltage: LT-1, LT-2", "LT-1: No solution");
        assertThat(dark.supply("G1").currents().totalMilliamps()).isEqualTo(0, within(1e-9));
    }

    @Test
    void namesThatCannotBeAreRefused() {
        assertThatThrownBy(() -> PanelChannel.of(loop(1, G1)).through("card"))
            .hasMessageContainingAll("card of LT-1",
            "no isolator in the cabinet");
        assertThatThrownBy(() -> PanelChannel.of(loop(1, G1)).inField("channel").through("channel"))
            .hasMessageContaining("no isolator in the cabinet");
        assertThatThrownBy(() -> PanelChannel.of(loop(1, G1)).inField("nothing"))
            .hasMessage("no device of LT-1 is named nothing");
        assertThatThrownBy(() -> Panel.of("MK-2", IsolatorModule.of("MK-81", 4).channel(1, loop(1, G1)),
            IsolatorModule.of("MK-81", 4).channel(1, loop(2, G1))))
                .hasMessage("MK-2 has two modules named MK-81");
        assertThatThrownBy(() -> panel().channel("nothing")).hasMessageContaining("nothing");
        assertThatThrownBy(() -> panel().at(20).supply("nothing")).hasMessageContaining("nothing");
        assertThatThrownBy(() -> panel().at(20).module("nothing")).hasMessageContaining("nothing");
        assertThatThrownBy(() -> panel().at(20).channel("nothing")).hasMessageContaining("nothing");
        assertThatThrownBy(() -> panel().load().row("nothing")).hasMessageContaining("nothing");
        assertThatThrownBy(() -> panel().at(51)).hasMessageContaining("51");
        assertThat(panel().channel("LT-2").toString()).isEqualTo("LT-2");
    }
}
