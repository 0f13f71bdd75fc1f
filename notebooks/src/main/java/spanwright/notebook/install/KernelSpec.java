package spanwright.notebook.install;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The description by which Jupyter clients find and start the kernel.
 *
 * <p>Source: "Kernel specs" in the documentation of jupyter_client.
 *
 * @param command words that start the kernel; Jupyter puts the connection file in place of {@code
 *                {connection_file}}
 */
public record KernelSpec(List<String> command) {
    /** Copies the list. */
    public KernelSpec {
        command = List.copyOf(command);
    }

    /**
     * The description of a kernel.
     *
     * @param java    absolute path of Java
     * @param flags   for Java
     * @param archive more flags, those that name the class archive, or none
     * @param jar     absolute path of the jar
     */
    public static KernelSpec of(Path java, List<String> flags, List<String> archive, Path jar) {
        final List<String> command = new ArrayList<>(List.of(java.toString()));
        command.addAll(flags);
        command.addAll(archive);
        command.addAll(List.of("-jar", jar.toString(), "kernel", "{connection_file}"));
        return new KernelSpec(command);
    }

    /**
     * The folder of a kernel.
     *
     * @throws IllegalArgumentException if the name is not one that Jupyter accepts
     */
    public static Path checkedFolder(Path data, String name) {
        if (!name.matches("[a-z0-9._-]+") || name.startsWith(".")) {
            throw new IllegalArgumentException("the kernel name \"" + name
                + "\" is not made of the characters a-z, 0-9, '.', '_' and '-'");
        }
        return data.resolve("kernels").resolve(name);
    }

    /**
     * Copies the jar beside the description. A kernel that runs from an older copy keeps it: the new file
     * takes its name, not its place.
     *
     * @return the copy
     */
    public static Path copyJar(Path jar, Path folder) throws IOException {
        final Path copy = folder.resolve("spanwright.jar");
        if (Files.exists(copy) && Files.isSameFile(copy, jar)) {
            return copy;
        }
        final Path part = folder.resolve("spanwright.jar.part");
        // A class archive fits a jar of one date: the date stays with the jar.
        Files.copy(jar, part, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.COPY_ATTRIBUTES);
        Files.move(part, copy, StandardCopyOption.ATOMIC_MOVE);
        return copy;
    }

    /** Writes kernel.json. */
    public void write(Path folder) throws IOException {
        final Map<String, Object> json = new LinkedHashMap<>();
        json.put("argv", command);
        json.put("display_name", "Java (Spanwright)");
        json.put("language", "java");
        json.put("interrupt_mode", "message");
        json.put("kernel_protocol_version", "5.5");
        json.put("metadata", Map.of("debugger", false, "supported_encryption", List.of("curve")));
        Files.writeString(folder.resolve("kernel.json"),
            new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(json) + "\n");
    }
}
