//! Holtrop & Mennen: waves, bulb and transom.

/// `c7` from `B/L`.
#[must_use]
pub fn c7(beam_length: f64) -> f64 {
    if beam_length < 0.11 {
        0.229_577 * beam_length.cbrt()
    } else if beam_length <= 0.25 {
        beam_length
    } else {
        0.5 - 0.0625 / beam_length
    }
}

/// `c1 = 2223105 c7^3.78613 (T/B)^1.07961 (90 - iE)^-1.37565`; `iE` in degrees.
///
/// One public copy prints the last exponent -1.37165; the printed `c1` of the 1982 ship decides for -1.37565.
#[must_use]
pub fn c1(beam_length: f64, draught_beam: f64, half_entrance_deg: f64) -> f64 {
    2_223_105.0
        * c7(beam_length).max(1e-3).powf(3.786_13)
        * draught_beam.powf(1.079_61)
        * (90.0 - half_entrance_deg).max(5.0).powf(-1.375_65)
}

/// `c3 = 0.56 ABT^1.5 / {B T (0.31 √ABT + TF - hB)}`: the bulb against the midship section.
#[must_use]
pub fn c3(bulb_area: f64, bulb_height: f64, beam: f64, draught: f64, draught_forward: f64) -> f64 {
    let root = bulb_area.max(0.0).sqrt();
    if root == 0.0 {
        return 0.0;
    }
    0.56 * root * root * root / (beam * draught * (0.31 * root + draught_forward - bulb_height).max(0.05 * root))
}

/// `c2 = exp(-1.89 √c3)`: what the bulb leaves of the waves.
#[must_use]
pub fn c2(c3: f64) -> f64 {
    (-1.89 * c3.max(0.0).sqrt()).exp()
}

/// `c5 = 1 - 0.8 AT/(B T CM)`: what the immersed transom leaves of the waves; held above 0.2 (own limit).
#[must_use]
pub fn c5(transom_ratio: f64) -> f64 {
    (1.0 - 0.8 * transom_ratio).clamp(0.2, 1.0)
}

/// `c16` from `CP`.
#[must_use]
pub fn c16(prismatic: f64) -> f64 {
    if prismatic < 0.80 {
        prismatic * (8.079_81 + prismatic * (-13.8673 + prismatic * 6.984_388))
    } else {
        1.730_14 - 0.7067 * prismatic
    }
}

/// `m1 = 0.0140407 L/T - 1.75254 ∇^(1/3)/L - 4.79323 B/L - c16`; held below -0.5 (own limit: waves must grow with speed).
#[must_use]
pub fn m1(length: f64, beam: f64, draught: f64, volume: f64, prismatic: f64) -> f64 {
    (0.014_040_7 * length / draught - 1.752_54 * volume.cbrt() / length - 4.793_23 * beam / length - c16(prismatic))
        .min(-0.5)
}

/// `c15` from `L³/∇`.
#[must_use]
pub fn c15(slenderness_cubed: f64) -> f64 {
    if slenderness_cubed < 512.0 {
        -1.693_85
    } else if slenderness_cubed <= 1726.91 {
        -1.693_85 + (slenderness_cubed.cbrt() - 8.0) / 2.36
    } else {
        0.0
    }
}

/// `λ` of the hump-and-hollow term, `1.446 CP - 0.03 L/B`, for `L/B` above 12 `1.446 CP - 0.36`.
#[must_use]
pub fn lambda(length_beam: f64, prismatic: f64) -> f64 {
    1.446 * prismatic - 0.03 * length_beam.min(12.0)
}

/// `m2 = c15 CP² exp(-0.1 Fn^-2)` (1982).
#[must_use]
pub fn m2(c15: f64, prismatic: f64, froude: f64) -> f64 {
    c15 * prismatic * prismatic * (-0.1 / (froude * froude)).exp()
}

