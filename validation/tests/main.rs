//! Every published check, in one binary.
mod blade;
mod boats;
mod engine;
mod limits;
mod openwater;
mod running;
mod stern;
mod water;

mod hull_planing;

mod hull_displacement;
mod survey;
