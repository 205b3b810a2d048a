//! Writing a survey as part of a job file.

use super::model::*;
use crate::number::show;
use crate::quantity::Quantity;
use crate::write::Out;

/// The `[survey]` table and all below it.
pub(crate) fn survey(s: &Survey, out: &mut Out) {
    out.table("survey")
        .text("date", s.date.as_deref())
        .word("side", s.side)
        .text("surveyor", s.surveyor.as_deref())
        .word("tool", s.tool)
        .quantity("design_pitch", s.design_pitch.as_ref())
        .quantity("diameter_across", s.diameter_across.as_ref())
        .word("leading_edge", s.leading_edge)
        .quantity("rake", s.rake.as_ref())
        .quantity("skew", s.skew.as_ref())
        .quantity("mass", s.mass.as_ref())
        .word("ring", s.ring)
        .word("colour", s.colour)
        .word("surface", s.surface)
        .text("notes", s.notes.as_deref());
    for (x, pitch) in &s.design {
        let pitch =
            Quantity { text: format!("{} mm", show(1000.0 * pitch, 9)), ..Quantity::exact(*pitch, String::new()) };
        out.list("survey.design").number("radius_ratio", *x).quantity("pitch", Some(&pitch));
    }
    let hub = &s.hub;
    out.table("survey.hub")
        .quantity("diameter", hub.diameter.as_ref())
        .quantity("length", hub.length.as_ref())
        .quantity("bore_large", hub.bore_large.as_ref())
        .quantity("bore_small", hub.bore_small.as_ref())
        .quantity("taper_length", hub.taper_length.as_ref())
        .quantity("keyway_width", hub.keyway_width.as_ref())
        .quantity("keyway_depth", hub.keyway_depth.as_ref());
    if let Some(photo) = &s.photo {
        out.table("survey.photo")
            .text("file", photo.file.as_deref())
            .quantity("centre_x", photo.centre_x.as_ref())
            .quantity("centre_y", photo.centre_y.as_ref())
            .quantity("scale_length", photo.scale_length.as_ref())
            .quantity("scale_pixels", photo.scale_pixels.as_ref())
            .quantity("click", photo.click.as_ref());
        for [x, y] in &photo.points {
            out.list("survey.photo.point").number("x", *x).number("y", *y);
        }
    }
    for one in &s.blades {
        blade(one, out);
    }
    for one in &s.damage {
        out.list("survey.damage")
            .text("blade", one.blade.as_deref())
            .word("side", one.side)
            .quantity("radius_ratio", one.radius_ratio.as_ref())
            .quantity("chord_fraction", one.chord_fraction.as_ref())
            .word("kind", one.kind)
            .quantity("depth", one.depth.as_ref())
            .text("notes", one.notes.as_deref());
    }
}

fn blade(b: &SurveyBlade, out: &mut Out) {
    out.list("survey.blade")
        .text("name", b.name.as_deref())
        .quantity("tip_radius", b.tip_radius.as_ref())
        .quantity("tip_angle", b.tip_angle.as_ref())
        .word("leading_edge_form", b.leading_edge_form)
        .word("trailing_edge_form", b.trailing_edge_form);
    for s in &b.sections {
        out.list("survey.blade.section")
            .quantity("radius", s.radius.as_ref())
            .quantity("radius_ratio", s.radius_ratio.as_ref())
            .word("by", s.by)
            .quantity("pitch", s.pitch.as_ref())
            .quantity("arc_rise", s.arc_rise.as_ref())
            .quantity("arc", s.arc.as_ref())
            .quantity("face_angle", s.face_angle.as_ref())
            .quantity("chord_rise", s.chord_rise.as_ref())
            .quantity("chord_run", s.chord_run.as_ref());
        if !s.points.is_empty() {
            let text = points(&s.points, out);
            out.line("point", &text);
        }
        out.quantity("chord", s.chord.as_ref())
            .quantity("leading_edge", s.leading_edge.as_ref())
            .quantity("trailing_edge", s.trailing_edge.as_ref())
            .quantity("thickness", s.thickness.as_ref())
            .quantity("track", s.track.as_ref())
            .quantity("cup_drop", s.cup_drop.as_ref())
            .quantity("cup_length", s.cup_length.as_ref());
    }
}

/// Points as a list of small tables, one line each.
fn points(points: &[FacePoint], out: &mut Out) -> String {
    let before = std::mem::replace(&mut out.path, "survey.blade.section.point");
    let mut text = String::from("[");
    for point in points {
        let parts: Vec<String> =
            [("angle", &point.angle), ("chord_fraction", &point.chord_fraction), ("height", &point.height)]
                .into_iter()
                .filter_map(|(name, q)| q.as_ref().map(|q| format!("{name} = {}", out.stated(name, q, None))))
                .collect();
        text.push_str(&format!("\n  {{ {} }},", parts.join(", ")));
    }
    out.path = before;
    text.push_str("\n]");
    text
}

impl Survey {
    /// The survey as part of a job file, beginning with an empty line: what an import puts at the end of one.
    #[must_use]
    pub fn to_toml(&self) -> String {
        let mut out = Out { text: String::new(), path: "", header: None };
        survey(self, &mut out);
        out.text
    }
}
