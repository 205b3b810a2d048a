//! Every published check, in one binary.
mod boats;
mod engine;
mod blade;
mod limits;
mod openwater;
mod running;
mod stern;
mod water;

mod hull_planing;

mod hull_displacement;
