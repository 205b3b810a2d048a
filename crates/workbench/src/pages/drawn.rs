//! The propeller drawn beside its fields: as surveyed, else of a series by what is stated.

use super::Look;
use crate::follows::View;
use counsel::Change;
use draw::shaped::{Bend, shaped};
use job::Job;
use maud::{Markup, PreEscaped, html};

/// Beside the fields there is no room for more, px.
const WIDTH: f64 = 340.0;

/// The drawing of a job file's propeller; what is missing for one, in words.
#[must_use]
pub fn drawn(look: &Look, text: &str, width: Option<f64>) -> Markup {
    let job = Job::read(text).map(|read| read.job).unwrap_or_default();
    let Some(drawn) = shaped(&job, &Change::default(), Bend::default()) else {
        return html! { p.quiet { (look.say("workbench-drawn-none")) } };
    };
    let date = crate::follows::last_date(&job);
    let width = width.filter(|w| w.is_finite()).unwrap_or(WIDTH);
    let sheet = draw::Sheet { boat: &job.title, date: &date, width, language: look.language };
    html! { (PreEscaped(View::bare(&draw::propeller::picture(&sheet, &drawn).svg))) }
}
