//! Judgement on definite boats: the crowd is drawn from what was stated and assumed, weighed by the readings, and every
//! question is answered on it.

pub mod change;
pub mod crowd;
pub mod curves;
pub mod explain;
pub mod fit;
pub mod lack;
mod measures;
pub mod order;
pub mod pair;
pub mod panel;
pub mod phrase;
pub mod report;
pub mod resistance;
pub mod survey;

mod band;
mod choose;
mod compare;
mod diagnose;
mod evidence;
mod foresee;
mod hangs;
mod judge;
mod prepared;

pub use change::Change;
pub use choose::choose;
pub use compare::compare;
pub use curves::{Curves, curves, curves_after};
pub use diagnose::{diagnose, suspected};
pub use evidence::evidence;
pub use fit::fit;
pub use foresee::{Foreseen, foresee};
pub use judge::judge;
pub use lack::{Lack, Missing};
pub use order::order;
pub use pair::pair;
pub use prepared::{Fitted, Prepared};
pub use resistance::{ResistanceRow, ResistanceTable, resistance};

/// The published methods that judge and do not compute: they stand beside those of [`hydro::source::methods`].
pub fn methods() -> impl Iterator<Item = &'static hydro::source::Method> {
    [&survey::accuracy::METHOD, &explain::DISC, &explain::DRAG].into_iter()
}

/// How large a crowd to draw, and from which seed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Options {
    /// Definite boats drawn.
    pub boats: usize,
    /// Seed of the draw: the same seed gives the same answer.
    pub seed: u32,
}

impl Default for Options {
    fn default() -> Options {
        Options { boats: 4000, seed: 1 }
    }
}
