//! `fairwake trial`: trial runs and logs reduced, and what each taught about the boat.

mod import;
mod page;
pub mod report;

use std::path::Path;

use job::Job;
use logs::{Limits, Proposal, Proposing, Settings, Taken};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, LogFormat, TrialArgs};
use crate::commands::new::OpenQuestion;
use crate::failure::Failure;
use crate::load::Loaded;
use crate::value::Accept;
use crate::{answers, load, save, words};
use report::{Doubted, GrowthAlarm, LogRead, PastReading, Proposed, ReadingReduced, Trial, doubted};

pub use page::text;

pub fn run(args: &TrialArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    refuse_what_cannot_be(args)?;
    let loaded = load::job(&args.job, colour)?;
    let options = logs::Options {
        format: args.log_format.map(format),
        fuel_density: job::quantity::fuel_density(loaded.job.engine.kind),
    };
    let read = import::all(args.logs.iter().map(AsRef::as_ref), &options)?;
    let settings = Settings {
        limits: Limits { seconds: args.steady, ..Limits::default() },
        proposing: Proposing { from: String::new(), rpm_by: args.rpm_by, engine: loaded.job.engine.kind },
        ..Settings::default()
    };
    let found = if read.is_empty() { None } else { Some(logs::trial(&read, &settings)) };
    let offered = found.as_ref().map_or(&[][..], |found| &found.proposals);
    let mut proposals: Vec<Proposed> =
        (1..).zip(offered).map(|(number, proposal)| Proposed::of(number, proposal, &loaded.job)).collect();
    for number in &args.full_throttle {
        let proposal = one_of(&mut proposals, *number)?;
        proposal.full_throttle = true;
        if !proposal.highest {
            proposal.doubts.push(Doubted {
                code: "not-the-highest",
                message: "said to be taken at full throttle, but the logs hold a higher engine speed".to_owned(),
                help: "is it the right number?".to_owned(),
            });
        }
    }
    let written = match &args.accept {
        Some(accept) => add(accept, &args.job, &loaded, offered, &mut proposals)?,
        None => None,
    };

    let job = match &written {
        Some(text) => Job::read(text).map_err(|problems| refused(&loaded, text, &problems))?.job,
        None => loaded.job.clone(),
    };
    let (evidence, missing, proposals_weighed) = weighed(&job, offered, &proposals, common)?;
    let history = logs::history(&job);
    let growth_alarm = history.alarm.as_ref().map(|alarm| GrowthAlarm {
        level: match alarm.level {
            logs::Level::Watch => "watch",
            logs::Level::Alarm => "alarm",
        },
        fallen: alarm.fallen,
        part: alarm.part,
        message: alarm.message.clone(),
        help: alarm.help.clone(),
        doubts: doubted(&history.doubts),
    });
    let trial = Trial {
        title: job.title.clone(),
        headline: headline(&proposals, evidence.as_ref().map(|e| e.headline.as_str()), found.is_some()),
        logs: read.iter().map(LogRead::from).collect(),
        doubts: found.as_ref().map(|found| doubted(&found.doubts)).unwrap_or_default(),
        proposals,
        written: written.map(|_| loaded.name.clone()),
        readings: job.readings.iter().enumerate().map(|(at, reading)| ReadingReduced::of(at, reading)).collect(),
        history: past(&job, &history),
        growth_alarm,
        proposals_weighed,
        evidence,
        missing,
    };
    Ok(Outcome { text: Box::new(text), report: Report::Trial(Box::new(trial)), doubts: loaded.doubts, reached: false })
}

fn refuse_what_cannot_be(args: &TrialArgs) -> Result<(), Failure> {
    let asked = |what: &str, instead: &str| Err(Failure::Asked { what: what.to_owned(), instead: instead.to_owned() });
    if args.logs.is_empty() && (args.accept.is_some() || !args.full_throttle.is_empty()) {
        return asked("nothing to accept: no log was named", "name the logs behind the job file");
    }
    if args.accept.is_some() && args.job == Path::new("-") {
        return asked("a job read from standard input cannot be added to", "name the job file");
    }
    Ok(())
}

fn format(format: LogFormat) -> logs::Format {
    match format {
        LogFormat::Gpx => logs::Format::Gpx,
        LogFormat::Nmea => logs::Format::Nmea,
        LogFormat::Csv => logs::Format::Csv,
        LogFormat::SignalK => logs::Format::SignalK,
    }
}

