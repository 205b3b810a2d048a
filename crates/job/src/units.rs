//! Units: names and exact factors to SI, one table.
//!
//! A factor is written as the product that defines it, so that it can be read and checked; `definition` says the same in
//! words. The inch and the pound follow the 1959 international yard and pound agreement (exact).

use crate::quantity::Dimension::{self, *};

/// One unit.
#[derive(Clone, Copy, Debug)]
pub struct Unit {
    /// How we write it.
    pub name: &'static str,
    /// Other spellings accepted.
    pub also: &'static [&'static str],
    /// What it measures.
    pub dimension: Dimension,
    /// SI value of one unit (for a volume of fuel: m³/s).
    pub factor: f64,
    /// SI value of zero on this scale (temperatures only).
    pub zero: f64,
    /// A volume, which becomes a mass of fuel only with the fuel's density.
    pub volume: bool,
    /// The definition in words.
    pub definition: &'static str,
}

const fn unit(
    name: &'static str,
    also: &'static [&'static str],
    dimension: Dimension,
    factor: f64,
    definition: &'static str,
) -> Unit {
    Unit { name, also, dimension, factor, zero: 0.0, volume: false, definition }
}

const fn volume(name: &'static str, also: &'static [&'static str], factor: f64, definition: &'static str) -> Unit {
    Unit { volume: true, ..unit(name, also, FuelFlow, factor, definition) }
}

const fn degree(
    name: &'static str,
    also: &'static [&'static str],
    factor: f64,
    zero: f64,
    definition: &'static str,
) -> Unit {
    Unit { zero, ..unit(name, also, Temperature, factor, definition) }
}

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const POUND: f64 = 0.453_592_37;
const GRAVITY: f64 = 9.806_65;
const HOUR: f64 = 3600.0;
const DAY: f64 = 86_400.0;
const YEAR: f64 = 365.25 * DAY;
const LITRE: f64 = 1e-3;
const US_GALLON: f64 = 231.0 * INCH * INCH * INCH;
const IMPERIAL_GALLON: f64 = 4.546_09 * LITRE;

