package freshet.api;

import freshet.reliability.Interval;
import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.ser.std.StdSerializer;

/** Requests and answers as JSON: each name once, intervals as [lower, upper], and null for what is no finite number. */
final class Json {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .addModule(new SimpleModule()
                    .addSerializer(Interval.class, new Limits())
                    .addSerializer(Double.class, new Numbers())
                    .addSerializer(Double.TYPE, new Numbers()))
            .build();

    private Json() {}

    static byte[] write(Object answer) {
        return MAPPER.writeValueAsBytes(answer);
    }

    /** @throws ResponseStatusException 400 when this is no JSON */
    static JsonNode read(byte[] body) {
        JsonNode json;
        try {
            json = MAPPER.readTree(body);
        } catch (JacksonException malformed) {
            TokenStreamLocation where = malformed.getLocation();
            throw malformed(
                    where == null
                            ? ""
                            : " It stops being so in line " + where.getLineNr() + ", column " + where.getColumnNr()
                                    + ".");
        }
        if (json.isMissingNode()) {
            throw malformed(" It is empty.");
        }
        return json;
    }

    private static ResponseStatusException malformed(String where) {
        return new ResponseStatusException(
                HttpStatus.BAD_REQUEST, "The body is no well-formed JSON with each name once." + where);
    }

    private static final class Limits extends StdSerializer<Interval> {

        Limits() {
            super(Interval.class);
        }

        @Override
        public void serialize(Interval interval, JsonGenerator out, SerializationContext context) {
            out.writeStartArray();
            out.writePOJO(interval.lower());
            out.writePOJO(interval.upper());
            out.writeEndArray();
        }
    }

    private static final class Numbers extends StdSerializer<Double> {

        Numbers() {
            super(Double.class);
        }

        @Override
        public void serialize(Double number, JsonGenerator out, SerializationContext context) {
            if (Double.isFinite(number)) {
                out.writeNumber((double) number);
            } else {
                out.writeNull();
            }
        }
    }
}
