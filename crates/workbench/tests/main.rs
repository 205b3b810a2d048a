//! One binary for all tests of this crate.

mod views;
