package freshet.tags;

import org.jspecify.annotations.Nullable;

/** What one label says: the tag, its check character, what it hangs on, and the address that its code opens. */
public record Label(
        String tag, char check, String modelName, @Nullable String serial, String address) {

    static Label of(String tag, String modelName, @Nullable String serial, String base) {
        return new Label(tag, CheckCharacter.of(tag), modelName, serial, base + "/t/" + tag);
    }

    public QrCode code() {
        return QrCode.of(address);
    }

    /** Long tags are set smaller, on two lines where they must. */
    public boolean isLong() {
        return tag.length() > 7;
    }
}
