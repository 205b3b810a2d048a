//! Shaft, key, clearance, sailing drag against printed examples and tables.

use hydro::fitting::{clearance, keys, sailing, shaft, whirling};
use validation::{assert_close, rows};

const HP: f64 = 745.699_871_582_270_2;
const PSI: f64 = 6_894.757_293_168_36;
const INCH: f64 = 0.0254;

/// Three printed shafts, to their printed digits.
#[test]
fn printed_shafts() {
    // E.Y.E. Marine Consultants, shafting calculation (public): P-6, 414 hp at 1101 rpm, SF 10, 63 000 psi: 2.68 in, 67.98 mm. The handbook
    // rounds 320 986 to 321 000, 0.0015 %.
    let torque = shaft::torque(414.0 * HP, 1101.0 / 60.0);
    let d = shaft::handbook(torque, 63_000.0 * PSI, 10.0);
    assert_close!(d / INCH, 2.68, 0.005, "E.Y.E. Marine Consultants, P-6");
    assert_close!(1e3 * d, 67.98, 0.02, "the same, mm: printed from the rounded constant");
    assert_close!(shaft::safety(torque, 63_000.0 * PSI, d), 10.0, 1e-9, "the rule read backwards");
    // The same: TP 11717, 309 kW, 1100.92 rpm, 655 MPa, propeller 762 mm.
    let tp = shaft::Tp11717::new(309e3, 1100.92 / 60.0, 655e6, 0.762, true);
    assert_close!(tp.base, 69.67, 0.005, "E.Y.E. Marine Consultants, TP 11717");
    assert_close!(tp.material, 0.858, 0.0005, "the same");
    assert_close!(tp.propeller, 3.23, 0.005, "the same");
    assert_close!(1e3 * tp.diameter(), 63.02, 0.005, "the same");
    // Student shafting report 2022 with BV 2013 (IACS UR M68): 1324 kW, 412.8 rpm, 600 MPa, keyed: 167.833 mm, 30.626 kN m.
    assert_close!(1e3 * shaft::iacs(1324e3, 412.8 / 60.0, 600e6, true), 167.833, 0.0005, "IACS UR M68 worked");
    assert_close!(shaft::torque(1324e3, 412.8 / 60.0) / 1e3, 30.626, 0.0025, "the same: its factor 9.5488 is 9.5493");
}

/// The handbook's spacing has no margin: at it the bare span in air whirls at shaft speed. Its constant 3.21 against 3.215.
#[test]
fn the_spacing_rule_is_the_whirling_speed() {
    let (d, e, w, rpm): (f64, f64, f64, f64) = (1.5, 28.0e6, 0.285, 1200.0);
    let printed_ft = (3.21 * d / rpm).sqrt() * (e / w).powf(0.25);
    let span = whirling::Span {
        diameter: d * INCH,
        length: printed_ft * 0.3048,
        overhang: 0.0,
        propeller: 0.0,
        modulus: e * PSI,
        density: w * 27_679.904_710_203,
        water: 0.0,
    };
    // Half of the difference of the constants: 3.21 is printed to three digits.
    assert_close!(60.0 * span.bare() / rpm, 1.0, 0.002, "handbook spacing, three digits");
    assert_close!(span.spacing(rpm / 60.0, 1.0) / (printed_ft * 0.3048), 1.0, 0.001, "the same backwards");
    // A simply supported beam by its closed form, (pi/2) sqrt(E I/(m L^4)).
    let inertia = std::f64::consts::PI * span.diameter.powi(4) / 64.0;
    let mass = span.density * std::f64::consts::PI * span.diameter.powi(2) / 4.0;
    let euler = 0.5 * std::f64::consts::PI * (span.modulus * inertia / (mass * span.length.powi(4))).sqrt();
    assert_close!(span.bare() / euler, 1.0, 1e-12, "Euler-Bernoulli");
    let heavy = whirling::Span { overhang: 0.1, propeller: 20.0, water: 1025.0, ..span };
    assert!(heavy.first() < heavy.bare() && heavy.bare() < span.bare());
}

/// A span against a matrix of influence coefficients made here from the unit-load theorem (deflection at x of a unit load at s is the
/// integral of M_x M_s/(E I)), its largest eigenvalue by power iteration: shaft in many lumps, pinned at 0 and L, the propeller on
/// the overhang's end.
struct Lumps {
    at: Vec<f64>,
    mass: Vec<f64>,
    flexibility: Vec<Vec<f64>>,
}

