//! Judgement on definite boats: the crowd is drawn from what was stated and assumed, weighed by the readings, and every
//! question is answered on it.

pub mod change;
pub mod report;

pub use change::Change;
