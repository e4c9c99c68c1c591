//! The examples of `openapi/examples`, built into the program: requests with the answers
//! they gave when they were last approved.

/// One example.
pub struct Example {
    /// The calculation it is for.
    pub noun: &'static str,
    /// Its name: the file's without its ending.
    pub name: &'static str,
    /// It must be refused.
    pub refused: bool,
    /// The request.
    pub request: &'static [u8],
    /// The same request in CSV, if it stands beside it.
    pub csv: Option<&'static [u8]>,
    /// What was answered, if it was approved.
    pub golden: Option<&'static [u8]>,
}

include!(concat!(env!("OUT_DIR"), "/examples.rs"));

/// The request of an example that is answered.
pub fn request(noun: &str, name: &str) -> Option<&'static [u8]> {
    EXAMPLES
        .iter()
        .find(|e| e.noun == noun && e.name == name && !e.refused)
        .map(|e| e.request)
}

/// The same request in CSV.
pub fn csv(noun: &str, name: &str) -> Option<&'static [u8]> {
    EXAMPLES
        .iter()
        .find(|e| e.noun == noun && e.name == name && !e.refused)
        .and_then(|e| e.csv)
}

/// The shortest request of a calculation that is answered.
pub fn shortest(noun: &str) -> Option<&'static [u8]> {
    EXAMPLES
        .iter()
        .filter(|e| e.noun == noun && !e.refused)
        .map(|e| e.request)
        .min_by_key(|request| request.len())
}
