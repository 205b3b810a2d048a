//! Values on the command line, read by the same rules as in a job file: the same units, ranges and words of refusal.

use clap::builder::{PossibleValue, PossibleValuesParser, TypedValueParser};
use job::{Job, Quantity, Word};

/// Reads a piece of a job file, and says what is wrong as a job file would.
pub fn read(file: &str) -> Result<Job, String> {
    Job::read(file).map(|read| read.job).map_err(|problems| {
        let said = problems.iter().map(|problem| match &problem.help {
            Some(help) => format!("{}; {help}", problem.message),
            None => problem.message.clone(),
        });
        said.collect::<Vec<_>>().join("\n")
    })
}

fn middle(table: &str, key: &str, text: &str, pick: impl Fn(Job) -> Option<Quantity>) -> Result<f64, String> {
    let job = read(&format!("[{table}]\n{key} = {}\n", toml_edit::Value::from(text)))?;
    pick(job).map(|quantity| quantity.middle).ok_or_else(|| "no value".to_owned())
}

/// A length of a propeller, m.
pub fn length(text: &str) -> Result<f64, String> {
    middle("propeller", "diameter", text, |job| job.propeller.diameter)
}

/// A pitch, m.
pub fn pitch(text: &str) -> Result<f64, String> {
    middle("propeller", "pitch", text, |job| job.propeller.pitch)
}

/// A mass, kg.
pub fn mass(text: &str) -> Result<f64, String> {
    middle("boat", "displacement", text, |job| job.boat.displacement)
}

/// A reduction.
pub fn reduction(text: &str) -> Result<f64, String> {
    middle("drive", "reduction", text, |job| job.drive.reduction)
}

/// An expanded area ratio.
pub fn area_ratio(text: &str) -> Result<f64, String> {
    middle("propeller", "area_ratio", text, |job| job.propeller.area_ratio)
}

/// A number between two bounds.
fn between(text: &str, low: f64, high: f64) -> Result<f64, String> {
    let value: f64 = text.trim().parse().map_err(|_| format!("a plain number from {low} to {high} is needed"))?;
    if (low..=high).contains(&value) { Ok(value) } else { Err(format!("must lie between {low} and {high}")) }
}

/// An expanded area ratio as the series take it.
pub fn series_area_ratio(text: &str) -> Result<f64, String> {
    between(text, 0.1, 1.5)
}

/// A pitch ratio.
pub fn pitch_ratio(text: &str) -> Result<f64, String> {
    between(text, 0.1, 3.0)
}

/// A blade Reynolds number.
pub fn reynolds(text: &str) -> Result<f64, String> {
    between(text, 1e4, 1e10)
}

/// An advance ratio.
pub fn advance_ratio(text: &str) -> Result<f64, String> {
    between(text, 0.0, 3.0)
}

/// A step of the advance ratio.
pub fn step(text: &str) -> Result<f64, String> {
    between(text, 1e-4, 1.0)
}

/// How long a steady stretch lasts at least, s.
pub fn seconds(text: &str) -> Result<f64, String> {
    between(text, 10.0, 3600.0)
}

/// Which proposed readings are accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Accept {
    /// All that the job does not hold yet.
    All,
    /// Those with these numbers.
    Numbers(Vec<usize>),
}

/// `all`, or numbers with commas between.
pub fn accept(text: &str) -> Result<Accept, String> {
    if text == "all" {
        return Ok(Accept::All);
    }
    let numbers: Result<Vec<usize>, _> = text.split(',').map(|number| number.trim().parse()).collect();
    numbers.map(Accept::Numbers).map_err(|_| {
        "`all` or numbers with commas between are needed (1,3); logs stand before --accept, or write --accept=all"
            .to_owned()
    })
}

/// One of a job file's words, with hyphens for spaces.
pub fn word<W: Word + Send + Sync>() -> impl TypedValueParser<Value = W> {
    let said = |word: &str| word.replace(' ', "-");
    PossibleValuesParser::new(W::WORDS.iter().map(|(word, _)| PossibleValue::new(said(word)))).try_map(move |chosen| {
        let word = W::WORDS.iter().find(|(word, _)| said(word) == chosen).map_or("", |(word, _)| *word);
        W::from_word(word).ok_or("no such word")
    })
}
