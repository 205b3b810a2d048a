//! Pictures as SVG in one visual language, and blades as STL and DXF.
//!
//! Each picture is a function from an answer of `counsel` (or a blade of `hydro`) to a [`Picture`]: a whole SVG document
//! without references to anything outside, that stands alone with its sentence, boat and date. The same input gives the
//! same bytes. Colours are CSS variables (`--fw-ink`, `--fw-second`, `--fw-paper`, `--fw-water`, `--fw-lead`) with the
//! light sheet's as fallbacks: a page sets them for its dark side; a file is [`Picture::resolved`] to either.

mod axis;
pub mod bore;
pub mod causes;
pub mod cavitation;
pub mod demand;
pub mod dxf;
pub mod flow;
pub mod known;
mod labels;
mod measure;
mod pen;
pub mod place;
#[cfg(feature = "png")]
pub mod png;
pub mod propeller;
pub mod rates;
mod rows;
pub mod shaped;
mod sheet;
pub mod shortlist;
pub mod speeds;
pub mod stl;
pub mod stretches;
mod style;
pub mod teach;
pub mod walk;
mod words;

pub use propeller::Drawn;
pub use sheet::{Picture, Sheet};
pub use style::Theme;
pub use style::sheet as style_sheet;
