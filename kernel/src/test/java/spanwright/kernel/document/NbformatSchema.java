package spanwright.kernel.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The published schema of nbformat 4.5 (see README.md in the test resources). */
final class NbformatSchema {
    private static final Schema SCHEMA =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_4)
            .getSchema(resource("nbformat.v4.5.schema.json"));

    private NbformatSchema() { }

    static void assertValid(String notebook) {
        assertThat(errors(notebook)).isEmpty();
    }

    static List<Error> errors(String notebook) {
        return SCHEMA.validate(notebook, InputFormat.JSON);
    }

    static String resource(String name) {
        try (InputStream in = NbformatSchema.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(name, e);
        }
    }
}
