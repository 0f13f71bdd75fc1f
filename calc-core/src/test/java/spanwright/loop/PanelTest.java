package spanwright.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A cabinet of 16 channels. Expected values by hand from Ohm's and Kirchhoff's laws, derived beside each. */
class PanelTest {
    /** 24 V behind 0.5 ohm of shared feed, 0.3 V of diode, 90 % efficient, rated 1 A. */
    private static final Supply SUPPLY = Supply.volts(24).named("G1").diodeDrop(0.3).sharedOhms(0.5)
        .efficiency(90).rated(1000);

    /** Two-wire transmitter, 10 ohm of cable, separately powered channel into a card of 250 ohm. */
    private static CurrentLoop loop(int number) {
        return CurrentLoop.of("LT-" + number, SUPPLY,
            Cable.measured(Toleranced.exactly(10)).metres(500), Transmitter.twoWire("LT", 12),
            Isolator.separatelyPowered("channel", 12).inputDrop(1, 50)
                .feeding(Burden.receiver("card", 250)));
    }

    private static Panel panel() {
        return Panel.of("MK-2",
            IsolatorModule.of("MK-81", 8).drawing(SUPPLY, 200).inrush(900)
                .channels(IntStream.rangeClosed(1, 8).mapToObj(PanelTest::loop).toList()),
            IsolatorModule.of("MK-82", 8).drawing(SUPPLY, Toleranced.between(180, 240)).inrush(900)
                .channels(IntStream.rangeClosed(9, 16).mapToObj(PanelTest::loop).toList()));
    }

    @Test
    @DisplayName("16 loops at 20 mA and two modules: currents and voltage of the feed by Kirchhoff's laws")
    void theFeedSinksByTheCurrentOfAll() {
        final PanelState state = panel().at(20);
        // 16 x 20 mA + 200 mA + (180 + 240) / 2 mA = 730 mA; 24 - 0.3 - 0.5 ohm x 0.730 A = 23.335 V.
        assertThat(state.supply("G1").currents().totalMilliamps()).isEqualTo(730, within(1e-9));
        assertThat(state.supply("G1").volts()).isEqualTo(23.335, within(1e-12));
        // 23.335 - 20 mA x (10 + 50) ohm - 1 V - 12 V leave 9.135 V.
        assertThat(state.channel("LT-7").state().primary().budget().marginVolts())
            .isEqualTo(9.135, within(1e-12));
        assertThat(state.shortOfVoltage()).isEmpty();
    }

