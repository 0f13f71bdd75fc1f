package spanwright.readings;

/** What can be wrong with a record, and what the reader does about it. */
public enum Fault {
    /** The file has no bytes, or no row. */
    EMPTY_FILE(Outcome.REFUSED, "no reading in the file"),
    /** The bytes are no text and no workbook that can be read. */
    NOT_A_TEXT(Outcome.REFUSED, "neither text nor a workbook"),
    /** A quoted cell does not end, or runs over a line end. */
    BROKEN_QUOTE(Outcome.REFUSED, "quotation marks do not match"),
    /** No row names the columns. */
    HEADER_MISSING(Outcome.REFUSED, "no row names the columns"),
    /** A column that every record needs is not there. */
    COLUMN_MISSING(Outcome.REFUSED, "a needed column is missing"),
    /** Two columns mean the same. */
    COLUMN_TWICE(Outcome.REFUSED, "two columns mean the same"),
    /** Neither the column head nor the cell states a unit. */
    UNIT_MISSING(Outcome.REFUSED, "no unit"),
    /** The unit is not in the table of units. */
    UNIT_UNKNOWN(Outcome.REFUSED, "unit not known"),
    /** The unit measures something else than the range does. */
    UNIT_OF_OTHER_KIND(Outcome.REFUSED, "unit does not fit the range"),
    /** The record does not state the input or output range. */
    RANGE_MISSING(Outcome.REFUSED, "range not stated"),
    /** A header line cannot be read. */
    HEADER_UNREADABLE(Outcome.REFUSED, "header line cannot be read"),
    /** Text stands where a number is needed. */
    NOT_A_NUMBER(Outcome.REFUSED, "text where a number is needed"),
    /** A number too large or too long to be a reading. */
    OUT_OF_RANGE_NUMBER(Outcome.REFUSED, "number beyond what can be a reading"),
    /** Decimal points and decimal commas in one file. */
    MIXED_DECIMAL_SIGN(Outcome.REFUSED, "decimal point and decimal comma mixed"),
    /** More or fewer cells than the row of column names has. */
    RAGGED_ROW(Outcome.REFUSED, "number of cells differs from the header"),
    /** A spreadsheet turned something into a date. */
    DATE_FOR_NUMBER(Outcome.REFUSED, "date where a number is needed"),
    /** A row of which neither the direction nor another needed word can be read. */
    WORD_UNKNOWN(Outcome.REFUSED, "word not known"),

    /** Applied and indicated columns look exchanged. */
    COLUMNS_SWAPPED(Outcome.ASKED, "input and output columns look exchanged"),
    /** The values fit the range only in another unit than the head says. */
    UNIT_MISMATCH(Outcome.ASKED, "values fit another unit than the header says"),
    /** A voltage across a resistor stands as a current. */
    VOLTAGE_AS_CURRENT(Outcome.ASKED, "voltage across a resistor written as a current"),
    /** Two readings of one traverse look exchanged. */
    READINGS_SWAPPED(Outcome.ASKED, "two readings look exchanged"),
    /** A range such as 4-20 became a date. */
    RANGE_TURNED_DATE(Outcome.ASKED, "range turned into a date"),
    /** Commas that may separate thousands or decimals. */
    COMMA_UNCLEAR(Outcome.ASKED, "comma may separate thousands or decimals"),
    /** Day and month cannot be told apart. */
    DATE_ORDER(Outcome.ASKED, "day and month cannot be told apart"),
    /** A time of day without a zone. */
    ZONE_MISSING(Outcome.ASKED, "time without a zone"),

    /** A byte order mark at the start. */
    BYTE_ORDER_MARK(Outcome.REPAIRED, "byte order mark dropped"),
    /** Not UTF-8, read as another encoding. */
    ENCODING(Outcome.REPAIRED, "read in another encoding than UTF-8"),
    /** A non-breaking or thin space, or a typographic minus. */
    CHARACTER(Outcome.REPAIRED, "special space or minus sign"),
    /** The unit stands in the cell. */
    UNIT_IN_CELL(Outcome.REPAIRED, "unit in the cell"),
    /** The decimal sign of the file is the comma. */
    DECIMAL_COMMA(Outcome.REPAIRED, "decimal comma"),
    /** Minus zero. */
    NEGATIVE_ZERO(Outcome.REPAIRED, "negative zero read as zero"),
    /** What was asked has been answered in the call. */
    ANSWERED(Outcome.REPAIRED, "answered in the call"),

