//! Doubts about widths, thicknesses, cups, hub and bore of a survey.

use super::doubts::{mm, push};
use super::model::*;
use crate::number::show;
use crate::problem::Problem;
use crate::quantity::{Quantity, Source};

pub(super) fn shapes(survey: &Survey, problems: &mut Vec<Problem>) {
    for blade in &survey.blades {
        let tip = survey.tip_radius(blade);
        let mut before: Option<&Quantity> = None;
        for section in &blade.sections {
            let r = section.radius_m(tip);
            if let Some(chord) = &section.chord {
                if let (Some(a), Some(b)) = (&section.leading_edge, &section.trailing_edge)
                    && ((a.middle + b.middle) / chord.middle - 1.0).abs() > 0.08
                {
                    push(
                        problems,
                        "chord-edges",
                        &chord.at,
                        format!(
                            "the chord is {} mm, from edge to edge over the reference line {} mm",
                            mm(chord.middle),
                            mm(a.middle + b.middle)
                        ),
                        "all three are taken along the face, at one radius",
                        &[(&a.at, "to the leading edge"), (&b.at, "to the trailing edge")],
                    );
                }
                if let Some(r) = r
                    && chord.middle > std::f64::consts::PI * r
                {
                    push(
                        problems,
                        "chord-wide",
                        &chord.at,
                        format!(
                            "a chord of {} mm reaches more than half round the shaft at a radius of {} mm",
                            mm(chord.middle),
                            mm(r)
                        ),
                        "look at both, and at their units",
                        &[],
                    );
                }
                if let Some(t) = &section.thickness {
                    let part = t.middle / chord.middle;
                    if !(0.008..=0.45).contains(&part) {
                        let help = if part < 0.008 && (0.008..=0.45).contains(&(25.4 * part)) {
                            "it would fit if the millimetres were inches"
                        } else {
                            "look at both, and at their units"
                        };
                        push(
                            problems,
                            "thickness",
                            &t.at,
                            format!("{} mm thick on a chord of {} mm", mm(t.middle), mm(chord.middle)),
                            help,
                            &[(&chord.at, "the chord")],
                        );
                    }
                }
                if let Some(l) = &section.cup_length
                    && l.middle > 0.35 * chord.middle
                {
                    push(
                        problems,
                        "cup",
                        &l.at,
                        "a cup over a third of the chord",
                        "cup_length is the curled part at the trailing edge only",
                        &[(&chord.at, "the chord")],
                    );
                }
            }
            if let (Some(drop), Some(length)) = (&section.cup_drop, &section.cup_length)
                && length.middle > 0.0
                && drop.middle > 0.6 * length.middle
            {
                push(
                    problems,
                    "cup",
                    &drop.at,
                    "a cup nearly as deep as it is long",
                    "cup_drop is the lip's distance from the straight line of the face",
                    &[(&length.at, "its length")],
                );
            }
            if let Some(t) = &section.thickness {
                if let Some(inner) = before
                    && t.middle > 1.15 * inner.middle
                {
                    push(
                        problems,
                        "thickness",
                        &t.at,
                        "the blade is thicker here than nearer the hub",
                        "blades thin toward the tip: look at both readings",
                        &[(&inner.at, "nearer the hub")],
                    );
                }
                before = Some(t);
            }
            if let (Some(r), Some(hub)) = (r, &survey.hub.diameter)
                && let Some(stated) = section.radius_stated()
                && r < 0.5 * hub.middle - 0.001
            {
                push(
                    problems,
                    "inside-hub",
                    &stated.at,
                    format!("a radius of {} mm lies inside the hub", mm(r)),
                    "radii are taken from the shaft centre, not from the hub",
                    &[(&hub.at, "the hub's diameter")],
                );
            }
        }
    }
}

pub(super) fn hub(survey: &Survey, problems: &mut Vec<Problem>) {
    let hub = &survey.hub;
    if let (Some(outer), Some(bore)) = (&hub.diameter, &hub.bore_large)
        && bore.middle > 0.8 * outer.middle
    {
        push(
            problems,
            "bore",
            &bore.at,
            format!("a bore of {} mm in a hub of {} mm", mm(bore.middle), mm(outer.middle)),
            "look at both, and at their units",
            &[(&outer.at, "the hub")],
        );
    }
    if let (Some(taper), Some(length)) = (&hub.taper_length, &hub.length)
        && taper.low > length.high
    {
        push(
            problems,
            "taper-length",
            &taper.at,
            "the taper is longer than the hub",
            "taper_length is the distance between the two bore readings",
            &[(&length.at, "the hub")],
        );
    }
    if let (Some(large), Some(small), Some(length)) =
        (&hub.bore_large, &hub.bore_small, hub.taper_length.as_ref().or(hub.length.as_ref()))
    {
        let taper = (large.middle - small.middle) / length.middle;
        if taper > 1.0 / 7.0 || (taper > 0.002 && taper < 1.0 / 30.0) {
            push(
                problems,
                "taper",
                &small.at,
                format!("a taper of 1 in {}; usual are 1 in 10, 12, 16 and 20", show(1.0 / taper, 3)),
                "measure both ends and the length between them again",
                &[(&large.at, "the large end"), (&length.at, "the length")],
            );
        }
    }
    if let (Some(width), Some(bore)) = (&hub.keyway_width, &hub.bore_large)
        && !(0.12..=0.4).contains(&(width.middle / bore.middle))
    {
        push(
            problems,
            "keyway",
            &width.at,
            format!("a keyway {} mm wide in a bore of {} mm", mm(width.middle), mm(bore.middle)),
            "a keyway is about a quarter of the bore: look at both, and at their units",
            &[(&bore.at, "the bore")],
        );
    }
    // A quantity that came from memory is no survey.
    if let Some(q) =
        survey.blades.iter().filter_map(|b| b.tip_radius.as_ref()).find(|q| q.source == Some(Source::Memory))
    {
        push(problems, "from-memory", &q.at, "a survey from memory", "measure it: that is what a survey is", &[]);
    }
}
