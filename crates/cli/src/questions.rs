//! The questions of the call, in the order in which they are asked: complaint, engine, gearbox, propeller, boat, numbers,
//! and what is wanted. Unknown is a fine answer to each.

use job::{
    Arrangement, Blades, Cup, Duty, EngineKind, Hand, Job, Kind, Onset, Quantity as Stated, Rating, Symptom, Width,
    Word as _,
};

/// How an answer is written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Free words.
    Words,
    /// Free words, several parted by commas.
    List,
    /// A quantity with its unit, spread and source, or a ratio.
    Quantity,
    /// One quantity or several parted by commas.
    Quantities,
    /// A whole number.
    Count,
    /// One of these words; each with its meaning.
    OneOf(&'static [(&'static str, &'static str)]),
    /// Any of these words, parted by commas.
    AnyOf(&'static [(&'static str, &'static str)]),
}

/// Where in the job file an answer stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Before the first table.
    Top,
    /// In a table.
    Table(&'static str),
    /// In the full-throttle reading.
    FullThrottle,
    /// In the cruising reading.
    Cruise,
}

/// One question.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// Where the answer stands.
    pub place: Place,
    /// Under which key.
    pub key: &'static str,
    /// As asked.
    pub ask: &'static str,
    /// What answers look like.
    pub example: &'static str,
    /// How it is written down.
    pub form: Form,
    /// What is lost while it is open; empty when little is.
    pub open: &'static str,
    /// Asked only when this key of the same place was answered.
    pub after: Option<&'static str>,
}

const fn q(place: Place, key: &'static str, ask: &'static str, example: &'static str, form: Form) -> Question {
    Question { place, key, ask, example, form, open: "", after: None }
}

const fn matters(mut question: Question, open: &'static str) -> Question {
    question.open = open;
    question
}

const fn after(mut question: Question, key: &'static str) -> Question {
    question.after = Some(key);
    question
}

use Form::{AnyOf, Count, List, OneOf, Quantities, Quantity, Words};
use Place::{Cruise, FullThrottle, Table, Top};

const BOAT: Place = Table("boat");
const CALL: Place = Table("call");
const DRIVE: Place = Table("drive");
const ENGINE: Place = Table("engine");
const PROPELLER: Place = Table("propeller");
const BY: &[(&str, &str)] = &[
    ("dashboard", "the boat's own panel"),
    ("optical", "a photo tachometer on the shaft or pulley"),
    ("display", "an electronic engine's display"),
    ("memory", "somebody remembers"),
];
const SPEED_BY: &[(&str, &str)] =
    &[("gps", "by satellite"), ("log", "paddle wheel or towed log"), ("memory", "somebody remembers")];