impl Lumps {
    fn of(span: &whirling::Span, whole_shaft: bool) -> Lumps {
        const PARTS: usize = 60;
        let (l, a) = (span.length, span.overhang);
        let area = std::f64::consts::PI * span.diameter.powi(2) / 4.0;
        let along = (span.density + span.water) * area;
        let (mut at, mut mass) = (Vec::new(), Vec::new());
        let mut shaft = |from: f64, to: f64| {
            for i in 0..PARTS {
                at.push(from + (i as f64 + 0.5) / PARTS as f64 * (to - from));
                mass.push(along * (to - from) / PARTS as f64);
            }
        };
        shaft(0.0, l);
        if whole_shaft && a > 0.0 {
            shaft(l, l + a);
        }
        if span.propeller > 0.0 {
            at.push(l + a);
            mass.push(span.propeller);
        }
        let moment = |u: f64, s: f64| match (s <= l, u <= l) {
            (true, true) => (l - s) / l * u - (u - s).max(0.0),
            (true, false) => 0.0,
            (false, true) => -(s - l) / l * u,
            (false, false) => -(s - u).max(0.0),
        };
        let stiff = span.modulus * std::f64::consts::PI * span.diameter.powi(4) / 64.0;
        const STEPS: usize = 1500;
        let end = l + a;
        let moments: Vec<Vec<f64>> = at
            .iter()
            .map(|s| (0..STEPS).map(|i| moment((i as f64 + 0.5) / STEPS as f64 * end, *s)).collect())
            .collect();
        let bend = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>() * end / STEPS as f64 / stiff;
        let flexibility = moments.iter().map(|a| moments.iter().map(|b| bend(a, b)).collect()).collect();
        Lumps { at, mass, flexibility }
    }

    /// First whirling speed, rev/s.
    fn first(&self) -> f64 {
        let mut shape = vec![1.0; self.at.len()];
        let mut largest = 0.0;
        for _ in 0..300 {
            let next: Vec<f64> = self
                .flexibility
                .iter()
                .map(|row| row.iter().zip(&self.mass).zip(&shape).map(|((f, m), y)| f * m * y).sum())
                .collect();
            largest = next.iter().fold(0.0_f64, |most, y| most.max(y.abs()));
            shape = next.iter().map(|y| y / largest).collect();
        }
        (1.0 / largest).sqrt() / std::f64::consts::TAU
    }
}

/// Whirling against the matrix and against closed forms: a simply supported uniform shaft, (pi/L)^2 sqrt(E I/m) (S. Timoshenko, Vibration
/// Problems in Engineering, lateral vibration of bars); an end load on an overhang, a^2 (a + L)/(3 E I) (any table of beams); both together by
/// Dunkerley, who says himself that his value is a little low.
#[test]
fn whirling_against_influence_coefficients() {
    let shaft = whirling::Span {
        diameter: 0.030,
        length: 1.3,
        overhang: 0.0,
        propeller: 0.0,
        modulus: 193e9,
        density: 7900.0,
        water: 0.0,
    };
    // The shape of an even shaft is a sine: lumps at the middle of sixty parts miss 1e-4 of it.
    assert_close!(Lumps::of(&shaft, false).first() / shaft.bare(), 1.0, 5e-4, "simply supported, lumped");
    let root = (shaft.modulus * std::f64::consts::PI * 0.030_f64.powi(4)
        / 64.0
        / (7900.0 * std::f64::consts::PI * 0.030_f64.powi(2) / 4.0))
        .sqrt();
    let closed = (std::f64::consts::PI / 1.3).powi(2) * root / std::f64::consts::TAU;
    assert_close!(shaft.bare() / closed, 1.0, 1e-12, "Timoshenko, simply supported bar");
    for (overhang, propeller, length, water) in
        [(0.08, 8.4, 1.3, 0.0), (0.06, 14.0, 1.1, 1025.0), (0.12, 25.0, 1.8, 1025.0), (0.25, 12.0, 0.9, 1025.0)]
    {
        let span = whirling::Span { overhang, propeller, length, water, ..shaft };
        // The propeller alone: one mass, one coefficient.
        let whole = Lumps::of(&span, false);
        let last = whole.at.len() - 1;
        let alone = (1.0 / (whole.flexibility[last][last] * propeller)).sqrt() / std::f64::consts::TAU;
        assert_close!(span.overhung() / alone, 1.0, 2e-3, "end load on an overhang");
        // Together: no higher than the matrix says, and no more than a tenth below.
        let ratio = span.first() / whole.first();
        assert!((0.90..=1.0005).contains(&ratio), "{span:?}: {ratio}");
        // The overhang's own shaft, which the formula leaves out, is worth little beside the propeller.
        let own = Lumps::of(&span, true).first() / whole.first();
        assert!((0.97..=1.0).contains(&own), "{span:?}: {own}");
    }
    // An overhung even shaft alone, built in at its end: 1.8751^2 sqrt(E I/m)/l^2 (Timoshenko, the same; 3.516). The matrix, not the tool:
    // a bearing span of next to nothing holds the slope.
    let built_in = whirling::Span { length: 1e-3, overhang: 0.5, propeller: 1e-9, ..shaft };
    let cantilever = 3.516 * root / 0.25 / std::f64::consts::TAU;
    assert_close!(Lumps::of(&built_in, true).first() / cantilever, 1.0, 0.01, "Timoshenko, built in at one end");
}

