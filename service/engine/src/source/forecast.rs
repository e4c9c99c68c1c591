//! References: the forecast of the depths of the piles to come.

use super::references;

references! { FORECAST:
    FORECAST_PRIORS = "forecast_priors", "Engineering default of this service", "what is assumed of the ground before the first log", CommonPracticeNoSource, "Scatter, share of a single pile, correlation length, belief in a stated forecast. No published statistics of helical piles were found; the bands were checked on simulated jobs, within the model and outside of it.";
    FORECAST_PIECES = "forecast_pieces", "Geometry", "reach of a lead with extensions", Derived, "";
    NORMAL_GIVEN_NORMAL = "normal_given_normal", "Conditional distribution of jointly normal variables; generalised least squares", "known mean square and unknown mean", Derived, "In any text on kriging; follows from the normal density.";
    EXPECTATION_PROPAGATION = "expectation_propagation", "Minka 2001; Rasmussen and Williams 2006, Gaussian processes for machine learning", "moment matching of truncated normal variables", Memory, "Neither was seen. Checked here against direct integration in one and two dimensions.";
    ONE_FACTOR = "one_factor_sum", "One-factor model of correlated variables", "independent given one common factor", Derived, "The same form is used for sums of correlated losses; that one factor is enough is a choice of this service.";
}