/// The call. Headings stand before the first question of their part.
pub const QUESTIONS: &[(&str, &[Question])] = &[
    (
        "The complaint",
        &[
            q(Top, "title", "Which boat is it, and what is wrong, in one line?", "Kittiwake: will not rev out", Words),
            q(CALL, "complaint", "The complaint in the caller's words?", "", Words),
            q(CALL, "since", "Since when?", "since the refit in May", Words),
            q(CALL, "changed", "What changed just before? Commas between.", "new propeller, scrubbed", List),
            matters(
                q(CALL, "onset", "How did it begin?", "", OneOf(Onset::WORDS)),
                "gradual, sudden or with a new propeller: it parts the causes as well as a reading does",
            ),
            q(
                CALL,
                "symptoms",
                "What was seen, heard or felt? Any of these words, commas between.",
                "black smoke, shaft-rate vibration",
                AnyOf(Symptom::WORDS),
            ),
        ],
    ),
    (
        "The engine",
        &[
            q(ENGINE, "model", "Maker and model?", "", Words),
            q(ENGINE, "kind", "What kind?", "", OneOf(EngineKind::WORDS)),
            matters(
                q(ENGINE, "rated_power", "Rated power on the plate? hp, PS and kW are told apart.", "29 hp", Quantity),
                "without the power nothing can be judged: read the rating plate",
            ),
            matters(
                q(ENGINE, "rated_speed", "At which engine speed is that?", "3600 rpm", Quantity),
                "without it the accepted band is unknown: it stands beside the power on the plate",
            ),
            q(
                ENGINE,
                "full_throttle_band",
                "Does its maker name a band of full-throttle speed?",
                "5000..6000 rpm",
                Quantity,
            ),
            q(ENGINE, "no_load_speed", "Highest speed in neutral, on the governor?", "3900 rpm", Quantity),
            q(ENGINE, "rating", "For which duty is it rated?", "", OneOf(Rating::WORDS)),
        ],
    ),
    (
        "The gearbox",
        &[
            matters(
                q(DRIVE, "reduction", "Reduction ahead, from the gearbox plate?", "2.6", Quantity),
                "the pitch that suits goes with the reduction: photograph the plate",
            ),
            q(DRIVE, "reduction_astern", "Reduction astern, if it differs?", "2.1", Quantity),
        ],
    ),
    (
        "The propeller",
        &[
            q(PROPELLER, "stamp", "What is stamped on the hub, letter by letter?", "16RH11", Words),
            matters(
                q(PROPELLER, "diameter", "Diameter: twice from shaft centre to tip?", "16 in (measured)", Quantity),
                "power goes with about the fifth power of the diameter: a tape settles it",
            ),
            matters(
                q(PROPELLER, "pitch", "Pitch?", "11 in (stamp)", Quantity),
                "nothing can be said of the pitch while it is unknown: stamp, or measure it ashore",
            ),
            matters(q(PROPELLER, "blades", "How many blades?", "3", Count), "count them"),
            q(PROPELLER, "kind", "Fixed, or do the blades move?", "", OneOf(Blades::WORDS)),
            q(
                PROPELLER,
                "hand",
                "Which way does it turn going ahead, seen from astern? Clockwise is right.",
                "",
                OneOf(Hand::WORDS),
            ),
            q(PROPELLER, "width", "How wide are the blades?", "", OneOf(Width::WORDS)),
            q(PROPELLER, "cup", "Is the trailing edge cupped?", "", OneOf(Cup::WORDS)),
            q(PROPELLER, "largest_diameter", "The largest diameter that would fit with clearance?", "17 in", Quantity),
        ],
    ),
    (
        "The boat",
        &[
            matters(
                q(BOAT, "kind", "How does it carry its weight?", "", OneOf(Kind::WORDS)),
                "the method of resistance hangs on it",
            ),
            q(BOAT, "arrangement", "Where does the propeller work?", "", OneOf(Arrangement::WORDS)),
            q(BOAT, "screws", "How many propellers?", "1", Count),
            q(BOAT, "length_overall", "Length overall?", "9.6 m", Quantity),
            q(BOAT, "length_waterline", "Length of the waterline?", "8.4 m", Quantity),
            q(BOAT, "beam", "Greatest beam?", "3.1 m", Quantity),
            matters(
                q(BOAT, "displacement", "Weight as it was run, and how it is known?", "6.5 t (weighed)", Quantity),
                "brochures name the light boat: ask the lift for its reading",
            ),
            q(BOAT, "since_scrub", "How long since the bottom was last cleaned?", "5 months", Quantity),
        ],
    ),
    (
        "The numbers",
        &[
            matters(
                q(FullThrottle, "engine_speed", "Engine speed at full throttle, under way?", "2900 rpm", Quantity),
                "the one reading that says most: full throttle, deep water, until it is steady",
            ),
            after(q(FullThrottle, "by", "How was that read?", "", OneOf(BY)), "engine_speed"),
            matters(
                q(
                    FullThrottle,
                    "speed",
                    "Boat speed at full throttle? One for each direction, a comma between.",
                    "6.5 kn, 6.1 kn",
                    Quantities,
                ),
                "run it both ways by satellite and take both numbers",
            ),
            after(q(FullThrottle, "speed_by", "How was that read?", "", OneOf(SPEED_BY)), "speed"),
            q(FullThrottle, "depth", "Depth of water there?", "12 m", Quantity),
            q(Cruise, "engine_speed", "Engine speed when cruising?", "2200 rpm", Quantity),
            after(q(Cruise, "by", "How was that read?", "", OneOf(BY)), "engine_speed"),
            after(
                q(
                    Cruise,
                    "speed",
                    "Boat speed at that engine speed? Both directions if you can.",
                    "5.4 kn",
                    Quantities,
                ),
                "engine_speed",
            ),
            after(q(Cruise, "speed_by", "How was that read?", "", OneOf(SPEED_BY)), "speed"),
        ],
    ),
    (
        "What is wanted",
        &[
            q(Top, "duty", "What should the propeller be best at?", "", OneOf(Duty::WORDS)),
            q(CALL, "wants", "What else is wanted?", "quiet, less drag under sail", Words),
        ],
    ),
];

