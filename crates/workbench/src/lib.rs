//! The local page: routes, forms, views, a little script.
//!
//! | module | what |
//! |---|---|
//! | `store` | a folder of job files: atomic saves by key, history, undo, what could not be saved |
//! | `server` | routes, and who may ask |
//! | `pages` | the list of jobs, the page of a job, the frame they stand in |
//! | `follows` | what follows from a job: verdict, findings, changes tried |
//! | `explain` | the trade's terms on this boat, the propeller in the round |
//! | `views` | routes of the last two |

pub mod explain;
pub mod follows;
pub mod pages;
pub mod server;
pub mod store;
pub mod views;
