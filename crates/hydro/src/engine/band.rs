//! Where full throttle should end up.

use super::{Kind, Rating};
use crate::source::{Method, Trust};
use crate::speed::EngineSpeed;

/// What [`accepted_band`] is.
pub const METHOD: Method = Method {
    name: "full-throttle-band",
    quantity: "engine speeds accepted at full throttle, loaded and clean",
    formula: "maker's band, else 100..103 % of rated speed; light high-output diesel 100..105 %; petrol and outboard without a \
              band +-4 % and +-9 %",
    range: "fixed-pitch propellers",
    error: "makers differ: rated or 50 rpm over (a gear supplier), rated plus 100..200 rpm for light high-output diesels (an engine \
            consultant), 103..105 % at most (a propeller maker)",
    source: "published guidance of makers and suppliers; ISO 8665: an ungoverned petrol engine is declared at the middle of its band",
    trust: Trust::CommonPractice,
};

/// Accepted speeds at full throttle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Accepted {
    /// Lowest.
    pub low: EngineSpeed,
    /// Highest.
    pub high: EngineSpeed,
    /// Above this the propeller is too light for certain: 105 % of rated speed, or above the band.
    pub warn_above: EngineSpeed,
    /// Whose band it is, for a person to read.
    pub source: &'static str,
}

/// The accepted full-throttle band: the maker's where given (either order), else by kind and rating.
#[must_use]
pub fn accepted_band(
    kind: Kind,
    rating: Option<Rating>,
    rated_speed: EngineSpeed,
    makers_band: Option<(EngineSpeed, EngineSpeed)>,
) -> Accepted {
    if let Some((a, b)) = makers_band {
        let (low, high) = if a.0 <= b.0 { (a, b) } else { (b, a) };
        return Accepted { low, high, warn_above: high, source: "the maker's full-throttle band" };
    }
    let of = |ratio: f64| EngineSpeed(rated_speed.0 * ratio);
    let (low, high, warn, source) = match (kind, rating) {
        (Kind::TurboDiesel, Some(Rating::Pleasure)) => (
            1.0,
            1.05,
            1.05,
            "rated speed to 105 % for light high-output diesels (guidance in print: 100 to 200 rpm over)",
        ),
        (Kind::NaturalDiesel | Kind::TurboDiesel, _) => {
            (1.0, 1.03, 1.05, "rated speed to 103 % (guidance in print; makers differ)")
        }
        (Kind::Petrol, _) => {
            (0.96, 1.04, 1.05, "rated speed as the middle of a band of 8 % (assumed; ask for the maker's band)")
        }
        (Kind::Outboard, _) => {
            (0.91, 1.09, 1.09, "rated speed as the middle of a band of 18 % (assumed; ask for the maker's band)")
        }
        (Kind::Electric, _) => (0.97, 1.03, 1.05, "within 3 % of rated speed (assumed)"),
    };
    Accepted { low: of(low), high: of(high), warn_above: of(warn), source }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_makers_band_goes_first_in_either_order() {
        let band = (EngineSpeed::from_rpm(6000.0), EngineSpeed::from_rpm(5000.0));
        let got = accepted_band(Kind::Outboard, None, EngineSpeed::from_rpm(5500.0), Some(band));
        assert_eq!((got.low.rpm().round(), got.high.rpm().round()), (5000.0, 6000.0));
    }

    #[test]
    fn a_working_diesel_gets_three_per_cent() {
        let got = accepted_band(Kind::NaturalDiesel, Some(Rating::Continuous), EngineSpeed::from_rpm(2000.0), None);
        assert!((got.high.rpm() - 2060.0).abs() < 1e-9 && (got.low.rpm() - 2000.0).abs() < 1e-9);
    }
}
