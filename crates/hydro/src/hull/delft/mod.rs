//! Resistance of sailing yachts from the Delft systematic yacht hull series: 1981, 1998, 2008.
//!
//! 1981 was made from hulls *with* keel and rudder; 1998 and 2008 from the bare canoe body (they lie 15 % to 17 % below the
//! measured models at Fn 0.45, half at 0.20). For a yacht as she sails use 1981 up to Fn 0.45; the bare-hull methods want keel and
//! rudder added and say so with a note. Friction: 1957 line on 0.7 of the waterline, no form factor.

mod tables;

use super::form::{Form, Parts};
use super::friction::ittc57_at;
use super::interpolate;
use super::roughness::added_friction_at;
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};
use tables::{GRID_1981, GRID_1998, GRID_2008, TABLE_1981, TABLE_1998, TABLE_2008};

/// The 1981 regression.
pub const METHOD_1981: Method = Method {
    name: "delft-1981",
    quantity: "residuary resistance of a yacht with keel and rudder, N",
    formula: "1000 Rr/W = a0 + a1 CP + a2 LCB + a3 B/T + a4 L/v + a5 CP^2 + a6 CP L/v + a7 LCB^2 + a8 (L/v)^2 + a9 (L/v)^3",
    range: "Fn 0.125 .. 0.45, L/B 2.7..3.7, B/T 3.0..5.4, L/vol^(1/3) 4.3..5.2, CP 0.53..0.60, LCB 0 .. -5 %",
    error: "residuary rms 3 % of the mean at Fn 0.45, 4 % at 0.35, 14 % at 0.20 against 238 measured points of 17 models",
    source: "J. Gerritsma, R. Onnink and A. Versluis 1981, Geometry, resistance and stability of the Delft systematic \
             yacht hull series, Int. Shipbuilding Progress 28; table from memory, confirmed by the measurements",
    trust: Trust::Checked,
};

/// The 1998 regression.
pub const METHOD_1998: Method = Method {
    name: "delft-1998",
    quantity: "residuary resistance of a bare canoe body, N",
    formula: "Rr/(vol rho g) = a0 + {a1 LCB/L + a2 CP + a3 vol^(2/3)/Aw + a4 B/L + a5 vol^(2/3)/Sc + a6 LCB/LCF + \
              a7 (LCB/L)^2 + a8 CP^2} vol^(1/3)/L, LCB and LCF from the forward end",
    range: "Fn 0.10 .. 0.60, L/B 2.76..5.00, B/T 2.46..19.3, L/vol^(1/3) 4.34..8.50, LCB/L 0.50..0.56, CP 0.52..0.60",
    error: "within 3 % of the 2008 regression from Fn 0.20 to 0.60 on the parent hull; 15 % below measured hulls with keel and rudder at Fn 0.45; no measured bare hull was found",
    source: "J. A. Keuning and U. B. Sonnenberg 1998, Approximation of the hydrodynamic forces on a sailing yacht based \
             on the Delft systematic yacht hull series, HISWA; table from memory",
    trust: Trust::Memory,
};

/// The 2008 regression.
pub const METHOD_2008: Method = Method {
    name: "delft-2008",
    quantity: "residuary resistance of a bare canoe body, N",
    formula: "Rr/(vol rho g) = a0 + {a1 LCB/L + a2 CP + a3 vol^(2/3)/Aw + a4 B/L + a5 LCB/LCF + a6 B/T + a7 CM} vol^(1/3)/L",
    range: "Fn 0.15 .. 0.75 (from 0.65 light hulls only), L/B 2.73..5.88, B/T 2.46..19.3, L/vol^(1/3) 4.34..8.50, CM 0.65..0.79",
    error: "within 3 % of the 1998 regression from Fn 0.20 to 0.60 on the parent hull; 17 % below measured hulls with keel and rudder at Fn 0.45; no measured bare hull was found",
    source: "J. A. Keuning and M. Katgert 2008, A bare hull resistance prediction method derived from the results of the \
             Delft systematic yacht hull series extended to higher speeds, Innov'Sail, Lorient; table from memory",
    trust: Trust::Memory,
};

/// A canoe body as the regressions want it. Lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanoeBody {
    /// Waterline length.
    pub length: f64,
    /// Waterline beam.
    pub beam: f64,
    /// Draught of the canoe body.
    pub draught: f64,
    /// Displaced volume, m³.
    pub volume: f64,
    /// Prismatic coefficient.
    pub prismatic: f64,
    /// Midship section coefficient.
    pub midship: f64,
    /// Centre of buoyancy from the forward end of the waterline.
    pub lcb: f64,
    /// Centre of the waterplane from the forward end.
    pub lcf: f64,
    /// Waterplane area, m².
    pub waterplane: f64,
    /// Wetted area of the canoe body, m².
    pub wetted: f64,
}

/// Wetted area of a canoe body, m²: `Sc = (1.97 + 0.171 B/T) (0.65/CM)^(1/3) √(∇ L)`. Keuning & Sonnenberg 1998 after
/// Gerritsma et al.; gives the parent's 25.43 m² at 10 m.
#[must_use]
pub fn wetted_area(length: f64, beam: f64, draught: f64, volume: f64, midship: f64) -> f64 {
    (1.97 + 0.171 * beam / draught) * (0.65 / midship).cbrt() * (volume * length).sqrt()
}

