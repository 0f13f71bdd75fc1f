package spanwright.kernel.maven;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.aether.RepositoryException;
import org.eclipse.aether.RepositorySystem;
import org.eclipse.aether.RepositorySystemSession.CloseableSession;
import org.eclipse.aether.artifact.Artifact;
import org.eclipse.aether.artifact.DefaultArtifact;
import org.eclipse.aether.collection.CollectRequest;
import org.eclipse.aether.graph.Dependency;
import org.eclipse.aether.graph.DependencyFilter;
import org.eclipse.aether.repository.LocalRepository;
import org.eclipse.aether.resolution.ArtifactResolutionException;
import org.eclipse.aether.resolution.ArtifactResult;
import org.eclipse.aether.resolution.DependencyRequest;
import org.eclipse.aether.resolution.DependencyResolutionException;
import org.eclipse.aether.spi.connector.transport.TransporterFactory;
import org.eclipse.aether.supplier.RepositorySystemSupplier;
import org.eclipse.aether.supplier.SessionBuilderSupplier;

/**
 * Finds jars and all they need at run time in a Maven repository on this machine, as a project would that
 * names them among its dependencies: the nearest version of a library wins, then the one named first. Only
 * files that are there are used, whichever tool put them there.
 */
public final class MavenJars {
    private static final Pattern COORDINATES =
        Pattern.compile("[\\w.-]+:[\\w.-]+(:[\\w.-]+(:[\\w.-]+)?)?:[\\w.+-]+");

    private static final Set<String> AT_RUN_TIME = Set.of("compile", "runtime");

    private final Path repository;

    MavenJars(Path repository) {
        this.repository = repository;
    }

    /**
     * Jars of the user's own repository: the folder in the system property {@code maven.repo.local}, else
     * {@code localRepository} in {@code ~/.m2/settings.xml}, else {@code ~/.m2/repository}.
     */
    public static MavenJars ofUser() {
        return new MavenJars(RepositoryFolder.ofUser());
    }

    /**
     * The jars named and those they need at run time.
     *
     * @param coordinates each {@code group:artifact[:extension[:classifier]]:version}
     * @return existing files, each library in one version
     * @throws IllegalArgumentException if coordinates cannot be understood or a file is not in the repository
     */
    public List<Path> resolve(List<String> coordinates) {
        final List<Artifact> named = coordinates.stream().map(MavenJars::artifact).toList();
        if (named.isEmpty()) {
            return List.of();
        }
        final RepositorySystem system = new WithoutTransports().get();
        try (CloseableSession session = session(system)) {
            return files(system, session, named);
        } catch (DependencyResolutionException e) {
            throw new IllegalArgumentException(explained(e, named), e);
        } finally {
            system.shutdown();
        }
    }

    private static Artifact artifact(String coordinates) {
        if (!COORDINATES.matcher(coordinates).matches()) {
            throw new IllegalArgumentException("cannot read the coordinates \"" + coordinates
                + "\": write group:artifact:version or group:artifact:extension:classifier:version,"
                + " with one exact version");
        }
        return new DefaultArtifact(coordinates);
    }

    private CloseableSession session(RepositorySystem system) {
        // The simple layout takes a file that is there; the default one asks which remote repository it came
        // from. A strict reader of descriptors, as without a parent or its POM a jar would lose what it needs
        // unseen. Nothing is written, so no lock files are left in the user's repository.
        return new SessionBuilderSupplier(system).get()
            .withLocalRepositories(new LocalRepository(repository, "simple"))
            .setOffline(true)
            .setIgnoreArtifactDescriptorRepositories(true)
            .setArtifactDescriptorPolicy(null)
            .setSystemProperties(System.getProperties())
            .setConfigProperty("aether.syncContext.named.factory", "noop")
            .build();
    }

    private static List<Path> files(RepositorySystem system, CloseableSession session, List<Artifact> named)
        throws DependencyResolutionException {
        final CollectRequest wanted = new CollectRequest();
        named.forEach(artifact -> wanted.addDependency(new Dependency(artifact, "compile")));
        final DependencyFilter runtime = (node, parents) -> node.getDependency() == null
            || AT_RUN_TIME.contains(node.getDependency().getScope());
        return system.resolveDependencies(session, new DependencyRequest(wanted, runtime))
            .getArtifactResults()
            .stream().map(ArtifactResult::getArtifact).filter(artifact -> !artifact.getExtension()
                .equals("pom"))
            .map(Artifact::getPath).toList();
    }

    private String explained(RepositoryException failure, List<Artifact> named) {
        final String missing = Stream.<Throwable>iterate(failure, e -> e != null, Throwable::getCause)
            .filter(ArtifactResolutionException.class::isInstance)
                .map(ArtifactResolutionException.class::cast)
            .flatMap(e -> e.getResults().stream()).filter(result -> !result.isResolved())
            .map(result -> file(result.getRequest().getArtifact()).toString()).distinct()
                .collect(Collectors.joining(", "));
        return (missing.isEmpty() ? failure.getMessage() : "not in the Maven repository: " + missing)
            + "; nothing is fetched from here, this does it:"
            + named.stream().map(this::command).collect(Collectors.joining());
    }

    private Path file(Artifact artifact) {
        final String classifier = artifact.getClassifier();
        return repository.resolve(artifact.getGroupId().replace('.', '/')).resolve(artifact.getArtifactId())
            .resolve(artifact.getBaseVersion()).resolve(artifact.getArtifactId() + "-" + artifact.getVersion()
                + (classifier.isEmpty() ? "" : "-" + classifier) + "." + artifact.getExtension());
    }

    /** The order in the command is another one: version, extension, classifier. */
    private String command(Artifact a) {
        final String classifier = a.getClassifier();
        final boolean plain = classifier.isEmpty() && a.getExtension().equals("jar");
        final String kind = plain ? "" : ":" + a.getExtension() + (classifier.isEmpty() ? "" : ":"
            + classifier);
        final String where = System.getProperty("maven.repo.local", "").isBlank() ? ""
            : " -Dmaven.repo.local=" + repository;
        return "\n  mvn dependency:get -Dartifact=" + a.getGroupId() + ":" + a.getArtifactId() + ":"
            + a.getVersion() + kind + where;
    }

    /** What fetches is not even there. */
    private static final class WithoutTransports extends RepositorySystemSupplier {
        @Override
        protected Map<String, TransporterFactory> createTransporterFactories() {
            return Map.of();
        }
    }
}
