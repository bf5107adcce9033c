using Framing.Mosaics;
using Framing.Sky;

namespace Framing.Workshop;

/// <summary>How panels are laid out: [mosaic].</summary>
/// <param name="Overlap">What decides how much neighbours share.</param>
/// <param name="ChanceNoGap">How sure the plan has to be that no gap opens, more than 0 and less than 1.</param>
/// <param name="Grid">A fixed grid, or as few panels as do, in a full rectangle or in bands that follow the outline.</param>
/// <param name="MostPanels">The most panels there may be.</param>
/// <param name="TurnCameraAtEachPanel">True when the camera is turned again at each panel to follow the grid.</param>
/// <param name="SharedErrors">
/// The part of the variance of pointing and camera angle that all panels have in common, 0 to 1.
/// </param>
/// <param name="Centre">The middle of the mosaic where the user has fixed it; null to find the best one for the target.</param>
public sealed record MosaicSection(
    StrategyChoice Overlap,
    double ChanceNoGap,
    GridWish Grid,
    int MostPanels,
    bool TurnCameraAtEachPanel,
    double SharedErrors,
    SkyDirection? Centre
);
