//! Codes of `pile-relocation`, beside their texts. Those of the plan itself are in `layout`;
//! codes shared by all calculations are in `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        PLAN_STANDS = "relocation_plan_stands", "Beams that have too few piles left to stand, against none.";
        OFF_LINE_ALLOWANCE = "off_line_allowance", "Distance of a pile's centre off the line of its beam, at most what the design allows for; beyond it the engineer of record decides, and the verdict stays open.";
        PILE_WITHIN_BEAM = "pile_within_beam_width", "Distance of a pile's centre off the line of its beam, at most half the width of the beam.";
        MISLOCATION_OVERLOAD = "mislocation_overload", "Greatest compression of a pile that a mislocation overloads, against 110 % of its allowable capacity; in place of `pile_compression` where the rule was named and nobody meant to move the pile.";
        HEAD_PLATE_COVER = "head_plate_cover", "Distance from the edge of the plate on a pile's head to the form, at least the cover.";
        PILE_HEAD_MOMENT = "pile_head_moment", "What a pile off its line takes of the moment this makes, against the bending strength of shaft and head.";
        ECCENTRIC_TORQUE = "eccentric_beam_torque", "Torque of a beam beside a pile off its line, with the greatest torque of the analysis where torsion is included, against its strength.";
        STRENGTH_UNKNOWN = "relocation_beam_strength", "Whether bending and shear strength of a beam are known whose longest span grows by more than 10 %.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        OFF_LINE_USED = "off_line_allowance_used", "Some piles stand off their line within what the design allows for; the allowance is used up that far and is no licence to move piles.";
        SPACING_UNKNOWN = "relocation_spacing_unknown", "Piles were moved or added and no least distance between piles was sent, nor a helix; it is not judged.";
        OVERLOAD_TAKEN = "mislocation_overload_taken", "Some piles carry more than their allowable load by a mislocation that nobody meant.";
        OVERLOAD_NOT_TAKEN = "mislocation_overload_not_taken", "Some piles carry more than their allowable load and the rule for mislocation was named, but does not apply to them.";
        NO_OBSTRUCTION = "relocation_no_obstruction", "The pile is lost and what was in the way was not sent; places right beside the old one are taken as free.";
        WAYS_OUT_INCOMPLETE = "relocation_ways_out_incomplete", "The search for ways out stopped at its limit of work; some places were not looked at.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        PILES_NOT_GIVEN = "relocation_piles_not_given", "The plan to be changed has no given piles; send what the search found as `piles.given`.";
        UNKNOWN_PILE = "relocation_unknown_pile", "No pile of the plan has this label.";
        UNKNOWN_BEAM = "relocation_unknown_beam", "No beam of the plan has this label.";
        EVENT_TWICE = "relocation_event_twice", "Two events are about one pile or one beam; send the one that holds.";
        NOTHING_CHANGES = "relocation_nothing_changes", "The event does not say what changes.";
        BEAM_NEEDED = "relocation_beam_needed", "The pile stands on several beams; the event does not say along which it moves, or off which line it stands.";
        NOT_ON_BEAM = "relocation_not_on_beam", "The pile does not stand on this beam.";
        MOVED_OFF_BEAM = "relocation_moved_off_beam", "The pile would stand beyond the end of its beam, or in an opening without a beam.";
        CAPACITY_RAISED = "relocation_capacity_raised", "More is counted on than the pile carried before, and no reason is given.";
        NOT_STRENGTHENED = "relocation_not_strengthened", "The beam cannot be made stronger by an event: its strength is that of a section, or it is the side of an outline.";
        NO_PILE_LEFT = "relocation_no_pile_left", "No pile would be left.";
        OVERLOAD_WITH_FACTORED = "relocation_overload_with_factored", "The rule for overload by mislocation is one for allowable loads; `limit_states` has none.";
        NO_PILE_FOR_WAYS_OUT = "relocation_no_pile_for_ways_out", "No event is about a pile for which ways out could be sought; name one.";
        OBSTRUCTION_COVERS_BEAMS = "relocation_obstruction_covers_beams", "The obstruction with its clearance covers every beam on which the pile stood; no place is left.";
        TYPE_NOT_OFFERED = "relocation_type_not_offered", "A pile takes a type, and the plan has no `pile_types`.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        RELOCATION = "pile_relocation", version 1, [IBC_1810_3_1_3, STATICS_CLOSURE, BEARWELL_CHOICE], "The plan before and after the events, both as `pile-layout` analyses them; a pile that stopped short with nothing to count on is no support. Along the line the plan is analysed anew; off the line the pile stays on it in the analysis, and the moment of its greatest compression about the beam's axis is told. Keep-outs are measured from the pile's own centre. The overload by mislocation is taken for a pile in compression that carries its load without the moves that nobody meant, and does not with them. A beam without known strength whose longest span, a free end counted twice, grows by more than 10 % leaves the verdict open.";
        ECCENTRIC_HEAD = "eccentric_pile_head", version 1, [HEAD_ROTATION, UNIFORM_TORSION], "The moment of a pile off its line is shared between the head of the pile, a long shaft in ground of even stiffness whose head does not move sideways, and the torsion of the beam up to the next piles, which hold it. At a corner what the other beams take in bending is not counted.";
        BRIDGED_CORNER = "bridged_corner", version 1, [STATICS_CLOSURE, EULER_BERNOULLI], "A corner without a pile by three statics: each beam with a hinge over its second pile and a free tip; each beam continuous with a free tip; the plan itself, with the tips joined. The last one is judged.";
        WAYS_OUT = "relocation_ways_out", version 1, [LAYOUT_ENUMERATION, BEARWELL_CHOICE], "Every place on the grid within the limits is tried, each with the analysis and the checks of the whole plan: along each beam of the pile, beside its line, two piles on either side, larger piles in the stead of those that fail, one pile more beside one that is left with less, beams strong enough to do without it, with larger piles beside them where those are asked for too. Where no place of a kind does, the best one is tried with larger piles in the stead of those that fail. Where too many places would have to be analysed the search says so. The order: nothing fails, accepted, cost where each has one, piles more, changes, utilisation, movement.";
    }
}
