package freshet.care;

import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.findings.Findings;
import freshet.people.NotAllowed;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Pumps;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.InitBinder;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which a signed record is read, and corrected by another. */
@Controller
class RecordController {

    private final Care care;
    private final Checklists checklists;
    private final Findings findings;
    private final Pumps pumps;
    private final TaskPages pages;

    RecordController(Care care, Checklists checklists, Findings findings, Pumps pumps, TaskPages pages) {
        this.care = care;
        this.checklists = checklists;
        this.findings = findings;
        this.pumps = pumps;
        this.pages = pages;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @InitBinder
    void bindByConstructor(WebDataBinder binder) {
        binder.setDeclarativeBinding(true);
    }

    @GetMapping("/records/{id}")
    String record(@PathVariable long id, Model model, Person me) {
        ServiceRecord record = care.record(id);
        model.addAttribute("record", record);
        model.addAttribute("checklist", checklists.version(record.checklistVersionId()));
        model.addAttribute("shown", ShownPhotos.of(record));
        model.addAttribute("findings", findings.findingsOfRecord(id));
        model.addAttribute("chainHolds", care.chainHolds(record.unitId()));
        model.addAttribute("mayCorrect", record.stands() && Corrections.may(record, me));
        return "care/record";
    }

    @GetMapping("/records/{id}/correct")
    String correct(@PathVariable long id, Model model, Person me) {
        ServiceRecord record = correctable(id, me);
        Checklist checklist = checklists.version(record.checklistVersionId());
        CorrectionForm form = CorrectionForm.of(record, checklist, Corrections.answers(record, checklist, me));
        return page(record, checklist, form.complete(checklist), model, me);
    }

    /** What is signed is not changed, whoever asks; that it was tried stands in the trail. */
    @RequestMapping(
            path = "/records/{id}",
            method = {RequestMethod.POST, RequestMethod.PUT, RequestMethod.PATCH, RequestMethod.DELETE})
    String refuse(@PathVariable long id, Model model, Person me, HttpServletResponse response) {
        care.refuseChange(id, me);
        response.setStatus(HttpStatus.CONFLICT.value());
        model.addAttribute("refused", true);
        return record(id, model, me);
    }

    private ServiceRecord correctable(long id, Person me) {
        ServiceRecord record = care.record(id);
        if (!Corrections.may(record, me)) {
            throw new NotAllowed("record " + id + " was signed by another");
        }
        return record;
    }

    private String page(ServiceRecord record, Checklist checklist, CorrectionForm form, Model model, Person me) {
        model.addAttribute("form", form);
        model.addAttribute("record", record);
        pages.lines(
                model,
                checklist,
                pumps.unit(record.unitId()),
                form.line() == null ? Map.of() : form.line(),
                Map.of(),
                me);
        return "care/correct";
    }

    @PostMapping("/records/{id}/correct")
    String correct(
            @PathVariable long id,
            @ModelAttribute("form") CorrectionForm sent,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        if (!Corrections.may(care.record(id), me)) {
            care.refuseChange(id, me);
        }
        ServiceRecord record = correctable(id, me);
        Checklist checklist = checklists.version(record.checklistVersionId());
        CorrectionForm form = sent.complete(checklist);
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        try {
            form.askAboutSlips(checklist, pumps.unit(record.unitId()).model().ratings(), me);
            long correction = care.correct(id, form.correction(checklist), me);
            flash.addFlashAttribute("done", "care.corrected");
            return "redirect:/records/" + correction;
        } catch (Stale corrected) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("stale", true);
            model.addAttribute("newer", care.record(id).correctedById());
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(record, checklist, form, model, me);
    }
}
