//! Writing a job as a new file.

use crate::keys::{self, Shape};
use crate::model::*;
use crate::number::show;
use crate::quantity::{Dimension, Quantity, Source};
use crate::survey::write_survey;
use crate::words::Word;
use std::fmt::Write as _;

/// A text as a TOML string.
pub(crate) fn quote(text: &str) -> String {
    toml_edit::Value::from(text).to_string()
}

/// Collects one table at a time; an empty table is not written.
pub(crate) struct Out {
    pub text: String,
    /// Path of the table in hand, for the defaults of its keys.
    pub path: &'static str,
    pub header: Option<String>,
}

impl Out {
    pub(crate) fn table(&mut self, path: &'static str) -> &mut Self {
        (self.path, self.header) = (path, Some(format!("[{path}]")));
        self
    }

    pub(crate) fn list(&mut self, path: &'static str) -> &mut Self {
        (self.path, self.header) = (path, None);
        let _ = write!(self.text, "\n[[{path}]]\n");
        self
    }

    pub(crate) fn line(&mut self, name: &str, value: &str) {
        if let Some(header) = self.header.take() {
            let _ = write!(self.text, "\n{header}\n");
        }
        let _ = writeln!(self.text, "{name} = {value}");
    }

    pub(crate) fn text(&mut self, name: &str, text: Option<&str>) -> &mut Self {
        if let Some(text) = text {
            self.line(name, &quote(text));
        }
        self
    }

    pub(crate) fn word<T: Word>(&mut self, name: &str, choice: Option<T>) -> &mut Self {
        self.text(name, choice.map(Word::word))
    }

    pub(crate) fn texts(&mut self, name: &str, texts: &[String]) -> &mut Self {
        if !texts.is_empty() {
            let texts: Vec<String> = texts.iter().map(|text| quote(text)).collect();
            self.line(name, &format!("[{}]", texts.join(", ")));
        }
        self
    }

    pub(crate) fn flag(&mut self, name: &str, flag: Option<bool>) -> &mut Self {
        if let Some(flag) = flag {
            self.line(name, if flag { "true" } else { "false" });
        }
        self
    }

    pub(crate) fn count(&mut self, name: &str, count: Option<u8>) -> &mut Self {
        if let Some(count) = count {
            self.line(name, &count.to_string());
        }
        self
    }

    pub(crate) fn number(&mut self, name: &str, number: f64) -> &mut Self {
        self.line(name, &show(number, 12));
        self
    }

    pub(crate) fn quantity(&mut self, name: &str, quantity: Option<&Quantity>) -> &mut Self {
        if let Some(quantity) = quantity {
            let text = self.stated(name, quantity, None);
            self.line(name, &text);
        }
        self
    }

    /// A quantity as it was stated; `by` is a source that is written beside it.
    pub(crate) fn stated(&self, name: &str, quantity: &Quantity, by: Option<Source>) -> String {
        let key = keys::find(&if self.path.is_empty() { name.to_owned() } else { format!("{}.{name}", self.path) });
        let measure = key.and_then(|key| match key.shape {
            Shape::Quantity(measure) | Shape::Runs(measure) => Some(measure),
            _ => None,
        });
        let dimension = measure.map_or(Dimension::Ratio, |m| m.dimension);
        let mut text = if quantity.text.is_empty() { spelled(quantity, dimension) } else { quantity.text.clone() };
        if dimension == Dimension::Ratio
            && text.parse::<f64>().is_ok()
            && quantity.source == measure.and_then(|m| m.source)
        {
            return text;
        }
        let default = by.or(measure.and_then(|m| m.source));
        if let Some(source) = quantity.source
            && Some(source) != default
            && !text.contains('(')
        {
            let _ = write!(text, " ({})", source.word());
        }
        quote(&text)
    }
}

/// A quantity that was never written, as a range in a plain unit.
fn spelled(quantity: &Quantity, dimension: Dimension) -> String {
    let (factor, unit) = match dimension {
        Dimension::Rotation => (60.0, "rpm"),
        Dimension::FuelFlow => (3600.0, "kg/h"),
        Dimension::Duration => (1.0 / 86_400.0, "days"),
        other => (1.0, other.si_name()),
    };
    let (low, high) = (show(quantity.low * factor, 6), show(quantity.high * factor, 6));
    let text = if low == high { format!("{low} {unit} ± 0") } else { format!("{low}..{high} {unit}") };
    text.replace("  ", " ").trim().to_owned()
}

