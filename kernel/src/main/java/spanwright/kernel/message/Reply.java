package spanwright.kernel.message;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a request is answered. Unless said otherwise the status is "ok". */
public sealed interface Reply extends Content {

    private static ObjectNode ok() {
        return Json.object().put("status", "ok");
    }

    /**
     * Answers kernel_info_request.
     *
     * @param languageVersion for example "17.0.15"
     * @param banner          greeting of a console
     * @param kernelVersion   of this product
     */
    record KernelInfo(String languageVersion, String banner, String kernelVersion) implements Reply {
        @Override
        public String type() {
            return "kernel_info_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok().put("protocol_version", Header.PROTOCOL_VERSION)
                .put("implementation", "spanwright").put("implementation_version", kernelVersion)
                .put("banner", banner).put("debugger", false);
            json.set("help_links", Json.array());
            json.set("supported_features", Json.array());
            json.putObject("language_info").put("name", "java").put("version", languageVersion)
                .put("mimetype", "text/x-java").put("file_extension", ".java")
                .put("pygments_lexer", "java").put("codemirror_mode", "text/x-java");
            return json;
        }
    }

    /**
     * Answers execute_request when the cell ran to its end.
     *
     * @param count           number of the cell
     * @param pages           MIME bundles for the pager
     * @param userExpressions result of each, with its own status
     */
    record Executed(int count, List<Map<String, Object>> pages, Map<String, ObjectNode> userExpressions)
        implements Reply {
        @Override
        public String type() {
            return "execute_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok().put("execution_count", count);
            final ArrayNode payload = json.putArray("payload");
            pages.forEach(p -> payload.addObject().put("source", "page").put("start", 0)
                .set("data", Json.of(p)));
            json.set("user_expressions", Json.of(userExpressions));
            return json;
        }
    }

    /**
     * Answers execute_request when the cell failed; status "error".
     *
     * @param count number of the cell
     * @param error what went wrong
     */
    record ExecuteFailed(int count, Failure error) implements Reply {
        @Override
        public String type() {
            return "execute_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = error.json().put("status", "error").put("execution_count", count);
            json.set("payload", Json.array());
            json.set("user_expressions", Json.object());
            return json;
        }
    }

    /**
     * Answers execute_request when an earlier one failed and asked for it; status "aborted".
     *
     * @param count number of the last cell
     */
    record ExecuteAborted(int count) implements Reply {
        @Override
        public String type() {
            return "execute_reply";
        }

        @Override
        public ObjectNode json() {
            return Json.object().put("status", "aborted").put("execution_count", count);
        }
    }

    /**
     * Answers complete_request.
     *
     * @param items what could stand there
     * @param start where the text to be replaced begins, in the unit of the request
     * @param end   where it ends
     */
    record Complete(List<Item> items, int start, int end) implements Reply {
        /** One suggestion with its kind and signature. */
        public record Item(String text, String kind, String signature) { }

        @Override
        public String type() {
            return "complete_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok().put("cursor_start", start).put("cursor_end", end);
            final ArrayNode matches = json.putArray("matches");
            final ArrayNode kinds = json.putObject("metadata").putArray("_jupyter_types_experimental");
            for (final Item item : items) {
                matches.add(item.text);
                kinds.addObject().put("start", start).put("end", end).put("text", item.text)
                    .put("type", item.kind).put("signature", item.signature);
            }
            return json;
        }
    }

    /**
     * Answers inspect_request.
     *
     * @param data     by MIME type; empty if nothing is known
     * @param metadata by MIME type
     */
    record Inspect(Optional<Map<String, Object>> data, Map<String, Object> metadata) implements Reply {
        @Override
        public String type() {
            return "inspect_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok().put("found", data.isPresent());
            json.set("data", Json.of(data.orElse(Map.of())));
            json.set("metadata", Json.of(metadata));
            return json;
        }
    }

    /**
     * Answers is_complete_request.
     *
     * @param status complete, incomplete, invalid or unknown
     * @param indent for the next line if incomplete
     */
    record IsComplete(String status, Optional<String> indent) implements Reply {
        @Override
        public String type() {
            return "is_complete_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = Json.object().put("status", status);
            indent.ifPresent(i -> json.put("indent", i));
            return json;
        }
    }

    /**
     * Answers history_request.
     *
     * @param entries    oldest first
     * @param withOutput whether each input comes with its output
     */
    record History(List<PastCell> entries, boolean withOutput) implements Reply {
        @Override
        public String type() {
            return "history_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok();
            final ArrayNode all = json.putArray("history");
            for (final PastCell e : entries) {
                final ArrayNode entry = all.addArray().add(e.session()).add(e.line());
                if (withOutput) {
                    entry.addArray().add(e.input()).add(e.output().orElse(null));
                } else {
                    entry.add(e.input());
                }
            }
            return json;
        }
    }

    /**
     * Answers comm_info_request.
     *
     * @param targets target name by comm id
     */
    record CommInfo(Map<String, String> targets) implements Reply {
        @Override
        public String type() {
            return "comm_info_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok();
            final ObjectNode comms = json.putObject("comms");
            targets.forEach((id, target) -> comms.putObject(id).put("target_name", target));
            return json;
        }
    }

    /** Answers connect_request with the ports by name. */
    record Connect(Map<String, Integer> ports) implements Reply {
        @Override
        public String type() {
            return "connect_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok();
            ports.forEach(json::put);
            return json;
        }
    }

    /** Answers interrupt_request. */
    record Interrupt() implements Reply {
        @Override
        public String type() {
            return "interrupt_reply";
        }

        @Override
        public ObjectNode json() {
            return ok();
        }
    }

    /** Answers shutdown_request. */
    record Shutdown(boolean restart) implements Reply {
        @Override
        public String type() {
            return "shutdown_reply";
        }

        @Override
        public ObjectNode json() {
            return ok().put("restart", restart);
        }
    }

    /** Answers usage_request with the figures by name. */
    record Usage(Map<String, Object> figures) implements Reply {
        @Override
        public String type() {
            return "usage_reply";
        }

        @Override
        public ObjectNode json() {
            final ObjectNode json = ok();
            figures.forEach((name, value) -> json.set(name, Json.of(value)));
            return json;
        }
    }

    /**
     * Answers any request when the kernel itself failed to; status "error".
     *
     * @param type  message type of the reply
     * @param error what went wrong
     */
    record Failed(String type, Failure error) implements Reply {
        @Override
        public ObjectNode json() {
            return error.json().put("status", "error");
        }
    }
}
