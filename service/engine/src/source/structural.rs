//! References: beams, load combinations, hydraulics and steel.

use super::references;

references! { STRUCTURAL:
    EULER_BERNOULLI = "euler_bernoulli", "Euler-Bernoulli beam theory, direct stiffness method", "Hermite element, 2 degrees of freedom a node", Derived, "Checked against published continuous-beam tables and independent solvers.";
}
