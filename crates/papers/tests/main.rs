//! The papers as they are handed over: one binary, a module per concern.

mod boats;
mod pages;
#[cfg(feature = "pdf")]
mod pdf;
mod spanish;
mod strange;
