//! Every published check, in one binary.
mod water;

mod hull_planing;

mod hull_displacement;
