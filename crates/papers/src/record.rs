//! The record file: the job and all answers, machine readable.

use crate::{Answers, Setting, VERSION, fingerprint};
use serde_json::{Value, json};

/// The record as JSON, ending in a line end. `job.file` is the job file to the byte, `job.values` the same as data; each
/// answer is what `--format json` prints for its command.
///
/// # Errors
/// When an answer cannot be written as JSON.
pub fn record(answers: &Answers, setting: &Setting) -> Result<String, serde_json::Error> {
    let values: Value = toml::from_str(&answers.text).unwrap_or(Value::Null);
    let judge = answers.judgement.as_ref().ok();
    let lacks: Vec<String> = answers
        .judgement
        .as_ref()
        .err()
        .map(|lack| lack.missing.iter().map(|m| format!("{}: {}; {}", m.key, m.why, m.how)).collect())
        .unwrap_or_default();
    let record = json!({
        "schema": "fairwake-record/1",
        "program": format!("fairwake {VERSION}"),
        "date": setting.date,
        "fingerprint": fingerprint(&answers.text),
        "job": { "file": answers.text, "values": values },
        "answers": {
            "judge": judge,
            "lacks": lacks,
            "choose": answers.choice,
            "diagnose": answers.diagnosis,
            "trial": answers.evidence,
            "survey": answers.survey.as_ref().ok(),
            "order": answers.sheet,
            "fit": answers.fit,
            "ordered": answers.order,
        },
    });
    let mut text = serde_json::to_string_pretty(&record)?;
    text.push('\n');
    Ok(text)
}
