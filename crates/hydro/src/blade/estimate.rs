//! A measured value and its standard deviation.

/// A value with its standard deviation, both in the unit of the value. First-order propagation throughout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The value.
    pub value: f64,
    /// Its standard deviation, not negative.
    pub sd: f64,
}

/// Half an 80 % band of a normal spread, in standard deviations.
const HALF_BAND_80: f64 = 1.281_551_565_544_6;

impl Estimate {
    /// A value with a standard deviation (its sign is dropped).
    #[must_use]
    pub const fn new(value: f64, sd: f64) -> Estimate {
        Estimate { value, sd: sd.abs() }
    }

    /// A value taken as exact.
    #[must_use]
    pub const fn exact(value: f64) -> Estimate {
        Estimate { value, sd: 0.0 }
    }

    /// From the half width of an 80 % band, as a job file states its spreads.
    #[must_use]
    pub const fn from_band(value: f64, half_width: f64) -> Estimate {
        Estimate { value, sd: half_width.abs() / HALF_BAND_80 }
    }

    /// Low and high of the 80 % band.
    #[must_use]
    pub fn band(self) -> (f64, f64) {
        (self.value - HALF_BAND_80 * self.sd, self.value + HALF_BAND_80 * self.sd)
    }

    /// Times an exact factor.
    #[must_use]
    pub fn times(self, factor: f64) -> Estimate {
        Estimate::new(self.value * factor, self.sd * factor)
    }

    /// With a further independent standard deviation.
    #[must_use]
    pub fn and_sd(self, sd: f64) -> Estimate {
        Estimate::new(self.value, self.sd.hypot(sd))
    }

    /// Whether value and spread are finite numbers.
    #[must_use]
    pub fn is_finite(self) -> bool {
        self.value.is_finite() && self.sd.is_finite()
    }

    /// Plain average of independent estimates; `None` of none.
    #[must_use]
    pub fn mean(of: impl IntoIterator<Item = Estimate>) -> Option<Estimate> {
        let (mut n, mut sum, mut variance) = (0.0, 0.0, 0.0);
        for e in of {
            n += 1.0;
            sum += e.value;
            variance += e.sd * e.sd;
        }
        (n > 0.0).then(|| Estimate::new(sum / n, variance.sqrt() / n))
    }

    /// Average of independent estimates of one quantity, weighted by inverse variance (plainly when one is exact).
    #[must_use]
    pub fn combined(of: &[Estimate]) -> Option<Estimate> {
        if of.iter().any(|e| e.sd <= 0.0) {
            return Estimate::mean(of.iter().copied().filter(|e| e.sd <= 0.0));
        }
        let weight: f64 = of.iter().map(|e| e.sd.powi(-2)).sum();
        let sum: f64 = of.iter().map(|e| e.value * e.sd.powi(-2)).sum();
        (weight > 0.0).then(|| Estimate::new(sum / weight, weight.sqrt().recip()))
    }
}

#[cfg(test)]
mod tests {
    use super::Estimate;

    #[test]
    fn the_better_reading_weighs_more() {
        let both = Estimate::combined(&[Estimate::new(1.0, 0.1), Estimate::new(2.0, 0.2)]).unwrap();
        assert!((both.value - 1.2).abs() < 1e-12);
        assert!((both.sd - (1.0_f64 / 125.0).sqrt()).abs() < 1e-12);
    }

    #[test]
    fn a_mean_of_four_halves_the_spread() {
        let mean = Estimate::mean([Estimate::new(1.0, 0.2); 4]).unwrap();
        assert!((mean.sd - 0.1).abs() < 1e-12);
        assert!(Estimate::mean([]).is_none());
    }
}
