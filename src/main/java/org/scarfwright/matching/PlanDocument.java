package org.scarfwright.matching;

import java.math.BigInteger;
import org.scarfwright.measure.Angle;
import org.scarfwright.measure.Length;
import org.scarfwright.measure.Volume;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

/**
 * A plan as text that is kept. Lengths are whole micrometres, angles thousandths of a degree, volumes whole cubic micrometres as
 * digits in quotes, because they outgrow what other programs read as a number. The form is the database's own and not the API's.
 */
final class PlanDocument {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .addModule(new SimpleModule()
                    .addSerializer(Length.class, new LengthOut())
                    .addDeserializer(Length.class, new LengthIn())
                    .addSerializer(Angle.class, new AngleOut())
                    .addDeserializer(Angle.class, new AngleIn())
                    .addSerializer(Volume.class, new VolumeOut())
                    .addDeserializer(Volume.class, new VolumeIn()))
            // A field nobody reads would be a plan that is read by halves.
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    private PlanDocument() {}

    static String write(Plan plan) {
        return MAPPER.writeValueAsString(plan);
    }

    static Plan read(String document) {
        return MAPPER.readValue(document, Plan.class);
    }

    private static final class LengthOut extends ValueSerializer<Length> {
        @Override
        public void serialize(Length value, JsonGenerator out, SerializationContext context) {
            out.writeNumber(value.um());
        }
    }

    private static final class LengthIn extends ValueDeserializer<Length> {
        @Override
        public Length deserialize(JsonParser in, DeserializationContext context) {
            return Length.ofUm(in.getLongValue());
        }
    }

    private static final class AngleOut extends ValueSerializer<Angle> {
        @Override
        public void serialize(Angle value, JsonGenerator out, SerializationContext context) {
            out.writeNumber(value.millidegrees());
        }
    }

    private static final class AngleIn extends ValueDeserializer<Angle> {
        @Override
        public Angle deserialize(JsonParser in, DeserializationContext context) {
            return new Angle(in.getIntValue());
        }
    }

    private static final class VolumeOut extends ValueSerializer<Volume> {
        @Override
        public void serialize(Volume value, JsonGenerator out, SerializationContext context) {
            out.writeString(value.um3().toString());
        }
    }

    private static final class VolumeIn extends ValueDeserializer<Volume> {
        @Override
        public Volume deserialize(JsonParser in, DeserializationContext context) {
            return new Volume(new BigInteger(in.getString()));
        }
    }
}
