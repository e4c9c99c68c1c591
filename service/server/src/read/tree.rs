//! A JSON text as a tree that keeps what serde's own tree loses: repeated members, their
//! order, and numbers as they were written. Only for texts already known to be JSON;
//! used to explain a refusal, never to read a request.

use super::pointer::Pointer;

/// A JSON value.
#[derive(Debug, Clone, PartialEq)]
pub enum Node {
    Null,
    Bool,
    /// As written.
    Number(String),
    Text(String),
    List(Vec<Node>),
    Object(Vec<(String, Node)>),
}

impl Node {
    /// What kind of JSON value it is, for a sentence.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Null => "null",
            Self::Bool => "a boolean",
            Self::Number(_) => "a number",
            Self::Text(_) => "a text",
            Self::List(_) => "a list",
            Self::Object(_) => "an object",
        }
    }
}

/// The tree of a valid JSON text; the error names a text that cannot be decoded.
pub fn tree(text: &str) -> Result<Node, String> {
    let mut reader = Reader { text, at: 0 };
    reader.space();
    reader.value(&mut Pointer::default())
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
}

impl Reader<'_> {
    fn peek(&self) -> u8 {
        self.text.as_bytes().get(self.at).copied().unwrap_or(0)
    }

    fn space(&mut self) {
        while matches!(self.peek(), b' ' | b'\t' | b'\n' | b'\r') {
            self.at += 1;
        }
    }

    fn value(&mut self, place: &mut Pointer) -> Result<Node, String> {
        let node = match self.peek() {
            b'{' => self.object(place)?,
            b'[' => self.list(place)?,
            b'"' => Node::Text(self.string(place)?),
            b't' => self.word(4, Node::Bool),
            b'f' => self.word(5, Node::Bool),
            b'n' => self.word(4, Node::Null),
            _ => self.number(),
        };
        self.space();
        Ok(node)
    }

    fn word(&mut self, length: usize, node: Node) -> Node {
        self.at += length;
        node
    }

    fn number(&mut self) -> Node {
        let start = self.at;
        while matches!(self.peek(), b'0'..=b'9' | b'+' | b'-' | b'.' | b'e' | b'E') {
            self.at += 1;
        }
        Node::Number(self.text[start..self.at].to_owned())
    }

    fn string(&mut self, place: &Pointer) -> Result<String, String> {
        let start = self.at;
        self.at += 1;
        while !matches!(self.peek(), b'"' | 0) {
            self.at += if self.peek() == b'\\' { 2 } else { 1 };
        }
        self.at += 1;
        let written = self.text.get(start..self.at).unwrap_or_default();
        serde_json::from_str(written)
            .map_err(|_| format!("a text at `{place}` cannot be decoded: a lone surrogate"))
    }

    fn list(&mut self, place: &mut Pointer) -> Result<Node, String> {
        self.at += 1;
        self.space();
        let mut items = Vec::new();
        while !matches!(self.peek(), b']' | 0) {
            let item = place.inside(items.len(), |place| self.value(place))?;
            items.push(item);
            self.comma();
        }
        self.at += 1;
        Ok(Node::List(items))
    }

    fn object(&mut self, place: &mut Pointer) -> Result<Node, String> {
        self.at += 1;
        self.space();
        let mut members = Vec::new();
        while !matches!(self.peek(), b'}' | 0) {
            let name = self.string(place)?;
            self.space();
            self.at += 1; // the colon
            self.space();
            let value = place.inside(&name, |place| self.value(place))?;
            members.push((name, value));
            self.comma();
        }
        self.at += 1;
        Ok(Node::Object(members))
    }

    fn comma(&mut self) {
        if self.peek() == b',' {
            self.at += 1;
            self.space();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_repeats_order_and_numbers() {
        let node =
            tree(" {\"b\\u0041\" : [ 1e400 , -0.5 ], \"a\": {}, \"a\": null , \"t\":\"x\\\"y\" } ");
        let Ok(Node::Object(members)) = node else {
            panic!("{node:?}")
        };
        assert_eq!(
            members,
            [
                (
                    "bA".to_owned(),
                    Node::List(vec![
                        Node::Number("1e400".into()),
                        Node::Number("-0.5".into())
                    ])
                ),
                ("a".to_owned(), Node::Object(vec![])),
                ("a".to_owned(), Node::Null),
                ("t".to_owned(), Node::Text("x\"y".into())),
            ]
        );
    }

    #[test]
    fn a_lone_surrogate_is_named() {
        let found = tree(r#"{"a": ["\ud800"]}"#).unwrap_err();
        assert!(found.contains("`/a/0`"), "{found}");
    }
}
