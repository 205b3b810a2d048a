//! Every published check, in one binary.

mod hull_displacement;
mod hull_planing;