/// DIN 6885-1 over every range printed (two to three public copies, validation/data/din6885_1.csv): widths, heights and both depths, just
/// above a range's lower end, at its middle and at its upper end; nothing below 6 and above 170 mm.
#[test]
fn every_key_of_din_6885() {
    let table = rows("din6885_1.csv");
    assert_eq!(table.len(), 18);
    for row in &table {
        let v: Vec<f64> = row.iter().take(6).map(|c| c.parse().expect("a number")).collect();
        for mm in [v[0] + 0.01, 0.5 * (v[0] + v[1]), v[1]] {
            let key = keys::din_6885(mm / 1e3).unwrap_or_else(|| panic!("{mm} mm"));
            assert_eq!([key.width, key.height, key.shaft, key.hub], v[2..6], "{mm} mm");
        }
    }
    assert_eq!((keys::din_6885(0.006), keys::din_6885(0.1701)), (None, None));
}

/// DIN 6885-1: the table has no gap, a key is deeper than its two seats together by 0.2 to 0.5 mm less, and known sizes.
#[test]
fn keys_of_din_6885() {
    for pair in keys::DIN_6885.windows(2) {
        assert_close!(pair[0].to, pair[1].over, 0.0, "DIN 6885-1: one size follows the other");
        assert!(pair[0].width < pair[1].width);
    }
    for key in keys::DIN_6885 {
        // Hub clearance above the key: shaft and hub seats together exceed its height by 0.1 to 0.4 mm.
        assert!((0.1..0.5).contains(&(key.shaft + key.hub - key.height)), "{key:?}");
    }
    let width = |mm: f64| keys::din_6885(mm / 1e3).map(|key| (key.width, key.height));
    assert_eq!([25.0, 30.0, 40.0].map(width), [Some((8.0, 7.0)), Some((8.0, 7.0)), Some((12.0, 8.0))]);
    assert_eq!(width(5.0), None);
    // Strength of materials: 100 N m on a 25 mm shaft is 8 kN at the skin; a 8 x 40 mm key has 320 mm2.
    assert_close!(keys::shear(100.0, 0.025, 0.008, 0.040), 25e6, 1.0, "2 Q/(d b L)");
}

