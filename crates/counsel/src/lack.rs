//! What the judgement cannot do without.

use std::fmt;

/// One thing that is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// The key in the job file: `engine.rated_power`.
    pub key: &'static str,
    /// Why it is needed.
    pub why: &'static str,
    /// How to come by it.
    pub how: &'static str,
}

/// Everything that is missing, at once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lack {
    /// In the order of the job file.
    pub missing: Vec<Missing>,
}

impl fmt::Display for Lack {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, m) in self.missing.iter().enumerate() {
            if i > 0 {
                writeln!(f)?;
            }
            write!(f, "{} is missing: {}; {}", m.key, m.why, m.how)?;
        }
        Ok(())
    }
}

impl std::error::Error for Lack {}

/// Looks for what cannot be assumed.
pub(crate) fn check(job: &job::Job, pitch_measured: bool) -> Result<(), Lack> {
    let mut missing = Vec::new();
    let b = &job.boat;
    if b.length_waterline.is_none() && b.length_overall.is_none() && b.displacement.is_none() {
        missing.push(Missing {
            key: "boat.length_waterline",
            why: "without length or weight nothing can be said of the hull",
            how: "give the waterline length, the length overall or the displacement, even roughly: \"about 9 m\"",
        });
    }
    if job.engine.rated_power.is_none() {
        missing.push(Missing {
            key: "engine.rated_power",
            why: "the propeller has to suit the engine's power",
            how: "read the rating plate, or give what is remembered: \"about 30 hp (memory)\"",
        });
    }
    if job.propeller.pitch.is_none() && !pitch_measured {
        missing.push(Missing {
            key: "propeller.pitch",
            why: "it is the pitch that is to be judged",
            how: "read the stamp on the hub (the second figure of 16 x 11), or measure a blade",
        });
    }
    if missing.is_empty() { Ok(()) } else { Err(Lack { missing }) }
}
