//! The explaining pictures: their numbers, and that they stand whatever they are given.
use draw::Sheet;
use draw::teach::advance::{self, Advance};
use draw::teach::pulses;

const SIXTEEN_BY_ELEVEN: Advance = Advance { diameter: 0.4064, pitch: 0.2794, gone: 0.186_267 };

#[test]
fn a_turn_unrolled_says_its_lengths() {
    // 16 in by 11 in: 0.7 pi 16 in = 35.186 in = 894 mm round; two thirds of the pitch gone is a slip of one third.
    for width in [360.0, 700.0] {
        let sheet = Sheet { boat: "Kittiwake", date: "1 May 2026", width };
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
    let sheet = Sheet { boat: "", date: "", width: 360.0 };
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
    let sheet = Sheet { boat: "Kittiwake", date: "", width: 360.0 };
    assert_ne!(pulses::picture(&sheet, 3, 0.0), pulses::picture(&sheet, 3, 0.1));
    assert_eq!(pulses::picture(&sheet, 3, 0.25), pulses::picture(&sheet, 3, 1.25));
}
