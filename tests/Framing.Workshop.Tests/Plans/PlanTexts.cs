namespace Framing.Workshop.Tests;

/// <summary>Plan files to start from.</summary>
internal static class PlanTexts
{
    /// <summary>The least that a plan may hold. The rig starts in line 1, the target in line 6.</summary>
    public const string Least = """
        [rig]
        focal_length_mm = 250
        sensor_px = [4144, 2822]
        pixel_um = 4.63

        [target]
        names = ["IC 1805"]

        """;

    /// <summary>Every key there is.</summary>
    public const string Full = """
        title = "Two panels across the hearth"

        [rig]
        focal_length_mm = 250
        sensor_px  = [4144, 2822]
        pixel_um   = 4.63
        binning    = 2
        mirrored   = true

        [guide]
        focal_length_mm = 120
        pixel_um = 3.75
        star = "centre"

        [site]
        latitude_deg  = 46.20
        longitude_deg = 8.10
        elevation_m   = 1650
        time_zone     = "Europe/Zurich"
        horizon       = "horizon.csv"
        horizon_azimuth_offset_deg = 2.5
        min_altitude_deg = 26
        pressure_hpa  = 831
        temperature_c = -4

        [target]
        centre = "2h 41m, +60.9"
        size_arcmin = [260, 120]
        angle_deg = 40
        margin_arcmin = 8

        [rotation]
        strategy = "to-outline"
        camera_angle_deg = 37
        camera_angle_sigma_deg = 1.5
        from_deg = 10
        steady = true
        note = "as it comes"

        [mosaic]
        overlap  = "fraction"
        overlap_fraction = 0.15
        chance_no_gap = 0.95
        grid     = [3, 2]
        most_panels = 90
        turn_camera_at_each_panel = true

        [mount]
        type = "german"
        meridian_pause_min = 7.5
        declination_limit_deg = 85
        goto_frame = "J2000"
        entry_format = "hm.m-dm"
        date_order = "day-month-year"
        goto_sigma_arcmin    = 21
        centred_sigma_arcmin = 4
        check_each_panel = false
        polar_error_arcmin   = 16
        backlash_arcmin = [2, 1.5]
        rate_factor = [0.98, 1.04]
        zenith_limit_deg = 5
        finish = ["east", "south"]
        key_adds_to_tracking = false
        dial_zero_deg = 12
        speeds = [ { label = "fast", x_sidereal = 20 }, { label = "slow", x_sidereal = 0.5 } ]
        keys   = { east = "R", west = "L", north = "U", south = "D" }

        [night]
        date = 2026-12-05
        nights = 3
        darkness = "nautical"
        goal_h_per_panel = 2.5
        setup_min = 61
        repoint_min = 11
        focus_every_min = 62
        focus_min = 4
        flats_min = 16
        expected_loss = 0.25
        dither_arcsec = 22
        trail_limit_px = 1.25

        [[night.filter]]
        name = "H-alpha"
        sub_s = 180
        readout_s = 5
        dither_every = 4
        dither_s = 26
        share = 2.0
        trail_limit_px = 0.75
        moon_away_deg = 50
        moon_lit_from = 0.25

        [[night.filter]]
        name = "O-III"
        sub_s = 240

        [sky]
        seeing_arcsec = 2.5
        sky_mag_arcsec2 = 21.3

        [power]
        battery_wh = 512
        usable_fraction = 0.75
        spare_fraction = 0.1
        chemistry = "lead-acid"
        loads = [ { name = "camera cooling", w = 24, duty = 0.6 }, { name = "mount", w = 9 } ]

        """;

    /// <summary>A skyline for <see cref="Full"/>.</summary>
    public const string Horizon = """
        azimuth_deg,altitude_deg
        0,10
        90,20
        180,5
        359,11

        """;
}
