//! Every published check, in one binary.
mod engine;
mod running;
mod stern;
mod water;
