//! The pages.

mod drawn;
mod field;
mod frame;
mod job;
mod layout;
mod list;
mod log;
mod new;
mod papers;

pub use drawn::drawn;
pub use field::{label, why, with_source};
pub use frame::{Look, frame, refused};
pub use job::{Open, history, job};
pub use list::jobs;
pub use log::{Brought, log};
pub use new::new;
pub use papers::{no_paper, papers};
