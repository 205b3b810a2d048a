//! Holtrop & Mennen: wake, thrust deduction and relative rotative efficiency.
//!
//! The 1982 single-screw and the twin-screw expressions are the papers'; the printed ship checks the single-screw ones
//! (`w` .2584, `t` .1747, `ηR` .9931). The 1984 single-screw `w` and `t` and the open-stern set are from memory, without a
//! printed number to hold them against. `CV` and `c8` count hull *and* appendages: the printed `CV` .001963 and `c9` 14.500
//! come out only so.

/// What the expressions need to know of hull and propeller. Lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stern {
    /// Waterline length.
    pub length: f64,
    /// Waterline beam.
    pub beam: f64,
    /// Mean draught.
    pub draught: f64,
    /// Draught aft `TA`.
    pub draught_aft: f64,
    /// Block coefficient.
    pub block: f64,
    /// Prismatic coefficient.
    pub prismatic: f64,
    /// Midship section coefficient.
    pub midship: f64,
    /// Centre of buoyancy, % of length forward of midships.
    pub lcb_percent: f64,
    /// Wetted area of hull and appendages, m².
    pub wetted_area: f64,
    /// Viscous coefficient `CV = (1+k) CF + CA`, `1+k` the area-weighted mean of hull and appendages.
    pub viscous: f64,
    /// Stern shape `Cstern`: -25 pram with gondola, -10 V sections, 0 normal, +10 U sections with Hogner stern.
    pub stern: f64,
    /// Propeller diameter.
    pub diameter: f64,
    /// Expanded area ratio.
    pub area_ratio: f64,
    /// Pitch ratio.
    pub pitch_ratio: f64,
}

/// Wake fraction `w`, thrust deduction `t`, relative rotative efficiency `ηR`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Taylor wake fraction.
    pub wake: f64,
    /// Thrust deduction fraction.
    pub thrust_deduction: f64,
    /// Relative rotative efficiency.
    pub relative_rotative: f64,
}

impl Stern {
    /// `c9` from `c8`, the hull's wetted area against the propeller disc's surroundings.
    #[must_use]
    pub fn c9(&self) -> f64 {
        let ratio = self.beam / self.draught_aft;
        let c8 = if ratio < 5.0 {
            self.beam * self.wetted_area / (self.length * self.diameter * self.draught_aft)
        } else {
            self.wetted_area * (7.0 * ratio - 25.0) / (self.length * self.diameter * (ratio - 3.0))
        };
        if c8 < 28.0 { c8 } else { 32.0 - 16.0 / (c8 - 24.0) }
    }

    /// `c11` from `TA/D`.
    #[must_use]
    pub fn c11(&self) -> f64 {
        let ratio = self.draught_aft / self.diameter;
        if ratio < 2.0 { ratio } else { 0.083_333_3 * ratio.powi(3) + 1.333_33 }
    }

    /// `CP1 = 1.45 CP - 0.315 - 0.0225 lcb`, kept below 0.95.
    #[must_use]
    pub fn cp1(&self) -> f64 {
        (1.45 * self.prismatic - 0.315 - 0.0225 * self.lcb_percent).min(0.95)
    }

    /// `c10` of the 1982 thrust deduction.
    #[must_use]
    pub fn c10(&self) -> f64 {
        let slenderness = self.length / self.beam;
        if slenderness > 5.2 { 1.0 / slenderness } else { 0.25 - 0.003_328_402 / (1.0 / slenderness - 0.134_615_385) }
    }

