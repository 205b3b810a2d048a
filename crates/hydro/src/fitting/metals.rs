//! Shaft and propeller metals.

use super::shaft::Duty;
use crate::blade::Alloy;

const PSI: f64 = 6_894.757_293_168_36;
const LB_IN3: f64 = 27_679.904_710_203;

/// A shaft metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftMetal {
    /// What the trade calls it, by composition.
    pub name: &'static str,
    /// Words people write for it, lower case.
    pub said: &'static [&'static str],
    /// Yield strength in torsion, Pa.
    pub torsional_yield: f64,
    /// Tensile strength, Pa, for the class rules; a handbook middle, from memory.
    pub tensile: f64,
    /// Young's modulus, Pa.
    pub modulus: f64,
    /// Density, kg/m³.
    pub density: f64,
    /// Largest diameter the strength is printed for, m: thicker bar is weaker, and the maker's sheet decides.
    pub strong_to: f64,
    /// How far the row is trusted.
    pub trust: &'static str,
}

impl ShaftMetal {
    const fn up_to(self, diameter: f64) -> ShaftMetal {
        ShaftMetal { strong_to: diameter, ..self }
    }
}

const fn metal(
    name: &'static str,
    said: &'static [&'static str],
    yield_psi: f64,
    tensile_mpa: f64,
    modulus_psi: f64,
    density_lb: f64,
    trust: &'static str,
) -> ShaftMetal {
    ShaftMetal {
        name,
        said,
        torsional_yield: yield_psi * PSI,
        tensile: tensile_mpa * 1e6,
        modulus: modulus_psi * PSI,
        density: density_lb * LB_IN3,
        strong_to: f64::INFINITY,
        trust,
    }
}

/// The shaft metals known. Torsional yield of nickel and steel alloys is two thirds of the tensile yield (ABYC P-6, text of
/// 7/02).
pub const SHAFT_METALS: [ShaftMetal; 7] = [
    metal("naval bronze", &["bronze", "tobin", "naval"], 20_000.0, 380.0, 16.0e6, 0.304, "from memory"),
    metal("stainless steel 304", &["304", "stainless"], 20_000.0, 515.0, 28.0e6, 0.286, "one public copy"),
    metal("nickel-copper 400", &["monel 400", "nickel-copper", "monel"], 40_000.0, 550.0, 26.0e6, 0.319, "from memory"),
    metal("nickel-copper K-500", &["k-500", "k500"], 67_000.0, 965.0, 26.0e6, 0.306, "from memory"),
    metal(
        "precipitation-hardened stainless, grade 17",
        &["grade 17", "17-4"],
        70_000.0,
        930.0,
        28.5e6,
        0.284,
        "one public copy",
    ),
    metal("stainless, grade 18", &["grade 18"], 60_000.0, 790.0, 28.8e6, 0.281, "one public copy"),
    metal(
        "stainless 22Cr-13Ni-5Mn, grade 22",
        &["grade 22", "22-13-5", "22cr"],
        70_000.0,
        830.0,
        28.0e6,
        0.285,
        "one public copy; high strength up to about 2 in only",
    )
    .up_to(0.0508),
];

/// The shaft metal somebody means; a grade or number decides before a word, the longer before the shorter.
#[must_use]
pub fn shaft_metal(said: &str) -> Option<&'static ShaftMetal> {
    let said = said.to_lowercase();
    let weight = |word: &str| word.len() + if word.contains(|c: char| c.is_ascii_digit()) { 100 } else { 0 };
    let fits =
        |metal: &&ShaftMetal| metal.said.iter().filter(|word| said.contains(**word)).map(|word| weight(word)).max();
    SHAFT_METALS.iter().filter(|m| fits(m).is_some()).max_by_key(fits)
}

/// What a blade may carry, Pa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowable {
    /// The stress worked to.
    pub worked_to: f64,
    /// Beyond this the blade is not to be used for the duty.
    pub most: f64,
}

/// Stress at the root of a blade that the trade works to: long lives in sea water, fatigue included. Class rules as recalled for
/// the bronzes, common practice for the rest; all from memory.
///
/// Those figures are for lives beyond 10^7 revolutions at three quarters of the power and more, as working boats have in a few
/// hundred hours: there nothing is let through above them. A naval rule read in part (Lloyd's Register, Naval Ships 2023, Vol 2 Pt 4 Ch 1
/// 7.1) lets up to 1.5 of them pass below 10^7; of that a fifth is let through here on pleasure craft, whose engines
/// are rated for full power an hour in eight or less.
#[must_use]
pub const fn blade_allowable(alloy: Alloy, duty: Duty) -> Allowable {
    let worked_to = match alloy {
        Alloy::ManganeseBronze | Alloy::NickelManganeseBronze => 39e6,
        Alloy::NickelAluminiumBronze => 56e6,
        Alloy::ManganeseAluminiumBronze => 46e6,
        Alloy::StainlessSteel => 41e6,
        Alloy::Aluminium => 20e6,
    };
    let over = match duty {
        Duty::Light | Duty::Yacht => 1.2,
        Duty::Working => 1.0,
    };
    Allowable { worked_to, most: over * worked_to }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A working boat's blade is let through up to what class works to and no further.
    #[test]
    fn duty_and_alloy_decide() {
        let of = |alloy, duty| blade_allowable(alloy, duty);
        for alloy in [Alloy::ManganeseBronze, Alloy::NickelAluminiumBronze, Alloy::StainlessSteel, Alloy::Aluminium] {
            let (yacht, working) = (of(alloy, Duty::Yacht), of(alloy, Duty::Working));
            assert_eq!((working.most, yacht.worked_to), (working.worked_to, working.worked_to));
            assert!(yacht.most > working.most && yacht.most <= 1.5 * yacht.worked_to);
        }
        // U as recalled: Cu1 39, Cu3 56, Cu4 46 N/mm2.
        let bronzes = [Alloy::ManganeseBronze, Alloy::NickelAluminiumBronze, Alloy::ManganeseAluminiumBronze];
        assert_eq!(bronzes.map(|a| of(a, Duty::Working).worked_to / 1e6), [39.0, 56.0, 46.0]);
    }

    #[test]
    fn the_longest_word_decides() {
        let name = |said: &str| shaft_metal(said).map(|m| m.name);
        assert_eq!(name("stainless steel, grade 22"), Some("stainless 22Cr-13Ni-5Mn, grade 22"));
        assert_eq!(name("Stainless steel"), Some("stainless steel 304"));
        assert_eq!(name("bronze"), Some("naval bronze"));
        assert_eq!(name("wood"), None);
    }
}
