package freshet.notices;

/** Mail was owed that is to go out as soon as the transaction is through. */
record MailWaits() {}
