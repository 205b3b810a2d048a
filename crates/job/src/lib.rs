//! What was said about a boat: the job file, its units, spreads and sources, and the assumptions for what was not said.
//!
//! This crate reads and checks job files (TOML) and saves them without disturbing comments or order. It knows nothing
//! of physics. All quantities are SI; every quantity carries an 80 % band (8 chances in 10 of lying inside) and a source.
//!
//! ```
//! let read = job::Job::read("[propeller]\ndiameter = \"16 in\"\npitch = \"11 in ± 0.25 (measured)\"\n").unwrap();
//! let pitch = read.job.propeller.pitch.unwrap();
//! assert!((pitch.middle - 11.0 * 0.0254).abs() < 1e-12);
//!
//! let problems = job::Job::read("[propeller]\ndiameter = 16\n").unwrap_err();
//! assert_eq!(problems[0].code, "needs-unit");
//! ```

mod assemble;
pub mod assume;
pub mod complaint;
mod doubts;
pub mod edit;
pub mod fit;
pub mod keys;
pub mod manual;
pub mod model;
mod near;
mod number;
mod parts;
pub mod problem;
pub mod quantity;
mod read;
pub mod schema;
pub mod spread;
pub mod stamp;
mod stated;
pub mod survey;
mod syntax;
pub mod units;
mod value;
pub mod words;
mod write;

pub use complaint::{Onset, Side, Smoke, Swapped, Symptom};
pub use edit::Document;
pub use model::*;
pub use problem::{Problem, Severity, line_and_column, render};
pub use quantity::{Dimension, Quantity, Source};
pub use read::Read;
pub use survey::Survey;
pub use words::Word;
