package spanwright.kernel.message;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reads the content of requests. Stateless. */
final class RequestReader {
    private RequestReader() { }

    static Request read(String type, ObjectNode content) throws MalformedMessageException {
        final Fields f = new Fields(type, content);
        return switch (type) {
            case "kernel_info_request" -> new Request.KernelInfo();
            case "execute_request" -> execute(f);
            case "complete_request" -> complete(f);
            case "inspect_request" -> inspect(f);
            case "is_complete_request" -> new Request.IsComplete(f.text("code"));
            case "history_request" -> history(f);
            case "comm_info_request" -> new Request.CommInfo(f.optionalText("target_name")
                .filter(t -> !t.isEmpty()));
            case "comm_open" -> new Request.CommOpen(f.text("comm_id"), f.text("target_name"),
                f.dict("data"));
            case "comm_msg" -> new Request.CommMessage(f.text("comm_id"), f.dict("data"));
            case "comm_close" -> new Request.CommClose(f.text("comm_id"), f.dict("data"));
            case "connect_request" -> new Request.Connect();
            case "interrupt_request" -> new Request.Interrupt();
            case "shutdown_request" -> new Request.Shutdown(f.flag("restart", false));
            case "usage_request" -> new Request.Usage();
            case "input_reply" -> new Request.Input(f.text("value"));
            default -> new Request.Unknown(type);
        };
    }

    private static Request execute(Fields f) throws MalformedMessageException {
        final boolean silent = f.flag("silent", false);
        return new Request.Execute(f.text("code"), silent, f.flag("store_history", true) && !silent,
            expressions(f.dict("user_expressions")), f.flag("allow_stdin", true),
            f.flag("stop_on_error", true));
    }

    private static Map<String, String> expressions(ObjectNode dict) throws MalformedMessageException {
        final Map<String, String> expressions = new LinkedHashMap<>();
        for (final Map.Entry<String, JsonNode> e : dict.properties()) {
            if (!e.getValue().isTextual()) {
                throw new MalformedMessageException("execute_request: user_expressions." + e.getKey() + " is "
                    + e.getValue().getNodeType() + ", a text is needed");
            }
            expressions.put(e.getKey(), e.getValue().textValue());
        }
        return expressions;
    }

    private static Request complete(Fields f) throws MalformedMessageException {
        final String code = f.text("code");
        return new Request.Complete(code, f.whole("cursor_pos").orElse(code.length()));
    }

    private static Request inspect(Fields f) throws MalformedMessageException {
        final String code = f.text("code");
        final int detail = f.whole("detail_level").orElse(0);
        return new Request.Inspect(code, f.whole("cursor_pos").orElse(code.length()), detail > 0 ? 1 : 0);
    }

    private static Request history(Fields f) throws MalformedMessageException {
        final String word = f.text("hist_access_type");
        final Request.History.Access access = switch (word) {
            case "tail" -> Request.History.Access.TAIL;
            case "range" -> Request.History.Access.RANGE;
            case "search" -> Request.History.Access.SEARCH;
            default -> throw new MalformedMessageException("history_request: hist_access_type '" + word
                + "' is none of tail, range, search");
        };
        return new Request.History(access, f.flag("output", false), f.whole("session").orElse(0),
            f.whole("start").orElse(1), f.whole("stop"), f.whole("n"),
            f.optionalText("pattern").orElse("*"), f.flag("unique", false));
    }
}
