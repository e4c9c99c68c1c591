"""Published tables of bearing and uplift factors, as printed; rows of (friction angle, ...).

Each with where it was seen. Rows below 15 degrees are left out, where the service takes no sand.
"""

# (phi, N_q). Terzaghi's factors as tabled in a design handbook; text seen.
TERZAGHI = (
    (15, 4.4), (20, 7.4), (25, 12.7), (30, 22.5), (34, 36.5), (35, 41.4), (40, 81.3), (45, 173.3),
)

# (phi, N_q, N_gamma). Meyerhof's, Vesic's and Hansen's factors as tabled; text seen.
MEYERHOF = (
    (15, 3.9, 1.1), (20, 6.4, 2.9), (25, 10.7, 6.8), (30, 18.4, 15.7), (32, 23.2, 22.0),
    (34, 29.4, 31.2), (36, 37.7, 44.4), (38, 48.9, 64.1), (40, 64.2, 93.7), (42, 85.4, 139.3),
    (44, 115.3, 211.4),
)
VESIC = (
    (15, 3.9, 2.6), (20, 6.4, 5.4), (25, 10.7, 10.8), (30, 18.4, 22.4), (32, 23.2, 30.2),
    (34, 29.4, 41.1), (36, 37.7, 56.3), (38, 48.9, 78.0), (40, 64.2, 109.4), (42, 85.4, 155.6),
    (44, 115.3, 224.6),
)
HANSEN = (
    (16, 4.34, 1.43), (20, 6.4, 2.95), (26, 11.85, 7.94), (30, 18.4, 15.07), (32, 23.2, 20.79),
    (34, 29.4, 28.77), (36, 37.7, 40.05), (38, 48.9, 56.17), (40, 64.2, 79.54),
    (42, 85.4, 113.95), (44, 115.3, 165.48),
)
# Vesic's again with two decimals, Foundation Engineering Handbook; text seen.
VESIC_FINE = (
    (15, 3.94, 2.65), (20, 6.40, 5.39), (25, 10.66, 10.88), (30, 18.40, 22.40),
    (32, 23.18, 30.22), (34, 29.44, 41.06), (36, 37.75, 56.31), (38, 48.93, 78.03),
    (40, 64.20, 109.41),
)
# Closed forms to seven digits, computed apart: (phi, N_q, N_gamma of Vesic, of Meyerhof).
CLOSED = (
    (25, 10.66214, 10.87629, 6.7655),
    (30, 18.40112, 22.40249, 15.66804),
    (35, 33.29609, 48.02876, 37.1524),
    (40, 64.19521, 109.41055, 93.69075),
)
# (phi, F_q at the critical ratio), from the remembered lists of Meyerhof and Adams 1968.
BREAKOUT_DEEP = ((20, 2.94), (25, 4.46), (30, 8.02), (35, 15.97), (40, 39.5), (45, 95.05))
# (phi, largest K_u), remembered of Mitsch and Clemence 1985.
LATERAL_LARGEST = ((25, 0.70), (30, 0.90), (35, 1.50), (40, 2.35), (45, 3.20))
# (s_u in kPa, (H/D)_cr), remembered of Das 1980.
CRITICAL_CLAY = ((10, 3.57), (25, 5.175), (50, 7.0), (100, 7.0))
# (s_u, s'_v, alpha s_u) in kPa: alpha of API, computed apart.
ADHESION = ((50, 50, 25.0), (100, 50, 42.0448), (25, 100, 25.0))
