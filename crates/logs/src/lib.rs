//! Trial logs and readings taken under way: reading logs, finding the steady runs in them, and reducing runs to a speed.
//!
//! The way from a file to a reading in the job file:
//!
//! ```
//! let log = b"time (s),rpm,speed (kn),course (deg)\n".iter().copied().chain((0..300).flat_map(|t| {
//!     let (speed, course) = if t < 140 { (6.9, 45) } else { (6.1, 225) };
//!     let rpm = if (140..160).contains(&t) { 1200 } else { 2900 };
//!     format!("{t},{rpm},{speed},{course}\n").into_bytes()
//! }));
//! let bytes: Vec<u8> = log.collect();
//! let log = logs::read("trial.csv", &mut &bytes[..], None, &logs::Options::default(), &mut |_, _| {}).unwrap();
//! let trial = logs::trial(&[log], &logs::Settings::default());
//! let best = &trial.proposals[0];
//! assert!((best.runs.speed / logs::KNOT - 6.5).abs() < 0.01);
//! assert!((best.runs.current.unwrap() / logs::KNOT - 0.4).abs() < 0.01);
//! ```
//!
//! Nothing here prints, opens files or looks at a clock.

pub mod average;
mod bins;
mod clock;
mod columns;
mod doubt;
mod format;
mod gpx;
mod history;
mod lines;
mod nmea;
mod propose;
mod read;
mod reduce;
mod runs;
mod sample;
mod signalk;
mod steady;
mod table;
mod take;
mod tally;
mod track;
mod trial;
mod windows;

pub use average::Mean;
pub use clock::{date_text, time_text};
pub use doubt::{Doubt, Refusal};
pub use format::Format;
pub use history::{Alarm, History, Level, Row, history};
pub use propose::{Proposal, Proposing, Quality, propose};
pub use read::{Log, Options, join, read};
pub use reduce::{Reduced, reduce};
pub use runs::{Pairing, Runs, pair};
pub use sample::{ENGINES, KNOT, Sample, turn};
pub use steady::{Limits, Stretch, stretches};
pub use take::{Taken, take};
pub use tally::{Counts, Example};
pub use trial::{Settings, Trial, trial};
