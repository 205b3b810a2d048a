//! From checked fields to the typed job.

use crate::assume;
use crate::fit;
use crate::keys;
use crate::model::*;
use crate::problem::Problem;
use crate::quantity::{Quantity, Source, fuel_density};
use crate::read::Fields;
use crate::spread::{BOTH_WAYS, DIESEL_DASHBOARD, Spread};
use crate::stamp;
use crate::stated::{self, Stated};
use crate::survey;
use crate::value::Node;
use crate::words::Word;
use std::ops::Range;

impl Fields {
    pub(crate) fn node(&self, name: &str) -> Option<&Node> {
        self.values.iter().find(|(key, ..)| *key == name).map(|(.., node)| node)
    }
    /// Where a value stands.
    pub(crate) fn at(&self, name: &str) -> Range<usize> {
        self.values.iter().find(|(key, ..)| *key == name).map_or(0..0, |(_, at, _)| at.clone())
    }
    pub(crate) fn text(&self, name: &str) -> Option<String> {
        if let Some(Node::Text(text)) = self.node(name) { Some(text.clone()) } else { None }
    }
    pub(crate) fn flag(&self, name: &str) -> Option<bool> {
        if let Some(Node::Flag(flag)) = self.node(name) { Some(*flag) } else { None }
    }
    pub(crate) fn count(&self, name: &str) -> Option<u8> {
        if let Some(Node::Count(count)) = self.node(name) { Some(*count) } else { None }
    }
    pub(crate) fn choice<T: Word>(&self, name: &str) -> Option<T> {
        if let Some(Node::Choice(at)) = self.node(name) { T::ALL.get(*at).copied() } else { None }
    }
    fn choices<T: Word>(&self, name: &str) -> Vec<T> {
        match self.node(name) {
            Some(Node::Choices(list)) => list.iter().filter_map(|at| T::ALL.get(*at).copied()).collect(),
            _ => Vec::new(),
        }
    }
    pub(crate) fn stated(&self, name: &str) -> Option<&Stated> {
        if let Some(Node::Quantity(stated)) = self.node(name) { Some(stated) } else { None }
    }
    pub(crate) fn quantity(&self, name: &str) -> Option<Quantity> {
        self.stated(name).map(|stated| stated.quantity.clone())
    }
    pub(crate) fn tables(&self, name: &'static str) -> impl Iterator<Item = &Fields> {
        self.tables.iter().filter(move |(key, _)| *key == name).map(|(_, fields)| fields)
    }
    pub(crate) fn table(&self, name: &'static str) -> Fields {
        self.tables(name).next().cloned().unwrap_or_default()
    }
}

pub(crate) fn job(root: &Fields, problems: &mut Vec<Problem>) -> Job {
    let call = root.table("call");
    let engine = engine(&root.table("engine"), problems);
    let boat = boat(&root.table("boat"), problems);
    let drive = root.table("drive");
    let survey = root.tables("survey").next().and_then(|f| survey::assembled(f, problems));
    let readings = root.tables("reading").map(|fields| reading(fields, &engine, &boat, problems)).collect();
    let mut job = Job {
        title: root.text("title").unwrap_or_default(),
        duty: root.choice("duty"),
        call: Call {
            complaint: call.text("complaint"),
            since: call.text("since"),
            changed: if let Some(Node::Texts(texts)) = call.node("changed") { texts.clone() } else { Vec::new() },
            onset: call.choice("onset"),
            symptoms: call.choices("symptoms"),
            wants: call.text("wants"),
            notes: call.text("notes"),
        },
        place: place(&root.table("place")),
        drive: Drive {
            reduction: drive.quantity("reduction"),
            reduction_astern: drive.quantity("reduction_astern"),
            shaft_angle: drive.quantity("shaft_angle"),
            engine_turns: drive.choice("engine_turns"),
            gearbox_turns: drive.choice("gearbox_turns"),
            shaft_turns: drive.choice("shaft_turns"),
            gearbox_power: drive.quantity("gearbox_power"),
            gearbox_speed: drive.quantity("gearbox_speed"),
            gearbox_torque: drive.quantity("gearbox_torque"),
            gearbox_output_torque: drive.quantity("gearbox_output_torque"),
            freewheel: drive.choice("freewheel"),
            other_reductions: if let Some(Node::Numbers(numbers)) = drive.node("other_reductions") {
                numbers.clone()
            } else {
                Vec::new()
            },
        },
        propeller: fitted(&root.table("propeller")),
        stern: fit::assemble::stern(&root.table("stern")),
        shaft: fit::assemble::shaft(&root.table("shaft")),
        under_sail: fit::assemble::under_sail(&root.table("under_sail")),
        fitting: fit::assemble::fitting(&root.table("fitting")),
        order: fit::assemble::order(&root.table("order")),
        receipt: fit::assemble::receipt(&root.table("receipt")),
        port: own(&root.table("port")),
        starboard: own(&root.table("starboard")),
        boat,
        engine,
        readings,
        survey,
    };
    let kind = assume::engine_kind(&job);
    job.readings.iter_mut().for_each(|reading| dashboard(reading, kind));
    job
}

