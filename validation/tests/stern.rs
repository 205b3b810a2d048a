//! Wake and thrust deduction by formula; drive losses and demand laws.

use hydro::drive;
use hydro::note::Note;
use hydro::stern::{Arrangement, deduction, shaft_angle, typical, wake};
use validation::{assert_close, rows};

fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("not a number: {cell}"))
}

#[test]
fn taylors_table_is_met_at_its_points_and_between() {
    for row in rows("taylor1943_wake.csv") {
        let cb = number(&row[0]);
        assert_close!(wake::taylor_table(cb, 1).value, number(&row[1]), 1e-12, "Taylor 1943, from memory");
        if !row[2].is_empty() {
            assert_close!(wake::taylor_table(cb, 2).value, number(&row[2]), 1e-12, "Taylor 1943, from memory");
        }
    }
    let half = wake::taylor_table(0.625, 1).value;
    assert_close!(half, 0.5 * (0.243 + 0.260), 1e-12, "straight between");
    assert!(wake::taylor_table(0.40, 1).notes.has(Note::BlockOutsideWakeTable));
    assert!(wake::taylor_table(f64::NAN, 2).value.is_finite());
}

#[test]
fn the_single_screw_line_is_the_table_and_the_twin_screw_line_is_not() {
    for cb in [0.50, 0.55, 0.60, 0.65, 0.70, 0.75, 0.80] {
        let [single, twin] = [1, 2].map(|z| wake::taylor_line(cb, z) - wake::taylor_table(cb, z).value);
        assert!(single.abs() <= 0.0305, "{cb}: {single}");
        assert!((0.035..=0.125).contains(&twin), "{cb}: {twin}");
    }
}

#[test]
fn gerr_by_speed_gives_the_three_values_noted() {
    // 1 - w 0.90 at 6 kn, 0.95 at 18, 0.97 at 28: two printed digits.
    for (knots, want) in [(6.0, 0.90), (18.0, 0.95), (28.0, 0.97)] {
        let speed = knots * 1852.0 / 3600.0;
        assert_close!(1.0 - wake::gerr_speed(speed), want, 0.005, "Gerr 1989, formula 6-6, from memory");
    }
}

#[test]
fn shaft_angle_loss_is_the_trades_table() {
    // Printed with one digit after the point.
    for (angle, want) in [(6.0, 0.5), (10.0, 1.5), (14.0, 3.0)] {
        assert_close!(100.0 * shaft_angle::loss(angle), want, 0.051, "losses as the trade states them, from memory");
    }
}

#[test]
fn usual_values_are_ordered_and_lie_in_the_bands_of_their_formulas() {
    use Arrangement::{Aperture, FinKeelStrut, InclinedShaft, Outboard, Saildrive, Skeg, Sterndrive, Tunnel};
    for arrangement in [Aperture, FinKeelStrut, InclinedShaft, Outboard, Saildrive, Skeg, Sterndrive, Tunnel] {
        for screws in 1..=3 {
            for cb in [0.2, 0.45, 0.7, f64::NAN] {
                let t = typical(arrangement, screws, cb);
                for (low, middle, high) in [t.wake, t.thrust_deduction, t.relative_rotative] {
                    assert!(low < middle && middle < high, "{arrangement:?} {screws} {cb}");
                }
            }
        }
    }
    // A double-plate or streamlined rudder behind an aperture: Schoenherr's k 0.5..0.9 about the usual middle.
    let aperture = typical(Aperture, 1, 0.55);
    let low = deduction::single(aperture.wake.1, deduction::Rudder::Streamlined).0;
    let high = deduction::single(aperture.wake.1, deduction::Rudder::DoublePlate).2;
    assert!((low..=high).contains(&aperture.thrust_deduction.1));
    // Twin struts at no wake: 0.06, inside the band of planing shafts.
    let planing = typical(InclinedShaft, 2, 0.45).thrust_deduction;
    assert!((planing.0..=planing.2).contains(&deduction::twin(0.0, deduction::Support::Struts)));
}

#[test]
fn the_petrol_cycle_is_the_power_two_and_a_half() {
    for row in rows("cfr1045_e4.csv") {
        let (speed, torque) = (number(&row[0]) / 100.0, number(&row[1]) / 100.0);
        // Torque is printed to 0.1 %.
        let exponent = drive::demand_exponent(true);
        assert_close!(drive::demand(speed, exponent) / speed, torque, 0.000_51, "40 CFR Part 1045, Appendix II");
    }
}

#[test]
fn the_diesel_cycle_is_the_cube() {
    for (speed, power) in [(1.0, 1.0), (0.91, 0.75), (0.80, 0.50), (0.63, 0.25)] {
        // Speeds are printed to 1 %; half power belongs to 79.4 %, printed as 80.
        let cube = f64::powf(power, 1.0 / drive::demand_exponent(false));
        assert_close!(cube, speed, 0.0065, "ISO 8178 E3, from memory");
    }
}
