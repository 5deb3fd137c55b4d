package freshet.api;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.context.MessageSource;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ResponseBody;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

/** Explains the interface: a page for people, a document for programs. */
@Controller
class GuideController {

    private static final String SHOWN = "cycling";

    private final byte[] document;

    GuideController(MessageSource messages) {
        this.document = OpenApi.document(messages);
    }

    @GetMapping(path = "/api/v1/openapi.json", produces = MediaType.APPLICATION_JSON_VALUE)
    @ResponseBody
    byte[] document() {
        return document;
    }

    @GetMapping("/api-guide")
    String guide(Model model) {
        Map<String, String> addresses = new LinkedHashMap<>();
        Calculations.BY_NAME.keySet().forEach(name -> addresses.put(name, "api.about." + name));
        model.addAttribute("calculations", addresses);
        model.addAttribute("example", curl());
        return "api/guide";
    }

    private static String curl() {
        String address = ServletUriComponentsBuilder.fromCurrentContextPath()
                .path("/api/v1/calculations/" + SHOWN)
                .toUriString();
        return "curl " + address
                + " \\\n  -H 'Authorization: Bearer TOKEN' \\\n  -H 'Content-Type: application/json' \\\n  -d '"
                + OpenApi.examples().get(SHOWN) + "'";
    }
}
