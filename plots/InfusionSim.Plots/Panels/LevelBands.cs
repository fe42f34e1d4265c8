using InfusionSim.Plots.Contours;
using InfusionSim.Plots.Labels;
using InfusionSim.Plots.Styling;
using SkiaSharp;

namespace InfusionSim.Plots.Panels;

/// <summary>A number over a panel in bands: a colour between each two levels, a line at each level, the level on its line.</summary>
internal sealed class LevelBands
{
    private readonly PanelView _view;
    private readonly ClothArea _cloth;
    private readonly SKColor[] _colours;
    private readonly List<List<Spot>>[] _above;

    /// <summary>Finds the lines of a field.</summary>
    /// <param name="view">Where the panel lies on the picture.</param>
    /// <param name="cloth">The cloth.</param>
    /// <param name="colours">Colours of the bands, lowest first: one more than there are levels.</param>
    /// <param name="above">Rings round what lies above each level, lowest level first [mm].</param>
    /// <param name="cellMm">Side of a square [mm].</param>
    /// <param name="isShown">Whether a place has a line drawn through it.</param>
    internal LevelBands(PanelView view, ClothArea cloth, SKColor[] colours, List<List<Spot>>[] above, double cellMm, Func<Spot, bool> isShown)
    {
        (_view, _cloth, _colours, _above) = (view, cloth, colours, above);
        Lines = [.. above.Select(rings => LineCutter.Cut(rings, cellMm / 4, isShown))];
    }

    /// <summary>Lines of each level, lowest level first [mm].</summary>
    internal List<IReadOnlyList<Spot>>[] Lines { get; }

    /// <summary>Fills the bands; the canvas is clipped to the cloth.</summary>
    /// <param name="canvas">Where to.</param>
    /// <param name="cloth">The cloth on the picture.</param>
    internal void Fill(SKCanvas canvas, SKPath cloth)
    {
        using var first = Theme.Fill(_colours[0]);
        canvas.DrawPath(cloth, first);
        for (var i = 0; i < _above.Length; i++)
        {
            using var higher = _view.ToPath(_above[i]);
            using var fill = Theme.Fill(_colours[i + 1]);
            canvas.DrawPath(higher, fill);
        }
    }

    /// <summary>Puts each level on its line.</summary>
    /// <param name="sheet">What is taken.</param>
    /// <param name="textOf">What to say of a level, by its place among them.</param>
    /// <param name="longLine">Length from which a further line of a level has a number of its own [px].</param>
    /// <param name="keepClear">Points of what else no number may cover [px].</param>
    /// <param name="highestFirst">Whether the highest level has the first choice.</param>
    internal void PlaceNumbers(
        LabelSheet sheet, Func<int, string> textOf, float longLine = LineLabelPlacer.LongLine, IReadOnlyList<SKPoint>? keepClear = null, bool highestFirst = false)
    {
        var lines = Lines.Select(level => level.Select(_view.ToPixels).ToArray()).ToArray();
        SKPoint? near = null;
        for (var k = 0; k < lines.Length; k++)
        {
            var i = highestFirst ? lines.Length - 1 - k : k;
            SKPoint[] others = [.. lines.Where((_, other) => other != i).SelectMany(other => other).SelectMany(line => line), .. keepClear ?? []];
            near = LineLabelPlacer.Put(sheet, textOf(i), lines[i], others, pixel => _cloth.Contains(_view.ToSpot(pixel)), near, longLine) ?? near;
        }
    }
}