impl Job {
    /// Writes the job as a new file: what was stated, as it was stated. Read again it gives the same job.
    #[must_use]
    pub fn to_toml(&self) -> String {
        let mut out = Out { text: String::new(), path: "", header: None };
        out.text("title", Some(self.title.as_str()).filter(|t| !t.is_empty())).word("duty", self.duty);
        self.write_call(&mut out);
        self.write_boat(&mut out);
        let place = &self.place;
        out.table("place")
            .text("water", place.fresh.map(|fresh| if fresh { "fresh" } else { "sea" }))
            .quantity("water_temperature", place.water_temperature.as_ref())
            .quantity("depth", place.depth.as_ref())
            .quantity("air_temperature", place.air_temperature.as_ref())
            .quantity("altitude", place.altitude.as_ref());
        self.write_engine(&mut out);
        let drive = &self.drive;
        out.table("drive")
            .quantity("reduction", drive.reduction.as_ref())
            .quantity("reduction_astern", drive.reduction_astern.as_ref())
            .quantity("shaft_angle", drive.shaft_angle.as_ref())
            .word("engine_turns", drive.engine_turns)
            .word("gearbox_turns", drive.gearbox_turns)
            .word("shaft_turns", drive.shaft_turns)
            .quantity("gearbox_power", drive.gearbox_power.as_ref())
            .quantity("gearbox_speed", drive.gearbox_speed.as_ref())
            .quantity("gearbox_torque", drive.gearbox_torque.as_ref())
            .quantity("gearbox_output_torque", drive.gearbox_output_torque.as_ref())
            .word("freewheel", drive.freewheel);
        if !drive.other_reductions.is_empty() {
            let numbers: Vec<String> = drive.other_reductions.iter().map(|n| show(*n, 12)).collect();
            out.line("other_reductions", &format!("[{}]", numbers.join(", ")));
        }
        propeller(&self.propeller, out.table("propeller"));
        crate::fit::write::write(self, &mut out);
        for (side, own) in [("port", &self.port), ("starboard", &self.starboard)] {
            out.table(side).quantity("reduction", own.reduction.as_ref());
            if let Some(other) = &own.propeller {
                propeller(other, out.table(if side == "port" { "port.propeller" } else { "starboard.propeller" }));
            }
        }
        for one in &self.readings {
            let mass = self.boat.displacement.as_ref().map_or(Some(Source::Brochure), |q| q.source);
            reading(one, mass, &mut out);
        }
        if let Some(survey) = &self.survey {
            write_survey(survey, &mut out);
        }
        out.text.trim_start().to_owned()
    }

    fn write_call(&self, out: &mut Out) {
        let call = &self.call;
        out.table("call").text("complaint", call.complaint.as_deref()).text("since", call.since.as_deref());
        if !call.changed.is_empty() {
            let texts: Vec<String> = call.changed.iter().map(|text| quote(text)).collect();
            out.line("changed", &format!("[{}]", texts.join(", ")));
        }
        out.word("onset", call.onset);
        if !call.symptoms.is_empty() {
            let words: Vec<String> = call.symptoms.iter().map(|symptom| quote(symptom.word())).collect();
            out.line("symptoms", &format!("[{}]", words.join(", ")));
        }
        out.text("wants", call.wants.as_deref()).text("notes", call.notes.as_deref());
    }

    fn write_boat(&self, out: &mut Out) {
        let boat = &self.boat;
        out.table("boat")
            .word("kind", boat.kind)
            .quantity("length_overall", boat.length_overall.as_ref())
            .quantity("length_waterline", boat.length_waterline.as_ref())
            .quantity("beam", boat.beam.as_ref())
            .quantity("beam_waterline", boat.beam_waterline.as_ref())
            .quantity("beam_chine", boat.beam_chine.as_ref())
            .quantity("hull_draught", boat.hull_draught.as_ref())
            .quantity("displacement", boat.displacement.as_ref())
            .quantity("loaded_displacement", boat.loaded_displacement.as_ref())
            .quantity("deadrise", boat.deadrise.as_ref())
            .quantity("centre_of_gravity", boat.centre_of_gravity.as_ref())
            .quantity("prismatic_coefficient", boat.prismatic_coefficient.as_ref())
            .quantity("block_coefficient", boat.block_coefficient.as_ref())
            .quantity("half_entrance_angle", boat.half_entrance_angle.as_ref())
            .count("screws", boat.screws)
            .word("arrangement", boat.arrangement)
            .quantity("since_scrub", boat.since_scrub.as_ref())
            .word("growth", boat.growth);
        for (speed, force) in &boat.resistance {
            out.list("boat.resistance").quantity("speed", Some(speed)).quantity("force", Some(force));
        }
    }

