//! A day of the calendar as a request carries it. No clock is read anywhere: a rule that
//! needs today's date takes it from the request.

use serde::{Deserialize, Serialize};
use validator::{Validate, ValidationError, ValidationErrors};

use crate::text::SELF;

/// A day as `YYYY-MM-DD` (ISO 8601), from 1900 to 2200.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(
    feature = "openapi",
    schema(min_length = 10, max_length = 10, pattern = r"^\d{4}-\d{2}-\d{2}$")
)]
#[serde(transparent)]
pub struct IsoDate(pub String);

impl IsoDate {
    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    fn day(&self) -> Option<time::Date> {
        let parts: Vec<&str> = self.0.split('-').collect();
        let [year, month, day] = parts[..] else {
            return None;
        };
        let digits = |text: &str, length: usize| {
            (text.len() == length && text.bytes().all(|b| b.is_ascii_digit()))
                .then(|| text.parse::<u16>().ok())
                .flatten()
        };
        let (year, month, day) = (digits(year, 4)?, digits(month, 2)?, digits(day, 2)?);
        let month = time::Month::try_from(u8::try_from(month).ok()?).ok()?;
        let date = time::Date::from_calendar_date(i32::from(year), month, u8::try_from(day).ok()?);
        date.ok().filter(|_| (1900..=2200).contains(&year))
    }

    /// Days from this day until another; negative when that one is earlier. None where either
    /// is no day, which validation has refused before.
    pub fn days_until(&self, other: &IsoDate) -> Option<i64> {
        let days = other.day()?.to_julian_day() - self.day()?.to_julian_day();
        Some(i64::from(days))
    }
}

impl Validate for IsoDate {
    fn validate(&self) -> Result<(), ValidationErrors> {
        if self.day().is_some() {
            return Ok(());
        }
        let mut error = ValidationError::new("date");
        error.message = Some("a day as YYYY-MM-DD from 1900 to 2200 is expected".into());
        let mut all = ValidationErrors::new();
        all.add(SELF, error);
        Err(all)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn date(text: &str) -> IsoDate {
        IsoDate(text.to_owned())
    }

    #[test]
    fn days_are_counted_over_leap_years() {
        let days = |a, b| date(a).days_until(&date(b));
        assert_eq!(days("2024-02-28", "2024-03-01"), Some(2));
        assert_eq!(days("2026-02-28", "2026-03-01"), Some(1));
        assert_eq!(days("2025-05-10", "2026-05-10"), Some(365));
        assert_eq!(days("2026-05-10", "2026-05-01"), Some(-9));
    }

    #[test]
    fn what_is_no_day_is_refused() {
        for text in [
            "2026-02-29",
            "2026-13-01",
            "2026-1-01",
            "26-01-01",
            "2026-01-01T00:00",
            "2026/01/01",
            "",
            "1899-12-31",
            "+026-01-01",
        ] {
            assert!(date(text).validate().is_err(), "{text}");
        }
        assert!(date("2024-02-29").validate().is_ok());
    }
}
