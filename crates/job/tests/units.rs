//! Every unit against its definition or a printed table.

use job::units::{self, UNITS};
use job::{Dimension, Quantity};

/// Name, what one of it is in SI, relative tolerance, where from.
///
/// "SP 811" is NIST Special Publication 811 (2008), appendix B, values to seven figures (half a unit of the last figure is
/// the tolerance), from memory; "exact" follows from the definition and is written here by another road than in the table.
const ROWS: &[(&str, f64, f64, &str)] = &[
    ("m", 1.0, 0.0, "SI"),
    ("cm", 1e-2, 1e-15, "SI"),
    ("mm", 1e-3, 1e-15, "SI"),
    ("in", 2.54e-2, 1e-15, "SP 811, exact"),
    ("ft", 3.048e-1, 1e-15, "SP 811, exact"),
    ("m²", 1.0, 0.0, "SI"),
    ("cm²", 1e-4, 1e-15, "SI"),
    ("in²", 6.4516e-4, 1e-14, "SP 811, exact"),
    ("ft²", 9.290_304e-2, 1e-14, "SP 811, exact"),
    ("kg", 1.0, 0.0, "SI"),
    ("t", 1000.0, 0.0, "SI"),
    ("lb", 4.535_924e-1, 1.2e-7, "SP 811"),
    ("long ton", 1.016_047e3, 5e-7, "SP 811"),
    ("short ton", 9.071_847e2, 6e-8, "SP 811"),
    ("kn", 5.144_444e-1, 1e-7, "SP 811"),
    ("m/s", 1.0, 0.0, "SI"),
    ("km/h", 2.777_778e-1, 2e-7, "SP 811"),
    ("mph", 4.4704e-1, 1e-14, "SP 811, exact"),
    ("rpm", 1.0 / 60.0, 1e-15, "definition"),
    ("rev/s", 1.0, 0.0, "definition"),
    ("Hz", 1.0, 0.0, "definition"),
    ("kW", 1000.0, 0.0, "SI"),
    ("W", 1.0, 0.0, "SI"),
    ("hp", 7.456_999e2, 7e-8, "SP 811, horsepower (550 ft·lbf/s)"),
    ("PS", 7.354_988e2, 7e-8, "SP 811, horsepower (metric); exactly 735.498 75 W"),
    ("N", 1.0, 0.0, "SI"),
    ("kN", 1000.0, 0.0, "SI"),
    ("kgf", 9.806_65, 0.0, "SP 811, exact"),
    ("lbf", 4.448_222, 1.2e-7, "SP 811"),
    ("N m", 1.0, 0.0, "SI"),
    ("kN m", 1000.0, 0.0, "SI"),
    ("kgf m", 9.806_65, 0.0, "SP 811, exact"),
    ("lbf ft", 1.355_818, 4e-7, "SP 811, pound-force foot"),
    ("°", 1.0, 0.0, "definition"),
    ("rad", 57.295_78, 1e-7, "180/π"),
    ("°C", 1.0, 0.0, "definition"),
    ("°F", 5.0 / 9.0, 1e-15, "definition"),
    ("K", 1.0, 0.0, "definition"),
    ("h", 3600.0, 0.0, "SP 811, exact"),
    ("days", 86_400.0, 0.0, "SP 811, exact"),
    ("weeks", 604_800.0, 0.0, "7 days"),
    ("months", 2_629_800.0, 1e-15, "a twelfth of 365.25 days"),
    ("years", 31_557_600.0, 0.0, "365.25 days"),
    ("L/h", 2.777_778e-7, 2e-7, "0.001 m³ in 3600 s"),
    ("US gal/h", 1.051_503e-6, 5e-7, "SP 811, gallon (US) per hour"),
    ("imp gal/h", 4.546_09e-3 / 3600.0, 1e-14, "SP 811, gallon (Canadian and UK), exact"),
    ("kg/h", 1.0 / 3600.0, 1e-15, "definition"),
    ("bar", 1e5, 0.0, "SP 811, exact"),
    ("mbar", 1e2, 0.0, "SP 811, exact"),
    ("kPa", 1e3, 0.0, "SI"),
    ("Pa", 1.0, 0.0, "SI"),
    ("psi", 6.894_757e3, 8e-8, "SP 811"),
    ("%", 0.01, 0.0, "definition"),
];

