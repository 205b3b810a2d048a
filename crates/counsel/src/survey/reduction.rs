//! The survey reduced: pitches with their spreads, blade by blade, and the measured propeller where enough was measured.

use super::convert;
use hydro::blade::{
    Areas, BladePitch, Chordwise, Estimate, Measured, PitchTable, Radial, SectionPitch, Trouble, areas,
    effective_pitch, pitch_weight, reduce,
};
use job::Job;
use job::survey::{Route, Survey, SurveySection};

/// Sections within this much of r/R of each other stand at the same radius.
pub(super) const SAME_RADIUS: f64 = 0.015;

/// One section of one blade.
#[derive(Clone, Debug)]
pub(super) struct SectionRow<'a> {
    pub said: &'a SurveySection,
    /// r/R
    pub x: f64,
    /// m
    pub radius: f64,
    /// All ways joined, m, without the error common to all.
    pub pitch: Option<Estimate>,
    pub routes: Vec<Route>,
    /// Local pitches, m, from leading to trailing edge.
    pub local: Vec<Estimate>,
}

impl SectionRow<'_> {
    /// Width of the blade here, m: as measured, else from edge to edge.
    pub fn width(&self) -> Option<Estimate> {
        let some = |q: &Option<job::Quantity>| q.as_ref().map(convert::estimate);
        some(&self.said.chord).or_else(|| {
            let (a, b) = (some(&self.said.leading_edge)?, some(&self.said.trailing_edge)?);
            Some(Estimate::new(a.value + b.value, a.sd.hypot(b.sd)))
        })
    }
}

/// Stretch of r/R a section stands for: half way to its neighbours, to hub and tip at the ends.
fn share(sections: &[&SectionRow], i: usize) -> f64 {
    let x = |j: usize| sections.get(j).map(|s| s.x);
    let inner = i.checked_sub(1).and_then(x).map_or(0.2_f64.min(sections[i].x), |y| 0.5 * (y + sections[i].x));
    let outer = x(i + 1).map_or(1.0, |y| 0.5 * (y + sections[i].x));
    (outer - inner).max(0.01)
}

/// One blade.
#[derive(Clone, Debug)]
pub(super) struct BladeRow<'a> {
    pub name: String,
    pub tip: Option<Estimate>,
    pub angle: Option<Estimate>,
    /// Plain average over its radii, m, without the common error.
    pub mean: Option<Estimate>,
    pub sections: Vec<SectionRow<'a>>,
}

/// The whole survey.
#[derive(Clone, Debug)]
pub(super) struct Reduced<'a> {
    pub survey: &'a Survey,
    pub blades: Vec<BladeRow<'a>>,
    /// Blades the propeller has.
    pub count: usize,
    pub diameter: Option<Estimate>,
    /// Propeller mean, m, without the common error.
    pub mean: Option<Estimate>,
    /// Relative standard deviation common to all pitches.
    pub common: f64,
    pub radial: Radial,
    pub chordwise: Chordwise,
    /// The propeller as the physics takes it, where enough was measured.
    pub measured: Option<Measured>,
    pub notes: Vec<String>,
}

