package freshet.care;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The page of a task: answer its checklist, keep it, sign it. */
@Controller
class TaskController {

    private final Care care;
    private final TaskPages pages;

    TaskController(Care care, TaskPages pages) {
        this.care = care;
        this.pages = pages;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @InitBinder
    void bindByConstructor(WebDataBinder binder) {
        binder.setDeclarativeBinding(true);
    }

    @GetMapping("/tasks/{id}")
    String task(@PathVariable long id, Model model, Person me) {
        Worksheet sheet = care.worksheet(id);
        if (sheet.task().recordId() != null) {
            return "redirect:/records/" + sheet.task().recordId();
        }
        return page(sheet, TaskForm.of(sheet, me), model, me);
    }

    private String page(Worksheet sheet, TaskForm form, Model model, Person me) {
        model.addAttribute("form", form);
        model.addAttribute("task", sheet.task());
        pages.lines(
                model,
                sheet.checklist(),
                sheet.unit(),
                form.line() == null ? Map.of() : form.line(),
                sheet.saved(),
                me);
        return "care/task";
    }

    /** The press says what is wanted: to keep the answers, or to sign them. */
    @PostMapping("/tasks/{id}")
    String press(
            @PathVariable long id,
            @RequestParam(defaultValue = "save") String press,
            @ModelAttribute("form") TaskForm sent,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Worksheet sheet = care.worksheet(id);
        TaskForm form = sent.complete(sheet.checklist());
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        try {
            if (press.equals("sign")) {
                long record = care.sign(
                        id, form.signOff(sheet.checklist(), me, sheet.task().zone()), me);
                flash.addFlashAttribute("done", "care.signed");
                return "redirect:/records/" + record;
            }
            care.saveAnswers(id, form.opened(), form.answers(sheet.checklist()), me);
            flash.addFlashAttribute("done", "care.saved");
            return "redirect:/tasks/" + id;
        } catch (AlreadySigned already) {
            response.setStatus(HttpStatus.CONFLICT.value());
            return signedMeanwhile(sheet, form, already.recordId(), model);
        } catch (Stale changed) {
            response.setStatus(HttpStatus.CONFLICT.value());
            model.addAttribute("stale", true);
            Worksheet now = care.worksheet(id);
            TaskForm again = form.at(now.task().version());
            model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", new BeanPropertyBindingResult(again, "form"));
            return page(now, again, model, me);
        } catch (Refused refused) {
            refused.into(errors);
            model.addAttribute("kept", true);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(sheet, form, model, me);
    }

    /** What was typed, beside what somebody signed. */
    private String signedMeanwhile(Worksheet sheet, TaskForm form, long recordId, Model model) {
        model.addAttribute("record", care.record(recordId));
        model.addAttribute("task", sheet.task());
        model.addAttribute("pump", sheet.unit());
        model.addAttribute("form", form);
        return "care/signed-meanwhile";
    }
}