/// A dashboard's engine speed without a spread of its own gets the wider one of a diesel's.
fn dashboard(reading: &mut Reading, kind: EngineKind) {
    let diesel = matches!(kind, EngineKind::NaturalDiesel | EngineKind::TurboDiesel);
    let Some(shown) = reading.engine_speed.as_mut().filter(|q| q.source == Some(Source::Dashboard) && !q.own_spread)
    else {
        return;
    };
    if diesel {
        (shown.low, shown.middle, shown.high) = Spread::Relative(DIESEL_DASHBOARD).band(shown.middle);
    }
}

fn own(f: &Fields) -> Own {
    Own { reduction: f.quantity("reduction"), propeller: f.tables("propeller").next().map(propeller) }
}

fn boat(f: &Fields, problems: &mut Vec<Problem>) -> Boat {
    let resistance = curve(f, "resistance", "speed", "force", 4, problems);
    Boat {
        kind: f.choice("kind"),
        length_overall: f.quantity("length_overall"),
        length_waterline: f.quantity("length_waterline"),
        beam: f.quantity("beam"),
        beam_waterline: f.quantity("beam_waterline"),
        beam_chine: f.quantity("beam_chine"),
        hull_draught: f.quantity("hull_draught"),
        displacement: f.quantity("displacement"),
        loaded_displacement: f.quantity("loaded_displacement"),
        deadrise: f.quantity("deadrise"),
        centre_of_gravity: f.quantity("centre_of_gravity"),
        prismatic_coefficient: f.quantity("prismatic_coefficient"),
        block_coefficient: f.quantity("block_coefficient"),
        half_entrance_angle: f.quantity("half_entrance_angle"),
        screws: f.count("screws"),
        arrangement: f.choice("arrangement"),
        since_scrub: f.quantity("since_scrub"),
        growth: f.choice("growth"),
        resistance,
    }
}

fn place(f: &Fields) -> Place {
    Place {
        fresh: if let Some(Node::Choice(at)) = f.node("water") { Some(*at == 1) } else { None },
        water_temperature: f.quantity("water_temperature"),
        depth: f.quantity("depth"),
        air_temperature: f.quantity("air_temperature"),
        altitude: f.quantity("altitude"),
    }
}

fn engine(f: &Fields, problems: &mut Vec<Problem>) -> Engine {
    let curve = curve(f, "curve", "speed", "power", 2, problems);
    Engine {
        model: f.text("model"),
        kind: f.choice("kind"),
        rated_power: f.quantity("rated_power"),
        rated_at: f.choice("rated_at"),
        rated_speed: f.quantity("rated_speed"),
        full_throttle_band: if let Some(Node::Band(low, high)) = f.node("full_throttle_band") {
            Some((*low, *high))
        } else {
            None
        },
        no_load_speed: f.quantity("no_load_speed"),
        rating: f.choice("rating"),
        cylinders: f.count("cylinders"),
        two_stroke: f.flag("two_stroke"),
        curve,
    }
}

