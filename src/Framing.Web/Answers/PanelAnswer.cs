namespace Framing.Web;

/// <summary>One panel in the sky picture.</summary>
internal sealed record PanelAnswer(int Number, PagePoint? Centre, IReadOnlyList<PagePoint> Corners);
