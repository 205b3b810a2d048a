//! The Delft regressions against measured models and each other.

use super::{models, number, rms};
use hydro::hull::delft;
use validation::{assert_close, rows};

/// The parent of the Delft series at 10 m, as `delft_parent.csv` describes it.
const PARENT: delft::CanoeBody = delft::CanoeBody {
    length: 10.0,
    beam: 3.1546,
    draught: 0.7906,
    volume: 9.156,
    prismatic: 0.568,
    midship: 0.6463,
    lcb: 5.230,
    lcf: 5.350,
    waterplane: 21.45,
    wetted: 25.43,
};

#[test]
fn delft_regressions_give_the_parent_hull() {
    let at = |year, froude| 1e3 * PARENT.residuary(year).at(froude);
    for row in rows("delft_parent.csv") {
        let froude = number(&row[0]);
        println!(
            "{froude:.2} measured {} got {:.3} {:.3} {:.3}",
            row[1],
            at(delft::Year::Y1981, froude),
            at(delft::Year::Y1998, froude),
            at(delft::Year::Y2008, froude)
        );
        for (cell, year) in [(2, delft::Year::Y1981), (3, delft::Year::Y1998), (4, delft::Year::Y2008)] {
            if !row[cell].is_empty() {
                // Two decimals, and waterplane and wetted area stated to four figures (2.3e-4).
                let tolerance = 0.005 + 2.3e-4 * number(&row[cell]);
                assert_close!(at(year, froude), number(&row[cell]), tolerance, format!("{year:?} at Fn {froude}"));
            }
        }
    }
    assert_close!(
        delft::wetted_area(10.0, 3.1546, 0.7906, 9.156, 0.6463),
        25.43,
        0.005,
        "wetted area of the parent at 10 m"
    );
}

/// Root mean square errors of the 1981 regression, `1000 Rr/W`, at Fn 0.125, 0.150 .. 0.450, as this comparison gave them.
/// They are 3 % of the mean at 0.45, 4 % at 0.35, 8 % at 0.25, 14 % at 0.20. Own figures, pinned against slips.
const RMS_1981: [f64; 14] =
    [0.050, 0.057, 0.077, 0.110, 0.119, 0.143, 0.163, 0.198, 0.206, 0.316, 0.380, 0.519, 0.844, 1.332];

#[test]
fn delft_1981_follows_the_measured_models() {
    let models = models();
    assert_eq!(models.len(), 17);
    let found = rms(&models, |m, froude, measured| 1e3 * (m.body.residuary(delft::Year::Y1981).at(froude) - measured));
    for ((froude, rms, mean), want) in found.into_iter().zip(RMS_1981) {
        println!("1981 Fn {froude:.3} rms {rms:.3} of mean {:.3}", 1e3 * mean);
        assert_close!(rms, want, 0.0006, format!("17 measured models, Fn {froude}"));
        if froude >= 0.2 {
            // A slipped digit in any coefficient would show: the worst honest figure is 14 %.
            assert!(rms < 0.15 * 1e3 * mean, "Fn {froude}: {rms} of {mean}");
        }
    }
}

#[test]
fn bare_hull_regressions_lie_below_the_appended_models() {
    let models = models();
    for (year, at_045) in [(delft::Year::Y1998, -0.158), (delft::Year::Y2008, -0.183)] {
        let mut bias = Vec::new();
        for i in 0..14 {
            let sum: f64 = models
                .iter()
                .map(|m| (m.body.residuary(year).at(m.measured[i].0) / m.measured[i].1).ln())
                .filter(|ln| ln.is_finite())
                .sum();
            bias.push(sum / models.len() as f64);
        }
        println!("{year:?} mean ln(Rr/measured) {bias:.3?}");
        // Fn 0.20 .. 0.45: always low, as keel and rudder are missing; at 0.45 by the figure of the comparison.
        assert!(bias[3..].iter().all(|b| *b < -0.08), "{year:?}: {bias:?}");
        assert_close!(bias[13], at_045, 0.001, format!("{year:?} at Fn 0.45, as this comparison gave it"));
    }
    // Two independent regressions of the same series: on the parent 3 % where anything is to be measured (2 % from 0.40).
    for i in 4..=12 {
        let froude = 0.05 * f64::from(i);
        let ratio = PARENT.residuary(delft::Year::Y2008).at(froude) / PARENT.residuary(delft::Year::Y1998).at(froude);
        assert!((ratio - 1.0).abs() < 0.03, "Fn {froude}: {ratio}");
    }
}

/// On yacht hulls within their range the residuary resistance rises with speed from Fn 0.2, and joins its ends smoothly.
#[test]
fn residuary_resistance_is_smooth() {
    for model in models() {
        for year in [delft::Year::Y1981, delft::Year::Y1998, delft::Year::Y2008] {
            let curve = model.body.residuary(year);
            let mut last = 0.0;
            for i in 0..2000 {
                let froude = 0.0005 * f64::from(i);
                let now = curve.at(froude);
                assert!(now >= last - 1e-12 || !(0.2..=0.6).contains(&froude), "{year:?} Fn {froude}");
                assert!((now - last).abs() < 0.0015, "{year:?} jumps at Fn {froude}");
                last = now;
            }
            assert_eq!(curve.at(0.0), 0.0);
        }
    }
}