/// `m4 = 0.4 c15 exp(-0.034 Fn^-3.29)` (1984).
#[must_use]
pub fn m4(c15: f64, froude: f64) -> f64 {
    0.4 * c15 * (-0.034 * froude.powf(-3.29)).exp()
}

/// `c17 = 6919.3 CM^-1.3346 (∇/L³)^2.00977 (L/B - 2)^1.40692` (1984, `Fn` from 0.55).
///
/// The formula has no answer at `L/B` 2 and below; it is held at 2.2 (own limit) and the caller warns.
#[must_use]
pub fn c17(midship: f64, slenderness_cubed: f64, length_beam: f64) -> f64 {
    6919.3
        * midship.max(0.3).powf(-1.3346)
        * slenderness_cubed.powf(-2.009_77)
        * (length_beam.max(2.2) - 2.0).powf(1.406_92)
}

/// `m3 = -7.2035 (B/L)^0.326869 (T/B)^0.605375` (1984).
#[must_use]
pub fn m3(beam_length: f64, draught_beam: f64) -> f64 {
    -7.2035 * beam_length.powf(0.326_869) * draught_beam.powf(0.605_375)
}

/// `exp{m Fn^-0.9 + mc cos(λ Fn^-2)}`: the common shape of both speed ranges.
#[must_use]
pub fn swell(m: f64, mc: f64, lambda: f64, froude: f64) -> f64 {
    (m * froude.powf(-0.9) + mc * (lambda / (froude * froude)).cos()).exp()
}

/// A bulb's measures, zero area for a boat without.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bulb {
    /// Transverse area at the forward perpendicular `ABT`, m².
    pub area: f64,
    /// Height of that area's centre above the keel line `hB`, m.
    pub height: f64,
}

impl Bulb {
    /// Emergence `PB = 0.56 √ABT / (TF - 1.5 hB)`; large when the bulb is out of the water.
    #[must_use]
    pub fn emergence(self, draught_forward: f64) -> f64 {
        let root = self.area.max(0.0).sqrt();
        0.56 * root / (draught_forward - 1.5 * self.height).max(0.01 * root.max(1e-3))
    }

    /// Froude number on the bulb's immersion `V / √{g (TF - hB - 0.25 √ABT) + 0.15 V²}`.
    #[must_use]
    pub fn froude(self, draught_forward: f64, speed: f64, gravity: f64) -> f64 {
        let depth = (draught_forward - self.height - 0.25 * self.area.max(0.0).sqrt()).max(0.0);
        let square = gravity * depth + 0.15 * speed * speed;
        if square > 0.0 { speed / square.sqrt() } else { 0.0 }
    }

    /// Resistance of a bulb near the surface, N:
    /// `0.11 exp(-3 PB^-2) Fni³ ABT^1.5 ρ g / (1 + Fni²)`.
    #[must_use]
    pub fn resistance(self, draught_forward: f64, speed: f64, density: f64, gravity: f64) -> f64 {
        if self.area <= 0.0 {
            return 0.0;
        }
        let (p, f) = (self.emergence(draught_forward), self.froude(draught_forward, speed, gravity));
        0.11 * (-3.0 / (p * p)).exp() * f * f * f * self.area.powf(1.5) * density * gravity / (1.0 + f * f)
    }
}

/// Froude number on the transom `V / √{2 g AT / (B + B CWP)}`.
#[must_use]
pub fn transom_froude(speed: f64, transom_area: f64, beam: f64, waterplane: f64, gravity: f64) -> f64 {
    if transom_area <= 0.0 {
        return f64::INFINITY;
    }
    speed / (2.0 * gravity * transom_area / (beam * (1.0 + waterplane))).sqrt()
}

/// `c6 = 0.2 (1 - 0.2 FnT)`, zero from `FnT` 5: the transom drags until the water leaves it clean.
#[must_use]
pub fn c6(transom_froude: f64) -> f64 {
    (0.2 * (1.0 - 0.2 * transom_froude)).max(0.0)
}
