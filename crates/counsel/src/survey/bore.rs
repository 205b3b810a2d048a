//! The bore against the standards of shaft ends: which taper it is, and which it could be taken for.
//!
//! SAE J755 (reaffirmed 2015), inch shafts 3/4 to 5 1/2 in, taper 1:16 on the diameter: the rules below reproduce every
//! printed figure of its table (two copies agree to 3 1/2 in, above it one). Dimensions are based on the small end, so that
//! hubs of different length seat with the nut face at the same place. From 6 in its taper is 1:12; its figures there were not
//! seen. ISO 4566:1992, 20 to 160 mm, taper 1:10: the table was not seen whole; 25 and 30 mm from one fitting sheet, the
//! other rows are from memory and are marked so. ISO 8845:1994 has 1:16 on millimetre shafts; its table was not seen.

use super::report::{BoreReport, TaperMatch};
use crate::phrase::number;
use hydro::blade::Estimate;

const INCH: f64 = 0.0254;

/// One size of shaft end, as the hub sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct ShaftEnd {
    /// `SAE J755` or `ISO 4566`.
    pub standard: &'static str,
    /// As it is called: `1 1/4 in`, `25 mm`.
    pub name: String,
    /// Shaft diameter, m.
    pub shaft: f64,
    /// Diameter lost per length.
    pub taper: f64,
    /// Hub bore at the small end, m; `None` where the table does not say.
    pub small: Option<f64>,
    /// Hub length at which the large end of the bore equals the shaft, m.
    pub hub_length: Option<f64>,
    /// Length of the shaft's taper, m.
    pub taper_length: Option<f64>,
    /// Diameter of the shaft's small end, m.
    pub shaft_small: Option<f64>,
    /// Key width, m.
    pub key: Option<f64>,
    /// How far it is trusted.
    pub trust: &'static str,
}

/// The 20 sizes of SAE J755 with a taper of 1:16, inches: shaft diameter, key width.
pub const SAE_J755: [(f64, f64); 20] = [
    (0.75, 0.1875),
    (0.875, 0.25),
    (1.0, 0.25),
    (1.125, 0.25),
    (1.25, 0.3125),
    (1.375, 0.3125),
    (1.5, 0.375),
    (1.75, 0.4375),
    (2.0, 0.5),
    (2.25, 0.5625),
    (2.5, 0.625),
    (2.75, 0.625),
    (3.0, 0.75),
    (3.25, 0.75),
    (3.5, 0.875),
    (3.75, 0.875),
    (4.0, 1.0),
    (4.5, 1.125),
    (5.0, 1.25),
    (5.5, 1.25),
];

/// A shaft end of SAE J755 by its rules (derived from its table, exact), inches: taper length 3 D - 1/4 to 2 1/2 in, 3 D - 3/8
/// to 4 in, 2.5 D - 1/2 above; the hub overhangs the small end of the taper by 1/4, 3/8, 1/2; hub length 3 D to 4 in, 2.5 D
/// above; bore at the small end = shaft's small end - overhang/16.
#[must_use]
pub fn sae_j755(shaft: f64, key: f64) -> ShaftEnd {
    let (times, overhang) = if shaft <= 2.5 {
        (3.0, 0.25)
    } else if shaft <= 4.0 {
        (3.0, 0.375)
    } else {
        (2.5, 0.5)
    };
    let length = times * shaft - overhang;
    let small = shaft - length / 16.0;
    ShaftEnd {
        standard: "SAE J755",
        name: format!("{} in", fraction(shaft)),
        shaft: shaft * INCH,
        taper: 1.0 / 16.0,
        small: Some((small - overhang / 16.0) * INCH),
        hub_length: Some(times * shaft * INCH),
        taper_length: Some(length * INCH),
        shaft_small: Some(small * INCH),
        key: Some(key * INCH),
        trust: if shaft <= 3.5 { "two copies agree" } else { "one copy" },
    }
}

/// The sizes of ISO 4566 known here (partial): diameter, hub length, key width, mm.
const ISO_4566: [(f64, Option<f64>, Option<f64>, &str); 6] = [
    (25.0, Some(60.0), Some(6.0), "one copy (a fitting sheet)"),
    (30.0, Some(80.0), Some(8.0), "one copy (a fitting sheet)"),
    (35.0, None, Some(10.0), "from memory"),
    (40.0, None, Some(12.0), "from memory, uncertain"),
    (45.0, None, Some(14.0), "from memory, uncertain"),
    (50.0, None, Some(14.0), "from memory, uncertain"),
];

/// Every shaft end known.
#[must_use]
pub fn shaft_ends() -> Vec<ShaftEnd> {
    let iso = ISO_4566.iter().map(|&(d, hub, key, trust)| ShaftEnd {
        standard: "ISO 4566",
        name: format!("{d} mm"),
        shaft: 1e-3 * d,
        taper: 0.1,
        // The large end of the hub sits where the shaft is full: the small end follows from the hub's length.
        small: hub.map(|l| 1e-3 * (d - 0.1 * l)),
        hub_length: hub.map(|l| 1e-3 * l),
        taper_length: None,
        shaft_small: None,
        key: key.map(|k| 1e-3 * k),
        trust,
    });
    SAE_J755.iter().map(|&(d, key)| sae_j755(d, key)).chain(iso).collect()
}

