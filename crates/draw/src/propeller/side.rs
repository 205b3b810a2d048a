//! From the side: rake, hub, bore; forward to the right.

use super::{Drawn, caption, name, shape};
use crate::pen::{Hang, P, Pen};
use crate::words::millimetres;
use counsel::phrase::number;
use hydro::blade;

/// Rows from hub to tip.
const ROWS: u8 = 30;

/// Draws the view with the shaft axis through `at`.
pub fn view(pen: &mut Pen, drawn: &Drawn, at: P, s: f64, limits: [f64; 2]) {
    let Some(shape) = shape(drawn) else { return };
    let p = &drawn.propeller;
    let (hub, tip) = (&p.hub, shape.tip_radius());
    let place = |x: f64, z: f64| -> P { [at[0] + s * x, at[1] - s * z] };
    caption(pen, limits[0], at[1] - s * tip - 24.0, Hang::Start, "from starboard", limits[1] - limits[0]);

    let inner = 0.9 * drawn.hub();
    let radii = (0..=ROWS).map(|i| {
        let w = (1.0 - inner / tip).max(0.0).sqrt() * (1.0 - f64::from(i) / f64::from(ROWS));
        tip * (1.0 - w * w)
    });
    let (mut leading, mut trailing, mut reference, mut thick) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for r in radii {
        let cut = shape.cut(r);
        for (edge, half) in [(&mut leading, 0.5), (&mut trailing, -0.5)] {
            let (x, turn) = cut.place(half * cut.chord, 0.0);
            edge.push(place(x, r * turn.cos()));
        }
        reference.push(place(-cut.rake, r));
        let along = cut.thickness / cut.blade_angle().cos().max(0.1);
        thick.push(place(-cut.rake + along, r));
    }
    let ring: Vec<P> = leading.iter().copied().chain(trailing.iter().rev().copied()).collect();
    pen.shape("p", &ring);
    pen.path("m", &leading);
    pen.path("l", &trailing);
    let body: Vec<P> = reference.iter().copied().chain(thick.iter().rev().copied()).collect();
    pen.shape("b", &body);
    pen.path("l c", &reference);

    // Hub, bore.
    let (fore, aft) = (hub.forward, hub.forward - hub.length);
    let (rf, ra) = (0.5 * hub.fore_diameter, 0.5 * hub.aft_diameter);
    pen.shape("p m", &[place(fore, rf), place(aft, ra), place(aft, -ra), place(fore, -rf)]);
    if hub.bore_fore > 0.0 {
        let (bf, ba) = (0.5 * hub.bore_fore, 0.5 * hub.bore_aft);
        pen.paths("l g", &[vec![place(fore, bf), place(aft, ba)], vec![place(fore, -bf), place(aft, -ba)]]);
    }
    pen.line("h c", [limits[0], at[1]], [limits[1], at[1]]);

    // The plane of rotation, and the rake from it.
    let rake = blade::rake(&p.blades[0], drawn.hub());
    pen.line("h", place(0.0, -1.25 * ra), place(0.0, 1.04 * tip));
    let degrees = rake.angle.to_degrees();
    let text = if degrees.abs() < 0.5 {
        "no rake".to_owned()
    } else {
        format!(
            "rake {}\u{b0} {}",
            number(degrees.abs(), 0.1).trim_end_matches(".0"),
            if degrees > 0.0 { "aft" } else { "forward" }
        )
    };
    let high = reference[usize::from(ROWS)];
    name(pen, high, [place(0.0, 0.0)[0] + 12.0, at[1] - s * 0.94 * tip], Hang::Start, &text);

    // Hub dimensions.
    let low = at[1] + s * rf.max(ra);
    let y = low + 16.0;
    for (x, r) in [(aft, ra), (fore, rf)] {
        pen.line("h", place(x, -r), [place(x, 0.0)[0], y + 4.0]);
    }
    let usual = if drawn.surveyed { "" } else { " (usual)" };
    pen.dimension(
        [place(aft, 0.0)[0], y],
        [place(fore, 0.0)[0], y],
        [limits[0], y + 18.0],
        Hang::Start,
        format!("hub {} mm long{usual}", millimetres(hub.length)),
    );
    let bore = if hub.bore_fore <= 0.0 {
        "not bored".to_owned()
    } else if (hub.bore_fore - hub.bore_aft).abs() < 1e-4 {
        format!("bore \u{2300} {} mm{usual}", millimetres(hub.bore_fore))
    } else {
        format!("bore \u{2300} {} to {} mm{usual}", millimetres(hub.bore_fore), millimetres(hub.bore_aft))
    };
    pen.text("o", [limits[0], y + 33.0], Hang::Start, &bore);
    pen.text("s", [limits[0], y + 48.0], Hang::Start, "forward is to the right");
}