fn one_of(proposals: &mut [Proposed], number: usize) -> Result<&mut Proposed, Failure> {
    let count = proposals.len();
    number.checked_sub(1).and_then(|at| proposals.get_mut(at)).ok_or_else(|| Failure::Asked {
        what: format!("there is no proposed reading {number}"),
        instead: match count {
            0 => "look at what the log offers first, without --accept: it offers none".to_owned(),
            1 => "1 is the only one".to_owned(),
            _ => format!("one of 1 to {count}"),
        },
    })
}

/// Adds the accepted readings to the job file, and gives its new text when something was added.
fn add(
    accept: &Accept,
    file: &Path,
    loaded: &Loaded,
    offered: &[Proposal],
    proposals: &mut [Proposed],
) -> Result<Option<String>, Failure> {
    match accept {
        Accept::All => proposals.iter_mut().for_each(|proposal| proposal.accepted = !proposal.in_job),
        Accept::Numbers(numbers) => {
            for number in numbers {
                let proposal = one_of(proposals, *number)?;
                proposal.accepted = !proposal.in_job;
            }
        }
    }
    if !proposals.iter().any(|proposal| proposal.accepted) {
        return Ok(None);
    }
    let taken: Vec<Taken> = (0..)
        .zip(proposals.iter())
        .filter(|(_, proposal)| proposal.accepted)
        .map(|(at, proposal)| Taken { at, full_throttle: proposal.full_throttle })
        .collect();
    let text =
        logs::take(&loaded.text, offered, &taken).map_err(|problems| refused(loaded, &loaded.text, &problems))?;
    save::replacing(file, &text)?;
    Ok(Some(text))
}

fn refused(loaded: &Loaded, text: &str, problems: &[job::Problem]) -> Failure {
    Failure::Job(job::render(problems, &loaded.name, text, false))
}

/// Most proposals weighed before they are accepted.
const WEIGHED: usize = 8;

type Weighed = (Option<counsel::report::Evidence>, Vec<OpenQuestion>, bool);

/// What the readings of the job taught; proposals that are not in it yet are counted in.
fn weighed(job: &Job, offered: &[Proposal], proposals: &[Proposed], common: &Common) -> Result<Weighed, Failure> {
    let mut job = job.clone();
    let open = offered.iter().zip(proposals).filter(|(_, proposal)| !proposal.in_job && !proposal.accepted);
    let more: Vec<job::Reading> = open
        .map(|(of, proposal)| if proposal.full_throttle { of.at_full_throttle() } else { of.reading.clone() })
        .collect();
    // A season's log offers hundreds: weighing them is worth the wait for those that are meant.
    let counted = !more.is_empty() && more.len() <= WEIGHED;
    if counted {
        job.readings.extend(more);
    }
    match answers::evidence(&job, common) {
        Ok(evidence) => Ok((Some(evidence), Vec::new(), counted)),
        Err(Failure::Lack(lack)) => Ok((None, OpenQuestion::of(&lack), false)),
        Err(other) => Err(other),
    }
}

fn headline(proposals: &[Proposed], of_evidence: Option<&str>, logs: bool) -> String {
    let taught = of_evidence.unwrap_or("What was read cannot be weighed yet: the job says too little of the boat.");
    if !logs {
        return taught.to_owned();
    }
    let count = |many: usize| words::count(many, "reading", "readings");
    let added = proposals.iter().filter(|proposal| proposal.accepted).count();
    let there = proposals.iter().filter(|proposal| proposal.in_job).count();
    let mut text = match (proposals.len(), added) {
        (0, _) => return "The log holds no steady run: nothing to propose.".to_owned(),
        (offered, 0) => format!("The log offers {}", count(offered)),
        (_, added) => format!("{} added to the job", count(added)),
    };
    if there > 0 {
        text.push_str(&format!("; the job holds {there} already"));
    }
    format!("{}. {taught}", words::sentence(&text))
}

/// The full-throttle readings over the seasons, when there are two with dates.
fn past(job: &Job, history: &logs::History) -> Vec<PastReading> {
    if history.rows.iter().filter(|row| row.day.is_some()).count() < 2 {
        return Vec::new();
    }
    let rows = history.rows.iter().filter(|row| row.day.is_some());
    rows.filter_map(|row| {
        let reading = job.readings.get(row.reading)?;
        Some(PastReading {
            reading: report::name(row.reading, reading),
            date: row.date.clone(),
            engine_speed: report::turns(reading.engine_speed.as_ref()?),
            since_scrub: row.since_scrub.map(|seconds| seconds / 86_400.0),
            governed: row.governed,
            comparable: row.comparable,
            clean: row.clean,
        })
    })
    .collect()
}
