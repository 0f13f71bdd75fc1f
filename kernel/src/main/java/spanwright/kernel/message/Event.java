package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.Optional;

/** What is sent without being a reply: published to all clients, or a question to the person. */
public sealed interface Event extends Content {

    private static ObjectNode bundle(Map<String, Object> data, Map<String, Object> metadata,
                                     Optional<String> displayId) {
        final ObjectNode json = Json.object();
        json.set("data", Json.of(data));
        json.set("metadata", Json.of(metadata));
        final ObjectNode fleeting = json.putObject("transient");
        displayId.ifPresent(id -> fleeting.put("display_id", id));
        return json;
    }

    /** Whether the kernel is busy. */
    enum Status implements Event {
        /** Once, before anything else. */
        STARTING,
        /** A request has begun. */
        BUSY,
        /** It has ended. */
        IDLE;

        @Override
        public String type() {
            return "status";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("execution_state", name().toLowerCase(java.util.Locale.ROOT));
        }
    }

    /** What is about to run. */
    record ExecuteInput(String code, int count) implements Event {
        @Override
        public String type() {
            return "execute_input";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("code", code).put("execution_count", count);
        }
    }

    /** Text on stdout or stderr. */
    record Stream(String name, String text) implements Event {
        @Override
        public String type() {
            return "stream";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("name", name).put("text", text);
        }
    }

    /** Something shown by the code. */
    record DisplayData(Map<String, Object> data, Map<String, Object> metadata, Optional<String> displayId)
        implements Event {
        @Override
        public String type() {
            return "display_data";
        }

        @Override
        public ObjectNode json() {
            return bundle(data, metadata, displayId);
        }
    }

    /** Something shown before, changed. */
    record UpdateDisplayData(Map<String, Object> data, Map<String, Object> metadata, String displayId)
        implements Event {
        @Override
        public String type() {
            return "update_display_data";
        }

        @Override
        public ObjectNode json() {
            return bundle(data, metadata, Optional.of(displayId));
        }
    }

    /** The value of a cell. */
    record ExecuteResult(int count, Map<String, Object> data, Map<String, Object> metadata) implements Event {
        @Override
        public String type() {
            return "execute_result";
        }

        @Override
        public ObjectNode json() {
            return bundle(data, metadata, Optional.empty()).put("execution_count", count);
        }
    }

    /** A cell failed. */
    record Error(Failure failure) implements Event {
        @Override
        public String type() {
            return "error";
        }

        @Override
        public ObjectNode json() {
            return failure.json();
        }
    }

    /** The output of the cell is to be removed, at once or with the next output. */
    record ClearOutput(boolean waitForNext) implements Event {
        @Override
        public String type() {
            return "clear_output";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("wait", waitForNext);
        }
    }

    /** The kernel opens a comm. */
    record CommOpen(String id, String target, Map<String, Object> data) implements Event {
        @Override
        public String type() {
            return "comm_open";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = Json.object().put("comm_id", id).put("target_name", target);
            json.set("data", Json.of(data));
            return json;
        }
    }

    /** The kernel sends on a comm. */
    record CommMessage(String id, Map<String, Object> data) implements Event {
        @Override
        public String type() {
            return "comm_msg";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = Json.object().put("comm_id", id);
            json.set("data", Json.of(data));
            return json;
        }
    }

    /** The kernel closes a comm, or refuses one. */
    record CommClose(String id, Map<String, Object> data) implements Event {
        @Override
        public String type() {
            return "comm_close";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = Json.object().put("comm_id", id);
            json.set("data", Json.of(data));
            return json;
        }
    }

    /** A question to the person, on the stdin channel. */
    record InputRequest(String prompt, boolean password) implements Event {
        @Override
        public String type() {
            return "input_request";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("prompt", prompt).put("password", password);
        }
    }

    /** A subscription has taken effect. */
    record Welcome(String subscription) implements Event {
        @Override
        public String type() {
            return "iopub_welcome";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("subscription", subscription);
        }
    }

    /** A reply that everyone is told of, as a shutdown is. */
    record Announced(Reply reply) implements Event {
        @Override
        public String type() {
            return reply.type();
        }

        @Override
        public ObjectNode json() {
            return reply.json();
        }
    }
}
