//! Finds every fault in the shape of a body by walking it along the schemas of the API
//! document. Runs only after serde has refused the body, which stops at its first fault.

use bearwell_engine::catalogue::{RefusalDef, refusals};
use bearwell_engine::contract::Issue;
use bearwell_engine::quantity::UNIT_SETS;
use serde_json::Value;

use super::near::hint;
use super::pointer::Pointer;
use super::tree::Node;
use crate::schemas::Schemas;

/// Every fault in the shape of `node`, which ought to be a `root`.
pub fn walk(node: &Node, schemas: &Schemas, root: &Value) -> Vec<Issue> {
    let mut walker = Walker {
        schemas,
        issues: Vec::new(),
        in_table: false,
    };
    walker.value(node, root, &mut Pointer::default());
    walker.issues
}

pub(super) struct Walker<'a> {
    schemas: &'a Schemas,
    issues: Vec<Issue>,
    /// How long the lists of a table are follows from its columns.
    in_table: bool,
}

impl<'a> Walker<'a> {
    pub(super) fn fault(&mut self, pointer: String, code: &'static RefusalDef, detail: String) {
        self.issues.push(Issue::new(pointer, code, detail));
    }

    fn value(&mut self, node: &Node, schema: &'a Value, place: &mut Pointer) {
        let (schema, name) = self.schemas.resolve(schema);
        if *node == Node::Null && nullable(schema) {
            return;
        }
        if let Some(all) = schema["oneOf"].as_array() {
            let branches: Vec<&Value> = all.iter().filter(|b| b["type"] != "null").collect();
            return match branches[..] {
                // an optional member; a choice of one is a choice all the same
                [only] if all.len() > 1 => self.value(node, only, place),
                _ => self.choice(node, &branches, place),
            };
        }
        match (kind(schema), node) {
            ("object", Node::Object(members)) => {
                let outside = self.in_table;
                self.in_table = schema["x-table"].is_array();
                self.object(members, schema, place);
                if self.in_table {
                    self.table(members, &schema["x-table"], place);
                }
                self.in_table = outside;
            }
            ("array", Node::List(items)) => self.list(items, schema, place),
            ("string", Node::Text(text)) => self.text(text, schema, name, place),
            ("number", Node::Number(written)) => self.number(written, place),
            ("integer", Node::Number(written)) => self.integer(written, schema, place),
            ("boolean", Node::Bool) | ("", _) => {}
            (wanted, _) => self.wrong_type(node, wanted, place),
        }
    }

    fn wrong_type(&mut self, node: &Node, wanted: &str, place: &Pointer) {
        let wanted = match wanted {
            "object" => "an object",
            "array" => "a list",
            "string" => "a text",
            "integer" => "a whole number",
            "boolean" => "true or false",
            _ => "a number",
        };
        let detail = format!("{wanted} is expected, not {}", node.kind());
        self.fault(place.to_string(), &refusals::WRONG_TYPE, detail);
    }

