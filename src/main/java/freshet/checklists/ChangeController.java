package freshet.checklists;

import freshet.people.Competence;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.people.Typed;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.prepost.PreAuthorize;
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

/** The pages on which an owner changes a checklist: every press but the last gives the page again, changed, and publishes nothing. */
@Controller
@PreAuthorize("hasRole('OWNER')")
class ChangeController {

    private final Checklists checklists;
    private final MessageSource messages;

    ChangeController(Checklists checklists, MessageSource messages) {
        this.messages = messages;
        this.checklists = checklists;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    @InitBinder
    void bindByConstructor(WebDataBinder binder) {
        binder.setDeclarativeBinding(true);
    }

    @GetMapping("/checklists/{id}/edit")
    String edit(@PathVariable long id, Model model, Person me) {
        Checklist stands = checklists.checklist(id);
        return page(stands, ChecklistForm.of(stands, me.unitSystem()), model, me, -1);
    }

    private String page(Checklist base, ChecklistForm form, Model model, Person me, int justAdded) {
        return page(base, form, new BeanPropertyBindingResult(form, "form"), model, me, justAdded);
    }

    private String page(
            Checklist base, ChecklistForm form, BindingResult errors, Model model, Person me, int justAdded) {
        model.addAttribute("form", form);
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        model.addAttribute("checklist", base);
        model.addAttribute("rows", LineEdit.rows(form, base, me.unitSystem(), errors, justAdded));
        model.addAttribute("units", LineUnit.all());
        model.addAttribute("verdicts", List.of(Verdict.PASS, Verdict.WATCH, Verdict.FAIL, Verdict.DOES_NOT_APPLY));
        model.addAttribute("competences", Competence.values());
        model.addAttribute("answerKinds", AnswerKind.values());
        return "checklists/edit";
    }

    /** The press says what is wanted: a line more, less or elsewhere, to see what changes, or to publish it. */
    @PostMapping("/checklists/{id}/edit")
    String press(
            @PathVariable long id,
            @RequestParam(defaultValue = "look") String press,
            @RequestParam(required = false) @Nullable String section,
            @RequestParam(required = false) @Nullable String kind,
            @ModelAttribute("form") ChecklistForm sent,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        Checklist newest = checklists.checklist(id);
        Checklist base = checklists.version(id, sent.opened(newest));
        ChecklistForm form = sent.complete(base);
        int line = number(press);
        if (press.equals("add") && base.sections().contains(Typed.textOrEmpty(section))) {
            LineFields blank = LineFields.blank(Typed.textOrEmpty(section), answerKind(kind));
            ChecklistForm longer = form.add(blank, base);
            return page(base, longer, model, me, -1);
        }
        if (press.startsWith("up-") || press.startsWith("down-")) {
            int by = press.startsWith("up-") ? -1 : 1;
            return page(base, form.move(line, by), model, me, line + by);
        }
        if (press.startsWith("out-")) {
            return page(base, form.takeOut(line), model, me, -1);
        }
        if (press.equals("back") || press.equals("add")) {
            return page(base, form, model, me, -1);
        }
        return lookOrPublish(press, base, newest, form, model, me, flash, response);
    }

    private String lookOrPublish(
            String press,
            Checklist base,
            Checklist newest,
            ChecklistForm form,
            Model model,
            Person me,
            RedirectAttributes flash,
            HttpServletResponse response) {
        BindingResult errors = new BeanPropertyBindingResult(form, "form");
        try {
            ChecklistDraft draft = form.draft(base, me.unitSystem());
            if (base.number() != newest.number()) {
                throw new Stale("checklist", base.id());
            }
            checklists.look(base.id(), base.number(), draft);
            List<ChangeRow> changes = ChangeRow.rows(base, base.becomes(draft), LimitWords.of(messages, me));
            if (!press.equals("publish")) {
                return look(base, form, errors, changes, model);
            }
            if (!changes.isEmpty() && draft.note() == null) {
                response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
                errors.rejectValue("note", "checklists.edit.why");
                return look(base, form, errors, changes, model);
            }
            Checklist published = checklists.publish(base.id(), base.number(), draft, me);
            flash.addFlashAttribute(
                    "done",
                    published.number() == base.number() ? "checklists.edit.nothing" : "checklists.edit.published");
            return "redirect:/checklists/" + base.id();
        } catch (Stale meanwhile) {
            response.setStatus(HttpStatus.CONFLICT.value());
            Checklist stands = checklists.checklist(base.id());
            model.addAttribute("stale", true);
            model.addAttribute("meanwhile", ChangeRow.rows(base, stands, LimitWords.of(messages, me)));
            model.addAttribute("edition", checklists.editions(base.id()).get(0));
            return page(stands, form.onto(base, stands, me.unitSystem()), model, me, -1);
        } catch (Refused refused) {
            refused.into(errors);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return page(base, form, errors, model, me, -1);
        }
    }

    private static String look(
            Checklist base, ChecklistForm form, BindingResult errors, List<ChangeRow> changes, Model model) {
        model.addAttribute("form", form);
        model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", errors);
        model.addAttribute("checklist", base);
        model.addAttribute("changes", changes);
        model.addAttribute("hidden", form.hidden());
        return "checklists/look";
    }

    private static int number(String press) {
        return press.matches("\\w+-\\d{1,3}") ? Integer.parseInt(press.substring(press.indexOf('-') + 1)) : -1;
    }

    private static AnswerKind answerKind(@Nullable String kind) {
        return Arrays.stream(AnswerKind.values())
                .filter(each -> each.name().equals(kind))
                .findFirst()
                .orElse(AnswerKind.YES_NO);
    }
}
