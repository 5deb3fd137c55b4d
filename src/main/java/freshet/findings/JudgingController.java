package freshet.findings;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a finding is judged otherwise and its work put off. */
@Controller
class JudgingController {

    private final Findings findings;
    private final Clock clock;

    JudgingController(Findings findings, Clock clock) {
        this.findings = findings;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/findings/{id}/judge")
    String judging(@PathVariable long id, Model model) {
        Finding finding = findings.finding(id);
        return judgingPage(finding, JudgingForm.of(finding), model);
    }

    private String judgingPage(Finding finding, JudgingForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("found", finding);
        model.addAttribute("modes", FailureMode.values());
        model.addAttribute("causes", Cause.values());
        return "findings/judge";
    }

    @PostMapping("/findings/{id}/judge")
    String judge(
            @PathVariable long id,
            @ModelAttribute("form") JudgingForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            findings.judge(id, Choices.version(form.version()), form.judging(), me);
        } catch (Refused | Stale wrong) {
            refused(wrong, errors, model, response);
            return judgingPage(findings.finding(id), form, model);
        }
        flash.addFlashAttribute("done", "findings.judged");
        return "redirect:/findings/" + id;
    }

    @GetMapping("/findings/{id}/put-off")
    String puttingOff(@PathVariable long id, Model model, Person me) {
        Finding finding = findings.finding(id);
        return waiverPage(finding, WaiverForm.of(finding), model, me);
    }

    private String waiverPage(Finding finding, WaiverForm form, Model model, Person me) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), finding.zone());
        model.addAttribute("form", form);
        model.addAttribute("found", finding);
        model.addAttribute("putOff", finding.putOffOn(today));
        model.addAttribute("never", finding.severity() >= Finding.DANGER);
        model.addAttribute("ownersOnly", finding.stopsUse() && !me.owner());
        return "findings/put-off";
    }

    @PostMapping("/findings/{id}/put-off")
    String putOff(
            @PathVariable long id,
            @ModelAttribute("form") WaiverForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Finding finding = findings.finding(id);
        try {
            findings.putOff(id, Choices.version(form.version()), form.draft(me), me);
        } catch (Refused | Stale wrong) {
            refused(wrong, errors, model, response);
            return waiverPage(findings.finding(id), form, model, me);
        }
        flash.addFlashAttribute("done", "findings.putOff.done");
        return "redirect:/findings/" + finding.id();
    }

    private static void refused(
            RuntimeException wrong, BindingResult errors, Model model, HttpServletResponse response) {
        if (wrong instanceof Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        } else {
            model.addAttribute("stale", true);
            response.setStatus(HttpStatus.CONFLICT.value());
        }
    }
}
