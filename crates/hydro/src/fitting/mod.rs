//! The propeller on its shaft and in its place: shaft, key, clearance, blade strength.
//!
//! | file | what |
//! |---|---|
//! | [`shaft`] | diameter by three published rules, safety factor of a given shaft, torque |
//! | [`metals`] | shaft and propeller metals |
//! | [`whirling`] | bearing spacing and the first whirling speed |
//! | [`keys`] | parallel keys, and what a key carries |
//! | [`clearance`] | clearances round the propeller by rule |
//! | [`strength`] | root stress of a blade from first principles |
//! | [`sailing`] | drag of a propeller under sail |

use crate::source::Method;

pub mod clearance;
pub mod keys;
pub mod metals;
pub mod sailing;
pub mod shaft;
pub mod strength;
pub mod whirling;

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &shaft::HANDBOOK,
    &shaft::IACS,
    &shaft::TP11717,
    &whirling::SPACING,
    &whirling::METHOD,
    &keys::METHOD,
    &clearance::LLOYDS,
    &clearance::HANDBOOK,
    &clearance::TRADE,
    &strength::METHOD,
    &sailing::METHOD,
];
