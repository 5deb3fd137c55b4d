package freshet.repairs;

import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.measures.Show;
import freshet.people.FormAnswer;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The pages on which one repair is planned, seen and ended. */
@Controller
class RepairController {

    private final Repairs repairs;
    private final Findings findings;
    private final Pumps pumps;
    private final Clock clock;

    RepairController(Repairs repairs, Findings findings, Pumps pumps, Clock clock) {
        this.repairs = repairs;
        this.findings = findings;
        this.pumps = pumps;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @ModelAttribute("money")
    Money money(@ModelAttribute("show") Show show) {
        return repairs.money(show.locale());
    }

    @GetMapping("/repairs/new")
    String blank(@RequestParam("finding") long findingId, Model model) {
        Finding finding = findings.finding(findingId);
        return repairs.openRepairFor(findingId)
                .map(id -> "redirect:/repairs/" + id)
                .orElseGet(() -> {
                    model.addAttribute("form", RepairForm.forFinding(findingId));
                    return planPage(pumps.unit(finding.unitId()), "/repairs/new?finding=" + findingId, null, model);
                });
    }

    private String planPage(Unit unit, String address, @Nullable Repair repair, Model model) {
        List<Long> kept = repair == null ? List.of() : repair.plan().findingIds();
        model.addAttribute("pump", unit);
        model.addAttribute("address", address);
        model.addAttribute("repair", repair);
        model.addAttribute(
                "choices",
                findings.findingsOf(unit.id()).stream()
                        .filter(finding -> finding.open() || kept.contains(finding.id()))
                        .toList());
        return "repairs/plan";
    }

    @PostMapping("/repairs/new")
    String plan(
            @RequestParam("finding") long findingId,
            @ModelAttribute("form") RepairForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Unit unit = pumps.unit(findings.finding(findingId).unitId());
        String address = "/repairs/new?finding=" + findingId;
        if (form.more() != null) {
            return planPage(unit, address, null, model);
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    long id = repairs.plan(unit.id(), form.read(me), me);
                    flash.addFlashAttribute("done", "repairs.planned");
                    return "redirect:/repairs/" + id;
                },
                () -> planPage(unit, address, null, model));
    }

    @GetMapping("/repairs/{id}/plan")
    String planAgain(@PathVariable long id, Model model) {
        Repair repair = repairs.repair(id);
        model.addAttribute("form", RepairForm.of(repair));
        return planPage(pumps.unit(repair.unitId()), "/repairs/" + id + "/plan", repair, model);
    }

    @PostMapping("/repairs/{id}/plan")
    String change(
            @PathVariable long id,
            @ModelAttribute("form") RepairForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Unit unit = pumps.unit(repairs.repair(id).unitId());
        String address = "/repairs/" + id + "/plan";
        if (form.more() != null) {
            return planPage(unit, address, repairs.repair(id), model);
        }
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    repairs.change(id, form.opened(), form.read(me), me);
                    flash.addFlashAttribute("done", "repairs.kept");
                    return "redirect:/repairs/" + id;
                },
                () -> planPage(unit, address, repairs.repair(id), model));
    }

    @GetMapping("/repairs/{id}")
    String repair(@PathVariable long id, Model model) {
        Repair repair = repairs.repair(id);
        model.addAttribute("repair", repair);
        model.addAttribute("its", repairs.findingsOf(repair));
        List<ToOrder> parts = repairs.partsOf(repair);
        LocalDate today = LocalDate.ofInstant(clock.instant(), repair.zone());
        model.addAttribute("parts", parts);
        model.addAttribute(
                "late", repair.open() && (repair.late(today) || parts.stream().anyMatch(ToOrder::late)));
        model.addAttribute("sheet", repairs.sheet(id));
        return "repairs/repair";
    }

    @GetMapping("/repairs/{id}/done")
    String ending(@PathVariable long id, Model model) {
        Repair repair = repairs.repair(id);
        model.addAttribute("form", EndForm.of(repair));
        return endPage(repair, "done", model);
    }

    private String endPage(Repair repair, String how, Model model) {
        List<Finding> its = repairs.findingsOf(repair);
        model.addAttribute("repair", repair);
        model.addAttribute("its", its);
        model.addAttribute("how", how);
        model.addAttribute("holds", its.stream().anyMatch(each -> each.open() && each.stopsUse()));
        return "repairs/end";
    }

    @PostMapping("/repairs/{id}/done")
    String done(
            @PathVariable long id,
            @ModelAttribute("form") EndForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        Repair repair = repairs.repair(id);
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    repairs.done(id, form.opened(), form.done(me), me);
                    flash.addFlashAttribute("done", "repairs.isDone");
                    return "redirect:/pumps/" + repair.unitId();
                },
                () -> endPage(repairs.repair(id), "done", model));
    }

    @GetMapping("/repairs/{id}/give-up")
    String givingUp(@PathVariable long id, Model model) {
        Repair repair = repairs.repair(id);
        model.addAttribute("form", EndForm.of(repair));
        return endPage(repair, "giveUp", model);
    }

    @PostMapping("/repairs/{id}/give-up")
    String giveUp(
            @PathVariable long id,
            @ModelAttribute("form") EndForm form,
            BindingResult errors,
            Model model,
            Person me,
            HttpServletResponse response,
            RedirectAttributes flash) {
        repairs.repair(id);
        return FormAnswer.of(
                errors,
                model,
                response,
                () -> {
                    repairs.giveUp(id, form.opened(), Typed.text(form.why()), me);
                    flash.addFlashAttribute("done", "repairs.isGivenUp");
                    return "redirect:/repairs/" + id;
                },
                () -> endPage(repairs.repair(id), "giveUp", model));
    }
}
