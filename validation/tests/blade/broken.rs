//! Readings that are not of a propeller, and readings with gaps.

use hydro::blade::{
    AssumedWhat, BladeReading, Estimate, Form, Hand, Hub, PitchReading, Quantity, Readings, Station, Trouble, areas,
    reduce,
};

fn station(x: f64) -> Station {
    Station {
        pitch: vec![PitchReading::RiseOverArc { rise: Estimate::new(0.04, 0.0003), arc_deg: Estimate::new(40.0, 0.1) }],
        chord: Some(Estimate::new(0.30 * (1.0 - x * x).sqrt() * 0.5, 0.0005)),
        leading: Some(Estimate::new(0.15 * (1.0 - x * x).sqrt() * 0.5, 0.0005)),
        thickness: Some(Estimate::new(0.02 - 0.017 * x, 0.0002)),
        track: Some(Estimate::new(0.03 * x, 0.0005)),
        ..Station::at(Estimate::new(0.25 * x, 0.0002))
    }
}

fn whole() -> Readings {
    let blade = BladeReading {
        tip_radius: Some(Estimate::new(0.25, 0.0005)),
        stations: [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95].map(station).to_vec(),
        ..BladeReading::default()
    };
    Readings {
        blades: vec![blade; 3],
        hand: Hand::Right,
        hub: Hub::cylinder(0.1, 0.15, 0.035),
        form: Form::FlatFaced,
        common_pitch_sd: 0.003,
    }
}

fn broken(change: impl Fn(&mut Readings)) -> Trouble {
    let mut readings = whole();
    change(&mut readings);
    reduce(&readings).expect_err("broken readings")
}

#[test]
fn a_good_survey_has_nothing_assumed_but_the_spacing() {
    let m = reduce(&whole()).unwrap();
    assert!(m.assumed.iter().all(|a| a.quantity == Quantity::Angle), "{:?}", m.assumed);
    let mean = m.pitch.mean.unwrap();
    assert!((mean.value - 0.36).abs() < 1e-9);
    assert!((m.effective_pitch().value - 0.36).abs() < 1e-6);
    assert_eq!(m.effective_pitches().len(), 3);
    assert!(m.expanded_area_ratio().sd > 0.0);
}

#[test]
fn broken_sheets_are_refused_by_name() {
    assert_eq!(broken(|r| r.blades.clear()), Trouble::BladeCount(0));
    assert_eq!(broken(|r| r.blades.iter_mut().for_each(|b| b.tip_radius = None)), Trouble::NoTipRadius);
    assert_eq!(broken(|r| r.blades[1].stations.swap(2, 3)), Trouble::RadiiOutOfOrder { blade: 1, station: 3 });
    assert_eq!(
        broken(|r| r.blades[2].stations[7].radius = Estimate::exact(0.26)),
        Trouble::RadiusOutside { blade: 2, station: 7 }
    );
    assert_eq!(
        broken(|r| r.blades[0].stations[1].thickness = Some(Estimate::exact(-0.01))),
        Trouble::NotPositive { blade: 0, station: Some(1), quantity: Quantity::Thickness, value: -0.01 }
    );
    let not = |t: Trouble, q: Quantity| matches!(t, Trouble::Impossible { quantity, .. } if quantity == q);
    // Millimetres for metres, inches for metres, radians for degrees, a negative rise, no number.
    let rise = |rise: f64, arc: f64| {
        move |r: &mut Readings| {
            r.blades[0].stations[4].pitch =
                vec![PitchReading::RiseOverArc { rise: Estimate::exact(rise), arc_deg: Estimate::exact(arc) }];
        }
    };
    for (h, a) in [(40.0, 40.0), (1.57, 40.0), (0.04, 0.698), (-0.04, 40.0), (f64::NAN, 40.0), (0.04, 0.0)] {
        assert!(not(broken(rise(h, a)), Quantity::Pitch), "{h} {a}");
    }
    assert!(not(broken(|r| r.blades[0].stations[0].chord = Some(Estimate::exact(140.0))), Quantity::Chord));
    assert!(not(broken(|r| r.blades[0].stations[0].track = Some(Estimate::exact(f64::INFINITY))), Quantity::Track));
    assert!(not(broken(|r| r.blades[1].tip_radius = Some(Estimate::exact(0.5))), Quantity::Radius));
    assert!(not(broken(|r| r.blades[1].angle_deg = Some(Estimate::exact(-120.0))), Quantity::Angle));
    assert!(not(broken(|r| r.hub.fore_diameter = 0.6), Quantity::Hub));
    assert!(not(broken(|r| r.hub.bore_fore = 0.11), Quantity::Hub));
    let no_pitch = |r: &mut Readings| r.blades.iter_mut().flat_map(|b| &mut b.stations).for_each(|s| s.pitch.clear());
    assert_eq!(broken(no_pitch), Trouble::Unknown(Quantity::Pitch));
    assert!(matches!(broken(|r| r.blades.iter_mut().for_each(|b| b.stations.clear())), Trouble::TooFewStations { .. }));
}

