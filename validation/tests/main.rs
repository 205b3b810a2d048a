//! Every published check, in one binary.
mod blade;
mod boats;
mod engine;
mod fitting;
mod limits;
mod openwater;
mod questions;
mod running;
mod stern;
mod synthetic;
mod trade;
mod vibration;
mod water;

mod hull_planing;

mod hull_displacement;
mod survey;