    fn write_engine(&self, out: &mut Out) {
        let engine = &self.engine;
        out.table("engine")
            .text("model", engine.model.as_deref())
            .word("kind", engine.kind)
            .quantity("rated_power", engine.rated_power.as_ref())
            .word("rated_at", engine.rated_at)
            .quantity("rated_speed", engine.rated_speed.as_ref());
        if let Some((low, high)) = engine.full_throttle_band {
            out.line("full_throttle_band", &format!("\"{}..{} rpm\"", show(low * 60.0, 6), show(high * 60.0, 6)));
        }
        out.quantity("no_load_speed", engine.no_load_speed.as_ref())
            .word("rating", engine.rating)
            .count("cylinders", engine.cylinders)
            .flag("two_stroke", engine.two_stroke);
        for (speed, power) in &engine.curve {
            out.list("engine.curve").quantity("speed", Some(speed)).quantity("power", Some(power));
        }
    }
}

fn propeller(p: &Propeller, out: &mut Out) {
    out.quantity("diameter", p.diameter.as_ref())
        .quantity("pitch", p.pitch.as_ref())
        .count("blades", p.blades)
        .word("hand", p.hand)
        .quantity("area_ratio", p.area_ratio.as_ref())
        .word("width", p.width)
        .word("section", p.section)
        .word("kind", p.kind)
        .word("cup", p.cup)
        .word("growth", p.growth)
        .quantity("immersion", p.immersion.as_ref())
        .quantity("largest_diameter", p.largest_diameter.as_ref())
        .quantity("rake", p.rake.as_ref())
        .quantity("skew", p.skew.as_ref())
        .quantity("hub_diameter", p.hub_diameter.as_ref())
        .quantity("hub_length", p.hub_length.as_ref())
        .quantity("mass", p.mass.as_ref())
        .word("class", p.class)
        .quantity("root_thickness", p.root_thickness.as_ref())
        .quantity("outer_thickness", p.outer_thickness.as_ref())
        .quantity("edge_thickness", p.edge_thickness.as_ref())
        .text("stamp", p.stamp.as_deref())
        .text("material", p.material.as_deref());
}

/// One `[[reading]]` block, beginning with an empty line.
pub(crate) fn reading_block(reading_: &Reading) -> String {
    let mut out = Out { text: String::new(), path: "", header: None };
    reading(reading_, None, &mut out);
    out.text
}

/// The source to write beside a value: one that is not the default, that the key beside can name, and that the value's
/// own text does not say already.
fn beside(quantity: &Quantity, default: Source, key: &str) -> Option<Source> {
    let source = quantity.source.filter(|s| *s != default && !quantity.text.contains('('))?;
    let Shape::Choice(words) = keys::find(key)?.shape else { return None };
    words.iter().any(|(word, _)| *word == source.word()).then_some(source)
}

/// `mass` is the source a mass in another state inherits when it has none of its own.
fn reading(r: &Reading, mass: Option<Source>, out: &mut Out) {
    out.list("reading").text("label", r.label.as_deref()).text("date", r.date.as_deref());
    out.word("side", r.side);
    out.quantity("throttle", r.throttle.as_ref());
    out.flag("full_throttle", r.full_throttle.then_some(true)).flag("governed", r.governed);
    if let Some(turns) = &r.engine_speed {
        let by = beside(turns, Source::Dashboard, "reading.by");
        let text = out.stated("engine_speed", turns, by);
        out.line("engine_speed", &text);
        out.word("by", by);
    }
    out.quantity("shaft_speed", r.shaft_speed.as_ref());
    let runs = if r.speeds.is_empty() { r.speed.as_slice() } else { r.speeds.as_slice() };
    if let [first, rest @ ..] = runs {
        let by = beside(first, Source::Gps, "reading.speed_by")
            .filter(|by| rest.iter().all(|run| run.source == Some(*by) && !run.text.contains('(')));
        let texts: Vec<String> = runs.iter().map(|run| out.stated("speed", run, by)).collect();
        let text = if rest.is_empty() { texts.concat() } else { format!("[{}]", texts.join(", ")) };
        out.line("speed", &text);
        out.word("speed_by", by);
    }
    out.quantity("fuel", r.fuel.as_ref()).quantity("depth", r.depth.as_ref());
    out.quantity("exhaust_temperature", r.exhaust_temperature.as_ref())
        .quantity("boost", r.boost.as_ref())
        .quantity("engine_load", r.engine_load.as_ref())
        .word("smoke", r.smoke)
        .text("wind", r.wind.as_deref())
        .text("load", r.load.as_deref())
        .text("notes", r.notes.as_deref());
    let state = &r.state;
    out.table("reading.state");
    if let Some(displacement) = &state.displacement {
        let text = out.stated("displacement", displacement, mass);
        out.line("displacement", &text);
    }
    out.quantity("since_scrub", state.since_scrub.as_ref())
        .word("growth", state.growth)
        .quantity("reduction", state.reduction.as_ref())
        .word("swapped", state.swapped);
    if let Some(other) = &state.propeller {
        propeller(other, out.table("reading.state.propeller"));
    }
}
