//! The program as its users meet it: one binary, a module per concern.

mod answers;
mod bad_input;
mod command;
mod draw;
mod explain;
mod help;
mod new;
mod pages;
mod schema;
mod survey;
mod trial;
mod workbench;