/// Lloyd's clearances: the derived example (20 m, Cb 0.5, 300 kW: K 0.171), and where the least values
/// govern: a 10 m boat of 30 kW, not one of 100 kW.
#[test]
fn clearances_of_lloyds() {
    let boat = clearance::Boat {
        blades: 4,
        screws: 2,
        length: 20.0,
        block: 0.5,
        power: 300e3,
        turns: 15.0,
        speed: 8.0,
        planing: false,
        sailing: false,
    };
    let twin = clearance::lloyds(&boat);
    assert_close!(twin.k, 0.171, 0.0005, "Lloyd's Register Table 6.7.2, derived example");
    assert_close!(twin.tip, 0.20, 0.0, "the least value governs");
    // f, bracket and rudder of twins: 1.20 K for three and four blades, 0.15 at the least for all.
    assert_close!(twin.rudder, 1.20 * twin.k, 1e-12, "Table 6.7.2, f");
    assert_eq!((twin.ahead, twin.least), (twin.rudder, [0.20, 0.15, 0.15]));
    let weak = clearance::lloyds(&clearance::Boat { power: 30e3, ..boat });
    assert_eq!((weak.rudder, weak.ahead), (0.15, 0.15), "f: the least value");
    let f = [3, 4, 5, 6].map(|blades| {
        let l = clearance::lloyds(&clearance::Boat { blades, power: 3e6, ..boat });
        l.rudder / l.k
    });
    for (got, want) in f.iter().zip([1.20, 1.20, 0.85, 0.75]) {
        assert_close!(*got, want, 1e-12, "Table 6.7.2, f by blades");
    }
    assert_close!(clearance::lloyds(&clearance::Boat { blades: 5, ..boat }).tip, 0.16, 0.0, "five blades");
    let single = clearance::lloyds(&clearance::Boat { screws: 1, ..boat });
    assert_eq!((single.rudder, single.sole, single.least), (0.12, Some(0.03), [0.15, 0.10, 0.12]));
    assert!(single.tip >= 0.15 && single.ahead >= 0.10);
    let ten = clearance::Boat { blades: 3, screws: 1, length: 10.0, block: 0.45, power: 30e3, ..boat };
    assert_close!(clearance::lloyds(&ten).tip, 0.15, 0.0, "b: the least value, 1.80 K is 0.143");
    // By hand: K = (0.1 + 10/3050)(3.48 x 0.45 x 100/100 + 0.3) = 0.10328 x 1.866 = 0.19272; b = 1.80 K.
    let strong = clearance::lloyds(&clearance::Boat { power: 100e3, ..ten });
    assert_close!(strong.tip, 1.80 * 0.19272, 0.00002, "b by hand, five digits of K");
    // The factors of the table over K by blade number.
    let big = clearance::Boat { power: 30e6, screws: 1, ..boat };
    let tips = [3, 4, 5, 6].map(|blades| {
        let l = clearance::lloyds(&clearance::Boat { blades, ..big });
        l.tip / l.k
    });
    for (got, want) in tips.iter().zip([1.80, 1.50, 1.275, 1.125]) {
        assert_close!(*got, want, 1e-12, "Table 6.7.2, b");
    }
    // Handbook classes (Gerr 1989, from memory).
    let by = |rpm: f64, knots: f64, planing| {
        clearance::handbook(&clearance::Boat {
            turns: rpm / 60.0,
            speed: knots * 0.514_444,
            length: 30.48 * 0.3048,
            planing,
            ..boat
        })
    };
    assert_eq!(
        [by(400.0, 5.0, false), by(1000.0, 8.0, false), by(1500.0, 20.0, true), by(3500.0, 30.0, true)],
        [0.08, 0.10, 0.15, 0.20]
    );
    // Facts of the trade: a blade raked aft is longer at equal diameter, and its tip stands clear aft of what is ahead.
    assert!(clearance::raked_longer(0.2) > 1.0 && clearance::raked_aft(0.25, 0.2) > 0.04);
    // A rudder hard over swings its balance out of the way.
    assert!(clearance::rudder_gap(0.30, 0.10, 0.6) > clearance::rudder_gap(0.30, 0.10, 0.0));
}

/// Towed propellers: what was measured lies in the band of its kind. Diameters are not printed: 0.44 m for the folding and
/// feathering ones, 0.34 to 0.41 m for the fixed one, are assumed.
#[test]
fn drag_under_sail() {
    let inside = |band: [f64; 3], read: f64| band[0] <= read && read <= band[2];
    for (carried, blades, speed, read) in [
        (sailing::Carried::Folded, 2, 1.10, 0.71),
        (sailing::Carried::Folded, 2, 2.32, 2.76),
        (sailing::Carried::Folded, 2, 3.53, 5.55),
        (sailing::Carried::Folded, 3, 1.10, 2.71),
        (sailing::Carried::Folded, 3, 2.32, 13.94),
        (sailing::Carried::Folded, 3, 3.53, 32.76),
        (sailing::Carried::Feathered, 3, 1.10, 2.35),
    ] {
        let band = sailing::drag(carried, blades, 0.44, 0.3, 1000.0, speed);
        assert!(inside(band, read), "Maddock 2009: {carried:?} {blades} {speed}: {band:?} {read}");
    }
    for (speed, read) in [(1.543, 26.7), (2.572, 53.4), (4.116, 151.2)] {
        let small = sailing::drag(sailing::Carried::Locked, 2, 0.34, 0.22, 1025.0, speed);
        let large = sailing::drag(sailing::Carried::Locked, 2, 0.41, 0.25, 1025.0, speed);
        assert!(small[0] <= read && read <= large[2], "Lurie & Taylor 1995: {speed}: {small:?} {large:?} {read}");
    }
    // MacKenzie & Forrester 2008, as quoted: locked about twice free (14.8 against 7.3 % of a boat's drag).
    let [locked, free] =
        [sailing::Carried::Locked, sailing::Carried::Free].map(|c| sailing::drag(c, 2, 0.4, 0.25, 1025.0, 2.5)[1]);
    assert_close!(locked / free, 14.8 / 7.3, 0.1, "MacKenzie & Forrester 2008");
}
