//! DXF R12 for the workshop: expanded outline and pitch templates at full size in millimetres.
//!
//! Layers: `OUTLINE` the expanded outline, `AXIS` reference line and chords, `TEMPLATE` pitch templates, `FACE` the face on
//! each template, `TEXT`. Each template stands on its base, the line around the shaft at its radius: its upper edge rises
//! at the blade angle as long as the section, from the trailing edge on the left to the leading edge on the right; seen
//! from outside toward the shaft of a right-handed propeller with forward up, mirrored for a left-handed one. The square at the
//! origin's left measures 100 mm: check it on the print before cutting.

use hydro::blade::{Blade, Hand, Propeller, Shape, expanded_outline};
use std::fmt::Write as _;

/// Radii of the templates over the tip radius.
const RADII: [f64; 7] = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
/// Height of a template under its lowest end, mm: something to stand on.
const FOOT: f64 = 20.0;
/// Layers and their colour numbers.
const LAYERS: [(&str, i32); 5] = [("OUTLINE", 7), ("AXIS", 8), ("TEMPLATE", 7), ("FACE", 1), ("TEXT", 8)];

/// Collects DXF groups.
struct File {
    out: String,
}

impl File {
    fn group(&mut self, code: u16, value: impl std::fmt::Display) {
        // Writing to a string cannot fail.
        let _ = writeln!(self.out, "{code}\n{value}");
    }

    fn point(&mut self, base: u16, at: [f64; 2]) {
        self.group(base, format!("{:.4}", at[0]));
        self.group(base + 10, format!("{:.4}", at[1]));
        self.group(base + 20, "0.0");
    }

    fn line(&mut self, layer: &str, a: [f64; 2], b: [f64; 2]) {
        self.group(0, "LINE");
        self.group(8, layer);
        self.point(10, a);
        self.point(11, b);
    }

    fn polyline(&mut self, layer: &str, points: &[[f64; 2]], closed: bool) {
        self.group(0, "POLYLINE");
        self.group(8, layer);
        self.group(66, 1);
        self.point(10, [0.0, 0.0]);
        self.group(70, i32::from(closed));
        for p in points {
            self.group(0, "VERTEX");
            self.group(8, layer);
            self.point(10, *p);
        }
        self.group(0, "SEQEND");
        self.group(8, layer);
    }

    fn text(&mut self, at: [f64; 2], height: f64, text: &str) {
        self.group(0, "TEXT");
        self.group(8, "TEXT");
        self.point(10, at);
        self.group(40, format!("{height:.4}"));
        // R12 knows no Unicode.
        let ascii: String = text.chars().map(|c| if c.is_ascii() && !c.is_ascii_control() { c } else { '?' }).collect();
        self.group(1, ascii);
    }
}

/// The file for one blade of a propeller; `boat` and `date` are written beside it. Empty without such a blade.
#[must_use]
pub fn templates(propeller: &Propeller, index: usize, boat: &str, date: &str) -> String {
    let Some(blade) = propeller.blades.get(index) else { return String::new() };
    let mut file = File { out: String::new() };
    file.group(0, "SECTION");
    file.group(2, "HEADER");
    file.group(9, "$ACADVER");
    file.group(1, "AC1009");
    file.group(0, "ENDSEC");
    file.group(0, "SECTION");
    file.group(2, "TABLES");
    file.group(0, "TABLE");
    file.group(2, "LAYER");
    file.group(70, LAYERS.len());
    for (name, colour) in LAYERS {
        file.group(0, "LAYER");
        file.group(2, name);
        file.group(70, 0);
        file.group(62, colour);
        file.group(6, "CONTINUOUS");
    }
    file.group(0, "ENDTAB");
    file.group(0, "ENDSEC");
    file.group(0, "SECTION");
    file.group(2, "ENTITIES");
    entities(&mut file, propeller, blade, index, boat, date);
    file.group(0, "ENDSEC");
    file.group(0, "EOF");
    file.out
}

fn entities(file: &mut File, propeller: &Propeller, blade: &Blade, index: usize, boat: &str, date: &str) {
    let side = propeller.hand.sign();
    let hub = propeller.hub.radius();
    let mm = |p: [f64; 2]| [1000.0 * side * p[0], 1000.0 * p[1]];
    let outline = expanded_outline(blade, hub, 120);
    let ring: Vec<[f64; 2]> =
        outline.leading.iter().copied().chain(outline.trailing.iter().rev().copied()).map(mm).collect();
    file.polyline("OUTLINE", &ring, true);
    file.line("AXIS", [0.0, 0.0], [0.0, 1000.0 * blade.tip_radius]);
    // A square of 100 mm to prove the print by.
    let left = ring.iter().map(|p| p[0]).fold(0.0, f64::min) - 140.0;
    file.polyline("AXIS", &[[left, 0.0], [left + 100.0, 0.0], [left + 100.0, 100.0], [left, 100.0]], true);
    file.text([left, 106.0], 5.0, "100 mm: prove the print by this square");
    let hand = if propeller.hand == Hand::Right { "right-handed" } else { "left-handed" };
    file.text([left, -14.0], 5.0, &format!("{boat}  {date}  blade {}  {hand}", index + 1));
    file.text([left, -24.0], 4.0, "expanded outline seen from astern; full size, mm");
    let shape = Shape::of(blade);
    let mut x = ring.iter().map(|p| p[0]).fold(0.0, f64::max) + 60.0;
    for share in RADII {
        let radius = share * blade.tip_radius;
        if radius <= hub {
            continue;
        }
        let cut = shape.cut(radius);
        if cut.chord <= 0.0 {
            continue;
        }
        let ends = [1.0, -1.0].map(|s| mm([s * 0.5 * cut.chord - cut.skew_back, radius]));
        file.line("AXIS", ends[0], ends[1]);
        let (sin, cos) = cut.blade_angle().sin_cos();
        let chord = 1000.0 * cut.chord;
        // Trailing edge left, leading edge right and up; a left-handed one is mirrored about the middle of its base.
        let place = |along: f64, off: f64| {
            let across = along * cos - off * sin;
            let across = if side > 0.0 { across } else { chord * cos - across };
            [x + across, FOOT + along * sin + off * cos]
        };
        let (tail, nose) = (place(0.0, 0.0), place(chord, 0.0));
        file.polyline("TEMPLATE", &[[tail[0], 0.0], [nose[0], 0.0], nose, tail], true);
        let face: Vec<[f64; 2]> = (0..=40)
            .map(|i| {
                let fraction = 1.0 - f64::from(i) / 40.0;
                place(chord * (1.0 - fraction), 1000.0 * shape.offset(&cut, fraction)[0])
            })
            .collect();
        file.polyline("FACE", &face, false);
        let notes = [
            format!("{share:.1} R = {:.1} mm", 1000.0 * radius),
            format!(
                "pitch {:.1} mm ({:.2} in), angle {:.2} deg",
                1000.0 * cut.pitch,
                cut.pitch / 0.0254,
                cut.blade_angle().to_degrees()
            ),
            format!("chord {chord:.1} mm, thickness {:.1} mm", 1000.0 * cut.thickness),
        ];
        for (i, note) in (0_u8..).zip(&notes) {
            file.text([x, -8.0 - 7.0 * f64::from(i)], 4.0, note);
        }
        x += (chord * cos).max(110.0) + 40.0;
    }
}
