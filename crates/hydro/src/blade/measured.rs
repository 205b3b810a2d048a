//! A measured propeller: the middle and its spreads.

use super::estimate::Estimate;
use super::outline::expanded_area;
use super::pitch::{PitchTable, effective_pitch};
use super::propeller::{Blade, Propeller};
use super::section::Section;
use super::tip::Pull;
use super::trouble::Quantity;

/// Spread of one section: standard deviations, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SectionSpread {
    /// Of the pitch.
    pub pitch: f64,
    /// Of the chord, mid-chord held.
    pub chord: f64,
    /// Of the mid-chord's distance from the reference line (skew-back), chord held.
    pub skew_back: f64,
    /// Of the rake.
    pub rake: f64,
    /// Of the greatest thickness.
    pub thickness: f64,
}

/// What had to be assumed because nobody measured it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AssumedWhat {
    /// Drawn from this blade's other stations.
    FromNeighbours,
    /// The mean of the other blades at this radius.
    FromOtherBlades,
    /// Nothing measured on any blade: a usual value.
    Usual,
}

/// One assumed value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// Blade, from 0.
    pub blade: usize,
    /// Station of that blade, from 0 in order of radius, usual stations counted; `None` for the whole blade.
    pub station: Option<usize>,
    /// Radius of the station over that of the tip.
    pub x: Option<f64>,
    /// Which quantity.
    pub quantity: Quantity,
    /// How.
    pub what: AssumedWhat,
}

/// A measured propeller.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The middle.
    pub propeller: Propeller,
    /// Spread of each blade's sections, same order as `propeller.blades[..].sections`. The sections drawn at hub and tip show
    /// the spread of the drawing alone; that of the stations they were drawn from comes on top in every estimate.
    pub spreads: Vec<Vec<SectionSpread>>,
    /// Which sections (first) move which drawn ones (second) along, per blade.
    pub(super) pulls: Vec<Vec<(usize, usize, Pull)>>,
    /// Tip radius of each blade, m.
    pub tip_radii: Vec<Estimate>,
    /// Angle of each blade, rad.
    pub angles: Vec<Estimate>,
    /// Local, sectional, blade and propeller pitch as measured (stations without a pitch reading are not in it).
    pub pitch: PitchTable,
    /// Relative standard deviation common to all pitches.
    pub common_pitch_sd: f64,
    /// What was not measured.
    pub assumed: Vec<Assumed>,
}

/// One of the five spreads of a section.
#[derive(Clone, Copy)]
enum Part {
    Pitch,
    Chord,
    SkewBack,
    Rake,
    Thickness,
}

const PARTS: [Part; 5] = [Part::Pitch, Part::Chord, Part::SkewBack, Part::Rake, Part::Thickness];

impl SectionSpread {
    const fn of(&self, part: Part) -> f64 {
        match part {
            Part::Pitch => self.pitch,
            Part::Chord => self.chord,
            Part::SkewBack => self.skew_back,
            Part::Rake => self.rake,
            Part::Thickness => self.thickness,
        }
    }
}

/// The section with one of its measures moved by `by`, m.
fn moved(section: &Section, part: Part, by: f64) -> Section {
    let mut s = section.clone();
    match part {
        Part::Pitch => s.pitch += by,
        Part::Chord => {
            s.leading += 0.5 * by;
            s.trailing += 0.5 * by;
        }
        Part::SkewBack => {
            s.leading -= by;
            s.trailing += by;
        }
        Part::Rake => s.rake += by,
        Part::Thickness => {
            let thickness = s.thickness();
            if thickness > 0.0 {
                let factor = ((thickness + by) / thickness).max(0.0);
                for o in &mut s.offsets {
                    o.face *= factor;
                    o.back *= factor;
                }
            }
        }
    }
    s
}

/// Moves the tip, and with it a section that stands there.
fn move_tip(blade: &mut Blade, by: f64) {
    let old = blade.tip_radius;
    blade.tip_radius += by;
    if let Some(last) = blade.sections.last_mut()
        && last.radius >= old * (1.0 - 1e-9)
    {
        last.radius = blade.tip_radius;
    }
}

impl Measured {
    /// Diameter, m: twice the mean tip radius.
    #[must_use]
    pub fn diameter(&self) -> Estimate {
        Estimate::mean(self.tip_radii.iter().copied()).unwrap_or(Estimate::exact(0.0)).times(2.0)
    }

    /// Any quantity of the propeller with its spread: the quantity at the middle, and the root of the summed squares of
    /// its changes when each measured value is moved by its standard deviation (independent errors, first order).
    #[must_use]
    pub fn estimate(&self, quantity: impl Fn(&Propeller) -> f64) -> Estimate {
        let middle = quantity(&self.propeller);
        let mut work = self.propeller.clone();
        let mut variance = 0.0;
        for blade in 0..work.blades.len() {
            variance += self.variance_of_blade(blade, |b| {
                let kept = std::mem::replace(&mut work.blades[blade], b.clone());
                let value = quantity(&work);
                work.blades[blade] = kept;
                value - middle
            });
            if let (Some(a), Some(angle)) = (self.angles.get(blade), work.angles.get(blade).copied())
                && a.sd > 0.0
            {
                work.angles[blade] = angle + a.sd;
                variance += (quantity(&work) - middle).powi(2);
                work.angles[blade] = angle;
            }
        }
        if self.common_pitch_sd > 0.0 {
            for blade in &mut work.blades {
                scale_pitch(blade, 1.0 + self.common_pitch_sd);
            }
            variance += (quantity(&work) - middle).powi(2);
        }
        Estimate::new(middle, variance.sqrt())
    }

