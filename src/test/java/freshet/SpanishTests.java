package freshet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import freshet.Pages.Page;
import freshet.care.CareYard;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.LocalDate;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** A person who reads Spanish reads nothing else on the pages, and the browser knows it. */
@FreshetTest
class SpanishTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Test
    void speaksSpanishToWhomeverChoseIt() {
        clock.set("2026-03-14T15:00:00Z");
        yard.ilse();
        yard.teo();
        Unit unit = yard.unit(
                "BF-04", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 1, 1));
        Pages teo = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teo.open("/").html().selectFirst("html").attr("lang")).isEqualTo("en");

        teo.submit("/account/units", "unitSystem", "SI", "language", "ES");

        assertThat(inSpanish(teo.open("/account"), 200).text(".say, .done, main"))
                .contains("Contraseña", "Las páginas muestran ahora estas unidades.");
        Page today = inSpanish(teo.open("/"), 200);
        assertThat(today.text("nav")).contains("Hoy", "Bombas", "Lugares", "Temporada");
        assertThat(today.text("main")).contains("sábado 14 de marzo de 2026", "para el vie 20 mar");
        Page page = inSpanish(teo.open("/pumps/" + unit.id()), 200);
        assertThat(page.text("main")).contains("El año de BF-04", "Escribir un hallazgo");

        Page meter =
                inSpanish(teo.submit("/pumps/" + unit.id() + "/reading", "value", "12,5", "kind", "RUN_HOURS"), 422);
        assertThat(meter.wrong("value")).contains("\"12,5\" lleva coma. Para decimales usa un punto: 12.5");
        assertThat(meter.value("value")).isEqualTo("12,5");
        assertThat(meter.text(".wrongs")).contains("Hay una cosa por corregir");
        assertThat(inSpanish(teo.open("/pumps/999999"), 404).text("h1")).isEqualTo("No existe esa página");

        // whoever works beside him still reads English
        Pages ilse = Pages.signedIn(mvc, "ilse", "river at thaw");
        assertThat(ilse.open("/").html().selectFirst("html").attr("lang")).isEqualTo("en");
        assertThat(ilse.open("/pumps/" + unit.id()).text("main")).contains("The year of BF-04", "Write a finding");
    }

    private static Page inSpanish(Page page, int status) {
        assertThat(page.status()).isEqualTo(status);
        assertThat(page.html().selectFirst("html").attr("lang")).isEqualTo("es");
        // a key without words would stand between question marks
        assertThat(page.text()).doesNotContain("??");
        return page;
    }

    @Test
    void asksToSignInInTheLanguageOfTheBrowser() throws Exception {
        yard.ilse();
        assertSignIn("es-MX,es;q=0.9,en;q=0.5", "es", "Entrar");
        assertSignIn("de-DE,es;q=0.8,en;q=0.5", "es", "Entrar");
        assertSignIn("en-GB,es;q=0.9", "en", "Sign in");
        assertSignIn("de-DE", "en", "Sign in");
    }

    private void assertSignIn(String accepted, String language, String says) throws Exception {
        Document page = Jsoup.parse(mvc.perform(get("/sign-in").header("Accept-Language", accepted))
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(page.selectFirst("html").attr("lang")).as(accepted).isEqualTo(language);
        assertThat(page.selectFirst("h1").text()).as(accepted).isEqualTo(says);
    }
}
