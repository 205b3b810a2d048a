//! One file per command.

pub mod change;
pub mod choose;
pub mod completions;
pub mod diagnose;
pub mod draw;
pub mod explain;
pub mod fit;
pub mod judge;
pub mod new;
pub mod openwater;
pub mod order;
pub mod pair;
pub mod resistance;
pub mod sources;
pub mod survey;
pub mod trial;
pub mod workbench;
