//! Explaining the trade's terms with the owner: in words, with pictures of their propeller and something to move.
//!
//! | file | what |
//! |---|---|
//! | `text` | a term in words, with the boat's numbers |
//! | `page` | the list of terms, and the page of one |
//! | `picture` | which picture shows a term |
//! | `round` | the propeller in the round |

mod page;
mod picture;
mod round;
mod text;

pub use page::{page, terms, unread};
pub use round::{mesh, round};
pub use text::{Explained, explained, line, title};
