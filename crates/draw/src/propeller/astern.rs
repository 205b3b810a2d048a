//! From astern: projected outline, hub, bore, hand.

use super::{Drawn, caption, hand_word, name};
use crate::measure::fit;
use crate::pen::{Hang, P, Pen, Words};
use crate::style::TEXT;
use crate::words::length;
use hydro::blade::{Blade, Hand, projected_outline};
use std::f64::consts::{PI, TAU};

/// Points of an edge.
const POINTS: usize = 34;

/// Draws the view around `at` between two limits; returns its lower end.
pub fn view(pen: &mut Pen, drawn: &Drawn, at: P, s: f64, limits: [f64; 2]) -> f64 {
    let p = &drawn.propeller;
    let (radius, hub) = (drawn.radius(), drawn.hub());
    let sign = p.hand.sign();
    // Across is positive toward the leading edge of a blade at `angle`.
    let place = |q: [f64; 2], angle: f64| -> P {
        let (x, y) = (sign * q[0], q[1]);
        let (sin, cos) = (sign * angle).sin_cos();
        [at[0] + s * (x * cos + y * sin), at[1] - s * (y * cos - x * sin)]
    };
    caption(pen, limits[0], at[1] - s * radius - 24.0, Hang::Start, "from astern", limits[1] - limits[0]);
    pen.circle("h c", at, s * radius);
    let edge = |b: &Blade, angle: f64| {
        let outline = projected_outline(b, hub * 0.96, POINTS);
        let leading: Vec<P> = outline.leading.iter().map(|q| place(*q, angle)).collect();
        let trailing: Vec<P> = outline.trailing.iter().map(|q| place(*q, angle)).collect();
        (leading, trailing)
    };
    let mut first = None;
    for (i, b) in p.blades.iter().enumerate() {
        let angle = p.angles.get(i).copied().unwrap_or(0.0);
        let (leading, trailing) = edge(b, angle);
        let ring: Vec<P> = leading.iter().copied().chain(trailing.iter().rev().copied()).collect();
        pen.shape("p", &ring);
        pen.path("m", &leading);
        pen.path("l", &trailing);
        // The reference line.
        pen.line("h c", place([0.0, hub], angle), place([0.0, b.tip_radius], angle));
        if p.blades.len() > 1 {
            let middle = [
                0.5 * (leading[POINTS / 3][0] + trailing[POINTS / 3][0]),
                0.5 * (leading[POINTS / 3][1] + trailing[POINTS / 3][1]),
            ];
            pen.text("o", [middle[0], middle[1] + 4.0], Hang::Middle, Words::Said(fit(&drawn.name(i), TEXT, 44.0)));
        }
        if i == 0 {
            first = Some((leading, trailing));
        }
    }
    pen.circle("p m", at, s * 0.5 * p.hub.aft_diameter);
    if p.hub.bore_aft > 0.0 {
        pen.circle("l", at, s * 0.5 * p.hub.bore_aft);
    }
    pen.line("h c", [at[0] - s * hub * 1.4, at[1]], [at[0] + s * hub * 1.4, at[1]]);
    pen.line("h c", [at[0], at[1] - s * hub * 1.4], [at[0], at[1] + s * hub * 1.4]);

    arrow(pen, at, s * radius + 9.0, p.hand);
    // Names around the first, upright blade.
    if let Some((leading, trailing)) = first {
        let (high, far) = (at[1] - s * radius, s * radius);
        let (l, t) = (leading[POINTS * 3 / 5], trailing[POINTS * 3 / 5]);
        let corner = |right: bool| if right { (limits[1], Hang::End) } else { (limits[0], Hang::Start) };
        let right = sign > 0.0;
        let tip = leading[POINTS - 1];
        let (x, hang) = corner(!right);
        part(pen, t, [x, high + 0.14 * far], hang, "trailing edge");
        let (x, hang) = corner(right);
        part(pen, l, [x, high + 0.14 * far], hang, "leading edge");
        name(
            pen,
            tip,
            [tip[0] + if right { 22.0 } else { -22.0 }, high - 8.0],
            if right { Hang::Start } else { Hang::End },
            "tip",
        );
        // Root and hub between blades, clear of the arrow.
        let between = |i: f64| TAU * (i + 0.5) / p.count();
        let polar = |a: f64, r: f64| [at[0] + sign * r * a.sin(), at[1] - r * a.cos()];
        let back = between(p.count() - 1.0);
        let [x, y] = polar(back, 0.66 * far);
        name(pen, [at[0], at[1] - 1.1 * s * hub], [x, y], Hang::Middle, "root");
        let low = (0_u8..).zip(&p.blades).map(|(i, _)| between(f64::from(i))).min_by(|a, b| {
            let off = |a: &f64| (a - 1.06 * PI).abs();
            off(a).total_cmp(&off(b))
        });
        if let Some(low) = low.filter(|low| (low - back).abs() > 0.1) {
            let [x, y] = polar(low, 0.66 * far);
            name(pen, polar(low, 0.46 * s * p.hub.aft_diameter), [x, y], Hang::Middle, "hub");
        }
    }
    let low = at[1] + s * radius;
    let y = low + 18.0;
    for x in [at[0] - s * radius, at[0] + s * radius] {
        pen.line("h", [x, at[1]], [x, y + 4.0]);
    }
    pen.dimension(
        [at[0] - s * radius, y],
        [at[0] + s * radius, y],
        [at[0], y + 16.0],
        Hang::Middle,
        format!("diameter {}", length(p.diameter())),
    );
    y + 18.0
}

/// A name in a corner of the view.
fn part(pen: &mut Pen, part: P, text_at: P, hang: Hang, text: &str) {
    let reach = pen.width(text, crate::style::TEXT) * 0.92;
    let from = [text_at[0] + if hang == Hang::End { -reach } else { reach }, text_at[1] - 4.0];
    pen.line("h", from, part);
    pen.circle("k", part, 1.6);
    pen.text("o", text_at, hang, text);
}

/// The arrow of rotation going ahead, on the side the first blade turns to.
fn arrow(pen: &mut Pen, at: P, radius: f64, hand: Hand) {
    let sign = hand.sign();
    let (from, to) = (0.30 * PI, 0.58 * PI);
    let place = |a: f64| [at[0] + sign * radius * a.sin(), at[1] - radius * a.cos()];
    let arc: Vec<P> = (0..=16).map(|i| place(from + (to - from) * f64::from(i) / 16.0)).collect();
    pen.path("f", &arc);
    let end = place(to + 0.012 * TAU);
    if let Some(last) = arc.last() {
        pen.head("k", [end[0] + 3.0 * (last[0] - end[0]), end[1] + 3.0 * (last[1] - end[1])], end, 12.0);
    }
    let foot = place(0.75 * PI);
    let (x, hang) = (foot[0] + sign * 0.30 * radius, if sign > 0.0 { Hang::End } else { Hang::Start });
    pen.text("o", [x, foot[1] + 0.17 * radius], hang, hand_word(hand));
    pen.text("o s", [x, foot[1] + 0.17 * radius + 14.0], hang, "going ahead");
}
