package spanwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spanwright.chain.MeasuringChain;
import spanwright.kernel.display.Display;
import spanwright.notebook.show.Sheet;

/** A cell imports whole packages, so a simple name that two of them have could not be used in it. */
class NamesInACellTest {
    @Test
    void eachPublicNameOfOurOwnMeansOneThing() throws Exception {
        final Map<String, List<String>> packagesByName = new TreeMap<>();
        for (String line : CellPrelude.of("test").imports()) {
            final String name = line.replaceAll("^import |\\.\\*;$", "");
            if (name.startsWith("spanwright.")) {
                for (String type : publicTypes(name)) {
                    packagesByName.computeIfAbsent(type, t -> new ArrayList<>()).add(name);
                }
            }
        }
        assertThat(packagesByName).containsKeys("MeasuringChain", "Display", "Sheet", "CalibrationLine");
        packagesByName.values().removeIf(packages -> packages.size() < 2);
        assertThat(packagesByName).isEmpty();
    }

    private static List<String> publicTypes(String packageName) throws IOException, URISyntaxException {
        final List<String> types = new ArrayList<>();
        for (Class<?> anchor : List.of(MeasuringChain.class, Display.class, Sheet.class)) {
            final URI from = anchor.getProtectionDomain().getCodeSource().getLocation().toURI();
            final Path location = Path.of(from);
            if (Files.isDirectory(location)) {
                types.addAll(publicTypes(location, packageName));
            } else {
                try (FileSystem jar = FileSystems.newFileSystem(location)) {
                    types.addAll(publicTypes(jar.getPath("/"), packageName));
                }
            }
        }
        return types;
    }

    private static List<String> publicTypes(Path root, String packageName) throws IOException {
        final Path folder = root.resolve(packageName.replace('.', '/'));
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).filter(f -> f.matches("[A-Za-z0-9]+\\.class"))
                .map(f -> f.replace(".class", "")).filter(f -> isPublic(packageName + "." + f)).toList();
        }
    }

    private static boolean isPublic(String type) {
        try {
            return java.lang.reflect.Modifier.isPublic(Class.forName(type, false,
                NamesInACellTest.class.getClassLoader()).getModifiers());
        } catch (ClassNotFoundException e) {
            throw new AssertionError(type, e);
        }
    }
}
