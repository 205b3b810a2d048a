//! Expanded outline, sections at their pitch angles, pitch over the radius.

use super::{Drawn, caption, name, shape};
use crate::axis::Scale;
use crate::measure::fit;
use crate::pen::{Hang, P, Pen, Words};
use crate::style::TEXT;
use crate::words::{inches, millimetres};
use counsel::phrase::number;
use hydro::blade::{Shape, expanded_outline};

/// Radii of the sections shown, tip first.
const SECTIONS: [f64; 4] = [0.9, 0.7, 0.5, 0.3];

/// Expanded outline on the left, sections on the right, `height` from axis to tip; returns the lower end.
pub fn view(pen: &mut Pen, drawn: &Drawn, limits: [f64; 2], top: f64, height: f64) -> f64 {
    let (Some(shape), Some(blade)) = (shape(drawn), drawn.propeller.blades.first()) else { return top };
    let sign = drawn.propeller.hand.sign();
    let room = limits[1] - limits[0];
    let outline = expanded_outline(blade, drawn.hub(), 40);
    let ends = outline.leading.iter().chain(&outline.trailing).map(|q| sign * q[0]);
    let (low, high) = ends.fold((0.0_f64, 0.0_f64), |e, x| (e.0.min(x), e.1.max(x)));
    let tip = shape.tip_radius();
    let scale = (height / drawn.radius()).min(0.56 * room / (high - low).max(1e-6));
    let height = (scale * drawn.radius()).max(0.8 * height);
    let axis = top + 20.0 + height;
    let cx = limits[0] + 22.0 - scale * low;
    let place = |q: [f64; 2]| -> P { [cx + scale * sign * q[0], axis - scale * q[1]] };
    caption(pen, limits[0], top, Hang::Start, "expanded, seen from astern", scale * (high - low) + 36.0);

    let leading: Vec<P> = outline.leading.iter().map(|q| place(*q)).collect();
    let trailing: Vec<P> = outline.trailing.iter().map(|q| place(*q)).collect();
    let ring: Vec<P> = leading.iter().copied().chain(trailing.iter().rev().copied()).collect();
    pen.shape("w", &ring);
    pen.path("m", &leading);
    pen.path("l", &trailing);
    if let (Some(a), Some(b)) = (leading.first(), trailing.first()) {
        pen.line("l", *a, *b);
    }
    pen.line("h c", [cx, axis], [cx, axis - scale * tip - 6.0]);
    pen.line("h c", [limits[0], axis], [cx + scale * high + 6.0, axis]);
    pen.text("s", [limits[0], axis + 14.0], Hang::Start, "shaft axis");
    // Mid-chords.
    let skew: Vec<P> = (0..=24)
        .map(|i| {
            let r = drawn.hub() + (tip - drawn.hub()) * f64::from(i) / 24.0;
            place([-shape.cut(r).skew_back, r])
        })
        .collect();
    pen.path("l g", &skew);
    let middle = skew[13];
    pen.text("o s", [middle[0] - 5.0 * sign, middle[1]], if sign > 0.0 { Hang::End } else { Hang::Start }, "skew line");
    // Cup along the trailing edge.
    let measured = blade.cup;
    if measured.is_some() || drawn.cup.is_some() {
        let (from, to) = measured.map_or((0.4 * tip, 0.95 * tip), |c| (c.from, c.to));
        let lip: Vec<P> = (0..=20)
            .map(|i| {
                let cut = shape.cut(from + (to - from) * f64::from(i) / 20.0);
                let q = place([-0.5 * cut.chord - cut.skew_back, cut.radius]);
                [q[0] + 3.5 * sign, q[1]]
            })
            .collect();
        pen.path("f", &lip);
        let words = measured
            .map_or_else(|| drawn.cup.clone().unwrap_or_default(), |c| format!("cup {} mm", millimetres(c.drop)));
        let half = pen.width(&words, TEXT);
        let x = if sign > 0.0 { limits[0] } else { cx + scale * high - half };
        name(pen, lip[16], [x.max(limits[0]), lip[19][1] - 12.0], Hang::Start, &words);
    }

    // What the survey found, where it lies on the blade it is on, laid on this one.
    let mut under = f64::NEG_INFINITY;
    let mut damage: Vec<_> = drawn.damage.iter().collect();
    damage.sort_by(|a, b| b.x.total_cmp(&a.x));
    for spot in damage {
        let cut = shape.cut((spot.x * tip).clamp(drawn.hub(), tip));
        let at = place([(0.5 - spot.chord) * cut.chord - cut.skew_back, cut.radius]);
        pen.circle("r", at, 4.5);
        let text = pen.fit(spot.said(pen), TEXT, 0.42 * room);
        // Tip first: each name below the one before it.
        let y = (at[1] - 6.0).max(under + 13.0);
        under = y;
        pen.text("o q", [at[0] - 9.0, y], Hang::End, text);
    }

    // Sections beside, each at its pitch angle, at one scale.
    let column = limits[0] + 22.0 + scale * (high - low) + 26.0;
    let wide = (limits[1] - column).max(60.0);
    let row = height / 4.0;
    let cuts: Vec<_> = SECTIONS.iter().map(|x| shape.cut((x * tip).max(drawn.hub()))).collect();
    let small = cuts
        .iter()
        .map(|c| {
            let (sin, cos) = c.blade_angle().sin_cos();
            let tall = c.chord * sin + c.thickness * cos;
            ((row - 24.0).max(12.0) / tall.max(1e-6)).min((wide - 4.0) / (c.chord * cos).max(1e-6))
        })
        .fold(scale, f64::min);
    caption(pen, column, top, Hang::Start, "sections at their pitch angles", wide + 30.0);
    for (i, cut) in cuts.iter().enumerate() {
        let y0 = top + 20.0 + row * i as f64;
        section(pen, &shape, cut, [column, y0], row, small, sign, i == 2, limits[1] - column);
        // The chord on the outline, with its radius.
        let chord = [0.5, -0.5].map(|h| place([h * cut.chord - cut.skew_back, cut.radius]));
        pen.line("h", chord[0], chord[1]);
        let x = limits[0];
        pen.text("s", [x, chord[0][1] + 4.0], Hang::Start, number(cut.radius / tip, 0.1));
    }
    axis + 16.0
}

