//! Answers held against the published schema, by a reader of the keywords that it uses.

use serde_json::{Map, Value};

use crate::command::root;

/// Fails when an answer is not as `docs/answers.schema.json` says.
pub fn check(answer: &Value) {
    let text = std::fs::read_to_string(root().join("docs/answers.schema.json")).expect("the schema is there");
    let whole: Value = serde_json::from_str(&text).expect("the schema is JSON");
    if let Err(why) = (Schema { whole: &whole }).holds(&whole, answer, "$", &Map::new()) {
        panic!("the answer is not as the schema says: {why}");
    }
}

struct Schema<'a> {
    whole: &'a Value,
}

impl Schema<'_> {
    /// `known` are properties that schemas around this one have declared for the same object.
    fn holds(&self, schema: &Value, value: &Value, at: &str, known: &Map<String, Value>) -> Result<(), String> {
        let Some(schema) = schema.as_object() else { return Ok(()) };
        let mut declared = known.clone();
        declared.extend(schema.get("properties").and_then(Value::as_object).cloned().unwrap_or_default());
        let delegates = ["$ref", "oneOf", "anyOf"].iter().any(|key| schema.contains_key(*key));
        for (keyword, says) in schema {
            match keyword.as_str() {
                "$schema" | "title" | "description" | "format" | "$defs" | "properties" => {}
                "$ref" => {
                    let name =
                        says.as_str().and_then(|name| name.strip_prefix("#/$defs/")).ok_or("a foreign reference")?;
                    self.holds(&self.whole["$defs"][name], value, at, &declared)?;
                }
                "oneOf" | "anyOf" => {
                    let all = says.as_array().ok_or("not a list")?;
                    let tried: Vec<_> = all.iter().map(|one| self.holds(one, value, at, &declared)).collect();
                    let held = tried.iter().filter(|one| one.is_ok()).count();
                    if held == 0 || (keyword == "oneOf" && held > 1) {
                        return Err(format!("{at}: {held} of {keyword} hold: {tried:?}"));
                    }
                }
                "type" => {
                    let names: Vec<&str> = says
                        .as_array()
                        .map_or_else(|| vec![says], |all| all.iter().collect())
                        .iter()
                        .filter_map(|n| n.as_str())
                        .collect();
                    if !names.iter().any(|name| is(name, value)) {
                        return Err(format!("{at}: not {names:?}: {value}"));
                    }
                }
                "required" => {
                    let missing = says
                        .as_array()
                        .into_iter()
                        .flatten()
                        .filter_map(Value::as_str)
                        .find(|key| value.get(key).is_none());
                    if let Some(key) = missing {
                        return Err(format!("{at}: no {key}"));
                    }
                }
                "items" => {
                    for (index, item) in value.as_array().into_iter().flatten().enumerate() {
                        self.holds(says, item, &format!("{at}[{index}]"), &Map::new())?;
                    }
                }
                "prefixItems" => {
                    for (index, one) in says.as_array().into_iter().flatten().enumerate() {
                        self.holds(one, &value[index], &format!("{at}[{index}]"), &Map::new())?;
                    }
                }
                "enum" if !says.as_array().is_some_and(|all| all.contains(value)) => {
                    return Err(format!("{at}: {value} is not one of {says}"));
                }
                "const" if says != value => return Err(format!("{at}: {value} is not {says}")),
                "minimum" if value.as_f64() < says.as_f64() => return Err(format!("{at}: {value} below {says}")),
                "maximum" if value.as_f64() > says.as_f64() => return Err(format!("{at}: {value} above {says}")),
                "minItems" if value.as_array().map(|all| all.len() as u64) < says.as_u64() => {
                    return Err(format!("{at}: fewer than {says}"));
                }
                "maxItems" if value.as_array().map(|all| all.len() as u64) > says.as_u64() => {
                    return Err(format!("{at}: more than {says}"));
                }
                "enum" | "const" | "minimum" | "maximum" | "minItems" | "maxItems" => {}
                other => return Err(format!("{at}: the schema uses `{other}`, which this check does not read")),
            }
        }
        for (key, inner) in value.as_object().into_iter().flatten() {
            match declared.get(key) {
                Some(schema) => self.holds(schema, inner, &format!("{at}.{key}"), &Map::new())?,
                None if delegates => {}
                None => return Err(format!("{at}: {key} is not declared")),
            }
        }
        Ok(())
    }
}

fn is(name: &str, value: &Value) -> bool {
    match name {
        "object" => value.is_object(),
        "array" => value.is_array(),
        "string" => value.is_string(),
        "number" => value.is_number(),
        "integer" => value.is_u64() || value.is_i64(),
        "boolean" => value.is_boolean(),
        "null" => value.is_null(),
        _ => false,
    }
}

#[test]
fn the_check_can_fail() {
    let whole = serde_json::json!({
        "type": "object",
        "properties": { "a": { "type": "number" } },
        "required": ["a"]
    });
    let schema = Schema { whole: &whole };
    let holds = |value: Value| schema.holds(&whole, &value, "$", &Map::new());
    assert!(holds(serde_json::json!({ "a": 1 })).is_ok());
    assert!(holds(serde_json::json!({ "a": "1" })).is_err());
    assert!(holds(serde_json::json!({})).is_err());
    assert!(holds(serde_json::json!({ "a": 1, "b": 2 })).is_err());
}
