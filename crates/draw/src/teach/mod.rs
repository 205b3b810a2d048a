//! Pictures that explain a term with the boat's own numbers.
//!
//! Each is a pure function of plain numbers or of the boat's own propeller. Where motion explains, `phase` (turns, any finite
//! number) gives one frame.
//!
//! | term | picture |
//! |---|---|
//! | parts | [`parts::picture`]`(&Sheet, &Drawn)` |
//! | pitch, slip | [`advance::picture`]`(&Sheet, &Advance)` |
//! | projected, developed, expanded area | [`areas::picture`]`(&Sheet, &Drawn)` |
//! | blade number | [`pulses::picture`]`(&Sheet, blades, phase)` |
//! | hand | [`hand::picture`]`(&Sheet, &Drawn)` |
//! | cup | [`cup::picture`]`(&Sheet, &Lip)` |
//! | rake | [`rake::picture`]`(&Sheet, &Drawn, degrees)` |
//! | skew | [`skew::picture`]`(&Sheet, &Drawn)` |
//! | ventilation against cavitation | [`air::picture`]`(&Sheet, &Drawn, immersion)` |
//!
//! Engine and propeller curves are those of the boat herself: [`crate::demand`].

pub mod advance;
pub mod air;
pub mod areas;
pub mod cup;
pub mod hand;
pub mod parts;
pub mod pulses;
pub mod rake;
pub mod skew;

use crate::pen::P;
use hydro::blade::{Cut, Outline, Shape};

/// An outline as a closed line, each point put where `place` says.
fn ring(outline: &Outline, place: impl Fn([f64; 2]) -> P) -> Vec<P> {
    outline.leading.iter().chain(outline.trailing.iter().rev()).map(|q| place(*q)).collect()
}

/// Face and back of a section, m: along the chord from the trailing edge, and off it toward the back; trailing edge first.
fn section(shape: &Shape, cut: &Cut) -> [Vec<[f64; 2]>; 2] {
    [0, 1].map(|side| {
        (0..=28)
            .map(|i| {
                let fraction = 0.5 * (1.0 + (std::f64::consts::PI * f64::from(i) / 28.0).cos());
                [cut.chord * (1.0 - fraction), shape.offset(cut, fraction)[side]]
            })
            .collect()
    })
}