/// One section in its row.
#[expect(clippy::too_many_arguments, reason = "a drawing step, called once")]
fn section(
    pen: &mut Pen,
    shape: &Shape,
    cut: &hydro::blade::Cut,
    at: P,
    row: f64,
    s: f64,
    sign: f64,
    named: bool,
    room: f64,
) {
    let (sin, cos) = cut.blade_angle().sin_cos();
    let wide = s * (cut.chord * cos + cut.thickness * sin);
    let (x0, base) = (at[0], at[1] + row - 16.0);
    // From the trailing edge: `along` toward the leading edge, `off` toward the back (forward, up).
    let place = |along: f64, off: f64| -> P {
        let across = s * (along * cos - off * sin) + s * cut.thickness * sin;
        [if sign > 0.0 { x0 + across } else { x0 + wide - across }, base - s * (along * sin + off * cos)]
    };
    let side = |which: usize| -> Vec<P> {
        (0..=22)
            .map(|i| {
                let fraction = 0.5 * (1.0 - (std::f64::consts::PI * f64::from(i) / 22.0).cos());
                place(cut.chord * (1.0 - fraction), shape.offset(cut, fraction)[which])
            })
            .collect()
    };
    let (face, back) = (side(0), side(1));
    let ring: Vec<P> = face.iter().copied().chain(back.iter().rev().copied()).collect();
    pen.shape("b", &ring);
    pen.path("m", &face);
    pen.path("l", &back);
    let text = format!(
        "{}\u{b0}, {} \u{d7} {} mm",
        number(cut.blade_angle().to_degrees(), 0.1),
        millimetres(cut.chord),
        millimetres(cut.thickness)
    );
    let short = format!("{}\u{b0}, {} mm", number(cut.blade_angle().to_degrees(), 0.1), millimetres(cut.thickness));
    let text = if pen.width(&text, TEXT) > room + 8.0 { short } else { text };
    pen.text("o s", [x0, at[1] + row - 2.0], Hang::Start, &text);
    if named {
        let (f, b) = (face[11], back[9]);
        let out = if sign > 0.0 { 1.0 } else { -1.0 };
        let last = x0 + room;
        pen.text(
            "o",
            [(f[0] + 12.0 * out).min(last - 26.0), f[1] + 12.0],
            if sign > 0.0 { Hang::Start } else { Hang::End },
            "face",
        );
        pen.text("o", [(b[0] - 12.0 * out).min(last - 14.0), b[1] - 6.0], Hang::Middle, "back");
    }
}

