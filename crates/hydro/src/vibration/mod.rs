//! What shakes: orders, balance, hull pressure, singing, entrained water, and how a wake shakes the blades.
//!
//! | file | what |
//! |---|---|
//! | [`orders`] | shaft, blade and firing rates, beats, coincidences |
//! | [`balance`] | allowed unbalance |
//! | [`pressure`] | pulse on the hull above the propeller |
//! | [`entrained`] | water carried along by a vibrating propeller |
//! | [`singing`] | tone of the trailing edge |
//! | [`wake`] | harmonics of a wake, which of them reach shaft and bearings |
//! | [`gust`] | blade force in a wake by strips, and what skew does to it |

use crate::source::Method;

pub mod balance;
pub mod entrained;
pub mod gust;
pub mod orders;
pub mod pressure;
pub mod singing;
pub mod wake;

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &orders::METHOD,
    &orders::SHADOWS,
    &balance::METHOD,
    &pressure::METHOD,
    &entrained::METHOD,
    &singing::METHOD,
    &wake::METHOD,
    &gust::METHOD,
];
