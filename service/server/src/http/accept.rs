//! Which of the media types that can be had here the client wants most (RFC 9110,
//! section 12.5.1).

/// The media type to answer in; `None` when none of them is acceptable. Of equals the
/// first offered wins; an empty list accepts everything.
pub fn choose<'a>(header: &str, offered: &[&'a str]) -> Option<&'a str> {
    if header.trim().is_empty() {
        return offered.first().copied();
    }
    let mut best: Option<(f64, &str)> = None;
    for media in offered {
        let weight = weight(header, media);
        if weight > 0.0 && best.is_none_or(|(most, _)| weight > most) {
            best = Some((weight, media));
        }
    }
    best.map(|(_, media)| media)
}

/// The weight of the most specific range that matches.
fn weight(header: &str, media: &str) -> f64 {
    let kind = media.split('/').next().unwrap_or_default();
    let mut found = (0, 0.0);
    for range in header.split(',') {
        let mut parts = range.split(';').map(str::trim);
        let name = parts.next().unwrap_or_default();
        let specific = match name.split_once('/') {
            _ if name.eq_ignore_ascii_case(media) => 3,
            Some((k, "*")) if k.eq_ignore_ascii_case(kind) => 2,
            Some(("*", "*")) => 1,
            _ => continue,
        };
        let weight = parts
            .find_map(|p| p.strip_prefix("q=").or(p.strip_prefix("Q=")))
            .map_or(Some(1.0), |q| q.trim().parse().ok())
            .unwrap_or(0.0);
        if specific > found.0 {
            found = (specific, weight);
        }
    }
    found.1
}

#[cfg(test)]
mod tests {
    use super::choose;

    #[test]
    fn the_most_wanted_wins() {
        let offered = ["application/json", "image/svg+xml"];
        let get = |ranges| choose(ranges, &offered).unwrap_or("none");
        assert_eq!(get(""), "application/json");
        assert_eq!(get("*/*"), "application/json");
        assert_eq!(get("image/*"), "image/svg+xml");
        assert_eq!(get("Image/SVG+xml"), "image/svg+xml");
        assert_eq!(
            get("application/json;q=0.5, image/svg+xml"),
            "image/svg+xml"
        );
        assert_eq!(get("*/*;q=0.1, application/json;q=0"), "image/svg+xml");
        assert_eq!(get("text/csv, application/problem+json"), "none");
        assert_eq!(get("application/json;q=zero"), "none");
    }
}