    @Test
    @DisplayName("heat of the module, the supply, the cabinet and the field, each from its own V x I")
    void heatIsThatOfEachVoltageAndCurrent() {
        final PanelState state = panel().at(20);
        // Module: 23.335 V x 200 mA drawn, 8 inputs take (1 V + 50 ohm x 20 mA) x 20 mA = 40 mW each, 8
        // outputs give 250 ohm x (20 mA)^2 = 100 mW each.
        assertThat(state.module("MK-81").heatMilliwatts().orElseThrow())
            .isEqualTo(23.335 * 200 + 8 * 40 - 8 * 100, within(1e-9));
        // Units give 24 V x 730 mA; 1 / 0.9 - 1 of it is lost, 0.3 V x 730 mA in the diode, I^2 R in the
        // feed.
        assertThat(state.supply("G1").heatMilliwatts().orElseThrow())
            .isEqualTo(24 * 730 * (1 / 0.9 - 1) + 0.3 * 730 + 0.5e-3 * 730 * 730, within(1e-9));
        assertThat(state.supply("G1").mainsMilliwatts().orElseThrow()).isEqualTo(24 * 730 / 0.9,
            within(1e-9));
        // Field: 23.335 V less 2 V of the input at 20 mA, in cable and transmitter.
        assertThat(state.fieldHeatMilliwatts().orElseThrow()).isEqualTo(16 * (23.335 - 2) * 20, within(1e-9));
        // The cabinet keeps all the rest of what the mains gives.
        assertThat(state.cabinetHeatMilliwatts().orElseThrow())
            .isEqualTo(24 * 730 / 0.9 - 16 * (23.335 - 2) * 20, within(1e-9));
        assertThat(state.power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
    }

    @Test
    @DisplayName("supply load at 20 mA, at 21 mA (NE 43) and in the worst corner, against the rating")
    void loadOfTheSupply() {
        final PanelLoad.Row row = panel().load().row("G1");
        assertThat(row.circuits()).isEqualTo(16);
        assertThat(row.currents().fullScaleMilliamps()).isEqualTo(16 * 20 + 200 + 210, within(1e-9));
        assertThat(row.currents().failureHighMilliamps()).isEqualTo(16 * 21 + 200 + 210, within(1e-9));
        assertThat(row.currents().worstMilliamps()).isEqualTo(16 * 22.5 + 200 + 240, within(1e-9));
        assertThat(row.marginMilliamps().orElseThrow()).isEqualTo(200, within(1e-9));
        assertThat(row.inrushMilliamps().orElseThrow()).isEqualTo(16 * 22.5 + 1800, within(1e-9));
        assertThat(row.mainsMilliwatts().orElseThrow()).isEqualTo(24 * 800 / 0.9, within(1e-9));
        assertThat(row.check().outcome()).isEqualTo(LoopChecks.Outcome.ALLOWED);
        final Panel weak = panel().exchanging(SUPPLY, SUPPLY.rated(799));
        assertThat(weak.load().checks().refusals()).singleElement().asString().contains("800", "799", "G1");
    }

    @Test
    void whatIsNotStatedIsNotDetermined() {
        final Supply bare = Supply.volts(24).named("G1");
        final Panel panel = Panel.of("MK-2", IsolatorModule.of("MK-81", 2)
            .channel(1, loop(1).on(bare)).channel(2, loop(2).on(bare)));
        final PanelState state = panel.at(20);
        assertThat(state.module("MK-81").heatMilliwatts()).isEmpty();
        assertThat(state.cabinetHeatMilliwatts()).isEmpty();
        assertThat(state.power().sumMilliwatts()).isEmpty();
        assertThat(state.power().circuitSumMilliwatts()).isEqualTo(0, within(1e-9));
        assertThat(state.fieldHeatMilliwatts()).isPresent();
        assertThat(state.power().notDetermined()).containsExactly(
            "heat and mains power of G1: its efficiency is not stated",
            "heat of MK-81: the power from its own supply is not stated");
        final PanelLoad.Row row = panel.load().row("G1");
        assertThat(row.mainsMilliwatts()).isEmpty();
        assertThat(row.marginMilliamps()).isEmpty();
        assertThat(row.check().outcome()).isEqualTo(LoopChecks.Outcome.NOT_DETERMINED);
        final Panel drawing = Panel.of("MK-2", IsolatorModule.of("MK-81", 2).drawing(bare, 50)
            .channel(1, loop(1).on(bare)));
        assertThat(drawing.load().row("G1").inrushMilliamps()).isEmpty();
        assertThat(drawing.load().toString()).contains("inrush not determined");
    }

    @Test
    @DisplayName("loops short of voltage draw what the shared feed leaves them: one equation by hand")
    void loopsShortOfVoltageShareWhatThereIs() {
        final Supply weak = Supply.volts(20).named("G1").sharedOhms(20);
        final List<CurrentLoop> loops = IntStream.rangeClosed(1, 4).mapToObj(i -> CurrentLoop.of("LT-" + i,
            weak, Transmitter.twoWire("LT", 12), Burden.receiver("card", 250))).toList();
        final PanelState state = Panel.of("MK-2", loops.toArray(CurrentLoop[]::new)).at(22.5);
        // 20 V - 4 I x 20 ohm = 12 V + I x 250 ohm: I = 8 V / 330 ohm = 24.24 mA, so all four reach 22.5 mA.
        assertThat(state.shortOfVoltage()).isEmpty();
        final PanelState eight = Panel.of("MK-2", IntStream.rangeClosed(1, 8).mapToObj(i -> CurrentLoop
            .of("LT-" + i, weak, Transmitter.twoWire("LT", 12), Burden.receiver("card", 250)))
            .toArray(CurrentLoop[]::new)).at(22.5);
        // 20 V - 8 I x 20 ohm = 12 V + I x 250 ohm: I = 8 V / 410 ohm.
        assertThat(eight.shortOfVoltage()).hasSize(8);
        assertThat(eight.channel("LT-3").state().primary().milliamps()).isEqualTo(8000 / 410.0, within(1e-9));
        assertThat(eight.power().circuitSumMilliwatts()).isEqualTo(0, within(1e-9));
    }

    @Test
    @DisplayName("a supply, one of its units, a module: the channels that fall with each")
    void whatFallsTogether() {
        final List<CommonCause> causes = panel().commonCauses(12);
        assertThat(causes).extracting(CommonCause::cause).containsExactly("G1", "MK-81", "MK-82");
        assertThat(causes.get(0).channels()).hasSize(16);
        assertThat(causes.get(1).channels()).containsExactly("LT-1", "LT-2", "LT-3", "LT-4", "LT-5", "LT-6",
            "LT-7", "LT-8");
        assertThat(causes.get(0).effects()).allSatisfy(e -> {
            assertThat(e.primary()).isEqualTo(FaultTable.Survival.NO);
            assertThat(e.readings()).singleElement()
                .satisfies(r -> assertThat(r.milliamps()).hasValue(0));
            assertThat(e.isFlagged()).isTrue();
        });
    }

    @Test
    void aModuleSupplyOfItsOwnTakesTheOutputsNotTheLoops() {
        final Supply modules = Supply.volts(24).named("G2");
        final Panel panel = Panel.of("MK-2", IsolatorModule.of("MK-81", 2).drawing(modules, 60)
            .channel(1, loop(1)).channel(2, loop(2))).withDirect(loop(3));
        final List<CommonCause> causes = panel.commonCauses(12);
        final CommonCause lost = causes.stream().filter(c -> c.cause().equals("G2")).findFirst()
            .orElseThrow();
        assertThat(lost.channels()).containsExactly("LT-1", "LT-2");
        assertThat(lost.effects()).allSatisfy(e -> assertThat(e.primary())
            .isEqualTo(FaultTable.Survival.YES));
        assertThat(causes.stream().filter(c -> c.cause().equals("G1")).findFirst().orElseThrow().channels())
            .hasSize(3);
    }

    @Test
    void oneOfTwoRedundantUnitsMayBeLost() {
        final Supply strong = Supply.parallel("G1", Supply.volts(24), Supply.volts(23)).diodeDrop(0.5);
        final Supply uneven = Supply.parallel("G1", Supply.volts(24), Supply.volts(17)).diodeDrop(0.5);
        // LT at 22.5 mA: 12 + 1 + 22.5 mA x 60 ohm = 14.35 V; the card behind has the module's power.
        final Panel panel = Panel.of("MK-2", loop(1).on(strong), loop(2).on(strong));
        assertThat(panel.commonCauses(12)).extracting(CommonCause::kind).containsExactly(
            CommonCause.Kind.SUPPLY, CommonCause.Kind.SUPPLY_UNIT, CommonCause.Kind.SUPPLY_UNIT);
        assertThat(panel.commonCauses(12)).filteredOn(c -> c.kind() == CommonCause.Kind.SUPPLY_UNIT)
            .allSatisfy(c -> assertThat(c.channels()).isEmpty());
        final Supply low = Supply.parallel("G1", Supply.volts(24), Supply.volts(14.8)).diodeDrop(0.5);
        final List<CommonCause> causes = Panel.of("MK-2", loop(1).on(low), loop(2).on(low)).commonCauses(12);
        // 14.8 - 0.5 = 14.3 V are less than 14.35 V; 17 - 0.5 V would do.
        assertThat(causes.get(1).cause()).isEqualTo("G1 unit 1");
        assertThat(causes.get(1).channels()).containsExactly("LT-1", "LT-2");
        assertThat(causes.get(1).effects()).allSatisfy(e -> assertThat(e.primary())
            .isEqualTo(FaultTable.Survival.SHORT));
        assertThat(causes.get(2).channels()).isEmpty();
        assertThat(Panel.of("MK-2", loop(1).on(uneven)).commonCauses(12).get(1).channels()).isEmpty();
    }

    @Test
    void aDeviceInTheFieldHeatsTheField() {
        final CurrentLoop kiosk = CurrentLoop.of("LT-101", SUPPLY, Transmitter.twoWire("LT", 12),
            Isolator.inputLoopPowered("kiosk", 3.5).feeding(Isolator.separatelyPowered("channel", 12)
                .inputDrop(1, 0).feeding(Burden.receiver("card", 250))));
        assertThatThrownBy(() -> IsolatorModule.of("MK-81", 8).channel(1, kiosk))
            .hasMessageContainingAll("LT-101", "2 isolators", "through");
        final Panel panel = Panel.of("MK-2", IsolatorModule.of("MK-81", 8).drawing(SUPPLY, 30)
            .channel(1, PanelChannel.of(kiosk).inField("kiosk")));
        final double volts = 24 - 0.3 - 0.5 * 0.050;
        // The kiosk isolator takes 3.5 V, the transmitter what the 1 V of the channel leaves: all but 1 V.
        assertThat(panel.at(20).fieldHeatMilliwatts().orElseThrow()).isEqualTo((volts - 1) * 20,
            within(1e-9));
        assertThat(panel.at(20).power().sumMilliwatts().orElseThrow()).isEqualTo(0, within(1e-9));
    }

    @Test
    void wiringOfAPanelThatCannotBeIsRefused() {
        final IsolatorModule module = IsolatorModule.of("MK-81", 2).channel(1, loop(1));
        assertThatThrownBy(() -> module.channel(1, loop(2))).hasMessage(
            "channel 1 of MK-81 is taken by LT-1: LT-2 needs another");
        assertThatThrownBy(() -> module.channel(3, loop(2))).hasMessageContaining("channels 1 to 2");
        assertThatThrownBy(() -> Panel.of("MK-2", module, IsolatorModule.of("MK-82", 2).channel(1, loop(1))))
            .hasMessage("MK-2 has two loops named LT-1");
        assertThatThrownBy(() -> Panel.of("MK-2", module.channel(2, loop(2).on(Supply.volts(25)
            .named("G1")))))
            .hasMessageContainingAll("two supplies named G1", "same name");
        assertThatThrownBy(() -> Panel.of("MK-2", IsolatorModule.of("MK-81", 2)))
            .hasMessage("MK-2 has no channel");
        assertThatThrownBy(() -> IsolatorModule.of("MK-81", 2).inrush(100))
            .hasMessageContaining("drawing");
        assertThatThrownBy(() -> IsolatorModule.of("MK-81", 2).drawing(SUPPLY, 50).channel(1, loop(1)
            .exchanging("channel", i -> ((Isolator) i).ownMilliwatts(900))))
            .hasMessageContaining("would count twice");
    }

    @Test
    @DisplayName("outputs into the field: the module is hottest at the lowest current, V I less I^2 R")
    void theLargestHeatNeedNotBeAtTheLargestCurrent() {
        final Supply stiff = Supply.volts(24).tolerance(5).named("G1").efficiency(80);
        final Panel panel = Panel.of("MK-2", IsolatorModule.of("MK-90", 1).drawing(stiff, 100)
            .channel(1, CurrentLoop.of("FV-1", Transmitter.outputCard("AO", 2), Isolator
                .separatelyPowered("channel", 14).feeding(Burden.fieldDevice("valve", 0, 500)))));
        final PanelHeat heat = panel.heat();
        assertThat(heat.rows()).hasSize(24);
        // 25.2 V x 100 mA / 0.8 from the mains, the card's 2 V x 3.6 mA, less 500 ohm x (3.6 mA)^2 at the
        // valve.
        assertThat(heat.hottest().orElseThrow().cabinetMilliwatts().orElseThrow())
            .isEqualTo(25.2 * 100 / 0.8 + 2 * 3.6 - 0.5 * 3.6 * 3.6, within(1e-9));
        assertThat(heat.hottest().orElseThrow().corner()).isEqualTo(Corner.MOST_VOLTAGE);
        assertThat(heat.toString()).startsWith("The cabinet of MK-2 is hottest at 3.6 mA, most voltage: "
            + "cabinet 3.151 W, field 0.006 W");
        final Panel bare = panel.exchanging(stiff, Supply.volts(24).named("G1"));
        assertThat(bare.heat().hottest()).isEmpty();
        assertThat(bare.heat().toString()).contains("is not determined");
        // At 20 mA and most voltage: the valve has 500 ohm x (20 mA)^2.
        assertThat(heat.rows()).filteredOn(r -> r.milliamps() == 20 && r.corner() == Corner.MOST_VOLTAGE)
            .singleElement().satisfies(r -> assertThat(r.fieldMilliwatts().orElseThrow())
                .isEqualTo(200, within(1e-9)));
    }

    @Test
    @DisplayName("no steady state: a supply that sinks below what the loops need to start is said so")
    void aPanelWithoutASteadyStateSaysSo() {
        // Lift-off 14 V at 10 mA falling to 8 V at 20 mA: below 20 mA it needs more than the feed then has.
        final Supply weak = Supply.volts(15).named("G1").sharedOhms(100);
        final Transmitter steep = Transmitter.twoWire("LT", 12).withVoltages(0, 20, 20, 8);
        final Panel panel = Panel.of("MK-2", CurrentLoop.of("LT-1", weak, steep, Burden.receiver("card", 10)),
            CurrentLoop.of("LT-2", weak, steep, Burden.receiver("card", 10)),
            CurrentLoop.of("LT-3", weak, steep, Burden.receiver("card", 10)),
            CurrentLoop.of("LT-4", weak, steep, Burden.receiver("card", 10)));
        // One or three at 20 mA: 15 - 2 or 15 - 6 V are above 8.2 V; all four have 7 V, and none with 15 V
        // starts.
        final PanelState state = panel.at(20);
        assertThat(state.isSolved()).isFalse();
        assertThat(state.sentence()).startsWith("No steady state").contains("80.0 mA", "7.00 V");
        assertThatThrownBy(() -> panel.commonCauses(20)).hasMessageContaining("No steady state");
    }
}
