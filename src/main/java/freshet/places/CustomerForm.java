package freshet.places;

import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed about a customer. */
record CustomerForm(
        @Nullable String name,
        @Nullable String phone,
        @Nullable String note,
        @Nullable Integer version) {

    static CustomerForm of(Customer customer) {
        return new CustomerForm(customer.name(), customer.phone(), customer.note(), customer.version());
    }

    CustomerDraft draft() {
        return new CustomerDraft(Typed.textOrEmpty(name), Typed.text(phone), Typed.text(note));
    }
}
