namespace Framing.Workshop;

/// <summary>The plan from which a new one starts: whole, small, and with everything that the page changes.</summary>
internal static class StarterPlan
{
    public const string Text = """
        title = "A new plan"

        [rig]
        focal_length_mm = 250    # of the lens or telescope
        sensor_px = [4144, 2822] # of the camera, unbinned
        pixel_um = 4.63

        [target]
        names = ["IC 1805"]      # any name the catalogue knows; several make one target together
        margin_arcmin = 5        # sky to keep free around it, on every side

        [rotation]
        strategy = "to-outline"  # the angle that leaves the most room around the target

        [mosaic]
        overlap = "fraction"     # neighbours share a part of the frame
        overlap_fraction = 0.15
        grid = "fewest"          # as few panels as hold the target; [2, 1] would be two columns, one row

        """;
}
