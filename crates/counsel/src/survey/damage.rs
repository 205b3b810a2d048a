//! The damage map, read: what a mark at its place is likely to come from.
//!
//! From public owners', workshops' and surveyors' texts; common practice, no authority. A likely cause, never a proof.

use super::report::DamageRow;
use job::Word;
use job::survey::{BladeSide, Damage, DamageKind, Survey};

/// Outermost radius of the root zone, as r/R: inside it nobody welds without a licensed procedure (common practice: 0.4 to
/// 0.5 R in different shops; the wider is taken).
pub const ROOT_ZONE: f64 = 0.5;

/// All places, in the order of the survey.
pub(super) fn read(survey: &Survey) -> Vec<DamageRow> {
    survey.damage.iter().map(one).collect()
}

fn one(d: &Damage) -> DamageRow {
    let x = d.radius_ratio.as_ref().map(|q| q.middle);
    let c = d.chord_fraction.as_ref().map(|q| q.middle);
    let (likely, remedy) = cause(d.kind, d.side, x, c);
    let mut place = d.blade.as_ref().map_or("a blade".to_owned(), |name| format!("blade {name}"));
    if let Some(side) = d.side {
        place.push_str(&format!(", {}", side.word()));
    }
    if let Some(x) = x {
        place.push_str(&format!(", {x:.2} R"));
    }
    if let Some(c) = c {
        place.push_str(&format!(", {:.0} % of the chord", 100.0 * c));
    }
    let mut what = d.kind.map_or("damage", Word::word).to_owned();
    if let Some(depth) = &d.depth {
        what.push_str(&format!(", {} mm deep", crate::phrase::plain(1000.0 * depth.middle, 2)));
    }
    if let Some(notes) = &d.notes {
        what.push_str(&format!(" ({notes})"));
    }
    DamageRow {
        place,
        what,
        likely: likely.to_owned(),
        remedy: remedy.to_owned(),
        root_zone: x.is_some_and(|x| x <= ROOT_ZONE),
    }
}

fn cause(
    kind: Option<DamageKind>,
    side: Option<BladeSide>,
    x: Option<f64>,
    c: Option<f64>,
) -> (&'static str, &'static str) {
    use BladeSide::{Back, Face};
    use DamageKind::*;
    let root = x.is_some_and(|x| x <= 0.4);
    let outer = x.is_some_and(|x| x >= 0.65);
    let near_leading = c.is_some_and(|c| c <= 0.15);
    let near_trailing = c.is_some_and(|c| c >= 0.85);
    match (kind, side) {
        (Some(Crack), _) if x.is_none_or(|x| x <= ROOT_ZONE) => (
            "a strike, or fatigue from the root fillet",
            "do not run it: dye test, and a licensed workshop decides between scrap and a certified repair",
        ),
        (Some(Crack), _) => {
            ("a strike, or fatigue", "do not run it: dye test along its whole length, then a licensed workshop")
        }
        (Some(PinkMetal), _) => (
            "zinc leached from a brass; the anode or its contact failed",
            "tap the blades: scrap if dull or flaking; else check continuity to the anode, at most 1 ohm",
        ),
        (Some(Weld), _) if x.is_none_or(|x| x <= ROOT_ZONE) => {
            ("an earlier repair in the root zone", "dye test, and ask who welded it and by which procedure")
        }
        (Some(Weld), _) => ("an earlier repair", "measure pitch and thickness on both sides of it; dye test"),
        (Some(Bend), _) => ("a strike or a rope", "crack test before it is straightened; then pitch and track again"),
        (Some(Missing), _) => (
            "a strike",
            "hold every blade against it: tip radius, width, balance; the workshop decides between building up and cutting all alike",
        ),
        (Some(Nick), _) => ("a strike", "fair it in shallow on both sides; look for a trail of pits behind it"),
        (Some(Worn), _) => ("sand, or grinding in earlier repairs", "measure thickness at this radius on all blades"),
        (Some(Pits | Erosion), Some(Back)) if root => (
            "thick root, eddies of strut or shaft ahead, low pressure at the root",
            "photographs and dye first: castings have cavities too; fair the strut; nobody welds here without a licensed procedure",
        ),
        (Some(Pits | Erosion), Some(Back)) if near_leading => (
            "angle of attack peaks: wake, shaft angle, a nicked edge, too much pitch",
            "dress the leading edge; judge pitch and shaft angle",
        ),
        (Some(Pits | Erosion), Some(Back)) if outer && near_trailing => (
            "tip eddies against the hull, or too small a clearance",
            "look whether it sits on one spot of every blade; measure the tip clearance",
        ),
        (Some(Pits | Erosion), Some(Back)) if outer => (
            "sheet cavitation from overload or too little blade area",
            "judge the loading: more area or less power; corrosion would be even, on both sides and on the hub",
        ),
        (Some(Pits | Erosion), Some(Face)) if root => {
            ("shaft angle, or wash from skeg or keel", "look at shaft angle and fairing ahead of it")
        }
        (Some(Pits | Erosion), Some(Face)) if near_leading => (
            "blades that run unloaded at the leading edge: too little pitch for the speed, or shaft angle",
            "judge the pitch before anything is filled",
        ),
        (Some(Pits | Erosion), _) if near_trailing => {
            ("a cup lip or a square edge too sharp", "recut cup or bevel, a few light passes at a time")
        }
        _ => ("not plain from its place", "photograph it with a scale, and look on the other blades at the same place"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_speak() {
        let at = |kind, side, x, c| cause(Some(kind), Some(side), Some(x), Some(c)).0;
        assert!(at(DamageKind::Erosion, BladeSide::Back, 0.8, 0.4).contains("sheet cavitation"));
        assert!(at(DamageKind::Pits, BladeSide::Face, 0.7, 0.05).contains("too little pitch"));
        assert!(at(DamageKind::Pits, BladeSide::Back, 0.3, 0.3).contains("root"));
        assert!(at(DamageKind::Pits, BladeSide::Back, 0.9, 0.05).contains("too much pitch"));
        assert!(cause(Some(DamageKind::Crack), None, Some(0.3), None).1.starts_with("do not run it"));
    }
}
