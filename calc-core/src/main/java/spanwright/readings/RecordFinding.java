package spanwright.readings;

import java.util.Objects;

/**
 * One thing the reader found in a record: where, what stood there, what it did and what it proposes.
 *
 * @param fault    what kind of thing
 * @param cell     where it stands
 * @param written  the text of the cell, untouched; empty where no single cell is meant
 * @param says     one sentence: what is wrong with which value and what is allowed
 * @param proposal what the reader would do if told so, empty if it proposes nothing
 * @param channel  the channel it concerns, empty if the whole file
 */
public record RecordFinding(Fault fault, CellAddress cell, String written, String says, String proposal,
                      String channel) {
    /** Checks the components. */
    public RecordFinding {
        Objects.requireNonNull(fault, "fault");
        Objects.requireNonNull(cell, "cell");
        Objects.requireNonNull(written, "written");
        Objects.requireNonNull(says, "says");
        Objects.requireNonNull(proposal, "proposal");
        Objects.requireNonNull(channel, "channel");
    }

    static RecordFinding of(Fault fault, CellAddress cell, String written, String says) {
        return new RecordFinding(fault, cell, written, says, "", "");
    }

    static RecordFinding question(Fault fault, CellAddress cell, String written, String says,
        String proposal) {
        return new RecordFinding(fault, cell, written, says, proposal, "");
    }

    RecordFinding inChannel(String tag) {
        return new RecordFinding(fault, cell, written, says, proposal, tag);
    }

    /** What the reader did about it. */
    public Outcome outcome() {
        return fault.outcome();
    }

    /** Whether the record cannot be used further before this is answered. */
    boolean isOpenQuestion() {
        return outcome() == Outcome.ASKED && !fault.isAboutDate();
    }

    @Override
    public String toString() {
        return cell + ": " + says + (proposal.isEmpty() ? "" : "; proposed: " + proposal);
    }
}
