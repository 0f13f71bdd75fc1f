package spanwright.kernel.maven;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Where Maven keeps the user's jars. */
final class RepositoryFolder {
    private RepositoryFolder() { }

    /**
     * The folder that the system property names, else the one in the user's settings, else Maven's default.
     */
    static Path ofUser() {
        final String property = System.getProperty("maven.repo.local", "");
        final Path maven = Path.of(System.getProperty("user.home"), ".m2");
        return property.isBlank() ? inSettings(maven.resolve("settings.xml"))
            .orElse(maven.resolve("repository"))
            : Path.of(property).toAbsolutePath();
    }

    /**
     * What a settings file says.
     *
     * @throws IllegalArgumentException if the file cannot be read as XML
     */
    static Optional<Path> inSettings(Path settings) {
        if (!Files.isRegularFile(settings)) {
            return Optional.empty();
        }
        final XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        try (InputStream in = Files.newInputStream(settings)) {
            return localRepository(factory.createXMLStreamReader(in)).map(RepositoryFolder::filledIn)
                .map(Path::of);
        } catch (IOException | XMLStreamException e) {
            throw new IllegalArgumentException("cannot read " + settings + ": " + e.getMessage(), e);
        }
    }

    /** The element of that name directly below the root. */
    private static Optional<String> localRepository(XMLStreamReader xml) throws XMLStreamException {
        int depth = 0;
        while (xml.hasNext()) {
            final int event = xml.next();
            if (event == XMLStreamReader.START_ELEMENT) {
                depth++;
                if (depth == 2 && xml.getLocalName().equals("localRepository")) {
                    return Optional.of(xml.getElementText().strip()).filter(text -> !text.isEmpty());
                }
            } else if (event == XMLStreamReader.END_ELEMENT) {
                depth--;
            }
        }
        return Optional.empty();
    }

    private static String filledIn(String text) {
        return text.replace("${user.home}", System.getProperty("user.home"))
            .replace("${env.HOME}", System.getenv().getOrDefault("HOME", "${env.HOME}"));
    }
}
