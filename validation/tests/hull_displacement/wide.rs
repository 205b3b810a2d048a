//! Nothing breaks out of range.

use super::{SEA, plain};
use hydro::hull::holtrop::{self, Allowance, Bulb, Extras, Stern};
use hydro::hull::{Form, delft, handbook};

/// Nothing breaks over a wide field of hulls and speeds, in and out of range.
#[test]
fn wide_inputs_stay_finite_and_friction_rises() {
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut draw = |low: f64, high: f64| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        low + (high - low) * (state >> 11) as f64 / (1u64 << 53) as f64
    };
    for _ in 0..4000 {
        let length = draw(2.0, 60.0);
        let (beam, draught) = (length / draw(1.2, 12.0), length / draw(8.0, 60.0));
        let form = Form {
            length,
            beam,
            draught,
            mass: 1025.0 * length * beam * draught * draw(0.1, 1.1),
            prismatic: draw(0.3, 1.0),
            midship: draw(0.2, 1.0),
            waterplane: draw(0.4, 1.0),
            lcb_percent: draw(-15.0, 10.0),
            half_entrance_deg: draw(2.0, 88.0),
            transom_ratio: draw(0.0, 1.0),
            appendage_area: draw(0.0, 10.0),
            appendage_factor: draw(1.0, 4.0),
            roughness: draw(0.0, 0.02),
            ..plain()
        };
        let extras = Extras {
            bulb: Bulb { area: draw(-1.0, 1.0).max(0.0), height: draw(0.0, 2.0) },
            thruster_diameter: draw(0.0, 0.4),
            allowance: if draw(0.0, 1.0) < 0.5 { Allowance::Sand } else { Allowance::Published },
            ..Extras::default()
        };
        let mut last = 0.0;
        for i in 0..24 {
            let speed = 0.8 * f64::from(i);
            let all = [
                holtrop::resistance_1982(&form, &SEA, speed, &extras).value,
                holtrop::resistance_1984(&form, &SEA, speed, &extras).value,
                delft::resistance_1981(&form, &SEA, speed).value,
                delft::resistance_1998(&form, &SEA, speed).value,
                delft::resistance_2008(&form, &SEA, speed).value,
            ];
            for parts in all {
                let list =
                    [parts.friction, parts.roughness, parts.appendages, parts.wave, parts.transom, parts.total()];
                assert!(list.iter().all(|x| x.is_finite() && *x >= 0.0), "{form:?} {speed}: {parts:?}");
            }
            assert!(all[0].friction >= last);
            last = all[0].friction;
            let rules =
                [handbook::gerr(&form, speed, 0.5).value, handbook::crouch(&form, &SEA, speed, 150.0, 0.55).value];
            assert!(rules.iter().all(|x| x.is_finite() && *x >= 0.0));
        }
        let stern = Stern {
            length,
            beam,
            draught,
            draught_aft: draught,
            block: draw(0.2, 0.94),
            prismatic: form.prismatic,
            midship: form.midship,
            lcb_percent: form.lcb_percent,
            wetted_area: length * beam,
            viscous: draw(0.001, 0.01),
            stern: draw(-25.0, 10.0),
            diameter: draw(0.2, 3.0),
            area_ratio: 0.6,
            pitch_ratio: 0.8,
        };
        for factors in [stern.single_1982(), stern.single_1984(), stern.single_open(), stern.twin()] {
            assert!(factors.wake < 1.0 && factors.thrust_deduction < 1.0 && factors.relative_rotative > 0.5);
        }
    }
}
