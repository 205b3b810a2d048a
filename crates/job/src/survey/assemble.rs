//! From checked fields to a typed survey.

use super::model::*;
use crate::problem::Problem;
use crate::read::Fields;

/// The survey; `None` when the table holds nothing.
pub(crate) fn survey(f: &Fields, problems: &mut Vec<Problem>) -> Option<Survey> {
    let mut survey = Survey {
        date: f.text("date"),
        side: f.choice("side"),
        surveyor: f.text("surveyor"),
        tool: f.choice("tool"),
        design_pitch: f.quantity("design_pitch"),
        design: design(f, problems),
        diameter_across: f.quantity("diameter_across"),
        leading_edge: f.choice("leading_edge"),
        rake: f.quantity("rake"),
        skew: f.quantity("skew"),
        mass: f.quantity("mass"),
        ring: f.choice("ring"),
        colour: f.choice("colour"),
        surface: f.choice("surface"),
        notes: f.text("notes"),
        hub: hub(&f.table("hub")),
        photo: photo(&f.table("photo"), problems),
        blades: f.tables("blade").map(|f| blade(f, problems)).collect(),
        damage: f.tables("damage").map(damage).collect(),
    };
    if survey == Survey::default() {
        return None;
    }
    survey.settle_spreads();
    Some(survey)
}

fn hub(f: &Fields) -> Hub {
    Hub {
        diameter: f.quantity("diameter"),
        length: f.quantity("length"),
        bore_large: f.quantity("bore_large"),
        bore_small: f.quantity("bore_small"),
        taper_length: f.quantity("taper_length"),
        keyway_width: f.quantity("keyway_width"),
        keyway_depth: f.quantity("keyway_depth"),
    }
}

/// Pitch over the radius as it is meant.
fn design(f: &Fields, problems: &mut Vec<Problem>) -> Vec<(f64, f64)> {
    let mut design: Vec<(f64, f64)> = Vec::new();
    for row in f.tables("design") {
        let (Some(x), Some(pitch)) = (row.quantity("radius_ratio"), row.quantity("pitch")) else {
            if row.refused.is_empty() {
                let message = "a meant pitch needs both its radius_ratio and its pitch";
                problems.push(
                    Problem::error("incomplete", row.span.clone(), message)
                        .help("[[survey.design]] with radius_ratio = 0.7 and pitch = \"356 mm\""),
                );
            }
            continue;
        };
        if design.last().is_some_and(|last| x.middle <= last.0) {
            problems.push(
                Problem::error(
                    "radii-out-of-order",
                    row.at("radius_ratio"),
                    "the meant pitches are not in rising radius",
                )
                .help("write them from the hub outward, each radius once"),
            );
        }
        design.push((x.middle, pitch.middle));
    }
    if let ([_], Some(row)) = (&design[..], f.tables("design").next()) {
        problems.push(
            Problem::error("incomplete", row.span.clone(), "one radius is no pitch distribution")
                .help("give two radii or more, or one design_pitch for the whole blade"),
        );
    }
    if let (false, Some(_)) = (design.is_empty(), f.quantity("design_pitch")) {
        problems.push(
            Problem::error(
                "two-pitches",
                f.at("design_pitch"),
                "design_pitch and [[survey.design]] both say the pitch meant",
            )
            .help("keep one of them"),
        );
    }
    design
}

/// The photograph; `None` when nothing is said of one.
fn photo(f: &Fields, problems: &mut Vec<Problem>) -> Option<Photo> {
    let mut points = Vec::new();
    for click in f.tables("point") {
        match (click.quantity("x"), click.quantity("y")) {
            (Some(x), Some(y)) => points.push([x.middle, y.middle]),
            (x, y) if click.refused.is_empty() => {
                let lacks = if x.is_none() { "x" } else { "y" };
                let there = if x.or(y).is_some() { "half a point" } else { "a point without its place" };
                problems.push(
                    Problem::error("incomplete", click.span.clone(), format!("{there}: `{lacks}` is missing"))
                        .help("a point is { x = 790, y = 655 }, pixels from the left and from the top"),
                );
            }
            _ => {}
        }
    }
    let photo = Photo {
        file: f.text("file"),
        centre_x: f.quantity("centre_x"),
        centre_y: f.quantity("centre_y"),
        scale_length: f.quantity("scale_length"),
        scale_pixels: f.quantity("scale_pixels"),
        click: f.quantity("click"),
        points,
        at: f.span.clone(),
    };
    (Photo { at: 0..0, ..photo.clone() } != Photo::default()).then_some(photo)
}