/// Pitch over the radius: the axis at `axis`, px, upward to the tip; blade by blade where they differ.
pub fn pitches(pen: &mut Pen, drawn: &Drawn, limits: [f64; 2], axis: f64, scale: f64, hub_edge: f64) {
    let p = &drawn.propeller;
    let tip = drawn.radius();
    let shapes: Vec<Shape> = p.blades.iter().map(Shape::of).collect();
    let all = |f: fn(f64, f64) -> f64, start: f64| {
        let stations = shapes
            .iter()
            .flat_map(|s| (0..=12).map(move |i| s.cut(s.tip_radius() * (0.25 + 0.0625 * f64::from(i))).pitch));
        stations.chain(drawn.marked_pitch).fold(start, f)
    };
    let (low, high) = (all(f64::min, f64::INFINITY), all(f64::max, 0.0));
    if !(low.is_finite() && high > 0.0) {
        return;
    }
    let pad = (0.06 * high).max(0.3 * (high - low));
    let x = Scale::new(low - pad, high + pad, limits[0], limits[1]);
    let y = |r: f64| axis - scale * r;
    caption(pen, limits[0] - 8.0, y(tip) - 20.0, Hang::Start, "pitch", limits[1] - limits[0] + 14.0);
    for share in [0.4, 0.6, 0.8, 1.0] {
        let at = y(share * tip);
        pen.line("h", [limits[0], at], [limits[1], at]);
        pen.text(
            "s",
            [limits[0] - 5.0, at + 4.0],
            Hang::End,
            if share < 1.0 { number(share, 0.1) } else { "R".to_owned() },
        );
    }
    pen.line("l", [limits[0], hub_edge], [limits[1], hub_edge]);
    if let Some(marked) = drawn.marked_pitch {
        let at = x.px(marked);
        pen.line("l g", [at, hub_edge], [at, y(tip)]);
    }
    let line = |s: &Shape| -> Vec<P> {
        (0..=20)
            .map(|i| {
                let r = drawn.hub() + (s.tip_radius() - drawn.hub()) * f64::from(i) / 20.0;
                [x.px(s.cut(r).pitch), y(r)]
            })
            .collect()
    };
    let alike = shapes.windows(2).all(|w| {
        (0..=4).all(|i| {
            let share = 0.3 + 0.15 * f64::from(i);
            let (a, b) = (w[0].cut(share * w[0].tip_radius()).pitch, w[1].cut(share * w[1].tip_radius()).pitch);
            (a / b - 1.0).abs() < 0.002
        })
    });
    for (i, s) in shapes.iter().enumerate().take(if alike { 1 } else { shapes.len() }) {
        let points = line(s);
        pen.path(["m", "l g", "l c", "h", "h g"][i.min(4)], &points);
        if !alike {
            let at = points[(9 + 3 * i).min(19)];
            pen.text("o e", [at[0], at[1] + 4.0], Hang::Middle, Words::Said(fit(&drawn.name(i), TEXT, 44.0)));
        }
    }
    // The ends of the range; one number where they nearly fall together.
    let ends = if x.px(high) - x.px(low) > 24.0 {
        vec![(low, Hang::End, 12.0), (high, Hang::Start, -12.0)]
    } else {
        vec![(0.5 * (low + high), Hang::Middle, 0.0)]
    };
    for (value, hang, aside) in ends {
        let at = x.px(value);
        pen.line("l", [at, hub_edge], [at, hub_edge + 4.0]);
        pen.text("", [at + aside, hub_edge + 17.0], hang, millimetres(value));
        pen.text("s", [at + aside, hub_edge + 31.0], hang, format!("{} in", inches(value)));
    }
}
