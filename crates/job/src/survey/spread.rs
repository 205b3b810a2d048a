//! What each way of measuring a blade is good for: the spread of a value that states none.
//!
//! All are 80 % half widths; common practice, no source. A stated spread or source always goes before them.

use super::model::{Survey, SurveySection, Tool};
use crate::quantity::Quantity;
use crate::spread::Spread::{self, Absolute, Relative};

/// One row: what, with which tool (`None`: any), how good.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// The keys it holds for.
    pub keys: &'static [&'static str],
    /// The tool; `None` for any.
    pub tool: Option<Tool>,
    /// The spread.
    pub spread: Spread,
    /// The same in words.
    pub words: &'static str,
}

const fn row(keys: &'static [&'static str], tool: Option<Tool>, spread: Spread, words: &'static str) -> Row {
    Row { keys, tool, spread, words }
}

const MM: f64 = 1e-3;

/// The table; the first row that fits holds.
#[rustfmt::skip]
pub const SURVEY_SPREADS: &[Row] = &[
    row(&["pitch"], Some(Tool::SwingGauge), Relative(0.005), "± 0.5 %"),
    row(&["pitch"], Some(Tool::CoordinateMachine), Relative(0.002), "± 0.2 %"),
    row(&["pitch"], None, Relative(0.01), "± 1 %"),
    row(&["arc_rise"], Some(Tool::SwingGauge), Relative(0.005), "± 0.5 %, the arc taken as exact"),
    row(&["arc_rise"], Some(Tool::CoordinateMachine), Relative(0.002), "± 0.2 %, the arc taken as exact"),
    row(&["arc_rise"], None, Absolute(MM), "± 1 mm"),
    row(&["arc"], Some(Tool::SwingGauge), Absolute(0.0), "exact"),
    row(&["arc"], Some(Tool::CoordinateMachine), Absolute(0.0), "exact"),
    row(&["arc"], None, Absolute(0.5), "± 0.5°"),
    row(&["face_angle"], Some(Tool::DigitalLevel), Absolute(0.3), "± 0.3°"),
    row(&["face_angle"], Some(Tool::CoordinateMachine), Absolute(0.1), "± 0.1°"),
    row(&["face_angle"], None, Absolute(1.0), "± 1°"),
    row(&["chord_rise"], Some(Tool::Blocks), Absolute(0.3 * MM), "± 0.3 mm"),
    row(&["chord_rise", "chord_run"], None, Absolute(MM), "± 1 mm"),
    row(&["height"], Some(Tool::CoordinateMachine), Absolute(0.05 * MM), "± 0.05 mm"),
    row(&["height"], Some(Tool::SwingGauge), Absolute(0.2 * MM), "± 0.2 mm"),
    row(&["height"], None, Absolute(MM), "± 1 mm"),
    row(&["angle"], Some(Tool::CoordinateMachine), Absolute(0.02), "± 0.02°"),
    row(&["angle"], Some(Tool::SwingGauge), Absolute(0.1), "± 0.1°"),
    row(&["angle"], None, Absolute(0.5), "± 0.5°"),
    row(&["chord", "leading_edge", "trailing_edge"], Some(Tool::CoordinateMachine), Absolute(0.2 * MM), "± 0.2 mm"),
    row(&["chord", "leading_edge", "trailing_edge", "cup_length"], None, Absolute(2.0 * MM), "± 2 mm, tape"),
    row(&["radius"], Some(Tool::CoordinateMachine), Absolute(0.05 * MM), "± 0.05 mm"),
    row(&["radius"], Some(Tool::SwingGauge), Absolute(0.5 * MM), "± 0.5 mm"),
    row(&["tip_radius"], Some(Tool::CoordinateMachine), Absolute(0.1 * MM), "± 0.1 mm"),
    row(&["radius", "tip_radius", "length", "taper_length"], None, Absolute(MM), "± 1 mm, rule or tape"),
    row(&["scale_length"], None, Absolute(MM), "± 1 mm, rule"),
    row(&["scale_pixels"], None, Absolute(3.0), "± 3 pixels"),
    row(&["diameter_across"], None, Absolute(2.0 * MM), "± 2 mm, tape"),
    row(&["thickness", "bore_large", "bore_small", "keyway_width", "keyway_depth"], None, Absolute(0.1 * MM), "± 0.1 mm, calipers"),
    row(&["diameter"], None, Absolute(0.5 * MM), "± 0.5 mm, calipers"),
    row(&["track"], Some(Tool::CoordinateMachine), Absolute(0.05 * MM), "± 0.05 mm"),
    row(&["track"], Some(Tool::SwingGauge), Absolute(0.3 * MM), "± 0.3 mm"),
    row(&["track"], None, Absolute(MM), "± 1 mm"),
    row(&["cup_drop"], None, Absolute(0.3 * MM), "± 0.3 mm"),
    row(&["tip_angle"], Some(Tool::CoordinateMachine), Absolute(0.02), "± 0.02°"),
    row(&["tip_angle"], None, Absolute(0.5), "± 0.5°"),
    row(&["radius_ratio", "chord_fraction"], None, Absolute(0.0), "exact, as set out"),
    row(&["design_pitch"], None, Absolute(0.0), "exact, as ordered"),
    row(&["mass"], None, Relative(0.015), "± 1.5 %, scale"),
    row(&["rake"], None, Absolute(2.0), "± 2°"),
    row(&["skew"], None, Absolute(3.0), "± 3°"),
    row(&["depth"], None, Relative(0.2), "± 20 %"),
];

