//! A JSON pointer (RFC 6901) that grows and shrinks while a value is walked.

use std::fmt;

/// A place in a JSON text.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Pointer(String);

impl Pointer {
    /// Works on the member or element called `part`.
    pub fn inside<T>(&mut self, part: impl fmt::Display, work: impl FnOnce(&mut Self) -> T) -> T {
        let length = self.0.len();
        self.push(&part.to_string());
        let result = work(self);
        self.0.truncate(length);
        result
    }

    fn push(&mut self, part: &str) {
        self.0.push('/');
        for c in part.chars() {
            match c {
                '~' => self.0.push_str("~0"),
                '/' => self.0.push_str("~1"),
                c => self.0.push(c),
            }
        }
    }

    /// The pointer to the member or element called `part`.
    pub fn to(&self, part: impl fmt::Display) -> String {
        let mut all = self.clone();
        all.push(&part.to_string());
        all.0
    }

    /// The parts of a pointer, decoded.
    pub fn parts(pointer: &str) -> impl Iterator<Item = String> {
        pointer
            .split('/')
            .skip(1)
            .map(|part| part.replace("~1", "/").replace("~0", "~"))
    }
}

impl fmt::Display for Pointer {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn escapes_and_decodes() {
        let mut p = Pointer::default();
        let text = p.inside("a/b~c", |p| p.to(3));
        assert_eq!(text, "/a~1b~0c/3");
        assert_eq!(p.to_string(), "");
        let parts: Vec<_> = Pointer::parts(&text).collect();
        assert_eq!(parts, ["a/b~c", "3"]);
        assert_eq!(Pointer::parts("").count(), 0);
    }
}
