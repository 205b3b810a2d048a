//! Every published check, in one binary.
mod water;