#[test]
fn gaps_are_filled_said_and_cost_spread() {
    let full = reduce(&whole()).unwrap();
    let pitch_sd = full.effective_pitch().sd;
    // One pitch missing: drawn from its neighbours.
    let mut r = whole();
    r.blades[1].stations[4].pitch.clear();
    let m = reduce(&r).unwrap();
    let a = m.assumed.iter().find(|a| a.quantity == Quantity::Pitch).unwrap();
    assert_eq!((a.blade, a.station, a.what), (1, Some(4), AssumedWhat::FromNeighbours));
    assert!(m.effective_pitch().sd > pitch_sd);
    // A whole blade nobody measured: the mean of the others.
    let mut r = whole();
    r.blades[2] = BladeReading::default();
    let m = reduce(&r).unwrap();
    assert!(m.assumed.iter().any(|a| a.blade == 2 && a.what == AssumedWhat::FromOtherBlades));
    assert!((m.effective_pitches()[2].value - 0.36).abs() < 1e-6);
    assert!(m.effective_pitches()[2].sd > m.effective_pitches()[0].sd);
    assert!(m.pitch.blades[2].mean.is_none());
    // The kitchen table: one pitch reading at 0.7 R a blade and a tip radius, nothing else.
    let mut r = whole();
    for b in &mut r.blades {
        b.stations = vec![Station { pitch: b.stations[4].pitch.clone(), ..Station::at(b.stations[4].radius) }];
    }
    let m = reduce(&r).unwrap();
    assert!((m.effective_pitch().value - 0.36).abs() < 1e-6);
    assert!(m.assumed.iter().any(|a| a.quantity == Quantity::Chord && a.what == AssumedWhat::Usual));
    let area = m.expanded_area_ratio();
    assert!(area.sd > 0.05 * area.value && area.value.is_finite() && area.value > 0.2, "{area:?}");
    assert!(areas(&m.propeller).projected_ratio.is_finite());
    // A lone chord sets the size of the usual outline.
    for b in &mut r.blades {
        b.stations[0].chord = Some(Estimate::new(0.2, 0.001));
    }
    assert!(reduce(&r).unwrap().expanded_area_ratio().value > 1.2 * area.value);
}

#[test]
fn no_soup_of_numbers_panics_or_gives_no_number() {
    let mut dice = super::Dice(0xfeed);
    let wild = [0.0, -1.0, 1e-9, 1e9, f64::NAN, f64::INFINITY, 0.3, 40.0];
    let mut good = 0;
    for _ in 0..2000 {
        let mut r = whole();
        for _ in 0..2 {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small index")]
            let pick = |dice: &mut super::Dice, n: f64| (n * dice.even()) as usize;
            let value = Estimate::new(wild[pick(&mut dice, 8.0)], 0.001 * wild[pick(&mut dice, 8.0)]);
            let (b, s) = (pick(&mut dice, 3.0), pick(&mut dice, 8.0));
            let blade = &mut r.blades[b];
            match pick(&mut dice, 9.0) {
                0 => blade.tip_radius = Some(value),
                1 => blade.angle_deg = Some(value),
                2 => blade.stations[s].radius = value,
                3 => blade.stations[s].chord = Some(value),
                4 => blade.stations[s].leading = Some(value),
                5 => blade.stations[s].trailing = Some(value),
                6 => blade.stations[s].thickness = Some(value),
                7 => blade.stations[s].track = Some(value),
                _ => blade.stations[s].pitch = vec![PitchReading::FaceAngle { angle_deg: value }],
            }
        }
        if let Ok(m) = reduce(&r) {
            good += 1;
            let a = areas(&m.propeller);
            let all = [a.expanded_ratio, a.projected_ratio, m.effective_pitch().value, m.effective_pitch().sd];
            assert!(all.iter().all(|v| v.is_finite()), "{all:?} {r:?}");
        }
    }
    assert!(good > 50, "{good}");
}