impl<'a> Reduced<'a> {
    pub fn of(job: &'a Job) -> Option<Reduced<'a>> {
        let survey = job.survey.as_ref()?;
        let mut notes = Vec::new();
        let blades: Vec<BladeRow> = (0..survey.blades.len()).map(|i| blade(job, survey, i, &mut notes)).collect();
        let table = PitchTable {
            blades: blades.iter().map(pitches).collect(),
            mean: Estimate::mean(blades.iter().filter_map(|b| b.mean)),
        };
        let tips: Vec<Estimate> = blades.iter().filter_map(|b| b.tip).collect();
        let diameter =
            Estimate::mean(tips).map(|t| t.times(2.0)).or_else(|| convert::tip(job, survey, 0).map(|t| t.times(2.0)));
        let readings = convert::convert(job, survey, &mut notes);
        let measured = match reduce(&readings) {
            Ok(measured) => Some(measured),
            Err(trouble) => {
                notes.extend(trouble_in_words(trouble, survey));
                None
            }
        };
        if uneven(&blades) {
            notes.push(
                "The blades were not measured at the same radii: their means are compared as they are.".to_owned(),
            );
        }
        Some(Reduced {
            survey,
            count: convert::blade_count(job, survey),
            diameter,
            mean: table.mean,
            common: readings.common_pitch_sd,
            radial: table.radial(),
            chordwise: table.chordwise(),
            measured,
            blades,
            notes,
        })
    }

    /// Propeller mean with the error common to all readings, m.
    pub fn mean_whole(&self) -> Option<Estimate> {
        self.mean.map(|m| m.and_sd(self.common * m.value))
    }

    /// The pitch that acts, m: the measured blades weighed as they thrust, else the readings weighed alike. Without cup.
    pub fn effective(&self) -> Option<Estimate> {
        let (mut weights, mut sum, mut variance, mut readings) = (0.0, 0.0, 0.0, 0);
        for blade in &self.blades {
            let read: Vec<&SectionRow> = blade.sections.iter().filter(|s| s.pitch.is_some()).collect();
            for (i, s) in read.iter().enumerate() {
                let (Some(p), w) = (s.pitch, pitch_weight(s.x) * share(&read, i)) else { continue };
                readings += 1;
                weights += w;
                sum += w * p.value;
                variance += (w * p.sd).powi(2);
            }
        }
        if weights <= 0.0 {
            return None;
        }
        // One or two radii say little of the rest of the blade: 1.5 % for what lies between, else 0.3 % (estimate).
        let between = if readings < 3 * self.blades.len() { 0.015 } else { 0.003 };
        let drawn = self.measured.as_ref().map(|m| {
            let hub = m.propeller.hub.radius();
            m.propeller.blades.iter().map(|b| effective_pitch(b, hub)).sum::<f64>() / m.propeller.count()
        });
        let value = drawn.filter(|p| p.is_finite() && *p > 0.0).unwrap_or(sum / weights);
        Some(Estimate::new(value, variance.sqrt() / weights).and_sd(between * value).and_sd(self.common * value))
    }

    /// Largest less smallest blade mean over the mean: errors common to all readings fall out.
    pub fn blade_spread(&self) -> Option<Estimate> {
        let means: Vec<Estimate> = self.blades.iter().filter_map(|b| b.mean).collect();
        if means.len() < 2 {
            return None;
        }
        let by = |a: &&Estimate, b: &&Estimate| a.value.total_cmp(&b.value);
        let (low, high) = (means.iter().min_by(by)?, means.iter().max_by(by)?);
        let mean = self.mean?.value;
        Some(Estimate::new((high.value - low.value) / mean, high.sd.hypot(low.sd) / mean))
    }

    /// Areas of the measured propeller, where the width was measured at two radii or more of some blade, with their relative
    /// standard deviation: widths weighed by the stretch of radius each stands for, and the outline drawn between them.
    pub fn areas(&self) -> Option<(Areas, f64)> {
        self.widths_known().then_some(())?;
        let all = areas(&self.measured.as_ref()?.propeller);
        let (mut sum, mut variance) = (0.0, 0.0);
        for blade in &self.blades {
            let wide: Vec<&SectionRow> = blade.sections.iter().filter(|s| s.width().is_some()).collect();
            for (i, s) in wide.iter().enumerate() {
                let (Some(c), w) = (s.width(), share(&wide, i)) else { continue };
                sum += w * c.value;
                variance += (w * c.sd).powi(2);
            }
        }
        if !(sum > 0.0 && all.expanded_ratio.is_finite() && all.expanded_ratio > 0.0) {
            return None;
        }
        // Blades nobody measured are drawn from the others; what lies between few sections is a guess (estimates).
        let sections = self.blades.iter().flat_map(|b| &b.sections).filter(|s| s.width().is_some()).count();
        let few = if sections < 4 * self.blades.len() { 0.03 } else { 0.01 };
        let missing = if self.blades.len() < self.count { 0.02 } else { 0.0 };
        Some((all, (variance.sqrt() / sum).hypot(few).hypot(missing)))
    }

    /// Whether widths were measured well enough to speak of areas.
    pub fn widths_known(&self) -> bool {
        self.blades.iter().any(|b| b.sections.iter().filter(|s| s.width().is_some()).count() >= 2)
    }

    /// Mean over the blades measured at radius `x` of something, with how many there were.
    pub fn at_radius(&self, x: f64, of: impl Fn(&SectionRow) -> Option<f64>) -> Option<(f64, usize)> {
        let all: Vec<f64> = self
            .blades
            .iter()
            .filter_map(|b| b.sections.iter().find(|s| (s.x - x).abs() < SAME_RADIUS && of(s).is_some()))
            .filter_map(&of)
            .collect();
        (!all.is_empty()).then(|| (all.iter().sum::<f64>() / all.len() as f64, all.len()))
    }

    /// Pitch meant at a radius where the survey states a distribution, m: straight between the radii stated, held beyond them.
    fn design_at(&self, x: f64) -> Option<f64> {
        let design = &self.survey.design;
        let after = design.iter().position(|(at, _)| *at >= x);
        match after {
            Some(0) => design.first().map(|d| d.1),
            None => design.last().map(|d| d.1),
            Some(i) => {
                let ((a, p), (b, q)) = (design[i - 1], design[i]);
                Some(p + (q - p) * (x - a) / (b - a))
            }
        }
    }

    /// The mean of that pitch over the radii measured, m: what the measured mean is held against.
    pub fn mean_design(&self) -> Option<f64> {
        let radii = self.radii();
        let sum: Option<f64> = radii.iter().map(|x| self.design_at(*x)).sum();
        sum.filter(|_| !radii.is_empty()).map(|sum| sum / radii.len() as f64)
    }

    /// How the pitch runs over the radius, as a factor on the mean: 1 where it is constant within class I or what was
    /// measured, else as the blades have it in the mean.
    pub fn shape_at(&self, x: f64) -> f64 {
        if let (Some(here), Some(mean)) = (self.design_at(x), self.mean_design()) {
            return here / mean;
        }
        if matches!(self.radial, Radial::Constant | Radial::Unknown) {
            return 1.0;
        }
        let Some(mean) = self.mean else { return 1.0 };
        let factors: Vec<f64> = self.radii().into_iter().filter_map(|x| self.factor(x, mean.value)).collect();
        let (low, high) = factors.iter().fold((1.0_f64, 1.0_f64), |(l, h), f| (l.min(*f), h.max(*f)));
        if high - low < 0.03 {
            return 1.0;
        }
        self.factor(x, mean.value).unwrap_or(1.0)
    }

    fn factor(&self, x: f64, mean: f64) -> Option<f64> {
        self.at_radius(x, |s| s.pitch.map(|p| p.value)).map(|(p, _)| p / mean)
    }

    /// The radii measured, as r/R, each once.
    pub fn radii(&self) -> Vec<f64> {
        let mut all: Vec<f64> = self.blades.iter().flat_map(|b| b.sections.iter().map(|s| s.x)).collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|b, a| *b - *a < SAME_RADIUS);
        all
    }