fn blade(f: &Fields, problems: &mut Vec<Problem>) -> SurveyBlade {
    SurveyBlade {
        name: f.text("name"),
        tip_radius: f.quantity("tip_radius"),
        tip_angle: f.quantity("tip_angle"),
        leading_edge_form: f.choice("leading_edge_form"),
        trailing_edge_form: f.choice("trailing_edge_form"),
        sections: f.tables("section").map(|f| section(f, problems)).collect(),
        at: f.span.clone(),
    }
}

fn section(f: &Fields, problems: &mut Vec<Problem>) -> SurveySection {
    whole(f, problems);
    SurveySection {
        radius: f.quantity("radius"),
        radius_ratio: f.quantity("radius_ratio"),
        by: f.choice("by"),
        pitch: f.quantity("pitch"),
        arc_rise: f.quantity("arc_rise"),
        arc: f.quantity("arc"),
        face_angle: f.quantity("face_angle"),
        chord_rise: f.quantity("chord_rise"),
        chord_run: f.quantity("chord_run"),
        points: f.tables("point").map(|f| point(f, problems)).collect(),
        chord: f.quantity("chord"),
        leading_edge: f.quantity("leading_edge"),
        trailing_edge: f.quantity("trailing_edge"),
        thickness: f.quantity("thickness"),
        track: f.quantity("track"),
        cup_drop: f.quantity("cup_drop"),
        cup_length: f.quantity("cup_length"),
        at: f.span.clone(),
    }
}

/// Whether what belongs together is there together; a value that was refused has had its message.
fn whole(f: &Fields, problems: &mut Vec<Problem>) {
    let there = |name: &str| f.node(name).is_some();
    let known = |name: &str| there(name) || f.refused.contains(&name);
    let mut refuse = |code, at, message: String, help: &str| {
        problems.push(Problem::error(code, at, message).help(help));
    };
    match (known("radius"), known("radius_ratio")) {
        (false, false) => refuse(
            "no-radius",
            f.span.clone(),
            "a section without its radius".to_owned(),
            "give radius = \"140 mm\", or radius_ratio = 0.7",
        ),
        (true, true) => refuse(
            "two-radii",
            f.at("radius_ratio"),
            "two radii for one section".to_owned(),
            "give radius or radius_ratio, not both",
        ),
        _ => {}
    }
    for (one, other, help) in [
        (
            "arc_rise",
            "arc",
            "pitch is 360 x rise / arc: the swing gauge's rise and the degrees it was swung belong together",
        ),
        (
            "chord_rise",
            "chord_run",
            "pitch is the rise over the part of a turn the run covers: rise and run belong together",
        ),
    ] {
        for (has, lacks) in [(one, other), (other, one)] {
            if there(has) && !known(lacks) {
                refuse("incomplete", f.at(has), format!("`{has}` without `{lacks}`"), help);
            }
        }
    }
    let points = f.tables("point").count();
    if points == 1 {
        let span = f.tables("point").next().map_or(0..0, |p| p.span.clone());
        refuse("too-few", span, "a face of one point".to_owned(), "give two points or more, or none");
    }
    if let (Some(at), false) =
        (f.tables("point").find(|p| p.node("chord_fraction").is_some() && p.node("angle").is_none()), known("chord"))
    {
        refuse(
            "incomplete",
            at.span.clone(),
            "a place along the chord, and the chord is not said".to_owned(),
            "give chord for this section, or the angles of the points about the shaft",
        );
    }
    if f.values.iter().all(|(name, ..)| matches!(*name, "radius" | "radius_ratio" | "by"))
        && f.refused.is_empty()
        && points == 0
    {
        problems.push(
            Problem::doubt("empty-section", f.span.clone(), "nothing was measured at this radius")
                .help("leave the section out, or add what was measured"),
        );
    }
}

fn point(f: &Fields, problems: &mut Vec<Problem>) -> FacePoint {
    let known = |name: &str| f.node(name).is_some() || f.refused.contains(&name);
    let missing = if !known("height") {
        Some("a point without its height")
    } else if !known("angle") && !known("chord_fraction") {
        Some("a point without its place")
    } else {
        None
    };
    if let Some(message) = missing {
        let help = "a point is { angle = \"10 deg\", height = \"7.8 mm\" }, or with chord_fraction for the angle";
        problems.push(Problem::error("incomplete", f.span.clone(), message).help(help));
    }
    FacePoint {
        angle: f.quantity("angle"),
        chord_fraction: f.quantity("chord_fraction"),
        height: f.quantity("height"),
        at: f.span.clone(),
    }
}

fn damage(f: &Fields) -> Damage {
    Damage {
        blade: f.text("blade"),
        side: f.choice("side"),
        radius_ratio: f.quantity("radius_ratio"),
        chord_fraction: f.quantity("chord_fraction"),
        kind: f.choice("kind"),
        depth: f.quantity("depth"),
        notes: f.text("notes"),
        at: f.span.clone(),
    }
}
