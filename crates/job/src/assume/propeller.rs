//! The propeller where stamp and owner are silent.

use super::Known;
use super::engine::Machinery;
use crate::model::{Arrangement, Blades, Cup, Growth, Job, Section, Width};

pub(super) struct Propeller {
    pub diameter: Known,
    pub pitch: Option<Known>,
    pub blades: (u8, bool),
    pub area_ratio: Known,
    pub flat_share: Known,
    pub cup: Known,
    pub blade_roughness: Known,
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
        pitch: Known::stated(p.pitch.as_ref()),
        area_ratio: Known::stated(p.area_ratio.as_ref()).unwrap_or_else(|| area_ratio(blades.0, p.width, leg)),
        flat_share: match p.section {
            Some(Section::Airfoil) => Known::assumed(0.0, 0.1, 0.3, "airfoil sections").asserted(),
            Some(Section::FlatFaced) => Known::assumed(0.7, 0.9, 1.0, "flat-faced sections").asserted(),
            Some(Section::Ducted) => Known::assumed(0.0, 0.0, 0.0, "in a nozzle").asserted(),
            None if folding => Known::assumed(0.4, 0.7, 1.0, "thin flat blades usual; common practice"),
            None => Known::assumed(0.15, 0.5, 0.85, "section style unknown: between airfoil and flat-faced"),
        },
        cup: match p.cup {
            Some(stated) => cup(stated).asserted(),
            None if leg => Known::assumed(0.0, 0.025, 0.06, "cup unknown: many leg propellers carry some; common practice"),
            None => Known::assumed(0.0, 0.005, 0.025, "no cup spoken of"),
        },
        blade_roughness: blade_roughness(p.growth),
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
    let mut known =
        Known::assumed(middle / wide, middle, middle * wide, "blade area usual for the number of blades; common practice");
    known.dist = known.dist.within(0.15, 1.15);
    known.stated = stated;
    known
}

/// Cup as a fraction added to the pitch: a normal cup acts like an inch or 5 % more pitch; `common practice, no source`.
#[must_use]
pub fn cup(cup: Cup) -> Known {
    let (low, middle, high) = match cup {
        Cup::None => (0.0, 0.0, 0.0),
        Cup::Light => (0.01, 0.025, 0.045),
        Cup::Medium => (0.025, 0.05, 0.08),
        Cup::Heavy => (0.045, 0.08, 0.12),
    };
    Known::assumed(low, middle, high, "a normal cup acts like about 5 % more pitch; common practice, no source")
}

/// Blade roughness height kp, m, by state; ITTC-78 takes 30 µm for a new blade, the rest `estimate`.
#[must_use]
pub fn blade_roughness(growth: Option<Growth>) -> Known {
    const MICRON: f64 = 1e-6;
    let (low, middle, high) = match growth {
        Some(Growth::Clean) => (20.0, 40.0, 100.0),
        Some(Growth::LightSlime) => (60.0, 150.0, 300.0),
        Some(Growth::HeavySlime) => (200.0, 400.0, 800.0),
        Some(Growth::SmallShell) => (700.0, 1500.0, 3000.0),
        Some(Growth::MediumShell) => (2000.0, 4000.0, 7000.0),
        Some(Growth::HeavyShell) => (5000.0, 8000.0, 15_000.0),
        None => (30.0, 70.0, 300.0),
    };
    let mut known = Known::assumed(
        low * MICRON,
        middle * MICRON,
        high * MICRON,
        if growth.is_some() { "state of the blades" } else { "state of the blades unknown" },
    );
    known.stated = growth.is_some();
    known
}
