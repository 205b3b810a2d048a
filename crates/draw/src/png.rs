//! Pictures as PNG.

use crate::sheet::Picture;
use crate::style::Theme;
use resvg::{tiny_skia, usvg};
use std::sync::{Arc, OnceLock};

/// Why there is no PNG.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoPng(String);

impl std::fmt::Display for NoPng {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "the picture cannot be turned into points: {}", self.0)
    }
}

impl std::error::Error for NoPng {}

/// The picture as PNG with the system's fonts, `scale` points to a pixel (held in 0.25 to 4).
///
/// # Errors
/// When the rasteriser refuses.
pub fn png(picture: &Picture, scale: f32, theme: Theme) -> Result<Vec<u8>, NoPng> {
    static FONTS: OnceLock<Arc<usvg::fontdb::Database>> = OnceLock::new();
    let fonts = FONTS.get_or_init(|| {
        let mut fonts = usvg::fontdb::Database::new();
        fonts.load_system_fonts();
        Arc::new(fonts)
    });
    // `system-ui` is no family the rasteriser knows.
    let family = fonts
        .faces()
        .find(|f| f.families.iter().any(|(name, _)| name == "DejaVu Sans"))
        .map_or("sans-serif", |_| "DejaVu Sans");
    let options =
        usvg::Options { fontdb: Arc::clone(fonts), font_family: family.to_owned(), ..usvg::Options::default() };
    let refused = |e: String| NoPng(e);
    let tree = usvg::Tree::from_str(&picture.resolved(theme), &options).map_err(|e| refused(e.to_string()))?;
    let scale = if scale.is_finite() { scale.clamp(0.25, 4.0) } else { 1.0 };
    let size = tree.size();
    let points = |length: f32| (length * scale).ceil().clamp(1.0, 16_000.0) as u32;
    let mut map = tiny_skia::Pixmap::new(points(size.width()), points(size.height()))
        .ok_or_else(|| refused("it has no size".to_owned()))?;
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale, scale), &mut map.as_mut());
    map.encode_png().map_err(|e| refused(e.to_string()))
}
