"""A small model of the Milky Way: stars per square degree brighter than V towards any direction.

Stars of every luminosity stand in three layers and thin out with the distance from the plane and from the centre; dust
dims them. It serves one end: to carry real counts (Tycho-2, to V 11) on to V 16. So what matters is how the counts grow;
their level is tied to the real ones.

Every value here is from memory of the named source; make.py moves them a little (the last column of PARAMETERS says how
far they may go) so that the model agrees with Tycho-2 from V 6 to V 11.

Luminosity function and the share of stars on the main sequence: Bahcall & Soneira 1980, ApJS 44, 73, eq. 1 and table 1.
Layers: the same; thick disc and halo as in Juric et al. 2008, ApJ 673, 864.
"""
import numpy as np

SUN_TO_CENTRE = 8000.0                                  # pc
SUN_ABOVE_PLANE = 20.0                                  # pc
M = np.arange(-6.0, 14.1, 0.5)                          # absolute magnitudes
KNOTS = np.array([-3.0, 0.0, 2.0, 4.0, 6.0, 9.0])       # where the luminosity function may be moved
DISTANCE = np.exp(np.linspace(np.log(2.0), np.log(30000.0), 220))
SHELL = DISTANCE ** 2 * np.gradient(DISTANCE)
PER_SQUARE_DEGREE = (np.pi / 180.0) ** 2

# name, value, how far ln(value) may move (one sigma)
PARAMETERS = (
    ('young_height_pc', 90.0, 0.3),                     # main sequence brighter than M 2.3
    ('old_height_pc', 300.0, 0.15),                     # main sequence fainter than M 5.1
    ('giant_height_pc', 250.0, 0.3),
    ('dust_mag_per_pc', 0.0008, 0.4),                   # V, at the Sun, in the plane
    ('dust_height_pc', 120.0, 0.3),
    ('thick_share', 0.10, 0.4),                         # of the disc's density, at the Sun
    ('thick_height_pc', 900.0, 0.15),
    ('scale_length_pc', 3000.0, 0.05),             # held: near arms and clouds would feign another
)
LUMINOSITY_SIGMA = np.array([0.6, 0.4, 0.3, 0.3, 0.2, 0.2])
HALO_SHARE = 0.004                                      # of the disc's density, at the Sun


def luminosity(m):
    """Stars per cubic parsec and magnitude."""
    alpha, beta, inverse_delta = 0.74, 0.04, 3.40
    return 4.03e-3 * 10 ** (beta * (m - 1.28)) / (1 + 10 ** (-(alpha - beta) / inverse_delta * (m - 1.28))) ** inverse_delta


MAIN_SEQUENCE = np.where(M < 3.7, 0.44 * np.exp(1.5e-4 * np.clip(M + 8, 0, None) ** 3.5), 1.0)


def values(steps):
    """The parameters by name for a vector of steps: first the knots of the luminosity function, then PARAMETERS."""
    n = len(KNOTS)
    named = {name: value * np.exp(step) for (name, value, _), step in zip(PARAMETERS, steps[n:])}
    named['luminosity_steps'] = np.asarray(steps[:n])
    return named


def brighter_than(p, l_deg, b_deg, magnitudes):
    """Stars per square degree brighter than each magnitude, towards galactic longitude l and latitude b."""
    l, b = np.radians(l_deg), np.radians(b_deg)
    z = DISTANCE * np.sin(b) + SUN_ABOVE_PLANE
    from_centre = np.hypot(SUN_TO_CENTRE - DISTANCE * np.cos(b) * np.cos(l), DISTANCE * np.cos(b) * np.sin(l))
    along = np.exp(-(from_centre - SUN_TO_CENTRE) / p['scale_length_pc'])
    up = SUN_ABOVE_PLANE - np.abs(z)

    dust = p['dust_mag_per_pc'] * np.exp(-np.abs(z) / p['dust_height_pc'] - (from_centre - SUN_TO_CENTRE) / 4000.0)
    dimming = np.concatenate([[0.0], np.cumsum(0.5 * (dust[1:] + dust[:-1]) * np.diff(DISTANCE))])
    modulus = np.concatenate([[-1e9], 5.0 * np.log10(DISTANCE) - 5.0 + dimming])

    stars = luminosity(M) * 0.5 * np.exp(np.interp(M, KNOTS, p['luminosity_steps']))
    height = np.interp(M, [2.3, 5.1], [p['young_height_pc'], p['old_height_pc']])
    # old layers have no young main sequence: it ends between M 2 and 4
    old = np.where(M < 4.0, 1.0 - MAIN_SEQUENCE + MAIN_SEQUENCE * np.clip((M - 2.0) / 2.0, 0.0, 1.0), 1.0)
    halo = HALO_SHARE * np.maximum(np.hypot(from_centre, z / 0.7) / SUN_TO_CENTRE, 0.1) ** -2.8
    layers = (
        (stars * MAIN_SEQUENCE, along * np.exp(up[None, :] / height[:, None])),
        (stars * (1.0 - MAIN_SEQUENCE), along * np.exp(up / p['giant_height_pc'])),
        (stars * old, along * np.exp(up / p['thick_height_pc']) * p['thick_share'] + halo),
    )
    found = np.zeros(len(magnitudes))
    for weight, density in layers:
        inside = np.broadcast_to(np.cumsum(density * SHELL, axis=-1), (len(M), len(DISTANCE)))
        inside = np.concatenate([np.zeros((len(M), 1)), inside], axis=1)
        for k, magnitude in enumerate(magnitudes):
            found[k] += sum(w * np.interp(magnitude - m, modulus, row) for w, m, row in zip(weight, M, inside))
    return found * PER_SQUARE_DEGREE


def bahcall_soneira(v, l_deg, b_deg):
    """The printed fit to the counts of the Bahcall & Soneira model (1980, ApJS 44, 73, eq. 17 and table 6), from memory.

    Good to 15 % above |b| 20 degrees, they say. As remembered it gives about half the stars of Tycho-2 at the poles at
    every magnitude from 8 to 11, so its level is not used anywhere, only its growth.
    """
    l, b = np.radians(l_deg), np.radians(np.abs(b_deg))
    mu = 0.03 if v <= 12 else 0.0075 * (v - 12) + 0.03
    gamma = 0.36 if v <= 12 else 0.04 * (12 - v) + 0.36
    sigma = 1.45 - 0.20 * np.cos(b) * np.cos(l)
    disc = 925.0 * 10 ** (0.035 * (v - 15.75)) / (1 + 10 ** (-0.132 * (v - 15.75))) ** 3.0
    halo = 1050.0 * 10 ** (0.087 * (v - 17.5)) / (1 + 10 ** (-0.180 * (v - 17.5))) ** 2.5
    disc /= (np.sin(b) * (1 - mu / np.tan(b) * np.cos(l))) ** (3 - 5 * gamma)
    return disc + halo / (1 - np.cos(b) * np.cos(l)) ** sigma