/// All questions in order.
pub fn all() -> impl Iterator<Item = &'static Question> {
    QUESTIONS.iter().flat_map(|(_, questions)| questions.iter())
}

impl Place {
    /// The lines that open this place in a job file.
    #[must_use]
    pub fn opens(self) -> String {
        match self {
            Place::Top => String::new(),
            Place::Table(table) => format!("[{table}]\n"),
            Place::FullThrottle => "[[reading]]\nlabel = \"full throttle\"\nfull_throttle = true\n".to_owned(),
            Place::Cruise => "[[reading]]\nlabel = \"cruise\"\n".to_owned(),
        }
    }

    /// Name of a key there, for people.
    #[must_use]
    pub fn names(self, key: &str) -> String {
        match self {
            Place::Top => key.to_owned(),
            Place::Table(table) => format!("{table}.{key}"),
            Place::FullThrottle => format!("reading (full throttle).{key}"),
            Place::Cruise => format!("reading (cruise).{key}"),
        }
    }
}

/// The places in the order of a job file.
pub const PLACES: [Place; 8] = [Top, CALL, BOAT, ENGINE, DRIVE, PROPELLER, FullThrottle, Cruise];

/// The quantity that answers a question, as the job holds it.
#[must_use]
pub fn quantity<'a>(job: &'a Job, question: &Question) -> Option<&'a Stated> {
    let reading = |full_throttle| job.readings.iter().find(|reading| reading.full_throttle == full_throttle);
    let of_reading = |full_throttle| match question.key {
        "engine_speed" => reading(full_throttle)?.engine_speed.as_ref(),
        "speed" => reading(full_throttle)?.speed.as_ref(),
        "depth" => reading(full_throttle)?.depth.as_ref(),
        _ => None,
    };
    match (question.place, question.key) {
        (FullThrottle, _) => of_reading(true),
        (Cruise, _) => of_reading(false),
        (ENGINE, "rated_power") => job.engine.rated_power.as_ref(),
        (ENGINE, "rated_speed") => job.engine.rated_speed.as_ref(),
        (ENGINE, "no_load_speed") => job.engine.no_load_speed.as_ref(),
        (DRIVE, "reduction") => job.drive.reduction.as_ref(),
        (DRIVE, "reduction_astern") => job.drive.reduction_astern.as_ref(),
        (PROPELLER, "diameter") => job.propeller.diameter.as_ref(),
        (PROPELLER, "pitch") => job.propeller.pitch.as_ref(),
        (PROPELLER, "largest_diameter") => job.propeller.largest_diameter.as_ref(),
        (BOAT, "length_overall") => job.boat.length_overall.as_ref(),
        (BOAT, "length_waterline") => job.boat.length_waterline.as_ref(),
        (BOAT, "beam") => job.boat.beam.as_ref(),
        (BOAT, "displacement") => job.boat.displacement.as_ref(),
        (BOAT, "since_scrub") => job.boat.since_scrub.as_ref(),
        _ => None,
    }
}
