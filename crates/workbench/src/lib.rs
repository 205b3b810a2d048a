//! The local page: routes, forms, views, a little script.
//!
//! | module | what |
//! |---|---|
//! | `store` | a folder of job files: atomic saves by key, history, undo, what could not be saved |
//! | `server` | routes, and who may ask |
//! | `pages` | the list of jobs, the page of a job, the frame they stand in |

pub mod pages;
pub mod server;
pub mod store;