    /// A quantity of one blade alone with its spread; `None` if there is no such blade.
    #[must_use]
    pub fn estimate_of_blade(&self, blade: usize, quantity: impl Fn(&Blade) -> f64) -> Option<Estimate> {
        let one = self.propeller.blades.get(blade)?;
        let middle = quantity(one);
        let mut variance = self.variance_of_blade(blade, |b| quantity(b) - middle);
        if self.common_pitch_sd > 0.0 {
            let mut work = one.clone();
            scale_pitch(&mut work, 1.0 + self.common_pitch_sd);
            variance += (quantity(&work) - middle).powi(2);
        }
        Some(Estimate::new(middle, variance.sqrt()))
    }

    /// The pitch that acts, blade by blade, m; the error common to all is in each.
    #[must_use]
    pub fn effective_pitches(&self) -> Vec<Estimate> {
        let hub = self.propeller.hub.radius();
        (0..self.propeller.blades.len())
            .filter_map(|i| self.estimate_of_blade(i, |b| effective_pitch(b, hub)))
            .collect()
    }

    /// The pitch that acts on the whole propeller (mean of its blades), m.
    #[must_use]
    pub fn effective_pitch(&self) -> Estimate {
        self.mean_over_blades(effective_pitch)
    }

    /// Expanded area of all blades over the disc.
    #[must_use]
    pub fn expanded_area_ratio(&self) -> Estimate {
        let (hub, blades) = (self.propeller.hub.radius(), &self.propeller.blades);
        let areas: Vec<f64> = blades.iter().map(|b| expanded_area(b, hub)).collect();
        let (whole, diameter) = (areas.iter().sum::<f64>(), self.propeller.diameter());
        if diameter <= 0.0 {
            return Estimate::exact(0.0);
        }
        let ratio = |area: f64, diameter: f64| area / (0.25 * std::f64::consts::PI * diameter * diameter);
        let middle = ratio(whole, diameter);
        let mut variance = 0.0;
        for (i, blade) in blades.iter().enumerate() {
            // Only one blade moves at a time: the others' areas stand. Its tip moves the diameter.
            variance += self.variance_of_blade(i, |b| {
                let wider = 2.0 * (b.tip_radius - blade.tip_radius) / self.propeller.count();
                ratio(whole - areas[i] + expanded_area(b, hub), diameter + wider) - middle
            });
        }
        Estimate::new(middle, variance.sqrt())
    }

    fn mean_over_blades(&self, quantity: fn(&Blade, f64) -> f64) -> Estimate {
        let (hub, count) = (self.propeller.hub.radius(), self.propeller.count().max(1.0));
        let mut sum = Estimate::exact(0.0);
        let mut common = 0.0;
        for (i, blade) in self.propeller.blades.iter().enumerate() {
            let middle = quantity(blade, hub);
            let variance = self.variance_of_blade(i, |b| quantity(b, hub) - middle);
            sum = Estimate::new(sum.value + middle, sum.sd.hypot(variance.sqrt()));
            let mut scaled = blade.clone();
            scale_pitch(&mut scaled, 1.0 + self.common_pitch_sd);
            common += quantity(&scaled, hub) - middle;
        }
        sum.and_sd(common).times(count.recip())
    }

    /// Sum of the squares of the changes that `change` sees when each measure of a blade is moved by its spread.
    fn variance_of_blade(&self, blade: usize, mut change: impl FnMut(&Blade) -> f64) -> f64 {
        let mut work = self.propeller.blades[blade].clone();
        let mut variance = 0.0;
        let whole = &self.propeller.blades[blade].sections;
        let pulls = self.pulls.get(blade).map_or(&[][..], Vec::as_slice);
        for (i, spread) in self.spreads.get(blade).into_iter().flatten().enumerate().take(whole.len()) {
            for (k, part) in PARTS.into_iter().enumerate() {
                let sd = spread.of(part);
                if sd <= 0.0 {
                    continue;
                }
                let moves = || pulls.iter().filter(|(from, _, pull)| *from == i && pull.part == k);
                work.sections[i] = moved(&whole[i], part, sd);
                for (_, to, pull) in moves() {
                    work.sections[*to] = moved(&whole[*to], part, pull.weight * sd);
                }
                variance += change(&work).powi(2);
                work.sections[i].clone_from(&whole[i]);
                for (_, to, _) in moves() {
                    work.sections[*to].clone_from(&whole[*to]);
                }
            }
        }
        let tip = self.tip_radii.get(blade).map_or(0.0, |t| t.sd);
        if tip > 0.0 {
            move_tip(&mut work, tip);
            variance += change(&work).powi(2);
        }
        variance
    }
}

fn scale_pitch(blade: &mut Blade, factor: f64) {
    for s in &mut blade.sections {
        s.pitch *= factor;
    }
}