    /** An empty cell or a word for missing where a reading belongs. */
    VALUE_MISSING(Outcome.FLAGGED, "value missing"),
    /** A bound or an overload sign instead of a value. */
    VALUE_CENSORED(Outcome.FLAGGED, "value censored"),
    /** A point that other traverses have is missing. */
    POINT_MISSING(Outcome.FLAGGED, "point missing"),
    /** The upscale or the downscale traverse is missing. */
    LEG_MISSING(Outcome.FLAGGED, "traverse in one direction missing"),
    /** A point stands twice in one traverse, with different readings. */
    POINT_TWICE(Outcome.FLAGGED, "point stands twice"),
    /** A point stands twice in one traverse, with the same readings. */
    ROW_COPIED(Outcome.FLAGGED, "row looks copied"),
    /** The direction was inferred from the order of the applied inputs. */
    DIRECTION_INFERRED(Outcome.FLAGGED, "direction inferred"),
    /** The order of the applied inputs contradicts the direction written. */
    DIRECTION_CONTRADICTED(Outcome.FLAGGED, "direction contradicted by the order"),
    /** As left equals as found to the last digit. */
    AS_LEFT_COPIED(Outcome.FLAGGED, "as left equals as found to the last digit"),
    /** Every error is exactly zero. */
    ERRORS_ALL_ZERO(Outcome.FLAGGED, "every error is exactly zero"),
    /** Every last digit is 0 or 5. */
    LAST_DIGITS(Outcome.FLAGGED, "every last digit is 0 or 5"),
    /** Readings beyond the range that stand at a clamp. */
    CLAMPED(Outcome.FLAGGED, "output stands at a clamp"),
    /** Readings far outside the range that no other unit explains. */
    OUTSIDE_RANGE(Outcome.FLAGGED, "readings far outside the range"),
    /** The standard was past its due date. */
    STANDARD_OVERDUE(Outcome.FLAGGED, "standard past its due date"),
    /** The record is older than the certificate of the standard. */
    STANDARD_NOT_YET_CERTIFIED(Outcome.FLAGGED, "record older than the certificate of the standard"),
    /** The tag in the record is not the one in the file name, or differs within the file. */
    TAG_MISMATCH(Outcome.FLAGGED, "tag differs from the file name"),
    /** Same tag, another serial or channel number. */
    IDENTITY_CONFLICT(Outcome.FLAGGED, "serial or channel number differs within the history"),
    /** A channel's readings look like those of its neighbour. */
    CHANNEL_SHIFTED(Outcome.FLAGGED, "readings look like the neighbour channel's"),
    /** No ambient temperature. */
    AMBIENT_MISSING(Outcome.FLAGGED, "ambient temperature not stated"),
    /** Ambient temperature outside the limits the record states. */
    AMBIENT_OUTSIDE(Outcome.FLAGGED, "ambient temperature outside the stated limits"),
    /** A tolerance that does not say of what. */
    TOLERANCE_BASIS_MISSING(Outcome.FLAGGED, "tolerance does not say of what"),
    /** No phase stated. */
    PHASE_MISSING(Outcome.FLAGGED, "as found or as left not stated"),
    /** A local time that did not exist, or existed twice, in its zone. */
    CLOCK_CHANGE(Outcome.FLAGGED, "time lies in a change of the clock"),
    /** A number or tag that a spreadsheet may have changed. */
    SPREADSHEET_CHANGE(Outcome.FLAGGED, "a spreadsheet may have changed it"),
    /** A line, word or column that was not understood and not used. */
    NOT_UNDERSTOOD(Outcome.FLAGGED, "not understood and not used");

    private final Outcome outcome;
    private final String words;

    Fault(Outcome outcome, String words) {
        this.outcome = outcome;
        this.words = words;
    }

    /** What the reader does about it. */
    public Outcome outcome() {
        return outcome;
    }

    /** A question that keeps back only the date, not the readings. */
    boolean isAboutDate() {
        return this == DATE_ORDER || this == ZONE_MISSING;
    }

    /** Whether it stands at one cell of the header and holds for every reading of its channel. */
    boolean concernsAllReadings() {
        return this == STANDARD_OVERDUE || this == STANDARD_NOT_YET_CERTIFIED || this == AMBIENT_MISSING
            || this == AMBIENT_OUTSIDE || this == TAG_MISMATCH || this == SPREADSHEET_CHANGE;
    }

    @Override
    public String toString() {
        return words;
    }
}
