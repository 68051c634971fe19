/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Picture;
import org.faultwright.procedure.PictureFile;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Proof;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.StoredEnergy;

/** What steps refer to by name. */
final class DeclarationJson {
    private DeclarationJson() {
    }

    private static Json start(Name name, String title) {
        return new Json().put("id", name.text()).putText("title", Optional.of(title));
    }

    static Json condition(Condition condition) {
        Json json = start(condition.name(), condition.title()).putNames("values", condition.values())
                .putNames("liveWhen", condition.live()).putNames("chargedWhen", condition.charged())
                .putAll("becomes", condition.becomes(), becomes -> new Json().put("value", becomes.value().text())
                        .put("when", StepJson.setting(becomes.when())))
                .put("proved", condition.proved().map(DeclarationJson::proof))
                .putText("starts", condition.starts().map(Name::text)
                        .or(() -> condition.values().stream().map(Name::text).findFirst()))
                .putText("ends", condition.ends().map(Name::text));
        return condition.mayChangeLive() ? json.put("mayChangeLive", true) : json;
    }

    private static Json proof(Proof proof) {
        return new Json().putNames("at", proof.points()).put("limit", proof.limit()
                .map(limit -> QuantityJson.of(limit.value(), Optional.of(QuantityKind.DC_VOLTAGE))));
    }

    static Json instrument(Instrument instrument) {
        return start(instrument.name(), instrument.title())
                .putAll("ranges", instrument.ranges(), range -> range(range.value()))
                .put("rated", instrument.rated().map(rated -> QuantityJson.of(rated.value())))
                .putNumber("category", instrument.category())
                .put("validAt", instrument.validAt().map(limit -> QuantityJson.of(limit.value(),
                        Optional.of(QuantityKind.TEMPERATURE))))
                .put("calibrationEvery", instrument.calibrationEvery().map(every -> QuantityJson.of(every.value())))
                .putText("calibrationDue", instrument.calibrationDue().map(due -> due.value().toString()));
    }

    private static Json range(MeterRange range) {
        return new Json().put("quantity", range.kind().words())
                .putText("sensor", Optional.of(range.sensor()))
                .put("from", range.from().map(QuantityJson::of)).put("upTo", QuantityJson.of(range.upTo()))
                .put("resolution", QuantityJson.of(range.resolution())).put("accuracy", accuracy(range.accuracy()))
                .put("input", range.input().map(QuantityJson::of))
                .put("inputCapacitance", range.inputCapacitance().map(QuantityJson::of))
                .put("burden", range.burden().map(QuantityJson::of))
                .put("lowestFrequency", range.lowestFrequency().map(QuantityJson::of))
                .put("highestFrequency", range.highestFrequency().map(QuantityJson::of))
                .putText("response", range.kind().isAlternating()
                        ? Optional.of(range.trueRms() ? "true rms" : "average") : Optional.empty());
    }

    private static Json accuracy(Accuracy accuracy) {
        Json json = new Json();
        share(json, "percentOfReading", accuracy.percentOfReading());
        share(json, "percentOfRange", accuracy.percentOfRange());
        share(json, "digits", accuracy.digits());
        return json.put("amount", accuracy.amount().map(QuantityJson::of));
    }

    private static void share(Json json, String key, Exact amount) {
        if (amount.signum() != 0) {
            json.put(key, amount.toString());
        }
    }

    static Json point(Point point) {
        return start(point.name(), point.title())
                .put("carries", point.carries().map(carried -> new Json()
                        .put("upTo", QuantityJson.of(carried.upTo().value())).put("quantity", carried.kind().words())
                        .put("lowestFrequency", carried.frequency().map(stated -> QuantityJson.of(stated.lowest().value())))
                        .put("highestFrequency", carried.frequency().map(stated -> QuantityJson.of(stated.highest().value())))
                        .putText("waveform", carried.waveform().map(form -> form.value().word()))))
                .put("sourceResistance", point.sourceResistance().map(Written::value).map(QuantityJson::of))
                .put("stores", point.stores().map(Written::value).map(QuantityJson::of))
                .put("drainedBy", point.drainedBy().map(Written::value).map(QuantityJson::of))
                .put("storedEnergy", point.storedEnergy().map(DeclarationJson::storedEnergy))
                .putAll("pictures", point.pictures(), DeclarationJson::picture)
                .putNumber("category", point.category())
                .put("isolated", point.isolated().map(DeclarationJson::isolation))
                .putTexts("hazards", point.hazards().stream().map(Written::value).map(Hazard::word).toList());
    }

    private static Json storedEnergy(StoredEnergy stored) {
        return new Json().put("words", stored.inWords()).put("energy", QuantityJson.of(stored.energy())).put("charge", QuantityJson.of(stored.charge()))
                .put("safeVoltage", QuantityJson.of(StoredEnergy.SAFE))
                .put("timeToSafe", stored.timeTo(StoredEnergy.SAFE.base()).map(QuantityJson::of));
    }

    private static Json isolation(Isolation isolated) {
        return new Json().putAll("when", isolated.when(), StepJson::setting);
    }

    /** Without a digest where the file cannot be shown. */
    static Json picture(Picture picture) {
        PictureFile file = PictureFile.of(picture);
        Json json = new Json().put("file", picture.file().value()).putText("shows", Optional.of(picture.shows()));
        return file.problem().isEmpty() ? json.put("digest", "sha256:" + file.digest()) : json;
    }

    static Json part(Part part) {
        return start(part.name(), part.title())
                .put("isolated", part.isolated().map(DeclarationJson::isolation))
                .put("drainsBy", part.drains().map(Written::value).map(QuantityJson::of))
                .putAll("pictures", part.pictures(), DeclarationJson::picture)
                .putText("number", part.number().map(Written::value)).putNumber("stock", part.stock())
                .put("rated", part.rated().map(Written::value).map(QuantityJson::of))
                .putTexts("hazards", part.hazards().stream().map(Written::value).map(Hazard::word).toList());
    }

    static Json indicator(Indicator indicator) {
        return start(indicator.name(), indicator.title())
                .putAll("codes", indicator.codes(), code -> new Json().put("pattern", code.pattern().text())
                        .put("meaning", code.meaning()))
                .putAll("pictures", indicator.pictures(), DeclarationJson::picture)
                .put("source", indicator.source().map(StepJson::source));
    }

    static Json note(Note note) {
        return lapses(note, new Json().put("id", note.name().text()).put("word", note.word().name().toLowerCase(Locale.ROOT))
                .putTexts("covers", note.covers().stream().map(Written::value).map(Hazard::word).toList())
                .put("hazard", note.hazard()).put("consequence", note.consequence()).put("avoid", note.avoid()));
    }

    /** When it is due again after it was read. */
    private static Json lapses(Note note, Json json) {
        List<Json> lapses = new ArrayList<>();
        note.covers().stream().map(Written::value).distinct().forEach(hazard -> {
            if (Walk.lapsesLive(hazard)) {
                lapses.add(new Json().put("when", "live").put("hazard", hazard.word()));
            }
            if (Walk.lapsesCharged(hazard)) {
                lapses.add(new Json().put("when", "charged").put("hazard", hazard.word()));
            }
        });
        return json.putAll("lapses", lapses, one -> one);
    }
}
