//! The choice of methods over any form.

use super::*;

const KINDS: [Kind; 4] = [Kind::Displacement, Kind::Sailing, Kind::SemiDisplacement, Kind::Planing];

fn sea() -> Water {
    Water { density: 1025.976, viscosity: 1.1892e-6, vapour_pressure: 1674.0 }
}

/// A number from 0 to 1, always the same row (SplitMix64).
struct Row(u64);

impl Row {
    fn next(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        low + (high - low) * ((z ^ (z >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Any form an owner's careless figures could make, and worse.
    fn form(&mut self) -> Form {
        let length = self.next(2.5, 25.0);
        let beam = length / self.next(1.6, 7.0);
        let draught = beam / self.next(1.5, 12.0);
        let block = self.next(0.25, 0.85);
        let mass = 1025.0 * length * beam * draught * block;
        Form {
            length,
            beam,
            draught,
            mass,
            prismatic: self.next(0.5, 0.85),
            midship: self.next(0.5, 0.98),
            waterplane: self.next(0.6, 0.95),
            lcb_percent: self.next(-8.0, 3.0),
            half_entrance_deg: self.next(8.0, 45.0),
            transom_ratio: self.next(0.0, 1.0),
            appendage_area: self.next(0.0, 0.1) * length * beam,
            appendage_factor: self.next(1.0, 4.0),
            chine_beam: beam * self.next(0.7, 1.1),
            deadrise_deg: self.next(0.0, 30.0),
            lcg: length * self.next(0.1, 0.8),
            vcg: beam * self.next(0.0, 0.6),
            thrust_angle_deg: self.next(-4.0, 16.0),
            air_area: self.next(0.5, 2.0) * beam,
            air_drag: self.next(0.5, 1.2),
            roughness: self.next(0.0, 1.0).powi(4) * 5e-3,
        }
    }
}

fn launch() -> Form {
    Form {
        length: 8.4,
        beam: 2.9,
        draught: 0.66,
        mass: 6500.0,
        prismatic: 0.58,
        midship: 0.68,
        waterplane: 0.70,
        lcb_percent: -2.0,
        half_entrance_deg: 22.0,
        transom_ratio: 0.0,
        appendage_area: 0.8,
        appendage_factor: 1.8,
        chine_beam: 2.7,
        deadrise_deg: 15.0,
        lcg: 3.8,
        vcg: 0.8,
        thrust_angle_deg: 8.0,
        air_area: 4.0,
        air_drag: 0.9,
        roughness: 50e-6,
    }
}

/// Finds out whether the resistance jumps between two speeds: a steep piece gets less steep when looked at closely, a
/// jump does not.
fn jumps(hull: &Hull, mut low: f64, mut high: f64) -> bool {
    let at = |v: f64| hull.at(v, &mut None).value.total().ln();
    for _ in 0..12 {
        let (a, b, c) = (at(low), at(0.5 * (low + high)), at(high));
        if (c - a).abs() < 0.02 {
            return false;
        }
        if (b - a).abs() > (c - b).abs() {
            high = 0.5 * (low + high);
        } else {
            low = 0.5 * (low + high);
        }
    }
    true
}

#[test]
fn positive_finite_and_without_jumps_for_any_form() {
    let mut row = Row(20_251);
    for i in 0..5000 {
        let kind = KINDS[i % 4];
        let form = row.form();
        let hull = Hull::new(kind, &form, &sea());
        let mut start = None;
        let mut last: Option<(f64, f64)> = None;
        let mut speed = 0.4;
        while speed < 25.0 {
            let noted = hull.at(speed, &mut start);
            let p = noted.value;
            let total = p.total();
            assert!(total.is_finite() && total > 0.0, "{kind:?} {form:?} at {speed}: {p:?}");
            let parts = [p.friction, p.form, p.roughness, p.appendages, p.transom, p.spray, p.air];
            assert!(parts.iter().all(|p| *p >= -1e-9), "{kind:?} {form:?} at {speed}: {p:?}");
            if let Some((before, value)) = last
                && (total / value).ln().abs() > 0.12
            {
                assert!(!jumps(&hull, before, speed), "{kind:?} {form:?} between {before} and {speed}");
            }
            last = Some((speed, total));
            speed *= 1.05;
        }
    }
}

#[test]
fn nonsense_in_no_nonsense_out() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -5.0, 1e12] {
        let all = Form {
            length: bad,
            beam: bad,
            draught: bad,
            mass: bad,
            prismatic: bad,
            midship: bad,
            waterplane: bad,
            lcb_percent: bad,
            half_entrance_deg: bad,
            transom_ratio: bad,
            appendage_area: bad,
            appendage_factor: bad,
            chine_beam: bad,
            deadrise_deg: bad,
            lcg: bad,
            vcg: bad,
            thrust_angle_deg: bad,
            air_area: bad,
            air_drag: bad,
            roughness: bad,
        };
        for kind in KINDS {
            for form in [all, Form { lcg: bad, ..launch() }, Form { mass: bad, ..launch() }] {
                for speed in [bad, 0.1, 3.0, 12.0] {
                    let total = total(kind, &form, &sea(), speed).value.total();
                    assert!(total.is_finite() && total >= 0.0, "{kind:?} {bad} {speed}: {total}");
                }
                let curve = curve(kind, &form, &sea(), bad).value;
                assert!(curve.resistance.iter().all(|r| r.is_finite()), "{kind:?} {bad}");
            }
        }
    }
}

#[test]
fn a_displacement_boat_meets_its_wall() {
    let weight = 6500.0 * GRAVITY;
    let unit = (GRAVITY * 8.4_f64).sqrt();
    for kind in [Kind::Displacement, Kind::Sailing] {
        let at = |fn_: f64| total(kind, &launch(), &sea(), fn_ * unit).value.total();
        // Twice the speed from Fn 0.3 costs more than ten times the resistance, where a square law costs four.
        assert!(at(0.6) > 10.0 * at(0.3), "{kind:?}");
        // From 0.40 to 0.50 the resistance rises at least with the fourth power of speed.
        assert!(at(0.5) / at(0.4) > (0.5_f64 / 0.4).powi(4), "{kind:?}");
        assert!(at(0.6) > 0.10 * weight && at(0.6) < 0.25 * weight, "{kind:?} {}", at(0.6) / weight);
    }
}

#[test]
fn the_curve_is_the_total_at_its_points() {
    for kind in KINDS {
        let noted = curve(kind, &launch(), &sea(), 12.0);
        for i in 1..crate::hull::curve::POINTS {
            let speed = noted.value.step * i as f64;
            let want = total(kind, &launch(), &sea(), speed).value.total();
            // The planing search begins elsewhere: its tolerance.
            assert!((noted.value.resistance[i] / want - 1.0).abs() < 1e-4, "{kind:?} {speed}");
        }
        assert!(!noted.notes.has(Note::Porpoising));
    }
}

#[test]
fn handbook_share_moves_towards_the_rule_and_no_further() {
    let form = launch();
    let plain = curve(Kind::Displacement, &form, &sea(), 5.0).value;
    let whole = with_handbook(&plain, Kind::Displacement, &form, &sea(), 1.0);
    let half = with_handbook(&plain, Kind::Displacement, &form, &sea(), 0.5);
    for i in 1..crate::hull::curve::POINTS {
        let (a, b, c) = (plain.resistance[i], half.resistance[i], whole.resistance[i]);
        assert!((b * b / (a * c) - 1.0).abs() < 1e-9);
    }
    // At speed-length ratio 1.35 the share is whole.
    let i = (0.4 * (GRAVITY * 8.4_f64).sqrt() / plain.step).round();
    let rule = handbook::gerr(&form, i * plain.step, handbook::EFFICIENCY_DISPLACEMENT).value;
    assert!((whole.resistance[i as usize] / rule - 1.0).abs() < 1e-9);
    assert_eq!(with_handbook(&plain, Kind::Displacement, &form, &sea(), 0.0), plain);
}
