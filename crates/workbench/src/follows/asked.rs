//! A change as an address says it: SI values, words of the job file. What cannot be read or cannot exist is left out.

use counsel::Change;
use draw::shaped::Bend;
use job::words::Word;
use job::{Cup, Growth};
use std::collections::BTreeMap;

/// What was asked.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Asked {
    /// The change.
    pub change: Change,
    /// What only the drawing shows.
    pub bend: Bend,
}

impl Asked {
    /// From the pairs of an address or a form.
    #[must_use]
    pub fn of(pairs: &BTreeMap<String, String>) -> Asked {
        let value = |key: &str, low: f64, high: f64| {
            let value: f64 = pairs.get(key)?.trim().parse().ok()?;
            (low..=high).contains(&value).then_some(value)
        };
        let cup = pairs.get("cup").and_then(|w| Cup::from_word(w));
        let growth = |key: &str| pairs.get(key).and_then(|w| Growth::from_word(w));
        Asked {
            change: Change {
                diameter: value("diameter", 0.05, 3.0),
                pitch: value("pitch", 0.03, 4.0),
                blades: value("blades", 2.0, 7.0).map(|z| z.round() as u8),
                area_ratio: value("area", 0.15, 1.3),
                cup,
                reduction: value("ratio", 0.5, 8.0),
                displacement: value("weight", 50.0, 500_000.0),
                hull_growth: growth("growth"),
                blade_growth: growth("blade-growth"),
            },
            bend: Bend { rake: value("rake", -30.0, 45.0), skew: value("skew", -10.0, 90.0) },
        }
    }

    /// As pairs of an address.
    #[must_use]
    pub fn address(&self) -> String {
        let c = &self.change;
        let mut pairs: Vec<String> = Vec::new();
        for (key, value) in [
            ("diameter", c.diameter),
            ("pitch", c.pitch),
            ("blades", c.blades.map(f64::from)),
            ("area", c.area_ratio),
            ("ratio", c.reduction),
            ("weight", c.displacement),
            ("rake", self.bend.rake),
            ("skew", self.bend.skew),
        ] {
            pairs.extend(value.map(|v| format!("{key}={v}")));
        }
        pairs.extend(c.cup.map(|w| format!("cup={}", w.word())));
        pairs.extend(c.hull_growth.map(|w| format!("growth={}", w.word())));
        pairs.extend(c.blade_growth.map(|w| format!("blade-growth={}", w.word())));
        pairs.join("&")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(list: &[(&str, &str)]) -> BTreeMap<String, String> {
        list.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect()
    }

    #[test]
    fn what_cannot_exist_is_left_out() {
        let asked = Asked::of(&pairs(&[("pitch", "0.25"), ("diameter", "NaN"), ("blades", "90"), ("cup", "<script>")]));
        assert_eq!(asked.change, Change { pitch: Some(0.25), ..Change::default() });
    }

    #[test]
    fn an_address_is_read_back_as_it_was() {
        let asked = Asked::of(&pairs(&[
            ("pitch", "0.2286"),
            ("blades", "4"),
            ("cup", "medium"),
            ("weight", "7000"),
            ("skew", "25"),
        ]));
        let address = asked.address();
        let back: BTreeMap<String, String> =
            address.split('&').filter_map(|p| p.split_once('=')).map(|(k, v)| (k.to_owned(), v.to_owned())).collect();
        assert_eq!(Asked::of(&back), asked);
    }
}