/// Every unit that can be written in a job file.
#[rustfmt::skip]
pub const UNITS: &[Unit] = &[
    unit("m", &["metre", "metres", "meter", "meters"], Length, 1.0, "SI"),
    unit("cm", &["centimetre", "centimetres", "centimeter", "centimeters"], Length, 0.01, "SI"),
    unit("mm", &["millimetre", "millimetres", "millimeter", "millimeters"], Length, 0.001, "SI"),
    unit("in", &["inch", "inches", "\"", "''", "″", "”"], Length, INCH, "25.4 mm, exact (1959)"),
    unit("ft", &["foot", "feet", "'", "′", "’"], Length, FOOT, "12 in"),

    unit("m²", &["m2", "m^2", "sq m"], Area, 1.0, "SI"),
    unit("cm²", &["cm2", "cm^2", "sq cm"], Area, 1e-4, "SI"),
    unit("in²", &["in2", "in^2", "sq in"], Area, INCH * INCH, "square inch"),
    unit("ft²", &["ft2", "ft^2", "sq ft"], Area, FOOT * FOOT, "square foot"),

    unit("kg", &["kilo", "kilos", "kilogram", "kilograms", "kgs"], Mass, 1.0, "SI"),
    unit("t", &["tonne", "tonnes", "metric ton", "metric tons", "te"], Mass, 1000.0, "1000 kg"),
    unit("lb", &["lbs", "pound", "pounds"], Mass, POUND, "0.453 592 37 kg, exact (1959)"),
    unit("long ton", &["long tons", "imperial ton", "imperial tons", "UK ton", "UK tons"], Mass, 2240.0 * POUND, "2240 lb"),
    unit("short ton", &["short tons", "US ton", "US tons"], Mass, 2000.0 * POUND, "2000 lb"),

    unit("kn", &["kt", "kts", "kns", "knot", "knots"], Speed, 1852.0 / HOUR, "one nautical mile of 1852 m an hour"),
    unit("m/s", &["mps"], Speed, 1.0, "SI"),
    unit("km/h", &["kmh", "kph", "kmph"], Speed, 1000.0 / HOUR, "1000 m an hour"),
    unit("mph", &["mi/h", "miles per hour"], Speed, 5280.0 * FOOT / HOUR, "one statute mile of 5280 ft an hour"),

    unit("rpm", &["r/min", "rev/min", "1/min", "min-1", "min⁻¹", "rev per min", "revs", "U/min", "tr/min"], Rotation, 1.0 / 60.0, "turns a minute"),
    unit("rev/s", &["r/s", "1/s", "rps", "s-1", "s⁻¹"], Rotation, 1.0, "turns a second"),
    unit("Hz", &["hertz"], Rotation, 1.0, "turns a second"),

    unit("kW", &["kilowatt", "kilowatts"], Power, 1000.0, "SI"),
    unit("W", &["watt", "watts"], Power, 1.0, "SI"),
    unit("hp", &["bhp", "shp", "horsepower"], Power, 550.0 * FOOT * POUND * GRAVITY, "550 ft·lbf a second"),
    unit("PS", &["CV", "ch", "pk", "metric hp"], Power, 75.0 * GRAVITY, "75 kgf·m a second: the metric horsepower"),

    unit("N", &["newton", "newtons"], Force, 1.0, "SI"),
    unit("kN", &["kilonewton", "kilonewtons"], Force, 1000.0, "SI"),
    unit("kgf", &["kp"], Force, GRAVITY, "weight of 1 kg at 9.806 65 m/s²"),
    unit("lbf", &[], Force, POUND * GRAVITY, "weight of 1 lb at 9.806 65 m/s²"),

    unit("N m", &["Nm", "N·m", "N*m", "newton metre", "newton metres", "newton meter", "newton meters"], Torque, 1.0, "SI"),
    unit("kN m", &["kNm", "kN·m", "kN*m"], Torque, 1000.0, "SI"),
    unit("kgf m", &["kgfm", "kgf·m", "kgm", "kg m", "mkg", "mkp", "kpm"], Torque, GRAVITY, "weight of 1 kg on a metre"),
    unit("lbf ft", &["lb ft", "lb·ft", "lb-ft", "lbft", "ft lb", "ft·lb", "ft-lb", "ftlb", "ft lbf", "ft·lbf", "lbf·ft"], Torque, POUND * GRAVITY * FOOT, "1 lbf on a foot"),

    unit("°", &["deg", "degree", "degrees", "º"], Angle, 1.0, "1/360 of a turn"),
    unit("rad", &["radian", "radians"], Angle, 180.0 / std::f64::consts::PI, "180/π degrees"),

    degree("°C", &["C", "degC", "deg C", "ºC", "celsius"], 1.0, 0.0, "degree Celsius"),
    degree("°F", &["F", "degF", "deg F", "ºF", "fahrenheit"], 5.0 / 9.0, -32.0 * 5.0 / 9.0, "(F - 32) · 5/9 °C"),
    degree("K", &["kelvin"], 1.0, -273.15, "K - 273.15 °C"),

    unit("h", &["hr", "hrs", "hour", "hours"], Duration, HOUR, "3600 s"),
    unit("days", &["day", "d"], Duration, DAY, "24 h"),
    unit("weeks", &["week", "wk", "wks"], Duration, 7.0 * DAY, "7 days"),
    unit("months", &["month", "mo"], Duration, YEAR / 12.0, "365.25/12 days"),
    unit("years", &["year", "yr", "yrs", "y", "a"], Duration, YEAR, "365.25 days"),

    volume("L/h", &["l/h", "L/hr", "l/hr", "lph", "litres/h", "liters/h", "litre/h", "liter/h", "ltr/h"], LITRE / HOUR, "litres an hour"),
    volume("US gal/h", &["gal/h", "gal/hr", "gph", "US gal/hr", "US gph"], US_GALLON / HOUR, "US gallons of 231 in³ an hour"),
    volume("imp gal/h", &["imp gal/hr", "imp gph", "UK gal/h", "UK gph", "imperial gal/h"], IMPERIAL_GALLON / HOUR, "gallons of 4.546 09 L an hour"),
    unit("kg/h", &["kg/hr"], FuelFlow, 1.0 / HOUR, "kilograms an hour"),

    unit("bar", &["bars"], Pressure, 1e5, "100 kPa"),
    unit("mbar", &["hPa"], Pressure, 100.0, "1/1000 bar"),
    unit("kPa", &[], Pressure, 1000.0, "SI"),
    unit("Pa", &["pascal", "pascals"], Pressure, 1.0, "SI"),
    unit("psi", &["lbf/in²", "lb/in²", "lbf/in2"], Pressure, POUND * GRAVITY / (INCH * INCH), "1 lbf on a square inch"),

    unit("%", &["percent", "per cent"], Ratio, 0.01, "one hundredth"),
];