/// Points of a curve: both values in each, enough of them, rising in the first.
fn curve(
    f: &Fields,
    name: &'static str,
    first: &str,
    second: &str,
    least: usize,
    problems: &mut Vec<Problem>,
) -> Vec<(Quantity, Quantity)> {
    let mut points: Vec<(Quantity, Quantity)> = Vec::new();
    let (mut blocks, mut span) = (0, 0..0);
    for fields in f.tables(name) {
        blocks += 1;
        span = fields.span.clone();
        let (a, b) = match (fields.quantity(first), fields.quantity(second)) {
            (Some(a), Some(b)) => (a, b),
            // A value that was refused has had its message.
            (a, _) => {
                let missing = if a.is_none() { first } else { second };
                if !fields.refused.contains(&missing) {
                    problems.push(
                        Problem::error(
                            "incomplete",
                            fields.span.clone(),
                            format!("a point of the curve without `{missing}`"),
                        )
                        .help(format!("each point has {first} and {second}")),
                    );
                }
                continue;
            }
        };
        if let Some((last, _)) = points.last()
            && a.middle <= last.middle
        {
            problems.push(
                Problem::error("not-rising", a.at.clone(), format!("the curve does not rise in {first} here"))
                    .help(format!("order the points by rising {first}, each once"))
                    .with(&last.at, "the point before"),
            );
        }
        points.push((a, b));
    }
    if (1..least).contains(&blocks) {
        problems.push(
            Problem::error("too-few", span, format!("a curve of {blocks} point{}", if blocks == 1 { "" } else { "s" }))
                .help(format!("give {least} points or more, or none")),
        );
    }
    points
}

/// The propeller fitted: what nobody stated of it, its stamp may say. Another state's, or that of one side, takes from this one
/// what it does not say itself.
fn fitted(f: &Fields) -> Propeller {
    let mut propeller = propeller(f);
    stamp::fill(&mut propeller, &f.at("stamp"));
    propeller
}

fn propeller(f: &Fields) -> Propeller {
    Propeller {
        diameter: f.quantity("diameter"),
        pitch: f.quantity("pitch"),
        blades: f.count("blades"),
        hand: f.choice("hand"),
        area_ratio: f.quantity("area_ratio"),
        width: f.choice("width"),
        section: f.choice("section"),
        kind: f.choice("kind"),
        cup: f.choice("cup"),
        growth: f.choice("growth"),
        immersion: f.quantity("immersion"),
        largest_diameter: f.quantity("largest_diameter"),
        rake: f.quantity("rake"),
        skew: f.quantity("skew"),
        hub_diameter: f.quantity("hub_diameter"),
        hub_length: f.quantity("hub_length"),
        mass: f.quantity("mass"),
        class: f.choice("class"),
        root_thickness: f.quantity("root_thickness"),
        outer_thickness: f.quantity("outer_thickness"),
        edge_thickness: f.quantity("edge_thickness"),
        stamp: f.text("stamp"),
        material: f.text("material"),
    }
}

fn reading(f: &Fields, engine: &Engine, boat: &Boat, problems: &mut Vec<Problem>) -> Reading {
    let state = f.table("state");
    let (speed, speeds) = match f.node("speed") {
        Some(Node::Runs(runs, at)) => {
            let runs: Vec<Quantity> = runs.iter().map(|run| run.quantity.clone()).collect();
            (mean(&runs, at.clone()), runs)
        }
        _ => (None, Vec::new()),
    };
    Reading {
        label: f.text("label"),
        side: f.choice("side"),
        throttle: f.quantity("throttle"),
        // A lever at its stop is a lever at its stop, however that was said.
        full_throttle: f
            .flag("full_throttle")
            .unwrap_or_else(|| f.quantity("throttle").is_some_and(|q| q.middle >= 0.995)),
        governed: f.flag("governed"),
        engine_speed: f.quantity("engine_speed"),
        shaft_speed: f.quantity("shaft_speed"),
        speed,
        speeds,
        fuel: f.stated("fuel").map(|stated| fuel(stated, engine.kind, problems)),
        depth: f.quantity("depth"),
        exhaust_temperature: f.quantity("exhaust_temperature"),
        boost: f.quantity("boost"),
        engine_load: f.quantity("engine_load"),
        smoke: f.choice("smoke"),
        wind: f.text("wind"),
        load: f.text("load"),
        date: f.text("date"),
        notes: f.text("notes"),
        state: State {
            displacement: state.stated("displacement").map(|stated| mass_then(stated, boat)),
            since_scrub: state.quantity("since_scrub"),
            growth: state.choice("growth"),
            propeller: state.tables("propeller").next().map(propeller),
            reduction: state.quantity("reduction"),
            swapped: state.choice("swapped"),
        },
    }
}

