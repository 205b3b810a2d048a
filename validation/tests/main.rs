//! Every published check, in one binary.
mod limits;
mod openwater;
mod water;
