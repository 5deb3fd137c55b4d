package freshet.photos;

import freshet.people.Refused;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.multipart.MultipartRequest;
import org.springframework.web.util.WebUtils;

/** A file that came with a form, and the field it was chosen at; it is read only when its size is fit to be read. */
public record SentPhoto(String field, MultipartFile file) {

    /** The files chosen in fields whose name begins so; a field that was left empty sends none. */
    public static List<SentPhoto> in(HttpServletRequest request, String prefix) {
        List<SentPhoto> sent = new ArrayList<>();
        MultipartRequest parts = WebUtils.getNativeRequest(request, MultipartRequest.class);
        if (parts != null) {
            parts.getMultiFileMap().forEach((field, files) -> {
                if (field.startsWith(prefix)) {
                    files.stream().filter(SentPhoto::chosen).forEach(file -> sent.add(new SentPhoto(field, file)));
                }
            });
        }
        return sent;
    }

    /** The file chosen at this field, if one was. */
    public static @Nullable SentPhoto at(HttpServletRequest request, String field) {
        return in(request, field).stream()
                .filter(sent -> sent.field().equals(field))
                .findFirst()
                .orElse(null);
    }

    private static boolean chosen(MultipartFile file) {
        return !file.isEmpty()
                || file.getOriginalFilename() != null
                        && !file.getOriginalFilename().isBlank();
    }

    byte[] bytes() {
        if (file.getSize() > Photos.MOST_BYTES) {
            throw Refused.because(field, "photos.tooLarge", Photos.MOST_MEGABYTES, file.getSize() >> 20);
        }
        try {
            return file.getBytes();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