/// `1 1/4` for 1.25.
fn fraction(value: f64) -> String {
    let eighths = (8.0 * value).round() as u32;
    let (whole, part) = (eighths / 8, eighths % 8);
    let part = match part {
        0 => return whole.to_string(),
        1 => "1/8",
        2 => "1/4",
        3 => "3/8",
        4 => "1/2",
        5 => "5/8",
        6 => "3/4",
        _ => "7/8",
    };
    if whole == 0 { part.to_owned() } else { format!("{whole} {part}") }
}

/// What was measured, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bore {
    /// Large end.
    pub large: Estimate,
    /// Small end.
    pub small: Estimate,
    /// Length between the two.
    pub length: Estimate,
    /// Keyway width.
    pub keyway: Option<Estimate>,
}

/// A size of shaft end and how far the bore lies from it.
struct Fit {
    end: ShaftEnd,
    /// Distance in standard deviations.
    distance: f64,
    /// Measured less expected at the end that was compared, m.
    off: f64,
}

impl Bore {
    /// Diameter lost per length.
    #[must_use]
    pub fn taper(&self) -> Option<Estimate> {
        let lost = self.large.value - self.small.value;
        if self.length.value <= 0.0 || !self.length.is_finite() {
            return None;
        }
        let value = lost / self.length.value;
        let sd =
            (self.large.sd.hypot(self.small.sd) / self.length.value).hypot(value * self.length.sd / self.length.value);
        Some(Estimate::new(value, sd))
    }

    /// How far a bore lies from a size. The small end says it where the table has it, since there hubs of any length seat
    /// alike; else the large end against the full shaft, within a millimetre.
    fn fit(&self, end: ShaftEnd, taper: Estimate) -> Fit {
        // Wear, lapping and the standard's own tolerance: 0.05 mm at an end, 2 in 1000 of length on the taper (estimate).
        let slope = (taper.value - end.taper) / taper.sd.hypot(0.002);
        let (off, room) = match (end.standard, end.small) {
            ("SAE J755", Some(small)) => (self.small.value - small, self.small.sd.hypot(0.000_15)),
            // A hub shorter than the shaft's taper may stand off the shoulder: the large end is a little small.
            _ => (self.large.value - end.shaft, self.large.sd.hypot(0.000_5)),
        };
        Fit { distance: slope.hypot(off / room), off, end }
    }

    /// Compares the bore with every known size.
    #[must_use]
    pub fn report(&self) -> BoreReport {
        let mut notes = vec![
            "Taper is diameter lost per length; it is measured, never assumed: 1:10, 1:12, 1:16 and 1:20 all occur.".to_owned(),
            "SAE J755: sizes to 5 1/2 in compared; its 1:12 sizes from 6 in up were not seen. ISO 4566: the table here is \
             partial (25 to 50 mm, four of six rows from memory). ISO 8845 (1:16 on millimetre shafts) is not in it."
                .to_owned(),
        ];
        let Some(taper) = self.taper() else {
            return BoreReport {
                taper: None,
                nearest: None,
                also_near: None,
                statement: "The bore's taper needs its two diameters and the length between them.".to_owned(),
                warning: None,
                notes,
            };
        };
        if taper.value.abs() < 2.0 * taper.sd.max(0.000_5) {
            return BoreReport {
                taper: Some(taper.value),
                nearest: None,
                also_near: None,
                statement: "The bore is straight within what was measured.".to_owned(),
                warning: None,
                notes,
            };
        }
        let mut fits: Vec<Fit> = shaft_ends().into_iter().map(|end| self.fit(end, taper)).collect();
        fits.sort_by(|a, b| a.distance.total_cmp(&b.distance));
        let one_in = 1.0 / taper.value;
        let (low, high) = taper.band();
        let band = if low > 0.005 {
            format!("1 in {} ({} to {})", number(one_in, 0.1), number(1.0 / high, 0.1), number(1.0 / low, 0.1))
        } else {
            format!("1 in {}", number(one_in, 0.1))
        };
        let matched = |fit: &Fit| TaperMatch {
            standard: fit.end.standard,
            shaft: fit.end.name.clone(),
            taper: format!("1:{}", number(1.0 / fit.end.taper, 1.0)),
            off: 1000.0 * fit.off,
            distance: fit.distance,
            key: fit.end.key.map(|k| 1000.0 * k),
            trust: fit.end.trust,
        };
        let [first, second, ..] = &fits[..] else {
            return BoreReport {
                taper: Some(taper.value),
                nearest: None,
                also_near: None,
                statement: band,
                warning: None,
                notes,
            };
        };
        let (nearest, next) = (matched(first), matched(second));
        let fits_one = first.distance < FITS;
        let two = fits_one && second.distance < NEAR.max(2.0 * first.distance);
        let mut statement = if fits_one {
            format!(
                "Taper {band}: the bore fits a {} shaft of {} ({}).",
                first.end.name, first.end.standard, first.end.trust
            )
        } else {
            format!(
                "Taper {band}: no known size fits; the nearest is {} of {}, {} mm off.",
                first.end.name,
                first.end.standard,
                number(1000.0 * first.off.abs(), 0.1)
            )
        };
        if let (Some(keyway), Some(key), true) = (self.keyway, first.end.key, fits_one) {
            let off = keyway.value - key;
            if off.abs() > 2.5 * keyway.sd.hypot(0.000_05) {
                statement.push_str(&format!(
                    " The keyway is {} mm wide where that size has {} mm.",
                    number(1000.0 * keyway.value, 0.01),
                    number(1000.0 * key, 0.01)
                ));
            }
        }
        let warning = if two {
            Some(format!(
                "Two sizes are near: {} of {} and {} of {}. Measure both diameters and the length again, with inside calipers, \
                 and blue the bore on the shaft before anything is ordered or driven home.",
                first.end.name, first.end.standard, second.end.name, second.end.standard
            ))
        } else if !fits_one {
            Some("Do not order by a near size: a propeller on the wrong taper works loose or breaks the shaft. Send the measures, or the shaft.".to_owned())
        } else {
            None
        };
        // A 1:16 bore that ends on a round millimetre may belong to the metric sister standard.
        let large = 1000.0 * self.large.value;
        if (taper.value - 1.0 / 16.0).abs() < 2.0 * taper.sd.hypot(0.001)
            && (large - large.round()).abs() < 0.2
            && !fits_one
        {
            notes.push(format!("The large end is near a round {} mm with a taper near 1:16: it may be ISO 8845, whose table is not here.", number(large, 1.0)));
        }
        BoreReport {
            taper: Some(taper.value),
            nearest: Some(nearest),
            also_near: two.then_some(next),
            statement,
            warning,
            notes,
        }
    }
}

