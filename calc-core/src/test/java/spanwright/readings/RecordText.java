package spanwright.readings;

import java.nio.charset.StandardCharsets;

/** Records as text, for tests: a sound one that a test spoils in one place. */
final class RecordText {
    /** Five points up and down, 4-20 mA to 4-20 mA. */
    static final String SOUND = """
        # invented record, for tests of the reader
        Tag,LT-101A
        Serial,KF-0417
        Date,2026-03-14
        Technician,T-07
        Input range,4 to 20 mA
        Output range,4 to 20 mA
        Transfer,linear
        Tolerance,0.1 % of span
        Supply,24.0 V
        Load,250 ohm
        Ambient,23.1 °C
        Phase,as found
        Standard,S-01; certificate C-2211; due 2026-12-01; U 0.003 mA; k 2

        Cycle,Point (%),Direction,Applied (mA),Indicated (mA)
        1,0,up,4.000,4.003
        1,25,up,8.001,8.006
        1,50,up,12.000,12.008
        1,75,up,16.002,16.011
        1,100,up,20.000,20.012
        1,75,down,15.999,16.010
        1,50,down,12.001,12.011
        1,25,down,8.000,8.008
        1,0,down,4.001,4.004
        """;

    private RecordText() { }

    static CalibrationRecord read(String text) {
        return readAll(text, RecordReading.of(java.nio.file.Path.of("LT-101A.csv")));
    }

    static CalibrationRecord readAll(String text, RecordReading settings) {
        final String name = RecordReader.name(settings.file());
        return RecordReader.readAll(settings,
            DelimitedGrid.of(TextFile.decode(text.getBytes(StandardCharsets.UTF_8), name), name));
    }
}
