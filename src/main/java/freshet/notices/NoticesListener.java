package freshet.notices;

import freshet.findings.Finding;
import freshet.findings.FindingOpened;
import freshet.findings.FindingRaised;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.context.event.EventListener;
import org.springframework.core.task.TaskExecutor;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionalEventListener;

/**
 * Owes the mail about a danger in the transaction that writes it down, and has it sent when that is through, by another thread. Should
 * this machine fall in between, the job that sends finds it.
 */
@Component
class NoticesListener {

    private final Notices notices;
    private final TaskExecutor threads;

    NoticesListener(Notices notices, @Qualifier("applicationTaskExecutor") TaskExecutor threads) {
        this.notices = notices;
        this.threads = threads;
    }

    @EventListener
    void on(FindingOpened opened) {
        if (opened.severity() >= Finding.DANGER) {
            notices.tellDanger(opened.findingId());
        }
    }

    @EventListener
    void on(FindingRaised raised) {
        if (raised.severity() >= Finding.DANGER) {
            notices.tellDanger(raised.findingId());
        }
    }

    @TransactionalEventListener
    void on(MailWaits waits) {
        threads.execute(notices::sendAll);
    }
}
