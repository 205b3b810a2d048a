//! Every term can be said of every demo boat.

use crate::example;
use counsel::explain::Term;
use counsel::{Options, Prepared};

const FEW: Options = Options { boats: 300, seed: 3 };

#[test]
fn every_term_has_its_numbers_on_every_boat_and_names_methods_that_exist() {
    let known: Vec<&str> = hydro::source::methods().chain(counsel::methods()).map(|m| m.name).collect();
    for name in ["kittiwake", "gannet", "turnstone", "whimbrel"] {
        let prepared = Prepared::new(&example(name), &FEW).expect("a whole job");
        for term in Term::ALL {
            let said = prepared.explain(term);
            assert_eq!(said.term, term);
            for value in &said.values {
                assert!(!value.text.contains("NaN") && !value.text.contains("inf"), "{name} {term:?} {value:?}");
                assert!(!value.text.is_empty(), "{name} {term:?} {value:?}");
            }
            for method in &said.methods {
                assert!(known.contains(method), "{term:?}: {method}");
            }
        }
    }
}

#[test]
fn the_pitch_angle_is_that_of_the_unwrapped_triangle() {
    // 11 in of pitch on 16 in: atan(11/(0.7 pi 16)) = 17.36 degrees, worked by hand.
    let mut job = example("kittiwake");
    job.survey = None;
    let quantity = |inches: f64| job::Quantity::exact(0.0254 * inches, format!("{inches} in"));
    job.propeller.diameter = Some(quantity(16.0));
    job.propeller.pitch = Some(quantity(11.0));
    let said = Prepared::new(&job, &FEW).expect("a whole job").explain(Term::Pitch);
    let of = |name| said.values.iter().find(|v| v.name == name).map(|v| v.text.as_str());
    assert_eq!((of("mid"), of("inches")), (Some("17"), Some("11")));
}
