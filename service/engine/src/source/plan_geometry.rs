//! References: plan geometry, from form lines to centre lines, and openings.

use super::references;

references! { PLAN_GEOMETRY:
    FORM_LINE_GEOMETRY = "form_line_geometry", "Plane geometry", "intersection of lines parallel to the sides", Derived, "Tested by moving lines back out, by areas and by turned and mirrored plans.";
    HEADER_STATICS = "header_statics", "Statics", "reactions of a simple beam", Derived, "A header over an opening carries to its two jambs; force and moment of what it carries are kept.";
}
