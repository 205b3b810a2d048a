//! What the views are told of the folder.

use super::{Bench, look};
use crate::follows::{Units, View};
use crate::pages::{self, Look};
use crate::store::Name;
use crate::views::Jobs;
use axum::http::HeaderMap;
use maud::Markup;
use std::collections::BTreeMap;
use words::Language;

impl Jobs for Bench {
    fn text(&self, name: &str) -> Option<String> {
        self.folder.read(&Name::of(name)?).ok()
    }

    fn view(&self, pairs: &BTreeMap<String, String>, headers: &HeaderMap) -> View {
        let usual = look(headers);
        let imperial = pairs.get("units").map_or(usual.imperial, |units| units == "imperial");
        View {
            language: pairs.get("language").and_then(|tag| Language::of_tag(tag)).unwrap_or(usual.language),
            units: if imperial { Units::Imperial } else { Units::Metric },
            width: View::width_for(pairs, headers),
        }
    }

    fn frame(&self, view: &View, title: &str, body: Markup) -> Markup {
        pages::frame(&Look { language: view.language, imperial: view.units == Units::Imperial }, title, body)
    }
}