    /// Mean drop of the cup over the chord, over the sections that have one, and the part of the sections looked at.
    pub fn cup(&self) -> Option<(f64, f64)> {
        let (mut looked, mut cupped, mut sum) = (0.0, 0.0, 0.0);
        for s in self.blades.iter().flat_map(|b| &b.sections) {
            let Some(drop) = s.said.cup_drop.as_ref().map(|q| q.middle) else { continue };
            looked += 1.0;
            // A usual chord where none was measured: 0.28 D at these radii (estimate).
            let chord = s.said.chord.as_ref().map_or(0.56 * s.radius / s.x, |q| q.middle);
            if drop > 0.0 {
                cupped += 1.0;
                sum += drop / chord;
            }
        }
        (looked > 0.0).then(|| (if cupped > 0.0 { sum / cupped } else { 0.0 }, cupped / looked))
    }
}

fn blade<'a>(job: &Job, survey: &'a Survey, i: usize, notes: &mut Vec<String>) -> BladeRow<'a> {
    let said = &survey.blades[i];
    let tip = convert::tip(job, survey, i);
    let mut sections = Vec::new();
    for section in &said.sections {
        let Some(r) = convert::radius(section, tip) else { continue };
        let x = tip.map_or(0.0, |t| r.value / t.value);
        let mut reduced = Vec::new();
        let mut routes = Vec::new();
        let mut local = Vec::new();
        for (route, _, reading) in convert::readings(section, r, survey.tool) {
            match reading.reduce(r) {
                Some(one) => {
                    routes.push(route);
                    local.extend(one.local.iter().map(|l| l.pitch));
                    reduced.push(one.pitch);
                }
                None => notes.push(format!(
                    "Blade {}, {:.2} R: a reading cannot be of a propeller and is left out.",
                    survey.blade_name(i),
                    x
                )),
            }
        }
        let pitch = Estimate::combined(&reduced);
        sections.push(SectionRow { said: section, x, radius: r.value, pitch, routes, local });
    }
    BladeRow {
        name: survey.blade_name(i),
        tip: said.tip_radius.as_ref().map(convert::estimate),
        angle: said.tip_angle.as_ref().map(convert::estimate),
        mean: Estimate::mean(sections.iter().filter_map(|s| s.pitch)),
        sections,
    }
}

