//! The documents handed over: HTML always, PDF with the feature `pdf`.
//!
//! [`Answers::gather`] asks `counsel` once; [`papers`] lays the answers out as documents of one model ([`Paper`]: headings,
//! sentences, tables, pictures, lines to fill in by hand, cautions). [`html`] and `pdf` render that model. The same job, date
//! and setting give the same bytes.

mod answers;
mod dates;
mod fingerprint;
pub mod html;
mod model;
#[cfg(feature = "pdf")]
pub mod pdf;
mod record;
mod sheets;
mod speak;

pub use answers::{Answers, Ordered, Setting, Size};
pub use dates::today;
pub use fingerprint::fingerprint;
pub use model::{Block, Cell, Column, Entry, Figure, Line, Paper, Shown, Table};
pub use record::record;
pub use sheets::{Kind, LeftOut, papers};

/// Version of the program, printed on every paper.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");
