//! The bore for a workshop: half section of the hub, every length in mm and inches.

use crate::pen::{Hang, P, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use counsel::order::report::BoreDrawing;
use counsel::phrase::{number, plain};

/// The picture; `None` when neither diameter nor length of the bore is settled.
#[must_use]
pub fn picture(sheet: &Sheet, bore: &BoreDrawing) -> Option<Picture> {
    let large = bore.large?;
    let length = bore.length.unwrap_or(2.7 * large);
    let taper = bore.taper.or(bore.small.map(|small| (large - small) / length)).unwrap_or(0.0);
    let small = bore.small.unwrap_or(large - taper * length);
    let hub = bore.hub.unwrap_or(1.9 * large);
    // A workshop bores to it: hundredths of a millimetre, thousandths of an inch.
    let (metric, imperial) = (|mm: f64| number(mm, 0.01), |mm: f64| number(mm / 25.4, 0.001));
    let words = |mm: f64| format!("{} mm ({} in)", metric(mm), imperial(mm));
    let settled = bore.small.is_some() && bore.length.is_some() && bore.key.is_some();
    let sentence = format!(
        "Bore {} to {} over {}{}.",
        words(large),
        words(small),
        words(length),
        if settled { "" } else { ": a draft, not every size is settled" }
    );
    let mut drawing = Drawing::open(sheet, &sentence);
    let room = sheet.width() - 2.0 * MARGIN;
    let scale = (0.52 * room / length).min(190.0 / hub);
    let (cx, axis) = (MARGIN + 0.5 * room, drawing.top + 56.0 + 0.5 * scale * hub);
    let (x0, x1) = (cx - 0.5 * scale * length, cx + 0.5 * scale * length);
    let up = |mm: f64| axis - 0.5 * scale * mm;
    let down = |mm: f64| axis + 0.5 * scale * mm;
    let pen = &mut drawing.pen;
    // Upper half cut, lower half seen: forward (large) end to the left.
    let metal: [P; 4] = [[x0, up(hub)], [x1, up(0.86 * hub)], [x1, up(small)], [x0, up(large)]];
    pen.shape("w", &metal);
    let key = bore.key.unwrap_or(0.0);
    if key > 0.0 {
        // Half of a square key's depth stands in the hub.
        let depth = 0.5 * key;
        pen.line("l g", [x0, up(large + 2.0 * depth)], [x1, up(small + 2.0 * depth)]);
        pen.text("o s", [cx, up(0.5 * (large + small) + 2.0 * depth) - 3.0], Hang::Middle, "keyway");
    }
    pen.path("f", &[[x0, up(large)], [x1, up(small)]]);
    pen.path("f", &[[x0, down(large)], [x1, down(small)]]);
    pen.path("l", &[[x0, down(hub)], [x1, down(0.86 * hub)]]);
    pen.path("l", &[[x0, up(hub)], [x1, up(0.86 * hub)]]);
    pen.line("l", [x0, up(hub)], [x0, down(hub)]);
    pen.line("l", [x1, up(0.86 * hub)], [x1, down(0.86 * hub)]);
    pen.line("h c", [x0 - 26.0, axis], [x1 + 26.0, axis]);
    // Diameters at both ends.
    for (x, mm, hang, side) in [(x0, large, Hang::End, -1.0), (x1, small, Hang::Start, 1.0)] {
        let at = x + 16.0 * side;
        pen.line("h", [x, up(mm)], [at + 4.0 * side, up(mm)]);
        pen.line("h", [x, down(mm)], [at + 4.0 * side, down(mm)]);
        pen.line("l", [at, up(mm)], [at, down(mm)]);
        pen.text("e", [at + 6.0 * side, axis - 6.0], hang, format!("{} mm", metric(mm)));
        pen.text("", [at + 6.0 * side, axis + 12.0], hang, format!("{} in", imperial(mm)));
    }
    let y = down(hub) + 22.0;
    pen.line("h", [x0, down(hub)], [x0, y + 4.0]);
    pen.line("h", [x1, down(0.86 * hub)], [x1, y + 4.0]);
    pen.line("l", [x0, y], [x1, y]);
    pen.text("e", [cx, y - 5.0], Hang::Middle, words(length));
    pen.text("s", [x0, up(hub) - 24.0], Hang::Start, "forward");
    pen.text("s", [x1, up(hub) - 24.0], Hang::End, "aft");
    let taper_words = if taper > 1e-4 {
        format!("taper 1 in {} on the diameter", plain(1.0 / taper, 3))
    } else {
        "no taper".to_owned()
    };
    pen.text("e", [cx, up(hub) - 8.0], Hang::Middle, &taper_words);
    let mut y = y + 24.0;
    let keyway = if key > 0.0 {
        format!("Keyway {} wide.", words(key))
    } else {
        "Keyway: not settled, measure the key.".to_owned()
    };
    y = drawing.prose("", &keyway, y, 2);
    y = drawing.prose("s", "Blue it on the shaft without the key: 70 to 80 % contact, heavier at the large end. Then with the key, to the same mark.", y, 3);
    let taper_words = format!("{taper_words}.");
    let desc = ["Half section of the hub.", &sentence, &taper_words, &keyway].map(|text| sheet.say(text)).join(" ");
    Some(drawing.close("Bore", Words::Said(desc), y - 8.0))
}
