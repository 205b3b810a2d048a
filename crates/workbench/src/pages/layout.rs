//! Which keys stand where, in the order of the work. Keys named here come first; the other keys of a table follow folded.

/// A part of the page.
pub struct Part {
    /// Anchor and name.
    pub id: &'static str,
    /// Tables, each with the keys that are asked first.
    pub tables: &'static [(&'static str, &'static [&'static str])],
}

/// The visits.
pub const PARTS: &[Part] = &[
    Part {
        id: "call",
        tables: &[("", &["title", "duty"]), ("call", &["complaint", "since", "changed", "onset", "symptoms", "wants"])],
    },
    Part {
        id: "boat",
        tables: &[
            ("boat", &["kind", "length_waterline", "beam", "displacement", "screws", "arrangement", "since_scrub"]),
            ("place", &["water", "depth"]),
        ],
    },
    Part {
        id: "engine",
        tables: &[
            ("engine", &["model", "kind", "rated_power", "rated_speed", "no_load_speed"]),
            ("drive", &["reduction"]),
        ],
    },
    Part {
        id: "fitted",
        tables: &[
            ("propeller", &["stamp", "diameter", "pitch", "blades", "hand", "cup", "largest_diameter"]),
            ("stern", &[]),
            ("shaft", &[]),
            ("survey", &[]),
        ],
    },
    Part { id: "readings", tables: &[("reading", &READING)] },
    Part { id: "order", tables: &[("order", &[]), ("fitting", &[]), ("receipt", &[]), ("under_sail", &[])] },
];

/// What is asked first of a reading.
pub const READING: [&str; 8] = ["label", "date", "full_throttle", "engine_speed", "by", "speed", "speed_by", "depth"];
