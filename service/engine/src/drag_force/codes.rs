//! Codes of this calculation, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        DRAG_STRUCTURAL = "drag_structural", "The steel of the pile bears permanent load and drag together. Live load and drag are not combined.";
        DRAG_PERMANENT_LOAD_HELD = "drag_permanent_load_held", "Mobilised toe and lower friction over the whole shaft balance the permanent load, without any safety: else there is no neutral plane and the pile sinks. Drag is no part of the load here. This is no capacity check.";
        DRAG_HELIX_BELOW_SETTLING = "drag_helix_below_settling", "Every helix that bears is below the ground that settles or collapses. A helix exactly at its base passes.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        DRAG_NEUTRAL_PLANE_AT_TOE = "drag_neutral_plane_at_toe", "The neutral plane is at the toe: all of the shaft is dragged.";
        DRAG_NEUTRAL_PLANE_BELOW_HELIX = "drag_neutral_plane_below_helix", "The neutral plane is below the uppermost helix; all resistance of the helices is taken to act at the toe, and helices above the plane are dragged too.";
        DRAG_BELOW_SETTLING_GROUND = "drag_below_settling_ground", "The balance of forces puts the neutral plane below the ground that settles; nothing drags there, so the drag force is overestimated.";
        DRAG_TRIGGER_EXCEEDED = "drag_trigger_exceeded", "A figure of the site is above the usual trigger for a look at drag.";
        DRAG_COLLAPSE_SETTLEMENT = "drag_collapse_settlement", "The soil collapses on wetting; whatever stands on it settles by the figure given while the pile does not.";
    }
}

/// Cautions.
pub mod cautions {
    use crate::catalogue::codes;
    codes! { CautionDef:
        DRAG_IS_STRUCTURAL = "drag_is_structural", "Drag is a load in the steel only. It is never added to the load that soil and helices must carry, and never combined with live load. Settlement of what stands on the settling ground and buckling of the shaft are checks of their own and often matter more.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        DRAG_LAYERS_TOO_SHORT = "drag_layers_too_short", "The layers end above the depth to which friction is needed; the ground below is not made up.";
        DRAG_LOWER_ABOVE_UPPER = "drag_lower_above_upper", "The lower friction, for resistance, is above the upper one, for drag.";
        DRAG_SETTLES_BELOW_TOE = "drag_settles_below_toe", "The ground settles down to the toe or below it: the pile stands in the settling ground and goes down with it. No drag force answers that.";
        DRAG_TABLE_NOT_MONOTONE = "drag_table_not_monotone", "In a table of shaft resistance a depth does not grow, or the resistance falls.";
        DRAG_TABLE_ENDS_ELSEWHERE = "drag_table_ends_elsewhere", "The last row of a table of shaft resistance is not at the toe.";
        DRAG_TABLE_BEGINS_TOO_DEEP = "drag_table_begins_too_deep", "The neutral plane is above the first row of the table of shaft resistance; its depth is not extrapolated.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        DRAG_UNIT_FRICTION = "drag_unit_friction", version 1, [UFC_DOWNDRAG, GEC12_BETA, DERIVED, CALLER],
            "Unit friction on the shaft at a depth z below final grade: f = min(beta sigma'v(z), limit), or f = min(alpha s_u, limit); once with the upper factor (f_u, drag) and once with the lower factor (f_l, resistance); without a limit the product itself. sigma'v(z) = q + sum of gamma_i h_i over the layers and the part of a layer above z, counted from final grade, less u(z); u(z) = 9.81 kN/m3 times (z - z_w) below the water table z_w, nil above it or without one; q the surcharge. The stress counts from final grade also where the head is below it. Friction over a length is the perimeter p times the integral of f; each stretch in which f is a straight line (between layer ends, water table, and where the limit is reached) is integrated exactly. Shaft contact from max(head_depth, 0) to toe_depth.";
        DRAG_CUMULATIVE_FRICTION = "drag_cumulative_friction", version 1, [GEC12_NEUTRAL_PLANE, CALLER],
            "Shaft resistance summed over depth as sent, the same in drag as in resistance, straight between the rows. Above the first row only its sum is known.";
        DRAG_NEUTRAL_PLANE = "drag_neutral_plane", version 1, [GEC12_NEUTRAL_PLANE, UFC_DOWNDRAG],
            "The least depth z_n at which Q + S_u(z) = m R_t + S_l(L) - S_l(z); Q unfactored permanent load, S_u and S_l upper and lower friction summed from where the shaft first touches soil down to z, R_t ultimate resistance of the toe at the depth L, m its mobilised part. Full slip is taken along all of the shaft. Drag force DF = S_u(z_n), largest load Q + DF. Solved in closed form in each stretch: a quadratic where the stress grows. Where the left side is below the right one down to the toe, z_n = L (position at_toe). Where Q alone is above m R_t + S_l(L) there is none (position none). The depth of the settling ground has no part in it.";
        DRAG_FILL_BASE = "drag_fill_base", version 1, [BEARWELL_CHOICE, UFC_DOWNDRAG],
            "The neutral plane is taken at the base z_s of the settling ground: DF = S_u(z_s), the upper friction from where the shaft first touches soil down to z_s; largest load Q + DF. Meant for fill or collapsing soil over competent ground.";
        DRAG_STRUCTURAL_LIMIT_STATES = "drag_structural_limit_states", version 1, [UFC_DOWNDRAG, GEC12_NEUTRAL_PLANE],
            "gamma_Q Q + gamma_DF DF against phi P_n; the least resistance factor is the load over P_n.";
        DRAG_STRUCTURAL_ALLOWABLE_STRESS = "drag_structural_allowable_stress", version 1, [BEARWELL_CHOICE],
            "Q + DF against the allowable strength of the steel.";
        DRAG_SCREENING_TRIGGERS = "drag_screening_triggers", version 1, [DRAG_SCREENING],
            "Figures of the site against the triggers for a look at drag; information, decides nothing.";
        COLLAPSE_POTENTIAL = "collapse_potential", version 1, [ASTM_D5333, DERIVED],
            "Class of the collapse potential; settlement = collapse potential times the thickness that collapses.";
    }
}
