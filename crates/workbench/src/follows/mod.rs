//! What follows from a job: the verdict and the picture that proves it, findings, what to measure, what a change would do.
//!
//! | file | what |
//! |---|---|
//! | `crowds` | weighed crowds kept in memory, so that a slider only moves the propeller |
//! | `asked` | a change as the sliders and the address say it |
//! | `panel` | the whole right side |
//! | `tried` | a change, before and after, with its pictures |
//! | `sliders` | the form of the changes |
//! | `causes`, `shortlist`, `fits` | what takes longer, asked for on its own |
//! | `origin` | where a number comes from |

pub mod asked;
mod causes;
mod crowds;
mod fits;
mod origin;
mod panel;
mod shortlist;
mod sliders;
mod tried;
mod view;

pub use asked::Asked;
pub use causes::causes;
pub use crowds::{Crowds, Known};
pub use fits::fits;
pub use origin::methods;
pub(crate) use panel::last_date;
pub use panel::{lacking, panel};
pub use shortlist::shortlist;
pub(crate) use sliders::one as one_slider;
pub use tried::{drawing, tried};
pub use view::{Units, View};
