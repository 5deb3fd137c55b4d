package freshet.people;

import java.util.Locale;

/** A language in which all pages and mails are there. */
public enum Language {
    EN(Locale.ENGLISH),
    /** As in the Americas, where numbers have a decimal point as in English, so that what is typed means the same in both. */
    ES(new Locale("es", "US"));

    private final Locale locale;

    Language(Locale locale) {
        this.locale = locale;
    }

    public Locale locale() {
        return locale;
    }

    static Language of(Locale locale) {
        return locale.getLanguage().equals("es") ? ES : EN;
    }
}
