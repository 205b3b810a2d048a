//! Bands as strips in rows over one scale.

use crate::axis::Scale;
use crate::pen::Pen;
use crate::style::HALF;
use counsel::report::Band;

/// A band as a strip: 80 %, its inner half, the middle as a stroke.
pub fn strip(pen: &mut Pen, scale: &Scale, band: &Band, y: f64, half_height: f64) {
    for (class, share, h) in [("a", 1.0, half_height), ("b", HALF, half_height)] {
        let (x0, x1) = (
            scale.held(band.middle + share * (band.low - band.middle)),
            scale.held(band.middle + share * (band.high - band.middle)),
        );
        let (x0, x1) = if x1 - x0 < 1.0 { (x0 - 0.5, x1 + 0.5) } else { (x0, x1) };
        pen.shape(class, &[[x0, y - h], [x1, y - h], [x1, y + h], [x0, y + h]]);
    }
    let x = scale.held(band.middle);
    pen.line("m", [x, y - half_height - 2.0], [x, y + half_height + 2.0]);
}
