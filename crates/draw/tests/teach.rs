//! The explaining pictures: their numbers, and that they stand whatever they are given.
use draw::Sheet;
use draw::teach::advance::{self, Advance};
use draw::teach::cup::Lip;
use draw::teach::pulses;
use draw::teach::{air, areas, cup, hand, parts, rake, skew};
use draw::{Drawn, Picture};
use hydro::blade::Hand;
use words::Language;

const SIXTEEN_BY_ELEVEN: Advance = Advance { diameter: 0.4064, pitch: 0.2794, gone: 0.186_267 };

#[test]
fn a_turn_unrolled_says_its_lengths() {
    // 16 in by 11 in: 0.7 pi 16 in = 35.186 in = 894 mm round; two thirds of the pitch gone is a slip of one third.
    for width in [360.0, 700.0] {
        let sheet = Sheet { boat: "Kittiwake", date: "1 May 2026", width, language: Language::English };
        let picture = advance::picture(&sheet, &SIXTEEN_BY_ELEVEN).expect("drawn");
        for said in [">once round at 0.7 R: 894 mm<", ">pitch 279 mm<", ">gone 186 mm<"] {
            assert!(picture.svg.contains(said), "{said} at {width} in {}", picture.svg);
        }
        assert!(picture.desc.contains("33 % apparent slip"), "{}", picture.desc);
        assert!(picture.svg.len() < 40_000);
    }
}

#[test]
fn lengths_that_are_none_draw_nothing() {
    let sheet = Sheet { boat: "", date: "", width: 360.0, language: Language::English };
    for bad in [f64::NAN, f64::INFINITY, -1.0] {
        assert!(advance::picture(&sheet, &Advance { pitch: bad, ..SIXTEEN_BY_ELEVEN }).is_none());
        assert!(advance::picture(&sheet, &Advance { gone: bad, ..SIXTEEN_BY_ELEVEN }).is_none());
    }
    assert!(pulses::picture(&sheet, 0, 0.0).is_none() && pulses::picture(&sheet, 3, f64::NAN).is_none());
}

#[test]
fn blades_pass_evenly_and_later_by_the_phase() {
    let at = pulses::passings(4, 0.05);
    assert_eq!(at.len(), 4);
    for (got, want) in at.iter().zip([0.2, 0.45, 0.7, 0.95]) {
        assert!((got - want).abs() < 1e-12, "{at:?}");
    }
    let sheet = Sheet { boat: "Kittiwake", date: "", width: 360.0, language: Language::English };
    assert_ne!(pulses::picture(&sheet, 3, 0.0), pulses::picture(&sheet, 3, 0.1));
    assert_eq!(pulses::picture(&sheet, 3, 0.25), pulses::picture(&sheet, 3, 1.25));
}

const LIP: Lip = Lip { radius: 0.15, pitch: 0.3556, chord: 0.16, thickness: 0.012, drop: 0.003, length: 0.024 };

/// The explaining pictures of the boat's own propeller.
pub fn all(sheet: &Sheet, drawn: &Drawn) -> Vec<(&'static str, Picture)> {
    [
        ("advance", advance::picture(sheet, &SIXTEEN_BY_ELEVEN)),
        ("pulses", pulses::picture(sheet, 3, 0.1)),
        ("parts", parts::picture(sheet, drawn)),
        ("areas", areas::picture(sheet, drawn)),
        ("hand", hand::picture(sheet, drawn)),
        ("cup", cup::picture(sheet, &LIP)),
        ("rake", rake::picture(sheet, drawn, 15.0)),
        ("skew", skew::picture(sheet, drawn)),
        ("air", air::picture(sheet, drawn, 0.45)),
    ]
    .map(|(name, picture)| (name, picture.expect(name)))
    .to_vec()
}

#[test]
fn they_stay_as_they_were_looked_at() {
    let drawn = &crate::common::kittiwake().drawn;
    for width in [360.0, 900.0] {
        let sheet = Sheet { boat: "Kittiwake", date: "2 May 2026", width, language: Language::English };
        for (name, picture) in all(&sheet, drawn) {
            crate::pictures::sound(name, &picture);
            insta::assert_snapshot!(format!("teach_{name}_{width}"), picture.svg);
        }
    }
}

#[test]
fn a_lip_adds_the_pitch_its_angle_says() {
    // By the addition theorem of the tangent, without an angle: (P/2 pi r + d/c) / (1 - P/2 pi r d/c) 2 pi r =
    // (0.377304 + 0.01875) / (1 - 0.007074) 0.942478 m = 0.37593 m.
    assert!((LIP.nose_tail_pitch() - 0.37593).abs() < 5e-6, "{}", LIP.nose_tail_pitch());
    let sheet = Sheet { boat: "", date: "", width: 360.0, language: Language::English };
    for bad in [f64::NAN, 0.0, -0.003, 1.0] {
        assert!(cup::picture(&sheet, &Lip { drop: bad, ..LIP }).is_none());
    }
}

#[test]
fn the_hand_says_which_edge_leads() {
    let mut drawn = crate::common::kittiwake().drawn.clone();
    let sheet = Sheet { boat: "", date: "", width: 700.0, language: Language::English };
    for (to, said) in [(Hand::Right, "the right edge"), (Hand::Left, "the left edge")] {
        drawn.propeller.hand = to;
        let picture = hand::picture(&sheet, &drawn).expect("drawn");
        assert!(picture.desc.contains(said), "{}", picture.desc);
    }
}

#[test]
fn no_blade_and_no_depth_draw_nothing() {
    let mut drawn = crate::common::kittiwake().drawn.clone();
    let sheet = Sheet { boat: "", date: "", width: 700.0, language: Language::English };
    assert!(air::picture(&sheet, &drawn, f64::NAN).is_none() && rake::picture(&sheet, &drawn, f64::NAN).is_none());
    drawn.propeller.blades.clear();
    assert!(parts::picture(&sheet, &drawn).is_none() && areas::picture(&sheet, &drawn).is_none());
    assert!(hand::picture(&sheet, &drawn).is_none() && skew::picture(&sheet, &drawn).is_none());
}
