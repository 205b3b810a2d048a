//! Completing what was not measured.

use super::estimate::Estimate;
use super::measured::{Assumed, AssumedWhat};
use super::spline::Spline;
use super::trouble::{Quantity, Trouble};

/// How one quantity is completed.
pub(super) struct Rule {
    /// Which.
    pub quantity: Quantity,
    /// Stations a blade needs to speak for itself.
    pub need: usize,
    /// Whether it ends at 0 at the tip and rounds off there (chords).
    pub rounds_off: bool,
    /// Spread of a value drawn from its neighbours or from the other blades, of the value and of the diameter. Ours: what
    /// blades of one propeller, and stations of one blade, usually differ by.
    pub gap: (f64, f64),
    /// Value and standard deviation over the diameter at `x = r/R` when no blade was measured. Ours.
    pub usual: Option<fn(f64) -> (f64, f64)>,
}

/// One quantity on all blades: `r/R` and value per station.
pub(super) type Columns = Vec<Vec<(f64, Option<Estimate>)>>;

impl Rule {
    fn abscissa(&self, x: f64) -> f64 {
        if self.rounds_off { -(1.0 - x).max(0.0).sqrt() } else { x }
    }

    fn curve(&self, known: &[(f64, Estimate)]) -> Spline {
        let tip = self.rounds_off.then_some((0.0, 0.0));
        Spline::through(known.iter().map(|(x, e)| (self.abscissa(*x), e.value)).chain(tip))
    }

    /// Fills every gap of `columns` and lists it.
    ///
    /// # Errors
    /// When no blade tells and there is no usual value.
    pub(super) fn fill(
        &self,
        columns: &Columns,
        diameter: f64,
        assumed: &mut Vec<Assumed>,
    ) -> Result<Vec<Vec<Estimate>>, Trouble> {
        let known: Vec<Vec<(f64, Estimate)>> =
            columns.iter().map(|c| c.iter().filter_map(|(x, e)| e.map(|e| (*x, e))).collect()).collect();
        let speak: Vec<Option<(Spline, f64)>> = known
            .iter()
            .map(|k| {
                let sd = Estimate::mean(k.iter().map(|p| Estimate::exact(p.1.sd)))?.value;
                (k.len() >= self.need).then(|| (self.curve(k), sd))
            })
            .collect();
        let mut filled = Vec::with_capacity(columns.len());
        for (blade, column) in columns.iter().enumerate() {
            let mut values = Vec::with_capacity(column.len());
            for (station, &(x, value)) in column.iter().enumerate() {
                if let Some(value) = value {
                    values.push(value);
                    continue;
                }
                let (value, what) = self.guess(x, &known[blade], speak[blade].as_ref(), &speak, diameter)?;
                assumed.push(Assumed { blade, station: Some(station), x: Some(x), quantity: self.quantity, what });
                values.push(value);
            }
            filled.push(values);
        }
        Ok(filled)
    }

    fn guess(
        &self,
        x: f64,
        known: &[(f64, Estimate)],
        own: Option<&(Spline, f64)>,
        speak: &[Option<(Spline, f64)>],
        diameter: f64,
    ) -> Result<(Estimate, AssumedWhat), Trouble> {
        let gap = |value: f64| (self.gap.0 * value).hypot(self.gap.1 * diameter);
        if let Some((curve, sd)) = own {
            // Beyond the outermost reading nothing is known of the slope.
            let (low, high) = (known.first().map_or(x, |p| p.0), known.last().map_or(x, |p| p.0));
            let held = if self.rounds_off { x } else { x.clamp(low, high) };
            let value = curve.at(self.abscissa(held));
            let far = 1.0 + 4.0 * (x - held).abs();
            return Ok((Estimate::new(value, sd.hypot(far * gap(value))), AssumedWhat::FromNeighbours));
        }
        let others: Vec<&(Spline, f64)> = speak.iter().flatten().collect();
        let mean =
            |x: f64| Estimate::mean(others.iter().map(|(curve, sd)| Estimate::new(curve.at(self.abscissa(x)), *sd)));
        if let Some(value) = mean(x) {
            return Ok((value.and_sd(gap(value.value)), AssumedWhat::FromOtherBlades));
        }
        let usual = self.usual.ok_or(Trouble::Unknown(self.quantity))?;
        let (value, sd) = usual(x);
        // A lone reading sets the size of the usual shape.
        let size = Estimate::mean(known.iter().filter_map(|(x, e)| {
            let at = usual(*x).0 * diameter;
            (at > 0.0).then(|| e.times(at.recip()))
        }));
        let sd = if size.is_some() { 0.5 * sd } else { sd };
        let value = value * size.map_or(1.0, |s| s.value);
        Ok((Estimate::new(value * diameter, sd * diameter), AssumedWhat::Usual))
    }
}