fn pitches(blade: &BladeRow) -> BladePitch {
    let mut sections = Vec::new();
    for (station, s) in blade.sections.iter().enumerate() {
        let Some(pitch) = s.pitch else { continue };
        // The change along the chord, from the outer local pitches, which lie half a step inside the edges.
        let progression = match &s.local[..] {
            [first, .., last] if s.local.len() >= 3 => {
                let n = s.local.len() as f64;
                let stretch = n / (n - 1.0) / pitch.value;
                Some(Estimate::new((last.value - first.value) * stretch, first.sd.hypot(last.sd) * stretch))
            }
            _ => None,
        };
        sections.push(SectionPitch { station, radius: s.radius, pitch, by_ends: None, local: Vec::new(), progression });
    }
    BladePitch { sections, mean: blade.mean }
}

fn uneven(blades: &[BladeRow]) -> bool {
    let radii = |b: &BladeRow| -> Vec<f64> { b.sections.iter().filter(|s| s.pitch.is_some()).map(|s| s.x).collect() };
    let all: Vec<Vec<f64>> = blades.iter().map(radii).filter(|r| !r.is_empty()).collect();
    all.windows(2).any(|w| w[0].len() != w[1].len() || w[0].iter().zip(&w[1]).any(|(a, b)| (a - b).abs() > SAME_RADIUS))
}

/// Why the readings do not make a whole propeller. What a plain survey lacks is no fault of it and is said in one line.
fn trouble_in_words(trouble: Trouble, survey: &Survey) -> Option<String> {
    let blade = |i: usize| survey.blade_name(i);
    let place = |b: usize, s: Option<usize>| match s {
        Some(s) => format!("blade {}, section {}", blade(b), s + 1),
        None => format!("blade {}", blade(b)),
    };
    Some(match trouble {
        Trouble::BladeCount(_) if survey.blades.is_empty() => return None,
        Trouble::BladeCount(n) => format!("Areas and angles are not worked out: {n} blades."),
        Trouble::TooFewStations { .. } => "Areas, rake and skew want two radii or more on a blade.".to_owned(),
        Trouble::NoTipRadius => "Areas and ratios want a tip radius or a diameter.".to_owned(),
        Trouble::Unknown(q) => {
            format!("Areas, rake and skew are not worked out: no blade has its {} at two radii.", q.text())
        }
        Trouble::RadiiOutOfOrder { blade: b, station } => {
            format!("Areas are not worked out: the radii do not rise, {}.", place(b, Some(station)))
        }
        Trouble::RadiusOutside { blade: b, station } => {
            format!("Areas are not worked out: a radius in the hub or at the tip, {}.", place(b, Some(station)))
        }
        Trouble::NotPositive { blade: b, station, quantity, .. }
        | Trouble::Impossible { blade: b, station, quantity, .. } => {
            format!("Areas are not worked out: the {} cannot be, {}.", quantity.text(), place(b, station))
        }
        _ => "Areas are not worked out from these readings.".to_owned(),
    })
}
