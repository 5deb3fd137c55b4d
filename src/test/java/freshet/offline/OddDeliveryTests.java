package freshet.offline;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.care.CareYard;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;

/** What a phone could never have written is answered as such, never with a failure. */
@FreshetTest
class OddDeliveryTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @ParameterizedTest
    @ValueSource(strings = {"null", "{", "[]", "{}", "7", "\"text\"", "{\"kind\":\"NO_SUCH\"}", "{\"key\":null}"})
    void answersWhatNoPhoneWrites(String body) throws Exception {
        yard.ilse();
        Pages ilse = Pages.signedIn(mvc, "ilse", "river at thaw");
        mvc.perform(post("/offline/deliver")
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(body)
                        .session(ilse.session())
                        .with(csrf()))
                .andExpect(status().isBadRequest())
                .andExpect(jsonPath("$.outcome").value("REFUSED"));
    }
}
