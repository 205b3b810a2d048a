//! The bore: hub in section, taper, keyway, with dimensions; what nobody measured is left open to be written in.

use crate::pen::{Hang, P, Pen};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN};
use counsel::phrase::number;
use job::Job;

/// Hub and bore as far as they were measured, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bore {
    /// Bore at the large, forward end.
    pub large: Option<f64>,
    /// Bore at the small, after end.
    pub small: Option<f64>,
    /// Length between the two.
    pub taper_length: Option<f64>,
    /// Length of the hub.
    pub hub_length: Option<f64>,
    /// Outside diameter of the hub.
    pub hub_diameter: Option<f64>,
    /// Width of the keyway.
    pub keyway_width: Option<f64>,
    /// Depth of the keyway at its side.
    pub keyway_depth: Option<f64>,
}

impl Bore {
    /// From a job's survey; all open without one.
    #[must_use]
    pub fn of_job(job: &Job) -> Bore {
        let Some(hub) = job.survey.as_ref().map(|s| &s.hub) else { return Bore::default() };
        let of = |q: &Option<job::Quantity>| q.as_ref().map(|q| q.middle).filter(|m| m.is_finite() && *m > 0.0);
        Bore {
            large: of(&hub.bore_large),
            small: of(&hub.bore_small),
            taper_length: of(&hub.taper_length).or(of(&hub.length)),
            hub_length: of(&hub.length),
            hub_diameter: of(&hub.diameter),
            keyway_width: of(&hub.keyway_width),
            keyway_depth: of(&hub.keyway_depth),
        }
    }

    /// Length in which the diameter loses one: 16 for 1:16. `None` when it was not measured or the bore is parallel.
    #[must_use]
    pub fn taper(&self) -> Option<f64> {
        let lost = self.large? - self.small?;
        (lost > 1e-5).then(|| self.taper_length.map(|l| l / lost)).flatten()
    }

    /// To scale: the bore and the length of the hub are known.
    fn to_scale(&self) -> bool {
        self.large.is_some() && self.small.is_some() && self.hub_length.is_some()
    }

    fn sentence(&self) -> String {
        match (self.large, self.small, self.taper()) {
            (Some(large), Some(small), Some(taper)) => format!(
                "Bore {} at the forward end, {} at the after end: 1 in {} on the diameter. Measure the shaft as well before boring.",
                fine(large),
                fine(small),
                number(taper, 0.1)
            ),
            _ => {
                "Bore: not measured whole. Take both diameters, the length between them and the keyway before ordering."
                    .to_owned()
            }
        }
    }
}

/// A length that is bored or keyed to: to the hundredth of a millimetre and the thousandth of an inch.
fn fine(metres: f64) -> String {
    format!("{} mm, {:.3} in", number(1000.0 * metres, 0.01), metres / 0.0254)
}

