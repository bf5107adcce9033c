#!/usr/bin/python3
"""sky_of_pixels.py FILE... : what wcslib, through astropy, makes of the solution of each FITS file, as one JSON list.

Debian package: python3-astropy. Each entry: places all over the picture, the directions they show, the pixels found back
by iteration, and, where the header has reverse terms, those found by these alone.
"""
import json, sys, warnings
import numpy as np
from astropy.io import fits
from astropy.wcs import WCS

warnings.simplefilter("error")  # a file of ours gives nothing to mutter about


def reverse(w, sky):
    """u + AP(u, v), v + BP(u, v), as the SIP convention has it."""
    u, v = (w.wcs_world2pix(sky, 1) - w.wcs.crpix).T
    terms = [sum(c[p, q] * u**p * v**q for p in range(len(c)) for q in range(len(c) - p)) for c in (w.sip.ap, w.sip.bp)]
    return (np.column_stack([u + terms[0], v + terms[1]]) + w.wcs.crpix).tolist()


def entry(name):
    with fits.open(name) as units:
        header = units[0].header
        w = WCS(header)
    x, y = np.meshgrid(np.linspace(1, header["NAXIS1"], 9), np.linspace(1, header["NAXIS2"], 7))
    pixels = np.column_stack([x.ravel(), y.ravel()])
    sky = w.all_pix2world(pixels, 1)
    return {"pixels": pixels.tolist(), "sky": sky.tolist(),
            "back": w.all_world2pix(sky, 1, tolerance=1e-8, maxiter=60).tolist(),
            "reverse": reverse(w, sky) if w.sip is not None and w.sip.ap is not None else None}


if __name__ == "__main__":
    print(json.dumps([entry(n) for n in sys.argv[1:]]))
