//! What water does: hull resistance, wake, propeller open water, engine, drive and the running point where they meet.
//!
//! Everything here is SI (metres, kilograms, seconds, newtons, watts, pascals, radians unless a name says `_deg`,
//! revolutions per second for shaft and engine speed) and pure: values in, values out, no files, clocks or printing.
//! Each published method has one file, and each file carries a [`source::Method`] record that says what it computes,
//! from which publication, in which range, and how far to trust it. Results computed outside a method's tested range
//! come back with a [`note::Note`] that travels with them.

pub mod blade;
pub mod drive;
pub mod engine;
pub mod fitting;
pub mod hull;
pub mod limits;
pub mod note;
pub mod numeric;
pub mod openwater;
pub mod running;
pub mod source;
pub mod speed;
pub mod stern;
pub mod vibration;
pub mod water;
