//! The trade's terms with this boat's numbers: what a page or a command line needs to explain a term to the owner of *this*
//! boat. Sentences stand in the words' files; here is what is put into them, and where it comes from.

mod blade;
mod disc;
mod flow;
mod sailing;

use crate::crowd::setup::Setup;
use crate::panel::{Panel, Run};
use crate::{Lack, Options, Prepared};
use job::Job;
use serde::Serialize;

pub use disc::METHOD as DISC;
pub use sailing::METHOD as DRAG;

/// A term of the trade that can be explained.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Term {
    /// Hub, blades, edges, face and back.
    Parts,
    /// Diameter and the water it takes hold of.
    Diameter,
    /// Expanded, developed, projected area.
    Areas,
    /// Pitch.
    Pitch,
    /// Slip against efficiency.
    Slip,
    /// Hand.
    Hand,
    /// One propeller or two.
    Twin,
    /// Paddlewheel effect.
    Paddlewheel,
    /// Number of blades.
    Blades,
    /// Cup.
    Cup,
    /// Rake.
    Rake,
    /// Skew.
    Skew,
    /// Ventilation against cavitation.
    Ventilation,
    /// Engine and propeller curves.
    Curves,
    /// Measuring and proving.
    Measuring,
    /// Drag under sail.
    Sailing,
}

impl Term {
    /// All, in the order a conversation takes them.
    pub const ALL: [Term; 16] = [
        Term::Parts,
        Term::Diameter,
        Term::Pitch,
        Term::Slip,
        Term::Areas,
        Term::Blades,
        Term::Cup,
        Term::Rake,
        Term::Skew,
        Term::Hand,
        Term::Paddlewheel,
        Term::Twin,
        Term::Ventilation,
        Term::Curves,
        Term::Measuring,
        Term::Sailing,
    ];

    /// Its name on the command line, in addresses and in the words' files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Term::Parts => "parts",
            Term::Diameter => "diameter",
            Term::Areas => "areas",
            Term::Pitch => "pitch",
            Term::Slip => "slip",
            Term::Hand => "hand",
            Term::Twin => "twin",
            Term::Paddlewheel => "paddlewheel",
            Term::Blades => "blades",
            Term::Cup => "cup",
            Term::Rake => "rake",
            Term::Skew => "skew",
            Term::Ventilation => "ventilation",
            Term::Curves => "curves",
            Term::Measuring => "measuring",
            Term::Sailing => "sailing",
        }
    }

    /// The term of a name.
    #[must_use]
    pub fn of_name(name: &str) -> Option<Term> {
        Term::ALL.into_iter().find(|term| term.name() == name)
    }
}

/// A value in the line on this boat.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Said {
    /// Its name in the sentence.
    pub name: &'static str,
    /// As it is spoken, in English, unit included.
    pub text: String,
}

/// A term on this boat.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OnBoat {
    /// The term.
    pub term: Term,
    /// Which sentence fits this boat: `boat` where there is only one.
    pub case: &'static str,
    /// What stands in it.
    pub values: Vec<Said>,
    /// Methods the values rest on, by their names in `fairwake sources`.
    pub methods: Vec<&'static str>,
}

impl OnBoat {
    fn new(term: Term, case: &'static str, values: Vec<(&'static str, String)>, methods: &[&'static str]) -> OnBoat {
        OnBoat {
            term,
            case,
            values: values.into_iter().map(|(name, text)| Said { name, text }).collect(),
            methods: methods.to_vec(),
        }
    }
}

/// A term with a job's numbers.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn explain(job: &Job, term: Term, options: &Options) -> Result<OnBoat, Lack> {
    Ok(Prepared::new(job, options)?.explain(term))
}

/// What every term is worked out on.
struct Ground<'a> {
    prepared: &'a Prepared,
    panel: Panel<'a>,
    runs: Vec<Run>,
}

impl Ground<'_> {
    /// The band of a quantity at full throttle as described, in words.
    fn span(&self, unit: &'static str, f: impl Fn(&Run) -> f64) -> String {
        let values: Vec<f64> = self.runs.iter().map(f).collect();
        crate::phrase::span(&self.panel.band(&values, unit))
    }

    fn middle(&self, f: impl Fn(&Run) -> f64) -> f64 {
        let values: Vec<f64> = self.runs.iter().map(f).collect();
        self.panel.band(&values, "1").middle
    }
}

impl Prepared {
    /// A term with this job's numbers.
    #[must_use]
    pub fn explain(&self, term: Term) -> OnBoat {
        let panel = self.panel();
        let runs = panel.run(&Setup::default());
        let ground = Ground { prepared: self, panel, runs };
        match term {
            Term::Parts => blade::parts(&ground),
            Term::Diameter => disc::diameter(&ground),
            Term::Areas => blade::areas(&ground),
            Term::Pitch => blade::pitch(&ground),
            Term::Slip => flow::slip(&ground),
            Term::Hand => blade::hand(&ground),
            Term::Twin => blade::twin(&ground),
            Term::Paddlewheel => blade::paddlewheel(&ground),
            Term::Blades => flow::blades(&ground),
            Term::Cup => flow::cup(&ground),
            Term::Rake => blade::rake(&ground),
            Term::Skew => blade::skew(&ground),
            Term::Ventilation => flow::ventilation(&ground),
            Term::Curves => flow::curves(&ground),
            Term::Measuring => flow::measuring(&ground),
            Term::Sailing => sailing::drag(&ground),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Term;

    #[test]
    fn every_term_is_found_by_its_name_and_stands_once() {
        for term in Term::ALL {
            assert_eq!(Term::of_name(term.name()), Some(term));
            assert_eq!(Term::ALL.iter().filter(|t| **t == term).count(), 1);
        }
        assert_eq!(Term::of_name("torque"), None);
    }
}