/// Spellings that mean different things to different people: refused, with what to write.
pub const AMBIGUOUS: &[(&str, &str)] = &[
    ("ton", "write t (1000 kg), long ton (1016 kg) or short ton (907 kg)"),
    ("tons", "write t (1000 kg), long ton (1016 kg) or short ton (907 kg)"),
    ("tn", "write t (1000 kg), long ton (1016 kg) or short ton (907 kg)"),
    ("st", "write kg, or lb (a stone is 14 lb), or short ton (907 kg)"),
    ("miles", "a speed is written in kn, mph or km/h"),
    ("gal", "write US gal/h or imp gal/h"),
    ("gallons", "write US gal/h or imp gal/h"),
];

/// Spellings that are accepted with one meaning although another is about: what was taken, and how to settle it.
pub const TAKEN: &[(&str, &str, &str)] = &[
    ("gal/h", "US gallons", "write US gal/h or imp gal/h"),
    ("gal/hr", "US gallons", "write US gal/h or imp gal/h"),
    ("gph", "US gallons", "write US gal/h or imp gal/h"),
];

/// Finds a unit by any spelling: among those of `wanted` first, then among all; exact case first, then any case.
#[must_use]
pub fn find(text: &str, wanted: Dimension) -> Option<&'static Unit> {
    let exact = |u: &&Unit| u.name == text || u.also.contains(&text);
    let loose = |u: &&Unit| {
        let same = |s: &str| s.chars().flat_map(char::to_lowercase).eq(text.chars().flat_map(char::to_lowercase));
        same(u.name) || u.also.iter().any(|s| same(s))
    };
    let of_wanted = || UNITS.iter().filter(move |u| u.dimension == wanted);
    of_wanted()
        .find(exact)
        .or_else(|| of_wanted().find(loose))
        .or_else(|| UNITS.iter().find(exact))
        .or_else(|| UNITS.iter().find(loose))
}

impl Dimension {
    /// The dimension with its article, as it stands in a message.
    #[must_use]
    pub fn noun(self) -> &'static str {
        match self {
            Length => "a length",
            Area => "an area",
            Mass => "a mass",
            Speed => "a speed",
            Rotation => "a rotation speed",
            Power => "a power",
            Force => "a force",
            Torque => "a torque",
            Angle => "an angle",
            Temperature => "a temperature",
            Duration => "a time",
            FuelFlow => "a fuel rate",
            Pressure => "a pressure",
            Ratio => "a pure number",
        }
    }

    /// The units it can be written in, by our own spelling.
    pub fn units(self) -> impl Iterator<Item = &'static Unit> {
        UNITS.iter().filter(move |u| u.dimension == self)
    }

    /// Name and SI factor of the unit the model keeps it in (rev/s for rotation, degrees for angles).
    #[must_use]
    pub fn si_name(self) -> &'static str {
        match self {
            Length => "m",
            Area => "m²",
            Mass => "kg",
            Speed => "m/s",
            Rotation => "rev/s",
            Power => "W",
            Force => "N",
            Torque => "N m",
            Angle => "°",
            Temperature => "°C",
            Duration => "s",
            FuelFlow => "kg/s",
            Pressure => "Pa",
            Ratio => "",
        }
    }
}

impl Unit {
    /// SI value of `number` of this unit.
    #[must_use]
    pub fn to_si(&self, number: f64) -> f64 {
        number * self.factor + self.zero
    }

    /// How many of this unit an SI value is.
    #[must_use]
    pub fn from_si(&self, si: f64) -> f64 {
        (si - self.zero) / self.factor
    }
}
