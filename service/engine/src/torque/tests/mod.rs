//! Tests of torque-capacity.
