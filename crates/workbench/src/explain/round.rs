//! The propeller in the round: its mesh, and the page that turns it.

use crate::follows::{Known, View};
use draw::Drawn;
use hydro::blade::{self, Fineness, Mesh};
use job::Job;
use maud::{Markup, html};
use serde::Serialize;

/// Fine enough that facets do not show on a page, coarse enough for a phone to turn.
const FINENESS: Fineness = Fineness { radial: 20, chordwise: 12, around: 36 };

/// A body: points in tenths of a millimetre (x forward, y to port, z up) one after the other, and triangles.
#[derive(Serialize)]
struct Body {
    points: Vec<i32>,
    triangles: Vec<u32>,
}

#[derive(Serialize)]
struct Round {
    /// Radius, tenths of a millimetre.
    radius: i32,
    blades: Vec<Body>,
    hub: Body,
    /// 1 turns clockwise seen from astern.
    turns: i8,
    origin: String,
}

fn body(mesh: &Mesh) -> Body {
    let tenths = |metres: f64| (1e4 * metres).round() as i32;
    Body {
        points: mesh.vertices.iter().flatten().map(|m| tenths(*m)).collect(),
        triangles: mesh.triangles.iter().flatten().copied().collect(),
    }
}

/// The mesh of a job's propeller as JSON; `None` where the job says too little.
#[must_use]
pub fn mesh(job: &Job) -> Option<String> {
    let drawn = Drawn::of_job(job)?;
    let p = &drawn.propeller;
    let radius = p.blades.iter().map(|b| b.tip_radius).fold(0.0, f64::max);
    let round = Round {
        radius: (1e4 * radius).round() as i32,
        blades: (0..p.blades.len()).map(|i| body(&blade::blade_mesh(p, i, FINENESS))).collect(),
        hub: body(&blade::hub_mesh(&p.hub, FINENESS)),
        turns: if p.hand == blade::Hand::Left { -1 } else { 1 },
        origin: drawn.origin.clone(),
    };
    serde_json::to_string(&round).ok()
}

/// The page.
#[must_use]
pub fn round(view: &View, at: &str, known: &Known) -> Markup {
    let Some(drawn) = Drawn::of_job(known.prepared.job()) else {
        return html! { section.explain { h1 { (view.say("follows-blade-title")) } p { (view.say("follows-blade-none")) } } };
    };
    html! {
        section.explain {
            h1 { (view.say("follows-blade-title")) }
            p #blade-help { (view.say("follows-blade-drag")) }
            canvas.round #blade width="800" height="600" tabindex="0" role="application"
                aria-label=(view.say("follows-blade-label")) aria-describedby="blade-help" data-mesh=(format!("{at}/blade.json")) {}
            div.buttons role="group" aria-label=(view.say("follows-blade-label")) {
                button type="button" data-from="astern" { (view.say("follows-blade-from-astern")) }
                button type="button" data-from="ahead" { (view.say("follows-blade-from-ahead")) }
                button type="button" data-from="side" { (view.say("follows-blade-from-side")) }
                button type="button" data-nearer="1.2" aria-label=(view.say("follows-nearer")) { "+" }
                button type="button" data-nearer="0.8333" aria-label=(view.say("follows-farther")) { "\u{2212}" }
                button type="button" data-spin="" aria-pressed="false" { (view.say("follows-blade-spin")) }
            }
            ul.key {
                li { span.swatch.face aria-hidden="true" {} " " (view.say("follows-blade-face")) }
                li { span.swatch.back aria-hidden="true" {} " " (view.say("follows-blade-back")) }
            }
            p.quiet { (view.speak(&drawn.origin)) }
            p.more {
                a href=(format!("{at}/explain")) { (view.say("follows-all-terms")) } " "
                a href=(at) { (view.say("follows-to-job")) }
            }
        }
        script type="module" src="/assets/views/blade.js" {}
    }
}

#[cfg(test)]
mod tests {
    use super::mesh;

    #[test]
    fn a_mesh_holds_every_blade_and_stays_small() {
        let path = format!("{}/../../examples/gannet.toml", env!("CARGO_MANIFEST_DIR"));
        let job = job::Job::read(&std::fs::read_to_string(path).expect("a demo")).expect("well formed").job;
        let json = mesh(&job).expect("a propeller");
        let value: serde_json::Value = serde_json::from_str(&json).expect("JSON");
        assert_eq!(value["blades"].as_array().map(Vec::len), Some(4));
        let points = value["blades"][0]["points"].as_array().expect("points").len() as u64;
        let indices = value["blades"][0]["triangles"].as_array().expect("triangles");
        assert!(indices.iter().all(|i| i.as_u64().is_some_and(|i| 3 * i < points)));
        assert!(json.len() < 200_000, "{}", json.len());
    }
}