/// The spread of one key with one tool, where the table has it.
#[must_use]
pub fn spread_of(key: &str, tool: Option<Tool>) -> Option<Spread> {
    let fits = |r: &&Row| r.keys.contains(&key) && r.tool.is_none_or(|t| Some(t) == tool);
    SURVEY_SPREADS.iter().find(fits).map(|r| r.spread)
}

/// Gives a value that states neither spread nor source the spread of the tool.
pub(crate) fn settle(quantity: &mut Option<Quantity>, key: &str, tool: Option<Tool>) {
    let Some(q) = quantity else { return };
    if q.own_spread || q.source.is_some() {
        return;
    }
    if let Some(spread) = spread_of(key, tool) {
        (q.low, q.middle, q.high) = spread.band(q.middle);
    }
}

impl SurveySection {
    /// The tool of each way of measuring at this section: what it says itself, what the survey says, else what that way
    /// is commonly done with.
    #[must_use]
    pub fn tool_for(&self, route: Route, survey: Option<Tool>) -> Tool {
        self.by.or(survey).filter(|tool| route.fits(*tool)).unwrap_or(match route {
            Route::Direct | Route::Arc | Route::Points => Tool::SwingGauge,
            Route::FaceAngle => Tool::Protractor,
            Route::Chord => Tool::Rule,
        })
    }

    pub(crate) fn settle_spreads(&mut self, survey: Option<Tool>) {
        let general = self.by.or(survey);
        let tool = |route, this: &SurveySection| Some(this.tool_for(route, survey));
        let (direct, arc, face, chord, points) = (
            tool(Route::Direct, self),
            tool(Route::Arc, self),
            tool(Route::FaceAngle, self),
            tool(Route::Chord, self),
            tool(Route::Points, self),
        );
        settle(&mut self.pitch, "pitch", direct);
        settle(&mut self.arc_rise, "arc_rise", arc);
        settle(&mut self.arc, "arc", arc);
        settle(&mut self.face_angle, "face_angle", face);
        settle(&mut self.chord_rise, "chord_rise", chord);
        settle(&mut self.chord_run, "chord_run", chord);
        for point in &mut self.points {
            settle(&mut point.angle, "angle", points);
            settle(&mut point.height, "height", points);
            settle(&mut point.chord_fraction, "chord_fraction", points);
        }
        settle(&mut self.radius, "radius", general);
        settle(&mut self.radius_ratio, "radius_ratio", general);
        settle(&mut self.chord, "chord", general);
        settle(&mut self.leading_edge, "leading_edge", general);
        settle(&mut self.trailing_edge, "trailing_edge", general);
        settle(&mut self.thickness, "thickness", general);
        settle(&mut self.track, "track", general);
        settle(&mut self.cup_drop, "cup_drop", general);
        settle(&mut self.cup_length, "cup_length", general);
    }
}

/// A way of measuring the pitch of a section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Route {
    /// Read off a gauge as pitch.
    Direct,
    /// Rise over an arc.
    Arc,
    /// Angle of the face.
    FaceAngle,
    /// Rise over a straight run.
    Chord,
    /// Points along the face.
    Points,
}

impl Route {
    /// Whether a tool can measure that way: a protractor does not swing, a gauge reads no angle of the face.
    #[must_use]
    pub fn fits(self, tool: Tool) -> bool {
        match self {
            Route::Direct => !matches!(tool, Tool::DigitalLevel | Tool::Protractor),
            Route::Arc | Route::Points => matches!(tool, Tool::SwingGauge | Tool::Rule | Tool::CoordinateMachine),
            Route::FaceAngle => {
                matches!(tool, Tool::DigitalLevel | Tool::Protractor | Tool::Rule | Tool::CoordinateMachine)
            }
            Route::Chord => matches!(tool, Tool::Blocks | Tool::Rule | Tool::CoordinateMachine),
        }
    }
}

impl Survey {
    /// Gives every value that states neither spread nor source the spread of its tool.
    pub fn settle_spreads(&mut self) {
        let tool = self.tool;
        settle(&mut self.design_pitch, "design_pitch", None);
        settle(&mut self.diameter_across, "diameter_across", tool);
        settle(&mut self.rake, "rake", tool);
        settle(&mut self.skew, "skew", tool);
        settle(&mut self.mass, "mass", tool);
        if let Some(photo) = &mut self.photo {
            settle(&mut photo.scale_length, "scale_length", None);
            settle(&mut photo.scale_pixels, "scale_pixels", None);
        }
        let hub = &mut self.hub;
        for (q, key) in [
            (&mut hub.diameter, "diameter"),
            (&mut hub.length, "length"),
            (&mut hub.bore_large, "bore_large"),
            (&mut hub.bore_small, "bore_small"),
            (&mut hub.taper_length, "taper_length"),
            (&mut hub.keyway_width, "keyway_width"),
            (&mut hub.keyway_depth, "keyway_depth"),
        ] {
            settle(q, key, None);
        }
        for blade in &mut self.blades {
            settle(&mut blade.tip_radius, "tip_radius", tool);
            settle(&mut blade.tip_angle, "tip_angle", tool);
            for section in &mut blade.sections {
                section.settle_spreads(tool);
            }
        }
        for damage in &mut self.damage {
            settle(&mut damage.radius_ratio, "radius_ratio", None);
            settle(&mut damage.chord_fraction, "chord_fraction", None);
            settle(&mut damage.depth, "depth", None);
        }
    }
}
