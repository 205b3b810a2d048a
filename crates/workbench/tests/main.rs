//! The local page, asked over a socket as a browser would.

mod bench;
mod forms;
mod handed;
mod hostile;
mod log;
mod many;
mod together;
mod views;
