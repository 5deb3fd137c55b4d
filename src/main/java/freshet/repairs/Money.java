package freshet.repairs;

import java.math.BigDecimal;
import java.text.NumberFormat;
import java.util.Currency;
import java.util.Locale;

/** How amounts are said to one reader: in the one currency that this install reckons in. */
public record Money(Currency currency, Locale locale) {

    public String text(BigDecimal amount) {
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        format.setCurrency(currency);
        format.setMinimumFractionDigits(2);
        format.setMaximumFractionDigits(2);
        return format.format(amount);
    }

    /** What stands beside a field. */
    public String code() {
        return currency.getCurrencyCode();
    }
}
