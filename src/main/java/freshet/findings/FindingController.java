package freshet.findings;

import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.people.Typed;
import freshet.photos.PhotoWrongs;
import freshet.photos.Photos;
import freshet.photos.SentPhoto;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a finding is written and closed. */
@Controller
class FindingController {

    private final Findings findings;
    private final Pumps pumps;
    private final People people;
    private final Photos photos;
    private final Clock clock;

    FindingController(Findings findings, Pumps pumps, People people, Photos photos, Clock clock) {
        this.findings = findings;
        this.pumps = pumps;
        this.people = people;
        this.photos = photos;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/pumps/{id}/finding")
    String blank(@PathVariable long id, Model model) {
        return writingPage(pumps.unit(id), FindingForm.BLANK, model);
    }

    private String writingPage(Unit unit, FindingForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("pump", unit);
        model.addAttribute("modes", FailureMode.values());
        model.addAttribute("causes", Cause.values());
        model.addAttribute(
                "known",
                findings.findingsOf(unit.id()).stream().filter(Finding::open).toList());
        return "findings/write";
    }

    @PostMapping("/pumps/{id}/finding")
    String write(
            @PathVariable long id,
            @ModelAttribute("form") FindingForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        Unit unit = pumps.unit(id);
        try {
            Long photoId = keptPhoto(request, me);
            model.addAttribute("keptPhoto", photoId);
            long findingId = findings.write(form.draft(id), me);
            if (photoId != null) {
                photos.hang("finding:" + findingId, photoId, null, me);
            }
        } catch (Refused refused) {
            PhotoWrongs.put(refused, errors, model);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return writingPage(unit, form, model);
        }
        flash.addFlashAttribute("done", "findings.written");
        return "redirect:/pumps/" + id;
    }

    /** The photo that came with the form, or that came with it before, when something else was wrong. */
    private @Nullable Long keptPhoto(HttpServletRequest request, Person me) {
        SentPhoto sent = SentPhoto.at(request, Photos.FIELD);
        String before = Typed.textOrEmpty(request.getParameter("keptPhoto"));
        if (sent != null) {
            return photos.keep(sent, me);
        }
        return before.matches("\\d{1,18}")
                ? photos.photo(Long.parseLong(before)).id()
                : null;
    }

    @GetMapping("/findings/{id}")
    String finding(@PathVariable long id, Model model, Person me) {
        Finding finding = findings.finding(id);
        return closingPage(finding, new ClosingForm(null, String.valueOf(finding.version())), model, me);
    }

    private String closingPage(Finding finding, ClosingForm form, Model model, Person me) {
        model.addAttribute("form", form);
        model.addAttribute("found", finding);
        model.addAttribute("severities", findings.severitiesOf(finding.id()));
        model.addAttribute("waivers", findings.waiversOf(finding.id()));
        model.addAttribute("putOff", finding.putOffOn(LocalDate.ofInstant(clock.instant(), finding.zone())));
        model.addAttribute("photos", photos.on("finding:" + finding.id()));
        boolean locked = finding.competence() != null && !me.competentFor(finding.competence());
        model.addAttribute("locked", locked);
        model.addAttribute("may", locked ? competentFor(finding) : List.of());
        return "findings/finding";
    }

    private List<String> competentFor(Finding finding) {
        return people.everyone().stream()
                .filter(person ->
                        person.active() && finding.competence() != null && person.competentFor(finding.competence()))
                .map(Person::fullName)
                .toList();
    }

    @PostMapping("/findings/{id}")
    String close(
            @PathVariable long id,
            @ModelAttribute("form") ClosingForm form,
            BindingResult errors,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        try {
            findings.close(id, form.opened(), Typed.textOrEmpty(form.how()), me);
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return closingPage(findings.finding(id), form, model, me);
        } catch (Stale closed) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("stale", true);
            return closingPage(findings.finding(id), form, model, me);
        }
        flash.addFlashAttribute("done", "findings.closed");
        return "redirect:/pumps/" + findings.finding(id).unitId();
    }
}
