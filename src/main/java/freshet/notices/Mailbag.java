package freshet.notices;

import java.util.List;

/**
 * How mail goes out and what became of the latest mails, those that wait first: whether a server is set up and its name, the address
 * that mail comes from, and whether any owner would be told of danger.
 */
public record Mailbag(boolean server, String serverName, String from, boolean dangerReachesAnOwner, List<Mail> mails) {

    public long waiting() {
        return mails.stream().filter(Mail::waiting).count();
    }

    /** Of those that wait, how many the server did not take. */
    public long troubled() {
        return mails.stream()
                .filter(mail -> mail.waiting() && mail.trouble() != null)
                .count();
    }
}
