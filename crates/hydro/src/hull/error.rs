//! How far each resistance method may be off: standard deviation of ln R by Froude number.

use crate::source::{Method as Record, Trust};

/// The error table.
pub const METHOD: Record = Record {
    name: "resistance-error",
    quantity: "standard deviation of ln(resistance) of each method by Froude number",
    formula: "table",
    range: "Fn 0.1 .. 1.0",
    error: "sizes come from small comparisons; good to a factor of 1.5",
    source: "see validation; placeholder",
    trust: Trust::CommonPractice,
};
