//! Water properties against IAPWS, TEOS-10 and ITTC tables.

use hydro::water::{Water, air_density, density, standard_pressure, vapour, viscosity};
use validation::{assert_close, rows};

const TABLE: &str = "IAPWS-95/IAPWS-2008 and TEOS-10 at one atmosphere";

fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("not a number: {cell}"))
}

#[test]
fn fresh_water_follows_iapws_from_0_to_30() {
    let table = rows("water_iapws_teos10.csv");
    assert_eq!(table.len(), 31);
    for row in table {
        let t = number(&row[0]);
        let water = Water::fresh(t);
        assert!(water.notes.is_empty());
        // Millero & Poisson stand on an older standard mean water: 3 parts in a million.
        assert_close!(water.value.density, number(&row[1]), 0.003, TABLE);
        // The row 0 was made at the triple point, 0.01 °C (viscosity falls 3.4 % a degree there, vapour rises 7.3 %).
        let at = if t == 0.0 { 0.01 } else { t };
        // A hundredth of the 1 % that the full formulation states as its uncertainty.
        assert_close!(viscosity::dynamic(at, 0.0) / number(&row[2]), 1.0, 1e-4, TABLE);
        assert_close!(viscosity::dynamic(at, 0.0) / water.value.density / number(&row[3]), 1.0, 1e-4, TABLE);
        // Printed to 0.1 Pa; saturation equation against the full equation of state: 0.025 % is the tables' uncertainty.
        assert_close!(vapour::pressure(at, 0.0) / number(&row[4]), 1.0, 2.5e-4, TABLE);
    }
}

#[test]
fn sea_water_follows_teos10_from_0_to_30() {
    for row in rows("water_iapws_teos10.csv") {
        let t = number(&row[0]);
        let water = Water::sea(t).value;
        // The one-atmosphere equation of 1981 states a standard error of 0.0036 kg/m³.
        assert_close!(water.density, number(&row[5]), 0.0036, TABLE);
        let at = if t == 0.0 { 0.01 } else { t };
        assert_close!(viscosity::dynamic(at, hydro::water::STANDARD_SALINITY) / number(&row[7]), 1.0, 1e-4, TABLE);
        // Two ways to the sea's vapour pressure differ by 0.03 %; the saturation equation adds 0.01 %.
        assert_close!(vapour::pressure(at, hydro::water::STANDARD_SALINITY) / number(&row[9]), 1.0, 4e-4, TABLE);
    }
}

#[test]
fn the_printed_ittc_sea_density_carries_one_atmosphere_more() {
    // One atmosphere compresses sea water by 101325 Pa / (2.1..2.4 GPa): 0.043..0.048 kg/m³. The check: every printed
    // value lies above the surface value by just that.
    for row in rows("ittc2011_sea_density.csv") {
        let excess = number(&row[1]) - Water::sea(number(&row[0])).value.density;
        assert_close!(excess, 0.0455, 0.0025 + 0.0036, "ITTC 7.5-02-01-03 (2011) less TEOS-10");
    }
}

#[test]
fn the_equation_of_1981_prints_its_own_check_values() {
    // UNESCO Technical Papers in Marine Science 44 (1983), p. 19: practical salinity, temperature, density.
    for (s, t, want) in
        [(0.0, 5.0, 999.966_75), (0.0, 25.0, 997.047_96), (35.0, 5.0, 1_027.675_47), (35.0, 25.0, 1_023.343_06)]
    {
        let absolute = s * hydro::water::STANDARD_SALINITY / 35.0;
        assert_close!(density::density(t, absolute), want, 0.000_005_1, "UNESCO 44 (1983), from memory");
    }
}

#[test]
fn the_two_kinematic_viscosities_of_ittc_at_15() {
    assert_close!(Water::fresh(15.0).value.viscosity, 1.1386e-6, 0.5e-10 + 1e-10, "ITTC 7.5-02-01-03 (2011)");
    assert_close!(Water::sea(15.0).value.viscosity, 1.1892e-6, 0.5e-10 + 1e-10, "ITTC 7.5-02-01-03 (2011)");
}

#[test]
fn standard_atmosphere() {
    assert_close!(standard_pressure(1000.0), 89_875.0, 1.0, "ISO 2533:1975, 1000 m");
    assert_close!(standard_pressure(0.0), 101_325.0, 1e-9, "ISO 2533:1975");
    assert_close!(air_density(15.0, 101_325.0, 0.0), 1.225, 0.000_5, "ISO 2533:1975");
}
