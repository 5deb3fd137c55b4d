package freshet.notices;

import freshet.people.Refused;
import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;

/** Refuses choices that do not fit together, and what is no address. */
final class ChoiceChecks {

    /** Longest wait for late work that an owner can choose. */
    static final int MOST_DAYS = 365;

    private ChoiceChecks() {}

    static void check(ChoicesDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        boolean digest = draft.rhythm() != Rhythm.NONE;
        times(draft, digest, wrongs);
        if (digest && !draft.everySite() && draft.siteIds().isEmpty()) {
            wrongs.add(Refused.Wrong.at("siteIds", "notices.siteIds.choose"));
        }
        if (draft.overdueDays() < 0 || draft.overdueDays() > MOST_DAYS) {
            wrongs.add(Refused.Wrong.at("overdueDays", "notices.overdueDays.range", MOST_DAYS));
        }
        Refused.ifAny(wrongs);
    }

    private static void times(ChoicesDraft draft, boolean digest, List<Refused.Wrong> wrongs) {
        LocalTime from = draft.quietFrom();
        LocalTime to = draft.quietTo();
        if (draft.sendHour() < 0 || draft.sendHour() > 23) {
            wrongs.add(Refused.Wrong.at("sendHour", "notices.sendHour.choose"));
        } else if (from == null || to == null) {
            if (from != null || to != null) {
                wrongs.add(Refused.Wrong.at(from == null ? "quietFrom" : "quietTo", "notices.quiet.both"));
            }
        } else if (from.equals(to)) {
            wrongs.add(Refused.Wrong.at("quietTo", "notices.quiet.same"));
        } else if (digest && new QuietHours(from, to).at(LocalTime.of(draft.sendHour(), 0))) {
            wrongs.add(Refused.Wrong.at("sendHour", "notices.sendHour.quiet"));
        }
    }

    /** The one mail address that was typed, without blanks around it. */
    static String address(String typed) {
        String address = typed.strip();
        try {
            InternetAddress parsed = new InternetAddress(address, true);
            if (address.matches("[^\\s@<>]+@[^\\s@<>]+") && parsed.getAddress().equals(address)) {
                return address;
            }
        } catch (AddressException notOne) {
            // said below
        }
        throw Refused.because("address", "notices.address.shape");
    }
}
