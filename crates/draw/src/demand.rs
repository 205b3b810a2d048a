//! Engine and demand: what the engine gives, what the propeller asks for, where they meet.

use crate::axis::Field;
use crate::labels::Column;
use crate::pen::{Hang, P, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{MARGIN, TEXT};
use crate::words::{kilowatts, short_chance, span};
use counsel::curves::{Curves, Power};
use counsel::phrase::number;
use counsel::report::{Band, Comparison, FullThrottle};

/// Height of the field, px.
const HEIGHT: f64 = 330.0;

/// The picture. `change` draws full throttle after a change beside that before; the demand after it is a state of
/// [`counsel::curves::curves_after`].
#[must_use]
pub fn picture(sheet: &Sheet, curves: &Curves, change: Option<&Comparison>) -> Picture {
    let sentence = change.map_or_else(|| sentence(curves), |comparison| comparison.headline.clone());
    let mut drawing = Drawing::open(sheet, &sentence);
    let narrow = sheet.narrow();
    let top = drawing.top + 50.0;
    let room = if narrow { 8.0 } else { (0.24 * sheet.width()).clamp(178.0, 290.0) };
    let ground = [MARGIN + 34.0, top, sheet.width() - MARGIN - room, top + HEIGHT];
    let field = scales(ground, curves);
    let pen = &mut drawing.pen;

    // The accepted band, hatched and named.
    let band = &curves.accepted_band;
    let (b0, b1) = (field.x.held(band.low), field.x.held(band.high));
    let b1 = b1.max(b0 + 2.0);
    pen.hatch(b0, field.top, b1, field.bottom);
    pen.line("h", [b0, field.top - 6.0], [b0, field.bottom]);
    pen.line("h", [b1, field.top - 6.0], [b1, field.bottom]);
    let name = format!("accepted at full throttle {} to {}", number(band.low, 10.0), number(band.high, 10.0));
    let wide = pen.width(&name, TEXT);
    let right = (0.5 * (b0 + b1) + 0.5 * wide).min(sheet.width() - MARGIN);
    pen.text("", [right.max(MARGIN + wide), field.top - 26.0], Hang::End, &name);
    pen.line("h", [0.5 * (b0 + b1), field.top - 21.0], [0.5 * (b0 + b1), field.top - 6.0]);

    field.y_axis(pen, "kW, one engine", 5.0);
    field.x_axis(pen, "engine speed, rpm");

    let mut column = Column::new(field.right + 12.0, room - 14.0, Hang::Start);
    // The fan: other states as broken lines, the described one with its band.
    let described = curves.demand.first();
    let broken = ["l g", "l c", "h g", "h c"];
    let mut inside: Vec<(P, Words, &'static str)> = Vec::new();
    for (i, state) in curves.demand.iter().skip(1).enumerate() {
        let line: Vec<P> = middles(&state.points);
        let after = state.state == counsel::curves::AFTER;
        field.curve(pen, if after { "f" } else { broken[i.min(3)] }, &line);
        if let Some(at) = leaves(&field, &line) {
            inside.push((at, state.state.into(), if after { "e" } else { "" }));
        }
    }
    if let Some(state) = described {
        let points: Vec<(f64, Band)> = state.points.iter().map(|p| (p.engine_speed, p.power)).collect();
        field.spread(pen, &points, "m");
        if let Some(at) = leaves(&field, &middles(&state.points)) {
            inside.push((at, Words::Said(format!("{} {}", pen.say("asked,"), pen.say(state.state))), "e"));
        }
    }
    // The engine's limit over everything.
    let limit: Vec<P> = middles(&curves.engine);
    let limits: Vec<(f64, Band)> = curves.engine.iter().map(|p| (p.engine_speed, p.power)).collect();
    for pick in [|b: &Band| b.low, |b: &Band| b.high] {
        let edge: Vec<P> = limits.iter().map(|(x, b)| [*x, pick(b)]).collect();
        field.curve(pen, "h", &edge);
    }
    field.curve(pen, "f", &limit);
    let rated = curves.rated_speed.middle;
    let lead = if narrow { 0.5 } else { 0.62 } * rated;
    let engine_at = field.at(lead, power_at(&limit, lead));
    if narrow {
        pen.line("h", engine_at, [field.left + 40.0, engine_at[1] - 34.0]);
        pen.text("o e", [field.left + 6.0, engine_at[1] - 38.0], Hang::Start, "engine gives at most");
    } else {
        pen.line("h", engine_at, [engine_at[0] - 12.0, engine_at[1] - 20.0]);
        pen.text("o e", [engine_at[0] - 12.0, engine_at[1] - 24.0], Hang::Middle, "engine gives at most");
    }

    let holder = if curves.governed { "governor" } else { "limiter" };
    let droop = 0.5 * (curves.rated_speed.middle + curves.top_speed.middle);
    let held_at = field.at(droop, power_at(&limit, droop));
    if narrow {
        pen.text("o s", [b0.min(held_at[0]) - 5.0, field.bottom - 30.0], Hang::End, holder);
    } else {
        column.add("s", held_at, holder);
    }

    // Full throttle, before and after.
    if let Some(state) = described {
        meeting(
            pen,
            &field,
            &limit,
            &state.full_throttle,
            "l",
            if change.is_some() { "before" } else { "full throttle" },
        );
    }
    if let Some(comparison) = change {
        meeting(pen, &field, &limit, &comparison.after.full_throttle, "f", "after");
    }
    // What was read at full throttle.
    let mut crosses: Vec<(P, String)> = Vec::new();
    for mark in curves.marks.iter().filter(|m| m.full_throttle) {
        let Some(n) = mark.engine_speed else { continue };
        let power = [n.low, n.middle, n.high].map(|n| power_at(&limit, n));
        // The engine's own spread, taken where neither governor nor limiter blurs it.
        let spread = band_at(&limits, n.middle.min(rated));
        let y = [spread.low, spread.middle, spread.high].map(|p| p / spread.middle.max(1e-9) * power[1]);
        field.cross(pen, [n.low, n.middle, n.high], y, mark.other_state);
        crosses.push((field.at(n.middle, power[1]), mark.label.clone()));
    }
    if narrow {
        let mut y = field.bottom + 50.0;
        // Lines that leave upward are named in the empty corner above the engine's limit, others at the right edge.
        let mut corner = Column::new(field.left + 132.0, 128.0, Hang::End);
        let mut edge = Column::new(field.right - 12.0, 150.0, Hang::End);
        for (at, text, class) in inside {
            let class = if class == "e" { "o e" } else { "o" };
            if at[1] < field.top + 2.0 { corner.add(class, at, text) } else { edge.add(class, at, text) }
        }
        corner.set(pen, field.top + 14.0, field.bottom);
        edge.set(pen, field.top + 10.0, field.bottom);
        for (_, label) in &crosses {
            pen.paths(
                "r",
                &[
                    vec![[MARGIN, y - 4.0], [MARGIN + 10.0, y - 4.0]],
                    vec![[MARGIN + 5.0, y - 9.0], [MARGIN + 5.0, y + 1.0]],
                ],
            );
            let words =
                pen.fit(Words::Said(format!("{} {}", pen.say("read:"), pen.say(label))), TEXT, sheet.room() - 18.0);
            pen.text("q", [MARGIN + 16.0, y], Hang::Start, words);
            y += 16.0;
        }
        let bottom = if crosses.is_empty() { field.bottom + 36.0 } else { y - 8.0 };
        return drawing.close("Engine and demand", desc(sheet, curves), bottom);
    }
    for (at, text, class) in inside {
        column.add(class, at, text);
    }
    for (at, label) in crosses {
        let said = format!("{} {}", pen.say("read:"), pen.say(&label));
        column.add("q", at, Words::Said(said));
    }
    column.set(pen, field.top - 2.0, field.bottom);
    drawing.close("Engine and demand", desc(sheet, curves), field.bottom + 36.0)
}

fn scales(ground: [f64; 4], curves: &Curves) -> Field {
    let ends = |f: fn(f64, f64) -> f64, start: f64| curves.engine.iter().map(|p| p.engine_speed).fold(start, f);
    let (from, to) = (ends(f64::min, f64::INFINITY), ends(f64::max, 0.0));
    let most = curves.engine.iter().map(|p| p.power.high).fold(0.0, f64::max);
    let to = to.max(1.02 * curves.accepted_band.high);
    Field::new(
        ground,
        (if from.is_finite() { from } else { 0.0 }, to),
        (0.0, if most > 0.0 { 1.12 * most } else { 1.0 }),
    )
}

fn middles(points: &[Power]) -> Vec<P> {
    points.iter().map(|p| [p.engine_speed, p.power.middle]).collect()
}

/// Where a demand leaves the field, px.
fn leaves(field: &Field, line: &[P]) -> Option<P> {
    let px: Vec<P> = line.iter().map(|p| field.at(p[0], p[1])).collect();
    field.clip(&px).last().and_then(|piece| piece.last().copied())
}

/// A value on a line, held at its ends.
fn power_at(line: &[P], x: f64) -> f64 {
    let Some(last) = line.last() else { return 0.0 };
    line.windows(2).find(|w| x <= w[1][0]).map_or(last[1], |w| {
        let width = (w[1][0] - w[0][0]).max(1e-9);
        w[0][1] + ((x - w[0][0]) / width).clamp(0.0, 1.0) * (w[1][1] - w[0][1])
    })
}

fn band_at(limits: &[(f64, Band)], x: f64) -> Band {
    let nearest = limits.iter().min_by(|a, b| (a.0 - x).abs().total_cmp(&(b.0 - x).abs()));
    nearest.map_or(Band { low: 0.0, middle: 0.0, high: 0.0, unit: "kW" }, |n| n.1)
}

/// Where full throttle ends up: a ring on the limit and its band on the axis of engine speed.
fn meeting(pen: &mut crate::pen::Pen, field: &Field, limit: &[P], full: &FullThrottle, class: &str, words: &str) {
    let n = &full.engine_speed;
    let at = field.at(n.middle, power_at(limit, n.middle));
    pen.circle(&format!("p {class}"), at, 5.0);
    let thick = if class == "f" { 5.0 } else { 3.0 };
    let (x0, x1) = (field.x.held(n.low), field.x.held(n.high));
    let y = field.bottom - if class == "f" { 26.0 } else { 10.0 };
    pen.shape("k", &[[x0, y], [x1, y], [x1, y + thick], [x0, y + thick]]);
    pen.text("o", [x0 - 6.0, y + 5.0], Hang::End, words);
}

fn sentence(curves: &Curves) -> String {
    let Some(state) = curves.demand.first() else { return "Nothing is known of the demand.".to_owned() };
    let band = &curves.accepted_band;
    let full = &state.full_throttle.engine_speed;
    let side = if full.middle < band.low {
        "short of"
    } else if full.middle > band.high {
        "above"
    } else {
        "inside"
    };
    let held = state.full_throttle.governed;
    let governor = if held > 0.5 && curves.governed {
        format!(" The governor holds it, {}.", short_chance(held))
    } else {
        String::new()
    };
    format!(
        "At full throttle, {}, engine and propeller meet at {}: {side} the accepted {} to {} rpm.{governor}",
        state.state,
        span(full),
        number(band.low, 10.0),
        number(band.high, 10.0)
    )
}

fn desc(sheet: &Sheet, curves: &Curves) -> Words {
    let most = curves.engine.iter().map(|p| p.power.middle).fold(0.0, f64::max);
    let states: Vec<String> = curves
        .demand
        .iter()
        .map(|d| format!("{}: {}, {}", d.state, span(&d.full_throttle.engine_speed), span(&d.full_throttle.speed)))
        .collect();
    let band = &curves.accepted_band;
    let marks = curves.marks.iter().filter(|m| m.full_throttle && m.engine_speed.is_some()).count();
    let said = [
        sheet.say(&format!(
            "Power of one engine over engine speed. The engine gives at most {} kW at a rated {}.",
            kilowatts(most),
            span(&curves.rated_speed)
        )),
        sheet.say("The propeller's demand crosses that limit at full throttle:"),
        sheet.say_all(&states, "; ") + ".",
        sheet.say(&format!("Accepted band {} to {} rpm", number(band.low, 10.0), number(band.high, 10.0))),
        format!("({}).", sheet.say(&band.source)),
        sheet.say(&format!("Full-throttle readings marked with their instrument's spread: {marks}.")),
    ];
    Words::Said(said.join(" "))
}