    fn object(&mut self, members: &[(String, Node)], schema: &'a Value, place: &mut Pointer) {
        let known = schema["properties"].as_object();
        let required: Vec<&str> = schema["required"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(Value::as_str)
            .collect();
        for (at, (name, value)) in members.iter().enumerate() {
            if members[..at].iter().any(|(earlier, _)| earlier == name) {
                let detail = format!("`{name}` stands twice");
                self.fault(place.to(name), &refusals::DUPLICATE_MEMBER, detail);
                continue;
            }
            if let Some(inner) = known.and_then(|known| known.get(name)) {
                if *value != Node::Null || !required.contains(&name.as_str()) {
                    place.inside(name, |place| self.value(value, inner, place));
                }
                continue;
            }
            match &schema["additionalProperties"] {
                Value::Bool(false) => {
                    let names: Vec<&str> = known
                        .into_iter()
                        .flatten()
                        .map(|(name, _)| name.as_str())
                        .collect();
                    let detail = format!("`{name}` is not known here; {}", hint(name, &names));
                    self.fault(place.to(name), &refusals::UNKNOWN_MEMBER, detail);
                }
                inner => place.inside(name, |place| self.value(value, inner, place)),
            }
        }
        for name in required {
            let given = members
                .iter()
                .any(|(given, value)| given == name && *value != Node::Null);
            if !given {
                let detail = format!("`{name}` is required");
                self.fault(place.to_string(), &refusals::MISSING_MEMBER, detail);
            }
        }
    }

    fn list(&mut self, items: &[Node], schema: &'a Value, place: &mut Pointer) {
        // only a list of fixed length is refused for its length here; the others later
        let fixed = schema["minItems"]
            .as_u64()
            .filter(|_| schema["minItems"] == schema["maxItems"] && !self.in_table);
        if let Some(fixed) = fixed.map(|n| n as usize)
            && items.len() != fixed
        {
            let code = if items.len() < fixed {
                &refusals::LIST_TOO_SHORT
            } else {
                &refusals::LIST_TOO_LONG
            };
            let detail = format!("{} given, {fixed} needed", items.len());
            self.fault(place.to_string(), code, detail);
        }
        for (at, item) in items.iter().enumerate() {
            let inner = match &schema["prefixItems"][at] {
                Value::Null => &schema["items"],
                prefix => prefix,
            };
            place.inside(at, |place| self.value(item, inner, place));
        }
    }

    fn text(&mut self, text: &str, schema: &Value, name: Option<&str>, place: &Pointer) {
        let choices = words(schema);
        if choices.is_empty() || choices.contains(&text) {
            return;
        }
        match UNIT_SETS.iter().find(|set| Some(set.name) == name) {
            Some(set) => {
                let detail = set.unknown(text);
                self.fault(place.to_string(), &refusals::UNKNOWN_UNIT, detail);
            }
            None => self.unknown_choice(text, &choices, place.to_string()),
        }
    }

    fn unknown_choice(&mut self, got: &str, choices: &[&str], pointer: String) {
        let detail = format!("`{got}` is not a choice; {}", hint(got, choices));
        self.fault(pointer, &refusals::UNKNOWN_CHOICE, detail);
    }

    fn number(&mut self, written: &str, place: &Pointer) {
        if written.parse::<f64>().is_ok_and(f64::is_infinite) {
            let detail = format!("`{}` does not fit a double", short(written));
            let pointer = place.to_string();
            self.fault(pointer, &refusals::NUMBER_OUT_OF_RANGE, detail);
        }
    }

    fn integer(&mut self, written: &str, schema: &Value, place: &Pointer) {
        if written.contains(['.', 'e', 'E']) {
            let detail = format!("a whole number is expected, not `{}`", short(written));
            return self.fault(place.to_string(), &refusals::WRONG_TYPE, detail);
        }
        // what does not fit the type; the narrower range is looked at later
        let most = if schema["format"] == "int64" {
            u64::MAX
        } else {
            u64::from(u32::MAX)
        };
        let (code, limit) =
            if written.starts_with('-') && !written.trim_matches(['-', '0']).is_empty() {
                (&refusals::BELOW_MINIMUM, &schema["minimum"])
            } else if written.parse::<u64>().is_ok_and(|n| n <= most) {
                return;
            } else {
                (&refusals::ABOVE_MAXIMUM, &schema["maximum"])
            };
        let detail = format!("`{}` is out of range", short(written));
        let issue = Issue::new(place.to_string(), code, detail);
        self.issues.push(match limit {
            Value::Number(limit) => issue.limit(limit.to_string()),
            _ => issue,
        });
    }

    /// One of several alternatives: a word, or an object whose only member selects one.
    fn choice(&mut self, node: &Node, branches: &[&'a Value], place: &mut Pointer) {
        let words: Vec<&str> = branches.iter().flat_map(|b| words(b)).collect();
        let tagged: Vec<(&str, &'a Value)> = branches
            .iter()
            .filter_map(|b| b["properties"].as_object())
            .flatten()
            .map(|(tag, inner)| (tag.as_str(), inner))
            .collect();
        let tags: Vec<&str> = tagged.iter().map(|(tag, _)| *tag).collect();
        match node {
            Node::Text(text) if words.contains(&text.as_str()) => {}
            Node::Text(text) if !tags.contains(&text.as_str()) && !words.is_empty() => {
                self.unknown_choice(text, &words, place.to_string());
            }
            Node::Object(members) => match &members[..] {
                [(tag, Node::Null)] if tags.contains(&tag.as_str()) => {
                    let detail = format!("`{tag}` is null; it needs a value");
                    self.fault(place.to_string(), &refusals::MISSING_MEMBER, detail);
                }
                [(tag, inner)] => match tagged.iter().find(|(known, _)| known == tag) {
                    Some((_, schema)) => {
                        place.inside(tag, |place| self.value(inner, schema, place))
                    }
                    None => self.unknown_choice(tag, &tags, place.to_string()),
                },
                several => {
                    let detail = format!(
                        "exactly one member selects the alternative, {} given; known: {}",
                        several.len(),
                        tags.join(", ")
                    );
                    self.fault(place.to_string(), &refusals::ONE_CHOICE_ONLY, detail);
                }
            },
            _ => self.wrong_type(node, "object", place),
        }
    }
}

/// The one type a value may have, apart from null.
fn kind(schema: &Value) -> &str {
    match &schema["type"] {
        Value::String(one) => one,
        Value::Array(several) => several
            .iter()
            .filter_map(Value::as_str)
            .find(|kind| *kind != "null")
            .unwrap_or_default(),
        _ => "",
    }
}

fn nullable(schema: &Value) -> bool {
    let by_type = |schema: &Value| match &schema["type"] {
        Value::String(one) => one == "null",
        Value::Array(several) => several.iter().any(|kind| kind == "null"),
        _ => false,
    };
    let branches = schema["oneOf"].as_array();
    by_type(schema) || branches.is_some_and(|b| b.iter().any(by_type))
}

/// The texts a string schema accepts, if it lists them.
fn words(schema: &Value) -> Vec<&str> {
    let listed = schema["enum"].as_array().into_iter().flatten();
    listed.filter_map(Value::as_str).collect()
}

/// A number as written, cut where it is absurdly long.
fn short(written: &str) -> String {
    written.chars().take(40).collect()
}
