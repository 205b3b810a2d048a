//! Every published check, in one binary.
mod blade;
mod limits;
mod openwater;
mod engine;
mod running;
mod stern;
mod water;

mod hull_planing;

mod hull_displacement;
mod survey;