/// A dimension's words, or room to write them.
fn words(value: Option<f64>) -> String {
    value.map_or_else(|| "__________ mm / in".to_owned(), fine)
}

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, bore: &Bore) -> Picture {
    let sentence = bore.sentence();
    let mut drawing = Drawing::open(sheet, &sentence);
    let narrow = sheet.narrow();
    // Usual proportions stand in for what nobody measured; the drawing then says that it is not to scale.
    let large = bore.large.unwrap_or(0.030);
    let hub_length = bore.hub_length.unwrap_or(3.0 * large).clamp(0.5 * large, 12.0 * large);
    let taper_length = bore.taper_length.unwrap_or(hub_length).min(hub_length);
    let small = bore.small.unwrap_or(large - taper_length / 16.0).clamp(0.2 * large, large);
    let outside = bore.hub_diameter.unwrap_or(2.1 * large).max(1.15 * large);
    let (key_wide, key_deep) = (bore.keyway_width.unwrap_or(0.25 * large), bore.keyway_depth.unwrap_or(0.12 * large));
    let room = sheet.room();
    let wide = if narrow { 0.62 * room } else { 0.40 * room };
    let s = (wide / hub_length).min(if narrow { 130.0 } else { 170.0 } / outside);
    let top = drawing.top + 46.0;
    let (half, middle) = (0.5 * s * outside, top + 0.5 * s * outside);
    let left = MARGIN + if narrow { 20.0 } else { 60.0 };
    let right = left + s * hub_length;
    let radius = |x: f64| {
        // Forward is right; the taper ends where it was measured.
        let along = ((right - x) / (s * taper_length)).clamp(0.0, 1.0);
        0.5 * s * (large + (small - large) * along)
    };
    let pen = &mut drawing.pen;
    for up in [-1.0, 1.0] {
        let edge = |x: f64| middle + up * radius(x);
        let wall: Vec<P> =
            vec![[left, middle + up * half], [right, middle + up * half], [right, edge(right)], [left, edge(left)]];
        hatch(pen, left, right, half, &radius, middle, up);
        pen.shape("f", &wall);
    }
    let key: Vec<P> = [left, right].iter().map(|x| [*x, middle - radius(*x) - s * key_deep]).collect();
    pen.path("m g", &key);
    pen.line("h c", [left - 14.0, middle], [right + 14.0, middle]);

    // Dimensions of the section.
    let over = top - 16.0;
    extension(pen, [left, middle - half], [left, over - 4.0]);
    extension(pen, [right, middle - half], [right, over - 4.0]);
    let centre = 0.5 * (left + right);
    pen.dimension(
        [left, over],
        [right, over],
        [centre, over - 6.0],
        Hang::Middle,
        &format!("hub {}", words(bore.hub_length)),
    );
    let bottom = middle + half;
    for (x, r, value, name, hang, row) in [
        (left, radius(left), bore.small, "aft", Hang::Start, 2.0),
        (right, radius(right), bore.large, "forward", Hang::End, 1.0),
    ] {
        let out = if x < centre { x - 10.0 } else { x + 10.0 };
        pen.line("h", [x, middle - r], [out - (x - out).signum() * 4.0, middle - r]);
        pen.line("h", [x, middle + r], [out - (x - out).signum() * 4.0, middle + r]);
        let y = bottom + 8.0 + LEADING * row;
        pen.line("h", [out, middle - r], [out, y - 11.0]);
        let at = if x < centre { out - 4.0 } else { out + 4.0 };
        let hang_at = if narrow { [if x < centre { MARGIN } else { at }, y] } else { [at, y] };
        pen.text("o", hang_at, hang, &format!("bore {name} {}", words(value)));
    }

    // The end seen from forward, with the keyway.
    let (end_at, mut y) = if narrow {
        let y = bottom + 30.0 + 3.0 * LEADING + half;
        ([MARGIN + half + 10.0, y], y + half + 24.0)
    } else {
        ([right + 150.0 + half, middle], bottom + 12.0 + 3.5 * LEADING)
    };
    pen.circle("f", end_at, half);
    pen.circle("f", end_at, 0.5 * s * large);
    let (k, r) = (0.5 * s * key_wide, 0.5 * s * large);
    let seat = (r * r - k * k).max(0.0).sqrt();
    let roof = seat + s * key_deep;
    let outline: Vec<P> = [[-k, -seat], [-k, -roof], [k, -roof], [k, -seat]]
        .iter()
        .map(|p| [end_at[0] + p[0], end_at[1] + p[1]])
        .collect();
    pen.shape("p", &outline);
    pen.path("f", &outline);
    pen.line("h c", [end_at[0] - half - 8.0, end_at[1]], [end_at[0] + half + 8.0, end_at[1]]);
    pen.line("h c", [end_at[0], end_at[1] - half - 8.0], [end_at[0], end_at[1] + half + 8.0]);
    let beside = end_at[0] + half + 14.0;
    pen.line("h", [end_at[0] + k, end_at[1] - roof], [beside - 4.0, end_at[1] - roof - 6.0]);
    let lines = [
        "keyway, wide".to_owned(),
        words(bore.keyway_width),
        "deep at its side".to_owned(),
        words(bore.keyway_depth),
        "hub, outside".to_owned(),
        words(bore.hub_diameter),
    ];
    for (i, text) in (0_u8..).zip(&lines) {
        let class = if i % 2 == 0 { "o s" } else { "o" };
        pen.text(class, [beside, end_at[1] - half + 4.0 + LEADING * f64::from(i)], Hang::Start, text);
    }
    let scale = if bore.to_scale() {
        "To scale, forward is right."
    } else {
        "Not to scale: usual proportions, forward is right."
    };
    pen.text("i s", [MARGIN, y], Hang::Start, scale);
    y += 6.0;
    let desc = format!("Hub in section and from forward. {sentence} {scale}");
    drawing.close("Bore", &desc, y)
}

/// A thin line from the part to its dimension.
fn extension(pen: &mut Pen, from: P, to: P) {
    pen.line("h", from, to);
}

/// Slanted lines through one wall of the section.
fn hatch(pen: &mut Pen, left: f64, right: f64, half: f64, radius: &dyn Fn(f64) -> f64, middle: f64, up: f64) {
    let mut runs = Vec::new();
    let mut at = left - half;
    while at < right {
        // Outward at 45 degrees from the bore's edge to the hub's.
        let start = at.max(left);
        let inner = radius(start) + (start - at);
        let end = (at + half - radius(start)).min(right);
        if end > start && inner < half {
            let outer = inner + (end - start);
            runs.push(vec![[start, middle + up * inner], [end, middle + up * outer.min(half)]]);
        }
        at += 8.0;
    }
    pen.paths("h", &runs);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_taper_is_that_of_the_diameter() {
        // SAE J755: 1:16 on the diameter; 1 1/4 in shaft, hub 3 3/4 in.
        let bore = Bore {
            large: Some(0.031_75),
            small: Some(0.031_75 - 0.095_25 / 16.0),
            taper_length: Some(0.095_25),
            ..Bore::default()
        };
        assert!((bore.taper().unwrap_or(0.0) - 16.0).abs() < 1e-9);
        assert_eq!(Bore::default().taper(), None);
    }

    #[test]
    fn what_was_not_measured_is_left_open() {
        let sheet = Sheet { boat: "Dunlin", date: "", width: 760.0 };
        let open = picture(&sheet, &Bore::default());
        assert!(open.svg.contains("__________ mm / in") && open.svg.contains("Not to scale"));
        assert!(!open.svg.contains("NaN"));
        for wild in [1e-9, 1e6] {
            let bore = Bore { large: Some(wild), small: Some(2.0), hub_length: Some(1e-6), ..Bore::default() };
            assert!(!picture(&Sheet { width: 320.0, ..sheet }, &bore).svg.contains("NaN"));
        }
    }
}
