package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.Language;
import freshet.people.People;
import freshet.people.Person;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;

/** Files with Spanish headings and words, and what a Spanish reader is told about them. */
@FreshetTest
class SpanishFilesTests {

    /** Free texts, which are another text in the other language and the same column. */
    private static final Set<String> FREE =
            Set.of("note", "description", "curve source", "spot", "opening name", "running name", "closing name");

    @Autowired
    Exchange exchange;

    @Autowired
    People people;

    @Autowired
    MessageSource messages;

    Person reader;

    @BeforeEach
    void readSpanish() {
        Person ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
        people.readIn(ilse.id(), Language.ES);
        reader = people.person(ilse.id());
    }

    private static List<NamedFile> templates(Person reader) {
        return Stream.of(FileKind.values())
                .map(kind -> new NamedFile(kind.word() + ".csv", template(kind, reader)))
                .toList();
    }

    private static byte[] template(FileKind kind, Person reader) {
        try {
            return DownloadController.template(kind, reader.locale()).getContentAsByteArray();
        } catch (IOException unread) {
            throw new IllegalStateException(unread);
        }
    }

    private static List<NamedFile> english() {
        return Stream.of(FileKind.values())
                .map(kind -> ExampleFilesTests.resource("import-templates/" + kind.word() + ".csv"))
                .toList();
    }

    private static NamedFile file(String name, String text) {
        return new NamedFile(name, text.getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @EnumSource
    void readsFromTheSpanishTemplateTheSameRowsAsFromTheEnglish(FileKind kind) {
        assertThat(new String(template(kind, reader), StandardCharsets.UTF_8)
                        .lines()
                        .findFirst())
                .isNotEqualTo(new String(english().get(kind.ordinal()).content(), StandardCharsets.UTF_8)
                        .lines()
                        .findFirst());
        exchange.takeIn(english(), reader);

        Preview shown = exchange.preview(templates(reader), reader);

        assertThat(shown.problems()).isEmpty();
        assertThat(shown.added()).isZero();
        assertThat(shown.sheets().get(kind.ordinal()).kind()).isEqualTo(kind);
        assertThat(shown.sheets().get(kind.ordinal()).rows()).isEqualTo(2);
        assertThat(shown.changes().stream()
                        .filter(change -> change.file().equals(kind.word() + ".csv"))
                        .flatMap(change -> change.differences().stream())
                        .map(Preview.Difference::column))
                .allMatch(FREE::contains);
    }

    @Test
    void takesInTheSpanishTemplatesAlone() {
        Preview done = exchange.takeIn(templates(reader), reader);

        assertThat(done.added()).isEqualTo(14);
    }

    @Test
    void saysWhatIsWrongInSpanishWords() {
        Preview shown = exchange.preview(
                List.of(
                        file("a.csv", "lugar,posición,clase de posición\nPatio,Norte,charco\n"),
                        file("b.csv", "etiqueta,medidor,leído el\nP-01,horas de marcha,3/4/2026\n")),
                reader);

        assertThat(shown.problems().stream()
                        .map(problem -> messages.getMessage(problem.code(), problem.said(), reader.locale())))
                .contains(
                        "\"charco\" no es ninguno de estos: foso, pozo, tanque, cuarto de máquinas, almacén, otro",
                        "Un archivo de lecturas necesita la columna \"valor\".");
    }

    @Test
    void asksAboutAnUnusualBoreInThePreviewAndTakesItInAllTheSame() {
        exchange.takeIn(templates(reader), reader);
        NamedFile kit = file("juego.csv", "etiqueta,pieza,descripción,diámetro (in)\nP-01,manguera,Larga,9\n");

        Preview shown = exchange.preview(List.of(kit), reader);

        assertThat(shown.problems()).isEmpty();
        assertThat(shown.questions()).hasSize(1).first().satisfies(asked -> {
            assertThat(asked.line()).isEqualTo(2);
            assertThat(asked.column()).isEqualTo("bore");
            assertThat(messages.getMessage(asked.code(), asked.said(), reader.locale()))
                    .startsWith("¿De verdad 9.000");
        });
        assertThat(exchange.takeIn(List.of(kit), shown.fingerprint(), reader).changed())
                .isEqualTo(1);
    }

    @Test
    void writesEachHeadingOnceInSpanish() {
        FileWords words = exchange.words(reader);
        for (FileKind kind : FileKind.values()) {
            assertThat(exchange.columns(kind).stream().map(column -> words.heading(column.name())))
                    .doesNotHaveDuplicates();
        }
        assertThat(words.heading("opening 2 name")).isEqualTo("apertura 2 nombre");
        assertThat(words.heading("head 12")).isEqualTo("altura 12");
    }

    @Test
    void readsMonthsInBothLanguages() {
        assertThat(Days.date("14 ene 2026")).isEqualTo("2026-01-14");
        assertThat(Days.date("14 agosto 2026")).isEqualTo("2026-08-14");
        assertThat(Days.date("14 Aug 2026")).isEqualTo("2026-08-14");
        assertThat(Days.date("14 dic 2026")).isEqualTo("2026-12-14");
    }
}
