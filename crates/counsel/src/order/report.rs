//! The order as plain data. Lengths in millimetres and, in words, inches.

use crate::report::{Band, Verdict};
use serde::Serialize;

/// Answer of `order`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderSheet {
    /// Title of the job.
    pub title: String,
    /// Why it may not go out like this; empty when it may.
    pub refused: Vec<String>,
    /// The one line that says it all.
    pub line: String,
    /// The same field by field.
    pub fields: Vec<OrderField>,
    /// What the workshop may choose.
    pub may_vary: Vec<String>,
    /// The clause against equivalents.
    pub must_not_vary: String,
    /// What is not settled and should be.
    pub doubts: Vec<String>,
    /// What to measure on arrival.
    pub receipt: Vec<ReceiptRow>,
    /// What came of it, when it was measured: in words.
    pub received: Option<String>,
    /// Whether what arrived is accepted; `None` before it is measured.
    pub accepted: Option<bool>,
    /// Full throttle foretold with it, clean and loaded, rpm.
    pub engine_speed: Band,
    /// Chances of too much, right and too little propeller.
    pub verdict: Verdict,
    /// The bore, for its drawing, mm.
    pub bore: BoreDrawing,
    /// Cautions.
    pub cautions: Vec<String>,
}

/// One field of the order.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OrderField {
    /// What: `diameter`, `pitch`, ...
    pub what: &'static str,
    /// The value in words, mm and inches.
    pub value: String,
    /// Where it is from: `order`, `fitted`, `survey`, `taken as usual`.
    pub from: &'static str,
}

/// One line of the receipt check.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReceiptRow {
    /// What is measured.
    pub what: &'static str,
    /// As ordered, in words.
    pub ordered: String,
    /// Accept from.
    pub accept_from: Option<f64>,
    /// Accept to.
    pub accept_to: Option<f64>,
    /// Send back below.
    pub reject_below: Option<f64>,
    /// Send back above.
    pub reject_above: Option<f64>,
    /// `mm`, `%`, `kg`, or empty.
    pub unit: &'static str,
    /// How to measure.
    pub how: &'static str,
    /// As measured.
    pub measured: Option<f64>,
    /// `accept`, `ask the workshop`, `send back`; `None` when not measured.
    pub said: Option<&'static str>,
}

/// What the bore's drawing needs, mm; what is not settled is `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BoreDrawing {
    /// Large end.
    pub large: Option<f64>,
    /// Small end.
    pub small: Option<f64>,
    /// Hub length.
    pub length: Option<f64>,
    /// Diameter lost per length.
    pub taper: Option<f64>,
    /// Keyway width.
    pub key: Option<f64>,
    /// Hub diameter.
    pub hub: Option<f64>,
}
