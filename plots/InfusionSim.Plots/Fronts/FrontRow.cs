using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Fronts;

/// <summary>Several fronts next to each other on one scale of times, each under its own title.</summary>
internal sealed class FrontRow
{
    private const float Gap = 24;
    private const float TitleRoom = 26;
    private const float LineRoom = 18;
    private const float LabelBorder = 34;
    private const float MostCellHeight = 460;

    // A panel this many times as wide as high reads better under its neighbour than beside it.
    private const double WidePanel = 2.2;

    private static readonly TextStyle Title = new(18, true);

    private readonly (FrontCell Cell, FrontScene Scene, SKRect Box)[] _cells;

    /// <summary>Lays out the fronts and places their labels.</summary>
    /// <param name="cells">The fronts, in order.</param>
    /// <param name="scale">Their times.</param>
    /// <param name="top">Where they begin [px].</param>
    internal FrontRow(IReadOnlyList<FrontCell> cells, TimeScale scale, float top)
    {
        var width = Theme.PictureWidth - 2 * Theme.Margin;
        var isWide = cells.All(cell => cell.Answer.Cloth.WidthMm > WidePanel * cell.Answer.Cloth.HeightMm);
        var columns = isWide ? 1 : cells.Count % 2 == 0 ? 2 : Math.Min(3, cells.Count);
        var cellWidth = (width - (columns - 1) * Gap) / columns;
        var bodyHeight = cells.Max(cell => PanelView.HeightFor(cell.Answer.Cloth, cellWidth, LabelBorder, MostCellHeight));
        var headRoom = TitleRoom + 12 + Math.Max(Badge.Height, LineRoom * cells.Max(cell => Lines(cell, cellWidth).Count));
        _cells = [.. cells.Select((cell, i) => Prepare(cell, scale, headRoom, SKRect.Create(
            Theme.Margin + i % columns * (cellWidth + Gap), top + i / columns * (bodyHeight + headRoom + 4), cellWidth, bodyHeight + headRoom)))];
    }

    /// <summary>Where the lowest front ends [px].</summary>
    internal float Bottom => _cells.Max(cell => cell.Box.Bottom);

    /// <summary>The signs of all fronts.</summary>
    internal IReadOnlyList<KeySign> Signs => [.. _cells
        .SelectMany(cell => PanelKey.Signs(cell.Cell.Answer.Plan, cell.Scene.DrySpots.Count > 0, cell.Scene.NeverReached.Count > 0, cell.Scene.Last is not null))
        .Distinct().Order()];

    /// <summary>The fronts' scenes, in order.</summary>
    internal IEnumerable<FrontScene> Scenes => _cells.Select(cell => cell.Scene);

    /// <summary>Draws the fronts.</summary>
    internal void Draw(SKCanvas canvas)
    {
        foreach (var (cell, scene, box) in _cells)
        {
            Title.Draw(canvas, Header.Shorten(cell.Title, box.Width, Title), box.Left, box.Top + 14, Theme.Ink);
            var lines = Lines(cell, box.Width);
            var middle = box.Top + TitleRoom + 4 + Math.Max(Badge.Height, LineRoom * lines.Count) / 2;
            cell.Badge?.Draw(canvas, box.Left + cell.Badge.Width, middle);
            for (var i = 0; i < lines.Count; i++)
            {
                TextStyle.Label.Draw(canvas, lines[i], box.Left + BadgeRoom(cell), middle + (i - (lines.Count - 1) / 2f) * LineRoom, Theme.Ink);
            }

            scene.Draw(canvas);
        }
    }

    private static float BadgeRoom(FrontCell cell) => cell.Badge is { } badge ? badge.Width + 10 : 0;

    private static IReadOnlyList<string> Lines(FrontCell cell, float width) => TextStyle.Label.Wrap(cell.Text, width - BadgeRoom(cell) - 2);

    private static (FrontCell Cell, FrontScene Scene, SKRect Box) Prepare(FrontCell cell, TimeScale scale, float headRoom, SKRect box)
    {
        var view = PanelView.Fit(cell.Answer.Cloth, new SKRect(box.Left, box.Top + headRoom, box.Right, box.Bottom), LabelBorder);
        return (cell, new FrontScene(cell.Answer, view, scale), box);
    }
}
