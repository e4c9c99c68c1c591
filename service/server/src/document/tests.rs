//! Rules of the API document.
