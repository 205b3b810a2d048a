//! The JSON contract: one envelope around every answer.

use counsel::fit::report::Fit;
use counsel::order::report::OrderSheet;
use counsel::report::{Choice, Comparison, Diagnosis, Judgement};
use counsel::survey::SurveyReport;
use serde::Serialize;

use crate::commands::draw::Drawings;
use crate::commands::explain::Explanation;
use crate::commands::new::Recorded;
use crate::commands::openwater::OpenWater;
use crate::commands::papers::Handed;
use crate::commands::sources::Sources;
use crate::commands::trial::report::Trial;

/// Version of the contract. Within a version fields are added, never renamed or taken away.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Version {
    /// The first.
    #[serde(rename = "fairwake/1")]
    One,
}

/// What the program answers with `--format json`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Answer {
    /// Version of the contract.
    pub schema: Version,
    /// The command and its answer.
    #[serde(flatten)]
    pub report: Report,
}

/// The answer of each command.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(tag = "command", rename_all = "lowercase")]
pub enum Report {
    /// `fairwake new`
    New(Recorded),
    /// `fairwake judge`
    Judge(Box<Judgement>),
    /// `fairwake try`
    Try(Box<Comparison>),
    /// `fairwake choose`
    Choose(Box<Choice>),
    /// `fairwake diagnose`
    Diagnose(Box<Diagnosis>),
    /// `fairwake trial`
    Trial(Box<Trial>),
    /// `fairwake survey`
    Survey(Box<SurveyReport>),
    /// `fairwake fit`
    Fit(Box<Fit>),
    /// `fairwake order`
    Order(Box<OrderSheet>),
    /// `fairwake draw`
    Draw(Drawings),
    /// `fairwake papers`
    Papers(Handed),
    /// `fairwake openwater`
    OpenWater(OpenWater),
    /// `fairwake resistance`
    Resistance(Box<counsel::ResistanceTable>),
    /// `fairwake explain`
    Explain(Explanation),
    /// `fairwake sources`
    Sources(Sources),
}

impl Report {
    /// As JSON, ending in a line end.
    pub fn to_json(self) -> Result<String, serde_json::Error> {
        let mut text = serde_json::to_string_pretty(&Answer { schema: Version::One, report: self })?;
        text.push('\n');
        Ok(text)
    }
}
