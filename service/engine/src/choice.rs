//! Range checks inside "one of these" members, which the derive does not reach.

/// Implements `Validate` for an externally tagged enum whose variants each hold one
/// value that can be validated; the tag becomes part of the path.
macro_rules! validate_choice {
    ($name:ty { $($variant:ident = $tag:literal),+ $(,)? } $(plain { $($plain:ident),+ $(,)? })?) => {
        impl validator::Validate for $name {
            fn validate(&self) -> Result<(), validator::ValidationErrors> {
                let (tag, inner): (&'static str, _) = match self {
                    $(Self::$variant(inner) => ($tag, validator::Validate::validate(inner)),)+
                    $($(Self::$plain => return Ok(()),)+)?
                };
                inner.map_err(|errors| {
                    let mut all = validator::ValidationErrors::new();
                    all.errors_mut().insert(
                        std::borrow::Cow::Borrowed(tag),
                        validator::ValidationErrorsKind::Struct(Box::new(errors)),
                    );
                    all
                })
            }
        }
    };
}
pub(crate) use validate_choice;
