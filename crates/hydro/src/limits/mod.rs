//! What a propeller must not be asked for: cavitation, blade loading, tip speed, immersion; and slip.
//!
//! | file | what |
//! |---|---|
//! | [`breakdown`] | thrust and torque left when cavitating, inside the balance |
//! | [`burrill`] | back cavitation by load and cavitation number |
//! | [`keller`] | least blade area |
//! | [`loading`] | thrust per blade area |
//! | [`tip_speed`], [`immersion`], [`slip`] | rules of thumb and definitions |

use crate::source::Method;

pub mod breakdown;
pub mod burrill;
pub mod immersion;
pub mod keller;
pub mod loading;
pub mod slip;
pub mod tip_speed;

pub use breakdown::Breakdown;

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &breakdown::METHOD,
    &burrill::METHOD,
    &burrill::METHOD_AREA,
    &keller::METHOD,
    &loading::METHOD,
    &slip::METHOD,
    &slip::METHOD_USUAL,
    &tip_speed::METHOD,
    &immersion::METHOD,
    &immersion::METHOD_LOSS,
];
