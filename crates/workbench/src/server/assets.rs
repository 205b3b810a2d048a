//! The page's own files.

use axum::extract::Path;
use axum::http::header;
use axum::response::{IntoResponse, Response};

pub async fn asset(Path(file): Path<String>) -> Response {
    let script = "text/javascript; charset=utf-8";
    let style = "text/css; charset=utf-8";
    let (kind, text) = match file.as_str() {
        "page.css" => (style, include_str!("../../assets/page.css").to_owned()),
        "pictures.css" => (style, draw::style_sheet()),
        "page.js" => (script, include_str!("../../assets/page.js").to_owned()),
        _ => return super::missing(),
    };
    ([(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, "no-cache")], text).into_response()
}