    /// One screw behind a conventional stern, 1982.
    #[must_use]
    pub fn single_1982(&self) -> Factors {
        let cv = self.viscous;
        let open = 1.0 - self.cp1();
        let w = self.c9() * cv * self.length / self.draught_aft * (0.066_187_5 + 1.217_56 * self.c11() * cv / open)
            + 0.245_58 * (self.beam / (self.length * open)).sqrt()
            - 0.097_26 / (0.95 - self.prismatic).max(0.05)
            + 0.114_34 / (0.95 - self.block).max(0.05)
            + 0.75 * self.stern * cv
            + 0.002 * self.stern;
        let t = 0.001_979 * self.length / (self.beam * open) + 1.0585 * self.c10()
            - 0.005_24
            - 0.1418 * self.diameter * self.diameter / (self.beam * self.draught)
            + 0.0015 * self.stern;
        self.factors(w, t, self.single_rotative())
    }

    /// One screw behind a conventional stern, 1984 re-analysis (from memory).
    #[must_use]
    pub fn single_1984(&self) -> Factors {
        let cv = self.viscous;
        let open = 1.0 - self.cp1();
        let c19 = if self.prismatic < 0.7 {
            0.129_97 / (0.95 - self.block).max(0.05) - 0.110_56 / (0.95 - self.prismatic).max(0.05)
        } else {
            0.185_67 / (1.3571 - self.midship).max(0.05) - 0.712_76 + 0.386_48 * self.prismatic
        };
        let c20 = 1.0 + 0.015 * self.stern;
        let w = c20
            * (self.c9() * cv * self.length / self.draught_aft * (0.050_776 + 0.934_05 * self.c11() * cv / open)
                + 0.279_15 * (self.beam / (self.length * open)).sqrt()
                + c19);
        let t = 0.250_14
            * (self.beam / self.length).powf(0.289_56)
            * ((self.beam * self.draught).sqrt() / self.diameter).powf(0.2624)
            / (1.0 - self.prismatic + 0.0225 * self.lcb_percent).max(0.05).powf(0.017_62)
            + 0.0015 * self.stern;
        self.factors(w, t, self.single_rotative())
    }

    /// One screw behind an open stern (as on fast boats with a free shaft; from memory):
    /// `w = 0.3 CB + 10 CV CB - 0.1`, `t = 0.10`, `ηR = 0.98`.
    #[must_use]
    pub fn single_open(&self) -> Factors {
        self.factors(0.3 * self.block + 10.0 * self.viscous * self.block - 0.1, 0.10, 0.98)
    }

    /// Two screws: `w = 0.3095 CB + 10 CV CB - 0.23 D/√(B T)`, `t = 0.325 CB - 0.1885 D/√(B T)`,
    /// `ηR = 0.9737 + 0.111 (CP - 0.0225 lcb) - 0.06325 P/D`.
    #[must_use]
    pub fn twin(&self) -> Factors {
        let disc = self.diameter / (self.beam * self.draught).sqrt();
        self.factors(
            0.3095 * self.block + 10.0 * self.viscous * self.block - 0.23 * disc,
            0.325 * self.block - 0.1885 * disc,
            0.9737 + 0.111 * (self.prismatic - 0.0225 * self.lcb_percent) - 0.063_25 * self.pitch_ratio,
        )
    }

    /// `ηR = 0.9922 - 0.05908 AE/AO + 0.07424 (CP - 0.0225 lcb)`, one screw, conventional stern.
    fn single_rotative(&self) -> f64 {
        0.9922 - 0.059_08 * self.area_ratio + 0.074_24 * (self.prismatic - 0.0225 * self.lcb_percent)
    }

    /// Keeps the regressions within what a hull can do: `w` -0.2..0.6, `t` 0..0.5, `ηR` 0.9..1.1 (own limits).
    fn factors(&self, wake: f64, thrust_deduction: f64, relative_rotative: f64) -> Factors {
        let keep = |x: f64, low: f64, high: f64| if x.is_finite() { x.clamp(low, high) } else { low.max(0.0) };
        Factors {
            wake: keep(wake, -0.2, 0.6),
            thrust_deduction: keep(thrust_deduction, 0.0, 0.5),
            relative_rotative: keep(relative_rotative, 0.9, 1.1),
        }
    }
}
