//! Where the power goes: a stream that narrows from engine to hull as each loss turns off.

use crate::pen::{Hang, P, Pen, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{MARGIN, TEXT};
use crate::words::{kilowatts, span};
use counsel::curves::PowerFlow;
use counsel::phrase::number;

/// Height between two turn-offs, px.
const REACH: f64 = 52.0;
const NOTHING: &str = "No steady speed was found to follow the power at.";

fn drawable(f: &PowerFlow) -> bool {
    let parts = [f.drive, f.axial, f.swirl, f.friction, f.shaft_angle, f.interaction, f.hull];
    f.brake.is_finite() && f.brake > 0.0 && parts.iter().all(|p| p.is_finite() && p.abs() <= 1.5 * f.brake)
}

/// What turns off, in order.
fn losses(flow: &PowerFlow) -> Vec<(&'static str, f64)> {
    let mut list = vec![
        ("gearbox and bearings", flow.drive),
        ("shaft not level", flow.shaft_angle),
        ("propeller: blade friction", flow.friction),
        ("propeller: swirl", flow.swirl),
        ("propeller: wash astern", flow.axial),
        ("suction on the stern", flow.interaction),
    ];
    list.retain(|(_, kw)| *kw > 0.006 * flow.brake);
    list
}

/// The picture of one or two flows (side by side where there is room, else the first).
#[must_use]
pub fn picture(sheet: &Sheet, flows: &[PowerFlow]) -> Picture {
    // A flow whose parts are no parts cannot be drawn.
    let flows: Vec<&PowerFlow> = flows.iter().filter(|f| drawable(f)).collect();
    let sentence = flows.first().map_or_else(|| NOTHING.to_owned(), |f| sentence(f));
    let mut drawing = Drawing::open(sheet, &sentence);
    let most = if sheet.width() < 700.0 { 1 } else { 2 };
    let shown: Vec<&PowerFlow> = flows.iter().copied().take(most).collect();
    let column = sheet.room() / shown.len().max(1) as f64;
    let stream = if sheet.narrow() { 104.0 } else { 150.0 };
    let scale = stream / shown.iter().map(|f| f.brake).fold(1e-9, f64::max);
    let top = drawing.top + 8.0;
    let mut bottom = top;
    let mut left = MARGIN;
    for flow in &shown {
        bottom = bottom.max(one(&mut drawing.pen, flow, [left, top], column - 12.0, scale, stream));
        left += column;
    }
    let text = "Wash and swirl by momentum theory: what any propeller of this diameter must leave behind, swirl at its least. What \
                remains of the propeller's losses is called friction. The bands are those of all boats that fit what is known.";
    bottom = drawing.prose("s", text, bottom + 22.0, 6) - 12.0;
    let said: Vec<String> = flows.iter().map(|f| desc(sheet, f)).collect();
    let desc = if said.is_empty() { Words::from(NOTHING) } else { Words::Said(said.join(" ")) };
    drawing.close("Where the power goes", desc, bottom)
}

/// One stream from `at` downward; returns its lower end.
fn one(pen: &mut Pen, flow: &PowerFlow, at: P, room: f64, scale: f64, stream: f64) -> f64 {
    let share = |kw: f64| format!("{} %", number(100.0 * kw / flow.brake.max(1e-9), 1.0));
    let engines = if flow.screws > 1 { "one engine, " } else { "" };
    pen.text(
        "e",
        [at[0], at[1] + 12.0],
        Hang::Start,
        format!("{} kW from {}", kilowatts(flow.brake), if flow.screws > 1 { "one engine" } else { "the engine" }),
    );
    let at_line = format!(
        "{} kn, {} rpm; {}{}",
        number(flow.speed, 0.1),
        number(flow.engine_speed, 10.0),
        engines,
        span(&flow.brake_band)
    );
    let words = pen.fit(format!("{}: {}", flow.at, at_line.replace("one engine, ", "")), TEXT, room);
    pen.text("s", [at[0], at[1] + 27.0], Hang::Start, words);
    let list = losses(flow);
    let left = at[0] + 4.0;
    let stem = left + stream + 26.0;
    let mut y = at[1] + 40.0;
    let mut width = flow.brake * scale;
    // The whole outline is one shape: down the straight left bank, up the right bank with its branches.
    let mut right: Vec<P> = vec![[left + width, y]];
    let mut labels: Vec<(P, String, String, bool)> = Vec::new();
    let gain = if flow.interaction < 0.0 { -flow.interaction } else { 0.0 };
    y += 20.0;
    for (name, kw) in &list {
        let w = kw * scale;
        // The branch leaves at the outer bank, bends to the right and ends in a point.
        let (inner, outer) = (left + width - w, left + width);
        let bend = 15.0;
        let (y0, y1) = (y + bend, y + bend + w);
        right.push([outer, y]);
        for i in 1..=5 {
            let (sin, cos) = (std::f64::consts::FRAC_PI_2 * f64::from(i) / 5.0).sin_cos();
            right.push([outer + bend * (1.0 - cos), y + bend * sin]);
        }
        right.push([stem, y0]);
        right.push([stem + (0.4 * w).clamp(4.0, 12.0), 0.5 * (y0 + y1)]);
        right.push([stem, y1]);
        for i in (0..=5).rev() {
            let (sin, cos) = (std::f64::consts::FRAC_PI_2 * f64::from(i) / 5.0).sin_cos();
            let r = bend + w;
            right.push([inner + r * (1.0 - cos), y + r * sin]);
        }
        labels.push((
            [stem + 18.0, 0.5 * (y0 + y1)],
            (*name).to_owned(),
            format!("{} kW, {}", kilowatts(*kw), share(*kw)),
            false,
        ));
        width -= w;
        y += (bend + w + 12.0).max(REACH - 8.0);
    }
    if gain > 0.006 * flow.brake {
        y += 10.0;
        // What the wake gives back joins from the right.
        let w = gain * scale;
        right.push([left + width, y]);
        right.push([stem - 30.0, y]);
        // Notched like a tail: it flows in.
        right.push([stem - 30.0 - (0.4 * w).clamp(4.0, 9.0), y + 0.5 * w]);
        right.push([stem - 30.0, y + w]);
        right.push([left + width + w, y + w]);
        labels.push((
            [stem + 18.0, y + 0.5 * w],
            "won back from the wake".to_owned(),
            format!("{} kW, {}", kilowatts(gain), share(gain)),
            true,
        ));
        width += w;
        y += w + 14.0;
    }
    let end = y + 22.0;
    right.push([left + width, end]);
    let tip = end + (0.35 * width).clamp(6.0, 22.0);
    let mut ring = vec![[left, at[1] + 40.0]];
    ring.extend(right);
    ring.push([left + 0.5 * width, tip]);
    ring.push([left, end]);
    pen.shape("w l", &ring);
    let room_right = at[0] + room - stem - 18.0;
    for (at, name, value, _) in &labels {
        let (name, value) = (pen.fit(name, TEXT, room_right), pen.fit(value, TEXT, room_right));
        pen.text("", [at[0], at[1] - 2.0], Hang::Start, name);
        pen.text("s", [at[0], at[1] + 12.0], Hang::Start, value);
    }
    let hull = format!("{} kW move the hull, {}", kilowatts(flow.hull), share(flow.hull));
    let hull = pen.fit(&hull, TEXT * 1.06, room);
    pen.text("e", [at[0], tip + 18.0], Hang::Start, hull);
    let all = pen.fit(format!("over all boats that fit: {}", span(&flow.useful)), TEXT, room);
    pen.text("s", [at[0], tip + 33.0], Hang::Start, all);
    tip + 36.0
}

fn sentence(flow: &PowerFlow) -> String {
    format!(
        "{} at {} kn, {} of {} kW reach the hull; the largest loss is {}.",
        if flow.at == "cruising" { "Cruising" } else { "At full throttle" },
        number(flow.speed, 0.1),
        kilowatts(flow.hull),
        kilowatts(flow.brake),
        losses(flow).iter().max_by(|a, b| a.1.total_cmp(&b.1)).map_or("none", |l| match l.0 {
            "gearbox and bearings" => "in gearbox and bearings",
            "shaft not level" => "that the shaft is not level",
            "propeller: blade friction" => "the friction of the blades",
            "propeller: swirl" => "the swirl of the wash",
            "propeller: wash astern" => "the wash thrown astern",
            _ => "the suction on the stern",
        })
    )
}

fn desc(sheet: &Sheet, flow: &PowerFlow) -> String {
    let mut parts: Vec<String> = vec![
        flow.at.to_owned(),
        format!("{} kn", number(flow.speed, 0.1)),
        format!("{} rpm", number(flow.engine_speed, 10.0)),
        format!("{} kW from one engine", kilowatts(flow.brake)),
    ];
    parts.extend(losses(flow).iter().map(|(name, kw)| format!("{name} {} kW", kilowatts(*kw))));
    let mut text = sheet.say_all(&parts, ", ") + ".";
    if flow.interaction < 0.0 {
        text += &sheet.say(&format!(" The wake gives back {} kW.", kilowatts(-flow.interaction)));
    }
    format!("{text} {}", sheet.say(&format!("To the hull {} kW.", kilowatts(flow.hull))))
}
