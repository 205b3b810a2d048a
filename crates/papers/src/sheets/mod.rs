//! Which papers there are, and what they have in common.

mod fit;
mod foot;
mod inputs;
mod judgement;
mod order;
mod owner;
mod record;
mod repair;
mod survey;
mod trial;

use crate::speak::{Voice, printable};
use crate::{Answers, Block, Paper, Setting, Shown, VERSION, fingerprint};
use draw::{Picture, Sheet, Theme};

/// A kind of paper, in the order they are handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// One page for the owner.
    Owner,
    /// What was judged, from what, how surely.
    Judgement,
    /// What was measured on the propeller.
    SurveyCard,
    /// What the workshop is to do.
    Repair,
    /// What is to be made or bought.
    Order,
    /// The propeller on the shaft.
    Fit,
    /// The boat under way.
    SeaTrial,
    /// The job and where its data stand.
    Record,
}

impl Kind {
    /// Every one.
    pub const ALL: [Kind; 8] = [
        Kind::Owner,
        Kind::Judgement,
        Kind::SurveyCard,
        Kind::Repair,
        Kind::Order,
        Kind::Fit,
        Kind::SeaTrial,
        Kind::Record,
    ];

    /// Name of its file, without ending.
    #[must_use]
    pub const fn file(self) -> &'static str {
        match self {
            Kind::Owner => "owners-page",
            Kind::Judgement => "judgement-note",
            Kind::SurveyCard => "survey-card",
            Kind::Repair => "repair-sheet",
            Kind::Order => "order-sheet",
            Kind::Fit => "fit-sheet",
            Kind::SeaTrial => "sea-trial-sheet",
            Kind::Record => "record",
        }
    }

    /// The word it is asked for by.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Kind::Owner => "owner",
            Kind::Judgement => "judgement",
            Kind::SurveyCard => "survey-card",
            Kind::Repair => "repair",
            Kind::Order => "order",
            Kind::Fit => "fit",
            Kind::SeaTrial => "sea-trial",
            Kind::Record => "record",
        }
    }

    /// The kind asked for by this word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.word() == word)
    }

    /// Under which name `words` has its title.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Kind::Owner => "papers-owner",
            Kind::Judgement => "papers-judgement",
            Kind::SurveyCard => "papers-survey",
            Kind::Repair => "papers-repair",
            Kind::Order => "papers-order",
            Kind::Fit => "papers-fit",
            Kind::SeaTrial => "papers-trial",
            Kind::Record => "papers-record",
        }
    }
}

/// A paper that cannot be made, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftOut {
    /// Which.
    pub kind: Kind,
    /// Why, in words.
    pub why: String,
}

/// The papers of a job; `only` those kinds when it names any.
#[must_use]
pub fn papers(answers: &Answers, setting: &Setting, only: &[Kind]) -> (Vec<Paper>, Vec<LeftOut>) {
    let desk = Desk { answers, setting, voice: Voice { language: setting.language } };
    let (mut made, mut left_out) = (Vec::new(), Vec::new());
    for kind in Kind::ALL.into_iter().filter(|kind| only.is_empty() || only.contains(kind)) {
        let drawn_up = match kind {
            Kind::Owner => owner::paper(&desk),
            Kind::Judgement => judgement::paper(&desk),
            Kind::SurveyCard => survey::paper(&desk),
            Kind::Repair => repair::paper(&desk),
            Kind::Order => Ok(order::paper(&desk)),
            Kind::Fit => Ok(fit::paper(&desk)),
            Kind::SeaTrial => Ok(trial::paper(&desk)),
            Kind::Record => Ok(record::paper(&desk)),
        };
        match drawn_up {
            Ok(paper) => made.push(paper),
            Err(lack) => left_out.push(LeftOut { kind, why: lack.to_string() }),
        }
    }
    (made, left_out)
}

/// Everything a paper is drawn up from.
struct Desk<'a> {
    answers: &'a Answers,
    setting: &'a Setting,
    voice: Voice,
}

impl Desk<'_> {
    fn say(&self, name: &str) -> String {
        self.voice.say(name)
    }

    fn boat(&self) -> String {
        let title = printable(&self.answers.job.title);
        if title.is_empty() { self.say("papers-no-title") } else { title }
    }

    /// A paper with its blocks; foot and safety line are the same on all.
    fn paper(&self, kind: Kind, blocks: Vec<Block>) -> Paper {
        let print = fingerprint(&self.answers.text);
        let date = printable(&self.setting.date);
        Paper {
            file: kind.file(),
            language: self.setting.language.tag(),
            size: self.setting.size,
            name: self.say(kind.name()),
            boat: self.boat(),
            foot: self.voice.with("papers-foot", &[("version", VERSION), ("print", &print), ("date", &date)]),
            date,
            one_page: kind == Kind::Owner,
            workshop: matches!(kind, Kind::SurveyCard | Kind::Repair | Kind::Order | Kind::Fit | Kind::SeaTrial),
            blocks,
            safety: self.say("papers-safety"),
            page_words: [self.say("papers-page"), self.say("papers-of")],
        }
    }

    fn heading(&self, name: &str) -> Block {
        Block::Heading { text: self.say(name) }
    }

    fn caution(&self, text: String) -> Block {
        Block::Caution { word: self.say("papers-caution"), text }
    }

    /// A caution of ours.
    fn warn(&self, name: &str) -> Block {
        self.caution(self.say(name))
    }

    /// The sheet for pictures of this width, px.
    fn sheet<'b>(&'b self, boat: &'b str, width: f64) -> Sheet<'b> {
        Sheet { boat, date: &self.setting.date, width, language: self.setting.language }
    }

    fn shown(&self, picture: &Picture) -> Shown {
        Shown { svg: picture.resolved(Theme::Light), title: picture.title.clone(), desc: picture.desc.clone() }
    }
}
