//! The propeller where stamp and owner are silent.

use super::Known;
use super::engine::Machinery;
use crate::model::{Arrangement, Blades, Job, Section, Width};

pub(super) struct Propeller {
    pub diameter: Known,
    pub pitch: Option<Known>,
    pub blades: (u8, bool),
    pub area_ratio: Known,
    pub flat_share: Known,
    pub immersion: Known,
}

pub(super) fn propeller(job: &Job, arrangement: Arrangement, machinery: &Machinery) -> Propeller {
    let p = &job.propeller;
    let leg = matches!(arrangement, Arrangement::Outboard | Arrangement::Sterndrive);
    let diameter = Known::stated(p.diameter.as_ref()).unwrap_or_else(|| {
        // Handbook rule D[in] = 632.7 SHP^0.2 / N^0.6 (Gerr 1989, formula 5-3, from memory); legs carry less for more rpm.
        let hp = 0.96 * machinery.power.dist.middle / 745.7;
        let rpm = 60.0 * machinery.rated_speed.dist.middle / machinery.reduction.dist.middle;
        let middle = 0.0254 * 632.7 * hp.powf(0.2) / rpm.powf(0.6);
        Known::assumed(0.88 * middle, middle, 1.10 * middle, "handbook diameter for the power (Gerr 1989, from memory)")
    });
    let blades = p.blades.map_or((3, false), |n| (n, true));
    let folding = matches!(p.kind, Some(Blades::Folding | Blades::Feathering));
    Propeller {
        pitch: Known::stated(p.pitch.as_ref()).map(|known| flat_blades(known, p.kind)),
        area_ratio: Known::stated(p.area_ratio.as_ref()).unwrap_or_else(|| area_ratio(blades.0, p.width, leg)),
        flat_share: match p.section {
            Some(Section::Airfoil) => Known::assumed(0.0, 0.1, 0.3, "airfoil sections").asserted(),
            Some(Section::FlatFaced) => Known::assumed(0.7, 0.9, 1.0, "flat-faced sections").asserted(),
            Some(Section::Ducted) => Known::assumed(0.0, 0.0, 0.0, "in a nozzle").asserted(),
            None if folding => Known::assumed(0.4, 0.7, 1.0, "thin flat blades usual; common practice"),
            None => Known::assumed(0.15, 0.5, 0.85, "section style unknown: between airfoil and flat-faced"),
        },
        immersion: Known::stated(p.immersion.as_ref()).unwrap_or_else(|| {
            let d = diameter.dist.middle;
            let (low, middle, high) = if leg { (0.5, 0.7, 1.0) } else { (0.8, 1.2, 2.0) };
            Known::assumed(low * d, middle * d, high * d, "shaft depth usual for the diameter; common practice")
        }),
        diameter,
        blades,
    }
}

impl Known {
    /// Marks a band that follows from something that was stated.
    fn asserted(mut self) -> Known {
        self.stated = true;
        self
    }
}

/// Expanded area ratio by number of blades and width in words; `common practice, no source`.
#[must_use]
pub fn area_ratio(blades: u8, width: Option<Width>, leg: bool) -> Known {
    let ordinary = match (blades, leg) {
        (0..=2, _) => 0.31,
        (3, false) => 0.52,
        (3, true) => 0.58,
        (4, false) => 0.64,
        (4, true) => 0.68,
        (5, _) => 0.78,
        _ => 0.85,
    };
    let (factor, wide, stated) = match width {
        Some(Width::Narrow) => (0.80, 1.10, true),
        Some(Width::Ordinary) => (1.0, 1.10, true),
        Some(Width::Wide) => (1.22, 1.10, true),
        None => (1.0, 1.18, false),
    };
    let middle = ordinary * factor;
    let mut known = Known::assumed(
        middle / wide,
        middle,
        middle * wide,
        "blade area usual for the number of blades; common practice",
    );
    known.dist = known.dist.within(0.15, 1.15);
    known.stated = stated;
    known
}

/// Folding and feathering blades: what is set or stamped is not the pitch a fixed blade of that mark would have.
///
/// A feathering blade is flat: set to an angle at 0.7 R, its local pitch grows in proportion to the radius, and the outer
/// third makes most of the thrust. Thrust-weighted it acts like some 8 % more pitch, 0 to 25 %; `estimate` from
/// `P = 2π r tan φ` at constant angle. Folding blades are twisted but seldom measured.
fn flat_blades(mut known: Known, kind: Option<Blades>) -> Known {
    let (low, middle, high, why) = match kind {
        Some(Blades::Feathering) => (0.98, 1.08, 1.25, "flat blades, pitch rising to the tip"),
        Some(Blades::Folding) => (0.93, 1.0, 1.10, "folding blades, seldom measured"),
        _ => return known,
    };
    let d = known.dist;
    let combine = |own: f64, by: f64| (own * own + by * by).sqrt();
    let below = combine(1.0 - d.low / d.middle, 1.0 - low / middle);
    let above = combine(d.high / d.middle - 1.0, high / middle - 1.0);
    let m = d.middle * middle;
    known.dist = super::Dist::band(m * (1.0 - below), m, m * (1.0 + above));
    known.source = format!("{}; {why}", known.source);
    known
}
