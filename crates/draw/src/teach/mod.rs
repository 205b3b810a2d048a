//! Pictures that explain a term with the boat's own numbers.
//!
//! Each is a pure function of plain numbers. Where motion explains, `phase` (turns, any finite number) gives one frame.
//!
//! | term | picture |
//! |---|---|
//! | pitch, slip | [`advance::picture`]`(&Sheet, &Advance)` |
//! | blade number | [`pulses::picture`]`(&Sheet, blades, phase)` |

pub mod advance;
pub mod pulses;