impl CanoeBody {
    /// From what [`Form`] holds. The waterplane area is `CWP L B`; its centre, which nobody knows of his boat, is taken
    /// 1.5 % of the length aft of the centre of buoyancy (common practice, no source: 1.2 % on the parent, 1.8 % to 3.5 %
    /// at the ends of the tested range; worth 2 % of residuary resistance).
    #[must_use]
    pub fn new(form: &Form, water: &Water) -> CanoeBody {
        let (length, beam, draught) = (form.length.max(0.5), form.beam.max(0.1), form.draught.max(0.03));
        let volume = (form.mass / water.density).max(1e-3);
        let midship = form.midship.clamp(0.3, 1.0);
        let lcb = length * (0.5 - 0.01 * form.lcb_percent.clamp(-15.0, 10.0));
        CanoeBody {
            length,
            beam,
            draught,
            volume,
            prismatic: form.prismatic.clamp(0.35, 0.9),
            midship,
            lcb,
            lcf: lcb + 0.015 * length,
            waterplane: form.waterplane.clamp(0.4, 1.0) * length * beam,
            wetted: wetted_area(length, beam, draught, volume, midship),
        }
    }

    /// The terms of the 1981 polynomial for `1000 Rr/W`.
    fn row_1981(&self) -> [f64; 10] {
        let slender = self.length / self.volume.cbrt();
        let lcb = 50.0 - 100.0 * self.lcb / self.length;
        let cp = self.prismatic;
        let beam_draught = self.beam / self.draught;
        let square = slender * slender;
        [1.0, cp, lcb, beam_draught, slender, cp * cp, cp * slender, lcb * lcb, square, square * slender]
    }

    fn row_1998(&self) -> [f64; 9] {
        let root = self.volume.cbrt();
        let (square, x, lcb) = (root * root, root / self.length, self.lcb / self.length);
        let cp = self.prismatic;
        [
            1.0,
            lcb * x,
            cp * x,
            square / self.waterplane * x,
            self.beam / self.length * x,
            square / self.wetted * x,
            self.lcb / self.lcf * x,
            lcb * lcb * x,
            cp * cp * x,
        ]
    }

    fn row_2008(&self) -> [f64; 8] {
        let root = self.volume.cbrt();
        let x = root / self.length;
        [
            1.0,
            self.lcb / self.length * x,
            self.prismatic * x,
            root * root / self.waterplane * x,
            self.beam / self.length * x,
            self.lcb / self.lcf * x,
            self.beam / self.draught * x,
            self.midship * x,
        ]
    }

    /// Residuary resistance over weight by 1981, 1998 or 2008.
    #[must_use]
    pub fn residuary(&self, year: Year) -> Residuary {
        match year {
            Year::Y1981 => Residuary::new(GRID_1981, &TABLE_1981, &self.row_1981(), 1e-3),
            Year::Y1998 => Residuary::new(GRID_1998, &TABLE_1998, &self.row_1998(), 1.0),
            Year::Y2008 => Residuary::new(GRID_2008, &TABLE_2008, &self.row_2008(), 1.0),
        }
    }

    /// Whether the hull lies within what the regression was made from (1981: span of the 17 published models; 1998 and
    /// 2008: ranges given with the methods).
    fn inside(&self, year: Year) -> bool {
        let lb = self.length / self.beam;
        let bt = self.beam / self.draught;
        let slender = self.length / self.volume.cbrt();
        let lcb = self.lcb / self.length;
        let near = |x: f64, low: f64, high: f64| x >= low - 0.005 && x <= high + 0.005;
        match year {
            Year::Y1981 => {
                near(lb, 2.73, 3.64)
                    && near(bt, 2.98, 5.35)
                    && near(slender, 4.34, 5.14)
                    && near(self.prismatic, 0.53, 0.60)
                    && near(lcb, 0.50, 0.55)
            }
            Year::Y1998 | Year::Y2008 => {
                near(lb, if year == Year::Y1998 { 2.76 } else { 2.73 }, if year == Year::Y1998 { 5.0 } else { 5.88 })
                    && near(bt, 2.46, 19.3)
                    && near(slender, 4.34, 8.50)
                    && near(self.prismatic, 0.52, 0.60)
                    && near(lcb, 0.50, 0.56)
                    && near(self.midship, 0.65, 0.79)
            }
        }
    }
}

/// Which of the three regressions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Year {
    /// Hull with keel and rudder, Fn 0.125..0.45.
    Y1981,
    /// Bare canoe body, Fn 0.10..0.60.
    Y1998,
    /// Bare canoe body, Fn 0.15..0.75.
    Y2008,
}

/// Most points a table has.
const MOST: usize = 14;

/// Residuary resistance over weight against Froude number: monotone cubic between the regression's own Froude numbers,
/// `Fn⁴` below the lowest, straight on beyond the highest. Negative results of a regression are held at zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Residuary {
    first: f64,
    step: f64,
    points: usize,
    value: [f64; MOST],
    slope: [f64; MOST],
}