#[test]
fn every_unit_is_what_it_should_be() {
    for (unit, (name, si, tolerance, from)) in UNITS.iter().zip(ROWS) {
        assert_eq!(unit.name, *name);
        assert!((unit.factor / si - 1.0).abs() <= *tolerance, "{name}: {} is not {si} ({from})", unit.factor);
        assert!((unit.from_si(unit.to_si(3.7)) - 3.7).abs() < 1e-12, "{name} there and back");
    }
    assert_eq!(UNITS.len(), ROWS.len(), "every unit has a row here");
}

/// Fixed points of the scales: water freezes and boils (ITS-90 to 0.03 K), absolute zero.
#[test]
fn temperature_scales_meet() {
    for (text, celsius) in [("32 °F", 0.0), ("212 °F", 100.0), ("-40 F", -40.0), ("273.15 K", 0.0), ("14 °C", 14.0)]
    {
        let q = Quantity::parse(text, Dimension::Temperature, "t").unwrap();
        assert!((q.middle - celsius).abs() < 1e-9, "{text} gives {}", q.middle);
    }
    let q = Quantity::parse("59 °F ± 9", Dimension::Temperature, "t").unwrap();
    assert!((q.high - 20.0).abs() < 1e-9 && (q.low - 10.0).abs() < 1e-9, "a spread has no zero of its own: {q:?}");
}

#[test]
fn horsepowers_are_told_apart() {
    let watts = |text| Quantity::parse(text, Dimension::Power, "power").unwrap().middle;
    assert!((watts("100 hp") - 74_569.987_158_227).abs() < 1e-6);
    assert!((watts("100 PS") - 73_549.875).abs() < 1e-6);
    for (a, b) in [("10 CV", "10 PS"), ("10 cv", "10 ps"), ("10 bhp", "10 hp"), ("10 HP", "10 hp"), ("10 KW", "10 kW")]
    {
        assert_eq!(watts(a), watts(b));
    }
}

/// Exact: 1 lbf ft = 0.453 592 37 x 9.806 65 x 0.3048 N m (1959 pound and foot, standard gravity).
#[test]
fn torques() {
    let read = |text| Quantity::parse(text, Dimension::Torque, "torque").unwrap().middle;
    assert!((read("100 lbf ft") - 135.581_794_833_14).abs() < 1e-9);
    for (a, b) in [("90 N m", "90 Nm"), ("90 nm", "90 N·m"), ("100 lb ft", "100 ft-lb"), ("0.09 kN m", "90 N m")] {
        assert!((read(a) - read(b)).abs() < 1e-9, "{a} {b}");
    }
    assert!((read("10 kgf m") - 98.0665).abs() < 1e-9);
    assert_eq!(Quantity::parse("90 N", Dimension::Torque, "torque").unwrap_err().code, "wrong-unit");
}

#[test]
fn letters_that_mean_two_things_follow_the_dimension() {
    assert!((Quantity::parse("10 KN", Dimension::Speed, "speed").unwrap().middle - 5.144_444).abs() < 1e-6);
    assert_eq!(Quantity::parse("10 KN", Dimension::Force, "force").unwrap().middle, 10_000.0);
    for (text, dimension, word) in [
        ("7 ton", Dimension::Mass, "ambiguous-unit"),
        ("7 Tons", Dimension::Mass, "ambiguous-unit"),
        ("7 st", Dimension::Mass, "ambiguous-unit"),
        ("7 gal", Dimension::FuelFlow, "ambiguous-unit"),
        ("7 m", Dimension::Mass, "wrong-unit"),
        ("7 lb", Dimension::Force, "wrong-unit"),
    ] {
        assert_eq!(Quantity::parse(text, dimension, "x").unwrap_err().code, word, "{text}");
    }
}

#[test]
fn every_spelling_is_read() {
    for unit in UNITS {
        for name in std::iter::once(&unit.name).chain(unit.also) {
            assert!(units::find(name, unit.dimension).is_some_and(|found| found.name == unit.name), "{name}");
            let text = format!("5 {name}");
            let q = Quantity::parse(&text, unit.dimension, "x").unwrap_or_else(|p| panic!("{text}: {p:?}"));
            let density = if unit.volume { 840.0 } else { 1.0 };
            assert!((q.middle - unit.to_si(5.0) * density).abs() <= 1e-12 * q.middle.abs(), "{text}");
        }
    }
}
