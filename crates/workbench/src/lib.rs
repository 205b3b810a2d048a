//! The local page: routes, forms, views, a little script.

pub mod explain;
pub mod follows;
pub mod views;