impl Residuary {
    fn new<const C: usize>(grid: (f64, f64), table: &[[f64; C]], row: &[f64; C], unit: f64) -> Residuary {
        let (first, step) = grid;
        let points = table.len().min(MOST);
        let (mut value, mut slope, mut froude) = ([0.0; MOST], [0.0; MOST], [0.0; MOST]);
        for (i, coefficients) in table.iter().take(points).enumerate() {
            froude[i] = first + step * i as f64;
            let sum: f64 = coefficients.iter().zip(row).map(|(a, x)| a * x).sum();
            value[i] = (unit * sum).max(0.0);
        }
        interpolate::slopes(&froude[..points], &value[..points], &mut slope[..points]);
        // Leave the lowest point as steeply as the fourth power arrives, within the bound that keeps the cubic monotone.
        let rise = ((value[1] - value[0]) / step).max(0.0);
        slope[0] = (4.0 * value[0] / first).min(3.0 * rise);
        slope[points - 1] = slope[points - 1].max(0.0);
        Residuary { first, step, points, value, slope }
    }

    /// `Rr/W` at a Froude number on the waterline length.
    #[must_use]
    pub fn at(&self, froude: f64) -> f64 {
        let x = (froude - self.first) / self.step;
        let last = self.points - 1;
        if x <= 0.0 {
            let share = (froude / self.first).max(0.0);
            self.value[0] * share.powi(4)
        } else if x >= last as f64 {
            self.value[last] + self.slope[last] * (x - last as f64) * self.step
        } else {
            let i = (x as usize).min(last - 1);
            let (a, b) = (self.value[i], self.value[i + 1]);
            interpolate::hermite(x - i as f64, self.step, a, b, self.slope[i], self.slope[i + 1])
        }
    }

    /// Highest Froude number of the table.
    #[must_use]
    pub fn top(&self) -> f64 {
        self.first + self.step * (self.points - 1) as f64
    }
}

/// A yacht with everything that does not hang on speed worked out.
#[derive(Clone, Copy, Debug)]
pub struct Prepared {
    length: f64,
    wetted: f64,
    weight: f64,
    density: f64,
    viscosity: f64,
    appendages: f64,
    appendage_factor: f64,
    roughness: f64,
    residuary: Residuary,
    year: Year,
    notes: Notes,
}

/// Share of the waterline length in the Reynolds number of a sailing yacht.
const FRICTION_LENGTH: f64 = 0.7;

impl Prepared {
    /// Works a yacht out by one of the regressions.
    #[must_use]
    pub fn new(form: &Form, water: &Water, year: Year) -> Prepared {
        let body = CanoeBody::new(form, water);
        let mut notes = Notes::NONE;
        notes.add_if(!body.inside(year), Note::HullOutsideSeries);
        notes.add_if(year != Year::Y1981, Note::BareHullOnly);
        Prepared {
            length: body.length,
            wetted: body.wetted,
            weight: body.volume * water.density * GRAVITY,
            density: water.density,
            viscosity: water.viscosity,
            appendages: form.appendage_area.max(0.0),
            appendage_factor: form.appendage_factor.max(0.0),
            roughness: form.roughness,
            residuary: body.residuary(year),
            year,
            notes,
        }
    }

    /// Resistance at a speed (m/s). Keel and rudder: friction on their area times the form's appendage factor.
    #[must_use]
    pub fn at(&self, speed: f64) -> Noted<Parts> {
        let speed = if speed.is_finite() { speed.max(0.0) } else { 0.0 };
        let froude = speed / (GRAVITY * self.length).sqrt();
        let length = FRICTION_LENGTH * self.length;
        let re = speed * length / self.viscosity;
        let pressure = 0.5 * self.density * speed * speed;
        let ln_re = re.max(1.0).ln();
        let plate = pressure * ittc57_at(ln_re);
        let mut notes = self.notes;
        let light_only = self.year == Year::Y2008 && froude > 0.625;
        notes.add_if(froude > self.residuary.top() + 1e-9 || light_only, Note::SpeedAboveMethod);
        let parts = Parts {
            friction: plate * self.wetted,
            roughness: pressure
                * (self.wetted + self.appendages)
                * added_friction_at(ln_re, re, length, self.roughness),
            appendages: plate * self.appendages * self.appendage_factor,
            wave: self.weight * self.residuary.at(froude),
            ..Parts::default()
        };
        Noted::new(parts, notes)
    }
}

/// Resistance by the 1981 regression (keel and rudder's waves included) at a speed in m/s.
#[must_use]
pub fn resistance_1981(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Prepared::new(form, water, Year::Y1981).at(speed)
}

/// Resistance by the 1998 regression (bare canoe body, plus friction of the appendages) at a speed in m/s.
#[must_use]
pub fn resistance_1998(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Prepared::new(form, water, Year::Y1998).at(speed)
}

/// Resistance by the 2008 regression (bare canoe body, plus friction of the appendages) at a speed in m/s.
#[must_use]
pub fn resistance_2008(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Prepared::new(form, water, Year::Y2008).at(speed)
}