/// Distances, in standard deviations, within which a size fits, and within which a second one is near.
const FITS: f64 = 3.0;
const NEAR: f64 = 4.5;

#[cfg(test)]
mod tests {
    use super::*;

    fn bore(large: f64, small: f64, length: f64) -> Bore {
        let caliper = |v: f64| Estimate::from_band(1e-3 * v, 0.000_1);
        Bore {
            large: caliper(large),
            small: caliper(small),
            length: Estimate::from_band(1e-3 * length, 0.001),
            keyway: None,
        }
    }

    /// Every size of the table, its bore made by the rule, finds itself, also with a hub an inch too short.
    #[test]
    fn every_inch_size_finds_itself() {
        for (d, key) in SAE_J755 {
            let end = sae_j755(d, key);
            for shorter in [0.0, 0.15] {
                let (Some(small), Some(length)) = (end.small, end.hub_length) else { panic!("{d}") };
                let length = length * (1.0 - shorter);
                let large = small + length / 16.0;
                let report = bore(1e3 * large, 1e3 * small, 1e3 * length).report();
                let nearest = report.nearest.expect("a match");
                assert_eq!((nearest.standard, nearest.shaft.as_str()), ("SAE J755", end.name.as_str()));
                assert!(report.statement.contains("fits"), "{}", report.statement);
            }
        }
    }

    #[test]
    fn a_metric_bore_is_not_taken_for_an_inch_one() {
        let report = bore(25.0, 19.0, 60.0).report();
        assert_eq!(report.nearest.as_ref().map(|n| (n.standard, n.shaft.as_str())), Some(("ISO 4566", "25 mm")));
        assert!(report.notes.iter().any(|n| n.contains("partial")));
    }

    /// A short hub measured with a rule cannot tell 1:16 on 1 in from 1:10 on 25 mm: both are named.
    #[test]
    fn two_near_sizes_are_both_named() {
        let rough = |v: f64, by: f64| Estimate::from_band(1e-3 * v, 1e-3 * by);
        let b = Bore { large: rough(24.6, 0.6), small: rough(21.0, 0.8), length: rough(45.0, 3.0), keyway: None };
        let report = b.report();
        let names = [report.nearest.as_ref(), report.also_near.as_ref()].map(|m| m.map(|m| m.standard));
        assert!(names.contains(&Some("SAE J755")) && names.contains(&Some("ISO 4566")), "{report:?}");
        assert!(report.warning.expect("a warning").starts_with("Two sizes are near"));
    }

    #[test]
    fn odd_tapers_straight_bores_and_wrong_keys() {
        let odd = bore(40.0, 35.0, 60.0).report();
        assert!(odd.statement.contains("no known size fits") && odd.warning.is_some(), "{odd:?}");
        assert!(bore(25.4, 25.38, 76.0).report().statement.contains("straight"));
        let end = sae_j755(1.0, 0.25);
        let small = 1e3 * end.small.expect("known");
        let mut b = bore(25.4, small, 76.2);
        b.keyway = Some(Estimate::from_band(0.008, 0.000_1));
        assert!(
            b.report().statement.contains("The keyway is 8.00 mm wide where that size has 6.35 mm"),
            "{:?}",
            b.report()
        );
    }
}