/// A mass in another state, without a source of its own, comes from where the boat's mass came from.
fn mass_then(stated: &Stated, boat: &Boat) -> Quantity {
    let inherited = boat.displacement.as_ref().map_or(Some(Source::Brochure), |q| q.source);
    let (Some(source), Some(measure)) = (inherited, keys::measure_of("displacement")) else {
        return stated.quantity.clone();
    };
    if stated.said_source {
        return stated.quantity.clone();
    }
    let again = stated::read(&stated.quantity.text, &keys::Measure { source: Some(source), ..measure }, "displacement");
    again
        .map_or_else(|_| stated.quantity.clone(), |again| Quantity { at: stated.quantity.at.clone(), ..again.quantity })
}

fn fuel(stated: &Stated, kind: Option<EngineKind>, problems: &mut Vec<Problem>) -> Quantity {
    let mut fuel = stated.quantity.clone();
    if stated.volume {
        fuel.scale(fuel_density(kind));
        if kind.is_none() {
            let message = "a volume of fuel, and the kind of engine is not said: taken as diesel, 0.84 kg/L";
            problems.push(Problem::doubt("fuel-kind", fuel.at.clone(), message).help("say kind in [engine]"));
        }
    }
    if kind == Some(EngineKind::Electric) {
        let message = "an electric motor with a fuel rate";
        problems.push(
            Problem::doubt("fuel-kind", fuel.at.clone(), message).help("leave fuel out, or look at kind in [engine]"),
        );
    }
    fuel
}

/// Mean over the directions, by the mean of means: neighbouring runs are averaged, then those averages, and so on to one.
///
/// For two runs it is the plain mean. For more, run alternately there and back, it also takes out a current that changes
/// evenly with time: weights 1 2 1, 1 3 3 1, ...
/// (The current correction of ship trials: G. Strasser et al., A verification of the ITTC/ISO speed/power trials analysis,
/// J. Mar. Sci. Technol. 20, 2015; abstract read, the weights from memory.)
/// Spread: satellite speeds both ways ± 0.1 kn; stated spreads of single runs are taken as independent; other defaults
/// (a log that reads 5 % high does so on every run) carry over whole.
fn mean(runs: &[Quantity], at: Range<usize>) -> Option<Quantity> {
    let first = runs.first()?;
    if runs.len() == 1 {
        return Some(Quantity { at, ..first.clone() });
    }
    let mut weights = vec![1.0];
    for _ in 1..runs.len() {
        let shifted = std::iter::once(0.0).chain(weights.iter().copied());
        weights = shifted
            .zip(weights.iter().copied().chain(std::iter::once(0.0)))
            .map(|(a, b): (f64, f64)| 0.5 * (a + b))
            .collect();
    }
    let sum = |of: &dyn Fn(&Quantity) -> f64| runs.iter().zip(&weights).map(|(run, w)| w * of(run)).sum::<f64>();
    let root = |of: &dyn Fn(&Quantity) -> f64| {
        runs.iter().zip(&weights).map(|(run, w)| (w * of(run)).powi(2)).sum::<f64>().sqrt()
    };
    let middle = sum(&|run| run.middle);
    let own = runs.iter().any(|run| run.own_spread);
    let (below, above) = if own {
        (root(&|run| run.middle - run.low), root(&|run| run.high - run.middle))
    } else if runs.iter().all(|run| run.source == Some(Source::Gps)) {
        (BOTH_WAYS, BOTH_WAYS)
    } else {
        (sum(&|run| run.middle - run.low), sum(&|run| run.high - run.middle))
    };
    Some(Quantity {
        low: (middle - below).max(0.0),
        middle,
        high: middle + above,
        source: first.source,
        own_spread: own,
        text: runs.iter().map(|run| run.text.as_str()).collect::<Vec<_>>().join(" / "),
        at,
    })
}
