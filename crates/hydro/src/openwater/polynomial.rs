//! Regression polynomials of propeller series, reduced to polynomials in the advance ratio.

/// One term `c J^s (P/D)^t (AE/A0)^u Z^v` of a series.
#[derive(Clone, Copy, Debug)]
pub(super) struct Term {
    /// Coefficient.
    pub c: f64,
    /// Power of the advance ratio.
    pub s: u8,
    /// Power of the pitch ratio.
    pub t: u8,
    /// Power of the area ratio.
    pub u: u8,
    /// Power of the blade number.
    pub v: u8,
}

/// Writes a term in one line of a table.
pub(super) const fn term(c: f64, s: u8, t: u8, u: u8, v: u8) -> Term {
    Term { c, s, t, u, v }
}

/// Powers of the arguments of one propeller, computed once for all terms.
#[derive(Clone, Copy, Debug)]
pub(super) struct Powers {
    p: [f64; 8],
    a: [f64; 4],
    z: [f64; 4],
}

impl Powers {
    /// Powers of pitch ratio, area ratio and blade number.
    pub fn new(pitch_ratio: f64, area_ratio: f64, blades: f64) -> Powers {
        Powers { p: powers(pitch_ratio), a: powers(area_ratio), z: powers(blades) }
    }

    /// `(P/D)^t (AE/A0)^u Z^v`.
    #[inline]
    pub fn product(&self, t: u8, u: u8, v: u8) -> f64 {
        // The masks only tell the compiler that the index is in bounds.
        self.p[usize::from(t & 7)] * self.a[usize::from(u & 3)] * self.z[usize::from(v & 3)]
    }

    /// Sums the terms of a table into coefficients of `J`.
    #[inline]
    pub fn reduce(&self, terms: &[Term]) -> [f64; 8] {
        let mut k = [0.0; 8];
        for term in terms {
            k[usize::from(term.s & 7)] += term.c * self.product(term.t, term.u, term.v);
        }
        k
    }
}

/// `1, x, x², …`.
pub(super) fn powers<const N: usize>(x: f64) -> [f64; N] {
    let mut power = 1.0;
    [(); N].map(|()| {
        let this = power;
        power *= x;
        this
    })
}

/// Thrust and torque coefficients as polynomials in the advance ratio, without any limit to where they hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Polynomials {
    /// `KT = Σ kt[i] J^i`.
    pub kt: [f64; 8],
    /// `KQ = Σ kq[i] J^i`.
    pub kq: [f64; 8],
}

impl Polynomials {
    /// `(1 - share)` of this and `share` of `other`.
    #[must_use]
    pub(super) fn mixed(&self, other: &Polynomials, share: f64) -> Polynomials {
        let mix = |a: [f64; 8], b: [f64; 8]| std::array::from_fn(|i| a[i] + share * (b[i] - a[i]));
        Polynomials { kt: mix(self.kt, other.kt), kq: mix(self.kq, other.kq) }
    }

    /// Thrust coefficient at an advance ratio.
    #[must_use]
    pub fn thrust(&self, advance_ratio: f64) -> f64 {
        value(&self.kt, advance_ratio)
    }

    /// Torque coefficient at an advance ratio.
    #[must_use]
    pub fn torque(&self, advance_ratio: f64) -> f64 {
        value(&self.kq, advance_ratio)
    }
}

/// Value of a polynomial.
#[inline]
pub(super) fn value(c: &[f64; 8], x: f64) -> f64 {
    // Not `mul_add`: without the machine's fused instruction it is a library call.
    c.iter().rev().fold(0.0, |sum, c| sum * x + c)
}

/// Slope of a polynomial.
#[inline]
pub(super) fn slope(c: &[f64; 8], x: f64) -> f64 {
    (1..8_u8).rev().fold(0.0, |sum, i| sum * x + f64::from(i) * c[usize::from(i)])
}

/// `x` kept within `low..=high`; not a number counts as `low`.
#[inline]
pub(super) fn held(x: f64, low: f64, high: f64) -> f64 {
    if x > low { x.min(high) } else { low }
}

/// Whether `x` lies in a range, ends included; not a number does not.
#[inline]
pub(super) fn within(x: f64, range: (f64, f64)) -> bool {
    x >= range.0 && x <= range.1
}

#[cfg(test)]
mod tests {
    use super::{held, slope, value};

    #[test]
    fn value_and_slope_of_a_cubic() {
        let c = [1.0, 2.0, 3.0, 4.0, 0.0, 0.0, 0.0, 0.0];
        assert!((value(&c, 2.0) - 49.0).abs() < 1e-12);
        assert!((slope(&c, 2.0) - 62.0).abs() < 1e-12);
    }

    #[test]
    fn held_swallows_what_is_no_number() {
        assert!((held(f64::NAN, 0.3, 1.0) - 0.3).abs() < 1e-15);
        assert!((held(f64::INFINITY, 0.3, 1.0) - 1.0).abs() < 1e-15);
    }
}
