package freshet.care;

import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.happenings.Happenings;
import freshet.happenings.Out;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.people.Typed;
import freshet.photos.PhotoWrongs;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
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
    private final Checklists checklists;
    private final TaskPages pages;
    private final TaskPhotoForm photos;
    private final Happenings happenings;
    private final MessageSource messages;

    TaskController(
            Care care,
            Checklists checklists,
            TaskPages pages,
            TaskPhotoForm photos,
            Happenings happenings,
            MessageSource messages) {
        this.care = care;
        this.checklists = checklists;
        this.pages = pages;
        this.photos = photos;
        this.happenings = happenings;
        this.messages = messages;
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
        return page(sheet, sheet.checklist(), TaskForm.of(sheet, me, care.inHand(me)), model, me);
    }

    private String page(Worksheet sheet, Checklist checklist, TaskForm form, Model model, Person me) {
        model.addAttribute("form", form);
        model.addAttribute("task", sheet.task());
        Out out = happenings.out(List.of(sheet.unit().id())).get(sheet.unit().id());
        model.addAttribute("outUntil", out == null ? null : out.dueBackOn());
        pages.lines(model, checklist, sheet.unit(), form.line() == null ? Map.of() : form.line(), sheet.saved(), me);
        photos.show(sheet.task().id(), model);
        return "care/task";
    }

    /** The press says what is wanted: to keep the answers, or to sign them. */
    @PostMapping("/tasks/{id}")
    String press(
            @PathVariable long id,
            @RequestParam(name = "press", defaultValue = "") String pressedNow,
            @RequestParam(required = false) @Nullable String pressed,
            @ModelAttribute("form") TaskForm sent,
            Model model,
            Person me,
            Locale locale,
            RedirectAttributes flash,
            HttpServletRequest request,
            HttpServletResponse response) {
        String press = Typed.press(pressedNow, pressed);
        Worksheet sheet = care.worksheet(id);
        Checklist shown = shown(sheet, sent);
        TaskForm form = sent.complete(shown);
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        try {
            photos.take(id, request, me);
            if (press.equals("sign")) {
                form.askAboutSlips(shown, sheet.unit().model().ratings(), me);
                long record = care.sign(id, form.signOff(shown, me, sheet.task().zone()), me);
                flash.addFlashAttribute("done", "care.signed");
                return "redirect:/records/" + record;
            }
            care.saveAnswers(id, form.opened(), form.answers(shown), form.notes(), me);
            flash.addFlashAttribute("done", "care.saved");
            return "redirect:/tasks/" + id + photos.takeOut(id, press);
        } catch (AlreadySigned already) {
            care.refuseChange(already.recordId(), me);
            response.setStatus(HttpStatus.CONFLICT.value());
            return signedMeanwhile(sheet, shown, form, already.recordId(), model);
        } catch (Stale changed) {
            response.setStatus(HttpStatus.CONFLICT.value());
            return changedMeanwhile(care.worksheet(id), shown, form, model, me, locale);
        } catch (Refused refused) {
            PhotoWrongs.put(refused, errors, model);
            model.addAttribute("kept", true);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(sheet, shown, form, model, me);
    }

    /** The version that the page showed, when it is one of this task's checklist. */
    private Checklist shown(Worksheet sheet, TaskForm sent) {
        long versionId = sent.shown().orElse(sheet.checklist().versionId());
        if (versionId == sheet.checklist().versionId()) {
            return sheet.checklist();
        }
        try {
            Checklist shown = checklists.version(versionId);
            return shown.id() == sheet.checklist().id() ? shown : sheet.checklist();
        } catch (NotFound none) {
            return sheet.checklist();
        }
    }

    /** The task as it is now, with what was typed; what has no line in the version that it was begun with stands in the note. */
    private String changedMeanwhile(
            Worksheet now, Checklist shown, TaskForm form, Model model, Person me, Locale locale) {
        Map<String, LineForm> typed = form.line() == null ? Map.of() : form.line();
        OtherVersion there = OtherVersion.of(typed, shown, now.checklist());
        TaskForm again = form.with(there.lines(), noteWith(form, shown, there.without(), locale))
                .forTask(now);
        model.addAttribute("stale", true);
        model.addAttribute("meanwhile", now.notes());
        model.addAttribute("without", there.without());
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", new BeanPropertyBindingResult(again, "form"));
        return page(now, now.checklist(), again, model, me);
    }

    private @Nullable String noteWith(TaskForm form, Checklist shown, List<OtherVersion.Typed> without, Locale locale) {
        if (without.isEmpty()) {
            return form.note();
        }
        List<String> lines = new ArrayList<>();
        if (form.note() != null && !form.note().isBlank()) {
            lines.add(form.note());
        }
        for (OtherVersion.Typed line : without) {
            List<String> typed = line.typed().words();
            lines.add(messages.getMessage(
                    "care.version.note",
                    new Object[] {shown.number(), line.check().question(), String.join("; ", typed)},
                    locale));
        }
        return String.join("\n", lines);
    }

    /** Photos alone, as a script sends them; whoever keeps them for later sends them here too. */
    @PostMapping("/tasks/{id}/photos")
    String photos(
            @PathVariable long id, Model model, Person me, HttpServletRequest request, HttpServletResponse response) {
        Worksheet sheet = care.worksheet(id);
        TaskForm form = TaskForm.of(sheet, me, care.inHand(me));
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        try {
            photos.take(id, request, me);
            return "redirect:/tasks/" + id;
        } catch (AlreadySigned already) {
            response.setStatus(HttpStatus.CONFLICT.value());
            return signedMeanwhile(sheet, sheet.checklist(), form, already.recordId(), model);
        } catch (Refused refused) {
            PhotoWrongs.put(refused, errors, model);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        }
        return page(sheet, sheet.checklist(), form, model, me);
    }

    /** What was typed, beside what somebody signed. */
    private String signedMeanwhile(Worksheet sheet, Checklist shown, TaskForm form, long recordId, Model model) {
        ServiceRecord record = care.record(recordId);
        model.addAttribute("record", record);
        model.addAttribute("task", sheet.task());
        model.addAttribute("pump", sheet.unit());
        model.addAttribute("form", form);
        model.addAttribute(
                "rows",
                BesideRow.rows(
                        record,
                        checklists.version(record.checklistVersionId()),
                        form.line() == null ? Map.of() : form.line(),
                        shown));
        return "care/signed-meanwhile";
    }
}
